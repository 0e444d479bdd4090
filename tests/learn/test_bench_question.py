"""A repair as a question: its moves walked again, its mark by its outcome, nothing given away."""

import json
from pathlib import Path

import pytest

from repairlib.bench import Task, demo_set, read_fault
from repairlib.learn import bench_question, hand_in, own
from repairlib.learn.bench_question import (
    MOST_MOVES,
    Bench,
    as_lines,
    moves_in,
    walked_again,
)
from repairlib.learn.exercise import Exercise
from repairlib.learn.fingerprint import fingerprint
from repairlib.learn.learner import Learner
from repairlib.learn.marking import mark
from repairlib.learn.own import Slips, read_own
from repairlib.learn.tries import read_tries

pytestmark = pytest.mark.behaviour

RADIO = demo_set("desk radio")
OWN = Path(own.__file__).parent
LAMP = """title: lamp board
says: It is dark.
works: The lamp lights.
feed: P1, inlet dc 0, 9 V, 100 mA
rail: lamp, at out, 4.5 V, 20 %
loads: I1
board: 60 x 40
fault: R1 open
part,is,from,to,value,more,x,y,wide,high
P1,adapter,dc,0,9 V,limit 1 A,10,20,8,8
R1,resistor,dc,out,90 Ω,,30,20,8,3
I1,lamp,out,0,50 mA,load,50,20,6,6"""


def radio(*faults, seed="demo"):
    task = Task(RADIO, tuple(read_fault(one, RADIO) for one in faults), seed)
    return Bench(id="q1", task=task, prompt="It hums.", points=12)


# What is typed


@pytest.mark.parametrize(
    "typed",
    [
        "look C1; unplug;;hand back",
        "look C1\nunplug\n\nhand back\n",
        " look  C1 ;unplug; hand back",
    ],
)
def test_moves_stand_on_lines_or_behind_each_other(typed):
    assert moves_in(typed) == ("look C1", "unplug", "hand back")


def test_a_line_of_the_job_card_may_hold_what_parts_moves_elsewhere():
    moves = ("write found: hum; loud", "unplug")
    assert moves_in(as_lines(moves)) == moves
    assert moves_in(as_lines(moves[:1])) == moves[:1]


def test_what_is_no_move_is_told_by_its_number_and_loses_nothing():
    judged = radio().judge("plug in\nkick it\nhand back")
    assert judged.state == "cannot read"
    assert judged.says[0].startswith("'kick it': ") and "(move 2)" in judged.says[0]


def test_too_many_moves_are_refused_before_the_first_is_made():
    judged = radio().judge("unplug\n" * 100_000)
    assert judged.state == "cannot read"
    assert str(MOST_MOVES) in judged.says[0]


def test_a_table_or_a_number_is_no_repair():
    assert radio().judge({"C1": "look"}).state == "cannot read"
    assert radio().judge("  \n").state == "unanswered"


# The mark


def test_what_has_not_ended_is_not_answered_yet_and_says_so():
    judged = radio().judge("look\nplug in")
    assert (judged.state, judged.share) == ("unanswered", 0)
    assert judged.says[0].startswith("Begun: 2 moves.")
    assert not radio().is_whole("look\nplug in") and radio().is_whole("look\ngive up")


@pytest.mark.parametrize(
    "before", ["", "look\n", "plug in\nvolts out 0\nunplug\nwrite found: hum\n"]
)
def test_a_set_handed_back_as_it_came_earns_nothing_and_names_no_part(before):
    judged = radio("C1 open").judge(before + "hand back")
    assert (judged.state, judged.share) == ("wrong", 0)
    assert not [one for one in judged.says if "C1" in one or "open" in one]


def test_the_same_moves_earn_the_same_mark_also_when_nothing_is_remembered():
    typed = "look\nplug in\nvolts out 0\nunplug\nhand back\n"
    first = radio("C1 open").judge(typed)
    bench_question._WALKED.clear()
    bench_question._JUDGED.clear()
    assert radio("C1 open").judge(typed) == first


