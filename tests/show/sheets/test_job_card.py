"""The printed job card: all that is written on it, with what is due, and nothing as markup."""

import json

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.core.safety import HAZARDS
from repairlib.record import Card, add_entry, open_job, read_card
from repairlib.record.card import card_of
from repairlib.show.sheets import job_sheet, write_job_sheet
from tests.record.cards import JOB, ONE_OF_EACH, full_card
from tests.show.sheets.test_bench_sheet import read_page


def words_of(card):
    return " ".join(read_page(job_sheet(card)).text.replace("\xa0", " ").split())


def test_all_that_was_written_stands_on_it(tmp_path):
    page = job_sheet(read_card(full_card(tmp_path)))
    for said in (JOB, *ONE_OF_EACH.values()):
        for field, value in said.items():
            told = HAZARDS[value].title if field == "hazard" else value
            if field not in ("stage", "outcome", "unit"):
                assert told.replace("'", "&#x27;") in page, field
    assert "page " in page.partition("</style>")[0]
    assert "counter(pages)" in page


def test_a_reading_stands_as_typed_and_as_it_is_read(tmp_path):
    assert "1,2 @ 100 kHz read as 1.2 Ω" in words_of(read_card(full_card(tmp_path)))


@pytest.mark.parametrize(
    ("outcome", "said", "signed"),
    [
        ("verify", "to be verified before it goes back", True),
        ("handed on", "handed on to a qualified person", False),
        ("not repaired", "keep it unplugged", False),
    ],
)
def test_the_outcome_says_what_is_due_and_never_that_it_is_safe(tmp_path, outcome, said, signed):
    path = open_job(tmp_path, "Ana", **JOB)
    assert "No outcome is written yet: keep it unplugged" in words_of(read_card(path))
    add_entry(path, "outcome", "Ana", outcome=outcome, told="see below")
    words = words_of(read_card(path))
    assert said in words
    assert ("Verified as stated by" in words) == signed
    assert "safe" not in words.lower()


def test_the_cautions_that_were_acknowledged_stand_in_full(tmp_path):
    words = words_of(read_card(full_card(tmp_path)))
    hazard = HAZARDS["stored charge"]
    assert f"CAUTION: {hazard.title}." in words
    assert hazard.defer in words


def test_what_was_corrected_stands_at_the_end(tmp_path):
    path = full_card(tmp_path)
    add_entry(path, "part", "Ben", corrects=4, **ONE_OF_EACH["part"] | {"plus": "right"})
    parts, _, corrected = job_sheet(read_card(path)).partition("<h2>Corrected</h2>")
    assert ">right<" in parts
    assert ">left<" not in parts
    assert "left" in corrected


def test_what_could_not_be_read_is_said_at_the_top_and_quoted(tmp_path):
    data = full_card(tmp_path).read_bytes()
    later = json.dumps({"version": 9, "mood": "<glad>"}).encode()
    page = job_sheet(card_of(data + later, "card.jsonl"))
    assert page.index("1 line could not be read") < page.index("<h2>Found</h2>")
    assert "&lt;glad&gt;" in page


def test_nothing_on_it_becomes_markup(tmp_path):
    bad = "</style><script>x</script>"
    path = open_job(tmp_path, bad, set=bad, job=bad, date="2026-11-28")
    add_entry(path, "note", bad, text=bad + "\x1b[2J\u202e")
    add_entry(path, "photo", bad, file="<b>.jpg")
    page = job_sheet(read_card(path))
    assert "<script" not in page
    assert "<b>.jpg" not in page
    assert page.count("</style>") == 1
    assert "\x1b" not in page
    assert "\u202e" not in page


def test_an_empty_card_prints_too():
    words = words_of(Card("radio.jsonl"))
    assert "Job card: radio.jsonl" in words
    assert "nothing is written on this card yet" in words


def test_it_is_written_whole_and_overwrites_nothing(tmp_path):
    card = read_card(full_card(tmp_path))
    path = tmp_path / "card.html"
    assert str(write_job_sheet(card, path)) == f"Saved {path}"
    assert path.read_text(encoding="utf-8") == job_sheet(card)
    with pytest.raises(RepairlibError, match="this file exists"):
        write_job_sheet(card, path)
