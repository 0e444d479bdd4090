"""The room view: one page that shows who is stuck where, with the unsafe answers on top.

It needs no network and no script: the browser asks for it again every few seconds. A screen with
room shows every question of every member; a larger group, and a telephone, get one cell for each
lesson, and each lesson opens below. Paper gets all of it.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import datetime

from repairlib.core.html import Html, text
from repairlib.core.once import Once
from repairlib.core.wording import counted
from repairlib.learn.asking import names
from repairlib.learn.exercise import module_of, questions_of
from repairlib.learn.group import Group
from repairlib.learn.learner import DEMO
from repairlib.learn.progress import number_of, stated
from repairlib.teach.entries import Entry
from repairlib.teach.in_words import asked_in_words
from repairlib.teach.items import Item
from repairlib.teach.moved import Moved
from repairlib.teach.practise import Next
from repairlib.teach.room_grid import grid, legend, overview
from repairlib.teach.room_lists import lesson_section, moved_section, practise_section
from repairlib.teach.room_style import STYLE
from repairlib.teach.room_tops import hard_panel, unsafe_panel, unsafe_section
from repairlib.teach.stuck import where_is
from repairlib.teach.unsafe import unsafe_answers

EVERY = 10  # seconds until the page asks for itself again
OLD = 60  # seconds after which it says that it is old
WIDEST, TALLEST = 72, 16  # questions and members that a screen of 1280 x 720 shows one by one
MOST = 60  # members on one page; of more, those to walk over to first
PRIVATE = (
    "For the instructor of this group alone: it holds names and answers. Each learner may see "
    "their own part. Do not project it, do not pass it on, delete it when the group is over."
)
# Without it the page says when it was made; with it also how long ago that is, and it comes anew
# while a lesson is open below too: browsers do not refresh an address with a place in it.
AGE = """<script>
const made = %d, out = document.getElementById("age");
function say() {
  const s = Math.max(0, Math.round((Date.now() - made) / 1000));
  out.textContent = s < 120 ? s + " s ago" : Math.round(s / 60) + " min ago";
  if (s > %d) { out.className = "old"; out.textContent += ": nothing new arrives"; }
}
say(); setInterval(say, 1000);
setInterval(() => { if (location.href.includes("#")) location.reload(); }, %d);
</script>"""


class Lesson:
    """A lesson as the room view names it: its number, its title and what its questions ask."""

    def __init__(self, lesson: str, group: Group):
        self.lesson = lesson
        self.number = number_of(lesson)
        self.title = stated(lesson, group)[0]
        self.called = names(module_of(lesson, group))
        self.asks = {one.id: asked_in_words(one) for one in questions_of(lesson, DEMO, group)}

    def question(self, name: str) -> str:
        """A question in short: "03 q6 film voltage"."""
        return f"{self.number} {name} {self.called.get(name, '')}".strip()


def room_view(
    group: Group,
    entries: Sequence[Entry],
    asked: Mapping,
    items: Sequence[Item],
    following: Sequence[Next],
    moved: Sequence[Moved],
    at: int,
    every: int = EVERY,
) -> str:
    """The page as HTML, as of `at` (ms since 1970). `asked` are the `questions_for` the group."""
    lessons = Once(lambda lesson: Lesson(lesson, group))
    by_member: dict[str, list[Entry]] = {one.word: [] for one in group.members}
    for entry in entries:
        by_member[entry.word].append(entry)
    where = {word: where_is(given, at) for word, given in by_member.items()}
    unsafe = unsafe_answers(entries, asked)
    questions = list(dict.fromkeys((one.lesson, one.id) for one in entries))
    shown = [lessons[one] for one in dict.fromkeys(lesson for lesson, _ in questions)]
    is_small = len(questions) <= WIDEST and len(group.members) <= TALLEST
    here = _shown(group, where)
    left_out = len(group.members) - len(here.members)
    parts = [
        _head(group, where, at),
        '<div class="tops">',
        unsafe_panel(unsafe, lessons, at),
        hard_panel(items, lessons),
        "</div>",
        f"<p>Not shown: {left_out} members who are getting on. All are in marks.csv.</p>"
        if left_out
        else "",
        grid(here, by_member, items, shown, where) if is_small else "",
        overview(here, by_member, items, shown, where, is_small),
        legend(),
        unsafe_section(unsafe, lessons, at),
        *(lesson_section(here, by_member, items, one) for one in shown),
        practise_section(following, lessons),
        moved_section(moved, lessons, at),
        f'<p class="private">{PRIVATE}</p>',
        AGE % (at, OLD, 1000 * every),
    ]
    return _page(f"Room view: {group.name}", parts, every)


def _shown(group: Group, where: Mapping) -> Group:
    """The group with as many members as one page holds, those who need help first."""
    if len(group.members) <= MOST:
        return group
    first = sorted(group.members, key=lambda one: not where[one.word].needs_help)
    return group._replace(members=tuple(first[:MOST]))


def _head(group: Group, where: Mapping, at: int) -> Html:
    """Who, when, and how many need help."""
    to_see = sum(one.needs_help for one in where.values())
    made = datetime.fromtimestamp(at / 1000)
    help_ = f"{counted(to_see, 'person')} stuck or quiet".replace("persons", "people")
    return Html(
        f"<header><h1>{text(group.name)}</h1><p><b>{help_}</b> of {len(group.members)}</p>"
        f'<p>As of <time datetime="{made.isoformat(timespec="seconds")}">'
        f'{made.strftime("%a %d %b, %H:%M:%S")}</time> <span id="age"></span></p>'
        "<p>For the instructor alone</p>"
        '<nav><a href="#unsafe">unsafe answers</a> <a href="#practise">what to practise</a> '
        '<a href="#moved">marks that moved</a></nav></header>'
    )


def _page(title: str, parts: Sequence[str], every: int) -> str:
    return (
        '<!DOCTYPE html>\n<html lang="en"><head><meta charset="utf-8">'
        '<meta name="viewport" content="width=device-width, initial-scale=1">'
        f'<meta http-equiv="refresh" content="{every}"><meta name="robots" content="noindex">'
        f"<title>{text(title)}</title><style>{STYLE}</style></head>\n<body>\n"
        + "\n".join(filter(None, parts))
        + "\n</body></html>\n"
    )
