"""The exercise of lesson 13: its answers by hand from the formulas, in every variant."""

import re

import pytest

from repairlib.core.verdicts import DEPENDS, DO_NOT_REPAIR, REPAIR
from repairlib.learn.questions.worth_repairing_and_the_record import (
    another_set,
    break_even_chance,
    correct_an_entry,
    decisions,
    expected_gain,
    handed_on,
    hours_on_the_card,
    what_is_spent,
    which_set_first,
)
from repairlib.stored_charge import QUALIFIED
from tests.documents import document
from tests.learn.asking import VARIANTS, asked, asks_of, right_answer

questions, warm_up = asks_of("13-worth-repairing-and-the-record")


def figures(ask):
    """The figures of a prompt, in its order."""
    return tuple(re.findall(r"\d+(?:\.\d+)?", asked(ask)))


def assert_answers(make, by_hand):
    """Each draw of a question is one of those worked by hand, and all of them come up."""
    seen = set()
    for draw in VARIANTS:
        ask = make(draw.part("x"))
        assert ask.judge(f"{by_hand[figures(ask)]} {ask.unit}").state == "right"
        seen.add(figures(ask))
    assert seen == set(by_hand)


# Parts, hours, worth of an hour, tool, jobs: parts + hours × worth + tool / jobs
SPENT = {("6", "2.5", "6", "60", "6"): 6 + 15 + 10, ("4", "3", "6", "24", "8"): 4 + 18 + 3}
SPENT |= {("5", "2", "8", "45", "9"): 5 + 16 + 5, ("9", "1.5", "10", "80", "10"): 9 + 15 + 8}
SPENT |= {("3", "4", "5", "30", "6"): 3 + 20 + 5, ("7", "2", "9", "40", "8"): 7 + 18 + 5}
SPENT |= {("8", "3", "7", "36", "6"): 8 + 21 + 6, ("12", "2", "9", "28", "7"): 12 + 18 + 4}
SPENT |= {("10", "1", "9", "33", "11"): 10 + 9 + 3, ("6", "3", "9", "56", "8"): 6 + 27 + 7}
SPENT |= {("3", "1.5", "4", "30", "3"): 3 + 6 + 10}


@pytest.mark.common_practice
def test_what_is_spent():
    assert_answers(what_is_spent, SPENT)


# Value, parts, hours, worth of an hour, chance: chance × value - spent, worked by hand
GAINS = {("30", "2.5", "1.5", "6", "80"): 24 - 11.5, ("60", "8", "2", "5", "70"): 42 - 18}
GAINS |= {("40", "6", "1.5", "8", "60"): 24 - 18, ("90", "12", "3", "7", "50"): 45 - 33}
GAINS |= {("50", "5", "2", "4", "60"): 30 - 13, ("70", "10", "2.5", "8", "75"): 52.5 - 30}
GAINS |= {("80", "9", "2", "6", "50"): 40 - 21, ("45", "4", "1", "8", "60"): 27 - 12}
GAINS |= {("100", "14", "4", "5", "60"): 60 - 34, ("36", "3", "1.5", "4", "75"): 27 - 9}
GAINS |= {("64", "6", "2.5", "8", "75"): 48 - 26}
EXPECTED = document("encyclopaedia, Expected value", "E(X) as the sum of value times chance")


@pytest.mark.published(EXPECTED)
def test_expected_gain():
    """Worked by hand from the definition."""
    assert_answers(expected_gain, GAINS)


# Value, another one, the try, chance: chance × the smaller of the two - the try
OTHERS = {("80", "45", "20", "60"): 27 - 20, ("70", "40", "18", "75"): 30 - 18}
OTHERS |= {("90", "60", "22", "50"): 30 - 22, ("65", "30", "15", "80"): 24 - 15}
OTHERS |= {("100", "70", "35", "90"): 63 - 35, ("55", "35", "12", "80"): 28 - 12}
OTHERS |= {("75", "50", "17", "80"): 40 - 17, ("60", "40", "10", "70"): 28 - 10}
OTHERS |= {("85", "55", "13", "60"): 33 - 13, ("120", "80", "34", "75"): 60 - 34}
OTHERS |= {("50", "30", "13", "90"): 27 - 13}


@pytest.mark.published(EXPECTED)
def test_another_set():
    """Worked by hand from the definition."""
    assert_answers(another_set, OTHERS)


