"""An inductance written as bands or as a code: the reverse of reading."""

from __future__ import annotations

from repairlib.core.errors import RepairlibError
from repairlib.markings.inductors import TOLERANCES
from repairlib.markings.writing_resistors import significant, write_bands

_ACCEPTED = "an inductance in henry of two figures, such as 6.8e-6"


def write_inductor_code(henry: float, tolerance: str = "") -> str:
    """The code in µH, or with N in nH, of an inductance in henry, with a tolerance letter.

    >>> write_inductor_code(6.8e-6), write_inductor_code(1e-3, "K"), write_inductor_code(27e-9)
    ('6R8', '102K', '27N')
    """
    if tolerance and (not isinstance(tolerance, str) or tolerance not in TOLERANCES):
        raise RepairlibError(tolerance, "not a tolerance letter", " ".join(TOLERANCES))
    figures, power = significant(henry, _ACCEPTED)
    zeros = power + 6 - 1  # behind two figures, in µH
    if len(figures) > 2 or not -5 <= zeros <= 9:
        raise RepairlibError(henry, "no code of two figures says this", _ACCEPTED)
    if zeros >= 0:
        return figures.ljust(2, "0") + str(zeros) + tolerance
    letter, unit = ("R", -6) if power >= -7 else ("N", -9)
    whole = power - unit + 1
    if letter == "R" and power == -7:
        return "R" + figures.ljust(2, "0") + tolerance
    padded = figures.ljust(max(whole, 0), "0")
    return padded[:whole] + letter + padded[whole:] + tolerance


def write_inductor_bands(henry: float, tolerance: float = 0.1) -> str:
    """The four bands, in µH, of an inductance in henry. `tolerance` is a fraction.

    >>> write_inductor_bands(270e-6, 0.05)
    'red-violet-brown-gold'
    """
    significant(henry, _ACCEPTED)
    if henry < 0.1e-6 * (1 - 1e-9):
        raise RepairlibError(henry, "bands on inductors begin at 0.1 µH", "0.1e-6 or more")
    return write_bands(float(f"{henry * 1e6:.9e}"), tolerance, 4)
