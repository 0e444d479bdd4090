"""Rated voltages: two-character codes, and the single letters of tantalum chips and cans."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.markings import read, write_voltage_code
from tests.documents import document

PANASONIC = document("Panasonic part number system", "voltage codes")
TEH = document("Panasonic TEH", "letters of voltage")
NICHICON = document("Nichicon CD", "letters of voltage")


@pytest.mark.published(PANASONIC)
@pytest.mark.parametrize(
    ("code", "volts"),
    [
        *[("0J", 6.3), ("1A", 10), ("1C", 16), ("1E", 25), ("1V", 35), ("1H", 50), ("1J", 63)],
        *[("2A", 100), ("2C", 160), ("2D", 200), ("2E", 250), ("2V", 350), ("2G", 400)],
        ("2W", 450),
    ],
)
def test_two_characters(code, volts):
    _is_voltage(code, volts)


@pytest.mark.from_memory("voltage codes outside the maker's table")
@pytest.mark.parametrize(
    ("code", "volts"),
    [
        *[("0E", 2.5), ("0G", 4), ("0L", 5.5), ("1B", 12.5), ("1D", 20), ("1K", 80)],
        *[("2Q", 110), ("2B", 125), ("2Z", 180), ("2P", 220), ("2F", 315), ("2H", 500)],
        *[("2J", 630), ("3A", 1000)],
    ],
)
def test_two_characters_from_memory(code, volts):
    _is_voltage(code, volts)


def _is_voltage(code, volts):
    reading = read(code, part="voltage-code")[0]
    assert (reading.quantity, reading.value, reading.unit) == ("voltage", volts, "V")
    assert ("voltage", volts) in [(one.quantity, one.value) for one in read(code)[:2]]
    assert write_voltage_code(volts) == code


@pytest.mark.common_practice
@pytest.mark.parametrize("code", ["1Q0", "A1"])
def test_is_no_voltage_code(code):
    with pytest.raises(RepairlibError):
        read(code, part="voltage-code")


@pytest.mark.from_memory("the letters I and O are not used in voltage codes")
@pytest.mark.parametrize("code", ["1I", "1O", "1Q", "1Z", "0P"])
def test_letters_that_are_not_used(code):
    with pytest.raises(RepairlibError):
        read(code, part="voltage-code")


@pytest.mark.published(TEH)
@pytest.mark.parametrize(
    ("letter", "volts"),
    [("G", 4), ("J", 6.3), ("A", 10), ("C", 16), ("D", 20), ("E", 25), ("V", 35)],
)
def test_letter_on_tantalum(letter, volts):
    _letter_on("tantalum", "107", letter, volts)


@pytest.mark.from_memory("tantalum voltage letters e, H and T")
@pytest.mark.parametrize(("letter", "volts"), [("e", 2.5), ("H", 50), ("T", 50)])
def test_letter_on_tantalum_from_memory(letter, volts):
    _letter_on("tantalum", "107", letter, volts)


@pytest.mark.published(NICHICON)
@pytest.mark.parametrize(
    ("letter", "volts"),
    [("j", 6.3), ("A", 10), ("C", 16), ("E", 25), ("V", 35), ("H", 50), ("J", 63), ("K", 80)],
)
def test_letter_on_a_can(letter, volts):
    _letter_on("can", "220", letter, volts)


@pytest.mark.from_memory("can voltage letters e and g")
@pytest.mark.parametrize(("letter", "volts"), [("e", 2.5), ("g", 4)])
def test_letter_on_a_can_from_memory(letter, volts):
    _letter_on("can", "220", letter, volts)


def _letter_on(part, value, letter, volts):
    for marking in (f"{value} {letter}", f"{value}\n{letter}", f"{value}{letter}"):
        reading = read(marking, part=part)[0]
        assert reading.carries["rated_voltage"] == volts
        assert reading.tolerance is None


def test_the_j_trap_shows_both_voltages():
    """J is 6.3 V on tantalum (TEH data sheet) and 63 V on a can (CD data sheet)."""
    both = {reading.kind: reading.carries.get("rated_voltage") for reading in read("220\nJ")}
    assert (both["tantalum"], both["can"]) == (6.3, 63)
    assert [(one.kind, one.value) for one in read("J")] == [("tantalum", 6.3), ("can", 63)]


def test_a_letter_not_used_on_that_part_is_refused():
    with pytest.raises(RepairlibError):
        read("107 X", part="tantalum")
    with pytest.raises(RepairlibError):
        read("D", part="can")


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("printed", "volts"),
    [("63V", 63), ("6.3V", 6.3), ("6V3", 6.3), ("1kV", 1000), ("50VDC", 50), ("16 V", 16)],
)
def test_plain_volts(printed, volts):
    assert read(printed)[0].value == volts


@pytest.mark.common_practice
def test_alternating_volts_are_said():
    reading = read("0.1µF X2 275VAC")[0]
    assert reading.carries["rated_voltage"] == 275
    assert reading.carries["voltage_type"] == "AC"
    assert reading.carries["safety_class"] == "X2"


def test_odd_voltage_is_doubted_not_dropped():
    assert "not a" in read("47V", part="voltage-code")[0].doubt
