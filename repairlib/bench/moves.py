"""A move at the practice board, and what is told after it."""

from __future__ import annotations

from dataclasses import dataclass, field

VERBS = (
    "look", "smell", "touch", "plug in", "unplug", "line", "load", "wait", "discharge", "clip",
    "volts", "ac volts", "ohms", "diode", "amps", "esr", "capacitance", "scope", "temperature",
    "supply", "lift", "take out", "clean", "fit", "resolder", "bridge", "read chip", "write chip",
    "write", "hand on", "hand back", "give up",
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
class Trace:
    """The screen of an oscilloscope: what it drew from left to right, in `LEVELS` of its height.

    Level 0 is its lower edge; the line of 0 V, or of the mean when it is coupled for ac, stands at
    level `zero`. `per_division` in V, `sweep` in s for a division; 8 divisions high, 10 wide.
    `mean` in V, `hertz` of the main wave, 0 where there is none.
    """

    levels: tuple[int, ...]
    zero: int
    per_division: float
    sweep: float
    coupling: str
    mean: float
    hertz: float = 0.0


@dataclass(frozen=True, slots=True)
class Reading:
    """What an instrument shows: `shown` as on its display, `value` in `unit` (None for OL, dashes).

    `points` are where its probes were, of eyes and nose the part and "". `range` is the one it
    chose. The true figure, the instrument's own load included, lies within `error` of the value.
    `seconds` is how long it took to settle. `harm` is one sentence where the instrument was
    damaged or worse, and `hurts` whether a person could be hurt too.
    """

    instrument: str
    points: tuple[str, str]
    shown: str
    value: float | None
    unit: str
    note: str = ""
    range: str = ""
    error: float = 0.0
    seconds: float = 0.0
    harm: str = ""
    hurts: bool = False
    trace: Trace | None = None


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
