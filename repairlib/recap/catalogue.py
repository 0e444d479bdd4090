"""A parts catalogue as CSV: every line of it becomes a part, or is told with a reason.

Covers what the lines say. Which part is chosen for a place is decided in selection.py.
"""

from __future__ import annotations

import csv
from decimal import Decimal, InvalidOperation
from pathlib import Path
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.core.typed.textfile import TextFile, read_text
from repairlib.health import families

COLUMNS = (
    "part",
    "series",
    "family",
    "capacitance_uf",
    "rated_v",
    "rated_c",
    "life_h",
    "ripple_ma",
    "ripple_hz",
    "esr_class",
    "impedance_ohm",
    "diameter_mm",
    "length_mm",
    "lead_spacing_mm",
    "mounting",
    "price",
    "pack",
)
NEEDED = ("part", "family", "capacitance_uf", "rated_v", "rated_c", "mounting", "price")
MOUNTINGS = ("radial", "axial", "can", "snap-in")
_SEPARATORS = (",", ";", "\t", "|")
# What each figure may be, so that a slip such as 16000 V is told.
_MOST = {
    "capacitance_uf": 1e6,
    "rated_v": 1e4,
    "rated_c": 250,
    "life_h": 1e6,
    "ripple_ma": 1e6,
    "ripple_hz": 1e6,
    "impedance_ohm": 1e6,
    "diameter_mm": 200,
    "length_mm": 400,
    "lead_spacing_mm": 100,
}
_LEAST = {"life_h": 100}  # less was meant in years, or in thousands
_MOST_PACK = 100_000
_LONGEST_LINE = 2000


class CataloguePart(NamedTuple):
    """One line of a catalogue; None (or "") where the line says nothing.

    `farad` [F], `volts` [V], `celsius` and `hours`: the life stated at that temperature; `ripple`
    [A] at `ripple_hz` [Hz]; `ohm` [Ω] at 100 kHz; lengths in mm, `length` is the height of a
    radial can; `price` is for one piece, and `pack` is how many pieces are sold together.
    """

    part: str
    series: str
    family: str
    farad: float
    volts: float
    celsius: float
    hours: float | None
    ripple: float | None
    ripple_hz: float | None
    esr_class: str
    ohm: float | None
    diameter: float | None
    length: float | None
    spacing: float | None
    mounting: str
    price: Decimal
    pack: int
    line: int


class Problem(NamedTuple):
    """A line that gave no part: its number, its text and why."""

    line: int
    text: str
    why: str

    def __str__(self) -> str:
        return f"catalogue line {self.line}: {self.why}"


class Catalogue:
    """The parts of a catalogue in the order of its lines, and what could not be read.

    Every line is a part, a problem, the heading or blank: `lines` counts them all.
    """

    def __init__(self, name: str, parts, problems=(), lines: int = 0, note: str = ""):
        self.name = name
        self.parts: tuple[CataloguePart, ...] = tuple(parts)
        self.problems: tuple[Problem, ...] = tuple(problems)
        self.lines = lines
        self.note = note

    def __len__(self) -> int:
        return len(self.parts)

    def __str__(self) -> str:
        unread = f", {len(self.problems)} lines unreadable" if self.problems else ""
        return f"{self.name}: {len(self.parts)} parts{unread}"

    __repr__ = __str__


def read_catalogue(path) -> Catalogue:
    """The catalogue in a CSV file with the headings of COLUMNS; those of NEEDED must be there.

    Lines that cannot be read are told in `problems`. Raises RepairlibError for a file that is no
    such table.
    """
    return parse_catalogue(read_text(path), Path(path).name)


def parse_catalogue(file: TextFile | str, name: str = "the catalogue") -> Catalogue:
    """The catalogue in a text (see read_catalogue).

    >>> made = parse_catalogue(
    ...     "part,family,capacitance_uf,rated_v,rated_c,mounting,price\\n"
    ...     "A1,aluminium general 105,10,16,105,radial,0.05\\n"
    ...     "A2,aluminium general 105,ten,16,105,radial,0.05\\n"
    ... )
    >>> made.parts[0].farad, made.problems[0].why
    (1e-05, "capacitance_uf 'ten' is not a number above 0")
    """
    text, note = (file, "") if isinstance(file, str) else (file.text, file.note)
    text = text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n")
    lines = text.removesuffix("\n").split("\n")
    heading = next((number for number, line in enumerate(lines) if line.strip()), None)
    if heading is None:
        raise RepairlibError(name, "there is no line in it", _accepted())
    separator, reader = _read_heading(lines[heading], name)
    parts, problems, first_line = [], [], {}
    for number, line in enumerate(lines[heading + 1 :], heading + 2):
        try:
            cells = _cells(line, separator)
            if not any(cells):
                continue
            part = reader.part(cells, number)
            if part.part in first_line:
                raise ValueError(f"part {part.part} stands on line {first_line[part.part]} already")
        except ValueError as problem:
            problems.append(Problem(number, line, str(problem)))
            continue
        first_line[part.part] = number
        parts.append(part)
    return Catalogue(name, parts, problems, len(lines), note)


