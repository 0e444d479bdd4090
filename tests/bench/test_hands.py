"""What hands do at the practice board, and what becomes of them where something is live."""

import pytest

from repairlib.bench import Task, demo_set, read_fault, walked
from repairlib.bench.prices import METER_TOKENS
from repairlib.bench.state import DIRTY, HANDED_ON, HARMED, LIFTED, SOUND, WIRED
from repairlib.core.errors import RepairlibError
from repairlib.core.safety import HAZARDS
from tests.bench.own_board import BOARD

RADIO, PRINTER = demo_set("desk radio"), demo_set("printer controller")
SWITCH = demo_set("network switch")
HOLDS = {"fault": "U1 open; R1 open", "of": BOARD}  # nothing empties C1 then
EMPTIED = ["plug in", "unplug", "discharge C1 with 100 Ω for 10 s"]


def after(*moves, fault=None, of=RADIO):
    """The attempt at a board after these moves."""
    faults = tuple(read_fault(one, of) for one in fault.split("; ")) if fault else ()
    return walked(Task(of, faults, "demo"), moves)


def told(*moves, **more):
    """What was told last."""
    return after(*moves, **more).done[-1].told


@pytest.mark.behaviour
def test_a_part_comes_out_and_a_new_one_goes_in():
    attempt = after("take out C1", "clean C1", "fit C1 2200 µF 25 V", fault="C1 open")
    place = attempt.state.place("C1")
    assert place.fitted.new and place.fitted.fault is None and place.fitted.rated is None
    assert place.taken.fault.condition == "open" and place.pads == SOUND
    assert attempt.state.spent > RADIO.part("C1").price


@pytest.mark.behaviour
def test_the_order_of_the_work_is_asked_for():
    with pytest.raises(RepairlibError, match="take out C1"):
        after("fit C1")
    assert after("take out C1").state.place("C1").pads == DIRTY
    with pytest.raises(RepairlibError, match="clean C1"):
        after("take out C1", "fit C1")
    with pytest.raises(RepairlibError, match="resolder J1"):
        after("take out J1")
    assert after("take out C1 with vacuum").state.place("C1").pads == SOUND


@pytest.mark.behaviour
def test_the_old_part_goes_back_with_what_is_wrong_with_it():
    attempt = after("take out C1", "clean C1", "fit C1 old", fault="C1 open")
    assert attempt.state.place("C1").fitted.fault.condition == "open"
    turned = after("take out C1", "clean C1", "fit C1 old turned")
    assert turned.state.place("C1").fitted.fault.condition == "reversed"
    right = after("take out C1", "clean C1", "fit C1 old", fault="C1 reversed")
    assert right.state.place("C1").fitted.fault.condition == "leaks"


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("moves", "points"),
    [(["fit C1 plus down"], "down"), (["fit C1 plus up"], "up"), (["fit C1 old"], "up")],
)
def test_a_part_points_the_way_it_was_fitted(moves, points):
    words = told("take out C1", "clean C1", *moves, "look C1", fault="C1 reversed").words
    assert f"plus end points {points}, the board's plus is up" in words


@pytest.mark.behaviour
def test_a_part_on_the_bench_is_measured_by_itself():
    on_board = told("esr C1", fault="C1 dried out to 30 %, ESR x 20").reading
    by_itself = told("take out C1", "esr C1", fault="C1 dried out to 30 %, ESR x 20").reading
    assert by_itself.value == pytest.approx(0.8, rel=0.1) and on_board.value < by_itself.value * 1.1
    both = told("take out C1", "clean C1", "fit C1", "esr old C1", fault="C1 open").reading
    assert both.value is None  # out of circuit an open part shows nothing


@pytest.mark.behaviour
def test_new_solder_mends_a_crack_and_a_wire_a_pad():
    assert after("resolder J1", fault="J1 cracked").state.place("J1").fitted.fault is None
    bridged = after("bridge C1", fault="C1 pad lifted", of=PRINTER).state.place("C1")
    assert bridged.pads == WIRED and bridged.fitted.fault is None
    with pytest.raises(RepairlibError, match="lifted"):
        after("bridge C1")


@pytest.mark.behaviour
def test_too_hot_for_too_long_tears_a_pad_off():
    attempt = after("take out C1 with large tip 450 °C 20 s")
    assert attempt.state.place("C1").pads == LIFTED and attempt.state.harm
    assert attempt.state.ended is None  # it can be bridged
    with pytest.raises(RepairlibError, match="bridge C1"):
        after("take out C1 with large tip 450 °C 20 s", "fit C1")


