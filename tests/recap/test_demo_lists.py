"""The demo list and three messy ones: worked by hand, and the same from CSV, TSV and pasted text.

The lists are invented. What is checked is that their lines come out as a person reads them.
"""

import pytest

from repairlib.core.tables import demo_path
from repairlib.core.typed.set_aside import BLANK, HEADING, OTHER_PART, TITLE, UNREADABLE
from repairlib.core.typed.textfile import read_text
from repairlib.recap import plan, plan_file, read_board

ENDINGS = ("csv", "tsv", "txt")

# list: {what to fit, or the verdict: places}. Worked by hand from the paper lists.
BY_HAND = {
    "keyboard": {
        "10 µF 16 V": "C20 C21 C22 C23",
        "47 µF 16 V": "C24",
        "4.7 µF 50 V": "C25",
        "4.7 µF 50 V bipolar": "C26",
        "1 µF 50 V": "C27",
        "2.2 µF 50 V": "C28 C29",
        "4.7 µF 25 V": "C36",
        "100 µF 25 V": "C10",
        "100 µF 16 V": "C40 C41",
        "220 µF 16 V": "C13",
        "220 µF 10 V": "C42",
        "22 µF 16 V": "C43",
        "33 µF 25 V axial": "C44",
        "470 µF 16 V": "C4",
        "1000 µF 16 V": "C3",
        "1000 µF 10 V": "C46",
        "2200 µF 25 V axial": "C1 C2",
        "hold": "C30",
        "judge": "C9 C11 C12 C37",
        "keep": "C5 C6 C7 C8 C14 C31 C32 C33 C34 C35 C45 C47",
    },
    "desk-radio": {
        "470 µF 25 V": "C1 C2",
        "1000 µF 16 V": "C3",
        "4.7 µF 25 V": "C4",
        "33 µF 16 V axial": "C8",
        "10 µF 16 V bipolar": "C10",
        "10 µF 16 V": "C15",
        "hold": "C12 C13",
        "judge": "C16",
        "keep": "C5 C6 C7 C9 C11 C14",
    },
    "printer-controller": {
        "10 µF 16 V": "C1 C2 C3 C4",
        "47 µF 25 V": "C5",
        "2200 µF 10 V": "C19",
        "33 µF 16 V": "C22 C23",
        "470 µF 16 V axial": "C24",
        "3.3 µF 50 V bipolar": "C25",
        "hold": "C6 C6 C18 C21",
        "judge": "C7 C8 C9",
        "keep": "C10 C11 C12 C13 C14 C15 C16 C17 C20",
    },
    "echo-unit": {
        "1 µF 50 V": "C301 C302 C303 C304",
        "10 µF 25 V bipolar": "C305",
        "100 µF 16 V": "C306 C308",
        "2.2 µF 450 V": "C309",
        "47 µF 50 V": "C310",
        "470 µF 10 V": "C340",
        "3300 µF 16 V": "C342",
        "hold": "C307 C341",
        "judge": "",
        "keep": "C320 C321 C322 C323 C324 C330 C331",
    },
}
CASES = [(name, ending) for name in BY_HAND for ending in ENDINGS]


def planned(name, ending):
    board = read_board(demo_path("keyboard-board.csv")) if name == "keyboard" else None
    return plan_file(demo_path(f"{name}-parts.{ending}"), board)


def outcome(item):
    if item.new is None:
        return item.verdict
    words = str(item.new).replace("\xa0", " ").split()
    special = [word for word in ("axial", "bipolar") if word in words]
    return " ".join([*words[:4], *special])


@pytest.mark.common_practice
@pytest.mark.parametrize(("name", "ending"), CASES)
def test_plan_worked_by_hand(name, ending):
    found = {}
    for item in planned(name, ending).all_items:
        found.setdefault(outcome(item), []).append(item.reference)
    expected = {what: sorted(places.split()) for what, places in BY_HAND[name].items() if places}
    assert {what: sorted(places) for what, places in found.items()} == expected


@pytest.mark.parametrize("name", BY_HAND)
def test_same_plan_from_every_shape(name):
    """Everything but the line numbers and the source text is the same, row for row."""
    plans = [planned(name, ending) for ending in ENDINGS]
    rows = [
        [{key: row[key] for key in row if key not in ("line", "source text", "notes")} for row in p]
        for p in (plan.rows() for plan in plans)
    ]
    assert rows[0] == rows[1] == rows[2]
    assert len({plan.list.separator for plan in plans}) == 3


@pytest.mark.parametrize(("name", "ending"), CASES)
def test_same_plan_from_pasted_text(name, ending):
    """Pasting the file's text into a notebook gives what reading the file gives."""
    text = read_text(demo_path(f"{name}-parts.{ending}")).text
    board = read_board(demo_path("keyboard-board.csv")) if name == "keyboard" else None
    assert plan(text, board).rows() == planned(name, ending).rows()


@pytest.mark.parametrize(("name", "ending"), CASES)
def test_every_line_is_accounted_for(name, ending):
    made = planned(name, ending)
    set_aside = [line.line for line in made.list.set_aside]
    with_parts = made.list.lines_with_parts()
    assert sorted([*set_aside, *with_parts]) == list(range(1, len(made.list.lines) + 1))
    counts = made.counts()
    kinds = ("lines with parts", BLANK, HEADING, OTHER_PART, TITLE, UNREADABLE)
    assert sum(counts.get(kind, 0) for kind in kinds) == counts["lines"]


@pytest.mark.parametrize(("name", "ending"), CASES)
def test_every_item_is_traced_to_its_line(name, ending):
    made = planned(name, ending)
    for item in made.all_items:
        assert made.source(item) == made.list.lines[item.line - 1]
        number = item.reference.lstrip("C")
        assert "C" in made.source(item)
        assert number in made.source(item) or "-" in made.source(item) or "~" in made.source(item)


def test_the_demo_plan_fits_its_board():
    made = planned("keyboard", "csv")
    assert made.not_listed == []
    assert len(made.all_items) == 40
    assert [str(duplicate) for duplicate in made.duplicates] == [
        "C24 stands on lines 19 and 39: the same, planned once (two boards? plan each one alone)"
    ]
    assert [step.title for step in made.steps] == [
        "power supply, up to 13 mm high",
        "power supply, over 13 mm high",
        "voice board, up to 13 mm high",
        "output, up to 13 mm high",
        "output, over 13 mm high",
    ]
    assert " ".join(item.reference for item in made.checklist) == (
        "C4 C10 C13 C3 C1 C2 C20 C21 C22 C23 C24 C25 C26 C27 C28 C29 C36 C40 C43 C41 C42 C44 C46"
    )


def test_polarity_of_the_demo_board():
    """Typed in from the board's drawing."""
    plus = {item.reference: item.polarity for item in planned("keyboard", "csv").checklist}
    seen = "seen from the component side with the connector edge down"
    assert plus["C1"] == f"plus left, {seen}"
    assert plus["C23"] == f"plus down, {seen}"
    assert plus["C26"] == "no plus"


def test_notes_tell_the_encoding():
    assert "Windows-1252" in planned("desk-radio", "csv").list.notes[0]
    assert "UTF-16" in planned("printer-controller", "tsv").list.notes[0]
