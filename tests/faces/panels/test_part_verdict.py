"""The panel of one measured part: what it shows is what the calculator says."""

import pytest

from repairlib.faces.panels import judge_part
from tests.documents import document


@pytest.mark.published(document("Lelon RGA", "25 V: tan δ 0.14; endurance: ±20 %, 200 % of tan δ"))
def test_follows_what_is_typed():
    """By hand: 0.14 / (2 π × 120 Hz × 100 µF) = 1.857 Ω, twice that 3.714 Ω."""
    panel = judge_part()
    for esr, verdict in (("9 Ω", "Replace"), ("3 Ω", "Marginal"), ("1 Ω", "Fit")):
        panel.esr.value = esr
        assert verdict in panel.answer.value
        assert verdict.lower() in panel.picture.value


def test_what_was_not_measured_is_left_empty():
    panel = judge_part(esr="")
    assert "Cannot tell" in panel.answer.value and "measure ESR" in panel.answer.value
    assert panel.picture.value == ""
    panel.esr.value, panel.measured.value = "9 Ω", ""
    assert "Replace" in panel.answer.value and "your part: 9 Ω" in panel.picture.value


def test_at_another_frequency_there_is_no_picture_and_no_verdict():
    panel = judge_part(esr="1 Ω")
    for frequency in ("100 kHz", ""):
        panel.frequency.value = frequency
        assert "Cannot tell" in panel.answer.value and panel.picture.value == ""


def test_a_better_meter_tells_more():
    panel = judge_part(esr="3.6 Ω")
    assert "Cannot tell" in panel.answer.value
    panel.uncertainty.value = "0.5 %"
    assert "Marginal" in panel.answer.value


def test_what_cannot_be_read_is_told_and_escaped():
    panel = judge_part()
    panel.esr.value = "<b>much</b>"
    assert "<b>" not in panel.answer.value and panel.picture.value == ""
    assert "much" in panel.answer.value
