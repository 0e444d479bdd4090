"""The mark book: who has what, now and at first, what is next, what moved; and its files."""

import csv
import io
import json
import stat
from dataclasses import replace

import pytest

from repairlib.learn.exercise import ONE_EVENING, questions_of
from repairlib.learn.group import Group, Member
from repairlib.learn.learner import member_of
from repairlib.learn.marking import mark
from repairlib.learn.tries import Story, Try
from repairlib.teach.entries import entries_of, questions_for
from repairlib.teach.mark_book import COLUMNS, is_marks, marked_anew, write_mark_book
from repairlib.teach.marked import Marked
from repairlib.teach.practise import due_in, next_for
from tests.learn.asking import right_answer
from tests.teach.rooms import MINUTE, NOON, evening, group_of, wrong_answer

LESSON = "03-capacitor-markings"
KITE, MOSS = Member("Ada Example", "kite"), Member("=Ben Sample", "moss")
GROUP = Group("Tuesday bench", (KITE, MOSS), (LESSON,))
ASKED = questions_of(LESSON, member_of(GROUP, KITE))


def marked(*typed, member=KITE, at=NOON, changed=(), partner=""):
    """What a member has handed in: for each question from q1 on what was typed, try by try."""
    asked = questions_of(LESSON, member_of(GROUP, member))
    answers, stories = {}, {}
    for ask, tried in zip(asked, typed, strict=False):
        tried = tried if isinstance(tried, tuple) else (tried,)
        tries = [
            Try(at + n * MINUTE, ask.id, one, ask.judge(one).state, ask.judge(one).hazards)
            for n, one in enumerate(tried)
        ]
        unsafe = tuple(one for one in tries if one.state == "unsafe")
        stories[ask.id] = Story(tries[0], len(tries), unsafe, tries[-1])
        answers[ask.id] = tried[-1]
    who = str(member_of(GROUP, member))
    sheet = mark(asked, answers, LESSON, who, changed=dict.fromkeys(changed, "0.0.1"))
    return Marked(member.word, member.name, LESSON, sheet, stories, at, partner)


def right(number):
    return right_answer(ASKED[number - 1])


def wrong(number):
    return wrong_answer(ASKED[number - 1])


def by_id(*given):
    made = entries_of(GROUP, given, questions_for(GROUP))
    return {one.id: one for one in made if one.word == KITE.word}


def read_csv(folder):
    text = (folder / "marks" / "marks.csv").read_bytes().decode("utf-8-sig")
    return list(csv.DictReader(io.StringIO(text)))


def test_first_try_and_now_are_told_apart():
    one = by_id(marked((wrong(1), right(1)), right(2), (right(3), wrong_answer(ASKED[2]))))
    assert (one["q1"].state, one["q1"].points) == ("right", 1)
    assert (one["q1"].first_state, one["q1"].first_points, one["q1"].tries) == ("wrong", 0, 2)
    assert "third" in one["q1"].first_hints[0] and not one["q1"].hints
    assert (one["q2"].first_state, one["q2"].first_points) == ("right", 2)
    assert one["q3"].first_points == 2 > one["q3"].points
    assert one["q1"].last == NOON + MINUTE


def test_a_first_try_that_was_partly_right_has_the_points_of_its_share():
    steps = ASKED[2].steps
    swapped = " > ".join((*steps[:3], steps[4], steps[3]))  # three of five in place, of two points
    one = by_id(marked(right(1), right(2), (swapped, right(3))))["q3"]
    assert (one.first_state, one.first_points, one.points) == ("partly right", 1, 2)


def test_members_who_handed_in_nothing_have_entries_too():
    made = entries_of(GROUP, [marked(right(1))], questions_for(GROUP))
    assert [one.id for one in made] == [ask.id for ask in ASKED] * 2
    assert {one.state for one in made if one.word == MOSS.word} == {"unanswered"}
    assert sum(one.out_of for one in made if one.word == MOSS.word) == sum(q.points for q in ASKED)


def test_a_lesson_beyond_those_of_the_group_comes_in_behind_them():
    other = Group(GROUP.name, GROUP.members, ("00-start-here",))
    made = entries_of(other, [marked(right(1))], questions_for(other))
    lessons = dict.fromkeys(one.lesson for one in made if one.word == KITE.word)
    assert list(lessons) == ["00-start-here", LESSON]


def test_an_older_file_without_a_record_of_tries_has_no_first_try():
    one = by_id(marked(right(1))._replace(stories={}))["q1"]
    assert (one.state, one.first_state, one.first_points, one.tries) == ("right", "", None, 0)


