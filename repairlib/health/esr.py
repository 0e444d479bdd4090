"""What loss a good capacitor may have: tan δ and ESR limits, and impedance in the cold.

Covers the limits of a new part. What an old part may have is in end_of_life.py.

tan δ limits of electrolytics hold at 120 Hz and 20 °C. They are never carried to 100 kHz: there
only figures count that a maker printed for 100 kHz, for one value, rating and size of a family.
What is usual at 100 kHz is from memory and only a hint.
"""

from __future__ import annotations

from functools import cache
from math import floor, pi
from typing import Annotated, NamedTuple

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import NBSP, Quantity, brief, engineering
from repairlib.core.tables import read_table
from repairlib.health.capacitor_families import (
    FILM,
    LOW_IMPEDANCE,
    WET,
    check_part,
    families,
    family,
)

# A tan δ limit stated at 120 Hz is also used at 100 Hz, where bridges made for 50 Hz mains measure.
LOWEST_HZ, STATED_HZ = 100.0, 120.0
HIGH_HZ = 100e3
WHOLE_STEPS = (
    "A choice: +0.02 for each full 1000 µF above the first. No data sheet says how to treat a "
    "part of 1000 µF; whole steps are the strictest reading."
)
# What a new radial part usually has at 100 kHz, by can in mm: ordinary from, to; low impedance
# from, to [Ω]. Orders of magnitude, from memory.
_USUAL = {
    (5, 11): (0.4, 3, 0.15, 0.6),
    (6.3, 11): (0.2, 0.6, 0.09, 0.25),
    (8, 11.5): (0.1, 0.4, 0.06, 0.16),
    (10, 12.5): (0.07, 0.2, 0.04, 0.12),
    (10, 16): (0.07, 0.13, 0.03, 0.09),
    (10, 20): (0.05, 0.11, 0.022, 0.065),
    (12.5, 20): (0.035, 0.09, 0.019, 0.05),
    (16, 25): (0.023, 0.045, 0.017, 0.03),
}
_USUAL_TANTALUM = (0.5, 4.0)
_SAME_SIZE = 0.6  # mm
ASK_FREQUENCY = "at which frequency was it measured? Most ESR meters use 100 kHz, bridges 120 Hz"
NEXT_AT_HIGH = (
    "look up impedance or ESR at 100 kHz in its data sheet, read a new part of the same kind, "
    "value and size with the same meter, or measure at 120 Hz"
)
# ESR of a wet part at its hottest, as a part of that at 20 °C. From memory.
_HOT = (0.50, 0.65)


class LossLimit(NamedTuple):
    """The highest `tan_delta` of a new part at `hertz`, with how it was found."""

    tan_delta: float
    hertz: float
    working: tuple[str, ...]
    notes: tuple[str, ...]
    source: str


@cache
def loss_rows(name: str) -> tuple[tuple[float, float, float, str], ...]:
    """(rated voltage, frequency, tan δ, source) of a family, by rising voltage and frequency."""
    return tuple(
        (float(row["rated_v"]), float(row["frequency_hz"]), float(row["tan_delta"]), row["source"])
        for row in read_table("loss-limits")
        if row["family"] == name
    )


