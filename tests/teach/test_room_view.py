"""What the room view says; how it looks is in tests/browser/test_room_view.py."""

import re
from dataclasses import replace
from html.parser import HTMLParser

import pytest

from repairlib.learn.exercise import LESSONS, ONE_EVENING
from repairlib.learn.group import Group, Member
from repairlib.teach.entries import Entry, entries_of, questions_for
from repairlib.teach.items import hardest, items_of
from repairlib.teach.room_view import room_view
from repairlib.teach.stuck import BUSY, DONE, NOTHING, SILENT, STUCK, where_is
from repairlib.teach.unsafe import unsafe_answers
from tests.teach.rooms import MINUTE, NOON, evening, group_of
from tests.teach.test_mark_book import GROUP, marked, right, wrong


def page_of(group, given, at=NOON, moved=()):
    asked = questions_for(group)
    entries = entries_of(group, given, asked)
    return room_view(group, entries, asked, items_of(entries), [], moved, at)


class Words(HTMLParser):
    """The words of a page as they are read, without style and script."""

    def __init__(self, page):
        super().__init__()
        self.said, self._mute = [], False
        self.feed(page)

    def handle_starttag(self, tag, attrs):
        self._mute = tag in ("style", "script")

    def handle_endtag(self, tag):
        self._mute = False

    def handle_data(self, data):
        if not self._mute:
            self.said.append(data)


def words(page):
    return re.sub(r"\s+", " ", "".join(Words(page).said))


@pytest.fixture(scope="module")
def twelve():
    group = group_of(12, ONE_EVENING[:3])
    return group, list(evening(group, 0.9))


def test_unsafe_answers_stand_on_top_with_who_what_when_and_whether_put_right():
    given = [marked(right(1), right(2), right(3), right(4), right(5), ("2000 V", "3000 V"))]
    page = page_of(GROUP, given, NOON + 5 * MINUTE)
    top = words(page.partition("<table")[0])
    assert "Unsafe answers: 1 not put right, 0 put right" in top
    assert re.search(r"Ada Example, \d\d:\d\d, 2 times: ⚠ still so", top)
    assert "“3000 V” to 03 q6 film voltage: Up to which voltage may this part be used?" in top
    assert "“2000 V / 3000 V”" in words(page.partition('id="unsafe"')[2])
    mended = [marked(right(1), right(2), right(3), right(4), right(5), ("2000 V", right(6)))]
    top = words(page_of(GROUP, mended, NOON + 5 * MINUTE).partition("<table")[0])
    assert "0 not put right, 1 put right" in top and re.search(r"✓ put right \d\d:\d\d", top)


def test_no_unsafe_answer_is_lost(twelve):
    group, given = twelve
    unsafe = [
        (one.name, story.first.id)
        for one in given
        for story in one.stories.values()
        if story.unsafe
    ]
    assert len(unsafe) > 10
    page = page_of(group, given)
    listed = page.partition('id="unsafe"')[2].partition("</section>")[0]
    assert listed.count("<li>") == len(unsafe)
    found = unsafe_answers(entries_of(group, given, questions_for(group)), questions_for(group))
    not_right = [one for one in found if one.is_open]
    top = words(page.partition("<table")[0])
    assert found[: len(not_right)] == not_right  # these come first, and each is named on top
    assert all(one.name in top for one in not_right)
    assert sum(len(one.answers) for one in found) >= len(unsafe)


def test_an_unsafe_answer_of_an_older_file_is_told_too():
    one = marked(right(1))
    first, *others = one.sheet.lines
    once = replace(one.sheet, lines=(replace(first, unsafe_first=True), *others))
    top = words(page_of(GROUP, [one._replace(sheet=once, stories={})]).partition("<table")[0])
    assert "Ada Example, no time recorded: ✓ put right" in top and "not recorded" in top


def test_the_worst_question_is_named_first_with_its_usual_mistake(twelve):
    group, given = twelve
    entries = entries_of(group, given, questions_for(group))
    hard = hardest(items_of(entries))[:4]
    worst = hard[0]
    top = words(page_of(group, given).partition("<table")[0])
    panel = top.partition("Explain to all")[2]
    share = f"{worst.first_wrong:.0%} wrong ({worst.tried - worst.first_right} of {worst.tried})"
    assert panel.index(share) < 60
    usual = [one for one in hard if one.mistaken > 1]  # what one person does is not usual
    assert usual and len(usual) < len(hard)
    for one in hard:
        told = f"({one.mistaken} of them): {one.mistake}".replace("\xa0", " ")
        assert (told in panel) == (one in usual)


