"""Calculators of ageing: expected life, changing use, how old is too old, what a better part buys.

The formulas are in life.py.
"""

from __future__ import annotations

from typing import Annotated

from repairlib.core.calculator import Choice, Found, Given, Text, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity, read_quantity
from repairlib.health.capacitor_families import TEN_DEGREE_RULE, ageing_families, families
from repairlib.health.life import (
    ABSOLUTE_ZERO,
    CAP_HOURS,
    CAP_NOTE,
    CAP_YEARS,
    HOURS_A_YEAR,
    SPREAD_NOTE,
    USUAL_HEATING,
    Life,
    expected,
    in_hours,
    mixed_life,
    ripple_base,
)

REFUSE, ESTIMATE = "refuse", "estimate"
BY_FAMILY, NO_CREDIT, CREDIT = "by family", "none", "exponent 2.5"
_CREDITED = "aluminium snap-in"  # larger parts, for which makers do credit a lower voltage
YOUNG, AGEING, TOO_OLD = "young", "ageing", "too old"
GENERAL = "aluminium general 105"
_FAMILY = Annotated[str, Choice(ageing_families, "What kind of capacitor it is.")]
_LIFE = Annotated[float, Given("s", "Rated life of the data sheet, such as 2000 h.", above=0)]
_RATED = Annotated[
    float | None,
    Given("°C", "Rated temperature; without it the family's.", at_least=ABSOLUTE_ZERO, at_most=200),
]
_AIR = Annotated[
    float, Given("°C", "Of the air around the part.", at_least=ABSOLUTE_ZERO, at_most=200)
]


RATED_RIPPLE = (
    "Rated ripple was taken: temperature alone counts, by the plain 10-degree rule for aluminium."
)


@calculator(
    topic="health",
    title="Expected life",
    sources=("Cosel lifetime note", "Jianghai, quoted", "Rubycon technical notes"),
)
def expected_life(
    rated_life: _LIFE,
    temperature: _AIR,
    family: _FAMILY = GENERAL,
    rated_temperature: _RATED = None,
    ripple: Annotated[
        float, Given("%", "Of rated ripple current.", at_least=0, at_most=300)
    ] = 100.0,
    voltage: Annotated[float, Given("%", "Of rated voltage.", at_least=0, at_most=1000)] = 100.0,
    heating: Annotated[
        float, Given("", "K of self-heating at rated ripple, 3.5 to 10.", at_least=0, at_most=30)
    ] = USUAL_HEATING,
    above_rated_ripple: Annotated[str, Choice((REFUSE, ESTIMATE), "What to do then.")] = REFUSE,
    voltage_credit: Annotated[
        str, Choice((BY_FAMILY, NO_CREDIT, CREDIT), "What less than rated voltage is worth.")
    ] = BY_FAMILY,
) -> Found:
    """How long a part of that rating lasts in air of that temperature, powered all the time.

    `rated_life` with its unit (a number alone is seconds), at `rated_temperature`, which without
    more is that of the family, and rated ripple; `temperature` of the air in °C, not of the case;
    `ripple` and `voltage` in per cent of the rated ones; `heating` in K at rated ripple. Less
    voltage counts for snap-in parts, for small radial ones only when asked for. Above a rating it
    raises RepairlibError with the reason; ripple above the rating is estimated only when asked
    for. Source: 10-degree rule
    and factors as published by makers; the polymer rule is from memory.

    >>> print(expected_life("2000 h", "65 °C"))
    Expected life: hours 32000; years 3.7; from to 1.8 to 7.3 years; by temperature 16.00;
    by ripple 1.000; by voltage 1.000
    """
    rated = _rated(family, rated_temperature)
    credited = voltage_credit == CREDIT or (voltage_credit == BY_FAMILY and family == _CREDITED)
    counted = voltage if credited or voltage > 100 else 100.0
    life = expected(
        family,
        rated_life / 3600,
        rated,
        temperature,
        ripple=ripple / 100,
        voltage=counted / 100,
        heating=heating,
        beyond_rated_ripple=above_rated_ripple == ESTIMATE,
    )
    values = _life_values(life) | {
        "by_temperature": Quantity(life.by_temperature, "", 4),
        "by_ripple": Quantity(life.by_ripple, "", 4),
        "by_voltage": Quantity(life.by_voltage, "", 4),
    }
    wet = families()[family].ages == TEN_DEGREE_RULE
    rule = f"2^(({rated:g} - {temperature:g}) / 10)"
    if not wet:
        rule = f"10^(({rated:g} - {temperature:g}) / 20)"
    working = [f"temperature: {rule} = {life.by_temperature:.4g}"]
    notes = [SPREAD_NOTE]
    sources = []
    if wet:
        base = ripple_base(ripple / 100, rated)
        working.append(
            f"ripple: {base:g}^((1 - {ripple / 100:g}²) × {heating:g} / 10) = {life.by_ripple:.4g}"
        )
        working.append(f"voltage: {_voltage_words(counted / 100)} = {life.by_voltage:.4g}")
        notes += _choices_made(ripple, voltage, heating, base, credited)
    else:
        notes.append("The polymer rule is from memory; ripple and voltage are left out of it.")
        sources = ["from memory"]
    product = f"{rated_life / 3600:g} h × {life.by_temperature:.4g}"
    if wet:
        product += f" × {life.by_ripple:.4g} × {life.by_voltage:.4g}"
    working.append(f"life: {product} = {in_hours(life.hours)}")
    return found(values, working=working, notes=notes + _capped(life), sources=sources)


