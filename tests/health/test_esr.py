"""tan δ and ESR limits, against the data sheets and by hand."""

from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.health import judge_capacitor, read_measured
from repairlib.health.capacitor_families import families
from repairlib.health.esr import (
    esr_from_tan_delta,
    esr_limit,
    esr_of,
    high_frequency_limit,
    impedance_ratio,
    loss_limit,
    loss_rows,
    thousands_above,
    usual_at_high,
)
from repairlib.recap import plan
from tests.documents import document

ZL, RGA, TN = document("Rubycon ZL"), document("Lelon RGA"), document("RFE TN")
SN, APSA = document("Teapo SN"), document("Nippon Chemi-Con APSA")
ESRD = document("Cornell Dubilier ESRD")

VOLTS = (6.3, 10, 16, 25, 35, 50, 63, 100)


def tan_delta(family, volts, microfarad=100, hertz=120):
    return loss_limit(family, microfarad * 1e-6, volts, hertz).tan_delta


def check(family, limits, volts=VOLTS):
    stated = {v: limit for v, limit in zip(volts, limits, strict=True) if limit is not None}
    assert {v: tan_delta(family, v) for v in stated} == stated


@pytest.mark.published(f"{ZL}: tan δ at 120 Hz, 20 °C")
def test_low_impedance():
    check("aluminium low impedance", (0.22, 0.19, 0.16, 0.14, 0.12, 0.10, 0.09, 0.08))


@pytest.mark.published(f"{RGA}: tan δ at 120 Hz, 20 °C")
def test_general_105():
    check("aluminium general 105", (0.23, 0.20, 0.16, 0.14, 0.12, 0.10, 0.09, 0.08))
    high = (160, 200, 250, 350, 400, 450)
    check("aluminium general 105", (0.12, 0.14, 0.17, 0.20, 0.25, 0.25), high)


@pytest.mark.published(f"{TN}: tan δ at 120 Hz, 20 °C")
def test_non_polar_axial():
    check("aluminium non-polar axial", (0.25, 0.22, 0.18, 0.16, 0.14, 0.12, 0.10, 0.09))


@pytest.mark.published(f"{SN}: tan δ at 120 Hz, 25 °C")
def test_non_polar():
    check("aluminium non-polar", (0.24, 0.20, 0.17, 0.15, 0.14, 0.12, None, 0.10))


@pytest.mark.published(document("Nichicon ET", "tan δ at 120 Hz, 20 °C"))
def test_bipolar():
    check("aluminium bipolar", (0.24, 0.20, 0.16, 0.16, 0.14, 0.12, 0.10, 0.09))


@pytest.mark.published(document("LZ chip", "tan δ by diameter"))
def test_chips():
    check("aluminium chip small", (0.22, 0.19, 0.16, 0.14, 0.12, 0.12), VOLTS[:6])
    check("aluminium chip large", (0.26, 0.22, 0.18, 0.16, 0.14, 0.12), VOLTS[:6])


@pytest.mark.from_memory("typical tan δ of 85 °C general-purpose parts; it varies")
def test_general_85():
    check("aluminium general 85", (0.28, 0.24, 0.20, 0.16, 0.14, 0.12, 0.10, 0.08))


@pytest.mark.from_memory("tan δ of chip tantalum polymer; the data sheet names no maker")
def test_tantalum_polymer():
    assert tan_delta("tantalum polymer", 4) == 0.08
    assert tan_delta("tantalum polymer", 10) == 0.10


@pytest.mark.published(f"{APSA}; {ESRD}: tan δ, of the chips by height")
def test_polymer():
    assert tan_delta("polymer radial", 6.3) == 0.08
    assert tan_delta("polymer chip low", 6.3) == 0.06
    assert tan_delta("polymer chip high", 6.3) == 0.10


@pytest.mark.from_memory("tan δ of manganese dioxide tantalum is about 0.04 to 0.08 by value")
def test_tantalum():
    """The upper end was followed: a limit, not a typical value."""
    assert tan_delta("tantalum", 16) == 0.08


@pytest.mark.published(document("ICEL MTB", "80 at 1 kHz, above 1 µF 100; 150 at 10 kHz; × 1e-4"))
def test_polyester():
    """A limit for any size: the widest of those printed."""
    assert [tan_delta("film polyester", 100, 0.1, f) for f in (1e3, 1e4)] == [100e-4, 150e-4]


