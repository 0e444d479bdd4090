"""A finished drawing: SVG text together with the words that replace it."""

from __future__ import annotations

from pathlib import Path

from repairlib.core.html import Html, image

# At least as wide as the drawing room of a phone, where its letters are large enough.
PIECE = '<div style="flex:1 1 330px;min-width:0;max-width:max-content">'


class Picture:
    """An SVG drawing and its text for those who cannot see it.

    svg: the whole SVG document. alt: what the drawing shows, in sentences.
    A notebook shows the drawing; everything else shows the words.

    >>> Picture("<svg/>", "An empty sheet.")
    An empty sheet.
    """

    def __init__(self, svg: str, alt: str) -> None:
        self.svg = svg
        self.alt = alt

    def __repr__(self) -> str:
        return self.alt

    def _repr_html_(self) -> str:
        return image(self.svg, self.alt)

    def save(self, path: str | Path) -> None:
        """Write the drawing to an .svg file."""
        Path(path).write_text(self.svg, encoding="utf-8", newline="\n")


class Pieces(Picture):
    """A long drawing that a notebook shows in pieces, side by side, or below each other.

    svg: the whole in one, for paper. alt: of the whole. pieces: each a drawing with its own words.
    """

    def __init__(self, svg: str, alt: str, pieces: list[Picture]) -> None:
        super().__init__(svg, alt)
        self.pieces = pieces

    def _repr_html_(self) -> str:
        shown = "".join(f"{PIECE}{piece._repr_html_()}</div>" for piece in self.pieces)
        return Html(f'<div style="display:flex;flex-wrap:wrap;align-items:end">{shown}</div>')
