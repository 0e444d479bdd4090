"""Each member's questions on paper: nothing that the form shows is missing."""

import pytest

from repairlib.core.html import text
from repairlib.learn.arranging import Order, Table
from repairlib.learn.bench_question import Bench
from repairlib.learn.exercise import LESSONS, questions_of
from repairlib.learn.group import Member
from repairlib.learn.in_words import lettered, right_answer
from repairlib.learn.learner import Learner
from repairlib.learn.question import RIGHT, Choice, Number
from repairlib.show import draw_part
from repairlib.teach.paper.key import as_typed, key_sheet
from repairlib.teach.paper.question_sheet import SEEN_FROM, answer_room, question_sheet

pytestmark = pytest.mark.behaviour

ADA = Member("Ada Example", "kite")
EVERY = [
    pytest.param(one, id=f"{lesson[:2]}-{one.id}")
    for lesson in LESSONS
    for one in questions_of(lesson, Learner("Ada Example", "Tuesday bench"))
]


@pytest.mark.parametrize("question", EVERY)
def test_every_option_row_and_cell_stands_on_paper(question):
    room = answer_room(question)
    for letter, offered in lettered(question):
        assert f"<b>{letter}</b> {text(offered)}<" in room
    if isinstance(question, Table):
        for row, cells in question.cells.items():
            assert f"<th>{text(row)}</th>" in room
            for column, cell in cells.items():
                assert f"<th>{text(column)}</th>" in room
                assert all(f"<b>{a}</b> {text(said)}" in room for a, said in lettered(cell))
        cells = [cell for row in question.cells.values() for cell in row.values()]
        places = room.count('<td class="cell">') + room.count("<td><ul") + room.count("<td>–")
        assert places >= len(cells)
    elif isinstance(question, Order):
        assert room.count('class="letter"') == len(question.steps)
    elif isinstance(question, Choice):
        assert room.count('class="box"') == len(question.options)
    elif isinstance(question, Bench):
        assert all(f"<b>{text(one.name)}</b>" in room for one in question.task.set.parts)
        assert all(text(one.name) in room for one in question.task.set.rails)
        assert 'class="moves"' in room and 'class="job"' in room
        assert not any(text(str(fault)) in room for fault in question.task.faults)
    else:
        assert 'class="write"' in room


@pytest.mark.parametrize("question", EVERY)
def test_the_key_is_right_by_the_judgement(question):
    assert question.judge(right_answer(question)).state == RIGHT
    if isinstance(question, Choice):  # a letter as it is printed, and no other
        others = [letter for letter, _ in lettered(question) if letter != as_typed(question)]
        assert all(question.judge(letter).state != RIGHT for letter in others)


def test_a_key_has_a_row_for_each_member_and_a_column_for_each_question():
    volts = Number(answer=25, unit="V", points=2)
    plus = Choice(options=("left", "right"), answer="right")
    asked = [(ADA, (volts, plus)), (Member("Ben Example", "moss"), (plus, volts))]
    key = "".join(key_sheet(asked, "03 Capacitors", "Tuesday bench").parts).replace("\u00a0", " ")
    assert "<th>Ada Example · kite</th><td>25 V</td><td>b</td>" in key
    assert "<th>Ben Example · moss</th><td>b</td><td>25 V</td>" in key
    assert "Instructor only" in key and "<th>1 (2)</th><th>2 (1)</th>" in key


def test_a_sheet_says_whose_it_is_and_from_where_a_drawing_is_seen():
    asked = Choice(
        prompt="Where is the plus?",
        options=("left", "right"),
        answer="right",
        picture=lambda: draw_part("radial", "10µF\n25V"),
    )
    sheet = question_sheet((asked,), "04 Polarity", ADA, "Tuesday bench")
    whole = "".join(sheet.parts)
    for said in ("Ada Example", "kite", "Tuesday bench", SEEN_FROM, "data:image/svg+xml"):
        assert said in whole
    assert all(said in sheet.head for said in ("04 Polarity", "Ada Example", "kite"))
    plain = question_sheet((Number(answer=1, unit="V"),), "05", ADA, "Tuesday bench")
    assert SEEN_FROM not in "".join(plain.parts)


def test_where_only_colours_tell_the_drawing_is_said_in_words():
    def asked(body, marking):
        part = Number(answer=1, unit="Ω", picture=lambda: draw_part(body, marking))
        return "".join(question_sheet((part,), "02", ADA, "G").parts)

    assert "In words: " in asked("resistor", "yellow-violet-red-gold")
    assert "In words: " not in asked("disc", "104")
