"""Energy, voltage after a time, time to a named limit, bleeders: the worked examples."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.stored_charge.discharge import (
    TIME_CONSTANT,
    bleeder,
    discharge_time,
    stored_energy,
    voltage_left,
    voltage_of_energy,
)

MICRO = 1e-6


@pytest.mark.from_memory(
    "college physics textbook, example 17-9, author not noted: 80 µF at 2.50 kV hold 0.200 C, 250 J"
)
def test_physics_textbook():
    finding = stored_energy(80 * MICRO, 2500)
    assert finding.charge == pytest.approx(0.200)
    assert finding.energy == pytest.approx(250)


# V = √(2 E / C), worked by hand
@pytest.mark.common_practice
def test_voltage_of_an_energy():
    assert voltage_of_energy(44.8, 8.59 * MICRO).voltage == pytest.approx(3230, rel=5e-4)
    assert voltage_of_energy(42.3, 8.28 * MICRO).voltage == pytest.approx(3196, rel=5e-4)


# E = C V² / 2, worked by hand
@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("microfarad", "volts", "joule"),
    [
        (470, 400, 37.6),
        (220, 385, 16.30),
        (1000, 63, 1.985),
        (10_000, 50, 12.5),
        (8, 10e3, 400),
        (32, 600, 5.76),
    ],
)
def test_energy(microfarad, volts, joule):
    assert stored_energy(microfarad * MICRO, volts).energy == pytest.approx(joule, rel=5e-4)


@pytest.mark.published(
    "vaia.com, College Physics, 1st edition, chapter 10, problem 19: 1.25 × 10³ Ω"
)
def test_college_physics():
    """τ 10.0 ms with 8.00 µF needs 1250 Ω; then 12.0 kV to 600 V in 29.96 ms, worked by hand.

    93.1 ms, printed on a page, is wrong.
    """
    needed = bleeder(8 * MICRO, 12e3, 10e-3, TIME_CONSTANT).resistance
    assert needed == pytest.approx(1250)
    seconds = discharge_time(8 * MICRO, 12e3, 1250, "own limit", own=600).time
    assert seconds == pytest.approx(29.96e-3, rel=5e-4)


# t = R C ln(V0 / V) and V0² / R, worked by hand
@pytest.mark.common_practice
def test_time_to_60_volts():
    slow = discharge_time(220 * MICRO, 400, 100e3)
    assert (slow.time, slow.first_power) == (
        pytest.approx(41.74, abs=5e-3),
        pytest.approx(1.6),
    )
    quick = discharge_time(470 * MICRO, 385, 2200)
    assert quick.time == pytest.approx(1.922, abs=5e-4)
    assert quick.first_power == pytest.approx(67.4, abs=0.05)
    assert discharge_time(1000 * MICRO, 100, 10e3).time == pytest.approx(5.108, abs=5e-4)


@pytest.mark.common_practice
def test_bleeder_for_two_seconds():
    finding = bleeder(100 * MICRO, 325.3, 2)
    assert finding.resistance == pytest.approx(11.83e3, rel=5e-4)
    assert finding.e12 == 10e3
    assert finding.volts_across == 325.3


@pytest.mark.published(
    "Sato, emc-pstc list, 2002-09, quoting IEC 60950-1, 2.1.1.7: time constant at most 1 s"
)
def test_bleeder_for_a_time_constant():
    """Worked by hand: 200 nF needs 5 MΩ, 2.2 µF needs 454.5 kΩ, 0.1164 W on 230 V rms."""
    assert bleeder(200e-9, 325.27, 1, TIME_CONSTANT).resistance == pytest.approx(5e6)
    finding = bleeder(2.2 * MICRO, 230 * math.sqrt(2), 1, TIME_CONSTANT, fed="ac sine")
    assert finding.resistance == pytest.approx(454.5e3, rel=5e-4)
    power = finding.power * finding.e12 / finding.resistance  # in the largest, not the E12 one
    assert power == pytest.approx(0.1164, rel=1e-3)


@pytest.mark.published(
    "IEC 62368-1, 5.2.2: 60 V dc; PSMA newsletter, 2020, quoting IEC 60335-1: 34 V peak"
)
def test_small_capacitor_on_the_mains():
    """0.47 µF with 1 MΩ from 264 V rms: worked by hand."""
    peak = 373.4
    to_60 = discharge_time(0.47 * MICRO, peak, 1e6)
    assert to_60.time_constant == pytest.approx(0.47)
    assert to_60.time == pytest.approx(0.8592, rel=5e-4)
    to_34 = discharge_time(0.47 * MICRO, peak, 1e6, "IEC 60335-1, unplugging")
    assert to_34.time == pytest.approx(1.126, rel=5e-4)
    assert "34 V peak" in to_34.reason


@pytest.mark.published("Wikipedia, Electrolytic capacitor: dielectric absorption 10 to 15 %")
def test_what_comes_back():
    known = stored_energy(220 * MICRO, 400, "aluminium electrolytic").may_come_back
    assert known.replace("\xa0", " ") == "40 V to 60 V"


@pytest.mark.published("WIMA, film dielectrics: absorption PP 0.05 to 0.10, PET 0.2 to 0.25 %")
def test_a_film_part_gives_little_back():
    """0.05 % and 0.25 % of 400 V are 0.2 V and 1 V, by hand."""
    back = stored_energy(100e-9, 400, "film")
    assert back.may_come_back.replace("\xa0", " ") == "200 mV to 1 V"
    assert "aluminium" not in str(back.to_dict()).replace("Aluminium", "")


@pytest.mark.behaviour
def test_what_comes_back_is_aluminiums_only_when_it_is_said():
    for farad, volts in ((100e-9, 325), (2.2e-6, 250), (470e-6, 35)):
        told = stored_energy(farad, volts)
        assert told.may_come_back.endswith("if aluminium electrolytic")
        assert any("state the kind" in note for note in told.notes)


def stated(source, name, volts):
    """One limit, with the document that states it."""
    return pytest.param(name, volts, marks=pytest.mark.published(source), id=name)


@pytest.mark.parametrize(
    ("name", "volts"),
    [
        stated("IEC 62368-1, 5.2.2", "IEC 62368-1, ES1", 60),
        stated("IEC 62368-1, 5.2.2", "IEC 62368-1, ES2", 120),
        stated("PSMA newsletter, 2020, quoting IEC 60335-1", "IEC 60335-1, unplugging", 34),
        stated("angui.org thread 122410, IEC 60335-1, 8.1.4", "IEC 60335-1, extra-low", 42.4),
        stated("CMPH Safety, IEC 60204-1, 6.2.4 (Japanese)", "IEC 60204-1", 60),
        stated("Toshiba, 32R3500P service manual, page 13", "TV safety clause", 60),
    ],
)
def test_limits(name, volts):
    """From e times the limit a capacitor is down to it after one time constant."""
    assert discharge_time(1e-6, volts * math.e, 1e6, name).time == pytest.approx(1)


@pytest.mark.from_memory("IEC 61010-1:2010, normal limit of 70 V dc")
def test_limit_from_memory():
    seconds = discharge_time(1e-6, 70 * math.e, 1e6, "IEC 61010-1:2010").time
    assert seconds == pytest.approx(1)
    assert "from memory" in discharge_time(1e-6, 100, 1e3, "IEC 61010-1:2010").sources


@pytest.mark.published(
    "Berkeley Lab, Hazardous: What Does It Mean: shock from 100 V and 10 J, heat below 100 V above "
    "100 J, arc and blast from 10 kJ"
)
def test_hazards():
    assert stored_energy(470 * MICRO, 400).hazard == "shock"  # 37.6 J
    assert "below both" in stored_energy(10_000 * MICRO, 50).hazard  # 12.5 J
    assert stored_energy(0.2, 40).hazard == "heat"  # 160 J
    assert stored_energy(0.125, 40).hazard.startswith("below")  # 100 J, not above
    assert stored_energy(0.2, 31).hazard.startswith("below")  # 96.1 J
    assert stored_energy(0.25, 400).hazard == "shock and arc and blast"  # 20 kJ


@pytest.mark.behaviour
def test_what_can_burn_is_not_for_learners():
    assert stored_energy(0.2, 40).verdict == "leave it to a qualified person"
    assert bleeder(0.2, 40, 60, "own limit", own=5).verdict == "leave it to a qualified person"
    assert stored_energy(0.125, 40).verdict == "verify with a meter, twice"  # 100 J, not above


@pytest.mark.from_memory(
    "a capacitor-safety table without an author: reflex above 400 V and 0.25 J"
)
def test_reflex():
    assert stored_energy(4 * MICRO, 450).hazard == "reflex"  # 0.405 J
    assert stored_energy(2 * MICRO, 450).hazard.startswith("below")  # 0.2025 J


@pytest.mark.from_memory("50 J may be lethal, newer workplace rule above 1 J from 100 V")
def test_both_shock_energies_are_said():
    note = stored_energy(MICRO, 100).notes[0]
    assert "1 J (from memory)" in note and "50 J is often called possibly lethal" in note


KILOVOLTS = (
    lambda: stored_energy(2.2e-9, 6300),
    lambda: voltage_of_energy(50, 10 * MICRO),  # 3.162 kV
    lambda: voltage_left(470e-12, 18e3, 1e9, 3600),
    lambda: discharge_time(1 * MICRO, 2100, 10e6),
    lambda: bleeder(1e-9, 27e3, 10, use="held on by hand"),
    lambda: bleeder(4.7e-9, 4000, 30),
)


@pytest.mark.behaviour
@pytest.mark.parametrize("call", KILOVOLTS)
def test_above_the_rating_of_a_meter_nobody_is_sent_there_with_one(call):
    finding = call()
    assert finding.verdict == "leave it to a qualified person"
    told = " ".join([str(finding), *finding.notes, *finding.working])
    assert "not with an ordinary meter" in told and "high-voltage probe" in told
    assert "verify with a meter" not in told and "verifies with a meter" not in told
    assert "high-voltage tubes" in finding.cautions


@pytest.mark.published("IEC 62368-1, 5.2.2, ES1: 60 V dc")
@pytest.mark.parametrize(("volts", "learner"), [(12, True), (60, True), (61, False), (500, False)])
def test_who_is_told_to_measure(volts, learner):
    for finding in (stored_energy(MICRO, volts), voltage_left(MICRO, volts, 1e6, 1)):
        told = " ".join(finding.notes)
        assert ("Measure across the part" in told) == learner
        assert ("Whoever is qualified measures" in told) != learner


@pytest.mark.published("Velleman DVM68 manual, section 4: CAT III 600 V, CAT II 1000 V")
def test_an_ordinary_meter_ends_at_its_rating():
    assert "verifies with a meter, twice" in stored_energy(MICRO, 600).reason
    assert "not with an ordinary meter" in stored_energy(MICRO, 601).reason
    assert "600 V, at most 1 kV" in stored_energy(MICRO, 1500).reason.replace("\xa0", " ")


@pytest.mark.common_practice
def test_no_wirewound_part_of_megohms_and_no_value_outside_the_series():
    """5 s / (2 nF ln(25 000 / 60)) are 414.4 MΩ, by hand; below it E12 has 390 MΩ."""
    held = bleeder(2e-9, 25e3, 5, use="held on by hand")
    assert held.resistance == pytest.approx(414.4e6, rel=1e-3) and held.e12 == 390e6
    assert not any("wirewound" in step for step in held.working)
    low = bleeder(1 * MICRO, 50, 5, "own limit", own=5, use="held on by hand")
    assert any("no wirewound part has 1.8 MΩ" in step.replace("\xa0", " ") for step in low.working)
    usual = bleeder(1000 * MICRO, 50, 1, "own limit", own=5, use="held on by hand")
    assert any("a wirewound part" in step for step in usual.working)


def test_verdicts():
    for finding in (
        stored_energy(470 * MICRO, 400),
        discharge_time(220 * MICRO, 400, 100e3),
        bleeder(100 * MICRO, 325.3, 2),
        voltage_left(220 * MICRO, 400, 100e3, 3600),
    ):
        assert finding.verdict == "leave it to a qualified person"
    for finding in (
        stored_energy(470 * MICRO, 48),
        discharge_time(470 * MICRO, 48, 100, "IEC 60335-1, unplugging"),
        voltage_left(470 * MICRO, 48, 100, 1),
    ):
        assert finding.verdict == "verify with a meter, twice"
        assert "safe" not in str(finding) and "stored charge" in finding.cautions


def test_a_bleeder_has_its_watts_and_says_when_it_is_too_hot():
    fitted = bleeder(220 * MICRO, 400, 60)
    assert fitted.power == pytest.approx(400**2 / fitted.e12)
    assert fitted.values["power_rating"].value >= 2 * fitted.power
    assert bleeder(0.01, 400, 0.1).power_rating.startswith("too hot")
    held = bleeder(220 * MICRO, 400, 5, use="held on by hand")
    assert "power" not in held.values and held.energy == pytest.approx(17.6)


# V² / R and its share of 0.25 W, worked by hand: 12, 24, 35 and 50 V rails.
@pytest.mark.published("Engineer Live on ARCOL RW discharge resistors: ten times its watts for 5 s")
@pytest.mark.parametrize(
    ("volts", "ohm", "micro", "watts", "times"),
    [
        (12, 10, 4700, 3, "57.6"),
        (24, 47, 2200, 3, "49"),
        (35, 22, 3300, 10, "223"),
        (50, 100, 1000, 3, "100"),
    ],
)
def test_which_resistor_survives(volts, ohm, micro, watts, times):
    told = " ".join(discharge_time(micro * MICRO, volts, ohm, "own limit", own=1).notes)
    assert f"wirewound, {watts} W" in told.replace("\xa0", " ") and "carbon composition" in told
    assert f"0.25 W film resistor does not survive: it has {times} times" in told


@pytest.mark.common_practice
def test_a_resistor_that_explodes_is_named():
    for volts, ohm in ((325, 10), (170, 22), (48, 1)):
        told = " ".join(discharge_time(2200 * MICRO, volts, ohm, "own limit", own=5).notes)
        assert "Not to be tried" in told and "This resistor explodes" in told
        assert ("Take " in told) == (volts <= 60)
    assert "explodes" not in " ".join(discharge_time(100e-9, 50, 1, "own limit", own=5).notes)


@pytest.mark.common_practice
def test_a_small_film_resistor_bears_little_power():
    """24 V across 10 kΩ are 57.6 mW, by hand."""
    told = " ".join(discharge_time(100 * MICRO, 24, 10e3, "own limit", own=1).notes)
    assert "57.6 mW" in told.replace("\xa0", " ") and "does not survive" not in told


@pytest.mark.common_practice
def test_a_long_discharge_asks_for_the_whole_rating():
    """0.05 F and 120 Ω have a time constant of 6 s; 50 V across 120 Ω are 20.8 W."""
    told = discharge_time(0.05, 50, 120, "own limit", own=1).notes[0]
    assert "wirewound, 25 W" in told and "pulse" not in told


@pytest.mark.parametrize(
    "call",
    [
        lambda: stored_energy(0, 100),
        lambda: stored_energy(-1e-6, 100),
        lambda: stored_energy(1e-6, -5),
        lambda: stored_energy(1e-6, 0),
        lambda: discharge_time(1e-6, 100, 0),
        lambda: discharge_time(1e-6, 100, -1e3),
        lambda: discharge_time(1e-6, 0, 1e3),
        lambda: discharge_time(0, 100, 1e3),
        lambda: discharge_time(1e-6, 100, 1e3, "own limit", own=0),
        lambda: discharge_time(1e-6, 100, 1e3, "own limit"),
        lambda: discharge_time(1e-6, 100, 1e3, own=20),
        lambda: discharge_time(1e-6, 60, 1e3),
        lambda: discharge_time(1e-6, 50, 1e3),
        lambda: bleeder(1e-6, 50, 1),
        lambda: bleeder(1e-6, 100, 0),
        lambda: bleeder(1e-6, 100, -1),
        lambda: voltage_left(1e-6, 100, 1e3, -1),
        lambda: voltage_left(1e-6, 100, 0, 1),
        lambda: voltage_of_energy(0, 1e-6),
    ],
)
def test_bad_input(call):
    with pytest.raises(RepairlibError):
        call()


@given(st.floats(61, 1e4), st.floats(1, 1e8), st.floats(1e-9, 1e-1))
def test_there_and_back(volts, ohm, farad):
    seconds = discharge_time(farad, volts, ohm).time
    assert voltage_left(farad, volts, ohm, seconds).voltage == pytest.approx(60)
    if 1e-9 <= seconds <= 1e9:
        made = bleeder(farad, volts, seconds)
        assert made.resistance == pytest.approx(ohm)
        assert made.e12 <= made.resistance * (1 + 1e-9)
        assert made.time <= seconds * (1 + 1e-9)


@pytest.mark.common_practice
@pytest.mark.parametrize(("farad", "volts"), [(330, 385), ("100 F", "450 V"), (2200, 100)])
def test_a_lost_unit_is_no_bank_of_megajoules(farad, volts):
    with pytest.raises(RepairlibError, match="a unit is missing or wrong"):
        stored_energy(farad, volts)
    with pytest.raises(RepairlibError, match="a unit is missing or wrong"):
        discharge_time(farad, volts, "1 kΩ")
    assert stored_energy("3000 F", "2.7 V").verdict.startswith(
        "leave it"
    )  # 10.9 kJ in a power cell
