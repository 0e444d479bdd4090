"""A meter with its leads on a part, and the tool that empties a capacitor."""

from __future__ import annotations

from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import brief
from repairlib.show.anatomy import Anatomy, Terminal
from repairlib.show.canvas import INK, QUIET, Canvas, sheet_round, wrapped
from repairlib.show.parts import draw_body, part_words
from repairlib.show.picture import Picture
from repairlib.show.tools import BLACK, RED, SETTINGS, discharge_tool, lead, meter

METER_X = -260  # the part stands at the origin
ON_THE_LEAD = 14  # a tip touches so far above the end of a lead


def draw_meter(
    reading: str, body: str = "radial", marking: str = "", *, setting: str = "V", flip: bool = False
) -> Picture:
    """Draw a meter with its two leads on a part, the red one on its positive end.

    reading: what the display shows. body: a name from BODIES, of a part with two ends. setting: of
    the knob, "V", "Ω" or "A". flip: the part's mark on the right. Raises RepairlibError for a body
    that is not drawn or has not two ends, and for another setting.

    >>> draw_meter("0.02 V", "axial")
    A meter set to V shows 0.02 V. Its leads are on a part: the red one on the right end, the black
    one on the left end. The part: An aluminium can lying down, with one lead at each end. Marks:
    line with arrows (left), indented ring (right).
    """
    if setting not in [words for words, _ in SETTINGS]:
        known = ", ".join(words for words, _ in SETTINGS)
        raise RepairlibError(setting, "the knob has no such place", known)
    ends = draw_body(Canvas(0, 0), body, marking, flip=flip).terminals
    if len(ends) != 2:
        raise RepairlibError(body, "a meter has two leads", "a part with two ends")
    red, black = _red_and_black(ends)

    def drawn(canvas: Canvas) -> Anatomy:
        anatomy = draw_body(canvas, body, marking, flip=flip)
        with canvas.at(METER_X, 0):
            sockets = meter(canvas, reading, setting)
        places = [(METER_X + x, y) for x, y in sockets]
        for socket, end, colour in zip(places, (black, red), (BLACK, RED), strict=True):
            lead(canvas, socket, _touched(end), colour, -1 if end.x < 0 else 1)
        return anatomy

    canvas, anatomy = sheet_round(drawn)
    sides = ["left" if end.x < 0 else "right" for end in (red, black)]
    return canvas.picture(
        f"A meter set to {setting} shows {reading}. Its leads are on a part: the red one on the "
        f"{sides[0]} end, the black one on the {sides[1]} end. The part: "
        f"{part_words(anatomy, marking, labels=False)}"
    )


def draw_discharge_tool(resistance: float, rating: str = "") -> Picture:
    """Draw the tool that empties a capacitor as one builds it: probe, resistor in a sleeve, clip.

    resistance: in ohm, as worked out with `stored_charge.bleeder`. rating: what else the resistor
    must be, such as "5 W, wirewound".

    >>> print(draw_discharge_tool(390, "5 W, wirewound").alt)
    A discharge tool: a probe with an insulated handle and a guard for the fingers, a wire, a
    resistor of 390 Ω, 5 W, wirewound, in an insulating sleeve, a wire, and an insulated clip.
    """
    if not resistance > 0:
        raise RepairlibError(resistance, "not a resistance", "ohms above 0")
    ohms = brief(resistance, "Ω")
    named = f"{ohms}, {rating}" if rating else ohms

    def drawn(canvas: Canvas) -> None:
        discharge_tool(canvas)
        canvas.text(0, 0, ohms, 18, bold=True)
        said = (
            (-190, "probe: insulated handle, guard for the fingers"),
            (0, f"resistor {named}, in an insulating sleeve"),
            (196, "insulated clip"),
        )
        for x, words in said:
            canvas.line((x, 30), (x, 50), stroke=QUIET, pen=1.5)
            for row, line in enumerate(wrapped(words, 176, 16)):
                canvas.text(x, 66 + 20 * row, line, 16, fill=INK)

    canvas, _ = sheet_round(drawn)
    return canvas.picture(
        "A discharge tool: a probe with an insulated handle and a guard for the fingers, a wire, a "
        f"resistor of {named}, in an insulating sleeve, a wire, and an insulated clip."
    )


def _red_and_black(ends: tuple[Terminal, ...]) -> tuple[Terminal, Terminal]:
    """The end for the red lead first: the positive one, or an anode, or the one at the right."""
    first, second = sorted(ends, key=lambda end: end.x)
    return (first, second) if first.word in ("positive", "anode") else (second, first)


def _touched(end: Terminal) -> tuple[float, float]:
    return (end.x, end.y - ON_THE_LEAD) if end.y > 60 else (end.x, 0)
