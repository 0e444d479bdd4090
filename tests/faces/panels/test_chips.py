"""Which chip holds the firmware: the ranking is shown, the supply comes first, nothing is lost."""

import pytest

from repairlib.faces.panels import which_chip
from repairlib.faces.shown.chips import series_of


def plain(panel):
    return panel.answer.value.replace("\xa0", " "), panel.supply.value.replace("\xa0", " ")


def test_the_demo_board():
    answer, supply = plain(which_chip())
    assert answer.startswith("<div") and "Begin with U4" in answer
    assert answer.index("1. U4: very likely") < answer.index("2. ") < answer.index("3. ")
    first = answer.partition("2. ")[0]
    assert first.count("pin 1 (chip select) rests high") == 1
    assert "cannot tell" in supply and "nothing that was given tells the supply" in supply
    assert "25-series from above" in supply and "8 VCC" in supply
    assert "1 CS: chip select" in supply and "8 VCC: supply: 1.8 V, 3.3 V or 5 V" in supply
    assert "The wrong supply kills a memory chip" in supply


@pytest.mark.parametrize(
    ("supply", "programmer", "verdict"),
    [
        ("", "3.3 V", "cannot tell"),
        ("3.3 V", "3.3 V", "only with these conditions"),
        ("3.3 V", "5 V", "do not"),
        ("1.8 V", "3.3 V", "do not"),
        ("3.3 V", "", "only with these conditions"),
    ],
)
def test_the_supply_is_judged_before_anything_is_connected(supply, programmer, verdict):
    line = (
        f"U4: 25Q64FW, 8 pins, 208 mil, {supply}" if supply == "1.8 V" else f"U4: 25VF064, {supply}"
    )
    shown = plain(which_chip(line, programmer))[1]
    assert "Before anything is connected to U4" in shown and f"{verdict}:" in shown
    assert "safe" not in shown.partition("⚠")[0]


def test_a_chip_of_which_nothing_tells_the_supply():
    shown = plain(which_chip("U4: 8 pins, 208 mil", ""))[1]
    assert "U4: its supply is not known" in shown and "<img" not in shown


def test_leads_are_drawn_in_the_width_that_was_measured():
    assert "A chip of 208 mil on" in plain(which_chip("U5: 24C02, 5.3 mm wide"))[1]
    shown = plain(which_chip("U5: 24C02"))[1]
    assert "A chip of 150 mil on" in shown and "Its width was not given" in shown
    assert "<img" not in plain(which_chip("U5: 25Q128, 16 pins"))[1]
    assert series_of(["93C46"]) == "93-series" and series_of(["27C256"]) == ""


def test_what_cannot_be_read_stays_and_is_said():
    panel = which_chip("U4: 25Q64, flumph wizzle")
    assert "Not understood, and left out" in panel.answer.value and "flumph" in panel.answer.value
    for typed in ("", "# only a note", "U4: a\nU4: b", "<b>x" * 200):
        panel.seen.value = typed
        assert "Not done" in panel.answer.value and "<b>x" not in panel.answer.value
        assert panel.seen.value == typed and panel.supply.value == ""
    panel.seen.value = "<b>U4</b>: 25Q64, <i>wizzle</i>"
    assert "<b>U4" not in panel.answer.value + panel.supply.value
    panel.programmer.value = "three"
    assert "Not done" in panel.answer.value and panel.programmer.value == "three"
