"""The empty place of a part: its words, its letters, and nothing that was not said."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.missing_parts import read_place
from repairlib.show import Beside, draw_missing_place, draw_place
from repairlib.show.missing_place import MARKS, MOST_BESIDE
from tests.show.test_drawings import assert_no_text_covers_another, assert_text_is_inside_the_sheet
from tests.show.test_legible import SMALLEST, assert_legible, smallest_shown

BESIDE = [Beside("U2 regulator", "left pad"), Beside("C213 100 nF", "right pad"), Beside("fan")]
MANY = [Beside("W" * 60, "left pad")] * 3 + [Beside("many words " * 9, "right pad")] * 3
BRIDGED = {"torn": "left pad", "landing": "test point TP4", "bridged": True}
SCENES = {
    "empty": {"reference": "C7", "left": "+5 V", "right": "ground"},
    "said nothing": {},
    "neighbours": {"reference": "C214", "mark": "plus sign", "beside": BESIDE, "twin": "22 µF"},
    "torn": {"reference": "C7", "mark": "white bar", "torn": "right pad", "landing": "via"},
    "bridged": {"reference": "R3", "mark": "dot", "beside": BESIDE, "twin": "empty", **BRIDGED},
    "long": {
        "reference": "W" * 40,
        "left": "W" * 60,
        "right": "long words " * 12,
        "beside": MANY,
        "twin": "10 µF 16 V tantalum chip, case B, bar to the left, and more",
        "torn": "right pad",
        "landing": "L" * 50,
        "bridged": True,
    },
}


@pytest.mark.parametrize("given", SCENES.values(), ids=list(SCENES))
def test_every_scene_can_be_read(given):
    picture = draw_missing_place(**given)
    assert_legible(picture)
    assert_text_is_inside_the_sheet(picture)
    assert_no_text_covers_another(picture)
    assert smallest_shown(picture) >= SMALLEST
    assert picture.svg == draw_missing_place(**given).svg


@pytest.mark.behaviour
def test_the_words_say_what_is_drawn_and_no_more():
    alt = draw_missing_place("C7", "+5 V", "ground", mark="plus sign", beside=BESIDE, **BRIDGED).alt
    for words in (
        "The empty place C7, with two pads. Left pad: +5 V. Right pad: ground.",
        "Printed: plus sign at the left pad.",
        "Near it: U2 regulator, on the net of the left pad.",
        "Near it: fan.",
        "The left pad is torn off.",
        "A wire, glued down, goes from there to test point TP4.",
    ):
        assert words in alt
    plain = draw_missing_place("C7").alt
    for word in ("Printed", "Near", "torn", "wire", "twin", "positive"):
        assert word not in plain
    assert plain.count("net not known") == 2


@pytest.mark.behaviour
@pytest.mark.parametrize("mark", MARKS)
def test_a_mark_is_drawn_at_its_own_pad(mark):
    left, right = (
        draw_missing_place(mark=mark, mark_at=f"{side} pad") for side in ("left", "right")
    )
    assert left.svg != right.svg != draw_missing_place().svg
    assert f"Printed: {mark} at the right pad." in right.alt


@pytest.mark.behaviour
def test_a_typed_place_is_drawn():
    place = read_place("C? between +3.3 V and ground, near regulator U2, twin channel has 10 µF")
    picture = draw_place(place, mark="plus sign")
    assert_no_text_covers_another(picture)
    assert "Left pad: +3.3 V. Right pad: ground." in picture.alt
    assert "On the twin: 10 µF." in picture.alt.replace("\xa0", " ")
    assert "net not known" in draw_place(read_place("R5, 2 pads 0603")).alt


@pytest.mark.behaviour
@pytest.mark.parametrize(
    "given",
    [
        {"mark": "smiley"},
        {"mark": "dot", "mark_at": "top pad"},
        {"torn": "both"},
        {"landing": "via"},
        {"torn": "left pad", "bridged": True},
        {"beside": [Beside("U1")] * (MOST_BESIDE + 1)},
        {"beside": [Beside("U1", "somewhere")]},
    ],
)
def test_what_cannot_be_drawn_is_one_line(given):
    with pytest.raises(RepairlibError) as refused:
        draw_missing_place(**given)
    assert "\n" not in str(refused.value)
