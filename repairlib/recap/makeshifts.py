"""Makeshifts worked out: ceramic under bias, two in series, two polar parts as a bipolar one.

Each says what is left, what it needs, and what to verify. None is ever called safe.
"""

from __future__ import annotations

from math import log10
from typing import Annotated

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity, brief
from repairlib.health import own_leakage_limit
from repairlib.recap.expectation import GENERAL
from repairlib.recap.kind_ratings import next_rating
from repairlib.recap.rules import new_capacitance
from repairlib.recap.substitution import CANNOT_TELL, CONDITIONS, NEVER

# What a 10 µF 10 V class 2 chip keeps at 5 V; the only points that were seen in print.
BIAS_FARAD, BIAS_RATED, BIAS_POINT = 10e-6, 10.0, 5.0
LEFT_AT_POINT = {"0805": 5e-6, "1206": 9.3e-6}
_READ_CURVE = "read the maker's bias curve of that very part"
_STRAIGHT = (
    "A choice: a straight line from 0 V to the published point at 5 V. The real curve bends: "
    "verify with the maker's curve."
)
# Loss for each tenfold of hours since the part was last soldered.
AGEING = {"C0G": (0.0, 0.0), "X7R": (0.025, 0.025), "X5R": (0.05, 0.07)}
_REVERSE_V = 1.5


@calculator(
    topic="recap",
    title="Class 2 ceramic under voltage",
    sources=("UF Capacitors bias note",),
)
def ceramic_under_bias(
    size: Annotated[str, Choice(tuple(LEFT_AT_POINT), "The chip size, in hundredths of an inch.")],
    capacitance: Annotated[
        float, Given("F", "The marked capacitance.", at_least=1e-12, at_most=1e-3)
    ],
    rated_voltage: Annotated[float, Given("V", "The rated voltage.", above=0, at_most=1e4)],
    bias: Annotated[float, Given("V", "The steady voltage across it.", at_least=0, at_most=1e4)],
) -> Found:
    """What capacitance a class 2 ceramic chip has left under a steady voltage.

    `capacitance` in farad, `rated_voltage` and `bias` in volts. Only 10 µF 10 V chips are known
    here, at 5 V; below that a straight line is taken, and said. Elsewhere the verdict is "cannot
    tell". Raises RepairlibError for a bias above the rating. Source: a maker's note on bias.

    >>> print(ceramic_under_bias("0805", "10 µF", "10 V", "5 V"))
    Class 2 ceramic under voltage: capacitance left 5.00 µF; loss 50.0 %
    >>> ceramic_under_bias("0805", "22 µF", "10 V", "5 V").verdict
    'cannot tell'
    """
    if bias > rated_voltage:
        wrong = "the bias is above the rated voltage"
        raise RepairlibError(f"{bias:g} V", wrong, f"0 V to {rated_voltage:g} V")
    if abs(capacitance / BIAS_FARAD - 1) > 1e-6 or rated_voltage != BIAS_RATED:
        reason = f"only 10 µF 10 V chips are known here: {_READ_CURVE}"
        note = "At its rated voltage such a part can lose more than half."
        return found(
            {},
            verdict=CANNOT_TELL,
            reason=reason,
            notes=(note,),
            sources=("TI converter data sheet",),
        )
    left_at_point = LEFT_AT_POINT[size]
    if bias > BIAS_POINT:
        reason = (
            f"the published point is at {BIAS_POINT:g} V; above it less than "
            f"{brief(left_at_point, 'F')} is left: {_READ_CURVE}"
        )
        return found({}, verdict=CANNOT_TELL, reason=reason)
    lost = 1 - left_at_point / capacitance
    loss = float(f"{lost * bias / BIAS_POINT:.6g}")
    left = capacitance * (1 - loss)
    working = [
        f"{size} at {BIAS_POINT:g} V: {brief(left_at_point, 'F')} of {brief(capacitance, 'F')}, "
        f"{lost * 100:g} % lost",
        f"at {bias:g} V: {lost * 100:g} % × {bias:g} / {BIAS_POINT:g} = {loss * 100:.4g} %",
        f"left: {brief(capacitance, 'F')} × {1 - loss:.4g} = {brief(left, 'F')}",
    ]
    values = {"capacitance_left": Quantity(left, "F", 3), "loss": Quantity(loss * 100, "%", 3)}
    return found(values, working=working, notes=() if bias in (0, BIAS_POINT) else (_STRAIGHT,))


