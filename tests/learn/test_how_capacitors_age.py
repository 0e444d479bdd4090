"""The exercise of lesson 06: its answers against their sources, in every variant."""

from itertools import pairwise

import pytest

from repairlib.health.esr import esr_of
from repairlib.health.life import expected
from repairlib.health.verdict import judge_capacitor
from repairlib.learn import Draw
from repairlib.learn.questions.how_capacitors_age import (
    AGAIN,
    MEASURE,
    OFF,
    RESISTOR,
    TOUCH,
    after_the_test,
    air_or_case,
    better_part,
    cooler,
    esr_limit,
    leakage_limit,
    measured_parts,
    other_frequency,
    wake_up,
)
from tests.learn.asking import VARIANTS, asked, hazards, told

# Rated hours, rated °C, air: hours. 64 000, 16 000 and 128 000 are printed by the sources.
LIVES = {("1000", "105", "45"): 64_000, ("1000", "105", "65"): 16_000}
LIVES |= {("2000", "105", "45"): 128_000, ("2000", "105", "75"): 16_000}
LIVES |= {("2000", "85", "45"): 32_000, ("3000", "105", "75"): 24_000}


@pytest.mark.published("Cosel technical information; encyclopaedia, Electrolytic capacitor")
def test_cooler():
    seen = set()
    for draw in VARIANTS:
        ask = cooler(draw.part("x"))
        (key,) = (
            key
            for key in LIVES
            if f"{key[0]} h at {key[1]} °C. It works in air of {key[2]} °C" in asked(ask)
        )
        hours, rated, air = map(int, key)
        assert ask.judge(str(LIVES[key])).state == "right"
        assert "hotter or cooler" in told(ask, str(hours / 2 ** ((rated - air) / 10)))
        assert "each step" in told(ask, str(hours * (rated - air) // 10))
        seen.add(key)
    assert seen == set(LIVES)


# By hand: 2^5, 2^6, 2^3 and 2^4 times the rated hours.
BY_AIR = {55: {2000: 64_000}, 45: {1000: 64_000}, 65: {5000: 80_000}}


@pytest.mark.published("Cosel technical information: 10-degree rule with the ambient temperature")
def test_air_or_case():
    for draw in VARIANTS:
        ask = air_or_case(draw.part("x"))
        words = asked(ask).split()
        hours = int(words[words.index("says") + 1])
        rated, air, case = (int(word) for word, unit in pairwise(words) if unit.startswith("°C"))
        by_hand = 16_000 if rated == 85 else BY_AIR[air][hours]
        assert ask.judge(str(by_hand)).state == "right"
        counted_twice = hours * 2 ** ((rated - case) / 10)
        assert "Which temperature" in told(ask, f"{counted_twice:.0f}")


@pytest.mark.published("Cosel technical information: 10-degree rule")
def test_better_part():
    """By hand: hours, times 4 for 20 °C more of rating, times 2 for each 10 °C of cooler air."""
    by_hand = {("2000", "5000", "10"): 20, ("2000", "2000", "10"): 8}
    by_hand |= {("1000", "2000", "10"): 16, ("2000", "4000", "20"): 32}
    for draw in VARIANTS:
        ask = better_part(draw.part("x"))
        (key,) = (
            key
            for key in by_hand
            if f"rated {key[0]} h" in asked(ask)
            and f"one of {key[1]} h" in asked(ask)
            and f"air {key[2]} °C cooler" in asked(ask)
        )
        assert ask.judge(str(by_hand[key])).state == "right"
        old, new, down = map(int, key)
        assert "added" in told(ask, str(new / old + 4 + down / 5 if down == 20 else new / old + 6))
        assert "better or worse" in told(ask, str(1 / by_hand[key]))


# tan δ, µF: Ω at 120 Hz, by hand from ESR = tan δ / (2 π f C).
ESR = {("0.16", 220): 0.9646, ("0.25", 10): 33.16, ("0.10", 100): 1.326}
ESR |= {("0.12", 330): 0.4823, ("0.14", 470): 0.3951}


@pytest.mark.published("Cornell Dubilier ESRD data sheet: DF is ESR over reactance at 120 Hz")
def test_esr_limit():
    seen = set()
    for draw in VARIANTS:
        ask = esr_limit(draw.part("x"))
        (key,) = (key for key in ESR if f"tan δ {key[0]} at" in asked(ask))
        assert f"has {key[1]} µF" in asked(ask)
        assert ask.judge(f"{ESR[key]} Ω").state == "right"
        loss, farad = float(key[0]), key[1] * 1e-6
        reactance = esr_of(1, farad, 120)
        assert "wrong place" in told(ask, f"{reactance / loss} Ω")
        assert "reactance" in told(ask, f"{reactance} Ω")
        assert ask.judge(f"{ESR[key] * 1e6} Ω").says
        seen.add(key)
    assert seen == set(ESR)


@pytest.mark.published("Rubycon ZL and Lelon RGA data sheets: tan δ at 120 Hz")
def test_a_120_hz_limit_is_not_used_at_100_khz():
    seen = set()
    for draw in VARIANTS:
        ask = other_frequency(draw.part("x"))
        right = [option for option in ask.options if ask.judge(option).state == "right"]
        comparable = "Ω at 100 kHz." in asked(ask)
        assert [option[:10] for option in right] == ["It is good" if comparable else "It does no"]
        for option in set(ask.options) - set(right):
            assert told(ask, option)
        seen.add(comparable)
    assert seen == {True, False}


@pytest.mark.published("Rubycon ZL data sheet: larger of 0.01 CV and 3 µA")
def test_leakage_limit():
    """By hand in µA: 0.01 CV, and which of it and 3 µA is the larger."""
    product = {"2.2": 1.1, "1": 0.63, "4.7": 1.175, "10": 1.6}
    product |= {"100": 25, "220": 35.2, "47": 16.45, "470": 47, "1000": 63, "22": 11}
    limit = dict.fromkeys(("2.2", "1", "4.7", "10"), 3)
    seen = set()
    for draw in VARIANTS:
        ask = leakage_limit(draw.part("x"))
        (microfarad,) = (value for value in product if f"part of {value} µF" in asked(ask))
        right = limit.get(microfarad, product[microfarad])
        assert ask.judge(f"{right} µA").state == "right"
        assert "both together" in told(ask, f"{3 + product[microfarad]} µA")
        smaller = product[microfarad] if microfarad in limit else 3
        assert "one of the two" in told(ask, f"{smaller} µA")
        assert "prefix" in told(ask, f"{right} mA")
        seen.add(microfarad)
    assert seen == set(product)


# By hand with ± 5 %: limits 1.86 Ω and 3.71 Ω, 80 to 120 µF.
PARTS = {"98 µF, 0.9": "fit", "104 µF, 1.2": "fit", "96 µF, 2.6": "marginal"}
PARTS |= {"93 µF, 3.0": "marginal", "61 µF, 5.8": "replace", "95 µF, 4.9": "replace"}
PARTS |= {"97 µF, 3.7": "cannot tell", "99 µF, 3.6": "cannot tell", "99 µF, 0.0": "cannot tell"}


@pytest.mark.published("Lelon RGA data sheet: tan δ 0.14 at 25 V, 200 % of it after endurance")
def test_measured_parts():
    seen = set()
    for draw in VARIANTS:
        ask = measured_parts(draw.part("x"))
        rows = {row: PARTS[row.split(": ")[1].removesuffix(" Ω")] for row in ask.cells}
        assert ask.judge(ask.as_typed(rows)).state == "right"
        seen |= {row.split(": ")[1].removesuffix(" Ω") for row in rows}
    assert seen == set(PARTS)


@pytest.mark.common_practice
def test_a_stored_part_is_woken_through_a_resistor_and_never_on_the_mains():
    for draw in VARIANTS:
        ask = wake_up(draw.part("x"))
        found = {option.split(":")[0].split(",")[0]: ask.judge(option) for option in ask.options}
        assert found.pop("In the set").hazards == ("mains",)
        assert found.pop("On the mains").hazards == ("mains",)
        states = [judged.state for judged in found.values()]
        assert sorted(ask.judge(option).state for option in ask.options).count("right") == 1
        assert len(states) == 1


@pytest.mark.common_practice
def test_no_resistor_is_dangerous():
    for draw in VARIANTS:
        ask = wake_up(draw.part("x"))
        (direct,) = (option for option in ask.options if "no resistor" in option)
        assert hazards(ask, direct) == ("heat and fire",)


@pytest.mark.common_practice
def test_touching_before_measuring_is_dangerous():
    ask = after_the_test(Draw("x"))
    assert ask.judge(" > ".join([OFF, RESISTOR, MEASURE, AGAIN, TOUCH])).state == "right"
    assert hazards(ask, " > ".join([OFF, RESISTOR, TOUCH, MEASURE, AGAIN])) == ("stored charge",)
    assert hazards(ask, " > ".join([OFF, RESISTOR, MEASURE, TOUCH, AGAIN])) == ("stored charge",)
    assert ask.judge(" > ".join([RESISTOR, OFF, MEASURE, AGAIN, TOUCH])).state == "partly right"


def test_the_library_says_the_same():
    """The answers were worked by hand; the library must not teach another thing."""
    for (hours, rated, air), life in LIVES.items():
        family = f"aluminium general {rated}"
        assert expected(family, float(hours), float(rated), float(air)).hours == life
    for row, verdict in PARTS.items():
        measured, esr = row.split(", ")
        part = ("aluminium general 105", "100 µF", "25 V", measured)
        assert judge_capacitor(*part, esr=f"{esr} Ω").verdict == verdict
