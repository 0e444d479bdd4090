"""Where the computer knows a group: members by word or name, handed over in two clicks, pairs."""

import json
import os
import time

import pytest

from repairlib.faces.panels import answer_form
from repairlib.faces.panels.learner import learner_form
from repairlib.faces.panels.members import LISTED
from repairlib.learn import DEMO, Learner, current_learner, open_exercise, set_learner
from repairlib.learn.group import Group, Member
from repairlib.learn.learner import known_learners

LESSON = "00-start-here"
WORDS = {"Ada": "wasp", "Ben": "beam", "Cleo": "cube", "Dan": "aqua", "Eve": "desk", "Finn": "fund"}
GROUP = Group(
    "Tuesday bench", tuple(Member(f"{n} Example", w) for n, w in WORDS.items()), (LESSON,)
)
ADA, BEN = (Learner(f"{name} Example", "Tuesday bench") for name in ("Ada", "Ben"))


def know(home, group):
    home.mkdir(exist_ok=True)
    content = {"format": 1, **group.to_dict()}
    (home / "group.json").write_text(json.dumps(content), encoding="utf-8")


@pytest.fixture
def group(home):
    know(home, GROUP)
    return GROUP


@pytest.fixture
def one_question(monkeypatch):
    """Of lesson 00 q7 alone is asked, to be quick."""
    asked = [one for one in open_exercise(LESSON).questions if one.id == "q7"]
    monkeypatch.setattr("repairlib.learn.exercise.graded", lambda module, draw: asked)


def labels(box):
    return [button.description for button in box.children]


def click(box, label):
    next(one for one in box.children if one.description == label).click()


# The form in lesson 00


@pytest.mark.parametrize("typed", ["wasp", " WASP ", "ada   example"])
def test_the_word_or_the_name_sets_the_member(group, typed):
    form = learner_form()
    form.fields.word.value = typed
    form.show.click()
    assert current_learner()[0] == ADA
    assert "It is the turn of Ada Example" in form.status.value and form.fields.word.value == ""


def test_the_name_is_chosen_from_a_list(group):
    form = learner_form()
    names = [name for name, _ in form.fields.names.options]
    assert names == ["or choose it here", *(one.name for one in GROUP.members)]
    form.fields.names.value = "Ben Example"
    assert current_learner()[0] == BEN and form.fields.names.value == ""


def test_a_slip_is_offered_and_not_taken(group):
    form = learner_form()
    form.fields.word.value = "wesp"
    form.show.click()
    assert current_learner()[0] is DEMO
    assert "Nobody in the group Tuesday bench has the word or name “wesp”" in form.status.value
    assert labels(form.fields.offered) == ["wasp: Ada Example", "Go on as wesp, not in the group"]
    assert form.fields.word.value == "wesp"
    click(form.fields.offered, "wasp: Ada Example")
    assert current_learner()[0] == ADA and not form.fields.offered.children


def test_enter_in_the_field_does_what_the_button_does(group):
    form = learner_form()
    form.fields.word.value = "wasp"
    form.fields.word._handle_custom_msg({"event": "submit"}, [])  # as the browser sends it
    assert current_learner()[0] == ADA


def test_who_is_not_in_the_group_may_go_on_alone_when_they_say_so(group):
    form = learner_form()
    form.fields.word.value = "Gus <b>"
    form.show.click()
    assert "Gus &lt;b&gt;" in form.status.value
    click(form.fields.offered, "Go on as Gus <b>, not in the group")
    assert current_learner()[0] == Learner("Gus <b>")


def test_nothing_typed_asks_for_it(group):
    form = learner_form()
    form.show.click()
    assert "Type your word or your name" in form.status.value


def test_a_spoilt_group_is_told_and_the_form_is_as_without_one(home):
    home.mkdir()
    (home / "group.json").write_text("{")
    form = learner_form()
    assert "file of the group cannot be used" in form.status.value
    assert form.fields.name.description == "Your name"


# At the exercise


