"""Own lessons are collected, marked and printed by the text that the group has."""

import pytest

from repairlib.learn import files
from repairlib.learn.exercise import Exercise
from repairlib.learn.group import Group, Member
from repairlib.learn.hand_in import hand_in
from repairlib.learn.learner import member_of
from repairlib.teach.collecting import collect
from repairlib.teach.paper.hand_out import hand_out
from repairlib.teach.paper.hazard_sheet import hazards_of_group
from tests.learn.asking import right_answer
from tests.learn.own.typed import EXAMPLE

MEMBERS = tuple(
    Member(name, word) for name, word in (("Ada Example", "kite"), ("Ben Example", "moss"))
)
GROUP = Group("Tuesday bench", MEMBERS, ("00-start-here", "own-fuses"), own={"fuses.txt": EXAMPLE})


@pytest.fixture
def handed_in(tmp_path, monkeypatch):
    """A folder with what each member handed in: everything right, and a danger on the way."""
    monkeypatch.setenv("REPAIRLIB_HOME", str(tmp_path / "home"))
    (tmp_path / "home").mkdir()
    files.write(tmp_path / "home" / "group.json", GROUP.to_dict())
    folder = tmp_path / "in"
    folder.mkdir()
    for member in GROUP.members:
        learner = member_of(GROUP, member)
        exercise = Exercise("own-fuses", learner)
        exercise.answer(q1="Fit one for 10 A")
        exercise.answer(**{one.id: right_answer(one) for one in exercise.questions})
        handed = hand_in(learner)
        (folder / handed.name).write_bytes(handed.data)
    (tmp_path / "home" / "group.json").unlink()  # the instructor's computer knows no group
    return folder


def test_each_member_gets_the_points_and_the_danger_is_told(handed_in):
    marked = list(collect(GROUP, [handed_in], cores=1).marked)
    assert {(one.word, one.lesson, one.sheet.points) for one in marked} == {
        ("kite", "own-fuses", 10),
        ("moss", "own-fuses", 10),
    }
    for one in marked:
        assert [danger.hazards for danger in one.stories["q1"].unsafe] == [("heat and fire",)]


def test_a_question_that_was_changed_since_is_named_and_not_marked(handed_in):
    newer = GROUP._replace(own={"fuses.txt": EXAMPLE.replace("Fit one for 10 A", "Fit a nail")})
    for one in collect(newer, [handed_in], cores=1).marked:
        assert [line.id for line in one.sheet.lines if line.state == "changed"] == ["q1"]
        assert (one.sheet.points, one.sheet.out_of) == (8, 8)


def test_its_hand_out_and_its_hazards_are_on_paper():
    typed = EXAMPLE.replace(
        "A fuse is the weakest", "<script>alert(1)</script> *fuse*: the weakest"
    )
    group = GROUP._replace(own={"fuses.txt": typed}, lessons=("own-fuses",))
    made = "".join(hand_out("own-fuses", "A fuse has blown", group=group).parts)
    assert "&lt;script&gt;alert(1)&lt;/script&gt; *fuse*: the weakest place" in made
    assert "Somebody found a blown fuse" in made
    assert "T2A" in made
    assert hazards_of_group(group) == ["mains", "heat and fire", "stored charge"]
