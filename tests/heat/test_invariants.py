"""Eutectics and peritectics of solder systems, by source."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.core.sources import SOURCES
from repairlib.heat.invariants import INVARIANTS, invariant_points


def lines(system):
    return "\n".join(invariant_points(system).working)


@pytest.mark.published(
    "Moon and others (NIST), The Ternary Eutectic of Sn-Ag-Cu Solder Alloys, 2000; Moon and "
    "Boettinger, JOM 56(4), 2004; OSTI, patent record 870476"
)
def test_tin_silver_copper():
    assert invariant_points("Sn-Ag-Cu").followed.startswith("217.2 ± 0.2 °C, 3.5 to 3.6 Ag")
    assert "0.9 to 0.96 Cu" in lines("Sn-Ag-Cu")
    assert "216.3 °C, 3.66 Ag, 0.91 Cu" in lines("Sn-Ag-Cu")
    assert "4.7 Ag, 1.7 Cu" in lines("Sn-Ag-Cu")


@pytest.mark.behaviour
def test_the_figures_of_the_patent_are_not_used():
    assert "4.7 Ag, 1.7 Cu: superseded" in lines("Sn-Ag-Cu")


@pytest.mark.published(
    "CompuTherm, Ag-Sn: 220.3 °C at 3.73 wt %; Indium Corporation, Solder Paste: Alloys: 221 °C"
)
def test_tin_silver():
    assert invariant_points("Sn-Ag").followed == "221 °C, 3.5 Ag"
    assert "220.3 °C, 3.73 Ag" in lines("Sn-Ag")


@pytest.mark.published(
    "NIST, U.R. Kattner, Bi-Pb-Sn System; Moon and others (NIST), Pb contamination and the "
    "solidification of Sn-xBi alloys; Kurtz Ersa, solder lexicon, Bismuth"
)
def test_bismuth_lead_tin():
    assert invariant_points("Bi-Pb-Sn").followed.startswith("95.3 ± 0.5 °C")
    assert "98.0 °C, 51.59 Bi, 32.59 Pb, 15.82 Sn" in lines("Bi-Pb-Sn")
    assert "135.7 °C, 30.54 Bi, 47.56 Pb, 21.90 Sn" in lines("Bi-Pb-Sn")
    assert "96 °C" in lines("Bi-Pb-Sn")


@pytest.mark.published(
    "Gladkikh and others, in the note Bi-Sn; Braga and others, Calphad 31(4), 2007; Jacobson and "
    "Humpston, GEC Journal of Research 12(2), 1995; NIST, Bi-Cu-Pb System"
)
def test_bismuth():
    assert "140 °C" in lines("Sn-Bi")
    assert "12.4 at % Bi" in lines("Sn-Bi")
    assert "tin holds 10 Bi" in lines("Sn-Bi")
    assert "139 °C, near 57 to 58 Bi" in lines("Sn-Bi")
    assert "125.9 °C, 55.5 Bi" in lines("Bi-Pb")


@pytest.mark.published(
    "Princeton University, MAE 324 glossary, Eutectic: 183 °C; NIST, Pb-Sn System: 182.2 °C"
)
def test_tin_lead():
    assert "183 °C, 61.9 Sn; solids 19 and 97.5 Sn" in invariant_points("Sn-Pb").followed
    assert "182.2 °C, 62.13 Sn; solids 18.91 and 96.59 Sn" in lines("Sn-Pb")


def test_every_point_has_a_source_and_one_is_followed():
    for system, points in INVARIANTS.items():
        assert sum(point.followed for point in points) == 1, system
        assert all(point.source in SOURCES for point in points)
    with pytest.raises(RepairlibError):
        invariant_points("Sn-Zn")


def test_only_temperatures_have_a_unit():
    for system in INVARIANTS:
        for line in invariant_points(system).working:
            for words in ("not used °C", "eutectic °C"):
                assert words not in line
    (old,) = (line for line in invariant_points("Sn-Ag-Cu").working if "superseded" in line)
    assert old.startswith("eutectic: not used, 4.7 Ag")
    (held,) = (line for line in invariant_points("Sn-Bi").working if line.startswith("solubility"))
    assert held.startswith("solubility: at the eutectic, tin holds 10 Bi")
    assert invariant_points("Bi-Pb").followed.startswith("about 125.9 °C")
