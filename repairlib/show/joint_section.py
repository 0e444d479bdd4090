"""A heated joint cut through its middle: what is where, and how hot at the end of heating.

Sideways to scale; heights are stretched so that thin copper can be seen. Every part is named with
its temperature; the shades only help the eye.
"""

from __future__ import annotations

from itertools import pairwise

from repairlib.heat import TIPS, Heating
from repairlib.show.canvas import INK, PAPER, QUIET, Canvas
from repairlib.show.picture import Picture

WIDTH, MIDDLE, HALF, TOP = 800.0, 240.0, 225.0, 46.0
SHOWN = 3.4e-3  # m on either side of the axis
HEIGHTS = {
    "tip": 80,
    "near fillet": 34,
    "near copper": 9,
    "upper board": 60,
    "plane": 9,
    "lower board": 60,
    "far copper": 9,
    "far fillet": 34,
    "free lead": 40,
    "body": 50,
    "mat": 46,
    "bench": 36,
}
SHADES = (
    (40, "#f4f7fa"),
    (70, "#fdf3d6"),
    (100, "#fbe6ad"),
    (135, "#f8d27f"),
    (183, "#f4b65a"),
    (217, "#ee9645"),
    (260, "#e27338"),
    (300, "#cf5230"),
    (float("inf"), "#b03a2a"),
)
NAMES = {
    "joint": "joint, near side (coolest solder)",
    "far side": "far side (coolest solder)",
    "board under the pad": "board under the pad",
    "plastic at the lead": "plastic at the lead",
    "board below": "underside of the board",
    "mat top": "top of the mat",
    "mat underside": "under the mat",
}
_BANDS = {
    "joint": "near fillet",
    "board under the pad": "upper board",
    "far side": "far fillet",
    "plastic at the lead": "body",
    "board below": "far copper",
    "mat top": "mat",
    "mat underside": "mat",
}


def draw_joint_section(run: Heating) -> Picture:
    """The joint cut through at the end of heating, its parts named with their peak temperatures.

    >>> from repairlib.heat import heat_joint
    >>> print(draw_joint_section(heat_joint(kind="surface")).alt.splitlines()[0])
    A surface joint cut through its middle, after about 1 s under the iron at 350 °C.
    """
    made = run.made
    places, bottom = _places(made)
    canvas = Canvas(WIDTH, bottom)
    tool = f"{run.setup.source} at {run.setup.celsius:g} °C"
    title = f"After {run.held} under the {tool}: peak temperatures"
    canvas.text(20, 22, title, 16, anchor="start", bold=True)
    _draw_cells(canvas, run, places)
    _outline(canvas, made, places)
    said, lowest = _label_spots(canvas, run, places)
    below = max(bottom, lowest) + 26
    _key(canvas, below)
    words = "Sideways to scale, heights stretched. A model, not a measurement."
    canvas.text(20, below + 28, words, 12, anchor="start", fill=QUIET)
    canvas.height = below + 44
    first = f"A {run.setup.kind} joint cut through its middle, after {run.held}"
    return canvas.picture("\n".join([f"{first} under the {tool}.", *said, words]))


def _places(made):
    """The y of every edge between columns, top last, and the y of the bottom."""
    tallest = sum(HEIGHTS[name] for name in made.bands)
    y = TOP + tallest
    places = [y]
    for name, (start, end) in made.bands.items():
        for number in range(end - start):
            places.append(y - HEIGHTS[name] * (number + 1) / (end - start))
        y -= HEIGHTS[name]
    return places, places[0]


def _x(radius: float) -> float:
    return min(radius, SHOWN) / SHOWN * HALF


def _draw_cells(canvas: Canvas, run: Heating, places) -> None:
    """Cells of one shade above each other are one rectangle, on both sides of the axis at once."""
    made = run.made
    for row, (outer, inner) in enumerate(pairwise(made.radii)):
        if inner >= SHOWN:
            continue
        fills = [
            PAPER if part in ("", "air") else _shade(celsius)
            for part, celsius in zip(made.parts[row], run.hottest[row], strict=True)
        ]
        start = 0
        for column in range(1, len(fills) + 1):
            if column < len(fills) and fills[column] == fills[start]:
                continue
            if fills[start] != PAPER:
                height = places[start] - places[column]
                sides = [(-_x(outer), _x(outer) - _x(inner)), (_x(inner), _x(outer) - _x(inner))]
                for left, width in sides:
                    canvas.rect(
                        MIDDLE + left,
                        places[column],
                        width,
                        height,
                        fills[start],
                        stroke=fills[start],
                        pen=0.6,
                    )
            start = column


