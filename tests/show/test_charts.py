"""The chart of life against temperature: labelled, said in words, the same bytes on each run."""

import subprocess
import sys
from xml.etree import ElementTree

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.show.charts import RatedLife, draw_life

PARTS = [RatedLife("old", 2000, 85, "aluminium general 85"), RatedLife("new", 2000)]


def shown_texts(picture):
    root = ElementTree.fromstring(picture.svg)
    return [text.text for text in root.iter("{http://www.w3.org/2000/svg}text")]


def test_axes_curves_and_the_cap_are_labelled():
    texts = shown_texts(draw_life(PARTS, at=45))
    for words in (
        "temperature of the air around the part (°C)",
        "expected life (years, always on)",
        "15 years: no longer life is believed",
        "inside the set: 45 °C",
        "old",
        "2000 h at 85 °C",
        "new",
        "2000 h at 105 °C",
    ):
        assert words in texts


@pytest.mark.published(
    "Cosel, technical information 100: twice the life for each 10 °C less; Beckhoff, "
    "PS9011-2420-0001, Lifetime expectancy: 15 years at most"
)
def test_the_words_give_the_lives():
    """By hand: 2000 h × 16 at 45 °C are 32 000 h, 3.7 years; × 64 are 14.6 years."""
    words = draw_life([*PARTS, RatedLife("long", 5000)], at=45).alt
    assert "old (2000 h at 85 °C): 3.7 years at 45 °C, 0.9 years at 65 °C" in words
    assert "new (2000 h at 105 °C): 14.6 years at 45 °C, 3.7 years at 65 °C" in words
    assert "long (5000 h at 105 °C): more than 15 years at 45 °C" in words


@pytest.mark.behaviour
def test_the_words_give_the_mark():
    words = draw_life(PARTS, at=45).alt
    assert "marks 45 °C" in words


def test_same_bytes_in_another_process():
    script = (
        "import sys; from repairlib.show.charts import *; "
        "sys.stdout.buffer.write(draw_life([RatedLife('new', 2000)], 45).svg.encode())"
    )
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, check=True)
    assert done.stdout.decode() == draw_life([RatedLife("new", 2000)], 45).svg
    assert "<dc:date>" not in done.stdout.decode()


def test_settings_of_matplotlib_are_left_alone():
    import matplotlib

    before = dict(matplotlib.rcParams)
    draw_life(PARTS)
    assert dict(matplotlib.rcParams) == before


@pytest.mark.parametrize(
    ("parts", "at"),
    [
        ([], None),
        (PARTS * 4, None),
        ([RatedLife("cold", 2000, 20)], None),
        ([RatedLife("film", 2000, 105, "film polyester")], None),
        ([RatedLife("no life", 0)], None),
        (PARTS, 300),
        (PARTS, float("nan")),
    ],
)
def test_what_cannot_be_drawn_is_said(parts, at):
    with pytest.raises(RepairlibError):
        draw_life(parts, at)


def test_signs_in_a_label_are_only_text():
    picture = draw_life([RatedLife("<C1> & $x_1^2$", 2000)])
    assert "<C1> & $x_1^2$" in shown_texts(picture)