def test_one_move_more_is_one_step_more(monkeypatch):
    bench_question._WALKED.clear()
    lines = ["look"] * 20
    walked_again(radio().task, lines)
    made = []
    after = bench_question.Attempt.after
    monkeypatch.setattr(
        bench_question.Attempt, "after", lambda *given: made.append(1) or after(*given)
    )
    walked_again(radio().task, [*lines, "plug in"])
    walked_again(radio().task, [*lines, "plug in"])
    assert len(made) == 1


def test_another_fault_set_or_seed_is_another_question():
    asked = [radio(), radio("C1 open"), radio("C2 open"), radio(seed="another")]
    assert len({fingerprint(one) for one in asked}) == 4
    assert fingerprint(radio("C1 open")) == fingerprint(radio("C1 open"))


def test_what_is_given_up_earns_nothing_and_is_not_worked_out(monkeypatch):
    monkeypatch.setattr(bench_question, "judge", None)
    assert radio().judge("look\ngive up").share == 0


# Where it is kept


def test_an_attempt_of_sixty_moves_is_saved_tried_and_handed_in(tmp_path, monkeypatch):
    monkeypatch.setenv("REPAIRLIB_HOME", str(tmp_path))
    learner = Learner("Ada Example", "Tuesday bench")
    exercise = Exercise("14-the-whole-job", learner)
    moves = ["volts C1"] * 59
    for _ in range(3):
        exercise.answer(q1=as_lines(moves))
        assert read_tries(exercise.lesson, learner) == []  # not ended: no try
    exercise.answer(q1=as_lines([*moves, "give up"]))
    (tried,) = read_tries(exercise.lesson, learner)
    assert moves_in(tried.typed) == (*moves, "give up")
    handed = hand_in.hand_in(learner)
    assert len(handed.data) < 10_000
    content = hand_in.read_hand_in(handed.data)
    kept = content["lessons"]["14-the-whole-job"]["answers"]["q1"]
    assert mark(exercise.questions, {"q1": kept}) == mark(
        exercise.questions, {"q1": as_lines([*moves, "give up"])}
    )
    assert json.loads(exercise.saved.path.read_text())["answers"]["q1"] == kept


def test_read_out_the_moves_stand_in_one_line_that_is_read_again():
    asked = radio()
    typed = as_lines(["look C1", "write found: hum; loud", "give up"])
    line = hand_in.in_one_line(asked, typed)
    assert line == "look C1; write found: hum, loud; give up"
    assert asked.judge(line).share == asked.judge(typed).share


def test_in_a_list_it_says_how_many_moves_and_how_it_ended():
    assert radio().in_a_word("look; give up") == "2 moves, given up"
    assert radio().in_a_word("look") == "1 move, not ended"
    assert radio().in_a_word("kick it") == "1 move that cannot be read"


# An instructor's own


def test_an_own_lesson_asks_for_a_repair():
    lesson = read_own((OWN / "example-repair.txt").read_text(encoding="utf-8"), "radio.txt")
    (asked,) = lesson.asked
    assert asked.points == 8
    assert [one.answer for one in asked.variants.values()] == [
        "desk radio: C1 dried out",
        "desk radio: D1 open",
    ]


def test_an_own_set_stands_in_the_lesson_line_by_line():
    lines = [f"Set: {line}" for line in LAMP.splitlines()]
    typed = "\n".join(["Lamps", "", "Question", "It is dark.", *lines, "Fault: R1 open"])
    (asked,) = read_own(typed, "lamps.txt").asked
    (board,) = asked.variants.values()
    assert board.answer == "lamp board: R1 open" and board.task.set.rails[0].name == "lamp"


@pytest.mark.parametrize(
    ("lines", "told"),
    [
        (["Set: desk radiator", "Fault: C1 open"], "no practice set of that title"),
        (["Set: desk radio", "Fault: C77 open"], "C77"),
        (["Set: desk radio"], "nothing is wrong with it"),
        (["Set: desk radio", "Fault: C1 open", "Fault: C1 short"], "two faults of one part"),
        (["Set: desk radio", "Fault: C1 open", "Wrong: 5 V"], "does not go with"),
    ],
)
def test_what_is_mistyped_is_told(lines, told):
    with pytest.raises(Slips) as slips:
        read_own("\n".join(["Radios", "", "Question", "It hums.", *lines]), "radios.txt")
    assert told in " ".join(map(str, slips.value.each))
