"""The exercise of lesson 03: its answers against their sources, in every variant."""

import pytest

from tests.learn.asking import VARIANTS, asks_of, check, variants_of

questions, warm_up = asks_of("03-capacitor-markings")

# What each drawn marking means, worked by hand: answer, then a wrong one and what its hint says.
KEMET = {
    "473": ("47 nF", "473 pF", "all three figures"),
    "224": ("220 nF", "220 µF", "in which unit"),
    "681": ("680 pF", "681 pF", "all three figures"),
    "152": ("1.5 nF", "1.5 µF", "in which unit"),
    "333": ("33 nF", "33 µF", "in which unit"),
    "822": ("8.2 nF", "822 pF", "all three figures"),
    "154": ("150 nF", "150 µF", "in which unit"),
    "331": ("330 pF", "330 nF", "in which unit"),
    "563": ("56 nF", "563 pF", "all three figures"),
    "272": ("2.7 nF", "2.7 µF", "in which unit"),
}
LIMITS = {
    "473K": ("51.7 nF", "473 nF", "K as thousand"),
    "224K": ("242 nF", "224 nF", "K as thousand"),
    "103K": ("11 nF", "10 nF", "the value itself"),
    "683K": ("74.8 nF", "71.4 nF", "another letter's tolerance"),
    "334K": ("363 nF", "396 nF", "another letter's tolerance"),
    "153K": ("16.5 nF", "15 nF", "the value itself"),
    "472K": ("5.17 nF", "472 nF", "K as thousand"),
    "104K": ("110 nF", "105 nF", "another letter's tolerance"),
}
PANASONIC = {
    "2E473K": ("250 V", "25 V", "power of ten"),
    "2A104J": ("100 V", "1 V", "power of ten"),
    "1J224K": ("63 V", "6.3 V", "power of ten"),
    "2G333K": ("400 V", "4 V", "power of ten"),
}
FILM = {
    ".022, 400": ("22 nF", "0.022 nF", "another unit"),
    ".1, 250": ("0.1 µF", "250 pF", "the rated voltage"),
    ".47, 100": ("0.47 µF", "0.47 pF", "without a point"),
    ".0068, 630": ("6.8 nF", "0.0068 nF", "another unit"),
    ".033, 400": ("33 nF", "0.033 pF", "without a point"),
    ".22, 160": ("220 nF", "160 pF", "the rated voltage"),
    ".0047, 1000": ("4.7 nF", "0.0047 nF", "another unit"),
    ".015, 600": ("15 nF", "0.015 nF", "another unit"),
}


@pytest.mark.published("KEMET ceramic open-mode data sheet, ordering table")
def test_disc_codes():
    check(variants_of(questions, "q1"), KEMET)


@pytest.mark.published("Sanyo DP19649 service manual, page 41 (2009): K is 10 %")
def test_largest_value_that_agrees_with_the_marking():
    check(variants_of(questions, "q2"), LIMITS)


@pytest.mark.published("IEC 60062, letter code for capacitance, as quoted in an encyclopaedia")
def test_letter_codes_in_order():
    by_hand = {"p82 82p n33 3n3 µ1", "p47 4p7 n15 15n µ15", "p68 6p8 n22 22n 2µ2"}
    seen = set()
    for ask in variants_of(questions, "q3"):
        (order,) = (one for one in by_hand if set(one.split()) == set(ask.shown))
        assert ask.judge(" > ".join(order.split())).state == "right"
        turned = " > ".join(reversed(order.split()))
        assert len(ask.judge(turned).says) == 3
        seen.add(order)
    assert seen == by_hand


@pytest.mark.common_practice
def test_plain_film_numbers_are_in_microfarad():
    check(variants_of(questions, "q4"), FILM)


@pytest.mark.published("Sanyo DP19649 service manual, page 41 (2009): C is 0.25 pF")
def test_part_below_ten_picofarad_is_good():
    for ask in variants_of(questions, "q5"):
        right = [option for option in ask.options if ask.judge(option).state == "right"]
        assert len(right) == 1 and right[0].startswith("It is good")


@pytest.mark.published("Panasonic radial aluminium, part number system, voltage codes")
def test_film_voltages_and_the_danger_of_too_high_a_reading():
    check(variants_of(questions, "q6"), PANASONIC)
    for ask in variants_of(questions, "q6"):
        assert ask.judge("1000 V").hazards == ("heat and fire",)


@pytest.mark.published("Panasonic TEH data sheet (tantalum); Nichicon CD data sheet (can)")
def test_letter_j_on_tantalum_and_on_a_can():
    seen = set()
    for ask in variants_of(questions, "q7"):
        on_can = "can" in ask.picture().alt
        right, other = ("63 V", "6.3 V") if on_can else ("6.3 V", "63 V")
        assert ask.judge(right).state == "right"
        assert ask.judge(other).state == ("wrong" if on_can else "unsafe")
        assert ask.judge("5 V").says
        seen.add(on_can)
    assert seen == {True, False}


@pytest.mark.published("TI SLAA701B, Table 1-16 (X7R, Y5V, Z5U); AVX C0G general specifications")
def test_steady_dielectric():
    for ask in variants_of(questions, "q8"):
        assert [option[-3:] for option in ask.options if ask.judge(option).state == "right"] == [
            "C0G"
        ]


@pytest.mark.common_practice
def test_replacement_is_never_rated_lower():
    by_hand = {"470µF, 25V": ("470", "35 V"), "220µF, 35V": ("220", "50 V")}
    by_hand["1000µF, 16V"] = ("1000", "25 V")
    for ask in variants_of(questions, "q9"):
        farads, volts = next(by_hand[one] for one in by_hand if one in ask.picture().alt)
        (right,) = (option for option in ask.options if ask.judge(option).state == "right")
        assert right.replace("\xa0", " ") == f"{farads} µF, {volts}"
        states = sorted(ask.judge(option).state for option in ask.options)
        assert states == ["right", "unsafe", "wrong", "wrong"]


def test_practice_answers_are_among_what_can_be_typed():
    for draw in VARIANTS:
        for ask in warm_up(draw):
            assert ask.picture().alt and ask.hint
