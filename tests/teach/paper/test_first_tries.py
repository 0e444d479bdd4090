"""Who gets a permit, from files handed in: none is printed over a dangerous answer."""

import json
import re

import pytest

from repairlib.faces.class_commands import run_class
from repairlib.learn import files
from repairlib.learn.exercise import questions_of
from repairlib.learn.group import Group, Member
from repairlib.learn.learner import member_of
from repairlib.learn.question import Choice
from repairlib.teach.paper.first_tries import first_tries
from repairlib.teach.paper.permits import SAFETY_LESSONS, permits, still_open
from tests.teach.hand_ins import EVENING, all_right, as_file
from tests.teach.test_typed_in import shortest

pytestmark = pytest.mark.behaviour

ADA, BEN = Member("Ada Exämple", "kite"), Member("Ben Example", "moss")
BENCH = Group("Tuesday bench", (ADA, BEN), SAFETY_LESSONS)
START = SAFETY_LESSONS[0]
LATER = EVENING + 3_600_000


def dangers(member):
    """Two safety questions of lesson 00, with options of which one is dangerous."""
    asked = questions_of(START, member_of(BENCH, member))
    found = [(START, one.id) for one in asked if isinstance(one, Choice) and one.hazards()]
    return found[:2]


@pytest.fixture
def folder(tmp_path):
    files.write(tmp_path / "group.json", BENCH.to_dict())
    (tmp_path / "handed-in").mkdir()
    return tmp_path


def hand_in(folder, name, content):
    (folder / "handed-in" / f"{name}.json").write_bytes(as_file(content))


def open_now(folder, member=ADA):
    """The safety questions that stay open for a member, by what is said of each."""
    found = first_tries(folder, BENCH).get(member.word, {})
    return {(one.lesson, one.question.id): one.state for one in still_open(member, BENCH, found)}


def permitted(folder):
    given, _ = permits(BENCH, first_tries(folder, BENCH), {})
    return [one.name for one in BENCH.members if one.name in "".join(given.parts)]


def unsafe_in_room(folder):
    """What `class collect` writes of dangerous answers: the words that its room view counts by."""
    run_class(["collect", str(folder)], False)
    marks = json.loads((folder / "marks" / "marks.json").read_text())
    assert marks
    return re.sub(r"<[^>]*>", "", (folder / "marks" / "room.html").read_text("utf-8"))


def test_all_right_at_first_try_gives_the_permit(folder):
    hand_in(folder, "ada", all_right(BENCH, ADA))
    assert permitted(folder) == [ADA.name] and not open_now(folder)


def test_a_newer_clean_file_takes_no_dangerous_answer_away(folder):
    """As when somebody begins anew on another computer, and hands in from there too."""
    hand_in(folder, "first", all_right(BENCH, ADA, unsafe=dangers(ADA)))
    assert "2 put right" in unsafe_in_room(folder)
    hand_in(folder, "newer", all_right(BENCH, ADA, at=LATER))
    assert "2 put right" in unsafe_in_room(folder)
    assert open_now(folder) == dict.fromkeys(dangers(ADA), "unsafe")
    assert permitted(folder) == []


def test_an_older_file_met_later_counts_for_the_first_try_too(folder):
    hand_in(folder, "a-newer", all_right(BENCH, ADA, at=LATER))
    assert permitted(folder) == [ADA.name]
    hand_in(folder, "b-older", all_right(BENCH, ADA, unsafe=dangers(ADA)[:1]))
    assert set(open_now(folder)) == set(dangers(ADA)[:1])


def test_a_partner_s_file_hides_no_dangerous_answer_and_gives_no_permit(folder):
    hand_in(folder, "ben", all_right(BENCH, BEN, at=LATER, partner=ADA.name))
    assert permitted(folder) == [BEN.name]
    assert set(open_now(folder).values()) == {"not answered"}
    hand_in(folder, "ada", all_right(BENCH, ADA, unsafe=dangers(ADA)))
    assert open_now(folder) == dict.fromkeys(dangers(ADA), "unsafe")
    assert "2 put right" in unsafe_in_room(folder)
    hand_in(folder, "ada", all_right(BENCH, ADA))
    assert permitted(folder) == [ADA.name, BEN.name]


def test_a_dangerous_answer_of_a_pair_is_open_for_both(folder):
    hand_in(folder, "ben", all_right(BENCH, BEN, unsafe=dangers(BEN), partner=ADA.name))
    hand_in(folder, "ada", all_right(BENCH, ADA, at=LATER))
    assert set(dangers(BEN)) <= set(open_now(folder)) and permitted(folder) == []


def test_a_sheet_typed_in_for_two_gives_the_permit_to_the_one_whose_sheet_it_is(folder):
    lines = []
    for lesson in SAFETY_LESSONS:
        asked = questions_of(lesson, member_of(BENCH, ADA))
        lines.append(f"kite + moss {lesson[:2]}: {' | '.join(map(shortest, asked))}")
    (folder / "typed.txt").write_text("\n".join(lines))
    run_class(["type-in", str(folder), str(folder / "typed.txt")], False)
    assert permitted(folder) == [ADA.name]
    assert set(open_now(folder, BEN).values()) == {"not answered"}


@pytest.mark.parametrize("record", ["clean", "lost"])
def test_a_danger_noted_with_the_answers_is_open_without_its_try(folder, record):
    content = all_right(BENCH, ADA)
    (danger,) = dangers(ADA)[:1]
    content["lessons"][START]["unsafe"] = [danger[1]]
    if record == "lost":
        content["tries"][START] = []
    hand_in(folder, "ada", content)
    assert open_now(folder)[danger] == "unsafe" and permitted(folder) == []
    _, to_talk = permits(BENCH, first_tries(folder, BENCH), {})
    assert "⚠ dangerous" in "".join(to_talk.parts)
