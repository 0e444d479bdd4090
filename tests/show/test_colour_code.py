"""The table of colours: each in its colour, and what it says agrees with how bands are read."""

import pytest

from repairlib.markings import read
from repairlib.show import draw_colour_code
from repairlib.show.bands import INKS
from repairlib.show.colour_code import CODE
from tests.documents import document


def test_every_colour_is_seen_and_said():
    picture = draw_colour_code()
    for colour, *_ in CODE:
        assert f'fill="{INKS[colour]}"' in picture.svg and f"{colour}: " in picture.alt


# As the card has it, typed by hand.
@pytest.mark.published(document("Vishay colour card", "figures"))
def test_figures_are_those_of_the_card():
    figures = {colour: figure for colour, figure, *_ in CODE if figure}
    names = "black brown red orange yellow green blue violet grey white"
    assert figures == dict(zip(names.split(), "0123456789", strict=True))


@pytest.mark.parametrize("colour", [row[0] for row in CODE if row[3].startswith("±")])
def test_tolerances_are_those_that_bands_are_read_by(colour):
    said = next(row[3] for row in CODE if row[0] == colour)
    readings = read(f"brown-black-black-brown-{colour}", "resistor")
    assert said in str(readings[0].tolerance).replace("\xa0", " ")