def test_every_cell_says_its_state_in_words_beside_its_sign(twelve):
    group, given = twelve
    page = page_of(group, given)
    cells = re.findall(r'<td class="[^"]*" title="([^"]*)" aria-label="([^"]*)"><i>(.)</i>', page)
    assert len(cells) > 300
    signs = {"right": "✓", "wrong": "✗", "unsafe": "⚠", "partly right": "◐", "not answered": "○"}
    for title, label, sign in cells:
        state = title.partition(": ")[2].split(",")[0]
        assert title == label
        assert sign == signs[state] or (state == "right" and sign.isdigit())


@pytest.mark.parametrize(
    "size, lessons, whole", [(3, LESSONS[:3], True), (17, LESSONS[:3], False), (3, LESSONS, False)]
)
def test_a_large_group_is_folded_by_lesson(size, lessons, whole):
    group = group_of(size, lessons)
    page = page_of(group, evening(group, 0.1))
    assert ('class="grid"' in page) == whole
    assert page.count('class="more') == len(lessons) + 3
    for lesson in lessons:
        assert page.count(f'id="l-{lesson}"') == 1 and f'href="#l-{lesson}"' in page


def test_of_a_very_large_group_those_to_walk_over_to_are_shown():
    group = group_of(80, ("03-capacitor-markings",))
    stuck = [
        marked((wrong(1),) * 3)._replace(word=one.word, name=one.name) for one in group.members[70:]
    ]
    page = page_of(group, stuck)
    assert "Not shown: 20 members" in words(page) and page.count('class="where') == 60
    assert all(f'({one.word})"' in page for one in group.members[70:])
    assert len(page) < 400_000


def test_it_asks_for_itself_again_and_says_how_old_it_is_and_who_may_read_it():
    page = page_of(GROUP, [])
    assert '<meta http-equiv="refresh" content="10">' in page
    assert re.search(r"As of \w{3} \d\d \w{3}, \d\d:\d\d:\d\d", words(page))
    assert "For the instructor of this group alone" in words(page)
    assert "http:" not in page and "https:" not in page  # nothing is fetched from elsewhere


def test_names_and_answers_are_text_whatever_they_hold():
    member = Member('<script>alert("1")</script>', "moss")
    group = Group("</style><b>", (member,), GROUP.lessons)
    one = marked(right(1), right(2), right(3), right(4), right(5), '<img src=x onerror="1"> 9 kV')
    page = page_of(group, [one._replace(word="moss", name=member.name, partner="<i>x</i>")])
    assert page.count("<script>") == 1 and "<img" not in page and "<i>x" not in page
    assert page.count("</style>") == 1


def entry(state="right", tries=1, last=NOON, lesson="03-capacitor-markings", name="q1"):
    return Entry("kite", "Ada", "", lesson, name, state, 0, 1, tries=tries, last=last)


@pytest.mark.parametrize(
    "given, later, how, said",
    [
        ([entry("unanswered", 0, 0)], 0, NOTHING, "not begun"),
        ([entry(), entry(name="q2")], 90, DONE, "all right"),
        ([entry("wrong", 3), entry(name="q2")], 0, STUCK, "stuck 03 q1, 3 tries"),
        ([entry("unsafe", 4), entry("wrong", 3, NOON + 1, name="q2")], 0, STUCK, "q2, 3 tries, +1"),
        ([entry("wrong", 2), entry("unanswered", 0, 0)], 9, BUSY, "03, 9 min ago"),
        ([entry("wrong", 2), entry("unanswered", 0, 0)], 10, SILENT, "quiet 10 min in 03"),
        ([entry("wrong", 2), entry("unanswered", 0, 0)], 181, BUSY, "03, last "),
        ([entry("wrong", 2, lesson="00-start-here"), entry(last=NOON + 1)], 21, BUSY, "20 min"),
    ],
)
def test_who_is_stuck_and_who_is_quiet(given, later, how, said):
    """The last one has left a lesson unfinished and is done with the next: that is not stuck."""
    found = where_is(given, NOON + later * MINUTE)
    assert found.how == how and said in found.words
    assert found.needs_help == (how in (STUCK, SILENT))
