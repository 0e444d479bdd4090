"""Ways in which service manuals write references: common practice of the trade."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.core.typed.references import read_references
from repairlib.recap import plan

WRITTEN = {
    "C5": ["C5"],
    "c5": ["C5"],
    "C 5": ["C5"],
    "C-5": ["C5"],
    "C05": ["C5"],
    "C12A": ["C12A"],
    "C1-C4, C7": ["C1", "C2", "C3", "C4", "C7"],
    "C1-4": ["C1", "C2", "C3", "C4"],
    "C1~C4": ["C1", "C2", "C3", "C4"],
    "C1 – C3": ["C1", "C2", "C3"],
    "C1..C3": ["C1", "C2", "C3"],
    "C1 to C3": ["C1", "C2", "C3"],
    "C12/13": ["C12", "C13"],
    "C12/C13": ["C12", "C13"],
    "C1,3,5-7": ["C1", "C3", "C5", "C6", "C7"],
    "C1; C2 & C9": ["C1", "C2", "C9"],
    "C1 C2 C3": ["C1", "C2", "C3"],
    "EC3": ["EC3"],
    "R101-R103": ["R101", "R102", "R103"],
    # Signs, brackets and bullets about the number.
    "C.8": ["C8"],
    "C_14": ["C14"],
    "C–9": ["C9"],
    "C—3": ["C3"],
    "[C7]": ["C7"],
    "(EC21)": ["EC21"],
    "C(4-6)": ["C4", "C5", "C6"],
    "C[11,15]": ["C11", "C15"],
    "△ C901": ["C901"],
    "* C3": ["C3"],
    # Boards and groups.
    "2C13": ["2C13"],
    "C1-1": ["C1-1"],
    "C2-2, C2-3": ["C2-2", "C2-3"],
    "C4/5/6": ["C4", "C5", "C6"],
    # Left and right.
    "C12L/R": ["C12L", "C12R"],
    "C31LR": ["C31L", "C31R"],
    "C8A, B": ["C8A", "C8B"],
    # Ranges and lists in six languages.
    "C13 à C16": ["C13", "C14", "C15", "C16"],
    "C13 a C15": ["C13", "C14", "C15"],
    "C13 al 15": ["C13", "C14", "C15"],
    "C21 bis C23": ["C21", "C22", "C23"],
    "C21 t/m C23": ["C21", "C22", "C23"],
    "C21 hasta 23": ["C21", "C22", "C23"],
    "C1÷C3": ["C1", "C2", "C3"],
    "C1 thru C3": ["C1", "C2", "C3"],
    "C1 to 3": ["C1", "C2", "C3"],
    "C4 et C9": ["C4", "C9"],
    "C4 e C9": ["C4", "C9"],
    "C4 y C9": ["C4", "C9"],
    "C4 und C9": ["C4", "C9"],
    "C4, C6 en C9": ["C4", "C6", "C9"],
    # Figures left out.
    "C205,6": ["C205", "C206"],
    "C201-4": ["C201", "C202", "C203", "C204"],
    "C118/19": ["C118", "C119"],
    # Other letters of capacitors.
    "CE2": ["CE2"],
    "CP3": ["CP3"],
}


@pytest.mark.common_practice
@pytest.mark.parametrize(("text", "names"), WRITTEN.items())
def test_written_as_in_a_manual(text, names):
    assert list(read_references(text).names) == names


@pytest.mark.parametrize(
    "text", ["", "10/16", "47µF", "C", "5", "CE04W", "CE04BP1H2R2M", "1C106M", "C٣", "😀"]
)
def test_no_reference(text):
    assert read_references(text) is None


def test_what_follows_is_left_for_the_value():
    """The first number of a value is not one more reference."""
    assert read_references("C1-C4, C7 10/16 el").rest == "10/16 el"
    assert read_references("C1, 3 µF 50V").names == ("C1",)
    assert read_references("C1 10 16V").names == ("C1",)
    assert read_references("C1 e 10/16").names == ("C1",)
    assert read_references("C1 y 4,7 µF").names == ("C1",)


@pytest.mark.parametrize("text", ["C7-C2", "C3-C3", "C1-C9999", "C1A-C4"])
def test_a_range_that_cannot_be_counted(text):
    with pytest.raises(RepairlibError, match="range"):
        read_references(text)


@pytest.mark.common_practice
def test_a_list_that_counts_in_groups_has_no_ranges_of_them():
    """C3-1 can be no range, so C3-5 is none either; C101-104, C(7-9) and C8-C9 are."""
    made = plan(
        "C3-1 10/16 elect\nC3-5 22/25 elect\nC4-2, C4-3 47/25 NP\nC101-103 33/16 elect\n"
        "C(7-9) 10/50 elect\n"
    )
    assert [item.reference for item in made.all_items] == [
        *("C3-1", "C3-5", "C4-2", "C4-3", "C101", "C102", "C103", "C7", "C8", "C9")
    ]
    assert any("counts in groups" in note for note in made.list.notes)
    assert made.counts()["lines with parts"] == 5


@pytest.mark.common_practice
def test_the_same_text_is_a_range_where_nothing_speaks_of_groups():
    made = plan("C3-5 22/25 elect\nC12 10/16 elect\n")
    assert [item.reference for item in made.all_items] == ["C3", "C4", "C5", "C12"]


@pytest.mark.behaviour
def test_a_range_that_runs_backwards_costs_its_own_line_only():
    made = plan("C100 10/16 elect\nC300-C200 10/16 elect\nC101 10/16 elect\n")
    assert [item.reference for item in made.all_items] == ["C100", "C101"]
    assert made.counts()["unreadable"] == 1
