"""The empty place of a part: its pads and nets, what stands near, the twin, a torn pad bridged.

Seen from above, not to scale. Nothing is drawn that was not said: without a mark there is none.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.missing_parts import Place
from repairlib.show.canvas import (
    BOARD,
    COPPER,
    INK,
    NEGATIVE,
    PAPER,
    QUIET,
    Canvas,
    sheet_round,
    wrapped,
)
from repairlib.show.picture import Picture
from repairlib.show.tools import curve

WIDTH = 330.0  # a phone's
LETTERS, SMALL = 15.0, 13.0
PLASTIC, BARE, GLUE, SOLDER = "#3d454d", "#cdbb8d", "#f2e7a0", "#c9d0d6"
LEFT, RIGHT = "left pad", "right pad"
SIDES = {LEFT: -1, RIGHT: 1}
MIDDLE, EDGE = 42.0, 150.0  # of a pad, and where its track leaves the board
VIA, VIA_RIM = 104.0, 8.0
BOX_WIDE, BOX_HIGH, COLUMN, ROW = 96.0, 38.0, 108.0, 50.0
MOST_BESIDE = 6
UNKNOWN = "net not known"


class Beside(NamedTuple):
    """A part that stands near: its name, and the pad whose net it is on, "" where that is open."""

    name: str
    on: str = ""


def draw_missing_place(
    reference: str = "",
    left: str = UNKNOWN,
    right: str = UNKNOWN,
    *,
    mark: str = "no mark",
    mark_at: str = LEFT,
    beside: Sequence[Beside] = (),
    twin: str = "",
    torn: str = "",
    landing: str = "",
    bridged: bool = False,
) -> Picture:
    """Draw an empty place with two pads.

    `left` and `right` name the nets. `mark` is what is printed at one pad, one of MARKS; `beside`
    are parts near by, six at most; `twin` says what stands in the same place elsewhere. `torn`
    names the pad that is gone, `landing` the point where its net goes on, `bridged` draws the wire
    to it. Raises RepairlibError for another mark or pad, and for a wire without both its ends.

    >>> draw_missing_place("C7", "+5 V", "ground", mark="plus sign", torn="left pad")
    The empty place C7, with two pads. Left pad: +5 V. Right pad: ground. Printed: plus sign at the
    left pad. The left pad is torn off.
    """
    _check(mark, mark_at, beside, torn, landing, bridged)

    def draw(canvas: Canvas) -> None:
        top = _rows(beside) * -ROW - (78 if landing or beside else 62)
        bottom = 186.0 if twin else 78.0
        canvas.rect(-WIDTH / 2 + 4, top, WIDTH - 8, bottom - top, BOARD, pen=1, round=6)
        _neighbours(canvas, beside)
        _tracks(canvas, torn)
        _pads(canvas, torn)
        canvas.rect(-72, -32, 144, 64, stroke=QUIET, pen=1, dash="5 4")
        if reference.strip():
            canvas.fitted_text(0, -46, [reference], 110, LETTERS, bold=True)
        for side, net in ((-1, left), (1, right)):
            _words(canvas, side * 114, 34, net, 84)
        if mark != "no mark":
            MARKS[mark](canvas, SIDES[mark_at] * 86, -21)
        if landing:
            _landing(canvas, SIDES[torn], landing)
        if bridged:
            _bridge(canvas, SIDES[torn])
        if twin:
            _twin(canvas, 140, twin)

    sheet, _ = sheet_round(draw, width=WIDTH, margin=4)
    return sheet.picture(
        _said(reference, left, right, mark, mark_at, beside, twin, torn, landing, bridged)
    )


def draw_place(place: Place, **more) -> Picture:
    """Draw a place as it was read from typed text; `more` goes to `draw_missing_place`.

    >>> from repairlib.missing_parts import read_place
    >>> draw_place(read_place("C? between +3.3 V and ground, twin channel has 10 µF"))
    The empty place C?, with two pads. Left pad: +3.3 V. Right pad: ground. On the twin: 10 µF.
    """
    nets = [net.name for net in place.nets] + [UNKNOWN] * 2
    twin = place.twin
    if twin is not None and "twin" not in more:
        more["twin"] = "empty too" if twin.empty else str(twin.value or twin.family or twin.text)
    reference = f"{place.letters}?" if place.letters else ""
    return draw_missing_place(reference, nets[0], nets[1], **more)


def _check(
    mark: str, mark_at: str, beside: Sequence[Beside], torn: str, landing: str, bridged: bool
) -> None:
    if mark != "no mark" and mark not in MARKS:
        raise RepairlibError(mark, "not a mark that is drawn here", ", ".join(("no mark", *MARKS)))
    for pad in (mark_at, torn or LEFT, *(one.on or LEFT for one in beside)):
        if pad not in SIDES:
            raise RepairlibError(pad, "not a pad of this place", ", ".join(SIDES))
    if len(beside) > MOST_BESIDE:
        raise RepairlibError(f"{len(beside)} parts", "too many to draw", f"{MOST_BESIDE} at most")
    if (landing and not torn) or (bridged and not landing):
        raise RepairlibError("bridge", "it has no two ends", "torn, and the landing of its net")


def _in_lines(words: str, wide: float, size: float, most: int, bold: bool = False) -> list[str]:
    """Words in so many lines at most; what is left stands in the last one."""
    lines = wrapped(words, wide, size, bold)
    return lines if len(lines) <= most else [*lines[: most - 1], " ".join(lines[most - 1 :])]


def _words(canvas: Canvas, x: float, y: float, words: str, wide: float) -> None:
    """Words below each other, the first line at a point."""
    for row, line in enumerate(_in_lines(words, wide, SMALL, 3)):
        canvas.fitted_text(x, y + row * 16, [line], wide, SMALL)


def _on_a_body(canvas: Canvas, x: float, y: float, words: str, wide: float) -> None:
    """Words in two lines at most on a dark body, round a point."""
    lines = _in_lines(words, wide, SMALL, 2)
    for row, line in enumerate(lines):
        at = y + 16 * (row - (len(lines) - 1) / 2)
        canvas.fitted_text(x, at, [line], wide, SMALL, fill=PAPER)


def _tracks(canvas: Canvas, torn: str) -> None:
    for pad, side in SIDES.items():
        begin = MIDDLE + 18 if pad == torn else MIDDLE
        canvas.line((side * begin, 0), (side * EDGE, 0), stroke=COPPER, pen=7)


def _pads(canvas: Canvas, torn: str) -> None:
    for pad, side in SIDES.items():
        x = side * MIDDLE
        if pad != torn:
            canvas.rect(x - 15, -21, 30, 42, COPPER, pen=1.5)
            continue
        ragged = [(-15, -19), (-4, -22), (8, -18), (16, -21), (14, 6), (17, 20), (2, 18), (-14, 21)]
        canvas.polygon([(x + dx, dy) for dx, dy in ragged], BARE, pen=1.2, dash="4 3")


def _place_of(beside: Sequence[Beside]) -> list[tuple[Beside, float, int]]:
    """Each neighbour with the middle of its column and its row, counted upwards."""
    rows = {-1: 0, 0: 0, 1: 0}
    placed = []
    for one in beside:
        side = SIDES.get(one.on, 0)
        placed.append((one, side * COLUMN, rows[side]))
        rows[side] += 1
    return placed


def _rows(beside: Sequence[Beside]) -> int:
    return max((row + 1 for _, _, row in _place_of(beside)), default=0)


def _neighbours(canvas: Canvas, beside: Sequence[Beside]) -> None:
    """The parts near by, above the place; tracks first, so that they pass below the bodies."""
    placed = [(one, x, -ROW * (row + 1) - 48) for one, x, row in _place_of(beside)]
    for one, x, y in placed:
        if one.on:
            track = SIDES[one.on] * (EDGE - 2)
            canvas.line((x, y), (track, y), (track, 0), stroke=COPPER, pen=5)
    for one, x, y in placed:
        canvas.rect(x - BOX_WIDE / 2, y - BOX_HIGH / 2, BOX_WIDE, BOX_HIGH, PLASTIC, pen=1)
        _on_a_body(canvas, x, y, one.name, BOX_WIDE - 10)


def _landing(canvas: Canvas, side: int, name: str) -> None:
    """The via or other point where the net goes on, with its name above the place."""
    lines = _in_lines(name, 88, SMALL, 2)
    canvas.line((side * VIA, -38), (side * VIA, -VIA_RIM - 2), stroke=QUIET, pen=1)
    canvas.circle(side * VIA, 0, VIA_RIM, COPPER, pen=1.2)
    canvas.circle(side * VIA, 0, 3, PAPER, pen=0.8)
    for row, line in enumerate(reversed(lines)):
        canvas.fitted_text(side * VIA, -46 - 16 * row, [line], 88, SMALL)


def _bridge(canvas: Canvas, side: int) -> None:
    """The wire from the landing to where the part's end will stand, with a drop of glue."""
    canvas.ellipse(side * 76, 16, 9, 7, GLUE, stroke=QUIET, pen=1)
    wire = curve((side * VIA, 0), (side * 92, 22), (side * 62, 22), (side * MIDDLE, 0))
    for pen, stroke in ((7, INK), (4.5, NEGATIVE)):
        canvas.line(*wire, stroke=stroke, pen=pen)
    for x in (VIA, MIDDLE):
        canvas.circle(side * x, 0, 6, SOLDER, pen=1)