@pytest.mark.from_memory("PET 300e-4 at 100 kHz, a table of dielectrics not found again")
def test_polyester_at_100_khz():
    assert tan_delta("film polyester", 100, 0.1, 1e5) == 300e-4


@pytest.mark.published(
    document("ICEL MPL", "6 at 1 kHz; 10, from 0.1 µF 20 at 10 kHz; 30 at 100 kHz; × 1e-4")
)
def test_polypropylene():
    """A limit for any size: the widest of those printed."""
    polypropylene = [tan_delta("film polypropylene", 100, 0.1, f) for f in (1e3, 1e4, 1e5)]
    assert polypropylene == [6e-4, 20e-4, 30e-4]


@pytest.mark.published(f"{ZL}; {RGA}: +0.02 for every further 1000 µF")
def test_further_thousands():
    assert tan_delta("aluminium low impedance", 16, 470) == 0.16
    assert tan_delta("aluminium low impedance", 6.3, 3000) == pytest.approx(0.26)
    assert tan_delta("aluminium general 105", 16, 1000) == 0.16
    assert tan_delta("aluminium general 105", 16, 2000) == pytest.approx(0.18)
    assert tan_delta("aluminium general 105", 400, 47) == 0.25


@pytest.mark.published(f"{TN}: +0.02 for every further 1000 µF")
def test_further_thousands_of_a_non_polar_axial_part():
    assert tan_delta("aluminium non-polar axial", 16, 1000) == 0.18
    assert tan_delta("aluminium non-polar axial", 16, 3000) == pytest.approx(0.22)


@pytest.mark.published(f"{SN}: 0.17 at 16 V, 2 % per 1000 µF")
def test_two_per_cent_is_read_as_002():
    assert tan_delta("aluminium non-polar", 16, 2000) == pytest.approx(0.19)


@pytest.mark.behaviour
def test_the_reading_of_two_per_cent_is_said():
    """SN writes 2 %, the others 0.02. The same meaning was followed, and the note says so."""
    assert any("2 %" in note for note in loss_limit("aluminium non-polar", 2000e-6, 16).notes)


def test_a_part_of_a_thousand_is_a_choice_that_is_named():
    """No data sheet says. Whole steps were followed, the strictest of the three readings."""
    limit = loss_limit("aluminium low impedance", 2200e-6, 6.3)
    assert limit.tan_delta == pytest.approx(0.24)
    assert any("A choice" in note and "whole steps" in note for note in limit.notes)
    finding = esr_limit("aluminium low impedance", "2200 µF", "6.3 V", "120 Hz")
    assert any("whole steps" in note for note in finding.notes)


@pytest.mark.parametrize("family", families())
def test_limits_fall_with_the_rating_up_to_100_volts(family):
    """A property of every printed table; a misprint would break it."""
    low = [row for row in loss_rows(family) if row[0] <= 100 and row[1] == 120]
    if family != "tantalum polymer":
        assert [row[2] for row in low] == sorted((row[2] for row in low), reverse=True)


# ESR from tan δ, worked by hand from ESR = tan δ / (2 π f C): tan δ, µF, Ω.
BY_HAND = [
    (0.16, 220, 0.9646),
    (0.25, 10, 33.16),
    (0.10, 100, 1.326),
    (0.12, 330, 0.4823),
    (0.22, 1000, 0.2918),
    (0.14, 470, 0.3951),
    (0.19, 680, 0.3706),
]


@pytest.mark.published(f"{ESRD}: DF is ESR over reactance at 120 Hz")
@pytest.mark.parametrize(("loss", "microfarad", "ohm"), BY_HAND)
def test_esr_from_loss_by_hand(loss, microfarad, ohm):
    assert esr_of(loss, microfarad * 1e-6, 120) == pytest.approx(ohm, rel=4e-4)  # four figures


@pytest.mark.published(f"{ESRD}: DF is ESR over reactance at 120 Hz")
def test_loss_and_back_by_hand():
    """DF 0.0754 of 100 µF at 120 Hz: the reactance is 13.26 Ω, so 1.00 Ω."""
    assert esr_of(0.0754, 100e-6, 120) == pytest.approx(1.0, rel=1e-3)


