"""The tables of cards and of the shelf: every entry and every set, in words and on any width."""

import pytest

from repairlib.core.tables import demo_path
from repairlib.record import read_card, read_cards
from repairlib.show import entries_of, jobs_of, months_of, order_of_work
from repairlib.worth import read_shelf
from tests.record.cards import ONE_OF_EACH, full_card

pytestmark = pytest.mark.behaviour

CARDS = read_cards(demo_path("job-cards"))


def test_every_entry_is_a_row_with_what_it_says(tmp_path):
    shown = entries_of(read_card(full_card(tmp_path)))
    assert len(shown.rows) == 1 + len(ONE_OF_EACH)
    told = repr(shown).replace("\xa0", " ")
    for said in ("Hum at any volume", "before, C3 ESR: 1.2 Ω", "470/16 out", "Küchenradio", "left"):
        assert said in told
    assert "to be verified: hum with the volume down" in told
    assert "A capacitor keeps its charge" in told


def test_a_correction_is_seen_from_both_sides():
    told = repr(entries_of(CARDS[-1]))
    assert "15 min (corrected by 16)" in told
    assert "1 h 15 min (in place of 15)" in told


# By hand from the cards: 20 min + 1 h 30 min + 1 h 15 min = 3 h 5 min = 3.08 h
def test_jobs_and_months_are_counted():
    assert [row[4] for row in jobs_of(CARDS).rows] == ["3.5", "2.5", "0.33", "1.5", "1.25"]
    assert months_of(CARDS).rows[-1] == ("2026-11", "3", "3.08", "2", "2", "0", "1", "0")
    assert [row[-1] for row in jobs_of(CARDS).rows] == ["0", "0", "0", "1", "0"]


def test_the_demo_cards_are_whole_but_for_the_line_that_was_cut_short():
    assert [card.outcome for card in CARDS].count("verify") == 4
    assert [len(card.unread) for card in CARDS] == [0, 0, 0, 1, 0]
    assert len(CARDS[0].standing("part")) == 17


def test_what_is_handed_on_has_no_place():
    rows = order_of_work(read_shelf(demo_path("shelf.csv"))).rows
    assert [row[0] for row in rows] == ["1", "2", "3", "none"]
    assert rows[-1][1:3] == ("desk radio", "⚠ leave it to a qualified person")


def test_a_table_is_escaped_and_read_aloud_as_one():
    card = CARDS[1]
    shown = entries_of(card)._repr_html_()
    assert shown.count('role="row"') == 1 + len(card.entries)
    assert shown.count('role="columnheader"') == 4
    assert "<table" not in shown
