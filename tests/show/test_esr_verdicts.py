"""Parts alike on one scale of ESR: said as they are judged, and drawn so that it can be read."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.show import draw_esr_verdicts
from tests.documents import document
from tests.show.test_drawings import assert_no_text_covers_another, assert_text_is_inside_the_sheet

PART = "aluminium general 105", "100 µF", "25 V"
FOUR = [
    ("C1", "104 µF", "1.2 Ω"),
    ("C2", "96 µF", "2.6 Ω"),
    ("C3", "95 µF", "4.9 Ω"),
    ("C4", "99 µF", "3.6 Ω"),
]


@pytest.mark.published(document("Lelon RGA", "25 V: tan δ 0.14; endurance: ±20 %, 200 % of tan δ"))
def test_each_part_has_its_verdict():
    """By hand: 0.14 / (2 π × 120 Hz × 100 µF) = 1.857 Ω, twice that 3.714 Ω; ± 5 % and 0.02 Ω."""
    said = draw_esr_verdicts(*PART, FOUR).alt.split("\n")
    assert "at most 1.857 Ω, a worn one at most 3.714 Ω" in said[0].replace("\xa0", " ")
    assert [line.split(": ")[2] for line in said[1:]] == [
        "fit.",
        "marginal, by ESR.",
        "replace, by ESR.",
        "cannot tell, by ESR.",
    ]


@pytest.mark.behaviour
def test_a_better_meter_tells_more():
    said = draw_esr_verdicts(*PART, FOUR[3:], "1 %").alt
    assert said.endswith("C4: 99 µF, 3.6 Ω: marginal, by ESR.")


def test_the_reading_that_decides_is_named():
    parts = [("C1", "50 µF", "1.2 Ω"), ("C2", "50 µF", "9 Ω"), ("C3", "", "1.2 Ω")]
    said = draw_esr_verdicts(*PART, parts).alt.split("\n")
    assert said[1].endswith("replace, by capacitance.")
    assert said[2].endswith("replace, by capacitance and ESR.")
    assert said[3] == "C3: 1.2 Ω: fit."


@pytest.mark.parametrize("esr", ["0 Ω", "1 mΩ", "1.857 Ω", "50 Ω", "1 MΩ"])
def test_words_are_on_the_sheet_and_apart(esr):
    picture = draw_esr_verdicts(*PART, [("your part", "100 µF", esr), *FOUR])
    assert_text_is_inside_the_sheet(picture)
    assert_no_text_covers_another(picture)
    assert picture.svg == draw_esr_verdicts(*PART, [("your part", "100 µF", esr), *FOUR]).svg


def test_what_cannot_be_drawn_is_refused():
    for parts in ([], FOUR * 3):
        with pytest.raises(RepairlibError, match="1 to 8 parts"):
            draw_esr_verdicts(*PART, parts)
    film = "film polyester", "100 nF", "63 V", [("C1", "99 nF", "1 Ω")]
    with pytest.raises(RepairlibError, match="no ESR limit at 120 Hz"):
        draw_esr_verdicts(*film)
