"""The exercise of lesson 00: its answers against their sources, in every variant."""

import re

import pytest

from repairlib.core.draws import Draw
from repairlib.faces.panels import question_page
from repairlib.learn import Number, open_exercise
from repairlib.learn.questions.start_here import cannot_be_read, falling_voltage, two_readings
from tests.documents import document
from tests.learn.asking import VARIANTS, all_seen, asked, asks_of, told

questions, warm_up = asks_of("00-start-here")


FIRST_BELOW = {"310 V": 60, "325 V": 120, "150 V": 30}  # seconds, read off each list


@pytest.mark.published(document("IEC 62368-1", "ES1 ends at 60 V dc, steady"))
def test_times_at_which_the_capacitor_is_first_below_60_volts():
    def check(ask, seconds):
        listed = re.findall(r"(\d+) V after (\d+) s", asked(ask))
        assert min(int(second) for volt, second in listed if int(volt) < 60) == seconds
        assert ask.judge(f"{seconds} s").state == "right"

    all_seen(falling_voltage, {f"shows: {start}": s for start, s in FIRST_BELOW.items()}, check)


@pytest.mark.common_practice
def test_capacitor_just_unplugged_is_dangerous():
    for draw in VARIANTS:
        assert falling_voltage(draw.part("x")).judge("0 s").hazards == ("stored charge",)


ON_A_DISC = document("KEMET ceramic ordering table", "two figures and a power of ten, in pF")
ON_A_CAN = document("Nichicon CD", "220 over E is 220 µF 25 V")
TWO_MEANINGS = {220: ("22 pF", "220 µF"), 100: ("10 pF", "100 µF")}  # on a disc, on a can
TWO_MEANINGS |= {330: ("33 pF", "330 µF"), 470: ("47 pF", "470 µF")}
TWO_MEANINGS |= {150: ("15 pF", "150 µF"), 680: ("68 pF", "680 µF"), 560: ("56 pF", "560 µF")}


def readings(ask):
    """The figures, whether on a can, and what they mean there and on the other body."""
    figures = int(ask.prompt.split("`")[1])
    on_can = "can" in ask.picture().alt.lower()
    disc, can = TWO_MEANINGS[figures]
    return (figures, on_can), *((can, disc) if on_can else (disc, can))


@pytest.mark.published(f"{ON_A_DISC}; {ON_A_CAN}")
def test_what_the_same_figures_mean_on_a_disc_and_on_a_can():
    seen = set()
    for draw in VARIANTS:
        ask = two_readings(draw.part("x"))
        shown, right, _ = readings(ask)
        assert ask.judge(right).state == "right"
        seen.add(shown)
    assert seen == {(figures, on_can) for figures in TWO_MEANINGS for on_can in (False, True)}


@pytest.mark.behaviour
def test_the_meaning_on_the_other_body_gets_a_hint():
    for draw in VARIANTS:
        ask = two_readings(draw.part("x"))
        assert told(ask, readings(ask)[2])


RIGHT_WORDS = {
    "q1": "Pull the plug",
    "q3": "Measure across it again",
    "q5": "Clip the black lead on before",
}


@pytest.mark.common_practice
@pytest.mark.parametrize("name", RIGHT_WORDS)
def test_decisions_at_the_bench(name):
    for draw in VARIANTS:
        (ask,) = (one for one in questions(draw) if one.id == name)
        right = [option for option in ask.options if ask.judge(option).state == "right"]
        assert len(right) == 1 and right[0].startswith(RIGHT_WORDS[name])
        others = [ask.judge(option) for option in ask.options if option not in right]
        assert all(judged.says for judged in others)


# What is typed first and in its place, and what is meant, in SI.
MEANT = {
    "1,500 pF": ("1500 pF", 1.5e-9),
    "33": ("33 nF", 33e-9),
    "9 V": ("9", 9),
    "15 mA": ("15 mV", 15e-3),
    "2,200 µH": ("2.2 mH", 2.2e-3),
    "68": ("68 µH", 68e-6),
    "1,200 Ω": ("1.2 kΩ", 1200),
    "330 F": ("330 Ω", 330),
    "24 pcs": ("24", 24),
    "6,800 pF": ("6.8 nF", 6.8e-9),
    "90 V": ("90 s", 90),
    "12,000 pF": ("12 nF", 12e-9),
}
UNITS = {"a capacitance": "F", "an inductance": "H", "a voltage": "V", "a resistance": "Ω"}


def test_what_is_typed_anew_is_read_as_meant_and_nothing_else_is():
    """The right option is the only one that the form reads as what is meant."""
    seen = set()
    for number in range(200):
        ask = cannot_be_read(Draw(f"typed {number}"))
        if "You mean" not in ask.prompt:
            continue
        asked_for, typed = ask.prompt.split("for ")[1].split(". ")[0], ask.prompt.split("`")[1]
        unit = UNITS.get(asked_for, "s" if asked_for == "a time" else "")
        right, meant = MEANT[typed]
        form = Number(answer=meant, unit=unit)
        assert form.judge(typed).state == "cannot read"
        assert [one for one in ask.options if form.judge(one).state == "right"] == [right]
        assert ask.judge(right).state == "right"
        seen.add(typed)
    assert seen == set(MEANT)


