"""The bench permits: printed for whoever has the safety questions right, or was signed for.

Right means right at the first try. Everybody else is on a list of what to talk through.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from repairlib.core.html import Html, row, table, text
from repairlib.core.limits import TOUCHABLE_DC
from repairlib.core.safety import HAZARDS
from repairlib.learn.exercise import questions_of
from repairlib.learn.group import Group, Member
from repairlib.learn.learner import member_of
from repairlib.learn.question import RIGHT, UNSAFE, Question
from repairlib.teach.instructor import Signed
from repairlib.teach.marked import Marked
from repairlib.teach.paper.printing import Sheet
from repairlib.teach.paper.question_sheet import WRITE
from repairlib.teach.paper.style import PERMIT_STYLE

SAFETY_LESSONS = ("00-start-here", "01-a-safe-bench")
NOT_ANSWERED = "not answered"
Answered = Mapping[str, Marked]  # of one member, by lesson
RULE = (
    "A permit is printed once every safety question is right at the first try: those of lessons 00 "
    "and 01 in which a wrong answer could hurt someone. What a pair has answered counts here only "
    "for the one whose sheet it was. Or the instructor talks them through and signs: class sign "
    "FOLDER WORD --by NAME."
)


class Open(NamedTuple):
    """A safety question that was not right at the first try, and how it stands."""

    lesson: str
    question: Question
    state: str
    hazards: tuple[str, ...]


def still_open(member: Member, group: Group, answered: Answered) -> list[Open]:
    """The safety questions that a member has not had right at the first try.

    What a partner's file says gives nobody a permit; a dangerous answer in it is open for both.
    """
    due = []
    for lesson in SAFETY_LESSONS:
        marked = answered.get(lesson)
        for question in questions_of(lesson, member_of(group, member), group):
            if question.hazards():
                story = marked.own.get(question.id) if marked else None
                first = story.first if story else None
                if first is not None and first.state != RIGHT:
                    due.append(Open(lesson, question, first.state, first.hazards))
                elif marked and question.id in marked.unsafe:
                    due.append(Open(lesson, question, UNSAFE, ()))
                elif first is None:
                    due.append(Open(lesson, question, NOT_ANSWERED, ()))
    return due


def permits(
    group: Group, answered: Mapping[str, Answered], signed: Mapping[str, Signed]
) -> tuple[Sheet, Sheet]:
    """The permits, and the list of what to talk through with the others.

    `answered` and `signed` are by the word of a member.
    """
    open_of = {
        one.word: still_open(one, group, answered.get(one.word, {})) for one in group.members
    }
    granted = [one for one in group.members if one.word in signed or not open_of[one.word]]
    others = [(one, open_of[one.word]) for one in group.members if one not in granted]
    given = [_permit(one, group, signed.get(one.word)) for one in granted]
    none = "<p>Nobody has a permit yet.</p>"
    first = Sheet(
        "Bench permits", f"Bench permits · {group.name}", tuple(given or [none]), PERMIT_STYLE
    )
    told = "".join(_to_talk(one, due) for one, due in others) or "<p>Everybody has a permit.</p>"
    parts = (f"<h1>To talk through: {text(group.name)}</h1><p>{text(RULE)}</p>", told)
    head = f"Instructor only · to talk through · {group.name}"
    return first, Sheet("To talk through", head, parts, PERMIT_STYLE)


def _permit(member: Member, group: Group, signed: Signed | None) -> str:
    how = (
        f"The safety questions were talked through and signed for by <b>{text(signed.by)}</b> on "
        f"{text(signed.on)}."
        if signed
        else "Every safety question of lessons 00 and 01 was right at the first try."
    )
    may_not = f"{HAZARDS['mains'].defer} {HAZARDS['stored charge'].defer}"
    return (
        f'<section class="permit"><h1>Bench permit</h1><p class="who"><b>{text(member.name)}</b> '
        f"({text(member.word)}), {text(group.name)}</p><p>{how}</p><p>May work with the others, "
        "while the instructor is in the room, on sets that are unplugged, discharged and measured "
        f"dead, up to {TOUCHABLE_DC:g} V dc.</p><p><b>Not:</b> {text(may_not)}</p>"
        f'<p class="sign">Instructor {WRITE} Learner {WRITE} Date {WRITE}</p></section>'
    )


def _to_talk(member: Member, due: list[Open]) -> str:
    signing = f"Talked through by {WRITE} Date {WRITE}"
    title = f"<h2>{text(member.name)} ({text(member.word)})</h2>"
    if all(one.state == NOT_ANSWERED for one in due):
        which = "; ".join(
            f"{lesson.partition('-')[0]}: question {', '.join(found)}"
            for lesson in SAFETY_LESSONS
            if (found := [one.question.id[1:] for one in due if one.lesson == lesson])
        )
        told = f"Nothing is known of the safety questions, which are {which}."
        return f'<section class="talk">{title}<p>{told}</p><p>{signing}</p></section>'
    rows = [
        row((one.lesson.partition("-")[0], one.question.id[1:], _said(one), one.question.prompt))
        for one in due
    ]
    head = row(("lesson", "question", "first answer", "asked"), tag="th")
    return f'<section class="talk">{title}{table(rows, head)}<p>{signing}</p></section>'


def _said(one: Open) -> Html:
    titles = "; ".join(HAZARDS[key].title for key in one.hazards)
    told = "⚠ dangerous" + f": {titles}" * bool(titles) if one.state == UNSAFE else one.state
    return text(told)
