"""A capacitor that empties through a resistor: energy, voltage after a time, time to a limit.

Which limit counts is chosen by name, and every answer names it. No answer says that a part may be
touched: it says to verify with a meter, twice. Above 60 V dc it is left to a qualified person.
"""

from __future__ import annotations

import math
from typing import Annotated

from repairlib.core import series
from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.limits import AFTER_UNPLUGGING, ES1, HOT_JOULE, is_beyond_meter
from repairlib.core.quantity import Quantity, brief
from repairlib.stored_charge.hand_on import by_voltage, hazards_at, proof
from repairlib.stored_charge.pulse import what_survives

OWN, TIME_CONSTANT = "own limit", "IEC 60950-1, time constant"


FITTED, TOUCHED_ON = "fitted for good", "held on by hand"
FED = ("dc", "ac sine")
# Per cent that dielectric absorption brings back after a brief short, and who says so.
RETURNS = {
    "aluminium electrolytic": (10, 15, "encyclopaedia, Electrolytic capacitor"),
    "solid tantalum": (2, 10, "encyclopaedia, Electrolytic capacitor"),
    "film": (0.05, 0.25, "WIMA dielectrics"),
    "ceramic": (0.6, 2.5, "WIMA dielectrics"),
}
ALUMINIUM, NOT_STATED = "aluminium electrolytic", "not stated"
WIREWOUND_MOST = 100e3  # Ω; wirewound parts end about there, common practice
_LIMIT = Choice((*AFTER_UNPLUGGING, TIME_CONSTANT, OWN), "The limit to get down to.")
_WATTS = (0.25, 0.5, 1, 2, 3, 5, 10, 25, 50, 100, 200)
_CAPACITANCE = {"at_least": 1e-15, "at_most": 5e3}
_VOLTS = {"at_least": 1e-3, "at_most": 1e6}
_OHMS = {"at_least": 1e-3, "at_most": 1e15}
_MOST_JOULE = 1e7  # common practice: large banks of double-layer cells stay below
_SECONDS = {"at_least": 1e-9, "at_most": 1e9}


@calculator(
    topic="stored charge",
    title="Energy in a capacitor",
    sources=("LBNL electrical hazards", "IEC 62368-1"),
    cautions=("stored charge",),
)
def stored_energy(
    capacitance: Annotated[float, Given("F", "Of the part or the bank.", **_CAPACITANCE)],
    voltage: Annotated[float, Given("V", "Across it, the peak.", **_VOLTS)],
    kind: Annotated[str, Choice((*RETURNS, NOT_STATED), "For what comes back.")] = NOT_STATED,
) -> Found:
    """E = C V² / 2 and Q = C V, against the energies that laboratories call hazards.

    Farad and volts. What may come back after a brief short hangs on the `kind` of part. Raises
    RepairlibError for zero or less. Above 60 V dc, ES1 of IEC 62368-1, the verdict leaves it to a
    qualified person. Source: LBNL: shock from 100 V and 10 J, heat below 100 V and above 100 J,
    blast from 100 V and 10 kJ; 1 J from 100 V is from memory, a page quotes a reflex hazard above
    400 V and 0.25 J.

    >>> finding = stored_energy("470 µF", "400 V")
    >>> finding.energy, finding.verdict
    (37.60 J, 'leave it to a qualified person')
    """
    joule, coulomb = _energy(capacitance, voltage), capacitance * voltage
    least, most, told_by = RETURNS[ALUMINIUM if kind == NOT_STATED else kind]
    back = f"{brief(voltage * least / 100, 'V')} to {brief(voltage * most / 100, 'V')}"
    only_if = f" if {ALUMINIUM}" if kind == NOT_STATED else ""
    values = {
        "energy": Quantity(joule, "J", 4),
        "charge": Quantity(coulomb, "C", 4),
        "hazard": hazard(joule, voltage),
        "may_come_back": back + only_if,
    }
    working = [
        f"E = C V² / 2 = {brief(capacitance, 'F')} × ({brief(voltage, 'V')})² / 2 = "
        f"{brief(joule, 'J')}",
        f"Q = C V = {brief(coulomb, 'C')}",
        f"after a brief short {least:g} to {most:g} % may come back "
        f"({ALUMINIUM if only_if else kind})",
    ]
    notes = [
        "Sources disagree on shock: 10 J (LBNL) or 1 J (from memory), both from 100 V; 50 J is "
        "often called possibly lethal (from memory). The row hazard is LBNL's; the verdict goes "
        "by voltage, which is stricter.",
        proof(voltage),
    ]
    if only_if:
        notes.append("Of another kind less comes back: state the kind. Measure twice all the same.")
    verdict, reason = by_voltage(voltage, joule)
    return found(
        values,
        working=working,
        verdict=verdict,
        reason=reason,
        notes=notes,
        sources=("reflex hazard, quoted", told_by, "from memory"),
        cautions=hazards_at(voltage, capacitance),
    )