def test_who_answered_on_the_sheet_of_another_is_judged_by_that_sheet():
    """The marked answers of a pair count for both; the questions are those of one of them."""
    lead = marked((wrong(1), right(1)), partner=MOSS.name)
    both = [lead, lead._replace(word=MOSS.word, name=MOSS.name, partner=KITE.name)]
    made = entries_of(GROUP, both, questions_for(GROUP))
    first = {one.word: one for one in made if one.id == "q1"}
    assert first["moss"].sheet_of == first["kite"].sheet_of == "kite"
    assert first["moss"].first_hints == first["kite"].first_hints != ()


def test_each_member_lesson_and_question_has_a_row(tmp_path):
    given = [marked((wrong(1), right(1)), wrong(2), partner="Uma Example"), marked(member=MOSS)]
    write_mark_book(tmp_path, GROUP, given, at=NOON)
    rows = read_csv(tmp_path)
    assert tuple(rows[0]) == COLUMNS and len(rows) == 2 * len(ASKED)
    first = rows[0]
    assert first["name"] == "Ada Example" and first["together with"] == "Uma Example"
    assert (first["question"], first["called"]) == ("q1", "disc code")
    assert (first["state now"], first["points now"], first["out of"]) == ("right", "1", "1")
    assert (first["first try"], first["points at first try"], first["tries"]) == ("wrong", "0", "2")
    assert rows[2]["state now"] == "unanswered" and rows[2]["points at first try"] == ""


@pytest.mark.parametrize("sign", ["=", "+", "-", "@", " =", "＝", ";="])
def test_no_cell_is_a_formula_for_a_spreadsheet(tmp_path, sign):
    member = Member(f"{sign}HYPERLINK(1)", "moss")
    group = Group(f"{sign}1+1", (member,), (LESSON,))
    one = marked(right(1), member=KITE)._replace(word="moss", name=member.name, partner=f"{sign}2")
    write_mark_book(tmp_path, group, [one], at=NOON)
    for row in read_csv(tmp_path):
        for cell in row.values():
            assert not cell.lstrip("; ").startswith(("=", "+", "-", "@", "\t", "＝"))


def test_files_are_for_their_owner_alone(tmp_path):
    write_mark_book(tmp_path, GROUP, [], at=NOON)
    place = tmp_path / "marks"
    assert stat.S_IMODE(place.stat().st_mode) == 0o700
    names = {"room.html", "marks.csv", "marks.json"}
    made = {one.name: stat.S_IMODE(one.stat().st_mode) for one in place.iterdir()}
    assert names <= set(made) <= names | {"marks.json.lock"}
    assert all(made[name] == 0o600 for name in names)


def test_a_page_is_put_in_place_whole(tmp_path, monkeypatch):
    """Whoever reads while it is written has the old page or the new one."""
    write_mark_book(tmp_path, GROUP, [], at=NOON)
    page = tmp_path / "marks" / "room.html"
    before = page.read_bytes()
    monkeypatch.setattr("os.replace", lambda *names: (_ for _ in ()).throw(OSError(28, "full")))
    with pytest.raises(Exception, match="full"):
        write_mark_book(tmp_path, GROUP, [marked(right(1))], at=NOON)
    assert page.read_bytes() == before
    assert not list(page.parent.glob("*.new"))


