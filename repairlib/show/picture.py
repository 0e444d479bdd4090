"""A finished drawing: SVG text together with the words that replace it."""

from __future__ import annotations

import base64
import html
from pathlib import Path


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
        # An image, not inline SVG: notebooks that are not trusted yet drop inline SVG.
        data = base64.b64encode(self.svg.encode("utf-8")).decode("ascii")
        return (
            f'<img alt="{html.escape(self.alt)}" style="max-width:100%" '
            f'src="data:image/svg+xml;base64,{data}">'
        )

    def save(self, path: str | Path) -> None:
        """Write the drawing to an .svg file."""
        Path(path).write_text(self.svg, encoding="utf-8", newline="\n")
