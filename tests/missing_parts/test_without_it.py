"""Without the part: what happens, and when waiting is better."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.core.safety import HAZARDS
from repairlib.core.tables import read_table
from repairlib.core.verdicts import MEANS
from repairlib.missing_parts import KINDS, left_out, without_part

ROWS = read_table("without-part")


@pytest.mark.behaviour
def test_every_kind_has_its_row_and_no_other():
    assert [row["kind"] for row in ROWS] == list(KINDS)
    for row in ROWS:
        assert row["verdict"] in (*MEANS, "cannot tell")
        assert row["with_others"] in ("", *MEANS)
        assert row["without"] and row["bench"]
        assert set(filter(None, row["hazards"].split(";"))) <= set(HAZARDS)


@pytest.mark.common_practice
@pytest.mark.parametrize(
    "kind",
    [
        "fuse",
        "varistor",
        "flyback diode",
        "converter diode",
        "zener diode",
        "feedback divider resistor",
        "current-sense resistor",
        "bootstrap capacitor",
        "pull-down resistor",
        "mains suppression capacitor",
        "supply protection diode",
    ],
)
def test_what_destroys_others_is_not_left_out(kind):
    finding = without_part(kind, "none")
    assert finding.verdict == "do not" and finding.worse_than_waiting == "yes"
    assert finding.may_be_destroyed != "nothing by itself"


@pytest.mark.common_practice
@pytest.mark.parametrize(
    "kind", ["LED", "ferrite bead", "termination resistor", "filter capacitor", "crystal"]
)
def test_what_only_fails_may_be_left_out_with_conditions(kind):
    finding = without_part(kind)
    assert finding.verdict == "only with these conditions"
    assert finding.reason == left_out(kind).conditions


@pytest.mark.common_practice
@pytest.mark.parametrize("kind", ["bulk capacitor", "chip tantalum", "aluminium can"])
def test_a_store_of_a_rail_hangs_on_what_else_is_there(kind):
    assert without_part(kind, "none").verdict == "do not"
    unknown = without_part(kind)
    assert unknown.verdict == "cannot tell" and "Until then, wait" in unknown.reason
    among_others = without_part(kind, "others of its kind on the same net")
    assert among_others.verdict == "only with these conditions"
    assert "oscilloscope" in among_others.reason


@pytest.mark.behaviour
@pytest.mark.parametrize("kind", KINDS)
def test_each_answer_is_whole(kind):
    for beside in ("none", "not known", "others of its kind on the same net"):
        finding = without_part(kind, beside)
        assert finding.reason and finding.without_it and finding.on_the_bench
        if finding.verdict == "do not":
            assert finding.may_be_destroyed != "nothing by itself"
        if KINDS[kind].protects:
            assert finding.verdict != "may stay"
            assert any("protects" in note for note in finding.notes)
    assert (without_part(kind).verdict == "may stay") == (kind == "never fitted")


@pytest.mark.behaviour
@pytest.mark.parametrize("kind", KINDS)
def test_nothing_of_the_mains_side_is_left_out(kind):
    finding = without_part(kind, where="mains side")
    assert "mains" in finding.cautions
    if kind != "never fitted":
        assert finding.verdict == "do not" and "qualified" in finding.reason


@pytest.mark.common_practice
@pytest.mark.parametrize("kind", ["fuse", "current-sense resistor", "LED resistor"])
def test_a_link_is_no_stand_in(kind):
    row = left_out(kind)
    assert "link" in row.harm + row.bench


@pytest.mark.behaviour
@pytest.mark.parametrize("kind", ["flux capacitor", "", None, 7, ["fuse"]])
def test_an_unknown_kind_is_refused_with_those_there_are(kind):
    with pytest.raises(RepairlibError, match="fuse"):
        left_out(kind)
    with pytest.raises(RepairlibError, match="fuse"):
        without_part(kind)
