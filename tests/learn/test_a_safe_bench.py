"""The exercise of lesson 01: its answers against their sources, in every variant."""

import pytest

from repairlib.core.draws import Draw
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
from tests.documents import document
from tests.learn.asking import VARIANTS, all_seen, asked, first_is_right, hazards

ES1 = document("IEC 62368-1", "ES1 ends at 60 V dc")


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
        "330 µF is charged to 200": ("6.6 J", "13.2 J"),
        "2200 µF is charged to 80": ("7.04 J", "14.08 J"),
        "100 µF is charged to 325": ("5.281 J", "10.56 J"),
        "68 µF is charged to 450": ("6.885 J", "13.77 J"),
        "4700 µF is charged to 35": ("2.879 J", "5.7575 J"),
    }

    def check(ask, answers):
        assert ask.judge(answers[0]).state == "right"
        assert ask.judge(answers[1]).says == ("You left out the half.",)

    all_seen(energy, by_hand, check)


# t = R C ln(V0 / 60 V), worked by hand; then one time constant
TIMES = {
    "220 µF at 400 V": ("41.74 s", "22 s"),
    "470 µF at 385 V": ("1.922 s", "1.034 s"),
    "1000 µF at 100 V": ("5.108 s", "10 s"),
    "100 µF at 325 V": ("1.689 s", "1 s"),
    "330 µF at 200 V": ("8.741 s", "7.26 s"),
    "68 µF at 450 V": ("6.44 s", "3.196 s"),
    "150 µF at 340 V": ("8.586 s", "4.95 s"),
    "2200 µF at 80 V": ("2.975 s", "10.34 s"),
    "1500 µF at 90 V": ("3.406 s", "8.4 s"),
}


@pytest.mark.published(f"{ES1}; the times by hand")
def test_time_to_60_volts():
    def check(ask, answers):
        assert "down to 60 V, the limit of ES1" in asked(ask)
        first_is_right(ask, answers)

    all_seen(time_to_limit, TIMES, check)


@pytest.mark.behaviour
def test_hints_to_the_time_to_60_volts():
    def check(ask, answers):
        assert "one time constant" in ask.judge(answers[1]).says[0]
        thousand = f"{float(answers[0].split()[0]) * 1000} s"
        assert "MΩ for kΩ" in ask.judge(thousand).says[0]

    all_seen(time_to_limit, TIMES, check)


# R = t / (C ln(V0 / 60 V)), worked by hand; then the R of one time constant
BLEEDERS = {
    "100 µF at 325.3 V": ("11.83 kΩ", "20 kΩ"),
    "220 µF at 400 V": ("143.8 kΩ", "273 kΩ"),
    "47 µF at 170 V": ("102.1 kΩ", "106.4 kΩ"),
    "470 µF at 385 V": ("11.45 kΩ", "21.3 kΩ"),
    "68 µF at 450 V": ("36.49 kΩ", "73.5 kΩ"),
    "330 µF at 200 V": ("25.17 kΩ", "30.3 kΩ"),
    "150 µF at 340 V": ("19.22 kΩ", "33.3 kΩ"),
    "47 µF at 380 V": ("34.58 kΩ", "63.8 kΩ"),
    "33 µF at 325.3 V": ("53.78 kΩ", "90.9 kΩ"),
}


@pytest.mark.published(f"{ES1}; the resistors by hand")
def test_bleeder():
    def check(ask, answers):
        assert "down to 60 V" in asked(ask)
        first_is_right(ask, answers)

    all_seen(bleeder, BLEEDERS, check)


@pytest.mark.behaviour
def test_hints_to_the_bleeder():
    def check(ask, answers):
        assert "MΩ for kΩ" in ask.judge(answers[0].replace("k", "M")).says[0]
        assert "one time constant" in ask.judge(answers[1]).says[0]

    all_seen(bleeder, BLEEDERS, check)


# The next ones made below it, E24 and E12, and one that is too slow
MADE = {
    "47 µF at 170 V": ("100 kΩ", "110 kΩ"),
    "100 µF at 325.3 V": ("11 kΩ", "12 kΩ"),
    "220 µF at 400 V": ("130 kΩ", "150 kΩ"),
    "470 µF at 385 V": ("11 kΩ", "12 kΩ"),
    "68 µF at 450 V": ("36 kΩ", "39 kΩ"),
    "330 µF at 200 V": ("24 kΩ", "27 kΩ"),
    "150 µF at 340 V": ("18 kΩ", "20 kΩ"),
    "47 µF at 380 V": ("33 kΩ", "36 kΩ"),
    "33 µF at 325.3 V": ("51 kΩ", "56 kΩ"),
}


@pytest.mark.published("IEC 60063: 10 11 12 13 15, 18 20 22 24 27, 33 36 39 and 51 56 are E24")
def test_the_resistor_that_one_would_buy_is_right_too():
    all_seen(bleeder, MADE, lambda ask, answers: is_right(ask, answers[0]))


