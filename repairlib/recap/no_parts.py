"""Rows of a parts list that begin with no reference: titles and notes, or parts that were misread.

Whatever has a letter and a figure like a reference, or figures where values stand, is unreadable
and shown: as a title or a note a part would be lost without a word.
"""

from __future__ import annotations

import re

from repairlib.core.typed.headings import Columns
from repairlib.core.typed.references import capacitors_inside
from repairlib.core.typed.set_aside import TITLE, UNREADABLE
from repairlib.core.typed.table import Row
from repairlib.recap.ratings import describe
from repairlib.recap.sections import is_footer

_capacitor_inside = re.compile(r"\b(?i:C)(?:[ ._-]?|\W{1,4})[0-9]{1,5}[A-Z]?\b").search
# Letters and a figure of whatever part: PC12, XC.8, CN-5.
_like_a_reference = re.compile(r"(?<![\w.,/])[A-Z]{1,5}[._‐‑–—-]?[0-9]{1,5}[A-Z]?(?!\w)").search
_begins_like_one = re.compile(
    r"[\W_]*(?!(?:fig|rev|ver|vol|no|nr|pg?|art)\b)([A-Z]{1,5}[._‐‑–—-]?[0-9]{1,5})", re.IGNORECASE
).match
_figures = re.compile(r"(?<![\w])[0-9][0-9.,/]*").findall


def _has_figures_of_a_part(row: Row, columns: Columns | None) -> bool:
    """Whether figures stand where values stand, or more than a title has."""
    if columns and len(row.cells) > 1:
        roles = zip(columns.roles, row.cells, strict=False)
        if any(role in ("value", "volts") and _figures(cell) for role, cell in roles):
            return True
    if len(row.cells) > 1:
        return sum(bool(_figures(cell)) for cell in row.cells) > 1
    figures = len(_figures(row.text))
    return figures > 1 and figures * 2 >= len(row.text.split())


def what_words_are(
    row: Row, section: str | None, board: str, columns: Columns | None
) -> tuple[str, str]:
    """What a row without references is, and why.

    `section` and `board` are what it announces as a title. Whatever has a letter and a figure like
    a reference, or figures where values stand, is neither a title nor a note.
    """
    if section is not None:
        return TITLE, f"the lines below are {section}" if section else "a title of other parts"
    if is_footer(row.text):
        return TITLE, "a page number"
    inside = _capacitor_inside(row.text)
    if inside or capacitors_inside(row.text):
        named = inside[0] if inside else capacitors_inside(row.text)[0]
        return UNREADABLE, f"names {named} but does not begin with it"
    if board:
        return TITLE, f"the lines below are of {board}"
    said = describe((("free", " ".join(row.cells)),))
    if said.farad is not None or said.volts is not None:
        return UNREADABLE, "a value, but no reference such as C5"
    like, figures = _like_a_reference(row.text), _has_figures_of_a_part(row, columns)
    like = like if figures else _begins_like_one(row.text)
    if like:
        return (
            UNREADABLE,
            f"'{like[0].strip()}' may be a reference, but of no kind of part known here",
        )
    if figures:
        return UNREADABLE, "figures, but no reference such as C5"
    return TITLE, "no reference and no value"
