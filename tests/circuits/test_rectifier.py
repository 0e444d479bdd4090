"""repairlib.circuits.rectifier: the textbook's ripple by hand, and where it does not hold."""

import pytest

from repairlib.circuits import rails, rectifier_supply, supply, textbook
from repairlib.core.errors import RepairlibError
from repairlib.core.limits import TOUCHABLE_DC

SHEET = (
    "worked by hand from the formulas of university course sheet FEEG1004, part B: "
    "Vpp = I / (2 f C), I / (f C); mean = peak - Vpp / 2"
)
LECTURE = "university lecture notes, lecture 15, 27 October 2023: a supply of 1 A at 60 Hz"


def ripple(kind, mains, capacitance, load):
    return textbook(kind, 12, mains, capacitance, load, 0.8).ripple


@pytest.mark.published(SHEET)
def test_ripple_of_the_textbook():
    # 2 / (120 × 3300e-6) = 5.051, 1 / (100 × 4700e-6) = 2.128, and so on.
    assert ripple("bridge", 60, 3300e-6, 2) == pytest.approx(5.051, abs=5e-4)
    assert ripple("bridge", 50, 4700e-6, 1) == pytest.approx(2.128, abs=5e-4)
    assert ripple("centre tap", 50, 1000e-6, 0.25) == pytest.approx(2.5)
    assert ripple("bridge", 60, 6800e-6, 1.5) == pytest.approx(1.838, abs=5e-4)
    assert ripple("half wave", 50, 1000e-6, 0.1) == pytest.approx(2.0)
    assert ripple("half wave", 60, 47e-6, 10e-3) == pytest.approx(3.546, abs=5e-4)
    assert ripple("half wave", 60, 833.3e-6, 0.1) == pytest.approx(2.0, rel=1e-3)
    assert ripple("bridge", 50, 240e-6, 12e-3) == pytest.approx(0.5)


@pytest.mark.published(LECTURE)
def test_a_supply_of_one_ampere():
    # Stated: 4170 µF for 2 V; 21.2 V r.m.s. centre-tapped, 15 V peak each half, 1 V of diode.
    # By hand from it: 15 - 1 = 14 V on the capacitor, mean 14 - 2 / 2 = 13 V.
    found = textbook("centre tap", 21.2 / 2, 60, 4170e-6, 1, 1.0)
    assert found.ripple == pytest.approx(2.0, rel=2e-3)
    assert found.peak == pytest.approx(14, rel=2e-3)
    assert found.mean == pytest.approx(13, rel=2e-3)


@pytest.mark.published(SHEET)
def test_a_tired_reservoir_lets_a_regulator_drop_out():
    # 9 V r.m.s., bridge of 1.4 V: √2 × 9 - 1.4 = 11.33 V; 5 V regulator that needs 7 V, 0.5 A.
    # 0.5 / (100 × 1000e-6) = 5 V, valley 6.33 V; 0.5 / (100 × 4700e-6) = 1.064 V, 10.26 V.
    tired = textbook("bridge", 9, 50, 1000e-6, 0.5, 0.7)
    assert (tired.peak, tired.valley) == pytest.approx((11.33, 6.33), abs=5e-3)
    assert tired.valley - 7 == pytest.approx(-0.67, abs=5e-3)
    fresh = textbook("bridge", 9, 50, 4700e-6, 0.5, 0.7)
    assert (fresh.ripple, fresh.valley) == pytest.approx((1.064, 10.26), abs=5e-3)
    assert textbook("bridge", 12, 50, 1e-3, 1, 0.8).peak == pytest.approx(15.37, abs=5e-3)


