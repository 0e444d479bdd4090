"""The short table before power: which pins may not meet, and what the ohms between them say.

Measured with the power off and the capacitors empty. No reading permits power: the best that an
answer says is to go on to the next check. The figures are common practice; where the set has a
service sheet, its figure is given as `threshold`.
"""

from __future__ import annotations

import math
from functools import cache
from typing import Annotated, NamedTuple

from repairlib.core.calculator import Choice, Found, Given, Text, calculator, found
from repairlib.core.quantity import brief, brief_range
from repairlib.core.tables import read_table
from repairlib.core.typed.readings import NOTHING, OVERLOAD, read_measurement
from repairlib.core.verdicts import AGAIN, STOP
from repairlib.stored_charge import QUALIFIED

GO_ON = "go on to the next check"  # no word for good: no reading permits power
DOUBTFUL, HANDED_ON = "doubtful", "handed on"
ROOM = 5.0  # below so many times the threshold it is measured again; a choice of this workbook
WORN_LEADS = 1.0  # Ω, from which leads are renewed


class Pair(NamedTuple):
    """Two points that may not meet. `stop_below` in Ω; None where only a comparison tells.

    `open_is` says what an open reading is there: "expected", "doubtful", or "handed on" for mains.
    """

    stop_below: float | None
    open_is: str
    expected: str
    source: str


@cache
def pairs() -> dict[str, Pair]:
    """Every pair by its name, in the order of checking.

    >>> pairs()["12 V rail and ground"].stop_below, pairs()["core rail and ground"].stop_below
    (10.0, None)
    """
    return {
        row["pair"]: Pair(
            float(row["stop_below_ohm"]) if row["stop_below_ohm"] else None,
            row["open_is"],
            row["expected"],
            row["source"],
        )
        for row in read_table("before-power")
    }


@calculator(
    topic="connectors",
    title="Short circuits before power",
    sources=("common practice",),
    cautions=("stored charge", "heat and fire"),
)
def shorts_before_power(
    pair: Annotated[str, Choice(lambda: tuple(pairs()), "Between which two points.")],
    measured: Annotated[str, Text("The reading with its unit, such as 45 Ω, 3.2 kΩ or OL.")],
    threshold: Annotated[
        float | None, Given("Ω", "Own limit, of the service sheet.", above=0, at_most=1e7)
    ] = None,
    leads: Annotated[
        float, Given("Ω", "Of the test leads, probes held together.", at_least=0, at_most=10)
    ] = 0.3,
) -> Found:
    """Stop, measure again, or go on to the next check: the ohms between two points, power off.

    `measured` is the reading as the meter shows it; `threshold` in Ω goes before the table; `leads`
    in Ω is taken off. Below the threshold the verdict is "stop", below five times it "measure
    again". Mains contacts are left to a qualified person. Raises RepairlibError for readings that
    cannot be read and where no threshold is known. Source: common practice; the leads of a meter
    have 0.2 to 0.5 Ω.

    >>> shorts_before_power("12 V rail and ground", "0.8 Ω").verdict
    'stop'
    >>> shorts_before_power("12 V rail and ground", "1.2 kΩ").verdict
    'go on to the next check'
    """
    one = pairs()[pair]
    if one.open_is == HANDED_ON:
        reason = "mains side: licensed practice decides what is measured, and how"
        return found(
            {"expected": one.expected},
            verdict=QUALIFIED,
            reason=reason,
            sources=(one.source,),
            cautions=("mains",),
        )
    least = threshold if threshold is not None else one.stop_below
    reading = read_measurement(measured, "Ω")
    low, high = max(0.0, reading.low - leads), max(0.0, reading.high - leads)
    values: dict[str, object] = {"expected": one.expected}
    working = [f"the leads, {brief(leads, 'Ω')}, are taken off the reading"]
    if least is None:
        verdict, reason = AGAIN, f"{pair}: {one.expected}; no single figure tells: give a threshold"
    else:
        values["stop_below"] = brief(least, "Ω")
        working.append(
            f"stop below {brief(least, 'Ω')}; measure again below {ROOM:g} × that, "
            f"{brief(ROOM * least, 'Ω')}"
        )
        verdict, reason = _judged(one, reading.kind, low, high, least)
    if reading.kind == NOTHING:
        verdict, reason = AGAIN, "nothing was measured"
    elif verdict == GO_ON and "doubtful" in reading.why:
        verdict, reason = AGAIN, reading.why
    values["next"] = _next(pair, verdict)
    notes = [
        "First the volts, then the ohms: a charged capacitor gives a false reading and breaks the "
        "meter. Power off, capacitors empty, measured twice.",
        "Ohms do not find what fails at full voltage. First power from a current-limited supply.",
        "Both ways round: a diode or a chip in between reads low one way only.",
    ]
    if least is not None and least <= leads:
        notes.insert(0, "So few ohms are lost in the leads: measure with four wires.")
    if leads > WORN_LEADS:
        notes.insert(0, f"Leads of {brief(leads, 'Ω')} are worn: renew them, then measure again.")
    return found(
        values,
        working=working,
        verdict=verdict,
        reason=reason,
        notes=notes,
        sources=(one.source,),
    )


def _judged(one: Pair, kind: str, low: float, high: float, least: float) -> tuple[str, str]:
    """The verdict on a reading, leads taken off, that lies between low and high; and why."""
    stop, again = brief(least, "Ω"), brief(ROOM * least, "Ω")
    if kind == OVERLOAD:
        if one.open_is == DOUBTFUL:
            return AGAIN, "open where a rail has its loads: does the probe touch, is a fuse open?"
        return GO_ON, "open, as expected here, if the probes touched: hold them together to see"
    if high < least:
        return STOP, f"{_shown(low, high)} is below {stop}: find what joins them first"
    if low < least:
        return AGAIN, f"{_shown(low, high)} may be below {stop}"
    if low < ROOM * least:
        return AGAIN, f"{_shown(low, high)} is not far above {stop}: again, other way round"
    return GO_ON, f"{_shown(low, high)} is not below {again}; expected: {one.expected}"


def _shown(low: float, high: float) -> str:
    if math.isinf(high):
        return f"more than {brief(low, 'Ω')}"
    if low == 0.0 and high > 0.0:
        return f"at most {brief(high, 'Ω')}"
    return brief_range(low, high, "Ω")


def _next(pair: str, verdict: str) -> str:
    """What comes after: the next pair of the table, or the same again."""
    if verdict == STOP:
        return "no power; find what is shorted"
    if verdict == AGAIN:
        return f"{pair}, again"
    names = [name for name, one in pairs().items() if one.open_is != HANDED_ON]
    after = names[names.index(pair) + 1 :]
    return after[0] if after else "polarity and pin 1 of every plug, by a second person"
