"""Boards that look like boards: three looks, other parts, and everything still legible."""

from itertools import product
from xml.etree import ElementTree as ET

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.core.tables import demo_path
from repairlib.polarity import board_marks
from repairlib.recap import OTHER_KINDS, plan_file, read_board
from repairlib.show import LOOKS, draw_board, draw_places, draw_polarity, draw_recap
from repairlib.show.footprints import MARKS
from repairlib.show.other_parts import OTHERS
from repairlib.show.recap_board import draw_empty_place
from tests.show.test_drawings import SVG, assert_no_text_covers_another, board_of, texts, words


def luminance(colour: str) -> float:
    parts = [int(colour[place : place + 2], 16) / 255 for place in (1, 3, 5)]
    linear = [c / 12.92 if c <= 0.03928 else ((c + 0.055) / 1.055) ** 2.4 for c in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: str, other: str) -> float:
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


@pytest.mark.from_memory("WCAG, contrast ratio: black on white is 21:1")
def test_contrast_as_it_is_defined():
    assert contrast("#000000", "#ffffff") == pytest.approx(21)


@pytest.mark.parametrize("look", LOOKS.values(), ids=list(LOOKS))
def test_what_is_printed_on_a_board_can_be_read(look):
    for under in (look.ground, look.trace):
        assert contrast(look.print, under) >= 4.5


@pytest.mark.parametrize(("look", "mark"), list(product(LOOKS, MARKS)))
def test_every_mark_is_drawn_on_every_board(look, mark):
    for body in ("radial", "diode", "dip", "to-92", "moulded tantalum"):
        assert mark in draw_places((body, mark, "x"), look=look).alt


def test_the_look_changes_the_colours_and_not_a_word():
    for draw in (
        lambda look: draw_polarity("radial-stripe", look=look),
        lambda look: draw_polarity("diode-band", "letter K", labels=False, look=look),
        lambda look: draw_empty_place("C5", "up", look),
        lambda look: draw_board(board_of(20), 280, 120, look=look),
    ):
        pictures = [draw(look) for look in LOOKS]
        assert len({picture.alt for picture in pictures}) == 1
        assert len({tuple(words(picture)) for picture in pictures}) == 1
        assert len({picture.svg for picture in pictures}) == len(LOOKS)


def test_both_letters_stand_on_a_board_that_prints_both():
    assert "letters K and A" not in board_marks()
    said = words(draw_places(("diode", "letters K and A", "a diode")))
    assert {"K", "A"} <= set(said)


def test_no_name_moves_for_the_sake_of_other_parts():
    others = [
        {"kind": kind, "x_mm": 20 * place, "y_mm": 60, "width_mm": 12, "height_mm": 6}
        for place, kind in enumerate(OTHERS, 1)
    ]
    plain, full = (draw_board(board_of(30), 280, 120, others=more) for more in ((), others))
    places = [
        [(text.text, text.get("x"), text.get("y")) for text in texts(one)] for one in (plain, full)
    ]
    assert places[0] == places[1] and len(full.svg) > len(plain.svg)
    assert_no_text_covers_another(full)


def test_every_kind_that_is_read_is_drawn():
    assert set(OTHER_KINDS) == set(OTHERS)


def test_other_parts_of_the_demo_board_are_turned_over_with_it():
    board = read_board(demo_path("keyboard-board.csv"), demo_path("keyboard-other-parts.csv"))
    plan = plan_file(demo_path("keyboard-parts.csv"), board)

    def leftmost_outline(picture) -> float:
        drawn = ET.fromstring(picture.svg).iter(f"{SVG}rect")
        thin = [one for one in drawn if one.get("stroke") == LOOKS["plan"].other]
        return min(float(one.get("x")) for one in thin)

    chips = [leftmost_outline(draw_recap(plan, from_behind=behind)) for behind in (False, True)]
    assert chips[0] != chips[1]
    assert draw_recap(plan).alt == draw_recap(plan, look="green").alt


def test_names_that_are_not_known_are_told():
    part = {"reference": "C1", "x_mm": 5, "y_mm": 5, "diameter_mm": 5}
    other = {"kind": "engine", "x_mm": 5, "y_mm": 5, "width_mm": 5, "height_mm": 5}
    for wrong, more in (("tartan", {"look": "tartan"}), ("engine", {"others": [other]})):
        with pytest.raises(RepairlibError, match=wrong):
            draw_board([part], 50, 50, **more)


@pytest.mark.parametrize(
    ("row", "told"),
    [("engine,1,2,3,4", "engine"), ("chip,1,2,x,4", "'x'"), ("chip,1,2,-3,4", "-3")],
)
def test_a_table_of_other_parts_that_cannot_be_read(tmp_path, row, told):
    places, others = tmp_path / "board.csv", tmp_path / "others.csv"
    places.write_text("reference\nC1\n")
    others.write_text(f"kind,x_mm,y_mm,width_mm,height_mm\n{row}\n")
    with pytest.raises(RepairlibError, match=told):
        read_board(places, others)
