"""The exercise of lesson 05: its answers against their sources, in every variant."""

import math
import re

import pytest

from repairlib.core.draws import Draw
from repairlib.learn.questions.measure_and_judge import (
    DISCHARGE,
    ESR,
    NOTE,
    PLUG,
    PROVE,
    TIPS,
    esr_limit,
    four_wires,
    hidden,
    leads,
    one_count,
    order_of_work,
    other_frequency,
    resistor_on_the_board,
    rms,
    still_on,
    upper_end,
    verdict,
    what_it_means,
)
from tests.documents import document
from tests.learn.asking import VARIANTS, all_seen, asked, first_is_right, hazards, told

UPPER_ENDS = {
    "`120.0 V`. Its data sheet says ±(1 % of reading + 3": ("121.5 V", "124.8 V"),
    "`100.0 V`. Its data sheet says ±(2 % of reading + 2": ("102.2 V", "104 V"),
    "`2.000 V`. Its data sheet says ±(0.5 % of reading + 3": ("2.013 V", "2.07 V"),
    "`100.0 V`. Its data sheet says ±(1 % of reading + 2": ("101.2 V", "103 V"),
    "`250.0 V`. Its data sheet says ±(1 % of reading + 3": ("252.8 V", "260 V"),
    "`50.00 V`. Its data sheet says ±(0.5 % of reading + 4": ("50.29 V", "52.25 V"),
    "`12.00 V`. Its data sheet says ±(0.8 % of reading + 2": ("12.116 V", "12.336 V"),
    "`4.000 V`. Its data sheet says ±(1.5 % of reading + 5": ("4.065 V", "4.26 V"),
}
PRINTED = (
    document("Meter accuracy KA-03135", "120.0 V ± 1.5 V"),
    document("Meter accuracy and precision", "to 102.2 V"),
    document("Meter error and accuracy", "to 2.013 V; to 101.2 V"),
)


@pytest.mark.published("; ".join(PRINTED) + "; the other four by hand from the same rule")
def test_upper_end():
    all_seen(upper_end, UPPER_ENDS, first_is_right)


@pytest.mark.behaviour
def test_digits_taken_for_per_cent_get_a_hint():
    def check(ask, answers):
        assert "not extra per cent" in ask.judge(answers[1]).says[0]

    all_seen(upper_end, UPPER_ENDS, check)


# Reading, tips held together, and the difference, by hand
@pytest.mark.common_practice
def test_leads():
    by_hand = {"`0.35 Ω`": ("0.25", "0.10 Ω"), "`0.62 Ω`": ("0.24", "0.38 Ω")}
    by_hand |= {"`0.47 Ω`": ("0.31", "0.16 Ω"), "`0.53 Ω`": ("0.28", "0.25 Ω")}
    by_hand |= {"`0.58 Ω`": ("0.27", "0.31 Ω"), "`0.40 Ω`": ("0.19", "0.21 Ω")}
    by_hand |= {"`0.83 Ω`": ("0.30", "0.53 Ω"), "`0.66 Ω`": ("0.37", "0.29 Ω")}

    def check(ask, answers):
        tips, right = answers
        assert f"held together it shows `{tips} Ω`" in asked(ask)
        assert ask.judge(right).state == "right"
        (shown,) = re.findall(r"shows `([\d.]+ Ω`)", asked(ask))[:1]
        assert "forgot the resistance of the leads" in ask.judge(shown.strip("`")).says[0]

    all_seen(leads, by_hand, check)


@pytest.mark.common_practice
def test_rms():
    by_hand = {"24 V": ("8.49 V", "12 V"), "34 V": ("12.0 V", "17 V")}
    by_hand |= {"68 V": ("24.0 V", "34 V"), "17 V": ("6.01 V", "8.5 V")}
    by_hand |= {"40 V": ("14.1 V", "20 V"), "10 V": ("3.54 V", "5 V"), "52 V": ("18.4 V", "26 V")}
    by_hand |= {"14 V": ("4.95 V", "7 V"), "90 V": ("31.8 V", "45 V")}

    def check(ask, answers):
        assert ask.judge(answers[0]).state == "right"
        assert ask.judge(answers[1]).says == ("That is the peak. RMS is less.",)

    all_seen(rms, by_hand, check)


