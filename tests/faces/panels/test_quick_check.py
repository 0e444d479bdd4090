"""The quick-check panel without a browser: type, and look at what it would show."""

from __future__ import annotations

import base64
import re

import pytest

from repairlib.faces.panels.marking_reader import PARTS, quick_check


@pytest.fixture
def panel():
    return quick_check()


def shown(panel) -> str:
    return panel.answer.value.replace("\xa0", " ")


def drawn(panel) -> str:
    """The SVG text of the drawing."""
    data = re.search(r"base64,([A-Za-z0-9+/=]+)", panel.picture.value).group(1)
    return base64.b64decode(data).decode()


@pytest.mark.published(
    "KEMET, Ceramic Open Mode Capacitors, Capacitor ordering information: 104; "
    "Sanyo, DP19649 service manual, page 41: K"
)
def test_typing_gives_value_and_tolerance(panel):
    panel.marking.value = "104K"
    assert "100 nF ±10 %" in shown(panel)


@pytest.mark.behaviour
def test_typing_gives_part_and_why(panel):
    panel.marking.value = "104K"
    assert "ceramic or film capacitor" in shown(panel)
    assert "10 and four zeros" in shown(panel)


def test_each_key_stroke_is_answered(panel):
    answers = []
    for typed in ("1", "10", "104", "104K"):
        panel.marking.value = typed
        answers.append(shown(panel))
    assert len(set(answers)) == 4


def test_source_is_named_once(panel):
    panel.marking.value = "104K"
    assert shown(panel).count("IEC 60062") == 1


def test_every_plausible_reading_is_listed(panel):
    panel.marking.value = "220"
    assert shown(panel).count("<li>") > 1
    assert "It can also mean" in shown(panel)


def test_part_carries_the_marking(panel):
    panel.marking.value = "104K"
    assert ">104K<" in drawn(panel)


def test_chosen_part_is_drawn_and_decides(panel):
    panel.marking.value = "107"
    panel.part.value = "tantalum"
    assert "100 µF" in shown(panel)
    assert "moulded block" in panel.picture.value


def test_marking_of_two_words_is_drawn_on_two_lines(panel):
    panel.part.value = "radial"
    panel.marking.value = "1000µF 16V"
    assert ">1000µF<" in drawn(panel) and ">16V<" in drawn(panel)


@pytest.mark.published("Vishay Draloric/Beyschlag, Resistor Color Card, after IEC 60062")
def test_bands_are_read(panel):
    panel.marking.value = "yellow violet red gold"
    assert "4.7 kΩ ±5 %" in shown(panel)


@pytest.mark.behaviour
def test_bands_are_drawn_with_their_names(panel):
    panel.marking.value = "yellow violet red gold"
    assert "Bands from left to right: yellow, violet, red, gold." in panel.picture.value
    assert ">violet<" in drawn(panel)


def test_what_else_bands_could_be_stands_folded_below(panel):
    panel.marking.value = "yellow-violet-red-gold"
    assert "band 3 orange, not red: 47 kΩ" in shown(panel)
    assert "<details>" in shown(panel)
    panel.marking.value = "104K"
    assert "What else" not in shown(panel)


def test_fuse_is_shown_with_its_cautions_and_no_substitute(panel):
    panel.marking.value = "T3.15AL250V"
    assert "only by one of the same rating and class" in shown(panel)
    assert "Mains voltage can kill" in shown(panel)
    assert "glass tube" in panel.picture.value


@pytest.mark.parametrize(
    ("kind", "looks"),
    [("resistor", "small body"), ("chip-resistor", "black block"), ("inductor", "rounded body")],
)
def test_chosen_kind_is_drawn(panel, kind, looks):
    panel.part.value = kind
    assert looks in panel.picture.value


def test_nothing_typed_asks_for_a_marking(panel):
    assert "Type what is printed on the part" in shown(panel)
    panel.marking.value = "   "
    assert "Type what is printed on the part" in shown(panel)


@pytest.mark.parametrize(
    "typed", ["hello", "104X", "<script>x</script>", "\x00", "١٠٤", "🔧" * 9, "9" * 100_000]
)
def test_nonsense_gets_one_calm_sentence(panel, typed):
    panel.marking.value = typed
    assert "Cannot be read yet" in shown(panel)
    assert "Accepted:" in shown(panel)
    assert "<script>" not in shown(panel) + panel.picture.value


def test_mending_the_marking_takes_the_complaint_away(panel):
    panel.marking.value = "104X"
    panel.marking.value = "104K"
    assert "Cannot" not in shown(panel)


@pytest.mark.parametrize("part", [kind for _, kind in PARTS])
def test_every_part_can_be_chosen(panel, part):
    panel.marking.value = "104K"
    panel.part.value = part
    assert shown(panel) and drawn(panel)


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("typed", "looks"),
    [
        ("0.22 X2 275V", "square plastic box, full of print"),
        ("1000µF 35V", "round aluminium can standing"),
        ("BAT85", "small glass cylinder"),
        ("BC557", "half-cylinder on three leads"),
        ("NTC 10D-9", "dark disc"),
    ],
)
def test_the_body_follows_from_what_was_read(panel, typed, looks):
    panel.marking.value = typed
    assert looks in panel.picture.value


@pytest.mark.parametrize("typed", ["", "hello", "ZZZ 47/16V !!"])
def test_where_nothing_was_read_no_part_is_suggested(panel, typed):
    panel.marking.value = typed
    assert "what part is it?" in drawn(panel)


def test_names_of_colours_are_written_beside_the_bands(panel):
    panel.marking.value = "brown black red gold"
    assert ">brown<" in drawn(panel)
