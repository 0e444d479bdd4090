"""Power and time: plug in, unplug, line, load, wait, discharge, clip."""

from __future__ import annotations

from dataclasses import replace

from repairlib.bench import dangers
from repairlib.bench.bench_supply import supply_shows
from repairlib.bench.electric import come_up, holds
from repairlib.bench.lamp_glow import glow
from repairlib.bench.move_words import HIGH, LOW, USUAL
from repairlib.bench.moves import Move, Told
from repairlib.bench.passing import passing
from repairlib.bench.prices import DISCHARGE_HELD, SECONDS, SUPPLY_SECONDS, WAIT_USUAL
from repairlib.bench.state import FULL, LAMP, LIGHT, OFF, OWN_PLUG, SUPPLY, Feed, State
from repairlib.bench.where import ends, has_leg_up, is_loose
from repairlib.circuits import CircuitPart
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import brief
from repairlib.power_up import LIVE, lamp_for

Outcome = tuple[State, Told]
MOST_VOLTS, LEAST_AMPS, MOST_AMPS = 30.0, 5e-3, 3.0  # of the bench supply; a choice
LONGEST_WAIT = 24 * 3600.0
LEAST_OHM, MOST_OHM = 0.01, 1e6  # held across a capacitor


def plug_in(state: State, move: Move) -> Outcome:
    """Feeds the set: by its own plug, through a lamp in series, or from the bench supply."""
    kind = SUPPLY if "supply" in move.words else LAMP if "lamp" in move.words else OWN_PLUG
    if state.powered and not state.feed.kind == kind == SUPPLY:
        raise RepairlibError(move.verb, f"it is already on, by the {state.feed.kind}", "unplug")
    if kind == SUPPLY:
        feed, words = _supply(state, move), "The bench supply is on."
    elif kind == LAMP:
        feed = Feed(LAMP, line=state.feed.line, lamp=_lamp(state, move))
        words = f"It is on through a lamp of {feed.lamp:g} W. {LIVE}"
    else:
        feed, words = Feed(OWN_PLUG, line=state.feed.line), "It is plugged in and on."
    seconds = SECONDS["plug in"] if kind == OWN_PLUG else SUPPLY_SECONDS
    return _as_seen(replace(state, feed=feed, charges=holds(state)), words, seconds)


def _as_seen(state: State, words: str, seconds: float) -> Outcome:
    """What the lamp or the supply shows when the move is over, where there is one."""
    seen = {LAMP: glow, SUPPLY: supply_shows}.get(state.feed.kind)
    if seen is None:
        return state, Told(words, seconds=seconds)
    reading = seen(come_up(state, seconds))
    return state, Told(f"{words} {_sentence(reading.shown)}", reading, seconds)


def _sentence(words: str) -> str:
    return f"{words[:1].upper()}{words[1:]}."


def _supply(state: State, move: Move) -> Feed:
    volts = move.figures.get("volts", state.set.feed_volts)
    limit = move.figures.get("amps", state.set.feed_amps)
    if not 0 < volts <= MOST_VOLTS:
        raise RepairlibError(brief(volts, "V"), "not given by the bench supply", "0.1 V to 30 V")
    if not LEAST_AMPS <= limit <= MOST_AMPS:
        raise RepairlibError(brief(limit, "A"), "no limit of the bench supply", "5 mA to 3 A")
    return Feed(SUPPLY, volts, limit, state.feed.line)


def _lamp(state: State, move: Move) -> float:
    watts = move.figures.get("watts")
    if watts is None:
        return float(lamp_for(max(15.0, 2 * state.set.feed_volts * state.set.feed_amps)))
    if lamp_for(watts) != watts:
        raise RepairlibError(brief(watts, "W"), "no such lamp lies here", f"{lamp_for(watts)} W")
    return watts


def unplug(state: State, move: Move) -> Outcome:
    """Takes the feed away; what capacitors held stays in them."""
    if not state.powered:
        raise RepairlibError(move.verb, "nothing is on", "plug in")
    after = replace(state, feed=Feed(OFF, line=state.feed.line), charges=holds(state))
    return after, Told("The plug is out.", seconds=SECONDS["unplug"])


def line(state: State, move: Move) -> Outcome:
    """Sets the mains, or the volts of the adapter, to low, usual or high."""
    share = move.figures.get("line", USUAL)
    if share not in (LOW, USUAL, HIGH):
        raise RepairlibError(f"{share * 100:g} %", "no step of the line here", "90, 100 or 110 %")
    words = f"The line is at {share * 100:g} %."
    if not state.set.part(state.set.feed).follows_line:
        words += " The adapter holds its volts all the same."
    if state.feed.kind == SUPPLY:
        words += " That counts when its own plug is in."
    after = replace(_goes_on(state), feed=replace(state.feed, line=share))
    return _as_seen(after, words, SECONDS["line"])


def load(state: State, move: Move) -> Outcome:
    """Sets how much the set is asked to do."""
    word = move.words or FULL
    if word not in (LIGHT, FULL):
        raise RepairlibError(move.words, "no load of this set", "light, full")
    after = replace(_goes_on(state), load=word)
    return _as_seen(after, f"The load is {word}.", SECONDS["load"])


def _goes_on(state: State) -> State:
    """The state from whose charges the next one goes on while the power stays on."""
    return replace(state, charges=holds(state)) if state.powered else state


def wait(state: State, move: Move) -> Outcome:
    """Lets time go by."""
    seconds = move.figures.get("seconds", WAIT_USUAL)
    if not 0 < seconds <= LONGEST_WAIT:
        raise RepairlibError(brief(seconds, "s"), "no wait for a bench", "1 s to 24 h")
    return state, Told(f"{brief(seconds, 's')} have gone by.", seconds=seconds)


def clip(state: State, move: Move) -> Outcome:
    """The black probe clipped to a point, or taken off."""
    if not move.at:
        return replace(state, clipped=""), Told("The clip is off.", seconds=SECONDS["clip"])
    point = move.at[0]
    if point not in state.set.points:
        raise RepairlibError(point, "the clip needs a point", ", ".join(state.set.points))
    if (struck := dangers.probing(state, point, point)) is not None:
        return struck
    return replace(state, clipped=point), Told(
        f"The black probe is clipped to {point}.", seconds=SECONDS["clip"]
    )


def discharge(state: State, move: Move) -> Outcome:
    """A resistor held across a part or two points."""
    one, other = ends(state, move.at)
    ohm = move.figures.get("ohm", 1e3)
    seconds = move.figures.get("seconds", DISCHARGE_HELD)
    if not LEAST_OHM <= ohm <= MOST_OHM:
        raise RepairlibError(brief(ohm, "Ω"), "no resistor to discharge with", "10 mΩ to 1 MΩ")
    if not 0 < seconds <= LONGEST_WAIT:
        raise RepairlibError(brief(seconds, "s"), "no time to hold it", "1 s to 24 h")
    if (struck := dangers.holding_on(state, one, other)) is not None:
        return struck
    if is_loose(state, one) and not has_leg_up(state, move.at[0]):
        raise RepairlibError(move.at[0], "it holds no charge that counts", "a part of the board")
    told = Told(f"{brief(ohm, 'Ω')} was held on {one} and {other}.", seconds=seconds)
    struck = dangers.held_on(state, one, other, ohm)
    if struck is not None:
        state, consequence = struck
        told = replace(consequence, words=f"{told.words} {consequence.words}", seconds=seconds)
    if state.ended:
        return state, told
    resistor = CircuitPart("R held on", (one, other), ohm)
    return passing(state, seconds, (resistor,))[0], told
