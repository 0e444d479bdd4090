"""Values and ratings as parts lists write them: common practice of the trade.

The prefixes are those of the SI; MFD is the old American way to write µF.
"""

import pytest

from repairlib.recap.ratings import describe
from repairlib.recap.words import (
    ALUMINIUM,
    BIPOLAR,
    CERAMIC,
    FILM,
    KINDS,
    MAINS,
    PAPER,
    POLYMER,
    TANTALUM,
)

# text: (farad, volts, kind)
WRITTEN = {
    "10/16": (10e-6, 16, ""),
    "10uF/35V": (10e-6, 35, ""),
    "1000µ 25V": (1000e-6, 25, ""),
    "1000μF 25V": (1000e-6, 25, ""),
    "0.047 50V film": (0.047e-6, 50, FILM),
    ".1": (0.1e-6, None, ""),
    ".1/50": (0.1e-6, 50, ""),
    "4,7/25 elko": (4.7e-6, 25, ALUMINIUM),
    "4u7 50V": (4.7e-6, 50, ""),
    "µ47 35V tant": (0.47e-6, 35, TANTALUM),
    "3n3 mylar": (3.3e-9, None, FILM),
    "100P cer": (100e-12, None, CERAMIC),
    "50 MFD 25 V": (50e-6, 25, ""),
    "47 MMFD": (47e-12, None, ""),
    "220 16V el": (220e-6, 16, ALUMINIUM),
    "CAP ELECT 10UF 16V 20% M RAD 105C 5x11": (10e-6, 16, ALUMINIUM),
    "10uF16V": (10e-6, 16, ""),
    "10uF-16V": (10e-6, 16, ""),
    "DC16V 10u": (10e-6, 16, ""),
    "22uF 16WV": (22e-6, 16, ""),
    "100µF 6V3": (100e-6, 6.3, ""),
    "47 µF, 25 volts": (47e-6, 25, ""),
    "33/25 NP": (33e-6, 25, BIPOLAR),
    "33/25 N.P.": (33e-6, 25, BIPOLAR),
    "10/50 non polar electrolytic": (10e-6, 50, BIPOLAR),
    "10/50 non-polarized": (10e-6, 50, BIPOLAR),
    "10/50 bipolar": (10e-6, 50, BIPOLAR),
    "10/16 OS-CON polymer": (10e-6, 16, POLYMER),
    "0.1uF 250VAC X2": (0.1e-6, 250, MAINS),
    ".01 AC125V ceramic": (0.01e-6, 125, MAINS),
    "0.1/400 oil paper": (0.1e-6, 400, PAPER),
    "NP0 100p": (100e-12, None, CERAMIC),
    "104K 50V ceramic": (0.1e-6, 50, CERAMIC),
    "1H103K mylar": (0.01e-6, 50, FILM),
}


@pytest.mark.common_practice
@pytest.mark.parametrize(("text", "said"), WRITTEN.items())
def test_written_as_in_a_manual(text, said):
    part = describe((("free", text),))
    assert part.doubts == ()
    assert part.farad == pytest.approx(said[0], rel=1e-12)
    assert (part.volts, part.kind) == said[1:]


@pytest.mark.common_practice
def test_non_polar_is_not_np0():
    """NP is a part without polarity, NP0 a ceramic: mixing them up would fit a polar part."""
    assert describe((("free", "10/16 NP el"),)).kind == BIPOLAR
    assert describe((("free", "10p NP0"),)).kind == CERAMIC


@pytest.mark.common_practice
def test_a_remark_can_make_a_part_bipolar():
    said = (("value", "10/16"), ("kind", "Elect."), ("other", "non-polar!"))
    assert describe(said).kind == BIPOLAR


# Each has two readings, or none: the line waits for a person.
DOUBTFUL = {
    "1,000/25 el": "1 or 1000",
    "2.200uF 16V": "2.2 or 2200",
    "10MF 16V": "µF, as old lists write it, or mF",
    "10 000µF 25V": "not a value",
    "220 16V": "no unit",
    "10æF 16V": "not understood",
    "10u?F 16V": "not understood",
    "10/16 25V": "two voltage ratings",
    "10uF 22uF 16V": "two capacitances",
    "104K 16V elect": "no marking of",
    "104X 50V ceramic": "not understood",
    "10/16 ceramic film": "two kinds",
    "10/16 el radial axial": "two builds",
    "10uF 250VAC el": "AC voltage",
    "5F 25V": "not a value",
    "10uF 0V": "not a voltage",
}


@pytest.mark.parametrize(("text", "why"), DOUBTFUL.items())
def test_nothing_is_guessed(text, why):
    assert why in "; ".join(describe((("free", text),)).doubts)


def test_headings_say_what_bare_figures_are():
    part = describe((("value", "10"), ("volts", "16"), ("kind", "Elect")))
    assert (part.farad, part.volts) == (10e-6, 16)
    assert describe((("value", "10"), ("volts", "-"), ("kind", "Elect"))).volts is None


