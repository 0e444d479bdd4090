"""What is kept is told at the exercise, and the learner can look at their own record."""

import asyncio

import pytest

from repairlib.faces.panels import answer_form, question_view
from repairlib.faces.panels.following import turn_to
from repairlib.faces.panels.tries_view import KEPT, NOTHING_YET
from repairlib.learn import DEMO, Learner, open_exercise, set_learner
from repairlib.learn.saved_answers import SavedAnswers
from repairlib.learn.tries import path_of, read_tries, stories
from tests.faces.panels.test_sheet_view import unsafe_option

LESSON = "00-start-here"


def tell(lesson=LESSON):
    return stories(read_tries(lesson, DEMO))


@pytest.mark.behaviour
def test_one_line_says_it_and_the_record_stands_folded_behind():
    form = answer_form(open_exercise(LESSON))
    assert form.kept.value.startswith(f"<details><summary>{KEPT}</summary>")
    assert NOTHING_YET in form.kept.value
    view = form.views["q3"]
    bad = unsafe_option(view.question)
    view.box.value = bad
    view.box.value = view.question.answer
    shown = form.kept.value
    assert shown.count(bad) == 2 and "⚠ unsafe" in shown and "<td>2 tries</td>" in shown


@pytest.mark.behaviour
def test_each_choice_clicked_is_a_try_and_what_is_typed_in_one_go_is_one():
    form = answer_form(open_exercise(LESSON))
    view = form.views["q3"]
    for option in view.question.options:
        view.box.value = option
    for typed in ("1", "10", "10 n", "10 nF"):
        form.views["q7"].box.value = typed
    told = tell()
    assert told["q3"].tries == len(view.question.options)
    assert (told["q7"].tries, told["q7"].first.typed) == (1, "10 nF")


@pytest.mark.behaviour
def test_an_order_is_a_try_when_each_step_has_its_number():
    form = answer_form(open_exercise(LESSON))
    view = next(one for one in form.views.values() if hasattr(one.question, "steps"))
    boxes = [line.children[0] for line in view.box.children]
    for number, box in enumerate(boxes, start=1):
        assert view.question.id not in tell()
        box.value = str(number)
    first, second = boxes[:2]
    first.value, second.value = "2", "1"
    assert tell()[view.question.id].tries == 2


@pytest.mark.behaviour
def test_an_answer_that_was_saved_and_never_judged_is_noted_when_it_is_next_seen():
    SavedAnswers(LESSON).save({"q7": "1 nF"})  # a kernel that was killed before it judged
    answer_form(open_exercise(LESSON))
    assert (tell()["q7"].tries, tell()["q7"].first.typed) == (1, "1 nF")
    answer_form(open_exercise(LESSON))
    assert len(read_tries(LESSON, DEMO)) == 1


@pytest.mark.behaviour
def test_the_record_of_one_learner_is_not_shown_to_another():
    form = answer_form(open_exercise(LESSON))
    form.views["q7"].box.value = "33 nF"
    turn_to("Ada Example", "")
    assert NOTHING_YET in form.kept.value
    set_learner("")


@pytest.mark.behaviour
def test_a_record_that_cannot_be_written_is_told_and_the_answer_is_saved():
    form = answer_form(open_exercise(LESSON))
    path_of(LESSON, DEMO).mkdir(parents=True)
    form.views["q7"].box.value = "10 nF"
    assert SavedAnswers(LESSON).read() == {"q7": "10 nF"}
    assert "this is a folder" in form.notes.value and "Not done" in form.kept.value


@pytest.mark.behaviour
def test_what_was_typed_just_before_a_hand_over_is_the_try_of_who_typed_it(monkeypatch):
    monkeypatch.setattr(question_view, "PAUSE", 0.05)
    set_learner("Ada Example", "bench-7")

    async def work():
        form = answer_form(open_exercise(LESSON))
        form.views["q7"].box.value = "10 nF"
        turn_to("Ben Example", "bench-7")
        await asyncio.sleep(0.2)

    asyncio.run(work())
    ada, ben = (Learner(name, "bench-7") for name in ("Ada Example", "Ben Example"))
    assert [one.typed for one in read_tries(LESSON, ada)] == ["10 nF"]
    assert read_tries(LESSON, ben) == []


@pytest.mark.behaviour
def test_a_click_on_a_page_that_is_not_theirs_any_more_is_nobodys_try():
    set_learner("Ada Example", "bench-7")
    form = answer_form(open_exercise(LESSON))
    set_learner("Ben Example", "bench-7")  # in another lesson
    view = form.views["q3"]
    view.box.value = unsafe_option(view.question)
    for name in ("Ada Example", "Ben Example"):
        assert read_tries(LESSON, Learner(name, "bench-7")) == []
