"""Parts at their true relative size, with a bar of millimetres; and in life size, for paper."""

from __future__ import annotations

from collections.abc import Sequence

from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import NBSP
from repairlib.core.tables import read_table
from repairlib.show.box import Box
from repairlib.show.canvas import MARGIN, METAL, PAPER, QUIET, Canvas, text_width, wrapped
from repairlib.show.parts import draw_body
from repairlib.show.picture import Picture, Pieces

Drawn = tuple[str, str, float, float]

# body, words under it, width and height of the body in mm, without leads: common practice
USUAL = (
    ("chip", "chip 0805", 2.0, 1.25),
    ("resistor", "¼ W resistor", 6.3, 2.4),
    ("disc", "ceramic disc", 6.0, 7.0),
    ("can", "SMD can", 7.8, 6.6),
    ("radial", "10µF 50V", 5.0, 11.0),
    ("radial", "1000µF 16V", 10.0, 16.0),
    ("axial", "axial 100µF 63V", 25.0, 10.0),
    ("snap-in can", "220µF 400V", 30.0, 35.0),
)
LETTERS, LINE, CAPTION = 14, 18, 84  # CAPTION is the width of the words under a part
GAP = 14  # between two parts
WIDEST = 960  # of a sheet
NARROW = 320  # of a piece of it on a phone
STEPS = (10, 8, 6, 5, 4, 3, 2, 1.5, 1)  # units for a millimetre, the largest that fits is taken
LIFE = 10.0  # units for a millimetre in life size, so that letters stay of a usual number
LIFE_LETTERS = 30.0
NARROWEST = 10.0  # mm, so that the words under a small can have room


def draw_to_scale(*parts: Drawn) -> Picture:
    """Draw parts in a row, all to one scale, with a bar of millimetres below.

    parts: each (body, words under it, width and height of its body in mm); without any, parts as
    they usually are. Raises RepairlibError for a body that is not in BODIES and for a size that is
    not above 0.

    >>> draw_to_scale(("chip", "chip", 2, 1.25), ("radial", "can", 10, 16))
    Parts drawn to one scale. chip: 2 × 1.25 mm. can: 10 × 16 mm. Below them a bar of 10 mm.
    """
    parts = parts or USUAL
    for _, words, wide, high in parts:
        if not (wide > 0 and high > 0):
            raise RepairlibError(f"{words}: {wide} × {high} mm", "not a size", "lengths above 0")
    scale = next((step for step in STEPS if _width(parts, step) <= WIDEST), STEPS[-1])
    reaches = [_reach(part, scale) for part in parts]
    words_below = max(reach.bottom for reach in reaches) + LINE
    captions = [wrapped(part[1], CAPTION, LETTERS, bold=True) for part in parts]
    bar_below = words_below + LINE * (1 + max(map(len, captions)))

    def drawn(places: Sequence[int]) -> Picture:
        shown = [parts[place] for place in places]
        floor = MARGIN - min(reaches[place].top for place in places)
        words_at, bar_at = floor + words_below, floor + bar_below
        canvas = Canvas(_width(shown, scale), bar_at + MARGIN)
        x = GAP / 2
        for place, part in zip(places, shown, strict=True):
            reach, lines = reaches[place], captions[place]
            middle = x + _column(part, scale) / 2
            with canvas.at(middle - (reach.left + reach.right) / 2, floor):
                _draw(canvas, part, scale)
            for row, line in enumerate(lines):
                canvas.text(middle, words_at + LINE * row, line, LETTERS, bold=True)
            canvas.text(middle, words_at + LINE * len(lines), _size(part), LETTERS, fill=QUIET)
            x += _column(part, scale) + GAP
        canvas.line(*_bar(GAP, bar_at, 10 * scale), pen=2.5)
        canvas.text(GAP + 10 * scale + 10, bar_at, "10 mm", LETTERS, "start", bold=True)
        said = " ".join(f"{part[1]}: {_size(part)}." for part in shown)
        return canvas.picture(f"Parts drawn to one scale. {said} Below them a bar of 10 mm.")

    whole = drawn(range(len(parts)))
    return Pieces(whole.svg, whole.alt, [drawn(places) for places in _pieces(parts, scale)])


def _pieces(parts: Sequence[Drawn], scale: float) -> list[list[int]]:
    """The places of the parts that stay together on a narrow page, which shows none smaller."""
    pieces: list[list[int]] = [[]]
    for place in range(len(parts)):
        together = [*pieces[-1], place]
        if pieces[-1] and _width([parts[one] for one in together], scale) > NARROW:
            pieces.append([place])
        else:
            pieces[-1] = together
    return pieces


