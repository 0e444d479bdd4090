"""A value written as a marking: the reverse of reading."""

from __future__ import annotations

from repairlib.core.errors import RepairlibError
from repairlib.markings.tolerance_letters import LETTERS, tolerances
from repairlib.markings.voltage_codes import TWO_CHARACTERS

_UNITS = (("p", -12), ("n", -9), ("µ", -6), ("m", -3), ("F", 0))
_ACCEPTED = "a capacitance in farad of two figures, from 0.1e-12 to 990e-6"
_MOST_FIGURES = 5


def write_capacitor_code(farad: float, tolerance: str = "") -> str:
    """The three-figure code in pF of a capacitance in farad, with a tolerance letter.

    Raises RepairlibError when two figures and a power of ten cannot say the value.

    >>> write_capacitor_code(100e-9, "K"), write_capacitor_code(4.7e-12)
    ('104K', '479')
    """
    figures, power = _figures(farad)
    zeros = power + 12 - 1  # behind two figures, in pF
    if len(figures) > 2 or not -2 <= zeros <= 7:
        raise RepairlibError(farad, "no three-figure code says this", _ACCEPTED)
    last = {-1: "9", -2: "8"}.get(zeros, str(zeros))
    return figures.ljust(2, "0") + last + _letter(tolerance, farad)


def write_letter_code(farad: float, tolerance: str = "") -> str:
    """The letter code of IEC 60062 of a capacitance in farad, with a tolerance letter.

    Raises RepairlibError for a value that needs more than five figures, or above 999 F.

    >>> write_letter_code(4.7e-9, "K"), write_letter_code(0.33e-12), write_letter_code(33e-6)
    ('4n7K', 'p33', '33µ')
    """
    figures, power = _figures(farad)
    letter, unit = next((pair for pair in _UNITS if power - pair[1] < 3), _UNITS[-1])
    whole = power - unit + 1  # figures before the letter
    if len(figures) > _MOST_FIGURES or not -1 <= whole <= 3:
        wrong = "no letter code says this"
        raise RepairlibError(farad, wrong, "a capacitance in farad of up to five figures")
    figures = "0" * -whole + figures.ljust(whole, "0")
    whole = max(whole, 0)
    return figures[:whole] + letter + figures[whole:] + _letter(tolerance, farad)


def write_voltage_code(volts: float) -> str:
    """The two-character code of a rated voltage. RepairlibError when it has none.

    >>> write_voltage_code(35)
    '1V'
    """
    for code, value in TWO_CHARACTERS.items():
        if value == volts:
            return code
    raise RepairlibError(volts, "no two-character code has that voltage", "6.3, 10, 16, 25, 35, 50")


def _figures(farad: float) -> tuple[str, int]:
    """('47', -9) of 4.7e-9: the significant figures, and the power of ten of the first."""
    if not isinstance(farad, int | float) or not 0 < farad < float("inf"):
        raise RepairlibError(farad, "not a capacitance", _ACCEPTED)
    mantissa, _, power = f"{farad:.11e}".partition("e")
    return mantissa.replace(".", "").rstrip("0"), int(power)


def _letter(tolerance: str, farad: float) -> str:
    if tolerance and (not isinstance(tolerance, str) or not tolerances(tolerance, farad)):
        raise RepairlibError(tolerance, "not a tolerance letter", LETTERS)
    return tolerance
