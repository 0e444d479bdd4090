"""What a lesson stores as shown, put into the plain HTML of paper.

On the screen a lesson wraps, folds and colours; on paper a table is a table, drawings have the
size at which they are read, and what the lesson folds away stays there. A caution never does.
"""

from __future__ import annotations

from base64 import b64decode
from html.parser import HTMLParser

from repairlib.core.html import Html, escape
from repairlib.teach.paper.pictures import ROOM, on_paper, size_on_paper

_ROLES = {"table": "table", "row": "tr", "columnheader": "th", "rowheader": "th", "cell": "td"}
_SVG = "data:image/svg+xml;base64,"
ONE_ROW = '<div class="whole">'  # what stands in one row is never torn
_KEPT = ("colspan", "rowspan")


def for_paper(stored: str) -> Html:
    """HTML as a lesson stores it, for paper.

    >>> for_paper('<div role="table"><div role="row"><div role="cell">1</div></div></div>')
    '<table><tr><td>1</td></tr></table>'
    >>> for_paper("<p>Plain.</p><details><summary>More</summary>folded</details>")
    '<p>Plain.</p>'
    """
    writer = _Paper()
    writer.feed(stored)
    writer.close()
    if writer.drawings and not writer.told:  # drawings alone: side by side as they fit
        one_row = sum(writer.widths) <= ROOM
        return Html(f"{ONE_ROW if one_row else '<div>'}{''.join(writer.drawings)}</div>")
    return Html("".join(writer.made))


class _Paper(HTMLParser):
    """Writes each tag as paper wants it; `open` holds the tags that are open, as read and made."""

    def __init__(self):
        super().__init__(convert_charrefs=True)
        self.made: list[str] = []
        self.open: list[tuple[str, str, bool]] = []  # read as, made as, its children stand in a row
        self.folded = 0
        self.noted = 0
        self.drawings: list[str] = []
        self.widths: list[float] = []  # of the drawings, in mm
        self.told = False  # there are words beside the drawings

    def handle_starttag(self, tag, attributes):
        said = {name: value or "" for name, value in attributes}
        if tag in ("img", "br", "hr", "wbr"):
            self._alone(tag, said)
            return
        noted = self.noted or said.get("role") == "note"
        self.noted += bool(noted)
        self.folded += bool(self.folded or (tag == "details" and not self.noted))
        as_made = _ROLES.get(
            said.get("role", ""), {"details": "div", "summary": "div"}.get(tag, tag)
        )
        looks = [f'{name}="{escape(said[name])}"' for name in _KEPT if name in said]
        if said.get("role") == "note":
            looks.append('class="caution" role="note"')
        elif self.open and self.open[-1][2]:
            looks.append('class="piece"')
        elif "inline-block" in said.get("style", ""):
            looks.append('class="column"')
        in_a_row = "display:flex" in said.get("style", "") and as_made == "div"
        self.open.append((tag, as_made, in_a_row))
        self._write(f"<{' '.join((as_made, *looks))}>")

    def handle_endtag(self, tag):
        if not any(tag == one[0] for one in self.open):
            return
        while self.open:
            was, as_made, _ = self.open.pop()
            self._write(f"</{as_made}>")
            self.folded -= bool(self.folded)
            self.noted -= bool(self.noted)
            if was == tag:
                return

    def handle_data(self, data):
        self.told |= bool(data.strip()) and not self.folded
        self._write(escape(data, quote=False))

    def _alone(self, tag, said):
        source = said.get("src", "")
        if tag == "img" and source.startswith(_SVG):
            svg = b64decode(source.removeprefix(_SVG)).decode("utf-8")
            drawn = on_paper(svg, said.get("alt", ""))
            self.widths.append(size_on_paper(svg)[0])
            self.drawings.append(drawn)
            self._write(drawn)
        elif tag != "img":
            self._write(f"<{tag}>")

    def _write(self, piece: str) -> None:
        if not self.folded:
            self.made.append(piece)
