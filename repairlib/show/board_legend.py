"""The lines below the plan of a board: what its signs mean, of those that are on it."""

from __future__ import annotations

from collections.abc import Sequence

from repairlib.show.canvas import INK, POSITIVE, text_width, wrapped
from repairlib.show.placed import Placed

HANDED_ON = (
    "double red line: on the mains or above 60 V dc, with all that stands near it: "
    "leave it to a qualified person"
)
LETTERS = 24  # large enough for a phone


def legend_of(placed: Sequence[Placed], width: float) -> list[tuple[str, str]]:
    """The lines below the board, each with its colour."""
    lines = [
        (line, INK)
        for said in (_of_parts(placed), _of_work(placed))
        for line in _in_lines(said, width)
    ]
    if any(part.handed_on for part in placed):
        lines += [(line, POSITIVE) for line in wrapped(HANDED_ON, width, LETTERS)]
    return lines


def signs_of(placed: Sequence[Placed]) -> list[str]:
    """What the signs mean of those that are on the board, each in a sentence."""
    handed_on = [HANDED_ON] if any(part.handed_on for part in placed) else []
    return [*_of_parts(placed), *_of_work(placed), *handed_on]


def _of_parts(placed: Sequence[Placed]) -> list[str]:
    signs = []
    if any(part.polarity == "polar" for part in placed):
        signs += ["+ beside or in a part: positive lead"]
        if any(part.polarity == "polar" and part.round for part in placed):
            signs.append("dark side of a round part: negative")
    if any(part.polarity == "polar" and part.angle is None for part in placed):
        signs.append("? in a part: polarity not known, look first")
    if any(part.polarity == "non-polar" for part in placed):
        signs.append("NP: bipolar, either way round")
    return signs


def _of_work(placed: Sequence[Placed]) -> list[str]:
    told = []
    if any(part.stop for part in placed):
        told.append("number: the stop in the order of work")
    if any(part.state == "here" for part in placed):
        told.append("blue ring: you are here")
    if any(part.state == "keep" for part in placed):
        told.append("dashed outline: not fitted by this plan")
    if any(part.open for part in placed):
        told.append("? beside a name: on hold, look at it first")
    return told


def _in_lines(said: list[str], width: float) -> list[str]:
    """The sentences side by side, in as many lines as they need."""
    lines: list[str] = []
    for sentence in said:
        longer = f"{lines[-1]}   ·   {sentence}" if lines else sentence
        if lines and text_width(longer, LETTERS) <= width:
            lines[-1] = longer
        else:
            lines.append(sentence)
    return lines
