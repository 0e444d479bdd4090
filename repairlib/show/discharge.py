"""A capacitor that empties: the curve of its voltage, and the circuit that empties it.

Importing this module loads matplotlib, so it is not part of `repairlib.show` itself.
"""

from __future__ import annotations

import math

from matplotlib import rc_context
from matplotlib.figure import Figure

from repairlib.core.limits import AFTER_UNPLUGGING, ES1
from repairlib.core.quantity import Quantity, brief
from repairlib.show.canvas import INK, NEGATIVE, POSITIVE, QUIET
from repairlib.show.circuits import new_sheet, picture_of
from repairlib.show.picture import Picture
from repairlib.show.plotting import STYLE, svg_of
from repairlib.stored_charge import discharge_time

_STEPS = 200
_LONGEST = 1.35  # the chart reaches so much further than the time to the limit
_UNITS = ((86400, "days"), (3600, "hours"), (60, "minutes"), (1, "s"), (1e-3, "ms"), (1e-6, "µs"))


def draw_discharge(
    capacitance: float,
    voltage: float,
    resistance: float,
    limit: str = ES1,
    own: float | None = None,
) -> Picture:
    """Draw the voltage of a capacitor against time, with the limit and the time it is reached.

    Farad, volts, ohm; `limit` is a name of core.limits.AFTER_UNPLUGGING, or "own limit" with its
    volts as `own`. Raises RepairlibError when the limit is not below the start, as discharge_time
    does.

    >>> print(draw_discharge(220e-6, 400, 100e3).alt)
    Voltage against time: 220 µF from 400 V through 100 kΩ.
    After one time constant, 22 s, 147.15 V are left. 60 V dc (IEC 62368-1, ES1) after 41.74 s.
    The curve never reaches 0. It is calculated: only a meter shows what is left.
    """
    mine = {} if own is None else {"own": own}
    finding = discharge_time(capacitance, voltage, resistance, limit, **mine)
    seconds, tau, target = finding.time, finding.time_constant, finding.down_to
    named = f"{AFTER_UNPLUGGING[limit].words if own is None else brief(own, 'V')} ({limit})"
    span = _LONGEST * max(seconds, tau)
    scale, unit = next(((size, name) for size, name in _UNITS if span >= 3 * size), _UNITS[-1])
    times = [span * step / _STEPS for step in range(_STEPS + 1)]
    with rc_context(STYLE):
        figure = Figure(figsize=(5.8, 3.9), layout="constrained")
        axes = figure.add_subplot()
        volts = [voltage * math.exp(-time / tau) for time in times]
        axes.plot([time / scale for time in times], volts, color=NEGATIVE, linewidth=2.4)
        axes.axhline(target, color=POSITIVE, linestyle="--", linewidth=1.6)
        _mark(axes, seconds / scale, target, str(finding.values["time"]), "s", POSITIVE)
        left = voltage / math.e
        words = f"τ = {finding.values['time_constant']}: {Quantity(left, 'V', 4)}, 37 %"
        _mark(axes, tau / scale, left, words, "o", INK)
        _name_limit(axes, target, voltage, named)
        axes.set_xlim(0, span / scale)
        axes.set_ylim(0, 1.04 * voltage)
        axes.set_xlabel(f"time ({unit})")
        axes.set_ylabel("voltage across the capacitor (V)")
        axes.grid(True, color="#d5dbe0", linewidth=0.7)
        axes.spines[["top", "right"]].set_visible(False)
        return Picture(svg_of(figure), _in_words(capacitance, voltage, resistance, finding, named))


