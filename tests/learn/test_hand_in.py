"""Handing in: one small file, a receipt that follows its content, and a line to read out."""

import json
import random
import stat
import zlib
from base64 import b64encode

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.learn import (
    DEMO,
    LESSONS,
    Choice,
    Learner,
    Order,
    Table,
    open_exercise,
    questions_of,
    set_learner,
)
from repairlib.learn.bench_question import Bench, as_lines
from repairlib.learn.group import Group, Member
from repairlib.learn.hand_in import (
    answer_line,
    check_signs,
    content_of,
    file_of,
    hand_in,
    put_into,
    read_hand_in,
    receipt_of,
)
from repairlib.learn.saved_answers import SavedAnswers
from repairlib.learn.tries import Try, from_list, join_tries, path_of, read_tries, stories
from repairlib.teach.typed_in import read_typed

ADA = Learner("Ada Example", "bench-7")
LESSON = "00-start-here"


@pytest.fixture
def answered():
    """Ada has answered three questions, one of them twice."""
    set_learner(ADA.name, ADA.group)
    open_exercise(LESSON).answer(q7="1 nF", q2="0 s")
    open_exercise(LESSON).answer(q7="10 nF", q8="b")
    return ADA


@pytest.mark.behaviour
def test_what_is_handed_in_holds_the_answers_and_the_tries(answered):
    handed = hand_in(ADA)
    content = read_hand_in(handed.data, handed.name)
    assert (content["name"], content["group"]) == ("Ada Example", "bench-7")
    assert content["lessons"][LESSON]["answers"] == SavedAnswers(LESSON, ADA).read()
    assert content["lessons"][LESSON]["unsafe"] == ["q2"]
    assert stories(map(from_list, content["tries"][LESSON])) == stories(read_tries(LESSON, ADA))
    assert not content["changed"] and receipt_of(content) == handed.receipt


@pytest.mark.behaviour
def test_the_same_content_gives_the_same_receipt_and_other_content_another(answered, monkeypatch):
    first = hand_in(ADA)
    with monkeypatch.context() as later:
        later.setattr("time.time_ns", lambda: 4_102_444_800 * 10**9)
        second = hand_in(ADA)
    assert first.receipt == second.receipt and first.data != second.data
    assert read_hand_in(second.data)["at"] == 4_102_444_800_000
    open_exercise(LESSON).answer(q7="10 nF")  # the same again
    assert hand_in(ADA).receipt == first.receipt
    open_exercise(LESSON).answer(q7="12 nF")
    assert hand_in(ADA).receipt != first.receipt
    assert hand_in(Learner("Ben Example", "bench-7")).receipt != first.receipt


@pytest.mark.behaviour
def test_a_changed_file_is_noticed_and_read_all_the_same(answered):
    handed = hand_in(ADA)
    changed = handed.data.replace(b'"q7":"10 nF"', b'"q7":"22 nF"')
    assert changed != handed.data
    content = read_hand_in(changed)
    assert content["changed"] and content["lessons"][LESSON]["answers"]["q7"] == "22 nF"
    assert receipt_of(content) != handed.receipt


@pytest.mark.behaviour
def test_where_the_clock_is_behind_the_file_is_not_earlier_than_what_is_in_it(
    answered, monkeypatch
):
    monkeypatch.setattr("time.time_ns", lambda: 10**15)
    content = read_hand_in(hand_in(ADA).data)
    assert content["at"] == max(at for at, *_ in content["tries"][LESSON])


@pytest.mark.behaviour
@pytest.mark.parametrize(
    "change, wrong",
    [
        ({"kind": "carried"}, "no file that was handed in"),
        ({"format": 2}, "later version"),
        ({"format": "1"}, "names nobody"),
        ({"name": ""}, "names nobody"),
        ({"name": ["Ada"]}, "names nobody"),
        ({"partner": 1}, "names nobody"),
        ({"at": True}, "when"),
        ({"at": 10**400}, "when"),
        ({"lessons": []}, "no lessons"),
        ({"lessons": {LESSON: {"answers": {"q1": 5}}}}, "answers to 00-start-here"),
        ({"lessons": {LESSON: {"answers": {}, "at": {"q1": -1}}}}, "answers to 00-start-here"),
        ({"tries": {LESSON: [[1, "q1", "a", "right"]]}}, "tries of 00-start-here"),
        ({"tries": "not packed"}, "damaged"),
        ({"tries": "eJw="}, "cut short"),
    ],
)
def test_what_has_not_the_form_is_refused_in_one_line(answered, change, wrong):
    content = json.loads(hand_in(ADA).data) | change
    with pytest.raises(RepairlibError, match=wrong):
        read_hand_in(json.dumps(content).encode(), "kite.json")


@pytest.mark.behaviour
def test_a_record_packed_to_burst_is_refused(answered):
    bomb = b64encode(zlib.compress(b" " * 5_000_000)).decode()
    content = json.loads(hand_in(ADA).data) | {"tries": bomb}
    with pytest.raises(RepairlibError, match="larger than 2 MB"):
        read_hand_in(json.dumps(content).encode())


@pytest.mark.behaviour
def test_tries_may_also_stand_unpacked(answered):
    content = json.loads(hand_in(ADA).data)
    plain = read_hand_in(json.dumps(content).encode())["tries"]
    assert not read_hand_in(json.dumps(content | {"tries": plain}).encode())["changed"]


@pytest.mark.behaviour
def test_each_learner_has_one_file_in_the_folder_which_others_may_not_read(answered, tmp_path):
    (folder := tmp_path / "handed in").mkdir()
    first = put_into(folder, hand_in(ADA))
    put_into(folder, hand_in(ADA))
    put_into(folder, hand_in(Learner("Ada Example", "bench-8")))
    assert len(list(folder.iterdir())) == 2
    assert stat.S_IMODE(first.stat().st_mode) == 0o640
    assert read_hand_in(first.read_bytes())["name"] == "Ada Example"