def _choices_made(ripple, voltage, heating, base, credited) -> list[str]:
    notes = []
    if ripple == 100:
        notes.append(RATED_RIPPLE)
    else:
        notes.append(
            f"A choice: ripple counts by one published rule, with Ki {base:g} and {heating:g} K at "
            "rated ripple. Makers differ: 3.5 to 5 K for 105 °C parts, to 10 K for 85 °C parts."
        )
    if ripple > 100:
        notes.append(
            f"Ripple above the rating: out of the data sheet, an estimate only, with Ki {base:g}. "
            "A maker's own figure for such use was a quarter less than the rule."
        )
    if voltage < 100 and not credited:
        notes.append(
            "A choice: less than rated voltage adds nothing; from memory, most makers of small "
            "radial parts give no credit for it. Ask with voltage_credit=exponent 2.5."
        )
    elif voltage < 100:
        notes.append(
            "A choice: voltage counts with exponent 2.5. Some makers leave it out; others take 3 "
            "to 5, from memory."
        )
    return notes


def _voltage_words(ratio: float) -> str:
    return f"{ratio:g}^-2.5" if ratio >= 0.6 else f"{ratio:g} is below 0.6"


@calculator(
    topic="health",
    title="Life in changing use",
    sources=("Cosel lifetime note",),
)
def mixed_use_life(
    rated_life: _LIFE,
    uses: Annotated[str, Text("Hours at each temperature, such as 8 h at 65 °C; 16 h at 45 °C.")],
    rated_temperature: _RATED = None,
    family: _FAMILY = GENERAL,
) -> Found:
    """Life of a part that works at different temperatures by turns: L = Σh / Σ(h / L).

    `rated_life` with its unit at `rated_temperature`; `uses` is text, each part hours and a
    temperature, parted by semicolons. Raises RepairlibError for text that is not such a list and
    for temperatures above the rating. Source: a power-supply maker's technical note.

    >>> print(mixed_use_life("1000 h", "8 h at 65 °C; 16 h at 45 °C"))
    Life in changing use: hours 32000; years 3.7; from to 1.2 to 11.0 years
    """
    rated = _rated(family, rated_temperature)
    parts, lives = [], []
    for hours, celsius in _read_uses(uses):
        life = expected(family, rated_life / 3600, rated, celsius)
        lives.append(life)
        parts.append((hours, life.hours))
    hours = mixed_life(parts)
    life = Life(hours, 1.0, 1.0, 1.0, max(one.spread for one in lives))
    working = [f"{share:g} h in a life of {in_hours(whole)}" for share, whole in parts]
    working.append(f"all hours / the sum of the shares = {in_hours(hours)}")
    return found(
        _life_values(life),
        working=working,
        notes=[_rule_note(family), SPREAD_NOTE, *_capped(life)],
    )


def _read_uses(text: str) -> list[tuple[float, float]]:
    accepted = "hours at temperatures, such as 8 h at 65 °C; 16 h at 45 °C"
    uses = []
    for part in text.split(";"):
        hours, word, celsius = part.partition(" at ")
        if not word:
            raise RepairlibError(text, "a part of it has no word at", accepted)
        seconds = read_quantity(hours, "s")
        if not 0 < seconds.value < 1e12:
            raise RepairlibError(text, "a time is not above 0", accepted)
        uses.append((seconds.value / 3600, read_quantity(celsius, "°C").value))
    return uses


