"""The bar goes where the board and the meter say, and nowhere when they say nothing."""

from itertools import product

import pytest

from repairlib.missing_parts.tantalum_bar import GROUNDED, MARKED, OTHER, bar_of
from repairlib.polarity import board_marks
from tests.documents import document

BAR = document("Panasonic TEH", "the polarity bar is at the + side")


@pytest.mark.published(BAR)
@pytest.mark.parametrize(("mark_at", "other"), OTHER.items())
def test_the_bar_goes_to_the_plus(mark_at, other):
    assert bar_of(5, "plus sign", mark_at, other).pad == mark_at
    assert bar_of(5, "minus sign", mark_at, mark_at).pad == other


@pytest.mark.common_practice
@pytest.mark.parametrize("rail", [0.9, 3.3, 48.0])
def test_ground_is_the_minus_and_on_a_negative_rail_the_plus(rail):
    for ground, other in OTHER.items():
        assert bar_of(rail, ground_at=ground).pad == other
        assert bar_of(-rail, ground_at=ground).pad == ground


@pytest.mark.behaviour
def test_print_alone_still_asks_for_the_meter():
    by_print, by_meter = bar_of(5, "plus sign", "left pad"), bar_of(5, ground_at="right pad")
    assert by_print.pad == by_meter.pad == "left pad"
    assert not by_print.proven and "meter" in by_print.next
    assert by_meter.proven and not by_meter.next


@pytest.mark.behaviour
def test_a_voltage_decides_where_no_pad_is_ground():
    assert bar_of(12, ground_at="neither pad").pad == ""
    assert bar_of(12, ground_at="neither pad", across=-11.8).pad == "right pad"
    assert bar_of(12, ground_at="neither pad", across=0.4).pad == ""


@pytest.mark.common_practice
def test_a_rail_that_is_shorted_is_no_witness():
    for mark in ("no mark", "plus sign"):
        bar = bar_of(3.3, mark, "left pad", "both pads")
        assert bar.pad == "" and "short circuit, to be found first" in bar.why[-1]
        assert bar.next.startswith("fit nothing")


@pytest.mark.behaviour
def test_witnesses_that_contradict_each_other_decide_nothing():
    for bar in (
        bar_of(5, "plus sign", "left pad", "left pad"),
        bar_of(5, ground_at="right pad", across=-5.0),
        bar_of(-12, "plus sign", "left pad", "right pad"),
    ):
        assert bar.pad == ""
        assert bar.why[-1] == "These contradict each other."
        assert bar.next.startswith("fit nothing")


@pytest.mark.behaviour
def test_never_a_pad_without_a_witness():
    """Every mark at every pad, without a meter: only a plus or a minus that was placed decides."""
    for mark, at in product(board_marks(), MARKED):
        bar = bar_of(5, mark, at)
        assert bool(bar.pad) == (mark in ("plus sign", "minus sign") and at in OTHER)
        assert bar.why and bar.next
    assert bar_of(5).pad == "" and "Nothing on the board" in bar_of(5).why[0]


@pytest.mark.behaviour
def test_a_pad_is_told_only_when_all_witnesses_agree():
    for mark, at, ground, volts in product(
        ("no mark", "plus sign", "minus sign", "white bar"), MARKED, GROUNDED, (None, -5.0, 5.0)
    ):
        pad = bar_of(5, mark, at, ground, volts).pad
        said = set()
        if at in OTHER and mark in ("plus sign", "minus sign"):
            said.add(at if mark == "plus sign" else OTHER[at])
        said |= {OTHER[ground]} if ground in OTHER else set()
        said |= {"left pad" if volts > 0 else "right pad"} if volts else set()
        alone = len(said) == 1 and ground != "both pads"
        assert pad == (said.pop() if alone else "")
