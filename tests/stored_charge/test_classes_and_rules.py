"""Energy classes of IEC 62368-1, and what seven rules ask after unplugging."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.core.limits import STEADY
from repairlib.stored_charge.energy_classes import (
    CAPACITOR,
    TABLE_5,
    ac_and_dc,
    ac_limits,
    capacitor_limits,
    energy_class,
)
from repairlib.stored_charge.steady_limits import steady_limits
from repairlib.stored_charge.unplugging import after_unplugging, limited_current, shock_hazard

TYPED_IN = {
    300: (60, 120),
    170: (75, 150),
    91: (100, 200),
    61: (125, 250),
    41: (150, 300),
    28: (200, 400),
    18: (250, 500),
    12: (350, 700),
    8.0: (500, 1000),
    4.0: (1000, 2000),
    1.6: (2500, 5000),
    0.8: (5000, 10_000),
    0.4: (10_000, 20_000),
    0.2: (20_000, 40_000),
    0.133: (25_000, 50_000),
}


@pytest.mark.published("IEC 62368-1, table 5, charged capacitor")
def test_table_5():
    for nano, limits in TYPED_IN.items():
        assert capacitor_limits(nano * 1e-9) == pytest.approx(limits)
    assert capacitor_limits(1) == (60, 120)
    assert capacitor_limits(1e-12) == (25_000, 50_000)
    assert len(TABLE_5) == len(TYPED_IN)


# Straight lines between neighbours, worked by hand.
@pytest.mark.published("IEC 62368-1, table 5, interpolation")
def test_between_the_rows():
    assert capacitor_limits(10e-9)[0] == pytest.approx(425)
    assert capacitor_limits(264e-9) == (
        pytest.approx(64.15, abs=5e-3),
        pytest.approx(128.3, abs=0.01),
    )
    assert capacitor_limits(100e-9) == (
        pytest.approx(97.15, abs=5e-3),
        pytest.approx(194.3, abs=0.01),
    )
    with_tolerance = energy_class(50, CAPACITOR, 220e-9, 20)
    assert with_tolerance.es1_limit == pytest.approx(64.15, abs=5e-3)


@pytest.mark.published("IEC 62368-1, steady dc and table 5: worked classes")
@pytest.mark.parametrize(
    ("volts", "nano", "name"),
    [
        (48, None, "ES1"),
        (60, None, "ES1"),
        (75, None, "ES2"),
        (100, None, "ES2"),
        (120, None, "ES2"),
        (325, None, "ES3"),
        (425, 10, "ES1"),
        (100, 91, "ES1"),
    ],
)
def test_classes(volts, nano, name):
    if nano:
        assert energy_class(volts, CAPACITOR, nano * 1e-9).energy_class == name
    else:
        assert energy_class(volts).energy_class == name


@pytest.mark.published("IEC 62368-1, steady ac: 30 and 50 V rms, 30 + 0.4 f, 50 + 0.9 f, 70, 140")
def test_ac():
    assert ac_limits(50) == ac_limits(1000) == (30, 50)
    assert ac_limits(10e3) == (34, 59)
    assert ac_limits(100e3) == pytest.approx((70, 140))
    assert ac_limits(1e6) == (70, 140)
    peaks, _ = energy_class(20, "steady ac").working
    assert "42.4 V peak" in peaks and "70.7 V peak" in peaks


def figures(rule):
    """V rms, V peak, V dc, A rms, A peak, A dc, as the calculator shows them; None: not stated."""
    shown = steady_limits(rule).values
    names = ("ac_rms", "ac_peak", "dc", "ac_rms_current", "ac_peak_current", "dc_current")
    return tuple(shown[name].value if name in shown else None for name in names)


@pytest.mark.published(
    "IEC 62368-1, 5.2.2; IEC 60335-1, 8.1.4, as quoted in angui.org thread 122410; Toshiba, "
    "32R3500P service manual, page 13, item 10"
)
def test_steady_limits():
    assert figures("IEC 62368-1, ES1") == (30, 42.4, 60, 0.5e-3, 0.707e-3, 2e-3)
    *volts, _, _, dc_current = figures("IEC 62368-1, ES2")
    assert (volts, dc_current) == ([50, 70.7, 120], 25e-3)
    assert figures("IEC 60335-1 8.1.4") == (None, 42.4, 42.4, None, 0.7e-3, 2e-3)
    assert figures("TV safety clause") == (None, 35, 60, None, 0.7e-3, 2e-3)


# The stored text prints the ES2 ac current as 0.5 mA; 5 mA is followed.
@pytest.mark.from_memory("IEC 62368-1, ES2 ac current 5 mA rms; IEC 61010-1 normal limits")
def test_steady_limits_from_memory():
    assert figures("IEC 62368-1, ES2")[3:5] == (5e-3, 7.07e-3)
    assert figures("IEC 61010-1:2010")[:3] == (33, 46.7, 70)
    assert figures("IEC 61010-1, before 2010")[:3] == (30, 42.4, 60)


@pytest.mark.behaviour
def test_no_rule_is_a_permission():
    for rule in STEADY:
        assert any("no permission" in note for note in steady_limits(rule).notes)


@pytest.mark.published("IEC 62368-1, 5.2.2, ES1: Udc / 60 + Uac / 30 is at most 1")
def test_ac_and_dc():
    assert ac_and_dc(30, 15).share == pytest.approx(1)
    assert ac_and_dc(30, 16).share == pytest.approx(0.5 + 16 / 30, rel=1e-3)
    assert ac_and_dc(60, 0).share == 1


@pytest.mark.behaviour
def test_above_ac_and_dc_together_it_is_not_for_learners():
    assert ac_and_dc(30, 15).verdict == "verify with a meter, twice"
    assert ac_and_dc(30, 16).verdict == "leave it to a qualified person"


# 0.47 µF and 1 MΩ at 264 V rms meet IEC 60950-1 and IEC 62368-1, not IEC 60335-1.
@pytest.mark.published(
    "Sato, emc-pstc list, 2002-09, quoting IEC 60950-1, 2.1.1.7: 1 s; CQA, IEC 62368-1 test report "
    "CQASZ20210400194S: 2 s; PSMA newsletter, 2020, quoting IEC 60335-1: 34 V after 1 s"
)
def test_rules_disagree():
    finding = after_unplugging(0.47e-6, 1e6, 373.4)
    words = {name: str(text).split(":")[0] for name, text in finding.values.items()}
    assert words["IEC 60950-1, pluggable type A"] == "meets"
    assert words["IEC 62368-1"] == "meets"
    assert words["IEC 60335-1"] == "does not meet"


@pytest.mark.behaviour
def test_rules_that_are_not_met_are_named():
    finding = after_unplugging(0.47e-6, 1e6, 373.4)
    assert finding.reason == "does not meet IEC 60335-1"
    assert finding.verdict == "meets 6 of 7 rules; leave it to a qualified person"
    assert any("leave it to a qualified person" in note for note in finding.notes)


@pytest.mark.published(
    "Sato, emc-pstc list, 2002-09, quoting IEC 60950-1, 2.1.1.7: 1 s and 10 s, above 0.1 µF; "
    "angui.org thread 122410, quoting the same: no test to 42.4 V peak"
)
def test_time_constants():
    two_seconds = after_unplugging(1e-6, 2e6, 325)
    assert two_seconds.values["IEC 60950-1, pluggable type A"].startswith("does not meet")
    assert two_seconds.values["IEC 60950-1, type B or permanent"].startswith("meets")
    small = after_unplugging(0.1e-6, 1e9, 325)
    assert small.values["IEC 60950-1, pluggable type A"].startswith("not asked")
    assert small.values["IEC 60335-1"].startswith("not asked")
    low = after_unplugging(1e-3, 1e9, 42.4)
    assert low.values["IEC 60950-1, pluggable type A"].startswith("not asked")


@pytest.mark.published(
    "CMPH Safety, IEC 60204-1, 6.2.4 (Japanese): 60 V within 5 s, 1 s, up to 60 µC exempt"
)
def test_machines():
    # 10 µF at 325 V are 3.25 mC; 100 kΩ is a time constant of 1 s, so 119.6 V after 1 s
    finding = after_unplugging(10e-6, 100e3, 325)
    assert finding.values["IEC 60204-1"].startswith("meets")
    assert finding.values["IEC 60204-1, bare pins"].startswith("does not meet")
    # 0.18 µF at 325 V are 58.5 µC
    assert after_unplugging(0.18e-6, 1e9, 325).values["IEC 60204-1"].startswith("not asked")


@pytest.mark.published(
    "IEEE emc-pstc list, 2001-05-11, quoting IEC 61010-1, 6.10.3: 5 s after unplugging"
)
def test_time_of_measuring_instruments():
    """By hand: 325 V with a time constant of 3 s are 325 e^(−5/3) = 61.385 V after 5 s."""
    told = after_unplugging(10e-6, 300e3, 325).values["IEC 61010-1"]
    assert "61.385" in told and "after 5 s" in told


@pytest.mark.from_memory("IEC 61010-1, before 2010: normal limit of 60 V dc")
def test_measuring_instruments():
    assert after_unplugging(10e-6, 300e3, 325).values["IEC 61010-1"].startswith("does not meet")
    assert after_unplugging(10e-6, 250e3, 325).values["IEC 61010-1"].startswith("meets")


@pytest.mark.published(
    "Sato, emc-pstc list, 2002-09, quoting IEC 60950-1, 2.4: 0.1 µF to 450 V, 45 µC to 15 kV, "
    "350 mJ above"
)
def test_limited_current():
    assert limited_current(0.1e-6, 450).verdict.startswith("within")
    assert limited_current(0.11e-6, 400).verdict.startswith("beyond")
    assert limited_current(45e-9, 1000).verdict.startswith("within")  # 45 µC
    assert limited_current(46e-9, 1000).verdict.startswith("beyond")
    assert limited_current(1.7e-9, 20e3).verdict.startswith("within")  # 340 mJ
    assert limited_current(1.8e-9, 20e3).verdict.startswith("beyond")  # 360 mJ


@pytest.mark.published(
    "Berkeley Lab, Hazardous: What Does It Mean: dc from 100 V and 40 mA, ac 50/60 Hz from 50 V "
    "and 5 mA"
)
def test_shock_hazard():
    counted = "shock hazard; "
    assert shock_hazard(100, 40e-3).verdict.startswith(counted)
    assert not shock_hazard(99, 1).verdict.startswith(counted)
    assert not shock_hazard(100, 39e-3).verdict.startswith(counted)
    assert shock_hazard(50, 5e-3, "ac 50/60 Hz").verdict.startswith(counted)
    assert not shock_hazard(50, 4.9e-3, "ac 50/60 Hz").verdict.startswith(counted)


def all_of(finding):
    return " ".join([str(finding), *finding.notes, *finding.working])


@pytest.mark.published("IEC 62368-1, 5.2.2, ES1: 60 V dc, 30 V rms")
@pytest.mark.parametrize(
    ("finding", "handed_on"),
    [
        (lambda: shock_hazard(61, 1e-6), True),
        (lambda: shock_hazard(60, 10), False),
        (lambda: shock_hazard(31, 1e-6, "ac 50/60 Hz"), True),
        (lambda: shock_hazard(24, 10, "ac 50/60 Hz"), False),
        (lambda: limited_current(2.2e-9, 90), True),
        (lambda: limited_current(47e-9, 48), False),
        (lambda: limited_current(470e-9, 48), True),  # beyond its rule
        (lambda: energy_class(150, CAPACITOR, 22e-9), True),  # ES1 by table 5
        (lambda: energy_class(48, CAPACITOR, 22e-9), False),
        (lambda: after_unplugging(47e-9, 1e6, 170), True),
        (lambda: after_unplugging(1e-3, 1e4, 36), False),
    ],
)
def test_above_es1_the_work_is_handed_on_whatever_the_rule_says(finding, handed_on):
    verdict = finding().verdict
    assert ("leave it to a qualified person" in verdict) == handed_on
    assert ("verify with a meter, twice" in verdict) != handed_on


@pytest.mark.published("Velleman DVM68 manual, section 4: CAT III 600 V, CAT II 1000 V")
@pytest.mark.parametrize(
    "finding",
    [
        lambda: limited_current(220e-12, 12e3),
        lambda: energy_class(4000, CAPACITOR, 470e-12),
        lambda: energy_class(1200),
        lambda: energy_class(2000, "steady ac"),
        lambda: ac_and_dc(900, 10),
        lambda: shock_hazard(15e3, 1e-4),
        lambda: shock_hazard(2000, 1, "ac 50/60 Hz"),
        lambda: after_unplugging(2.2e-9, 1e7, 5600),
    ],
)
def test_no_ordinary_meter_above_its_rating(finding):
    told = all_of(finding())
    assert "not with an ordinary meter" in told and "leave it to a qualified person" in told
    assert "verify with a meter" not in told and "verifies with a meter" not in told
    assert "high-voltage tubes" in finding().cautions


@pytest.mark.published("Berkeley Lab, Hazardous: What Does It Mean: heat below 100 V above 100 J")
def test_much_energy_at_low_voltage_is_handed_on():
    """C V² / 2, by hand: 50 V and 0.5 F are 625 J, 12 V and 10 F 720 J, 5.5 V and 1 F 15 J."""
    for volts, farad in ((50, 0.5), (12, 10)):
        finding = energy_class(volts, CAPACITOR, farad)
        assert finding.energy_class == "ES1"
        assert finding.verdict == "leave it to a qualified person"
        assert "melts metal" in finding.reason
    assert energy_class(5.5, CAPACITOR, 1).verdict == "verify with a meter, twice"
    assert "melts metal" in all_of(after_unplugging(0.5, 1e3, 50))


@pytest.mark.published("Sato, emc-pstc list, 2002-09, on IEC 60950 (withdrawn)")
def test_a_withdrawn_rule_says_so_in_its_verdict():
    for finding in (limited_current(1e-9, 40), limited_current(1e-6, 400)):
        assert "withdrawn" in finding.verdict


@pytest.mark.published("IEC 62368-1, edition 3.0, 2018-10, title page")
def test_editions_are_named_where_the_source_names_one():
    notes = " ".join(after_unplugging(47e-9, 1e6, 170).notes)
    assert "edition 3.0 of 2018" in notes and "name none" in notes


@pytest.mark.parametrize(
    "call",
    [
        lambda: energy_class(100, CAPACITOR),
        lambda: energy_class(-1),
        lambda: energy_class(10, "battery"),
        lambda: after_unplugging(0, 1e6, 325),
        lambda: after_unplugging(1e-6, 0, 325),
        lambda: limited_current(1e-6, 0),
        lambda: ac_and_dc(-1, 0),
    ],
)
def test_bad_input(call):
    with pytest.raises(RepairlibError):
        call()


@given(st.floats(1e-14, 1e-3), st.floats(1e-14, 1e-3))
def test_more_capacitance_never_allows_more_voltage(one, other):
    small, large = sorted((one, other))
    assert capacitor_limits(large)[0] <= capacitor_limits(small)[0] * (1 + 1e-12)
    es1, es2 = capacitor_limits(one)
    assert es2 == pytest.approx(2 * es1)