def test_the_usual_slip_is_not_made():
    """1/(2 π f C tan δ) would give 530 Ω."""
    assert esr_of(0.25, 10e-6, 120) < 34


LOW = "aluminium low impedance"


@pytest.mark.published(document("Nichicon UPW", "470 µF 50 V 0.060 Ω, 1000 µF 35 V 0.030 Ω"))
@pytest.mark.parametrize(
    ("farad", "volts", "size", "ohm"),
    [("470 µF", "50 V", (12.5, 20), 0.060), ("1000 µF", "35 V", (12.5, 25), 0.030)],
)
def test_100_khz_of_a_low_impedance_part(farad, volts, size, ohm):
    wide, long = (f"{side} mm" for side in size)
    finding = esr_limit(LOW, farad, volts, "100 kHz", wide, long)
    assert finding.esr == ohm
    with pytest.raises(RepairlibError, match="goes by the size"):
        esr_limit(LOW, farad, volts, "100 kHz")
    with pytest.raises(RepairlibError, match="no maker's figure"):
        esr_limit(LOW, farad, volts, "100 kHz", "10 mm", "16 mm")


FR_A = {("22 µF", "50 V", 5, 11): 0.34, ("470 µF", "35 V", 10, 16): 0.028}
FR_A |= {("1000 µF", "25 V", 10, 20): 0.020}


@pytest.mark.published(
    document("Panasonic FR-A parts", "EEUFR1H220 0.340 Ω, EEUFR1V471 0.028 Ω, EEUFR1E102 0.020 Ω")
)
@pytest.mark.parametrize(("part", "ohm"), FR_A.items())
def test_100_khz_of_another_low_impedance_series(part, ohm):
    """The limit, and what it says of a part that reads ten times as much."""
    farad, volts, wide, long = part
    size = {"diameter": wide / 1e3, "length": long / 1e3}
    assert esr_limit(LOW, farad, volts, "100 kHz", **size).esr == ohm
    asked = {"measured": farad, "frequency": 100e3, **size}
    assert judge_capacitor(LOW, farad, volts, esr=ohm * 10, **asked).verdict == "replace"


@pytest.mark.published(document("Panasonic FR-A parts", "EEUFR1H220, 22 µF 50 V: 0.340 Ω"))
def test_a_good_small_can_at_100_khz_is_fit():
    size = {"diameter": "5 mm", "length": "11 mm", "frequency": "100 kHz"}
    assert (
        judge_capacitor(LOW, "22 µF", "50 V", measured="21.5 µF", esr=0.17, **size).verdict == "fit"
    )


@pytest.mark.published(document("KEMET A765 part", "A765KN227M1CLAE016: 220 µF 16 V 16 mΩ"))
def test_100_khz_of_a_polymer_can():
    assert esr_limit("polymer radial", "220 µF", "16 V", "100 kHz", "8 mm", "9.7 mm").esr == 0.016


@pytest.mark.published(document("Panasonic FR-A parts", "EEUFR1V471 in its 10 × 16 mm can 0.028 Ω"))
def test_a_plan_that_knows_no_size_takes_no_limit_at_100_khz():
    """Without the can the same reading may be good or bad, so it acquits nobody."""
    readings = read_measured("Ref,C (µF),ESR @ 100 kHz (Ω)\nC1,470,0.02\n")
    (item,) = plan("C1 470µF 35V elect low esr\n", measured=readings).all_items
    assert item.measured.stand == "cannot tell" and "size" in item.measured.why


@pytest.mark.published(document("KEMET T491 parts", "10 µF 10 V 3.8 Ω, 100 µF 25 V 0.3 Ω"))
def test_100_khz_of_a_tantalum_chip():
    assert high_frequency_limit("tantalum", 10e-6, 10, 1.6e-3, 3.2e-3).ohm == 3.8
    assert high_frequency_limit("tantalum", 100e-6, 25, 4.3e-3, 7.3e-3).ohm == 0.30


