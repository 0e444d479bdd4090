"""Instruments, eyes, nose and finger put to the board: which one, where, and what it shows."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from repairlib.bench import (
    bench_supply,
    capacitance_meter,
    dangers,
    esr_tester,
    looks,
    multimeter,
    oscilloscope,
    thermometer,
)
from repairlib.bench.moves import Move, Told
from repairlib.bench.passing import passing
from repairlib.bench.prices import LENS_SECONDS, METER_TOKENS, SECONDS
from repairlib.bench.state import State
from repairlib.bench.where import ends, has_leg_up, is_loose, part_at
from repairlib.core.errors import RepairlibError

Outcome = tuple[State, Told]
REPLACED = f"Another one is fetched, at {METER_TOKENS:g} tokens."
FUSED_SECONDS = 0.01  # until the meter's own fuse has blown; from memory
INSTRUMENTS = {
    "volts": multimeter.volts,
    "ac volts": multimeter.ac_volts,
    "ohms": multimeter.ohms,
    "diode": multimeter.diode,
    "amps": multimeter.amps,
    "esr": esr_tester.esr,
    "capacitance": capacitance_meter.capacitance,
    "scope": oscilloscope.scope,
}


def probe(state: State, move: Move) -> Outcome:
    """A reading between two points."""
    one, other = _probes(state, move)
    if (struck := dangers.probing(state, one, other)) is not None:
        return struck
    reading = INSTRUMENTS[move.verb](state, one, other, **_settings(move))
    words = f"{said_where(state, move, one, other)}: {reading.shown}"
    if reading.note:
        words += f" ({reading.note})"
    seconds = SECONDS[move.verb] + reading.seconds
    if reading.hurts:
        return dangers.harmed(state, reading.harm, "stored charge")
    if reading.harm:
        told_so = f"{words}. {reading.harm} {REPLACED}"
        told = Told(told_so, reading, seconds, METER_TOKENS, alarm=True)
        return dangers.damaged(state, reading.harm), told
    return state, Told(words, reading, seconds)


def while_shunted(state: State, told: Told) -> Outcome:
    """The time in which an ammeter is a short between its probes, and what gives way by that.

    That is the learner's doing. The meter's own fuse, once it has blown, ends it.
    """
    if state.ended or told.reading is None:
        return state, told
    one, other = told.reading.points
    there = FUSED_SECONDS if told.reading.harm else told.seconds
    state, events = passing(state, there, (multimeter.shunt(one, other),))
    state, later = passing(state, told.seconds - there)
    if not events:
        return state, told
    what = f"The ammeter was a short from {one} to {other}: {events[0]}"
    words = " ".join((told.words.rstrip(".") + ".", what, *events[1:], *later))
    return dangers.damaged(state, what), replace(told, words=words, alarm=True)


def _probes(state: State, move: Move) -> tuple[str, str]:
    """Where the probes go.

    Amps are measured where a part was, not through what was taken out, and between a lifted leg and
    its hole.
    """
    one, other = ends(state, move.at)
    if move.verb != "amps" or not is_loose(state, one):
        return one, other
    part = part_at(state, move.at[0])
    if not has_leg_up(state, move.at[0]):
        return part.nodes
    if part.circuit and part.circuit.letter == "C":
        raise RepairlibError(part.name, "no amps in a capacitor with a leg up", f"ohms {part.name}")
    return other, part.nodes[1]


SETTINGS = {
    "esr": {"hertz": "hertz"},
    "scope": {"volts": "per_division", "seconds": "sweep"},
}  # figures of a move, and what an instrument calls them


def _settings(move: Move) -> dict[str, Any]:
    """What is set on an instrument by hand."""
    named = SETTINGS.get(move.verb, {})
    found: dict[str, Any] = {named[word]: value for word, value in move.figures.items()}
    if move.verb == "scope" and move.words:
        found["coupling"] = move.words
    return found


def said_where(state: State, move: Move, one: str, other: str) -> str:
    """Where the probes are, in words."""
    if is_loose(state, one) and has_leg_up(state, move.at[0]):
        how = "through it, at the lifted leg" if move.verb == "amps" else "alone, one leg up"
        return f"{move.at[0]} {how}"
    if is_loose(state, one):
        return f"the old {part_at(state, move.at[0]).name} on the bench"
    return f"{move.at[0]}, {one} to {other}" if one not in move.at else f"{one} to {other}"


def temperature(state: State, move: Move) -> Outcome:
    """The thermometer at a part."""
    part = part_at(state, move.at[0])
    what = f"The bead went to {part.name}, on the mains side."
    there = part.name if part.mains else ""
    if (struck := dangers.near_mains(state, move.at[0], what, there)) is not None:
        return struck
    reading = thermometer.temperature(state, part.name)
    return state, Told(f"{part.name}: {reading.shown}", reading, SECONDS["temperature"])


def supply(state: State, move: Move) -> Outcome:
    """The display of the bench supply."""
    reading = bench_supply.supply_shows(state)
    return state, Told(f"Bench supply: {reading.shown}", reading, SECONDS["supply"])


def touch(state: State, move: Move) -> Outcome:
    """The back of a finger."""
    after, told = dangers.touching(state, part_at(state, move.at[0]))
    return after, replace(told, seconds=SECONDS["touch"])


def look(state: State, move: Move) -> Outcome:
    """Eyes, with a lens or without."""
    lens = "lens" in move.words
    seconds = SECONDS["look"] + (LENS_SECONDS if lens else 0)
    if not move.at:
        return state, Told(f"{looks.look_over(state, lens)}.", seconds=seconds)
    reading = looks.look(state, part_at(state, move.at[0]).name, lens)
    return state, Told(f"{reading.shown}.", reading, seconds)


def smell(state: State, move: Move) -> Outcome:
    """The nose."""
    seconds = SECONDS["smell"]
    if move.at:
        reading = looks.smell(state, part_at(state, move.at[0]).name)
        return state, Told(f"{reading.shown.capitalize()}.", reading, seconds)
    found = [looks.smell(state, part.name).shown for part in state.set.parts]
    told = next((one for one in found if one != looks.NOTHING), looks.NOTHING)
    return state, Told(f"{told.capitalize()}.", seconds=seconds)
