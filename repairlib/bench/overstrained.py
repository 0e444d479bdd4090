"""What becomes of parts above their rating or the wrong way round while time goes by."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import inf

from repairlib.bench import dangers
from repairlib.bench.board_part import BoardPart
from repairlib.bench.conditions import Fault
from repairlib.bench.electric import electric, is_used_to_it, may_be_strained, volts_at
from repairlib.bench.state import LIFTED, Fitted, State
from repairlib.bench.strain import (
    CERAMIC,
    REGULATOR,
    TANTALUM,
    WET,
    family_of,
    seconds_against,
    seconds_borne,
)
from repairlib.circuits import CircuitPart

BURST_WITH_A_BANG = "{} swelled and burst with a bang."
FIRE_AMPS = 0.5  # through a shorted tantalum, with which it burns; a choice of this workbook
BECOMES = {
    WET: ("burst", BURST_WITH_A_BANG),
    TANTALUM: ("short", "{} smoked and is a short now: a chip tantalum ends so."),
    CERAMIC: ("short", "{} cracked and smoked: far above its rating it is a short now."),
    REGULATOR: ("open", "{} smoked: it got what no regulator bears."),
}
FLARED = "{} smoked, flared up and burnt: a chip tantalum above its rating or the wrong way round."


def strained(
    state: State, seconds: float, extra: tuple[CircuitPart, ...] = ()
) -> tuple[State, tuple[str, ...]]:
    """The state after so many seconds of what stands at each part now, and what it told.

    `extra` is what an instrument puts across the board. What could hurt somebody ends the attempt.

    >>> from repairlib.bench.practice_set import demo_set
    >>> from repairlib.bench.state import SUPPLY, Feed, begin
    >>> on = replace(begin(demo_set("network switch"), (), ""), feed=Feed(SUPPLY, 14.0, 0.3))
    >>> strained(on, 60.0)[1]
    ()
    """
    told: list[str] = []
    for part, borne in list(_over(state, extra)):
        fitted = state.places[part.name].fitted or Fitted()
        strain = float(f"{min(fitted.strain + seconds / borne, 1.0):.9g}")
        family = family_of(part)
        state = state.with_place(part.name, fitted=replace(fitted, strain=strain))
        if strain < 1.0 or family not in BECOMES:
            continue
        becomes, words = BECOMES[family]
        ended = replace(fitted, strain=strain, fault=Fault(part.name, becomes))
        state = state.with_place(part.name, fitted=ended)
        if family == WET:
            state, ending = dangers.harmed(state, words.format(part.name), "flying leads and eyes")
            return state, (*told, ending.words)
        if family == TANTALUM and electric(state, extra).rms(f"R of {part.name}") > FIRE_AMPS:
            state, ending = dangers.harmed(state, FLARED.format(part.name), "heat and fire")
            return state, (*told, ending.words)
        told.append(words.format(part.name))
        state = dangers.damaged(state, told[-1])
    return state, tuple(told)


def _over(state: State, extra: tuple[CircuitPart, ...]) -> Iterator[tuple[BoardPart, float]]:
    """Each part that does not bear for ever what stands at it now, and how long it does."""
    doubtful = [part for part in state.set.parts if _may_suffer(state, part)]
    now = electric(state, extra) if doubtful else None
    for part in doubtful:
        fitted = state.places[part.name].fitted
        if fitted is None or now is None:
            continue
        way = seconds_against if _stands_reversed(fitted) else seconds_borne
        borne = way(part, fitted.rated, volts_at(part, now))
        if borne < inf:
            yield part, borne


def _may_suffer(state: State, part: BoardPart) -> bool:
    place = state.places[part.name]
    if place.fitted is None or not _stands_reversed(place.fitted):
        return may_be_strained(state, part)
    return place.pads != LIFTED and not is_used_to_it(state, place.fitted)


def _stands_reversed(fitted: Fitted) -> bool:
    return fitted.fault is not None and fitted.fault.condition == "reversed"
