"""How warm the parts of a set become by their watts, and how soon.

Two warmings add up, each going to its end by e in its own time: that of the part itself above the
board, and that of the board, which all of them heat. The figures are choices of this workbook, from
memory: 12 W for each m² and K by air and radiation together (10 to 15 are usual), a part spreads
its heat 1 cm into the board around it, and a part holds 2 J for each cm³ and K, as copper, plastic
and glass fibre nearly all do. A plain regulator of 10 by 5 mm comes to 56 K/W, a diode of 8 by 4 mm
to 62 K/W; data sheets say 50 to 65 for both. A part that would become hotter than HOTTEST in the
sound set has a heat sink that keeps it there.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import lru_cache
from math import exp
from typing import Any, NamedTuple

from repairlib.bench.electric import Electric, as_it_is, beyond, electric, sound
from repairlib.bench.practice_set import PracticeSet
from repairlib.bench.series_lamp import NAME as BULB
from repairlib.bench.state import OWN_PLUG, Feed, State, begin
from repairlib.circuits import CircuitPart, heat_in

TO_AIR = 12e-6  # W/(mm² K)
SPREADS = 20.0  # mm, both sides together
HOLDS = 2e-3  # J/(mm³ K)
THICK = 1.6  # mm of the board
HOTTEST = 25.0  # K of a part above the board in the sound set
WARMEST = 18.0  # K of the board above the room in the sound set
BOARD = "the board"  # its name among what is warm
BEYOND = "V beyond "  # takes up what flows above a rating, and all of it is heat
LEAST = 0.01  # K, below which a part counts as cold
KEPT = 16  # sets whose ways are remembered
AT_LAST = 1e6  # s, until nothing becomes warmer


class Way(NamedTuple):
    """The way of heat into the air: K for each W, and in which time it goes by e, in s."""

    ohm: float
    lag: float

    def after(self, now: float, watts: float, seconds: float) -> float:
        """How many K it is warmer so many seconds later.

        >>> way = Way(50.0, 30.0)
        >>> round(way.after(0.0, 1.0, 30.0), 2), way.after(20.0, 0.0, 1e6)
        (31.61, 0.0)
        """
        end = self.ohm * watts
        return end + (now - end) * exp(-seconds / self.lag)


def ways_of(of: PracticeSet) -> dict[str, Way]:
    """The way of heat into the air of each part of a set, and of its board, by name.

    >>> from repairlib.bench.practice_set import demo_set
    >>> ways = ways_of(demo_set("desk radio"))
    >>> round(ways["U1"].ohm), round(ways["U1"].lag), round(ways["C1"].lag)
    (56, 28, 198)
    """
    return dict(_ways_of(_This(of)))


@dataclass(frozen=True)
class _This:
    """A set, the same as another only where it is that very one: so it is quick to find again."""

    of: PracticeSet

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _This) and other.of is self.of

    def __hash__(self) -> int:
        return id(self.of)


def usual_heat(of: PracticeSet) -> dict[str, float]:
    """How many K above the room each part of the sound set becomes on its own plug, by name.

    >>> from repairlib.bench.practice_set import demo_set
    >>> heat = usual_heat(demo_set("desk radio"))
    >>> heat["U1"] > heat["C1"] > 5
    True
    """
    return warmed(ways_of(of), {}, _made_for(of), AT_LAST)


def _made_for(of: PracticeSet) -> dict[str, float]:
    """The watts in each part of the sound set."""
    return _watts(replace(begin(of, (), ""), feed=Feed(OWN_PLUG)), sound(of))


@lru_cache(maxsize=KEPT)
def _ways_of(asked: _This) -> dict[str, Way]:
    of = asked.of
    made_for = _made_for(of)
    found = {}
    for part in of.parts:
        way = _by_size(part.wide + SPREADS, part.high + SPREADS)
        lag = way * HOLDS * part.wide * part.high * min(part.wide, part.high)
        found[part.name] = Way(_held_to(HOTTEST, way, made_for.get(part.name, 0.0)), lag)
    board = _by_size(of.wide, of.high)
    lag = board * HOLDS * of.wide * of.high * THICK
    found[BOARD] = Way(_held_to(WARMEST, board, sum(made_for.values())), lag)
    return found


def _by_size(wide: float, high: float) -> float:
    """K for each W that leaves by both faces of a plate of so many mm."""
    return 1 / (TO_AIR * 2 * wide * high)


def _held_to(most: float, ohm: float, watts: float) -> float:
    return min(ohm, most / watts) if watts > 0 else ohm


def warmed(
    ways: Mapping[str, Way], heat: Mapping[str, float], watts: Mapping[str, float], seconds: float
) -> dict[str, float]:
    """How many K each part is above the room so many seconds later, with these watts in them.

    >>> from repairlib.bench.practice_set import demo_set
    >>> heat = warmed(ways_of(demo_set("desk radio")), {}, {"U1": 1.0}, 3600.0)
    >>> round(heat["U1"]), round(heat["C3"])
    (59, 3)
    """
    board = ways[BOARD].after(heat.get(BOARD, 0.0), sum(watts.values()), seconds)
    found = {BOARD: board}
    for name, way in ways.items():
        if name == BOARD:
            continue
        own = max(heat.get(name, 0.0) - heat.get(BOARD, 0.0), 0.0)
        found[name] = board + way.after(own, watts.get(name, 0.0), seconds)
    return {name: float(f"{kelvin:.9g}") for name, kelvin in found.items() if kelvin > LEAST}


def watts(state: State, extra: tuple[CircuitPart, ...] = ()) -> dict[str, float]:
    """The watts that become heat in each part of the set now, none without power.

    `extra` is what an instrument puts across the board.
    """
    return _watts(state, electric(state, extra)) if state.powered else {}


def _watts(state: State, now: Electric) -> dict[str, float]:
    found: dict[str, float] = {}
    above = beyond(state)
    for part in state.set.parts:
        made = (*as_it_is(state, part), *above.get(part.name, ()))
        own = [one for one in made if one.name in now.amps and one.name != BULB]
        heat = sum(_mean_heat(one, now) for one in own)
        if heat > 0:
            found[part.name] = heat
    return found


def _mean_heat(part: CircuitPart, now: Electric) -> float:
    import numpy as np

    amps = now.amps[part.name]
    volts: dict[str, Any] = dict(now.waves or now.mean)
    if part.letter == "V" and part.name.startswith(BEYOND):
        one, other = (volts[node] for node in part.nodes)
        return float(np.mean((one - other) * amps))
    return float(np.mean(heat_in(part, volts, amps)))
