"""What happens to hands and tools where something is live, charged, hot or of the mains side.

The limits are those of core/limits.py and the sentences those of core/safety.py. Nothing here says
that a place is safe.
"""

from __future__ import annotations

from dataclasses import replace

from repairlib.bench.electric import electric
from repairlib.bench.moves import Told
from repairlib.bench.practice_set import BoardPart
from repairlib.bench.state import HARMED, LAMP, OWN_PLUG, ROOM, SUPPLY, End, State
from repairlib.bench.where import is_loose, on_mains_side
from repairlib.core.errors import RepairlibError
from repairlib.core.limits import TOUCHABLE_DC
from repairlib.core.quantity import engineering
from repairlib.core.safety import HAZARDS
from repairlib.stored_charge import QUALIFIED, by_voltage

SPARK_VOLTS, SPARK_JOULE = 2.0, 5e-3  # below, a tip across a capacitor is not noticed; a choice
HOT_TOUCH = 55.0  # °C, the finger comes away by itself; from memory
BURNS = 70.0  # °C of bare metal that burns within a second; from memory
HOT, WARM_TOUCH = 45.0, 32.0  # °C, what a finger calls so; a choice of this workbook
SHORT_OHM = 1.0  # Ω, below which what is held on is a short
MOST_WATTS = 500.0  # at the first instant: ten times those of the largest resistor at a bench
WORTH_NAMING = 0.1  # J; with less no resistor bursts, whatever the watts: common practice
Outcome = tuple[State, Told]


def harmed(state: State, what: str, hazard: str) -> Outcome:
    """The end of an attempt in which somebody would have been hurt: what was done, and why."""
    struck = HAZARDS[hazard].of_part or HAZARDS[hazard]
    why = f"{what} {struck.strikes}"
    after = replace(state, ended=End(HARMED, why, hazard), harm=(*state.harm, what))
    return after, Told(f"{why} {struck.defer} The attempt ends here.", alarm=True)


def damaged(state: State, what: str) -> State:
    """The state with one more thing damaged."""
    return replace(state, harm=(*state.harm, what))


def probing(state: State, one: str, other: str) -> Outcome | None:
    """What happens when probes go to these two points; None when nothing does.

    Raises RepairlibError for the mains side while the plug is out.
    """
    point = _of_mains(state, one, other)
    return near_mains(state, point, f"The probe went to {point}, on the mains side.", point)


def near_mains(state: State, where: str, what: str, there: str = "") -> Outcome | None:
    """What an instrument comes to at `there`, a place of the mains side; "" for another.

    With the plug in the attempt ends. Raises RepairlibError with the plug out: nothing is lost.
    """
    if not there:
        return None
    if state.feed.kind in (OWN_PLUG, LAMP):
        return harmed(state, what, "mains")
    raise RepairlibError(
        where, "the mains side is handed on, with the plug out too", "another place, or hand on"
    )


def holding_on(state: State, one: str, other: str) -> Outcome | None:
    """What happens when a resistor or a blade is held on two points; None when nothing does yet."""
    if point := _of_mains(state, one, other):
        return harmed(state, f"A hand went to {point}, on the mains side.", "mains")
    if state.powered:
        return harmed(state, "The resistor was held on with the power on.", hazard_on(state))
    return None


def _of_mains(state: State, one: str, other: str) -> str:
    """Which of two points is of the mains side, "" where neither is."""
    ends = (point for point in (one, other) if not is_loose(state, point))
    return next((point for point in ends if on_mains_side(state.set, point)), "")


def hands_on(state: State, part: BoardPart) -> Outcome | None:
    """What happens when a tool goes to a part; None when nothing does, or no more than a spark."""
    if part.mains:
        return harmed(state, f"{part.name} is on the mains side, which is handed on.", "mains")
    if state.powered:
        return harmed(state, f"A tool went to {part.name} with the power on.", hazard_on(state))
    volts, joule = charge_at(state, part.nodes)
    if is_for_others(volts, joule):
        held = engineering(volts, "V", 3)
        return harmed(state, f"{part.name} still held {held} when the tool came.", "stored charge")
    return None