@calculator(
    topic="recap",
    title="Ageing of a ceramic",
    sources=("ceramic ageing, quoted",),
)
def ceramic_ageing(
    dielectric: Annotated[str, Choice(tuple(AGEING), "The temperature characteristic.")],
    capacitance: Annotated[
        float, Given("F", "Its capacitance one hour after soldering.", above=0, at_most=1e-3)
    ],
    age: Annotated[
        float, Given("s", "Time since it was soldered, with its unit.", at_least=3600, at_most=3e9)
    ],
) -> Found:
    """What capacitance a ceramic has left with the years; soldering starts it anew.

    `capacitance` in farad, `age` with its unit, one hour or more. X5R is given as a range, and the
    worse end counts. From memory: the article it came from was not found again.

    >>> print(ceramic_ageing("X7R", "10 µF", "1000 h"))
    Ageing of a ceramic: capacitance left 9.25 µF; loss 7.5 %
    """
    low, high = AGEING[dielectric]
    decades = log10(age / 3600)
    loss = min(high * decades, 1.0)
    left = capacitance * (1 - loss)
    rate = f"{low * 100:g}" if low == high else f"{low * 100:g} to {high * 100:g}"
    working = [
        f"tenfolds of an hour: log10({age / 3600:.4g} h) = {decades:.4g}",
        f"{dielectric}: about {rate} % for each: {high * 100:g} % × {decades:.4g} "
        f"= {loss * 100:.4g} %",
    ]
    values = {"capacitance_left": Quantity(left, "F", 3), "loss": Quantity(loss * 100, "%", 3)}
    notes = (
        "A usual figure, not a limit. Losses by voltage and by heat come on top.",
        "A choice: counted from one hour after soldering.",
    )
    return found(values, working=working, notes=notes)


@calculator(
    topic="recap",
    title="Two equal electrolytics in series",
    sources=("common practice", "Lelon RGA", "Rubycon technical notes"),
    cautions=("stored charge", "mains", "heat and fire"),
)
def series_pair(
    capacitance: Annotated[
        float, Given("F", "The marked capacitance of each.", at_least=1e-7, at_most=1)
    ],
    rated_voltage: Annotated[
        float, Given("V", "The marked rated voltage of each.", at_least=6.3, at_most=450)
    ],
    total_voltage: Annotated[
        float, Given("V", "The highest voltage across both.", above=0, at_most=2000)
    ],
    tolerance: Annotated[float, Given("%", "Of each capacitance.", at_least=0, at_most=50)] = 20.0,
) -> Found:
    """Two equal electrolytics in series: half the capacitance, and not half the voltage each.

    `capacitance` in farad, voltages in volts, `tolerance` in per cent. While they charge, the
    smaller one takes more; later the one that leaks less does. Equal resistors across them hold
    the middle: with all the leakage in one part, the other stays at its rating or below when
    R = (2 × rated - total) / leakage limit. The verdict is "do not" when the worst share is above
    the rating of one part or no head-room is left, else "only with these conditions". Source:
    charge is shared as 1/C; leakage by a maker's data sheet; the resistor by Ohm's law.

    >>> print(series_pair("220 µF", "250 V", "400 V"))
    Two equal electrolytics in series: only with these conditions (a balancing resistor across
    each, and the voltage across each measured); capacitance 110 µF; worst share 240.0 V;
    balancing resistor 88.89 kΩ; resistor power 450.0 mW
    """
    share = total_voltage * (1 + tolerance / 100) / 2
    working = [
        f"together: {brief(capacitance, 'F')} / 2 = {brief(capacitance / 2, 'F')}",
        f"the smaller one charges to {total_voltage:g} V × (100 + {tolerance:g}) / 200 "
        f"= {brief(share, 'V')}",
    ]
    values = {
        "capacitance": Quantity(capacitance / 2, "F"),
        "worst_share": Quantity(share, "V", 4),
    }
    if share > rated_voltage * (1 + 1e-9):
        reason = f"one part may see {brief(share, 'V')}, it is rated {brief(rated_voltage, 'V')}"
        return found(values, working=working, verdict=NEVER, reason=reason)
    leakage = own_leakage_limit(GENERAL, capacitance, rated_voltage)
    if leakage is None:
        reason = f"no source states a leakage limit for {brief(rated_voltage, 'V')} parts"
        return found(values, working=working, verdict=CANNOT_TELL, reason=reason)
    each = total_voltage / 2
    head_room = 2 * rated_voltage - total_voltage
    if head_room <= 0:
        reason = f"both are rated {brief(2 * rated_voltage, 'V')} together: no head-room is left"
        return found(values, working=working, verdict=NEVER, reason=reason)
    ohm = head_room / leakage
    watt = each**2 / ohm
    maker = rated_voltage / leakage
    working += [
        f"leakage limit of each: {brief(leakage, 'A')}; at worst one has all of it, the other none",
        f"R at most (2 × {brief(rated_voltage, 'V')} - {brief(total_voltage, 'V')}) / "
        f"{brief(leakage, 'A')} = {brief(float(f'{ohm:.4g}'), 'Ω')}, "
        f"P = {brief(each, 'V')}² / R = {brief(float(f'{watt:.4g}'), 'W')}",
        f"a maker's rule, rated voltage / leakage, would be {brief(float(f'{maker:.4g}'), 'Ω')}: "
        "the lower of both is safer",
    ]
    values |= {
        "balancing_resistor": Quantity(ohm, "Ω", 4),
        "resistor_power": Quantity(watt, "W", 4),
    }
    notes = (
        "Same make, same age, same type, from one pack: old and new do not share.",
        "Each resistor must stand its half of the voltage, and twice the power, for good.",
        "The limit is far above what good parts leak. Leakage that was measured on both, warm, "
        "allows larger resistors.",
        "The middle is live, and the sleeve of a can insulates nothing.",
        "The charge stays after switching off, longer with larger resistors: measure first.",
        "Verify the voltage across each, with a meter that is rated for it, by a qualified person.",
    )
    reason = "a balancing resistor across each, and the voltage across each measured"
    return found(values, working=working, verdict=CONDITIONS, reason=reason, notes=notes)


