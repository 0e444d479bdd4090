"""The exercise of lesson 11: its answers against figures worked by hand, in every variant."""

import re

import pytest

from repairlib.core.draws import Draw
from repairlib.learn.questions.connectors_and_power_entry import (
    EMPTY,
    FIT,
    LIFT,
    NO_LINK,
    OHMS,
    POWER,
    RINSE,
    before_power,
    burnt_plug,
    contacts_loaded,
    drop_of_the_lead,
    left_for_the_card,
    order_of_work,
    watts_in_a_contact,
    what_marks_tell,
    wire_for_the_link,
)
from tests.documents import document
from tests.learn.asking import VARIANTS, all_seen, asked, asks_of, first_is_right, hazards, told

questions, warm_up = asks_of("11-connectors-and-power-entry")

# mΩ and A: W = A × A × mΩ / 1000
WATTS = {"has 160 mΩ": "1 W", "has 90 mΩ": "0.81 W", "has 70 mΩ": "1.12 W"}
WATTS |= {"has 45 mΩ": "1.125 W", "has 240 mΩ": "0.96 W", "has 30 mΩ": "1.08 W"}
WATTS |= {"has 110 mΩ": "1.3475 W", "has 300 mΩ": "0.675 W", "has 60 mΩ": "1.215 W"}


@pytest.mark.common_practice
def test_watts_in_a_contact():
    all_seen(watts_in_a_contact, WATTS, lambda ask, watts: first_is_right(ask, [watts]))


def test_the_mistakes_with_watts():
    ask = watts_in_a_contact(Draw("x"))
    milliohm, ampere = (float(one) for one in re.findall(r"([\d.]+) (?:mΩ|A)\b", asked(ask)))
    assert "volts across it" in told(ask, f"{ampere * milliohm} mW")
    assert "What is squared?" in told(ask, f"{ampere * (milliohm / 1000) ** 2:.6f} W")


# Loaded, AWG: A for a rise of 30 K, read off the maker's table
LIMITS = {(2, 18): 9, (2, 22): 5, (4, 20): 6, (6, 18): 8, (8, 18): 7, (8, 16): 7, (10, 22): 4}
LIMITS |= {(12, 18): 6, (12, 20): 5, (24, 24): 3, (24, 20): 5, (4, 24): 3}


@pytest.mark.published(document("PS-43810", "4.20 mm pitch, brass, by wire and loaded circuits"))
def test_contacts_loaded():
    seen = set()
    for draw in VARIANTS:
        for row, cells in contacts_loaded(draw.part("x")).cells.items():
            loaded, gauge, ampere = (float(one) for one in re.findall(r"[\d.]+", row))
            right = "carries it" if ampere <= LIMITS[loaded, gauge] else "too much"
            assert cells["contact"].judge(right).state == "right", row
            seen.add((loaded, gauge))
    assert seen == set(LIMITS)


# AWG and length, A: V = 2 × m × Ω/km / 1000 × A, by hand
DROPS = {
    "is 1.8 m long, with two wires of 22": "0.4766 V",
    "is 1.2 m long, with two wires of 24": "0.4042 V",
    "is 3 m long, with two wires of 20": "0.5996 V",
    "is 0.8 m long, with two wires of 26": "0.3214 V",
    "is 2.5 m long, with two wires of 18": "0.4190 V",
    "is 1.2 m long, with two wires of 22": "0.3813 V",
    "is 2 m long, with two wires of 24": "0.5053 V",
    "is 1.5 m long, with two wires of 20": "0.4997 V",
    "is 1.5 m long, with two wires of 26": "0.4017 V",
}


@pytest.mark.published(document("wire resistance table", "52.96, 84.21, 33.31, 133.9, 20.95 Ω/km"))
def test_drop_of_the_lead():
    def is_right(ask, volts):
        first_is_right(ask, [volts])
        assert "way back" in told(ask, f"{float(volts[:-2]) / 2} V")

    all_seen(drop_of_the_lead, DROPS, is_right)


BUDGETS = {"one 6-pin": 150, "one 8-pin": 225, "two 6-pin": 225, "a 6-pin and an 8-pin": 300}


@pytest.mark.published(document("PC hardware handbook", "75 W, 150 W; cards 150, 225, 300 W"))
def test_left_for_the_card():
    seen = set()
    for draw in VARIANTS:
        ask = left_for_the_card(draw.part("x"))
        (cables,) = (one for one in BUDGETS if f"has {one} cable" in asked(ask))
        watts = float(re.search(r"draws (\d+) W", asked(ask))[1])
        assert ask.judge(f"{BUDGETS[cables] - watts} W").state == "right"
        seen.add(cables)
    assert seen == set(BUDGETS)


