"""Instruments, eyes, nose and finger put to the board: which one, where, and what it shows."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from repairlib.bench import (
    capacitance_meter,
    dangers,
    esr_tester,
    looks,
    multimeter,
    oscilloscope,
    thermometer,
)
from repairlib.bench.moves import Move, Reading, Told
from repairlib.bench.prices import LENS_SECONDS, METER_TOKENS, SECONDS
from repairlib.bench.state import State
from repairlib.bench.where import ends, is_loose, part_at

Outcome = tuple[State, Told]
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
        told = Told(f"{words}. {reading.harm}", reading, seconds, METER_TOKENS, alarm=True)
        return dangers.damaged(state, reading.harm), told
    return state, Told(words, reading, seconds)


def _probes(state: State, move: Move) -> tuple[str, str]:
    """Where the probes go: amps are measured where a part was, not through what was taken out."""
    one, other = ends(state, move.at)
    if move.verb == "amps" and is_loose(state, one):
        return part_at(state, move.at[0]).nodes
    return one, other


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
    if is_loose(state, one):
        return f"the old {part_at(state, move.at[0]).name} on the bench"
    return f"{move.at[0]}, {one} to {other}" if one not in move.at else f"{one} to {other}"


def temperature(state: State, move: Move) -> Outcome:
    """The thermometer at a part."""
    part = part_at(state, move.at[0])
    reading = thermometer.temperature(state, part.name)
    return state, Told(f"{part.name}: {reading.shown}", reading, SECONDS["temperature"])


def touch(state: State, move: Move) -> Outcome:
    """The back of a finger."""
    after, told = dangers.touching(state, part_at(state, move.at[0]))
    return after, replace(told, seconds=SECONDS["touch"])


def look(state: State, move: Move) -> Outcome:
    """Eyes, with a lens or without."""
    lens = "lens" in move.words
    seconds = SECONDS["look"] + (LENS_SECONDS if lens else 0)
    return state, _told([looks.look(state, name, lens) for name in _parts(state, move)], seconds)


def smell(state: State, move: Move) -> Outcome:
    """The nose."""
    found = [looks.smell(state, name) for name in _parts(state, move)]
    if not move.at:
        found = [one for one in found if one.shown != looks.NOTHING] or found[:1]
    return state, _told(found, SECONDS["smell"])


def _parts(state: State, move: Move) -> list[str]:
    """The parts that are looked at: all of the board where none is named."""
    if move.at:
        return [part_at(state, name).name for name in move.at]
    return [part.name for part in state.set.parts]


def _told(found: list[Reading], seconds: float) -> Told:
    reading = found[0] if len(found) == 1 else None
    return Told(". ".join(one.shown for one in found) + ".", reading, seconds)
