"""Drawings: every body and every rule has one, with words, inside its sheet, the same each time."""

from __future__ import annotations

import os
import re
import subprocess
import sys
import xml.etree.ElementTree as ET
from itertools import combinations, product

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.polarity import FITTED, board_marks, check_polarity, families, part_marks
from repairlib.show import (
    BODIES,
    Picture,
    draw_board,
    draw_oxide_skin,
    draw_part,
    draw_polarity,
)

SVG = "{http://www.w3.org/2000/svg}"
DRAWN_RULES = [rule for rule in part_marks().values() if rule.body]
AT_THE_MARK, AT_THE_OTHER_END, NOT_DECIDED = FITTED


def texts(picture: Picture) -> list[ET.Element]:
    return ET.fromstring(picture.svg).findall(f"{SVG}text")


def words(picture: Picture) -> list[str]:
    return [text.text for text in texts(picture)]


def measured_width(text: ET.Element) -> float:
    """As a wide sans-serif font really sets it, not as the drawing estimates it."""
    from matplotlib.font_manager import FontProperties
    from matplotlib.textpath import TextToPath

    weight = text.get("font-weight", "normal")
    font = FontProperties(family="DejaVu Sans", weight=weight, size=float(text.get("font-size")))
    return TextToPath().get_text_width_height_descent(text.text, font, False)[0]


def box(text: ET.Element) -> tuple[float, float, float, float]:
    size, x, y = (float(text.get(name)) for name in ("font-size", "x", "y"))
    wide = measured_width(text)
    left = x - {"start": 0, "middle": wide / 2, "end": wide}[text.get("text-anchor")]
    return left, y - 0.8 * size, left + wide, y + 0.25 * size


def assert_text_is_inside_the_sheet(picture: Picture) -> None:
    _, _, wide, high = map(float, ET.fromstring(picture.svg).get("viewBox").split())
    for text in texts(picture):
        left, top, right, bottom = box(text)
        assert left >= 0 and top >= 0 and right <= wide and bottom <= high, text.text


def assert_no_text_covers_another(picture: Picture) -> None:
    boxes = [(text.text, box(text)) for text in texts(picture)]
    for (word, one), (other, two) in combinations(boxes, 2):
        apart = one[2] <= two[0] or two[2] <= one[0] or one[3] <= two[1] or two[3] <= one[1]
        assert apart, f"{word} and {other}"


@pytest.mark.parametrize("flip", [False, True])
@pytest.mark.parametrize("body", BODIES)
def test_part_is_drawn_with_words_inside_the_sheet(body, flip):
    picture = draw_part(body, "4.7µF\n50V", flip=flip)
    assert_text_is_inside_the_sheet(picture)
    assert_no_text_covers_another(picture)
    assert "4.7µF" in " ".join(words(picture))
    assert "Printed on it: 4.7µF, 50V." in picture.alt


@pytest.mark.parametrize("body", BODIES)
def test_marking_of_any_length_stays_on_the_part(body):
    picture = draw_part(body, "W" * 10_000 + "\n" + "8" * 60, labels=False)
    assert_text_is_inside_the_sheet(picture)
    assert any(word.endswith("…") for word in words(picture))


@pytest.mark.parametrize("body", BODIES)
def test_without_labels_no_end_is_given_away(body):
    picture = draw_part(body, "X", labels=False)
    for word in ("positive", "negative", "cathode", "anode", "pin 1", "either way"):
        assert word not in picture.alt
        assert word not in " ".join(words(picture))


@pytest.mark.parametrize("marking", ["a\x00b", "<&>\"'", "\ud800", "😀", "١٠٤"])
def test_any_text_gives_a_readable_svg(marking):
    picture = draw_part("disc", marking)
    ET.fromstring(picture.svg.encode("utf-8"))
    assert picture._repr_html_().count("<") == 1


def test_unknown_names_are_told():
    with pytest.raises(RepairlibError, match="moulded tantalum"):
        draw_part("sphere")
    with pytest.raises(RepairlibError, match="radial-stripe"):
        draw_polarity("sphere")
    with pytest.raises(RepairlibError, match="plus sign"):
        draw_polarity("radial-stripe", "sphere")


def test_no_family_without_a_drawing():
    drawn = {rule.family for rule in DRAWN_RULES}
    assert set(families()) - drawn == {"body shape not known"}
    assert "flat moulded chip" in draw_polarity("unknown-bar").alt


