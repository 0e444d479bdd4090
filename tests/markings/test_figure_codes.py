"""Three figures in pF: two figures and a power of ten, 9 for x0.1 and 8 for x0.01."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.markings import read
from tests.documents import document

KEMET = document(
    "KEMET ceramic ordering table", "two figures and a power of ten, 9 is x0.1, 8 is x0.01"
)
SAMSUNG = document("Samsung part-number table", "107 is 100 µF, R is the decimal point in pF")
SANYO = document("Sanyo DP19649", "tolerance letters of capacitors")
PANASONIC = document("Panasonic part number system", "voltage codes")
NICHICON = document("Nichicon CD", "220 over E is 220 µF 25 V")

VALUES = """
334 330000 | 681 680 | 153 15000 | 820 82 | 476 47000000 | 104 100000 | 103 10000 | 102 1000
101 100 | 100 10 | 473 47000 | 225 2200000 | 105 1000000 | 106 10000000
479 4.7 | 229 2.2 | 109 1 | 508 0.5 | 108 0.1
"""
PAIRS = [pair.split() for pair in VALUES.replace("\n", "|").split("|") if pair.strip()]


@pytest.mark.published(f"{KEMET}; worked by hand")
@pytest.mark.parametrize(("code", "picofarad"), PAIRS)
def test_value(code, picofarad):
    assert read(code, part="ceramic")[0].value * 1e12 == pytest.approx(float(picofarad))


@pytest.mark.published(SAMSUNG)
@pytest.mark.parametrize(("code", "picofarad"), [("107", 100000000), ("R50", 0.5), ("1R0", 1.0)])
def test_seven_zeros_and_r_as_the_point(code, picofarad):
    assert read(code, part="ceramic")[0].value * 1e12 == pytest.approx(picofarad)


@pytest.mark.published(f"{SANYO}; values after {KEMET}")
@pytest.mark.parametrize(
    ("code", "picofarad", "low", "high", "unit"),
    [
        ("221J", 220, -0.05, 0.05, ""),
        ("104M", 100000, -0.20, 0.20, ""),
        ("104K", 100000, -0.10, 0.10, ""),
        ("102J", 1000, -0.05, 0.05, ""),
        ("222Z", 2200, -0.20, 0.80, ""),
        ("229C", 2.2, -0.25e-12, 0.25e-12, "F"),
    ],
)
def test_tolerance_letter(code, picofarad, low, high, unit):
    reading = read(code, part="capacitor")[0]
    assert reading.value * 1e12 == pytest.approx(picofarad)
    assert (reading.tolerance.low, reading.tolerance.high) == (low, high)
    assert reading.tolerance.unit == unit


@pytest.mark.published(f"{PANASONIC}; tolerances after {SANYO}; values after {KEMET}")
@pytest.mark.parametrize(
    ("code", "picofarad", "tolerance", "volts"),
    [
        ("2D153J", 15000, 0.05, 200),
        ("1J224J", 220000, 0.05, 63),
        ("2A104J", 100000, 0.05, 100),
        ("1H103K", 10000, 0.10, 50),
        ("2E473K", 47000, 0.10, 250),
        ("1C106M", 10000000, 0.20, 16),
        ("1V475K", 4700000, 0.10, 35),
        ("2W103M", 10000, 0.20, 450),
    ],
)
def test_voltage_code_in_front(code, picofarad, tolerance, volts):
    reading = read(code)[0]
    assert reading.value * 1e12 == pytest.approx(picofarad)
    assert (reading.tolerance.low, reading.tolerance.high) == (-tolerance, tolerance)
    assert reading.carries["rated_voltage"] == volts


@pytest.mark.common_practice
def test_x_is_no_tolerance_letter():
    with pytest.raises(RepairlibError, match="X is not a tolerance letter"):
        read("104X")


@pytest.mark.common_practice
def test_a_letter_is_not_a_figure():
    with pytest.raises(RepairlibError, match=r"O is a letter where a figure is due.*104"):
        read("1O4")


# The ordering table has 8 as x0.01; tantalum and polymer parts use it as eight zeros. The part
# decides: both stand in the list when it is not known.
@pytest.mark.from_memory("third figure 8 on tantalum and polymer parts is eight zeros")
def test_eight_on_tantalum_is_eight_zeros():
    assert read("108", part="tantalum")[0].value == 1e-3
    assert [reading.value for reading in read("108")] == [0.1e-12, 1e-3]


@pytest.mark.published(f"{NICHICON}; {KEMET}")
def test_can_prints_plain_microfarad_where_ceramic_prints_a_code():
    assert read("220", part="can")[0].value == 220e-6
    assert read("220", part="ceramic")[0].value == 22e-12


@pytest.mark.behaviour
def test_a_code_stands_before_plain_microfarad():
    values = [reading.value for reading in read("220")]
    assert values[0] == 22e-12
    assert 220e-6 in values


@pytest.mark.common_practice
def test_small_letters_count_as_capitals_for_tolerances():
    assert read("104k", part="ceramic")[0].tolerance.high == 0.1
