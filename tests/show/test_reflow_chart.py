"""The reflow chart: windows named, verdicts in words, long logs thinned, the same bytes."""

from xml.etree import ElementTree

import numpy as np
import pytest

from repairlib.heat.profile import Doubt, make_profile, read_points
from repairlib.heat.reflow import judge_profile
from repairlib.heat.reflow_limits import paste_limits, standard_limits
from repairlib.show.reflow_chart import LETTERS, MOST_POINTS, WIDTH, draw_reflow
from tests.show.test_legible import assert_legible

POINTS = "0 25, 90 150, 180 200, 210 217, 240 245, 255 245, 285 217, 360 25"
FREE = standard_limits("Pb-free", 260)


def texts(picture):
    root = ElementTree.fromstring(picture.svg)
    return "\n".join(text.text or "" for text in root.iter("{http://www.w3.org/2000/svg}text"))


def test_windows_and_verdicts_are_words():
    shown = texts(draw_reflow(judge_profile(read_points(POINTS), FREE, 0)))
    for words in (
        "preheat",
        "liquidus",
        "highest peak",
        "217",
        "260",
        "✓ time above 217 °C: 75 s; 60 to 150 s",
        "✓ preheat 150–200 °C: 90 s; 60 to 120 s",
        "✓ pass",
        "°C",
    ):
        assert words in shown


def test_the_words_hold_every_criterion():
    alt = draw_reflow(judge_profile(read_points(POINTS), FREE, 0)).alt
    assert "time above 217 °C: 75 s; 60 to 150 s: pass." in alt
    assert alt.count("pass") >= 7


def test_doubts_are_grey_and_said():
    profile = make_profile("log", [0, 90, 240, 360], [25, 150, 245, 25], (Doubt(90, 240, "a gap"),))
    assert "Grey, with a question mark: a gap." in draw_reflow(judge_profile(profile, FREE)).alt


def test_a_paste_with_few_limits_can_be_drawn():
    paste = paste_limits("paste", 217, (230, 249), (None, None))
    shown = texts(draw_reflow(judge_profile(read_points(POINTS), paste)))
    assert "lowest peak" in shown
    assert "230" in shown


def test_profiles_that_never_melt_can_be_drawn():
    assert "fail" in draw_reflow(judge_profile(read_points("0 25, 90 100, 200 30"), FREE)).alt


def test_a_long_log_is_thinned_and_keeps_its_peak():
    seconds = np.linspace(0, 360, 200_000)
    celsius = np.interp(seconds, [0, 240, 360], [25, 240, 25])
    celsius[123_456] = 251.0
    picture = draw_reflow(judge_profile(make_profile("long", seconds, celsius), FREE))
    assert len(picture.svg) < 100 * MOST_POINTS
    assert "251 °C" in picture.alt


def test_same_bytes_twice():
    judged = judge_profile(read_points(POINTS), FREE)
    assert draw_reflow(judged).svg == draw_reflow(judged).svg


@pytest.mark.parametrize("points", [POINTS, "0 25, 20 150, 30 200, 40 217, 60 258, 61 100, 500 30"])
def test_letters_can_be_read_in_a_question_too(points):
    """A card of a question is 430 px wide: there the letters still have 12 px."""
    judged = judge_profile(read_points(points), FREE)
    assert_legible(draw_reflow(judged))
    assert LETTERS * 430 / WIDTH >= 12
