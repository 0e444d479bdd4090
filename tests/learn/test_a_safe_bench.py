"""The exercise of lesson 01: its answers against their sources, in every variant."""

import pytest

from repairlib.learn import Draw
from repairlib.learn.questions.a_safe_bench import (
    DISCHARGE,
    KNOWN,
    KNOWN_AGAIN,
    MINUTE,
    PLUG,
    TOUCH,
    audit,
    bleeder,
    bleeder_trusted,
    energy,
    energy_class,
    measured_once,
    order_of_work,
    part_and_body,
    plug_pulled,
    strap_at_high_voltage,
    strap_current,
    time_constant,
    time_to_limit,
)
from tests.learn.asking import VARIANTS, all_seen, asked, hazards


@pytest.mark.common_practice
def test_peak_for_rms():
    by_hand = {"is 230 V": "325.3 V", "is 120 V": "169.7 V", "is 240 V": "339.4 V"}
    by_hand |= {"is 264 V": "373.4 V", "is 220 V": "311.1 V", "is 127 V": "179.6 V"}
    by_hand |= {"is 100 V": "141.4 V", "is 277 V": "391.7 V"}

    def check(ask, peak):
        assert ask.judge(peak).state == "right"
        rms = asked(ask).split("is ")[1].split(" RMS")[0]
        assert "That is the RMS value" in ask.judge(rms).says[0]

    all_seen(plug_pulled, by_hand, check)


# E = C V² / 2, worked by hand
@pytest.mark.common_practice
def test_energy_without_the_half():
    by_hand = {
        "470 µF is charged to 400": ("37.6 J", "75.2 J"),
        "220 µF is charged to 385": ("16.3 J", "32.6 J"),
        "1000 µF is charged to 63": ("1.985 J", "3.97 J"),
        "10000 µF is charged to 50": ("12.5 J", "25 J"),
    }

    def check(ask, answers):
        assert ask.judge(answers[0]).state == "right"
        assert ask.judge(answers[1]).says == ("You left out the half.",)

    all_seen(energy, by_hand, check)


# t = R C ln(V0 / 60 V), worked by hand; then one time constant
@pytest.mark.published("IEC 62368-1: 60 V dc is the limit of ES1")
def test_time_constant_for_the_time_to_60_volts():
    by_hand = {
        "220 µF at 400 V": ("41.74 s", "22 s"),
        "470 µF at 385 V": ("1.922 s", "1.034 s"),
        "1000 µF at 100 V": ("5.108 s", "10 s"),
        "100 µF at 325 V": ("1.689 s", "1 s"),
    }

    def check(ask, answers):
        assert ask.judge(answers[0]).state == "right"
        assert "one time constant" in ask.judge(answers[1]).says[0]
        thousand = f"{float(answers[0].split()[0]) * 1000} s"
        assert "MΩ for kΩ" in ask.judge(thousand).says[0]

    all_seen(time_to_limit, by_hand, check)


# R = t / (C ln(V0 / 60 V)), worked by hand
@pytest.mark.published("IEC 62368-1: 60 V dc is the limit of ES1")
def test_bleeder():
    by_hand = {
        "100 µF at 325.3 V": ("11.83 kΩ", "20 kΩ"),
        "220 µF at 400 V": ("143.8 kΩ", "273 kΩ"),
        "47 µF at 170 V": ("102.1 kΩ", "106.4 kΩ"),
        "470 µF at 385 V": ("11.45 kΩ", "21.3 kΩ"),
    }

    def check(ask, answers):
        assert ask.judge(answers[0]).state == "right"
        assert "MΩ for kΩ" in ask.judge(answers[0].replace("k", "M")).says[0]
        assert "one time constant" in ask.judge(answers[1]).says[0]

    all_seen(bleeder, by_hand, check)


@pytest.mark.common_practice
def test_strap_current():
    by_hand = {"230 V": ("0.23 mA", "0.325 mA"), "120 V": ("0.12 mA", "0.17 mA")}
    by_hand |= {"250 V": ("0.25 mA", "0.354 mA"), "110 V": ("0.11 mA", "0.156 mA")}
    by_hand |= {"220 V": ("0.22 mA", "0.311 mA"), "127 V": ("0.127 mA", "0.18 mA")}
    by_hand |= {"100 V": ("0.1 mA", "0.141 mA"), "240 V": ("0.24 mA", "0.339 mA")}

    def check(ask, answers):
        assert ask.judge(answers[0]).state == "right"
        assert "peak of the current" in ask.judge(answers[1]).says[0]
        assert "µA" not in ask.picture().alt

    all_seen(strap_current, by_hand, check)