@pytest.mark.parametrize("rule", DRAWN_RULES, ids=lambda rule: rule.id)
def test_rule_names_a_mark_that_its_body_carries(rule):
    carried = rule.mark == "no mark" or rule.mark in draw_part(rule.body, mark=rule.drawn).alt
    assert carried


@pytest.mark.parametrize("flip", [False, True])
@pytest.mark.parametrize("rule", DRAWN_RULES, ids=lambda rule: rule.id)
def test_drawn_mark_says_what_the_table_says(rule, flip):
    picture = draw_part(rule.body, mark=rule.drawn, flip=flip)
    if rule.shows in ("positive", "negative", "cathode", "anode"):
        side = re.search(rf"{rule.mark} \((\w+), {rule.shows}\)", picture.alt).group(1)
        if rule.family != "bridge rectifier":
            assert re.search(rf"he {side} end is (the )?{rule.shows}", picture.alt)
            (x,) = (float(t.get("x")) for t in texts(picture) if t.text == rule.shows)
            assert side == ("left" if x < 330 else "right")
    elif rule.shows == "pin 1":
        assert re.search(rf"{rule.mark} \(\w+, .*pin 1\)", picture.alt)
    elif rule.shows == "unknown":
        assert re.search(rf"{rule.mark} \(\w+, (cannot tell|positive, usually)", picture.alt)
    else:
        assert "No polarity: either way round." in picture.alt


@pytest.mark.parametrize("rule", part_marks())
def test_polarity_drawing_has_words_inside_the_sheet(rule):
    for board, fitted in product(board_marks(), FITTED):
        picture = draw_polarity(rule, board, fitted)
        assert picture.alt.endswith(".")
        if board in ("plus sign", "filled or hatched half circle"):
            assert_text_is_inside_the_sheet(picture)
            assert_no_text_covers_another(picture)


@pytest.mark.parametrize("rule", DRAWN_RULES, ids=lambda rule: rule.id)
@pytest.mark.parametrize("fitted", [AT_THE_MARK, AT_THE_OTHER_END])
def test_drawn_ends_agree_with_the_verdict(rule, fitted):
    """The board's mark is on the left. The part's end drawn above it must fit the verdict."""
    for board in board_marks():
        finding = check_polarity(rule.family, rule.mark, board, fitted)
        alt = draw_polarity(rule.id, board, fitted).alt
        if finding.verdict == "cannot tell" or "he left end is " not in alt:
            continue
        left = alt.split("he left end is ")[1].removeprefix("the ").split()[0]
        assert (left == finding.board_shows) == (finding.verdict == "right"), alt


@pytest.mark.parametrize("rule", DRAWN_RULES, ids=lambda rule: rule.id)
def test_left_out_way_is_never_drawn_reversed(rule):
    for board in board_marks():
        assert "Reversed" not in draw_polarity(rule.id, board).alt


@pytest.mark.parametrize("rule", DRAWN_RULES, ids=lambda rule: rule.id)
def test_without_labels_neither_ends_nor_verdict_are_given_away(rule):
    for board, fitted in product(board_marks(), FITTED):
        picture = draw_polarity(rule.id, board, fitted, labels=False)
        assert_text_is_inside_the_sheet(picture)
        told = picture.alt + " ".join(words(picture))
        for word in ("positive", "negative", "athode", "anode", "pin 1", "everse", "Right this"):
            assert word not in told.replace(board, ""), told
        seen = board if board in ("no mark", "NP or BP") else f"{board} (left)"
        assert picture.alt.endswith(f"On the board: {seen}.")


def test_second_marks_are_said_below_the_verdict():
    half = {"board_mark": "filled or hatched half circle", "fitted": AT_THE_MARK}
    second = {"also_on_board": "plus sign", "also_on_board_at": "other end"}
    second |= {"also_on_part": "shorter lead", "also_on_part_at": "same end"}
    picture = draw_polarity("radial-stripe", **half, **second)
    assert_text_is_inside_the_sheet(picture)
    assert_no_text_covers_another(picture)
    told = "Also on the part: shorter lead, at the same end. Also on the board: plus sign, at the"
    assert told in words(picture)[-1] and told in picture.alt
    assert not any("Also" in word for word in words(draw_polarity("radial-stripe", **half)))