@calculator(
    topic="recap",
    title="Bipolar made of two polar parts",
    sources=("common practice", "GE 23A"),
    cautions=("stored charge", "mains", "heat and fire"),
)
def back_to_back(
    capacitance: Annotated[
        float, Given("F", "The bipolar capacitance that you need.", at_least=1e-8, at_most=0.01)
    ],
    rated_voltage: Annotated[
        float, Given("V", "The rated voltage of the bipolar part.", above=0, at_most=450)
    ],
) -> Found:
    """A bipolar electrolytic out of two equal polar ones, minus to minus: which value each.

    `capacitance` in farad, `rated_voltage` in volts. Two in series halve the capacitance, so each
    has twice the value, or the nearest made one. Each takes the whole voltage in turn, so each has
    the full rating. Source: series capacitances; common practice; the reverse limit by a maker.

    >>> print(back_to_back("4.7 µF", "50 V"))
    Bipolar made of two polar parts: only with these conditions (no bipolar part can be had, and
    the voltage across each is measured); each capacitance 10 µF; each rated voltage 50 V;
    pair capacitance 5 µF
    """
    each, (_, how) = new_capacitance(2 * capacitance)
    rated = next_rating(rated_voltage)
    if each is None or rated is None:
        reason = how if each is None else f"no polar part rated {rated_voltage:g} V is listed here"
        return found({}, verdict=CANNOT_TELL, reason=reason)
    pair = float(f"{each / 2:.6g}")
    working = [
        f"in series 1/C = 1/C1 + 1/C2: each has 2 × {brief(capacitance, 'F')} "
        f"= {brief(2 * capacitance, 'F')}",
        f"made value: {brief(each, 'F')} each, together {brief(pair, 'F')}, "
        f"{(pair / capacitance - 1) * 100:+.1f} %",
        f"each takes the whole {brief(rated_voltage, 'V')} in turn: rated {brief(rated, 'V')}",
    ]
    values = {
        "each_capacitance": Quantity(each, "F"),
        "each_rated_voltage": Quantity(rated, "V"),
        "pair_capacitance": Quantity(pair, "F"),
    }
    notes = (
        "Join minus to minus. The two plus leads are the ends of the pair.",
        f"A wet aluminium stands at most {_REVERSE_V:g} V in reverse: measure the voltage across "
        "each in use, with ac and dc.",
        "The charge stays after switching off, in both: measure first.",
        "Above 60 V dc, and wherever the mains is near: leave it to a qualified person.",
        "Its ESR is the sum of both, it is twice as large, and it ages as both do.",
        "Not in a crossover, a motor or a mains place: the current there heats it.",
    )
    reason = "no bipolar part can be had, and the voltage across each is measured"
    return found(values, working=working, verdict=CONDITIONS, reason=reason, notes=notes)
