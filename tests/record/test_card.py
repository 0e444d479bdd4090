"""A card on the disk: what was written comes back, and a damaged line harms no other."""

import json
import os

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.record import add_entry, open_job, read_card, read_cards, take_in
from repairlib.record.card import card_of
from tests.record.cards import JOB, ONE_OF_EACH, full_card


@pytest.fixture(scope="module")
def data(tmp_path_factory):
    return full_card(tmp_path_factory.mktemp("cards")).read_bytes()


def test_what_was_written_comes_back(tmp_path):
    card = read_card(full_card(tmp_path))
    assert card.trouble == ""
    assert [one.kind for one in card.entries] == ["job", *ONE_OF_EACH]
    assert [dict(one.said) for one in card.entries] == [JOB, *ONE_OF_EACH.values()]
    assert [one.number for one in card.entries] == list(range(1, len(card.entries) + 1))
    assert card.writers == ["Ana"]
    assert (card.month, card.hours) == ("2026-11", 1.5)


def test_each_line_says_version_time_number_and_who(data):
    for number, line in enumerate(data.splitlines(), 1):
        found = json.loads(line)
        assert (found["version"], found["number"], found["by"]) == (1, number, "Ana")
        assert found["time"].endswith("+00:00")


def test_cut_at_every_byte_every_whole_entry_is_read_and_the_rest_quoted(data):
    whole = card_of(data).entries
    for at in range(len(data) + 1):
        card = card_of(data[:at])
        ended = data.count(b"\n", 0, at)
        begun = data[:at].rpartition(b"\n")[2]
        entire = data[at : at + 1] == b"\n"
        assert card.entries == whole[: ended + entire * bool(begun)]
        assert [one.text for one in card.unread] == (
            [] if entire or not begun else [begun.decode()]
        )
        if card.unread:
            assert card.trouble.count("\n") == 0
            assert "1 line could not be read" in card.trouble


def test_after_a_cut_at_any_byte_the_next_entry_stands_on_its_own_line(data, tmp_path):
    path = tmp_path / "card.jsonl"
    for at in range(0, len(data) + 1, 7):
        path.write_bytes(data[:at])
        before = card_of(data[:at])
        add_entry(path, "note", "Ben", text="after")
        card = read_card(path)
        assert card.entries[:-1] == before.entries
        assert card.unread == before.unread
        assert card.entries[-1]["text"] == "after"
        assert path.read_bytes().startswith(data[:at])


def test_any_byte_may_be_another_and_other_lines_are_read(data):
    lines = data.splitlines(keepends=True)
    for at in range(len(lines[0]), len(lines[0]) + len(lines[1]) - 1):
        for other in (b"\0", b"\xff", b"9"):
            card = card_of(data[:at] + other + data[at + 1 :])
            assert len(card.entries) + len(card.unread) == len(lines)
            assert len(card.entries) >= len(lines) - 2  # a number may come to stand twice


@given(st.binary(max_size=200))
def test_any_bytes_at_the_end_are_quoted_and_block_nothing(data, more):
    card = card_of(data + more)
    assert card.entries[: data.count(b"\n")] == card_of(data).entries
    assert "\n" not in card.trouble
    for one in card.unread:
        assert "\n" not in str(one)


@pytest.mark.parametrize("end", [b"\r\n", b"\r", b"\n\n", b" \n"])
def test_other_line_ends_and_a_byte_order_mark(data, end, tmp_path):
    path = tmp_path / "card.jsonl"
    path.write_bytes(b"\xef\xbb\xbf" + data.replace(b"\n", end))
    assert read_card(path).entries == card_of(data).entries
    assert read_card(path).trouble == ""
    add_entry(path, "note", "Ben", text="after")
    assert len(read_card(path).entries) == len(card_of(data).entries) + 1


def test_a_later_version_is_said_quoted_and_keeps_its_number(tmp_path):
    path = open_job(tmp_path, "Ana", **JOB)
    later = {"version": 2, "number": 7, "mood": "glad"}
    with open(path, "a", encoding="ascii") as file:
        file.write(json.dumps(later) + "\n")
    assert add_entry(path, "note", "Ben", text="on").number == 8
    card = read_card(path)
    assert card.trouble == (
        f"{path.name}: 1 line could not be read and is quoted "
        "(of a later version (2; this one reads 1))"
    )
    assert json.loads(card.unread[0].text) == later
    assert "glad" in str(card.unread[0])
    assert [one.number for one in card.entries] == [1, 8]


@pytest.mark.parametrize("line", ["[]", "3", '"x"', "null", "{}", "[" * 99999, "9" * 5000, "NaN"])
def test_json_that_is_no_entry_is_quoted(data, line):
    card = card_of(data + line.encode() + b"\n")
    assert card.entries == card_of(data).entries
    assert [one.text for one in card.unread] == [line]


def test_a_card_from_elsewhere_cannot_lead_out_of_its_folder(data):
    crafted = data.replace(json.dumps(ONE_OF_EACH["photo"]["file"]).encode(), b'"../../x.jpg"')
    assert crafted != data
    card = card_of(crafted)
    assert card.standing("photo") == []
    assert "a path with folders in it" in card.trouble


def test_a_number_that_stands_twice_is_said(data):
    twice = data + data.splitlines(keepends=True)[1]
    assert [one.why for one in card_of(twice).unread] == ["the number 2 stands twice"]


