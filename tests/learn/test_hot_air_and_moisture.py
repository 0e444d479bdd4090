"""The exercise of lesson 09: its answers against their sources, in every variant."""

import pytest

from repairlib.heat.moisture import floor_life
from repairlib.heat.profile import make_profile
from repairlib.heat.reflow_limits import body_peak, standard_limits
from repairlib.heat.reflow_measures import measure
from repairlib.learn import Draw, before
from repairlib.learn.questions.hot_air_and_moisture import (
    CELL,
    EMPTY,
    FUMES,
    HEAT,
    LIFT,
    UNPLUG,
    board_with_a_cell,
    criteria,
    decisions,
    highest_peaks,
    hours_left,
    order_of_work,
    ramp,
    repair,
    strange_log,
    time_above,
)
from tests.learn.asking import VARIANTS, asked, asks_of

questions, warm_up = asks_of("09-hot-air-and-moisture")

FREE = standard_limits("Pb-free", 260)


# Points: seconds above 217 °C, by hand along the slopes.
ABOVE = {
    "(180, 200) (220, 240) (240, 240) (280, 200)": 263 - 197,
    "(160, 197) (220, 237) (230, 237) (250, 197)": 240 - 190,
    "(200, 207) (240, 247) (260, 247) (280, 207)": 275 - 210,
    "(150, 197) (210, 247) (230, 247) (270, 197)": 254 - 174,
}


@pytest.mark.published("Reflow Soldering Profile, per J-STD-020D, Table 5-2: time above liquidus")
def test_time_above():
    seen = set()
    for draw in VARIANTS:
        ask = time_above(draw.part("x"))
        (key,) = (key for key in ABOVE if key in asked(ask))
        seen.add(key)
        assert ask.judge(f"{ABOVE[key]} s").state == "right"
        points = [pair.strip("()").split(", ") for pair in key.split(") (")]
        profile = make_profile("x", [float(t) for t, _ in points], [float(c) for _, c in points])
        assert measure(profile, FREE)["above"].value == pytest.approx(ABOVE[key])
    assert seen == set(ABOVE)


@pytest.mark.published("Reflow Soldering Profile, per J-STD-020D, Table 5-2: ramp-up")
def test_ramp():
    answers = {ramp(draw.part("x")).answer for draw in VARIANTS}
    assert answers == {36 / 12, 32 / 20, 25 / 20, 40 / 10, 30 / 20, 25 / 10, 40 / 20}
    for draw in VARIANTS:
        ask = ramp(draw.part("x"))
        assert ask.judge(f"{1 / ask.answer:.4f}").state == "wrong"


@pytest.mark.published("Data sheet, tables of J-STD-020C: table 4-2")
def test_highest_peaks():
    for draw in VARIANTS:
        for row, cells in highest_peaks(draw.part("x")).cells.items():
            thickness, volume = (float(word.split()[0]) for word in row.split(", "))
            assert float(cells["Tc in °C"].answer) == body_peak("Pb-free", thickness, volume)


def test_criteria_hold_by_arithmetic():
    for draw in VARIANTS:
        for row, cells in criteria(draw.part("x")).cells.items():
            if not row.startswith("peak"):
                continue
            peak, limit = (float(words.split()[-2]) for words in row.split(";"))
            kept = {peak + shift <= limit for shift in (-2.5, 2.5)}
            verdict = "cannot tell" if len(kept) > 1 else "pass" if kept == {True} else "fail"
            assert cells["verdict"].answer == verdict


def test_the_profile_to_repair_is_as_its_prompt_says():
    for draw in VARIANTS[:12]:
        ask = repair(draw.part("x"))
        alt = ask.picture().alt
        preheat, above = asked(ask).split("preheat ")[1].split(" s, ")[:2]
        assert f"preheat 150 to 200 °C: {preheat} s" in alt
        assert f"time above 217 °C: {above.split(' s')[0]} s" in alt
        assert alt.count("fail") == 4  # three criteria and the whole


@pytest.mark.published("A power-supply maker's questions and answers, MSL: floor life by level")
def test_hours_left():
    for draw in VARIANTS:
        ask = hours_left(draw.part("x"))
        words = asked(ask).split()
        first, second = (
            float(words[at + 1]) for at, word in enumerate(words[:-1]) if word == "for"
        )
        level = words[words.index("level") + 1]
        assert ask.answer == floor_life(level) - first - second
        assert "back" in " ".join(ask.judge(f"{floor_life(level) - second:g}").says)


@pytest.mark.published("A power-supply maker's questions and answers, MSL; three passes in all")
def test_decisions():
    for draw in VARIANTS:
        for row, cells in decisions(draw.part("x")).cells.items():
            level, hours, celsius, humidity = (word.strip(" °C%,") for word in _figures_of(row))
            right = "use now"
            if float(hours) > floor_life(level) or float(celsius) > 30 or float(humidity) > 60:
                right = "bake first"
            if "3 times" in row:
                right = "discard"
            assert cells["decision"].answer == right


def _figures_of(row):
    words = row.replace(",", "").split()
    return words[1], words[3], words[6], words[9]


@pytest.mark.common_practice
def test_a_cell_never_goes_into_the_oven():
    for draw in VARIANTS:
        ask = board_with_a_cell(draw.part("x"))
        for option in ask.options:
            judged = ask.judge(option)
            assert (judged.state == "unsafe") == ("oven" in option)
            if judged.state == "unsafe":
                assert judged.hazards == ("batteries",)


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("early", "late", "hazard"),
    [
        (EMPTY, UNPLUG, "mains"),
        (HEAT, EMPTY, "stored charge"),
        (CELL, EMPTY, "stored charge"),
        (HEAT, CELL, "batteries"),
        (HEAT, FUMES, "fumes and flux"),
        (LIFT, EMPTY, "stored charge"),
    ],
)
def test_dangerous_orders(early, late, hazard):
    ask = order_of_work(Draw("x").part("y"))
    steps = [step for step in ask.steps if step != early]
    steps.insert(steps.index(late), early)
    judged = ask.judge(" > ".join(steps))
    assert judged.state == "unsafe"
    assert hazard in judged.hazards


def test_order_of_work_right():
    ask = order_of_work(Draw("x").part("y"))
    assert ask.judge(" > ".join((UNPLUG, EMPTY, CELL, FUMES, HEAT, LIFT))).state == "right"
    assert before(HEAT, LIFT)(ask.steps)


def test_an_unlabelled_log_is_not_guessed():
    for draw in VARIANTS:
        ask = strange_log(draw.part("x"))
        states = {option: ask.judge(option).state for option in ask.options}
        assert [option for option, state in states.items() if state == "right"] == [ask.answer]


def test_every_variant_is_whole():
    for draw in VARIANTS:
        asks = questions(draw)
        assert [ask.id for ask in asks] == [f"q{n}" for n in range(1, 11)]
        assert len(warm_up(draw)) == 3
        for ask in asks:
            if hasattr(ask, "answer") and isinstance(ask.answer, float | int):
                for mistake in ask.mistakes:
                    assert ask.judge(f"{mistake.when:.6g}{ask.unit}").state == "wrong"
