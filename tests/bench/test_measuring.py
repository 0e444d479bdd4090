"""An instrument put to the board: what it costs when it dies there, and when somebody is hurt."""

from dataclasses import replace

import pytest

from repairlib.bench.moves import Move
from repairlib.bench.prices import METER_TOKENS, SECONDS
from repairlib.bench.state import HARMED
from repairlib.bench.step import step
from tests.bench.small_boards import board

STORE = "C1, a, 0, 2200 µF, ESR 40 mΩ"


def test_a_reading_takes_its_time():
    state, told = step(board("R1, a, 0, 2.2 kΩ", STORE), Move("ohms", ("a", "0")))
    assert told.seconds == SECONDS["ohms"] + told.reading.seconds > SECONDS["ohms"] + 10
    assert "settled after" in told.words and state.clock == told.seconds


@pytest.mark.parametrize("verb", ["esr", "capacitance"])
def test_a_charge_costs_the_tester(verb):
    state, told = step(board(STORE, charges={"C1": 20.0}), Move(verb, ("C1",)))
    assert told.alarm and told.tokens == METER_TOKENS == state.spent
    assert len(state.harm) == 1 and state.ended is None


@pytest.mark.parametrize("verb", ["esr", "capacitance", "ohms", "diode"])
def test_a_charge_that_could_hurt_ends_the_attempt(verb):
    state, told = step(board(STORE, charges={"C1": 320.0}), Move(verb, ("C1",)))
    assert told.alarm and state.ended.kind == HARMED and "320 V" in state.ended.why
    state, _ = step(board(STORE, charges={"C1": 320.0}), Move("volts", ("C1",)))
    assert state.ended is None, "volts are what one measures first"


def test_amps_go_where_a_part_was_not_through_it():
    state = board("R1, in, out, 1 Ω", "R2, out, 0, 89 Ω", on=True)
    out = replace(state.places["R1"], fitted=None, taken=state.places["R1"].fitted)
    state = replace(state, places={**state.places, "R1": out})
    _, told = step(state, Move("amps", ("R1",)))
    assert told.reading.value == pytest.approx(9 / 89.03, abs=told.reading.error)
    _, old = step(state, Move("ohms", ("R1",)))
    assert old.reading.value == pytest.approx(1.2, abs=old.reading.error), "the one on the bench"
