"""A kernel that is killed at any moment takes no move away that was on the screen."""

import os
import time
from multiprocessing import get_context

import pytest

from repairlib.faces.panels import practice_board

MANY = 20 if os.environ.get("BENCH") == "all" else 3
FAULT = ["C1 open"]


def move_for_ever(shown):
    """Make moves, and say after each how many are on the screen."""
    panel = practice_board("desk radio", faults=FAULT)
    while True:
        number = len(panel.moves)
        panel.do(clip(number))
        shown.send(len(panel.view.told["log"]))
        assert len(panel.moves) == number + 1


def clip(number):
    """The move of that number."""
    return f"clip {'rail' if number % 2 else '0'}"


def last_shown(pipe):
    """The last whole number that came."""
    found = 0
    try:
        while pipe.poll(0):
            found = pipe.recv()
    except (EOFError, OSError):  # all read, or cut short
        pass
    return found


@pytest.mark.skipif(not hasattr(os, "fork"), reason="kills a copy of this process")
@pytest.mark.behaviour
def test_every_move_that_was_shown_is_there_again(home):
    of_two = get_context("fork")
    for turn in range(MANY):
        hears, says = of_two.Pipe(duplex=False)
        running = of_two.Process(target=move_for_ever, args=(says,))
        running.start()
        says.close()
        assert hears.poll(60), "no move was made"
        time.sleep(0.013 * (7 * turn % 20))
        running.kill()
        running.join()
        shown = last_shown(hears)
        kept = practice_board("desk radio", faults=FAULT).moves
        assert len(kept) in (shown, shown + 1)  # or killed between keeping and showing
        assert kept == [clip(number) for number in range(len(kept))]
