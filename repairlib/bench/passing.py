"""What time does to the board: capacitors empty, parts warm and cool, and some do not bear it.

Time goes by in slices; in each the currents are those of the settled circuit. After each, what is
warm by then may open a crack, and what is too hot fails. How hot each kind bears is from memory:
the electrolyte of a capacitor boils at some 130 °C, a regulator dies at some 175 °C, a diode at
some 220 °C, a film resistor burns at about 250 °C, a winding at 150 °C. What came faulty with the
set has stood so far what the set does to it, and stands it here too: that is a choice of this
workbook. Its electrolyte boils all the same, and holds it at that heat.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import ceil
from typing import NamedTuple

from repairlib.bench import dangers
from repairlib.bench.board_part import AS_RESISTOR, BoardPart
from repairlib.bench.conditions import Fault
from repairlib.bench.discharging import left_after
from repairlib.bench.electric import come_up, holds, is_used_to_it
from repairlib.bench.fuse_load import overloads
from repairlib.bench.overstrained import BURST_WITH_A_BANG, strained
from repairlib.bench.state import Fitted, State
from repairlib.bench.strain import WET, family_of
from repairlib.bench.warming import warmed, watts, ways_of
from repairlib.circuits import CircuitPart

SLICE, MOST_SLICES = 5.0, 60  # s of a slice, unless there would be too many; choices


class Failure(NamedTuple):
    """How many K above the room a kind of part bears, what becomes of it, and what is told.

    `hazard` is the key of core.safety that strikes; with one the attempt ends.
    """

    bears: float
    becomes: str
    told: str
    hazard: str = ""


BURSTS = Failure(110.0, "burst", BURST_WITH_A_BANG, "flying leads and eyes")
HISSES = "{} hisses: its electrolyte boils, and steam comes out of its vent."
SILICON_SHORT = Failure(200.0, "short", "{} smoked: it was too hot for too long.")
SILICON_OPEN = Failure(153.0, "open", SILICON_SHORT.told)
CHARRED = Failure(230.0, "open", "{} charred and smoked: it was too hot for too long.")
WINDING = Failure(130.0, "open", "{} smoked: its winding burnt.", "heat and fire")


def passing(
    state: State, seconds: float, extra: tuple[CircuitPart, ...] = ()
) -> tuple[State, tuple[str, ...]]:
    """The state so many seconds later, and what happened meanwhile, in sentences.

    `extra` is what is held across the board. A fuse blows when its current is too much;
    each thing that fails is in `harm` of the state, and what could hurt somebody ends the attempt.

    >>> from repairlib.bench.conditions import read_faults
    >>> from repairlib.bench.practice_set import demo_set
    >>> from repairlib.bench.state import OWN_PLUG, Feed, begin
    >>> maker = demo_set("label maker")
    >>> state = replace(begin(maker, read_faults("D2 short", maker), ""), feed=Feed(OWN_PLUG))
    >>> passing(state, 10.0)[1]
    ('F1 flashed up: it has blown.',)
    """
    if state.ended or seconds <= 0:
        return state, ()
    if not state.powered:
        heat = warmed(ways_of(state.set), state.heat, {}, seconds) if state.heat else {}
        return replace(state.as_warm(heat), charges=left_after(state, seconds, extra)), ()
    events: list[str] = []
    state = come_up(state, seconds, extra)
    slices = min(ceil(seconds / SLICE), MOST_SLICES)
    ways, now, flows = ways_of(state.set), None, dict[str, float]()
    before = state
    for gone in range(slices):
        state, struck = strained(state, seconds / slices, extra)
        events += struck
        if state.ended:
            return state, tuple(events)
        if now != _hangs_on(state):
            left = seconds * (1 - gone / slices)
            if now is not None:
                state = come_up(replace(state, charges=holds(before, extra)), left, extra)
            if blown := [name for name, _, _ in overloads(state, extra)]:
                held = holds(state, extra)
                for name in blown:
                    told = f"{name} flashed up: it has blown."
                    state = _failed(state, name, "blown")
                    if not is_used_to_it(state, Fitted()):
                        state = dangers.damaged(state, told)
                    events.append(told)
                state = come_up(replace(state, charges=held), left, extra)
            now, flows = _hangs_on(state), watts(state, extra)
        before = state
        heat, boiling = _held_by_boiling(state, warmed(ways, state.heat, flows, seconds / slices))
        events += [HISSES.format(name) for name in boiling if not _boils(state, name)]
        state = state.as_warm(heat)
        for name, failure in _too_hot(state):
            told = failure.told.format(name)
            state = _failed(state, name, failure.becomes)
            if failure.hazard:
                state, ending = dangers.harmed(state, told, failure.hazard)
                return state, (*events, ending.words)
            state = dangers.damaged(state, told)
            events.append(told)
    return state, tuple(events)


def _hangs_on(state: State) -> tuple:
    """What the currents hang on that may change while time goes by."""
    faults = [place.fitted and place.fitted.fault for place in state.places.values()]
    return faults, [name for name in state.places if state.warm(name)]


def _failed(state: State, name: str, condition: str) -> State:
    fitted = state.place(name).fitted or Fitted()
    return state.with_place(name, fitted=replace(fitted, fault=Fault(name, condition)))


def _held_by_boiling(
    state: State, heat: dict[str, float]
) -> tuple[dict[str, float], tuple[str, ...]]:
    """The heat where what boils grows no hotter, and the capacitors that boil."""
    boiling = tuple(
        part.name
        for part in state.set.parts
        if family_of(part) == WET
        and heat.get(part.name, 0.0) > BURSTS.bears
        and not _bursts(state, state.places[part.name].fitted)
    )
    return heat | dict.fromkeys(boiling, BURSTS.bears), boiling


def _boils(state: State, name: str) -> bool:
    return dict(state.heat).get(name, 0.0) >= BURSTS.bears


def _bursts(state: State, fitted: Fitted | None) -> bool:
    return fitted is not None and not (fitted.fault and is_used_to_it(state, fitted))


def _too_hot(state: State) -> Iterator[tuple[str, Failure]]:
    """Each part that does not bear how hot it is."""
    heat = dict(state.heat)
    for part in state.set.parts:
        fitted = state.places[part.name].fitted
        if fitted is None or (fitted.fault and is_used_to_it(state, fitted)):
            continue
        failure = _failure_of(part, fitted)
        if failure is not None and heat.get(part.name, 0.0) > failure.bears:
            yield part.name, failure


def _failure_of(part: BoardPart, fitted: Fitted) -> Failure | None:
    """What too much heat does to a part as it is fitted; None where nothing more happens."""
    letter = part.circuit.letter if part.circuit else ""
    if letter == "C" and part.plus is not None:
        found: Failure | None = BURSTS
    elif letter == "R":
        found = None if part.what in AS_RESISTOR else CHARRED
    else:
        found = {"D": SILICON_SHORT, "U": SILICON_OPEN, "V": WINDING}.get(letter)
    if found is None or (fitted.fault and fitted.fault.condition == found.becomes):
        return None
    return found
