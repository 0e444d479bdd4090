"""Waking up stored electrolytics: bring the voltage up slowly through a resistor, and measure.

An aluminium electrolytic that lay unused for years leaks until its oxide has grown again. Two
published practices apply rated voltage at once through a small resistor. No published figure was
found for stepped voltage: that schedule is common practice and says so.

No schedule makes a part safe. The answer says what to measure afterwards, and when to give up.
"""

from __future__ import annotations

from typing import Annotated

from repairlib.core import series
from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.limits import TOUCHABLE_DC
from repairlib.core.quantity import Quantity, brief
from repairlib.health.capacitor_families import WET, check_part, families
from repairlib.health.derating import REVERSE_VOLTS
from repairlib.health.leakage import own_leakage_limit

STEPPED, DATABOOK, ENCYCLOPAEDIA, WORKSHOP = "stepped", "databook", "encyclopaedia", "old workshop"
TWO_SKINS = ("aluminium non-polar axial", "aluminium non-polar", "aluminium bipolar")
METHODS = (STEPPED, DATABOOK, ENCYCLOPAEDIA, WORKSHOP)
STEPS = (25, 50, 75, 100)  # per cent of rated voltage, common practice
_STEP_CURRENT = 5e-3  # A through a shorted part at full voltage, unless the part may leak more
_WATTS = (0.25, 0.5, 1, 2, 5, 10, 25, 50, 100, 200)
_UNNEEDED_YEARS = 2  # storage without re-forming, encyclopaedia
_POLYMER_CHIP_MONTHS = 42  # Cornell Dubilier ESRD


@calculator(
    topic="health",
    title="Re-forming a stored electrolytic",
    sources=("common practice", "encyclopaedia, Electrolytic capacitor"),
    cautions=("stored charge", "mains", "heat and fire"),
)
def reforming_schedule(
    capacitance: Annotated[float, Given("F", "The marked capacitance.", at_least=1e-9, at_most=1)],
    rated_voltage: Annotated[float, Given("V", "The marked rated voltage.", above=0, at_most=1000)],
    years_stored: Annotated[float, Given("", "Years without voltage.", at_least=0, at_most=100)],
    method: Annotated[str, Choice(METHODS, "Which practice to follow.")] = STEPPED,
    family: Annotated[str, Choice(families, "What kind it is.")] = "aluminium general 85",
) -> Found:
    """Series resistor, steps and times for a stored aluminium electrolytic, out of the circuit.

    `capacitance` in farad, `rated_voltage` in volts to 1000, `years_stored` 0 to 100. The verdict
    is never "safe": it is "verify", with what to measure, or "not needed". Raises RepairlibError
    for kinds without a wet oxide. Source: "databook" is the preconditioning of EIA-815 (a databook
    gives the same after IEC 60384-4), "encyclopaedia" is an encyclopaedia's, "old workshop" is from
    memory, "stepped" is common practice without a published figure.

    >>> finding = reforming_schedule("470 µF", "25 V", 12)
    >>> finding.verdict, finding.series_resistor, finding.steps
    ('verify', 5.6 kΩ, '6.25 V, 12.5 V, 18.75 V, 25 V')
    """
    check_part(capacitance, rated_voltage)
    if families()[family].inside != WET:
        accepted = ", ".join(name for name, one in families().items() if one.inside == WET)
        wrong = "it has no wet oxide that could be re-formed"
        if family.startswith("polymer chip"):
            wrong += f"; it may be stored for {_POLYMER_CHIP_MONTHS} months"
        raise RepairlibError(family, wrong, accepted)
    plan = _PLANS[method]
    ohm, percents, minutes, how, sources = plan(family, capacitance, rated_voltage, years_stored)
    worst = rated_voltage**2 / ohm
    watts = next((size for size in _WATTS if size >= 2 * worst), None)
    step_volts = [rated_voltage * percent / 100 for percent in percents]
    leakage = own_leakage_limit(family, capacitance, rated_voltage)
    values = {
        "series_resistor": Quantity(ohm, "Ω"),
        "resistor_power": Quantity(watts, "W") if watts else "too much: limit the current",
        "steps": ", ".join(f"{volts:g} V" for volts in step_volts),
        "minutes_each_step": minutes,
        "give_up": _give_up(leakage, ohm),
        "afterwards": "discharge through the resistor, rest 12 to 48 h, then measure again",
    }
    working = [
        how,
        f"shorted part: {rated_voltage:g} V / {brief(ohm, 'Ω')} = "
        f"{brief(rated_voltage / ohm, 'A')}, {brief(worst, 'W')} in the resistor; take twice that",
        f"filling up takes 5 R C = {brief(5 * ohm * capacitance, 's')} at each step",
    ]
    if leakage is not None:
        working.append(
            f"leakage limit {brief(leakage, 'A')}: {brief(leakage * ohm, 'V')} across the resistor"
        )
    verdict, reason = (
        "verify",
        (
            "no schedule makes a stored part safe: after the rest measure leakage, capacitance and "
            "ESR against their limits"
        ),
    )
    if years_stored <= _UNNEEDED_YEARS:
        verdict = "not needed"
        reason = (
            f"up to {_UNNEEDED_YEARS} years without voltage are usual, with some parts ten; "
            "measure leakage anyway"
        )
    return found(
        values,
        working=working,
        verdict=verdict,
        reason=reason,
        notes=_notes(method, family, rated_voltage),
        sources=sources,
    )