# Earned, spent, failed: (spent + failed) / (earned + failed), in %
EVEN = {("50", "25", "5"): 100 * 30 / 55, ("60", "30", "10"): 100 * 40 / 70}
EVEN |= {("80", "26", "20"): 46, ("45", "20", "15"): 100 * 35 / 60}
EVEN |= {("70", "25", "10"): 100 * 35 / 80, ("55", "30", "5"): 100 * 35 / 60}
EVEN |= {("40", "18", "10"): 56, ("90", "33", "10"): 43, ("48", "24", "2"): 52}
EVEN |= {("70", "26", "10"): 45, ("35", "15", "5"): 50}


@pytest.mark.published(document("break-even analysis", "zero gain, equations 14.16 and 14.17"))
def test_break_even_chance():
    """Worked by hand from zero gain."""
    assert_answers(break_even_chance, EVEN)


def test_a_decision_follows_the_signs_and_the_hazard():
    seen = set()
    for draw in VARIANTS:
        for row, cells in decisions(draw.part("x")).cells.items():
            low, high = (float(one) for one in re.findall(r"([+-][\d.]+) tokens", row))
            right = REPAIR if low > 0 else DO_NOT_REPAIR if high < 0 else DEPENDS
            right = right if row.endswith("hazards: none") else QUALIFIED
            assert cells["decision"].judge(right).state == "right"
            if right == QUALIFIED:
                assert cells["decision"].judge(REPAIR).state == "unsafe"
                assert cells["decision"].judge(DO_NOT_REPAIR).state == "wrong"
            seen.add(right)
    assert seen == {REPAIR, DO_NOT_REPAIR, DEPENDS, QUALIFIED}


@pytest.mark.published(document("limiting factor", "greatest contribution per unit of it"))
def test_which_set_first():
    """Gain divided by hours, worked out anew from what the prompt says."""
    for draw in VARIANTS:
        ask = which_set_first(draw.part("x"))
        told = re.findall(r"([a-z ]+): gains (\d+) tokens in ([\d.]+) h", asked(ask))
        rate = {name.strip(): float(gain) / float(hours) for name, gain, hours in told}
        assert len(set(rate.values())) == len(rate) == 4
        assert list(ask.steps) == sorted(rate, key=rate.get, reverse=True)
        most = max(told, key=lambda one: float(one[1]))[0].strip()
        assert most != ask.steps[0]


def test_what_is_handed_on_never_gets_a_place():
    for draw in VARIANTS:
        ask = handed_on(draw.part("x"))
        states = [ask.judge(option).state for option in ask.options]
        assert sorted(states) == ["right", "unsafe", "unsafe", "wrong"]


@pytest.mark.common_practice
def test_an_entry_is_corrected_by_another():
    for draw in VARIANTS:
        ask = correct_an_entry(draw.part("x"))
        number = figures(ask)[0]
        assert ask.answer == f"I write a new entry in place of entry {number}"


# Minutes of entries 3 and 9, for entry 9 stands in place of 7
HOURS = {(45, 15, 75): 120 / 60, (30, 10, 60): 90 / 60, (90, 20, 45): 135 / 60}
HOURS |= {(20, 15, 70): 90 / 60, (50, 10, 40): 90 / 60, (25, 5, 95): 120 / 60}
HOURS |= {(35, 10, 70): 105 / 60, (40, 25, 110): 150 / 60, (15, 5, 45): 60 / 60}
HOURS |= {(55, 15, 110): 165 / 60, (80, 30, 100): 180 / 60}


def test_hours_on_the_card():
    seen = set()
    for draw in VARIANTS:
        ask = hours_on_the_card(draw.part("x"))
        minutes = tuple(map(int, re.findall(r"(\d+) min", asked(ask))))
        assert ask.judge(str(HOURS[minutes])).state == "right"
        seen.add(minutes)
    assert seen == set(HOURS)


def test_every_variant_is_whole():
    for draw in VARIANTS:
        asks = questions(draw)
        assert [ask.id for ask in asks] == [f"q{n}" for n in range(1, 10)]
        assert len(warm_up(draw)) == 3
        for ask in asks:
            assert ask.judge(ask.as_typed(right_answer(ask))).state == "right"
            if isinstance(getattr(ask, "answer", None), float):
                for mistake in ask.mistakes:
                    assert ask.judge(f"{mistake.when:.6g} {ask.unit}").state == "wrong"