def hazard_on(state: State) -> str:
    """What strikes who works on a set that is on: the mains where it has a side of it."""
    mains = any(part.mains for part in state.set.parts)
    return "mains" if mains and state.feed.kind != SUPPLY else "live board"


def is_for_others(volts: float, joule: float) -> bool:
    """Whether a charge is left to somebody qualified: above 60 V dc, or energy that burns."""
    return by_voltage(volts, joule)[0] == QUALIFIED


def spark(state: State, part: BoardPart) -> tuple[State, str]:
    """A tool at a part that is charged below what hurts: the spark, and what it leaves behind."""
    volts, joule = charge_at(state, part.nodes)
    if volts < SPARK_VOLTS or joule < SPARK_JOULE:
        return state, ""
    held = engineering(volts, "V", 3)
    what = f"{part.name} was still charged to {held}: the tip shorted it with a crack."
    return damaged(replace(state, charges=without(state, part.nodes)), what), what


def held_on(state: State, one: str, other: str, ohm: float) -> Outcome | None:
    """A resistor put across two points without power: what it does beside discharging them.

    None where it bears it. A blade is a short. A wirewound resistor bears ten times its watts for
    5 s, the largest at a bench has 50 W (stored_charge).
    """
    volts = abs(electric(state).between(one, other))
    joule = charge_at(state, (one, other))[1]
    held = engineering(volts, "V", 3)
    if is_for_others(volts, joule):
        return harmed(state, f"{held} stood there when the resistor came.", "stored charge")
    if volts < SPARK_VOLTS or joule < SPARK_JOULE:
        return None
    if ohm < SHORT_OHM:
        what = f"A bang and a spark: {held} went through a short, and the metal is pitted."
    elif volts**2 / ohm > MOST_WATTS and joule >= WORTH_NAMING:
        what = f"The resistor burst: {held} across {engineering(ohm, 'Ω', 3)} at the first instant."
    else:
        return None
    return damaged(state, what), Told(what, alarm=True)


def charge_at(state: State, nodes: tuple[str, str]) -> tuple[float, float]:
    """The most volts at two points without power, and the joule of the capacitors there."""
    held = dict(state.charges)
    if state.powered or not held:
        return 0.0, 0.0
    now = electric(state).mean
    first, second = (now.get(node, 0.0) for node in nodes)
    joule = sum(
        part.circuit.value * held[part.circuit.name] ** 2 / 2
        for part in state.set.parts
        if part.circuit and part.circuit.name in held and _meets(part, nodes)
    )
    return max(abs(first), abs(second), abs(first - second)), joule


def _meets(part: BoardPart, nodes: tuple[str, str]) -> bool:
    return bool(set(part.nodes) & set(nodes) - {"0"})


def without(state: State, nodes: tuple[str, str]) -> dict[str, float]:
    """The charges once the capacitors at these points were shorted."""
    here = {part.circuit.name for part in state.set.parts if part.circuit and _meets(part, nodes)}
    return {name: 0.0 if name in here else volts for name, volts in dict(state.charges).items()}


def touching(state: State, part: BoardPart) -> Outcome:
    """The back of a finger at a part."""
    if part.mains:
        return harmed(state, f"The finger went to {part.name}, on the mains side.", "mains")
    now = electric(state)
    volts = max(
        (max(abs(now.low[node]), abs(now.high[node])) for node in part.nodes if node in now.mean),
        default=0.0,
    )
    if volts > TOUCHABLE_DC:
        held = engineering(volts, "V", 3)
        hazard = "live board" if state.powered else "stored charge"
        return harmed(state, f"The finger met {held} at {part.name}.", hazard)
    celsius = ROOM + dict(state.heat).get(part.name, 0.0)
    if celsius >= BURNS:
        what = f"{part.name} burnt the finger: about {celsius:.0f} °C."
        why = f"{what} A thermometer would have told it."
        after = replace(state, ended=End(HARMED, why, "heat and fire"), harm=(*state.harm, what))
        return after, Told(f"{why} The attempt ends here.", alarm=True)
    return state, Told(f"{part.name} is {_warmth(celsius)}.")


def _warmth(celsius: float) -> str:
    if celsius >= HOT_TOUCH:
        return "too hot for the finger to stay"
    return "hot" if celsius >= HOT else "warm" if celsius >= WARM_TOUCH else "cool"
