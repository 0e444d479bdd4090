"""The parts around a part, as a learner types them: a table with one part on each line.

Covers resistors, capacitors (with ESR) and inductors (with winding resistance). What a meter
sees between two points is worked out in in_circuit.py.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
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
    rows = named_rows(text, UNITS, EXAMPLE)
    return tuple(_read_part(cells, where) for cells, where in rows)


def named_rows(text: str, letters: Iterable[str], example: str) -> Iterator[tuple[dict, str]]:
    """The cells of each line of a table of parts by their column, and in words where it stands.

    Each name begins with one of `letters` and stands once; its two points, in small letters, are
    two. `example` says what would be accepted. Raises RepairlibError naming the line.

    >>> typed = "part,from,to,value / R1,A,b,10k"
    >>> next(named_rows(typed, "RCL", "a table"))[0]["from"]
    'a'
    """
    if not isinstance(text, str):
        raise RepairlibError(text, "not a text", example)
    table = read_headed(text.replace(NEW_LINE, "\n"), "the table of parts", PART_COLUMNS, NEEDED)
    names: set[str] = set()
    for row in table.rows_below():
        where = f"line {row.line}"
        if row.what:
            raise RepairlibError(where, row.why, example)
        cells = table.by_heading(row, PART_COLUMNS)
        _check_ends(cells, where, tuple(letters), example)
        name = cells["part"]
        if name.casefold() in names:
            raise RepairlibError(name, f"stands twice ({where})", "each part once")
        names.add(name.casefold())
        if len(names) > MOST_PARTS:
            raise RepairlibError(where, f"more than {MOST_PARTS} parts", "the parts nearby only")
        yield cells | {end: cells[end].casefold() for end in ("from", "to")}, where
    if not names:
        raise RepairlibError("the table of parts", "no part was typed", example)


def _check_ends(cells: dict[str, str], where: str, letters: tuple[str, ...], example: str) -> None:
    name, one, other = cells["part"], cells["from"], cells["to"]
    if name[:1].upper() not in letters:
        known = f"{', '.join(letters[:-1])} nor {letters[-1]}"
        raise RepairlibError(name, f"begins with neither {known} ({where})", example)
    if not one or not other:
        raise RepairlibError(name, f"two points are due, from and to ({where})", example)
    if one.casefold() == other.casefold():
        raise RepairlibError(name, f"both ends are on point {one} ({where})", "two points")


def part_named(parts: tuple[Part, ...], name: str) -> Part:
    """The part of that name. Raises RepairlibError naming those that there are."""
    for part in parts:
        if part.name.casefold() == name.strip().casefold():
            return part
    raise RepairlibError(name, "no such part here", ", ".join(part.name for part in parts))


def _read_part(cells: dict[str, str], where: str) -> Part:
    name = cells["part"]
    letter = name[0].upper()
    smallest, largest = SMALLEST[letter], LARGEST[letter]
    number = _read_value(cells["value"], UNITS[letter], smallest, largest, f"{name}, {where}")
    series, more = 0.0, cells["more"]
    if more and letter not in INSIDE:
        raise RepairlibError(more, f"a resistor has nothing more ({where})", "an empty cell")
    if more:
        ohms = _INSIDE.sub("", more, count=1)
        series = _read_value(ohms, "Ω", 0.0, LARGEST["R"], f"{name}, {where}")
    return Part(name, (cells["from"], cells["to"]), number, series)


def _read_value(text: str, unit: str, smallest: float, largest: float, where: str) -> float:
    try:
        number = read_quantity(text, unit).value
    except RepairlibError as problem:
        raise RepairlibError(text, f"{problem.wrong} ({where})", problem.accepted) from None
    if not smallest <= number <= largest:
        span = f"{engineering(smallest, unit)} to {engineering(largest, unit)}"
        raise RepairlibError(text, f"out of range ({where})", span)
    return number
