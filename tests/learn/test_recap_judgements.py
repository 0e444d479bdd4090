"""The judgements of lesson 07: their answers worked by hand from the sources, in every variant."""

import pytest

from repairlib.learn.questions.plan_a_recap import how_many_to_order
from repairlib.learn.questions.recap_judgements import GO, MORE, STAY, tantalum_rating, worn_or_not
from tests.documents import document
from tests.learn.asking import VARIANTS, asked, hazards

ENDURANCE = document("Lelon RGA", "tan δ by rating; endurance: ±20 %, 200 % of tan δ")

# By hand from RGA: tan δ 0.14 at 25 V, 0.16 at 16 V; ESR = tan δ / (2 π 120 Hz C); worn at 200 %:
# 100 µF 25 V: 1.857 and 3.71 Ω; 220 µF 16 V: 0.9646 and 1.929 Ω; 47 µF 16 V: 4.515 and 9.03 Ω.
LIMITS = {"100 µF 25 V": (1.857, 3.71), "220 µF 16 V": (0.9646, 1.929), "47 µF 16 V": (4.515, 9.03)}


@pytest.mark.published(ENDURANCE)
def test_the_limits_in_the_question():
    for draw in VARIANTS:
        text = asked(worn_or_not(draw))
        (part,) = (part for part in LIMITS if f"An old {part}" in text)
        new = float(text.partition("has at most ")[2].partition(" ")[0])
        worn = float(text.partition("one above ")[2].partition(" ")[0])
        assert (new, worn) == pytest.approx(LIMITS[part], rel=0.02)


def readings(text):
    """Marked µF, measured µF, and the ESR as the question shows it."""
    marked = float(text.partition("An old ")[2].partition(" ")[0])
    microfarad = float(text.partition("Capacitance: ")[2].partition(" ")[0])
    return marked, microfarad, text.partition("ESR: ")[2].partition(".  Its")[0].split(" ")[0]


@pytest.mark.published(ENDURANCE)
def test_must_it_go_by_its_readings():
    """The judgement is worked out again here from the readings that the question shows."""
    seen = set()
    for draw in VARIANTS:
        ask = worn_or_not(draw)
        text = asked(ask)
        marked, microfarad, read = readings(text)
        if read in ("not", "0.00"):
            continue
        (part,) = (part for part in LIMITS if f"An old {part}" in text)
        new, worn = LIMITS[part]
        if microfarad < 0.8 * marked or float(read) > worn:
            by_hand = GO
        else:
            assert float(read) < new
            by_hand = STAY
        assert ask.judge(by_hand).state == "right"
        seen.add(by_hand)
    assert seen == {GO, STAY}


@pytest.mark.common_practice
def test_a_short_or_no_reading_asks_for_more():
    seen = set()
    for draw in VARIANTS:
        ask = worn_or_not(draw)
        *_, read = readings(asked(ask))
        if read in ("not", "0.00"):
            assert ask.judge(MORE).state == "right"
            seen.add(read)
    assert seen == {"not", "0.00"}


@pytest.mark.common_practice
def test_a_short_that_may_stay_is_dangerous():
    found = [ask for ask in map(worn_or_not, VARIANTS) if "ESR: 0.00" in asked(ask)]
    assert found
    assert all(hazards(ask, STAY) == ("heat and fire",) for ask in found)


# By hand from KEMET, half of the rating: 5 V asks for 10, 8 for 16, 9 for 18 (20), 12 for 24 (25),
# 15 for 30 (35).
TANTALUMS = {"5": "10", "8": "16", "9": "20", "12": "25", "15": "35"}


def working_volts(ask):
    """The volts that the place of the question works at."""
    (working,) = (volts for volts in TANTALUMS if f"works at {volts} V" in asked(ask))
    return working


@pytest.mark.published(document("KEMET derating 2015", "50 % of rated"))
def test_solid_tantalum_at_half_of_its_rating():
    seen = set()
    for draw in VARIANTS:
        ask = tantalum_rating(draw)
        working = working_volts(ask)
        assert ask.judge(f"{TANTALUMS[working]} V").state == "right"
        assert ask.judge("50 V").state == "wrong"
        seen.add(working)
    assert seen == set(TANTALUMS)


@pytest.mark.common_practice
def test_solid_tantalum_near_its_rating_is_dangerous():
    for draw in VARIANTS:
        ask = tantalum_rating(draw)
        assert hazards(ask, f"{working_volts(ask)} V") == ("heat and fire",)
        assert hazards(ask, "6.3 V") == ("heat and fire",)


@pytest.mark.common_practice
def test_spares_for_a_class():
    """One for each ten, rounded up: 48 + 5, 20 + 2, 8 + 1, 15 + 2."""
    by_hand = {"12 boards": "53", "10 boards": "22", "8 boards": "9", "5 boards": "17"}
    for draw in VARIANTS:
        ask = how_many_to_order(draw)
        (boards,) = (text for text in by_hand if f"mends {text}" in asked(ask))
        assert ask.judge(by_hand[boards]).state == "right"
