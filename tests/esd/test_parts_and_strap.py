"""Classes of parts, damage levels, distances, and the strap."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.esd.parts import (
    CDM,
    HBM,
    OLD_CDM,
    OLD_HBM,
    damage_level,
    esd_class,
    insulator_distance,
)
from repairlib.esd.strap import strap_current, strap_on_or_off


def each_edge(scheme, edges):
    """Every class begins at its figure and ends just below the next one."""
    for (name, low), (_, top) in zip(edges, [*edges[1:], ("", 1e5)], strict=True):
        assert esd_class(low, scheme).esd_class == name
        assert esd_class(top - 0.01, scheme).esd_class == name


@pytest.mark.published("ESD Association, STM5.1-1998, Table 1, as copied: HBM 1A to 3B")
def test_hbm():
    each_edge(
        HBM,
        [("1A", 250), ("1B", 500), ("1C", 1000), ("2", 2000), ("3A", 4000), ("3B", 8000)],
    )
    assert esd_class(1500, HBM).esd_class == "1C"  # E13


@pytest.mark.from_memory("JS-001: 0Z below 50 V, 0A from 50 V")
def test_hbm_lowest():
    assert [esd_class(v, HBM).esd_class for v in (0, 49, 50, 124, 125)] == [
        "0Z",
        "0Z",
        "0A",
        "0A",
        "0B",
    ]


@pytest.mark.published(
    "Desco, blog, 2012-10, JS-001-2011, Table 3: 0A below 125 V, 0B to below 250 V"
)
def test_hbm_2011():
    assert [esd_class(v, OLD_HBM).esd_class for v in (10, 124, 125, 249, 250)] == [
        "0A",
        "0A",
        "0B",
        "0B",
        "1A",
    ]


@pytest.mark.from_memory("JS-002: C0a to C3")
def test_cdm():
    each_edge(
        CDM,
        [("C0a", 0), ("C0b", 125), ("C1", 250), ("C2a", 500), ("C2b", 750), ("C3", 1000)],
    )
    assert esd_class(600, CDM).esd_class == "C2a"  # E13


@pytest.mark.published("ESD Association, STM5.3.1-1999, Table 3, as copied: C1 to C7")
def test_old_cdm():
    each_edge(
        OLD_CDM,
        [
            ("C1", 0),
            ("C2", 125),
            ("C3", 250),
            ("C4", 500),
            ("C5", 1000),
            ("C6", 1500),
            ("C7", 2000),
        ],
    )


@pytest.mark.behaviour
def test_an_old_class_names_its_scheme():
    notes = esd_class(300, OLD_CDM).notes
    assert any("C3 of CDM STM5.3.1" in note for note in notes)


@pytest.mark.published(
    "ANSI/ESD S20.20-2021, scope: 100 V HBM, 200 V CDM; Texas Instruments, LM5176 data sheet, "
    "quoting JEP155: 500 V and JEP157: 250 V"
)
def test_handling():
    for scheme, scope, easy in ((HBM, 100, 500), (CDM, 200, 250)):
        assert "extra measures" in esd_class(scope - 1, scheme).handling
        assert "audited with care" in esd_class(scope, scheme).handling
        assert "kept well" in esd_class(easy, scheme).handling


@pytest.mark.published(
    "Tektronix, TDS 420A, TDS 430A & TDS 460A Service Manual, Table 6-1, 100 pF and 100 Ω"
)
def test_service_manual():
    for family, words in {
        "MOS and CMOS": "100 V to 500 V",
        "ECL": "200 V to 500 V",
        "Schottky diode": "250 V",
        "Schottky TTL": "500 V",
        "HF bipolar": "400 V to 600 V",
        "JFET": "600 V to 800 V",
        "linear": "400 V to 1000 V",
        "LS TTL": "900 V",
        "TTL": "1200 V",
    }.items():
        assert damage_level(family).service_manual == words


@pytest.mark.from_memory("handbook ranges of device families, HBM")
def test_handbook():
    for family, words in {
        "VMOS": "30 V to 1800 V",
        "MOSFET": "100 V to 200 V",
        "GaAs FET": "100 V to 300 V",
        "EPROM": "100 V",
        "JFET": "140 V to 7000 V",
        "op-amp": "190 V to 2500 V",
        "MOS and CMOS": "250 V to 3000 V",
        "Schottky diode": "300 V to 2500 V",
        "bipolar": "380 V to 7000 V",
        "SCR": "680 V to 1000 V",
    }.items():
        assert damage_level(family).handbook == words


def test_where_the_lists_disagree_the_lower_figure_counts():
    jfet = damage_level("JFET", "150 V")
    assert jfet.lowest == 140 and jfet.verdict == "can be damaged"
    assert any("disagree" in note for note in jfet.notes)
    assert damage_level("JFET", "100 V").verdict == "cannot tell"
    assert not any("disagree" in note for note in damage_level("TTL").notes)


@pytest.mark.published(
    "Desco Asia, What the ESD Association says about ESD Garments, S20.20: over 2000 V, 30 cm"
)
def test_distance():
    assert insulator_distance("2001 V").keep_away == "30 cm"
    assert insulator_distance("-2001 V").keep_away == "30 cm"
    assert insulator_distance("2000 V").keep_away != "30 cm"


@pytest.mark.from_memory("S20.20: over 125 V at 2.5 cm keep 2.5 cm away")
def test_short_distance():
    assert insulator_distance("126 V").keep_away == "2.5 cm"
    assert insulator_distance("125 V").keep_away == "no distance is listed"


@pytest.mark.common_practice
def test_strap_current():
    """E8, by Ohm's law: 1 MΩ, 250 V and 120 V."""
    assert strap_current("250 V").current == pytest.approx(0.25e-3)
    assert strap_current("120 V").current == pytest.approx(0.12e-3)
    shorted = strap_current("230 V", "0 Ω")
    assert shorted.current > 0.1
    assert shorted.verdict == strap_current("24 V").verdict == "do not touch"


