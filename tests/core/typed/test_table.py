"""repairlib.core.typed.table and headed: separators, quoted cells, and that no line is lost."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.core.typed.headed import read_headed
from repairlib.core.typed.set_aside import UNREADABLE
from repairlib.core.typed.table import (
    FRAMED,
    SPACES,
    WORDS,
    Table,
    cells_of,
    find_separator,
    with_point,
)

SEPARATORS = {
    "commas": (["C1,10,16", "C2,47,25"], ","),
    "semicolons with decimal commas": (["C1;4,7;16", "C2;47;25"], ";"),
    "tabs": (["C1\t4,7\t16"], "\t"),
    "strokes": (["C1|10", "C2|47"], "|"),
    "strokes at both ends": (["| C1 | 10 |", "|----|----|", "| C2 | 47 |"], FRAMED),
    "runs of spaces": (["C1, C2   10/16   el", "C8   47/25   el"], SPACES),
    "words": (["C1 10/16 el", "C2 47/25 el"], WORDS),
    "a title above": (["Parts, all of them", "C1;10", "C2;47"], ";"),
}


@pytest.mark.parametrize(("lines", "separator"), SEPARATORS.values(), ids=SEPARATORS)
def test_separators(lines, separator):
    assert find_separator(lines) == separator


@pytest.mark.parametrize("sign", [",", ";", "\t", "|"])
def test_quoted_cells(sign):
    """A cell in quotation marks may hold the sign itself; two marks in it are one."""
    line = sign.join(['"a' + sign + 'b"', ' "c" ', '"5"" case"', '5" case', ""])
    assert cells_of(line, sign) == [" ".join(f"a{sign}b".split()), "c", '5" case', '5" case', ""]
    for unclosed in ('"a', f'a{sign}"b', f'"a"b{sign}c'):
        assert cells_of(unclosed, sign) is None


@pytest.mark.parametrize("sign", [",", ";", "\t", "|"])
def test_ditto_marks_are_cells_and_join_no_lines(sign):
    """A lone quotation mark says "as above"; it opens no cell that would swallow the next line."""
    for cells in (["C2", '"', "16", '"'], ["C2", '"', '"', "x"], ["C2", "10", '"'], ['"', "10"]):
        assert cells_of(sign.join(cells), sign) == cells
        assert cells_of(f"{sign} ".join(cells), sign) == cells
    rows = Table([sign.join(["C1", "10", '"']), sign.join(["C2", "10", '"'])], sign).rows()
    assert [row.cells[0] for row in rows] == ["C1", "C2"]


def test_an_empty_cell_at_the_edge_keeps_its_place():
    assert cells_of("|10/16|", "|") == ["", "10/16", ""]
    assert cells_of("|| 10/16 | |", FRAMED) == ["", "10/16", ""]


def test_a_quoted_cell_over_two_lines_is_one_row():
    rows = list(Table(["a,b", '"C1,', 'C2",10', "C3,5"], ",").rows())
    assert [row.cells for row in rows] == [["a", "b"], ["C1, C2", "10"], [], ["C3", "5"]]
    assert (rows[2].what, rows[2].why) == ("heading", "continues line 2")


def test_a_quotation_mark_that_is_never_closed_spoils_its_own_line_only():
    rows = list(Table(["a,b", '"C1,5', "C2,10", "C3,5"], ",").rows())
    assert [row.what for row in rows] == ["", "unreadable", "", ""]
    assert rows[1].why == "a quotation mark is opened and not closed"


def test_ten_megabytes_after_an_open_quotation_mark():
    rows = list(Table(['"C1,5', "x" * 10_000_000], ",").rows())
    assert [row.what for row in rows] == ["unreadable", "unreadable"]


CELLS = st.text('C15,;|\t" -\n', max_size=30)


@given(st.lists(CELLS, min_size=1, max_size=8).map("\n".join))
def test_every_line_has_one_row(text):
    lines = text.split("\n")
    rows = list(Table(lines, find_separator(lines)).rows())
    assert [row.line for row in rows] == list(range(1, len(lines) + 1))
    assert [row.text for row in rows] == lines
    assert all(bool(row.cells) != bool(row.what) for row in rows)


@pytest.mark.parametrize("figure", ["4,7", "-0,5", "0,047", "12", "1.5"])
def test_figures_with_decimal_commas(figure):
    assert with_point(figure) == figure.replace(",", ".")


@pytest.mark.parametrize("other", ["4,7 k", "a,b", ",", "1,2,3", "1.000,5"])
def test_what_is_no_figure_is_left_alone(other):
    assert with_point(other) == other


def test_a_figure_with_two_readings():
    with pytest.raises(RepairlibError, match=r"may be 12\.500 or 12500"):
        with_point("12,500")


def headed(text):
    table = read_headed(text, "shop", ("part", "price", "pack"), ("part", "price"))
    return [table.by_heading(row, ("part", "price", "pack")) for row in table.rows_below()]


def test_columns_are_found_by_their_headings():
    for text in (
        "Price;note;PART\n0,05;x;A1\n;;\n",
        "| price | n | part |\n|--|--|--|\n|0,05||A1|",
    ):
        assert headed(text) == [{"part": "A1", "price": "0,05", "pack": ""}]


HEADINGS = {
    "no line": (" \n", "there is no line in it"),
    "no column": ("part;pack\nA1;5", "no column price"),
    "two columns": ("part,price,price\n", "two columns price"),
    "open quotes": ('"part,price\n', "its heading cannot be read: a quotation mark"),
    "spaces": ("part   price\nA1     0.05", "set apart by spaces"),
    "single spaces": ("part price\nA1 0.05", "set apart by spaces"),
    "no text": (None, "not a text"),
    "too long": ("part,price," + "x" * 3000, "longer than 2000"),
}


@pytest.mark.parametrize(("text", "wrong"), HEADINGS.values(), ids=HEADINGS)
def test_headings_that_do_not_do(text, wrong):
    with pytest.raises(RepairlibError, match=wrong):
        headed(text)


def test_a_row_wider_than_its_headings_is_told():
    table = read_headed("part,price\nA1,0,05\nA2,1,,\n", "shop", ("part", "price"), ())
    first, second = table.rows_below()
    assert first.why == "3 columns where the headings are 2; is a comma inside a value?"
    assert second.cells == ["A2", "1"]


def rows_of(*lines):
    return [(row.line, row.cells, row.what) for row in Table(list(lines), ",").rows()]


def test_a_line_that_begins_with_a_reference_continues_nothing():
    """The mark that somebody forgot to close must not swallow the parts below it."""
    found = rows_of('C1,10/16,"see note', "C2,22/25,x", 'R3,47,end"')
    assert found[0] == (1, [], UNREADABLE)
    assert [cells[0] for _, cells, _ in found[1:]] == ["C2", "R3"]


def test_a_continued_remark_that_names_a_capacitor_is_no_remark():
    found = rows_of('C1,10/16,"in the', 'corner, also C2",left')
    assert [what for _, _, what in found] == [UNREADABLE, ""]


def test_references_and_remarks_may_run_over_a_line():
    assert rows_of('"C1,', 'C2",10/16')[0][1] == ["C1, C2", "10/16"]
    assert rows_of('C1,10/16,"in the', 'corner"')[0][1] == ["C1", "10/16", "in the corner"]
