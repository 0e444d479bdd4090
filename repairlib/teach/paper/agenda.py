"""The agenda: the lessons of a group spread over one, two or four evenings, with breaks."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations, pairwise
from typing import NamedTuple

from repairlib.core.html import Html, row, table, text
from repairlib.core.safety import HAZARDS
from repairlib.learn.group import Group
from repairlib.teach.paper.asked import asked, called, minutes
from repairlib.teach.paper.lesson_pieces import hazards_of, pieces_of
from repairlib.teach.paper.printing import Sheet
from repairlib.teach.paper.style import AGENDA_STYLE

EVENINGS = (1, 2, 4)
BEGIN, END, BREAK = 15, 10, 10  # minutes, our choice
LONG = 180  # minutes; a longer evening is said to be one
UNSTATED = 20  # minutes for a lesson that states none, our choice
RULE = (
    "Minutes are those that each lesson states; 15 to begin, 10 to clear up and a break of 10 "
    "after each lesson but the last are our choice. The lessons keep their order and are spread so "
    "that the longest evening is as short as can be."
)


class Evening(NamedTuple):
    """One evening: its lessons with the minutes of each."""

    lessons: tuple[tuple[str, int], ...]

    @property
    def minutes(self) -> int:
        """How long it takes, with breaks.

        >>> Evening((("00-start-here", 30), ("01-a-safe-bench", 45))).minutes
        110
        """
        breaks = BREAK * max(0, len(self.lessons) - 1)
        return BEGIN + sum(long for _, long in self.lessons) + breaks + END


def spread(lessons: Sequence[tuple[str, int]], evenings: int) -> list[Evening]:
    """The lessons in their order over so many evenings, the longest as short as can be.

    >>> [len(one.lessons) for one in spread([("a", 45), ("b", 45), ("c", 90)], 2)]
    [2, 1]
    """
    count = min(evenings, len(lessons))
    cuts = combinations(range(1, len(lessons)), count - 1)
    plans = ([*_between(lessons, (0, *cut, len(lessons)))] for cut in cuts)
    return min(plans, key=lambda plan: [one.minutes for one in sorted(plan, key=_long)][::-1])


def _long(evening: Evening) -> int:
    return evening.minutes


def _between(lessons: Sequence[tuple[str, int]], cuts: Sequence[int]) -> Iterator[Evening]:
    for start, end in pairwise(cuts):
        yield Evening(tuple(lessons[start:end]))


def agenda(group: Group) -> Sheet:
    """The agenda of a group for one, two and four evenings, and what each lesson asks for."""
    lessons = [(lesson, minutes(lesson, group) or UNSTATED) for lesson in group.lessons]
    parts = [f"<h1>Agenda: {text(group.name)}</h1><p>{text(RULE)}</p>"]
    for count in EVENINGS:
        if count <= len(lessons):
            parts.append(_plan(spread(lessons, count), group))
    parts.append(_lessons(group))
    return Sheet("Agenda", f"Agenda · {group.name}", tuple(parts), AGENDA_STYLE)


def _plan(evenings: Sequence[Evening], group: Group) -> str:
    title = "One evening" if len(evenings) == 1 else f"{len(evenings)} evenings"
    rows = []
    for number, evening in enumerate(evenings, 1):
        rows.append(
            row([f"Evening {number}", Html(_times(evening, group)), _hours(evening.minutes)])
        )
    long = max(one.minutes for one in evenings)
    told = (
        f"<p><b>{_hours(long)} is longer than {_hours(LONG)}.</b> Hand out what does not fit to be "
        "read and answered at home, or take more evenings.</p>"
        if long > LONG
        else ""
    )
    return f"<section><h2>{title}</h2>{told}{table(rows)}</section>"


def _times(evening: Evening, group: Group) -> str:
    at, lines = 0, []
    steps = [("begin: names, words, hazard sheet", BEGIN)]
    for number, (lesson, long) in enumerate(evening.lessons):
        steps += [("break", BREAK)] if number else []
        steps.append((called(lesson, group), long))
    for what, long in [*steps, ("clear up, hand in", END)]:
        lines.append(f"<b>{_clock(at)}</b> {text(what)}")
        at += long
    return "<br>".join(lines)


def _clock(at: int) -> str:
    return f"{at // 60}:{at % 60:02}"


def _hours(long: int) -> str:
    return f"{long // 60} h {long % 60:02} min"


def _lessons(group: Group) -> str:
    """What to have ready for each lesson, and what to watch."""
    rows = [
        row([called(lesson, group), _ready(lesson, group), Html(_watch(lesson, group))])
        for lesson in group.lessons
    ]
    head = row(("lesson", "have ready", "watch"), tag="th")
    made = f'<div class="lessons">{table(rows, head)}</div>'
    return f"<h2>What to have ready, and what to watch</h2>{made}"


def _ready(lesson: str, group: Group) -> Html:
    pieces = pieces_of(lesson, group)
    found = [one.html for one in pieces if one.section.startswith("Time, parts") and one.prose]
    return Html(found[0].partition("</h2>")[2] if found else "")


def _watch(lesson: str, group: Group) -> str:
    said = " ".join(f"{HAZARDS[key].title}." for key in hazards_of(lesson, group))
    said = f"<p>⚠ {text(said)}</p>" if said else ""
    _, questions = asked(lesson, group)[0]
    numbers = [str(at) for at, one in enumerate(questions, 1) if one.hazards()]
    asks = f"<p>Dangerous answers are possible in question {', '.join(numbers)}.</p>"
    return said + (asks if numbers else "")