def test_tolerances():
    assert describe((("free", "10/16 el ±20%"),)).tolerance == (-0.2, 0.2)
    assert describe((("free", "10/16 el +50/-10%"),)).tolerance == (-0.1, 0.5)
    assert describe((("free", "10/16 el -20+80%"),)).tolerance == (-0.2, 0.8)


def test_every_kind_has_a_word():
    assert {describe((("free", f"10/16 {kind.split()[0]}"),)).kind for kind in KINDS} == set(KINDS)


# Ways in which lists say that a part has no plus. A polar part there is reversed at times.
WITHOUT_POLARITY = """elect n.pol; elect n. pol.; elect N/P; elect-BP; elect-NP; ELECT.NP; bi-pol;
    elect bipol.; elect bi-p; elect unpol; unpol.; elect ungepolt; bipolaire; elect no polarity;
    elect nonp; non-polarisé; without polarity; elect NP/radial; apolar; elect b.p."""


@pytest.mark.common_practice
@pytest.mark.parametrize("words", [one.strip() for one in WITHOUT_POLARITY.split(";")])
def test_a_part_without_polarity_in_many_words(words):
    for cells in ((("free", f"10/63 {words}"),), (("value", "10/63"), ("kind", words))):
        part = describe(cells)
        assert (part.kind, part.doubts) == (BIPOLAR, ())
    remark = (("value", "10/63"), ("kind", "elect"), ("other", words))
    assert describe(remark).kind == BIPOLAR


@pytest.mark.common_practice
@pytest.mark.parametrize("words", ["crossover", "elect crossover", "elect AC", "AC elect", "AC"])
def test_a_place_that_sees_ac_waits(words):
    assert "without polarity" in describe((("value", "10/63"), ("kind", words))).doubts[0]


@pytest.mark.common_practice
def test_a_rating_in_ac_volts_waits():
    for said in ("10uF 50VAC", "10uF 50VAC NP", "10uF 50VAC el"):
        assert "AC volt" in describe((("free", said),)).doubts[0]


# Words of parts across the mains or in a motor; they burn, and their class must be kept.
ON_THE_MAINS = """X2-MKP; MKP-X2; X1Y1; X-cap; X capacitor; Y-cap; class X; class Y ceramic; MKP/X2;
    motor run; motor start; elect motor start; motor-run NP; across line; across the line; EMI;
    safety; RFI; X2 film; Y2; suppression; X3"""


@pytest.mark.common_practice
@pytest.mark.parametrize("words", [one.strip() for one in ON_THE_MAINS.split(";")])
def test_mains_and_motor_parts_in_many_words(words):
    part = describe((("value", "0.1uF"), ("volts", "250"), ("kind", words)))
    assert (part.kind, part.doubts) == (MAINS, ())


@pytest.mark.common_practice
def test_metal_paper_is_paper():
    assert describe((("free", "0.1uF MP 250V"),)).kind == PAPER


@pytest.mark.common_practice
@pytest.mark.parametrize("words", ["tantalum-bead", "TA-bead", "bead", "tant. bead"])
def test_a_bead_is_tantalum(words):
    assert describe((("value", "10/16"), ("kind", words))).kind == TANTALUM
    assert (
        describe((("value", "10/16"), ("kind", "el"), ("other", "by the bead"))).kind == ALUMINIUM
    )


@pytest.mark.common_practice
def test_poly_may_be_film_or_polymer():
    assert "film or a polymer" in describe((("free", "1000u 2V5 poly"),)).doubts[0]
    assert describe((("free", ".1/50 poly"),)).kind == FILM
    assert describe((("free", "1u 50V poly film"),)).kind == FILM


@pytest.mark.common_practice
@pytest.mark.parametrize("word", ["gizmo", "dipolar", "VP", "ES", "PX"])
def test_an_unknown_word_beside_the_part_waits(word):
    for cells in (
        (("value", "10/16"), ("kind", f"elect {word}")),
        (("free", f"10/16 elect {word}"),),
        (("value", f"10/16 {word}"), ("kind", "elect")),
        (("value", "10/16"), ("kind", word)),
    ):
        assert f"'{word}' was not understood" in describe(cells).doubts[0]


@pytest.mark.common_practice
def test_remarks_places_and_series_hold_nothing():
    for cells in (
        (("value", "10/16"), ("kind", "elect"), ("other", "behind the gizmo")),
        (("value", "10/16"), ("kind", "Elect. reservoir, main board")),
        (("value", "10/16"), ("kind", "Elect. general purpose 85C 5x11 20% M")),
        (("value", "10/16"), ("kind", "elect RGA")),
        (("value", "10/16"), ("unnamed", "gizmo"), ("kind", "elect")),
        (("free", "10/16"), ("free", "elect"), ("free", "behind the gizmo")),
    ):
        part = describe(cells)
        assert (part.kind, part.doubts) == (ALUMINIUM, ())
    assert "RGA" in describe((("value", "10/16"), ("kind", "elect RGA"))).looks[0]
