"""One part on its own: the body, its marking, and its polarity marks named in words."""

from __future__ import annotations

from dataclasses import replace

from repairlib.core.errors import RepairlibError
from repairlib.show import (
    capacitors,
    discs,
    film,
    large_cans,
    pin_one,
    protecting,
    resistors,
    semiconductors,
    unknown,
)
from repairlib.show.anatomy import Anatomy, Body, Mark, Terminal
from repairlib.show.bands import label_names
from repairlib.show.canvas import (
    INK,
    NEGATIVE,
    PAPER,
    POSITIVE,
    QUIET,
    Canvas,
    Point,
    sheet_round,
    wrapped,
)
from repairlib.show.faults import draw_fault
from repairlib.show.picture import Picture

BODIES: dict[str, Body] = {
    "disc": discs.disc,
    "multilayer drop": discs.multilayer_drop,
    "film box": film.film_box,
    "mains box": film.mains_box,
    "film drop": film.film_drop,
    "paper tube": film.paper_tube,
    "chip": discs.ceramic_chip,
    "moulded tantalum": capacitors.moulded_tantalum,
    "dipped tantalum": capacitors.dipped_tantalum,
    "coloured bead": capacitors.coloured_bead,
    "radial": capacitors.radial,
    "can from above": capacitors.from_above,
    "axial": capacitors.axial,
    "can": capacitors.can,
    "polymer can": capacitors.polymer_can,
    "polymer chip": capacitors.polymer_chip,
    "non-polar": capacitors.non_polar,
    "snap-in can": large_cans.snap_in,
    "screw can": large_cans.screw_can,
    "can with sections": large_cans.sections_can,
    "oil can": large_cans.oil_can,
    "resistor": resistors.resistor,
    "inductor": resistors.inductor,
    "chip resistor": resistors.chip_resistor,
    "resistor array": resistors.resistor_array,
    "fuse": protecting.fuse,
    "thermal cut-off": protecting.thermal_cut_off,
    "varistor": discs.varistor,
    "inrush disc": discs.inrush_disc,
    "diode": semiconductors.diode,
    "glass diode": semiconductors.glass_diode,
    "zener": semiconductors.zener,
    "led": semiconductors.led,
    "chip led": semiconductors.chip_led,
    "bridge": semiconductors.bridge,
    "to-92": semiconductors.to_92,
    "to-220": semiconductors.to_220,
    "sot-23": semiconductors.sot_23,
    "dip": pin_one.dip,
    "soic": pin_one.soic,
    "connector": pin_one.connector,
    "unknown": unknown.unknown,
}

WIDTH = 660
MIDDLE = WIDTH / 2
LEADS_FROM = 60  # an end that lies further down is one of a part that stands
COLUMN = 154  # from the middle to where the words at the sides begin
BADGE_COLOURS = {"+": POSITIVE, "A": POSITIVE, "−": NEGATIVE, "K": NEGATIVE, "1": INK}


def draw_part(
    body: str,
    marking: str = "",
    *,
    labels: bool = True,
    named: bool | None = None,
    flip: bool = False,
    mark: str = "",
    state: str = "",
) -> Picture:
    """Draw a part with its marking printed on it.

    body: a name from BODIES. marking: what is printed; a line break starts a new line.
    labels: name every polarity mark and end in words. False leaves the words off, as on the
    bench, for a question. named: write the names of colours beside bands; left out, as labels
    says. Who cannot see the colours finds them in the words of the picture always.
    flip: the polarity mark on the right instead of the left.
    mark: which of several usual marks the part carries, such as "dot" or "notch".
    state: what is wrong with it, a name from FAULTS such as "bulged"; left out, it is sound.

    Raises RepairlibError for a body that is not in BODIES, and a state it is not drawn in.

    >>> draw_part("moulded tantalum", "107C", labels=False)
    A flat yellow moulded block with a metal terminal at each end, seen from above. Printed on
    it: 107C. Marks: bar at one end (left), bevelled edge (left).
    """

    def drawn(canvas: Canvas) -> Anatomy:
        anatomy = draw_body(canvas, body, marking, flip=flip, mark=mark, state=state)
        if labels if named is None else named:
            label_names(canvas, anatomy.names)
        if labels:
            label_ends(canvas, anatomy, 0, 0)
            label_marks(canvas, anatomy.marks, 0, 0)
        return anatomy

    canvas, anatomy = sheet_round(drawn, WIDTH if labels else 0)
    return canvas.picture(part_words(anatomy, marking, labels))


def draw_body(
    canvas: Canvas,
    body: str,
    marking: str = "",
    *,
    flip: bool = False,
    mark: str = "",
    state: str = "",
) -> Anatomy:
    """Draw only the body, around the canvas's origin, and say where its ends and marks are."""
    if body not in BODIES:
        raise RepairlibError(body, "no drawing of a part has this name", ", ".join(BODIES))
    end = 1 if flip else -1
    anatomy = BODIES[body](canvas, marking, end, mark)
    if not state:
        return anatomy
    said = draw_fault(canvas, body, state, marking, end)
    return replace(anatomy, looks=f"{anatomy.looks} {said}")


