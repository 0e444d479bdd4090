"""Fuses: speed and breaking-capacity letters, colour bands, and the caution."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.markings import read
from tests.documents import document

FUSE = document("encyclopaedia, Fuse")
GOST_2 = document("GOST R IEC 60127-2-2010", "H, L, E between current and volts")
GOST_1 = document("GOST IEC 60127-1-2010")


def first(text):
    return read(text, part="fuse")[0]


@pytest.mark.published(f"{GOST_2}; GOST IEC 60127-1-2010, 6.1: speed, then current, then volts")
def test_text_with_everything_on_it():
    reading = first("T3.15AL250V")
    assert (reading.value, reading.unit, reading.quantity) == (3.15, "A", "current")
    assert reading.carries == {"speed": "T", "breaking_capacity": "low", "rated_voltage": 250}


@pytest.mark.published(GOST_2)
@pytest.mark.parametrize(("letter", "meaning"), [("H", "high"), ("L", "low"), ("E", "enhanced")])
def test_breaking_capacity(letter, meaning):
    assert first(f"F 2 A {letter} 250 V").carries["breaking_capacity"] == meaning


@pytest.mark.published(FUSE)
@pytest.mark.parametrize(
    ("letter", "meaning"), [("FF", "very quick"), ("F", "quick"), ("T", "time-lag")]
)
def test_speed(letter, meaning):
    _speed(letter, meaning)


@pytest.mark.from_memory("M is medium, TT is long time-lag")
@pytest.mark.parametrize(("letter", "meaning"), [("M", "medium"), ("TT", "long time-lag")])
def test_speed_from_memory(letter, meaning):
    _speed(letter, meaning)


def _speed(letter, meaning):
    for text in (f"{letter}2A", f"{letter} 2A 250V", f"2A {letter}"):
        reading = first(text)
        assert (reading.value, reading.carries["speed"]) == (2, letter)
        assert f"{letter} is {meaning}" in reading.why


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("text", "ampere"),
    [
        *[("T500mA", 0.5), ("F 315 mA L 250 V", 0.315), ("T3,15A", 3.15), ("T 1.6 A", 1.6)],
        *[("10A 250V", 10), ("FF6.3A", 6.3), ("T2AL250V~", 2)],
    ],
)
def test_current(text, ampere):
    assert first(text).value == ampere
    assert read(text)[0].kind == "fuse"


@pytest.mark.common_practice
def test_a_current_that_is_not_sold_is_doubted():
    assert "not a current" in first("T4.7A").doubt


@pytest.mark.published(GOST_1)
@pytest.mark.parametrize(
    ("bands", "milliampere", "speed"),
    [
        ("red-black-red-red", 2000, "F"),
        ("brown-black-red-blue", 1000, "T"),
        ("orange-brown-red-red", 3150, "F"),
        ("green-black-brown-grey", 500, "TT"),
        ("blue-orange-red-yellow", 6300, "M"),
        ("orange-brown-brown-black", 315, "FF"),
        ("brown-black-orange-blue", 10000, "T"),
        ("brown-red-brown-red", 125, "F"),
        ("brown-red-red-red", 1250, "F"),
    ],
)
def test_bands(bands, milliampere, speed):
    reading = first(bands)
    assert reading.value == pytest.approx(milliampere / 1000)
    assert reading.carries == {"speed": speed}


@pytest.mark.behaviour
def test_no_fuse_has_white_at_the_end():
    with pytest.raises(RepairlibError, match="no fuse has these bands"):
        read("brown-black-red-white", part="fuse")


@pytest.mark.parametrize("text", ["T3.15AL250V", "red-black-red-red"])
def test_the_same_rating_and_class_is_asked_for_and_nothing_else_offered(text):
    reading = first(text)
    assert "only by one of the same rating and class" in reading.why
    assert reading.cautions == ("mains", "heat and fire")
    assert "Mains voltage can kill" in reading._repr_html_()
    assert reading.to_dict()["cautions"] == ["mains", "heat and fire"]


@pytest.mark.parametrize("text", ["T", "3.15", "T3.15", "TA", "T3.15AX", "T3.15AL0V", "T0A"])
def test_is_refused(text):
    with pytest.raises(RepairlibError):
        read(text, part="fuse")