# The textbook leaves out the time in which the reservoir is fed. With a ripple well below n Vt the
# rail stands still, and the pulse follows from the diodes' law alone: exp(√2 V cos θ / (d n Vt)),
# d diodes in its way, is a bell of s = √(d n Vt / (√2 V)) rad, once in T = π rad (half wave 2π).
# Its charge is what the load takes in T, so it stands above the load's current within ±z s,
# z = √(2 ln(T / (s √(2π)))), and the ripple's share of I T / C is erf(z / √2) - 2 z s / T.
# n Vt = 1.8 × 25.865 mV = 46.56 mV, √2 × 12 V = 16.97 V, √2 × 200 V = 282.8 V.
# bridge, 12 V:     s = √(0.09311 / 16.97) = 0.07407, z = 2.378: 0.9826 - 0.1122 = 0.870
# half wave, 12 V:  s = √(0.04656 / 16.97) = 0.05238, z = 2.781: 0.9946 - 0.0464 = 0.948
# centre tap, 12 V: s = 0.05238,                      z = 2.520: 0.9883 - 0.0840 = 0.904
# bridge, 200 V:    s = √(0.09311 / 282.8) = 0.01814, z = 2.910: 0.9964 - 0.0336 = 0.963
@pytest.mark.published(SHEET)
@pytest.mark.parametrize(
    ("kind", "secondary", "mains", "farad", "amps", "share"),
    [
        ("bridge", 12, 50, 47e-3, 0.1, 0.870),
        ("half wave", 12, 60, 22e-3, 0.05, 0.948),
        ("centre tap", 12, 50, 47e-3, 0.1, 0.904),
        ("bridge", 200, 50, 2200e-6, 5e-3, 0.963),
    ],
)
def test_within_its_validity_the_textbook_is_met(kind, secondary, mains, farad, amps, share):
    """Ripple far below the peak, next to no winding: pulses are short, and the formula holds."""
    finding = rectifier_supply(secondary, kind, farad, amps, mains=mains, winding=2e-3)
    assert finding.ripple < 0.01 * finding.peak
    assert finding.ripple == pytest.approx(share * finding.textbook_ripple, rel=2e-3)
    assert finding.ripple < finding.textbook_ripple
    assert finding.mean == pytest.approx(finding.peak - finding.ripple / 2, rel=1e-3)


@pytest.mark.common_practice
def test_beyond_it_the_textbook_is_the_worst_case_and_that_is_said():
    finding = rectifier_supply("12 V", "half wave", "220 µF", "0.2 A")
    assert finding.ripple < 0.9 * finding.textbook_ripple
    assert any("does not hold" in note for note in finding.notes)
    assert not any(
        "does not hold" in note for note in rectifier_supply(12, "bridge", 0.01, 1).notes
    )


@pytest.mark.common_practice
def test_two_pulses_are_better_than_one_and_two_diodes_worse():
    half, bridge, tap = (
        rectifier_supply(12, kind, 2200e-6, 0.5) for kind in ("half wave", "bridge", "centre tap")
    )
    assert half.ripple > 1.7 * tap.ripple
    assert tap.peak - bridge.peak == pytest.approx(0.9, abs=0.2)


@pytest.mark.behaviour
def test_above_60_volts_it_is_handed_on():
    below = rectifier_supply(TOUCHABLE_DC / 2**0.5 - 0.1, "bridge", 100e-6, 0.1)
    above = rectifier_supply(TOUCHABLE_DC / 2**0.5 + 0.1, "bridge", 100e-6, 0.1)
    assert below.verdict == "verify with a meter, twice"
    assert above.verdict == "leave it to a qualified person"
    for finding in (below, above):
        assert set(finding.cautions) >= {"mains", "stored charge"}
        assert "safe" not in str(finding)


@pytest.mark.behaviour
def test_what_is_refused():
    with pytest.raises(RepairlibError, match="opens no diode"):
        rectifier_supply("1 V", "bridge", "1000 µF", "10 mA")
    for values in ((0, "bridge", 1e-3, 1), (12, "bridge", 0, 1), (12, "bridge", 1e-3, -1)):
        with pytest.raises(RepairlibError, match="out of range"):
            rectifier_supply(*values)
    with pytest.raises(RepairlibError, match="not a known kind"):
        rectifier_supply(12, "full wave", 1e-3, 1)
    with pytest.raises(RepairlibError, match="not a known kind"):
        textbook("full wave", 12, 50, 1e-3, 1, 0.8)


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("kind", "capacitance", "load", "esr"),
    [
        ("bridge", "1000 µF", "0.5 A", "0.1 Ω"),
        ("bridge", "2200 µF", "1 A", "0.15 Ω"),
        ("half wave", "1000 µF", "0.5 A", "0.1 Ω"),
        ("centre tap", "470 µF", "0.4 A", "0 Ω"),
    ],
)
def test_more_steps_change_less_than_the_error_says(kind, capacitance, load, esr):
    parts = supply(kind, "12 V", "50 Hz", capacitance, load, esr=esr)
    usual, fine = (rails(parts, "rail", steps=steps)["rail"] for steps in (400, 1600))
    for one, other in zip(usual[:3], fine[:3], strict=True):
        assert abs(one - other) <= usual.error
