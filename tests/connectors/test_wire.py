"""Copper wire: the printed tables, the worked drops, and the published one with its rounding."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.connectors.wire import (
    cautious_current,
    copper_wire,
    diameter,
    ohm_per_metre,
    wire_drop,
)
from repairlib.core.errors import RepairlibError
from tests.documents import document


@pytest.mark.published(document("wire gauge formula", "0.127 mm × 92^((36 - n) / 39)"))
def test_the_formula():
    """36 AWG is 0.127 mm by definition; a difference of 39 is a factor of 92."""
    assert diameter(36) == pytest.approx(0.127e-3)
    assert diameter(10) / diameter(40) == pytest.approx(92 ** (30 / 39))


@pytest.mark.published(document("wire resistance table", "ohms for 100 ft, and mils, by gauge"))
@pytest.mark.parametrize(
    ("gauge", "mils", "ohm_per_100_ft"),
    [
        (12, 80.808, 0.15880),
        (14, 64.084, 0.25250),
        (16, 50.820, 0.40160),
        (18, 40.303, 0.63850),
        (20, 31.961, 1.01500),
        (22, 25.347, 1.61400),
        (24, 20.100, 2.56700),
        (26, 15.940, 4.08100),
        (28, 12.641, 6.49000),
        (30, 10.025, 10.32000),
    ],
)
def test_a_printed_table(gauge, mils, ohm_per_100_ft):
    assert diameter(gauge) / 0.0254e-3 == pytest.approx(mils, rel=2e-4)
    assert copper_wire(gauge).ohm_per_1000_ft == pytest.approx(10 * ohm_per_100_ft, rel=1e-3)


# ρ = 1.7241e-8 Ω m over the section, worked by hand
@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("gauge", "mm", "ohm_per_km", "ohm_per_1000_ft"),
    [
        (10, 2.588, 3.277, 0.999),
        (12, 2.053, 5.211, 1.588),
        (14, 1.628, 8.285, 2.525),
        (16, 1.291, 13.17, 4.015),
        (18, 1.024, 20.95, 6.385),
        (20, 0.812, 33.31, 10.15),
        (22, 0.644, 52.96, 16.14),
        (24, 0.511, 84.21, 25.67),
        (26, 0.405, 133.9, 40.81),
        (28, 0.321, 212.9, 64.90),
        (30, 0.255, 338.6, 103.2),
    ],
)
def test_worked_wires(gauge, mm, ohm_per_km, ohm_per_1000_ft):
    wire = copper_wire(gauge)
    assert wire.diameter == pytest.approx(mm / 1000, abs=0.5e-6)
    assert wire.ohm_per_km == pytest.approx(ohm_per_km, rel=5e-4)
    assert wire.ohm_per_1000_ft == pytest.approx(ohm_per_1000_ft, rel=5e-4)


@pytest.mark.from_memory("copper: 0.393 % more for each K, × 1.216 at 75 °C")
def test_a_warm_wire():
    assert ohm_per_metre(18, 75) / ohm_per_metre(18) == pytest.approx(1.216, abs=5e-4)
    assert ohm_per_metre(18, 20) == ohm_per_metre(18)


@pytest.mark.published(
    document("voltage drop lesson", "4.99 Ω for 1000 ft, 100 ft, 4 A: 4.0 V, 16.7 % of 24 V")
)
def test_a_published_drop():
    """Before rounding it is 3.992 V and 16.6 %; the lesson takes its rounded 4.0 V on."""
    stranded = 4.99 / 0.3048  # Ω/km
    finding = wire_drop(16, 30.48, "4 A", "24 V", ohm_per_km=stranded)
    assert finding.drop == pytest.approx(3.992, abs=5e-4)
    assert round(float(finding.drop), 1) == 4.0
    assert finding.share == pytest.approx(16.63, abs=5e-3)
    assert round(100 * round(float(finding.drop), 1) / 24, 1) == 16.7


# 2 × length × Ω per metre × current, worked by hand
@pytest.mark.common_practice
def test_worked_drops():
    assert wire_drop(18, 30.48, "1 A").drop == pytest.approx(1.277, abs=5e-4)
    assert wire_drop(18, "0.60 m", "6.25 A").drop == pytest.approx(0.1571, abs=5e-5)
    assert wire_drop(24, "1.0 m", "1 A").drop == pytest.approx(0.1684, abs=5e-5)


@pytest.mark.common_practice
def test_a_hot_wire_says_so():
    """I² R in a metre: 24 AWG has 2.1 W at 5 A, 4.1 W at 7 A."""
    assert wire_drop(24, "1 m", "5 A").heat_per_metre == pytest.approx(2.105, abs=5e-3)
    assert wire_drop(24, "1 m", "5 A").verdict is None
    hot = wire_drop(24, "1 m", "7 A")
    assert hot.verdict == "over a limit" and "burns" in hot.reason
    assert "heat and fire" in hot.cautions


@pytest.mark.common_practice
def test_one_ampere_for_700_circular_mils():
    """A wire of 100 mils has 10 000 circular mils; 10 AWG has 101.9 mils: 14.8 A."""
    assert cautious_current(10) == pytest.approx(14.83, abs=5e-3)
    assert cautious_current(30) == pytest.approx(0.1436, abs=5e-4)


@pytest.mark.behaviour
def test_above_60_volts_it_is_handed_on():
    high = wire_drop(18, "1 m", "1 A", "230 V")
    assert "mains" in high.cautions and "qualified person" in high.notes[0]
    assert "mains" not in wire_drop(18, "1 m", "1 A", "60 V").cautions


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("call", "wrong"),
    [
        ((18.5, 1, 1), "not a wire gauge"),
        ((41, 1, 1), "gauge is out of range"),
        ((18, 0, 1), "length is out of range"),
        ((18, "1 V", 1), "in V where m is due"),
        ((30, 100, 10, "5 V"), "the cable alone would take"),
    ],
)
def test_what_is_refused(call, wrong):
    with pytest.raises(RepairlibError, match=wrong):
        wire_drop(*call)


@given(st.integers(10, 37))
def test_three_gauges_double_the_resistance(gauge):
    assert ohm_per_metre(gauge + 3) / ohm_per_metre(gauge) == pytest.approx(2, rel=5e-3)
