"""A set as text: what an instructor mistypes is told with its line and what is due there."""

import pytest

from repairlib.bench import read_set
from repairlib.core.errors import RepairlibError

LAMP = """title: lamp board
says: It is dark.
works: The lamp lights.
feed: P1, inlet dc 0, 9 V, 100 mA
rail: lamp, at out, 4.5 V, 20 %, 50 mV
loads: I1
board: 60 x 40
fault: R1 open
part,is,from,to,value,more,rated,body,x,y,wide,high,plus,side,price
P1,adapter,dc,0,9 V,limit 1 A,,,5,20,8,8,,,
R1,resistor,dc,out,90 Ω,,,,30,20,8,3,,,
F1,fuse,dc,x,50 mΩ,,500 mA,,30,30,8,3,,,0.2
C1,reservoir capacitor,x,GND,100 µF,ESR 1 Ω,16 V,,40,30,8,8,up,,
I1,lamp,out,0,50 mA,load,,,50,20,6,6,,,
"""
pytestmark = pytest.mark.behaviour


def test_what_is_read():
    lamp = read_set(LAMP)
    fuse, capacitor = lamp.part("f1"), lamp.part("C1")
    assert (fuse.rated, fuse.circuit.name, fuse.price) == (0.5, "R of F1", 0.2)
    assert (capacitor.nodes, capacitor.plus, capacitor.rated) == (("x", "0"), 90.0, 16.0)
    assert lamp.points == ("0", "dc", "out", "x")
    assert (lamp.rails[0].low, lamp.rails[0].high, lamp.rails[0].ripple) == (3.6, 5.4, 0.05)
    assert lamp.text == LAMP


def test_names_are_those_of_the_table_however_they_are_typed():
    lamp = read_set(LAMP.replace("feed: P1", "FEED:  p1").replace("loads: I1", "Loads: i1"))
    assert (lamp.feed, lamp.loads) == ("P1", ("I1",))


def test_a_table_from_a_spreadsheet_with_semicolons_and_decimal_commas():
    lines, _, table = LAMP.partition("part,is")
    table = ("part,is" + table).replace(",", ";").replace("0.2", "0,2")
    assert read_set(lines + table).part("F1").price == 0.2


SLIPS = {
    "an unknown line": ("loads:", "laods:", "laods: I1", "line 6"),
    "a line without a colon": ("works: The", "works The", "works The lamp", "line 3"),
    "a line that says nothing": ("says: It is dark.", "says:", "says:", "it says nothing (line 2)"),
    "a line twice": ("says: It", "says: A\nsays: It", "says: It is dark.", "stands twice (line 3)"),
    "a line missing": ("title: lamp board\n", "", "the set", "no line title:"),
    "no table": ("part,is", "prat,is", "prat,is", "line 9"),
    "a heading missing": (",y,wide", ",wide", "parts of the set", "no column y"),
    "a heading unknown": ("price\n", "prise\n", "prise", "not a column"),
    "pieces of the feed": (", 100 mA", "", "P1, inlet dc 0, 9 V", "4 pieces"),
    "points of the inlet": ("inlet dc 0", "at dc 0", "at dc 0", "two points of an inlet (line 4)"),
    "volts of the feed": ("9 V, 100", "9 A, 100", "9 A", "line 4"),
    "a feed that is no source": ("feed: P1", "feed: R1", "R1", "a resistor cannot do that"),
    "a feed that is not there": ("feed: P1", "feed: P7", "P7", "no such part"),
    "a load that is none": ("loads: I1", "loads: R1", "R1", "a resistor cannot do that"),
    "a point of a rail": ("at out", "at aut", "aut", "no part ends on this point"),
    "a tolerance": ("20 %, 50", "20 V, 50", "20 V", "line 5"),
    "a tolerance of none": ("20 %, 50", "0 %, 50", "0", "line 5"),
    "the size of the board": ("60 x 40", "60", "60", "a width and a height (line 7)"),
    "a board as wide as a house": ("60 x 40", "6000 x 40", "6000", "line 7"),
    "a name of no part": ("R1,res", "R,res", "R", "no name of a part (line 11)"),
    "a part twice": ("F1,fuse", "R1,fuse", "R1", "this part stands twice"),
    "what it is": ("R1,resistor", "R1,", "R1", "the column is says nothing (line 11)"),
    "both ends": ("R1,resistor,dc,out", "R1,resistor,out,out", "R1", "point out (line 11)"),
    "a value": ("90 Ω", "90 V", "90 V", "line 11"),
    "a value with a stroke": ("90 Ω", "90 / 4 Ω", "90 / 4 Ω", "no stroke may stand here (line 11)"),
    "a place": ("30,20,8,3", "middle,20,8,3", "middle", "mm from the left (line 11)"),
    "a width of nothing": ("30,20,8,3", "30,20,0,3", "0", "mm wide (line 11)"),
    "a way to point": ("8,8,up", "8,8,top", "top", "under plus (line 13)"),
    "a side": ("8,8,up,", "8,8,up,mian", "mian", "under side (line 13)"),
    "a price": (",,,0.2", ",,,cheap", "cheap", "tokens (line 12)"),
    "a rating": ("500 mA", "500 mV", "500 mV", "line 12"),
    "a cell too many": ("30,20,8,3,,,", "30,20,8,3,,,,,up", "line 11", "17 columns"),
}


@pytest.mark.parametrize("slip", SLIPS)
def test_a_slip_is_told_with_its_line(slip):
    right, wrong, read, said = SLIPS[slip]
    assert right in LAMP
    with pytest.raises(RepairlibError) as problem:
        read_set(LAMP.replace(right, wrong, 1))
    told = str(problem.value)
    assert read in told and said in told and "\n" not in told, told


def test_one_name_for_a_part_and_a_point_is_refused():
    with pytest.raises(RepairlibError, match="of a part and of a point"):
        read_set(LAMP.replace(",x,50", ",r1,50").replace(",x,GND", ",r1,GND"))


def test_a_ripple_goes_with_dc_only():
    rippled = LAMP.replace("loads:", "ripple: 60 mV rms, 65 kHz\nloads:")
    assert read_set(rippled).ripple == (0.06, 65e3)
    with pytest.raises(RepairlibError, match="two frequencies"):
        read_set(rippled.replace("9 V,limit 1 A", "9 V rms,50 Hz").replace("P1", "V1"))


@pytest.mark.parametrize("given", [None, 7, b"title: x", "", " \n ", "part"])
def test_what_is_no_set_is_refused(given):
    with pytest.raises(RepairlibError):
        read_set(given)
