"""Which end each mark shows, against documents and the trade. Values were typed in by hand."""

from __future__ import annotations

import pytest

from repairlib.polarity import board_marks, check_polarity, marks_of
from repairlib.polarity.rules import part_marks

AT_THE_MARK = "part's mark at the board's mark"


def shows(family: str, mark: str) -> str:
    return marks_of(family)[mark].shows


def belongs_at(family: str, mark: str, right: str, wrong: str) -> None:
    """With its mark at that mark of the board the part is right, at the other reversed."""
    for board, verdict in ((right, "right"), (wrong, "reversed")):
        assert check_polarity(family, mark, board, AT_THE_MARK).verdict == verdict


@pytest.mark.published("Panasonic, Tantalum Solid Electrolytic Capacitors/TEH, Marking")
def test_moulded_tantalum_bar_is_positive():
    assert shows("moulded tantalum chip", "bar at one end") == "positive"
    belongs_at("moulded tantalum chip", "bar at one end", "plus sign", "minus sign")


@pytest.mark.published("Panasonic, Aluminum Electrolytic Capacitors, FC and FN series, Marking")
def test_black_mark_on_a_can_is_negative():
    assert shows("aluminium SMD can", "black segment on top") == "negative"
    belongs_at("aluminium SMD can", "black segment on top", "minus sign", "plus sign")


@pytest.mark.published("AVX, Solid Tantalum Resin Dipped TAP/TEP, Wire Form Outline, page 94")
def test_dipped_tantalum_plus_is_positive():
    assert shows("dipped tantalum", "plus sign") == "positive"
    belongs_at("dipped tantalum", "plus sign", "plus sign", "minus sign")


@pytest.mark.published("US Navy, NEETS Module 7 (14179), Diode Markings, page 1-44")
@pytest.mark.parametrize("family", ["diode", "Zener diode"])
def test_diode_band_is_cathode(family):
    assert shows(family, "band at one end") == "cathode"
    belongs_at(family, "band at one end", "letter K", "letter A")


@pytest.mark.published("Texas Instruments, The Signal, 2012-12-10, figures 1a and 1b")
def test_stripe_on_film_capacitor_is_no_polarity():
    assert shows("film or ceramic capacitor", "line or band at one end") == "either"


@pytest.mark.from_memory("aluminium radial: stripe with minus signs, shorter lead")
@pytest.mark.parametrize(
    ("mark", "end"),
    [
        ("stripe with minus signs", "negative"),
        ("shorter lead", "negative"),
        ("longer lead", "positive"),
    ],
)
def test_aluminium_radial(mark, end):
    assert shows("aluminium radial", mark) == end


@pytest.mark.from_memory("aluminium axial: line with arrows, indented ring")
@pytest.mark.parametrize(
    ("mark", "end"), [("line with arrows", "negative"), ("indented ring", "positive")]
)
def test_aluminium_axial(mark, end):
    assert shows("aluminium axial", mark) == end


@pytest.mark.from_memory("bevelled corners of an SMD can's base")
@pytest.mark.parametrize("family", ["aluminium SMD can", "polymer round can"])
def test_bevelled_corners_of_the_base(family):
    assert shows(family, "bevelled corners of the base") == "positive"


@pytest.mark.from_memory("moulded tantalum: often a bevel too")
def test_moulded_tantalum_bevel():
    assert shows("moulded tantalum chip", "bevelled edge") == "positive"


@pytest.mark.from_memory("dipped tantalum: dot, longer lead")
@pytest.mark.parametrize("mark", ["dot", "longer lead"])
def test_dipped_tantalum_dot_and_lead(mark):
    assert shows("dipped tantalum", mark) == "positive"


@pytest.mark.from_memory("polymer tantalum and polymer aluminium, flat moulded: bar")
def test_polymer_flat_chip_bar():
    assert shows("polymer flat chip", "bar at one end") == "positive"


