"""Inlets, a torn socket, and power on its way: their words and their letters."""

import pytest

from repairlib.connectors import power_path
from repairlib.show import draw_inlets, draw_power_path, draw_torn_socket
from tests.show.test_drawings import assert_no_text_covers_another, assert_text_is_inside_the_sheet
from tests.show.test_legible import assert_legible

SHEET = {"single": "5 A", "new": "30 mΩ"}
PATHS = [
    (power_path("3 A", 24, "1.5 m", "12 V", measured="120 mΩ", **SHEET), 11),
    (power_path("3 A", 20, "1.5 m", "12 V", measured="30 mΩ", **SHEET), 11),
    (power_path("0.123456 A", 28, "12.34 m", "59.87 V", **SHEET), None),
    (power_path("11 A", 16, "10 m", "900 V", measured="9.5 Ω", single=60, new=5), 899.5),
]
every_strip = pytest.mark.parametrize("draw", [draw_inlets, draw_torn_socket])


@every_strip
def test_strips_are_legible_and_say_in_words_what_they_show(draw):
    strip = draw()
    for one in strip.shown:
        assert_legible(one.picture)
        assert_text_is_inside_the_sheet(one.picture)
        assert_no_text_covers_another(one.picture)
    assert len({one.picture.alt for one in strip.shown}) == len(strip.shown) == 4
    assert strip._repr_html_() == draw()._repr_html_()


@pytest.mark.parametrize(("path", "needs"), PATHS)
def test_the_way_of_power_is_legible(path, needs):
    picture = draw_power_path(path, needs)
    assert_legible(picture)
    assert_text_is_inside_the_sheet(picture)
    assert_no_text_covers_another(picture)
    assert picture.svg == draw_power_path(path, needs).svg


def test_what_is_lost_and_what_arrives_stands_in_the_words():
    worn, good = (draw_power_path(*one) for one in PATHS[:2])
    said = worn.alt.replace("\xa0", " ")
    assert "12 V from the supply. The lead takes 757.9 mV" in said
    assert "360 mV, 1.08 W" in said and "10.79 V arrive" in said and "too little" in said
    assert "worse contact" in worn.svg
    assert "too little" not in good.alt and "worse contact" not in good.svg


@pytest.mark.common_practice
def test_both_halves_of_a_burnt_contact_go():
    (burnt,) = (one for one in draw_inlets().shown if one.name == "Burnt")
    assert "Both halves go" in burnt.words
