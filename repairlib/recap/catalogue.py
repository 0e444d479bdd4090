"""A parts catalogue as CSV: every line of it becomes an offer of a part, or is told with a reason.

A part may stand on several lines, each with another pack or another smallest number: single
pieces, a pack of fifty, a lower price from ten pieces on. Covers what the lines say. Which part is
chosen for a place is decided in selection.py and choice.py.
"""

from __future__ import annotations

from decimal import Decimal, InvalidOperation
from pathlib import Path
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.core.typed.headed import read_headed
from repairlib.core.typed.table import Row, with_point, wrong_width
from repairlib.core.typed.textfile import TextFile, read_text
from repairlib.health import families
from repairlib.recap.offers import Offer

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
    "minimum",
    "currency",
)
NEEDED = ("part", "family", "capacitance_uf", "rated_v", "rated_c", "mounting", "price")
MOUNTINGS = ("radial", "axial", "can", "snap-in")
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
MOST_OFFERS = 12  # lines of one part
_LONGEST_CURRENCY = 20


class CataloguePart(NamedTuple):
    """One part of a catalogue; None (or "") where its lines say nothing.

    `farad` [F], `volts` [V], `celsius` and `hours`: the life stated at that temperature; `ripple`
    [A] at `ripple_hz` [Hz]; `ohm` [Ω] at 100 kHz; lengths in mm, `length` is the height of a
    radial can; `offers` is how it is sold, one for each of its lines, `line` the first of them.
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
    offers: tuple[Offer, ...]
    line: int

    @property
    def price(self) -> Decimal:
        """The lowest price of one piece, in whatever number that is."""
        first, *others = self.offers
        return min(first.price, *(one.price for one in others)) if others else first.price

    @property
    def height(self) -> float | None:
        """How high it stands on the board [mm]: a lying part by its diameter."""
        return self.diameter if self.mounting == "axial" else self.length

    def with_offer_of(self, other: CataloguePart) -> CataloguePart:
        """This part with the offer of another line too. Raises ValueError when they disagree."""
        stands = f"part {self.part} stands on line {self.line} already"
        if other._replace(offers=self.offers, line=self.line) != self:
            raise ValueError(f"{stands}, and with other figures")
        (new,) = other.offers
        if any((new.pack, new.minimum) == (one.pack, one.minimum) for one in self.offers):
            raise ValueError(f"{stands}: another line of it has another pack or minimum")
        if len(self.offers) == MOST_OFFERS:
            raise ValueError(f"part {self.part} has {MOST_OFFERS} lines already")
        return self._replace(offers=(*self.offers, new))


class Problem(NamedTuple):
    """A line that gave no part: its number, its text and why."""

    line: int
    text: str
    why: str

    def __str__(self) -> str:
        return f"catalogue line {self.line}: {self.why}"


class Catalogue:
    """The parts of a catalogue in the order of its lines, and what could not be read.

    Every line is an offer of a part, a problem, the heading or blank: `lines` counts them all.
    `currency` is what its prices are in, "" where it does not say.
    """

    def __init__(
        self, name: str, parts, problems=(), lines: int = 0, note: str = "", currency: str = ""
    ):
        self.name = name
        self.parts: tuple[CataloguePart, ...] = tuple(parts)
        self.problems: tuple[Problem, ...] = tuple(problems)
        self.lines = lines
        self.note = note
        self.currency = currency

    def __len__(self) -> int:
        return len(self.parts)

    def __str__(self) -> str:
        unread = f", {len(self.problems)} lines unreadable" if self.problems else ""
        return f"{self.name}: {len(self.parts)} parts{unread}"

    __repr__ = __str__


def read_catalogue(path) -> Catalogue:
    """The catalogue in a table with the headings of COLUMNS; those of NEEDED must be there.

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
    table = read_headed(file, name, COLUMNS, NEEDED)
    reader = _RowReader(table.places(COLUMNS), len(table.headings), table.separator)
    parts: dict[str, CataloguePart] = {}
    problems: list[Problem] = []
    for row in table.rows_below():
        try:
            part = reader.part(row)
            if part.part in parts:
                part = parts[part.part].with_offer_of(part)
        except ValueError as problem:
            text = "\n".join(table.lines[row.line - 1 : row.last])
            problems.append(Problem(row.line, text, str(problem)))
            continue
        parts[part.part] = part
    lines = len(table.lines)
    return Catalogue(name, parts.values(), problems, lines, table.note, reader.currency)


