"""What can be wrong with a part, as a line such as `C1 dried out to 30 %, ESR x 8`.

Each condition says to which parts it can happen, which figures it takes, and what it makes of the
part in the circuit. What a figure is when it is not typed stands beside it.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, field, replace
from typing import NamedTuple

from repairlib.bench.board_part import CONTACTS, FUSES, BoardPart, number
from repairlib.bench.practice_set import PracticeSet
from repairlib.bench.strain import WET, paths_against
from repairlib.circuits import CircuitPart
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import engineering, read_quantity

OPEN_OHM, SHORT_OHM = 1e8, 1e-2  # what is left of a part that is open, or shorted


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
            figure.say(self.figures[name], "F" if self.part[:1] in "Cc" else "Ω")
            for name, figure in kind.figures.items()
            if name in self.figures
        )
        return f"{self.part} {self.condition} {said}".strip()


class Figure(NamedTuple):
    """A figure of a condition: the words before it, its unit, range, and what it is if not said.

    The unit is %, x, one of SI, or "" for that of the part. `usual` is None where it must be said.
    """

    word: str
    unit: str
    low: float
    high: float
    usual: float | None

    def say(self, value: float, own: str = "Ω") -> str:
        """The figure as it is typed; `own` is the unit of the part."""
        if self.unit == "%":
            said = f"{value * 100:g} %"
        elif self.unit == "x":
            said = f"x {value:g}"
        else:
            said = engineering(value, self.unit or own).replace("\u00a0", " ")
        return f"{self.word} {said}".strip()


Effect = Callable[[CircuitPart, dict[str, float], bool], tuple[CircuitPart, ...]]


class Condition(NamedTuple):
    """A kind of condition: to which letters of a circuit it happens, its figures, its effect.

    The effect takes the sound part, the figures and whether it is warm. `only` are the kinds of
    part, as under `is`, that it happens to; all where it is empty.
    """

    letters: str
    figures: dict[str, Figure]
    effect: Effect
    only: tuple[str, ...] = ()


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
    if part.letter == "U":  # with its legs swapped nothing comes out of it
        return _open(part, figures, warm)
    return (part, *paths_against(part))


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


DIVIDER_OHM = 10e3  # 5 to 20 kΩ are usual, from memory
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
    "open": Condition("RCLDIHUVP", {}, _open),
    "short": Condition("RCLDIU", {}, _short),
    "blown": Condition("R", {}, _open, FUSES),
    "wrong value": Condition("RC", {"value": Figure("", "", 1e-12, 1e9, None)}, _wrong),
    "reversed": Condition("CD", {}, _reversed),
    "cracked": Condition("RCLDIUV", {"cold": Figure("", "Ω", 1e-3, 1e6, 0.05)}, _cracked),
    "worn": Condition("R", {"ohm": Figure("", "Ω", 1e-3, 1e6, 8.0)}, _worn, CONTACTS),
    "pad lifted": Condition("RCLDIUV", {}, _open),
    "gives": Condition("U", {"volts": Figure("", "V", 1e-3, 1e4, None)}, _gives),
    "gone": Condition("RCLDIU", {}, _gone),
    "burst": Condition("C", {}, _open),
    "corrupt": Condition("", {}, _as_it_is),
}
FIGURES = re.compile(r"[,;]\s*|\s+(?=ESR\b|to\b)", re.IGNORECASE)
LONGEST_FAULT = 200
EXAMPLE = "C1 dried out to 30 %, ESR x 8"


def read_fault(text: str, of: PracticeSet) -> Fault:
    """The fault that `text` names, on a part of the set.

    Raises RepairlibError for a part that is not there, a condition that is not known or cannot
    happen to that part, and figures that cannot be read.

    >>> from repairlib.bench.practice_set import demo_set
    >>> print(read_fault("c1 dried out to 20 %, ESR x 12", demo_set("desk radio")))
    C1 dried out to 20 %, ESR x 12
    """
    if not isinstance(text, str) or not text.strip() or len(text) > LONGEST_FAULT:
        raise RepairlibError(text, "not a fault in one line", EXAMPLE)
    name, _, rest = " ".join(text.split()).partition(" ")
    part = of.part(name.rstrip(":"))
    condition = next((one for one in CONDITIONS if _begins(rest, one)), None)
    if condition is None:
        raise RepairlibError(text, "no condition known here", ", ".join(CONDITIONS))
    return Fault(part.name, condition, _figures(rest[len(condition) :], condition, part, text))


def read_faults(text: str, of: PracticeSet) -> tuple[Fault, ...]:
    """Several faults, parted by semicolons: `D1 short; F1 blown`. Raises RepairlibError.

    >>> from repairlib.bench.practice_set import demo_set
    >>> [one.part for one in read_faults("D1 short; F1 blown", demo_set("desk radio"))]
    ['D1', 'F1']
    """
    faults = tuple(read_fault(one, of) for one in text.split(";"))
    if len({fault.part for fault in faults}) < len(faults):
        raise RepairlibError(text, "two faults of one part", "one fault for each part")
    return faults


def _begins(rest: str, condition: str) -> bool:
    return rest.casefold().startswith(condition) and not rest[len(condition) :][:1].isalnum()


def _figures(text: str, condition: str, part: BoardPart, whole: str) -> dict[str, float]:
    kind = CONDITIONS[condition]
    letter = part.circuit.letter if part.circuit else ""
    if not happens(kind, letter, part):
        may = [name for name, one in CONDITIONS.items() if happens(one, letter, part)]
        raise RepairlibError(whole, f"this does not happen to the part {part.what}", ", ".join(may))
    found = {}
    for piece in (one.strip() for one in FIGURES.split(text) if one.strip()):
        said = piece.casefold()
        name = next(
            (n for n, f in kind.figures.items() if said.startswith(f.word.casefold())), None
        )
        if name is None or name in found:
            raise RepairlibError(whole, f"{piece} does not belong there", _due(kind, letter))
        found[name] = _number(piece, kind.figures[name], letter, whole)
    for name, figure in kind.figures.items():
        if name not in found and figure.usual is None:
            raise RepairlibError(whole, "its figure is missing", _due(kind, letter))
    return {name: found.get(name, figure.usual or 0.0) for name, figure in kind.figures.items()}


def happens(kind: Condition, letter: str, part: BoardPart) -> bool:
    """Whether that condition can happen to a part, `letter` being that of its circuit."""
    if kind.only and part.what not in kind.only:
        return False
    own_value = part.circuit is not None and part.circuit.name == part.name
    if any(not figure.unit for figure in kind.figures.values()) and not own_value:
        return False
    return letter in kind.letters if letter else not kind.letters


def _number(piece: str, figure: Figure, letter: str, whole: str) -> float:
    typed = piece[len(figure.word) :].strip()
    if figure.unit in ("%", "x"):
        share = 100 if figure.unit == "%" else 1
        plain = typed.rstrip("% ") if figure.unit == "%" else typed.lstrip("xX× ")
        return number(plain, whole, figure.unit, figure.high * share, figure.low * share) / share
    try:
        found = read_quantity(typed, figure.unit or UNITS_OF[letter]).value
    except RepairlibError as problem:
        raise RepairlibError(piece, f"{problem.wrong} ({whole})", problem.accepted) from None
    if not figure.low <= found <= figure.high:
        raise RepairlibError(
            whole, f"{piece} is out of range", f"{figure.low:g} to {figure.high:g}"
        )
    return found


UNITS_OF = {"R": "Ω", "C": "F"}


def _due(kind: Condition, letter: str) -> str:
    def example(figure: Figure) -> float:
        return figure.usual or {"C": 1e-6, "R": 1e3}.get(letter, 4.0)

    said = (one.say(example(one), UNITS_OF.get(letter, "Ω")) for one in kind.figures.values())
    return ", ".join(said) or "no figure"


def as_it_acts(
    part: CircuitPart, fault: Fault | None, warm: bool = False, family: str = WET
) -> tuple[CircuitPart, ...]:
    """The parts of the circuit that a part with that fault comes to, none where it is gone.

    `family` is that of a capacitor (strain.py): what it lets through the wrong way round.
    """
    if fault is None:
        acts: tuple[CircuitPart, ...] = (part,)
    elif fault.condition == "reversed" and part.letter == "C":
        acts = (part, *paths_against(part, family))
    else:
        acts = CONDITIONS[fault.condition].effect(part, fault.figures, warm)
    return (*acts, *(_divider(one) for one in acts if one.letter == "U"))


def _divider(regulator: CircuitPart) -> CircuitPart:
    """What a regulator has between its output and zero, by which it measures itself."""
    return CircuitPart(f"R inside {regulator.name}", (regulator.nodes[1], "0"), DIVIDER_OHM)
