"""What may take the place of the capacitor whose marking was read, and which way round."""

from __future__ import annotations

from typing import NamedTuple

from repairlib.core.quantity import engineering
from repairlib.markings import Reading
from repairlib.recap import words
from repairlib.recap.capacitor import Capacitor
from repairlib.recap.rules import REPLACE, decide

# Common practice; lesson 04 has the pictures.
_PLUS_OF = {
    "radial": "the stripe on its side is the minus, the longer lead the plus",
    "axial": "the end with the pressed-in ring is the plus, the arrow points to the minus",
    "can": "the dark mark on its top is the minus",
    "tantalum": "the bar, or the + beside a lead, is the plus",
}
_ALUMINIUM = {"radial", "axial", "can"}
_ALUMINIUM_OR_TANTALUM = (
    "the stripe of an aluminium part is its minus, but the bar of a tantalum part is its plus; "
    "look which it is"
)
_EITHER_WAY = "Not polar: it goes in either way round."
_VOLTS_UNKNOWN = (
    "Its volts are not printed: the new part stands at least what the circuit puts across it, with "
    "room to spare"
)


class InPlace(NamedTuple):
    """`polar`: which way round it goes in; `fit`: what may replace it; both are sentences."""

    polar: str
    fit: str


def in_place_of(reading: Reading) -> InPlace | None:
    r"""What a reading of a capacitor's marking says about its replacement; None for other parts.

    By the rules of the plan (recap.rules). Source: common practice.

    >>> from repairlib.markings import read
    >>> print(in_place_of(read("1000µF 16V")[0]).fit.replace("\xa0", " "))
    Fit 1000 µF, 16 V or more, 105 °C, an aluminium part of the same build.
    >>> in_place_of(read("4k7")[0]) is None
    True
    """
    if reading.quantity != "capacitance" or reading.value is None:
        return None
    carries = reading.carries
    value, volts = engineering(reading.value, "F"), carries.get("rated_voltage")
    if carries.get("safety_class") or carries.get("voltage_type") == "AC":
        return InPlace(_EITHER_WAY, _of_the_line(value, volts, carries.get("safety_class", "")))
    bodies = (reading.kind, *reading.also_on)
    polar = [body for body in bodies if body in _PLUS_OF]
    if not polar:
        return InPlace(_EITHER_WAY, _same_type(value, volts, "the same kind of ceramic or film"))
    if carries.get("polarity") == "non-polar":
        return InPlace(_EITHER_WAY, _aluminium(reading.value, volts, words.BIPOLAR))
    if reading.kind == "tantalum":
        fit = _same_type(value, volts, "solid tantalum as before")
    elif reading.kind in polar:
        fit = _aluminium(reading.value, volts, words.ALUMINIUM)
        fit = fit if len(set(bodies) - _ALUMINIUM) == 0 else f"As an aluminium part: {fit}"
    else:
        fit = _same_type(value, volts, "the same kind of part")
    return InPlace(_which_way(polar, bodies), fit)


def _which_way(polar: list[str], bodies: tuple[str, ...]) -> str:
    """How its plus is found, on each of the bodies that it can be."""
    if "tantalum" in polar and len(polar) > 1:
        plus = _ALUMINIUM_OR_TANTALUM
    else:
        plus = "; ".join(_PLUS_OF[body] for body in polar)
    if len(polar) == len(bodies):
        return f"Polar: {plus}."
    if bodies[0] in polar:
        return f"Polar: {plus}. A ceramic or film part that says the same goes in either way round."
    return f"Ceramic or film goes in either way round. A polar part may say the same: {plus}."


def _of_the_line(value: str, volts: float | None, safety_class: str) -> str:
    same = f"{value} of the same safety class, {safety_class}," if safety_class else value
    rating = f" at least {engineering(volts, 'V')} AC" if volts else " at least the same AC volts"
    return (
        f"Fit only {same}{rating}, made for the mains; never a part for dc. A qualified person "
        "does it."
    )


def _same_type(value: str, volts: float | None, kind: str) -> str:
    if volts is None:
        return f"Fit {value}, {kind}. {_VOLTS_UNKNOWN}."
    return f"Fit {value}, {kind}, {engineering(volts, 'V')} or more."


def _aluminium(farad: float, volts: float | None, kind: str) -> str:
    decision = decide(Capacitor(farad, volts, kind))
    new = decision.proposal
    if decision.verdict != REPLACE or new is None:
        return f"Not to be ordered yet: {decision.why.rstrip('.')}."
    what = "an aluminium part of the same build"
    if kind == words.BIPOLAR:
        what = "a bipolar part of the same build, never a polar one"
    value, rated = engineering(new.farad, "F"), engineering(new.volts, "V")
    return f"Fit {value}, {rated} or more, 105\xa0°C, {what}."
