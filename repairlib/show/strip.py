"""Pictures beside each other, each with its words under it; on a narrow page they go below."""

from __future__ import annotations

from typing import NamedTuple

from repairlib.core.html import Html, image, text
from repairlib.show.picture import Picture

WIDE = 224  # pixels of one picture with its gap


class Shown(NamedTuple):
    """One picture of a strip: its name in bold, and what to do or to see."""

    picture: Picture
    name: str
    words: str


class Strip:
    """Pictures in a row that breaks where the page is narrow; the words stay at reading size.

    A notebook shows the pictures; everything else shows the names and the words.

    >>> Strip([Shown(Picture("<svg/>", "An empty sheet."), "1. Look", "Nothing yet.")])
    1. Look: Nothing yet. An empty sheet.
    """

    def __init__(self, shown: list[Shown]) -> None:
        self.shown = shown

    def __repr__(self) -> str:
        return "\n".join(f"{one.name}: {one.words} {one.picture.alt}" for one in self.shown)

    def _repr_html_(self) -> str:
        return Html("".join(map(_column, self.shown)))


def _column(one: Shown) -> str:
    return (
        '<div style="display:inline-block;vertical-align:top;max-width:100%;'
        f'width:{WIDE - 8}px;margin:0 8px 10px 0">{image(one.picture.svg, one.picture.alt)}'
        f"<div><strong>{text(one.name)}.</strong> {text(one.words)}</div></div>"
    )
