"""Instruments, eyes, nose and finger put to the board: which one, where, and what it shows."""

from __future__ import annotations

from dataclasses import replace

from repairlib.bench import dangers, multimeter
from repairlib.bench.moves import Move, Reading, Told
from repairlib.bench.prices import LENS_SECONDS, SECONDS
from repairlib.bench.state import ROOM, State
from repairlib.bench.where import ends, is_loose, part_at

Outcome = tuple[State, Told]


def probe(state: State, move: Move) -> Outcome:
    """A reading between two points."""
    one, other = ends(state, move.at)
    if (struck := dangers.probing(state, one, other)) is not None:
        return struck
    reading = multimeter.volts(state, one, other)
    words = f"{said_where(state, move, one, other)}: {reading.shown}"
    return state, Told(words, reading, SECONDS[move.verb])


def said_where(state: State, move: Move, one: str, other: str) -> str:
    """Where the probes are, in words."""
    if is_loose(state, one):
        return f"the old {part_at(state, move.at[0]).name} on the bench"
    return f"{move.at[0]}, {one} to {other}" if one not in move.at else f"{one} to {other}"


def temperature(state: State, move: Move) -> Outcome:
    """The thermometer at a part."""
    part = part_at(state, move.at[0])
    value = round(ROOM + dict(state.heat).get(part.name, 0.0), 1)
    reading = Reading("thermometer", (part.name, ""), f"{value:.1f} °C", value, "°C")
    return state, Told(f"{part.name}: {reading.shown}", reading, SECONDS["temperature"])


def touch(state: State, move: Move) -> Outcome:
    """The back of a finger."""
    after, told = dangers.touching(state, part_at(state, move.at[0]))
    return after, replace(told, seconds=SECONDS["touch"])


def look(state: State, move: Move) -> Outcome:
    """Eyes, with a lens or without."""
    seconds = SECONDS["look"] + (LENS_SECONDS if "lens" in move.words else 0)
    return state, Told("Nothing stands out.", seconds=seconds)


def smell(state: State, move: Move) -> Outcome:
    """The nose."""
    return state, Told("It smells of nothing.", seconds=SECONDS["smell"])
