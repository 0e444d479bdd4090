"""What a meter's reading of a twin on its board says of the part alone.

Capacitors that lie beside it add to it, resistors and coils take away from it. What lies beside and
is not known makes the reading a limit and no value.
"""

from __future__ import annotations

from typing import Annotated

from repairlib.core.calculator import Choice, Found, Given, Text, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity, brief, read_quantity
from repairlib.core.series import nearest, values_between
from repairlib.core.verdicts import CANNOT_TELL
from repairlib.missing_parts.kinds import CAPACITOR, INDUCTIVE, RESISTOR

UNITS = {CAPACITOR: "F", RESISTOR: "Ω", INDUCTIVE: "H"}
SERIES = {CAPACITOR: "E6", RESISTOR: "E24", INDUCTIVE: "E12"}
SPREAD = {CAPACITOR: 0.20, RESISTOR: 0.05, INDUCTIVE: 0.20}  # usual tolerance of the part
MOST_BESIDE = 50
NOT_KNOWN = "not known"
FEW_OHMS = 1.0  # Ω, up to which the leads of a meter count; common practice
STEADY = 1.0  # times the leads that must be left of a reading: contacts vary so much; our choice
FOUR_WIRES = (
    "Below 1 Ω measure with four wires: 1 A through the twin from a supply with a limit of "
    "current, and the millivolts across its own ends are milliohms; the board off, nothing else on"
)
TOO_WIDE = 2.0  # from the lowest to the highest value, above which nothing is told


@calculator(
    topic="missing parts",
    title="What a twin's reading allows",
    sources=("common practice",),
    cautions=("stored charge",),
)
def twin_reading(
    part: Annotated[str, Choice(tuple(UNITS), "What kind of part the twin is.")],
    reading: Annotated[str, Text("The reading on the board, such as 12.3 µF or 4.6 kΩ.")],
    beside: Annotated[
        str, Text("Values of the same kind that lie beside it, none, or not known.")
    ] = NOT_KNOWN,
    accuracy: Annotated[
        float, Given("%", "Of the meter, of its reading.", at_least=0, at_most=50)
    ] = 2.0,
    leads: Annotated[
        float | None,
        Given("Ω", "Read with the leads together; 0 for four wires.", at_least=0, at_most=10),
    ] = None,
) -> Found:
    """The value of a twin's part alone, from its reading in circuit and what lies beside it.

    `beside` names values with commas between, each across the same two points. Capacitors beside
    it are taken off; resistors and coils are parallel. The usual values within the interval
    are named, at ±20 % for capacitors and coils, ±5 % for resistors. Raises RepairlibError for
    what cannot be read and for a reading that those beside cannot have. Below 1 Ω a meter with two
    leads reads mostly itself: with the ohms of its `leads` they are taken off, without them the
    reading is a limit from above. Source: Kirchhoff's laws; leads are common practice.

    >>> finding = twin_reading("capacitor", "12.3 µF", "2.2 µF, 100 nF")
    >>> finding.part_alone, finding.nearest_usual_value
    (10 µF, 10 µF)
    """
    unit = UNITS[part]
    read = _positive(reading, unit, "the reading")
    if part == RESISTOR and (leads is not None or read <= FEW_OHMS):
        if (left := _without_leads(read, leads)) is None:
            return _below(read, leads)
        read = left
    if beside.strip().casefold() in ("", NOT_KNOWN, "unknown", "?"):
        return _limit(part, read)
    others = _others(beside, unit)
    share = accuracy / 100
    low, alone, high = (_alone(part, read * one, others) for one in (1 - share, 1, 1 + share))
    if alone is None:
        wrong = f"what lies beside it ({beside.strip()}) alone does not allow it"
        raise RepairlibError(reading, wrong, "what really lies across the same two points")
    values: dict[str, object] = {"part_alone": _rounded(alone, unit)}
    working = [_working(part, read, others, alone)]
    if low is None or high is None or high > TOO_WIDE * low:
        reason = "what lies beside it outweighs it: lift one end of the twin and measure it alone"
        return found(values, working=working, verdict=CANNOT_TELL, reason=reason)
    spread = SPREAD[part]
    values["lowest"], values["highest"] = _rounded(low, unit), _rounded(high, unit)
    values["nearest_usual_value"] = Quantity(nearest(alone, SERIES[part]), unit)
    usual = values_between(low / (1 + spread), high / (1 - spread), SERIES[part])
    if len(usual) > 1:
        values["usual_values"] = ", ".join(brief(one, unit) for one in usual[:6])
    return found(values, working=working, notes=[_LIES[part]])


