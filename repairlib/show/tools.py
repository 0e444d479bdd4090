"""Tools of the bench, drawn once for every picture: meter, probes, discharge tool; and arrows."""

from __future__ import annotations

from math import atan2, cos, hypot, pi, sin

from repairlib.show.canvas import INK, METAL, PAPER, Canvas, Point

RED, BLACK = "#b3261e", "#22303c"
CASE, CASE_EDGE = "#e0a92e", "#3d454d"
DISPLAY = "#d5e3d0"
SLEEVE = "#3d454d"
SETTINGS = (("V", -140), ("Ω", -90), ("A", -40))  # beside the knob, and where they stand


def meter(canvas: Canvas, reading: str, setting: str = "V") -> tuple[Point, Point]:
    """A hand-held meter around the origin, 120 wide and 200 high; its black and its red socket."""
    canvas.rect(-64, -104, 128, 208, CASE_EDGE, round=16)
    canvas.rect(-56, -96, 112, 192, CASE, round=10)
    canvas.rect(-46, -86, 92, 50, DISPLAY, round=4)
    canvas.fitted_text(0, -61, [reading], 84, 24, bold=True)
    x, y = 0, 26
    canvas.circle(x, y, 30, CASE_EDGE)
    for words, degrees in SETTINGS:
        turn = degrees * pi / 180
        canvas.text(x + 44 * cos(turn), y + 42 * sin(turn), words, 15, bold=True)
        if words == setting:
            tip = (x + 28 * cos(turn), y + 28 * sin(turn))
            canvas.line((x - 12 * cos(turn), y - 12 * sin(turn)), tip, stroke=PAPER, pen=5)
    sockets = (-24, 78), (24, 78)
    for socket, colour in zip(sockets, (BLACK, RED), strict=True):
        canvas.circle(*socket, 9, colour)
        canvas.circle(*socket, 3, PAPER, stroke="none")
    return sockets


def lead(canvas: Canvas, start: Point, tip: Point, colour: str, lean: float) -> None:
    """A lead from a socket to a probe whose tip is at `tip`; lean: the side its handle is on."""
    handle = tip[0] + lean * 46, tip[1] + 62
    bend = (start[0], start[1] + 90), (handle[0] + lean * 40, handle[1] + 54)
    canvas.line(*curve(start, *bend, handle), stroke=colour, pen=5)
    probe(canvas, handle, tip, colour)


def probe(canvas: Canvas, back: Point, tip: Point, colour: str) -> None:
    """A probe from its back end to its tip: insulated handle, guard for the fingers, bare tip."""
    turn = atan2(tip[1] - back[1], tip[0] - back[0])
    along, across = (cos(turn), sin(turn)), (-sin(turn), cos(turn))
    neck = tip[0] - 20 * along[0], tip[1] - 20 * along[1]
    canvas.line(neck, tip, stroke=INK, pen=4)
    canvas.line(neck, tip, stroke=METAL, pen=2)
    canvas.line(back, neck, stroke=INK, pen=14)
    canvas.line(back, neck, stroke=colour, pen=11)
    guard = neck[0] - 10 * along[0], neck[1] - 10 * along[1]
    left, right = (
        (guard[0] + side * 10 * across[0], guard[1] + side * 10 * across[1]) for side in (-1, 1)
    )
    canvas.line(left, right, stroke=INK, pen=5)


def clip(canvas: Canvas, x: float, y: float, degrees: float = 0, colour: str = RED) -> None:
    """An insulated crocodile clip whose wire comes in at x, y; its mouth to the right, or turned
    by `degrees` clockwise."""

    def turned(*points: Point) -> list[Point]:
        turn = degrees * pi / 180
        return [
            (x + dx * cos(turn) - dy * sin(turn), y + dx * sin(turn) + dy * cos(turn))
            for dx, dy in points
        ]

    canvas.polygon(turned((52, -9), (92, -2), (92, 2), (52, 9)), METAL)
    for tooth in range(4):
        at = 66 + 7 * tooth
        canvas.line(*turned((at, -3), (at + 3, 0), (at, 3)), pen=1.2)
    canvas.polygon(turned((0, -4), (30, -16), (56, -10), (56, 10), (30, 16), (0, 4)), colour)


def sleeved_resistor(canvas: Canvas, x: float, y: float) -> None:
    """A wirewound resistor in a sleeve that covers both its joints, in the middle of its wires."""
    canvas.rect(x - 84, y - 24, 168, 48, SLEEVE, round=14)
    canvas.rect(x - 50, y - 16, 100, 32, "#efe6d2", round=5)


def discharge_tool(canvas: Canvas) -> None:
    """Probe, resistor in its sleeve, clip, in a row around the origin, 480 wide."""
    canvas.line((-150, 0), (-76, 0), stroke=BLACK, pen=5)
    canvas.line((84, 0), (152, 0), stroke=BLACK, pen=5)
    sleeved_resistor(canvas, 0, 0)
    probe(canvas, (-150, 0), (-248, 0), RED)
    clip(canvas, 150, 0)


def arrow(canvas: Canvas, start: Point, end: Point, stroke: str = INK) -> None:
    """A straight arrow."""
    length = hypot(end[0] - start[0], end[1] - start[1])
    along = (end[0] - start[0]) / length, (end[1] - start[1]) / length
    back = end[0] - 9 * along[0], end[1] - 9 * along[1]
    canvas.line(start, back, stroke=stroke, pen=2)
    across = -5 * along[1], 5 * along[0]
    wings = [(back[0] + side * across[0], back[1] + side * across[1]) for side in (1, -1)]
    canvas.polygon([end, *wings], stroke, stroke=stroke, pen=1)


def curve(start: Point, one: Point, two: Point, end: Point, steps: int = 28) -> list[Point]:
    """Points on a smooth line that leaves `start` towards `one` and reaches `end` from `two`.

    >>> curve((0, 0), (0, 1), (1, 1), (1, 0), steps=2)
    [(0.0, 0.0), (0.5, 0.75), (1.0, 0.0)]
    """
    points = []
    for step in range(steps + 1):
        t = step / steps
        weights = (1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3
        places = list(zip(weights, (start, one, two, end), strict=True))
        points.append((sum(w * p[0] for w, p in places), sum(w * p[1] for w, p in places)))
    return points
