"""Drawings side by side where there is room, and under each other on a narrow screen."""

from __future__ import annotations

from xml.etree import ElementTree

from repairlib.core.html import Html
from repairlib.show.picture import Picture

SMALLEST = 0.7  # of its full size: a drawing that would be smaller goes on the next line


class Beside:
    """Pictures in reading order. A notebook shows the drawings, everything else their words."""

    def __init__(self, pictures: tuple[Picture, ...]) -> None:
        self.pictures = pictures

    def __repr__(self) -> str:
        return "\n".join(picture.alt for picture in self.pictures)

    def _repr_html_(self) -> str:
        cells = "".join(map(_cell, self.pictures))
        return Html(f'<div style="display:flex;flex-wrap:wrap;align-items:flex-end">{cells}</div>')


def side_by_side(*pictures: Picture) -> Beside:
    """Show the pictures in one line, as many as the screen is wide enough for.

    >>> side_by_side(Picture("<svg/>", "A can."), Picture("<svg/>", "A disc."))
    A can.
    A disc.
    """
    return Beside(pictures)


def _cell(picture: Picture) -> str:
    wide = float(ElementTree.fromstring(picture.svg).get("viewBox", "0 0 660 0").split()[2])
    least = f"min-width:min(100%,{SMALLEST * wide:.0f}px)"
    look = f"flex:{wide:.0f} 1 0;{least};max-width:{wide:.0f}px"
    return f'<div style="{look}">{picture._repr_html_()}</div>'
