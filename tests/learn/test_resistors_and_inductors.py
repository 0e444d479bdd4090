"""The exercise of lesson 02: its answers against their sources, in every variant."""

import pytest

from tests.documents import document
from tests.learn.asking import VARIANTS, asks_of, check, check_hints, variants_of

questions, warm_up = asks_of("02-resistors-and-inductors")

CARD = document("Vishay colour card", "figures, multipliers and tolerances, worked by hand")
PLACE = "place in the E96 list, then the letter of its multiplier"
LISTS = "; ".join(map(document, ("State of the Art", "TRU Components", "WFxxR approval sheet")))
RKM = document("IEC 60062:2016", "R, K and M stand where the point is")


# What each drawn part means, worked by hand: answer, then a wrong one and what its hint says.
FOUR = {
    "gold, red, violet, yellow": ("4.7 kΩ", "270 kΩ", "wrong end"),
    "gold, orange, blue, green": ("56 kΩ", "563 Ω", "third band as a figure"),
    "gold, yellow, green, brown": ("150 kΩ", "450 Ω", "wrong end"),
    "gold, red, grey, blue": ("6.8 kΩ", "28 MΩ", "wrong end"),
    "gold, brown, white, orange": ("390 Ω", "19 kΩ", "wrong end"),
    "gold, orange, red, red": ("22 kΩ", "3.2 kΩ", "wrong end"),
    "gold, brown, blue, orange": ("360 Ω", "16 kΩ", "wrong end"),
    "gold, orange, brown, green": ("51 kΩ", "513 Ω", "third band as a figure"),
    "gold, green, red, brown": ("1.2 MΩ", "520 Ω", "wrong end"),
}
GOLD = {
    "red, violet, gold, gold": ("2.7 Ω", "27 Ω", "took gold for a figure"),
    "brown, green, gold, gold": ("1.5 Ω", "150 Ω", "took gold for a figure"),
    "yellow, violet, gold, gold": ("4.7 Ω", "47 Ω", "took gold for a figure"),
    "green, blue, gold, gold": ("5.6 Ω", "5.6 kΩ", "took gold for a figure"),
    "orange, orange, gold, gold": ("3.3 Ω", "33 Ω", "took gold for a figure"),
    "blue, grey, gold, gold": ("6.8 Ω", "680 Ω", "took gold for a figure"),
    "grey, red, gold, gold": ("8.2 Ω", "82 Ω", "took gold for a figure"),
    "brown, red, gold, gold": ("1.2 Ω", "12 Ω", "took gold for a figure"),
}
LIMITS = {
    "yellow, white, white, brown, brown": ("5.0399 kΩ", "4.99 kΩ", "the value itself"),
    "red, red, blue, brown, brown": ("2282.6", "2373", "another tolerance"),
    "orange, grey, orange, orange, brown": ("386.83 kΩ", "38 kΩ", "not the zeros"),
    "green, brown, brown, black, brown": ("516.11", "521.22", "another tolerance"),
    "brown, brown, orange, red, brown": ("11.413 kΩ", "11 kΩ", "not the zeros"),
    "blue, grey, brown, brown, brown": ("6.8781 kΩ", "6.81 kΩ", "the value itself"),
    "grey, red, green, black, brown": ("833.25", "866.25", "another tolerance"),
    "brown, violet, grey, orange, brown": ("179.78 kΩ", "181.56 kΩ", "another tolerance"),
}
CHIPS = {
    "472": ("4.7 kΩ", "472 Ω", "plain number of ohms"),
    "103": ("10 kΩ", "103", "plain number of ohms"),
    "220": ("22 Ω", "220 Ω", "plain number of ohms"),
    "331": ("330 Ω", "330 kΩ", "In what does a chip count"),
    "564": ("560 kΩ", "564", "plain number of ohms"),
    "183": ("18 kΩ", "18 MΩ", "In what does a chip count"),
    "822": ("8.2 kΩ", "822", "plain number of ohms"),
    "151": ("150 Ω", "150 kΩ", "In what does a chip count"),
    "274": ("270 kΩ", "274 Ω", "plain number of ohms"),
    "390": ("39 Ω", "390 Ω", "plain number of ohms"),
}
PLACES = {
    "68C": ("49.9 kΩ", "6.8 kΩ", "a place in the list"),
    "02C": ("10.2 kΩ", "102 Ω", "What does the letter"),
    "85X": ("75 Ω", "8.5 Ω", "a place in the list"),
    "25D": ("178 kΩ", "25 kΩ", "a place in the list"),
    "51B": ("3.32 kΩ", "332 Ω", "What does the letter"),
    "93C": ("90.9 kΩ", "9.3 kΩ", "a place in the list"),
    "18D": ("150 kΩ", "150 Ω", "What does the letter"),
    "30B": ("2 kΩ", "300 Ω", "a place in the list"),
}
LETTERS = {
    "33KK": ("36.3 kΩ", "33 kΩ", "the value itself"),
    "4K7K": ("5.17 kΩ", "4.7 MΩ", "took the last letter for thousand"),
    "2R2K": ("2.42 Ω", "2.2 kΩ", "took the last letter for thousand"),
    "10KK": ("11 kΩ", "10.5 kΩ", "another letter's tolerance"),
    "6K8K": ("7.48 kΩ", "6.8 kΩ", "the value itself"),
    "1R5K": ("1.65 Ω", "1.5 kΩ", "took the last letter for thousand"),
    "82KK": ("90.2 kΩ", "86.1 kΩ", "another letter's tolerance"),
    "3K9K": ("4.29 kΩ", "3.9 MΩ", "took the last letter for thousand"),
}
INDUCTORS = {
    "brown, green, red, silver": ("1.5 mH", "1.5 µH", "counted in nH"),
    "red, violet, brown, gold": ("270 µH", "270 nH", "counted in nH"),
    "yellow, violet, black, silver": ("47 µH", "47 H", "forgot the unit"),
    "red, red, orange, silver": ("22 mH", "22 µH", "counted in nH"),
    "orange, orange, brown, gold": ("330 µH", "330 nH", "counted in nH"),
    "blue, grey, black, silver": ("68 µH", "68 H", "forgot the unit"),
    "brown, red, red, gold": ("1.2 mH", "1.2 µH", "counted in nH"),
    "grey, red, brown, gold": ("820 µH", "820 nH", "counted in nH"),
}


