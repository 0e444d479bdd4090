"""How long an electrolytic lasts: life by temperature, ripple and voltage, and its spread.

Wet aluminium: life doubles for each 10 °C less (the 10-degree rule), times a factor for ripple and
one for voltage. Aluminium polymer: ten times for each 20 °C less. Life is never extrapolated past
a rating. An answer is an estimate with a wide spread, and never more than 15 years.
"""

from __future__ import annotations

from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.health.capacitor_families import STAYS, TEN_DEGREE_RULE, ageing_families, family

HOURS_A_YEAR = 8760
CAP_YEARS = 15
CAP_HOURS = CAP_YEARS * HOURS_A_YEAR
ABSOLUTE_ZERO = -273.15  # °C
USUAL_HEATING = 5.0  # K of self-heating at rated ripple; 3.5 to 5 K for 105 °C parts
LOW_VOLTAGE = 0.6  # of rated voltage; below it the voltage factor grows no more
LOW_VOLTAGE_FACTOR = 3.59
_RULE_FITS = (60.0, 105.0)  # °C; the 10-degree rule drifts outside
CAP_NOTE = f"No answer above {CAP_YEARS} years is believed: seals and lead-throughs age too."
SPREAD_NOTE = (
    "An estimate. A choice: half to twice the life is shown, a third to three times below 60 °C, "
    "where the rule drifts."
)


class Life(NamedTuple):
    """A life by rule, and the factors it came from: `hours` before the cap of 15 years."""

    hours: float
    by_temperature: float
    by_ripple: float
    by_voltage: float
    spread: float

    @property
    def believed(self) -> float:
        """Hours, at most 15 years."""
        return min(self.hours, CAP_HOURS)

    @property
    def years(self) -> float:
        return self.believed / HOURS_A_YEAR

    @property
    def range(self) -> tuple[float, float]:
        """The shortest and the longest life to expect, in hours, at most 15 years."""
        return min(self.hours / self.spread, CAP_HOURS), min(self.hours * self.spread, CAP_HOURS)


def expected(
    name: str,
    rated_hours: float,
    rated_celsius: float,
    celsius: float,
    *,
    ripple: float = 1.0,
    voltage: float = 1.0,
    heating: float = USUAL_HEATING,
    beyond_rated_ripple: bool = False,
) -> Life:
    """The life of a part of family `name` in air of `celsius`, with its factors.

    `rated_hours` at `rated_celsius` and rated ripple, from the data sheet; `ripple` and `voltage`
    as parts of the rated ones (0 to 1); `heating` is the self-heating at rated ripple, in K. With
    `beyond_rated_ripple` a larger ripple is estimated too, with Ki 4 for 105 °C parts. For polymer
    parts only the temperature counts. Raises RepairlibError, with the reason, above a rating,
    below absolute zero and for families that do not dry out.

    >>> expected("aluminium general 105", 2000, 105, 45).hours
    128000.0
    """
    one = family(name)
    if not one.dries_out:
        accepted = ", ".join(ageing_families())
        wrong = "no life by temperature is known for it"
        if one.ages == STAYS:
            wrong = "it does not dry out: no life by temperature"
        raise RepairlibError(name, wrong, accepted)
    _check(rated_hours, rated_celsius, celsius, voltage, heating)
    if not (0 <= ripple <= 1 or (beyond_rated_ripple and 0 <= ripple <= 3)):
        wrong = "ripple above the part's rating: life is not extrapolated past it"
        raise RepairlibError(f"{ripple * 100:g} %", wrong, "0 % to 100 % of rated ripple")
    spread = 2.0 if _RULE_FITS[0] <= celsius <= _RULE_FITS[1] else 3.0
    by_temperature = temperature_factor(rated_celsius, celsius, one.ages)
    if one.ages != TEN_DEGREE_RULE:
        return Life(rated_hours * by_temperature, by_temperature, 1.0, 1.0, spread)
    by_ripple = ripple_factor(ripple, heating, ripple_base(ripple, rated_celsius))
    by_voltage = voltage_factor(voltage)
    hours = rated_hours * by_temperature * by_ripple * by_voltage
    return Life(hours, by_temperature, by_ripple, by_voltage, spread)