@pytest.mark.from_memory("leads of a used part say nothing; the stripe does")
@pytest.mark.parametrize("flip", [False, True])
def test_used_part_with_cut_leads_keeps_only_its_stripe(flip):
    picture = draw_part("radial", mark="cut leads", flip=flip)
    assert_text_is_inside_the_sheet(picture)
    assert_no_text_covers_another(picture)
    stripe, plus = ("right", "left") if flip else ("left", "right")
    assert f"stripe with minus signs ({stripe}, negative)" in picture.alt
    assert f"the {plus} end is positive" in picture.alt.lower()
    assert "longer lead" not in picture.alt and "shorter lead" not in picture.alt
    lowest = {}
    for end in ET.fromstring(picture.svg).findall(f"{SVG}polyline"):
        xs, ys = zip(*(p.split(",") for p in end.get("points").split()), strict=True)
        lowest[xs[0]] = max(map(float, ys)) if len(set(xs)) == 1 else 0
    side = max(lowest, key=lowest.get)  # the lead that reaches lowest is at the stripe
    assert (float(side) < 330) == (stripe == "left")


def test_oxide_skin_is_drawn_both_ways_round():
    picture = draw_oxide_skin()
    assert_text_is_inside_the_sheet(picture)
    assert_no_text_covers_another(picture)
    said = words(picture)
    assert said.index("Right way round") < said.index("The skin blocks.")
    assert said.index("Reversed") < said.index("The skin breaks up.")
    assert "the skin breaks up" in picture.alt


