"""Values to bands and codes and back: every E192 value, every tolerance, either end.

These come on top of the published values, never instead.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.core.series import E_SERIES
from repairlib.markings import (
    read,
    what_else,
    write_bands,
    write_chip_code,
    write_e96_code,
    write_inductor_bands,
    write_inductor_code,
    write_resistor_code,
)
from tests.documents import document

FIVE_BANDS = [0.01, 0.02, 0.05, 0.1, 0.25, 0.5, 1, 2, 5, 10]  # percent
FOUR_BANDS = [*FIVE_BANDS, 20]
COEFFICIENTS = [250, 100, 50, 15, 25, 20, 10, 5, 1]
CARD = document("Vishay colour card", "figures, multipliers and tolerances, worked by hand")
OLDER = document("IEC 60062:2005", "no tolerance band is 20 %")


def values(series, powers):
    return [float(f"{figures}e{power}") for figures in E_SERIES[series] for power in powers]


def has(readings, value, percent, kind="resistor"):
    return any(
        one.kind == kind
        and one.value == pytest.approx(value, rel=1e-12)
        and one.tolerance.high == pytest.approx(percent / 100)
        for one in readings
    )


@pytest.mark.parametrize("percent", FIVE_BANDS)
def test_every_e192_value_comes_back_from_either_end(percent):
    for value in values("E192", (-2, 0, 3, 6)):
        bands = write_bands(value, percent / 100, 5)
        turned = "-".join(bands.split("-")[::-1])
        assert has(read(bands, part="resistor")[:3], value, percent), bands
        assert has(read(turned, part="resistor"), value, percent), turned
        forward = next(one for one in read(bands, part="resistor") if one.value == value)
        assert not forward.doubt


@pytest.mark.parametrize("percent", FOUR_BANDS)
def test_every_e24_value_comes_back_from_either_end(percent):
    for value in values("E24", range(-2, 8)):
        bands = write_bands(value, percent / 100, 3 if percent == 20 else 4)
        turned = "-".join(bands.split("-")[::-1])
        assert has(read(bands, part="resistor"), value, percent), bands
        assert has(read(turned, part="resistor"), value, percent), turned


@pytest.mark.parametrize("ppm", COEFFICIENTS)
def test_six_bands_come_back_from_either_end(ppm):
    for value in values("E192", (0, 2)):
        bands = write_bands(value, 0.01, tempco=ppm)
        for text in (bands, "-".join(bands.split("-")[::-1])):
            readings = [one for one in read(text, part="resistor") if one.value == value]
            assert ppm in [one.carries["tempco"] for one in readings]


def test_where_both_ends_read_the_made_value_is_never_behind_a_doubt():
    for value in values("E192", (0, 2)):
        bands = write_bands(value, 0.005, 5)
        first = read(bands, part="resistor")[0]
        turned = read("-".join(bands.split("-")[::-1]), part="resistor")
        assert not first.doubt
        place = next(i for i, one in enumerate(turned) if one.value == value)
        assert not any(one.doubt for one in turned[: place + 1])


@pytest.mark.parametrize("letter", ["", *"ELPWBCDFGHJKMN"])
def test_every_e192_value_as_a_letter_code(letter):
    for value in values("E192", (-3, -2, -1, 0, 2, 4, 6)):
        code = write_resistor_code(value, letter)
        meanings = [one.value for one in read(code, part="resistor")]
        assert value in meanings, code


def test_every_chip_code_comes_back():
    for value in values("E192", range(-3, 5)):
        code = write_chip_code(value, 4)
        assert value in [one.value for one in read(code, part="chip-resistor")], code
    for value in values("E24", range(-2, 6)):
        code = write_chip_code(value, 3)
        assert value in [one.value for one in read(code, part="chip-resistor")], code
    for value in values("E96", range(-3, 5)):
        code = write_e96_code(value)
        assert read(code, part="chip-resistor")[0].value == pytest.approx(value, rel=1e-12), code


@pytest.mark.parametrize("letter", ["", *"FGJKLMV"])
def test_every_inductor_code_comes_back(letter):
    for value in values("E24", range(-10, -3)):
        code = write_inductor_code(value, letter)
        meanings = [one.value for one in read(code, part="inductor")]
        assert any(one == pytest.approx(value, rel=1e-9) for one in meanings), code


@pytest.mark.parametrize("percent", [5, 10])
def test_every_inductor_band_comes_back(percent):
    for value in values("E24", range(-8, -2)):
        bands = write_inductor_bands(value, percent / 100)
        assert any(
            one.value == pytest.approx(value, rel=1e-9)
            for one in read(bands, part="inductor")
            if one.tolerance.high == pytest.approx(percent / 100)
        )


@pytest.mark.published(CARD)
@pytest.mark.parametrize(
    ("ohm", "tolerance", "bands"),
    [
        (4700, 0.05, "yellow-violet-red-gold"),
        (1.5, 0.05, "brown-green-gold-gold"),
        (0.27, 0.05, "red-violet-silver-gold"),
        (4990, 0.01, "yellow-white-white-brown-brown"),
        (5.11, 0.01, "green-brown-brown-silver-brown"),
        (2430, 0.0025, "red-yellow-orange-brown-blue"),
    ],
)
def test_bands_by_name(ohm, tolerance, bands):
    assert write_bands(ohm, tolerance) == bands


@pytest.mark.published(OLDER)
def test_twenty_percent_has_no_band():
    assert write_bands(1e6, 0.2) == "brown-black-green"


@given(st.floats(allow_nan=True), st.floats(), st.integers(-1, 8), st.integers(-1, 300))
def test_any_numbers_give_bands_or_one_clear_error(ohm, tolerance, count, tempco):
    for write in (
        lambda: write_bands(ohm, tolerance, count, tempco),
        lambda: write_chip_code(ohm, count),
        lambda: write_resistor_code(ohm),
        lambda: write_e96_code(ohm),
        lambda: write_inductor_code(ohm),
        lambda: write_inductor_bands(ohm, tolerance),
    ):
        try:
            assert write()
        except RepairlibError as error:
            assert error.accepted


@pytest.mark.parametrize(
    ("arguments", "wrong"),
    [
        ((4990, 0.05, 4), "4 bands hold 2 figures"),
        ((4700, 0.03), "no band has this tolerance"),
        ((4700, 0.05, 7), "no resistor has so many bands"),
        ((4700, 0.01, 6), "go together"),
        ((4700, 0.01, 6, 7), "no band has this temperature"),
        ((-1,), "not a value"),
        ((1e12,), "cannot say this"),
    ],
)
def test_what_bands_cannot_say(arguments, wrong):
    with pytest.raises(RepairlibError, match=wrong):
        write_bands(*arguments)


@pytest.mark.common_practice
def test_burnt_red_may_have_been_brown_or_orange():
    changes = {change: one.value for change, one in what_else("yellow-violet-red-gold")}
    assert changes["band 3 brown, not red"] == 470
    assert changes["band 3 orange, not red"] == 47000


@pytest.mark.common_practice
def test_grey_and_white_are_taken_for_each_other():
    changes = {change: one.value for change, one in what_else("grey-red-black-gold")}
    assert "band 1 white, not grey" not in changes  # 92 is not made
    changes = {change: one.value for change, one in what_else("blue-white-red-gold")}
    assert changes["band 2 grey, not white"] == 6800


def test_what_else_names_the_word_that_is_no_colour():
    with pytest.raises(RepairlibError, match="'mauve' is not a colour"):
        what_else("mauve-red-red")
