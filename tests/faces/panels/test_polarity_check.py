"""The polarity panel without a browser: choose, and look at what it would show."""

from __future__ import annotations

import base64
import re
from itertools import cycle

import pytest

from repairlib.faces.panels.polarity import polarity_check
from repairlib.polarity import board_marks, families


@pytest.fixture
def panel():
    return polarity_check()


def drawn(panel) -> str:
    data = re.search(r"base64,([A-Za-z0-9+/=]+)", panel.picture.value).group(1)
    return base64.b64decode(data).decode()


def test_verdict_follows_the_way_of_fitting(panel):
    assert "Not fitted yet" in panel.answer.value
    panel.fitted.value = "part's mark at the board's mark"
    assert "Reversed: do not fit it like this" in panel.answer.value
    assert "Reversed: do not fit it like this." in drawn(panel)
    panel.fitted.value = "part's mark at the other end"
    assert "Right" in panel.answer.value and "Reversed" not in panel.answer.value
    assert "Right this way round" in drawn(panel)


def test_danger_is_said_at_once_with_its_cautions(panel):
    panel.family.value = "dipped tantalum"
    panel.board_mark.value = "minus sign"
    panel.fitted.value = "part's mark at the board's mark"
    assert 'role="alert"' in panel.answer.value
    assert "catches fire" in panel.answer.value
    assert "Wear safety glasses." in panel.cautions.value


def test_marks_offered_are_those_of_the_family(panel):
    panel.family.value = "IC"
    assert panel.part_mark.options == (
        *("notch at one end", "dot", "bevelled edge"),
        *("nothing seen", "something else"),
    )


def test_second_mark_decides(panel):
    panel.board_mark.value = "filled or hatched half circle"
    panel.fitted.value = "part's mark at the board's mark"
    assert "Cannot tell" in panel.answer.value
    panel.also_on_board.value = "plus sign"
    assert "Say at which end" in panel.answer.value
    panel.also_on_board_at.value = "other end"
    assert "Right" in panel.answer.value
    assert "Right this way round" in drawn(panel)


def test_every_choice_shows_something(panel):
    """Each mark of each family, with the marks of a board in turn."""
    boards = cycle(board_marks())
    for family in families():
        panel.family.value = family
        for mark in panel.part_mark.options:
            panel.part_mark.value = mark
            panel.board_mark.value = next(boards)
            assert panel.picture.value and "Where this is written" in panel.cautions.value