@pytest.mark.from_memory("usual 100 kHz figures of new radial parts, orders of magnitude")
def test_what_is_usual_at_100_khz_is_a_hint():
    assert usual_at_high("aluminium general 85", 0.010, 0.016) == (0.07, 0.13)
    assert usual_at_high("aluminium general 105", 0.005, 0.011) == (0.4, 3)
    assert usual_at_high(LOW, 0.008, 0.0115) == (0.06, 0.16)
    assert usual_at_high("polymer radial", 0.008, 0.0115) is None
    assert usual_at_high(LOW, None, None) is None


@pytest.mark.parametrize("family", ["aluminium general 105", "tantalum", "polymer radial", LOW])
@pytest.mark.parametrize(
    ("hertz", "wrong"),
    [(1e3, "120 Hz only"), (10e3, "120 Hz only"), (100e3, "no maker's figure at 100 kHz")],
)
def test_a_120_hz_loss_is_never_carried_up(family, hertz, wrong):
    with pytest.raises(RepairlibError, match=wrong):
        esr_limit(family, 10e-6, 16, hertz)


def test_esr_asks_for_its_frequency():
    with pytest.raises(RepairlibError, match="frequency"):
        esr_limit("aluminium general 105", 10e-6, 16)
    with pytest.raises(RepairlibError, match="frequency"):
        esr_from_tan_delta(0.16, 10e-6)


@pytest.mark.parametrize(
    ("family", "farad", "volts", "hertz", "wrong"),
    [
        ("aluminium general 105", -1e-6, 16, 120, "out of range"),
        ("aluminium general 105", 1e-6, 16, 0, "out of range"),
        ("aluminium general 105", 1e-6, 500, 120, "outside the ratings"),
        ("aluminium snap-in", 1e-3, 50, 120, "no tan δ limit is known"),
        ("aluminium low impedance", 1e-3, 50, 100e3, "no maker's figure"),
        ("film polyester", 1e-7, 50, 120, "stated there"),
        ("electrolytic", 1e-7, 50, 120, "not a known family"),
    ],
)
def test_bad_input_is_one_clear_line(family, farad, volts, hertz, wrong):
    with pytest.raises(RepairlibError, match=wrong):
        esr_limit(family, farad, volts, hertz)


# Rated V, °C: ratio. Cans up to 16 mm in diameter.
RGA_COLD = {(6.3, -25): 4, (10, -25): 3, (16, -25): 3, (25, -25): 2, (100, -25): 2}
RGA_COLD |= {(160, -25): 3, (450, -25): 16, (6.3, -40): 8, (16, -40): 6, (35, -40): 4}
RGA_COLD |= {(10, -40): 6, (25, -40): 4, (50, -25): 2}
RGA_COLD |= {(50, -40): 3, (100, -40): 3, (450, -40): 20}


@pytest.mark.published(f"{RGA}: impedance ratio below 16 mm")
@pytest.mark.parametrize(("at", "ratio"), RGA_COLD.items())
def test_cold_general(at, ratio):
    assert impedance_ratio("aluminium general 105", *at).ratio == ratio


@pytest.mark.published(f"{ZL}; {APSA}: impedance ratio")
def test_cold_low_impedance_and_polymer():
    assert impedance_ratio("aluminium low impedance", 16, -25).ratio == 2
    assert impedance_ratio("aluminium low impedance", 16, -40).ratio == 3
    assert impedance_ratio("polymer radial", 16, -25).ratio == 1.15
    assert impedance_ratio("polymer radial", 16, -55).ratio == 1.25


@pytest.mark.from_memory("ESR of wet aluminium falls about 35 to 50 % at the hot limit")
def test_hot():
    finding = impedance_ratio("aluminium general 105", 16, 105)
    assert (finding.ratio_low, finding.ratio_high) == (0.50, 0.65)


@pytest.mark.parametrize("celsius", [-300, -30, 0, 150])
def test_no_ratio_is_made_up(celsius):
    with pytest.raises(RepairlibError):
        impedance_ratio("aluminium general 105", 16, celsius)


@given(st.floats(1e-9, 0.9))
def test_steps_never_fall(farad):
    assert 0 <= thousands_above(farad) <= thousands_above(farad + 1e-3)


@given(st.floats(1e-4, 10), st.floats(1e-9, 1), st.floats(1, 1e6))
def test_esr_over_reactance_is_the_loss(loss, farad, hertz):
    assert esr_of(loss, farad, hertz) * 2 * pi * hertz * farad == pytest.approx(loss)