def _twin(canvas: Canvas, y: float, words: str) -> None:
    """The same place elsewhere, with what stands on it."""
    canvas.line((-EDGE, 84), (EDGE, 84), stroke=QUIET, pen=1, dash="2 4")
    canvas.text(-EDGE, 101, "twin", LETTERS, "start", bold=True)
    for side in SIDES.values():
        canvas.line((side * MIDDLE, y), (side * EDGE, y), stroke=COPPER, pen=7)
        canvas.rect(side * MIDDLE - 15, y - 21, 30, 42, COPPER, pen=1.5)
    if words.startswith("empty"):
        canvas.fitted_text(0, y + 33, [words], 200, SMALL)
        return
    canvas.rect(-50, y - 24, 100, 48, PLASTIC, pen=1, round=3)
    _on_a_body(canvas, 0, y, words, 92)


def _plus(canvas: Canvas, x: float, y: float) -> None:
    canvas.line((x - 8, y), (x + 8, y), pen=3.5)
    canvas.line((x, y - 8), (x, y + 8), pen=3.5)


def _minus(canvas: Canvas, x: float, y: float) -> None:
    canvas.line((x - 8, y), (x + 8, y), pen=3.5)


def _white_bar(canvas: Canvas, x: float, y: float) -> None:
    canvas.rect(x - 5, y - 11, 10, 22, PAPER, pen=1.5)


