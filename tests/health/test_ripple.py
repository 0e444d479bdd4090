"""Ripple multipliers, typed in from the data sheets."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.health.ripple import ripple_at_frequency, ripple_of_can
from tests.documents import document


def low_impedance(microfarad):
    return [
        ripple_at_frequency("low impedance", 1, hertz, microfarad * 1e-6).multiplier
        for hertz in (120, 1e3, 1e4, 1e5)
    ]


@pytest.mark.published(document("Rubycon ZL", "multipliers to 270 µF"))
def test_low_impedance_small():
    for microfarad in (5.6, 33):
        assert low_impedance(microfarad) == [0.42, 0.70, 0.90, 1.00]
    for microfarad in (39, 100, 270):
        assert low_impedance(microfarad) == [0.50, 0.73, 0.92, 1.00]
    assert ripple_at_frequency("low impedance", "1.0 A", "120 Hz", "100 µF").ripple_current == 0.5


@pytest.mark.from_memory("Rubycon ZL, frequency multipliers from 330 µF")
def test_low_impedance_large():
    for microfarad in (330, 470, 680):
        assert low_impedance(microfarad) == [0.55, 0.77, 0.94, 1.00]
    for microfarad in (820, 1000, 1800):
        assert low_impedance(microfarad) == [0.60, 0.80, 0.96, 1.00]
    for microfarad in (2200, 4700, 8200):
        assert low_impedance(microfarad) == [0.70, 0.85, 0.98, 1.00]
    finding = ripple_at_frequency("low impedance", 1, 120, 1e-3)
    assert "from memory" in finding.sources


@pytest.mark.published(document("Vishay 056/057", "multipliers from 50 Hz to 10 kHz and above"))
def test_snap_in():
    hertz = (50, 100, 200, 400, 1e3, 2e3, 4e3, 10e3, 100e3)
    low = (0.93, 1, 1.04, 1.07, 1.11, 1.13, 1.15, 1.18, 1.18)
    middle = (0.91, 1, 1.05, 1.09, 1.13, 1.15, 1.18, 1.22, 1.22)
    high = (0.86, 1, 1.13, 1.21, 1.29, 1.32, 1.35, 1.40, 1.40)
    rated = {10: low, 16: low, 25: low, 40: middle, 63: middle, 100: middle, 400: high}
    for volts, multipliers in rated.items():
        found = [ripple_at_frequency("snap-in", 1, f, 1e-3, volts).multiplier for f in hertz]
        assert found == list(multipliers)


@pytest.mark.published(document("GE 23A", "multipliers by temperature and flow of air"))
def test_cans():
    at_23a = [ripple_of_can("can 23A", 1, t).ripple_current for t in (85, 75, 65, 55, 45, 35)]
    assert at_23a == [1.0, 1.4, 1.7, 2.0, 2.3, 2.5]
    at_23f = [ripple_of_can("can 23F", 1, t).ripple_current for t in (95, 85, 75, 65, 55, 45, 35)]
    assert at_23f == [0.7, 1.0, 1.2, 1.4, 1.6, 1.7, 1.9]
    air = [ripple_of_can("can 23A", 1, 85, flow).by_air_flow for flow in range(0, 301, 50)]
    assert air == [1, 1.15, 1.25, 1.4, 1.5, 1.6, 1.7]
    assert ripple_of_can("can 23A", "2 A", 65).ripple_current == pytest.approx(3.4)
    assert ripple_of_can("can 23A", "2 A", 65, 50).ripple_current == pytest.approx(3.91)


def test_between_two_points_the_lower_multiplier_counts_and_is_said():
    finding = ripple_at_frequency("low impedance", 1, 50e3, 100e-6)
    assert finding.multiplier == 0.92
    assert any("10000 Hz was used" in note for note in finding.notes)
    assert ripple_of_can("can 23A", 1, 60).ripple_current == 1.7


@pytest.mark.parametrize(
    ("given_values", "wrong"),
    [
        (("low impedance", 1, 50, 100e-6), "below the lowest"),
        (("low impedance", 1, 120, 1e-6), "no multiplier"),
        (("low impedance", 1, 120, 35e-6), "no multiplier"),
        (("snap-in", 1, 100, 1e-3, 5), "no multiplier"),
        (("snap-in", 1, 0, 1e-3, 16), "out of range"),
        (("snap-in", -1, 100, 1e-3, 16), "out of range"),
    ],
)
def test_outside_the_list_nothing_is_made_up(given_values, wrong):
    with pytest.raises(RepairlibError, match=wrong):
        ripple_at_frequency(*given_values)
    with pytest.raises(RepairlibError, match="hotter"):
        ripple_of_can("can 23A", 1, 86)