def board_of(count: int) -> list[dict]:
    """Rows of parts of many sizes, close together, in every state."""
    sizes, states = (5, 6.3, 8, 10, 12.5, 16), ("to do", "here", "behind", "keep")
    polarities = ("polar", "polar", "polar", "non-polar", "none")
    return [
        {
            "reference": f"C{number + 101}",
            "x_mm": 14 + 28 * (number % 10),
            "y_mm": 14 + 28 * (number // 10),
            "diameter_mm": sizes[number % 6],
            "polarity": polarities[number % 5],
            "angle_deg": 90 * number % 360,
            "state": states[number % 4],
            "stop": 0 if number % 4 == 3 else number + 1,
        }
        for number in range(count)
    ]


def test_forty_parts_are_legible():
    picture = draw_board(board_of(40), 280, 120)
    assert_text_is_inside_the_sheet(picture)
    assert_no_text_covers_another(picture)
    assert sum(word.startswith("C1") for word in words(picture)) == 40


def test_states_and_polarity_are_said_in_words_and_signs():
    picture = draw_board(board_of(8), 280, 120)
    said = " ".join(words(picture))
    assert "C102" in said and "NP" in words(picture)
    assert "number: the stop in the order of work" in said and "stop 2, here." in picture.alt
    assert "blue ring: you are here" in said
    assert "NP: bipolar, either way round" in said
    assert "dashed outline: not fitted by this plan" in said
    held = draw_board([{**board_of(8)[0], "open": True}], 280, 120)
    assert "C101?" in words(held)
    assert "? beside a name: on hold, look at it first" in " ".join(words(held))
    assert "on hold" in held.alt
    assert (
        "C101: 14 mm from the left, 14 mm from the top, positive end to the right, stop 1."
        in picture.alt
    )
    assert (
        "C104: 98 mm from the left, 14 mm from the top, non-polar, either way round, keep"
        in picture.alt
    )


@pytest.mark.parametrize(
    ("angle", "side"), [(0, "right"), (90, "top"), (180, "left"), (270, "bottom"), (360, "right")]
)
def test_plus_is_drawn_on_the_side_that_is_said(angle, side):
    part = dict(reference="C1", x_mm=50, y_mm=50, diameter_mm=30, polarity="polar", angle_deg=angle)
    picture = draw_board([part], 100, 100)
    assert f"positive end to the {side}" in picture.alt
    root = ET.fromstring(picture.svg)
    circle = root.find(f"{SVG}circle")
    plus = [line for line in root.findall(f"{SVG}polyline") if line.get("stroke") == "#a3271c"]
    points = [tuple(map(float, p.split(","))) for line in plus for p in line.get("points").split()]
    across = sum(x for x, _ in points) / len(points) - float(circle.get("cx"))
    down = sum(y for _, y in points) / len(points) - float(circle.get("cy"))
    expected = {"right": (1, 0), "left": (-1, 0), "top": (0, -1), "bottom": (0, 1)}[side]
    assert (round(across / 80), round(down / 80)) == expected


SIZED = [board_of(40), board_of(17)]


@pytest.mark.parametrize("parts", SIZED, ids=["40", "17"])
def test_no_name_moves_on_the_way(parts):
    def named(states):
        stated = [{**part, "state": state} for part, state in zip(parts, states, strict=True)]
        root = ET.fromstring(draw_board(stated, 280, 120).svg)
        return [
            (text.text, text.get("x"), text.get("y"))
            for text in root.findall(f"{SVG}text")
            if text.text.startswith("C1")
        ]

    count = len(parts)
    untouched = named(["to do"] * count)
    assert len(untouched) == count
    assert named(["here"] + ["to do"] * (count - 1)) == untouched
    assert named(["behind"] * (count // 2) + ["here"] + ["to do"] * (count - count // 2 - 1)) == (
        untouched
    )
    assert named(["behind"] * count) == untouched


def test_what_is_handed_on_stands_in_a_double_red_line():
    apart = [{**part, "handed_on": number in (0, 7)} for number, part in enumerate(board_of(8))]
    picture = draw_board(apart, 280, 120)
    root = ET.fromstring(picture.svg)
    red = [rect for rect in root.findall(f"{SVG}rect") if rect.get("stroke") == "#a3271c"]
    assert len(red) == 4
    assert any("leave it to a qualified person" in line for line in words(picture))
    assert picture.alt.count("on the mains or above 60 V dc") == 2
    plain = draw_board(board_of(8), 280, 120)
    assert not any("qualified" in line for line in words(plain))


def test_neighbours_that_are_handed_on_share_their_line():
    close = [
        {"reference": f"C{n}", "x_mm": 20 + 7 * n, "y_mm": 20, "diameter_mm": 6, "handed_on": True}
        for n in (1, 2, 3)
    ]
    root = ET.fromstring(draw_board(close, 100, 60).svg)
    red = [rect for rect in root.findall(f"{SVG}rect") if rect.get("stroke") == "#a3271c"]
    assert len(red) == 2


def test_unknown_polarity_is_shown_as_a_question():
    part = dict(reference="C1", x_mm=50, y_mm=50, diameter_mm=30, polarity="polar", angle_deg="")
    picture = draw_board([part], 100, 100)
    assert "?" in words(picture)
    assert "positive end not known" in picture.alt


def test_a_part_placed_twice_is_refused():
    part = {"reference": "C1", "x_mm": 5, "y_mm": 5, "diameter_mm": 5}
    with pytest.raises(RepairlibError, match="placed twice"):
        draw_board([part, {**part, "x_mm": 20}], 100, 100)


@pytest.mark.parametrize(
    ("change", "told"),
    [
        ({"x_mm": 500}, "off the board"),
        ({"y_mm": "here"}, "needs y_mm as a number"),
        ({"diameter_mm": None}, "needs width_mm as a number"),
        ({"polarity": "plus"}, "not a polarity"),
        ({"state": "lost"}, "not a state"),
    ],
)
def test_board_data_that_cannot_be_drawn(change, told):
    part = {"reference": "C1", "x_mm": 5, "y_mm": 5, "diameter_mm": 5, **change}
    with pytest.raises(RepairlibError, match=told):
        draw_board([part], 100, 100)


def test_the_same_bytes_in_another_process():
    code = (
        "from repairlib.show import *; import hashlib;"
        "from repairlib.polarity import part_marks;"
        "text = ''.join(draw_part(b, '104').svg for b in BODIES)"
        " + ''.join(draw_polarity(r).svg for r in part_marks()) + draw_oxide_skin().svg;"
        "print(hashlib.sha256(text.encode()).hexdigest())"
    )
    runs = [
        subprocess.run(
            [sys.executable, "-c", code],
            env={**os.environ, "PYTHONHASHSEED": seed},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in ("1", "2")
    ]
    assert runs[0] == runs[1] != ""


def test_saved_file_is_the_svg(tmp_path):
    picture = draw_part("radial", "100µF")
    picture.save(tmp_path / "part.svg")
    assert (tmp_path / "part.svg").read_bytes() == picture.svg.encode("utf-8")


def test_plan_draws_no_bar_on_flat_parts():
    """A dark bar means positive on a flat chip, so the plan shows signs only."""
    place = dict(x_mm=50, y_mm=50, width_mm=30, height_mm=12)
    part = dict(reference="C1", polarity="polar", angle_deg=0, **place)
    root = ET.fromstring(draw_board([part], 100, 100).svg)
    assert {rect.get("fill") for rect in root.findall(f"{SVG}rect")} <= {"#ffffff", "#e3efe3"}
    assert not root.findall(f"{SVG}polygon")
