"""Hands at the board: lift, take out, clean, fit, resolder, bridge."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from repairlib.bench import dangers
from repairlib.bench.conditions import Fault
from repairlib.bench.drawer import listed, taken_from
from repairlib.bench.looks import said_of, way_of
from repairlib.bench.move_words import LOW_MELT, OLD, TURNED, VACUUM
from repairlib.bench.moves import Move, Told
from repairlib.bench.practice_set import BoardPart
from repairlib.bench.prices import LOW_MELT_TOKENS, SECONDS, TOKENS
from repairlib.bench.soldering import (
    TWO_LEADS,
    Worked,
    frees,
    heated,
    tool_of,
    way_out,
    why_not,
)
from repairlib.bench.state import DIRTY, LIFTED, SOUND, WIRED, Fitted, State
from repairlib.bench.strain import leak_ohm
from repairlib.bench.where import fitted_at, part_at
from repairlib.core.errors import RepairlibError

Outcome = tuple[State, Told]
Work = Callable[[State, BoardPart, Move], Outcome]
JOINT, MEMORY = "joint", "memory chip"
NO_SOLDER = ("adapter",)  # it hangs on its plug
BY_SOLDER = ("cracked",)  # what new solder mends
BY_WIRE = ("pad lifted",)  # what a wire mends
WRONG_WAY = "reversed"


def at_the_board(work: Work) -> Callable[[State, Move], Outcome]:
    """Work with a tool at a part, with what happens where it is live or charged."""

    def done(state: State, move: Move) -> Outcome:
        part = part_at(state, move.at[0])
        struck = dangers.hands_on(state, part)
        if struck is not None:
            return struck
        after, told = work(state, part, move)
        sparked, crack = dangers.spark(state, part)
        after = replace(after, harm=(*sparked.harm, *after.harm[len(state.harm) :]))
        after = replace(after, charges=sparked.charges)
        seconds, tokens = SECONDS[move.verb], TOKENS[move.verb] + told.tokens
        words = " ".join(filter(None, (crack, told.words)))
        return after, replace(
            told, words=words, seconds=seconds + told.seconds, tokens=tokens,
            alarm=told.alarm or bool(crack),
        )  # fmt: skip

    return done


def by_solder(part: BoardPart, condition: str) -> bool:
    """Whether fresh solder mends it; of a joint, which is nothing but solder, it mends all.

    >>> from repairlib.bench.practice_set import demo_set
    >>> radio = demo_set("desk radio")
    >>> by_solder(radio.part("J1"), "worn"), by_solder(radio.part("R1"), "open")
    (True, False)
    """
    return condition in BY_SOLDER or (part.what == JOINT and condition not in BY_WIRE)


@at_the_board
def take_out(state: State, part: BoardPart, move: Move) -> Outcome:
    """Takes a part out of the board; it lies on the bench then."""
    fitted = fitted_at(state, part)
    if part.what == JOINT:
        raise RepairlibError(part.name, "a joint cannot be taken out", f"resolder {part.name}")
    if part.what in NO_SOLDER:
        after = state.with_place(part.name, fitted=None, leg_up=False, taken=fitted)
        return after, Told(f"{part.name} is off and lies on the bench.")
    tool = tool_of(move, part)
    worked = heated(part, move, tool)
    if not worked.flowed:
        return _with_pads(state, part, worked, f"{part.name} does not come. {worked.words}")
    if not frees(tool, part):
        words = f"{part.name} does not come. {why_not(tool, part)} {worked.words}"
        return _with_pads(state, part, worked, words)
    pads = state.places[part.name].pads
    if pads == SOUND and tool != VACUUM:
        pads = DIRTY
    after = state.with_place(part.name, fitted=None, pads=pads, leg_up=False, taken=fitted)
    after, told = _with_pads(after, part, worked, f"{part.name} is out. {worked.words}")
    return after, replace(told, tokens=LOW_MELT_TOKENS if tool == LOW_MELT else 0.0)


def _with_pads(state: State, part: BoardPart, worked: Worked, words: str) -> Outcome:
    """The pads after a heating: they age, and may come off."""
    place = state.places[part.name]
    aged = place.ageing + worked.ageing
    after = state.with_place(part.name, ageing=aged)
    if not worked.tears(place.ageing) or place.pads in (LIFTED, WIRED):
        return after, Told(words)
    what = f"A pad of {part.name} came off the board."
    after = dangers.damaged(after.with_place(part.name, pads=LIFTED), what)
    return after, Told(f"{words} {what}", alarm=True)


@at_the_board
def lift(state: State, part: BoardPart, move: Move) -> Outcome:
    """Lifts one leg of a part out of the board, so that it can be measured alone."""
    fitted_at(state, part)
    if not can_lift(part):
        raise RepairlibError(part.name, "it has no leg to lift", f"take out {part.name}")
    if state.places[part.name].leg_up:
        raise RepairlibError(part.name, "one leg is up already", f"resolder {part.name}")
    worked = heated(part, move)
    if not worked.flowed:
        return _with_pads(state, part, worked, f"The leg does not come. {worked.words}")
    after = state.with_place(part.name, leg_up=True)
    words = f"One leg of {part.name} is up: what is read across it is the part alone."
    return _with_pads(after, part, worked, f"{words} {worked.words}")


def can_lift(part: BoardPart) -> bool:
    """Whether the part has two legs in holes, of which one can be lifted.

    >>> from repairlib.bench.practice_set import demo_set
    >>> radio = demo_set("desk radio")
    >>> [name for name in ("C1", "R2", "D1", "U1", "J1", "V1") if can_lift(radio.part(name))]
    ['C1', 'R2', 'D1']
    """
    letter = part.circuit.letter if part.circuit else ""
    return letter in ("R", "C", "L", "D") and way_out(part) == TWO_LEADS


@at_the_board
def clean(state: State, part: BoardPart, move: Move) -> Outcome:
    """Clears the pads or holes of an empty place of solder."""
    place = state.places[part.name]
    if place.fitted is not None:
        raise RepairlibError(part.name, "its pads are under the part", f"take out {part.name}")
    pads = SOUND if place.pads == DIRTY else place.pads
    return state.with_place(part.name, pads=pads), Told(f"The pads of {part.name} are {pads}.")


@at_the_board
def fit(state: State, part: BoardPart, move: Move) -> Outcome:
    """Solders a part into an empty place: a new one, or the one that was taken out."""
    place = state.places[part.name]
    if place.fitted is not None:
        raise RepairlibError(part.name, "it is still in its place", f"take out {part.name}")
    if place.pads == DIRTY:
        raise RepairlibError(part.name, "solder is left on its pads", f"clean {part.name}")
    if place.pads == LIFTED:
        raise RepairlibError(part.name, "its pad is lifted", f"bridge {part.name}")
    turned = TURNED in move.words and part.plus is not None
    if OLD in move.words:
        fitted, price = _old(part, place.taken, turned), 0.0
        words = f"The old {part.name} is back{_with(part, fitted)}."
    else:
        chosen = taken_from(part, move.figures, place.taken)
        fitted, price = _new(part, chosen, turned), part.price
        read = any(name not in move.figures for name in chosen)
        like = ", with what is printed on the old one" if read else ""
        words = f"A new {part.name} is in{like}{_with(part, fitted)}."
    taken = None if OLD in move.words else place.taken
    return state.with_place(part.name, fitted=fitted, taken=taken), Told(words, tokens=price)


def _old(part: BoardPart, taken: Fitted | None, turned: bool) -> Fitted:
    if taken is None:
        raise RepairlibError(f"old {part.name}", "none lies on the bench", f"fit {part.name}")
    fault = taken.fault
    if fault is not None and fault.condition in (*BY_SOLDER, *BY_WIRE, WRONG_WAY):
        fault = None
    fault = fault or _turned(part, turned) or _left_by_strain(part, taken)
    return replace(taken, fault=fault, turned=turned)


def _left_by_strain(part: BoardPart, taken: Fitted) -> Fault | None:
    """The leak of a capacitor that stood the wrong way round or far above its rating."""
    if not taken.spoilt or part.circuit is None or part.circuit.letter != "C":
        return None
    return Fault(part.name, "leaks", {"ohm": leak_ohm(taken.value or part.circuit.value)})


def _with(part: BoardPart, fitted: Fitted) -> str:
    """What was taken: value and rating, and which way round it sits."""
    points = () if part.plus is None else (way_of(part, fitted.turned),)
    said = ", ".join(filter(None, (said_of(part, fitted), *points)))
    return f": {said}" if said else ""


def _new(part: BoardPart, chosen: dict[str, float], turned: bool) -> Fitted:
    fault = _turned(part, turned)
    if part.what == MEMORY:
        fault = Fault(part.name, "corrupt")
    usual = listed(part)
    other = {name: figure for name, figure in chosen.items() if figure != usual[name]}
    rated = other.get("volts", other.get("amps"))
    return Fitted(fault, True, other.get("value"), rated, turned)


def _turned(part: BoardPart, turned: bool) -> Fault | None:
    """What a polar part the wrong way round is to the circuit."""
    if not turned or part.circuit is None or part.circuit.letter not in "CDU":
        return None
    return Fault(part.name, WRONG_WAY)


@at_the_board
def resolder(state: State, part: BoardPart, move: Move) -> Outcome:
    """Melts the joints of a part again, with fresh solder."""
    fitted = fitted_at(state, part)
    if part.what in NO_SOLDER:
        raise RepairlibError(part.name, "it has no solder on this board", "a part of the board")
    worked = heated(part, move)
    if worked.flowed and fitted.fault is not None and by_solder(part, fitted.fault.condition):
        state = state.with_place(part.name, fitted=replace(fitted, fault=None))
    if worked.flowed:
        state = state.with_place(part.name, leg_up=False)
    words = f"{part.name} has fresh solder." if worked.flowed else f"{part.name} is as it was."
    return _with_pads(state, part, worked, f"{words} {worked.words}")


@at_the_board
def bridge(state: State, part: BoardPart, move: Move) -> Outcome:
    """A wire in the place of a lifted pad."""
    place = state.places[part.name]
    if place.pads != LIFTED:
        raise RepairlibError(part.name, f"its pads are {place.pads}", "a place with a lifted pad")
    fitted = place.fitted
    if fitted is not None and fitted.fault is not None and fitted.fault.condition in BY_WIRE:
        fitted = replace(fitted, fault=None)
    after = state.with_place(part.name, fitted=fitted, pads=WIRED)
    return after, Told(f"A wire stands for the pad of {part.name}, glued down.")
