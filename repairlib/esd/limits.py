"""Limits for straps, mats, floors, chairs, ionisers and irons, and a verdict on one reading.

A limit belongs to an edition of a standard; where an edition states none here, the verdict is
"cannot tell". A whole bench is audited in audit.py.
"""

from __future__ import annotations

import math
from typing import Annotated

from repairlib.core.calculator import Choice, Found, Given, Text, calculator, found
from repairlib.core.decide import CANNOT_TELL, FAIL, PASS, decide
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import brief, brief_range
from repairlib.core.tables import read_table
from repairlib.core.typed.readings import (
    NOTHING,
    OVERLOAD,
    VALUE,
    ZERO,
    Measurement,
    read_measurement,
)

EDITIONS = (
    "S20.20-2021",
    "S20.20-2014",
    "S20.20-2007",
    "IEC 61340-5-1:2016",
    "IEC 61340-5-1:2007",
    "bench practice",
)
STRAP, SURFACE = "strap", "surface"  # kinds of item, as in the table
LEAST_STRAP = 750e3  # Ω, the IEC's lower limit: less would not protect the person
LEAST_SURFACE = 10e3  # Ω, advised as a lower limit in 2007
_LEAST_STRAP_SOURCE = "IEC wrist strap, quoted"
_TEST_CHANGES = 1e6  # Ω; below it 10 V are used, from there on 100 V
_STRICT = 1 - 1e-9  # a limit that may not be reached
_ANY = "any"
_OVERLOAD = "an overload names no value: write the end of the range, such as > 40 MΩ"


def items() -> tuple[str, ...]:
    """What can be audited, in the order of the table."""
    return tuple(dict.fromkeys(row["item"] for row in read_table("esd-limits")))


def limit_row(item: str, edition: str) -> dict[str, str] | None:
    """The row of datasets/reference/esd-limits.csv for an item, None where none is listed."""
    for row in read_table("esd-limits"):
        if row["item"] == item and row["edition"] in (edition, _ANY):
            return row
    return None


def needed_test_voltage(ohm: float) -> float:
    """The voltage that a surface is measured with: 10 V below 1 MΩ, otherwise 100 V.

    Source: a reply in the ESD Association's forum.

    >>> needed_test_voltage(0.5e6), needed_test_voltage(1e6)
    (10.0, 100.0)
    """
    return 10.0 if ohm < _TEST_CHANGES else 100.0


