"""The capacitance meter of the bench: what small ac of 100 Hz or 1 kHz tells, all in parallel.

From 1 µF it measures at 100 Hz and shows the capacitance of the series model, below at 1 kHz and
the parallel model, as the standards for electrolytic and for small capacitors have it (common
practice). Where resistance carries more than the capacitance it shows dashes.
"""

from __future__ import annotations

from math import pi

from repairlib.bench.counts import DASHES, Accuracy, Span, shows
from repairlib.bench.impedance import impedance
from repairlib.bench.moves import Reading
from repairlib.bench.probes_harm import DARK, UNSTEADY, spoiled
from repairlib.bench.resting import met_at
from repairlib.bench.state import State

LARGE_HZ, SMALL_HZ = 100.0, 1e3
LARGE = 1e-6  # F, from which it measures at the lower frequency
MOST_LOSS = 5.0  # D, above which it shows nothing; a choice of this workbook
FARADS = (
    Span(10e-9, 1e-11, "nF", 1e-9), Span(100e-9, 1e-10, "nF", 1e-9), Span(1e-6, 1e-9, "nF", 1e-9),
    Span(10e-6, 1e-8, "µF", 1e-6), Span(100e-6, 1e-7, "µF", 1e-6), Span(1e-3, 1e-6, "µF", 1e-6),
    Span(20e-3, 1e-5, "µF", 1e-6),
)  # fmt: skip
ERROR = Accuracy(2.0, 3, unsigned=True)  # per cent, digits


def capacitance(state: State, one: str, other: str) -> Reading:
    """The capacitance between two points as the meter shows it; dashes where it finds none.

    A charged capacitor destroys the meter or makes it show nothing.

    >>> from repairlib.bench.practice_set import demo_set
    >>> from repairlib.bench.state import begin
    >>> capacitance(begin(demo_set("desk radio"), (), "demo"), "rail", "0").unit
    'F'
    """
    name = "capacitance meter"
    state = met_at(state, one)
    harm = spoiled(state, one, other, name)
    if harm.told:
        return Reading(
            name, (one, other), DASHES, None, "F", DARK, harm=harm.told, hurts=harm.hurts
        )
    if state.powered:
        return Reading(name, (one, other), DASHES, None, "F", UNSTEADY)
    hertz, farad, loss = LARGE_HZ, *_seen(impedance(state, one, other, LARGE_HZ), LARGE_HZ)
    if farad < LARGE or loss > MOST_LOSS:
        hertz, farad, loss = SMALL_HZ, *_seen(impedance(state, one, other, SMALL_HZ), SMALL_HZ)
    if loss > MOST_LOSS:
        return Reading(name, (one, other), DASHES, None, "F", "mostly resistance there")
    seen = shows(farad, FARADS, ERROR, state, name)
    return Reading(
        f"{name}, {hertz:g} Hz", (one, other), seen.text, seen.value, "F",
        range=seen.span.said, error=seen.error,
    )  # fmt: skip


def _seen(z: complex, hertz: float) -> tuple[float, float]:
    """The capacitance [F] that the meter's model of that frequency shows, and the loss factor D."""
    if z.imag >= 0:
        return 0.0, float("inf")
    series = -1 / (2 * pi * hertz * z.imag)
    loss = z.real / -z.imag
    return (series if hertz == LARGE_HZ else series / (1 + loss**2)), loss