@calculator(
    topic="stored charge",
    title="Voltage of an energy",
    sources=("common practice",),
    cautions=("stored charge",),
)
def voltage_of_energy(
    energy: Annotated[float, Given("J", "In the capacitor.", above=0, at_most=1e9)],
    capacitance: Annotated[float, Given("F", "Of the part.", **_CAPACITANCE)],
) -> Found:
    """V = √(2 E / C): the voltage at which a capacitor holds an energy.

    Joule and farad. Raises RepairlibError for zero or less. Source: E = C V² / 2.

    >>> print(voltage_of_energy("44.8 J", "8.59 µF"))  # doctest: +ELLIPSIS
    Voltage of an energy: leave it to a qualified person (...); voltage 3.230 kV
    """
    volts = math.sqrt(2 * energy / capacitance)
    working = [f"V = √(2 E / C) = √(2 × {brief(energy, 'J')} / {brief(capacitance, 'F')})"]
    verdict, reason = by_voltage(volts, energy)
    return found(
        {"voltage": Quantity(volts, "V", 4)},
        working=working,
        verdict=verdict,
        reason=reason,
        notes=[proof(volts)],
        cautions=hazards_at(volts, capacitance),
    )


@calculator(
    topic="stored charge",
    title="Voltage left in a capacitor",
    sources=("common practice",),
    cautions=("stored charge",),
)
def voltage_left(
    capacitance: Annotated[float, Given("F", "Of the part.", **_CAPACITANCE)],
    voltage: Annotated[float, Given("V", "At the start, the peak.", **_VOLTS)],
    resistance: Annotated[float, Given("Ω", "Across it.", **_OHMS)],
    time: Annotated[float, Given("s", "Since the start.", at_least=0, at_most=1e9)],
) -> Found:
    """V = V0 exp(-t / (R C)): what a resistor leaves in a capacitor after a time.

    Farad, volts, ohm, seconds. It never reaches 0. Raises RepairlibError outside the ranges.
    Source: the law of discharge through a resistor.

    >>> voltage_left("220 µF", "400 V", "100 kΩ", "22 s").voltage
    147.2 V
    """
    tau = resistance * capacitance
    volts = voltage * math.exp(-time / tau)
    working = [
        f"τ = R C = {brief(tau, 's')}",
        f"V = {brief(voltage, 'V')} × exp(-{brief(time, 's')} / τ) = {brief(volts, 'V')}",
    ]
    verdict, reason = by_voltage(voltage, _energy(capacitance, voltage))
    values = {"voltage": Quantity(volts, "V", 4), "time_constant": Quantity(tau, "s", 4)}
    return found(
        values,
        working=working,
        verdict=verdict,
        reason=reason,
        notes=[proof(voltage)],
        sources=("IEC 62368-1",),
        cautions=hazards_at(voltage, capacitance),
    )