def loss_limit(name: str, farad: float, volts: float, hertz: float = STATED_HZ) -> LossLimit:
    """The tan δ limit of a new part of that family at `hertz` and 20 °C.

    `farad` is the marked capacitance, `volts` the rated voltage. Between two listed ratings the
    lower one counts, and a note says so. Above 1000 µF each full 1000 µF adds 0.02. Source: the
    data sheet of the family. Raises RepairlibError for a voltage outside the family's list and
    for a frequency at which no limit was stated.

    >>> loss_limit("aluminium low impedance", 3000e-6, 6.3).tan_delta
    0.26
    """
    check_part(farad, volts)
    rows = loss_rows(family(name).name)
    if not rows:
        raise RepairlibError(name, "no tan δ limit is known for this family", _with_limits())
    if families()[name].inside == FILM:
        return _film_limit(name, rows, hertz)
    _check_frequency(name, hertz)
    rated, _, tan_delta, source = _row_for(name, rows, volts)
    working = [f"tan δ limit of {name}, {rated:g} V, at 120 Hz: {tan_delta:g}"]
    notes = []
    if rated != volts and families()[name].inside == WET:
        notes.append(f"{volts:g} V is not in the list: the limit of {rated:g} V was used.")
    steps = thousands_above(farad)
    added = families()[name].added
    if steps and added is not None:
        total = tan_delta + steps * added
        working.append(f"{steps} × 1000 µF more: {tan_delta:g} + {steps} × {added:g} = {total:g}")
        notes.append(WHOLE_STEPS)
        if name == "aluminium non-polar":
            notes.append("Its data sheet says 2 % for each 1000 µF: read as 0.02, as elsewhere.")
        tan_delta = total
    elif steps and families()[name].dries_out:
        notes.append("The data sheet seen gives no rule above 1000 µF: nothing was added.")
    if hertz != STATED_HZ:
        notes.append(f"A choice: the limit stated at 120 Hz is used at {hertz:g} Hz too.")
    return LossLimit(tan_delta, hertz, tuple(working), tuple(notes), source)


def thousands_above(farad: float) -> int:
    """How many full 1000 µF a capacitance [F] has above the first 1000 µF.

    >>> thousands_above(1000e-6), thousands_above(2200e-6), thousands_above(3000e-6)
    (0, 1, 2)
    """
    return max(floor(farad * 1e3 + 1e-9) - 1, 0)


def esr_of(tan_delta: float, farad: float, hertz: float) -> float:
    """ESR [Ω] = tan δ / (2 π f C).

    `farad` and `hertz` above 0. Source: Cornell Dubilier ESRD data sheet, definition of DF.

    >>> esr_of(0.25, 10e-6, 120)
    33.16
    """
    return tan_delta / (2 * pi * hertz * farad)


@calculator(
    topic="health",
    title="ESR from tan δ",
    sources=("Cornell Dubilier ESRD",),
)
def esr_from_tan_delta(
    tan_delta: Annotated[float, Given("", "tan δ, also called D or DF.", above=0, at_most=100)],
    capacitance: Annotated[float, Given("F", "The capacitance.", at_least=1e-13, at_most=10)],
    frequency: Annotated[
        float, Given("Hz", "The frequency of the tan δ.", at_least=1, at_most=1e7)
    ],
) -> Found:
    """ESR = tan δ / (2 π f C), at the frequency at which tan δ was stated and at no other.

    `tan_delta` above 0, `capacitance` in farad, `frequency` in hertz. Raises RepairlibError for
    values outside these ranges. Source: definition of DF in a capacitor data sheet.

    >>> print(esr_from_tan_delta("0.16", "220 µF", "120 Hz"))
    ESR from tan δ: esr 964.6 mΩ; reactance 6.029 Ω
    """
    reactance = esr_of(1.0, capacitance, frequency)
    ohm = tan_delta * reactance
    working = [
        f"X = 1 / (2 π f C) = 1 / (2 π × {frequency:g} Hz × {brief(capacitance, 'F')}) "
        f"= {brief(reactance, 'Ω')}",
        f"ESR = tan δ × X = {tan_delta:g} × {brief(reactance, 'Ω')} = {brief(ohm, 'Ω')}",
    ]
    notes = [f"It holds at {frequency:g} Hz. Do not carry it to another frequency."]
    values = {"esr": Quantity(ohm, "Ω", 4), "reactance": Quantity(reactance, "Ω", 4)}
    return found(values, working=working, notes=notes)


