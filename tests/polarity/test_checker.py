"""The checker: right, reversed, cannot tell; it answers everything and never guesses."""

from __future__ import annotations

from itertools import product

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.core.safety import HAZARDS
from repairlib.polarity import (
    FITTED,
    board_marks,
    check_polarity,
    families,
    marks_of,
    part_mark_names,
)

AT_THE_MARK, AT_THE_OTHER_END, NOT_DECIDED = FITTED
RADIAL = ("aluminium radial", "stripe with minus signs")


def verdict(family, mark, board, fitted=AT_THE_MARK, **second) -> str:
    return check_polarity(family, mark, board, fitted, **second).verdict


# Worked by hand: negative stripe, positive bar and so on against the board's mark.
@pytest.mark.parametrize(
    ("family", "mark", "board", "at_the_mark"),
    [
        ("aluminium radial", "stripe with minus signs", "plus sign", "reversed"),
        ("aluminium radial", "stripe with minus signs", "minus sign", "right"),
        ("aluminium radial", "longer lead", "plus sign", "right"),
        ("aluminium axial", "line with arrows", "plus sign", "reversed"),
        ("aluminium SMD can", "black segment on top", "plus sign", "reversed"),
        ("aluminium SMD can", "black segment on top", "two cut corners of the outline", "reversed"),
        ("moulded tantalum chip", "bar at one end", "plus sign", "right"),
        ("moulded tantalum chip", "bar at one end", "minus sign", "reversed"),
        ("dipped tantalum", "longer lead", "plus sign", "right"),
        ("polymer flat chip", "bar at one end", "plus sign", "right"),
        ("polymer round can", "coloured segment on top", "plus sign", "reversed"),
        ("diode", "band at one end", "letter A", "reversed"),
        ("diode", "band at one end", "bar of the diode symbol", "right"),
        ("Zener diode", "band at one end", "white bar", "right"),
        ("LED with leads", "longer lead", "plus sign", "right"),
        ("LED with leads", "longer lead", "flat side of the outline", "reversed"),
        ("bridge rectifier", "minus sign", "plus sign", "reversed"),
        ("IC", "notch at one end", "dot", "right"),
        ("connector", "triangle", "square pad", "right"),
    ],
)
def test_both_ways_round(family, mark, board, at_the_mark):
    other = {"right": "reversed", "reversed": "right"}[at_the_mark]
    assert verdict(family, mark, board, AT_THE_MARK) == at_the_mark
    assert verdict(family, mark, board, AT_THE_OTHER_END) == other
    assert verdict(family, mark, board, NOT_DECIDED) == "cannot tell"


@pytest.mark.parametrize(
    ("board", "where"), [("plus sign", "at the other end from"), ("minus sign", "at")]
)
def test_undecided_is_told_which_way(board, where):
    reason = check_polarity(*RADIAL, board).reason
    assert reason.endswith(f"So put the part's mark {where} the board's mark.")


@pytest.mark.parametrize("board", ["plus sign", "minus sign"])
@pytest.mark.parametrize("fitted", FITTED)
def test_bar_without_body_shape_cannot_be_told(board, fitted):
    finding = check_polarity("body shape not known", "bar or stripe at one end", board, fitted)
    assert finding.verdict == "cannot tell"
    assert "positive on a flat moulded chip and negative on a can" in finding.reason


@pytest.mark.parametrize("fitted", FITTED)
@pytest.mark.parametrize(
    ("family", "mark"),
    [("non-polar electrolytic", "NP or BP, no stripe"), ("film or ceramic capacitor", "no mark")],
)
def test_non_polar_part_in_a_polar_place_fits_but_is_flagged(family, mark, fitted):
    finding = check_polarity(family, mark, "plus sign", fitted)
    assert finding.verdict == "right"
    assert "polar part was meant here" in finding.reason
    assert "polar part was meant here" not in check_polarity(family, mark, "no mark").reason


@pytest.mark.parametrize("fitted", FITTED)
def test_polar_part_in_a_non_polar_place_is_refused(fitted):
    finding = check_polarity(*RADIAL, "NP or BP", fitted)
    assert finding.verdict == "cannot tell"
    assert finding.reason.startswith("Do not fit it.")


