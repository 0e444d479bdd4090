"""The parts of a small supply circuit, as people type them: a table with one part on each line.

Its columns are those of the parts around a part (health): part, from, to, value, more. The first
letter of the name says what the part is, `KINDS` lists them. The zero point of the circuit is one
called 0, gnd, ground or 0V. What a circuit may not be stands in checks.py.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from math import sqrt
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity, engineering, read_quantity
from repairlib.health import named_rows

ZERO = "0"
ZERO_NAMES = ("0", "gnd", "ground", "0v")
EXAMPLE = (
    "a table such as: part, from, to, value, more / V1, a, 0, 9 V, 50 Hz 0.5 Ω / "
    "D1, a, rail, 10 nA, n 1.8 / C1, rail, 0, 1000 µF, ESR 50 mΩ / I1, rail, 0, 100 mA, load"
)
_RMS, _PEAK, _DC = "rms", "peak", "dc"


class More(NamedTuple):
    """A figure under `more`: its unit, its range, and what it is when it is not typed."""

    unit: str
    at_least: float
    at_most: float
    otherwise: float | None


class Kind(NamedTuple):
    """A kind of part: its name, the unit and range of its value, and its figures under `more`."""

    name: str
    unit: str
    at_least: float
    at_most: float
    more: dict[str, More]


KINDS = {
    "R": Kind("resistor", "Ω", 1e-6, 1e12, {}),
    "C": Kind("capacitor", "F", 1e-15, 1e3, {"esr": More("Ω", 0, 1e12, 0.0)}),
    "L": Kind("inductor", "H", 1e-12, 1e5, {"winding": More("Ω", 0, 1e12, 0.0)}),
    "V": Kind(
        "voltage source", "V", 1e-6, 1e5,
        {"mains": More("Hz", 1e-3, 1e6, 0.0), "series": More("Ω", 0, 1e9, 0.0)},
    ),
    "I": Kind("current source", "A", 1e-12, 1e4, {}),
    "D": Kind("diode", "A", 1e-30, 10, {"n": More("", 0.5, 5, 1.0)}),
    "P": Kind("bench supply", "V", 1e-3, 1e4, {"limit": More("A", 1e-6, 1e4, None)}),
    "H": Kind(
        "lamp", "Ω", 1e-3, 1e6,
        {"cold": More("Ω", 1e-4, 1e6, None), "rated": More("W", 1e-6, 1e5, None)},
    ),
    "U": Kind(
        "regulator", "V", 1e-3, 1e4,
        {"dropout": More("V", 0, 100, None), "own": More("A", 0, 10, 0.0)},
    ),
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class CircuitPart:
    """A part between two points. `value` in Ω, F, H, V or A, `more` in SI by the names in KINDS.

    The first point is the plus of a source, the anode of a diode, the input of a regulator; a
    current source drives its current from the first point through itself to the second. The value
    of a sine is its r.m.s. A `load` draws its current only while there is voltage across it.
    """

    name: str
    nodes: tuple[str, str]
    value: float
    more: dict[str, float] = field(default_factory=dict)
    load: bool = False

    @property
    def letter(self) -> str:
        """The letter of its kind."""
        return self.name[0].upper()

    @property
    def peak(self) -> float:
        """The highest value of a source: of a sine √2 times its r.m.s."""
        return self.value * sqrt(2) if self.more.get("mains") else self.value

    def __str__(self) -> str:
        kind = KINDS[self.letter]
        said = [str(Quantity(self.value, kind.unit))]
        for name, figure in self.more.items():
            if figure != kind.more[name].otherwise:
                said.append(
                    f"{name.replace('esr', 'ESR')} {Quantity(figure, kind.more[name].unit)}"
                )
        if self.load:
            said.append("load")
        return f"{self.name} from {' to '.join(self.nodes)}: {', '.join(said)}"


def read_circuit(text: str) -> tuple[CircuitPart, ...]:
    """The parts that the table `text` names, in its order.

    Under `more` stand figures with their names or their units, parted by spaces or semicolons:
    the ESR of a capacitor, the winding of an inductor; of a voltage source the frequency (it is
    then a sine, its value r.m.s.) and the resistance in series; n of a diode; the limit of a bench
    supply; cold resistance and rated watts of a lamp, whose value is its hot resistance; dropout
    of a regulator and the current it takes itself; `load` of a current. A resistor has none.
    Raises RepairlibError naming the line.

    >>> typed = "part,from,to,value,more / V1,a,0,9 V rms,50 Hz 0.5 ohm / D1,a,b,10 nA,n 1.8"
    >>> for part in read_circuit(typed):
    ...     print(part)
    V1 from a to 0: 9 V, mains 50 Hz, series 500 mΩ
    D1 from a to b: 10 nA, n 1.8
    """
    return tuple(_read_part(cells, where) for cells, where in named_rows(text, KINDS, EXAMPLE))


def _read_part(cells: dict[str, str], where: str) -> CircuitPart:
    name = cells["part"]
    kind = KINDS[name[0].upper()]
    one, other = (ZERO if point in ZERO_NAMES else point for point in (cells["from"], cells["to"]))
    if one == other:
        raise RepairlibError(name, f"both ends are on the zero point ({where})", "two points")
    if kind.name == "regulator" and ZERO in (one, other):
        wrong = f"its third leg is on the zero point, so neither end is ({where})"
        raise RepairlibError(name, wrong, "input and output")
    where = f"{name}, {where}"
    typed, said = _without_last_word(cells["value"], (_RMS, _PEAK, _DC, "ac"))
    if said and kind.unit != "V":
        raise RepairlibError(cells["value"], f"{said} goes with volts ({where})", EXAMPLE)
    value = read_within(typed, More(kind.unit, kind.at_least, kind.at_most, None), where)
    figures, load = _read_more(cells["more"], kind, where)
    sine = bool(figures.get("mains"))
    if (sine and said == _DC) or (not sine and said in (_RMS, _PEAK, "ac")):
        wrong = f"{said} does not go with {'a frequency' if sine else 'no frequency'} ({where})"
        raise RepairlibError(f"{cells['value']}, {cells['more']}", wrong, "12 V rms with 50 Hz")
    return CircuitPart(name, (one, other), value / (sqrt(2) if said == _PEAK else 1), figures, load)


def _without_last_word(text: str, words: tuple[str, ...]) -> tuple[str, str]:
    """'9 V' and 'rms' of '9 V rms'; the text and "" when none of the words stands last."""
    for word in words:
        if re.search(rf"(?i)[\s\d]V?\s*{word}$", text):
            return text[: -len(word)].rstrip(), word
    return text, ""


def _read_more(text: str, kind: Kind, where: str) -> tuple[dict[str, float], bool]:
    """The figures under `more`, and whether the current is that of a load."""
    figures = {name: more.otherwise for name, more in kind.more.items()}
    load, seen = False, set()
    for piece in _pieces(text, kind):
        if piece.casefold() == "load" and kind.unit == "A" and not kind.more:
            load = True
            continue
        name, figure = _named(piece, kind, where)
        if name in seen:
            raise RepairlibError(text, f"{name} stands twice ({where})", "each figure once")
        seen.add(name)
        figures[name] = read_within(figure, kind.more[name], where)
    missing = [name for name, figure in figures.items() if figure is None]
    if missing:
        due = " and ".join(f"{name} in {kind.more[name].unit}" for name in missing)
        raise RepairlibError(text, f"{due} of the {kind.name} is missing ({where})", EXAMPLE)
    return {name: figure for name, figure in figures.items() if figure is not None}, load


def _pieces(text: str, kind: Kind) -> list[str]:
    """'50 Hz' and 'series 0.5 Ω' of '50 Hz; series 0.5 Ω': a new one begins at a number or name."""
    names = "|".join((*kind.more, "load"))
    found: list[str] = []
    for word in re.split(rf"[;\s]+(?=(?:{names})\b|[-+.]?\d)|;", text, flags=re.IGNORECASE):
        word = word.strip()
        if found and found[-1].casefold() in kind.more:
            found[-1] = f"{found[-1]} {word}"
        elif word:
            found.append(word)
    return found


def _named(piece: str, kind: Kind, where: str) -> tuple[str, str]:
    """The figure that a piece is, and its text: by its name, else by its unit."""
    for name in kind.more:
        rest = piece[len(name) :]
        if piece.casefold().startswith(name) and not rest[:1].isalpha():
            return name, rest.strip(" =:")
    if not kind.more:
        raise RepairlibError(piece, f"a {kind.name} has no such thing ({where})", "an empty cell")
    if len(kind.more) == 1:
        return next(iter(kind.more)), piece
    takes = ", ".join(f"{name} in {more.unit}" for name, more in kind.more.items())
    try:
        unit = read_quantity(piece).unit
    except RepairlibError as problem:
        raise RepairlibError(piece, f"{problem.wrong} ({where})", takes) from None
    for name, more in kind.more.items():
        if unit and more.unit == unit:
            return name, piece
    raise RepairlibError(piece, f"the {kind.name} has no such figure ({where})", takes)


def read_within(text: str, due: More, where: str) -> float:
    """`text` as a number in the unit and range that are due. RepairlibError says where it stands.

    >>> read_within("4k7", KINDS["C"].more["esr"], "line 2")
    4700.0
    """
    try:
        number = read_quantity(text, due.unit or None).value
    except RepairlibError as problem:
        raise RepairlibError(text, f"{problem.wrong} ({where})", problem.accepted) from None
    if not due.at_least <= number <= due.at_most:
        span = f"{engineering(due.at_least, due.unit)} to {engineering(due.at_most, due.unit)}"
        wrong = "zero or negative" if number <= 0 else "out of range"
        raise RepairlibError(text, f"{wrong} ({where})", span)
    return number