class TestMoved:
    """Marks that moved while the answer stayed."""

    def test_a_question_that_changed_is_told_with_what_it_cost(self, tmp_path):
        write_mark_book(tmp_path, GROUP, [marked(right(1), right(2))], at=NOON)
        done = write_mark_book(tmp_path, GROUP, [marked(right(1), right(2), changed=["q2"])])
        (moved,) = done.moved
        assert (moved.name, moved.lesson, moved.id) == ("Ada Example", LESSON, "q2")
        assert (moved.was, moved.now) == ("2 of 2", "not counted")
        assert "changed since it was answered" in moved.why
        assert str(moved) in str(done) and "1 mark moved" in str(done)

    def test_marked_against_todays_key_says_so_and_is_remembered(self, tmp_path):
        write_mark_book(tmp_path, GROUP, [marked(right(1), wrong(2), changed=["q2"])], at=NOON)
        anew = [f"{LESSON}:q2"]
        given = [marked(right(1), wrong(2))]
        (moved,) = write_mark_book(tmp_path, GROUP, given, anew=anew).moved
        assert (moved.was, moved.now, moved.why) == (
            "not counted",
            "0 of 2",
            "marked against today's key",
        )
        assert marked_anew(tmp_path) == (f"{LESSON}:q2",)
        assert not write_mark_book(tmp_path, GROUP, given).moved
        assert marked_anew(tmp_path) == (f"{LESSON}:q2",)

    def test_an_answer_that_was_given_anew_is_no_move(self, tmp_path):
        write_mark_book(tmp_path, GROUP, [marked(wrong(1))], at=NOON)
        later = marked(right(1), at=NOON + MINUTE)
        assert not write_mark_book(tmp_path, GROUP, [later]).moved

    def test_handed_in_again_with_the_same_answer_it_is_one(self, tmp_path):
        write_mark_book(tmp_path, GROUP, [marked(right(1))], at=NOON)
        again = marked(right(1), changed=["q1"])._replace(at=NOON + 9 * MINUTE)
        assert len(write_mark_book(tmp_path, GROUP, [again]).moved) == 1

    def test_a_marking_that_is_another_without_a_change_of_the_question(self, tmp_path):
        write_mark_book(tmp_path, GROUP, [marked(right(1))], at=NOON)
        one = marked(right(1))
        lines = (replace(one.sheet.lines[0], points=0.5), *one.sheet.lines[1:])
        given = [one._replace(sheet=replace(one.sheet, lines=lines))]
        (moved,) = write_mark_book(tmp_path, GROUP, given).moved
        assert (moved.was, moved.now) == ("1 of 1", "0.5 of 1") and "otherwise" in moved.why

    def test_the_list_stays_when_nothing_moves_any_more(self, tmp_path):
        write_mark_book(tmp_path, GROUP, [marked(right(1))], at=NOON)
        given = [marked(right(1), changed=["q1"])]
        for _ in range(3):
            write_mark_book(tmp_path, GROUP, given, at=NOON)
        kept = json.loads((tmp_path / "marks" / "marks.json").read_text())
        assert len(kept["moved"]) == 1
        page = (tmp_path / "marks" / "room.html").read_text()
        assert page.count("the question has changed since it was answered") == 1


def test_a_damaged_mark_book_is_kept_aside_and_told(tmp_path):
    write_mark_book(tmp_path, GROUP, [], at=NOON)
    (tmp_path / "marks" / "marks.json").write_text('{"format": 1, "marks": 3}')
    done = write_mark_book(tmp_path, GROUP, [], at=NOON)
    assert "could not be used" in str(done) and "marks.kept-1.json" in str(done)


FITS_NO_CELL = ([], {}, True, -1, 10**400, float("nan"))


@pytest.mark.behaviour
def test_a_mark_book_with_a_cell_of_another_kind_is_kept_aside(tmp_path):
    """Whatever cell somebody edited: it is told, and the mark book is written anew."""
    write_mark_book(tmp_path, GROUP, [marked(right(1), right(2))], at=NOON)
    given = [marked(right(1), right(2), changed=["q2"])]
    write_mark_book(tmp_path, GROUP, given, at=NOON)
    kept = tmp_path / "marks" / "marks.json"
    good = json.loads(kept.read_text())
    assert is_marks(good)
    for line in (good["marks"][0], good["moved"][0]):
        for at, before in enumerate(line):
            for cell in FITS_NO_CELL:
                line[at] = cell
                assert not is_marks(good), (at, cell)
            line[at] = before
    line[0] = None  # when it moved
    kept.write_text(json.dumps(good))
    assert "marks.kept-1.json" in write_mark_book(tmp_path, GROUP, given, at=NOON).note


class TestPractise:
    """What is next for each member."""

    def test_dangerous_first_then_wrong_then_what_took_many_tries(self):
        unsafe = "2000 V"
        given = [
            marked((wrong(1),) * 3 + (right(1),), wrong(2), right(3), right(4), right(5), unsafe)
        ]
        (kite, moss) = next_for(GROUP, {(one.word, one.lesson): due_in(one) for one in given})
        assert [(one.id, one.why) for one in kite.questions] == [
            ("q6", "unsafe"),
            ("q2", "wrong"),
            ("q1", "right at try 4"),
        ]
        assert kite.questions[1].hint and kite.lesson == LESSON
        assert (moss.questions, moss.lesson) == ((), LESSON)

    def test_who_has_all_right_has_nothing_left(self):
        one = marked(*map(right, range(1, len(ASKED) + 1)))
        (kite, _) = next_for(GROUP, {(one.word, one.lesson): due_in(one)})
        assert (kite.questions, kite.lesson) == ((), "")


def test_json_holds_all_lists(tmp_path):
    group = group_of(3, ONE_EVENING)
    write_mark_book(tmp_path, group, evening(group), at=NOON)
    kept = json.loads((tmp_path / "marks" / "marks.json").read_text())
    assert kept["group"] == "Tuesday bench" and len(kept["marks"]) == 3 * 66
    assert len(kept["questions"]) == 66 and len(kept["practise"]) == 3
    assert all(len(one) == len(kept["columns"]) for one in kept["marks"])
