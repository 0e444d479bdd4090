"""Families of parts: each row is drawn, fits its sheet, and its markings read as its words say."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import brief
from repairlib.markings import read
from repairlib.show import FAMILIES, draw_family
from tests.show.test_drawings import assert_no_text_covers_another, assert_text_is_inside_the_sheet


@pytest.mark.parametrize("name", FAMILIES)
def test_every_family_is_drawn_with_its_words(name):
    picture = draw_family(name)
    assert len(picture.alt.splitlines()) == len(FAMILIES[name])
    assert_text_is_inside_the_sheet(picture)
    assert_no_text_covers_another(picture)


@pytest.mark.parametrize("part", FAMILIES["chip resistors"], ids=lambda part: part[1])
def test_chip_resistors_read_as_the_words_under_them(part):
    _, marking, words = part
    value = brief(read(marking, "chip-resistor")[0].value, "Ω").replace("\xa0", " ")
    assert value in words.split(": ")


def test_an_unknown_family_is_refused_in_one_line():
    with pytest.raises(RepairlibError, match="no family has this name"):
        draw_family("valves")