@calculator(
    topic="esd",
    title="Reading against an ESD limit",
    sources=("common practice",),
)
def esd_limit(
    item: Annotated[str, Choice(items, "What was measured.")],
    reading: Annotated[str, Text("The reading with its unit, such as 1.02 MΩ, > 40 MΩ or -20 V.")],
    edition: Annotated[str, Choice(EDITIONS, "The standard and edition to judge by.")] = EDITIONS[
        0
    ],
    walk: Annotated[str, Text("Highest body voltage in a walking test, such as 60 V.")] = "",
    uncertainty: Annotated[float, Given("%", "Of your meter.", at_least=0, at_most=100)] = 0.0,
    test_voltage: Annotated[
        float | None, Given("V", "What the meter measured with.", above=0, at_most=1e4)
    ] = None,
) -> Found:
    """Pass, fail or cannot tell: one reading against the limit of a named edition.

    `reading` in Ω, V or A as the item needs; `walk` is the body voltage of a walking test;
    `uncertainty` in per cent of the reading, 0 to 100; `test_voltage` in volts. The sign of a
    voltage does not matter. A strap under 750 kΩ fails under every edition, because it no longer
    protects the person. Raises RepairlibError for readings that cannot be read. Source: the
    edition, see datasets/reference/esd-limits.csv.

    >>> finding = esd_limit("wrist strap", "36 MΩ", "S20.20-2007")
    >>> print(finding.verdict, "-", finding.reason)
    fail - 36 MΩ is not below 35 MΩ (S20.20-2007)
    """
    row = limit_row(item, edition)
    if row is None:
        listed = ", ".join(
            one["edition"] for one in read_table("esd-limits") if one["item"] == item
        )
        reason = f"no limit of {edition} for it is listed here; listed: {listed}"
        return found({"reading": reading.strip() or "none"}, verdict=CANNOT_TELL, reason=reason)
    measured = read_measurement(reading, row["unit"])
    verdict, reason = _judge(row, edition, measured, uncertainty)
    if row["kind"] == STRAP:
        verdict, reason = _protects(measured, uncertainty, verdict, reason)
    if row["kind"] == SURFACE and test_voltage is not None and verdict != CANNOT_TELL:
        verdict, reason = _measured_rightly(measured, test_voltage, verdict, reason)
    working = [reason]
    if row["walk_to_v"]:
        verdict, reason = _walked(row, measured, walk, uncertainty, verdict, reason)
        working.append(reason)
    elif walk.strip():
        raise RepairlibError(walk, f"{item} has no walking test", "no walk voltage here")
    values = {"reading": str(measured) if measured.value is not None else reading.strip() or "none"}
    values |= {"limit": _limit_words(row)}
    notes = _notes(row, test_voltage, uncertainty)
    ohm = measured.value if measured.kind == VALUE else None
    if item == "work surface" and ohm is not None and ohm < LEAST_SURFACE:
        notes.append(
            "Below 10 kΩ it is nearly a wire to ground: a charged part on it is hit hard, and a "
            "live part finds ground through it. No live set on such a mat (common practice)."
        )
    if measured.kind == VALUE and measured.why != "as written":
        notes.insert(0, f"The reading: {measured.why}.")
    sources = (row["source"], _LEAST_STRAP_SOURCE) if row["kind"] == STRAP else (row["source"],)
    return found(
        values, working=working, verdict=verdict, reason=reason, notes=notes, sources=sources
    )


def _judge(row, edition: str, measured: Measurement, percent: float) -> tuple[str, str]:
    """The reading alone against the limits of its row."""
    if measured.kind == NOTHING:
        return CANNOT_TELL, "not measured"
    if measured.kind == OVERLOAD:
        return CANNOT_TELL, _OVERLOAD
    if measured.kind == ZERO and row["unit"] == "Ω":
        return CANNOT_TELL, measured.why
    low, high = _spread(measured, percent)
    least, most = _ends(row)
    strict = _STRICT if row["to_included"] == "no" else 1.0
    verdict = decide(low, high, least, most * strict, unit=row["unit"]).verdict
    says = {PASS: "is", FAIL: "is not", CANNOT_TELL: "may or may not be"}[verdict]
    return verdict, f"{_range(low, high, row['unit'])} {says} {_limit_words(row)} ({edition})"


def _protects(measured: Measurement, percent: float, verdict: str, reason: str):
    """A strap with too little resistance fails, whatever the edition says."""
    if measured.kind in (NOTHING, OVERLOAD):
        return verdict, reason
    low, high = _spread(measured, percent)
    missing = "the resistor that protects you is missing or shorted: do not wear it"
    if measured.kind == ZERO:
        return FAIL, f"0 Ω: {missing}, or the probes touch: measure again"
    if high < LEAST_STRAP:
        return FAIL, f"{_range(low, high, 'Ω')} is below 750 kΩ (IEC): {missing}"
    if low < LEAST_STRAP and verdict == PASS:
        return CANNOT_TELL, f"{_range(low, high, 'Ω')} may be below 750 kΩ (IEC)"
    return verdict, reason


def _measured_rightly(measured: Measurement, volts: float, verdict: str, reason: str):
    value = measured.value if measured.value is not None else _spread(measured, 0)[0]
    wanted = needed_test_voltage(value)
    if math.isclose(volts, wanted, rel_tol=0.1):
        return verdict, reason
    return (
        CANNOT_TELL,
        f"measured with {brief(volts, 'V')}; this reading needs {wanted:g} V, and a surface "
        "reads otherwise with less",
    )


