"""The forms without a browser: setting `.value` and clicking is what a browser does."""

import pytest

from repairlib.core.draws import Draw
from repairlib.core.safety import HAZARDS
from repairlib.faces.panels import answer_form
from repairlib.faces.panels.exercise_page import ExercisePage
from repairlib.faces.panels.warming_up import practice
from repairlib.learn import Choice, Mistake, Number, open_exercise, warm_up

LESSON = "00-start-here"


@pytest.fixture
def form():
    return answer_form(open_exercise(LESSON))


def test_typing_saves_and_tells(form):
    form.views["q7"].box.value = "47"
    assert open_exercise(LESSON).saved.read() == {"q7": "47"}
    feedback = form.views["q7"].feedback.value
    assert "Cannot be read yet" in feedback and "the unit is missing" in feedback
    assert "✓ Saved" in form.views["q7"].saved.value


def test_danger_is_told_at_once_in_words_with_the_caution(form):
    form.views["q2"].box.value = "0 s"
    feedback = form.views["q2"].feedback.value
    assert "⚠ DANGER: this could hurt someone, 0 of 2" in feedback
    assert "A capacitor keeps its charge after the plug is out" in feedback
    assert 'role="alert"' in feedback


@pytest.mark.parametrize("name", ["q1", "q3", "q5"])
def test_a_danger_is_one_sentence_then_that_hazard_only_and_is_noted(form, name):
    view = form.views[name]
    states = {view.question.judge(option).state: option for option in view.question.options}
    view.box.value = states["unsafe"]
    told, hazards = view.feedback.value, view.question.judge(states["unsafe"]).hazards
    assert told.count("<details>") == len(hazards) == 1
    assert HAZARDS[hazards[0]].strikes in told and "Rest the iron" not in told
    view.box.value = states["right"]
    assert "Right" in view.feedback.value
    assert "answered unsafely first" in view.feedback.value
    again = answer_form(open_exercise(LESSON))
    assert "answered unsafely first" in again.views[name].feedback.value
    assert "answered unsafely first" in str(open_exercise(LESSON).sheet())


def test_a_number_that_is_only_typed_further_was_no_answer(form):
    view = form.views["q2"]
    for typed in ("6", "60", "60 ", "60 s"):
        view.box.value = typed
    assert "unsafely" not in view.feedback.value and "Right" in view.feedback.value
    view.box.value = "20 s"
    view.box.value = "60 s"
    assert "answered unsafely first" in view.feedback.value


def test_practice_notes_nothing():
    """The question on touching the leads, answered dangerously and then anew."""
    panel = practice(warm_up(LESSON))
    views = panel.children[1].children
    (view,) = (one for one in views if "touch" in one.question.prompt)
    for option in view.question.options:
        view.box.value = option
    assert "unsafely" not in view.feedback.value


def test_progress_and_the_sheet_agree(form):
    ask = form.views["q1"].question
    form.views["q1"].box.value = ask.answer
    assert "<b>1 of 13 points</b>, 1 of 8 questions answered" in form.sheet.value
    assert open_exercise(LESSON).sheet().points == 1


def test_steps_are_numbered(form):
    view = form.views["q4"]
    boxes = {
        line.children[0].description.split(": number of step ")[1][3:]: line.children[0]
        for line in view.box.children
    }
    for number, step in enumerate(view.question.steps, start=1):
        boxes[step].value = str(number)
    assert "Right, 3 of 3" in view.feedback.value
    assert open_exercise(LESSON).sheet().points == 3


def test_answers_are_there_when_the_form_is_opened_again(form):
    form.views["q1"].box.value = form.views["q1"].question.options[1]
    form.views["q7"].box.value = "4,7 µ"
    open_exercise(LESSON).answer(q4="b a c d e f", q8="x")
    again = answer_form(open_exercise(LESSON))
    assert again.views["q1"].box.value == form.views["q1"].question.options[1]
    assert again.views["q7"].box.value == "4,7 µ"
    numbers = [line.children[0].value for line in again.views["q4"].box.children]
    assert numbers == ["2", "1", "3", "4", "5", "6"]
    assert again.views["q8"].box.value is None  # not readable, and still saved
    assert open_exercise(LESSON).saved.read()["q8"] == "x"


def test_what_cannot_be_saved_stays_and_is_saved_with_the_next_change(form, home):
    home.write_text("in the way of the folder")
    form.views["q7"].box.value = "47 pF"
    assert "NOT SAVED" in form.views["q7"].saved.value
    assert "REPAIRLIB_HOME" in form.views["q7"].saved.value
    assert form.views["q7"].box.value == "47 pF"
    home.unlink()
    form.views["q2"].box.value = "1 s"
    assert open_exercise(LESSON).saved.read() == {"q7": "47 pF", "q2": "1 s"}


def test_a_bad_file_is_told_above_the_questions():
    exercise = open_exercise(LESSON)
    exercise.saved.path.parent.mkdir(parents=True)
    exercise.saved.path.write_bytes(b'{"format": 9}')
    assert "it is of a later version (9; this one reads 1)" in answer_form(exercise).notes.value


def test_typed_markup_is_shown_as_text(form):
    form.views["q7"].box.value = "<img src=x onerror=alert(1)>"
    assert "<img src=x" not in form.views["q7"].feedback.value


def test_page_shows_every_question_with_pictures():
    page = ExercisePage(open_exercise(LESSON))
    assert page._repr_html_().count('class="rl-card"') == 8
    assert "data:image/svg+xml" in page._repr_html_()


def test_practice_tells_and_saves_nothing(home):
    ask = Number(id="q", unit="V", answer=9, mistakes=[Mistake(90.0, "A zero too many?")])
    panel = practice([ask])
    view = panel.children[1]
    view.box.value = "90 V"
    assert "A zero too many?" in view.feedback.value
    assert "of 1" not in view.feedback.value and view.saved.value == ""
    assert not home.exists()


def test_practice_brings_other_numbers():
    def questions(draw: Draw):
        volts = draw.integer(1, 10**6)
        return [Number(id="q", prompt=f"{volts}", unit="V", answer=volts)]

    panel = practice(questions)
    box, again = panel.children[1:]
    first = box.children[0].question.prompt
    again.click()
    assert box.children[0].question.prompt != first


def test_a_table_is_filled_cell_by_cell():
    from repairlib.learn import Table

    fit = Choice(options=("radial", "axial"), answer="axial")
    ask = Table(id="q", cells={"C3": {"voltage": Number(answer=25, unit="V"), "fit": fit}})
    view = practice([ask]).children[1]
    voltage, way = (box for box in view.box.children if box.description)
    assert voltage.description == "Try it, 1: C3, voltage"
    voltage.value = "25 V"
    assert "1 of 2 cells are right." in view.feedback.value
    way.value = "axial"
    assert "Right" in view.feedback.value
    assert view.typed == {"C3": {"voltage": "25 V", "fit": "axial"}}
