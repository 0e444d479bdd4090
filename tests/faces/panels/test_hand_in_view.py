"""Hand in at an exercise: one click, the receipt, the file, the page to print, the line to read."""

import asyncio
import json
from base64 import b64decode

import pytest

from repairlib.faces.panels import answer_form, hand_in_view
from repairlib.faces.panels.following import turn_to
from repairlib.learn import files, open_exercise, set_learner
from repairlib.learn.forgetting import what_there_is
from repairlib.learn.group import Group, Member
from repairlib.learn.hand_in import check_signs, hand_in, read_hand_in

LESSON = "00-start-here"
BENCH = "Tuesday bench"


@pytest.fixture
def folder(home, tmp_path):
    """The folder of a group on a server, with Ada set."""
    (there := tmp_path / "there").mkdir()
    home.mkdir()
    members = (Member("Ada Example", "kite"), Member("Ben Example", "moss"))
    group = Group(BENCH, members, (LESSON,), hand_in_to=str(there))
    files.write(home / "group.json", group.to_dict())
    set_learner("Ada Example", BENCH)
    return there


def handed_in(folder):
    return {
        content["name"]: content["lessons"][LESSON]["answers"]
        for content in (read_hand_in(path.read_bytes()) for path in folder.iterdir())
    }


def saved_from(html: str) -> bytes:
    return b64decode(html.partition('href="data:application/json;base64,')[2].partition('"')[0])


@pytest.mark.behaviour
def test_without_a_folder_it_gives_the_file_the_receipt_and_the_line():
    learner = set_learner("Ada Example", "bench-7")
    form = answer_form(open_exercise(LESSON))
    form.views["q7"].box.value = "10 nF"
    form.hand_in.hand_in.click()
    shown = form.hand_in.status.value
    handed = hand_in(learner)
    assert f'<div class="rl-receipt">{handed.receipt}</div>' in shown
    assert read_hand_in(saved_from(shown))["lessons"][LESSON]["answers"] == {"q7": "10 nF"}
    assert "Save the file and give it" in shown and "Ada Example" in shown
    line = "Ada Example 00: - | - | - | - | - | - | 10 nF | -"
    assert f"{line} = {check_signs(line)}" in shown
    page = b64decode(shown.partition("data:text/html;base64,")[2].partition('"')[0]).decode()
    assert handed.receipt in page and "Ada Example, group bench-7" in page


@pytest.mark.behaviour
def test_a_file_to_save_counts_with_the_second_click():
    learner = set_learner("Ada Example", "bench-7")
    form = answer_form(open_exercise(LESSON))
    view = form.hand_in
    assert view.saved.layout.display == "none"
    form.views["q7"].box.value = "10 nF"
    view.hand_in.click()
    assert view.saved.layout.display == ""
    assert what_there_is(learner).never_handed_in == (LESSON,)
    view.saved.click()
    assert hand_in_view.NOTED in view.noted.value and view.saved.layout.display == "none"
    assert what_there_is(learner).never_handed_in == ()
    form.views["q7"].box.value = "12 nF"
    assert what_there_is(learner).never_handed_in == (LESSON,)
    view.hand_in.click()
    turn_to("Ben Example", "bench-7")  # who is not asked for the file of the one before
    assert view.saved.layout.display == "none" and view.noted.value == ""


@pytest.mark.behaviour
def test_nobody_is_asked_who_they_are():
    form = answer_form(open_exercise(LESSON))
    form.hand_in.hand_in.click()
    assert "Say first who is answering" in form.hand_in.status.value


@pytest.mark.behaviour
def test_with_a_folder_one_click_puts_it_there_and_the_line_begins_with_the_word(folder):
    form = answer_form(open_exercise(LESSON))
    form.views["q7"].box.value = "10 nF"
    form.hand_in.hand_in.click()
    assert handed_in(folder) == {"Ada Example": {"q7": "10 nF"}}
    assert "It is with your instructor" in form.hand_in.status.value
    assert form.hand_in.saved.layout.display == "none"
    assert "kite 00: " in form.hand_in.status.value


@pytest.mark.behaviour
def test_a_change_after_it_says_so_and_the_old_receipt_stays(folder):
    form = answer_form(open_exercise(LESSON))
    form.hand_in.hand_in.click()
    receipt = form.hand_in.status.value
    form.views["q7"].box.value = "10 nF"
    assert "Hand in again" in form.hand_in.status.value and receipt in form.hand_in.status.value


@pytest.mark.behaviour
def test_while_answers_change_the_file_follows_by_itself_but_not_at_each_one(folder, monkeypatch):
    monkeypatch.setattr(hand_in_view, "EVERY", 0.2)
    puts = []

    async def work():
        form = answer_form(open_exercise(LESSON))
        assert hand_in_view.LIVE in form.hand_in.live.value
        put = form.hand_in._put
        form.hand_in._put = lambda: puts.append(put())
        for option in form.views["q3"].question.options:
            form.views["q3"].box.value = option
        await asyncio.sleep(0.5)
        return option

    last = asyncio.run(work())
    assert len(puts) == 2
    assert handed_in(folder) == {"Ada Example": {"q3": last}}


@pytest.mark.behaviour
def test_a_hand_over_lets_the_last_answers_of_the_one_before_out_first(folder):
    async def work():
        form = answer_form(open_exercise(LESSON))
        form.views["q3"].box.value = form.views["q3"].question.options[0]
        form.views["q3"].box.value = form.views["q3"].question.options[1]
        last = form.views["q3"].question.options[1]
        turn_to("Ben Example", BENCH)
        form.views["q3"].box.value = form.views["q3"].question.options[0]
        return last

    last = asyncio.run(work())
    assert handed_in(folder)["Ada Example"] == {"q3": last}


@pytest.mark.behaviour
def test_a_folder_that_is_gone_is_told_and_the_answer_is_saved(folder):
    folder.rmdir()
    form = answer_form(open_exercise(LESSON))
    form.views["q7"].box.value = "10 nF"
    assert "Not done" in form.hand_in.status.value
    assert open_exercise(LESSON).saved.read() == {"q7": "10 nF"}


@pytest.mark.behaviour
def test_somebody_of_another_group_hands_nothing_in_to_this_one(folder):
    set_learner("Ada Example", "another bench")
    form = answer_form(open_exercise(LESSON))
    form.views["q7"].box.value = "10 nF"
    form.hand_in.hand_in.click()
    assert list(folder.iterdir()) == [] and "Save the file" in form.hand_in.status.value
    assert json.loads(saved_from(form.hand_in.status.value))["group"] == "another bench"


@pytest.mark.behaviour
def test_the_line_of_a_pair_begins_with_both_words(folder):
    set_learner("Ada Example", BENCH, "Ben Example")
    form = answer_form(open_exercise(LESSON))
    form.hand_in.hand_in.click()
    assert "kite + moss 00: " in form.hand_in.status.value
    (content,) = (read_hand_in(path.read_bytes()) for path in folder.iterdir())
    assert content["partner"] == "Ben Example"
