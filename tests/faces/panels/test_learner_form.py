"""Who is learning: set, handed over and forgotten with plain words, without running a cell."""

from base64 import b64decode

import pytest

from repairlib.faces.panels import answer_form, progress_view
from repairlib.faces.panels.learner import learner_form
from repairlib.learn import DEMO, Learner, current_learner, open_exercise, set_learner
from repairlib.learn.kept_work import KeptWork

LESSON = "00-start-here"
ADA, BEN = Learner("Ada Example", "bench-7"), Learner("Ben Example", "bench-7")


def filled(name="", group=""):
    form = learner_form()
    form.fields.name.value, form.fields.group.value = name, group
    form.show.click()
    return form


def test_the_form_sets_the_learner_and_says_so():
    form = filled("Ada Example", "bench-7")
    assert "It is the turn of Ada Example, group bench-7" in form.status.value
    assert current_learner() == (ADA, "")
    again = learner_form()
    assert (again.fields.name.value, again.fields.group.value) == ("Ada Example", "bench-7")


def test_its_words_are_those_of_the_workbook():
    form = learner_form()
    assert form.fields.name.description == "Your name" and form.fields.group.description == "Group"
    assert "as your instructor calls it" in form.fields.group.placeholder
    assert form.show.description == "Show my questions"


def test_a_name_alone_is_enough():
    form = filled("Ada Example")
    assert "It is the turn of Ada Example" in form.status.value and "group" not in form.status.value
    assert current_learner()[0] == Learner("Ada Example")


def test_both_empty_is_the_demo_variant_also_after_a_name():
    filled("Ada Example", "bench-7")
    form = filled("  ", "")
    assert "you work on the demo variant" in form.status.value
    assert current_learner() == (DEMO, "") and form.forget.layout.display == "none"


def test_a_group_alone_asks_for_the_name_and_keeps_the_text():
    form = filled("", "bench-7")
    assert "Type your name too" in form.status.value and "''" not in form.status.value
    assert form.fields.group.value == "bench-7" and current_learner() == (DEMO, "")


def test_a_name_that_is_none_is_refused_and_stays():
    form = filled("Ada\tExample", "bench-7")
    assert "this is no name on one line" in form.status.value
    assert form.fields.name.value == "Ada\tExample"


def test_forget_clears_the_form_and_says_what_stays(home):
    form = filled("Ada Example", "bench-7")
    open_exercise(LESSON).answer(q8="a")
    form.forget.click()
    assert (form.fields.name.value, form.fields.group.value) == ("", "")
    assert current_learner() == (DEMO, "")
    assert "Ada" not in (home / "learner.json").read_text()
    said = form.status.value
    assert "off the list" in said and "stay on this computer" in said
    assert str(open_exercise(LESSON).saved.path.parents[1]) in said
    filled("Ada Example", "bench-7")
    assert open_exercise(LESSON).saved.read() == {"q8": "a"}


def test_a_bad_file_is_told_in_the_form(home):
    home.mkdir()
    (home / "learner.json").write_bytes(b"{")
    assert "It is kept as " in learner_form().status.value


# At the exercise


def in_the_form(form, name):
    return form.views[name].box.value


def test_hand_over_in_two_clicks_and_the_questions_follow():
    for learner in (ADA, BEN):
        set_learner(learner.name, learner.group)
        open_exercise(LESSON).answer(q2=f"{len(learner.name)} s")
    form = answer_form(open_exercise(LESSON))
    form.views["q7"].box.value = "47 pF"
    assert "Ben Example, group bench-7" in form.who.who.value
    hers = open_exercise(LESSON).learner
    form.who.hand_over.click()
    (ada,) = (one for one in form.who.others.children if "Ada" in one.description)
    ada.click()
    assert "Ada Example, group bench-7" in form.who.who.value
    assert form.who.choices.layout.display == "none"
    asked = [form.views[one.id].question.prompt for one in form.exercise.questions]
    assert asked == [one.prompt for one in open_exercise(LESSON).questions]
    assert in_the_form(form, "q7") == "" and in_the_form(form, "q2") == "11 s"
    form.views["q7"].box.value = "22 pF"
    assert open_exercise(LESSON).saved.read() == {"q2": "11 s", "q7": "22 pF"}
    set_learner(hers.name, hers.group)
    assert open_exercise(LESSON).saved.read()["q7"] == "47 pF"


def test_nobody_answers_for_another_while_it_is_being_handed_over():
    form = answer_form(open_exercise(LESSON))

    def hidden():
        return {view.layout.display for view in form.views.values()}

    form.who.hand_over.click()
    assert hidden() == {"none"}
    form.who.hand_over.click()
    assert hidden() == {""}
    form.who.hand_over.click()
    form.who.fields.name.value = "Ada Example"
    form.who.fields.show.click()
    assert not hidden() & {"none"}


def test_two_hundred_hand_overs_put_no_answer_into_another_file(monkeypatch):
    """Of three at one laptop, each answers with the own name; q7 alone is asked, to be quick."""
    asked = [one for one in open_exercise(LESSON).questions if one.id == "q7"]
    monkeypatch.setattr("repairlib.learn.exercise.graded", lambda module, draw: asked)
    form = answer_form(open_exercise(LESSON))
    names = ("Ada", "Ben", "Cleo")
    for turn in range(200):
        name = names[turn % 3]
        form.who.hand_over.click()
        known = {one.description: one for one in form.who.others.children}
        if name in known:
            known[name].click()
        else:
            form.who.fields.name.value = name
            form.who.fields.show.click()
        form.views["q7"].box.value = f"{name} {turn}"
    for place, name in enumerate(names):
        set_learner(name)
        assert open_exercise(LESSON).saved.read() == {"q7": f"{name} {[198, 199, 197][place]}"}