@calculator(
    topic="stored charge",
    title="Time to discharge",
    sources=("common practice",),
    cautions=("stored charge",),
)
def discharge_time(
    capacitance: Annotated[float, Given("F", "Of the part or the bank.", **_CAPACITANCE)],
    voltage: Annotated[float, Given("V", "At the start, the peak.", **_VOLTS)],
    resistance: Annotated[float, Given("Ω", "Across it.", **_OHMS)],
    limit: Annotated[str, _LIMIT] = ES1,
    own: Annotated[float | None, Given("V", "Your own limit.", **_VOLTS)] = None,
) -> Found:
    """t = R C ln(V0 / V): how long until a capacitor is down to a named limit.

    Farad, volts, ohm. `limit` names the rule; with "own limit" give `own` in volts. A limit of 0 V
    is never reached. Raises RepairlibError when the limit is not below the start. The verdict is
    to verify with a meter, twice; above 60 V at the start, to leave it to a qualified person.
    Source: the law of discharge through a resistor, and the document that states the limit.

    >>> finding = discharge_time("220 µF", "400 V", "100 kΩ")
    >>> finding.time, finding.first_power
    (41.74 s, 1.600 W)
    """
    target, source, words = _target(limit, own, voltage)
    tau = resistance * capacitance
    seconds = tau * math.log(voltage / target)
    watts = voltage**2 / resistance
    working = [
        f"τ = R C = {brief(resistance, 'Ω')} × {brief(capacitance, 'F')} = {brief(tau, 's')}",
        f"t = τ ln({brief(voltage, 'V')} / {brief(target, 'V')}) = {brief(seconds, 's')}",
        f"at the first instant V² / R = {brief(watts, 'W')}; a bleeder fitted for good has it "
        "all the time",
    ]
    values = {
        "time": Quantity(seconds, "s", 4),
        "time_constant": Quantity(tau, "s", 4),
        "down_to": Quantity(target, "V", 4),
        "first_power": Quantity(watts, "W", 4),
        "energy": Quantity(_energy(capacitance, voltage), "J", 4),
    }
    verdict, reason = by_voltage(voltage, _energy(capacitance, voltage))
    reason = f"{words} by calculation after {brief(seconds, 's')}; {reason}"
    notes = [*what_survives(voltage, resistance, capacitance), proof(voltage)]
    notes.append("The time is not proof. Only the meter is.")
    return found(
        values,
        working=working,
        verdict=verdict,
        reason=reason,
        notes=notes,
        sources=(source, "IEC 62368-1", "ARCOL RW"),
        cautions=hazards_at(voltage, capacitance),
    )


@calculator(
    topic="stored charge",
    title="Bleeder resistor",
    sources=("common practice",),
    cautions=("stored charge", "heat and fire"),
)
def bleeder(
    capacitance: Annotated[float, Given("F", "Of the part or the bank.", **_CAPACITANCE)],
    voltage: Annotated[float, Given("V", "Across it, the peak.", **_VOLTS)],
    time: Annotated[float, Given("s", "In at most this time.", **_SECONDS)],
    limit: Annotated[str, _LIMIT] = ES1,
    own: Annotated[float | None, Given("V", "Your own limit.", **_VOLTS)] = None,
    use: Annotated[str, Choice((FITTED, TOUCHED_ON), "How it is used.")] = FITTED,
    fed: Annotated[str, Choice(FED, "What feeds a fitted one: ac counts by its rms.")] = "dc",
) -> Found:
    """R = t / (C ln(V0 / V)): the largest resistor that is quick enough, its watts and volts.

    Farad, volts, seconds. `resistance` is the largest, `e12` the next one made below it. A fitted
    one has its power all the time: `power`, and twice that as `power_rating`. One held on takes
    the whole `energy` at once. `volts_across` is what it must bear. Raises RepairlibError when the
    limit is not below the start. Source: the law of discharge; twice the power is common practice.

    >>> finding = bleeder("100 µF", "325.3 V", "2 s")
    >>> round(finding.resistance), finding.e12
    (11831, 10.00 kΩ)
    """
    target, source, words = _target(limit, own, voltage)
    ohm = time / (capacitance * math.log(voltage / target))
    made = series.next_down(ohm, "E12") if 1 <= ohm <= 1e12 else ohm
    first = voltage**2 / made
    power = first / 2 if fed == "ac sine" else first
    seconds = made * capacitance * math.log(voltage / target)
    values: dict[str, object] = {
        "resistance": Quantity(ohm, "Ω", 4),
        "e12": Quantity(made, "Ω", 4),
        "time": Quantity(seconds, "s", 4),
        "first_power": Quantity(first, "W", 4),
        "energy": Quantity(_energy(capacitance, voltage), "J", 4),
        "volts_across": Quantity(voltage, "V", 4),
    }
    working = [
        f"R = t / (C ln(V0 / V)) = {brief(time, 's')} / ({brief(capacitance, 'F')} × "
        f"{math.log(voltage / target):.4g}) = {brief(ohm, 'Ω')}",
        f"next one made below it, E12: {brief(made, 'Ω')}; it takes {brief(seconds, 's')}",
        f"first instant V² / R = {brief(first, 'W')}",
    ]
    if use == FITTED:
        size = next((watts for watts in _WATTS if watts >= 2 * power), None)
        values["power"] = Quantity(power, "W", 4)
        values["power_rating"] = Quantity(size, "W") if size else "too hot: choose a longer time"
        working.append(f"all the time {brief(power, 'W')}; take a resistor of twice that")
    else:
        working.append(f"held on: {_held_on(made, voltage)}")
    notes = [
        "It must bear the whole voltage: a small resistor bears 200 V to 350 V (from memory); put "
        "equal ones in series.",
        *(what_survives(voltage, made, capacitance) if use == TOUCHED_ON else ()),
        proof(voltage),
    ]
    verdict, reason = by_voltage(voltage, _energy(capacitance, voltage))
    reason = f"chosen for {words} within {brief(time, 's')}; {reason}"
    return found(
        values,
        working=working,
        verdict=verdict,
        reason=reason,
        notes=notes,
        sources=(source, "IEC 62368-1", "from memory", *(("ARCOL RW",) if use != FITTED else ())),
        cautions=hazards_at(voltage, capacitance),
    )


