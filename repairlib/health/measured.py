"""A table of measured parts: what each line says was read on which part.

Covers saved tables and pasted columns, with headings or with a unit on every reading. Every line
gives a part or is set aside with a reason; a reading that makes no sense keeps its place.
What the readings mean for the part is judged in verdict.py.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field, replace

from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import read_quantity
from repairlib.core.typed import readings
from repairlib.core.typed.headings import role_of_heading
from repairlib.core.typed.readings import Measurement, read_measurement, unreadable
from repairlib.core.typed.references import begins_with_reference, read_references
from repairlib.core.typed.set_aside import HEADING, TITLE, UNREADABLE, SetAside
from repairlib.core.typed.table import BLANKS, Row, Table, find_separator, lines_of, wrong_width
from repairlib.core.typed.textfile import read_text

# Role: (unit, headings in lower case). The headings that measurement sheets carry.
ROLES = {
    "capacitance": ("F", "c cap capacitance cs cp c-measured measured-c measured measured-cap"),
    "esr": ("Ω", "esr rs"),
    "loss": ("", "d df tan-δ tanδ tan-d tand tan-delta loss dissipation dissipation-factor"),
    "leakage": ("A", "leakage leak ileak i-leak il dcl lc leakage-current i"),
    "resistance": ("Ω", "r resistance ohms dc-resistance dcr"),
    "inductance": ("H", "l inductance ls lp"),
    "voltage": ("V", "v volts voltage test-voltage at-voltage"),
    "frequency": ("Hz", "f freq frequency test-frequency test-freq"),
    "temperature": ("°C", "t temp temperature"),
}
_ROLE_OF = {word: role for role, (_, words) in ROLES.items() for word in words.split()}
_ROLE_OF_UNIT = {"F": "capacitance", "Ω": "esr", "A": "leakage", "H": "inductance", "V": "voltage"}
_ROLE_OF_UNIT |= {"Hz": "frequency", "°C": "temperature"}
_AT_A_FREQUENCY = ("capacitance", "esr", "loss", "inductance")
_UNIT_IN_HEADING = re.compile(
    r"[(\[]([^()\[\]]+)[)\]]|[/,]\s*(\S+)$|\bin\s+(\S+)$|[\s_](\S*[ΩFAHV%]|[mk]?[Oo][Hh][Mm]s?)$"
)
_FREQUENCY_IN_HEADING = re.compile(r"(?:@|\bat)?\s*(\d[\d.]*\s*[kKM]?(?:Hz)?)$")
_HERTZ_HEADING = re.compile(
    r"((?:test|meas\.?|measuring)?[ _-]?f(?:req(?:uency|\.)?)?)\s*[(\[/, ]\s*([kM]?Hz)\s*[)\]]?",
    re.IGNORECASE,
)
_REFERENCE, _NOTE = "reference", "note"
MOST_LINES = 200_000
LONGEST_HEADING = 100  # characters; a longer one is a sentence


@dataclass(frozen=True, slots=True)
class MeasuredPart:
    """What was read on one part: `readings` by role (a key of ROLES), `note` all other words."""

    reference: str
    line: int
    readings: dict[str, Measurement]
    note: str = ""

    def __getitem__(self, role: str) -> Measurement | None:
        return self.readings.get(role)


@dataclass
class MeasuredTable:
    """A table as read: every line gave a part or is in `set_aside`, by its number from 1."""

    name: str
    lines: list[str]
    parts: list[MeasuredPart] = field(default_factory=list)
    set_aside: list = field(default_factory=list)
    notes: list[str] = field(default_factory=list)

    def by_reference(self) -> dict[str, MeasuredPart]:
        """The parts by their reference, which no two of them share."""
        return {part.reference: part for part in self.parts}

    def unread(self) -> list[tuple[int, str, Measurement]]:
        """Readings that make no sense: line, role, and the reading with what is wrong."""
        return [
            (part.line, role, reading)
            for part in self.parts
            for role, reading in part.readings.items()
            if reading.kind == readings.UNREADABLE
        ]


def read_measured(text: str, name: str = "the table") -> MeasuredTable:
    r"""The measured parts in `text`, a table in any layout of core/typed/table.py.

    Headings name what a column holds, its unit and its test frequency: `C (µF)`, `ESR @ 100 kHz`,
    `D 120Hz`, `Leakage [µA]`. Without headings each reading carries its unit. A part that stands
    twice keeps its first line. Raises RepairlibError for a text without lines.

    >>> table = read_measured("Ref,C (µF),ESR @ 100 kHz\nC1,98,0.31\nC2,OL,< 0.1\n")
    >>> print(table.parts[0]["capacitance"], table.parts[1]["esr"].high)
    98 µF 0.1
    """
    lines = lines_of(text, name, "the lines of a table")
    if len(lines) > MOST_LINES:
        raise RepairlibError(name, f"more than {MOST_LINES} lines", "a shorter table")
    return _Reader(MeasuredTable(name, lines)).read()


def read_measured_file(path) -> MeasuredTable:
    """The measured parts in the file at `path`; its encoding is found, and said in `notes`.

    Raises RepairlibError for a file that is no text, and for a text without lines.
    """
    file = read_text(path)
    table = read_measured(file.text, str(path).replace("\\", "/").rpartition("/")[2])
    table.notes += [file.note] if file.note else []
    return table


@dataclass(frozen=True, slots=True)
class _Column:
    """What a heading says: the role, the unit of bare numbers, the test frequency in Hz."""

    role: str
    bare: str | None = None
    frequency: float | None = None


class _Reader:
    """Goes through the lines once, keeping the headings above."""

    def __init__(self, table: MeasuredTable):
        self.table = table
        self.rows = Table(table.lines, find_separator(table.lines) or BLANKS)
        self.columns: list[_Column] | None = None
        self.seen: dict[str, int] = {}

    def read(self) -> MeasuredTable:
        for row in self.rows.rows():
            self.read_row(row)
        return self.table

    def aside(self, number: int, what: str, why: str = "") -> None:
        line = SetAside(number, self.table.lines[number - 1], what, why)
        self.table.set_aside.append(line)

    def read_row(self, row: Row) -> None:
        """Add the part of a row to the table, or set it aside."""
        if row.what:
            return self.aside(row.line, row.what, row.why)
        columns = _headings(row.cells)
        if columns is None:
            return self.read_part(row)
        self.columns = columns
        headed = zip(row.cells, columns, strict=True)
        kept = [cell for cell, column in headed if column.role == _NOTE and cell]
        if kept:
            said = ", ".join(f"'{heading}'" for heading in kept)
            self.table.notes.append(f"Not read as a measurement, kept as remarks: {said}")
        return self.aside(row.line, HEADING)

    def read_part(self, row: Row) -> None:
        number, cells = row.line, row.cells
        at = self.reference_column(cells)
        if at is None:
            what = UNREADABLE if self.columns else TITLE
            return self.aside(number, what, "it names no part, such as C5")
        try:
            name = _one_reference(cells[at])
        except RepairlibError as problem:
            return self.aside(number, UNREADABLE, problem.wrong)
        if name in self.seen:
            why = f"{name} stands on line {self.seen[name]} already"
            return self.aside(number, UNREADABLE, why)
        if self.columns and any(cells[len(self.columns) :]):
            why = wrong_width(cells, len(self.columns), self.rows.separator)
            return self.aside(number, UNREADABLE, why)
        others = [(place, cell) for place, cell in enumerate(cells) if place != at and cell]
        try:
            readings, note = self.readings_of(others)
        except RepairlibError as problem:
            return self.aside(number, UNREADABLE, problem.wrong)
        if not readings and not (note and self.columns):
            return self.aside(number, UNREADABLE, f"nothing was read on {name}")
        self.seen[name] = number
        self.table.parts.append(MeasuredPart(name, number, readings, note))
        return None

    def reference_column(self, cells: list[str]) -> int | None:
        if self.columns:
            for at, column in enumerate(self.columns[: len(cells)]):
                if column.role == _REFERENCE:
                    return at if begins_with_reference(cells[at]) else None
        return 0 if begins_with_reference(cells[0]) else None

    def readings_of(self, cells: list[tuple[int, str]]) -> tuple[dict[str, Measurement], str]:
        """The readings of a row by role, and its other words."""
        readings: dict[str, Measurement] = {}
        words = []
        for place, cell in cells:
            column = self.columns[place] if self.columns else _column_by_unit(cell)
            if column.role not in ROLES or column.role in readings:
                words.append(cell)
                continue
            unit = ROLES[column.role][0]
            try:
                reading = read_measurement(cell, unit, column.bare)
            except RepairlibError as problem:
                reading = unreadable(cell, unit, problem)
            if column.frequency and not reading.frequency:
                reading = replace(reading, frequency=column.frequency)
            readings[column.role] = reading
        tested = readings.get("frequency")
        if tested and tested.value:
            for role in _AT_A_FREQUENCY:
                if role in readings and not readings[role].frequency:
                    readings[role] = replace(readings[role], frequency=tested.value)
        return readings, " ".join(words)


def _headings(cells: list[str]) -> list[_Column] | None:
    """The columns that a line of headings announces, or None when it is no such line."""
    columns = [
        _Column(_REFERENCE) if role_of_heading(cell) == _REFERENCE else _column(cell)
        for cell in cells
    ]
    roles = [column.role for column in columns]
    measured = [role for role in roles if role in ROLES]
    return columns if _REFERENCE in roles and measured else None


def _column(heading: str) -> _Column:
    """What a heading such as `ESR @ 100 kHz (mΩ)` says; a column of notes when unknown."""
    rest, bare, frequency = heading.strip(), None, None
    if len(rest) > LONGEST_HEADING:
        return _Column(_NOTE)
    hertz = _HERTZ_HEADING.fullmatch(rest)
    if hertz:
        return _Column("frequency", hertz[2])
    for _ in range(2):  # unit and frequency stand in either order
        found = _UNIT_IN_HEADING.search(rest)
        piece = next((group.strip() for group in found.groups() if group), "") if found else ""
        if found and _is_unit(piece):
            bare, rest = piece, (rest[: found.start()] + rest[found.end() :]).strip()
        found = _FREQUENCY_IN_HEADING.search(rest.replace("(", "").replace(")", ""))
        if found:
            rest = rest.replace("(", "").replace(")", "")[: found.start()].strip()
            frequency = _hertz(found[1])
    word = "-".join(rest.lower().replace(".", " ").replace("_", " ").split())
    role = _ROLE_OF.get(word, _NOTE)
    if role == _NOTE:
        return _Column(_NOTE)
    return _Column(role, bare, frequency)


def _is_unit(piece: str) -> bool:
    try:
        return read_quantity(f"1 {piece}").unit not in ("", "Hz")
    except RepairlibError:
        return False


def _hertz(text: str) -> float | None:
    try:
        return read_quantity(text.replace(" ", ""), "Hz").value or None
    except RepairlibError:
        return None


def _column_by_unit(cell: str) -> _Column:
    """Without headings: what the unit of the reading says it is."""
    number = cell.lstrip("<>≤≥~≈= ").partition("@")[0].partition("±")[0].rstrip("? ")
    try:
        unit = read_quantity(number).unit
    except RepairlibError:
        return _Column(_NOTE)
    if unit not in _ROLE_OF_UNIT:
        wrong = f"no heading and no unit say what {number.strip()} is"
        raise RepairlibError(cell, wrong, "headings, or a unit on each reading")
    return _Column(_ROLE_OF_UNIT[unit])


def _one_reference(cell: str) -> str:
    references = read_references(cell, groups=True)  # C2-3 is one part or a mistake, no range
    if not references or len(references.names) != 1 or references.rest:
        wrong = "more than one part, or other words behind it"
        raise RepairlibError(cell, wrong, "one part on each line, such as C5")
    return references.names[0]
