"""Symptoms of a small supply: what each aged or broken part does to it, worked out, not asserted.

The supply is one of a small set: 9 V of a transformer, a bridge, a reservoir, a regulator of 5 V.
What counts as a symptom is a comparison with the sound supply and with the limits of its rails.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from functools import cache
from typing import NamedTuple

from repairlib.circuits.parts import ZERO, CircuitPart
from repairlib.circuits.settled import Cycle, mains_of, one_cycle
from repairlib.circuits.supplies import BRIDGE, aged, opened, scaled, shorted, supply
from repairlib.core.errors import RepairlibError
from repairlib.core.tables import read_table
from repairlib.health import part_named
from repairlib.power_up import FULL, smoothing_ripple, windows

SOUND = "none: a sound supply"
MAINS_HZ = 50.0
SECONDARY, LOAD, RESERVOIR = 9.0, 0.15, 1000e-6  # V r.m.s., A, F
OUTPUT = "+5 V"  # the rail behind the regulator, a row of supply-rails
DROPOUT = 2.0  # V, that the regulator needs above its output
LEAK = 50.0  # Ω, of a reservoir that leaks
BAD_JOINT = 15.0  # Ω

# When a symptom is seen. Shares of the sound supply are a choice.
LESS = 0.2  # of the µF printed on it, by which a reservoir may be below; power_up.ripple_check
RAIL_OFF = 0.1  # of the mean of the sound rail
MORE, AT_ONCE = 1.5, 5.0  # times the current of the sound supply, r.m.s. in the winding
WARM = 0.1  # W in the reservoir: some 10 K on a can of 10 mm by 20 mm; from memory
DEAD = 0.1  # of the output's volts

RIPPLE_DOUBLE, RIPPLE_MAINS = "ripple at twice mains", "ripple at mains"
RAIL_LOW, RAIL_HIGH = "rail low", "rail high"
OUTPUT_LOW, OUTPUT_HIGH, OUTPUT_RIPPLES = "output low", "output high", "output ripples"
NO_OUTPUT, WARM_CAN = "no output", "reservoir warm"
TOO_MUCH, LIMITING = "draws too much", "limit at once"
SYMPTOMS = {
    RIPPLE_DOUBLE: "the ripple of the reservoir is too large, at twice the mains frequency",
    RIPPLE_MAINS: "the ripple of the reservoir is too large, at the mains frequency itself",
    RAIL_LOW: "the mean of the reservoir is low",
    RAIL_HIGH: "the mean of the reservoir is high",
    OUTPUT_LOW: "the regulated rail falls below its window",
    OUTPUT_HIGH: "the regulated rail runs above its window",
    OUTPUT_RIPPLES: "the regulated rail has too much ripple",
    NO_OUTPUT: "the regulated rail is dead",
    WARM_CAN: "the reservoir gets warm",
    TOO_MUCH: "the supply draws more than it should",
    LIMITING: "the current limit is reached at once, or the fuse blows",
}


class Look(NamedTuple):
    """What instruments see: volts of the reservoir and of the output, `hertz` of the ripple.

    `amps` r.m.s. in the winding, `watts` in the reservoir.
    """

    mean: float
    ripple: float
    hertz: float
    low: float
    high: float
    amps: float
    watts: float


class Row(NamedTuple):
    """A row of supply-symptoms: a fault, what it shows, the likely part, what decides."""

    fault: str
    shows: tuple[str, ...]
    part: str
    decides: str
    source: str


def small_supply() -> tuple[CircuitPart, ...]:
    """The sound supply: reservoir C1, regulator U1, load I1, and R1, which empties the reservoir.

    >>> [part.name for part in small_supply()]
    ['V1', 'D1', 'D2', 'D3', 'D4', 'C1', 'I1', 'U1', 'R1']
    """
    parts = supply(
        BRIDGE,
        f"{SECONDARY:g} V",
        f"{MAINS_HZ:g} Hz",
        f"{RESERVOIR!r} F",
        f"{LOAD:g} A",
        esr="0.2 Ω",
        winding="series 1 Ω",
        regulator=f"{windows()[OUTPUT].nominal:g} V,dropout {DROPOUT:g} V",
    )
    return (*parts, CircuitPart("R1", ("rail", ZERO), 2200.0))


def _with_leak(parts: tuple[CircuitPart, ...]) -> tuple[CircuitPart, ...]:
    return (*parts, CircuitPart("R2 of C1", ("rail", ZERO), LEAK))


def _with_bad_joint(parts: tuple[CircuitPart, ...]) -> tuple[CircuitPart, ...]:
    winding = part_named(parts, "V1")
    more = {**winding.more, "series": winding.more["series"] + BAD_JOINT}
    worse = CircuitPart(winding.name, winding.nodes, winding.value, more)
    return tuple(worse if part is winding else part for part in parts)


FAULTS: dict[str, Callable[[tuple[CircuitPart, ...]], tuple[CircuitPart, ...]]] = {
    SOUND: lambda parts: parts,
    "reservoir dried out": lambda parts: aged(parts, "C1", capacitance=0.4, esr=3),
    "reservoir nearly empty": lambda parts: aged(parts, "C1", capacitance=0.12, esr=5),
    "ESR of the reservoir high": lambda parts: aged(parts, "C1", capacitance=0.9, esr=15),
    "reservoir leaks": _with_leak,
    "reservoir shorted": lambda parts: shorted(parts, "C1"),
    "lead of the reservoir broken": lambda parts: opened(parts, "C1"),
    "one diode open": lambda parts: opened(parts, "D1"),
    "one diode shorted": lambda parts: shorted(parts, "D1"),
    "regulator shorted": lambda parts: shorted(parts, "U1"),
    "regulator open": lambda parts: opened(parts, "U1"),
    "load too heavy": lambda parts: scaled(parts, "I1", 2.2),
    "bad joint before the rectifier": _with_bad_joint,
    "output shorted": lambda parts: shorted(parts, "I1"),
}


@cache
def waves_of(fault: str) -> Cycle:
    """One settled cycle of the supply with that fault: points a, b, rail, out, and inside C1.

    Raises RepairlibError for a fault that is not known.

    >>> float(waves_of("none: a sound supply").volts["out"].min().round(2))
    5.0
    """
    return one_cycle(_parts_of(fault), "a", "b", "rail", "out", *_inside(fault))


@cache
def look_at(fault: str) -> Look:
    """What instruments see at the supply with that fault.

    Raises RepairlibError for a fault that is not known.

    >>> look_at("one diode open").hertz, look_at("reservoir dried out").hertz
    (50.0, 100.0)
    """
    parts, volts = _parts_of(fault), waves_of(fault).volts
    rail, out = volts["rail"], volts["out"]
    return Look(
        mean=float(rail.mean()),
        ripple=float(rail.max() - rail.min()),
        hertz=_hertz(parts, rail),
        low=float(out.min()),
        high=float(out.max()),
        amps=_amps(parts, waves_of(fault)),
        watts=sum(_watts(part, volts) for part in parts if part.name.endswith(" of C1")),
    )


@cache
def symptoms_of(fault: str) -> tuple[str, ...]:
    """The symptoms that the supply shows with that fault, of SYMPTOMS, in their order.

    Raises RepairlibError for a fault that is not known.

    >>> symptoms_of("none: a sound supply"), symptoms_of("reservoir dried out")
    ((), ('ripple at twice mains',))
    """
    seen, sound, window = look_at(fault), look_at(SOUND), windows()[OUTPUT]
    ripples, dead = seen.ripple > most_ripple(), seen.high < DEAD * window.nominal
    found = {
        RIPPLE_DOUBLE: ripples and seen.hertz == 2 * MAINS_HZ,
        RIPPLE_MAINS: ripples and seen.hertz == MAINS_HZ,
        RAIL_LOW: seen.mean < (1 - RAIL_OFF) * sound.mean,
        RAIL_HIGH: seen.mean > (1 + RAIL_OFF) * sound.mean,
        OUTPUT_LOW: seen.low < window.low and not dead,
        OUTPUT_HIGH: seen.high > window.high,
        OUTPUT_RIPPLES: seen.high - seen.low > (window.ripple or 0.0) and not dead,
        NO_OUTPUT: dead,
        WARM_CAN: seen.watts > WARM,
        TOO_MUCH: seen.amps > MORE * sound.amps,
        LIMITING: seen.amps > AT_ONCE * sound.amps,
    }
    return tuple(symptom for symptom in SYMPTOMS if found[symptom])


def most_ripple() -> float:
    """The most ripple [V] that a sound reservoir at the lower end of its tolerance may have.

    >>> round(most_ripple(), 3)
    1.875
    """
    return smoothing_ripple(LOAD, RESERVOIR, MAINS_HZ, FULL) / (1 - LESS)


@cache
def symptom_rows() -> tuple[Row, ...]:
    """The table of symptoms, a row for each fault; the tests hold it to what is worked out.

    >>> symptom_rows()[0].part
    'reservoir'
    """
    return tuple(
        Row(
            row["fault"], tuple(row["shows"].split(";")), row["part"], row["decides"], row["source"]
        )
        for row in read_table("supply-symptoms")
    )


def that_fit(symptoms: Iterable[str]) -> tuple[Row, ...]:
    """The faults that show these symptoms and no others.

    Raises RepairlibError for a symptom that is not known.

    >>> [row.fault for row in that_fit(["output high", "output ripples"])]
    ['regulator shorted']
    """
    seen = set(symptoms)
    strangers = sorted(seen - set(SYMPTOMS))
    if strangers:
        raise RepairlibError(strangers[0], "no symptom known here", ", ".join(SYMPTOMS))
    return tuple(row for row in symptom_rows() if set(row.shows) == seen)


def _parts_of(fault: str) -> tuple[CircuitPart, ...]:
    """The supply with that fault; the ESR of its reservoir stands beside it, to be seen."""
    if fault not in FAULTS:
        raise RepairlibError(fault, "no fault known here", ", ".join(FAULTS))
    found: list[CircuitPart] = []
    for part in FAULTS[fault](small_supply()):
        if part.letter == "C":
            found.append(CircuitPart("R of C1", ("rail", "inside"), part.more["esr"]))
            part = CircuitPart(part.name, ("inside", ZERO), part.value, {"esr": 0.0})
        found.append(part)
    return tuple(found)


def _inside(fault: str) -> tuple[str, ...]:
    return tuple({point for part in _parts_of(fault) for point in part.nodes} & {"inside"})


def _hertz(parts: tuple[CircuitPart, ...], rail) -> float:
    """The frequency that is strongest in the ripple: of mains, or twice that."""
    import numpy as np

    strength = np.abs(np.fft.rfft(rail))
    return mains_of(parts) * (1 if strength[1] > strength[2] else 2)


def _amps(parts: tuple[CircuitPart, ...], cycle: Cycle) -> float:
    """The current in the winding, r.m.s., from the voltage that its resistance takes."""
    winding = part_named(parts, "V1")
    return float((_lost(winding, cycle) ** 2).mean() ** 0.5) / winding.more["series"]


def _lost(winding: CircuitPart, cycle: Cycle):
    """The voltage that the resistance of the winding takes, at each instant."""
    import numpy as np

    inside = winding.peak * np.sin(2 * np.pi * winding.more["mains"] * cycle.seconds)
    return inside - (cycle.volts["a"] - cycle.volts["b"])


def _watts(part: CircuitPart, volts) -> float:
    """The mean power in a resistor."""
    one, other = (volts.get(point, 0.0) for point in part.nodes)
    return float(((one - other) ** 2).mean() / part.value)
