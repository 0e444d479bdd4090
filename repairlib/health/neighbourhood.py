"""The parts around a part, as a learner types them: a table with one part on each line.

Covers resistors, capacitors (with ESR) and inductors (with winding resistance). What a meter
sees between two points is worked out in in_circuit.py.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity, engineering, read_quantity
from repairlib.core.typed.headed import read_headed

UNITS = {"R": "Ω", "C": "F", "L": "H"}
KINDS = {"R": "resistor", "C": "capacitor", "L": "inductor"}
INSIDE = {"C": "ESR", "L": "winding"}  # the name of the resistance inside the part
SMALLEST = {"R": 0.0, "C": 1e-15, "L": 1e-12}
LARGEST = {"R": 1e12, "C": 1e3, "L": 1e5}
MOST_PARTS = 200
PART_COLUMNS = ("part", "from", "to", "value", "more")
NEEDED = PART_COLUMNS[:-1]
NEW_LINE = " / "  # for a table that has to stand on one line
EXAMPLE = "a table such as: part, from, to, value, more / C1, a, b, 100 µF, 5 Ω / R1, a, b, 10 kΩ"
_INSIDE = re.compile(r"(?:esr|winding)\s*(?=[\d.,+-])", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Part:
    """A part between two points of a board, its nodes.

    `value` in Ω, F or H; `series` is the resistance inside, in Ω.
    """

    name: str
    nodes: tuple[str, str]
    value: float
    series: float = 0.0

    @property
    def letter(self) -> str:
        """R, C or L."""
        return self.name[0].upper()

    def __str__(self) -> str:
        inside = f", {INSIDE[self.letter]} {Quantity(self.series, 'Ω')}" if self.series else ""
        value = Quantity(self.value, UNITS[self.letter])
        return f"{self.name} from {' to '.join(self.nodes)}: {value}{inside}"


def read_neighbourhood(text: str) -> tuple[Part, ...]:
    """The parts that the table `text` names, in its order.

    Its headings are `PART_COLUMNS`, in any order: the name of a part (R, C or L first), the two
    points between which it sits, its value, and under `more` the resistance inside it: the ESR of
    a capacitor, that of an inductor's winding. Points with the same name are joined. Lines end at
    a line end or at a stroke between two spaces. Raises RepairlibError naming the line.

    >>> typed = "part,from,to,value,more / R1,a,b,10k, / C2,a,b,100 µF,0.3 ohm"
    >>> for part in read_neighbourhood(typed):
    ...     print(part)
    R1 from a to b: 10 kΩ
    C2 from a to b: 100 µF, ESR 300 mΩ
    """
    if not isinstance(text, str):
        raise RepairlibError(text, "not a text", EXAMPLE)
    table = read_headed(text.replace(NEW_LINE, "\n"), "the table of parts", PART_COLUMNS, NEEDED)
    parts: dict[str, Part] = {}
    for row in table.rows_below():
        where = f"line {row.line}"
        if row.what:
            raise RepairlibError(where, row.why, EXAMPLE)
        part = _read_part(table.by_heading(row, PART_COLUMNS), where)
        if part.name.casefold() in parts:
            raise RepairlibError(part.name, f"stands twice ({where})", "each part once")
        parts[part.name.casefold()] = part
        if len(parts) > MOST_PARTS:
            raise RepairlibError(where, f"more than {MOST_PARTS} parts", "the parts nearby only")
    if not parts:
        raise RepairlibError("the table of parts", "no part was typed", EXAMPLE)
    return tuple(parts.values())


def part_named(parts: tuple[Part, ...], name: str) -> Part:
    """The part of that name. Raises RepairlibError naming those that there are."""
    for part in parts:
        if part.name.casefold() == name.strip().casefold():
            return part
    raise RepairlibError(name, "no such part here", ", ".join(part.name for part in parts))


def _read_part(cells: dict[str, str], where: str) -> Part:
    name, one, other = cells["part"], cells["from"], cells["to"]
    letter = name[:1].upper()
    if letter not in UNITS:
        raise RepairlibError(name, f"begins with neither R, C nor L ({where})", EXAMPLE)
    if not one or not other:
        raise RepairlibError(name, f"two points are due, from and to ({where})", EXAMPLE)
    if one.casefold() == other.casefold():
        raise RepairlibError(name, f"both ends are on point {one} ({where})", "two points")
    smallest, largest = SMALLEST[letter], LARGEST[letter]
    number = _read_value(cells["value"], UNITS[letter], smallest, largest, f"{name}, {where}")
    series, more = 0.0, cells["more"]
    if more and letter not in INSIDE:
        raise RepairlibError(more, f"a resistor has nothing more ({where})", "an empty cell")
    if more:
        ohms = _INSIDE.sub("", more, count=1)
        series = _read_value(ohms, "Ω", 0.0, LARGEST["R"], f"{name}, {where}")
    return Part(name, (one.casefold(), other.casefold()), number, series)


def _read_value(text: str, unit: str, smallest: float, largest: float, where: str) -> float:
    try:
        number = read_quantity(text, unit).value
    except RepairlibError as problem:
        raise RepairlibError(text, f"{problem.wrong} ({where})", problem.accepted) from None
    if not smallest <= number <= largest:
        span = f"{engineering(smallest, unit)} to {engineering(largest, unit)}"
        raise RepairlibError(text, f"out of range ({where})", span)
    return number
