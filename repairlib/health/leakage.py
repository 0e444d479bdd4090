"""How much current a good electrolytic may leak, and when to read it.

Data sheets write the limit with C in µF and V in volts, and get µA. Two forms are in use: the
larger of a CV product and a floor, and the sum of both. Each is a named choice here.
"""

from __future__ import annotations

from functools import cache
from typing import Annotated, NamedTuple

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity
from repairlib.core.tables import read_table
from repairlib.health.capacitor_families import check_part, families, family

OWN = "data sheet of the family"
LARGER, SUM = "larger of 0.01 CV and 3", "sum of 0.01 CV and 3"
RULES = (OWN, LARGER, SUM, "other 105 general")
ROOM_C = 20.0


class LeakageRule(NamedTuple):
    """One row of the table leakage-limits: where it holds, and its figures in µF, V and µA."""

    name: str
    from_v: float
    to_v: float
    above_cv: float
    to_cv: float
    times_cv: float
    microamps: float
    form: str
    minutes: str
    celsius: float
    source: str

    def holds(self, microfarad: float, volts: float) -> bool:
        in_range = self.from_v <= volts <= self.to_v
        return in_range and self.above_cv < microfarad * volts <= self.to_cv

    def limit(self, microfarad: float, volts: float) -> float:
        """The limit in µA."""
        product = self.times_cv * microfarad * volts
        if self.form == "sum of":
            return product + self.microamps
        return max(product, self.microamps)

    def formula(self) -> str:
        if not self.microamps:
            return f"{self.times_cv:g} CV"
        if self.form == "sum of":
            return f"{self.times_cv:g} CV + {self.microamps:g} µA"
        return f"the larger of {self.times_cv:g} CV and {self.microamps:g} µA"

    def choice(self) -> tuple[str, ...]:
        """Where sources disagree on the form: what the other one is."""
        if (self.times_cv, self.microamps) != (0.01, 3):
            return ()
        if self.form == "sum of":
            return ("A choice: the sum. Makers take the larger of 0.01 CV and 3 µA.",)
        return (
            "Leakage is the larger of 0.01 CV and 3 µA. Another source adds the two: "
            "0.01 CV + 3 µA. Makers take the larger.",
        )


@cache
def rules_of(name: str) -> tuple[LeakageRule, ...]:
    """The rules of a family, or those of a named form."""
    return tuple(
        LeakageRule(
            name,
            float(row["from_v"]),
            float(row["to_v"]),
            float(row["above_cv"]),
            float(row["to_cv"] or "inf"),
            float(row["times_cv"]),
            float(row["microamps"]),
            row["form"],
            row["minutes"],
            float(row["temperature_c"]),
            row["source"],
        )
        for row in read_table("leakage-limits")
        if row["rule"] == name
    )


def leakage_rule(name: str, farad: float, volts: float, celsius: float = ROOM_C) -> LeakageRule:
    """The rule of that family (or named form) which holds for this part.

    `farad` and `volts` as marked, `celsius` the temperature of the part. Raises RepairlibError
    when no limit is known, with the ratings and temperatures for which there is one.
    """
    check_part(farad, volts)
    rules = rules_of(name)
    if not rules:
        accepted = f"rule={LARGER}, or another named rule"
        raise RepairlibError(name, "no leakage limit of this family is known here", accepted)
    at_temperature = [rule for rule in rules if rule.celsius == celsius]
    if not at_temperature:
        accepted = ", ".join(
            f"{degrees:g} °C" for degrees in dict.fromkeys(r.celsius for r in rules)
        )
        wrong = f"no leakage limit of {name} is stated at this temperature"
        raise RepairlibError(f"{celsius:g} °C", wrong, accepted)
    for rule in at_temperature:
        if rule.holds(farad * 1e6, volts):
            return rule
    spans = dict.fromkeys(f"{rule.from_v:g} to {rule.to_v:g} V" for rule in at_temperature)
    wrong = f"no leakage limit of {name} is stated at this rating"
    raise RepairlibError(f"{volts:g} V", wrong, ", ".join(spans))


@calculator(
    topic="health",
    title="Highest leakage of a new part",
    sources=("common practice",),
    cautions=("stored charge",),
)
def leakage_limit(
    family: Annotated[str, Choice(lambda: _wet_or_solid(), "What kind of capacitor it is.")],
    capacitance: Annotated[float, Given("F", "The marked capacitance.", at_least=1e-9, at_most=1)],
    rated_voltage: Annotated[float, Given("V", "The marked rated voltage.", above=0, at_most=1e5)],
    rule: Annotated[str, Choice(RULES, "Which formula to use.")] = OWN,
    temperature: Annotated[
        float, Given("°C", "Of the part.", at_least=-273.15, at_most=200)
    ] = ROOM_C,
) -> Found:
    """The current that a good electrolytic may leak at rated voltage, and when to read it.

    `capacitance` in farad, `rated_voltage` in volts, `temperature` in °C (20; tantalum also 85
    and 125). `rule` is the family's own data sheet or a named form: makers take the larger of
    0.01 CV and 3 µA, an encyclopaedia adds them. Raises RepairlibError where no limit is known.
    Source: the data sheet of the family.

    >>> print(leakage_limit("aluminium low impedance", "2200 µF", "16 V"))
    Highest leakage of a new part: leakage 352.0 µA; read after 2 min
    >>> leakage_limit("aluminium low impedance", "100 µF", "25 V", "sum of 0.01 CV and 3").leakage
    28.00 µA
    """
    chosen = leakage_rule(family if rule == OWN else rule, capacitance, rated_voltage, temperature)
    microfarad = capacitance * 1e6
    limit = chosen.limit(microfarad, rated_voltage)
    product = microfarad * rated_voltage
    working = [
        f"CV = {microfarad:.6g} µF × {rated_voltage:g} V = {product:.6g}",
        f"limit in µA: {chosen.formula()} = {limit:.6g} µA",
    ]
    minutes = chosen.minutes or "2 to 5"
    notes = [f"Formula used: {chosen.formula()}, with C in µF and V in volts."]
    notes += chosen.choice()
    if not chosen.minutes:
        notes.append("The reading time was not seen in this data sheet; 2 to 5 min is usual.")
    notes.append("At rated voltage, through a resistor, from a current-limited supply.")
    values = {"leakage": Quantity(limit * 1e-6, "A", 4), "read_after": f"{minutes} min"}
    return found(values, working=working, notes=notes, sources=(chosen.source,))


def own_leakage_limit(name: str, farad: float, volts: float) -> float | None:
    """The leakage limit [A] at 20 °C by the family's own rule, None where none is known."""
    rule = _own_rule(name, farad, volts)
    return None if rule is None else rule.limit(farad * 1e6, volts) * 1e-6


def own_leakage_choice(name: str, farad: float, volts: float) -> tuple[str, ...]:
    """What is said of the form of that limit; nothing where the sources agree."""
    rule = _own_rule(name, farad, volts)
    return () if rule is None else rule.choice()


def _own_rule(name: str, farad: float, volts: float) -> LeakageRule | None:
    for rule in rules_of(family(name).name):
        if rule.celsius == ROOM_C and rule.holds(farad * 1e6, volts):
            return rule
    return None


def _wet_or_solid() -> tuple[str, ...]:
    return tuple(name for name, one in families().items() if one.inside != "film")
