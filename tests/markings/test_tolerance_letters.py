"""Tolerance letters of capacitors, each behind a value."""

import pytest

from repairlib.markings import read
from tests.documents import document

SANYO = document("Sanyo DP19649", "tolerance letters of capacitors")


@pytest.mark.published(SANYO)
@pytest.mark.parametrize(
    ("letter", "low", "high"),
    [
        ("J", -0.05, 0.05),
        ("K", -0.10, 0.10),
        ("M", -0.20, 0.20),
        ("N", -0.30, 0.30),
        ("Z", -0.20, 0.80),
        ("T", -0.10, 0.50),
    ],
)
def test_percent(letter, low, high):
    _percent(letter, low, high)


# The only sheet with these letters in percent is one of resistors: on capacitors from memory.
@pytest.mark.from_memory("IEC 60062 letters B, C, D, F, G in percent on capacitors")
@pytest.mark.parametrize(
    ("letter", "either_side"),
    [("B", 0.001), ("C", 0.0025), ("D", 0.005), ("F", 0.01), ("G", 0.02)],
)
def test_close_percent(letter, either_side):
    _percent(letter, -either_side, either_side)


@pytest.mark.from_memory("IEC 60062 letters H, Q, S and the closest ones E, L, W")
@pytest.mark.parametrize(
    ("letter", "low", "high"),
    [
        ("H", -0.03, 0.03),
        ("Q", -0.10, 0.30),
        ("S", -0.20, 0.50),
        ("E", -0.00005, 0.00005),
        ("L", -0.0001, 0.0001),
        ("W", -0.0005, 0.0005),
    ],
)
def test_percent_from_memory(letter, low, high):
    _percent(letter, low, high)


def _percent(letter, low, high):
    tolerance = read(f"103{letter}", part="ceramic")[0].tolerance
    assert (tolerance.low, tolerance.high, tolerance.unit) == (low, high, "")


@pytest.mark.published(SANYO)
@pytest.mark.parametrize(("letter", "picofarad"), [("C", 0.25), ("D", 0.5)])
def test_picofarad_below_ten(letter, picofarad):
    _picofarad(letter, picofarad)


@pytest.mark.published(document("Samsung part-number table", "B and F in pF"))
@pytest.mark.parametrize(("letter", "picofarad"), [("B", 0.1), ("F", 1)])
def test_more_picofarad_below_ten(letter, picofarad):
    _picofarad(letter, picofarad)


@pytest.mark.from_memory("IEC 60062: G is 2 pF below 10 pF")
def test_g_below_ten_picofarad():
    _picofarad("G", 2)


def _picofarad(letter, picofarad):
    tolerance = read(f"479{letter}", part="ceramic")[0].tolerance
    assert tolerance.unit == "F"
    assert tolerance.high * 1e12 == pytest.approx(picofarad)


# P on capacitors is -0/+100 % in a service manual and 0.02 % in the letter table of 2016. The
# manual is followed first, since it speaks of capacitors; the other stands behind it with a doubt.
@pytest.mark.published(SANYO)
def test_p_follows_the_service_manual_first():
    first = read("104P", part="ceramic")[0]
    assert (first.tolerance.low, first.tolerance.high) == (0, 1)
    assert str(first.tolerance) == "-0/+100\u00a0%"


@pytest.mark.from_memory("IEC 60062:2016: P is 0.02 %")
def test_p_of_the_letter_code_stands_behind_with_a_doubt():
    others = read("104P", part="ceramic")[1:]
    assert any(one.tolerance and one.tolerance.high == 0.0002 and one.doubt for one in others)


@pytest.mark.behaviour
@pytest.mark.parametrize(("code", "part"), [("104P", "ceramic"), ("104P", None), ("33nP", None)])
def test_both_meanings_of_p_and_the_choice_are_said(code, part):
    why = read(code, part=part)[0].why
    assert "service manual on capacitors, followed first" in why
    assert "0.02 % in the letter code" in why


@pytest.mark.from_memory("A leaves the tolerance to another document")
def test_a_is_a_tolerance_stated_elsewhere():
    reading = read("104A", part="ceramic")[0]
    assert reading.tolerance is None
    assert "data sheet" in reading.why


def test_pf_is_a_unit_or_the_letter_code_with_a_tolerance():
    first, second = read("47pF")
    assert (first.value, first.tolerance) == (47e-12, None)
    assert (second.value, second.tolerance.high) == (47e-12, 0.01)


def test_exactly_ten_picofarad_has_percent():
    assert read("100F", part="ceramic")[0].tolerance.unit == ""
    assert read("909F", part="ceramic")[0].tolerance.unit == "F"
