"""The bench card: a sheet to print that brings the page, and chosen markings, to a telephone.

One HTML page for A4 and Letter that needs nothing else. What a marking means is decided in
`repairlib.markings`.
"""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from urllib.parse import quote, urlsplit

from repairlib.core.errors import RepairlibError
from repairlib.core.html import Html, text
from repairlib.core.safety import HAZARDS
from repairlib.core.saving import saying_why
from repairlib.faces.page.square import square
from repairlib.markings import Reading, read
from repairlib.recap import Saved, write_whole
from repairlib.show.sheets.sheet_pieces import caution_in_full, page

TITLE = "Bench card"
ADDRESS = "an address such as https://bench.example/"
MODULE = 0.55  # mm at least; still above 0.5 mm on paper that a browser shrinks a page of A4 to
LARGE, SMALL = 80.0, 30.0  # mm, the width of a code with its quiet zone, where MODULE is kept
LONGEST = 450  # bytes in a code of version 16-M, which is 49 mm wide and leaves room for words
STYLE = """
@page { size: auto; }
h1 { margin-bottom: 3mm; }
.code { flex: none; } .code img { display: block; width: 100%; }
.whole { display: flex; gap: 8mm; align-items: center; break-inside: avoid; }
.whole p { font-size: 12pt; } .address { font-weight: bold; overflow-wrap: anywhere; }
.cards { display: grid; grid-template-columns: repeat(auto-fill, minmax(88mm, 1fr)); gap: 4mm;
  margin: 5mm 0; }
.card { display: flex; gap: 1mm; align-items: center; border: 1px solid #000;
  padding: 1.5mm 3mm 1.5mm 1mm; break-inside: avoid; }
.card div { min-width: 0; overflow-wrap: anywhere; } .card p { margin: .6mm 0 0; }
.card h2 { font-size: 14pt; margin: 0; white-space: pre-wrap; }
.stop { border-left: 6px solid #000; padding-left: 2mm; }
@media screen and (max-width: 700px) {
  .whole { flex-wrap: wrap; } .cards { grid-template-columns: 1fr; }
}
"""


def bench_card(address: str, markings: Sequence[str] = ()) -> str:
    """The sheet for the page at `address`: its code, and a card for each of the markings.

    A card holds the code that opens the page at the marking, and the likeliest reading. Raises
    RepairlibError for what is no address of the web, for an address so long that its codes are too
    large for a card, and for a marking that cannot be read.

    >>> sheet = bench_card("https://bench.example/", ["104K", "2R2"])
    >>> sheet.count("<img"), "100 nF ±10 %" in sheet.replace("\\xa0", " ")
    (3, True)
    """
    bare = checked_address(address)
    readings = [(marking, read(marking)) for marking in markings]
    cards = [_card(marking_address(bare, marking), marking, found) for marking, found in readings]
    keys = dict.fromkeys(key for _, found in readings for key in _cautions(found))
    parts = [
        f"<h1>{TITLE}: read a marking</h1>",
        _whole(bare),
        f'<div class="cards">{"".join(cards)}</div>' if cards else "",
        "<h2>Cautions in full</h2>" if keys else "",
        *map(caution_in_full, keys),
    ]
    return page(TITLE, parts, TITLE, STYLE)


def checked_address(address: str) -> str:
    """The address of the page, without what stands behind a #.

    >>> checked_address("https://bench.example/#104K")
    'https://bench.example/'
    """
    if not address.isprintable() or " " in address:
        raise RepairlibError(address, "a space or a control character is in it", ADDRESS)
    try:
        split = urlsplit(address)
        is_web = split.scheme in ("http", "https") and bool(split.hostname) and split.port != 0
    except ValueError:  # a port that is no number, a bracket left open
        is_web = False
    if not is_web:
        raise RepairlibError(address, "this is no address of a page on the web", ADDRESS)
    return address.partition("#")[0]


def marking_address(address: str, marking: str) -> str:
    """The address that opens the page at a marking.

    >>> marking_address("https://bench.example/", "4µ7 16V")
    'https://bench.example/#4%C2%B57%2016V'
    """
    return f"{address}#{quote(marking, safe='')}"


def write_card(address: str, markings: Sequence[str], out) -> str:
    """Write the bench card to the file `out`; the line that says so.

    An earlier bench card is replaced, any other file is left alone. Raises RepairlibError for what
    `bench_card` refuses, and when nothing can be written; then nothing has changed.
    """
    path = Path(out)
    with saying_why(path):
        there = path.exists()
        if path.is_dir():
            raise RepairlibError(out, "this is a folder", "the name of a file, such as card.html")
    if there and not _is_card(path):
        wrong = "this file exists and is no bench card; nothing was overwritten"
        raise RepairlibError(out, wrong, "a new name")
    sheet = bench_card(address, markings).encode("utf-8")
    return str(Saved(write_whole(path, sheet, overwrite=there)))


def _is_card(path: Path) -> bool:
    """Whether the file begins as every bench card does."""
    head = page(TITLE, (), "").partition("<style>")[0].encode("utf-8")
    with saying_why(path):
        if not path.is_file():
            return False
        with path.open("rb") as file:
            return file.read(len(head)) == head


def _whole(address: str) -> str:
    return (
        f'<div class="whole">{_code(address, LARGE)}<div>'
        "<p>Point the camera of a telephone at a code, or type the address:</p>"
        f'<p class="address">{text(address)}</p></div></div>'
    )


def _card(address: str, marking: str, readings: Sequence[Reading]) -> str:
    first, *others = readings
    says = [f"<p>{text(f'{first.headline}: {first.on}')}</p>"]
    if first.doubt:
        says.append(f"<p>Doubtful: {text(first.doubt)}</p>")
    if others:
        says.append("<p>It can also mean something else: see the page.</p>")
    if keys := _cautions(readings):
        told = " ".join(f"{HAZARDS[key].title}." for key in keys)
        says.append(f'<p class="stop"><strong>CAUTION:</strong> {text(told)}</p>')
    return Html(
        f'<div class="card">{_code(address, SMALL)}'
        f"<div><h2>{text(marking)}</h2>{''.join(says)}</div></div>"
    )


def _cautions(readings: Sequence[Reading]) -> list[str]:
    return list(dict.fromkeys(key for reading in readings for key in reading.cautions))


def _code(address: str, width: float) -> str:
    """The code of an address, `width` mm wide, or wider where its modules would be too small."""
    length = len(address.encode("utf-8"))
    if length > LONGEST:
        wrong = f"its code is too large for a card: {length} bytes"
        raise RepairlibError(address, wrong, f"address and marking of up to {LONGEST} bytes")
    code = square(address)
    wide = max(width, code.across * MODULE)
    return f'<div class="code" style="width:{wide:g}mm">{code._repr_html_()}</div>'