@calculator(
    topic="health",
    title="Highest ESR of a new part",
    sources=("Cornell Dubilier ESRD",),
)
def esr_limit(
    family: Annotated[str, Choice(families, "What kind of capacitor it is.")],
    capacitance: Annotated[float, Given("F", "The marked capacitance.", at_least=1e-13, at_most=1)],
    rated_voltage: Annotated[float, Given("V", "The marked rated voltage.", above=0, at_most=1e5)],
    frequency: Annotated[float, Given("Hz", "Where you measure ESR.", at_least=1, at_most=1e7)],
    diameter: Annotated[
        float | None,
        Given("m", "At 100 kHz: diameter of the can, width of a chip.", above=0, at_most=0.1),
    ] = None,
    length: Annotated[
        float | None, Given("m", "At 100 kHz: its length.", above=0, at_most=0.2)
    ] = None,
) -> Found:
    """The highest ESR that a new part may have at 20 °C.

    At 100 and 120 Hz (film: 1, 10 and 100 kHz) from the family's tan δ limit; at 100 kHz only where
    a maker's figure for that value, rating and size is known, `diameter` and `length` in metre.
    `capacitance` in farad, `rated_voltage` in volts. Raises RepairlibError with the reason, and
    what to do next, where no limit was stated. Source: the data sheet of each family.

    >>> print(esr_limit("aluminium general 105", "47 µF", "400 V", "120 Hz"))
    Highest ESR of a new part: esr 7.055 Ω; tan delta 0.25
    >>> low = "aluminium low impedance"
    >>> esr_limit(low, "470 µF", "50 V", "100 kHz", "12.5 mm", "20 mm").esr
    60 mΩ
    """
    check_part(capacitance, rated_voltage)
    if frequency == HIGH_HZ and families()[family].inside != FILM:
        high = high_frequency_limit(family, capacitance, rated_voltage, diameter, length)
        return found(
            {"esr": Quantity(high.ohm, "Ω")},
            working=[high.working],
            notes=[high.note],
            sources=(high.source,),
        )
    limit = loss_limit(family, capacitance, rated_voltage, frequency)
    ohm = esr_of(limit.tan_delta, capacitance, frequency)
    step = f"ESR = tan δ / (2 π f C) = {limit.tan_delta:g} / (2 π × {frequency:g} Hz × "
    step += f"{brief(capacitance, 'F')}) = {brief(ohm, 'Ω')}"
    values = {"esr": Quantity(ohm, "Ω", 4), "tan_delta": Quantity(limit.tan_delta, "")}
    working = [*limit.working, step]
    return found(values, working=working, notes=limit.notes, sources=(limit.source,))


class HighLimit(NamedTuple):
    """The highest impedance [Ω] of a new part at 100 kHz and 20 °C, and where it was printed."""

    ohm: float
    working: str
    note: str
    source: str


def high_frequency_limit(
    name: str, farad: float, volts: float, wide: float | None, long: float | None
) -> HighLimit:
    """What a maker printed for 100 kHz and 20 °C for that family, value, rating and size [m].

    A size counts when it is within 0.6 mm of the printed one. Nothing is interpolated. Raises
    RepairlibError, with what to do next, where no such figure is known.

    >>> high_frequency_limit("aluminium low impedance", 1000e-6, 35, 0.0125, 0.025).ohm
    0.03
    """
    for row in read_table("low-impedance-100-khz"):
        same = row["family"] == name and float(row["rated_v"]) == volts
        if not same or abs(float(row["capacitance_uf"]) * 1e-6 - farad) > 0.01 * farad:
            continue
        size = f"{row['diameter_mm']} × {row['length_mm']} mm"
        if wide is None or long is None:
            raise RepairlibError("100 kHz", "the limit goes by the size there", f"such as {size}")
        if _is_size((float(row["diameter_mm"]), float(row["length_mm"])), wide, long):
            ohm = float(row["impedance_ohm"])
            part = f"{name}, {brief(farad, 'F')} {volts:g} V, {size}"
            return HighLimit(
                ohm,
                f"{part}: at most {brief(ohm, 'Ω')} at 100 kHz",
                "It is the impedance of one maker's series; the data sheet of the part decides.",
                row["source"],
            )
    wrong = "no maker's figure at 100 kHz is known here for this value, rating and size"
    raise RepairlibError("100 kHz", wrong, NEXT_AT_HIGH)


def usual_at_high(name: str, wide: float | None, long: float | None) -> tuple[float, float] | None:
    """What a new part of that family and size [m] usually has at 100 kHz [Ω]: a hint, no limit.

    None where nothing is known. From memory.

    >>> usual_at_high("aluminium low impedance", 0.010, 0.016)
    (0.03, 0.09)
    """
    if name == "tantalum":
        return _USUAL_TANTALUM
    if wide is None or long is None:
        return None
    for size, (low, high, low_z, high_z) in _USUAL.items():
        if _is_size(size, wide, long):
            if name == LOW_IMPEDANCE:
                return low_z, high_z
            return (low, high) if name.startswith("aluminium general") else None
    return None


