"""What happens to hands and tools where something is live, charged, hot or of the mains side.

The limits are those of core/limits.py and the sentences those of core/safety.py. Nothing here says
that a place is safe.
"""

from __future__ import annotations

from dataclasses import replace

from repairlib.bench.electric import electric
from repairlib.bench.moves import Told
from repairlib.bench.practice_set import BoardPart
from repairlib.bench.state import HARMED, ROOM, End, State
from repairlib.bench.where import is_loose, on_mains_side
from repairlib.core.limits import HOT_JOULE, TOUCHABLE_DC
from repairlib.core.quantity import engineering
from repairlib.core.safety import HAZARDS

SPARK_VOLTS, SPARK_JOULE = 2.0, 5e-3  # below, a tip across a capacitor is not noticed; a choice
HOT_TOUCH = 55.0  # °C, the finger comes away by itself; from memory
BURNS = 70.0  # °C of bare metal that burns within a second; from memory
Outcome = tuple[State, Told]


def harmed(state: State, what: str, hazard: str) -> Outcome:
    """The end of an attempt in which somebody would have been hurt: what was done, and why."""
    why = f"{what} {HAZARDS[hazard].strikes}"
    return replace(state, ended=End(HARMED, why, hazard), harm=(*state.harm, what)), Told(
        f"{why} The attempt ends here.", alarm=True
    )


def damaged(state: State, what: str) -> State:
    """The state with one more thing damaged."""
    return replace(state, harm=(*state.harm, what))


def probing(state: State, one: str, other: str) -> Outcome | None:
    """What happens when probes go to these two points; None when nothing does."""
    for point in (one, other):
        if not is_loose(state, point) and on_mains_side(state.set, point):
            return harmed(state, f"The probe went to {point}, on the mains side.", "mains")
    return None


def hands_on(state: State, part: BoardPart) -> Outcome | None:
    """What happens when a tool goes to a part; None when nothing does, or no more than a spark."""
    if part.mains:
        return harmed(state, f"{part.name} is on the mains side.", "mains")
    if state.powered:
        hazard = "mains" if any(one.mains for one in state.set.parts) else "heat and fire"
        return harmed(state, f"There was a tool at {part.name} while the set was on.", hazard)
    volts, joule = charge_at(state, part)
    if volts > TOUCHABLE_DC or joule > HOT_JOULE:
        held = engineering(volts, "V", 3)
        return harmed(state, f"{part.name} still held {held} when the tool came.", "stored charge")
    return None


def spark(state: State, part: BoardPart) -> tuple[State, str]:
    """A tool at a part that is charged below what hurts: the spark, and what it leaves behind."""
    volts, joule = charge_at(state, part)
    if volts < SPARK_VOLTS or joule < SPARK_JOULE:
        return state, ""
    held = engineering(volts, "V", 3)
    what = f"{part.name} was still charged to {held}: the tip shorted it with a crack."
    return damaged(replace(state, charges={}), what), what


def charge_at(state: State, part: BoardPart) -> tuple[float, float]:
    """The most volts at the ends of a part without power, and the joule of what holds them."""
    held = dict(state.charges)
    if state.powered or not held:
        return 0.0, 0.0
    now = electric(state).mean
    volts = max(abs(now.get(node, 0.0)) for node in part.nodes)
    across = abs(now.get(part.nodes[0], 0.0) - now.get(part.nodes[1], 0.0))
    joule = sum(
        one.circuit.value * held[one.circuit.name] ** 2 / 2
        for one in state.set.parts
        if one.circuit is not None
        and one.circuit.letter == "C"
        and set(one.nodes) & set(part.nodes) - {"0"}
        and one.circuit.name in held
    )
    return max(volts, across), joule


def touching(state: State, part: BoardPart) -> Outcome:
    """The back of a finger at a part."""
    if part.mains:
        return harmed(state, f"The finger went to {part.name}, on the mains side.", "mains")
    now = electric(state)
    volts = max(
        max(abs(now.low[node]), abs(now.high[node])) for node in part.nodes if node in now.mean
    )
    if volts > TOUCHABLE_DC:
        held = engineering(volts, "V", 3)
        return harmed(state, f"The finger met {held} at {part.name}.", "stored charge")
    celsius = ROOM + dict(state.heat).get(part.name, 0.0)
    if celsius >= BURNS:
        what = f"{part.name} burnt the finger: about {celsius:.0f} °C."
        return damaged(state, what), Told(f"{what} A thermometer would have told it.", alarm=True)
    return state, Told(f"{part.name} is {_warmth(celsius)}.")


def _warmth(celsius: float) -> str:
    if celsius >= HOT_TOUCH:
        return "too hot for the finger to stay"
    return "hot" if celsius >= 45 else "warm" if celsius >= 32 else "cool"
