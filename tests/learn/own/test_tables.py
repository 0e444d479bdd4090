"""Tables: numbers and words by column, wrong cells, and a table of bad ones."""

import pytest

from repairlib.learn.question import PARTLY, RIGHT, UNSAFE, Choice, Number
from tests.learn.own.typed import ask, slip_of

ROWS = "Table?\nColumns: marking | value | kind\nRow: 104 | 100 nF | disc\nRow: 220 | 220 µF | can"


def test_a_column_is_of_numbers_or_of_its_words():
    cells = ask(ROWS).cells
    assert type(cells["104"]["value"]) is Number
    assert type(cells["104"]["kind"]) is Choice
    assert set(cells["104"]["kind"].options) == {"disc", "can"}


def test_the_options_of_a_column_stand_in_one_order_for_all_rows():
    cells = ask(f"{ROWS}\nAlso: kind | film | fuse").cells
    assert cells["104"]["kind"].options == cells["220"]["kind"].options
    assert set(cells["104"]["kind"].options) == {"disc", "can", "film", "fuse"}


def test_each_cell_earns_its_share():
    question = ask(ROWS)
    typed = {"104": "100 nF | disc", "220": "220 pF | can"}
    assert question.judge(question.as_typed(typed)).state == PARTLY
    typed["220"] = "220 µF | can"
    assert question.judge(question.as_typed(typed)).state == RIGHT


def test_a_wrong_cell_is_told_and_a_dangerous_one_fails_the_table():
    question = ask(
        f"{ROWS}\nWrong: 104 | value | 104 pF\nSay: Zeros.\nDanger (mains): 220 | kind | fuse"
    )
    assert "104, value: Zeros." in question.judge(question.as_typed({"104": "104 pF"})).says
    assert question.judge(question.as_typed({"220": "220 µF | fuse"})).state == UNSAFE


def test_numbers_to_choose_from_and_cells_not_asked():
    question = ask(
        "Table?\nColumns: part | volts\nRow: can | 16 V\nRow: film | -\nAlso: volts | 25 V"
    )
    assert list(question.cells) == ["can"]
    assert set(question.cells["can"]["volts"].options) == {"16 V", "25 V"}


def test_cells_copied_from_a_spreadsheet_come_with_tabs():
    tabbed = ROWS.replace(" | ", "\t")
    assert ask(tabbed).cells == ask(ROWS).cells


@pytest.mark.parametrize(
    "lines, line, told",
    [
        ("Columns: marking\nRow: 104 | 5", 5, "not two headings"),
        ("Columns: marking | value", 5, "nothing is asked in it"),
        ("Columns: marking | value\nRow: 104 | -", 5, "nothing is asked in it"),
        ("Columns: marking | value\nRow: 104 | 1 nF | 2 nF", 6, "not one cell for each column"),
        ("Columns: marking | value\nRow: 104 | 1 nF\nRow: 104 | 2 nF", 7, "not of its own"),
        ("Columns: marking | value\nRow: 1 | 1 nF\nRow: 2 | 10O nF", 7, "no number, and others"),
        ("Columns: marking | kind\nRow: 104 | disc", 6, "nothing else to choose from"),
        (
            "Columns: marking | kind\nRow: 1 | disc\nRow: 2 | can\nAlso: value | film",
            8,
            "not a column and words for it",
        ),
        (
            "Columns: marking | value\nRow: 1 | 1 nF\nWrong: 2 | value | 2 nF\nSay: no",
            7,
            "no answer in a cell",
        ),
        (
            "Columns: marking | value\nRow: 1 | 1 nF\nWrong: 1 | value | 1 nF\nSay: no",
            7,
            "the right answer is among it",
        ),
    ],
)
def test_a_bad_table_is_told_with_its_line(lines, line, told):
    said = slip_of(f"Table?\n{lines}")
    assert said.startswith(f"line {line}: ")
    assert told in said
