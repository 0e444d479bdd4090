"""Temperature characteristics of ceramic capacitors (EIA-198)."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.markings import read
from tests.documents import document

TI = document("EIA-198")
QUOTED = document("EIA-198, quoted")


# One stored table has Z as -10 °C and 7 as 120 °C. The maker's note (TI SLAA701B) with +10 °C and
# 125 °C is followed: it is first-hand, and parts are sold to those limits.
@pytest.mark.published(TI)
@pytest.mark.parametrize(
    ("code", "coldest", "hottest", "low", "high"),
    [
        ("Y5P", -30, 85, -0.10, 0.10),
        ("Z5V", 10, 85, -0.82, 0.22),
        ("X7R", -55, 125, -0.15, 0.15),
        ("X5R", -55, 85, -0.15, 0.15),
        ("Y5V", -30, 85, -0.82, 0.22),
        ("Z5U", 10, 85, -0.56, 0.22),
        ("X8R", -55, 150, -0.15, 0.15),
        ("X7S", -55, 125, -0.22, 0.22),
        ("X4T", -55, 65, -0.33, 0.22),
        ("X6S", -55, 105, -0.22, 0.22),
        ("X9R", -55, 200, -0.15, 0.15),
    ],
)
def test_class_2_and_3(code, coldest, hottest, low, high):
    _class_2(code, coldest, hottest, low, high)


@pytest.mark.published(f"{QUOTED}: 2 and A to F; the other limits after {TI}")
@pytest.mark.parametrize(
    ("code", "coldest", "hottest", "low", "high"),
    [
        ("Y5F", -30, 85, -0.075, 0.075),
        ("Z2A", 10, 45, -0.01, 0.01),
        ("X5B", -55, 85, -0.015, 0.015),
        ("X5C", -55, 85, -0.022, 0.022),
        ("X5D", -55, 85, -0.033, 0.033),
        ("X5E", -55, 85, -0.047, 0.047),
    ],
)
def test_close_class_2_letters(code, coldest, hottest, low, high):
    _class_2(code, coldest, hottest, low, high)


@pytest.mark.from_memory("EIA-198: L is -40/+15 %")
def test_l_is_minus_40_plus_15():
    _class_2("X8L", -55, 150, -0.40, 0.15)


def _class_2(code, coldest, hottest, low, high):
    reading = read(code)[0]
    assert reading.quantity == "temperature characteristic"
    assert reading.carries["lowest_temperature"] == coldest
    assert reading.carries["highest_temperature"] == hottest
    assert (reading.tolerance.low, reading.tolerance.high) == (low, high)


@pytest.mark.from_memory("EIA-198: T, U and V are class 3, the others class 2")
@pytest.mark.parametrize(
    ("code", "number"), [("X4T", 3), ("Z5U", 3), ("Y5V", 3), ("X7R", 2), ("X7S", 2), ("Y5P", 2)]
)
def test_dielectric_class(code, number):
    assert read(code)[0].carries["dielectric_class"] == number


@pytest.mark.published(QUOTED)
@pytest.mark.parametrize(
    ("code", "coefficient", "spread"),
    [
        ("T2H", -470, 60),
        ("P2G", -150, 30),
        ("C0G", 0, 30),
        ("U2J", -750, 120),
        ("P3K", -1500, 250),
        ("M7G", 100, 30),
        ("S2H", -330, 60),
        ("U1G", -75, 30),
        ("B2G", -30, 30),
        ("L4L", 0.8, 500),
        ("A6M", 9, 1000),
        ("V8N", 5600, 2500),
        ("M0G", -1, 30),
        ("R2G", -220, 30),
        ("R3L", -2200, 500),
    ],
)
def test_class_1(code, coefficient, spread):
    _class_1(code, coefficient, spread)


@pytest.mark.published(
    "AVX, C0G (NP0) Dielectric, General Specifications, dtsheet.com/doc/3040632: 0 ±30 ppm/°C"
)
@pytest.mark.parametrize("code", ["C0G", "NP0"])
def test_c0g_is_np0(code):
    _class_1(code, 0, 30)


@pytest.mark.from_memory("names by the coefficient: N is negative, P positive")
@pytest.mark.parametrize(
    ("name", "coefficient", "spread"),
    [
        ("P100", 100, 30),
        ("N030", -30, 30),
        ("N033", -33, 30),
        ("N075", -75, 30),
        ("N150", -150, 30),
        ("N220", -220, 30),
        ("N330", -330, 60),
        ("N470", -470, 60),
        ("N750", -750, 120),
        ("N1500", -1500, 250),
        ("N2200", -2200, 500),
    ],
)
def test_named_coefficients(name, coefficient, spread):
    _class_1(name, coefficient, spread)


@pytest.mark.from_memory("names by the coefficient and their codes follow from EIA-198")
@pytest.mark.parametrize(
    ("name", "code"),
    [
        *[("P100", "M7G"), ("N030", "B2G"), ("N033", "S1G"), ("N075", "U1G"), ("N150", "P2G")],
        *[("N220", "R2G"), ("N330", "S2H"), ("N470", "T2H"), ("N750", "U2J"), ("N1500", "P3K")],
        ("N2200", "R3L"),
    ],
)
def test_names_and_codes(name, code):
    assert f"{name} is {code}" in read(name, part="temperature-characteristic")[0].why


def _class_1(code, coefficient, spread):
    reading = read(code, part="temperature-characteristic")[0]
    assert reading.value == pytest.approx(coefficient)
    assert reading.unit == "ppm/K"
    assert (reading.tolerance.low, reading.tolerance.high) == (-spread, spread)


@pytest.mark.behaviour
@pytest.mark.parametrize("code", ["A7R", "X7"])
def test_is_no_class_2_code(code):
    with pytest.raises(RepairlibError):
        read(code, part="temperature-characteristic")


@pytest.mark.published(f"{QUOTED}: 5 and 9 are not used")
@pytest.mark.parametrize("code", ["C5G", "C9G"])
def test_multipliers_that_are_not_used(code):
    with pytest.raises(RepairlibError):
        read(code, part="temperature-characteristic")


@pytest.mark.behaviour
def test_is_no_class_1_code():
    with pytest.raises(RepairlibError, match="2G does not follow X"):
        read("X2G")


@pytest.mark.common_practice
@pytest.mark.parametrize("code", ["NPO", "COG", "c0g", "np0"])
def test_letter_o_for_the_zero_and_small_letters(code):
    assert read(code)[0].value == 0


def test_characteristic_beside_a_value():
    reading = read("104K X7R 50V")[0]
    assert reading.carries == {"rated_voltage": 50, "temperature_characteristic": "X7R"}
