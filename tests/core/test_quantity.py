"""repairlib.core.quantity: what people type, in SI, and back."""

import pickle
from copy import copy

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from quantiphy import Quantity as Reference

from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import PREFIXES, UNITS, engineering, read_quantity

NBSP = "\u00a0"


@pytest.mark.parametrize(
    ("text", "unit", "value", "kind"),
    [
        ("4.7 kΩ", None, 4700, "Ω"),
        ("4k7", "Ω", 4700, "Ω"),
        ("4,7 k", "Ω", 4700, "Ω"),
        ("4,7k", "Ω", 4700, "Ω"),
        ("10meg", "Ω", 10e6, "Ω"),
        ("4R7", None, 4.7, "Ω"),
        ("470 ohms", None, 470, "Ω"),
        ("0.1uF", None, 1e-7, "F"),
        (".022 µF", None, 22e-9, "F"),
        ("100n", "F", 1e-7, "F"),
        ("2u2", "F", 2.2e-6, "F"),
        ("47 µ", "F", 47e-6, "F"),
        ("47 μF", None, 47e-6, "F"),  # Greek mu
        ("10 MFD", None, 10e-6, "F"),
        ("1e-6 F", None, 1e-6, "F"),
        ("1.5e3 V", None, 1500, "V"),
        ("-10 %", None, -10, "%"),
        ("\u221210 %", None, -10, "%"),  # minus sign
        ("16", "V", 16, "V"),
        ("350 °C", None, 350, "°C"),
        ("300 K", "°C", 26.85, "°C"),
        ("1 h 30 min", None, 5400, "s"),
        ("1h 30min 5s", None, 5405, "s"),
        ("2 min", None, 120, "s"),
        ("3 mm", None, 0.003, "m"),
        ("3", "m", 3, "m"),
        ("5 g", None, 0.005, "kg"),
        ("1,000.5 Ω", None, 1000.5, "Ω"),
        ("1.000,5 Ω", None, 1000.5, "Ω"),
        ("1,000,000", "Ω", 1e6, "Ω"),
        ("0,100 V", None, 0.1, "V"),
        ("100 ppm/K", None, 100, "ppm/K"),
    ],
)
def test_reads_what_people_type(text, unit, value, kind):
    quantity = read_quantity(text, unit)
    assert quantity.value == pytest.approx(value, rel=1e-12)
    assert quantity.unit == kind


@pytest.mark.from_memory("definition of the Fahrenheit scale: F = 1.8 C + 32")
@pytest.mark.parametrize(("fahrenheit", "celsius"), [(662, 350), (32, 0), (212, 100), (-40, -40)])
def test_fahrenheit(fahrenheit, celsius):
    assert read_quantity(f"{fahrenheit} °F").value == pytest.approx(celsius)
    assert read_quantity(f"{fahrenheit} F", "°C").value == pytest.approx(celsius)


# The reference is quantiphy, a general library for quantities with SI prefixes.
@given(
    st.integers(1, 10**6),
    st.integers(0, 6),
    st.sampled_from(["p", "n", "u", "µ", "m", "", "k", "M", "G", "T"]),
    st.sampled_from(["F", "Ω", "H", "V", "A", "W", "Hz", "J"]),
)
def test_agrees_with_a_general_library(figures, decimals, prefix, unit):
    assume(prefix + unit != "MF")  # refused: it may be an old microfarad
    text = f"{figures / 10**decimals:.{decimals}f} {prefix}{unit}"
    assert read_quantity(text).value == pytest.approx(Reference(text).real, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "unit", "wrong"),
    [
        ("1,000", "Ω", "may be 1.000 or 1000"),
        ("100 MF", None, "microfarad"),
        ("300 K", None, "thousand or kelvin"),
        ("16 V", "Ω", "in V where Ω is due"),
        ("350 °C", "V", "in °C where V is due"),
        ("4X7", "F", "X is not a unit"),
        ("5 zorkmid", None, "zorkmid is not a unit"),
        ("4.7k7", "Ω", "decimal point"),
        ("1,00,000", "Ω", "not one number"),
        ("1.2.3", "Ω", "not one number"),
        ("hello", "F", "no number"),
        ("-", "F", "no number"),
        ("", "F", "nothing was typed"),
        ("   ", None, "nothing was typed"),
        ("٤٧", "F", "not a digit 0 to 9"),
        ("47 k", "°C", "does not go with"),
        ("1e999", "V", "too large"),
        ("1e-400", "V", "too small"),
        ("1\x002", "V", "cannot be seen"),
        ("9" * 1000, "V", "longer than"),
    ],
)
def test_bad_text_is_said_in_one_line(text, unit, wrong):
    with pytest.raises(RepairlibError) as error:
        read_quantity(text, unit)
    assert wrong in error.value.wrong
    assert "\n" not in str(error.value)
    assert error.value.accepted