def temperature_factor(rated: float, actual: float, rule: str = TEN_DEGREE_RULE) -> float:
    """2^((T0 − T)/10), or 10^((T0 − T)/20) for polymer. Source: Cosel; polymer from memory.

    >>> temperature_factor(105, 45)
    64.0
    """
    if rule == TEN_DEGREE_RULE:
        return 2 ** ((rated - actual) / 10)
    return 10 ** ((rated - actual) / 20)


def ripple_factor(ratio: float, heating: float = USUAL_HEATING, base: float = 2.0) -> float:
    """KR = Ki^((1 − ratio²) ΔT0 / 10), `ratio` of actual to rated ripple current.

    Source: Jianghai, quoted.

    >>> ripple_factor(0.5), ripple_factor(0), ripple_factor(1.2, base=4)
    (1.297, 1.414, 0.737)
    """
    return base ** ((1 - ratio**2) * heating / 10)


def ripple_base(ratio: float, rated_celsius: float) -> float:
    """Ki: 2, but 4 for 105 °C parts above rated ripple. Source: Jianghai, quoted."""
    return 4.0 if ratio > 1 and rated_celsius >= 105 else 2.0


def voltage_factor(ratio: float) -> float:
    """KV = ratio^−2.5 from 0.6 to 1 of rated voltage, 3.59 below 0.6. Source: Jianghai, quoted.

    Some makers leave it out for small radials, others use exponents from 3 to 5 (from memory).

    >>> voltage_factor(0.8), voltage_factor(0.3)
    (1.747, 3.59)
    """
    return LOW_VOLTAGE_FACTOR if ratio < LOW_VOLTAGE else ratio**-2.5


def in_hours(hours: float) -> str:
    """Hours in words, to four figures.

    >>> in_hours(469_518.7)
    '469500 h'
    """
    return f"{float(f'{hours:.4g}'):.0f} h"


def mixed_life(uses: list[tuple[float, float]]) -> float:
    """Life [h] in changing use, from (hours of use, life in that use): L = Σh / Σ(h / L).

    Source: Cosel. Raises RepairlibError unless all numbers are above 0.

    >>> mixed_life([(8, 16000), (16, 64000)])
    32000.0
    """
    if not uses or not all(0 < number < float("inf") for use in uses for number in use):
        raise RepairlibError(uses, "hours and lives above 0 are due", "8 h at 65 °C; 16 h at 45 °C")
    return sum(hours for hours, _ in uses) / sum(hours / life for hours, life in uses)


def _check(rated_hours, rated, actual, voltage, heating) -> None:
    for celsius in (rated, actual):
        if not ABSOLUTE_ZERO <= celsius <= 1000:
            wrong = "not a temperature: absolute zero is -273.15 °C"
            raise RepairlibError(f"{celsius:g} °C", wrong, "0 °C to the part's rated temperature")
    if actual > rated:
        wrong = f"above the part's rating of {rated:g} °C: life is not extrapolated past it"
        raise RepairlibError(f"{actual:g} °C", wrong, f"at most {rated:g} °C")
    if not 100 <= rated_hours <= 100_000_000:
        wrong = "not the rated life of a part: was the unit h left out?"
        raise RepairlibError(f"{rated_hours:g} h", wrong, "100 h or more, such as 2000 h")
    if not 0 <= voltage <= 1:
        wrong = "voltage above the part's rating: life is not extrapolated past it"
        raise RepairlibError(f"{voltage * 100:g} %", wrong, "0 % to 100 % of rated voltage")
    if not 0 <= heating <= 30:
        raise RepairlibError(f"{heating:g} K", "not a self-heating", "0 K to 30 K")
