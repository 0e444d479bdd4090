"""The rest of the ground floor: errors, sources, tables, cautions."""

import copy
import pickle
import re

import pytest

from repairlib.core.errors import RepairlibError, shown
from repairlib.core.safety import HAZARDS, caution
from repairlib.core.sources import COMMON_PRACTICE, FROM_MEMORY, PUBLISHED, SOURCES
from repairlib.core.tables import DATASETS, demo_path, read_table


def test_an_error_is_one_line_and_a_value_error():
    error = RepairlibError("10\n4\x00", "bad\nthing.", "104\tK")
    assert isinstance(error, ValueError)
    assert str(error) == r"'10\n4\x00': bad thing. Accepted: 104 K"


def test_an_error_survives_copy_and_pickle():
    error = RepairlibError("x", "wrong", "right")
    assert str(pickle.loads(pickle.dumps(error))) == str(copy.copy(error)) == str(error)


def test_a_notebook_shows_the_line_and_no_traceback(capsys):
    from IPython.core.interactiveshell import InteractiveShell

    InteractiveShell().run_cell("import repairlib; repairlib.read('hello')")
    shown_text = capsys.readouterr()
    assert (shown_text.out + shown_text.err).strip().startswith("'hello': ")
    assert "Traceback" not in shown_text.out + shown_text.err


def test_long_text_is_cut():
    assert shown("9" * 10_000_000) == f"'{'9' * 40}…' (10000000 characters)"


def test_a_right_to_left_mark_cannot_hide_in_a_message():
    assert shown("10\u202e4") == "'10\\u202e4'"


PUBLISHED_ONES = [one for one in SOURCES.values() if one.how == PUBLISHED]
ANONYMOUS = re.compile(r"(an?|the|some|unknown|anonymous)\b", re.I)


def test_sources_are_in_order_and_known():
    for known in (PUBLISHED_ONES, [one for one in SOURCES.values() if one.how != PUBLISHED]):
        keys = [one.key for one in known]
        assert keys == sorted(keys, key=str.casefold)
    assert {one.how for one in SOURCES.values()} == {PUBLISHED, COMMON_PRACTICE, FROM_MEMORY}
    assert all(key == one.key for key, one in SOURCES.items())


@pytest.mark.parametrize("one", PUBLISHED_ONES, ids=lambda one: one.key)
def test_a_published_source_can_be_found_again(one):
    assert all((one.author, one.title, one.date, one.where, one.found))
    assert not ANONYMOUS.match(one.author)
    assert not re.match(r"An? [a-z]", one.title), "a description, not a title"
    assert re.search(r"\d{4}|undated|revision|edition|older copy", one.date)
    if one.date == "undated":
        assert re.search(r"\.\w|\d{6}", one.found), "without a date an address or a number is due"


@pytest.mark.parametrize("author", ["A thesis", "A maker", "A chip maker's note", "The trade"])
def test_nobody_signs_as_a_thesis(author):
    assert ANONYMOUS.match(author)


@pytest.mark.parametrize("one", SOURCES.values(), ids=lambda one: one.key)
def test_a_source_is_one_line_that_ends_with_how_it_is_known(one):
    line = str(one)
    assert one.title in line and one.author in line and one.where in line
    assert line.endswith(f" ({one.how})")
    assert line.isprintable() and len(line) <= 165


@pytest.mark.parametrize(
    "path", sorted((DATASETS / "reference").glob("*.csv")), ids=lambda p: p.stem
)
def test_every_reference_row_has_its_source(path):
    rows = read_table(path.stem)
    assert rows
    for row in rows:
        assert row["source"] in SOURCES, row
        assert "how" not in row, "a source says itself how it is known"
        assert None not in row, f"a row of {path.name} has too many columns: {row}"


def test_every_dataset_is_listed():
    listing = (DATASETS / "README.md").read_text(encoding="utf-8")
    for path in DATASETS.rglob("*"):
        if path.is_file() and path.name != "README.md":
            assert path.stem in listing, f"{path.name} is missing from datasets/README.md"


def test_demo_paths():
    assert demo_path("x.csv").parent.name == "demo"


KEYS = "mains, stored charge, live board, wrist strap, hot tools, heat and fire, fumes and flux"
KEYS = [
    *KEYS.split(", "),
    "lead",
    "solvents",
    "flying leads and eyes",
    "batteries",
    "high-voltage tubes",
]
POISONS = ["PCB oil", "wet tantalum", "asbestos", "beryllium oxide"]
CHIPS = ["chip supply", "only copy", "static charge"]


def test_every_hazard_says_when_what_and_whom_to_defer_to():
    assert list(HAZARDS) == [*KEYS, *POISONS, *CHIPS]
    for hazard in HAZARDS.values():
        assert hazard.title
        assert hazard.when.endswith(".")
        assert hazard.do
        assert hazard.defer.endswith(".")


def test_a_caution_shows_its_words_in_text_and_in_a_notebook():
    shown_caution = caution("mains", "stored charge")
    for form in (str(shown_caution), shown_caution._repr_html_()):
        assert HAZARDS["mains"].title in form
        assert "Measure the voltage" in form


def test_what_a_part_does_is_not_said_of_a_tool():
    assert "An iron burns skin" in caution("hot tools").short()
    assert "wrong way round" in caution("heat and fire").short()
    assert "An iron burns skin" not in caution("heat and fire").short()


def test_no_caution_says_safe_to_touch():
    assert not any("safe to touch" in str(caution(key)) for key in HAZARDS)
