"""The exercise of lesson 12: its answers by hand from their sources, in every variant."""

import re

import pytest

from repairlib.core.draws import Draw
from repairlib.learn.questions.first_power_up import (
    EMPTY,
    FEEL,
    LOW,
    METAL,
    OFF,
    OHMS,
    RAILS,
    TURNED,
    at_the_limit,
    from_symptom_to_part,
    from_the_waveform,
    last_limit,
    ohms_of_a_short,
    order_of_work,
    rails_judged,
    ripple_by_formula,
    without_a_limit,
)
from tests.documents import document
from tests.learn.asking import VARIANTS, all_seen, asked, asks_of, hazards, told

questions, warm_up = asks_of("12-first-power-up")

SHEET = "university course sheet FEEG1004, part B: I / (2 f C), by hand"

# Volts of the rail and its current: ohms, by hand as volts / (1.2 × ampere), and volts / ampere.
OHMS_BY_HAND = {
    " 5 V should carry 200 mA": ("20.8", "25"),
    "12 V should carry 250 mA": ("40", "48"),
    "9 V should carry 300 mA": ("25", "30"),
    "3.3 V should carry 500 mA": ("5.5", "6.6"),
    "12 V should carry 400 mA": ("25", "30"),
    "6 V should carry 100 mA": ("50", "60"),
    " 5 V should carry 250 mA": ("16.67", "20"),
    "3.3 V should carry 200 mA": ("13.75", "16.5"),
    "12 V should carry 800 mA": ("12.5", "15"),
    "15 V should carry 200 mA": ("62.5", "75"),
    "6 V should carry 500 mA": ("10", "12"),
    "24 V should carry 250 mA": ("80", "96"),
}


@pytest.mark.common_practice
def test_ohms_of_a_short():
    def holds(ask, ohms):
        assert ask.judge(f"{ohms[0]} Ω").state == "right"
        assert "The limit is set above it" in told(ask, f"{ohms[1]} Ω")

    all_seen(ohms_of_a_short, OHMS_BY_HAND, holds)


LIMITS_BY_HAND = {
    "draw 250 mA": "0.3 A",
    "draw 400 mA": "480 mA",
    "draw 150 mA": "180 mA",
    "draw 350 mA": "420 mA",
    "draw 600 mA": "720 mA",
    "draw 700 mA": "840 mA",
    "draw 500 mA": "600 mA",
    "draw 300 mA": "360 mA",
    "draw 800 mA": "960 mA",
    "draw 200 mA": "240 mA",
    "draw 450 mA": "540 mA",
}


@pytest.mark.from_memory("the limit a little above the expected current; a fifth is a choice")
def test_last_limit():
    def holds(ask, right):
        assert ask.judge(right).state == "right"
        expected = re.search(r"draw (\d+ mA)", asked(ask))[1]
        assert "at the limit already" in told(ask, expected)

    all_seen(last_limit, LIMITS_BY_HAND, holds)


# µF and load: volts, by hand.
RIPPLES = {
    "1000 µF. The load takes 200 mA": "2",
    "2200 µF. The load takes 300 mA": "1.364",
    "1000 µF. The load takes 250 mA": "2.5",
    "4700 µF. The load takes 500 mA": "1.064",
    "2200 µF. The load takes 400 mA": "1.818",
    "470 µF. The load takes 150 mA": "3.191",
    "470 µF. The load takes 100 mA": "2.128",
    "4700 µF. The load takes 600 mA": "1.277",
    "1000 µF. The load takes 350 mA": "3.5",
    "6800 µF. The load takes 800 mA": "1.176",
    "1000 µF. The load takes 300 mA": "3",
}


@pytest.mark.published(SHEET)
def test_ripple_by_formula():
    def holds(ask, volts):
        assert ask.judge(f"{volts} V").state == "right"
        assert "twice in each period" in told(ask, f"{2 * float(volts)} V")

    all_seen(ripple_by_formula, RIPPLES, holds)