@pytest.mark.published(CARD)
def test_four_bands_that_lie_turned_round():
    check(variants_of(questions, "q1"), FOUR)


@pytest.mark.published(CARD)
def test_gold_in_the_third_place():
    check(variants_of(questions, "q2"), GOLD)


@pytest.mark.published(CARD)
def test_limit_of_five_bands():
    check(variants_of(questions, "q3"), LIMITS)


@pytest.mark.published(CARD)
def test_meter_tells_the_end():
    by_hand = {
        "brown, black, black, red, brown": "120 Ω",
        "brown, green, black, red, brown": "15 kΩ",
    }
    by_hand["brown, black, black, brown, brown"] = "110 Ω"
    by_hand["brown, red, black, brown, brown"] = "1.2 kΩ"
    by_hand["brown, orange, black, red, brown"] = "120 kΩ"
    by_hand["brown, black, black, orange, brown"] = "130 Ω"
    by_hand["brown, green, black, brown, brown"] = "1.5 kΩ"
    seen = set()
    for ask in variants_of(questions, "q4"):
        (bands,) = (one for one in by_hand if f": {one}." in ask.picture().alt)
        (right,) = (option for option in ask.options if ask.judge(option).state == "right")
        assert f" {by_hand[bands]} resistor" in right.replace("\xa0", " ")
        seen.add(bands)
    assert seen == set(by_hand)


@pytest.mark.behaviour
def test_the_part_whose_end_the_meter_told_is_good():
    for ask in variants_of(questions, "q4"):
        assert ask.answer.startswith("It is a ") and ask.answer.endswith(" resistor, and good")


@pytest.mark.published(document("NIC chip marking guide", "two figures, then a power of ten"))
def test_chip_of_three_figures():
    check(variants_of(questions, "q5"), CHIPS)


@pytest.mark.published(f"{LISTS}: {PLACE}")
def test_place_and_letter():
    check(variants_of(questions, "q6"), PLACES)


@pytest.mark.published(f"{document('Sanyo DP19649', 'K is 10 %')}; {RKM}")
def test_two_letters():
    check(variants_of(questions, "q7"), LETTERS)


@pytest.mark.published(document("Token inductor colour code", "figures and multiplier, in µH"))
def test_inductor_bands_count_in_microhenry():
    check(variants_of(questions, "q8"), INDUCTORS)


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("name", "by_hand"),
    [
        ("q1", FOUR),
        ("q2", GOLD),
        ("q3", LIMITS),
        ("q5", CHIPS),
        ("q6", PLACES),
        ("q7", LETTERS),
        ("q8", INDUCTORS),
    ],
)
def test_hints_to_typical_mistakes(name, by_hand):
    check_hints(variants_of(questions, name), by_hand)


@pytest.mark.common_practice
def test_a_fuse_is_replaced_by_the_same_rating_and_class():
    seen = set()
    for ask in variants_of(questions, "q9"):
        (right,) = (option for option in ask.options if ask.judge(option).state == "right")
        assert f"Printed on it: {right}." in ask.picture().alt
        states = sorted(ask.judge(option).state for option in ask.options)
        assert states == ["right", "unsafe", "unsafe", "unsafe", "wrong"]
        seen.add(right)
    assert seen == {"T1AL250V", "T3.15AH250V", "T500mAL250V"}


@pytest.mark.common_practice
def test_a_fusible_resistor_is_replaced_by_a_fusible_one_only():
    for ask in variants_of(questions, "q10"):
        (right,) = (option for option in ask.options if ask.judge(option).state == "right")
        assert "fusible" in right and right.startswith("Find why")
        states = sorted(ask.judge(option).state for option in ask.options)
        assert states == ["right", "unsafe", "unsafe", "unsafe"]
        assert ask.judge(ask.options[0]).hazards in ((), ("heat and fire",))


def test_practice_answers_are_among_what_can_be_typed():
    for draw in VARIANTS:
        for ask in warm_up(draw):
            assert ask.hint and (ask.picture is None or ask.picture().alt)
