"""A part above its place on the board: both marks, both ends, and the verdict in words."""

from __future__ import annotations

from dataclasses import replace

from repairlib.core.errors import RepairlibError
from repairlib.core.verdicts import CANNOT_TELL
from repairlib.polarity import (
    EITHER,
    FITTED,
    NOTHING_ELSE,
    OPPOSITE,
    OTHER_END,
    SAME_END,
    PartMark,
    board_marks,
    check_polarity,
    part_mark,
)
from repairlib.show.anatomy import SIGNS, Anatomy, Mark, Terminal
from repairlib.show.canvas import INK, POSITIVE, QUIET, Canvas, Point, sheet_round
from repairlib.show.footprints import (
    HALF_HEIGHT,
    HALF_WIDTH,
    Footprint,
    draw_footprint,
    mark_in_words,
)
from repairlib.show.parts import (
    MIDDLE,
    WIDTH,
    badge,
    draw_body,
    label_ends,
    label_marks,
    part_words,
)
from repairlib.show.picture import Picture

BADGE_BELOW = 31  # from an end to the lower edge of its badge
WAY_DOWN = 30  # that much of the ways from the leads to the pads is seen
VERDICT_BELOW = 130  # from the middle of the board
AT_THE_MARK, AT_THE_OTHER_END, NOT_DECIDED = FITTED
VERDICTS = {
    "right": "Right this way round: each end meets its own side.",
    "reversed": "Reversed: do not fit it like this.",
    CANNOT_TELL: "Cannot tell from these marks.",
}


def draw_polarity(
    rule_id: str,
    board_mark: str = "",
    fitted: str = "",
    *,
    labels: bool = True,
    look: str = "green",
    **second,
) -> Picture:
    """Draw a part above its place on the board and label the ends of both in words.

    rule_id: the id of a row of the table polarity_part_marks. board_mark: the mark on the board,
    the usual one when left out. fitted: how it is put in, the right way when left out and known.
    labels: name marks, ends and verdict in words. False leaves the words off, for a question.
    look: of the board, a name from LOOKS.
    second: a second mark on part or board, under the names that check_polarity takes.

    Raises RepairlibError for a rule, board mark or way of fitting that is not known.

    >>> draw_polarity("radial-stripe").alt.split(". ")[-1]
    'Right this way round: each end meets its own side.'
    """
    rule = part_mark(rule_id)
    board_mark = board_mark or rule.usual_board_mark
    if board_mark not in board_marks():
        raise RepairlibError(board_mark, "not a mark on a board", ", ".join(board_marks()))
    if not rule.body:
        return _draw_bar_trap()
    fitted = fitted or _right_way(rule, board_mark, second)
    finding = check_polarity(rule.family, rule.mark, board_mark, fitted, **second)
    pair = rule, board_mark, _must_flip(rule, mark_on_left=fitted != AT_THE_OTHER_END), look
    if not labels:
        canvas, (anatomy, _, _, _) = sheet_round(lambda canvas: _draw_pair(canvas, *pair))
        part = part_words(anatomy, "", labels=False)
        words = f"{part} Below it its place on the board. {mark_in_words(board_mark)}"
        return canvas.picture(words)
    also = _second_marks(second)
    verdict = VERDICTS[finding.verdict]
    if finding.verdict == "right" and finding.part_shows == EITHER:
        verdict = "Right: either way round will do."

    def drawn(canvas: Canvas) -> tuple[Anatomy, str]:
        anatomy, place, point, board_y = _draw_pair(canvas, *pair, badges=True)
        _label_part(canvas, anatomy, rule)
        ends = _label_board(canvas, place, point, board_y, board_mark, finding)
        colour = POSITIVE if finding.verdict == "reversed" else INK
        canvas.text(0, board_y + VERDICT_BELOW, verdict, 18, fill=colour, bold=True)
        if also:
            canvas.fitted_text(0, board_y + VERDICT_BELOW + 26, [also], WIDTH - 20, 16)
        return anatomy, ends

    canvas, (anatomy, ends) = sheet_round(drawn, WIDTH)
    said = [part_words(_only(anatomy, rule.mark), ""), "Below it its place on the board.", ends]
    return canvas.picture(" ".join(filter(None, [*said, also, verdict])))


def _draw_pair(
    canvas: Canvas, rule: PartMark, board_mark: str, flip: bool, look: str, badges: bool = False
) -> tuple[Anatomy, Footprint, Point, float]:
    """The part at the origin, its ways down and its place below it.

    Gives both, where the board's mark sits, and how far down the middle of the board is.
    """
    anatomy = draw_body(canvas, rule.body, flip=flip, mark=rule.drawn)
    place = Footprint(anatomy, 1 if flip else -1, look)
    lowest = max(end.y for end in anatomy.terminals) + (BADGE_BELOW if badges else 0)
    board_y = lowest + WAY_DOWN + HALF_HEIGHT
    _draw_ways_down(canvas, anatomy, place, board_y)
    with canvas.at(0, board_y):
        point = draw_footprint(canvas, place, board_mark)
    return anatomy, place, point, board_y


