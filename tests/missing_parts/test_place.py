"""An empty place as people type it: letter, pads, the net each side, neighbours, a twin."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.missing_parts import read_footprint, read_place


def nets_of(text):
    return [net.name for net in read_place(text).nets]


@pytest.mark.parametrize(
    ("typed", "nets"),
    [
        ("C? between +3.3 V and ground, near U2", ["+3.3 V", "ground"]),
        ("R17, 0603, from SDA to +3V3, near U4", ["SDA", "+3V3"]),
        ("one end on XIN of the crystal, the other on ground", ["XIN of the crystal", "ground"]),
        ("C4 0402 nets VCC / GND", ["VCC", "GND"]),
        ("C4, pad 1: VCC, pad 2: GND", ["VCC", "GND"]),
        ("C4, VCC, GND, next to U4", ["VCC", "GND"]),
        ("R3 RESET -> 3.3V", ["RESET", "3.3V"]),
        ("D1 across the relay coil, bar at +12 V", ["the relay coil", "the relay coil"]),
        ("R9 in series with the MOSI line", ["the MOSI line", "the MOSI line"]),
        ("C9 across the 5 V rail near U1", ["the 5 V rail", "ground"]),
        ("R1: +5V to LED1 anode; 0805", ["+5V", "LED1 anode"]),
        ("0805", []),
    ],
)
@pytest.mark.behaviour
def test_the_net_each_side(typed, nets):
    assert nets_of(typed) == nets


@pytest.mark.behaviour
def test_the_sentence_of_the_page():
    place = read_place(
        "C? 2 pads 3,2 × 1,6 mm, between +3,3 V and ground, near regulator U2 output, "
        "twin channel has 10 µF"
    )
    assert place.letters == "C"
    assert place.footprint.imperial == "1206"
    assert place.nets[0].is_rail and place.nets[1].is_ground
    assert place.volts == 3.3
    assert "regulator output" in place.near
    assert place.twin.value == 10e-6 and place.twin.family == "capacitor"
    assert place.unread == ()


@pytest.mark.behaviour
def test_what_is_said_of_a_twin_says_nothing_of_the_nets_here():
    place = read_place("R5 0603 from FB to GND, the other board has 10k, reads 9.8k in circuit")
    assert [net.name for net in place.nets] == ["FB", "GND"]
    assert place.twin.value == 10e3 and place.twin.in_circuit


@pytest.mark.behaviour
def test_what_is_denied_is_not_near():
    assert "crystal" not in read_place("C3 between VCC and GND, no crystal anywhere").near


@pytest.mark.behaviour
def test_a_word_that_says_nothing_is_handed_back():
    assert read_place("C3 0603 between VCC and GND by the gubbins").unread == ("gubbins",)


# Body sizes stand in the chip codes of tests/markings/test_case_sizes.py; a land pattern reaches
# beyond its body by about half a pad at each end.
@pytest.mark.from_memory("usual land patterns of chip parts")
@pytest.mark.parametrize(
    ("typed", "imperial"),
    [
        ("pads 0.5 x 0.6 mm, gap 0.5 mm", "0402"),
        ("2 pads 0.9 x 0.8 mm, gap 0.7 mm", "0603"),
        ("two pads each 1.1 x 1.3 mm, 0.9 mm apart", "0805"),
        ("pads 1.2 x 1.7 mm, gap 1.9 mm", "1206"),
        ("pads 1.2 x 1.7 mm gap 1.9 mm", "1206"),
        ("1608 metric", "0603"),
        ("0603 metric", "0201"),
    ],
)
def test_pads_fit_a_chip_size(typed, imperial):
    assert read_footprint(typed)[0].imperial == imperial


@pytest.mark.behaviour
@pytest.mark.parametrize("typed", ["", "  ", "?!", None, 7, "x" * 3000, "C1 900 x 700 mm"])
def test_what_cannot_be_a_place_is_one_line(typed):
    with pytest.raises(RepairlibError):
        read_place(typed)


@pytest.mark.behaviour
def test_both_sides_in_one_and_the_mains_by_its_letters():
    both = read_place("1206, +5V_USB on both sides, near the USB-A socket")
    assert [net.name for net in both.nets] == ["+5V_USB", "+5V_USB"]
    assert read_place("C? between L and N").danger.kind == "mains"
    assert read_place("C? 0603 between 5 V and L").danger is None


@pytest.mark.published("EIA case numbers: length and width in tenths of a millimetre, height")
@pytest.mark.parametrize(
    ("typed", "case", "length"),
    [
        ("3528 pads", "B", 3.5e-3),
        ("7343", "D", 7.3e-3),
        ("7343-31", "7343-31", 7.3e-3),
        ("3528-21", "3528-21", 3.5e-3),
        ("D case", "D", 7.3e-3),
        ("case D", "D", 7.3e-3),
        ("B-case", "B", 3.5e-3),
        ("3216-18", "3216-18", 3.2e-3),
    ],
)
def test_a_tantalum_case_as_it_is_typed(typed, case, length):
    pads = read_footprint(typed)[0]
    assert pads.case == case and pads.length == pytest.approx(length, rel=0.03)
    assert "pads not described" not in str(pads)


@pytest.mark.behaviour
def test_in_a_case_is_no_case():
    assert read_footprint("a part in a case of metal")[0].case == ""
