"""The grids of the room view: member by question, and member by lesson."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence

from repairlib.core.html import SIGNS, Html, text
from repairlib.learn.group import Group
from repairlib.learn.question import (
    CHANGED,
    PARTLY,
    RIGHT,
    UNANSWERED,
    UNREADABLE,
    UNSAFE,
    WRONG,
)
from repairlib.teach import stuck
from repairlib.teach.entries import Entry
from repairlib.teach.items import Item

LOOKS = {
    RIGHT: "r",
    PARTLY: "p",
    WRONG: "w",
    UNSAFE: "u",
    UNANSWERED: "n",
    UNREADABLE: "q",
    CHANGED: "c",
}
SAID = {UNANSWERED: "not answered", UNREADABLE: "cannot be read", CHANGED: "changed, not counted"}
HARD_SIGN = "▼"


def state_in_words(one: Entry) -> str:
    """The state of an answer in words, with its tries: "wrong, 3 tries"."""
    said = SAID.get(one.state, one.state)
    if one.tries > 1:
        said += f", {one.tries} tries"
    if one.once_unsafe and one.state != UNSAFE:
        said += ", unsafe before"
    return said


def cell(one: Entry, new_lesson: bool = False, with_words: bool = False) -> str:
    """One answer: its sign; where it is right, but not at the first try, the number of the try."""
    looks = [LOOKS[one.state]]
    looks += ["b"] if new_lesson else []
    looks += ["was"] if one.once_unsafe and one.state != UNSAFE else []
    looks += ["held"] if stuck.is_held_up(one) else []
    words = state_in_words(one)
    later = one.state == RIGHT and one.tries > 1
    sign = str(min(one.tries, 99)) if later and not with_words else SIGNS[one.state]
    shown = f'<span class="say">{words}</span>' if with_words else ""
    return (
        f'<td class="{" ".join(looks)}" title="{one.number} {one.id}: {words}" '
        f'aria-label="{one.number} {one.id}: {words}"><i>{sign}</i>{shown}</td>'
    )


def member_cell(name: str, word: str, partner: str, where: stuck.Where | None = None) -> str:
    """The name of a member at the head of a row, and how they are getting on."""
    both = f"{name} + {partner}" if partner else name
    head = f'<th scope="row" title="{text(both)} ({text(word)})">{text(both)}</th>'
    if where is None:
        return head
    kind = {stuck.STUCK: "stuck", stuck.SILENT: "quiet"}.get(where.how, "fine")
    return f'{head}<td class="where {kind}">{stuck.SIGNS[where.how]} {text(where.words)}</td>'


def grid(
    group: Group,
    by_member: Mapping[str, Sequence[Entry]],
    items: Sequence[Item],
    lessons: Sequence,
    where: Mapping[str, stuck.Where],
) -> Html:
    """Each question of each member. A lesson that nobody of a row has begun is one cell."""
    by_lesson = {
        one.lesson: [item for item in items if item.lesson == one.lesson] for one in lessons
    }
    columns = "".join(f'<col span="{len(asked)}">' for asked in by_lesson.values())
    heads = "".join(
        f'<th class="b" scope="colgroup" colspan="{len(by_lesson[one.lesson])}">'
        f'<a href="#l-{one.lesson}">{one.number} {text(one.title)}</a></th>'
        for one in lessons
    )
    numbers = "".join(
        _number(item, lesson, first=not at)
        for lesson in lessons
        for at, item in enumerate(by_lesson[lesson.lesson])
    )
    rows = "".join(
        f"<tr>{member_cell(one.name, one.word, _partner(by_member[one.word]), where[one.word])}"
        f"{_by_question(by_member[one.word])}</tr>"
        for one in group.members
    )
    wrong = "".join(
        _wrong(item, first=not at)
        for lesson in lessons
        for at, item in enumerate(by_lesson[lesson.lesson])
    )
    return Html(
        '<div class="whole"><table class="grid"><colgroup><col class="name"><col class="getting">'
        f'</colgroup><colgroup>{columns}</colgroup><thead><tr><th rowspan="2" scope="col">Member'
        f'</th><th rowspan="2" scope="col">Now</th>{heads}</tr>'
        f"<tr>{numbers}</tr></thead><tbody>{rows}</tbody>"
        f'<tfoot><tr><th colspan="2" scope="row">Wrong at first try, % of those who tried</th>'
        f"{wrong}</tr></tfoot></table></div>"
    )


def overview(
    group: Group,
    by_member: Mapping[str, Sequence[Entry]],
    items: Sequence[Item],
    lessons: Sequence,
    where: Mapping[str, stuck.Where],
    beside_grid: bool,
) -> Html:
    """One cell for each lesson; its heading opens the lesson below."""
    heads = "".join(
        f'<th scope="col"><a href="#l-{one.lesson}" title="{text(one.title)}">{one.number}'
        f"<small>{text(one.title)}</small></a></th>"
        for one in lessons
    )
    rows = ""
    for one in group.members:
        given = by_member[one.word]
        cells = "".join(_lesson(lesson, given) for lesson in lessons)
        head = member_cell(one.name, one.word, _partner(given), where[one.word])
        rows += f"<tr>{head}{cells}</tr>"
    hard = "".join(_hard_of(lesson, items) for lesson in lessons)
    looks = "narrow" if beside_grid else "always"
    return Html(
        f'<div class="folded {looks}"><table class="by-lesson">'
        '<colgroup><col class="name"><col class="getting"></colgroup><thead><tr>'
        f'<th scope="col">Member</th><th scope="col">Now</th>{heads}</tr></thead><tbody>'
        f'<tr class="hards"><th colspan="2" scope="row">{HARD_SIGN} more than 40 % wrong at first '
        f"try</th>{hard}</tr>{rows}</tbody></table></div>"
    )


def legend() -> Html:
    """What each sign says; it stands under the grid."""
    said = {
        f'<i class="r">{SIGNS[RIGHT]}</i>': "right at first try",
        '<i class="r">2</i>': "right at that try",
        f'<i class="p">{SIGNS[PARTLY]}</i>': "partly right",
        f'<i class="w">{SIGNS[WRONG]}</i>': "wrong",
        f'<i class="u">{SIGNS[UNSAFE]}</i>': "unsafe",
        f'<i class="r was">{SIGNS[RIGHT]}</i>': "line under it: unsafe before",
        f'<i class="n">{SIGNS[UNANSWERED]}</i>': "not answered",
        f'<i class="q">{SIGNS[UNREADABLE]}</i>': "cannot be read",
        f'<i class="c">{SIGNS[CHANGED]}</i>': "question changed",
        f'<i class="w held">{SIGNS[WRONG]}</i>': f"filled: {stuck.TRIES} tries or more",
    }
    pairs = " ".join(f"<span>{sign} {words}</span>" for sign, words in said.items())
    return Html(f'<p class="legend">{pairs}</p>')


def _partner(given: Sequence[Entry]) -> str:
    return next((one.partner for one in reversed(given) if one.partner), "")


def _by_question(given: Sequence[Entry]) -> str:
    by_lesson: dict[str, list[Entry]] = {}
    for one in given:
        by_lesson.setdefault(one.lesson, []).append(one)
    made = ""
    for theirs in by_lesson.values():
        if any(one.begun for one in theirs):
            made += "".join(cell(one, new_lesson=not at) for at, one in enumerate(theirs))
        else:
            made += f'<td class="n b" colspan="{len(theirs)}">not begun</td>'
    return made


def _number(item: Item, lesson, first: bool) -> str:
    looks = " ".join((*(["b"] if first else []), *(["hard"] if item.hard else [])))
    number = item.id.removeprefix("q")
    shown = f"{HARD_SIGN}<br>{number}" if item.hard else number
    words = f"{lesson.question(item.id)}: {lesson.asks.get(item.id, '')}"
    return f'<th class="{looks}" scope="col" title="{text(words)}">{shown}</th>'


def _wrong(item: Item, first: bool) -> str:
    shown = f"{100 * item.first_wrong:.0f}" if item.tried else ""
    said = {"b": first, "hard": item.hard, "all": shown == "100"}
    looks = " ".join(name for name, it_is in said.items() if it_is)
    return f'<td class="{looks}">{shown}</td>'


def _lesson(lesson, given: Sequence[Entry]) -> str:
    theirs = [one for one in given if one.lesson == lesson.lesson]
    begun = [one for one in theirs if one.begun]
    label = f' data-label="{lesson.number}"'
    if not begun:
        return f'<td class="n"{label}>{SIGNS[UNANSWERED]}</td>'
    states = Counter(one.state for one in theirs)
    words = ", ".join(f"{count} {SAID.get(state, state)}" for state, count in states.items())
    if states[RIGHT] == len(theirs):
        return f'<td class="r"{label} title="all right">{SIGNS[RIGHT]} all</td>'
    shown = "".join(
        f'<i class="{LOOKS[state]}">{SIGNS[state]}{states[state]}</i> '
        for state in (UNSAFE, WRONG, PARTLY, UNREADABLE, CHANGED, RIGHT)
        if states[state]
    )
    return f'<td{label} title="{words}">{shown}</td>'


def _hard_of(lesson, items: Sequence[Item]) -> str:
    hard = [one for one in items if one.lesson == lesson.lesson and one.hard]
    shown = " ".join(f"<b>{one.id} {one.first_wrong:.0%}</b>" for one in hard)
    return f'<td data-label="{lesson.number}">{shown}</td>'
