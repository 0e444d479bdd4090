"""Which case stands on which pads, and how much goes into it."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.core.sources import SOURCES
from repairlib.core.tables import read_table
from repairlib.missing_parts.tantalum_cases import (
    Pads,
    case_named,
    cases,
    cases_on,
    largest_in,
    misfit,
    nearest_misfit,
)
from tests.documents import document

LANDS = document(
    "AVX tantalum summary",
    "pad length, gap, width in mm: A 1.40 1.00 1.80, B 1.40 1.20 2.80, C 2.00 2.50 2.80, "
    "D and E 2.00 4.00 3.00, R 1.00 0.80 1.60, V 2.00 4.00 3.70",
)
ON_LANDS = {
    (1.40, 1.00, 1.80): {"3216-12", "3216-18"},
    (1.40, 1.20, 2.80): {"3528-12", "3528-21"},
    (2.00, 2.50, 2.80): {"6032-15", "6032-28"},
    (2.00, 4.00, 3.00): {"7343-15", "7343-20", "7343-31", "7343-43"},
    (1.00, 0.80, 1.60): {"2012-12", "2012-15"},
}


def pads(*millimetres: float) -> Pads:
    return Pads(*(one / 1000 for one in millimetres))


@pytest.mark.published(LANDS)
@pytest.mark.parametrize(("land", "wanted"), ON_LANDS.items())
def test_a_makers_lands_take_that_makers_case_and_no_other(land, wanted):
    assert {case.eia for case in cases_on(pads(*land))} == wanted


@pytest.mark.published(LANDS)
def test_the_widest_lands_take_the_widest_case():
    assert {"7361-38", "7361-43"} <= {case.eia for case in cases_on(pads(2.0, 4.0, 3.7))}


@pytest.mark.from_memory("pads of a public footprint library, a little longer than a maker's")
@pytest.mark.parametrize(
    ("land", "wanted"),
    [
        ((1.58, 1.14, 1.35), "3216-18"),
        ((1.63, 1.63, 2.35), "3528-21"),
        ((2.22, 2.70, 2.35), "6032-28"),
        ((2.33, 3.90, 2.55), "7343-31"),
        ((1.30, 0.80, 1.05), "2012-12"),
    ],
)
def test_longer_pads_for_the_iron_take_it_as_well(land, wanted):
    found = {case.eia for case in cases_on(pads(*land))}
    assert wanted in found
    assert {eia[:4] for eia in found} == {wanted[:4]}


@pytest.mark.published(
    document("KEMET T491", "A 3.2 × 1.6, B 3.5 × 2.8, C 6.0 × 3.2, D 7.3 × 4.3 mm")
)
@pytest.mark.parametrize(
    ("letter", "size"), [("A", (3.2, 1.6)), ("B", (3.5, 2.8)), ("C", (6, 3.2)), ("D", (7.3, 4.3))]
)
def test_bodies_agree_with_another_maker(letter, size):
    case = cases()[case_named(letter)]
    assert (case.length * 1000, case.width * 1000) == pytest.approx(size)


@pytest.mark.published(
    document("KEMET T491", "EIA number: length and width in 0.1 mm, greatest height in 0.1 mm")
)
def test_bodies_agree_with_what_their_numbers_say():
    for eia, case in cases().items():
        assert case.length * 1e4 == pytest.approx(int(eia[:2]), abs=0.6)
        assert case.width * 1e4 == pytest.approx(int(eia[2:4]), abs=1.6)
        assert case.height * 1e4 <= int(eia[5:]) + 1e-6


@pytest.mark.behaviour
def test_what_does_not_fit_says_why():
    case_c = cases()["6032-28"]
    reasons = {
        (1.0, 2.5, 2.8): "hangs over",
        (3.5, 2.5, 2.8): "far inside",
        (1.0, 5.0, 2.8): "hardly reach",
        (2.0, 2.5, 1.5): "wide, the pads only",
        (2.0, 2.5, 4.5): "made for a wider part",
    }
    for land, why in reasons.items():
        assert why in misfit(case_c, pads(*land))
    assert "the nearest is 6032-15 (U or W): pads" in nearest_misfit(pads(1.5, 3.0, 4.2))
    assert cases_on(pads(0.3, 0.3, 0.3)) == ()


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("typed", "eia"),
    [("a", "3216-18"), ("Case C", "6032-28"), ("D case", "7343-31"), ("7360", "7360-38")],
)
def test_a_case_by_its_letter(typed, eia):
    assert case_named(typed) == eia


@pytest.mark.behaviour
@pytest.mark.parametrize("typed", ["E", "V", "X", "U", "7343", "", "Q", "0603", "3216"])
def test_a_letter_or_number_of_several_cases_is_refused_with_what_it_may_be(typed):
    with pytest.raises(RepairlibError, match="not a known case") as refused:
        case_named(typed)
    wanted = {"V": "7343-20 or 7361-38", "X": "7343-15 or 7343-43", "3216": "3216-12 or 3216-18"}
    wanted["U"] = "6032-15 or 7361-43"
    assert wanted.get(typed, "7343-43") in refused.value.accepted


SEEN = [row for row in read_table("tantalum-largest") if row["part"]]


@pytest.mark.published(
    document("tantalum parts in lists", "T491D107K016 is case D, 107 = 100 µF, 16 V, and so on")
)
@pytest.mark.parametrize("row", SEEN, ids=lambda row: row["part"])
def test_a_part_number_says_the_case_the_value_and_the_rating_of_its_row(row):
    letter, code, volts = row["part"][3], row["part"][-7:-4], row["part"][-3:]
    if row["part"].startswith("T491"):
        letter = row["part"][4]
    assert row["eia"] in {"R": "2012-12", "E": "7343-43", "X": "7343-43"}.get(
        letter, case_named(letter) if letter in "ABCD" else ""
    )
    assert float(code[:2]) * 10 ** int(code[2]) / 1e6 == pytest.approx(float(row["largest_uf"]))
    assert float(volts) == pytest.approx(float(row["rated_v"]), abs=0.31)


@pytest.mark.behaviour
def test_more_rating_never_holds_more_and_a_larger_case_never_less():
    sizes = ["2012-12", "3216-18", "3528-21", "6032-28", "7343-31", "7343-43"]
    ratings = [6.3, 10, 16, 20, 25, 35, 50]
    for eia in sizes:
        held = [one.farad for rated in ratings if (one := largest_in(eia, rated))]
        assert held == sorted(held, reverse=True)
    for rated in ratings:
        held = [one.farad for eia in sizes if (one := largest_in(eia, rated))]
        assert held == sorted(held)
    assert largest_in("7343-31", 63) is None


@pytest.mark.behaviour
def test_every_row_names_a_known_source():
    for name in ("tantalum-cases", "tantalum-largest"):
        assert {row["source"] for row in read_table(name)} <= set(SOURCES)


@pytest.mark.behaviour
def test_a_number_too_long_to_be_written_is_refused_in_one_line():
    with pytest.raises(RepairlibError, match="not a known case"):
        case_named(10**5000)
