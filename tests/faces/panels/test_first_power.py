"""repairlib.faces.panels.first_power: the walk one card at a time, its stops, what is kept."""

import json
import re

import pytest

from repairlib.faces.panels import following
from repairlib.faces.panels.first_power import ANEW, SURE, first_power_up
from repairlib.power_up import CAUSE, FINE, HAND_ON, NEITHER, POWER_OFF, VERIFY, WRONG

# What a sound radio reads, by the first word of the check.
SOUND = {"ohms": "310 Ω", "power": "20 mA", "volts": "5.02 V", "ripple": "12 mV"}


def press(panel, *names):
    for name in names:
        panel.buttons[name].click()


def enter(panel, typed):
    panel.reading.value = typed
    press(panel, "enter")


def go_on(panel):
    """The reading of a sound set at the check that is asked."""
    check = panel.state.check
    if check.unit:
        enter(panel, SOUND[check.key.split()[0]])
    else:
        press(panel, FINE)


def walk_to(panel, key):
    while panel.state.check.key != key:
        go_on(panel)


def seen(panel):
    """The names of the buttons that are shown."""
    return {name for name, one in panel.buttons.items() if one.layout.display != "none"}


def test_the_first_card_says_what_to_do_without_power():
    panel = first_power_up()
    assert "1 of 14: before power, no power" in panel.card.value
    assert "Plug out" in panel.card.value
    assert seen(panel) == {FINE, WRONG, "cannot tell", HAND_ON, "back", "anew"}
    assert panel.reading.layout.display == "none"
    assert panel.buttons["back"].disabled and panel.buttons["anew"].disabled


def test_a_caution_of_mains_charge_and_fire_stands_there_at_every_card():
    panel = first_power_up()
    always = panel.children[-1].value
    for words in (
        "Mains current through the chest",
        "A charged capacitor gives",
        "bursts or burns",
    ):
        assert words in always.partition("<details")[0]
    assert "licensed practice" in panel.children[1].children[0].children[0].value


def test_a_sound_set_ends_in_verify_and_never_in_safe():
    panel = first_power_up()
    told = ""
    while panel.state.check:
        told += panel.card.value + panel.answer.value
        go_on(panel)
    assert panel.state.end == VERIFY and "Verify" in panel.card.value
    assert not re.search(r"\bsafe\b", told + panel.card.value, re.IGNORECASE)
    assert seen(panel) == {"back", "anew"}


def test_with_nothing_to_limit_the_current_it_ends_in_hand_on_before_power():
    panel = first_power_up(supply=NEITHER)
    while panel.state.check:
        assert "no power" in panel.card.value
        go_on(panel)
    assert panel.state.end == HAND_ON and "Hand on" in panel.card.value


def test_a_stop_holds_until_the_cause_is_written():
    panel = first_power_up()
    walk_to(panel, "ohms +5 V")
    enter(panel, "3 Ω")
    assert "Stop: ohms +5 V: 2.97 Ω to 3.03 Ω is below" in panel.answer.value.replace("\xa0", " ")
    assert seen(panel) == {CAUSE, HAND_ON, "back", "anew"} and panel.buttons["back"].disabled
    press(panel, "back", CAUSE)
    assert "no cause is written" in panel.answer.value and panel.state.stop
    panel.cause.value = "a cut lead under C13, taken out"
    press(panel, CAUSE)
    assert panel.state.check.key == "foreign metal" and panel.buttons["back"].disabled
    assert "a cut lead under C13" in panel.so_far.value


def test_under_power_a_stop_asks_for_power_off_first():
    panel = first_power_up()
    walk_to(panel, "power 2")
    assert "under power" in panel.card.value and POWER_OFF in seen(panel)
    enter(panel, "180 mA")
    assert seen(panel) == {POWER_OFF, "back", "anew"}
    assert "Power off, now" in panel.card.value
    press(panel, POWER_OFF)
    assert CAUSE in seen(panel)


def test_back_takes_one_reading_back_and_asks_for_a_new_one():
    panel = first_power_up()
    press(panel, FINE, FINE, "back")
    assert panel.state.check.key == "foreign metal" and len(panel.state.readings) == 1


@pytest.mark.parametrize("typed", ["abc", "OL", "", "5 V", "-3 Ω", "1,000"])
def test_what_cannot_be_read_is_told_in_one_line_and_stays(typed):
    panel = first_power_up()
    walk_to(panel, "ohms +5 V")
    before = panel.readings.value
    enter(panel, typed)
    assert "Not done" in panel.answer.value and "Accepted" in panel.answer.value
    assert "\n" not in panel.answer.value.strip()
    assert panel.reading.value == typed and panel.readings.value == before


def test_a_set_that_cannot_be_read_is_told_and_nothing_is_lost():
    panel = first_power_up()
    panel.setup["voltage"].value = "eleven"
    assert "eleven" in panel.answer.value and panel.state is None
    panel.buttons[FINE].click()
    panel.setup["voltage"].value = "9 V"
    assert panel.state.check.key == "dead"
    panel.setup["rails"].cells[0][1].value = "90 %"
    assert "row 1 of the rails" in panel.answer.value


def test_above_60_volts_it_is_handed_on_at_once():
    panel = first_power_up(voltage="70 V")
    assert panel.state.end == HAND_ON and "qualified person" in panel.card.value


def test_the_set_is_fixed_once_the_walk_has_begun_and_free_again_anew():
    panel = first_power_up()
    press(panel, FINE)
    assert panel.setup["voltage"].disabled and panel.setup["rails"].cells[0][0].disabled
    press(panel, "anew")
    assert panel.buttons["anew"].description == SURE and len(panel.state.readings) == 1
    press(panel, "anew")
    assert panel.buttons["anew"].description == ANEW and panel.state.readings == ()
    assert not panel.setup["voltage"].disabled


def test_the_walk_stands_where_it_stood_when_it_is_opened_again():
    panel = first_power_up()
    walk_to(panel, "ohms +5 V")
    panel.reading.value = "31"
    again = first_power_up()
    assert again.state == panel.state and again.reading.value == "31"
    following.turn_all()
    assert again.state == panel.state


@pytest.mark.parametrize("kept", ["{", "[1]", json.dumps([{"check": "fuse", "found": FINE}])])
def test_a_kept_walk_that_does_not_fit_is_told_and_can_be_begun_anew(kept):
    panel = first_power_up()
    panel.readings.value = kept
    assert "Not done" in panel.answer.value and panel.state is None
    press(panel, "anew", "anew")
    assert panel.state.check.key == "dead"


def test_the_lessons_values_cannot_wipe_a_walk():
    panel = first_power_up()
    panel.setup["current"].value = "0.2 A"
    press(panel, FINE)
    assert panel.keeping.again.disabled
    panel.keeping.again.click()
    assert len(panel.state.readings) == 1
