"""Sheets put on paper: the size of the page, whole HTML pages, and PDF where it can be made."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache, lru_cache
from importlib.util import find_spec
from typing import NamedTuple

from repairlib.show.sheets.sheet_pieces import STYLE, numbers, page, page_of
from repairlib.teach.paper.style import PAPER_STYLE

NO_PDF = (
    "PDF left out, HTML written: pip install 'repairlib[class]' brings what makes it; on Debian "
    "and Ubuntu also apt-get install libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0."
)
A4, LETTER = "A4", "Letter"


class Sheet(NamedTuple):
    """One thing to print: its title, the line at the head of each page, and its HTML in parts.

    `style` comes on top of that of all class paper; `across` is True for a sheet that is wider than
    high.
    """

    title: str
    head: str
    parts: tuple[str, ...]
    style: str = ""
    across: bool = False


class Printed(NamedTuple):
    """One file of paper: its place without ending, its title, its pages (0 without PDF)."""

    place: str
    title: str
    pages: int


def html_of(sheet: Sheet, size: str = A4) -> str:
    """The sheet as a whole HTML page for paper of that size, "A4" or "Letter".

    >>> made = html_of(Sheet("Key", "Key", ("<p>a</p>",), across=True), LETTER)
    >>> "size: Letter landscape;" in made
    True
    """
    return page(sheet.title, sheet.parts, sheet.head, _style(sheet, size))


def html_of_all(sheets: Sequence[Sheet], title: str, size: str = A4) -> str:
    """Several sheets as one HTML page; each begins on a page of its own and has its own head."""
    if len(sheets) == 1:
        return html_of(sheets[0], size)
    first, heads, parts = sheets[0], "", []
    for number, one in enumerate(sheets):
        heads += f"#s{number} {{ page: s{number}; }} {numbers(one.head, f's{number}')}"
        parts.append(f'<div id="s{number}" class="sheet">{"".join(one.parts)}</div>')
    return page(title, parts, first.head, _style(first, size) + heads)


def _style(sheet: Sheet, size: str) -> str:
    turned = " landscape" if sheet.across else ""
    return f"{PAPER_STYLE}{sheet.style} @page {{ size: {size}{turned}; }}"


def pdf_can_be_made() -> bool:
    """True when the library that makes PDF is there, with what it needs of the system."""
    if find_spec("weasyprint") is None:
        return False
    try:
        import weasyprint  # noqa: F401  # it loads pango, which may be missing
    except OSError:
        return False
    return True


def laid_out(sheet: Sheet, size: str = A4):
    """The sheet laid out for paper: what has `pages`."""
    from weasyprint import HTML

    looks = _read_style(STYLE + _style(sheet, size))
    bare = page_of(sheet.title, sheet.parts, numbers(sheet.head))
    return HTML(string=bare).render(font_config=_fonts(), stylesheets=[looks])


@lru_cache(maxsize=32)
def _read_style(style: str):
    """A style read once for all sheets that share it: reading it takes as long as laying out."""
    from weasyprint import CSS

    return CSS(string=style, font_config=_fonts())


def pdf_of(documents: Sequence) -> bytes:
    """Sheets laid out, one behind the other in one PDF; each counts its own pages."""
    first = documents[0]
    return first.copy([one for each in documents for one in each.pages]).write_pdf()


@cache
def _fonts():
    """The fonts of this computer, looked up once."""
    from weasyprint.text.fonts import FontConfiguration

    return FontConfiguration()
