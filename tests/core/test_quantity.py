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


@pytest.mark.parametrize(
    ("text", "unit", "value"),
    [
        ("60 sec", "s", 60),
        ("1 second", "s", 1),
        ("90 SECS.", "s", 90),
        ("2.5 minutes", "s", 150),
        ("5 mins", "s", 300),
        ("3 hours", "s", 10800),
        ("2hrs", "s", 7200),
        ("14 d", "s", 1209600),
        ("5 days", "s", 432000),
        ("1 day", "s", 86400),
        ("2 weeks", "s", 1209600),
        ("10 years", "s", 315576000),
        ("1 year 6 months", "s", 47336400),
        ("2 d 3 h", "s", 183600),
        ("1 hour 30 minutes", "s", 5400),
        ("12 volts", "V", 12),
        ("3 Volts", "V", 3),
        ("2 amps", "A", 2),
        ("100 µf", "F", 1e-4),
        ("4.7 μf", "F", 4.7e-6),
        ("10 microfarads", "F", 1e-5),
        ("1.5 megohms", "Ω", 1.5e6),
        ("≈ 60 s", "s", 60),
        ("~60s", "s", 60),
        ("approx. 47 kΩ", "Ω", 47e3),
        ("60 s.", "s", 60),
        ("100'000 Ω", "Ω", 1e5),
        ("1’250’000 Ω", "Ω", 1.25e6),
        ("47\u2009000 Ω", "Ω", 47e3),
        ("102\u202f100\u00a0Ω", "Ω", 102100),
        ("12\u00a0000,5\u00a0V", "V", 12000.5),
    ],
)
def test_usual_spellings(text, unit, value):
    assert read_quantity(text, unit).value == pytest.approx(value, rel=1e-12)
    assert read_quantity(text).unit == unit


@pytest.mark.parametrize(
    "text", ["1'0 V", "12'34 V", "1'0000 V", "'100 V", "~", "≈", ".", "V.", "5 days V", "3 d 2 d"]
)
def test_what_only_looks_like_a_usual_spelling_is_one_clear_line(text):
    with pytest.raises(RepairlibError) as error:
        read_quantity(text, "V" if "d 2" not in text else "s")
    assert "\n" not in str(error.value)


@pytest.mark.parametrize("days", ["5 days", "120 h", "432000 s", "4 d 24 h"])
def test_a_time_is_taken_in_any_unit_where_seconds_are_asked(days):
    from repairlib.core.calculators import calculator_named

    assert calculator_named("floor_life_left").parameters["out"].read("out", days) == 432000