# tan δ and µF, then ESR = tan δ / (2 π f C) at 120 Hz and, wrongly, at 100 kHz and upside down;
# worked by hand.
ESR_LIMITS = {
    "0.16": (220, "0.9646 Ω", "1.158 mΩ", "37.7 Ω"),
    "0.22": (1000, "0.2918 Ω", "0.350 mΩ", "6.03 Ω"),
    "0.14": (470, "0.3951 Ω", "0.474 mΩ", "20.2 Ω"),
    "0.10": (100, "1.326 Ω", "1.592 mΩ", "133 Ω"),
    "0.20": (2200, "0.1206 Ω", "0.1447 mΩ", "3.01 Ω"),
    "0.12": (330, "0.4823 Ω", "0.5787 mΩ", "33.5 Ω"),
    "0.09": (47, "2.540 Ω", "3.048 mΩ", "313 Ω"),
    "0.23": (680, "0.4486 Ω", "0.5383 mΩ", "8.48 Ω"),
}


@pytest.mark.published(document("Cornell Dubilier ESRD", "DF is ESR over reactance at 120 Hz"))
def test_esr_limit():
    def check(ask, answers):
        microfarad, right, *_ = answers
        assert f"A new {microfarad} µF" in asked(ask) and "at 120 Hz?" in asked(ask)
        assert ask.judge(right).state == "right"

    all_seen(esr_limit, ESR_LIMITS, check)


@pytest.mark.behaviour
def test_hints_to_the_esr_limit():
    def check(ask, answers):
        *_, at_100_khz, upside_down = answers
        assert "At which frequency" in ask.judge(at_100_khz).says[0]
        assert "other side of the stroke" in ask.judge(upside_down).says[0]

    all_seen(esr_limit, ESR_LIMITS, check)


@pytest.mark.common_practice
def test_resistor_on_the_board():
    # R1 beside R2 + R3: 10k | 40k, 1k | 1.5k, 100k | 150k, 22k | 22k,
    # 15k | 30k, 33k | 33k, 12k | 6k
    by_hand = {"R1: resistor 10 kΩ": "8 kΩ", "R1: resistor 1 kΩ": "600 Ω"}
    by_hand |= {"R1: resistor 100 kΩ": "60 kΩ", "R1: resistor 22 kΩ": "11 kΩ"}
    by_hand |= {"R1: resistor 15 kΩ": "10 kΩ", "R1: resistor 33 kΩ": "16.5 kΩ"}
    by_hand["R1: resistor 12 kΩ"] = "4 kΩ"
    for draw in VARIANTS:
        ask = resistor_on_the_board(draw.part("x"))
        drawn = ask.picture().alt.replace("\xa0", " ")
        (key,) = (key for key in by_hand if key in drawn)
        assert ask.judge(by_hand[key]).state == "right"
        alone = key.removeprefix("R1: resistor ")
        assert "That is R1 alone" in ask.judge(alone).says[0]


# With ±(2 % + 3 digits) of 1.00 Ω at most, by hand: 0.94 Ω is 0.8912 to 0.9888 Ω,
# 1.08 Ω is 1.0284 to 1.1316 Ω; 0.97 Ω is 0.9206 to 1.0194 Ω, 1.03 Ω is 0.9794 to 1.0806 Ω.
VERDICTS = {"`0.94 Ω`": "Pass", "`1.08 Ω`": "Fail"}
ON_BOTH_SIDES = {"`0.97 Ω`": "Cannot", "`1.03 Ω`": "Cannot"}


def check_verdicts(by_hand):
    """Each of these readings comes up, and its verdict is the right option."""
    seen = set()
    for draw in VARIANTS:
        ask = verdict(draw.part("x"))
        for shown in (one for one in by_hand if one in asked(ask)):
            (right,) = (option for option in ask.options if option.startswith(by_hand[shown]))
            assert ask.judge(right).state == "right"
            seen.add(shown)
    assert seen == set(by_hand)


@pytest.mark.published(
    document("ILAC-G8:09/2019", "4.2.3: pass up to the limit less w, fail from the limit plus w")
)
def test_verdict():
    check_verdicts(VERDICTS)


@pytest.mark.behaviour
def test_an_interval_on_both_sides_of_the_limit_cannot_be_told():
    check_verdicts(ON_BOTH_SIDES)


