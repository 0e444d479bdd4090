"""The exercise of lesson 07: its answers against their sources, in every variant."""

import pytest

from repairlib.core.draws import Draw
from repairlib.learn.questions.plan_a_recap import (
    LAST,
    PHOTO,
    PLUG,
    RAILS,
    SUPPLY,
    VOICES,
    bipolar_place,
    little_plan,
    missing_rating,
    next_rating,
    order_of_work,
    stripe,
    too_high,
    value_no_longer_made,
    what_ages,
)
from repairlib.recap.ratings import describe
from repairlib.recap.rules import decide
from tests.documents import document
from tests.learn.asking import VARIANTS, asked, hazards, told

# By hand from the ratings of the data sheet: 6.3 10 16 25 35 50 63 100 ...
RATINGS = document("Lelon RGA", "rated voltages 6.3 10 16 25 35 50 63 100 V")


@pytest.mark.published(RATINGS)
def test_lowest_standard_rating():
    by_hand = {"12": "16", "15": "16", "20": "25", "40": "50", "30": "35"}
    seen = set()
    for draw in VARIANTS:
        ask = next_rating(draw.part("x"))
        (old,) = (volts for volts in by_hand if f"rated {volts} V" in asked(ask))
        assert ask.judge(f"{by_hand[old]} V").state == "right"
        assert ask.judge("63 V").state == "wrong"
        seen.add(old)
    assert seen == set(by_hand)


@pytest.mark.common_practice
def test_a_rating_below_the_old_one_is_dangerous():
    for draw in VARIANTS:
        assert hazards(next_rating(draw.part("x")), "6.3 V") == ("heat and fire",)


# By hand: 22/20 is 10 % more, 15/16 6 % less, 4.7/5 6 % less, 68/75 9 % less, 680/600 13 % more;
# 22/25 is 12 % less, 47/50 6 % less, 33/30 10 % more, 220/250 12 % less, 470/500 6 % less;
# 330/300 and 2200/2000 10 % more, 6.8/8 15 % less, 150/160 6 % less, 2.2/2 10 % more,
# 100/120 17 % less. The next ones on the other side are 25 % and more away.
E6 = document("encyclopaedia, E series", "E6: 1.0 1.5 2.2 3.3 4.7 6.8")
NO_LONGER_MADE = {"25": "22", "50": "47", "30": "33", "250": "220", "500": "470"}
NO_LONGER_MADE |= {"20": "22", "16": "15", "5": "4.7", "75": "68", "600": "680"}
NO_LONGER_MADE |= {"300": "330", "2000": "2200", "8": "6.8", "160": "150", "2": "2.2", "120": "100"}


def old_value(ask):
    """The value, in µF, that the question asks to replace."""
    (old,) = (value for value in NO_LONGER_MADE if f"says {value} µF" in asked(ask))
    return old


@pytest.mark.published(E6)
def test_value_no_longer_made():
    seen = set()
    for draw in VARIANTS:
        ask = value_no_longer_made(draw.part("x"))
        old = old_value(ask)
        assert ask.judge(f"{NO_LONGER_MADE[old]} µF").state == "right"
        seen.add(old)
    assert seen == set(NO_LONGER_MADE)


@pytest.mark.behaviour
def test_hints_to_a_value_no_longer_made():
    for draw in VARIANTS:
        ask = value_no_longer_made(draw.part("x"))
        old = old_value(ask)
        assert ask.judge(f"{old} µF").says == ("That value is no longer made.",)
        assert ask.judge(f"{NO_LONGER_MADE[old]} nF").says


@pytest.mark.common_practice
def test_only_a_bipolar_part_goes_into_a_bipolar_place():
    for draw in VARIANTS:
        ask = bipolar_place(draw.part("x"))
        for option in ask.options:
            right = option.endswith("bipolar")
            assert (ask.judge(option).state == "right") == right
            assert right or hazards(ask, option) == ("heat and fire",)


@pytest.mark.from_memory("the stripe on the sleeve of a radial aluminium part marks minus")
def test_stripe_faces_away_from_the_plus():
    opposite = {"above": "down", "below": "up", "left": "right", "right": "left"}
    for draw in VARIANTS:
        ask = stripe(draw.part("x"))
        (plus,) = (side for side in opposite if side in ask.picture().alt)
        assert ask.judge(opposite[plus]).state == "right"
        reversed_ = {"above": "up", "below": "down"}.get(plus, plus)
        assert hazards(ask, reversed_) == ("heat and fire",)


@pytest.mark.common_practice
def test_what_ages():
    by_hand = {"aluminium can": "Replace", "plastic box": "Leave it: nothing"}
    by_hand |= {"flat disc": "Leave it: nothing", "bead of resin": "Leave it unless"}
    for ask in (what_ages(draw.part("x")) for draw in VARIANTS):
        if ask.picture:
            (body,) = (body for body in by_hand if body in ask.picture().alt.lower())
            assert ask.answer.startswith(by_hand[body])


