"""Parts, and places on a board, side by side."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.show import draw_places, draw_row


def test_every_part_and_its_words_are_drawn_and_said():
    picture = draw_row(("disc", "104", "ceramic"), ("can", "220\nE", "can"))
    for words in ("104", "220", ">E<", "ceramic", "can"):
        assert words in picture.svg
    assert picture.alt.count("\n") == 1
    assert "Printed on it: 220, E." in picture.alt


def test_the_same_row_is_the_same_bytes():
    part = ("radial", "1000µF\n16V", "radial")
    assert draw_row(part, part).svg == draw_row(part, part).svg


def test_the_ends_carry_their_signs_where_they_are_asked_for():
    part = ("radial", "10µF\n50V", "stripe: minus")
    assert ">+<" not in draw_row(part).svg
    signed = draw_row(part, ends=True)
    assert ">+<" in signed.svg and ">−<" in signed.svg
    assert "the right end is positive" in signed.alt
    either_way = draw_row(("non-polar", "10µF", "NP"), ends=True)
    assert ">+<" not in either_way.svg


def test_unknown_body_is_named():
    with pytest.raises(RepairlibError, match="'brick'"):
        draw_row(("brick", "104", "a brick"))


def test_every_place_and_its_mark_are_drawn_and_said():
    picture = draw_places(
        ("radial", "plus sign", "trust it"),
        ("diode", "letter K", "a diode"),
        ("can", "no mark", "?"),
    )
    assert ">K<" in picture.svg and picture.svg.count(">board<") == 3
    assert picture.alt.split("\n") == [
        "trust it: An empty place on a board. On the board: plus sign (left).",
        "a diode: An empty place on a board. On the board: letter K (left).",
        "?: An empty place on a board. On the board: no mark.",
    ]


def test_words_under_a_place_keep_to_their_column():
    wide = draw_places(("radial", "square pad", "a square pad is pad 1 and may be anything else"))
    assert wide.svg.count('font-size="16"') == 2


def test_unknown_place_or_mark_is_named():
    with pytest.raises(RepairlibError, match="'brick'"):
        draw_places(("brick", "plus sign", "a brick"))
    with pytest.raises(RepairlibError, match="plus sign"):
        draw_places(("radial", "smudge", "a smudge"))
