"""One question of an own lesson: what was typed of it, its variants, and which a learner gets.

A question has words of one kind of answer: Answer, Right, First, Columns, or Set. How each is read
stands in `numbers`, `choices`, `tables` and `repairs`. With Names and Values each line of values is
a variant.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from typing import NamedTuple

from repairlib.core.draws import Draw, normal
from repairlib.learn.arranging import Order, Table
from repairlib.learn.own.choices import read_choice, read_order
from repairlib.learn.own.numbers import read_number
from repairlib.learn.own.parts import Asked, Wrong, cells_of
from repairlib.learn.own.repairs import read_repair
from repairlib.learn.own.said import ANSWER_WORDS, QUESTION_WORDS, TEXT, Said
from repairlib.learn.own.slips import TOLD, Slip
from repairlib.learn.own.tables import read_table
from repairlib.learn.question import Choice, Question

ONCE = ("points", "names", "picture", "answer", "right", "first", "columns", "hint")
MOST_POINTS = 100
MOST_VARIANTS = 500
MOST_WRONG = 50
_BLANK = re.compile(r"\[([^\[\]]*)\]")
_ANSWERS = (
    "Answer: 100 nF, or Right: and Wrong:, or First: and Then:, or Columns: and Row:, or Set: and "
    "Fault:"
)


class Kind(NamedTuple):
    """A kind of question: what reads it, and its words."""

    read: Callable[[Asked, list[Slip]], Question | None]
    words: tuple[str, ...]


KINDS = {
    "answer": Kind(read_number, ("answer", "wrong", "danger", "say")),
    "right": Kind(read_choice, ("right", "wrong", "danger", "say")),
    "first": Kind(read_order, ("first", "then", "wrong", "danger", "say")),
    "columns": Kind(read_table, ("columns", "row", "also", "wrong", "danger", "say")),
    "set": Kind(read_repair, ("set", "fault")),
}


class OwnQuestion(NamedTuple):
    """A question: its line, whether it is marked, its points, and its variants by their values."""

    line: int
    graded: bool
    points: float
    variants: Mapping[tuple[str, ...], Question]

    def ask(self, draw: Draw) -> Question:
        """The variant that a draw gives, its options and steps in a drawn order."""
        return shuffled(self.variants[draw.pick(self.variants)], draw)


def shuffled(question: Question, draw: Draw) -> Question:
    """The question with what is chosen or put in order as the draw puts it."""
    if isinstance(question, Choice):
        return replace(question, options=draw.shuffle(question.options))
    if isinstance(question, Order):
        return replace(question, shown=draw.shuffle(question.steps))
    if isinstance(question, Table):
        orders: dict[Sequence[str], tuple[str, ...]] = {}
        for cell in (cell for row in question.cells.values() for cell in row.values()):
            if isinstance(cell, Choice) and cell.options not in orders:
                orders[cell.options] = draw.shuffle(cell.options)
        cells = {
            name: {
                column: replace(cell, options=orders[cell.options])
                if isinstance(cell, Choice)
                else cell
                for column, cell in row.items()
            }
            for name, row in question.cells.items()
        }
        return replace(question, cells=cells)
    return question


def question_in(said: Sequence[Said], end: int, slips: list[Slip]) -> OwnQuestion:
    """The question that begins with the first of `said` and ends before the line `end`.

    What cannot be read goes to `slips`.
    """
    head = said[0]
    mistyped = any(head.line <= slip.line < end for slip in slips)
    asked = _taken_apart(said, slips)
    kind = _kind(asked, mistyped, slips)
    with_blanks = {one.line for one in asked.all_said() if _BLANK.search(one.text)}
    variants: dict[tuple[str, ...], Question] = {}
    for line, values in _values(asked, slips):
        if len(slips) > TOLD:  # nobody reads more of them
            break
        found: list[Slip] = []
        unfilled: set[int] = set()
        filled = asked.filled(_filling(asked, values, unfilled, slips))
        question = kind(filled, found) if kind else None
        told = line if line != head.line else 0
        slips += [
            _with_values(one, told) if one.line in with_blanks else one
            for one in found
            if one.line not in unfilled
        ]
        if question is not None:
            variants.setdefault(tuple(values.values()), question)
    return OwnQuestion(head.line, head.word == "question", _points(asked, slips), variants)


def _taken_apart(said: Sequence[Said], slips: list[Slip]) -> Asked:
    """What stands in a question by its words, each word where it may be."""
    head, *rest = said
    asked = Asked(head, [], {}, [])
    if head.text:
        asked.prompt.append(head)
    for one in rest:
        if slip := _out_of_place(one, asked):
            slips.append(slip)
        elif one.word == TEXT:
            asked.prompt.append(one)
        elif one.word in ("wrong", "danger"):
            asked.wrong.append(Wrong(one, None))
        elif one.word == "say":
            asked.wrong[-1] = asked.wrong[-1]._replace(say=one)
        elif one.word != "not shown":
            asked.by_word.setdefault(one.word, []).append(one)
    if len(asked.wrong) > MOST_WRONG:
        line, count = asked.wrong[MOST_WRONG].said.line, len(asked.wrong)
        slips.append(Slip(line, f"{count} wrong answers", "too many", f"up to {MOST_WRONG}"))
        del asked.wrong[MOST_WRONG:]
    if not asked.prompt:
        accepted = "the question in words, on the lines below"
        slips.append(Slip(head.line, head.word.capitalize(), "nothing is asked", accepted))
    return asked


def _out_of_place(one: Said, asked: Asked) -> Slip | None:
    """What is wrong with where a thing stands, or with how little it says."""
    named = f"{one.word.capitalize()}:"
    if one.word == "not shown":
        return None
    if one.word == TEXT:
        if not asked.wrong and not set(asked.by_word) & set(ANSWER_WORDS):
            return None
        wrong = "this text stands behind the answers and belongs to nothing"
        accepted = "a word with a colon before it, such as Hint:, or a line Question below it"
        return Slip(one.line, one.text, wrong, accepted)
    if one.word not in QUESTION_WORDS:
        return Slip(one.line, named, "belongs to the lesson", "it above the first Question")
    if not one.text:
        return Slip(one.line, named, "nothing stands behind it", f"{named} and some words")
    if one.word in ONCE and one.word in asked.by_word:
        return Slip(one.line, named, "stands in this question twice", f"one {named}")
    if one.word == "say" and (not asked.wrong or asked.wrong[-1].say):
        return Slip(one.line, named, "says something on no answer", "it below a Wrong: or Danger:")
    return None


def _kind(
    asked: Asked, mistyped: bool, slips: list[Slip]
) -> Callable[[Asked, list[Slip]], Question | None] | None:
    """What reads this kind of question; None when it has none, or words of two.

    That it has none goes without saying where a word in it was `mistyped`.
    """
    words = [word for word in (*asked.by_word, *(["wrong"] * bool(asked.wrong)))]
    found = [name for name, kind in KINDS.items() if name in words]
    line, named = asked.head.line, asked.head.word.capitalize()
    if len(found) != 1:
        if mistyped and not found:
            return None
        wrong = f"both {found[0]} and {found[1]} stand in it" if found else "it has no answer"
        slips.append(Slip(line, named, wrong.lower(), _ANSWERS))
        return None
    kind = KINDS[found[0]]
    for word in words:
        if word in ANSWER_WORDS and word not in (*kind.words, "hint"):
            at = asked.by_word[word][0].line if word in asked.by_word else asked.wrong[0].said.line
            wrong = f"does not go with {found[0].capitalize()}:"
            slips.append(Slip(at, f"{word.capitalize()}:", wrong, ", ".join(kind.words)))
    return kind.read


def _points(asked: Asked, slips: list[Slip]) -> float:
    """What the question is worth: 1 where nothing is said."""
    named = asked.by_word.get("points", [])
    told = [(asked.head.line, asked.head.about)] * bool(asked.head.about)
    told += [(one.line, one.text) for one in named]
    if not told:
        return 1
    line, text = told[-1]
    accepted = f"a number up to {MOST_POINTS}, whole or with a half"
    if len(told) > 1:
        slips.append(Slip(line, text, "its points are said twice", "them once"))
    if asked.head.word == "practice":
        slips.append(Slip(line, text, "Practice is not marked", "Practice without points"))
    figure = text.lower().removesuffix("s").removesuffix("point")
    try:
        points = float(figure.replace(",", "."))
    except ValueError:
        points = 0
    if not 0 < points <= MOST_POINTS or points * 2 % 1:
        slips.append(Slip(line, text, "no number of points", accepted))
    return points


# Variants


def _values(asked: Asked, slips: list[Slip]) -> Iterator[tuple[int, dict[str, str]]]:
    """(line, name to value) of each variant; one without names where there are none."""
    names, values = asked.by_word.get("names", []), asked.by_word.get("values", [])
    if not names or not values:
        for one in names or values:
            missing = "Values:" if names else "Names:"
            wrong = f"has no {missing} with it"
            slips.append(Slip(one.line, f"{one.word.capitalize()}:", wrong, f"{missing} below it"))
        yield asked.head.line, {}
        return
    columns = cells_of(names[0].text)
    _look_at_names(names[0], columns, asked, slips)
    for one in values[:MOST_VARIANTS]:
        cells = cells_of(one.text)
        if len(cells) != len(columns) or not all(cells):
            wrong = f"{len(list(filter(None, cells)))} values for {len(columns)} names"
            slips.append(Slip(one.line, one.text, wrong, names[0].text))
        else:
            yield one.line, dict(zip(map(normal, columns), cells, strict=True))
    if len(values) > MOST_VARIANTS:
        line = values[MOST_VARIANTS].line
        wrong = "too many lines of values"
        slips.append(Slip(line, f"{len(values)} lines", wrong, f"up to {MOST_VARIANTS}"))


def _look_at_names(names: Said, columns: list[str], asked: Asked, slips: list[Slip]) -> None:
    """Each name once, and used."""
    if len(columns) == 1 and "," in names.text:
        accepted = " | ".join(one.strip() for one in names.text.split(","))
        slips.append(Slip(names.line, names.text, "several names have strokes between", accepted))
        return
    used = {normal(blank) for text in asked.texts() for blank in _BLANK.findall(text)}
    for place, name in enumerate(columns):
        if not name or normal(name) in map(normal, columns[:place]):
            slips.append(Slip(names.line, name, "empty, or named twice", "a name for each value"))
        elif normal(name) not in used:
            wrong = "this name is used nowhere in the question"
            slips.append(Slip(names.line, name, wrong, f"[{name}] where its value shall stand"))


def _filling(
    asked: Asked, values: Mapping[str, str], unfilled: set[int], slips: list[Slip]
) -> Callable[[Said], Said]:
    """What puts values in the place of the names in brackets; lines left without go to `unfilled`.

    A name that stands in Names and has no value is told elsewhere.
    """
    typed = [one.text for one in asked.by_word.get("names", [])]
    named = [normal(name) for text in typed for name in re.split(r"[|\t,]", text)]
    accepted = ", ".join(f"[{name}]" for name in named) or "( ), or a line Names: above it"

    def fill(one: Said) -> Said:
        def value(found: re.Match[str]) -> str:
            name = normal(found[1])
            if name not in values:
                unfilled.add(one.line)
                if name not in named:
                    slips.append(Slip(one.line, found[0], "no name of a value", accepted))
            return values.get(name, found[0])

        return one._replace(text=_BLANK.sub(value, one.text)) if "[" in one.text else one

    return fill


def _with_values(slip: Slip, line: int) -> Slip:
    """The slip in what values stand in; it names their line too, where they have one."""
    if not line:
        return slip
    wrong = f"{slip.wrong}, with the values on line {line}"
    return Slip(slip.line, slip.read, wrong, slip.accepted)
