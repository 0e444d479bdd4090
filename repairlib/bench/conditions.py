"""What can be wrong with a part, as a line such as `C1 dried out to 30 %, ESR x 8`.

Each condition says to which parts it can happen, which figures it takes, and what it makes of the
part in the circuit. What a figure is when it is not typed stands beside it.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, field, replace
from typing import NamedTuple

from repairlib.bench.practice_set import BoardPart, PracticeSet
from repairlib.circuits import CircuitPart
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import read_quantity

OPEN_OHM, SHORT_OHM = 1e8, 1e-2  # what is left of a part that is open, or shorted
REVERSED_OHM = 30.0  # of an electrolytic the wrong way round; a choice of this workbook


@dataclass(frozen=True)
class Fault:
    """One condition of one part; `figures` in SI units, shares as 0.3 for 30 %.

    >>> print(Fault("C1", "dried out", {"to": 0.3, "esr": 8.0}))
    C1 dried out to 30 %, ESR x 8
    """

    part: str
    condition: str
    figures: dict[str, float] = field(default_factory=dict)

    def __str__(self) -> str:
        kind = CONDITIONS[self.condition]
        said = ", ".join(
            figure.say(self.figures[name])
            for name, figure in kind.figures.items()
            if name in self.figures
        )
        return f"{self.part} {self.condition} {said}".strip()


class Figure(NamedTuple):
    """A figure of a condition: the words before it, its unit, range, and what it is if not said."""

    word: str
    unit: str
    low: float
    high: float
    usual: float

    def say(self, value: float) -> str:
        """The figure as it is typed."""
        if self.unit == "%":
            return f"{self.word} {value * 100:g} %"
        if self.unit == "x":
            return f"{self.word} x {value:g}"
        return f"{self.word} {value:g} {self.unit}".strip()


Effect = Callable[[CircuitPart, dict[str, float], bool], tuple[CircuitPart, ...]]


class Condition(NamedTuple):
    """A kind of condition: to which letters of a circuit it happens, its figures, its effect.

    The effect takes the sound part, the figures and whether it is warm.
    """

    letters: str
    figures: dict[str, Figure]
    effect: Effect


def _resistor(part: CircuitPart, ohm: float, nodes=None) -> CircuitPart:
    return CircuitPart(f"R beside {part.name}", nodes or part.nodes, ohm)


def _dried(part, figures, warm):
    more = {"esr": max(part.more["esr"], 0.01) * figures["esr"]}
    return (replace(part, value=part.value * figures["to"], more=more),)


def _leaks(part, figures, warm):
    return (part, _resistor(part, figures["ohm"]))


def _open(part, figures, warm):
    return (CircuitPart(f"R of {part.name}", part.nodes, OPEN_OHM),)


def _short(part, figures, warm):
    return (CircuitPart(f"R of {part.name}", part.nodes, SHORT_OHM),)


def _wrong(part, figures, warm):
    return (replace(part, value=figures["value"]),)


def _reversed(part, figures, warm):
    if part.letter == "D":
        return (replace(part, nodes=part.nodes[::-1]),)
    return (part, _resistor(part, REVERSED_OHM))


def _in_series(part: CircuitPart, ohm: float) -> tuple[CircuitPart, ...]:
    inside = f"inside {part.name.casefold()}"
    first = CircuitPart(f"R beside {part.name}", (part.nodes[0], inside), ohm)
    return (first, replace(part, nodes=(inside, part.nodes[1])))


def _cracked(part, figures, warm):
    return _in_series(part, OPEN_OHM if warm else figures["cold"])


def _worn(part, figures, warm):
    return _in_series(part, figures["ohm"])


def _gives(part, figures, warm):
    return (replace(part, value=figures["volts"]),)


def _gone(part, figures, warm):
    return ()


def _as_it_is(part, figures, warm):
    return (part,)


OHM = Figure("", "Ω", 1e-3, 1e9, 50.0)
CONDITIONS = {
    "dried out": Condition(
        "C",
        {
            "to": Figure("to", "%", 0.01, 1.0, 0.3),
            "esr": Figure("ESR", "x", 1.0, 1000.0, 8.0),
        },
        _dried,
    ),
    "leaks": Condition("CD", {"ohm": OHM}, _leaks),
    "open": Condition("RCLDIHUV", {}, _open),
    "short": Condition("RCLDIU", {}, _short),
    "blown": Condition("R", {}, _open),
    "wrong value": Condition("RC", {"value": Figure("", "", 1e-12, 1e9, 1e3)}, _wrong),
    "reversed": Condition("CD", {}, _reversed),
    "cracked": Condition("RCLDIUV", {"cold": Figure("", "Ω", 0.0, 1e6, 0.05)}, _cracked),
    "worn": Condition("RLV", {"ohm": Figure("", "Ω", 1e-3, 1e6, 8.0)}, _worn),
    "pad lifted": Condition("RCLDIUV", {}, _open),
    "gives": Condition("U", {"volts": Figure("", "V", 1e-3, 1e4, 7.0)}, _gives),
    "gone": Condition("RCLDIU", {}, _gone),
    "corrupt": Condition("", {}, _as_it_is),
}
FIGURES = re.compile(r"[,;]\s*|\s+(?=ESR\b|to\b)")


def read_fault(text: str, of: PracticeSet) -> Fault:
    """The fault that `text` names, on a part of the set.

    Raises RepairlibError for a part that is not there, a condition that is not known or cannot
    happen to that part, and figures that cannot be read.

    >>> from repairlib.bench.practice_set import demo_set
    >>> print(read_fault("c1 dried out to 20 %, ESR x 12", demo_set("desk radio")))
    C1 dried out to 20 %, ESR x 12
    """
    name, _, rest = " ".join(text.split()).partition(" ")
    part = of.part(name.rstrip(":"))
    condition = next((one for one in CONDITIONS if rest.casefold().startswith(one)), None)
    if condition is None:
        raise RepairlibError(text, "no condition known here", ", ".join(CONDITIONS))
    return Fault(part.name, condition, _figures(rest[len(condition) :], condition, part, text))


def _figures(text: str, condition: str, part: BoardPart, whole: str) -> dict[str, float]:
    kind = CONDITIONS[condition]
    letter = part.circuit.letter if part.circuit else ""
    if letter not in kind.letters or (not letter and kind.letters):
        raise RepairlibError(whole, f"this does not happen to a {part.what}", "another condition")
    found = {}
    for piece in (one.strip() for one in FIGURES.split(text) if one.strip()):
        name = next((n for n, f in kind.figures.items() if piece.startswith(f.word)), None)
        if name is None or name in found:
            raise RepairlibError(whole, f"{piece} does not belong there", _due(kind))
        found[name] = _number(piece, kind.figures[name], letter, whole)
    return {name: found.get(name, figure.usual) for name, figure in kind.figures.items()}


def _number(piece: str, figure: Figure, letter: str, whole: str) -> float:
    typed = piece[len(figure.word) :].strip().lstrip("x×").strip()
    if figure.unit == "%":
        number = float(typed.rstrip("% ")) / 100
    elif figure.unit == "x":
        number = float(typed)
    else:
        unit = figure.unit or {"R": "Ω", "C": "F"}[letter]
        number = read_quantity(typed, unit).value
    if not figure.low <= number <= figure.high:
        raise RepairlibError(
            whole, f"{piece} is out of range", f"{figure.low:g} to {figure.high:g}"
        )
    return number


def _due(kind: Condition) -> str:
    return ", ".join(one.say(one.usual) for one in kind.figures.values()) or "no figure"


def as_it_acts(part: CircuitPart, fault: Fault | None, warm: bool = False):
    """The parts of the circuit that a part with that fault comes to, none where it is gone."""
    if fault is None:
        return (part,)
    return CONDITIONS[fault.condition].effect(part, fault.figures, warm)
