"""Moves as people type them: what is meant, what is refused, and that it can be said again."""

import pytest

from repairlib.bench import Move, demo_set, read_move, say_move
from repairlib.core.errors import RepairlibError

RADIO = demo_set("desk radio")


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("measure volts at C1", "volts C1"),
        ("volts on out", "volts out"),
        ("V rail gnd", "volts rail 0"),
        ("What is the voltage?", None),
        ("what's the voltage at out?", "volts out"),
        ("touch the regulator", "touch U1"),
        ("look at the reservoir capacitor", "look C1"),
        ("put a new C1 in, plus up", "fit C1"),
        ("swap C1 for 1000 µF 25 V", "fit C1 1000 µF 25 V"),
        ("set the supply to 9 V 200 mA", "plug in with supply 9 V 200 mA"),
        ("discharge C1 with a 1k resistor", "discharge C1 with 1 kΩ"),
        ("volts on +9 V", "volts out"),
        ("voltage between rail and ground.", "volts rail 0"),
        ("ac volts across c1", "ac volts C1"),
        ("OHMS from rail to gnd", "ohms rail 0"),
        ("current through f1", "amps F1"),
        ("esr old c1", "esr old C1"),
        ("scope rail at 1 V, 5 ms", "scope rail at 1 V 5 ms"),
        ("desolder c1", "take out C1"),
        ("take out C1 with wick, fine tip, 380C", "take out C1 with braid fine tip 380 °C"),
        ("take out c1 for 5 s at 400 degrees", "take out C1 with 400 °C 5 s"),
        ("replace C1 1000uF 25V", "fit C1 1000 µF 25 V"),
        ("fit C1 1000µF/25V", "fit C1 1000 µF 25 V"),
        ("fit C1 plus down", "fit C1 turned"),
        ("fit C1, plus up", "fit C1"),
        ("put back C1", "fit C1 old"),
        ("put C1 back", "fit C1 old"),
        ("fit F1 315 mA", "fit F1 315 mA"),
        ("fit R2 0R22", "fit R2 220 mΩ"),
        ("fit U1 9 V", "fit U1 9 V"),
        ("fit D1 rated 400 V", "fit D1 400 V"),
        ("discharge C1 with 1k", "discharge C1 with 1 kΩ"),
        ("discharge rail 0 with a screwdriver", "discharge rail 0 with 10 mΩ"),
        ("plug in with supply 9 V 200 mA", "plug in with supply 9 V 200 mA"),
        ("power up with 9 V, limit 200 mA", "plug in with supply 9 V 200 mA"),
        ("plug in through a 40 W bulb", "plug in with lamp 40 W"),
        ("please pull the plug", "unplug"),
        ("wait 2 min", "wait 120 s"),
        ("wait 30", "wait 30 s"),
        ("wait half an hour", "wait 1800 s"),
        ("plug in with supply 9V/0,2A", "plug in with supply 9 V 200 mA"),
        ("line low", "line 90 %"),
        ("set the load to light", "load light"),
        ("clip the black probe to ground", "clip 0"),
        ("unclip", "clip off"),
        ("look closely at C1", "look C1 with lens"),
        ("note found: it hums", "write found: it hums"),
        ("measured: 9.1 V at out", "write measured: 9.1 V at out"),
        ("hand on: the mains side is not mine", "hand on the mains side is not mine"),
        ("hand it back to the owner", "hand back"),
    ],
)  # fmt: skip
def test_what_people_type(typed, said):
    if said is None:
        with pytest.raises(RepairlibError):
            read_move(typed, RADIO)
        return
    move = read_move(typed, RADIO)
    assert say_move(move) == said
    assert read_move(said, RADIO) == move


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("typed", "wrong"),
    [
        ("", "nothing was typed"),
        ("blah", "no move begins like this"),
        ("volts", "says nothing of where"),
        ("volts foo", "no part or point"),
        ("volts C1 5 V", "does not belong"),
        ("fit C1 10 MF", "10 MF"),
        ("fit C1 1000", "1000"),
        ("fit I1 9 V", "9 V"),
        ("fit F1 1 Ω", "1 Ω"),
        ("fit R2 plus up", "no plus"),
        ("fit C1 plus left", "does not lie that way"),
        ("take out C1 slowly", "not understood"),
        ("hand", "hand on, hand back"),
        ("vlts out", "Accepted: volts"),
        ("please check R1", "Accepted: volts r1, ohms r1"),
        ("mesure volts C1", "Accepted: volts c1"),
        ("write: it hums", "found, measured"),
        ("found:", "nothing stands behind found. Accepted: found: C1"),
        ("wait 2 V", "2 V"),
        (None, "not a text"),
        ("x" * 600, "longer than"),
    ],
)
def test_what_is_not_understood_is_named_in_one_line(typed, wrong):
    with pytest.raises(RepairlibError) as refused:
        read_move(typed, RADIO)
    assert wrong in str(refused.value) and "\n" not in str(refused.value)


@pytest.mark.behaviour
def test_a_move_made_by_code_can_be_typed_again():
    move = Move("plug in", (), {"volts": 12.5, "amps": 0.25}, "supply")
    assert read_move(say_move(move), RADIO) == move
