"""The form of a lesson that is held: it saves, tells dangers, and tells the rest when released."""

import pytest

from repairlib.faces.panels import answer_form
from repairlib.learn import open_exercise
from repairlib.learn.holding import PRACTICE
from tests.faces.panels.test_sheet_view import page_behind, unsafe_option
from tests.learn.test_holding import LESSON, WORD, held, known

__all__ = ["held", "known"]  # fixtures


@pytest.fixture
def form(held):
    return answer_form(held)


def told_in(form) -> str:
    texts = [view.feedback.value for view in form.views.values()]
    return " ".join([*texts, form.sheet.value, page_behind(form.sheet.value), form.kept.value])


def answer(form) -> None:
    form.views["q1"].box.value = form.views["q1"].question.answer
    form.views["q7"].box.value = "22 nF"


@pytest.mark.behaviour
def test_it_saves_and_says_nothing_of_right_and_wrong(form):
    answer(form)
    assert open_exercise(LESSON).saved.read()["q7"] == "22 nF"
    assert form.hold.layout.display == "" and PRACTICE in form.hold.children[0].value
    assert "● Right or wrong: told later" in form.views["q1"].feedback.value
    told = told_in(form)
    for word in ("✓ right", "✗", "Wrong", "1 of 1", "size is not", "well done"):
        assert word not in told, word
    assert "Points are told later" in told


@pytest.mark.behaviour
def test_a_danger_is_told_with_its_caution(form):
    view = form.views["q3"]
    view.box.value = unsafe_option(view.question)
    assert "⚠ DANGER" in view.feedback.value and 'role="note"' in view.feedback.value
    view.box.value = view.question.answer
    assert "told later" in view.feedback.value and "unsafely first" in view.feedback.value


@pytest.mark.behaviour
def test_another_word_is_refused_and_the_right_one_tells_everything_at_once(form):
    answer(form)
    form.hold.release.click()
    assert "Not released yet" in form.hold.status.value
    form.hold.word.value = "chief"
    form.hold.release.click()
    assert "does not release" in form.hold.status.value and form.hold.word.value == "chief"
    form.hold.word.value = WORD.upper()
    form.hold.release.click()
    assert form.hold.layout.display == "none"
    assert "✓ Right, 1 of 1" in form.views["q1"].feedback.value
    assert "The figures are right" not in form.views["q7"].feedback.value
    assert "✗ wrong" in form.sheet.value and "✗ wrong" in form.kept.value


@pytest.mark.behaviour
def test_released_on_the_server_it_tells_on_its_next_turn(form, known):
    answer(form)
    known()
    form.views["q8"].box.value = form.views["q8"].question.answer
    assert "✓ Right, 1 of 1" in form.views["q1"].feedback.value
    assert form.hold.layout.display == "none"
