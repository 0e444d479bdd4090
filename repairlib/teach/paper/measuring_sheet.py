"""A blank sheet for readings, for one parts list, and its table to type them back into.

Its columns are those that a plan reads with --measured.
"""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from repairlib.core.html import row, table, text
from repairlib.core.safety import HAZARDS
from repairlib.recap import plan_file
from repairlib.teach.paper.printing import Sheet
from repairlib.teach.paper.question_sheet import WRITE
from repairlib.teach.paper.style import MEASURE_STYLE

COLUMNS = ("Ref", "C (µF)", "ESR (Ω)", "Frequency (Hz)", "Leakage (µA)", "Voltage (V)", "Seen")
HOW = (
    "Ref is the place, such as C5. Write what the display shows, also OL or 0.00. Another unit "
    "than that of the heading stands behind its number: 47 nF. Frequency is that at which ESR was "
    "read; without it an ESR does not count. Voltage is that of the leakage reading. Seen: bulged, "
    "crust, leaking, or nothing."
)
BLANK_ROWS = 30


def places_of(parts_list: str | Path) -> list[tuple[str, str]]:
    """Each place of a parts list with what the list says of it. Raises RepairlibError."""
    return [(one.reference, one.old.text) for one in plan_file(parts_list).all_items]


def measuring_sheet(places: Iterable[tuple[str, str]], named: str) -> Sheet:
    """The sheet: a line for each place, or blank lines where none is named."""
    lines = list(places) or [("", "")] * BLANK_ROWS
    head = row((COLUMNS[0], "list says", *COLUMNS[1:]), tag="th")
    rows = [row((place, said, *[""] * (len(COLUMNS) - 1))) for place, said in lines]
    charge = HAZARDS["stored charge"]
    parts = (
        f"<h1>Readings: {text(named)}</h1>",
        f'<p class="fields">Name {WRITE} Date {WRITE} Meter {WRITE} Board no. {WRITE}</p>',
        f'<p class="caution">⚠ <b>{text(charge.title)}.</b> {text(" ".join(charge.do[:2]))} '
        f"{text(charge.defer)}</p>",
        f"<p><small>{text(HOW)}</small></p>",
        table(rows, head),
    )
    return Sheet(f"Readings: {named}", f"Readings · {named}", parts, MEASURE_STYLE)


def table_to_type(places: Iterable[tuple[str, str]]) -> str:
    """The same columns as a table for a spreadsheet, the places filled in.

    >>> table_to_type([("C5", "10/16")]).splitlines()
    ['Ref,C (µF),ESR (Ω),Frequency (Hz),Leakage (µA),Voltage (V),Seen', 'C5,,,,,,']
    """
    rows = [COLUMNS, *((place, *[""] * (len(COLUMNS) - 1)) for place, _ in places)]
    return "\n".join(",".join(one) for one in rows) + "\n"