# mil² / 700: 28 AWG 12.64 mil 0.228 A, 24 AWG 20.10 mil 0.577 A, 22 AWG 25.35 mil 0.918 A
LINKS = {
    ("pad of a surface", "0.2"): "28 AWG",
    ("barrel", "0.5"): "24 AWG",
    ("pad of a surface", "0.6"): NO_LINK,
    ("barrel", "2.4"): NO_LINK,
    ("land", "0.8"): "22 AWG",
    ("land", "1.6"): NO_LINK,
}


@pytest.mark.common_practice
def test_wire_for_the_link():
    seen = set()
    for draw in VARIANTS:
        ask = wire_for_the_link(draw.part("x"))
        (key,) = (key for key in LINKS if key[0] in asked(ask) and f" {key[1]} A" in asked(ask))
        assert ask.judge(LINKS[key]).state == "right"
        at = ask.options.index(LINKS[key])
        for thin in ask.options[: min(at, 3)]:
            assert hazards(ask, thin) == ("heat and fire",)
        seen.add(key)
    assert seen == set(LINKS)


@pytest.mark.common_practice
def test_a_burnt_contact_is_never_used_again():
    for draw in VARIANTS:
        ask = burnt_plug(draw.part("x"))
        unsafe = [option for option in ask.options if hazards(ask, option)]
        assert len(unsafe) == 3 and ask.answer not in unsafe


# Readings of pairs, judged by hand with the short table
TABLE = {
    "supply contact and signal contact: 2.1 Ω": "stop",
    "supply input and ground: 0.9 Ω": "stop",
    "neighbouring contacts: 14 Ω": "stop",
    "supply contact and shield: 620 Ω": "stop",
    "12 V rail and ground: 31 Ω": "measure again",
    "3.3 V rail and ground: OL": "measure again",
    "5 V rail and ground: 18 Ω": "measure again",
    "supply contact and shield: 2.2 kΩ": "measure again",
    "5 V rail and ground: 160 Ω": "go on to the next check",
    "12 V rail and ground: 1.3 kΩ": "go on to the next check",
    "two rails: OL": "go on to the next check",
    "supply contact and shield: OL": "go on to the next check",
}


@pytest.mark.common_practice
def test_before_power():
    seen = set()
    for draw in VARIANTS:
        for row, cells in before_power(draw.part("x")).cells.items():
            cell = cells["verdict"]
            assert cell.judge(TABLE[row]).state == "right", row
            risky = hazards(cell, "go on to the next check")
            assert risky == (("heat and fire",) if TABLE[row] == "stop" else None)
            seen.add(row)
    assert seen == set(TABLE)


PIN, WAY, NOTHING = "pin 1 or wire 1", "which way round it goes in", "nothing for certain"
MARKS = {"square pad": PIN, "triangle on the housing": PIN, "figure 1 or dot in the print": PIN}
MARKS |= {"coloured edge of a ribbon": PIN, "notch or rib of the housing": WAY, "latch side": WAY}
MARKS |= {"missing pin and plugged hole": WAY, "colour of the wires": NOTHING}


@pytest.mark.common_practice
def test_what_marks_tell():
    seen = set()
    for draw in VARIANTS:
        for row, cells in what_marks_tell(draw.part("x")).cells.items():
            assert cells["points to"].judge(MARKS[row]).state == "right"
            seen.add(row)
    assert seen == set(MARKS)


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("early", "late", "hazard"),
    [
        (LIFT, EMPTY, "stored charge"),
        (OHMS, EMPTY, "stored charge"),
        (FIT, RINSE, "heat and fire"),
        (POWER, OHMS, "heat and fire"),
        (POWER, FIT, "heat and fire"),
    ],
)
def test_dangerous_orders(early, late, hazard):
    ask = order_of_work(Draw("x").part("y"))
    steps = [step for step in ask.steps if step != early]
    steps.insert(steps.index(late), early)
    assert hazard in hazards(ask, " > ".join(steps))


def test_every_variant_is_whole():
    for draw in VARIANTS[:20]:
        assert [ask.id for ask in questions(draw)] == [f"q{n}" for n in range(1, 10)]
        assert len(warm_up(draw)) == 3
