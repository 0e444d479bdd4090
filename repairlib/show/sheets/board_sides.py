"""The board on the bench sheet: from both sides, or squared fields to draw it in.

On paper and on a wide screen a drawing is whole. On a narrow screen it stands in strips, so that
its letters stay as large as they are drawn and nothing has to be pushed sideways.
"""

from __future__ import annotations

import re
from math import ceil

from repairlib.core.html import Html, text
from repairlib.recap import COMPONENT, SOLDER, Plan, spoken, turned_over
from repairlib.show.picture import Picture
from repairlib.show.recap_board import component_side_first, draw_both_sides, signs_on_map

STRIP = 366  # the widest strip, in units of a drawing: on a phone a unit is a pixel
OVERLAP = 66  # a part at the seam is whole in one of the two strips, with its name
_SIZE = re.compile(r'viewBox="0 0 (\S+) (\S+)"')
_TO_DRAW_ON = (
    (COMPONENT, "left and right as you see the parts"),
    (SOLDER, "turned over like a page: left and right change places"),
)


def board_sides(plan: Plan) -> Html:
    """The board of the plan from both sides, each with its side named.

    Once, with a place to write the side, where the board file does not state it; two squared
    fields where there is no board.
    """
    pictures = draw_both_sides(plan, captioned=False)
    if not pictures:
        fields = "".join(_field(side, how) for side, how in _TO_DRAW_ON)
        said = "No map of this board is known. Draw each part with its plus, before any comes out."
        return Html(f"<h2>Map of the board</h2><p>{said}</p><div class=maps>{fields}</div>")
    assert plan.board is not None
    seen = plan.board.seen_from
    sides = [turned_over(seen) if back else seen for back in component_side_first(plan.board)]
    maps = "".join(
        _figure(picture, plan.board.name, side, f"board-side-{number}")
        for number, (picture, side) in enumerate(zip(pictures, sides, strict=True), 1)
    )
    signs = " · ".join(text(sign) for sign in signs_on_map(plan))
    return Html(f'<div class="maps">{maps}</div><p class="signs"><b>Signs:</b> {signs}</p>')


def _figure(picture: Picture, called: str, side: str, name: str) -> str:
    wide, high = _size(picture)
    looks = "side upright" if high > 0.8 * wide else "side"
    told = f"{called[:1].upper()}{called[1:]}, {spoken(side)}"
    if side.startswith(SOLDER):
        told += ": mirrored, as it lies when you solder"
    written = "" if side else ': write it here: <span class="write"></span>'
    return (
        f'<figure class="{looks}"><figcaption>{text(told)}{written}</figcaption>'
        f'<div class="whole">{_inline(picture, name)}</div>'
        f'<div class="strips">{_strips(name, wide, high)}</div></figure>'
    )


def _inline(picture: Picture, name: str) -> str:
    """The drawing in the page itself, so that strips can show it again."""
    wide, high = _size(picture)
    shapes = picture.svg.partition("</title>")[2]
    return (
        f'<svg id="{name}" width="{wide:g}" height="{high:g}" viewBox="0 0 {wide:g} {high:g}" '
        f'role="img" aria-label="{text(picture.alt)}" class="drawn">{shapes}'
    )


def _strips(name: str, wide: float, high: float) -> str:
    """The drawing in pieces side by side, none wider than STRIP, each a little over the next."""
    count = max(1, ceil((wide - OVERLAP) / (STRIP - OVERLAP)))
    piece = (wide + OVERLAP * (count - 1)) / count
    told = f"<p>In {count} pieces from left to right, each a little over the next.</p>"
    pieces = "".join(
        f'<svg width="{piece:.0f}" viewBox="{at * (piece - OVERLAP):.1f} 0 {piece:.1f} {high:g}" '
        f'aria-hidden="true"><use href="#{name}" width="{wide:g}" height="{high:g}"/></svg>'
        for at in range(count)
    )
    return f"{told if count > 1 else ''}{pieces}"


def _size(picture: Picture) -> tuple[float, float]:
    wide, high = _SIZE.search(picture.svg).groups()  # type: ignore[union-attr]
    return float(wide), float(high)


def _field(side: str, how: str) -> str:
    """Squares of 5 mm on paper, 90 mm wide and 65 mm high."""
    lines = [f"M{x} 0V65" for x in range(0, 91, 5)] + [f"M0 {y}H90" for y in range(0, 66, 5)]
    return (
        f'<figure class="field"><figcaption>{side.capitalize()}, {how}. Edge that is down: '
        '<span class="write"></span></figcaption><svg viewBox="-.2 -.2 90.4 65.4" role="img" '
        f'aria-label="squared field for the {side}"><path d="{"".join(lines)}" fill="none" '
        'stroke="#888" stroke-width=".15"/></svg></figure>'
    )
