"""The drawn practice board: all has its own room, and what is drawn is also said."""

import re

import pytest

from repairlib.bench import (
    Fitted,
    Reading,
    begin,
    demo_set,
    on_mains_side,
    read_fault,
    read_set,
)
from repairlib.bench.practice_set import DEMO
from repairlib.show.box import Box
from repairlib.show.canvas import text_width
from repairlib.show.practice_board import draw_practice_board
from repairlib.show.practice_layout import LETTERS, lay_out, point_box
from tests.bench.own_board import BOARD

SETS = {title: demo_set(title) for title in DEMO} | {"own": BOARD}
LAYOUTS = {title: lay_out(of) for title, of in SETS.items()}
RADIO = SETS["desk radio"]
every_set = pytest.mark.parametrize("title", SETS)


def drawn(state, **more):
    return draw_practice_board(state, layout=LAYOUTS["desk radio"], **more)


def rooms(title):
    """The room of each body, name and point, by what it is."""
    layout = LAYOUTS[title]
    found = {("body", name): box for name, box in layout.parts.items()}
    for name, spot in layout.names.items():
        half = text_width(name, LETTERS, True) / 2
        found["name", name] = Box(spot.x - half, spot.y - 8, spot.x + half, spot.y + 8)
    for name, spot in layout.points.items():
        found["point", name] = point_box(spot, name)
    return found


@every_set
@pytest.mark.behaviour
def test_nothing_on_the_board_hides_another(title):
    found, layout = rooms(title), LAYOUTS[title]
    whole = Box(0, 0, layout.wide, layout.high)
    for one, box in found.items():
        assert box.inside(whole), one
        for other, room in found.items():
            own = {one[0], other[0]} == {"body", "name"} and one[1] == other[1]
            assert one >= other or own or not box.overlaps(room), (one, other)


@every_set
@pytest.mark.behaviour
def test_the_mains_side_stands_behind_its_line_with_its_points_and_nothing_else(title):
    of, layout = SETS[title], LAYOUTS[title]
    for part in of.parts:
        behind = any(layout.parts[part.name].inside(fence) for fence in layout.fences)
        assert behind == part.mains, part.name
    for name, spot in layout.points.items():
        behind = any(point_box(spot, name).inside(fence) for fence in layout.fences)
        assert behind == on_mains_side(of, name), name


@every_set
@pytest.mark.behaviour
def test_letters_are_large_enough_where_the_panel_shows_the_board(title):
    state = begin(SETS[title], (), "demo")
    svg = draw_practice_board(state, layout=LAYOUTS[title]).svg
    sizes = [float(size) for size in re.findall(r'font-size="([\d.]+)"', svg)]
    assert sizes and 0.6 * min(sizes) >= 12  # as bench_panel.js cuts it


@pytest.mark.behaviour
def test_what_was_done_to_a_place_is_drawn_and_said():
    sound = begin(RADIO, (), "demo")
    before = drawn(sound)
    for changes, words in (
        ({"fitted": None}, "its place is empty"),
        ({"pads": "lifted"}, "has come off the board"),
        ({"pads": "bridged with a wire"}, "a wire bridges"),
        ({"pads": "solder left on"}, "old solder is left"),
        ({"fitted": Fitted(new=True, turned=True)}, "its plus end points down"),
    ):
        after = drawn(sound.with_place("C1", **changes))
        assert words in after.alt and words not in before.alt
        assert after.svg.replace(after.alt, "") != before.svg.replace(before.alt, "")


@pytest.mark.behaviour
def test_a_reversed_part_and_a_turned_one_look_alike_and_both_ways_differ():
    fault = read_fault("C1 reversed", RADIO)
    sound = begin(RADIO, (), "demo")
    turned = drawn(sound.with_place("C1", fitted=Fitted(turned=True)))
    reversed_ = drawn(begin(RADIO, (fault,), "demo"))
    ways = [
        re.findall(r'transform="([^"]+)"', one.svg) for one in (drawn(sound), turned, reversed_)
    ]
    assert ways[0] != ways[1] == ways[2]
    assert "its plus end points down" in turned.alt and "its plus end points down" in reversed_.alt


@pytest.mark.behaviour
def test_a_sign_that_is_told_is_drawn_too():
    faults = (read_fault("C1 dried out to 20 %, ESR x 10", RADIO),)
    for seed in map(str, range(12)):
        picture, sound = (drawn(begin(RADIO, some, seed)) for some in (faults, ()))
        bulged = "its top is bulged" in picture.alt
        assert bulged == (picture.svg.count("<circle") > sound.svg.count("<circle"))


@pytest.mark.behaviour
def test_probes_are_drawn_where_they_are():
    state = begin(RADIO, (), "demo")
    reading = Reading("multimeter, V dc", ("out", "0"), "9.01 V", 9.01, "V")
    probed = drawn(state, reading=reading)
    assert "red on out, black on 0" in probed.alt
    assert probed.svg.count(">+</text>") == 1 and probed.svg.count(">−</text>") == 1


@pytest.mark.behaviour
def test_a_board_of_any_size_and_kind_is_drawn():
    typed = """title: tiny
says: Dark.
works: Light.
feed: P1, inlet dc 0, 9 V, 100 mA
rail: lamp, at out, 4.5 V, 20 %
loads: I1
board: 300 x 40
fault: R1 open
part,is,from,to,value,more,x,y,wide,high
P1,adapter,dc,0,9 V,limit 1 A,15,20,8,8
R1,resistor,dc,out,90 Ω,,130,20,8,3
I1,lamp,out,0,50 mA,load,250,20,6,6
"""
    assert "P1, adapter" in draw_practice_board(begin(read_set(typed), (), "demo")).alt
