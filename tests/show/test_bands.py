"""Drawn bands: every band is named, in the order in which it lies, and nothing is clipped."""

from __future__ import annotations

import re
from functools import partial
from itertools import pairwise

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.markings.colours import NAMES
from repairlib.show import draw_bands, draw_part
from repairlib.show.bands import CHOKE, CLOSE, INKS, TAN
from tests.show.test_drawings import (
    assert_no_text_covers_another,
    assert_text_is_inside_the_sheet,
    words,
)

LONG = ["orange", "yellow", "orange", "yellow", "orange", "violet"]


def test_every_colour_of_the_code_has_an_ink():
    assert set(INKS) == set(NAMES)
    assert len(set(INKS.values())) == len(INKS)


@pytest.mark.parametrize("flip", [False, True])
@pytest.mark.parametrize("labels", [False, True])
@pytest.mark.parametrize("body", ["resistor", "inductor", "fuse"])
@pytest.mark.parametrize("count", range(1, 7))
def test_bands_are_named_in_words(body, count, labels, flip):
    bands = LONG[:count]
    picture = draw_part(body, "-".join(bands), labels=labels, flip=flip)
    assert_text_is_inside_the_sheet(picture)
    assert_no_text_covers_another(picture)
    seen = bands[::-1] if flip else bands
    assert [word for word in words(picture) if word in NAMES] == (seen if labels else [])
    order = ", ".join(bands[::-1] if flip else bands)
    assert f"Bands from left to right: {order}." in picture.alt
    assert "Printed" not in picture.alt


@pytest.mark.parametrize("draw", [draw_bands, partial(draw_part, "resistor")])
def test_names_are_left_off_and_said_all_the_same(draw):
    picture = draw("green-blue-orange-gold", named=False)
    assert not set(words(picture)) & set(NAMES)
    assert "green, blue, orange, gold" in picture.alt
    assert set(words(draw("green-blue-orange-gold", named=True))) >= {"green", "gold"}


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("bands", "fill"),
    [
        ("brown-black-red-gold", TAN),
        ("brown-black-red", TAN),
        ("red-red-brown-silver", TAN),
        ("brown-black-black-red-brown", CLOSE),
        ("red-violet-red-red", CLOSE),
        ("red-violet-black-orange-brown-red", CLOSE),
    ],
)
def test_close_resistors_are_blue_and_others_tan(bands, fill):
    for picture in (draw_part("resistor", bands), draw_bands(bands)):
        assert fill in picture.svg and ({TAN, CLOSE} - {fill}).pop() not in picture.svg


@pytest.mark.parametrize("count", range(1, 7))
def test_bands_are_as_high_as_the_body_of_an_inductor(count):
    svg = draw_part("inductor", "-".join(["red"] * count), labels=False).svg
    heights = re.findall(rf'height="([\d.]+)"[^>]*fill="{INKS["red"]}"', svg)
    (body,) = re.findall(rf'height="([\d.]+)"[^>]*fill="{CHOKE}"', svg)
    assert heights == [body] * count


@pytest.mark.parametrize("body", ["resistor", "inductor", "fuse"])
def test_bands_lie_on_the_body_in_order(body):
    picture = draw_part(body, "brown-black-red-gold", labels=False)
    inks = "|".join(INKS[colour] for colour in ("brown", "black", "red", "gold"))
    drawn = re.findall(rf'x="([\d.]+)"[^>]*fill="({inks})"', picture.svg)
    assert [ink for _, ink in drawn] == inks.split("|")
    xs = [float(x) for x, _ in drawn]
    assert xs == sorted(xs)
    assert xs[3] - xs[2] > xs[1] - xs[0]  # the tolerance band stands apart


@pytest.mark.parametrize("labels", [False, True])
def test_painted_body(labels):
    text = "body orange end violet dot yellow tolerance silver"
    picture = draw_part("resistor", text, labels=labels)
    assert_text_is_inside_the_sheet(picture)
    assert_no_text_covers_another(picture)
    for name in ("body orange", "end violet", "dot yellow", "tolerance silver"):
        assert name in picture.alt and (name in words(picture)) == labels


def test_no_band_stands_apart_at_even_distances():
    picture = draw_part("resistor", "red-red-red-red-red", labels=False, mark="even distances")
    assert_no_text_covers_another(picture)
    xs = [
        float(x) for x in re.findall(rf'<rect x="([\d.]+)"[^>]*fill="{INKS["red"]}"', picture.svg)
    ]
    assert {round(b - a, 1) for a, b in pairwise(xs)} == {30}


def test_text_on_a_resistor_is_printed():
    picture = draw_part("resistor", "5W\n10RJ", labels=False)
    assert "Printed on it: 5W, 10RJ." in picture.alt


def test_seven_colours_are_text():
    assert "Printed on it" in draw_part("resistor", "-".join(["red"] * 7)).alt


def test_large_drawing_with_meanings():
    picture = draw_bands(
        "red-violet-black-orange-brown-red", *("2", "7", "0"), "times 1000", "±1 %", "50 ppm/K"
    )
    assert_text_is_inside_the_sheet(picture)
    assert_no_text_covers_another(picture)
    assert "orange (times 1000)" in picture.alt


@pytest.mark.parametrize(
    ("text", "meanings", "body"),
    [
        ("mauve-red", (), "resistor"),
        ("", (), "resistor"),
        ("red-red-red-red-red-red-red", (), "resistor"),
        ("red-red", ("2",), "resistor"),
        ("red-red", (), "can"),
    ],
)
def test_what_cannot_be_drawn(text, meanings, body):
    with pytest.raises(RepairlibError):
        draw_bands(text, *meanings, body=body)
