"""Parts side by side."""

import pytest

from repairlib.drawings import draw_row
from repairlib.errors import RepairlibError


def test_every_part_and_its_words_are_drawn_and_said():
    picture = draw_row(("disc", "104", "ceramic"), ("can", "220\nE", "can"))
    for words in ("104", "220", ">E<", "ceramic", "can"):
        assert words in picture.svg
    assert picture.alt.count("\n") == 1
    assert "Printed on it: 220, E." in picture.alt


def test_the_same_row_is_the_same_bytes():
    part = ("radial", "1000µF\n16V", "radial")
    assert draw_row(part, part).svg == draw_row(part, part).svg


def test_unknown_body_is_named():
    with pytest.raises(RepairlibError, match="'brick'"):
        draw_row(("brick", "104", "a brick"))
