"""Supply rails: the window and the ripple each may have, and a verdict on what was measured.

The limits of the table are those of a computer supply. Any other rail is judged by its own figures.
"""

from __future__ import annotations

from functools import cache
from typing import Annotated, NamedTuple

from repairlib.core.calculator import Choice, Found, Given, Text, calculator, found
from repairlib.core.decide import Decision, decide
from repairlib.core.errors import RepairlibError, as_printed
from repairlib.core.quantity import Quantity, brief
from repairlib.core.tables import read_table
from repairlib.core.verdicts import CANNOT_TELL, FAIL, OUTSIDE, PASS, WITHIN
from repairlib.health import interval
from repairlib.stored_charge import QUALIFIED, by_voltage, hazards_at

OWN = "by its own figures"
IN_WORDS = {PASS: WITHIN, FAIL: OUTSIDE, CANNOT_TELL: CANNOT_TELL}
HOW_RIPPLE = (
    "Ripple is peak to peak on an oscilloscope of 20 MHz, with 0.1 µF ceramic and 10 µF "
    "electrolytic at the probe. A meter on ac shows less."
)
OSCILLOSCOPE = Given("%", "Of the oscilloscope, per cent of reading.", at_least=0, at_most=100)


class Window(NamedTuple):
    """A row of supply-rails: volts, `ripple` in volts peak to peak."""

    rail: str
    nominal: float
    low: float
    high: float
    ripple: float | None
    note: str
    source: str


@cache
def windows() -> dict[str, Window]:
    """The rails of the table by name.

    >>> windows()["-12 V"].low, windows()["+5 V"].ripple
    (-13.2, 0.05)
    """
    return {
        row["rail"]: Window(
            row["rail"],
            float(row["nominal_v"]),
            float(row["low_v"]),
            float(row["high_v"]),
            float(row["ripple_v_pp"]),
            row["note"],
            row["source"],
        )
        for row in read_table("supply-rails")
    }


def window_around(nominal: float, tolerance: float = 5.0, ripple: float | None = None) -> Window:
    """The window of any other rail: `nominal` volts ± `tolerance` per cent.

    `ripple` in volts peak to peak, None where no limit is known. 5 % is usual for logic. Source:
    common practice. Raises RepairlibError for 0 V and for a tolerance that is not from above 0 to
    50 %.

    >>> window_around(-15, 10)[2:4]
    (-16.5, -13.5)
    """
    if not (nominal and 0 < tolerance <= 50):
        read = f"{brief(nominal, 'V')} ± {tolerance:g} %"
        raise RepairlibError(read, "no window", "a rail that is not 0 V, above 0 to 50 %")
    low, high = sorted(nominal * (1 + sign * tolerance / 100) for sign in (-1, 1))
    low, high = round(low, 9), round(high, 9)
    return Window(f"{nominal:+g} V", nominal, low, high, ripple, "", "common practice")


def rail_names() -> tuple[str, ...]:
    """The rails of the table, and OWN for any other."""
    return (*windows(), OWN)


def _rail_named(value: object) -> str:
    """A rail of the table as people type it: 5V, + 5 V. No sign is a plus."""
    typed = as_printed(value).replace(" ", "").casefold()
    signed = typed if typed[:1] in ("+", "-") else f"+{typed}"
    for name in windows():
        if name.replace(" ", "").casefold() == signed:
            return name
    raise RepairlibError(value, "not a known rail", ", ".join(rail_names()))