@pytest.mark.published(
    "Desco Industries, Questions and Answers 1506, quoting ESD TR20.20-2008: not at 250 V or more"
)
def test_strap_off():
    assert "reaches 250 V" in strap_on_or_off("250 V", "dc").reason
    assert "reaches 250 V" not in strap_on_or_off("249 V", "dc").reason


@pytest.mark.behaviour
def test_the_peak_counts_for_the_strap():
    """200 V rms are 283 V at the peak, 170 V rms are 240 V."""
    assert "reaches 250 V" in strap_on_or_off("200 V", "ac rms").reason
    assert "reaches 250 V" not in strap_on_or_off("170 V", "ac rms").reason


@pytest.mark.published("IEC 62368-1, 5.2.2, ES1: 60 V dc, 30 V rms")
@pytest.mark.parametrize(
    ("volts", "kind"),
    [("61 V", "dc"), ("160 V", "dc"), ("325 V", "dc"), ("42 V", "ac rms"), ("240 V", "ac rms")],
)
def test_above_es1_the_verdict_itself_hands_on(volts, kind):
    verdict = strap_on_or_off(volts, kind).verdict
    assert verdict == "strap off while it is live; leave it to a qualified person"


@pytest.mark.published("IEC 62368-1, 5.2.2, ES1: 60 V dc, 30 V rms")
def test_strap_may_stay():
    assert strap_on_or_off("60 V", "dc").verdict == "strap may stay on"
    assert strap_on_or_off("30 V", "ac rms").verdict == "strap may stay on"


@pytest.mark.behaviour
def test_a_strap_that_stays_on_asks_for_a_meter():
    on = strap_on_or_off("12 V", "dc")
    assert "with a meter, twice" in on.reason


def test_bad_input():
    for call in (
        lambda: esd_class(-1),
        lambda: esd_class(100, "HBM 1900"),
        lambda: damage_level("valve"),
        lambda: strap_current(-1),
        lambda: strap_on_or_off(10, "three-phase"),
    ):
        with pytest.raises(RepairlibError):
            call()
