"""The parts of a practice board, seen from above, each in its place and its way round."""

from __future__ import annotations

from collections.abc import Callable

from repairlib.bench import BoardPart
from repairlib.show.anatomy import Anatomy
from repairlib.show.box import Box
from repairlib.show.canvas import COPPER, INK, METAL, PAPER, Canvas
from repairlib.show.faults import GLUE, SOOT, STAIN
from repairlib.show.film import MAINS
from repairlib.show.parts import BODIES, draw_body

LYING = ("diode", "fuse", "resistor", "chip resistor", "chip", "moulded tantalum")
LONG = 6.0  # mm: shorter resistors are chips
STRETCHED = 1.7  # at most so much more one way than the other
CASE, EDGE = "#3d454d", "#8b959e"
IRON, WOUND = "#c9ccd0", "#b5672f"
BLOTS = {"stained": (STAIN, 0.85), "brown glue": (GLUE, 0.95)}
ON_THE_BODY = {  # what a drawn body shows of what is seen, by the body
    ("can from above", "bulged"): "bulged",
    ("can from above", "burst"): "vented",
    ("resistor", "burnt"): "burnt",
    ("moulded tantalum", "burst"): "burnt",
}


def body_of(part: BoardPart) -> str:
    """The body that is drawn for a part: a name from BODIES or from OWN."""
    letter = part.circuit.letter if part.circuit else ""
    if part.body in BODIES:
        return part.body
    if letter == "C":
        return _capacitor(part)
    if letter == "R":
        return _resistor(part)
    if letter == "D":
        return "diode"
    if letter == "":
        return "soic"
    return {"U": "regulator", "L": "coil", "V": "transformer"}.get(letter, "block")


def _capacitor(part: BoardPart) -> str:
    if part.plus is not None:
        return "moulded tantalum" if "tantalum" in part.what else "can from above"
    return "box" if part.mains else "chip"


def _resistor(part: BoardPart) -> str:
    named = {"joint": "solder", "contact": "solder", "switch": "block", "inlet": "inlet"}
    named |= {"fuse": "fuse", "mains fuse": "fuse", "connector": "connector"}
    return named.get(part.what) or (
        "resistor" if max(part.wide, part.high) >= LONG else "chip resistor"
    )


def has_room_inside(part: BoardPart) -> bool:
    """Whether the name of a part may stand on it: on a plain case, large enough."""
    return body_of(part) in ("block", "transformer") and min(part.wide, part.high) >= 5


def is_long(part: BoardPart) -> bool:
    """Whether its body is longer along its two ends than across."""
    return body_of(part) in LYING


def draw_on_board(
    canvas: Canvas, part: BoardPart, box: Box, angle: float, marking: str, signs: frozenset[str]
) -> None:
    """Draw a part in its box, the end with its mark towards `angle` degrees, with what is seen."""
    body = body_of(part)
    for sign, (colour, opacity) in BLOTS.items():
        if sign in signs:
            _blot(canvas, box, colour, opacity)
    if body in OWN:
        OWN[body](canvas, box, angle)
    else:
        state = next((ON_THE_BODY[body, one] for one in signs if (body, one) in ON_THE_BODY), "")
        _fitted(canvas, body, box, angle, marking, state)
    if signs & {"burnt", "burst"} and not any((body, one) in ON_THE_BODY for one in signs):
        x, y = _middle(box)
        canvas.ellipse(x, y, _wide(box) / 3, _high(box) / 3, SOOT, opacity=0.85, stroke="none")


def _fitted(canvas: Canvas, body: str, box: Box, angle: float, marking: str, state: str) -> None:
    """A drawn body, made so small that it fills its box, and turned."""
    flip = not _marked_at_right(body, marking, False)
    trial = Canvas(0, 0)
    with trial.scaled(0, 0, 1, 1):
        draw_body(trial, body, marking, flip=flip, state=state)
    drawn = trial.extent
    lies = angle % 180 == 0
    long, thin = (_wide(box), _high(box)) if lies else (_high(box), _wide(box))
    across, down = long / _wide(drawn), thin / _high(drawn)
    across, down = min(across, STRETCHED * down), min(down, STRETCHED * across)
    x, y = _middle(drawn)
    x, y = across * x, down * y
    for _ in range(round(-angle / 90) % 4):
        x, y = -y, x
    left, top = _middle(box)
    with canvas.scaled(left - x, top - y, across, down, -angle):
        draw_body(canvas, body, marking, flip=flip, state=state)


