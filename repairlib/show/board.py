"""A board plan: parts to scale, seen from one side, each plus in its place."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import cos, pi, sin
from typing import Any

from repairlib.core.errors import RepairlibError
from repairlib.show.anatomy import arc
from repairlib.show.canvas import (
    BOARD,
    INK,
    NEGATIVE,
    PAPER,
    POSITIVE,
    QUIET,
    Canvas,
    text_width,
)
from repairlib.show.labels import Box, Labels
from repairlib.show.picture import Picture

PLAN_WIDTH = 1000
MARGIN = 24
HEADER = 40
LEGEND = 64
LABEL_SIZE = 17
TALLEST = 900  # of the board itself, so that a narrow board does not fill three screens

POLARITIES = ("polar", "non-polar", "none")
STATES = ("to do", "next", "done", "keep")
NEXT, DONE, KEEP = "#ffdf85", "#cfe3f1", PAPER
NEGATIVE_SIDE = "#44586a"


@dataclass(frozen=True)
class Placed:
    """One part on the plan, lengths already in SVG units."""

    reference: str
    x: float
    y: float
    half_width: float
    half_height: float
    round: bool
    angle: float | None  # radians, None where the positive end is not known
    polarity: str
    state: str
    open: bool = False

    @property
    def box(self) -> Box:
        return Box(
            self.x - self.half_width,
            self.y - self.half_height,
            self.x + self.half_width,
            self.y + self.half_height,
        )

    @property
    def label(self) -> str:
        words = [f"{self.reference}?" if self.open else self.reference]
        if self.polarity == "non-polar":
            words.append("NP")
        if self.state == "next":
            words.append("next")
        return " ".join(words)


def draw_board(
    parts: Iterable,
    width_mm: float,
    height_mm: float,
    *,
    title: str = "Board",
    seen: str = "seen from the component side",
) -> Picture:
    """Draw a board with every part to scale; `seen` says from which side.

    parts: dicts or objects with reference, x_mm, y_mm (centre, from the top left corner, y
    downwards), diameter_mm or width_mm and height_mm as they lie on the board, and optionally
    polarity ("polar", "non-polar" or "none"), angle_deg (where the positive end points: 0 right,
    90 up, 180 left, 270 down; absent when not known, then shown as "?") and state ("to do",
    "next", "done" or "keep") and open (true for a part that still waits for an answer: a "?" stands
    beside its reference).

    Raises RepairlibError for a part without place or size, or one that is off the board.

    >>> part = dict(reference="C1", x_mm=20, y_mm=15, diameter_mm=10, polarity="polar",
    ...             angle_deg=180, state="next")
    >>> draw_board([part], 60, 40)
    Board, 60 mm wide and 40 mm high, seen from the component side. 1 part. C1: 20 mm from the
    left, 15 mm from the top, positive end to the left, next.
    """
    parts = list(parts)
    if not (width_mm > 0 and height_mm > 0):
        raise RepairlibError(f"{width_mm} x {height_mm} mm", "not a board size", "lengths above 0")
    scale = min((PLAN_WIDTH - 2 * MARGIN) / width_mm, TALLEST / height_mm)
    placed = [_place(part, width_mm, height_mm, scale) for part in parts]
    wide, high = width_mm * scale, height_mm * scale
    canvas = Canvas(PLAN_WIDTH, HEADER + high + LEGEND)
    canvas.text(MARGIN, 20, f"{title}, {seen}", 19, "start", bold=True)
    with canvas.at((PLAN_WIDTH - wide) / 2, HEADER):
        canvas.rect(0, 0, wide, high, BOARD, round=6)
        labels = Labels(Box(2, 2, wide - 2, high - 2), [part.box for part in placed])
        for part in placed:
            _draw_part(canvas, part, labels)
        # Large parts first: their label goes inside, and small parts get the free places.
        for part in sorted(placed, key=lambda p: -p.half_width * p.half_height):
            _draw_label(canvas, part, labels)
    _draw_legend(canvas, HEADER + high, placed)
    return canvas.picture(
        _words(f"{title}, {width_mm:g} mm wide and {height_mm:g} mm high, {seen}", parts, placed)
    )


def _place(part, width_mm: float, height_mm: float, scale: float) -> Placed:
    reference = str(_field(part, "reference") or "").strip()
    x, y = _length(part, reference, "x_mm"), _length(part, reference, "y_mm")
    diameter = _field(part, "diameter_mm")
    if diameter:
        wide = high = _length(part, reference, "diameter_mm")
    else:
        wide, high = _length(part, reference, "width_mm"), _length(part, reference, "height_mm")
    if not (0 <= x <= width_mm and 0 <= y <= height_mm):
        raise RepairlibError(
            f"{reference} at {x:g}, {y:g} mm",
            "this place is off the board",
            f"x from 0 to {width_mm:g} mm, y from 0 to {height_mm:g} mm",
        )
    angle = _field(part, "angle_deg")
    return Placed(
        reference=reference,
        x=x * scale,
        y=y * scale,
        half_width=wide * scale / 2,
        half_height=high * scale / 2,
        round=bool(diameter),
        angle=None if angle in (None, "") else _length(part, reference, "angle_deg") * pi / 180,
        polarity=_word(part, reference, "polarity", "none", POLARITIES),
        state=_word(part, reference, "state", "to do", STATES),
        open=bool(_field(part, "open")),
    )


def _field(part, name: str):
    return part.get(name) if isinstance(part, dict) else getattr(part, name, None)


def _length(part, reference: str, name: str) -> float:
    value = _field(part, name)
    try:
        number = float(value)
    except (TypeError, ValueError):
        number = float("nan")
    if number - number != 0:
        raise RepairlibError(
            value, f"{reference or 'a part'} needs {name} as a number", "e.g. 12.5"
        )
    return number


def _word(part, reference: str, name: str, absent: str, accepted: tuple[str, ...]) -> str:
    word = _field(part, name) or absent
    if word not in accepted:
        raise RepairlibError(word, f"not a {name} for {reference}", ", ".join(accepted))
    return word


def _draw_part(canvas: Canvas, part: Placed, labels: Labels) -> None:
    fill = {"next": NEXT, "done": DONE}.get(part.state, KEEP)
    style: dict[str, Any] = {"pen": 4 if part.state == "next" else 2}
    if part.state == "keep":
        style["dash"] = "6 5"
    box = part.box
    if part.round:
        canvas.circle(part.x, part.y, part.half_width, fill, **style)
    else:
        canvas.rect(box.left, box.top, box.right - box.left, box.bottom - box.top, fill, **style)
    if part.polarity == "polar":
        _draw_polarity(canvas, part, labels)
    if part.state == "done":
        size = max(5, min(part.half_width, part.half_height) * 0.42)
        tick = [(-size, 0), (-size * 0.3, size * 0.7), (size, -size * 0.8)]
        canvas.line(*((part.x + dx, part.y + dy) for dx, dy in tick), pen=4)
        labels.block(Box(part.x - size, part.y - size, part.x + size, part.y + size))


def _draw_polarity(canvas: Canvas, part: Placed, labels: Labels) -> None:
    if part.angle is None:
        canvas.text(part.x, part.y, "?", LABEL_SIZE, fill=POSITIVE, bold=True)
        return
    across, up = cos(part.angle), -sin(part.angle)
    if part.round:
        back = 180 - part.angle * 180 / pi
        segment = arc(part.x, part.y, part.half_width, back - 50, back + 50)
        canvas.polygon(segment, NEGATIVE_SIDE)
        xs, ys = [x for x, _ in segment], [y for _, y in segment]
        labels.block(Box(min(xs), min(ys), max(xs), max(ys)))
    reach = abs(across) * part.half_width + abs(up) * part.half_height
    # A small part has no room inside: its plus stands just outside the outline.
    # Where a neighbour is in the way it goes inside after all, drawn smaller.
    arm, distance = 6, reach * 0.66 if reach >= 22 else reach + 9
    plus = _around_plus(part, across, up, distance, arm)
    if reach < 22 and not labels.is_free(plus):
        arm, distance = 4, reach * 0.4
        plus = _around_plus(part, across, up, distance, arm)
    x, y = (plus.left + plus.right) / 2, (plus.top + plus.bottom) / 2
    for dx, dy in ((arm, 0), (0, arm)):
        canvas.line((x - dx, y - dy), (x + dx, y + dy), stroke=POSITIVE, pen=arm / 2 + 0.5)
    labels.block(plus)
    if not part.round and reach >= 22:
        # No dark bar here: on a flat chip a bar would be read as positive.
        minus = _around_plus(part, -across, -up, distance, arm)
        y = (minus.top + minus.bottom) / 2
        canvas.line((minus.left + 2, y), (minus.right - 2, y), stroke=NEGATIVE, pen=3.5)
        labels.block(minus)


def _around_plus(part: Placed, across: float, up: float, distance: float, arm: float) -> Box:
    x, y = part.x + across * distance, part.y + up * distance
    return Box(x - arm - 2, y - arm - 2, x + arm + 2, y + arm + 2)


def _draw_label(canvas: Canvas, part: Placed, labels: Labels) -> None:
    wide = text_width(part.label, LABEL_SIZE, True)
    spot = labels.find(part.box, wide + 4, LABEL_SIZE + 2)
    if spot.leader:
        canvas.line((spot.x, spot.y), (part.x, part.y), stroke=QUIET, pen=1.2)
    colour = INK
    if part.state == "next":
        canvas.rect(spot.x - wide / 2 - 2, spot.y - 10, wide + 4, 20, INK, stroke="none", round=4)
        colour = PAPER
    canvas.text(spot.x, spot.y, part.label, LABEL_SIZE, fill=colour, bold=True)


def _draw_legend(canvas: Canvas, top: float, placed: list[Placed]) -> None:
    words = []
    if any(part.polarity == "polar" for part in placed):
        words += ["+ beside or in a part: positive lead"]
        if any(part.polarity == "polar" and part.round for part in placed):
            words.append("dark side of a round part: negative")
    if any(part.polarity == "polar" and part.angle is None for part in placed):
        words.append("? in a part: polarity not known, look first")
    if any(part.polarity == "non-polar" for part in placed):
        words.append("NP: either way round")
    canvas.text(MARGIN, top + 20, "   ·   ".join(words), 16, "start")
    states = {part.state for part in placed}
    meaning = {
        "next": "thick outline and 'next': fit this now",
        "done": "tick: fitted",
        "keep": "dashed outline: not fitted by this plan",
    }
    told = [text for state, text in meaning.items() if state in states]
    if any(part.open for part in placed):
        told.append("? beside a name: on hold, look at it first")
    canvas.text(MARGIN, top + 46, "   ·   ".join(told), 16, "start")


def _words(title: str, parts, placed: list[Placed]) -> str:
    count = f"{len(placed)} part" + ("" if len(placed) == 1 else "s")
    head = f"{title}. {count}."
    lines = []
    for part, raw in zip(placed, parts, strict=True):
        place = (
            f"{part.reference}: {float(_field(raw, 'x_mm')):g} mm from the left, "
            f"{float(_field(raw, 'y_mm')):g} mm from the top"
        )
        said = [place, _end_in_words(part), part.state if part.state != "to do" else ""]
        said.append("on hold" if part.open else "")
        lines.append(", ".join(word for word in said if word) + ".")
    return " ".join([head, *lines])


def _end_in_words(part: Placed) -> str:
    if part.polarity == "non-polar":
        return "non-polar, either way round"
    if part.polarity == "none":
        return ""
    if part.angle is None:
        return "positive end not known"
    degrees = part.angle * 180 / pi % 360
    sides = ("right", "upper right", "top", "upper left", "left", "lower left", "bottom")
    return f"positive end to the {(*sides, 'lower right')[round(degrees / 45) % 8]}"