@calculator(
    topic="health",
    title="How old is too old",
    sources=("Cosel lifetime note", "Beckhoff PS9011", "common practice"),
    cautions=("stored charge",),
)
def too_old(
    rated_life: _LIFE,
    temperature: _AIR,
    years: Annotated[float, Given("", "Years since it was made.", at_least=0, at_most=150)],
    hours_a_day: Annotated[float, Given("", "Hours on in a day.", at_least=0, at_most=24)] = 4.0,
    rated_temperature: _RATED = None,
    family: _FAMILY = GENERAL,
) -> Found:
    """How much of its life a part has used, and whether its age alone makes it too old.

    `rated_life` with its unit at `rated_temperature`; `temperature` of the air while on; `years`
    since the date code; `hours_a_day` 0 to 24. The verdict is "young" (to half of its life),
    "ageing" or "too old": its life used up, or more than 15 years. Raises RepairlibError above the
    rating. Source: 10-degree rule; the 15 years from a maker's manual; the half is common practice.

    >>> print(too_old("2000 h", "55 °C", 40, 4, "85 °C"))  # doctest: +ELLIPSIS
    How old is too old: too old (used 365 % of its life and 40 years old; ...
    """
    rated = _rated(family, rated_temperature)
    life = expected(family, rated_life / 3600, rated, temperature)
    hours = years * 365 * hours_a_day
    used = hours / life.hours
    verdict = YOUNG if used <= 0.5 and years <= CAP_YEARS / 2 else AGEING
    if used >= 1 or years > CAP_YEARS:
        verdict = TOO_OLD
    reason = f"used {used * 100:.3g} % of its life and {years:g} years old"
    reason += f"; above 100 %, or {CAP_YEARS} years, it is too old"
    working = [
        f"life at {temperature:g} °C by the rule: {in_hours(life.hours)}",
        f"hours on: {years:g} × 365 × {hours_a_day:g} h = {in_hours(hours)}",
        f"used: {in_hours(hours)} / {in_hours(life.hours)} = {used * 100:.3g} %",
    ]
    notes = [
        _rule_note(family),
        SPREAD_NOTE,
        f"A choice: {CAP_YEARS} years for every wet part, on or off, because seals age too.",
        "Age is a reason to measure or to replace, never a proof that the part is bad.",
    ]
    values = {"used": Quantity(used * 100, "%", 3), "hours_on": round(hours)}
    return found(values, working=working, verdict=verdict, reason=reason, notes=notes)


@calculator(
    topic="health",
    title="What a cooler or better part buys",
    sources=("Cosel lifetime note",),
)
def better_part(
    rated_life: _LIFE,
    temperature: _AIR,
    new_rated_life: Annotated[
        float, Given("s", "Rated life of the new part, such as 5000 h.", above=0)
    ],
    new_temperature: _AIR,
    rated_temperature: _RATED = None,
    new_rated_temperature: _RATED = None,
    family: _FAMILY = GENERAL,
    new_family: _FAMILY = GENERAL,
) -> Found:
    """How many times longer the new part lasts: better rated, in a cooler place, or both.

    Lives with their unit, temperatures of the air in °C. `times` compares the lives by rule,
    before the cap of 15 years. Raises RepairlibError above a rating. Source: 10-degree rule.

    >>> better_part("2000 h", "65 °C", "5000 h", "55 °C", "85 °C").times
    20.0
    """
    old_rated = _rated(family, rated_temperature)
    new_rated = _rated(new_family, new_rated_temperature)
    old = expected(family, rated_life / 3600, old_rated, temperature)
    new = expected(new_family, new_rated_life / 3600, new_rated, new_temperature)
    times = new.hours / old.hours
    values = {
        "times": Quantity(times, "", 4),
        "old_hours": round(old.believed),
        "new_hours": round(new.believed),
        "old_years": Quantity(old.years, "", 2),
        "new_years": Quantity(new.years, "", 2),
    }
    working = [
        f"old part: {rated_life / 3600:g} h × {old.by_temperature:.4g} = {in_hours(old.hours)}",
        f"new part: {new_rated_life / 3600:g} h × {new.by_temperature:.4g} = {in_hours(new.hours)}",
    ]
    return found(
        values,
        working=working,
        notes=[
            *dict.fromkeys((_rule_note(family), _rule_note(new_family))),
            SPREAD_NOTE,
            *(_capped(old) or _capped(new)),
        ],
    )


def _rated(name: str, celsius: float | None) -> float:
    """The rated temperature [°C] of a part: the one stated, or else that of its family.

    Raises RepairlibError for one above the family's.
    """
    hottest = families()[name].hottest
    if celsius is None:
        return hottest
    if celsius > hottest:
        wrong = f"{name} is made for {hottest:g} °C: choose the family that fits the marking"
        raise RepairlibError(f"{celsius:g} °C", wrong, f"at most {hottest:g} °C")
    return celsius


def _rule_note(name: str) -> str:
    """By which rule the life of that family was worked out."""
    if families()[name].ages == TEN_DEGREE_RULE:
        return RATED_RIPPLE
    return (
        "Polymer by ten times for each 20 °C, from memory; ripple and voltage are left out of it."
    )


def _life_values(life: Life) -> dict[str, object]:
    return {
        "hours": round(life.believed),
        "years": Quantity(round(life.years, 1), ""),
        "from_to": _from_to(*life.range),
    }


def _from_to(low: float, high: float) -> str:
    """A range of hours as years; nothing is said beyond the cap."""
    if low >= CAP_HOURS:
        return f"{CAP_YEARS} years or more"
    least = f"{low / HOURS_A_YEAR:.1f}"
    if high >= CAP_HOURS:
        return f"{least} to {CAP_YEARS} years or more"
    return f"{least} to {high / HOURS_A_YEAR:.1f} years"


def _capped(life: Life) -> list[str]:
    if life.hours <= CAP_HOURS:
        return []
    years = life.hours / HOURS_A_YEAR
    return [f"The rule gives {in_hours(life.hours)}, {years:.3g} years. {CAP_NOTE}"]