def test_half_filled_circle_alone_cannot_be_told_and_a_plus_decides():
    half = "filled or hatched half circle"
    assert verdict(*RADIAL, half) == "cannot tell"
    plus = {"also_on_board": "plus sign"}
    assert verdict(*RADIAL, half, also_on_board_at="other end", **plus) == "right"
    assert verdict(*RADIAL, half, also_on_board_at="same end", **plus) == "reversed"
    # Where the plus is was not said: nothing is assumed.
    assert verdict(*RADIAL, half, **plus) == "cannot tell"


def test_marks_that_contradict_each_other():
    part = {"also_on_part": "longer lead", "also_on_part_at": "same end"}
    board = {"also_on_board": "minus sign", "also_on_board_at": "same end"}
    for second in (part, board):
        finding = check_polarity(*RADIAL, "plus sign", AT_THE_OTHER_END, **second)
        assert finding.verdict == "cannot tell"
        assert "contradict" in finding.reason
    agreeing = {"also_on_part": "shorter lead", "also_on_part_at": "same end"}
    assert verdict(*RADIAL, "plus sign", AT_THE_OTHER_END, **agreeing) == "right"


@pytest.mark.parametrize("family", ["film or ceramic capacitor", "non-polar electrolytic"])
def test_stripe_on_a_non_polar_part_is_not_waved_through(family):
    mark = next(iter(marks_of(family)))
    stripe = {"also_on_part": "stripe with minus signs", "also_on_part_at": "same end"}
    assert verdict(family, mark, "no mark", **stripe) == "cannot tell"
    assert verdict(family, "stripe with minus signs", "no mark") == "cannot tell"


@pytest.mark.parametrize("mark", ["nothing seen", "something else"])
@pytest.mark.parametrize("family", families())
def test_unknown_mark_on_the_part(family, mark):
    assert verdict(family, mark, "plus sign") == "cannot tell"


@pytest.mark.parametrize("board", ["letter K", "letter A", "bar of the diode symbol"])
def test_a_diode_place_for_a_capacitor(board):
    for family, mark in (RADIAL, ("film or ceramic capacitor", "no mark")):
        finding = check_polarity(family, mark, board, AT_THE_MARK)
        assert finding.verdict == "cannot tell"
        assert "right place" in finding.reason


def test_everything_gets_a_verdict_a_reason_and_what_follows():
    seen = set()
    for family, mark, board, fitted in product(
        families(), part_mark_names(), board_marks(), FITTED
    ):
        finding = check_polarity(family, mark, board, fitted)
        seen.add(finding.verdict)
        assert finding.verdict in ("right", "reversed", "cannot tell")
        assert finding.reason.strip() and finding.if_wrong.strip() and finding.look_at.strip()
        assert finding.sources and set(finding.cautions) <= set(HAZARDS) and finding.cautions
        if mark not in marks_of(family):
            assert finding.verdict == "cannot tell", (family, mark, board, fitted)
    assert seen == {"right", "reversed", "cannot tell"}


def test_reversed_is_the_opposite_of_right_everywhere():
    """Turning a part round changes right to reversed, unless it has no polarity."""
    for family, mark, board in product(families(), part_mark_names(), board_marks()):
        one, two = (verdict(family, mark, board, way) for way in (AT_THE_MARK, AT_THE_OTHER_END))
        if families()[family].either_way:
            assert one == two != "reversed"
        else:
            assert {one, two} in ({"right", "reversed"}, {"cannot tell"})


@pytest.mark.parametrize("family", [name for name, kind in families().items() if kind.is_capacitor])
def test_capacitors_carry_the_caution_of_stored_charge(family):
    mark = next(iter(marks_of(family)))
    cautions = check_polarity(family, mark, "plus sign").cautions
    assert "stored charge" in cautions and "flying leads and eyes" in cautions


def test_bridge_rectifier_warns_of_mains():
    assert "mains" in check_polarity("bridge rectifier", "plus sign", "plus sign").cautions


@pytest.mark.parametrize("place", range(4))
def test_a_word_that_is_not_a_choice(place):
    words = [*RADIAL, "plus sign", AT_THE_MARK]
    words[place] = "stripe\x00"
    with pytest.raises(RepairlibError, match="Accepted"):
        check_polarity(*words)


@pytest.mark.common_practice
@pytest.mark.parametrize("name", ["plus sign", "white bar", "square pad", "no mark"])
def test_ground_is_not_called_negative_on_a_negative_rail(name):
    """Between ground and a negative rail the pad joined to ground is the positive one."""
    finding = check_polarity(*RADIAL, name)
    assert "on a negative rail that pad is the positive one" in finding.look_at
    assert "On a negative rail that side is ground." in finding.notes[0]