def draw_life_size() -> Picture:
    """Round cans from below in life size: lay a part on it, and read its diameter and its pitch.

    The sheet is sized in millimetres. A screen or a printer may still shrink it, so there is a
    ruler on it to check.

    >>> print(draw_life_size().alt)
    Round cans from below, in life size: 5 mm across, leads 2 mm apart; 6.3 mm, leads 2.5 mm; 8 mm,
    leads 3.5 mm; 10 mm, leads 5 mm; 12.5 mm, leads 5 mm; 16 mm, leads 7.5 mm; 18 mm, leads 7.5 mm.
    Below them a ruler of 100 mm: check it with a real one first.
    """
    rows = read_table("radial-lead-spacing")
    cans = [(float(row["diameter_mm"]), float(row["lead_spacing_mm"])) for row in rows]
    columns = [max(diameter, NARROWEST) + 6 for diameter, _ in cans]
    canvas = Canvas(LIFE * sum(columns), LIFE * 50)
    left = 0.0
    for (diameter, pitch), wide in zip(cans, columns, strict=True):
        x, y = LIFE * (left + wide / 2), LIFE * 12
        canvas.circle(x, y, LIFE * diameter / 2, PAPER, pen=2.5)
        for side in (-1, 1):
            canvas.circle(x + side * LIFE * pitch / 2, y, LIFE * 0.35, METAL, pen=2)
        canvas.text(x, LIFE * 24, f"Ø {diameter:g}", LIFE_LETTERS, bold=True)
        canvas.text(x, LIFE * 28, f"{pitch:g}", LIFE_LETTERS, fill=QUIET)
        left += wide
    start = LIFE * 3
    told = "Ø across; below it the distance of the leads, in mm"
    canvas.text(start, LIFE * 33, told, LIFE_LETTERS, "start")
    _ruler(canvas, start, LIFE * 38)
    told = "Check it with a real ruler: a screen or a printer may shrink it."
    canvas.text(start, LIFE * 47.5, told, LIFE_LETTERS, "start")
    (first, pitch), *more = cans
    said = [f"{first:g} mm across, leads {pitch:g} mm apart"]
    said += [f"{diameter:g} mm, leads {pitch:g} mm" for diameter, pitch in more]
    return canvas.picture(
        f"Round cans from below, in life size: {'; '.join(said)}. Below them a ruler of 100 mm: "
        "check it with a real one first.",
        per_mm=LIFE,
    )


def _draw(canvas: Canvas, part: Drawn, scale: float) -> None:
    """The part with its body's foot at the origin, in the middle of it."""
    body, _, wide, high = part
    trial = Canvas(0, 0)
    draw_body(trial, body)
    own = trial.solid
    across, down = wide * scale / (own.right - own.left), high * scale / (own.bottom - own.top)
    foot = -across * (own.left + own.right) / 2, -down * own.bottom
    with canvas.scaled(*foot, across, down):
        draw_body(canvas, body)


def _reach(part: Drawn, scale: float) -> Box:
    trial = Canvas(0, 0)
    _draw(trial, part, scale)
    return trial.extent


def _column(part: Drawn, scale: float) -> float:
    reach = _reach(part, scale)
    lines = [*wrapped(part[1], CAPTION, LETTERS, bold=True), _size(part)]
    return max(reach.right - reach.left, *(text_width(line, LETTERS, True) for line in lines))


def _width(parts: Sequence[Drawn], scale: float) -> float:
    return sum(_column(part, scale) + GAP for part in parts)


def _size(part: Drawn) -> str:
    return f"{part[2]:g} × {part[3]:g}{NBSP}mm"


def _bar(x: float, y: float, long: float) -> list[tuple[float, float]]:
    return [(x, y - 6), (x, y + 6), (x, y), (x + long, y), (x + long, y - 6), (x + long, y + 6)]


def _ruler(canvas: Canvas, x: float, y: float) -> None:
    """100 mm, with a tick each millimetre and a figure each ten."""
    canvas.line((x, y), (x + 100 * LIFE, y))
    for millimetre in range(101):
        long = 32 if millimetre % 10 == 0 else 24 if millimetre % 5 == 0 else 16
        at = x + millimetre * LIFE
        canvas.line((at, y), (at, y + long), pen=1.5)
        if millimetre % 10 == 0:
            canvas.text(at, y + 52, str(millimetre), LIFE_LETTERS * 0.9)
