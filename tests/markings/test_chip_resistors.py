"""Codes on chip resistors: figures, points, the 96 values, links."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.markings import read
from tests.documents import document

YAGEO = document("Yageo chip marking")
NIC = document("NIC chip marking guide")
RND = document("RND chip resistor")
WSR = document("Vishay WSR")
WF = document("WFxxR approval sheet")
STATE = document("State of the Art")
TRU = document("TRU Components")
LISTS = document("encyclopaedia, E series")
BY_RULE = "worked by hand from the rule"


def rows(table):
    return [row.split() for row in table.replace("\n", "|").split("|") if row.strip()]


def check(code, ohm):
    reading = read(code, part="chip-resistor")[0]
    assert reading.value == pytest.approx(float(ohm), rel=1e-9)
    assert (reading.kind, reading.unit) == ("chip-resistor", "Ω")


@pytest.mark.published(f"{NIC}: examples")
@pytest.mark.parametrize(
    ("code", "ohm"),
    rows(
        "330 33 | 471 470 | 220 22 | 122 1200 | 103 10000 | 564 560000 | 105 1000000 | 1R5 1.5"
        "| 1073 107000"
    ),
)
def test_figures(code, ohm):
    check(code, ohm)


@pytest.mark.published(f"{NIC}: figures and a power of ten, {BY_RULE}")
@pytest.mark.parametrize(
    ("code", "ohm"),
    rows(
        "152 1500 | 560 56 | 391 390 | 335 3300000 | 472 4700 | 100 10 | 331 330"
        "| 1500 150 | 1000 100"
    ),
)
def test_figures_by_the_rule(code, ohm):
    check(code, ohm)


@pytest.mark.published(f"{YAGEO}: examples and the jumper")
@pytest.mark.parametrize(("code", "ohm"), rows("244 240000 | 3160 316 | 0 0"))
def test_figures_after_another_maker(code, ohm):
    check(code, ohm)


@pytest.mark.published(f"{YAGEO}: three figures and a power of ten, {BY_RULE}")
@pytest.mark.parametrize(("code", "ohm"), rows("1003 100000 | 1002 10000 | 4701 4700"))
def test_four_figures_by_the_rule(code, ohm):
    check(code, ohm)


@pytest.mark.published(f"{RND}: examples")
@pytest.mark.parametrize(
    ("code", "ohm"), rows("333 33000 | 2701 2700 | 2R2 2.2 | 10R0 10 | R300 0.3")
)
def test_figures_and_points_after_a_third_maker(code, ohm):
    check(code, ohm)


@pytest.mark.from_memory("00 is a link, as 0, 000 and 0000 are")
def test_two_zeros_are_a_link():
    check("00", 0)


@pytest.mark.published(document("encyclopaedia, Zero-ohm link"))
@pytest.mark.parametrize("code", ["000", "0000"])
def test_links(code):
    check(code, 0)


@pytest.mark.published(f"{RND}: R is the decimal point, {BY_RULE}")
@pytest.mark.parametrize(
    ("code", "ohm"),
    rows("9R1 9.1 | R56 0.56 | 12R0 12 | 4R7 4.7 | R10 0.1 | R005 0.005 | 1R00 1"),
)
def test_r_is_the_point(code, ohm):
    check(code, ohm)


@pytest.mark.published(f"{WSR}: R0100 is printed; 5L000 {BY_RULE}")
@pytest.mark.parametrize(("code", "ohm"), rows("5L000 0.005 | R0100 0.01"))
def test_l_is_the_point_in_milliohm(code, ohm):
    check(code, ohm)


@pytest.mark.from_memory("m or M as the point in mΩ on some sense resistors; M clashes with mega")
def test_m_is_the_point_in_milliohm_and_the_clash_is_said():
    check("5m0", 0.005)
    milli, mega = read("2M0", part="chip-resistor")
    assert (milli.value, mega.value) == (0.002, 2e6)
    assert "mΩ or MΩ" in milli.why


@pytest.mark.published(f"{WF}: examples")
@pytest.mark.parametrize(
    ("code", "ohm"),
    rows("25X 17.8 | 25A 178 | 25B 1780 | 25C 17800 | 25D 178000 | 25E 1780000"),
)
def test_letters_printed_in_the_approval_sheet(code, ohm):
    check(code, ohm)


@pytest.mark.published(f"{STATE}: 68C")
def test_printed_example_of_an_ordering_page():
    check("68C", 49900)


@pytest.mark.published(f"{TRU}: 02C and 85X")
@pytest.mark.parametrize(("code", "ohm"), rows("02C 10200 | 85X 75"))
def test_printed_examples_of_a_data_sheet(code, ohm):
    check(code, ohm)


@pytest.mark.published(f"{RND}: letters A to F, X, Y, Z, {BY_RULE}")
@pytest.mark.parametrize(
    ("code", "ohm"),
    rows(
        "36B 2320 | 47D 301000 | 84C 73200 | 01C 10000 | 01A 100 | 01B 1000 | 01D 100000"
        "| 01E 1000000 | 01X 10 | 01Y 1 | 96A 976 | 30A 200 | 12X 13 | 18D 150000 | 68X 49.9"
        "| 01Z 0.1 | 01F 10000000"
    ),
)
def test_place_and_multiplier(code, ohm):
    check(code, ohm)


PLACES = """
100 102 105 107 110 113 115 118 121 124 127 130 133 137 140 143
147 150 154 158 162 165 169 174 178 182 187 191 196 200 205 210
215 221 226 232 237 243 249 255 261 267 274 280 287 294 301 309
316 324 332 340 348 357 365 374 383 392 402 412 422 432 442 453
464 475 487 499 511 523 536 549 562 576 590 604 619 634 649 665
681 698 715 732 750 768 787 806 825 845 866 887 909 931 953 976
"""


@pytest.mark.published(f"{LISTS}: E96 in its order")
def test_all_96_places():
    values = [read(f"{place:02}A", part="chip-resistor")[0].value for place in range(1, 97)]
    assert values == [float(figures) for figures in PLACES.split()]


@pytest.mark.from_memory("alternates R for Y, S for X, H for B")
@pytest.mark.parametrize(("code", "ohm"), rows("01R 1 | 01S 10 | 01H 1000"))
def test_alternate_letters(code, ohm):
    check(code, ohm)


# One maker goes on with G and H where others use H for times 10. Neither is followed: both are
# shown, each with its doubt.
@pytest.mark.published(f"{RND}: G is times 1e6, H times 1e7")
@pytest.mark.parametrize(("code", "ohm"), rows("01G 100e6 | 01H 1e9"))
def test_one_maker_goes_on_to_g_and_h(code, ohm):
    assert float(ohm) in [one.value for one in read(code, part="chip-resistor")]


@pytest.mark.behaviour
def test_g_and_h_are_doubtful():
    (only,) = read("01G", part="chip-resistor")
    assert (only.value, bool(only.doubt)) == (100e6, True)
    both = read("01H", part="chip-resistor")
    assert [one.value for one in both] == [1000, 1e9]
    assert all("makers differ" in one.doubt for one in both)


@pytest.mark.from_memory("R as the letter for times 0.01")
def test_10r_is_rather_ten_ohm():
    ten, other = read("10R", part="chip-resistor")
    assert (ten.value, ten.doubt) == (10, "")
    assert other.value == pytest.approx(1.24)
    assert "rather the decimal point" in other.doubt
    assert "another value" in ten.why


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("code", "wrong"),
    [
        ("4R7R", "no marking has this form"),
        ("12", "three or four figures"),
        ("1C", "elsewhere it would be 16"),
        ("00B", "no place 00"),
        ("98A", "no place 98"),
        ("68", "three or four figures"),
        ("68Q", "Q is no multiplier"),
        ("0805", "elsewhere it would be imperial 0805"),
    ],
)
def test_is_refused(code, wrong):
    with pytest.raises(RepairlibError, match=wrong):
        read(code, part="chip-resistor")


def test_a_letter_before_two_figures_is_left_out():
    """No maker's document was found for the 2, 5 and 10 % code of that form: nothing is guessed."""
    with pytest.raises(RepairlibError, match="no marking has this form"):
        read("A55", part="chip-resistor")


@pytest.mark.published(f"{YAGEO}: three figures for 5 %, four for 1 % and closer")
def test_what_the_number_of_figures_says():
    assert "three figures are used for 5 %" in read("103", part="chip-resistor")[0].why
    assert "four figures are used for 1 %" in read("1002", part="chip-resistor")[0].why
