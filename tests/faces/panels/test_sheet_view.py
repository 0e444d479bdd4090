"""The sheet under an exercise is live: points, what to look at again, praise, where to go."""

import json
from base64 import b64decode

from repairlib.faces.panels import answer_form, progress_view
from repairlib.learn import LESSONS, open_exercise, set_learner
from repairlib.learn.exercise import ONE_EVENING
from tests.learn.test_answered import ANSWERED

LESSON = "00-start-here"


def right_answers(lesson=LESSON):
    rows = json.loads((ANSWERED / f"{lesson}-right.json").read_text(encoding="utf-8"))
    return {name: row["answer"] for name, row in rows.items()}


def unsafe_option(ask):
    return next(one for one in ask.options if ask.judge(one).state == "unsafe")


def page_behind(html: str) -> str:
    data = html.partition('href="data:text/html;base64,')[2].partition('"')[0]
    return b64decode(data).decode("utf-8")


def test_each_question_has_its_line_with_sign_and_word():
    form = answer_form(open_exercise(LESSON))
    assert "○ not answered: <b>q1, q2, q3, q4, q5, q6, q7, q8</b>" in form.sheet.value
    form.views["q7"].box.value = "47"
    form.views["q1"].box.value = form.views["q1"].question.answer
    form.views["q3"].box.value = unsafe_option(form.views["q3"].question)
    shown = form.sheet.value
    assert "<td>? cannot be read</td><td>0 of 2</td>" in shown and "the unit is missing" in shown
    assert "<td>✓ right</td><td>1 of 1</td>" in shown
    assert "<td>⚠ unsafe</td><td>0 of 2</td>" in shown
    assert "well done" not in shown


def test_the_sheet_agrees_with_the_one_that_is_worked_out_anew():
    form = answer_form(open_exercise(LESSON))
    for name in ("q1", "q3"):
        form.views[name].box.value = form.views[name].question.answer
    assert "<b>3 of 13 points</b>" in form.sheet.value
    assert open_exercise(LESSON).sheet().points == 3


def test_full_marks_end_in_praise_the_next_lesson_and_a_page_to_print():
    answers = right_answers()
    last = answers.pop("q8")
    open_exercise(LESSON).answer(**answers)
    form = answer_form(open_exercise(LESSON))
    assert "well done" not in form.sheet.value
    form.views["q8"].box.value = form.views["q8"].question.read(last)
    shown = form.sheet.value
    assert "✓ All 13 points: well done!" in shown
    assert f'Next: <a href="{LESSONS[1]}.ipynb">lesson 01, A safe bench</a>' in shown
    assert f'<a href="{LESSON}.ipynb">How far you are' in shown
    assert "Well done!" in page_behind(shown) and "Total: 13 of 13 points" in page_behind(shown)


def test_what_was_dangerous_first_stays_on_the_sheet_beside_the_praise():
    ask = open_exercise(LESSON).by_id["q3"]
    open_exercise(LESSON).answer(q3=unsafe_option(ask))
    open_exercise(LESSON).answer(**right_answers())
    shown = answer_form(open_exercise(LESSON)).sheet.value
    assert "well done" in shown and "Talk q3 through with somebody" in shown
    assert "answered unsafely first" in page_behind(shown)


def test_the_last_lesson_has_no_next_one():
    shown = answer_form(open_exercise(LESSONS[-1])).sheet.value
    assert "Next: " not in shown and "How far you are" in shown


def test_a_page_to_print_names_the_learner_and_its_marks_are_harmless():
    set_learner("Ada <b>", "bench-7")
    form = answer_form(open_exercise(LESSON))
    form.views["q7"].box.value = "<script>alert(1)</script>"
    page = page_behind(form.sheet.value)
    assert "<b>Ada &lt;b&gt;, group bench-7</b>" in page and "<title>Lesson 00, Start here" in page
    assert "<script>" not in page + form.sheet.value


# All lessons


def test_progress_says_what_comes_next_then_shows_all_lessons_and_both_ways():
    shown = progress_view().shown.value
    assert "Begin with lesson 00, Start here" in shown
    assert shown.count("○ not begun") == len(LESSONS)
    assert shown.count("● one evening") == len(ONE_EVENING) and "The whole workbook" in shown


def test_progress_looks_again_when_asked_and_lists_mistakes():
    view = progress_view()
    ask = open_exercise(LESSON).by_id["q3"]
    open_exercise(LESSON).answer(q3=unsafe_option(ask), q7="22")
    view.again.click()
    shown = view.shown.value
    assert "Go on with lesson 00, Start here" in shown and "◐ open" in shown
    first, second = shown.partition("To practise next")[2].split("</li>")[:2]
    assert "q3: ⚠ unsafe. " in first and "q7: ? cannot be read. " in second
    open_exercise(LESSON).answer(**right_answers())
    view.again.click()
    assert "Next: lesson 01" in view.shown.value and "✓ done" in view.shown.value


def test_progress_of_whoever_has_done_all():
    for lesson in LESSONS:
        open_exercise(lesson).answer(**right_answers(lesson))
    shown = progress_view().shown.value
    assert "All lessons done: well done!" in shown and "To practise" not in shown


def test_a_home_that_cannot_be_read_is_told(home):
    home.write_text("in the way of the folder")
    assert "Not done" in progress_view().shown.value
