"""Charge on a body: how high walking takes it, what a discharge carries, how fast it drains.

Covers the human body model (100 pF through 1500 Ω), decay through a strap or mat, and charging by
walking. Which parts a voltage harms is in parts.py.
"""

from __future__ import annotations

import math
from typing import Annotated

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity, brief

BODY_FARAD = 100e-12  # human body model
BODY_OHM = 1500.0  # human body model
FELT = 3000.0  # V; below it nobody feels the spark
EPSILON = 8.85e-12  # F/m
BREAKDOWN = 3e6  # V/m, of air

# Activity: (10-25 % RH, 65-90 % RH, by the table with three columns at 10, 40, 55 % RH), in V.
ACTIVITIES = {
    "walk on carpet": (35000, 1500, (35000, 15000, 7500)),
    "walk on vinyl floor": (12000, 250, (12000, 5000, 3000)),
    "work at the bench": (6000, 100, (6000, 800, 400)),
    "pick up a poly bag": (20000, 1200, ()),
    "rise from a padded chair": (18000, 1500, ()),
}
_COLUMNS = (10, 40, 55)
_DRY_TO, _DAMP_FROM = 25, 65
_FROM_MEMORY = ("pick up a poly bag", "rise from a padded chair")
_CAPACITANCE = {"above": 0, "at_most": 1e-6}
_VOLTS = {"above": 0, "at_most": 1e5}
_OHMS = {"at_least": 1e-3, "at_most": 1e15}


@calculator(
    topic="esd",
    title="Charge on a body",
    sources=("ESD qualification",),
)
def body_charge(
    activity: Annotated[str, Choice(tuple(ACTIVITIES), "What the person does.")],
    humidity: Annotated[
        float, Given("%", "Relative humidity of the room.", at_least=0, at_most=100)
    ],
    capacitance: Annotated[float, Given("F", "Of the body.", **_CAPACITANCE)] = BODY_FARAD,
) -> Found:
    """The voltage that an activity may reach, with the energy and current of its spark.

    `humidity` 0 to 100 % RH, `capacitance` of the body in farad. Between two listed humidities the
    drier one counts. The figures are typical upper ones. Raises RepairlibError for a humidity
    outside 0 to 100 %. Source: a server service guide (10, 40, 55 %), a plastics maker's
    definitions (10 to 25 %, 65 to 90 %); two activities are from memory.

    >>> print(body_charge("walk on carpet", "20 %"))
    Charge on a body: voltage 35 kV; energy 61.25 mJ; charge 3.5 µC; peak current 23.3 A
    """
    volts, listed, sources = _typical(activity, humidity)
    notes = [f"Listed for {listed}. Typical upper figures: your room decides."]
    if activity == "walk on vinyl floor" and humidity >= _DAMP_FROM:
        notes.append("Sources disagree: 250 V (from memory) was taken; one page says 3000 V.")
    if volts < FELT:
        notes.append(f"Nobody feels a spark below about {FELT:g} V. It harms parts all the same.")
    values, working = _spark(volts, capacitance, BODY_OHM)
    return found(
        {"voltage": Quantity(volts, "V")} | values, working=working, notes=notes, sources=sources
    )


@calculator(
    topic="esd",
    title="Spark from a body",
    sources=("ESD qualification",),
)
def body_spark(
    voltage: Annotated[float, Given("V", "Of the body before.", **_VOLTS)],
    capacitance: Annotated[float, Given("F", "Of the body.", **_CAPACITANCE)] = BODY_FARAD,
    resistance: Annotated[float, Given("Ω", "In the way of the current.", **_OHMS)] = BODY_OHM,
) -> Found:
    """Energy, charge, peak current and time constant of a discharge in the human body model.

    `voltage` to 100 kV, `capacitance` to 1 µF, `resistance` in ohm. The rise time is left out.
    Raises RepairlibError outside these ranges. Source: a note on ESD qualification: 100 pF through
    1500 Ω, 0.67 A at 1000 V.

    >>> print(body_spark("2 kV"))
    Spark from a body: energy 200.0 µJ; charge 200 nC; peak current 1.33 A; time constant 150 ns
    """
    values, working = _spark(voltage, capacitance, resistance)
    tau = resistance * capacitance
    working.append(f"τ = R C = {brief(tau, 's')}")
    return found(values | {"time_constant": Quantity(tau, "s", 3)}, working=working)