def _held_on(ohm: float, volts: float) -> str:
    """What is held across the capacitor, for the working."""
    if is_beyond_meter(volts):
        return (
            f"only a discharge stick and a high-voltage probe rated for {brief(volts, 'V')}, in "
            "the hand of somebody trained for high voltage"
        )
    if ohm > WIREWOUND_MOST:
        return (
            f"no wirewound part has {brief(ohm, 'Ω')}; a smaller one is quicker, mounted, with "
            "insulated probes and leads"
        )
    return "a wirewound part, mounted, with insulated probes and leads"


def _energy(farad: float, volts: float) -> float:
    """The energy in joule. Raises RepairlibError for more than any bank of a bench holds.

    >>> _energy(100e-6, 20)
    0.02
    """
    joule = farad * volts**2 / 2
    if joule > _MOST_JOULE:
        read = f"{brief(farad, 'F')} at {brief(volts, 'V')}"
        wrong = f"{brief(joule, 'J')} is more than any bank holds: a unit is missing or wrong"
        raise RepairlibError(read, wrong, "the capacitance with its unit, such as 470 µF")
    return joule


def hazard(joule: float, volts: float) -> str:
    """What a stored energy can do, by the laboratory's table of hazards.

    >>> hazard(37.6, 400), hazard(12.5, 50)
    ('shock', 'below both thresholds, and still to be discharged')
    """
    named = []
    if volts >= 100 and joule >= 10:
        named.append("shock")
    if volts > 400 and joule > 0.25:
        named.append("reflex")
    if volts >= 100 and joule >= 10e3:
        named.append("arc and blast")
    if volts < 100 and joule > HOT_JOULE:
        named.append("heat")
    return " and ".join(named) or "below both thresholds, and still to be discharged"


def _target(limit: str, own: float | None, voltage: float) -> tuple[float, str, str]:
    """The voltage to get down to, the key of its source, and the rule in words."""
    if own is not None and limit != OWN:
        raise RepairlibError(limit, "two limits were given", f"limit={OWN} with own=...")
    if limit == OWN:
        if own is None:
            raise RepairlibError(limit, "its voltage is missing", "own=24 V")
        volts, source, words = own, "common practice", f"{brief(own, 'V')}, your own limit,"
    elif limit == TIME_CONSTANT:
        return voltage / math.e, "IEC 60950-1, quoted", "37 % (time constant of IEC 60950-1)"
    else:
        left = AFTER_UNPLUGGING[limit]
        volts, figure, source = left.volts, left.words, left.source
        words = f"{figure} ({limit})"
    if not volts < voltage:
        wrong = f"not below the {brief(voltage, 'V')} at the start"
        raise RepairlibError(words.rstrip(","), wrong, f"a limit below {brief(voltage, 'V')}")
    return volts, source, words
