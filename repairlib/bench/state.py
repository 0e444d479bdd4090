"""Where an attempt at the practice board stands: what is fitted, powered, charged, warm, spent.

A state is never changed: a move makes the next one (step.py). So an attempt is its moves, and they
make the same states on every machine.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import NamedTuple

from repairlib.bench.conditions import Fault
from repairlib.bench.practice_set import PracticeSet
from repairlib.core.errors import RepairlibError

ROOM = 22.0  # °C
OFF, OWN_PLUG, LAMP, SUPPLY = "off", "own plug", "series lamp", "bench supply"
LIGHT, FULL = "light", "full"
LINES = (0.9, 1.0, 1.1)  # of the mains, or of the adapter's volts
SOUND, DIRTY, LIFTED, WIRED = "sound", "solder left on", "lifted", "bridged with a wire"
SPOILT = 0.1  # of the time that a part bears it; a choice
REPAIRED, HANDED_ON, HARMED, GIVEN_UP = "handed back", "handed on", "harmed", "given up"


@dataclass(frozen=True, slots=True)
class Fitted:
    """A part as it sits in its place: its fault, if it has one, and which way round.

    `value` and `rated` of a new part, in SI units; None where they are those of the set's list.
    `strain` is how much it has had of what it bears above its rating or the wrong way round.
    """

    fault: Fault | None = None
    new: bool = False
    value: float | None = None
    rated: float | None = None
    turned: bool = False
    strain: float = 0.0

    @property
    def spoilt(self) -> bool:
        """Whether it is scrap, however it may look."""
        return self.strain >= SPOILT


@dataclass(frozen=True, slots=True)
class Place:
    """A place of the board: the part in it (None when it is out), and its pads.

    `ageing` says how many seconds its pads were so hot that they age (soldering.py). `leg_up`: one
    leg of the part was lifted out of the board, so that nothing flows through it.
    """

    fitted: Fitted | None = Fitted()
    pads: str = SOUND
    taken: Fitted | None = None  # the part that was taken out and lies on the bench
    ageing: float = 0.0
    leg_up: bool = False


@dataclass(frozen=True, slots=True)
class Feed:
    """What feeds the set: `kind` OFF, OWN_PLUG, LAMP or SUPPLY; a supply's volts and limit [A]."""

    kind: str = OFF
    volts: float = 0.0
    limit: float = 0.0
    line: float = 1.0
    lamp: float = 0.0


class End(NamedTuple):
    """How an attempt ended: REPAIRED, HANDED_ON, HARMED or GIVEN_UP, and the sentence for it.

    `hazard` is the key of core.safety.HAZARDS that struck, "" where nobody could be hurt.
    """

    kind: str
    why: str
    hazard: str = ""


@dataclass(frozen=True)
class State:
    """The board and the bench now. `seed` decides the noise of the instruments, not the fault.

    `charges` are the volts that capacitors hold, by part; with the power on of those alone that
    have not come to where they settle. `heat` are the °C above the room, by part;
    `warmed` are the parts that were warm enough for a crack to open, and have not cooled since.
    `clock` in s, `spent` in tokens. `harm` says what the learner damaged, in order. `card` holds
    the lines of the job card, `kept` the sums of the reads of memory chips, by part.
    """

    set: PracticeSet
    seed: str
    places: Mapping[str, Place]
    feed: Feed = Feed()
    load: str = FULL
    charges: Mapping[str, float] = ()  # type: ignore[assignment]
    heat: Mapping[str, float] = ()  # type: ignore[assignment]
    warmed: frozenset[str] = frozenset()
    clock: float = 0.0
    spent: float = 0.0
    moves: int = 0
    clipped: str = ""
    harm: tuple[str, ...] = ()
    card: tuple[tuple[str, str], ...] = ()
    kept: tuple[tuple[str, str], ...] = ()
    ended: End | None = None

    @property
    def powered(self) -> bool:
        """Whether anything feeds the set."""
        return self.feed.kind != OFF

    def place(self, name: str) -> Place:
        """The place of a part of the set."""
        return self.places[self.set.part(name).name]

    def with_place(self, name: str, **changes) -> State:
        """The state with that place changed."""
        part = self.set.part(name).name
        return replace(self, places={**self.places, part: replace(self.places[part], **changes)})

    def warm(self, name: str) -> bool:
        """Whether a part is so warm that a crack in its joint opens, or has not closed again."""
        return dict(self.heat).get(name, 0.0) > (COOLED if name in self.warmed else WARM)

    def as_warm(self, heat: Mapping[str, float]) -> State:
        """The state as warm as that: what was warm stays so until it has cooled well."""
        now = replace(self, heat=heat)
        return replace(now, warmed=frozenset(name for name in self.places if now.warm(name)))


WARM, COOLED = 12.0, 6.0  # K above the room, where a crack opens and closes; choices


def begin(of: PracticeSet, faults: tuple[Fault, ...], seed: str) -> State:
    """The state before the first move: unplugged, at rest, with these faults in it.

    Two faults on one part are refused with RepairlibError.

    >>> from repairlib.bench.practice_set import demo_set
    >>> from repairlib.bench.conditions import read_fault
    >>> radio = demo_set("desk radio")
    >>> state = begin(radio, (read_fault("C1 open", radio),), "demo")
    >>> state.place("c1").fitted.fault.condition, state.powered
    ('open', False)
    """
    by_part = {fault.part: fault for fault in faults}
    if len(by_part) < len(faults):
        raise RepairlibError(
            ", ".join(map(str, faults)), "two faults of one part", "one fault for each part"
        )
    places = {}
    for part in of.parts:
        fault = by_part.get(part.name)
        gone = fault is not None and fault.condition == "gone"
        pads = LIFTED if fault is not None and fault.condition == "pad lifted" else SOUND
        polar = part.circuit is not None and part.circuit.letter == "C"
        stood = polar and fault is not None and fault.condition == "reversed"
        fitted = None if gone else Fitted(fault, strain=1.0 if stood else 0.0)
        places[part.name] = Place(fitted, pads)
    return State(of, seed, places, charges={}, heat={})