def part_words(anatomy: Anatomy, marking: str, labels: bool = True) -> str:
    """What the drawing shows, in sentences; the meaning of the marks only with labels."""
    words = anatomy.looks
    if anatomy.bands:
        words += f" Bands from {anatomy.read}: {', '.join(anatomy.bands)}."
    elif marking.strip():
        words += " Printed on it: " + ", ".join(marking.split("\n")) + "."
    if anatomy.marks:
        named = [
            f"{mark.name} ({_side(mark.x)}{f', {mark.shows}' if labels else ''})"
            for mark in anatomy.marks
        ]
        words += " Marks: " + ", ".join(named) + "."
    if not labels:
        return words
    ends = [end for end in anatomy.terminals if end.word]
    if anatomy.notes:
        words += " " + " ".join(anatomy.notes).capitalize().rstrip(".") + "."
    if any(end.word == "either" for end in ends):
        return words
    if any(end.sign == "?" for end in ends):
        return words + " Which end is which: see the data sheet."
    said = [
        f"the {_side(end.x)} end is {'the ' if end.sign in 'KA' else ''}{end.word}"
        for end in sorted(ends, key=lambda end: end.x)
    ]
    pin = next(iter(anatomy.terminals), None)
    if pin and pin.sign == "1" and len(anatomy.terminals) > 3:
        rows = {end.y for end in anatomy.terminals}
        row = "" if len(rows) == 1 else "upper " if pin.y < 0 else "lower "
        said.append(f"pin 1 is at the {row}{_side(pin.x)}")
    return words + (" " + " and ".join(said).capitalize() + "." if said else "")


def label_ends(canvas: Canvas, anatomy: Anatomy, x: float, y: float) -> None:
    """A badge under each end with its word beside it, and what else must be said."""
    for end in anatomy.terminals:
        if end.word != "either":
            _label_end(canvas, end, x, y)
    for row, note in enumerate(anatomy.notes):
        canvas.text(x + COLUMN, y + _notes_at(anatomy) + 20 * row, note, 16, "start")


def _notes_at(anatomy: Anatomy) -> float:
    """Where the first note stands: at the right of a part, below the words for its marks."""
    if any(end.y > LEADS_FROM for end in anatomy.terminals):
        return 92
    if any(mark.x > 0 for mark in anatomy.marks):
        return 50 if all(end.word == "either" for end in anatomy.terminals) else 92
    return -10.0 * (len(anatomy.notes) - 1)


def sign_end(canvas: Canvas, end: Terminal, x: float, y: float) -> Point:
    """The badge of one end, just beyond it; gives where the badge is."""
    left, top = x + end.x, y + end.y + (-19 if end.y < -20 else 19)
    badge(canvas, left, top, end.sign)
    return left, top


def _label_end(canvas: Canvas, end: Terminal, x: float, y: float) -> None:
    left, top = sign_end(canvas, end, x, y)
    if end.word:
        side = -1 if end.x < 0 else 1
        anchor = "end" if side < 0 else "start"
        canvas.text(left + side * 18, top, end.word, 16, anchor, bold=True)


def badge(canvas: Canvas, x: float, y: float, sign: str) -> None:
    """A small disc that carries + - K A ~ ? or a pin number."""
    canvas.circle(x, y, 12, BADGE_COLOURS.get(sign, QUIET), stroke="none")
    canvas.text(x, y, sign, 17, fill=PAPER, bold=True)


def label_marks(
    canvas: Canvas, marks: tuple[Mark, ...], x: float, y: float, column: float = COLUMN
) -> None:
    """Words in the outer columns, each with a line to the mark that it names."""
    room = MIDDLE - column - 4
    for side in (-1, 1):
        bottom = -1000.0
        for mark in sorted((m for m in marks if m.x * side > 0), key=lambda m: m.y):
            lines = wrapped(mark.name, room, 16, bold=True)
            meaning = wrapped(f"= {mark.shows}", room, 16)
            tall = 19 * (len(lines) + len(meaning))
            top = max(mark.y - tall / 2, bottom + 12)
            bottom = top + tall
            _callout(canvas, mark, (lines, meaning), (x, y), side * column, top)


def _callout(
    canvas: Canvas, mark: Mark, words: tuple, origin: Point, column: float, top: float
) -> None:
    names, meaning = words
    x, y = origin
    side = -1 if column < 0 else 1
    edge = x + column
    anchor = "end" if side < 0 else "start"
    for row, line in enumerate(names + meaning):
        name = row < len(names)
        colour = INK if name else QUIET
        canvas.text(edge, y + top + 9 + 19 * row, line, 16, anchor, colour, bold=name)
    middle = y + top + 19 * len(names) / 2
    way = ((edge - side * 6, middle), (x + mark.x, y + mark.y))
    canvas.line(*way, stroke=PAPER, pen=4.5)  # so that it is seen on a dark ground
    canvas.line(*way, stroke=QUIET, pen=1.5)
    canvas.circle(x + mark.x, y + mark.y, 3.5, PAPER, stroke=INK, pen=1.5)


def _side(x: float) -> str:
    return "left" if x < 0 else "right" if x > 0 else "middle"
