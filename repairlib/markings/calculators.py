"""Calculators on markings: a value to the codes that its part will carry."""

from __future__ import annotations

from repairlib.calculator import Choice, Given, calculator, found
from repairlib.markings.reading import Tolerance
from repairlib.markings.tolerance_letters import LETTERS, tolerances
from repairlib.markings.writing import write_capacitor_code, write_letter_code
from repairlib.quantity import Quantity

NO_LETTER = "none"
_LETTERS = (NO_LETTER, *(letter for letter in LETTERS if letter.isalpha()))


@calculator(
    topic="markings",
    title="Capacitor marking for a value",
    sources=("KEMET ceramic ordering table", "IEC 60062:2016"),
    capacitance=Given(
        "F", "The capacitance to be marked, of two figures.", at_least=1e-13, at_most=9.9e-4
    ),
    tolerance=Choice(_LETTERS, "The tolerance letter.", default=NO_LETTER),
)
def capacitor_code(capacitance, tolerance):
    """The codes that a capacitor of this value carries: what to look for in the parts drawer.

    `capacitance` in farad, from 0.1 pF to 990 µF; `tolerance` a letter of IEC 60062 or "none".
    Raises RepairlibError for a value that two figures and a power of ten cannot say.

    >>> finding = capacitor_code("4.7 nF", "J")
    >>> finding.three_figure_code, finding.letter_code
    ('472J', '4n7J')
    """
    letter = "" if tolerance == NO_LETTER else tolerance
    code = write_capacitor_code(capacitance, letter)
    value = Quantity(capacitance, "F")
    values = {"three_figure_code": code, "letter_code": write_letter_code(capacitance, letter)}
    working = [f"{code[:2]} and the multiplier {code[2]}, in pF, make {value}"]
    for allowed in _spans(letter, capacitance):
        low, high = allowed.limits(capacitance)
        working.append(f"{letter} is {allowed}: {Quantity(low, 'F')} to {Quantity(high, 'F')}")
    return found(values, working)


def _spans(letter: str, capacitance: float) -> list[Tolerance]:
    return [span for span, *_ in tolerances(letter, capacitance)] if letter else []