@calculator(
    topic="esd",
    title="Time for a charge to drain",
    sources=("common practice",),
)
def charge_decay(
    voltage: Annotated[float, Given("V", "At the start.", **_VOLTS)],
    target: Annotated[float, Given("V", "To get down to.", **_VOLTS)],
    resistance: Annotated[float, Given("Ω", "Of the strap or mat, to ground.", **_OHMS)],
    capacitance: Annotated[float, Given("F", "Of the body.", **_CAPACITANCE)] = BODY_FARAD,
) -> Found:
    """t = R C ln(V0 / V): how long a body needs to drain through a strap or mat.

    Volts, ohm and farad; `target` below `voltage`. Raises RepairlibError when it is not. Source:
    the law of discharge through a resistor.

    >>> print(charge_decay("5 kV", "100 V", "1 MΩ"))
    Time for a charge to drain: time 391 µs; time constant 100 µs
    """
    _check_target(voltage, target)
    tau = resistance * capacitance
    seconds = tau * math.log(voltage / target)
    working = [
        f"τ = R C = {brief(tau, 's')}",
        f"t = τ ln({brief(voltage, 'V')} / {brief(target, 'V')}) = {brief(seconds, 's')}",
    ]
    return found(
        {"time": Quantity(seconds, "s", 3), "time_constant": Quantity(tau, "s", 3)}, working=working
    )


@calculator(
    topic="esd",
    title="Voltage left on a body",
    sources=("common practice",),
)
def charge_left(
    voltage: Annotated[float, Given("V", "At the start.", **_VOLTS)],
    resistance: Annotated[float, Given("Ω", "Of the strap or mat, to ground.", **_OHMS)],
    time: Annotated[float, Given("s", "Since the start.", at_least=0, at_most=1e6)],
    capacitance: Annotated[float, Given("F", "Of the body.", **_CAPACITANCE)] = BODY_FARAD,
) -> Found:
    """V = V0 exp(-t / (R C)): the voltage of a body after a time on the strap.

    Volts, ohm, seconds and farad. Raises RepairlibError outside the ranges. Source: the law of
    discharge through a resistor.

    >>> charge_left("2000 V", "35 MΩ", "10 ms").voltage
    114.9 V
    """
    tau = resistance * capacitance
    volts = voltage * math.exp(-time / tau)
    working = [
        f"τ = R C = {brief(tau, 's')}",
        f"V = {brief(voltage, 'V')} × exp(-{brief(time, 's')} / τ) = {brief(volts, 'V')}",
    ]
    return found({"voltage": Quantity(volts, "V", 4)}, working=working)


@calculator(
    topic="esd",
    title="Largest resistance to ground",
    sources=("common practice",),
)
def drain_resistance(
    voltage: Annotated[float, Given("V", "At the start.", **_VOLTS)],
    target: Annotated[float, Given("V", "To get down to.", **_VOLTS)],
    time: Annotated[float, Given("s", "In at most this time.", at_least=1e-9, at_most=1e6)],
    capacitance: Annotated[float, Given("F", "Of the body.", **_CAPACITANCE)] = BODY_FARAD,
) -> Found:
    """R = t / (C ln(V0 / V)): the largest resistance that drains a body in time.

    Volts, seconds and farad; `target` below `voltage`. Raises RepairlibError when it is not.
    Source: the law of discharge through a resistor.

    >>> print(drain_resistance("5 kV", "100 V", "0.1 s"))
    Largest resistance to ground: resistance 256 MΩ
    """
    _check_target(voltage, target)
    ohm = time / (capacitance * math.log(voltage / target))
    working = [
        f"R = t / (C ln(V0 / V)) = {brief(time, 's')} / ({brief(capacitance, 'F')} × "
        f"{math.log(voltage / target):.4g}) = {brief(ohm, 'Ω')}"
    ]
    return found({"resistance": Quantity(ohm, "Ω", 3)}, working=working)