# Limit, then reading ± (2 % of it + 0.03 Ω), by hand: 1.90 ± 0.068, 2.04 ± 0.0708, 2.15 ± 0.073,
# 0.45 ± 0.039, 0.48 ± 0.0396, 0.56 ± 0.0412, 3.10 ± 0.092 and 3.50 ± 0.100 Ω.
INTERVALS = {
    "2.00 Ω at most. The meter shows `1.90": ("1.83 to 1.97 Ω: pass", "1.86 to 1.94 Ω"),
    "2.00 Ω at most. The meter shows `2.04": ("1.97 to 2.11 Ω: cannot tell", "2.00 to 2.08 Ω"),
    "2.00 Ω at most. The meter shows `2.15": ("2.08 to 2.22 Ω: fail", "2.11 to 2.19 Ω"),
    "0.50 Ω at most. The meter shows `0.45": ("0.41 to 0.49 Ω: pass", "0.44 to 0.46 Ω"),
    "0.50 Ω at most. The meter shows `0.48": ("0.44 to 0.52 Ω: cannot tell", "0.47 to 0.49 Ω"),
    "0.50 Ω at most. The meter shows `0.56": ("0.52 to 0.60 Ω: fail", "0.55 to 0.57 Ω"),
    "3.30 Ω at most. The meter shows `3.10": ("3.01 to 3.19 Ω: pass", "3.04 to 3.16 Ω"),
    "3.30 Ω at most. The meter shows `3.50": ("3.40 to 3.60 Ω: fail", "3.43 to 3.57 Ω"),
}


@pytest.mark.published(
    document("ILAC-G8:09/2019", "4.2.3: pass up to the limit less w, fail from the limit plus w")
)
def test_interval_and_verdict():
    seen = set()
    for draw in VARIANTS:
        ask = verdict(draw.part("x"))
        for shown in (one for one in INTERVALS if one in asked(ask)):
            right, without_digits = INTERVALS[shown]
            assert ask.judge(right).state == "right"
            (narrow,) = (one for one in ask.options if one.startswith(without_digits))
            assert "left the digits out" in told(ask, narrow)
            for other in set(ask.options) - {right, narrow}:
                assert "On which side" in told(ask, other)
            seen.add(shown)
    assert seen == set(INTERVALS)


@pytest.mark.common_practice
def test_judgements():
    for draw in VARIANTS:
        for ask_of, word in (
            (other_frequency, {False: "Nothing yet", True: "It passes"}),
            (hidden, {False: "C1 may be", True: "C1 is good"}),
            (still_on, {False: "Plug"}),
        ):
            ask = ask_of(draw.part("x"))
            drawn = ask.picture().alt if ask.picture else ""
            alone = "for 100 kHz" in ask.prompt or "resistor" in drawn
            right = [option for option in ask.options if ask.judge(option).state == "right"]
            assert len(right) == 1 and right[0].startswith(word[alone])


@pytest.mark.common_practice
def test_what_could_hurt_is_told():
    ask = still_on(Draw("x"))
    for option in ask.options:
        if not option.startswith("Plug"):
            assert hazards(ask, option)
    work = order_of_work(Draw("x"))
    assert work.judge(" > ".join([PLUG, DISCHARGE, PROVE, TIPS, ESR, NOTE])).state == "right"
    charged = " > ".join([PLUG, TIPS, ESR, DISCHARGE, PROVE, NOTE])
    assert hazards(work, charged) == ("stored charge",)
    unproved = " > ".join([PLUG, PROVE, DISCHARGE, TIPS, ESR, NOTE])
    assert hazards(work, unproved) == ("stored charge",)
    early = work.judge(" > ".join([PLUG, DISCHARGE, TIPS, PROVE, ESR, NOTE]))
    assert early.state == "partly right"
    assert any("Which range" in said or "which range" in said for said in early.says)
    live = " > ".join([DISCHARGE, PROVE, PLUG, TIPS, ESR, NOTE])
    assert hazards(work, live) == ("mains",)
    forgot_tips = work.judge(" > ".join([PLUG, DISCHARGE, PROVE, ESR, TIPS, NOTE]))
    assert forgot_tips.state == "partly right"
    assert any("belongs to the leads" in said for said in forgot_tips.says)


@pytest.mark.common_practice
def test_practice():
    for draw in VARIANTS:
        ask = four_wires(draw)
        volt, ampere = (re.search(rf"([\d.]+) {unit}", asked(ask)) for unit in "VA")
        assert math.isclose(ask.answer, float(volt[1]) / float(ampere[1]))
        assert one_count(draw).judge("5 V").state == "wrong"
        table = what_it_means(draw)
        rows = {row: cells["means"].answer for row, cells in table.cells.items()}
        assert table.judge(table.as_typed(rows)).state == "right"
        assert rows["ESR: 0.00 Ω"].startswith("the probes touch")