@pytest.mark.behaviour
def test_braid_does_not_clear_a_plated_hole():
    attempt = after("take out C1 with braid")
    assert attempt.state.place("C1").fitted is not None and "pump" in attempt.done[-1].told.words


@pytest.mark.behaviour
@pytest.mark.parametrize("move", ["take out C1", "resolder C1", "fit C1", "clean C1", "bridge C1"])
def test_a_tool_at_a_set_that_is_on_ends_the_attempt_with_one_strong_sentence(move):
    attempt = after("plug in", move)
    assert attempt.state.ended.kind == HARMED and attempt.done[-1].told.alarm
    assert HAZARDS[attempt.state.ended.hazard].strikes in attempt.done[-1].told.words
    with pytest.raises(RepairlibError, match="ended"):
        attempt.after("unplug")


@pytest.mark.behaviour
@pytest.mark.parametrize(
    "move",
    [
        "touch F9",
        "take out C9",
        "lift R9",
        "discharge C9 with 1 kΩ",
        "discharge l1 0",
        "fit F9",
    ],
)
def test_hands_and_tools_end_it_at_the_mains_side_in_any_state(move):
    for before in ([], ["plug in"]):
        attempt = after(*before, move)
        assert attempt.state.ended.kind == HARMED and attempt.state.ended.hazard == "mains"
    assert after("hand on").state.ended.kind == HANDED_ON


ON_MAINS = [
    *(f"{one} F9" for one in ("volts", "ac volts", "ohms", "diode", "amps", "esr")),
    *("capacitance C9", "scope l1 0", "volts n", "clip l1", "temperature F9"),
]


@pytest.mark.behaviour
@pytest.mark.parametrize("move", ON_MAINS)
def test_an_instrument_on_the_mains_side_is_refused_with_the_plug_out_and_ends_it_with_it_in(move):
    for before in ([], ["plug in with supply 15 V 300 mA"]):
        with pytest.raises(RepairlibError, match="handed on, with the plug out too"):
            after(*before, move)
    for before in ("plug in", "plug in with lamp"):
        attempt = after(before, move)
        assert attempt.state.ended.kind == HARMED and attempt.state.ended.hazard == "mains"


@pytest.mark.behaviour
def test_a_tool_on_a_low_voltage_board_that_is_on_shorts_it():
    for move in ("take out C2", "discharge C2", "resolder R1", "lift L1"):
        attempt = after("plug in", move, of=SWITCH)
        assert attempt.state.ended.hazard == "live board"
        assert "joins two points" in attempt.done[-1].told.words


@pytest.mark.behaviour
def test_a_set_that_is_on_is_not_handed_back():
    with pytest.raises(RepairlibError, match="still plugged in and on"):
        after("plug in", "hand back")
    assert after("plug in", "unplug", "hand back").state.ended


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("part", "verb", "due"),
    [("R1", "ohms", 2200), ("C3", "capacitance", 100e-6), ("F1", "ohms", 0.08)],
)
def test_a_part_with_a_leg_up_is_read_alone_and_put_down_again(part, verb, due):
    before = told(f"{verb} {part}").reading
    up = after(f"lift {part}", f"{verb} {part}")
    reading = up.done[-1].told.reading
    assert abs(reading.value - due) <= reading.error + 0.02 * due + 0.2 * (verb == "ohms")
    down = after(f"lift {part}", f"resolder {part}", f"{verb} {part}").done[-1].told.reading
    assert down.points == before.points
    assert abs(down.value - before.value) <= 2 * before.error + before.value / 100


@pytest.mark.behaviour
def test_a_lifted_leg_opens_the_circuit_and_takes_an_ammeter():
    dead = after("lift F1", "plug in", "volts rail 0").done[-1].told.reading
    assert dead.value < 0.1
    through = after("lift R1", "plug in", "volts rail 0", "amps R1")
    volts, amps = (one.told.reading for one in through.done[-2:])
    assert abs(amps.value - volts.value / 2200) <= amps.error + 1e-4
    with pytest.raises(RepairlibError, match="capacitor"):
        after("lift C1", "amps C1")
    leaves = after("lift R1", "take out R1")
    assert not leaves.state.place("R1").leg_up


@pytest.mark.behaviour
def test_what_has_no_two_legs_in_holes_is_not_lifted():
    for move in ("lift U1", "lift J1", "lift V1", "lift I1"):
        with pytest.raises(RepairlibError, match="no leg"):
            after(move)
    with pytest.raises(RepairlibError, match="no leg"):
        after("lift C2", of=SWITCH)
    with pytest.raises(RepairlibError, match="up already"):
        after("lift C1", "lift C1")


