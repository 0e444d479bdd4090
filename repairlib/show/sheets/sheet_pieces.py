"""The pieces that a printed sheet is made of: its style, boxes, tables, and text made harmless."""

from __future__ import annotations

from collections.abc import Iterable

from repairlib.core import html
from repairlib.core.html import Html
from repairlib.core.safety import HAZARDS

STYLE = """
@page { size: A4; margin: 16mm 12mm 15mm; }
* { box-sizing: border-box; }
body { font: 10pt/1.35 "Liberation Sans", Arial, Helvetica, sans-serif; color: #000;
  background: #fff; margin: 0 auto; max-width: 186mm; padding: 4mm 0; }
h1 { font-size: 17pt; margin: 0 0 1mm; }
h2 { font-size: 12.5pt; margin: 6mm 0 1.5mm; break-after: avoid; }
p { margin: 0 0 1.5mm; }
.fields span { display: inline-block; border-bottom: 1px solid #000; width: 42mm;
  margin-right: 6mm; }
h3 { font-size: 10.5pt; margin: 3mm 0 1.5mm; break-after: avoid; }
table { border-collapse: collapse; width: 100%; table-layout: fixed; margin-bottom: 2mm; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
th, td { border: 1px solid #000; padding: 1mm 1.4mm; text-align: left; vertical-align: top;
  overflow-wrap: anywhere; }
th { border-bottom-width: 2px; font-size: 8.5pt; }
td small { display: block; font-size: 8.5pt; }
.box { display: inline-block; width: 4.2mm; height: 4.2mm; border: 1.4px solid #000; }
.tick { width: 14mm; text-align: center; }
.ref { width: 12mm; font-weight: bold; }
.line { width: 10mm; text-align: right; }
.plus { width: 21mm; font-weight: bold; }
.old { width: 29mm; }
.new { width: 43mm; }
.what { width: 56mm; } .pieces { width: 25mm; } .price { width: 17mm; text-align: right; }
.expect { width: 50mm; } .readings { width: 54mm; } .got { width: 12mm; text-align: center; }
.caution { border: 2px solid #000; border-left-width: 8px; padding: 1.5mm 3mm; margin: 2mm 0;
  break-inside: avoid; }
.caution p { margin: 0; }
.rl-picture { break-inside: avoid; margin: 2mm 0; } .rl-picture img { width: 100%; }
.photo { width: 100%; max-height: 180mm; break-inside: avoid; }
.photo text { font: bold 24px Arial, sans-serif; text-anchor: middle; }
.new-page { break-before: page; }
.source { font-family: "Liberation Mono", monospace; font-size: 8.5pt; white-space: pre-wrap; }
.rules dt { font-weight: bold; break-after: avoid; }
.rules dd { margin: 0 0 1mm 6mm; break-inside: avoid; }
@media screen and (max-width: 700px) {
  body { font-size: 16px; padding: 12px; } td small, th, .source { font-size: 14px; }
  .stacks, .stacks tbody, .stacks tr, .stacks td { display: block; width: auto; max-width: none;
    text-align: left; }
  .stacks thead { display: none; }
  .stacks tr { border: 1px solid #000; margin-bottom: 8px; padding: 4px 8px; }
  .stacks td { border: 0; padding: 2px 0 2px 90px; min-height: 1.6em; }
  .stacks td::before { content: attr(data-label); float: left; margin-left: -90px; width: 84px;
    font-weight: bold; font-size: 14px; }
}
"""
BOX = '<span class="box" role="img" aria-label="box to tick"></span>'


def page(title: str, parts: Iterable[str], running: str, style: str = "") -> str:
    """A whole HTML page; `running` and the number of the page stand on each printed page.

    `style` comes on top of that of all sheets.

    >>> made = page("Map", ["<p>C1</p>"], "Map of </style> amp")
    >>> made.count("</style>"), "counter(pages)" in made
    (1, True)
    """
    return page_of(title, parts, f"{STYLE}{style}{numbers(running)}")


def numbers(running: str, named: str = "") -> str:
    """The style that puts `running` and the number of the page at the head of each printed page.

    `named` is a kind of page that it holds for alone.
    """
    return (
        f"@page {named} {{ @top-left {{ content: {_css_text(running)}; {_SMALL} }} "
        f'@top-right {{ content: "page " counter(page) " of " counter(pages); {_SMALL} }} }}'
    )


def page_of(title: str, parts: Iterable[str], style: str) -> str:
    """A whole HTML page in this style and no other."""
    return (
        '<!DOCTYPE html>\n<html lang="en"><head><meta charset="utf-8">'
        '<meta name="viewport" content="width=device-width, initial-scale=1">'
        f"<title>{html.text(title)}</title><style>{style}</style></head>\n<body>\n"
        + "\n".join(part for part in parts if part)
        + "\n</body></html>\n"
    )


_SMALL = 'font: 8.5pt "Liberation Sans", Arial, sans-serif;'


def _css_text(words: str) -> str:
    """Any text as a string of a style sheet, every sign that could end it written as a number."""
    plain = (sign if sign.isalnum() or sign == " " else f"\\{ord(sign):x} " for sign in words)
    return f'"{"".join(plain)}"'


def caution_in_full(key: str) -> Html:
    """One caution with all that is to be done, by the name of its hazard."""
    hazard = HAZARDS[key]
    sentences = html.text(" ".join((*hazard.do, hazard.defer)))
    return Html(
        '<div class="caution" role="note"><p><strong>CAUTION: '
        f"{html.text(hazard.title)}.</strong> {sentences}</p></div>"
    )


def short(anything: str, limit: int = 120) -> str:
    """A text on one line, cut at `limit` characters."""
    line = " ".join(anything.split())
    return line if len(line) <= limit else line[:limit] + "…"


def table(headings: list[tuple[str, str]], rows: list[list[str]]) -> str:
    """A table of cells that are HTML already; each heading is (class, text).

    On a narrow screen each row is a block, with the heading before each cell. A row of one cell
    goes right across, as a title does.
    """
    looks = [f'class="{name}" data-label="{html.text(title)}"' for name, title in headings]
    titles = [title for _, title in headings]
    head = html.row(titles, [f'class="{name}" scope="col"' for name, _ in headings], "th")
    across = [f'class="across" colspan="{len(headings)}"']
    made = (
        f"{html.row(map(Html, cells), looks if len(cells) == len(looks) else across)}\n"
        for cells in rows
    )
    return html.table(made, head).replace("<table>", '<table class="stacks">', 1)