@pytest.mark.from_memory("polymer aluminium, round can: coloured segment")
def test_polymer_round_can_segment():
    assert shows("polymer round can", "coloured segment on top") == "negative"


@pytest.mark.from_memory("LED with leads: flat on the rim, shorter lead")
@pytest.mark.parametrize(
    ("mark", "end"),
    [("flat on the rim", "cathode"), ("shorter lead", "cathode"), ("longer lead", "anode")],
)
def test_led_with_leads(mark, end):
    assert shows("LED with leads", mark) == end


@pytest.mark.from_memory("chip LED marks vary by maker, some mark the anode")
@pytest.mark.parametrize("mark", ["dot", "notch", "green mark"])
@pytest.mark.parametrize("board", ["letter K", "plus sign", "white bar"])
def test_chip_led_cannot_be_told(mark, board):
    finding = check_polarity("chip LED", mark, board, AT_THE_MARK)
    assert finding.verdict == "cannot tell"
    assert "data sheet" in finding.look_at and "meter" in finding.look_at


@pytest.mark.common_practice
@pytest.mark.parametrize("mark", ["flat face", "metal tab", "single lead on one side"])
def test_transistor_leads_differ_by_type_number(mark):
    for board in board_marks():
        finding = check_polarity("transistor or regulator", mark, board, AT_THE_MARK)
        assert finding.verdict == "cannot tell"
        assert "type number" in finding.look_at


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("family", "mark"),
    [
        ("IC", "notch at one end"),
        ("IC", "dot"),
        ("IC", "bevelled edge"),
        ("connector", "triangle"),
        ("connector", "figure 1"),
        ("connector", "coloured wire"),
    ],
)
def test_pin_one(family, mark):
    assert shows(family, mark) == "pin 1"


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("mark", "group", "end"),
    [
        ("plus sign", "capacitor", "positive"),
        ("minus sign", "capacitor", "negative"),
        ("letter K", "diode", "cathode"),
        ("letter A", "diode", "anode"),
        ("white bar", "diode", "cathode"),
        ("bar of the diode symbol", "LED", "cathode"),
        ("flat side of the outline", "LED", "cathode"),
        ("two cut corners of the outline", "can", "positive"),
        ("two cut corners of the outline", "capacitor", "unknown"),
        ("filled or hatched half circle", "capacitor", "unknown"),
        ("square pad", "pins", "pin 1"),
        ("square pad", "capacitor", "unknown"),
        ("figure 1", "pins", "pin 1"),
        ("NP or BP", "capacitor", "non-polar"),
        ("no mark", "capacitor", "unknown"),
    ],
)
def test_board_mark(mark, group, end):
    assert board_marks()[mark].shows(group) == end


@pytest.mark.common_practice
def test_zener_cathode_belongs_on_the_more_positive_rail():
    finding = check_polarity("Zener diode", "band at one end", "letter K", AT_THE_MARK)
    assert finding.verdict == "right"
    assert any("cathode belongs on the more positive rail" in note for note in finding.notes)


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("family", "word"),
    [
        ("aluminium radial", "vents"),
        ("aluminium axial", "vents"),
        ("aluminium SMD can", "bursts"),
        ("moulded tantalum chip", "fire"),
        ("dipped tantalum", "fire"),
        ("polymer flat chip", "burn"),
        ("bridge rectifier", "burst"),
    ],
)
def test_what_happens_if_wrong(family, word):
    mark = next(iter(marks_of(family)))
    finding = check_polarity(family, mark, "plus sign", AT_THE_MARK)
    assert word in finding.if_wrong


def test_the_tables_are_whole():
    from repairlib.core.tables import read_table

    tables = ("polarity_families", "polarity_part_marks", "polarity_board_marks")
    assert [len(read_table(name)) for name in tables] == [18, 41, 18]


def test_ids_are_unique():
    from repairlib.core.tables import read_table

    assert len(part_marks()) == len(read_table("polarity_part_marks"))
    assert len(board_marks()) == len(read_table("polarity_board_marks"))