def _walked(row, measured, walk: str, percent: float, verdict: str, reason: str):
    """The resistance and the walking test of a person on a floor; both must pass."""
    most = float(row["walk_to_v"])
    walked = read_measurement(walk, "V")
    if walked.kind in (NOTHING, OVERLOAD):
        if verdict != PASS:
            return verdict, reason
        exempt = row["no_walk_below"]
        if exempt and _spread(measured, percent)[1] < float(exempt):
            return verdict, f"{reason}; below {brief(float(exempt), 'Ω')} it needs no walking test"
        return CANNOT_TELL, f"{reason}, but the body voltage of a walking test is missing"
    low, high = _spread(walked, percent)
    walking = decide(low, high, None, most * _STRICT, unit="V").verdict
    says = {PASS: "is", FAIL: "is not", CANNOT_TELL: "may or may not be"}[walking]
    told = f"{reason}; walking, {_range(low, high, 'V')} {says} below {most:g} V"
    worst = FAIL if FAIL in (verdict, walking) else CANNOT_TELL
    return (PASS if verdict == walking == PASS else worst), told


def _spread(measured: Measurement, percent: float) -> tuple[float, float]:
    """Where the size of the reading lies, with the meter's uncertainty; the sign is dropped."""
    ends = sorted(
        end if math.isinf(end) else end + sign * abs(end) * percent / 100
        for end, sign in ((measured.low, -1), (measured.high, 1))
    )
    if math.isinf(ends[0]):
        return 0.0, abs(ends[1])
    if ends[0] <= 0 <= ends[1]:
        return 0.0, max(-ends[0], ends[1])
    return min(map(abs, ends)), max(map(abs, ends))


def _ends(row) -> tuple[float | None, float]:
    return (float(row["from"]) if row["from"] else None), float(row["to"])


def _limit_words(row) -> str:
    least, most = _ends(row)
    word = "at most" if row["to_included"] == "yes" else "below"
    if least is None:
        return f"{word} {brief(most, row['unit'])}"
    return f"within {brief(least, row['unit'])} to {brief(most, row['unit'])}"


def _range(low: float, high: float, unit: str) -> str:
    if high == math.inf:
        return f"over {brief(low, unit)}"
    if low == 0 and high:
        return f"at most {brief(high, unit)}"
    return brief_range(low, high, unit)


def _notes(row, test_voltage: float | None, percent: float) -> list[str]:
    notes = [f"± {percent:g} % was taken for the meter."]
    if not percent:
        notes = ["What the meter itself is off was left out: give it as uncertainty=5 %."]
    if row["edition"] == _ANY:
        notes.append("Taken for every edition here: look it up in the edition that you keep.")
    if row["kind"] == STRAP:
        notes.append(
            "Measured with the strap on a person, and every day: a cord breaks unseen. The lower "
            "limit of 750 kΩ (IEC) is kept here for every edition."
        )
    if row["kind"] == SURFACE and test_voltage is None:
        notes.append(
            "Say with which voltage it was measured: 10 V below 1 MΩ, otherwise 100 V (ESD "
            "Association forum). The ohms range of a multimeter uses less."
        )
    if row["item"] == "ioniser offset":
        notes.append(
            "Its decay time from 1000 V to 100 V counts too: the user sets that limit (from "
            "memory)."
        )
    if row["item"].startswith("iron tip to ground"):
        notes.append(
            "Try the meter on a 2 Ω resistor first (ESD Association, periodic verification of "
            "soldering equipment)."
        )
    if row["item"] == "work surface" and row["edition"] == "IEC 61340-5-1:2007":
        notes.append("A lower limit of 10 kΩ is advised where charged parts are the worry.")
    return notes