@pytest.mark.behaviour
def test_a_folder_that_is_not_there_is_one_clear_line(answered, tmp_path):
    with pytest.raises(RepairlibError, match="cannot be read or saved"):
        put_into(tmp_path / "nowhere", hand_in(ADA))


@pytest.mark.behaviour
def test_nobody_in_particular_can_hand_in_too():
    assert read_hand_in(hand_in(DEMO).data)["lessons"] == {}


@pytest.mark.behaviour
def test_the_line_to_read_out_says_every_answer_in_short(answered):
    line = answer_line(ADA, LESSON, "kite")
    said, signs = line.split(" = ")
    assert said == "kite 00: - | 0 s | - | - | - | - | 10 nF | b"
    assert signs == check_signs(said) == check_signs(said.upper().replace(" |", "|"))
    assert check_signs(said.replace("10 nF", "11 nF")) != signs


@pytest.mark.behaviour
@pytest.mark.parametrize("late", [2**52, 10**30])
def test_a_time_beyond_every_calendar_is_no_time(answered, late):
    """Whoever edits one into a file stops nobody: it is refused before a date is made of it."""
    content = content_of(ADA)
    with pytest.raises(RepairlibError, match="does not say when"):
        read_hand_in(file_of(content | {"at": late}))
    content["tries"][LESSON][0][0] = late
    with pytest.raises(RepairlibError, match="the tries of"):
        read_hand_in(file_of(content))


@pytest.mark.behaviour
def test_the_line_takes_the_cells_of_a_table_row_by_row():
    exercise = open_exercise("01-a-safe-bench")
    ask = next(one for one in exercise.questions if hasattr(one, "cells"))
    row = next(iter(ask.cells))
    exercise.answer(**{ask.id: {row: {column: "1,5 | x" for column in ask.cells[row]}}})
    line = answer_line(DEMO, "01-a-safe-bench")
    cells = sum(map(len, ask.cells.values()))
    (said,) = (part for part in line.split(" | ") if ", " in part)
    assert len(said.split(", ")) == cells and "1,5" in said


def ten_answers(ask):
    """Ten different answers to a question, as a form saves them."""
    if isinstance(ask, Table):
        cells = {row: {c: ten_answers(one) for c, one in of.items()} for row, of in asked(ask)}
        return [
            {row: {c: given[n] for c, given in of.items()} for row, of in cells.items()}
            for n in range(10)
        ]
    if isinstance(ask, Order):
        turned = [(*ask.shown[n % 4 :], *ask.shown[: n % 4]) for n in range(10)]
        return [{step: str(n) for n, step in enumerate(one, start=1)} for one in turned]
    if isinstance(ask, Choice):
        return [ask.options[n % len(ask.options)] for n in range(10)]
    if isinstance(ask, Bench):
        return [given_up(ask, n) for n in range(10)]
    return [f"{ask.answer * (1 + 0.137 * n):.4g} {ask.unit}" for n in range(10)]


def given_up(ask, number):
    """The moves of somebody who looks at forty parts, each time others, and finds nothing."""
    parts = [one.name for one in ask.task.set.parts if not one.mains]
    seen = [parts[(number * 7 + at * 3) % len(parts)] for at in range(40)]
    return as_lines(["look", *(f"look {part} with lens" for part in seen), "give up"])


def asked(table):
    return table.cells.items()


@pytest.mark.behaviour
def test_every_lesson_fully_answered_with_ten_tries_each_fits_on_fifty_kilobytes():
    """Times, as people take them, and fingerprints, which do not pack well, are drawn by chance."""
    chance = random.Random(12)
    at, count = 1_764_000_000_000, 0
    for lesson in LESSONS:
        tries, last = [], {}
        for ask in questions_of(lesson, ADA):
            for given in ten_answers(ask):
                at += chance.randrange(3_000, 90_000)
                judged = ask.judge(given)
                state, hazards = judged.state, judged.hazards
                tries.append(Try(at, ask.id, ask.in_short(given), state, hazards))
                last[ask.id] = given
        prints = {name: f"{chance.getrandbits(48):012x}" for name in last}
        SavedAnswers(lesson, ADA).save(last, prints, unsafe=last)
        join_tries(path_of(lesson, ADA), tries)
        count += len(tries)
    handed = hand_in(ADA)
    content = read_hand_in(handed.data)
    kept = [one for lesson in LESSONS for one in content["tries"][lesson]]
    print(f"{len(handed.data)} bytes for {len(kept)} of {count} tries")
    assert count > 1200 and len(kept) > 0.95 * count  # what was only typed through is left out
    assert len(handed.data) <= 50_000


@pytest.mark.behaviour
@pytest.mark.parametrize("lesson", LESSONS)
def test_the_line_that_is_read_out_is_typed_in_as_what_was_answered(lesson):
    group = Group(ADA.group, (Member(ADA.name, "kite"),), LESSONS)
    questions = questions_of(lesson, ADA)
    given = {ask.id: ten_answers(ask)[number % 10] for number, ask in enumerate(questions)}
    SavedAnswers(lesson, ADA).save(given)
    typed = read_typed(answer_line(ADA, lesson, "kite"), group)
    (sheet,) = typed.sheets
    assert sheet.lesson == lesson and not [one for one in typed.troubles if not one.id]
    for ask in questions:
        assert ask.judge(sheet.answers[ask.id]) == ask.judge(given[ask.id]), ask.id
