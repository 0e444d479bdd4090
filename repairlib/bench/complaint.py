"""What the customer says of a set with these faults: what is seen and heard at home.

A set may have a sentence for each kind of symptom. Which kind it is is worked out.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

from repairlib.bench.conditions import Fault, read_faults
from repairlib.bench.electric import FINE_STEPS, Electric, electric
from repairlib.bench.practice_set import PracticeSet, read_set
from repairlib.bench.state import FULL, LIGHT, LINES, OWN_PLUG, Feed, begin

DEAD_BELOW = 0.2  # of its lowest volts, where every rail is
SEED = "customer"
WARMED = 40.0  # K above the room; a choice of this workbook


def told_by(of: PracticeSet, faults: tuple[Fault, ...]) -> PracticeSet:
    """The set, with what its customer says of these faults.

    >>> from repairlib.bench.conditions import read_faults
    >>> from repairlib.bench.practice_set import demo_set
    >>> maker = demo_set("label maker")
    >>> for line in ("F1 blown", "U1 cracked", "R2 wrong value 150 kΩ"):
    ...     print(told_by(maker, read_faults(line, maker)).says)
    It is dead: no display, nothing moves.
    It works for a few minutes, then it stops until it has cooled.
    It does not print as it should.
    """
    kind = _kind(of.text, "; ".join(map(str, faults))) if faults and of.heard else ""
    return replace(of, says=of.heard.get(kind, of.says))


@lru_cache(maxsize=512)
def _kind(text: str, lines: str) -> str:
    of = read_set(text)
    faults = read_faults(lines, of)
    if any(fault.condition == "corrupt" for fault in faults):
        return "corrupt"
    cold = _at(of, faults, FULL)
    if all(cold.mean[rail.point] < DEAD_BELOW * rail.low for rail in of.rails):
        return "dead"
    if _ripples(of, cold):
        return "rippled"
    if _misses(of, cold):
        return "" if _misses(of, _at(of, faults, LIGHT)) else "loaded"
    if _misses(of, _at(of, faults, FULL, warm=True)):
        return "warm"
    return "low" if _misses(of, _at(of, faults, FULL, line=min(LINES))) else ""


def _at(
    of: PracticeSet, faults: tuple[Fault, ...], load: str, warm: bool = False, line: float = 1.0
) -> Electric:
    heat = {part.name: WARMED for part in of.parts} if warm else {}
    state = begin(of, faults, SEED)
    on = replace(state, feed=Feed(OWN_PLUG, line=line), load=load, heat=heat)
    return electric(on, steps=FINE_STEPS)


def _ripples(of: PracticeSet, now: Electric) -> bool:
    return any(
        rail.ripple is not None and now.high[rail.point] - now.low[rail.point] > rail.ripple
        for rail in of.rails
    )


def _misses(of: PracticeSet, now: Electric) -> bool:
    low_or_high = (not rail.low <= now.mean[rail.point] <= rail.high for rail in of.rails)
    return any(low_or_high) or _ripples(of, now)
