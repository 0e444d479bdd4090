"""Who else may sit at the board: one who renews everything, and one who does anything at all."""

from repairlib.bench import Attempt, Move, Task, read_move
from repairlib.bench.care import HANDS, store_of
from repairlib.bench.practice_set import PracticeSet
from repairlib.core.draws import Draw
from repairlib.core.errors import RepairlibError

MANY = 60


def tried(attempt: Attempt, move: Move | str) -> Attempt:
    """The attempt after a move, or as it was where the move is refused or all is over."""
    try:
        return attempt.after(move)
    except RepairlibError:
        return attempt


def blind(task: Task) -> Attempt:
    """Renews every part that is not of the mains side, without one reading, and hands back."""
    attempt = Attempt(task)
    parts = [part.name for part in task.set.parts if not part.mains]
    for name in parts:
        for move in ("take out {} with vacuum", "clean {}", "fit {}", "resolder {}"):
            attempt = tried(attempt, move.format(name))
    for line in ("found: " + ", ".join(parts), "measured: 0 V", "fitted: " + ", ".join(parts)):
        attempt = tried(attempt, f"write {line}")
    attempt = tried(attempt, "write told: it has new parts")
    return tried(attempt, "hand back")


def at_random(task: Task, draw: Draw, careful: bool = False) -> Attempt:
    """Does many things that come to mind, and ends in one of the three ways.

    A careful one pulls the plug and discharges before hands go to the board, and so lives longer.
    """
    attempt = Attempt(task)
    store = store_of(task.set)
    for _ in range(MANY):
        move = any_move(task.set, draw)
        if careful and isinstance(move, Move) and move.verb in HANDS:
            attempt = tried(attempt, "unplug")
            attempt = tried(attempt, f"discharge {store.name if store else task.set.loads[0]}")
        attempt = tried(attempt, move)
    attempt = tried(attempt, "unplug")
    return tried(attempt, draw.pick(["hand back", "hand back", "hand on", "give up"]))


ANYTHING = (
    "look", "smell {part}", "touch {part}", "plug in", "plug in with lamp",
    "plug in with supply", "unplug", "line low", "line high", "load light", "load full",
    "wait 2 min", "discharge {part}", "volts {point} 0", "ac volts {point} 0", "ohms {part}",
    "diode {part}", "esr {part}", "capacitance {part}", "scope {point} 0", "temperature {part}",
    "take out {part} with vacuum", "fit {part}", "fit {part} turned", "fit {part} old",
    "resolder {part}", "bridge {part}", "read chip {part}", "write chip {part}",
    "write found: {part}", "write measured: 5 V", "write fitted: {part}", "write told: {part}",
)  # fmt: skip


def any_move(of: PracticeSet, draw: Draw) -> Move | str:
    """A move at any part or point that is not of the mains side, so that it lives to do more."""
    words = draw.pick(ANYTHING)
    part = draw.pick([part.name for part in of.parts if not part.mains])
    point = draw.pick([point for point in of.points if point != "0"])
    try:
        return read_move(words.format(part=part, point=point), of)
    except RepairlibError:
        return words