def test_what_cannot_be_read_is_what_the_form_refuses():
    """Each case is refused by a question of that kind, and the right option says what to type."""
    kinds = {
        "a capacitance": Number(answer=1e-9, unit="F"),
        "an inductance": Number(answer=1e-6, unit="H"),
        "a voltage": Number(answer=16, unit="V"),
        "a plain number of parts": Number(answer=12, unit=""),
        "a plain number of hours": Number(answer=8, unit=""),
    }
    right_words = {"47": "Type the unit too", "330": "Type the unit too", "10": "Type the unit too"}
    right_words |= {
        "1,000 pF": "Type it without the comma",
        "2,200 µF": "Type it without the comma",
    }
    right_words |= {"12 V": "Type the number alone", "8 h": "Type the number alone"}
    right_words |= {"25 A": "Type the unit of", "47 kΩ": "Type the unit of"}

    seen = set()
    for draw in VARIANTS:
        ask = cannot_be_read(draw.part("x"))
        asked_for, typed = ask.prompt.split("for ")[1].split(". ")[0], ask.prompt.split("`")[1]
        if typed in right_words:
            assert kinds[asked_for].judge(typed).state == "cannot read"
            assert ask.answer.startswith(right_words[typed])
            seen.add(typed)
    assert seen == set(right_words)


@pytest.mark.common_practice
def test_order_in_which_a_supply_is_made_safe():
    (ask,) = (one for one in questions(VARIANTS[0]) if one.id == "q4")
    by_hand = ["Pull the plug", "Wait", "Discharge", "Try the meter on a", "Try the meter on the"]
    places = [next(s for s in ask.shown if s.startswith(start)) for start in by_hand]
    assert ask.judge(" > ".join([*places, "Take the board in your hands"])).state == "right"
    touched_first = " > ".join(["Take the board in your hands", *places])
    assert ask.judge(touched_first).hazards == ("stored charge", "mains")
    places.insert(4, "Take the board in your hands")
    assert ask.judge(" > ".join(places)).hazards == ("stored charge",)


@pytest.mark.common_practice
def test_second_hand_on_a_circuit_under_power_is_a_danger():
    for draw in VARIANTS:
        (ask,) = (one for one in questions(draw) if one.id == "q5")
        states = sorted(ask.judge(option).state for option in ask.options)
        assert states == ["right", "unsafe", "unsafe", "unsafe"]


def test_every_question_reads_well_by_code():
    page = repr(question_page(open_exercise("00-start-here")))
    assert page.count("\n\nq") == 7
    assert "None" not in page


def test_answering_by_code_tells_danger_and_unreadable_text_at_once():
    exercise = open_exercise("00-start-here")
    told = exercise.answer(q2="0 s", q7="47", q8="a")
    lines = str(told).splitlines()
    assert repr(told) == told and lines[0] == "Saved: q2, q7, q8."
    assert lines[1].startswith("q2: Danger (stored charge): ")
    assert lines[2].startswith("q7: '47': the unit is missing.")
    with pytest.raises(ValueError, match="no question has this id"):
        exercise.answer(q99="x")


@pytest.mark.published(ON_A_DISC)
def test_warm_up_value_codes():
    by_hand = {"103": "10 nF", "224": "220 nF", "472": "4.7 nF", "681": "680 pF", "154": "150 nF"}
    asks = [warm_up(draw)[0] for draw in VARIANTS]
    printed = [ask.picture().alt.split("Printed on it: ")[1][:3] for ask in asks]
    assert set(printed) == set(by_hand)
    for ask, code in zip(asks, printed, strict=True):
        assert ask.judge(by_hand[code]).state == "right"


@pytest.mark.published(document("Sanyo DP19649", "J is 5 %, K is 10 %, M is 20 %"))
def test_warm_up_tolerance_letters():
    by_hand = {"J": "±5 %", "K": "±10 %", "M": "±20 %"}
    seen = set()
    for draw in VARIANTS:
        ask = warm_up(draw)[1]
        letter = ask.prompt.split("`333")[1][0]
        assert ask.judge(by_hand[letter]).state == "right"
        seen.add(letter)
    assert seen == set(by_hand)


def test_warm_up_shows_what_a_danger_looks_like():
    ask = warm_up(VARIANTS[0])[2]
    assert ask.judge("a").hazards == ("stored charge",)
    assert ask.judge("b").state == "right"
    assert ask.judge("c").hazards == ("stored charge",)


@pytest.mark.published("IEC 62368-1, energy source class 1: 60 V dc steady")
def test_no_right_answer_leads_to_a_shock():
    """Who does what the right option says has a reading of next to nothing, twice, before."""
    for draw in VARIANTS[:20]:
        touch = warm_up(draw)[2].answer
        assert "next to nothing" in touch and "again a minute later" in touch
        assert "Above 60 V dc you leave it to a qualified person" in touch
        (dead,) = (one for one in questions(draw) if one.id == "q4")
        assert "holds 35 V dc" in dead.prompt
        before_work = dead.steps[: dead.steps.index("Take the board in your hands")]
        assert sum("next to nothing" in step for step in before_work) == 2
        assert any("wait a minute, and measure again" in step for step in before_work)