def _without_leads(read: float, leads: float | None) -> float | None:
    """A reading less its leads [Ω]; None where it is too near to them to say anything."""
    if leads is None or read - leads < STEADY * leads:
        return None
    return read - leads


def _below(read: float, leads: float | None) -> Found:
    """What a reading of few ohms says: the leads are in it, so that the part has less."""
    reason = "the leads of the meter have some tenths of an ohm themselves: the part has less"
    if leads is not None:
        reason = f"the leads alone read {brief(leads, 'Ω')}: what is left of it is their contact"
    return found(
        {"at_most": _rounded(read, "Ω")},
        verdict=CANNOT_TELL,
        reason=reason,
        notes=[FOUR_WIRES, _LIES[RESISTOR]],
    )


_LIES = {
    CAPACITOR: "An old part may have lost some of its print: compare a second twin",
    RESISTOR: "Chips and diodes may conduct: read it both ways round, and take the higher reading",
    INDUCTIVE: "Read it at the frequency of its work; a resistor beside it spoils the reading",
}


def _limit(part: str, read: float) -> Found:
    """What a reading says while nobody knows what lies beside the part."""
    name, words = ("at_most", "less") if part == CAPACITOR else ("at_least", "more")
    reason = f"unknown parts lie beside it, so that the part may have {words} than was read"
    return found(
        {name: _rounded(read, UNITS[part])},
        verdict=CANNOT_TELL,
        reason=reason,
        notes=["Say what lies beside it, or lift one end of the twin", _LIES[part]],
    )


def _others(beside: str, unit: str) -> list[float]:
    if beside.strip().casefold() in ("none", "nothing", "-"):
        return []
    pieces = [one for one in beside.replace(";", ",").split(", ") if one.strip()]
    if len(pieces) > MOST_BESIDE:
        raise RepairlibError(
            f"{len(pieces)} values", "too many beside it", f"{MOST_BESIDE} at most"
        )
    return [_positive(one, unit, "a value beside it") for one in pieces]


def _positive(text: str, unit: str, what: str) -> float:
    value = read_quantity(text, unit).value
    if not 1e-15 <= value <= 1e12:
        raise RepairlibError(text, f"{what} is out of range", f"a number in {unit} above 0")
    return value


def _alone(part: str, read: float, others: list[float]) -> float | None:
    """The part alone; None where those beside it leave nothing for it."""
    if part == CAPACITOR:
        left = read - sum(others)
        return left if left > read * 1e-9 else None
    left = (1 / read if read else 0.0) - sum(1 / one for one in others)
    return 1 / left if read and left > 1e-9 / read else None


def _working(part: str, read: float, others: list[float], alone: float) -> str:
    unit = UNITS[part]
    result = brief(alone, unit)
    if not others:
        return f"nothing beside it: {brief(read, unit)}"
    if part == CAPACITOR:
        return f"{brief(read, unit)} - {' - '.join(brief(one, unit) for one in others)} = {result}"
    terms = " - ".join(f"1/{brief(one, unit)}" for one in others)
    return f"1 / (1/{brief(read, unit)} - {terms}) = {result}"


def _rounded(value: float, unit: str) -> Quantity:
    return Quantity(float(f"{value:.3g}"), unit)
