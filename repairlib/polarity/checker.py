"""Right, reversed, or cannot tell: the part's mark against the board's mark. It never guesses."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from repairlib.core.calculator import Choice, Found, calculator, found
from repairlib.core.verdicts import CANNOT_TELL, REVERSED, RIGHT
from repairlib.polarity.rules import (
    EITHER,
    NON_POLAR_PLACE,
    NOTHING_SEEN,
    OPPOSITE,
    OTHER_PART,
    SOMETHING_ELSE,
    UNKNOWN,
    BoardMark,
    Family,
    board_marks,
    families,
    marks_of,
    part_mark_names,
)

AT_THE_MARK = "part's mark at the board's mark"
AT_THE_OTHER_END = "part's mark at the other end"
NOT_DECIDED = "not decided yet"
FITTED = (AT_THE_MARK, AT_THE_OTHER_END, NOT_DECIDED)

NOTHING_ELSE = "nothing else"
SAME_END, OTHER_END, NOT_SAID = "same end", "other end", "not said"
ENDS = (SAME_END, OTHER_END, NOT_SAID)


@dataclass(frozen=True)
class Shown:
    """The end that one side (part or board) shows at its first mark, or why it shows none."""

    end: str
    step: str
    look_at: str
    sources: tuple[str, ...]
    why_not: str = ""


def _part_marks_or_nothing() -> tuple[str, ...]:
    return (NOTHING_ELSE, *part_mark_names())


def _board_marks_or_nothing() -> tuple[str, ...]:
    return (NOTHING_ELSE, *board_marks())


@calculator(
    topic="polarity",
    title="Polarity check",
    sources=("common practice",),
)
def check_polarity(
    family: Annotated[str, Choice(families, "What kind of part it is, by its body.")],
    part_mark: Annotated[str, Choice(part_mark_names, "The mark that you see on the part.")],
    board_mark: Annotated[str, Choice(board_marks, "The mark that the board shows at its place.")],
    fitted: Annotated[str, Choice(FITTED, "How you mean to fit it.")] = NOT_DECIDED,
    also_on_part: Annotated[
        str, Choice(_part_marks_or_nothing, "A second mark on the part.")
    ] = NOTHING_ELSE,
    also_on_part_at: Annotated[str, Choice(ENDS, "Where that second mark is.")] = NOT_SAID,
    also_on_board: Annotated[
        str, Choice(_board_marks_or_nothing, "A second mark on the board.")
    ] = NOTHING_ELSE,
    also_on_board_at: Annotated[str, Choice(ENDS, "Where that second mark is.")] = NOT_SAID,
) -> Found:
    """Compare the end that the part's mark shows with the end that the board's mark shows.

    The verdict is "right", "reversed" or "cannot tell", with the reason, with what happens if
    the part goes in the wrong way round (`if_wrong`), and what to look at instead (`look_at`).
    A mark without a fixed meaning, a mark that this family does not carry, and two marks that
    contradict each other all give "cannot tell".

    Raises RepairlibError for a word that is not among the choices.
    Source: the tables polarity_families, polarity_part_marks and polarity_board_marks.

    >>> finding = check_polarity("aluminium radial", "stripe with minus signs", "plus sign",
    ...                          "part's mark at the board's mark")
    >>> finding.verdict
    'reversed'
    >>> finding.reason
    "The part's stripe with minus signs is its negative end. The board's plus sign marks the
    positive side. You put negative where positive belongs."
    """
    kind = families()[family]
    part = _shown_by_part(kind, part_mark, also_on_part, also_on_part_at)
    board = _shown_by_board(kind, board_mark, also_on_board, also_on_board_at)
    verdict, reason = _judge(kind, part, board, fitted)
    return found(
        {
            "part_shows": part.end,
            "board_shows": board.end,
            "if_wrong": kind.if_wrong,
            "look_at": f"on the part: {part.look_at}; on the board: {board.look_at}",
        },
        working=[part.step, board.step, f"So: {verdict}."],
        verdict=verdict,
        reason=reason,
        notes=_notes(kind, board),
        sources=(kind.source, *part.sources, *board.sources),
        cautions=kind.cautions,
    )


def _judge(kind: Family, part: Shown, board: Shown, fitted: str) -> tuple[str, str]:
    if board.end == OTHER_PART:
        return CANNOT_TELL, f"{board.why_not} Is this the right place for this part ({kind.name})?"
    if part.end == OTHER_PART:
        return CANNOT_TELL, part.why_not
    if part.end == EITHER:
        return RIGHT, f"{part.step} {_either_way(board)}"
    if board.end == NON_POLAR_PLACE and kind.is_capacitor:
        return CANNOT_TELL, (
            "Do not fit it. The board asks for a non-polar part, and this one may be polar: "
            "in such a place the voltage can change sides, and either way round is wrong."
        )
    unsure = [side.why_not for side in (part, board) if side.end == UNKNOWN]
    if unsure:
        return CANNOT_TELL, " ".join(unsure)
    same = part.end == board.end
    said = f"{part.step} {board.step}"
    if fitted == NOT_DECIDED:
        where = "at" if same else "at the other end from"
        return CANNOT_TELL, f"{said} So put the part's mark {where} the board's mark."
    if same == (fitted == AT_THE_MARK):
        return RIGHT, f"{said} Each end goes where it belongs."
    if part.end == "pin 1":
        return REVERSED, f"{said} You turn pin 1 to the wrong end."
    meets = board.end if fitted == AT_THE_MARK else OPPOSITE[board.end]
    return REVERSED, f"{said} You put {part.end} where {meets} belongs."


def _either_way(board: Shown) -> str:
    if board.end in ("positive", "negative"):
        return (
            "It may go in either way round. But the board shows a polarity, so a polar part "
            "was meant here: check the value, the rated voltage and the parts list."
        )
    return "It may go in either way round."


def _shown_by_part(kind: Family, mark: str, also: str, also_at: str) -> Shown:
    first = _part_mark(kind, mark)
    if also == NOTHING_ELSE:
        return first
    return _together("part", first, _part_mark(kind, also), also_at)


def _part_mark(kind: Family, mark: str) -> Shown:
    rule = marks_of(kind.name).get(mark)
    if rule is None:
        return _unlisted_mark(kind, mark)
    step = f"The part's {mark} is its {rule.shows} end."
    why = ""
    if rule.shows == EITHER:
        step = f"A {kind.name} ({mark}) has no positive or negative end."
    elif rule.shows == "pin 1":
        step = f"The part's {mark} shows where its pin 1 is."
    elif rule.shows == UNKNOWN:
        step = why = rule.why_not_sure
    return Shown(rule.shows, step, rule.look_instead, (rule.source,), why)


def _unlisted_mark(kind: Family, mark: str) -> Shown:
    end, why = UNKNOWN, f"No polarity mark was seen on the part ({kind.name})."
    if mark == SOMETHING_ELSE:
        why = f"The mark on the part ({kind.name}) has no known meaning."
    elif mark != NOTHING_SEEN:
        end = OTHER_PART
        why = f"This mark ({mark}) does not belong on this part ({kind.name}). Is it another part?"
    usual = ", ".join(marks_of(kind.name))
    return Shown(end, why, f"the part again; usual is: {usual}", (), why)


def _shown_by_board(kind: Family, mark: str, also: str, also_at: str) -> Shown:
    first = _board_mark(kind, board_marks()[mark])
    if also == NOTHING_ELSE:
        return first
    return _together("board", first, _board_mark(kind, board_marks()[also]), also_at)


def _board_mark(kind: Family, rule: BoardMark) -> Shown:
    end = rule.shows(kind.group)
    step, why = f"The board's {rule.mark} marks the {end} side.", ""
    if end == "pin 1":
        step = f"The board's {rule.mark} marks pin 1."
    elif end == NON_POLAR_PLACE:
        step = f"The board's {rule.mark} asks for a non-polar part."
    elif end in (UNKNOWN, OTHER_PART):
        step = why = rule.why_not_sure
    return Shown(end, step, rule.look_instead, (rule.source,), why)


def _together(side: str, first: Shown, second: Shown, second_at: str) -> Shown:
    """Two marks of one side as one: they agree, one of them decides, or they contradict."""
    here = OPPOSITE.get(second.end, second.end) if second_at == OTHER_END else second.end
    ends = {first.end, here}
    step = first.step if first.step == second.step else f"{first.step} {second.step}"
    end, why = UNKNOWN, step
    if second_at == NOT_SAID:
        why = f"Say at which end of the {side} the second mark is. {step}"
    elif OTHER_PART in ends:
        end = OTHER_PART
    elif len(ends) == 1:
        end = first.end
    elif UNKNOWN in ends and EITHER not in ends:
        (end,) = ends - {UNKNOWN}
    else:
        why = f"Two marks on the {side} contradict each other. {step}"
    look_at = f"{first.look_at}; {second.look_at}"
    return Shown(end, step, look_at, first.sources + second.sources, why)


def _notes(kind: Family, board: Shown) -> list[str]:
    if kind.name == "Zener diode":
        return [
            "A Zener diode works in reverse: its cathode belongs on the more positive rail. "
            "That is its normal place, not a mistake."
        ]
    if kind.is_capacitor and not kind.either_way and board.end != NON_POLAR_PLACE:
        return [
            "Before power, check with a meter that the positive pad goes to the more positive "
            "side. On a negative rail that side is ground."
        ]
    return []
