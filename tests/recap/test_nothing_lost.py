"""Every line of a list ends as parts or is shown: none is a heading or a note by mistake."""

import pytest

from repairlib.core.typed.set_aside import NOT_FITTED, OTHER_PART, TITLE, UNREADABLE
from repairlib.recap import plan, read_parts
from repairlib.show.sheets.plan_files import report_plan

HEADED = "REF VALUE RATING\nC1 10uF 16V elect\n"


def fate(line, head=HEADED):
    """What the last line of a list became: the names of its parts, or what it was set aside as."""
    made = read_parts(head + line + "\n")
    last = len(made.lines)
    names = [name for name, at in zip(made.references, made.part_lines, strict=True) if at == last]
    return " ".join(names) or made.set_aside[-1].what


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("line", "names"),
    {
        "CE2 47 16": "CE2",
        "CP3 100 25": "CP3",
        "C(4-6) 33 16": "C4 C5 C6",
        "[C7] 33 16": "C7",
        "C.8 47 25": "C8",
        "C–9 47 25": "C9",
        "C_31 4,7 63": "C31",
        "EC(12/13) 100 10": "EC12 EC13",
        "{C40} 22 50": "C40",
        "* C17 22 16": "C17",
        "3C22 47 10": "3C22",
        "CT5 10uF 16V tant": "CT5",
    }.items(),
)
def test_references_in_odd_dress_are_parts(line, names):
    assert fate(line) == names


@pytest.mark.parametrize(
    "line",
    [
        "PC12 47 16",
        "XC.8 22 35",
        "CN-5 100 16V",
        "KC4 10/16",
        "C - 9 47 25",
        "C: no 3 47 25",
        "ZZ7 220 10",
        "47 16",
        "10 uF",
        ", 47, 16",
        "CM3 33 25",
        "QQ12 47",
        "HC5 10 16 NP",
        "C-(4) 33 16",
    ],
)
def test_what_looks_like_a_part_is_never_a_title_a_note_or_a_heading(line):
    assert fate(line.strip()) in (UNREADABLE, OTHER_PART)


@pytest.mark.parametrize("line", [",47,16,elect", "PC12,47,16,", "C?,47,16,", ",,25,", "#,22,,"])
def test_figures_under_the_headings_of_values_are_no_note(line):
    assert fate(line, "Ref,Value,Volts,Type\nC1,10,16,elect\n") == UNREADABLE


@pytest.mark.parametrize(
    "line",
    ["see notes", "all parts 5 %", "KEYBOARD K84 LIST", "see R12", "Page 7", "BOARD A"],
)
def test_titles_and_notes_stay_what_they_are(line):
    assert fate(line) == TITLE


@pytest.mark.parametrize("line", ["Ref Value Type C2", "Ref Value TypeC2 10/16", "C2: Ref Value"])
def test_a_heading_that_names_a_capacitor_is_none(line):
    made = plan(f"C1 10/16 elect\n{line}\n")
    assert made.unreadable or [item.reference for item in made.held] == ["C2"]


def test_two_parts_on_one_line_are_not_one():
    made = plan("C1 10/16 elect C2 10/16 elect\nR1 10k C5 10/16 elect\n")
    assert "names C2 too" in made.held[0].why
    assert "names C5 behind R1" in made.unreadable[0].why


def test_a_capacitor_that_only_a_remark_names_is_told():
    made = plan("Ref,Value,Type,Note\nC1,10/16,elect,beside C2 and C3\nC3,10/16,elect,\n")
    assert [item.reference for item in made.items] == ["C1", "C3"]
    assert made.list.notes == ["Line 2 names C2 beside its part; no line begins with it."]


def test_an_unreadable_cell_over_two_lines_shows_both():
    made = plan('Ref,Value,Type\n"C3\net C5",4,7,elect,left\nC6,10/16,elect\n')
    assert [line.text for line in made.unreadable] == ['"C3', 'et C5",4,7,elect,left']


@pytest.mark.common_practice
def test_not_fitted_is_an_outcome_of_its_own():
    made = plan("Ref,Value,Type\nC1,10/16,elect\nC2,DNP,\nC3-C4,not fitted,\n")
    assert [(line.what, line.why) for line in made.list.set_aside[1:]] == [
        (NOT_FITTED, "C2"),
        (NOT_FITTED, "C3, C4"),
    ]
    made = plan("Ref,Value,Type,Note\nC1,10/16,elect,not fitted on the export model\n")
    assert "look whether it is fitted" in made.held[0].why


def test_the_report_counts_every_line_as_what_it_was(tmp_path):
    (tmp_path / "list.csv").write_text(
        "Ref,Value,Type\nC1,10/16,elect\n\nC2,DNP,\nR1,10k,\nPC12,47,16\nMAIN BOARD\n"
    )
    report = report_plan(tmp_path / "list.csv")
    assert (
        "Lines: 7 in all: 1 with parts, 1 heading, 1 blank, 1 not fitted, 1 not a capacitor, "
        "1 unreadable, 1 title or note."
    ) in str(report).splitlines()
    assert "  line 4: C2: C2,DNP," in str(report).splitlines()
    told = report.to_dict()
    assert told["counts"]["lines"] == 7
    assert [line["line"] for line in told["set_aside"]] == [1, 3, 4, 5, 6, 7]
    assert [line["what"] for line in told["set_aside"]][-1] == TITLE