@pytest.mark.behaviour
def test_a_resistor_is_told_whether_it_is_quick_enough():
    def check(ask, answers):
        for slow in (answers[1], "200 kΩ", "1 MΩ"):
            assert ask.judge(slow).says[0].startswith("Too slow")
        assert ask.judge("4.7 kΩ").says == (
            "Quick enough. But a larger one still is: how large may it be?",
        )

    all_seen(bleeder, MADE, check)


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
def test_touching_comes_only_after_a_reading_of_next_to_nothing():
    for draw in VARIANTS[:20]:
        assert "touch only at next to nothing" in measured_once(draw.part("x")).answer
    assert "next to nothing" in MINUTE


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


# What each line of the audit is, with ± 5 % of the meter, all worked by hand:
# 36.9 MΩ - 5 % = 35.06 MΩ, above 35 MΩ; 2.4 GΩ - 5 % = 2.28 GΩ, above 1 GΩ.
AUDIT = {
    "wrist strap 1: 1.02 MΩ": "pass",
    "wrist strap 1: 36.9 MΩ": "fail",
    "wrist strap 1: 0.96 MΩ": "pass",
    "wrist strap 2: 3.2 kΩ": "fail",
    "wrist strap 2: 1.1 kΩ": "fail",
    "wrist strap 2: 4.7 kΩ": "fail",
    "mat: 2.4 GΩ at 100 V": "fail",
    "mat: 45 MΩ at 100 V": "pass",
    "mat: 12 MΩ at 2.5 V": "cannot tell",
    "person with shoes and floor: 28 MΩ at 100 V, nobody walked": "cannot tell",
    "person with shoes and floor: 500 MΩ at 100 V, walking 120 V": "fail",
    "person with shoes and floor: 80 MΩ at 100 V, walking 40 V": "pass",
}
# 14 Ω - 5 % = 13.3 Ω, above 10 Ω
IRON_TIPS = {
    "iron tip to ground (in use): 14 Ω": "fail",
    "iron tip to ground (in use): 3.0 Ω": "pass",
    "iron tip to ground (in use): 22 Ω": "fail",
}
# 0.931 to 1.029 GΩ lies on both sides of 1 GΩ
TOO_CLOSE = {"mat: 0.98 GΩ at 100 V": "cannot tell"}


def check_audit(by_hand):
    """These lines of the audit come up, and each has its verdict."""
    seen = set()
    for draw in VARIANTS:
        cells = audit(draw.part("x")).cells
        for row in set(cells) & set(by_hand):
            assert cells[row]["verdict"].judge(by_hand[row]).state == "right"
            seen.add(row)
    assert seen == set(by_hand)


S20_20 = document("ANSI/ESD S20.20-2007", "strap below 35 MΩ; person below 1 GΩ and below 100 V")
IEC_STRAP = document("IEC wrist strap, quoted", "750 kΩ to 35 MΩ")
FORUM = document("ESD Association forum", "100 V from 1 MΩ on; every person is walked")
MAT = document("EN 61340-5-1:2007", "worksurface below 1 GΩ")


@pytest.mark.published(f"{S20_20}; {IEC_STRAP}; {FORUM}; {MAT}")
def test_audit_of_strap_mat_and_person():
    check_audit(AUDIT)


@pytest.mark.from_memory("ESD S13.1: tip to ground 10 Ω in use")
def test_audit_of_the_iron():
    check_audit(IRON_TIPS)


@pytest.mark.behaviour
def test_audit_too_close_to_a_limit():
    check_audit(TOO_CLOSE)


@pytest.mark.behaviour
def test_a_whole_audit_and_the_danger_of_a_bare_strap():
    by_hand = AUDIT | IRON_TIPS | TOO_CLOSE
    for draw in VARIANTS:
        table = audit(draw.part("x"))
        answers = {row: by_hand[row] for row in table.cells}
        assert table.judge(table.as_typed(answers)).state == "right"
        (bare,) = (row for row in table.cells if row.startswith("wrist strap 2"))
        worn = table.judge(table.as_typed(answers | {bare: "pass"}))
        assert (worn.state, worn.hazards) == ("unsafe", ("mains",))


def is_right(ask, answer):
    assert ask.judge(answer).state == "right"


@pytest.mark.published(document("IEC 62368-1", "ES1 to 60 V dc, ES2 to 120 V dc"))
def test_practised_energy_classes():
    by_hand = {"48 V": "ES1", "75 V": "ES2", "100 V": "ES2", "325 V": "ES3"}
    all_seen(energy_class, by_hand, is_right)


# R C, worked by hand
@pytest.mark.common_practice
def test_practised_time_constants():
    constants = {"1 kΩ lies": "1 s", "10 kΩ": "2.2 s", "4.7 kΩ": "0.47 s", "1 MΩ": "0.47 s"}
    all_seen(time_constant, constants, is_right)


@pytest.mark.common_practice
def test_a_charge_that_is_not_felt_can_damage_a_part():
    for draw in VARIANTS:
        assert part_and_body(draw).answer.startswith("Yes, and nobody")
