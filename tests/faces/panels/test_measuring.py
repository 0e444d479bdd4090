"""The measuring panels without a browser: type, and look at what they would show."""

from __future__ import annotations

import base64
import re

from repairlib.faces.panels.measuring import judging, on_the_board


def drawn(panel) -> str:
    data = re.search(r"base64,([A-Za-z0-9+/=]+)", panel.picture.value).group(1)
    return base64.b64decode(data).decode()


def test_the_board_shows_both_readings_and_the_circuit():
    panel = on_the_board()
    assert "the part alone" in panel.answer.value
    assert "5\xa0Ω" in panel.answer.value
    panel.parts.value = "part|from|to|value|more\nC1|a|b|100u|5 ohm"
    assert "C2" not in drawn(panel)
    assert panel.answer.value.count("5\xa0Ω</td>") == 2


def test_a_line_that_cannot_be_read_is_told_and_the_picture_stays():
    panel = on_the_board()
    before = panel.picture.value
    panel.parts.cells[3][0].value = "Q1"
    assert "neither R, C nor L" in panel.answer.value
    assert panel.picture.value == before
    panel.part.value = "<b>"
    assert "<b>" not in panel.answer.value


def test_the_verdict_follows_the_rule_and_the_meter():
    panel = judging()
    assert "Cannot tell" in panel.answer.value
    panel.rule.value = "guarded"
    assert "Fail" in panel.answer.value
    panel.rule.value = "simple"
    assert "Pass" in panel.answer.value
    panel.reading.value = "OL"
    assert "Cannot tell" in panel.answer.value
    assert "more than the range can show, or open" in panel.answer.value
    assert panel.picture.value == ""
    panel.reading.value = "0.00 Ω"
    assert "Pass" not in panel.answer.value
    assert "the part is shorted" in panel.answer.value
    panel.reading.value = "one Ω"
    assert "no number" in panel.answer.value


def test_the_table_is_typed_cell_by_cell():
    panel = on_the_board()
    for cell, typed in zip(panel.parts.cells[3], ("R2", "a", "b", "10k", ""), strict=True):
        cell.value = typed
    assert panel.parts.value.endswith("R1 | a | b | 10 kΩ | \nR2 | a | b | 10k | ")
    assert "R2" in drawn(panel)
    panel.parts.cells[1][0].value = ""
    assert "begins with neither R, C nor L" in panel.answer.value