def _second_marks(second: dict) -> str:
    said = [
        f"Also on the {side}: {second[f'also_on_{side}']}"
        + {SAME_END: ", at the same end.", OTHER_END: ", at the other end."}.get(
            second.get(f"also_on_{side}_at"), "."
        )
        for side in ("part", "board")
        if second.get(f"also_on_{side}", NOTHING_ELSE) != NOTHING_ELSE
    ]
    return " ".join(said)


def _right_way(rule: PartMark, board_mark: str, second: dict) -> str:
    for way in (AT_THE_MARK, AT_THE_OTHER_END):
        if check_polarity(rule.family, rule.mark, board_mark, way, **second).verdict == "right":
            return way
    return NOT_DECIDED


def _must_flip(rule: PartMark, mark_on_left: bool) -> bool:
    """The board's mark is drawn on the left; turn the part so that its mark comes where it is put.

    A longer lead, say, sits at the end opposite to the stripe that the body is drawn by.
    """
    anatomy = draw_body(Canvas(0, 0), rule.body, mark=rule.drawn)
    lies_right = any(one.x > 0 for one in _only(anatomy, rule.mark).marks)
    return lies_right == mark_on_left


def _only(anatomy: Anatomy, mark: str) -> Anatomy:
    return replace(anatomy, marks=tuple(one for one in anatomy.marks if one.name == mark))


def _label_part(canvas: Canvas, anatomy: Anatomy, rule: PartMark) -> None:
    label_ends(canvas, anatomy, 0, 0)
    label_marks(canvas, _only(anatomy, rule.mark).marks, 0, 0)


def _draw_ways_down(canvas: Canvas, anatomy: Anatomy, place: Footprint, board_y: float) -> None:
    """Dashed lines from each lead to its pad; an IC's rows of pins speak for themselves."""
    if len(anatomy.terminals) > 4:
        return
    ends = sorted((end.x, end.y) for end in anatomy.terminals)
    for (x, y), (pad_x, pad_y) in zip(ends, sorted(place.pads), strict=True):
        if y < 0:  # a lead on the far side of the body
            continue
        canvas.line((x, y), (pad_x, board_y + pad_y), stroke=QUIET, pen=1.5, dash="4 5")


def _label_board(
    canvas: Canvas, place: Footprint, point: Point, board_y: float, board_mark: str, finding
) -> str:
    end = finding.board_shows
    shows = {"other part": "belongs to another kind of part", "unknown": CANNOT_TELL}.get(end, end)
    if board_mark == "no mark":
        said = "The board shows no mark."
    else:
        x, y = point
        label_marks(canvas, (Mark(x, y, board_mark, shows),), 0, board_y, HALF_WIDTH + 8)
        said = f"The board's mark: {board_mark} (left, {shows})."
    bottom = HALF_HEIGHT - 2
    if end in SIGNS:
        first, last = place.pads[0][0], place.pads[-1][0]
        for x, word in ((first, end), (last, OPPOSITE[end])):
            ends = Terminal(x, bottom, SIGNS[word], word)
            label_ends(canvas, Anatomy("", (ends,)), 0, board_y)
    elif end == "pin 1":
        pin = Terminal(place.pads[0][0], bottom, "1", "pin 1")
        label_ends(canvas, Anatomy("", (pin,)), 0, board_y)
    return said


def _draw_bar_trap() -> Picture:
    """The same-looking mark on two bodies: positive on a flat chip, negative on a can."""
    canvas = Canvas(WIDTH, 310)
    said = (
        ("moulded tantalum", "Flat moulded chip:", "the bar is positive"),
        ("can", "Can:", "the segment is negative"),
    )
    for x, (body, shape, meaning) in zip((170, 490), said, strict=True):
        with canvas.at(x, 90):
            anatomy = draw_body(canvas, body)
        for end in anatomy.terminals:
            badge(canvas, x + end.x, 90 + end.y + 19, end.sign)
        canvas.text(x, 232, shape, 18, bold=True)
        canvas.text(x, 256, meaning, 18)
    canvas.text(MIDDLE, 290, VERDICTS[CANNOT_TELL] + " Look at the body first.", 18, bold=True)
    return canvas.picture(
        "Two parts with a dark mark at the left end. On the flat moulded chip the bar is the "
        "positive end. On the round can the segment is the negative end. A bar alone does not "
        "tell: look at the body first."
    )