def draw_discharge_circuit(capacitance: float, voltage: float, resistance: float) -> Picture:
    """Draw the capacitor, the resistor held on by insulated probes, and the meter across it.

    >>> print(draw_discharge_circuit(1e-3, 50, 1e3).alt)
    A capacitor of 1000 µF, charged to 50 V. Across it a resistor of 1 kΩ with insulated probes.
    Across the capacitor itself a voltmeter, which stays on and shows what is left.
    """
    sheet, elements = new_sheet()
    top, bottom, middle, right = 0.0, -3.4, 5.2, 10.4
    part = f"{brief(capacitance, 'F')}\n{brief(voltage, 'V')} at first"
    sheet += elements.Capacitor2().endpoints((0, top), (0, bottom)).label(part, "top", ofst=0.3)
    for y in (top, bottom):
        sheet += elements.Line().at((0, y)).to((right, y))
        for x in (0, middle):
            sheet += elements.Dot().at((x, y))
    through = f"resistor\n{brief(resistance, 'Ω')}"
    sheet += (
        elements.Resistor()
        .endpoints((middle, top), (middle, bottom))
        .label(through, "bottom", ofst=0.3)
    )
    sheet += elements.Label().at((middle, top + 0.55)).label("insulated probe")
    sheet += elements.Label().at((middle, bottom - 0.75)).label("insulated probe")
    meter = elements.MeterV().endpoints((right, top), (right, bottom))
    sheet += meter.label("meter\nstays on", "bottom", ofst=0.3)
    return picture_of(
        sheet,
        f"A capacitor of {brief(capacitance, 'F')}, charged to {brief(voltage, 'V')}. Across it a "
        f"resistor of {brief(resistance, 'Ω')} with insulated probes.\nAcross the capacitor itself "
        "a voltmeter, which stays on and shows what is left.",
    )


def draw_strap_path(voltage: float, resistance: float = 1e6, solved: bool = True) -> Picture:
    """Draw the way of the current from a live part through a person and a strap to ground.

    `solved` writes the current under it. Volts and ohm.

    >>> print(draw_strap_path(230).alt)
    From a live part of 230 V the current goes through the person, the strap of 1 MΩ, to ground.
    It is 230 V / 1 MΩ = 230 µA.
    """
    sheet, elements = new_sheet()
    ampere = (
        f"{brief(voltage, 'V')} / {brief(resistance, 'Ω')} = {brief(voltage / resistance, 'A')}"
    )
    sheet += elements.Dot(open=True).at((0, 0)).label(f"live part\n{brief(voltage, 'V')}", "left")
    sheet += elements.Line().at((0, 0)).to((1.2, 0))
    sheet += elements.ResistorIEC().at((1.2, 0)).to((4.6, 0)).label("person", "top", ofst=0.2)
    sheet += elements.Line().at((4.6, 0)).to((5.4, 0))
    strap = elements.Resistor().at((5.4, 0)).to((9.2, 0))
    sheet += strap.label(f"strap cord {brief(resistance, 'Ω')}", "top", ofst=0.2)
    sheet += elements.Line().at((9.2, 0)).to((10.2, 0))
    sheet += elements.Ground().at((10.2, 0)).label("ground", "right", ofst=0.3)
    if solved:
        sheet += elements.Label().at((5.2, -1.1)).label(f"I = {ampere}").color(QUIET)
    return picture_of(
        sheet,
        f"From a live part of {brief(voltage, 'V')} the current goes through the person, the strap "
        f"of {brief(resistance, 'Ω')}, to ground." + (f"\nIt is {ampere}." if solved else ""),
    )


def _mark(axes, x: float, y: float, words: str, marker: str, colour: str) -> None:
    axes.plot([x], [y], marker, color=colour, markersize=8)
    axes.annotate(words, (x, y), (10, 12), textcoords="offset points", color=colour, fontsize=11)


def _name_limit(axes, volts: float, start: float, words: str) -> None:
    """The limit's name above its line, at the end where the curve is not."""
    x, offset, side = (1, -6, "right") if volts > 0.5 * start else (0, 6, "left")
    axes.annotate(
        words,
        (x, volts),
        (offset, 4),
        xycoords=("axes fraction", "data"),
        textcoords="offset points",
        ha=side,
        va="bottom",
        color=POSITIVE,
        fontsize=11,
    )


def _in_words(capacitance, voltage, resistance, finding, limit: str) -> str:
    left = brief(voltage / math.e, "V")
    return (
        f"Voltage against time: {brief(capacitance, 'F')} from {brief(voltage, 'V')} through "
        f"{brief(resistance, 'Ω')}.\nAfter one time constant, {brief(finding.time_constant, 's')}, "
        f"{left} are left. {limit} after {brief(finding.time, 's')}.\n"
        "The curve never reaches 0. It is calculated: only a meter shows what is left."
    )
