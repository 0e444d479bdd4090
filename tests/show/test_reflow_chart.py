"""The reflow chart: windows named, verdicts in words, long logs thinned, the same bytes."""

from xml.etree import ElementTree

import numpy as np

from repairlib.heat.profile import Doubt, make_profile, read_points
from repairlib.heat.reflow import judge_profile
from repairlib.heat.reflow_limits import paste_limits, standard_limits
from repairlib.show.reflow_chart import MOST_POINTS, draw_reflow

POINTS = "0 25, 90 150, 180 200, 210 217, 240 245, 255 245, 285 217, 360 25"
FREE = standard_limits("Pb-free", 260)


def texts(picture):
    root = ElementTree.fromstring(picture.svg)
    return "\n".join(text.text or "" for text in root.iter("{http://www.w3.org/2000/svg}text"))


def test_windows_and_verdicts_are_words():
    shown = texts(draw_reflow(judge_profile(read_points(POINTS), FREE, 0)))
    for words in (
        "preheat from 150 °C",
        "preheat to 200 °C",
        "liquidus 217 °C",
        "highest peak 260 °C",
        "may end here",
        "pass: time above 217 °C",
        "time (s)",
        "temperature (°C)",
    ):
        assert words in shown


def test_the_words_hold_every_criterion():
    alt = draw_reflow(judge_profile(read_points(POINTS), FREE, 0)).alt
    assert "time above 217 °C: 75 s; 60 to 150 s: pass." in alt
    assert alt.count("pass") >= 7


def test_doubts_are_hatched_and_said():
    profile = make_profile("log", [0, 90, 240, 360], [25, 150, 245, 25], (Doubt(90, 240, "a gap"),))
    assert "Hatched: a gap." in draw_reflow(judge_profile(profile, FREE)).alt


def test_a_paste_with_few_limits_can_be_drawn():
    paste = paste_limits("paste", 217, (230, 249), (None, None))
    assert "lowest peak 230" in texts(draw_reflow(judge_profile(read_points(POINTS), paste)))


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
    assert "<dc:date>" not in draw_reflow(judged).svg
