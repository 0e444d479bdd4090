"""What the quick check says on fitting a part, by what its marking can be on."""

import pytest

from repairlib.markings import read
from repairlib.recap import in_place_of


def said(marking: str) -> tuple[str, str]:
    place = in_place_of(read(marking)[0])
    return tuple(one.replace("\xa0", " ") for one in place)


@pytest.mark.common_practice
def test_aluminium_with_wires_goes_in_by_its_stripe():
    polar, fit = said("680µF 35V")
    assert polar == "Polar: the stripe on its side is the minus, the longer lead the plus."
    assert fit == "Fit 680 µF, 35 V or more, 105 °C, an aluminium part of the same build."


@pytest.mark.common_practice
def test_where_stripes_mean_opposite_things_both_are_said():
    polar, fit = said("33 25")
    assert "stripe of an aluminium part is its minus" in polar
    assert "bar of a tantalum part is its plus" in polar
    assert fit.startswith("As an aluminium part:")


@pytest.mark.common_practice
@pytest.mark.parametrize("marking", ["0.22µF X2 305V~", "4700pF Y2", "6µF 400V~"])
def test_a_line_part_is_replaced_by_its_like_only(marking):
    polar, fit = said(marking)
    assert polar == "Not polar: it goes in either way round."
    assert fit.startswith("Fit only") and "A qualified person does it." in fit


@pytest.mark.common_practice
def test_a_bipolar_part_never_becomes_a_polar_one():
    polar, fit = said("22uF 63V BP")
    assert polar.startswith("Not polar") and fit.endswith("never a polar one.")


@pytest.mark.common_practice
@pytest.mark.parametrize("marking", ["103", "15n", "0.1"])
def test_ceramic_and_film_go_in_either_way(marking):
    polar, fit = said(marking)
    assert polar.startswith(("Not polar", "Ceramic or film goes in either way"))
    assert "volts are not printed" in fit


def test_a_value_that_is_no_longer_made_is_not_asked_for():
    assert "Fit 47 µF, 63 V or more" in said("50uF 60V")[1]


@pytest.mark.parametrize("marking", ["1k5", "T1A", "brown black red gold", "X7R", "0.33F 5.5V"])
def test_what_is_no_ordinary_capacitor_gets_no_order(marking):
    place = in_place_of(read(marking)[0])
    assert place is None or place.fit.startswith("Not to be ordered yet")
