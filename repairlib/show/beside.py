"""Drawings side by side where there is room, and under each other on a narrow screen."""

from __future__ import annotations

from repairlib.core.html import Html
from repairlib.show.picture import Picture


class Beside:
    """Pictures in reading order. A notebook shows the drawings, everything else their words."""

    def __init__(self, pictures: tuple[Picture, ...]) -> None:
        self.pictures = pictures

    def __repr__(self) -> str:
        return "\n".join(picture.alt for picture in self.pictures)

    def _repr_html_(self) -> str:
        return Html("".join(picture._repr_html_() for picture in self.pictures))


def beside(*pictures: Picture) -> Beside:
    """Show the pictures in one line, as many as the screen is wide enough for.

    >>> beside(Picture("<svg/>", "A can."), Picture("<svg/>", "A disc."))
    A can.
    A disc.
    """
    return Beside(pictures)
