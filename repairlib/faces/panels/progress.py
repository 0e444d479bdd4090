"""How far one is in all lessons: done, open, not begun; what to practise; the two ways through."""

from __future__ import annotations

from collections.abc import Sequence

import ipywidgets as widgets

from repairlib.core.errors import RepairlibError
from repairlib.core.html import SIGNS, Html, listed, row, soft, table, text, told
from repairlib.faces.panels.following import follow
from repairlib.faces.panels.look import Panel, trouble, words
from repairlib.faces.panels.sheet_view import called, in_words, link, who_answers
from repairlib.learn.learner import current_learner
from repairlib.learn.marking import points
from repairlib.learn.progress import (
    DONE,
    NOT_BEGUN,
    OPEN,
    Again,
    Standing,
    go_on_with,
    standings,
)
from repairlib.learn.question import HELD

SIGN = {DONE: SIGNS["right"], OPEN: SIGNS["partly right"], NOT_BEGUN: SIGNS["unanswered"]}
SHOWN_AGAIN = 8  # mistakes to practise from; more would be read by nobody


class ProgressView(Panel):
    """The panel's parts: `shown`, and the button `again` for answers given in other lessons."""

    def __init__(self):
        self.shown = words()
        self.again = widgets.Button(description="Look again")
        self.again.on_click(lambda _: self._look())
        super().__init__(self.shown, self.again)
        self._look()
        follow("progress", self._look)

    def _look(self) -> None:
        try:
            learner, note = current_learner()
            lessons = standings(learner)
        except RepairlibError as error:
            self.shown.value = trouble(error)
            return
        notes = [note, *(f"{one.lesson}: {said}" for one in lessons for said in one.notes)]
        notes = [note for note in notes if note]
        problem = told("cannot read", "Please note", notes) if notes else ""
        self.shown.value = problem + progress_html(lessons, who_answers(learner))


def progress_view() -> ProgressView:
    """The progress of the learner who is set, ready to be shown."""
    return ProgressView()


def progress_html(lessons: Sequence[Standing], who: str) -> Html:
    """What comes next, large; then all lessons, the two ways, and what to practise."""
    return Html(
        f"{_headline(lessons, who)}{_table(lessons)}{_ways(lessons)}{_practise_html(lessons)}"
    )


def _headline(lessons: Sequence[Standing], who: str) -> Html:
    done = sum(one.state == DONE for one in lessons)
    following = go_on_with(lessons)
    says = [f"{who}: {done} of {len(lessons)} lessons done."]
    if following is None:
        return told("right", "All lessons done: well done!", says)
    verb = "Go on with" if following.state == OPEN else "Next:" if done else "Begin with"
    more = f"<div>{link(following.lesson, f'Open lesson {following.number}')}</div>"
    headline = f"{verb} {called(following.lesson)}"
    state = "partly right" if following.state == OPEN else "unanswered"
    return told(state, headline, says, more)


def _table(lessons: Sequence[Standing]) -> Html:
    head = row(("Lesson", "Time", "So far", "Points", "Short way"), 'scope="col"', "th")
    return Html(f'<div class="rl-sheet">{table(map(_row, lessons), head)}</div>')


def _row(one: Standing) -> Html:
    cells = (
        link(one.lesson, f"{one.number} {one.title}"),
        "" if one.minutes is None else f"about {one.minutes} min",
        f"{SIGN[one.state]} {one.state}",
        HELD if one.held else f"{points(one.points)} of {points(one.out_of)}",
        "● one evening" if one.in_one_evening else "",
    )
    return row(cells, first="th")


def _ways(lessons: Sequence[Standing]) -> Html:
    evening = [one for one in lessons if one.in_one_evening]
    return soft(
        listed(
            [
                f"One evening, to change old capacitors: lessons {_numbers(evening)}"
                f"{_minutes(evening)}.",
                f"The whole workbook: all lessons in this order{_minutes(lessons)}.",
            ]
        )
    )


def _numbers(lessons: Sequence[Standing]) -> str:
    return ", ".join(one.number for one in lessons)


def _minutes(lessons: Sequence[Standing]) -> str:
    """What the lessons that are not done take together, where each of them says so."""
    left = [one.minutes for one in lessons if one.state != DONE]
    stated = [minutes for minutes in left if minutes is not None]
    if not left:
        return ": done"
    return f": about {sum(stated)} minutes left" if len(stated) == len(left) else ""


def _practise_html(lessons: Sequence[Standing]) -> Html:
    due = [(one, mistake) for one in lessons for mistake in one.again]
    if not due:
        return Html("")
    due.sort(key=lambda pair: pair[1].state != "unsafe")
    items = [_practise(one, mistake) for one, mistake in due[:SHOWN_AGAIN]]
    more = f"<p>And {len(due) - SHOWN_AGAIN} more.</p>" if len(due) > SHOWN_AGAIN else ""
    return Html(f"<h4>To practise next</h4>{listed(items)}{more}")


def _practise(one: Standing, mistake: Again) -> Html:
    said = f"{in_words(mistake.state)}. {mistake.hint}"
    return Html(f"{link(one.lesson, f'Lesson {one.number}')}, {mistake.id}: {text(said)}")
