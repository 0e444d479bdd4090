"""Power on its way from a supply through lead and plug to a set: what is lost where."""

from __future__ import annotations

from repairlib.core.finding import Finding
from repairlib.core.quantity import Quantity, brief
from repairlib.show.canvas import INK, METAL, POSITIVE, QUIET, Canvas
from repairlib.show.picture import Picture

WIDTH, HEIGHT = 440.0, 212.0
LETTERS = 15
OUT, BACK = 82.0, 130.0  # heights of the two wires
LEFT, PLUG, RIGHT = 92.0, 266.0, 344.0  # end of the supply, middle of the plug, begin of the set
CASE = "#eef1f4"


def draw_power_path(path: Finding, needs: float | None = None) -> Picture:
    """Draw what `power_path` found: volts and watts lost in lead and contacts, and what arrives.

    needs: V that the set needs at least, if that is known.

    >>> from repairlib.connectors import power_path
    >>> print(draw_power_path(power_path("2 A", 18, "1 m", "12 V", single="5 A", new="20 mΩ")))
    12 V from the supply. The lead takes 83.79 mV and turns 168 mW to heat.
    One contact takes 40 mV, 80 mW; the other 40 mV, 80 mW. 11.84 V arrive at the set.
    """
    worse = _lost(path, "worn") if "drop_worn" in path.values else _lost(path, "new")
    other, lead = _lost(path, "new"), _lost(path, "of_lead")
    supply = path.arrives + path.drop_of_lead + path.drop_new
    supply += path.drop_worn if "drop_worn" in path.values else path.drop_new
    given, arrives = brief(float(f"{supply:.6g}"), "V"), str(path.values["arrives"])
    canvas = Canvas(WIDTH, HEIGHT)
    hot = "drop_worn" in path.values and path.drop_worn > path.drop_new
    for y in (OUT, BACK):
        canvas.line((LEFT, y), (RIGHT, y), stroke=INK, pen=3)
    _box(canvas, 6, "supply", given)
    _box(canvas, RIGHT, "set", arrives)
    _contact(canvas, OUT, hot)
    _contact(canvas, BACK, False)
    _told(canvas, (LEFT + PLUG) / 2 - 10, (OUT + BACK) / 2, "lead", lead, INK)
    words = "worse contact" if hot else "one contact"
    _told(canvas, PLUG, OUT - 44, words, worse, POSITIVE if hot else INK)
    _told(canvas, PLUG, BACK + 48, "other, at most", other, INK)
    said = (
        f"{given} from the supply. The lead takes {lead[0]} and turns {lead[1]} to heat.\n"
        f"One contact takes {worse[0]}, {worse[1]}; the other {other[0]}, {other[1]}. "
        f"{arrives} arrive at the set."
    )
    if needs is not None:
        said += _needed(canvas, needs, path.arrives)
    return canvas.picture(said)


def _needed(canvas: Canvas, needs: float, arrives: float) -> str:
    """Under the set what it needs, and whether that arrives; the same in words."""
    words, short = f"needs {brief(needs, 'V')}", arrives < needs
    canvas.text(RIGHT + 43, BACK + 44, words, LETTERS - 1, fill=POSITIVE if short else QUIET)
    if short:
        canvas.text(RIGHT + 43, BACK + 64, "too little", LETTERS - 1, fill=POSITIVE, bold=True)
    return f" It {words}{': too little' if short else ''}."


def _lost(path: Finding, where: str) -> tuple[Quantity, Quantity]:
    return path.values[f"drop_{where}"], path.values[f"heat_{where}"]  # type: ignore[return-value]


def _box(canvas: Canvas, left: float, name: str, volts: str) -> None:
    canvas.rect(left, OUT - 26, 86, BACK - OUT + 52, CASE, round=6)
    canvas.text(left + 43, OUT + 8, name, LETTERS, fill=QUIET)
    canvas.text(left + 43, BACK - 8, volts, LETTERS + 2, bold=True)


def _contact(canvas: Canvas, y: float, hot: bool) -> None:
    """A pin in its socket; the hot one with waves of heat over it."""
    colour = POSITIVE if hot else METAL
    canvas.rect(PLUG - 22, y - 8, 44, 16, colour if hot else CASE, round=3)
    canvas.line((PLUG - 30, y), (PLUG + 8, y), stroke=INK, pen=5)
    if hot:
        for x in (-12, 0, 12):
            wave = [
                (PLUG + x + side, y - 12 - 4 * step) for step, side in enumerate((-2, 2, -2, 2))
            ]
            canvas.line(*wave, stroke=POSITIVE, pen=2)


def _told(
    canvas: Canvas, x: float, y: float, name: str, lost: tuple[Quantity, Quantity], ink: str
) -> None:
    canvas.text(x, y - 10, name, LETTERS, fill=ink, bold=True)
    canvas.text(x, y + 10, f"{lost[0]}, {lost[1]}", LETTERS, fill=ink)
