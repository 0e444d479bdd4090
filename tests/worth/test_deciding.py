"""The decision: by the sum, never against safety, and what would turn it."""

import pytest
from hypothesis import given

from repairlib.core.errors import RepairlibError
from repairlib.core.safety import HAZARDS
from repairlib.core.verdicts import BAD, DEPENDS, DO_NOT_REPAIR, GOOD, LOOK, REPAIR, meaning
from repairlib.stored_charge import QUALIFIED
from repairlib.worth.deciding import decide_on
from repairlib.worth.hazards import HANDED_ON, handed_on, read_hazards
from repairlib.worth.job import Job
from tests.worth.test_job import changed, jobs

PAYS = Job(30, 2.5, 1.5, 70, 90, hour_worth=6)
MAY_PAY = Job(55, 4, 3, 40, 75, hour_worth=6, tools=24, jobs=8, replacement=50, failed=5)
LOSES = Job(35, 6, 2.5, 20, 50, hour_worth=6, tools=60, jobs=6)


def words(text):
    return text.replace("\xa0", " ")


# By hand: 38.3 % = 11.5 / 30; (21 - 2.5) / 6 = 3.083 h; 21 - 9 = 12.
def test_it_pays_at_both_ends():
    decision = decide_on(PAYS)
    assert decision.verdict == REPAIR
    assert words(decision.reason) == "gains 9.5 tokens to 15.5 tokens at a chance of 70 % to 90 %"
    assert words(decision.change) == (
        "a chance below 38.3 %, more than 3.08 h of work or parts above 12 tokens at 70 %"
    )


# By hand: at 40 % revenue 20 - 3 = 17, less 7 for parts and tools: 10 / 6 = 1.67 h; parts -4.
def test_it_pays_at_one_end():
    decision = decide_on(MAY_PAY)
    assert decision.verdict == DEPENDS
    assert words(decision.reason) == (
        "from a loss of 8 tokens to a gain of 11.25 tokens at a chance of 40 % to 75 %"
    )
    assert words(decision.change) == (
        "a better guess of the chance: even at 54.5 %; it pays at 40 % too with less than 1.67 h "
        "of work"
    )


# By hand: spent 6 + 15 + 10 = 31, 31 / 35 = 88.6 %; at 50 % (17.5 - 16) / 6 = 0.25 h; parts -7.5.
def test_it_pays_at_neither_end():
    decision = decide_on(LOSES)
    assert decision.verdict == DO_NOT_REPAIR
    assert words(decision.reason) == "loses 24 tokens to 13.5 tokens at a chance of 20 % to 50 %"
    assert words(decision.change) == "a chance above 88.6 %, less than 0.25 h of work at 50 %"


def test_one_chance_and_the_point_of_break_even():
    assert words(decide_on(Job(60, 8, 2, 50, 50)).reason) == "gains 22 tokens at a chance of 50 %"
    assert decide_on(Job(60, 30, 0, 50, 50)).verdict == DEPENDS
    assert "neither gains nor loses" in decide_on(Job(60, 30, 0, 50, 50)).reason
    assert decide_on(Job(0, 0, 0, 0, 100)).verdict == DEPENDS
    nothing_helps = decide_on(Job(0, 5, 0, 50, 60))
    assert nothing_helps.change == "no chance, no hours and no price of parts alone"


@pytest.mark.parametrize("hazard", HANDED_ON)
@given(job=jobs)
def test_no_sum_outweighs_a_hazard_that_is_handed_on(hazard, job):
    decision = decide_on(changed(job, hazards=("lead", hazard)))
    assert decision.verdict == QUALIFIED
    assert hazard in decision.reason
    assert "qualified" in decision.change


def test_however_good_the_sum():
    assert decide_on(Job(1e7, 0, 0, 100, 100, hazards=("mains",))).verdict == QUALIFIED


@given(jobs)
def test_the_verdict_follows_the_signs(job):
    low, high = job.sign(job.success_low), job.sign(job.success_high)
    expected = REPAIR if low > 0 else DO_NOT_REPAIR if high < 0 else DEPENDS
    assert decide_on(job).verdict == expected
    assert "safe" not in " ".join(decide_on(job))


def test_each_verdict_has_its_meaning():
    assert [meaning(one) for one in (REPAIR, DO_NOT_REPAIR, DEPENDS)] == [GOOD, BAD, LOOK]


def test_mains_high_voltage_and_poisons_are_handed_on():
    assert set(HANDED_ON) <= set(HAZARDS)
    assert {"mains", "stored charge", "high-voltage tubes"} <= set(HANDED_ON)
    assert handed_on(("hot tools", "mains", "PCB oil")) == ("mains", "PCB oil")


def test_hazards_as_people_type_them():
    assert read_hazards("MAINS, stored  charge;") == ("mains", "stored charge")
    assert read_hazards("lead; lead") == ("lead",)
    assert read_hazards("pcb oil") == ("PCB oil",)
    assert read_hazards(" None ") == ()


@pytest.mark.parametrize(
    ("text", "wrong"),
    [
        ("", "no hazard is named"),
        (" ; ,", "no hazard is named"),
        ("main", "not a hazard known here"),
        ("none; mains", "none stands beside a hazard"),
    ],
)
def test_hazards_that_cannot_be_read(text, wrong):
    with pytest.raises(RepairlibError, match=wrong) as error:
        read_hazards(text)
    assert "mains" in error.value.accepted and "\n" not in str(error.value)
