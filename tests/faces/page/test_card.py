"""The bench card: its addresses, its readings with their cautions, and what it refuses."""

from __future__ import annotations

import json

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.core.safety import HAZARDS
from repairlib.faces import cli
from repairlib.faces.page.card import bench_card, marking_address, write_card
from repairlib.markings import read
from tests.show.sheets.test_bench_sheet import read_page

pytestmark = pytest.mark.behaviour

ADDRESS = "https://bench.example/"


def words_of(sheet: str) -> str:
    return " ".join(read_page(sheet).text.replace("\xa0", " ").split())


def cards_of(sheet: str) -> list[str]:
    return sheet.partition("Cautions in full")[0].split('<div class="card">')[1:]


def test_each_marking_has_a_card_with_its_likeliest_reading():
    markings = ["104K", "220 16V", "2R2"]
    cards = cards_of(bench_card(ADDRESS, markings))
    assert len(cards) == 3
    for marking, card in zip(markings, cards, strict=True):
        assert read(marking)[0].headline in card
        assert f"It holds: {marking_address(ADDRESS, marking)}" in card
        assert ("something else" in card) == (len(read(marking)) > 1)


def test_a_part_that_can_hurt_has_its_cautions_on_the_card_and_in_full_below():
    sheet = bench_card(ADDRESS, ["104K", "275V X2 0.1", "T3.15A"])
    plain, *others = cards_of(sheet)
    assert "CAUTION" not in plain
    for marking, card in zip(["275V X2 0.1", "T3.15A"], others, strict=True):
        for key in read(marking)[0].cautions:
            assert HAZARDS[key].title in card
            assert HAZARDS[key].defer in words_of(sheet)


def test_the_address_stands_in_letters_too_and_a_marking_in_it_is_left_off():
    sheet = bench_card(f"{ADDRESS}#104K")
    assert f"type the address: {ADDRESS}" in words_of(sheet)
    assert "Cautions" not in sheet and "#104K" not in sheet


def test_nothing_typed_is_markup():
    sheet = bench_card("https://bench.example/?<b>", ["104K"])
    assert "<b>" not in sheet.partition("</style>")[2].replace("<body>", "")


@pytest.mark.parametrize(
    "address",
    [
        "",
        "bench.example",
        "ftp://bench.example/",
        "javascript:alert(1)",
        "https://",
        "https:///page",
        "https://bench.example:99999/",
        "https://[::1/",
        "https://bench .example/",
        "https://bench.example/\n",
        "https://bench.example/\x1b[2J",
        "https://bench.example/\u202e",
        "https://bench.example/\ud800",
        f"https://bench.example/{'x' * 450}",
    ],
    ids=range(14),
)
def test_no_card_is_made_for_what_is_no_address(address, tmp_path):
    out = tmp_path / "card.html"
    with pytest.raises(RepairlibError) as refused:
        write_card(address, ["104K"], out)
    assert "\n" not in str(refused.value) and "\x1b" not in str(refused.value)
    assert not list(tmp_path.iterdir())


def test_a_marking_that_cannot_be_read_is_told_and_nothing_is_written(tmp_path):
    with pytest.raises(RepairlibError, match="104X"):
        write_card(ADDRESS, ["104K", "104X"], tmp_path / "card.html")
    assert not list(tmp_path.iterdir())


def test_a_card_is_written_and_an_earlier_card_replaced(tmp_path):
    out = tmp_path / "card.html"
    assert write_card(ADDRESS, [], out) == f"Saved {out}"
    assert write_card(ADDRESS, ["104K"], str(out)) == f"Saved {out}"
    assert out.read_text("utf-8") == bench_card(ADDRESS, ["104K"])


def test_no_other_file_is_overwritten(tmp_path):
    out = tmp_path / "mine.html"
    out.write_text("<!DOCTYPE html>\n<title>Bench card</title>mine", "utf-8")
    with pytest.raises(RepairlibError, match="nothing was overwritten"):
        write_card(ADDRESS, [], out)
    assert out.read_text("utf-8").endswith("mine")


def test_the_command_makes_no_document_of_a_card(tmp_path, capsys):
    out = tmp_path / "card.html"
    assert cli.main(["page", "--card", ADDRESS, "104K", "--out", str(out), "--json"]) == 2
    assert "not an option of a card" in json.loads(capsys.readouterr().out)["error"]
    assert not out.exists()
    assert cli.main(["page", "--card", ADDRESS, "104K", "--out", str(out)]) == 0
    assert capsys.readouterr().out == f"Saved {out}\n"


def test_a_folder_and_a_place_that_is_not_there_are_refused(tmp_path):
    with pytest.raises(RepairlibError, match="this is a folder"):
        write_card(ADDRESS, [], tmp_path)
    with pytest.raises(RepairlibError, match="cannot be written"):
        write_card(ADDRESS, [], tmp_path / "none" / "card.html")