@calculator(
    topic="power up",
    title="Supply rail",
    sources=("ATX guide 0.9", "ILAC-G8:09/2019"),
    cautions=("flying leads and eyes",),
)
def rail_check(
    rail: Annotated[str, Choice(rail_names, "Which rail.", _rail_named)],
    voltage: Annotated[str, Text("As the meter shows it, such as 5.02 V.")],
    ripple: Annotated[str, Text("Peak to peak, such as 85 mV; empty where not measured.")] = "",
    percent: Annotated[
        float | None, Given("%", "Of the meter, per cent of reading.", at_least=0, at_most=100)
    ] = None,
    digits: Annotated[
        float, Given("", "Of the meter, counts of the last place.", at_least=0, at_most=100_000)
    ] = 0.0,
    ripple_percent: Annotated[float, OSCILLOSCOPE] = 0.0,
    nominal: Annotated[
        float | None, Given("V", "Of any other rail.", at_least=-1000, at_most=1000)
    ] = None,
    tolerance: Annotated[float, Given("%", "Of any other rail.", at_least=0.1, at_most=50)] = 5.0,
    ripple_limit: Annotated[
        float | None, Given("V", "Of any other rail, peak to peak.", above=0, at_most=100)
    ] = None,
) -> Found:
    """Whether a measured rail and its ripple are within their limits, outside, or cannot be told.

    `voltage` and `ripple` as the instruments show them; `percent` and `digits` from the meter's
    data sheet, `ripple_percent` from the oscilloscope's. For a rail that is not in the table
    `nominal`, `tolerance` and `ripple_limit`. Above 60 V dc the rail is left to a qualified
    person. Raises RepairlibError for readings that are no number in volts and for a rail of its
    own without its volts. Source: ATX design guide 0.9, tables 3 and 8; decided by ILAC-G8, 4.2.3.

    >>> rail_check("+5 V", "5.02 V", "38 mV").verdict
    'within the limits'
    >>> rail_check("+5 V", "4.76 V", percent=0.5, digits=2).verdict
    'cannot tell'
    """
    window = _window(rail, nominal, tolerance, ripple_limit)
    read = interval(voltage, percent or 0.0, digits, "V")
    values: dict[str, object] = {
        "voltage": Quantity(read.reading, "V"),
        "at_least": Quantity(window.low, "V"),
        "at_most": Quantity(window.high, "V"),
    }
    beyond = max(abs(read.reading), abs(window.nominal))
    left_to, why = by_voltage(beyond)
    if left_to == QUALIFIED:
        return found(
            values,
            verdict=left_to,
            reason=why,
            sources=("IEC 62368-1",),
            cautions=hazards_at(beyond),
        )
    of_volts = decide(read.low, read.high, window.low, window.high, unit="V")
    decisions, notes = [of_volts], []
    if of_volts.verdict == FAIL and read.reading * window.nominal < 0:
        notes.append("The sign is the other one: are the probes the right way round?")
    if percent is None and not digits:
        notes.append("The meter's own error was not given and is not counted.")
    if window.note:
        notes.append(f"{window.note[0].upper()}{window.note[1:]}.")
    if not ripple.strip():
        notes.append("Ripple was not measured: a rail in its window may still hum.")
    else:
        shown = interval(ripple, ripple_percent, 0, "V")
        values["ripple"] = Quantity(shown.reading, "V")
        decisions.append(_of_ripple(shown.low, shown.high, window.ripple))
        notes.append(HOW_RIPPLE)
    if window.ripple is not None:
        values["ripple_at_most"] = Quantity(window.ripple, "V")
    worst = next(
        (one for word in (FAIL, CANNOT_TELL) for one in decisions if one.verdict == word), None
    )
    verdict = PASS if worst is None else worst.verdict
    reason = worst.reason if worst else "; ".join(one.reason for one in decisions)
    return found(
        values,
        working=[one.reason for one in decisions],
        verdict=IN_WORDS[verdict],
        reason=reason,
        notes=notes,
        sources=(window.source,),
    )


def _window(
    rail: str, nominal: float | None, tolerance: float, ripple_limit: float | None
) -> Window:
    if rail != OWN:
        return windows()[rail]
    if nominal is None:
        raise RepairlibError(rail, "its volts are missing", "nominal=9 V")
    return window_around(nominal, tolerance, ripple_limit)


def _of_ripple(low: float, high: float, limit: float | None) -> Decision:
    if low < 0:
        raise RepairlibError(f"{brief(low, 'V')}", "ripple below zero", "peak to peak, 0 V or more")
    if limit is None:
        why = "no ripple limit is known for this rail"
        return Decision(CANNOT_TELL, CANNOT_TELL, why, "", None, None)
    return decide(low, high, limit_high=limit, unit="V")