def _dot(canvas: Canvas, x: float, y: float) -> None:
    canvas.circle(x, y, 5.5, INK, pen=0.5)


MARKS: dict[str, Callable[[Canvas, float, float], None]] = {
    "plus sign": _plus,
    "minus sign": _minus,
    "white bar": _white_bar,
    "dot": _dot,
}


def _said(
    reference: str,
    left: str,
    right: str,
    mark: str,
    mark_at: str,
    beside: Sequence[Beside],
    twin: str,
    torn: str,
    landing: str,
    bridged: bool,
) -> str:
    """The drawing in sentences."""
    name = f" {reference}" if reference else ""
    said = [f"The empty place{name}, with two pads", f"Left pad: {left}", f"Right pad: {right}"]
    if mark != "no mark":
        said.append(f"Printed: {mark} at the {mark_at}")
    for one in beside:
        on = f", on the net of the {one.on}" if one.on else ""
        said.append(f"Near it: {one.name}{on}")
    if torn:
        said.append(f"The {torn} is torn off")
    if landing and not bridged:
        said.append(f"Its net goes on at {landing}")
    if bridged:
        said.append(f"A wire, glued down, goes from there to {landing}")
    if twin:
        said.append(f"On the twin: {twin}")
    return ". ".join(said) + "."
