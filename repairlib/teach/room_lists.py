"""What opens below the room view: each lesson with its questions, what to practise, what moved."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from repairlib.core.html import Html, row, table, text
from repairlib.learn.group import Group
from repairlib.teach.entries import Entry
from repairlib.teach.items import TOO_FEW, Item
from repairlib.teach.moved import Moved
from repairlib.teach.practise import Next
from repairlib.teach.room_grid import HARD_SIGN, cell, member_cell
from repairlib.teach.stuck import moment

BACK = '<a href="?">back to the room</a>'  # not "#": a browser does not refresh that
HEADINGS = ("Question", "Wrong at first try", "Right now", "Usual mistake", "Unsafe", "Separates")
PRACTISED = 4  # questions named for each member


def lesson_section(
    group: Group, by_member: Mapping[str, Sequence[Entry]], items: Sequence[Item], lesson
) -> Html:
    """One lesson: who has what, with the states in words where there is room, and each question."""
    asked = [one for one in items if one.lesson == lesson.lesson]
    rows = ""
    for member in group.members:
        theirs = [one for one in by_member[member.word] if one.lesson == lesson.lesson]
        cells = "".join(cell(one, with_words=True) for one in theirs)
        rows += f"<tr>{member_cell(member.name, member.word, theirs[0].partner)}{cells}</tr>"
    heads = "".join(
        f'<th scope="col" class="{"hard" if one.hard else ""}">{HARD_SIGN if one.hard else ""}'
        f"{one.id}</th>"
        for one in asked
    )
    looks = "lesson" if any(one.answered for one in asked) else "idle"
    return Html(
        f'<section class="more {looks}" id="l-{lesson.lesson}"><h2>{lesson.number} '
        f'{text(lesson.title)} {BACK}</h2><table class="words"><thead><tr><th scope="col">Member'
        f"</th>{heads}</tr></thead><tbody>{rows}</tbody></table>{_questions(asked, lesson)}"
        "</section>"
    )


def _questions(asked: Sequence[Item], lesson) -> Html:
    made = [_question(one, lesson) for one in asked]
    shown = table(made, row(HEADINGS, 'scope="col"', "th"))
    return Html(shown.replace("<table>", '<table class="questions">', 1))


def _question(one: Item, lesson) -> Html:
    called = lesson.question(one.id).removeprefix(lesson.number).strip()
    asks = Html(f"<b>{text(called)}</b>: {text(lesson.asks.get(one.id, ''))}")
    wrong = f"{one.tried - one.first_right} of {one.tried}"
    if one.hard:
        wrong = f"{HARD_SIGN} {wrong} ({one.first_wrong:.0%})"
    now = f"{one.right} of {one.answered}"
    usual = f"{one.mistake} ({one.mistaken})" if one.mistake else ""
    looks = ["", *(f'data-label="{heading}"' for heading in HEADINGS[1:])]
    return row((asks, wrong, now, usual, one.unsafe or "", separates(one)), looks)


def separates(one: Item) -> str:
    """Whether a question separates, with its number and how far chance alone takes it."""
    if one.separation is None or one.verdict == TOO_FEW:
        return one.verdict
    return f"{one.verdict} ({one.separation:+.1f}, give or take {one.by_chance:.1f})"


def practise_section(following: Iterable[Next], lessons: Mapping) -> Html:
    """What each member should practise next, and the lesson to go on with."""
    made = []
    for one in following:
        due = "; ".join(
            f"{lessons[each.lesson].question(each.id)} ({each.why})"
            for each in one.questions[:PRACTISED]
        )
        if len(one.questions) > PRACTISED:
            due += f"; and {len(one.questions) - PRACTISED} more"
        go_on = (
            f"{lessons[one.lesson].number} {lessons[one.lesson].title}"
            if one.lesson
            else "all done"
        )
        made.append(row((one.name, due or "nothing", go_on), first="th"))
    head = row(("Member", "Practise", "Then go on with"), 'scope="col"', "th")
    shown = table(made, head).replace("<table>", '<table class="practise">', 1)
    return Html(
        f'<section class="more" id="practise"><h2>What to practise next {BACK}</h2>{shown}'
        "</section>"
    )


def moved_section(moved: Sequence[Moved], lessons: Mapping, at: int) -> Html:
    """Marks that moved although the answer stayed, the latest first."""
    made = [
        row(
            (
                moment(one.at, at),
                one.name,
                lessons[one.lesson].question(one.id),
                f"{one.was} → {one.now}",
                one.why,
            )
        )
        for one in reversed(moved)
    ]
    head = row(("When", "Member", "Question", "Points", "Why"), 'scope="col"', "th")
    none = "<p>None: every mark is as it was, or the answer is another.</p>"
    shown = table(made, head).replace("<table>", '<table class="moved">', 1) if made else none
    return Html(
        f'<section class="more" id="moved"><h2>Marks that moved, with the answer as it was {BACK}'
        f"</h2>{shown}</section>"
    )
