"""What is kept of the way to an answer, told to the learner at the exercise, with their record."""

from __future__ import annotations

from datetime import datetime

from repairlib.core.errors import RepairlibError
from repairlib.core.html import Html, fold, paragraphs, row, table, text
from repairlib.faces.panels.sheet_view import in_words
from repairlib.learn.bench_question import Bench
from repairlib.learn.exercise import Exercise
from repairlib.learn.hand_in import in_one_line
from repairlib.learn.question import Choice, Question
from repairlib.learn.tries import Story, Try, read_tries, stories

KEPT = (
    "What is kept: first answer, tries, times, dangerous answers; you and your instructor can "
    "read it"
)
IN_FULL = (
    "Beside your answers this computer keeps your first answer to each question, how often you "
    "tried, when, and every dangerous answer. What you type in one go is one try. A table or an "
    "order is a try when it is complete.",
    "Nothing of it is taken away again, so that you can see what you have learned, and your "
    "instructor what to talk through with you. It goes along when you hand in.",
)
NOTHING_YET = "Nothing is kept yet: you have not answered."


def record_html(exercise: Exercise) -> Html:
    """One line that says what is kept; folded, the same in full and the learner's own record.

    Raises RepairlibError when the record may not be read.
    """
    told = stories(read_tries(exercise.lesson, exercise.learner))
    known = [one for one in exercise.questions if one.id in told]
    record = paragraphs([NOTHING_YET])
    if known:
        head = row(("Question", "First answer", "Tries", "Dangerous"), 'scope="col"', "th")
        held = exercise.is_held()
        rows = [_row(one, told[one.id], held) for one in known]
        record = Html(f'<div class="rl-sheet rl-record">{table(rows, head)}</div>')
    return fold(KEPT, paragraphs(IN_FULL) + record)


def moment(at: int, how: str = "%d %b %H:%M") -> str:
    """When something was, by the clock of this computer."""
    return datetime.fromtimestamp(at / 1000).strftime(how)


def _row(ask: Question, story: Story, held: bool) -> Html:
    first = "" if story.first is None else _answer(ask, story.first, held)
    tried = "1 try" if story.tries == 1 else f"{story.tries} tries"
    unsafe = Html("<br>".join(f"⚠ {text(_answer(ask, one, True))}" for one in story.unsafe))
    return row((ask.id, first, tried, unsafe), first="th")


def _answer(ask: Question, one: Try, held: bool) -> str:
    """An answer as it was given, when, and what became of it where that may be told."""
    state = "" if held else f", {in_words(one.state)}"
    return f"{_given(ask, one.typed)} ({moment(one.at)}{state})"


def _given(ask: Question, typed: object) -> str:
    if isinstance(ask, Choice):
        try:
            return ask.read(typed)
        except RepairlibError:  # a letter of options that have changed since
            return str(typed)
    if isinstance(ask, Bench):
        return ask.in_a_word(typed)
    return in_one_line(ask, typed)