class _RowReader:
    """Makes a part of the cells of a row; a catalogue repeats its figures, so they are kept."""

    def __init__(self, places: list[int], width: int, separator: str):
        self.places = places
        self.width = width
        self.separator = separator
        self.figures: dict[tuple[str, str], float | None] = {}
        self.sold: dict[tuple[str, ...], tuple[Offer, ...]] = {}
        self.families = families()
        self.currency = ""

    def part(self, row: Row) -> CataloguePart:
        """The part of that row. Raises ValueError that says what is wrong with it."""
        if row.what:
            raise ValueError(row.why)
        if len(row.cells) != self.width:
            raise ValueError(wrong_width(row.cells, self.width, self.separator))
        cells = [*row.cells, ""]  # a column that is not there is read as an empty cell
        text = [cells[place] for place in self.places]
        part, series, family, *figures, mounting, price, pack, minimum, currency = text
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
            self.offers(price, pack, minimum, currency),
            row.line,
        )

    def figure(self, name: str, text: str) -> float | None:
        key = name, text
        if key not in self.figures:
            self.figures[key] = _figure(name, text)
        return self.figures[key]

    def offers(self, *cells: str) -> tuple[Offer, ...]:
        """The offer in the cells of price, pack, minimum and currency."""
        if cells not in self.sold:
            price, pack, minimum, currency = cells
            offer = Offer(_price(price), _pieces("pack", pack), _pieces("minimum", minimum))
            if currency and currency != self.currency:
                self.agree_on(currency)
            self.sold[cells] = (offer,)
        return self.sold[cells]

    def agree_on(self, currency: str) -> None:
        """Take the currency of the first line that names one. Raises ValueError for another."""
        if self.currency:
            other = f"the lines above it in {self.currency!r}"
            raise ValueError(f"its price is in {currency[:40]!r}, {other}")
        if len(currency) > _LONGEST_CURRENCY or any(letter.isdigit() for letter in currency):
            raise ValueError(f"currency {currency[:40]!r} is not the name of a currency")
        self.currency = currency


def _pieces(name: str, text: str) -> int:
    """A number of pieces; 1 where the cell is empty."""
    if not text:
        return 1
    if not (text.isascii() and text.isdigit() and 0 < int(text[:9]) <= _MOST_PACK):
        raise ValueError(f"{name} {text[:40]!r} is not a number of pieces")
    return int(text)


def _figure(name: str, text: str) -> float | None:
    if not text and name not in NEEDED:
        return None
    plain = _plain(name, text)
    try:
        value = float(plain)
    except ValueError:
        value = 0.0
    if not value > 0:
        raise ValueError(f"{name} {text[:40]!r} is not a number above 0")
    least, most = _LEAST.get(name, 0), _MOST[name]
    if not least <= value <= most:
        raise ValueError(f"{name} {text[:40]!r} is not between {least:g} and {most:g}")
    return value


def _price(text: str) -> Decimal:
    plain = _plain("price", text)
    try:
        price = Decimal(plain)
    except InvalidOperation:
        price = Decimal(0)
    if not (price.is_finite() and Decimal("0.0001") <= price <= 1_000_000):
        raise ValueError(f"price {text[:40]!r} is not a price for one piece")
    return price


def _plain(name: str, text: str) -> str:
    """The figure in a cell with a decimal point; 0 for other writing."""
    if not text.isascii() or "_" in text:
        return "0"
    try:
        return with_point(text)
    except RepairlibError as problem:
        raise ValueError(f"{name} {text[:40]!r} {problem.wrong}") from None
