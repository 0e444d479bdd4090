"""One move at the practice board: the state after it, and what is told."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from repairlib.bench import board_work, chip_work, finishing, measuring, powering
from repairlib.bench.move_words import FORMS
from repairlib.bench.moves import Move, Told
from repairlib.bench.passing import passing
from repairlib.bench.state import State
from repairlib.core.errors import RepairlibError

Outcome = tuple[State, Told]
DOES: dict[str, Callable[[State, Move], Outcome]] = {
    "look": measuring.look,
    "smell": measuring.smell,
    "touch": measuring.touch,
    **dict.fromkeys(
        ("volts", "ac volts", "ohms", "diode", "amps", "esr", "capacitance", "scope"),
        measuring.probe,
    ),
    "temperature": measuring.temperature,
    "supply": measuring.supply,
    "plug in": powering.plug_in,
    "unplug": powering.unplug,
    "line": powering.line,
    "load": powering.load,
    "wait": powering.wait,
    "discharge": powering.discharge,
    "clip": powering.clip,
    "lift": board_work.lift,
    "take out": board_work.take_out,
    "clean": board_work.clean,
    "fit": board_work.fit,
    "resolder": board_work.resolder,
    "bridge": board_work.bridge,
    "read chip": chip_work.read_chip,
    "write chip": chip_work.write_chip,
    "write": finishing.write,
    "hand on": finishing.hand_on,
    "hand back": finishing.hand_back,
    "give up": finishing.give_up,
}
PASSES_ITSELF = ("discharge",)  # with a resistor held on meanwhile


def step(state: State, move: Move) -> Outcome:
    """The state after `move`, and what is told. Raises RepairlibError for what cannot be done.

    A refusal costs nothing and changes nothing. The time that the move takes goes by after it.

    >>> from repairlib.bench.practice_set import demo_set
    >>> from repairlib.bench.state import begin
    >>> state, told = step(begin(demo_set("desk radio"), (), "demo"), Move("plug in"))
    >>> told.words, state.powered
    ('It is plugged in and on.', True)
    """
    after, told = at_once(state, move)
    if move.verb == "amps":
        after, told = measuring.while_shunted(after, told)
    elif move.verb not in PASSES_ITSELF:
        after, events = passing(after, told.seconds)
        if events:
            told = replace(told, words=" ".join((told.words, *events)), alarm=True)
    after = replace(
        after,
        clock=after.clock + told.seconds,
        spent=after.spent + told.tokens,
        moves=state.moves + 1,
    )
    return after, told


def at_once(state: State, move: Move) -> Outcome:
    """What a move does and tells before its time has gone by. Raises RepairlibError as `step`."""
    if state.ended:
        raise RepairlibError(
            move.verb, f"the attempt has ended: {state.ended.why}", "a new attempt"
        )
    if move.verb not in DOES:
        raise RepairlibError(move.verb, "no such move", ", ".join(DOES))
    if not FORMS[move.verb].least <= len(move.at) <= FORMS[move.verb].most:
        raise RepairlibError(move.verb, "not that many places", FORMS[move.verb].example)
    return DOES[move.verb](state, move)