@pytest.mark.common_practice
def test_of_four_parts_the_wet_one_ages():
    seen = set()
    for ask in (what_ages(draw.part("x")) for draw in VARIANTS):
        if not ask.picture:
            kinds = {option.split(": ")[1].split(",")[0]: option for option in ask.options}
            right = {"radial can", "axial can", "SMD can"} & set(kinds)
            assert [ask.judge(kinds[kind]).state for kind in right] == ["right"]
            assert set(kinds) - right == {"film box", "ceramic disc", "tantalum bead"}
            assert "solid" in told(ask, kinds["tantalum bead"])
            assert "dry out" in told(ask, kinds["film box"]) == told(ask, kinds["ceramic disc"])
            seen |= right
    assert seen == {"radial can", "axial can", "SMD can"}


@pytest.mark.common_practice
def test_a_missing_rating_is_never_guessed():
    for draw in VARIANTS:
        ask = missing_rating(draw.part("x"))
        right = [option for option in ask.options if ask.judge(option).state == "right"]
        assert [option[:8] for option in right] == ["Hold the"]
        neighbour = next(option for option in ask.options if "next to it" in option)
        assert hazards(ask, neighbour) == ("heat and fire",)


@pytest.mark.common_practice
def test_order_of_work():
    ask = order_of_work(Draw("x"))
    assert ask.judge(" > ".join([PLUG, PHOTO, SUPPLY, RAILS, VOICES, LAST])).state == "right"
    assert hazards(ask, " > ".join([PHOTO, SUPPLY, PLUG, RAILS, VOICES, LAST])) == ("mains",)
    assert ask.judge(" > ".join([PLUG, SUPPLY, PHOTO, RAILS, VOICES, LAST])).state == "partly right"


@pytest.mark.common_practice
def test_a_lower_rating_is_no_way_to_a_lower_can():
    for draw in VARIANTS:
        ask = too_high(draw.part("x"))
        lower = next(option for option in ask.options if "10 V" in option)
        assert hazards(ask, lower) == ("heat and fire",)


# By hand: E6 value within 20 %, next rating of the RGA list, polarity as listed.
PLAN = {
    "C13": "220 µF | 16 V | polar",
    "C8": "47 µF | 16 V | polar",
    "C40": "100 µF | 16 V | polar",
    "C24": "47 µF | 25 V | polar",
    "C26": "4.7 µF | 50 V | bipolar",
    "C31": "10 µF | 16 V | bipolar",
    "C21": "470 µF | 25 V | polar",
    "C15": "33 µF | 50 V | polar",
    "C27": "220 µF | 16 V | polar",
    "C43": "10 µF | 50 V | polar",
    "C29": "1 µF | 50 V | bipolar",
    "C33": "22 µF | 25 V | bipolar",
}


def filled_in(ask):
    """The table of the question as it is right."""
    return {place: PLAN[place] for place in ask.cells}


@pytest.mark.published(f"{E6}; {RATINGS}")
def test_values_and_ratings_of_the_little_plan():
    seen = set()
    for draw in VARIANTS:
        for place, cells in little_plan(draw.part("x")).cells.items():
            value, volts, _ = PLAN[place].split(" | ")
            assert cells["capacitance"].judge(value).state == "right"
            assert cells["rated voltage"].judge(volts).state == "right"
            seen.add(place)
    assert seen == set(PLAN)


@pytest.mark.common_practice
def test_dangers_of_the_little_plan():
    for draw in VARIANTS:
        ask = little_plan(draw.part("x"))
        rows = filled_in(ask)
        assert ask.judge(ask.as_typed(rows)).state == "right"
        low = {place: row.replace(row.split("|")[1], " 6.3 V ") for place, row in rows.items()}
        assert hazards(ask, ask.as_typed(low)) == ("heat and fire",)
        polar = {place: row.replace("bipolar", "polar") for place, row in rows.items()}
        assert hazards(ask, ask.as_typed(polar)) == ("heat and fire",)


def test_the_planner_says_the_same():
    """The answers were worked by hand; the library must not teach another thing."""
    for text, row in {
        "250µF 12V elect": PLAN["C13"],
        "50µF 15V elect": PLAN["C8"],
        "4.7/50 NP elect": PLAN["C26"],
        "500µF 20V elect": PLAN["C21"],
        "30µF 40V elect": PLAN["C15"],
        "22/25 BP elect": PLAN["C33"],
    }.items():
        value, volts, kind = (cell.strip() for cell in row.split("|"))
        new = decide(describe((("free", text),))).proposal
        assert str(new).replace("\xa0", " ").startswith(f"{value} {volts} 105 °C {kind}")
