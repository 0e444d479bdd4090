"""Electrolytics of which only a code or a sign says that they have no polarity.

A polar part in such a place is reversed at times: never is one proposed without a word.
"""

import pytest

from repairlib.recap import plan
from repairlib.recap.part_numbers import may_be_bipolar

HEADED = "Ref,Part No.,Description\n"
# Part numbers of makers' tables: bipolar by their letters or by their series.
BIPOLAR = """CE04BP1H2R2M CEANP100M25 CEANP2R2M50 ECEA1HN010S ECEA1CN470S ECA1HEN100 UMP1E100MDA
    UES1H4R7MPM UET1E221MHD UVP1H010MDD UDB1H100MPM NP10V221M 50NP2R2M 16BP47 ALB1C470
    25N100M 2R2-50-BP SNP1HM3R3 CEBP1A101M"""
POLAR_OR_UNKNOWN = "ECEA1HU010 UMA1E100MDA LAD2E561MELA RGA101M1C 25V100MS EKA00DC222D"


def planned(code):
    made = plan(f"{HEADED}C1,{code},ELECT 2.2UF 50V\n")
    return made.all_items[0]


@pytest.mark.common_practice
@pytest.mark.parametrize("code", BIPOLAR.split())
def test_a_part_number_of_a_bipolar_part_holds_the_line(code):
    item = planned(code)
    assert item.verdict == "hold"
    assert code in item.why


@pytest.mark.common_practice
@pytest.mark.parametrize("code", POLAR_OR_UNKNOWN.split())
def test_a_part_number_that_is_not_understood_is_a_look(code):
    item = planned(code)
    assert item.new.polar
    assert any(code in look and "bipolar" in look for look in item.looks)


@pytest.mark.common_practice
@pytest.mark.parametrize("code", ["CE04W1H2R2M", "29303-001", "4822 124 40435", "1-126-926-11"])
def test_a_known_polar_code_or_an_order_number_asks_for_nothing(code):
    assert planned(code).looks == ()


@pytest.mark.common_practice
@pytest.mark.parametrize("code", ["1N4148", "2N3055", "CEANL4R7M16", "CE04W1E100"])
def test_no_bipolar_letters(code):
    assert not may_be_bipolar(code)


# Anywhere else on the line: a description, a value, a remark, a cell of its own.
LINES = """C1 CE04BP1H2R2M 2.2uF 50V elect|C1,2.2uF 50V elect,CEANP2R2M50
    |C1,elect,2R2M50BP 2.2uF 50V|C1,10/50 elect ~|C1,10µF 50V elect ∼|C1,10uF,50V ~,elect
    |C1,10uF 50VN,elect|C1,elect N,10/50
    |C1,22/25N,elect"""


@pytest.mark.common_practice
@pytest.mark.parametrize("line", [line.strip() for line in LINES.split("|")])
def test_no_line_with_such_a_sign_is_silently_polar(line):
    item = plan(line + "\n").all_items[0]
    assert item.verdict == "hold" or any("bipolar" in look for look in item.looks)


@pytest.mark.common_practice
@pytest.mark.parametrize("heading", ["Series", "Bestell-Nr.", "Code", "Mfr. Part No."])
def test_every_column_of_codes_is_looked_at(heading):
    made = plan(f"Pos.;Wert;Spannung;Art;{heading}\nC1;10µF;50V;Elko;CE04BP1H100\n")
    assert "CE04BP1H100" in made.held[0].why


@pytest.mark.common_practice
@pytest.mark.parametrize("remark", ["A.C. coupling", "ac side", "N", "16NP", "Lautsprecherweiche"])
def test_a_remark_that_speaks_of_ac_is_told(remark):
    made = plan(f"Ref,Value,Volts,Type,Remarks\nC1,10uF,16,elect,{remark}\n")
    (item,) = made.all_items
    assert item.verdict == "hold" or item.looks


@pytest.mark.common_practice
def test_codes_of_parts_that_stay_hold_nothing():
    made = plan("Ref,Value,Type,Part No.\nC1,.1,film,ECQ-NP1H104\nC2,100p,ceramic,BPX\n")
    assert [item.reference for item in made.kept] == ["C1", "C2"]


@pytest.mark.common_practice
def test_an_electrolytic_of_a_few_nanofarads_was_misread():
    assert "very small" in plan("C1,10n 50V elect\n").held[0].why
    assert not plan("C1,0.1uF 50V elect\n").held


# What people write beside an electrolytic without polarity, in a column of remarks or of builds.
SAID = """reversible;symmetric;sym.;x-over;cross over;Bi;ungep.;both ways;either way round;no +
    back to back;anti-series;polarity free;NON POLAIRE;glatt;rauh;muse ES;yoke;S-corr."""


@pytest.mark.common_practice
@pytest.mark.parametrize("column", ["Remarks", "Mounting", "Tolerance"])
@pytest.mark.parametrize("said", [one.strip() for one in SAID.replace("\n", ";").split(";")])
def test_a_remark_that_speaks_against_polarity_is_never_passed_over(said, column):
    made = plan(f"Ref;Value;Volts;Type;{column}\nC7;33µF;40;elect;{said}\n")
    (item,) = made.all_items
    assert item.verdict == "hold" or item.looks or not item.new.polar


@pytest.mark.common_practice
def test_an_unknown_word_beside_the_kind_holds_in_a_column_of_builds_too():
    made = plan("Pos;Wert;Spannung;Bauform\nC7;33µF;40;Elko gizmo\nC8;33µF;40;Elko axial\n")
    first, second = made.all_items
    assert first.verdict == "hold" and "gizmo" in first.why
    assert second.new.form == "axial" and not second.looks
