"""Ways in which service manuals write references: common practice of the trade."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.core.typed.references import read_references

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
}


@pytest.mark.common_practice
@pytest.mark.parametrize(("text", "names"), WRITTEN.items())
def test_written_as_in_a_manual(text, names):
    assert list(read_references(text).names) == names


@pytest.mark.parametrize("text", ["", "10/16", "47µF", "C", "5", "CE04W", "1C106M", "C٣", "😀"])
def test_no_reference(text):
    assert read_references(text) is None


def test_what_follows_is_left_for_the_value():
    """The first number of a value is not one more reference."""
    assert read_references("C1-C4, C7 10/16 el").rest == "10/16 el"
    assert read_references("C1, 3 µF 50V").names == ("C1",)
    assert read_references("C1 10 16V").names == ("C1",)


@pytest.mark.parametrize("text", ["C7-C2", "C3-C3", "C1-C9999", "C1A-C4"])
def test_a_range_that_cannot_be_counted(text):
    with pytest.raises(RepairlibError, match="range"):
        read_references(text)
