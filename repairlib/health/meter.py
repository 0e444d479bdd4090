"""What a meter's reading is worth: its interval, its leads, and a verdict against limits.

Covers percent-of-reading plus digits, lead resistance, four-wire resistance and a verdict on a
reading. The decision rules stand in core/decide.py, the limits of parts elsewhere in this room.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import Annotated

from repairlib.core.calculator import Choice, Found, Given, Text, calculator, found
from repairlib.core.decide import (
    NON_BINARY,
    RULES,
    SIMPLE,
    UNIFORM,
    decide,
    false_accept_risk,
)
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity, brief, read_quantity
from repairlib.core.typed.readings import (
    ABOVE,
    BELOW,
    OVERLOAD,
    Measurement,
    last_digit,
    read_measurement,
)
from repairlib.core.verdicts import CANNOT_TELL, PASS

LEADS_WORN = 1.0  # ohm; renew the leads above it
_READING = "a reading as the meter shows it, such as 120.0 V or 0.35 Ω"
_ACCURACY_IS_U = (
    "A choice: the maker's accuracy figure is taken as the uncertainty U, because a bench "
    "meter rarely has a calibration certificate. It is a bound, not a standard deviation"
)
MAY_BE_A_SHORT = (
    "it may as well be 0 Ω: the probes touch each other, or the part is shorted. Take the leads "
    "off the reading, and measure on a lower range or with four wires"
)


@dataclass(frozen=True, slots=True)
class Interval:
    """Where the true value lies: from `low` to `high` around `reading`, SI units."""

    reading: float
    low: float
    high: float
    unit: str = ""

    @property
    def uncertainty(self) -> float:
        """Half the width."""
        return (self.high - self.low) / 2

    def __str__(self) -> str:
        return f"{brief(self.low, self.unit)} to {brief(self.high, self.unit)}"


def interval(reading: str, percent: float, digits: float, unit: str | None = None) -> Interval:
    """The interval of a reading: ± (`percent` of it + `digits` counts of its last place).

    `reading` is text, with all the figures that the meter shows, because the last place counts.
    `percent` and `digits` come from the meter's data sheet, both 0 or more. Digits are counts,
    never extra per cent. Source: makers' accuracy notes. Raises RepairlibError for a reading
    that is no number and for negative figures.

    >>> print(interval("100.0 V", percent=2, digits=2))
    97.8 V to 102.2 V
    """
    for name, figure in (("percent", percent), ("digits", digits)):
        if not 0 <= figure < math.inf:
            raise RepairlibError(figure, f"{name} is not 0 or more", "the data sheet's figure")
    written = _written(reading, unit)
    if written is not None:
        raise RepairlibError(reading, f"{written.why}: it has no interval", _READING)
    quantity = read_quantity(reading, unit)
    spread = abs(quantity.value) * percent / 100 + digits * last_digit(reading, unit)
    low, high = quantity.value - spread, quantity.value + spread
    if not math.isfinite(high - low):
        raise RepairlibError(reading, "the interval is too wide for a number", _READING)
    return Interval(quantity.value, low, high, quantity.unit)


@calculator(
    topic="health",
    title="What a meter reading is worth",
    sources=("Meter accuracy KA-03135", "Meter accuracy and precision", "Meter error and accuracy"),
)
def meter_interval(
    reading: Annotated[str, Text("The reading with all its figures, such as 120.0 V.")],
    percent: Annotated[
        float, Given("%", "Per cent of reading, from the data sheet.", at_least=0, at_most=100)
    ],
    digits: Annotated[float, Given("", "Counts of the last place.", at_least=0, at_most=100_000)],
) -> Found:
    """The interval in which the true value lies: ± (per cent of reading + digits).

    `reading` as the meter shows it, with its unit and its trailing zeros; `percent` 0 to 100;
    `digits` 0 to 100 000 counts of the last place. Raises RepairlibError for a reading that is
    no number. Source: makers' accuracy notes.

    >>> print(meter_interval("2.000 V", "0.5 %", 3))  # doctest: +ELLIPSIS
    What a meter reading is worth: low 1.987 V; high 2.013 V; uncertainty 13 mV; ...
    """
    spread = interval(reading, percent, digits)
    count = last_digit(reading)
    unit = spread.unit
    part = abs(spread.reading) * percent / 100
    working = [
        f"one count of the last place is {brief(count, unit)}",
        f"{percent:g} % of {brief(spread.reading, unit)} is {brief(part, unit)}",
        f"{digits:g} counts are {brief(digits * count, unit)}",
        f"together ± {brief(spread.uncertainty, unit)}",
    ]
    values = _ends(spread) | {"last_digit": Quantity(count, unit)}
    return found(values, working=working)


@calculator(
    topic="health",
    title="Resistance without the leads",
    sources=("Meter error and accuracy",),
    cautions=("stored charge",),
)
def two_wire_resistance(
    reading: Annotated[str, Text("The reading across the part, such as 0.35 Ω.")],
    leads: Annotated[str, Text("The reading with the probe tips held together, such as 0.25 Ω.")],
    percent: Annotated[float, Given("%", "Per cent of reading.", at_least=0, at_most=100)] = 0.0,
    digits: Annotated[
        float, Given("", "Counts of the last place.", at_least=0, at_most=100_000)
    ] = 0.0,
) -> Found:
    """The part's resistance: the reading less that of the leads. Both uncertainties add.

    `reading` and `leads` in ohm as the meter shows them, both with power off and capacitors
    discharged; `percent` and `digits` from the data sheet. A difference below zero is shown as it
    is, with its whole interval. Raises RepairlibError for negative
    readings and for leads that read more than the part can explain.
    Source: a maker's notes on meter error: leads add 0.2 to 0.5 Ω, renew them above 1 Ω.

    >>> two_wire_resistance("0.35 Ω", "0.25 Ω").resistance
    100.0 mΩ
    """
    whole = interval(reading, percent, digits, "Ω")
    lost = interval(leads, percent, digits, "Ω")
    for text, one in ((reading, whole), (leads, lost)):
        if one.reading < 0:
            raise RepairlibError(text, "a resistance below zero: is the circuit live?", _READING)
    high = whole.high - lost.low
    if high < 0:
        raise RepairlibError(
            reading, f"less than the leads alone, {leads.strip()}", "both readings taken again"
        )
    rest = round(whole.reading - lost.reading, 12)
    spread = Interval(rest, whole.low - lost.high, high, "Ω")
    working = [
        f"{brief(whole.reading, 'Ω')} - {brief(lost.reading, 'Ω')} = {brief(rest, 'Ω')}",
        f"both readings are uncertain, so the part has {spread}",
    ]
    notes = ["The leads are worn: renew them"] if lost.reading > LEADS_WORN else []
    if rest < 0:
        notes.append("The two readings contradict each other: take both again")
    if spread.low <= 0:
        notes.append("Not told from a short: use a four-wire measurement")
    values = {"resistance": Quantity(rest, "Ω", 4)} | _ends(spread)
    return found(values, working=working, notes=notes)


@calculator(
    topic="health",
    title="Four-wire resistance",
    sources=("IEC 62368-1 test report",),
    cautions=("heat and fire",),
)
def four_wire_resistance(
    voltage: Annotated[
        float, Given("V", "The voltage between the sense leads.", at_least=0, at_most=1e4)
    ],
    current: Annotated[
        float, Given("A", "The current through the part.", at_least=1e-12, at_most=1e4)
    ],
) -> Found:
    """R = V / I, with the voltage sensed at the part: the current leads do not count.

    `voltage` in volts, 0 to 10 kV, on separate sense leads; `current` in ampere, 1 pA to 10 kA.
    Raises RepairlibError outside these ranges. Source: Ohm's law; the worked case is from a
    published test report.

    >>> four_wire_resistance("0.24 V", "20 A").resistance
    12.00 mΩ
    """
    ohm, watt = voltage / current, voltage * current
    values = {"resistance": Quantity(ohm, "Ω", 4), "power": Quantity(watt, "W", 4)}
    working = [
        f"R = V / I = {brief(voltage, 'V')} / {brief(current, 'A')} = {brief(ohm, 'Ω')}",
        f"P = V I = {brief(watt, 'W')}: it warms the part while you measure",
    ]
    notes = ["0 V between the sense leads: are they both on the part?"] if voltage == 0 else []
    return found(values, working=working, notes=notes)


@calculator(
    topic="health",
    title="Verdict on a reading",
    sources=("ILAC-G8:09/2019",),
)
def judge_reading(
    reading: Annotated[str, Text("The reading with all its figures, such as 5.24 V.")],
    percent: Annotated[float, Given("%", "Per cent of reading.", at_least=0, at_most=100)],
    digits: Annotated[float, Given("", "Counts of the last place.", at_least=0, at_most=100_000)],
    limit_low: Annotated[str, Text("The lowest value allowed; empty for none.")] = "",
    limit_high: Annotated[str, Text("The highest value allowed; empty for none.")] = "",
    rule: Annotated[str, Choice(tuple(RULES), "The decision rule.")] = NON_BINARY,
    guard: Annotated[
        float, Given("", "Guard band, a multiple of U.", at_least=0, at_most=10)
    ] = 1.0,
) -> Found:
    """Pass, fail or cannot tell: a reading and its uncertainty against one or two limits.

    `reading`, `limit_low` and `limit_high` in one unit; `percent` and `digits` from the meter's
    data sheet; `rule` one of RULES; `guard` 0 to 10. Raises RepairlibError when no limit is
    given, when the limits contradict each other or when the units differ.
    Source: ILAC-G8:09/2019, 4.2.

    >>> judge_reading("0.97 Ω", 2, 3, limit_high="1 Ω").verdict
    'cannot tell'
    """
    limit = limit_low.strip() or limit_high.strip()
    unit = read_quantity(limit).unit if limit else None
    written = _written(reading, unit)
    spread = interval(reading, percent, digits) if written is None else _open_ended(written)
    least, most = (
        read_quantity(text, spread.unit or None).value if text.strip() else None
        for text in (limit_low, limit_high)
    )
    decision = decide(spread.low, spread.high, least, most, rule, guard, spread.unit)
    if written is not None and written.kind == OVERLOAD:
        reason = f"{written.why}; take a higher range, or look for an open part"
        return found(
            {"reading": reading.strip()},
            verdict=decision.verdict,
            reason=reason,
            notes=[_ACCURACY_IS_U],
        )
    if spread.unit == "Ω" and spread.low <= 0 and decision.verdict == PASS:
        decision = replace(decision, verdict=CANNOT_TELL, zone=CANNOT_TELL, reason=MAY_BE_A_SHORT)
    clause, words = RULES[rule]
    values: dict[str, object] = {**_ends(spread)}
    for name, end in (("accept_from", decision.accept_low), ("accept_to", decision.accept_high)):
        if end is not None:
            values[name] = Quantity(end, spread.unit, 6)
    values["zone"] = decision.zone
    band = 0.0 if rule == SIMPLE else guard
    bound, normal = false_accept_risk(band, UNIFORM), false_accept_risk(band)
    working = [
        _around(spread) if written is None else f"{reading.strip()}: {written.why}",
        f"rule {clause} of ILAC-G8: {words}",
        f"a pass just inside the acceptance limit is wrong in up to {bound:.2%} of cases, if the "
        "accuracy figure is a bound and every value within it as likely; in up to "
        f"{normal:.2%}, if it is U of a normal spread, k = 2",
    ]
    return found(
        values,
        working=working,
        verdict=decision.verdict,
        reason=decision.reason,
        notes=[_ACCURACY_IS_U],
    )


def _written(reading: str, unit: str | None) -> Measurement | None:
    """A reading that is no number of its own, such as OL or < 0.1 Ω; None for a number."""
    try:
        measured = read_measurement(reading, unit or "", None)
    except RepairlibError:
        return None
    return measured if measured.kind in (OVERLOAD, BELOW, ABOVE) else None


def _open_ended(written: Measurement) -> Interval:
    """A reading such as < 0.1 Ω: up to there, or from there on; without the meter's own error."""
    return Interval(math.nan, written.low, written.high, written.unit)


def _around(spread: Interval) -> str:
    return (
        f"± {brief(spread.uncertainty, spread.unit)} around "
        f"{brief(spread.reading, spread.unit)}: {spread}"
    )


def _ends(spread: Interval) -> dict[str, Quantity]:
    """The finite ends of an interval, and half its width when both are finite."""
    ends = {
        "low": (spread.low, 4),
        "high": (spread.high, 4),
        "uncertainty": (spread.uncertainty, 2),
    }
    return {
        name: Quantity(end, spread.unit, figures)
        for name, (end, figures) in ends.items()
        if math.isfinite(end)
    }