def test_unknown_unit_wanted():
    with pytest.raises(RepairlibError, match="not a unit known"):
        read_quantity("5", "furlong")


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("value", "unit", "digits", "text"),
    [
        (1e-7, "F", None, "100 nF"),
        (4.7e-6, "F", 2, "4.7 µF"),
        (1e-3, "F", None, "1000 µF"),  # never mF
        (33e-3, "F", None, "33000 µF"),
        (0.1, "F", None, "0.1 F"),
        (4700, "Ω", 2, "4.7 kΩ"),
        (47300, "Ω", 3, "47.3 kΩ"),
        (1e6, "Ω", 3, "1.00 MΩ"),
        (6.3, "V", None, "6.3 V"),
        (-10, "%", None, "-10 %"),
        (350, "°C", None, "350 °C"),
        (5400, "s", None, "5400 s"),
        (0, "V", None, "0 V"),
    ],
)
def test_prints_engineering_notation(value, unit, digits, text):
    assert engineering(value, unit, digits) == text.replace(" ", NBSP)


@pytest.mark.parametrize("value", [float("nan"), float("inf"), -float("inf")])
def test_prints_only_finite_numbers(value):
    with pytest.raises(RepairlibError, match="finite"):
        engineering(value, "V")


@given(
    st.floats(1e-15, 1e12, allow_nan=False),
    st.sampled_from(UNITS),
    st.integers(1, 12),
    st.sampled_from([1, -1]),
)
def test_print_then_read_is_exact_to_the_printed_digits(size, unit, digits, sign):
    printed = engineering(sign * size, unit, digits)
    quantity = read_quantity(printed)
    assert quantity.unit == unit
    assert quantity.value == pytest.approx(sign * size, rel=0.51 * 10 ** (1 - digits))
    # Reading the print again changes nothing at all.
    assert read_quantity(engineering(quantity.value, unit, quantity.digits)) == quantity


@given(st.text(), st.sampled_from([None, *UNITS]))
def test_no_text_raises_anything_else(text, unit):
    try:
        read_quantity(text, unit)
    except RepairlibError as error:
        assert "\n" not in str(error)


@given(st.text("0123456789.,+-eE kKmMµuRFVΩ%°Ch in", max_size=12), st.sampled_from([None, *UNITS]))
def test_no_likely_text_raises_anything_else(text, unit):
    try:
        quantity = read_quantity(text, unit)
    except RepairlibError:
        return
    assert read_quantity(str(quantity), quantity.unit or None).unit == quantity.unit


@pytest.mark.parametrize("prefix", PREFIXES)
def test_every_prefix_alone_and_with_its_unit(prefix):
    expected = float(f"3e{PREFIXES[prefix]}")
    assert read_quantity(f"3{prefix}", "V").value == expected
    assert read_quantity(f"3{prefix}V").value == expected


def test_a_quantity_does_not_change():
    quantity = read_quantity("16 V")
    with pytest.raises(AttributeError, match="make a new one"):
        quantity.value = 10
    assert {quantity, read_quantity("16.0 V")} == {quantity}


def test_a_quantity_counts_like_its_number_and_stays_apart_from_other_units():
    volts = read_quantity("16 V")
    assert volts == 16
    assert {volts: "rated"}[16.0] == "rated"
    assert 15 < volts < 16.5
    assert type(volts * 2) is float
    assert volts != read_quantity("16 A")
    assert volts != "16 V"
    assert f"{volts:.1f} of {volts}" == f"16.0 of 16{NBSP}V"
    assert [pickle.loads(pickle.dumps(volts)).unit, copy(volts).unit] == ["V", "V"]