@pytest.mark.behaviour
def test_a_hand_over_that_cannot_be_remembered_says_why_and_can_be_made_again(monkeypatch):
    for learner in (BEN, ADA):
        set_learner(learner.name, learner.group)
    form = answer_form(open_exercise(LESSON))
    form.who.hand_over.click()
    (ben,) = (one for one in form.who.others.children if "Ben" in one.description)
    with monkeypatch.context() as full:
        full.setattr("os.replace", lambda *names: (_ for _ in ()).throw(OSError(28, "No space")))
        ben.click()
    assert "no space" in form.who.fields.status.value and form.who.choices.layout.display == ""
    assert "Ada Example" in form.who.who.value and current_learner()[0] == ADA
    ben.click()
    assert "Ben Example" in form.who.who.value and current_learner()[0] == BEN


@pytest.mark.behaviour
def test_who_may_take_over_is_told_or_why_not(home):
    set_learner(ADA.name, ADA.group)
    form = answer_form(open_exercise(LESSON))
    (home / "learner.json").unlink()
    (home / "learner.json").mkdir()
    form.who.hand_over.click()
    assert "learner.json" in form.who.fields.status.value
    assert form.who.choices.layout.display == ""


def test_somebody_new_is_typed_in_at_the_exercise():
    form = answer_form(open_exercise(LESSON))
    form.who.hand_over.click()
    form.who.fields.name.value = "Cleo"
    form.who.fields.show.click()
    assert "<b>Cleo</b> is answering" in form.who.who.value
    assert form.exercise.learner == Learner("Cleo")


def test_the_exercise_itself_turns_so_that_code_and_sheet_agree():
    exercise = open_exercise(LESSON)
    answer_form(exercise)
    filled("Ada Example", "bench-7")
    assert "variant of Ada Example, group bench-7" in str(exercise.sheet())


def test_form_of_a_learner_names_the_variant_with_its_marks_harmless():
    set_learner("Ada <b>", "bench-7")
    assert "Ada &lt;b&gt;" in answer_form(open_exercise(LESSON)).who.who.value


def test_a_form_left_from_somebody_else_saves_nothing_under_either_name():
    set_learner("Ada Example", "bench-7")
    form = answer_form(open_exercise(LESSON))
    set_learner("Ben Example", "bench-7")  # in another lesson, which has a kernel of its own
    form.views["q7"].box.value = "47 pF"
    assert "Ben Example" in form.who.who.value and in_the_form(form, "q7") == ""
    assert "is not saved" in form.notes.value
    assert open_exercise(LESSON).saved.read() == {}
    set_learner("Ada Example", "bench-7")
    assert open_exercise(LESSON).saved.read() == {}


def test_what_could_not_be_saved_is_saved_before_the_next_one_answers(home):
    set_learner("Ada Example", "bench-7")
    form = answer_form(open_exercise(LESSON))
    answers = open_exercise(LESSON).saved.path
    answers.parent.parent.mkdir(parents=True)
    answers.parent.write_text("in the way of the folder")
    form.views["q7"].box.value = "47 pF"
    assert "NOT SAVED" in form.views["q7"].saved.value
    form.who.hand_over.click()
    form.who.others.children[-1].click()  # nobody: the demo variant
    assert "cannot be read or saved" in form.notes.value
    assert in_the_form(form, "q7") == "47 pF"
    answers.parent.unlink()
    form.who.others.children[-1].click()
    assert form.exercise.learner is DEMO
    set_learner("Ada Example", "bench-7")
    assert open_exercise(LESSON).saved.read() == {"q7": "47 pF"}


# To another computer


def upload(form, content: bytes, name="work.json"):
    piece = {"name": name, "start": 0, "size": len(content)}
    form.carry.bring._handle_custom_msg(piece, [memoryview(content)])
    return form.carry.status.value


def saved_by_the_link(html: str) -> bytes:
    return b64decode(html.partition("base64,")[2].partition('"')[0])


def test_work_is_taken_along_and_brought(tmp_path, monkeypatch):
    form = filled("Ada Example", "bench-7")
    open_exercise(LESSON).answer(q8="a")
    KeptWork("07-plan").save({"list": "C1"})
    form.carry.take.click()
    said = form.carry.status.value
    assert "1 answer, 1 thing typed" in said and 'download="repair-work-ada-example.json"' in said
    file = saved_by_the_link(said)
    monkeypatch.setenv("REPAIRLIB_HOME", str(tmp_path / "other"))
    there, answering = learner_form(), answer_form(open_exercise(LESSON))
    assert "2 things taken in" in upload(there, file)
    assert there.fields.name.value == "Ada Example"
    assert answering.views["q8"].typed == "a"
    assert KeptWork("07-plan").read() == {"list": "C1"}
    assert "Nothing new in it" in upload(there, file)


@pytest.mark.parametrize("content", [b"", b"\x89PNG", b'{"carried": {}, "format": 1}'])
def test_a_foreign_file_is_refused_in_the_form(content):
    form = learner_form()
    assert "Not done" in upload(form, content, "photo.png")
    assert form.carry.bring.label == "Bring my work"


def test_progress_turns_with_the_learner():
    view = progress_view()
    filled("Ada Example", "bench-7")
    assert "Ada Example, group bench-7: 0 of " in view.shown.value
