"""The map of a learner's own board on paper: their photo with its marks, and both sides drawn."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from repairlib.core.html import Html, picture, text
from repairlib.core.typed.table import with_point
from repairlib.recap import USUAL_WIDTH, Board, Position, plus_not_known, spoken
from repairlib.show.recap_board import component_side_first, draw_map
from repairlib.show.sheets.sheet_pieces import BOX, page, table

_PHOTO = re.compile(r"data:image/(?:jpeg|png);base64,[A-Za-z0-9+/=]+")
_SIGNS = {"left": (-1, 0), "right": (1, 0), "up": (0, -1), "down": (0, 1)}
NOT_KNOWN = "not known: look first"


def map_sheet(board: Board, photo: str = "", typed: Mapping[str, Any] | None = None) -> str:
    """One HTML page to print: the photo as it was marked, the board from both sides, its places.

    `photo` is a picture as a data address; `typed` the map that was made on it, for its size.
    """
    title = f"Map of {board.name}"
    unknown = plus_not_known(board)
    seen = spoken(board.seen_from)
    parts = [
        f"<h1>{text(title)}</h1>",
        '<p class="fields">Device <span></span> Name <span></span> Date <span></span></p>',
        f"<p>{len(board)} capacitors, {text(seen)}.</p>",
        f'<p class="caution"><strong>Plus not known: {text(", ".join(unknown))}.</strong> Look at '
        "each, and note it here, before you take it out.</p>"
        if unknown
        else "",
        _photo_with_marks(board, photo, typed or {}, seen),
        "<h2>The places</h2>",
        _places(board),
        '<h2 class="new-page">Both sides</h2>',
        *[picture(draw_map(board, behind)) for behind in component_side_first(board)],
    ]
    return page(title, parts, title)


def _places(board: Board) -> str:
    headings = [("ref", "Name"), ("", "Plus"), ("", "From the left"), ("", "From the top")]
    headings += [("", "Form"), ("", "Area"), ("tick", "Plus seen")]
    rows = [
        [
            text(one.reference),
            text(_plus(one)),
            f"{one.x_mm:g} mm",
            f"{one.y_mm:g} mm",
            text(one.form or "not known"),
            text(one.area),
            BOX,
        ]
        for one in board.positions
    ]
    return table(headings, rows)


def _plus(place: Position) -> str:
    return {"": NOT_KNOWN, "none": "no plus"}.get(place.plus, place.plus)


def _photo_with_marks(board: Board, photo: str, typed: Mapping[str, Any], seen: str) -> str:
    """The photo, a ring and a plus on each part; "" for what is no photo."""
    if not _PHOTO.fullmatch(photo):
        return ""
    wide = _length(typed.get("width_mm", "")) or USUAL_WIDTH
    high = _length(typed.get("height_mm", "")) or wide * 0.7
    scale = 1000 / wide
    marks = "".join(_mark(place, scale) for place in board.positions)
    return Html(
        f'<h2>Photo, {text(seen)}</h2><svg class="photo" role="img" aria-label="Photo of the board"'
        f' viewBox="0 0 1000 {high * scale:g}"><image href="{photo}" width="1000" '
        f'height="{high * scale:g}" preserveAspectRatio="none"/>{marks}</svg>'
    )


def _mark(place: Position, scale: float) -> str:
    x, y = place.x_mm * scale, place.y_mm * scale
    right, down = _SIGNS.get(place.plus, (0, 0))
    sign = {"": "?", "none": ""}.get(place.plus, "+")
    half = 8 * len(place.reference) + 4
    return (
        f'<circle cx="{x:g}" cy="{y:g}" r="20" fill="#fffc" stroke="#000" stroke-width="3"/>'
        f'<text x="{x + 11 * right:g}" y="{y + 11 * down + 9:g}">{sign}</text>'
        f'<rect x="{x - half:g}" y="{y + 22:g}" width="{2 * half}" height="26" fill="#fff"/>'
        f'<text x="{x:g}" y="{y + 43:g}">{text(place.reference)}</text>'
    )


def _length(figure: str) -> float:
    """A length as it was typed; 0 for what is none."""
    try:
        return float(with_point(figure.strip()))
    except ValueError:
        return 0.0
