"""The exercise of lesson 03: its answers against their sources, in every variant."""

import pytest

from tests.documents import document
from tests.learn.asking import (
    VARIANTS,
    asked,
    asks_of,
    check,
    check_hints,
    marking_shown,
    variants_of,
)

questions, warm_up = asks_of("03-capacitor-markings")

CODE = document("KEMET ceramic ordering table", "two figures and a power of ten, in pF")
SMALL = document("KEMET ceramic ordering table", "a third figure 9 is x0.1, in pF")

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


@pytest.mark.published(f"{CODE}, worked by hand")
def test_disc_codes():
    check(variants_of(questions, "q1"), KEMET)


@pytest.mark.published(f"{CODE}; {document('Sanyo DP19649', 'K is 10 %')}")
def test_largest_value_that_agrees_with_the_marking():
    check(variants_of(questions, "q2"), LIMITS)


LETTER_CODES = {"p82 82p n33 3n3 µ1", "p47 4p7 n15 15n µ15", "p68 6p8 n22 22n 2µ2"}
LETTER_CODES |= {"p33 33p n47 4n7 µ22", "p56 5p6 n10 10n µ47", "p15 15p n68 6n8 1µ5"}
LETTER_CODES |= {"p22 2p2 n82 82n µ33", "p39 39p n27 27n 3µ3", "p12 1p2 n56 5n6 µ68"}
LETTER_CODES |= {"p27 27p n18 1n8 4µ7"}


@pytest.mark.published(document("IEC 60062:2016", "p, n and µ stand where the point is"))
def test_letter_codes_in_order():
    seen = set()
    for ask in variants_of(questions, "q3"):
        (order,) = (one for one in LETTER_CODES if set(one.split()) == set(ask.shown))
        assert ask.judge(" > ".join(order.split())).state == "right"
        seen.add(order)
    assert seen == LETTER_CODES


@pytest.mark.behaviour
def test_turned_order_of_letter_codes_gets_every_hint():
    for ask in variants_of(questions, "q3"):
        (order,) = (one for one in LETTER_CODES if set(one.split()) == set(ask.shown))
        assert len(ask.judge(" > ".join(reversed(order.split()))).says) == 3


@pytest.mark.common_practice
def test_plain_film_numbers_are_in_microfarad():
    check(variants_of(questions, "q4"), FILM)


# Printed: picofarad marked, picofarad measured
TINY = {"229C": (2.2, 2.4), "479C": (4.7, 4.5), "339C": (3.3, 3.5), "689C": (6.8, 6.6)}
TINY |= {"159C": (1.5, 1.7), "399C": (3.9, 3.7), "569C": (5.6, 5.8), "829C": (8.2, 8.0)}
TINY |= {"279C": (2.7, 2.5)}


@pytest.mark.published(f"{SMALL}; {document('Sanyo DP19649', 'C is 0.25 pF')}")
def test_part_below_ten_picofarad_is_good():
    seen = set()
    for ask in variants_of(questions, "q5"):
        marking = marking_shown(ask, TINY)
        marked, measured = TINY[marking]
        assert f"good meter: {measured} pF." in asked(ask)
        assert abs(measured - marked) <= 0.25  # pF; 0.25 % would be far less
        (right,) = (option for option in ask.options if ask.judge(option).state == "right")
        assert right.replace("\xa0", " ").startswith(f"It is good: {marked} pF ")
        seen.add(marking)
    assert seen == set(TINY)


@pytest.mark.published(document("Panasonic part number system", "voltage codes 1J 2A 2E 2G"))
def test_film_voltages():
    check(variants_of(questions, "q6"), PANASONIC)


@pytest.mark.common_practice
def test_danger_of_too_high_a_voltage():
    for ask in variants_of(questions, "q6"):
        assert ask.judge("1000 V").hazards == ("heat and fire",)


J_ON_TANTALUM = document("Panasonic TEH", "J is 6.3 V")
J_ON_A_CAN = document("Nichicon CD", "J is 63 V")


@pytest.mark.published(f"{J_ON_TANTALUM}; {J_ON_A_CAN}")
def test_letter_j_on_tantalum_and_on_a_can():
    seen = set()
    for ask in variants_of(questions, "q7"):
        on_can = "can" in ask.picture().alt
        assert ask.judge("63 V" if on_can else "6.3 V").state == "right"
        seen.add(on_can)
    assert seen == {True, False}


@pytest.mark.common_practice
def test_letter_j_of_the_other_body_is_dangerous_when_it_is_the_higher_one():
    for ask in variants_of(questions, "q7"):
        on_can = "can" in ask.picture().alt
        judged = ask.judge("6.3 V" if on_can else "63 V")
        assert judged.state == ("wrong" if on_can else "unsafe")


@pytest.mark.behaviour
def test_letter_j_read_as_a_tolerance_gets_a_hint():
    for ask in variants_of(questions, "q7"):
        assert ask.judge("5 V").says


# The most that a capacitance may change with temperature, %: 30 ppm/K over 100 K, and the letters.
CHANGE = {"C0G": 0.3, "X7R": 15, "Z5U": 56, "Y5V": 82}
LETTERS = document("EIA-198", "R is ±15 %, U is -56 %, V is -82 %")
C0G = "AVX, C0G (NP0) Dielectric, General Specifications: 0 ± 30 ppm/K"


@pytest.mark.published(f"{LETTERS}; {C0G}")
def test_steady_dielectric():
    for ask in variants_of(questions, "q8"):
        codes = {option[-3:]: option for option in ask.options}
        assert set(codes) == set(CHANGE)
        assert ask.judge(codes[min(CHANGE, key=CHANGE.get)]).state == "right"


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("name", "by_hand"), [("q1", KEMET), ("q2", LIMITS), ("q4", FILM), ("q6", PANASONIC)]
)
def test_hints_to_typical_mistakes(name, by_hand):
    check_hints(variants_of(questions, name), by_hand)


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
