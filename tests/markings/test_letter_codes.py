"""Letter codes: the unit letter stands where the decimal point is (IEC 60062)."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.markings import read
from tests.documents import document

RKM = document("IEC 60062:2016", "letters of capacitance, worked by hand")
SANYO = document("Sanyo DP19649", "tolerance letters of capacitors")
SAMSUNG = document("Samsung part-number table", "B and F in pF")

VALUES = """
6p8 6.8 | 82p 82 | n47 470 | 68n 68000 | 2u2 2200000 | p33 0.33 | 3p3 3.3 | 33p 33 | 330p 330
n33 330 | 3n3 3300 | 33n 33000 | 330n 330000 | 3u3 3300000 | 33u 33000000 | 330u 330000000
3m3 3300000000 | 33m 33000000000
"""
PAIRS = [pair.split() for pair in VALUES.replace("\n", "|").split("|") if pair.strip()]


@pytest.mark.published(RKM)
@pytest.mark.parametrize(("code", "picofarad"), PAIRS)
def test_value(code, picofarad):
    reading = read(code, part="capacitor")[0]
    assert reading.value * 1e12 == pytest.approx(float(picofarad), rel=1e-12)
    assert reading.tolerance is None


@pytest.mark.published(RKM)
@pytest.mark.parametrize(("code", "farad"), [("1F0", 1), ("4F7", 4.7), ("F47", 0.47)])
def test_capital_f_is_the_point_in_farad(code, farad):
    reading = read(code, part="capacitor")[0]
    assert (reading.value, reading.unit) == (pytest.approx(farad), "F")


@pytest.mark.published(RKM)
@pytest.mark.parametrize("micro", ["u", "\u00b5", "\u03bc"], ids=["u", "micro sign", "Greek mu"])
def test_both_micro_signs_and_u(micro):
    assert read(f"{micro}47", part="film")[0].value == 0.47e-6
    assert read(f"4{micro}7", part="film")[0].value == 4.7e-6


# The letters J K M N Z T in percent, and C D in picofarad, are printed in the service manual.
@pytest.mark.published(f"{SANYO}; values after {RKM}")
@pytest.mark.parametrize(
    ("code", "picofarad", "low", "high"),
    [
        ("15nK", 15000, -0.10, 0.10),
        ("4n7K", 4700, -0.10, 0.10),
        ("47pJ", 47, -0.05, 0.05),
        ("100nM", 100000, -0.20, 0.20),
        ("10nZ", 10000, -0.20, 0.80),
        ("22uT", 22000000, -0.10, 0.50),
        ("220nJ", 220000, -0.05, 0.05),
    ],
)
def test_percent_letter_behind_the_value(code, picofarad, low, high):
    reading = read(code, part="capacitor")[0]
    assert reading.value * 1e12 == pytest.approx(picofarad)
    assert (reading.tolerance.low, reading.tolerance.high) == (low, high)
    assert reading.tolerance.unit == ""


@pytest.mark.published(f"{SANYO}; values after {RKM}")
@pytest.mark.parametrize(
    ("code", "picofarad", "either_side"), [("4p7C", 4.7, 0.25), ("8p2D", 8.2, 0.5)]
)
def test_picofarad_letter_below_ten_picofarad(code, picofarad, either_side):
    _picofarad_tolerance(code, picofarad, either_side)


@pytest.mark.published(f"{SAMSUNG}; value after {RKM}")
def test_b_is_a_tenth_of_a_picofarad():
    _picofarad_tolerance("1p5B", 1.5, 0.1)


@pytest.mark.from_memory("IEC 60062: G is 2 pF below 10 pF")
def test_g_is_two_picofarad():
    _picofarad_tolerance("9p1G", 9.1, 2)


def _picofarad_tolerance(code, picofarad, either_side):
    reading = read(code, part="ceramic")[0]
    assert reading.value * 1e12 == pytest.approx(picofarad)
    assert reading.tolerance.unit == "F"
    assert reading.tolerance.high * 1e12 == pytest.approx(either_side)
    assert reading.tolerance.low == -reading.tolerance.high


@pytest.mark.from_memory("IEC 60062: S is -20/+50 %, Q is -10/+30 %")
@pytest.mark.parametrize(
    ("code", "picofarad", "low", "high"),
    [("47nS", 47000, -0.20, 0.50), ("10uQ", 10000000, -0.10, 0.30)],
)
def test_unsymmetrical_letters_from_memory(code, picofarad, low, high):
    reading = read(code, part="capacitor")[0]
    assert reading.value * 1e12 == pytest.approx(picofarad)
    assert (reading.tolerance.low, reading.tolerance.high) == (low, high)


@pytest.mark.behaviour
@pytest.mark.parametrize("code", ["4k7", "n", "3n3n3"])
def test_is_refused(code):
    with pytest.raises(RepairlibError):
        read(code, part="capacitor")


@pytest.mark.parametrize("code", ["n", "3n3n3"])
def test_is_refused_on_any_part(code):
    with pytest.raises(RepairlibError):
        read(code)


def test_resistor_is_named_in_the_refusal():
    with pytest.raises(RepairlibError, match=r"elsewhere it would be 4.7\u00a0kΩ \(resistor\)"):
        read("4k7", part="capacitor")


@pytest.mark.common_practice
def test_capital_letters_are_read_but_come_after_the_standard_reading():
    values = [(reading.value, str(reading.tolerance)) for reading in read("100N", part="film")]
    assert (1e-7, "None") in values  # 100 nF
    assert values[0][0] == 1e-11  # 10 pF, N is a tolerance in the standard


@pytest.mark.common_practice
def test_film_print_of_value_tolerance_and_volts():
    reading = read("µ1K63", part="film")[0]
    assert (reading.value, reading.tolerance.high) == (1e-7, 0.1)
    assert reading.carries["rated_voltage"] == 63
