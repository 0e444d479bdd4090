"""Charge on a body: the worked examples E1 to E12 and E15, and the tables of activities."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.esd.charge import (
    ACTIVITIES,
    body_charge,
    body_spark,
    charge_decay,
    charge_left,
    charging_by_walking,
    drain_resistance,
    resistance_to_hold,
    voltage_of,
)


@pytest.mark.published(
    "Thermo Fisher Scientific, ESD semiconductor qualification: 100 pF, 1500 Ω, 0.67 A at 1000 V"
)
def test_human_body_model():
    """E1 and E2; E1 worked from the same model."""
    at_2000 = body_spark("2000 V")
    assert at_2000.peak_current == pytest.approx(1.33, abs=0.005)
    assert at_2000.energy == pytest.approx(0.2e-3)
    assert at_2000.charge == pytest.approx(0.2e-6)
    assert at_2000.time_constant == pytest.approx(150e-9)
    at_1000 = body_spark("1000 V").peak_current
    assert round(at_1000, 3) == 0.667 and round(at_1000, 2) == 0.67


# t = R C ln(V0 / V), worked by hand
@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("volts", "target", "ohm", "farad", "seconds"),
    [
        (5000, 100, 1e6, 100e-12, 0.391e-3),  # E3
        (5000, 100, 35e6, 100e-12, 13.7e-3),  # E4
        (5000, 100, 1e9, 100e-12, 0.391),  # E5
        (1000, 100, 1e11, 200e-12, 46.1),  # E6
    ],
)
def test_decay(volts, target, ohm, farad, seconds):
    assert charge_decay(volts, target, ohm, farad).time == pytest.approx(seconds, rel=2e-3)


@pytest.mark.common_practice
def test_largest_resistance_and_what_is_left():
    """E7 and E12, from the same law."""
    assert drain_resistance(5000, 100, 0.1).resistance == pytest.approx(2.56e8, rel=2e-3)
    assert charge_left(2000, 35e6, 10e-3).voltage == pytest.approx(114.9, abs=0.05)


@pytest.mark.published(
    "Niels Jonassen, Charging by Walking, Compliance Engineering: 3.98e-7 C, 8.0e-7 A, 1e8 Ω"
)
def test_walking():
    """E9 to E11; E11 is E9 on 150 pF."""
    finding = charging_by_walking(150)
    assert finding.charge == pytest.approx(3.98e-7, rel=2e-3)
    assert finding.current == pytest.approx(8.0e-7, rel=5e-3)
    assert finding.first_step == pytest.approx(2655, abs=0.5)
    assert resistance_to_hold(100, 1e-6) == pytest.approx(1e8)


@pytest.mark.common_practice
def test_same_charge_on_twice_the_capacitance():
    """E15, by hand, V = Q / C: 0.1 µC on 60 pF are 1667 V, on 120 pF 833 V."""
    assert voltage_of(1e-7, 60e-12) == pytest.approx(1667, abs=0.5)
    assert voltage_of(1e-7, 120e-12) == pytest.approx(833, abs=0.5)


@pytest.mark.published("Eslon, ESD Anti Static: Definitions, surface potentials; vinyl when dry")
def test_activities_dry_and_damp():
    for activity, dry, damp in (
        ("walk on carpet", 35000, 1500),
        ("work at the bench", 6000, 100),
    ):
        assert body_charge(activity, 15).voltage == dry
        assert body_charge(activity, 80).voltage == damp
    assert body_charge("walk on vinyl floor", 20).voltage == 12000


@pytest.mark.from_memory("DOD-HDBK-263: vinyl 250 V when damp, poly bag, padded chair")
def test_activities_from_memory():
    vinyl = body_charge("walk on vinyl floor", 80)
    assert vinyl.voltage == 250
    assert any("3000 V" in note for note in vinyl.notes)
    assert "from memory" in vinyl.sources
    for activity, dry, damp in (
        ("pick up a poly bag", 20000, 1200),
        ("rise from a padded chair", 18000, 1500),
    ):
        assert body_charge(activity, 15).voltage == dry
        assert body_charge(activity, 45).voltage == dry  # nothing listed between
        assert body_charge(activity, 80).voltage == damp


@pytest.mark.published(
    "Hewlett-Packard, service guide B2A30UT, chapter 4: voltages at 10, 40 and 55 % humidity"
)
def test_activities_by_three_humidities():
    for activity, volts in (
        ("walk on carpet", (35000, 15000, 7500)),
        ("walk on vinyl floor", (12000, 5000, 3000)),
        ("work at the bench", (6000, 800, 400)),
    ):
        assert [body_charge(activity, rh).voltage for rh in (10, 40, 55)] == list(volts)
        assert body_charge(activity, 54).voltage == volts[1]  # the drier one counts


@pytest.mark.published("Eslon, ESD Anti Static: Definitions: felt from about 3000 V")
def test_what_is_not_felt():
    """800 V at the bench is not felt; 3000 V on vinyl at 55 % humidity is."""

    def unfelt(activity, humidity):
        return any("below about 3000 V" in n for n in body_charge(activity, humidity).notes)

    assert unfelt("work at the bench", 40)
    assert not unfelt("walk on vinyl floor", 55)
    assert not unfelt("walk on carpet", 40)


@pytest.mark.parametrize(
    "call",
    [
        lambda: charge_decay(100, 5000, 1e6),
        lambda: charge_decay(100, 100, 1e6),
        lambda: drain_resistance(100, 200, 1),
        lambda: drain_resistance(100, 0, 1),
        lambda: charge_decay(100, 10, 0),
        lambda: body_charge("walk on carpet", 101),
        lambda: body_charge("walk on carpet", -1),
        lambda: body_charge("fly", 50),
        lambda: voltage_of(1, 0),
        lambda: resistance_to_hold(100, 0),
        lambda: charge_left(100, 1e6, -1),
    ],
)
def test_bad_input(call):
    with pytest.raises(RepairlibError):
        call()


@given(st.sampled_from(tuple(ACTIVITIES)), st.floats(0, 100), st.floats(0, 100))
def test_damper_air_never_charges_more(activity, one, other):
    dry, damp = sorted((one, other))
    assert body_charge(activity, damp).voltage <= body_charge(activity, dry).voltage


@given(st.floats(200, 1e5), st.floats(1e3, 1e12), st.floats(1e-12, 1e-9))
def test_there_and_back(volts, ohm, farad):
    seconds = charge_decay(volts, 100, ohm, farad).time
    assert charge_left(volts, ohm, seconds, farad).voltage == pytest.approx(100)
    if seconds > 1e-8:
        assert drain_resistance(volts, 100, seconds, farad).resistance == pytest.approx(ohm)