def _outline(canvas: Canvas, made, places) -> None:
    """A line wherever one part ends and another begins."""
    parts, radii = made.parts, made.radii
    rows, columns = parts.shape
    for row in range(rows):
        outer, inner = _x(radii[row]), _x(radii[row + 1])
        if inner >= HALF:
            continue
        for column in range(columns):
            here = parts[row, column]
            above = parts[row, column + 1] if column + 1 < columns else ""
            if _differ(here, above):
                for one, other in ((inner, outer), (-outer, -inner)):
                    y = places[column + 1]
                    canvas.line((MIDDLE + one, y), (MIDDLE + other, y), pen=1.1)
            beside = parts[row - 1, column] if row else here
            if _differ(here, beside) and outer < HALF:
                for x in (outer, -outer):
                    ends = (MIDDLE + x, places[column]), (MIDDLE + x, places[column + 1])
                    canvas.line(*ends, pen=1.1)


def _differ(one: str, other: str) -> bool:
    nothing = ("", "air")
    return one != other and not (one in nothing and other in nothing)


def _label_spots(canvas: Canvas, run: Heating, places) -> tuple[list[str], float]:
    """Names and peaks at the right, each with a line to its place, kept apart; and their end."""
    wanted = []
    for spot in NAMES:
        if spot in run.traces:
            x, y = _spot_place(run, spot, places)
            wanted.append((y, x, f"{NAMES[spot]}: {run.peak(spot):.0f} °C"))
    wanted.sort()
    if "tip" in run.made.bands:
        x, y = MIDDLE + _x(TIPS[run.setup.tip]) - 8, places[-1] + 14
        wanted.insert(0, (y, x, f"tip of the iron: set to {run.setup.celsius:g} °C"))
    height, column = TOP, MIDDLE + HALF + 40
    for y, x, words in wanted:
        height = max(y, height)
        canvas.line((x, y), (MIDDLE + HALF + 8, y), (column - 6, height), pen=1.1, stroke=INK)
        canvas.circle(x, y, 2.6, INK, pen=0.5)
        canvas.text(column, height, words, 14, anchor="start")
        height += 21
    away = f"neighbour, {run.neighbour * 1e3:g} mm away"
    words = f"{away}: {run.peak('neighbour'):.0f} °C"
    canvas.text(column, height + 6, words, 14, anchor="start")
    canvas.text(column, height + 24, "(beside the drawing)", 12, anchor="start", fill=QUIET)
    return [words_of for _, _, words_of in wanted] + [words], height + 24


def _spot_place(run: Heating, spot: str, places):
    setup = run.setup
    band = _BANDS[spot] if _BANDS[spot] in run.made.bands else "far copper"
    start, end = run.made.bands[band]
    y = (places[start] + places[end]) / 2
    pad = (setup.hole + setup.pad) / 4 if setup.kind == "through hole" else setup.pad / 4
    across = {"plastic at the lead": setup.lead / 2 + 0.2e-3, "joint": pad, "far side": pad}
    x = across.get(spot, pad)
    if spot == "board under the pad":
        y = places[end] + 6
    elif spot == "board below":
        y = places[start] - 2
        x = setup.pad / 2 + 0.4e-3
    elif spot == "plastic at the lead":
        y = places[end] + 8
    elif spot == "mat top":
        y, x = places[end] + 5, setup.pad / 2
    elif spot == "mat underside":
        y, x = places[start] - 5, setup.pad / 2
    return MIDDLE + _x(x), y


def _shade(celsius: float) -> str:
    return next(shade for limit, shade in SHADES if celsius <= limit)


def _key(canvas: Canvas, y: float) -> None:
    x = 20.0
    low = "up to "
    for limit, shade in SHADES:
        words = f"{low}{limit:g} °C" if limit < 1e6 else "hotter"
        canvas.rect(x, y - 8, 16, 16, shade, pen=0.8)
        canvas.text(x + 21, y, words, 12, anchor="start")
        x += 21 + 7 * len(words) + 14
        low = ""