def _stepped(family, farad, volts, years):
    leakage = own_leakage_limit(family, farad, volts) or 0.0
    current = max(_STEP_CURRENT, 5 * leakage)
    ohm = series.next_up(volts / current, "E12")
    how = f"R = {volts:g} V / {brief(current, 'A')}, next E12 value: {brief(ohm, 'Ω')}"
    return ohm, STEPS, 60, how, ("common practice",)


def _databook(family, farad, volts, years):
    ohm = 100.0 if volts <= 100 else 1000.0
    how = f"rated voltage for 1 h through {ohm:g} Ω (100 Ω to 100 V, 1000 Ω above)"
    return ohm, (100,), 60, how, ("IEC 60384-4, quoted",)


def _encyclopaedia(family, farad, volts, years):
    how = "rated voltage for 1 h through about 1000 Ω; written for parts of the 1970s or earlier"
    return 1000.0, (100,), 60, how, ("encyclopaedia, Electrolytic capacitor",)


def _workshop(family, farad, volts, years):
    minutes = round(5 + 12 * years)
    how = f"5 min and 1 min per month stored: 5 + {12 * years:g} = {minutes} min"
    return 30e3, (100,), minutes, how, ("from memory",)


_PLANS = {
    STEPPED: _stepped,
    DATABOOK: _databook,
    ENCYCLOPAEDIA: _encyclopaedia,
    WORKSHOP: _workshop,
}


def _give_up(leakage: float | None, ohm: float) -> str:
    signs = "at once when it gets warm, bulges, hisses or its current rises"
    if leakage is None:
        return f"{signs}; or when the current no longer falls"
    return (
        f"{signs}; or when after twice the time of a step the resistor still drops more than "
        f"{brief(leakage * ohm, 'V')}"
    )


def _notes(method: str, family: str, volts: float) -> list[str]:
    notes = ["Out of the circuit, from a current-limited bench supply. Never from the mains."]
    if family in TWO_SKINS:
        notes.append(
            "A bipolar part has two oxide skins: go through all steps once each way round. "
            "Discharge it before you turn it."
        )
    else:
        notes.append(f"Plus to plus: a wet part bears at most {REVERSE_VOLTS:g} V the wrong way.")
    if method == STEPPED:
        notes.append(
            "Common practice: no published figure for stepped voltage was found. Two published "
            "practices apply rated voltage at once: method=databook."
        )
        notes.append("Go up a step only when the drop across the resistor has stopped falling.")
    if method == DATABOOK:
        notes.append("Then 12 to 48 h of rest at 15 to 35 °C before measuring.")
        notes.append(
            "After a shelf test a snap-in data sheet (Vishay 056/057) applies rated voltage for "
            "30 min and measures 24 to 48 h later."
        )
    if method == WORKSHOP:
        notes.append("From memory: about 30 kΩ 5 W. On a high-voltage part check its power.")
    if volts > TOUCHABLE_DC:
        notes.append(f"Above {TOUCHABLE_DC:g} V dc: leave it to a qualified person.")
    notes.append("A new part is cheap. Re-form only what cannot be bought.")
    return notes
