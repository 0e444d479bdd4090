"""The technician: finds and mends by what instruments show, and by that alone."""

import pytest

from repairlib.bench.attempt import Task
from repairlib.bench.conditions import read_faults
from repairlib.bench.expert import Technician, expert_way
from repairlib.bench.moves import Move, Told
from repairlib.bench.state import REPAIRED
from repairlib.bench.still_works import misses
from repairlib.bench.view import View, look_at, printed
from repairlib.core.errors import RepairlibError
from tests.bench.small_sets import LAMP


def on(faults: str, seed: str = "seed") -> Task:
    return Task(LAMP, read_faults(faults, LAMP), seed)


@pytest.mark.parametrize("fault", [*LAMP.faults, *LAMP.together])
def test_every_fault_of_a_small_board_is_mended(fault):
    done = expert_way(on(fault))
    assert done.state.ended.kind == REPAIRED
    assert misses(done.state) == ()
    assert not done.state.harm


def test_the_view_has_no_fault_in_it():
    view, _ = look_at(on("R1 open"))
    assert view.printed.faults == view.printed.together == () and view.printed.text == ""
    assert "open" not in repr(view.printed)
    assert set(vars(view)) == {"printed", "do"}


def test_another_fault_with_the_same_readings_leads_to_the_same_moves():
    # to every instrument these two are one: the moves must be the same up to the end
    one, other = expert_way(on("R1 open")), expert_way(on("R1 pad lifted"))
    same = [done.move for done in one.done]
    others = [done.move for done in other.done]
    fitted = next(at for at, move in enumerate(same) if move.verb == "take out")
    assert same[: fitted + 1] == others[: fitted + 1]


def test_only_what_is_told_decides():
    """What one board told, told again while quite another fault is there: the same moves."""
    first = expert_way(on("R1 open"))
    script = [done.told for done in first.done]
    asked: list[Move] = []
    hidden, _ = look_at(on("F1 blown"))

    def tells(move: Move) -> Told:
        asked.append(move)
        return script[len(asked) - 1]

    Technician(View(hidden.printed, tells)).repair()
    assert asked == [done.move for done in first.done]


def test_the_printed_set_is_the_same_whatever_is_wrong():
    assert printed(LAMP) == look_at(on("F1 blown"))[0].printed


def test_a_refused_move_is_told_and_nothing_is_lost():
    view, attempt = look_at(on("R1 open"))
    with pytest.raises(RepairlibError):
        view.do(Move("fit", ("R1",)))
    assert attempt().done == ()
