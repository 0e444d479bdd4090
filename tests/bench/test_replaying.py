"""An attempt replayed: the same readings and mark from its moves alone, and its time line."""

from __future__ import annotations

import pytest

from repairlib.bench import MOMENT_KINDS, judge, replayed, say_move, walked
from repairlib.show import attempt_report, draw_attempt
from tests.bench.test_judging import (
    LONG,
    MAKER_CARD,
    MAKER_FOUND,
    MAKER_NEW,
    MAKER_POWER,
    WORN,
    maker,
)
from tests.show.test_legible import SMALLEST, assert_legible, smallest_shown

MOVES = (
    *("look", "plug in", "touch U1"),
    *(*MAKER_FOUND[1:], *MAKER_NEW, *MAKER_POWER, *MAKER_CARD, "hand back"),
)


@pytest.fixture(scope="module")
def attempt():
    return walked(maker(*WORN), MOVES)


@pytest.fixture(scope="module")
def moments(attempt):
    return replayed(attempt)


def test_what_is_said_makes_the_same_attempt(attempt):
    again = walked(attempt.task, [say_move(one.move) for one in attempt.done])
    assert [one.told for one in again.done] == [one.told for one in attempt.done]
    assert judge(again) == judge(attempt)


def test_each_move_has_its_kind_its_clock_and_its_purse(attempt, moments):
    assert {one.kind for one in moments} == set(MOMENT_KINDS)
    assert [one.clock for one in moments] == sorted(one.clock for one in moments)
    assert moments[-1].clock == attempt.state.clock
    assert moments[-1].spent == attempt.state.spent


def test_what_was_unsafe_stands_at_its_move(moments):
    assert [one.number for one in moments if one.unsafe] == [3]


def test_the_time_line_can_be_read_without_colour_on_a_phone(moments):
    picture = draw_attempt(moments)
    assert_legible(picture)
    for piece in picture.pieces:
        assert smallest_shown(piece) >= SMALLEST
    for words in ("Hands on the board: moves 10 to 12.", "Unsafe, move 3", "own plug"):
        assert words in picture.alt


def test_the_report_says_the_mark_the_reasons_and_every_move(attempt):
    found = judge(attempt)
    report = attempt_report(attempt, found)
    assert f"Passed: {found.share * 100:.0f} %" in report
    for one in found.findings:
        assert one.subject in report
    assert report.count('role="row"') == len(found.findings) + 1 + len(MOVES) + 1


@LONG
def test_what_each_reading_told_is_in_the_report_when_asked_for():
    task = maker("F1 blown")
    told = replayed(walked(task, ["volts C1", "ohms F1"]), with_cuts=True)
    assert told[1].cut.after < told[1].cut.before
    report = attempt_report(walked(task, ["volts C1", "ohms F1"]), with_cuts=True)
    assert "bits of doubt" in report


def test_nothing_done_is_a_report_too():
    assert "Nothing was done yet." in repr(draw_attempt(()))
    assert "Not passed" in attempt_report(walked(maker(*WORN), ()))


def test_a_hazard_that_struck_brings_its_caution():
    ended = walked(maker(*WORN), ["plug in", "take out U1"])
    assert 'role="note"' in attempt_report(ended)