def _accepted() -> str:
    return f"a CSV file with the headings {', '.join(COLUMNS)}"


def _read_heading(line: str, name: str) -> tuple[str, _RowReader]:
    """What separates the cells, and a reader for the rows under that heading."""
    separator = max(_SEPARATORS, key=line.count)
    try:
        headings = [cell.strip().lower() for cell in _cells(line, separator)]
    except ValueError as problem:
        raise RepairlibError(name, f"its heading cannot be read: {problem}", _accepted()) from None
    missing = [heading for heading in NEEDED if heading not in headings]
    if missing:
        raise RepairlibError(name, f"no column {', '.join(missing)}", _accepted())
    twice = [heading for heading in COLUMNS if headings.count(heading) > 1]
    if twice:
        raise RepairlibError(name, f"two columns {', '.join(twice)}", _accepted())
    return separator, _RowReader(headings)


def _cells(line: str, separator: str) -> list[str]:
    if len(line) > _LONGEST_LINE:
        raise ValueError(f"longer than {_LONGEST_LINE} characters")
    if '"' not in line:
        return line.split(separator)
    try:
        return next(csv.reader([line], delimiter=separator, strict=True))
    except csv.Error:
        raise ValueError("a quotation mark is opened and not closed, or stands inside") from None


class _RowReader:
    """Makes a part of the cells of a row; a catalogue repeats its figures, so they are kept."""

    def __init__(self, headings: list[str]):
        self.width = len(headings)
        self.at = [headings.index(name) if name in headings else -1 for name in COLUMNS]
        self.figures: dict[tuple[str, str], float | None] = {}
        self.families = families()

    def part(self, cells: list[str], line: int) -> CataloguePart:
        """The part of that row. Raises ValueError that says what is wrong with it."""
        if len(cells) != self.width:
            raise ValueError(f"{len(cells)} columns where the headings are {self.width}")
        cells = [*cells, ""]  # a column that is not there is read as an empty cell
        text = [cells[place].strip() for place in self.at]
        part, series, family, *figures, mounting, price, pack = text
        if not part:
            raise ValueError("no part number")
        if family not in self.families:
            raise ValueError(f"family {family[:40]!r} is not known here")
        if mounting not in MOUNTINGS:
            raise ValueError(f"mounting {mounting[:40]!r} is not one of {', '.join(MOUNTINGS)}")
        capacitance, volts, celsius, hours, ripple, hertz, esr_class, ohm, *sizes = figures
        microfarad = self.figure("capacitance_uf", capacitance)
        milliampere = self.figure("ripple_ma", ripple)
        return CataloguePart(
            part,
            series,
            family,
            float(f"{microfarad * 1e-6:.12g}"),
            self.figure("rated_v", volts),
            self.figure("rated_c", celsius),
            self.figure("life_h", hours),
            milliampere and milliampere / 1000,
            self.figure("ripple_hz", hertz),
            esr_class,
            self.figure("impedance_ohm", ohm),
            self.figure("diameter_mm", sizes[0]),
            self.figure("length_mm", sizes[1]),
            self.figure("lead_spacing_mm", sizes[2]),
            mounting,
            self.price(price),
            self.pack(pack),
            line,
        )

    def figure(self, name: str, text: str) -> float | None:
        key = name, text
        if key not in self.figures:
            self.figures[key] = _figure(name, text)
        return self.figures[key]

    def price(self, text: str) -> Decimal:
        key = "price", text
        if key not in self.figures:
            self.figures[key] = _price(text)
        return self.figures[key]

    def pack(self, text: str) -> int:
        if not text:
            return 1
        if not (text.isascii() and text.isdigit() and 0 < int(text[:9]) <= _MOST_PACK):
            raise ValueError(f"pack {text[:40]!r} is not a number of pieces")
        return int(text)


def _figure(name: str, text: str) -> float | None:
    if not text and name not in NEEDED:
        return None
    try:
        value = float(text) if text.isascii() and "_" not in text else 0.0
    except ValueError:
        value = 0.0
    if not value > 0:
        raise ValueError(f"{name} {text[:40]!r} is not a number above 0")
    least, most = _LEAST.get(name, 0), _MOST[name]
    if not least <= value <= most:
        raise ValueError(f"{name} {text[:40]!r} is not between {least:g} and {most:g}")
    return value


def _price(text: str) -> Decimal:
    try:
        price = Decimal(text) if text.isascii() and "_" not in text else Decimal(0)
    except InvalidOperation:
        price = Decimal(0)
    if not (price.is_finite() and Decimal("0.0001") <= price <= 1_000_000):
        raise ValueError(f"price {text[:40]!r} is not a price for one piece")
    return price
