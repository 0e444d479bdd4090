"""The supply of a memory chip before anything is connected; never called safe."""

import itertools

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.firmware import (
    before_connecting,
    identity_of,
    supply_of_identity,
    supply_of_mark,
    supply_of_net,
)
from tests.documents import document


def of_identity(typed):
    says = supply_of_identity(identity_of(typed))
    return says and says[1:3]


@pytest.mark.published(document("N25Q128A", "BA18h, 2.7 to 3.6 V"))
def test_ba_is_3_v():
    assert of_identity("20 BA 18") == (2.7, 3.6)


@pytest.mark.published(document("N25Q128A, 1.8 V", "BB18h, 1.7 to 2.0 V"))
def test_bb_is_1_8_v():
    assert of_identity("20 BB 18") == (1.7, 2.0)


@pytest.mark.published(document("SST26WF080B", "1.65 to 1.95 V"))
def test_sst26wf():
    assert of_identity("BF 26 58") == (1.65, 1.95)


@pytest.mark.published(document("SST26VF016B", "2.3 to 3.6 V"))
def test_sst26vf():
    assert of_identity("BF 26 42") == (2.3, 3.6)


@pytest.mark.from_memory("the type byte of the makers: 40h 3 V and 60h 1.8 V, 25h 1.8 V and so on")
def test_types_from_memory():
    three = ("EF 40 17", "EF 70 18", "C2 20 17", "C8 40 16", "1C 30 16", "20 20 17", "34 2A 1A")
    low = ("EF 60 18", "EF 80 18", "C2 25 38", "C8 60 17", "9D 70 18", "1C 38 17", "34 2B 1A")
    assert all(of_identity(one) == (2.7, 3.6) for one in three)
    assert all(of_identity(one)[1] <= 2.0 for one in low)
    assert of_identity("C2 28 16") == (1.65, 3.6)
    assert of_identity("01 20 18") is None
    assert of_identity("7F 9D 46") is None


@pytest.mark.from_memory("letters of the marks of serial flash")
def test_letters_of_marks():
    marks = {"25Q64JV": 3.6, "25Q64FW": 1.95, "MX25U6435F": 1.95, "24AA02": 5.5, "93LC46": 5.5}
    assert {mark: supply_of_mark(mark).high for mark in marks} == marks
    assert supply_of_mark("winbond 25Q128JW 2214").high == 1.95
    assert supply_of_mark("25Q64") is None and supply_of_mark("104K") is None


@pytest.mark.common_practice
def test_names_of_nets():
    volts = {
        "3V3": 3.3,
        "+1V8": 1.8,
        "VCC_3.3V": 3.3,
        "1,8 V": 1.8,
        "5V_STBY": 5.0,
        "P3V3_SPI": 3.3,
    }
    for net, value in volts.items():
        says = supply_of_net(net)
        assert says.low < value < says.high and says.high < value * 1.11
    for net in ("VDD", "SPI_CLK", "", "V", "0V", "GND"):
        assert supply_of_net(net) is None


@pytest.mark.common_practice
def test_3_3_v_on_a_chip_of_1_8_v_is_never_connected():
    said = (
        {"mark": "25Q64FW"},
        {"identity": "EF 60 17"},
        {"net": "1V8"},
        {"measured": "1.8 V"},
        {"mark": "25Q64FW", "measured": "1.79 V"},
        {"mark": "MX25R6435F", "measured": "1.8 V"},
    )
    for one in said:
        found = before_connecting(**one, programmer="3.3 V")
        assert found.verdict == "do not" and "chip supply" in found.cautions
    assert before_connecting(mark="25Q64JV", programmer="5 V").verdict == "do not"
    assert before_connecting(mark="25Q64JV", programmer="1.8 V").verdict == "do not"


@pytest.mark.behaviour
def test_without_a_measurement_it_cannot_tell():
    found = before_connecting(mark="25Q64JV", identity="EF 40 17", net="3V3", programmer="3.3 V")
    assert found.verdict == "cannot tell" and "measure its supply" in found.reason
    assert before_connecting(mark="25Q64", net="VDD").supply == "not known"
    off = before_connecting(measured="0 V", mark="25Q64JV")
    assert off.verdict == "cannot tell" and "off" in off.notes[0]


@pytest.mark.behaviour
def test_with_a_measurement_it_says_what_to_set():
    found = before_connecting(mark="25Q64JV", measured="3.29 V")
    assert found.verdict == "only with these conditions" and "set the programmer" in found.reason
    assert before_connecting(measured="5 V", programmer="5 V").verdict == found.verdict


@pytest.mark.behaviour
def test_what_contradicts_itself_stops():
    for one in (
        {"mark": "25Q64FW", "measured": "3.3 V"},
        {"identity": "EF 60 17", "net": "3V3"},
        {"mark": "25Q64JV", "identity": "EF 60 17"},
        {"net": "3V3", "measured": "1.8 V"},
        {"mark": "25Q64JV", "net": "12V"},
    ):
        found = before_connecting(**one, programmer="1.8 V")
        assert found.verdict == "stop" and "Connect nothing" in found.notes[0]


@pytest.mark.behaviour
def test_nothing_is_called_safe():
    marks, nets = ("", "25Q64JV", "25Q64FW"), ("", "3V3")
    for mark, net, measured, programmer in itertools.product(
        marks, nets, (None, 1.8, 3.3), (None, 3.3)
    ):
        given = {"mark": mark, "net": net, "measured": measured, "programmer": programmer}
        if mark or net or measured:
            found = before_connecting(**{name: one for name, one in given.items() if one})
            assert found.verdict in ("cannot tell", "only with these conditions", "do not", "stop")
            assert " safe" not in " ".join((str(found), *found.notes))


@pytest.mark.behaviour
def test_what_is_refused():
    with pytest.raises(RepairlibError, match="no mark, no identity"):
        before_connecting(programmer="3.3 V")
    with pytest.raises(RepairlibError, match="no chip answers"):
        before_connecting(identity="FF FF FF")


@pytest.mark.common_practice
def test_where_to_begin_is_said_only_where_nothing_tells_the_supply():
    def begins(**given):
        return any("nothing higher than 1.8 V" in note for note in before_connecting(**given).notes)

    assert begins(mark="25Q64")
    assert not begins(mark="25Q64JV", measured="3.3 V")
    assert not begins(mark="25Q64JV")
    assert not begins(measured="5 V")