@pytest.mark.common_practice
def test_what_could_hurt_is_told():
    for draw in VARIANTS[:20]:
        for ask_of, right, hazard in (
            (bleeder_trusted, "Nothing for sure", "stored charge"),
            (measured_once, "Try the meter", "stored charge"),
            (strap_at_high_voltage, "Strap off", "mains"),
        ):
            ask = ask_of(draw.part("x"))
            for option in ask.options:
                if option.startswith(right):
                    assert ask.judge(option).state == "right"
                else:
                    assert hazards(ask, option) == (hazard,)


@pytest.mark.common_practice
def test_order_of_work():
    work = order_of_work(Draw("x"))

    def judged(*steps):
        return work.judge(" > ".join(steps))

    assert judged(PLUG, KNOWN, DISCHARGE, KNOWN_AGAIN, MINUTE, TOUCH).state == "right"
    early = judged(PLUG, KNOWN, DISCHARGE, KNOWN_AGAIN, TOUCH, MINUTE)
    assert early.hazards == ("stored charge",)
    unproved = judged(PLUG, KNOWN, DISCHARGE, MINUTE, TOUCH, KNOWN_AGAIN)
    assert unproved.hazards == ("stored charge",)
    live = judged(KNOWN, DISCHARGE, PLUG, KNOWN_AGAIN, MINUTE, TOUCH)
    assert live.hazards == ("mains",)
    untried = judged(PLUG, DISCHARGE, KNOWN, KNOWN_AGAIN, MINUTE, TOUCH)
    assert untried.state == "partly right" and "meter works" in untried.says[0]


# 36.9 MΩ - 5 % = 35.06 MΩ; 2.4 GΩ - 5 % = 2.28 GΩ; 0.98 GΩ ± 5 % = 0.931 to 1.029 GΩ;
# 14 Ω - 5 % = 13.3 Ω; all worked by hand.
@pytest.mark.published("S20.20-2007 table, ESD Association forum, IEC strap limit, as quoted")
def test_audit():
    by_hand = {
        "wrist strap 1: 1.02 MΩ": "pass",
        "wrist strap 1: 36.9 MΩ": "fail",
        "wrist strap 1: 0.96 MΩ": "pass",
        "wrist strap 2: 3.2 kΩ": "fail",
        "wrist strap 2: 1.1 kΩ": "fail",
        "wrist strap 2: 4.7 kΩ": "fail",
        "mat: 2.4 GΩ at 100 V": "fail",
        "mat: 45 MΩ at 100 V": "pass",
        "mat: 0.98 GΩ at 100 V": "cannot tell",
        "mat: 12 MΩ at 2.5 V": "cannot tell",
        "person with shoes and floor: 28 MΩ at 100 V, nobody walked": "cannot tell",
        "person with shoes and floor: 500 MΩ at 100 V, walking 120 V": "fail",
        "person with shoes and floor: 80 MΩ at 100 V, walking 40 V": "pass",
        "iron tip to ground (in use): 14 Ω": "fail",
        "iron tip to ground (in use): 3.0 Ω": "pass",
        "iron tip to ground (in use): 22 Ω": "fail",
    }
    seen = set()
    for draw in VARIANTS:
        table = audit(draw.part("x"))
        seen |= set(table.cells)
        answers = {row: by_hand[row] for row in table.cells}
        assert table.judge(table.as_typed(answers)).state == "right"
        (bare,) = (row for row in table.cells if row.startswith("wrist strap 2"))
        worn = table.judge(table.as_typed(answers | {bare: "pass"}))
        assert (worn.state, worn.hazards) == ("unsafe", ("mains",))
    assert seen == set(by_hand)


def is_right(ask, answer):
    assert ask.judge(answer).state == "right"


@pytest.mark.published("IEC 62368-1: ES1 to 60 V dc, ES2 to 120 V dc")
def test_practice():
    by_hand = {"48 V": "ES1", "75 V": "ES2", "100 V": "ES2", "325 V": "ES3"}
    all_seen(energy_class, by_hand, is_right)
    constants = {"1 kΩ": "1 s", "10 kΩ": "2.2 s", "4.7 kΩ": "0.47 s", "1 MΩ": "0.47 s"}
    for draw in VARIANTS:
        ask = time_constant(draw)
        assert ask.judge(constants[asked(ask).split(" lies")[0]]).state == "right"
        assert part_and_body(draw).answer.startswith("Yes, and nobody")
