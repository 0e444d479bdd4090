"""A value to its marking and back; these come on top of the published values, never instead."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import read_quantity
from repairlib.markings import (
    read,
    write_capacitor_code,
    write_letter_code,
    write_voltage_code,
)

figures = st.integers(10, 99)


@given(figures, st.sampled_from("012345679 8".replace(" ", "")))
def test_figure_code_comes_back(two, last):
    code = f"{two}{last}"
    value = read(code, part="ceramic")[0].value
    assert read(write_capacitor_code(value), part="ceramic")[0].value == value
    assert write_capacitor_code(value) == code


@given(figures, st.integers(-13, -5), st.sampled_from(["", "J", "K", "M"]))
def test_value_to_figure_code_to_value(two, power, letter):
    value = float(f"{two}e{power}")
    reading = read(write_capacitor_code(value, letter), part="ceramic")[0]
    assert reading.value == value
    assert (reading.tolerance is None) == (letter == "")


@given(st.integers(1, 99999), st.integers(-14, -4), st.sampled_from(["", "J", "K", "M"]))
def test_value_to_letter_code_to_value(number, power, letter):
    value = float(f"{number}e{power}")
    code = write_letter_code(value, letter)
    values = [one.value for one in read(code, part="capacitor")]
    assert values.count(value) >= 1


@given(st.integers(1, 999), st.integers(-12, -4))
def test_print_then_read_is_exact(number, power):
    value = float(f"{number}e{power}")
    printed = str(read(write_letter_code(value), part="capacitor")[0]).partition(":")[0]
    assert read_quantity(printed, "F").value == value
    assert value in [one.value for one in read(printed, part="capacitor")]


@pytest.mark.parametrize(
    ("farad", "code"),
    [(100e-9, "104"), (4.7e-12, "479"), (0.5e-12, "508"), (22e-12, "220"), (100e-6, "107")],
)
def test_figure_codes_by_name(farad, code):
    assert write_capacitor_code(farad) == code


@pytest.mark.parametrize(
    ("farad", "code"),
    [
        *[(4.7e-9, "4n7"), (0.33e-12, "p33"), (33e-6, "33µ"), (3.3e-3, "3m3"), (1.0, "1F")],
        *[(0.05e-12, "p05"), (330e-12, "330p"), (4.75e-9, "4n75")],
    ],
)
def test_letter_codes_by_name(farad, code):
    assert write_letter_code(farad) == code


@pytest.mark.parametrize("farad", [0, -1e-9, 1e-20, 475e-9, 1e-3, float("nan"), float("inf"), "x"])
def test_no_figure_code(farad):
    with pytest.raises(RepairlibError):
        write_capacitor_code(farad)


@pytest.mark.parametrize("farad", [0, -1e-9, 1e-20, 1.23456e-9, 1e4, float("nan"), None])
def test_no_letter_code(farad):
    with pytest.raises(RepairlibError):
        write_letter_code(farad)


def test_no_such_tolerance_or_voltage():
    with pytest.raises(RepairlibError):
        write_capacitor_code(1e-9, "X")
    with pytest.raises(RepairlibError):
        write_letter_code(1e-9, 0.1)
    with pytest.raises(RepairlibError):
        write_voltage_code(47)
