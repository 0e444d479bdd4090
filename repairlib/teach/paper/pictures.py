"""Drawings on paper: how large, and in words where a colour tells what grey cannot.

A drawing of the library is made for a screen. On paper it gets the size at which its smallest
letters are still read easily, and no more.
"""

from __future__ import annotations

import re

from repairlib.core.html import Html, image, text
from repairlib.markings import MULTIPLIERS
from repairlib.show.picture import Picture

ROOM = 190.0  # mm across a page of either size, less its margins
LETTERS = 8.0  # pt, the smallest letters of a drawing on paper
_PIXEL, _POINT = 25.4 / 96, 25.4 / 72  # mm
_WORDLESS = 0.6  # of its size on the screen, for a drawing without letters
_IN_MM = {"mm": 1.0, "pt": _POINT, "px": _PIXEL, "": _PIXEL}
_ROOT = re.compile(r"<svg[^>]*>")
_WIDTH = re.compile(r'\bwidth="([\d.]+)(mm|pt|px)?"')
_SEEN = re.compile(r'viewBox="\S+ \S+ ([\d.]+) ([\d.]+)"')
_LETTERS = re.compile(r'font-size[=:]\s*"?([\d.]+)|font: ([\d.]+)px')
_GREYS = ("black", "grey", "white")  # told from each other without colour
_COLOUR = re.compile(rf"\b(?:{'|'.join(one for one in MULTIPLIERS if one not in _GREYS)})\b")


def size_on_paper(svg: str) -> tuple[float, float]:
    """The width and height [mm] at which a drawing is printed.

    >>> svg = '<svg width="200" height="100" viewBox="0 0 200 100"><text font-size="16"/></svg>'
    >>> [round(one, 1) for one in size_on_paper(svg)]
    [35.3, 17.6]
    """
    root = _ROOT.search(svg)
    assert root, "a drawing is an SVG"
    found, seen = _WIDTH.search(root[0]), _SEEN.search(root[0])
    assert found and seen, "a drawing states its size"
    wide, high = float(seen[1]), float(seen[2])
    width = float(found[1]) * _IN_MM[found[2] or ""]
    if found[2] != "mm":  # in mm it is drawn as large as life
        sizes = [float(one or other) for one, other in _LETTERS.findall(svg)]
        width = wide * LETTERS * _POINT / min(sizes) if sizes else width * _WORDLESS
    width = min(width, ROOM)
    return width, width * high / wide


def on_paper(svg: str, alt: str) -> Html:
    """A drawing as an image of its size on paper."""
    width, _ = size_on_paper(svg)
    made = image(svg, alt).replace("max-width:100%", f"width:{width:.1f}mm;max-width:100%", 1)
    return Html(made)


def in_words(picture: Picture) -> Html:
    """The words of a drawing, where its colours tell what grey cannot; else nothing."""
    if not _COLOUR.search(picture.alt):
        return Html("")
    return Html(f'<p class="words"><small>In words: {text(picture.alt)}</small></p>')