def _is_size(size: tuple[float, float], wide: float, long: float) -> bool:
    return all(
        abs(one - other * 1e3) <= _SAME_SIZE for one, other in zip(size, (wide, long), strict=True)
    )


@calculator(
    topic="health",
    title="Impedance away from 20 °C",
    sources=("Lelon RGA",),
)
def impedance_ratio(
    family: Annotated[
        str,
        Choice(
            lambda: tuple(dict.fromkeys(row["family"] for row in read_table("cold-impedance"))),
            "What kind of capacitor it is.",
        ),
    ],
    rated_voltage: Annotated[float, Given("V", "The marked rated voltage.", above=0, at_most=1e5)],
    temperature: Annotated[
        float, Given("°C", "A temperature in the data sheet.", at_least=-273.15, at_most=200)
    ],
) -> Found:
    """How many times its 20 °C impedance a new part may have at another temperature.

    `rated_voltage` in volts; `temperature` in °C, one of those of the data sheet (−25, −40,
    −55 °C), or the rated temperature, where ESR falls. Raises RepairlibError for others, because
    nothing is interpolated. Source: the data sheet of the family; the hot end is from memory.

    >>> print(impedance_ratio("aluminium general 105", "10 V", "-25 °C"))
    Impedance away from 20 °C: ratio 3
    """
    hottest = families()[family].hottest
    if temperature == hottest and families()[family].inside == WET:
        low, high = _HOT
        step = f"at {hottest:g} °C the ESR of a wet part is about {low:g} to {high:g} of that at 20"
        values = {"ratio_low": Quantity(low, ""), "ratio_high": Quantity(high, "")}
        return found(values, working=[step + " °C"], sources=("from memory",))
    rows = [row for row in read_table("cold-impedance") if row["family"] == family]
    for row in rows:
        rated = float(row["from_v"]) <= rated_voltage <= float(row["to_v"])
        if rated and float(row["temperature_c"]) == temperature:
            ratio = float(row["ratio"])
            step = f"{family}, {rated_voltage:g} V: Z({temperature:g} °C) / Z(20 °C) ≤ {ratio:g}"
            return found({"ratio": Quantity(ratio, "")}, working=[step], sources=(row["source"],))
    spans = {(row["from_v"], row["to_v"], row["temperature_c"]) for row in rows}
    listed = sorted(spans, key=lambda span: (float(span[2]), float(span[0])))
    accepted = ", ".join(f"{low} to {high} V at {cold} °C" for low, high, cold in listed)
    read = f"{rated_voltage:g} V at {temperature:g} °C"
    raise RepairlibError(read, "the data sheet lists no ratio for it", accepted)


def _row_for(name, rows, volts):
    if not rows[0][0] <= volts <= rows[-1][0]:
        accepted = f"{rows[0][0]:g} V to {rows[-1][0]:g} V"
        wrong = f"outside the ratings listed for {name}"
        raise RepairlibError(f"{volts:g} V", wrong, accepted)
    return [row for row in rows if row[0] <= volts][-1]


def _film_limit(name, rows, hertz) -> LossLimit:
    for _, stated, tan_delta, source in rows:
        if stated == hertz:
            step = f"tan δ of {name} at {hertz / 1e3:g} kHz: {tan_delta:g}"
            return LossLimit(tan_delta, hertz, (step,), (), source)
    accepted = ", ".join(f"{row[1] / 1e3:g} kHz" for row in rows)
    read = engineering(hertz, "Hz").replace(NBSP, " ")
    raise RepairlibError(read, f"no tan δ of {name} was stated there", accepted)


def _check_frequency(name: str, hertz: float) -> None:
    if LOWEST_HZ <= hertz <= STATED_HZ:
        return
    wrong = f"the tan δ limit of {name} is known for 120 Hz only"
    accepted = "100 Hz to 120 Hz"
    raise RepairlibError(engineering(hertz, "Hz").replace(NBSP, " "), wrong, accepted)


def _with_limits() -> str:
    return ", ".join(name for name in families() if loss_rows(name))