@pytest.mark.published(document("ATX guide 0.9", "±5 %; 5 V 4.75 to 5.25, 12 V 11.40 to 12.60"))
def test_rails_judged():
    ends = {"5": (4.75, 5.25), "12": (11.4, 12.6), "9": (8.55, 9.45)}
    for draw in VARIANTS:
        seen = set()
        for row, cells in rails_judged(draw.part("x")).cells.items():
            nominal, reading, error = re.findall(r"[\d.]+", row)
            low, high = ends[nominal]
            span = float(reading) - float(error), float(reading) + float(error)
            right = "cannot tell"
            if low <= span[0] and span[1] <= high:
                right = "pass"
            elif span[1] < low or span[0] > high:
                right = "fail"
            assert cells["verdict"].judge(right).state == "right"
            seen.add((nominal, right))
        assert len(seen) == 6  # each verdict once on each rail


@pytest.mark.common_practice
def test_at_the_limit_only_switching_off_is_right():
    for draw in VARIANTS:
        ask = at_the_limit(draw.part("x"))
        for option in ask.options:
            state = ask.judge(option).state
            assert state == ("right" if option == OFF else "unsafe")
        assert hazards(ask, FEEL) == ("flying leads and eyes",)
        shown = re.search(r"fallen to ([\d.]+) V", asked(ask))[1]
        assert float(shown) < float(re.search(r"set ([\d.]+) V", asked(ask))[1])


@pytest.mark.common_practice
def test_the_waveform_shows_what_is_asked():
    seen = set()
    for draw in VARIANTS:
        ask = from_the_waveform(draw.part("x"))
        alt = ask.picture().alt
        assert ask.answer not in alt and "Symptoms" not in alt
        seen.add((ask.answer, "50 times" in alt, "from 5.00 V to 5.00 V" in alt))
    assert seen == {
        ("one diode open", True, True),
        ("reservoir dried out", False, True),
        ("regulator shorted", False, False),
        ("bad joint before the rectifier", False, False),
    }


PARTS = {
    "ripple at twice mains": "reservoir",
    "ripple at twice mains; reservoir warm": "reservoir",
    "ripple at mains": "rectifier",
    "ripple at mains; draws too much; limit at once": "rectifier",
    "output high; output ripples": "regulator",
    "rail high; no output": "regulator",
    "rail low; no output; draws too much; limit at once": "what the rail feeds",
    "ripple at twice mains; draws too much": "what the rail feeds",
}


@pytest.mark.common_practice
def test_from_symptom_to_part():
    seen = set()
    for draw in VARIANTS:
        for row, cells in from_symptom_to_part(draw.part("x")).cells.items():
            assert cells["part"].judge(PARTS[row]).state == "right"
            seen.add(row)
    assert seen == set(PARTS)


@pytest.mark.common_practice
def test_without_a_limit_all_else_is_dangerous():
    for draw in VARIANTS:
        ask = without_a_limit(draw.part("x"))
        states = [ask.judge(option).state for option in ask.options]
        assert sorted(states) == ["right", "unsafe", "unsafe", "unsafe"]


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("early", "late", "hazard"),
    [
        (METAL, EMPTY, "stored charge"),
        (OHMS, EMPTY, "stored charge"),
        (LOW, TURNED, "heat and fire"),
        (LOW, OHMS, "heat and fire"),
        (RAILS, LOW, "heat and fire"),
    ],
)
def test_dangerous_orders(early, late, hazard):
    ask = order_of_work(Draw("x").part("y"))
    steps = [step for step in ask.steps if step != early]
    steps.insert(steps.index(late), early)
    judged = ask.judge(" > ".join(steps))
    assert judged.state == "unsafe" and hazard in judged.hazards


def test_the_order_of_the_lesson_is_right():
    ask = order_of_work(Draw("x").part("y"))
    assert ask.judge(" > ".join((EMPTY, METAL, TURNED, OHMS, LOW, RAILS))).state == "right"


def test_every_variant_is_whole():
    for draw in VARIANTS:
        asks = questions(draw)
        assert [ask.id for ask in asks] == [f"q{number}" for number in range(1, 10)]
        assert len(warm_up(draw)) == 2
        for ask in asks:
            if isinstance(getattr(ask, "answer", None), float | int):
                for mistake in ask.mistakes:
                    assert ask.judge(f"{mistake.when:.6g} {ask.unit}").state == "wrong"
