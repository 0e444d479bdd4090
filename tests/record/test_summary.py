"""What the cards come to: counted by hand from a few small ones."""

import csv
import io

from repairlib.record import add_entry, open_job, per_job, per_month, read_cards
from repairlib.record.card import card_of
from tests.record.cards import JOB, ONE_OF_EACH, full_card


def three_cards(folder):
    full_card(folder)
    path = open_job(folder, "Ben", set="network switch", job="dead port", date="2026-11-30")
    add_entry(path, "hours", "Ben", spent="45 min")
    add_entry(path, "hours", "Cem", spent="0,5")
    add_entry(path, "outcome", "Ben", outcome="not repaired", told="no part to be had")
    add_entry(path, "outcome", "Ben", outcome="handed on", told="mains side")
    open_job(folder, "Cem", set="label maker", job="no power", date="2026-12-01")
    return read_cards(folder)


def test_per_job(tmp_path):
    assert per_job(three_cards(tmp_path)) == [
        {
            "job": "hum",
            "set": "desk radio",
            "date": "2026-11-28",
            "who": "Ana",
            "hours": 1.5,
            "parts": 1,
            "outcome": "verify",
            "lines not read": 0,
        },
        {
            "job": "dead port",
            "set": "network switch",
            "date": "2026-11-30",
            "who": "Ben, Cem",
            "hours": 1.25,
            "parts": 0,
            "outcome": "handed on",
            "lines not read": 0,
        },
        {
            "job": "no power",
            "set": "label maker",
            "date": "2026-12-01",
            "who": "Cem",
            "hours": 0,
            "parts": 0,
            "outcome": "open",
            "lines not read": 0,
        },
    ]


def test_per_month(tmp_path):
    november = {"month": "2026-11", "jobs": 2, "hours": 2.75, "parts": 1}
    december = {"month": "2026-12", "jobs": 1, "hours": 0, "parts": 0}
    assert per_month(three_cards(tmp_path)) == [
        november | {"verify": 1, "handed on": 1, "not repaired": 0, "open": 0},
        december | {"verify": 0, "handed on": 0, "not repaired": 0, "open": 1},
    ]


def test_what_was_corrected_does_not_count(tmp_path):
    path = open_job(tmp_path, "Ana", **JOB)
    part = add_entry(path, "part", "Ana", **ONE_OF_EACH["part"])
    hours = add_entry(path, "hours", "Ana", spent="8")
    add_entry(path, "hours", "Ana", corrects=hours.number, spent="0.8")
    add_entry(path, "note", "Ana", corrects=part.number, text="it was not fitted")
    (row,) = per_job(read_cards(tmp_path))
    assert (row["hours"], row["parts"]) == (0.8, 0)


def test_a_card_without_its_head_counts_by_the_time_of_its_first_entry(tmp_path):
    data = full_card(tmp_path).read_bytes().splitlines(keepends=True)
    headless = card_of(b"".join(data[1:]), "card.jsonl")
    (row,) = per_job([headless])
    assert (row["job"], row["set"]) == ("card.jsonl", "")
    assert per_month([headless])[0]["month"] == headless.entries[0].time[:7]
    damaged = card_of(b"{}\n", "bad.jsonl")
    assert per_month([damaged])[0]["month"] == "not known"
    assert per_job([damaged])[0]["lines not read"] == 1


def test_the_rows_are_plain_and_go_into_any_table(tmp_path):
    for rows in (per_job(three_cards(tmp_path)), per_month(read_cards(tmp_path))):
        assert {tuple(row) for row in rows} == {tuple(rows[0])}
        writer = csv.DictWriter(io.StringIO(), list(rows[0]))
        writer.writerows(rows)
        assert all(type(it) in (str, int, float) for row in rows for it in row.values())