def test_a_correction_stands_in_the_place_of_what_it_corrects(tmp_path):
    path = full_card(tmp_path)
    old = path.read_bytes()
    part = ONE_OF_EACH["part"]
    new = add_entry(path, "part", "Ben", corrects=4, **part | {"plus": "right"})
    assert path.read_bytes().startswith(old)
    card = read_card(path)
    assert [one["plus"] for one in card.standing("part")] == ["right"]
    assert [(row["corrected by"], row["corrects"]) for row in card.rows()][3] == (new.number, "")
    assert card.rows()[-1]["corrects"] == 4
    assert card.writers == ["Ana", "Ben"]


def test_a_note_strikes_out_an_entry_of_any_kind(tmp_path):
    path = full_card(tmp_path)
    add_entry(path, "note", "Ana", corrects=7, text="these hours belong to another job")
    assert read_card(path).hours == 0


@pytest.mark.parametrize(
    ("corrects", "wrong"),
    [
        (99, "no earlier entry of that number"),
        (10, "no earlier entry of that number"),  # itself
        (2, "entry 2 is of the kind finding"),
        (True, "no number of an entry"),
        ("4", "no number of an entry"),
        ([], "no number of an entry"),
        (0, "no number of an entry"),
    ],
)
def test_a_correction_that_fits_nothing_is_refused(tmp_path, corrects, wrong):
    path = full_card(tmp_path)
    before = path.read_bytes()
    with pytest.raises(RepairlibError, match=wrong):
        add_entry(path, "part", "Ana", corrects=corrects, **ONE_OF_EACH["part"])
    assert path.read_bytes() == before


def test_what_was_corrected_once_is_corrected_in_its_correction(tmp_path):
    path = full_card(tmp_path)
    add_entry(path, "hours", "Ana", corrects=7, spent="1")
    with pytest.raises(RepairlibError, match="entry 10 stands in its place already"):
        add_entry(path, "hours", "Ana", corrects=7, spent="2")
    add_entry(path, "hours", "Ana", corrects=10, spent="2")
    assert read_card(path).hours == 2


@pytest.mark.parametrize(
    ("job", "stem"),
    [
        ("Küchenradio Nº 前", "2026-11-28-küchenradio-nº-前"),
        ("../../up", "2026-11-28-up"),
        ("???", "2026-11-28"),
        ("con", "2026-11-28-con"),
        ("前" * 200, "2026-11-28-" + "前" * 40),
    ],
)
def test_the_name_of_a_file_comes_from_date_and_job(tmp_path, job, stem):
    path = open_job(tmp_path, "Zoë 前", **JOB | {"job": job})
    assert path == tmp_path / f"{stem}.jsonl"
    card = read_card(path)
    assert (card.said("job", "job"), card.writers) == (job, ["Zoë 前"])


def test_a_second_job_of_a_name_gets_a_file_of_its_own(tmp_path):
    paths = [open_job(tmp_path / "new" / "folder", "Ana", **JOB) for _ in range(3)]
    assert [path.stem for path in paths] == [f"2026-11-28-hum{end}" for end in ("", "-2", "-3")]
    assert len(read_cards(tmp_path / "new" / "folder")) == 3


def test_a_card_that_is_not_there_is_said_and_nothing_is_made(tmp_path):
    path = tmp_path / "none.jsonl"
    for ask in (lambda: read_card(path), lambda: add_entry(path, "note", "Ana", text="x")):
        with pytest.raises(RepairlibError, match="no such file"):
            ask()
    with pytest.raises(RepairlibError, match="no such file"):
        read_cards(tmp_path / "nowhere")
    assert list(tmp_path.iterdir()) == []


def test_a_folder_in_its_place_is_said(tmp_path):
    for ask in (read_card, lambda path: add_entry(path, "note", "Ana", text="x")):
        with pytest.raises(RepairlibError, match="this is a folder"):
            ask(tmp_path)


def test_an_empty_card_is_said_and_can_be_written_on(tmp_path):
    path = tmp_path / "empty.jsonl"
    path.write_bytes(b"")
    assert read_card(path).trouble == "empty.jsonl: nothing is written on this card yet"
    assert add_entry(path, "note", "Ana", text="x").number == 1


@pytest.mark.skipif(not os.path.exists("/dev/full"), reason="needs a disk that is full")
def test_a_full_disk_is_said(tmp_path, monkeypatch):
    path = full_card(tmp_path)
    before = path.read_bytes()
    really = os.open

    def full(name, *rest):
        return really("/dev/full" if str(name).endswith(".jsonl") else name, *rest)

    monkeypatch.setattr(os, "open", full)
    with pytest.raises(RepairlibError, match="no space left"):
        add_entry(path, "note", "Ana", text="x")
    monkeypatch.undo()
    assert path.read_bytes() == before


def test_a_card_from_elsewhere_gets_a_file_of_its_own(tmp_path):
    data = full_card(tmp_path / "there").read_bytes()
    here = tmp_path / "here"
    first = take_in(here, "2026-11-28-hum.jsonl", data)
    assert first.name == "2026-11-28-hum.jsonl" and first.read_bytes() == data
    assert take_in(here, "2026-11-28-hum.jsonl", data) == first
    other = take_in(here, "2026-11-28-hum.jsonl", data + b"{")
    assert other.name == "2026-11-28-hum-2.jsonl" and first.read_bytes() == data
    assert take_in(here, "../../Zoë?.jsonl", data + b"[").parent == here


@pytest.mark.parametrize("data", [b"", b"\n", b"C1,10/16", b"{}", b"\xff"])
def test_what_is_no_card_is_not_taken_in(tmp_path, data):
    with pytest.raises(RepairlibError, match="nothing in it is an entry of a job card"):
        take_in(tmp_path / "here", "list.csv", data)
    assert not (tmp_path / "here").exists()