@calculator(
    topic="esd",
    title="Charging by walking",
    sources=("Charging by Walking",),
)
def charging_by_walking(
    sole_cm2: Annotated[float, Given("", "Area of a sole in cm².", above=0, at_most=1e4)] = 150.0,
    steps: Annotated[float, Given("", "Steps a second.", above=0, at_most=10)] = 2.0,
    body: Annotated[float, Given("F", "Capacitance of the body.", **_CAPACITANCE)] = 150e-12,
    hold: Annotated[float, Given("V", "Voltage to stay below.", **_VOLTS)] = 100.0,
) -> Found:
    """What each step can add before air breaks down, and the resistance that drains it.

    `sole_cm2` in cm², `steps` a second, `body` in farad, `hold` in volts. Raises RepairlibError
    outside the ranges. Source: a magazine article, Charging by Walking.

    >>> print(charging_by_walking(150))
    Charging by walking: charge 398 nC; current 797 nA; first step 2.655 kV; resistance 126 MΩ
    """
    charge = EPSILON * BREAKDOWN * sole_cm2 * 1e-4
    current = charge * steps
    ohm = resistance_to_hold(hold, current)
    working = [
        f"Q = ε0 E A = 8.85e-12 × 3e6 × {sole_cm2:g} cm² = {brief(charge, 'C')}",
        f"I = {steps:g} × Q = {brief(current, 'A')}",
        f"V = Q / C = {brief(voltage_of(charge, body), 'V')}",
        f"R = V / I = {brief(hold, 'V')} / I = {brief(ohm, 'Ω')}",
    ]
    values = {
        "charge": Quantity(charge, "C", 3),
        "current": Quantity(current, "A", 3),
        "first_step": Quantity(voltage_of(charge, body), "V", 4),
        "resistance": Quantity(ohm, "Ω", 3),
    }
    return found(values, working=working)


def voltage_of(charge: float, capacitance: float) -> float:
    """V = Q / C, in volts: the same charge on twice the capacitance is half the voltage.

    Charge in coulomb, capacitance in farad above 0.

    >>> voltage_of(12e-9, 60e-12), voltage_of(12e-9, 120e-12)
    (200.0, 100.0)
    """
    if not capacitance > 0:
        raise RepairlibError(capacitance, "no capacitance", "a capacitance above 0 F")
    return charge / capacitance


def resistance_to_hold(volts: float, ampere: float) -> float:
    """R = V / I: the resistance to ground that holds a body at `volts` while `ampere` charge it.

    >>> resistance_to_hold(100, 1e-6)
    100000000.0
    """
    if not ampere > 0 or not volts > 0:
        raise RepairlibError(f"{volts} V, {ampere} A", "not above 0", "volts and ampere above 0")
    return volts / ampere


def _typical(activity: str, humidity: float) -> tuple[float, str, tuple[str, ...]]:
    """Volts, the humidity they are listed for, and the sources."""
    dry, damp, columns = ACTIVITIES[activity]
    broad = ("from memory",) if activity in _FROM_MEMORY else ("ESD definitions",)
    if humidity >= _DAMP_FROM:
        vinyl = activity == "walk on vinyl floor"
        return float(damp), "65 to 90 % RH", ("from memory",) if vinyl else broad
    if humidity < _COLUMNS[1] or not columns:
        return float(dry), "10 to 25 % RH", broad
    at = max(place for place, listed in enumerate(_COLUMNS) if listed <= humidity)
    return float(columns[at]), f"{_COLUMNS[at]} % RH", ("ESD voltage levels",)


def _spark(volts: float, farad: float, ohm: float):
    joule, coulomb, ampere = farad * volts**2 / 2, farad * volts, volts / ohm
    values = {
        "energy": Quantity(joule, "J", 4),
        "charge": Quantity(coulomb, "C", 3),
        "peak_current": Quantity(ampere, "A", 3),
    }
    working = [
        f"E = C V² / 2 = {brief(farad, 'F')} × ({brief(volts, 'V')})² / 2 = {brief(joule, 'J')}",
        f"Q = C V = {brief(coulomb, 'C')}",
        f"I = V / R = {brief(volts, 'V')} / {brief(ohm, 'Ω')} = {brief(ampere, 'A')}",
    ]
    return values, working


def _check_target(voltage: float, target: float) -> None:
    if not target < voltage:
        wrong = "the target is not below the start"
        raise RepairlibError(brief(target, "V"), wrong, f"less than {brief(voltage, 'V')}")
