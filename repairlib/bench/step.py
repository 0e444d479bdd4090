"""One move at the practice board: the state after it, and what is told."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from repairlib.bench import multimeter
from repairlib.bench.moves import Move, Told
from repairlib.bench.state import OFF, OWN_PLUG, REPAIRED, End, Feed, Fitted, State
from repairlib.core.errors import RepairlibError

Done = tuple[State, Told]


def step(state: State, move: Move) -> Done:
    """The state after `move`, and what is told. Raises RepairlibError for what cannot be done.

    A refusal costs nothing and changes nothing.
    """
    if state.ended:
        raise RepairlibError(
            move.verb, f"the attempt has ended: {state.ended.why}", "a new attempt"
        )
    if move.verb not in DOES:
        raise RepairlibError(move.verb, "no such move", ", ".join(DOES))
    after, told = DOES[move.verb](state, move)
    after = replace(
        after,
        clock=after.clock + told.seconds,
        spent=after.spent + told.tokens,
        moves=state.moves + 1,
    )
    return after, told


def _plug_in(state: State, move: Move) -> Done:
    return replace(state, feed=Feed(OWN_PLUG)), Told("It is plugged in and on.", seconds=5)


def _unplug(state: State, move: Move) -> Done:
    return replace(state, feed=Feed(OFF)), Told("The plug is out.", seconds=5)


def _volts(state: State, move: Move) -> Done:
    reading = multimeter.volts(state, *move.at)
    return state, Told(f"{move.at[0]} to {move.at[1]}: {reading.shown}", reading, 20)


def _fit(state: State, move: Move) -> Done:
    part = state.set.part(move.at[0])
    after = state.with_place(part.name, fitted=Fitted(new=True))
    return after, Told(f"A new {part.name} is in.", None, 180, part.price)


def _hand_back(state: State, move: Move) -> Done:
    return replace(state, ended=End(REPAIRED, "handed back to its owner")), Told("Handed back.")


DOES: dict[str, Callable[[State, Move], Done]] = {
    "plug in": _plug_in,
    "unplug": _unplug,
    "volts": _volts,
    "fit": _fit,
    "hand back": _hand_back,
}