def _marked_at_right(body: str, marking: str, flip: bool) -> bool:
    """Whether the end that a practice board points with is at the right of the drawn body."""
    anatomy: Anatomy = draw_body(Canvas(0, 0), body, marking, flip=flip)
    ends = [end for end in anatomy.terminals if end.word in ("positive", "cathode")]
    ends = ends or [end for end in anatomy.terminals if end.sign == "1"]
    return bool(ends) and ends[0].x > 0


def _wide(box: Box) -> float:
    return box.right - box.left


def _high(box: Box) -> float:
    return box.bottom - box.top


def _middle(box: Box) -> tuple[float, float]:
    return (box.left + box.right) / 2, (box.top + box.bottom) / 2


def _case(canvas: Canvas, box: Box, fill: str, **style) -> None:
    canvas.rect(box.left, box.top, _wide(box), _high(box), fill, **style)


def _blot(canvas: Canvas, box: Box, colour: str, opacity: float) -> None:
    """What has run out round its foot, to one side."""
    x, y = _middle(box)
    style = {"opacity": opacity, "stroke": "none"}
    canvas.ellipse(x - _wide(box) / 3, y + _high(box) / 2, _wide(box) / 2.4, 13, colour, **style)
    canvas.ellipse(x + 4, y + _high(box) / 2 + 4, _wide(box) / 2.6, 11, colour, **style)


def _block(canvas: Canvas, box: Box, angle: float) -> None:
    _case(canvas, box, "#e8ebee", round=4, pen=2)
    _case(canvas, box.grown(-4), "none", round=2, pen=1, stroke=EDGE)


def _box(canvas: Canvas, box: Box, angle: float) -> None:
    _case(canvas, box, MAINS, round=4)


def _transformer(canvas: Canvas, box: Box, angle: float) -> None:
    _case(canvas, box, IRON, round=3)
    third = _high(box) / 3.4
    canvas.rect(box.left + 8, box.top + 6, _wide(box) - 16, third, WOUND, round=6)
    canvas.rect(box.left + 8, box.bottom - 6 - third, _wide(box) - 16, third, WOUND, round=6)


def _regulator(canvas: Canvas, box: Box, angle: float) -> None:
    _case(canvas, box, CASE, round=3)
    x, y = _middle(box)
    across, down = {0: (1, 0), 90: (0, -1), 180: (-1, 0), 270: (0, 1)}[round(angle) % 360]
    dot = (x + across * (_wide(box) / 2 - 9), y + down * (_high(box) / 2 - 9))
    canvas.circle(*dot, 4, PAPER, stroke="none")


def _coil(canvas: Canvas, box: Box, angle: float) -> None:
    _case(canvas, box, "#565d64", round=min(_wide(box), _high(box)) / 4)
    x, y = _middle(box)
    radius = min(_wide(box), _high(box)) / 2 - 5
    for share in (1, 0.72, 0.44):
        canvas.circle(x, y, radius * share, stroke=WOUND, pen=3)


def _solder(canvas: Canvas, box: Box, angle: float) -> None:
    x, y = _middle(box)
    radius = min(_wide(box), _high(box)) / 2
    canvas.circle(x, y, radius, COPPER, pen=1.5)
    canvas.circle(x, y, radius * 0.72, METAL, pen=1)
    canvas.circle(x, y, radius * 0.26, INK, stroke="none")


def _inlet(canvas: Canvas, box: Box, angle: float) -> None:
    _case(canvas, box, CASE, round=4)
    x, y = _middle(box)
    radius = min(_wide(box), _high(box)) / 2 - 7
    canvas.circle(x, y, radius, "#14181c", stroke=EDGE)
    canvas.circle(x, y, radius / 3, METAL, stroke="none")


OWN: dict[str, Callable[[Canvas, Box, float], None]] = {
    "block": _block,
    "box": _box,
    "transformer": _transformer,
    "regulator": _regulator,
    "coil": _coil,
    "solder": _solder,
    "inlet": _inlet,
}