@pytest.mark.behaviour
def test_a_charged_capacitor_sparks_at_the_tip_and_an_emptied_one_does_not():
    sparked = after("plug in", "unplug", "take out C1", **HOLDS)
    assert sparked.done[-1].told.alarm and "charged" in sparked.state.harm[0]
    assert sparked.state.ended is None  # far below 60 V and 100 J: the tip suffers, nobody else
    assert not after(*EMPTIED, "take out C1", **HOLDS).state.harm
    assert not after("plug in", "unplug", "wait 10 s", "take out C1", of=BOARD).state.harm


@pytest.mark.behaviour
def test_a_screwdriver_across_a_charged_capacitor_is_a_bang():
    screwdriver = "discharge C1 with a screwdriver"
    attempt = after("plug in", "unplug", screwdriver, **HOLDS)
    assert attempt.done[-1].told.alarm and "pitted" in attempt.state.harm[0]
    assert not told(*EMPTIED, **HOLDS).alarm


@pytest.mark.behaviour
def test_a_refusal_costs_nothing():
    attempt = after("look")
    for move in ("fit C1", "take out J1", "bridge C1", "plug in with supply 50 V", "line 70 %"):
        with pytest.raises(RepairlibError):
            attempt.after(move)
    assert len(attempt.done) == 1


@pytest.mark.behaviour
def test_a_chip_is_written_after_two_equal_reads():
    reads = ["read chip M1"] * 4
    attempt = after(*reads, "write chip M1", fault="M1 corrupt", of=PRINTER)
    sums = [content for _, content in attempt.state.kept]
    assert max(map(sums.count, sums)) >= 2 and not attempt.state.harm
    assert attempt.state.place("M1").fitted.fault is None
    careless = after("write chip M1", fault="M1 corrupt", of=PRINTER)
    assert careless.done[-1].told.alarm and "two equal reads" in careless.state.harm[0]


@pytest.mark.behaviour
def test_a_new_chip_is_blank_and_the_old_content_counts_only_when_it_was_read_twice():
    swap = ["take out M1", "clean M1", "fit M1"]
    attempt = after(*swap, "write chip M1", fault="M1 corrupt", of=PRINTER)
    assert "two equal reads" in attempt.state.harm[0]
    kept = after(*["read chip M1"] * 4, *swap, "write chip M1", fault="M1 corrupt", of=PRINTER)
    assert not kept.state.harm and kept.state.place("M1").fitted.fault is None


@pytest.mark.behaviour
def test_a_chip_on_a_set_that_is_on_is_neither_read_nor_written():
    attempt = after("plug in", "read chip M1", "write chip M1", fault="M1 corrupt", of=PRINTER)
    assert attempt.done[-1].told.alarm and len(attempt.state.harm) == 3
    assert attempt.state.place("M1").fitted.fault is not None


@pytest.mark.behaviour
def test_the_clip_is_the_other_probe():
    reading = told("plug in", "clip rail", "volts out").reading
    assert reading.points == ("out", "rail") and reading.value < 0


@pytest.mark.behaviour
def test_the_job_card_holds_what_was_written():
    state = after("write found: C1 dried out", "told: turn it off at night").state
    assert state.card == (("found", "C1 dried out"), ("told", "turn it off at night"))


@pytest.mark.common_practice
@pytest.mark.parametrize("which", ["fit C1 turned", "fit C1 old turned"])
def test_an_electrolytic_the_wrong_way_round_bursts_under_power(which):
    power = ["plug in with supply 15 V 2 A", "wait 1 min"]
    attempt = after("take out C1", "clean C1", which, *power)
    assert attempt.state.ended.kind == HARMED and "burst" in attempt.done[-1].told.words


@pytest.mark.behaviour
def test_a_finger_on_what_burns_ends_the_attempt_and_on_what_is_warm_does_not():
    burnt = after("plug in", "wait 10 min", "touch C3", fault="C3 reversed")
    assert (burnt.state.ended.kind, burnt.state.ended.hazard) == (HARMED, "heat and fire")
    assert burnt.done[-1].told.words.startswith("C3 burnt the finger: about ")
    warm = after("plug in", "wait 10 s", "touch C3")
    assert warm.state.ended is None and not warm.state.harm


@pytest.mark.behaviour
def test_a_tester_that_is_burnt_is_replaced_at_its_price():
    burnt = after("plug in", "esr C1").done[-1].told
    assert "its input is burnt. Another one is fetched, at 15 tokens." in burnt.words
    assert burnt.tokens == METER_TOKENS