def test_hand_over_to_any_member_in_two_clicks(group, one_question):
    set_learner(BEN.name, BEN.group)
    set_learner(ADA.name, ADA.group)
    form = answer_form(open_exercise(LESSON))
    form.who.hand_over.click()
    assert labels(form.who.others) == ["Ben Example", "Nobody: the demo variant"]
    others = ["Cleo Example", "Dan Example", "Eve Example", "Finn Example"]
    assert labels(form.who.members) == others
    click(form.who.members, "Dan Example")
    assert "Dan Example, group Tuesday bench</b> is answering" in form.who.who.value
    assert form.who.choices.layout.display == "none"
    form.who.hand_over.click()
    assert labels(form.who.others)[:2] == ["Ada Example", "Ben Example"]


def test_a_word_is_typed_at_the_exercise_and_a_slip_is_offered(group, one_question):
    form = answer_form(open_exercise(LESSON))
    form.who.hand_over.click()
    form.who.fields.word.value = "deks"
    form.who.fields.show.click()
    assert labels(form.who.fields.offered)[0] == "desk: Eve Example"
    assert form.who.choices.layout.display == ""
    click(form.who.fields.offered, "desk: Eve Example")
    assert "Eve Example" in form.who.who.value and not form.who.fields.offered.children


def test_a_pair_has_both_names_on_the_sheet_and_in_the_file(group, one_question):
    set_learner(ADA.name, ADA.group)
    form = answer_form(open_exercise(LESSON))
    names = [name for name, _ in form.who.together.other.options]
    assert names[:2] == ["nobody", "Ben Example"] and "Ada Example" not in names
    form.who.together.other.value = "Ben Example"
    both = "Ada Example and Ben Example, group Tuesday bench"
    assert f"<b>{both}</b> are answering" in form.who.who.value
    form.views["q7"].box.value = "47 pF"
    exercise = open_exercise(LESSON)
    assert both in str(exercise.sheet())
    assert json.loads(exercise.saved.path.read_text())["partner"] == "Ben Example"
    form.who.hand_over.click()
    click(form.who.members, "Cleo Example")
    assert form.who.together.other.value == ""
    form.who.hand_over.click()
    click(form.who.others, "Ada Example and Ben Example")  # in two clicks, as a pair
    assert form.who.together.other.value == "Ben Example"
    form.who.together.other.value = ""
    assert current_learner()[0].partner == ""


def test_nobody_and_who_is_not_in_the_group_are_no_pair(group, one_question):
    form = answer_form(open_exercise(LESSON))
    assert not form.who.together.children
    set_learner("Gus")
    assert not answer_form(open_exercise(LESSON)).who.together.children
    set_learner(ADA.name, ADA.group)
    assert learner_form().together.other.description == "together with"


def test_in_a_large_group_words_are_typed(home, one_question):
    many = tuple(Member(f"Learner {i}", f"word{i}") for i in range(LISTED + 1))
    know(home, Group("all", many))
    set_learner("Learner 7", "all")
    form = answer_form(open_exercise(LESSON))
    form.who.hand_over.click()
    assert labels(form.who.members) == []
    form.who.together.other.value = "word9"
    assert current_learner()[0].partner == "Learner 9"
    form.who.together.other.value = "nonsense"
    assert "nobody in the group all has this word" in form.who.together.status.value
    assert len(learner_form().fields.children) == 3  # no list


def test_each_control_has_a_name(group, one_question):
    set_learner(ADA.name, ADA.group)
    form, answering = learner_form(), answer_form(open_exercise(LESSON))
    controls = [form.fields.word, form.fields.names, form.together.other, form.show]
    controls += [answering.who.hand_over, answering.who.together.other, answering.who.fields.word]
    assert all(one.description for one in controls)


def test_a_thousand_hand_overs_put_no_answer_into_another_file(group, one_question):
    """Of six members at one computer; each answers with the own name and the count."""
    hand_overs = 1000 if os.environ.get("CLASS") == "all" else 60
    form = answer_form(open_exercise(LESSON))
    begun = time.perf_counter()
    for turn in range(hand_overs):
        name = GROUP.members[turn % 6].name
        form.who.hand_over.click()
        click(form.who.members if turn < 6 else form.who.others, name)
        form.views["q7"].box.value = f"{name} {turn}"
    print(f"{hand_overs} hand-overs in {time.perf_counter() - begun:.1f} s")
    for place, one in enumerate(GROUP.members):
        last = max(turn for turn in range(hand_overs) if turn % 6 == place)
        set_learner(one.name, GROUP.name)
        assert open_exercise(LESSON).saved.read() == {"q7": f"{one.name} {last}"}
    assert len(known_learners()) == 6
