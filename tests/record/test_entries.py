"""What an entry may hold: it is kept as typed, and what cannot be read is refused in one line."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.record import add_entry, open_job, read_card
from repairlib.record.entries import FIELDS, Entry, entry_of, read_fields
from tests.record.cards import JOB, ONE_OF_EACH


@pytest.mark.parametrize("kind", ONE_OF_EACH)
def test_what_is_typed_is_kept_as_typed(kind):
    assert read_fields(kind, ONE_OF_EACH[kind]) == ONE_OF_EACH[kind]


def test_each_kind_is_tried_here():
    assert {"job", *ONE_OF_EACH} == set(FIELDS)


def test_a_reading_is_read_as_everywhere_else():
    entry = Entry(1, "", "Ana", "reading", ONE_OF_EACH["reading"])
    assert (entry.measured.value, entry.measured.frequency) == (1.2, 100e3)
    over = {"stage": "after", "what": "fuse", "reading": "OL", "unit": "Ω"}
    assert Entry(1, "", "Ana", "reading", over).measured.kind == "overload"


@pytest.mark.parametrize(
    ("spent", "hours"),
    [("1 h 30 min", 1.5), ("45 min", 0.75), ("0,5", 0.5), ("2", 2), (0.25, 0.25), (24, 24)],
)
def test_hours_are_read_and_a_bare_number_is_hours(spent, hours):
    said = read_fields("hours", {"spent": spent})
    assert Entry(1, "", "Ana", "hours", said).hours == hours


@pytest.mark.parametrize(
    ("kind", "said", "wrong"),
    [
        ("poem", {}, "not one of these words"),
        ("finding", {}, "text"),
        ("finding", {"text": "  "}, "nothing was typed"),
        ("finding", {"text": "x" * 4001}, "longer than 4000 characters"),
        ("finding", {"text": "x", "colour": "red"}, "no field of the kind finding"),
        ("reading", {**ONE_OF_EACH["reading"], "reading": "1 nF"}, "in F where Ω is due"),
        ("reading", {**ONE_OF_EACH["reading"], "reading": "1,000"}, "may be 1.000 or 1000"),
        ("reading", {**ONE_OF_EACH["reading"], "unit": "furlong"}, "not one of these words"),
        ("reading", {**ONE_OF_EACH["reading"], "stage": "during"}, "not one of these words"),
        ("part", {**ONE_OF_EACH["part"], "reference": "C1\nC2"}, "longer than one line"),
        ("caution", {"hazard": "ghosts"}, "not one of these words"),
        ("hours", {"spent": "90"}, "not between nothing and 24 hours"),
        ("hours", {"spent": "0"}, "not between nothing and 24 hours"),
        ("hours", {"spent": "-1 h"}, "not between nothing and 24 hours"),
        ("hours", {"spent": "10 V"}, "it is in V where s is due"),
        ("hours", {"spent": float("nan")}, "no number"),
        ("hours", {"spent": True}, "not a text"),
        ("outcome", {"outcome": "safe", "told": "x"}, "not one of these words"),
        ("outcome", {"outcome": "verify", "told": ""}, "nothing was typed"),
        ("job", {**JOB, "date": "28.11.2026"}, "no date, or not written in this order"),
        ("job", {**JOB, "date": "2026-02-30"}, "no date, or not written in this order"),
        ("job", {**JOB, "date": "20261128"}, "no date, or not written in this order"),
    ],
)
def test_what_cannot_be_read_is_one_line_and_writes_nothing(tmp_path, kind, said, wrong):
    path = open_job(tmp_path, "Ana", **JOB)
    before = path.read_bytes()
    with pytest.raises(RepairlibError) as error:
        add_entry(path, kind, "Ana", **said)
    assert wrong in str(error.value)
    assert "\n" not in str(error.value)
    assert path.read_bytes() == before


@pytest.mark.parametrize(
    "given_name",
    [
        "../secret.jpg",
        "photos/board.jpg",
        "..\\board.jpg",
        "C:board.jpg",
        "/etc/hosts",
        "..",
        " . ",
        "a\0b.jpg",
        "a\x1b[2J.jpg",
        "file:///tmp/a.jpg",
        "a\nb.jpg",
    ],
)
def test_a_photo_is_the_name_of_a_file_alone(given_name):
    with pytest.raises(RepairlibError) as error:
        read_fields("photo", {"file": given_name})
    assert "\n" not in str(error.value)


def test_a_date_may_be_a_date():
    assert read_fields("job", {**JOB, "date": date(2026, 11, 28)}) == JOB


ANYTHING = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text() | st.binary(),
    lambda inside: st.lists(inside) | st.dictionaries(st.text(), inside),
    max_leaves=5,
)


@given(ANYTHING, st.sampled_from(sorted(FIELDS)))
def test_any_value_in_any_field_is_a_text_or_one_line(value, kind):
    for field in FIELDS[kind]:
        said = (JOB | ONE_OF_EACH.get(kind, {})) if kind == "job" else dict(ONE_OF_EACH[kind])
        said[field] = value
        try:
            read = read_fields(kind, said)
        except RepairlibError as error:
            assert "\n" not in str(error)
        else:
            assert all(type(text) is str for text in read.values())


@given(ANYTHING, st.sampled_from(["version", "number", "time", "by", "kind", "corrects", "text"]))
def test_an_entry_with_a_wrong_type_is_one_line(value, key):
    found = {
        "version": 1,
        "number": 2,
        "time": "2026-11-28T10:00:00+00:00",
        "by": "Ana",
        "kind": "note",
        "text": "x",
    }
    try:
        assert entry_of(found | {key: value}).number > 0
    except RepairlibError as error:
        assert "\n" not in str(error)


@pytest.mark.parametrize("by", [None, 3, "", "x" * 201, "a\nb"])
def test_who_writes_has_a_name(tmp_path, by):
    path = open_job(tmp_path, "Ana", **JOB)
    with pytest.raises(RepairlibError):
        add_entry(path, "note", by, text="x")
    with pytest.raises(RepairlibError):
        open_job(tmp_path, by, **JOB)
    assert len(read_card(path).entries) == 1
    assert len(list(tmp_path.glob("*.jsonl"))) == 1
