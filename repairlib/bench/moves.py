"""A move at the practice board, and what is told after it."""

from __future__ import annotations

from dataclasses import dataclass, field

VERBS = (
    "look", "smell", "touch", "plug in", "unplug", "line", "load", "wait", "discharge", "clip",
    "volts", "ac volts", "ohms", "diode", "amps", "esr", "capacitance", "scope", "temperature",
    "take out", "clean", "fit", "resolder", "bridge", "read chip", "write chip", "write",
    "hand on", "hand back", "give up",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Move:
    """One thing done: its verb out of VERBS, at which part or points, and with what.

    `at` are names of parts or points as typed; `figures` in SI units (V, A, Ω, F, s, °C); `words`
    what is written on the job card, or the way round ("as marked", "turned").
    """

    verb: str
    at: tuple[str, ...] = ()
    figures: dict[str, float] = field(default_factory=dict)
    words: str = ""


@dataclass(frozen=True, slots=True)
class Reading:
    """What an instrument shows: `shown` as on its display, `value` in `unit` (None for OL, dashes).

    `instrument` and `range` as in the room instruments; `points` where its probes were.
    """

    instrument: str
    points: tuple[str, str]
    shown: str
    value: float | None
    unit: str
    note: str = ""


@dataclass(frozen=True, slots=True)
class Told:
    """What is told after a move: in words, with the reading where one was taken.

    `seconds` and `tokens` is what the move took. `alarm` marks a consequence that hurts.
    """

    words: str
    reading: Reading | None = None
    seconds: float = 0.0
    tokens: float = 0.0
    alarm: bool = False
