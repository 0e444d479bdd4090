"""Which resistor outlives the first instant of a discharge, and which does not."""

from __future__ import annotations

from repairlib.core.limits import TOUCHABLE_DC
from repairlib.core.quantity import brief

NOT_TRIED = "Not to be tried"
FILM_WATTS = 0.25  # the usual small film resistor
OVERLOAD = 10  # times its watts for 5 s: what a wirewound discharge resistor bears, ARCOL RW
OVERLOAD_SECONDS = 5.0
_WIREWOUND_WATTS = (3, 5, 10, 25, 50)  # what is held on at a bench; common practice
_WORTH_NAMING = 0.1  # J; with less no resistor bursts, whatever the watts: common practice


def what_survives(voltage: float, resistance: float, capacitance: float) -> tuple[str, ...]:
    """Sentences on the resistor held across a charged capacitor: what bears it, what is not tried.

    Volts, ohm, farad. The watts of the first instant, V² / R, decide: a wirewound part bears ten
    times its rating for 5 s (ARCOL, RW discharge resistors); when one time constant is longer, its
    rating itself must do. That carbon composition bears pulses and a film does not is common
    practice. Above 60 V dc nothing is recommended.

    >>> what_survives(25, 1e3, 2200e-6)[1]
    'A 0.25 W film resistor does not survive: it has 2.5 times its watts at the first instant.'
    """
    watts, joule = voltage**2 / resistance, capacitance * voltage**2 / 2
    times = OVERLOAD if resistance * capacitance <= OVERLOAD_SECONDS else 1
    size = next((one for one in _WIREWOUND_WATTS if times * one >= watts), None)
    told = []
    if voltage <= TOUCHABLE_DC and size:
        pulse = f"its pulse rating, {OVERLOAD} times that for 5 s, bears" if times > 1 else "bears"
        told.append(
            f"Resistor: wirewound, {size} W; {pulse} the {brief(watts, 'W')} of the first "
            "instant. A carbon composition part of the same watts survives too."
        )
    if size is None and joule >= _WORTH_NAMING:
        told.append(
            f"{NOT_TRIED}: {brief(watts, 'W')} at the first instant. This resistor explodes."
        )
    if size is None and voltage <= TOUCHABLE_DC:
        least = voltage**2 / (OVERLOAD * _WIREWOUND_WATTS[2])
        told.append(
            f"Take {brief(least, 'Ω')} or more, wirewound, {_WIREWOUND_WATTS[2]} W, or carbon "
            "composition."
        )
    if watts > FILM_WATTS:
        told.append(
            f"A {FILM_WATTS:g} W film resistor does not survive: it has {_times(watts)} times its "
            "watts at the first instant."
        )
    elif voltage <= TOUCHABLE_DC:
        told.append(
            f"{brief(watts, 'W')} at the first instant: even a {FILM_WATTS:g} W film resistor "
            "bears it."
        )
    return tuple(told)


def _times(watts: float) -> str:
    """How often the watts of the small film resistor go into these."""
    ratio = watts / FILM_WATTS
    return f"{ratio:.3g}" if ratio < 1000 else f"{ratio:.0f}"
