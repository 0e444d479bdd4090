"""One good way through a board whose fault is known: for a key, for a rehearsal, for tests.

Whoever goes it measures what is wrong as if it were not known, and proves what was mended. It looks
for nothing: who has to find the fault is `expert`.
"""

from __future__ import annotations

from collections.abc import Iterator

from repairlib.bench.attempt import Task, walked
from repairlib.bench.board_work import by_solder
from repairlib.bench.care import store_of
from repairlib.bench.conditions import Fault
from repairlib.bench.drawer import as_listed
from repairlib.bench.practice_set import BoardPart, PracticeSet
from repairlib.core.quantity import engineering

GROUND = "0"
SOAK = "wait 15 min"  # until a set is warm
LARGE = 1e-6  # F, from which on a capacitor is emptied before hands go in
LIMIT = 2.0  # times the usual current, on the bench supply
STAYS = {"pad lifted": ("bridge",), "corrupt": ()}
GONE = ("clean", "fit", "look")
RENEWED = ("take out", "clean", "fit", "look")


def known_way(task: Task) -> tuple[str, ...]:
    """The moves, as they are typed, that measure, mend and prove what is wrong.

    >>> from repairlib.bench.conditions import read_fault
    >>> from repairlib.bench.practice_set import demo_set
    >>> radio = demo_set("desk radio")
    >>> known_way(Task(radio, (read_fault("D1 open", radio),), "demo"))[-1]
    'hand back'
    """
    of = task.set
    parts = [of.part(fault.part) for fault in task.faults]
    if any(part.mains for part in parts):
        moves = tuple(_measured(of, task.faults))
        return (*moves, *_card(task, moves), "hand on to somebody qualified")
    mended = [move for fault in task.faults for move in mending(of, fault)]
    before = [*_measured(of, task.faults), *_dead(of, parts)]
    moves = (*before, *mended, *_proven(of, parts))
    return (*moves, *_card(task, moves), "hand back")


def _measured(of: PracticeSet, faults: tuple[Fault, ...]) -> Iterator[str]:
    """Each rail on its own plug: at full load and light, with little line; and warm.

    A trace is taken without its dc, where ripple is seen best. And the points at which the parts at
    fault lie; the mains side is not touched.
    """
    yield from ("look", "plug in", "load full", *_rails(of, scope=True))
    parts = [of.part(fault.part) for fault in faults]
    ends = [part.nodes if not part.mains else of.part(of.feed).nodes for part in parts]
    for one, other in dict.fromkeys(ends):
        yield f"volts {one} {other}"
        yield from (f"volts {point} {GROUND}" for point in (one, other) if point != GROUND)
    yield from ("line low", *_rails(of, scope=True), "line usual", "load light", *_rails(of))
    if any(fault.condition == "cracked" for fault in faults):
        yield from ("load full", SOAK, *_rails(of))
    yield "unplug"


def _dead(of: PracticeSet, parts: list[BoardPart]) -> Iterator[str]:
    """What holds a charge is emptied and measured, then the parts at fault."""
    for part in of.parts:
        circuit = part.circuit
        if circuit and circuit.letter == "C" and circuit.value > LARGE and not part.mains:
            yield f"discharge {part.nodes[0]} {part.nodes[1]} with 1 kΩ for 20 s"
    store = store_of(of)
    for part in (*([store] if store else []), *parts):
        if part.circuit:
            yield f"volts {part.nodes[0]} {part.nodes[1]}"
    for part in parts:
        if part.circuit:
            yield f"ohms {part.nodes[0]} {part.nodes[1]}"


def mending(of: PracticeSet, fault: Fault) -> Iterator[str]:
    """The moves at the dead board that mend a fault.

    >>> from repairlib.bench.conditions import read_fault
    >>> from repairlib.bench.practice_set import demo_set
    >>> radio = demo_set("desk radio")
    >>> list(mending(radio, read_fault("U1 cracked", radio)))
    ['resolder U1']
    """
    done = GONE if fault.condition == "gone" else STAYS.get(fault.condition, RENEWED)
    if by_solder(of.part(fault.part), fault.condition):
        done = ("resolder",)
    if fault.condition == "corrupt":
        yield from (
            f"read chip {fault.part}",
            f"read chip {fault.part}",
            f"write chip {fault.part}",
        )
    for verb in done:
        yield f"{verb} {fault.part}{as_listed(of.part(fault.part)) if verb == 'fit' else ''}"


def _proven(of: PracticeSet, parts: list[BoardPart]) -> Iterator[str]:
    """Behind a limit first, then on its own plug: both loads, little line, and warm."""
    volts, amps = engineering(of.feed_volts, "V"), engineering(LIMIT * of.feed_amps, "A")
    yield from (f"plug in with supply {volts} {amps}", *_rails(of), "unplug", "plug in")
    yield from ("load full", *_rails(of), "load light", *_rails(of))
    yield from ("load full", "line low", *_rails(of), "line usual", SOAK, *_rails(of), "unplug")


def _rails(of: PracticeSet, scope: bool = False) -> Iterator[str]:
    for rail in of.rails:
        yield f"volts {rail.point} {GROUND}"
        if scope and rail.ripple is not None:
            yield f"scope {rail.point} {GROUND} ac"


def _card(task: Task, moves: tuple[str, ...]) -> Iterator[str]:
    """The lines of the card; what was measured is what the last reading showed."""
    names = ", ".join(fault.part for fault in task.faults)
    last = [one.told for one in walked(task, moves).done if one.told.reading][-1]
    yield f"write found: {', '.join(map(str, task.faults))}".replace(";", ",")
    yield f"write measured: {last.words} at last".replace(";", ",")
    yield f"write fitted: {names}"
    yield "write told: bring it back if it comes again"
