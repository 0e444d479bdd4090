"""A resistance written as bands, a letter code or a chip code: the reverse of reading."""

from __future__ import annotations

from repairlib.core.errors import RepairlibError
from repairlib.core.series import E_SERIES
from repairlib.markings.colours import COEFFICIENTS, FIGURES, MULTIPLIERS, NO_BAND, TOLERANCES
from repairlib.markings.resistor_codes import LETTERS, POWERS
from repairlib.markings.resistor_codes import TOLERANCES as TOLERANCE_LETTERS

BAND_COUNTS = (3, 4, 5, 6)
_ACCEPTED = "a resistance in Ω of up to three figures, such as 4700 or 4.99e3"
_COLOURS = {power: colour for colour, (power, _) in MULTIPLIERS.items()}
_E96_LETTERS = {-3: "Z", -2: "Y", -1: "X", 0: "A", 1: "B", 2: "C", 3: "D", 4: "E", 5: "F"}


def write_bands(ohm: float, tolerance: float = 0.05, count: int = 0, tempco: float = 0) -> str:
    """The colours of a resistance in ohm, first band first.

    `tolerance` is a fraction, `tempco` in ppm/K either side. `count` is 3, 4, 5 or 6 bands; 0
    takes the fewest that say everything (closer than 2 % always gets three figures).
    Grey is used as ±0.01 % of the 2016 edition. Raises RepairlibError for what bands cannot say.

    >>> write_bands(4700), write_bands(4990, 0.01), write_bands(0)
    ('yellow-violet-red-gold', 'yellow-white-white-brown-brown', 'black')
    """
    if ohm == 0:
        return "black"
    figures, power = significant(ohm, _ACCEPTED)
    percent = f"{_number(tolerance, 'a tolerance') * 100:.6g}"
    if not count:
        three = len(figures) > 2 or float(percent) < 2
        count = 6 if tempco else 5 if three else 3 if percent == NO_BAND else 4
    _check_count(count, figures, percent, tempco)
    wide = 3 if count >= 5 else 2
    exponent = power - wide + 1
    if exponent not in _COLOURS:
        raise RepairlibError(ohm, f"{count} bands cannot say this", "0.01 Ω to 99 GΩ")
    bands = [FIGURES[int(figure)] for figure in figures.ljust(wide, "0")]
    bands.append(_COLOURS[exponent])
    if count > 3:
        bands.append(tolerance_colour(percent))
    if count == 6:
        bands.append(_coefficient_colour(tempco))
    return "-".join(bands)


def write_resistor_code(ohm: float, tolerance: str = "") -> str:
    """The letter code of IEC 60062 of a resistance in ohm, with a tolerance letter.

    >>> write_resistor_code(4700, "J"), write_resistor_code(0.47), write_resistor_code(10e6)
    ('4K7J', 'R47', '10M')
    """
    if tolerance and (not isinstance(tolerance, str) or tolerance not in TOLERANCE_LETTERS):
        raise RepairlibError(tolerance, "not a tolerance letter", LETTERS)
    if ohm == 0:
        return "0R" + tolerance
    figures, power = significant(ohm, _ACCEPTED)
    unit = min(max(power // 3 * 3, 0), 12)
    letter = next(one for one, (exponent, _) in POWERS.items() if exponent == unit)
    whole = power - unit + 1
    if len(figures) > 5 or not -2 <= whole <= 3:
        raise RepairlibError(ohm, "no letter code says this", "0.001 Ω to 999 TΩ, up to 5 figures")
    figures = "0" * -whole + figures.ljust(whole, "0")
    whole = max(whole, 0)
    return figures[:whole] + letter + figures[whole:] + tolerance


def write_chip_code(ohm: float, figures: int = 3) -> str:
    """The code on a chip resistor of 3 figures (5 %) or 4 figures (1 % and closer).

    >>> write_chip_code(4700), write_chip_code(4700, 4), write_chip_code(0.47), write_chip_code(0)
    ('472', '4701', 'R47', '000')
    """
    if figures not in (3, 4):
        raise RepairlibError(figures, "no chip carries so many figures", "3 or 4")
    if ohm == 0:
        return "0" * figures
    digits, power = significant(ohm, _ACCEPTED)
    kept = figures - 1
    if len(digits) > kept:
        raise RepairlibError(
            ohm, f"{figures} figures cannot say this", "4 figures, or fewer digits"
        )
    zeros = power - kept + 1
    if 0 <= zeros <= 9:
        return digits.ljust(kept, "0") + str(zeros)
    if zeros > 9 or power < -figures + 1 + len(digits) - 1:
        raise RepairlibError(ohm, "no chip code says this", "0.01 Ω to 9.9 GΩ")
    whole = max(power + 1, 0)
    text = ("0" * max(-power - 1, 0) + digits).ljust(whole, "0")
    return (text[:whole] + "R" + text[whole:]).ljust(figures, "0")


def write_e96_code(ohm: float) -> str:
    """The two figures and the letter of the 96-value code.

    >>> write_e96_code(49900), write_e96_code(17.8)
    ('68C', '25X')
    """
    digits, power = significant(ohm, _ACCEPTED)
    value = int(digits.ljust(3, "0")) if len(digits) <= 3 else 0
    letter = _E96_LETTERS.get(power - 2)
    if value not in E_SERIES["E96"] or letter is None:
        raise RepairlibError(ohm, "not in the 96-value code", "an E96 value from 0.1 Ω to 97.6 MΩ")
    return f"{E_SERIES['E96'].index(value) + 1:02}{letter}"


def significant(value: float, accepted: str) -> tuple[str, int]:
    """('47', 3) of 4700: the significant figures, and the power of ten of the first."""
    if not isinstance(value, int | float) or not 0 < value < 1e18:
        raise RepairlibError(value, "not a value of a part", accepted)
    mantissa, _, power = f"{value:.9e}".partition("e")
    return mantissa.replace(".", "").rstrip("0"), int(power)


def tolerance_colour(percent: str) -> str:
    """The colour of a tolerance in percent, in the 2016 edition."""
    for colour, meanings in TOLERANCES.items():
        if meanings[0][0] == percent:
            return colour
    raise RepairlibError(f"{percent} %", "no band has this tolerance", _percents())


def _percents() -> str:
    return ", ".join(f"{meanings[0][0]} %" for meanings in TOLERANCES.values()) + ", 20 %"


def _number(value: object, name: str) -> float:
    if not isinstance(value, int | float) or not 0 <= value < 1e6:
        raise RepairlibError(value, f"not {name}", "a fraction such as 0.05")
    return value


def _coefficient_colour(tempco: float) -> str:
    for colour, (ppm, _) in COEFFICIENTS.items():
        if ppm == tempco:
            return colour
    accepted = ", ".join(str(ppm) for ppm, _ in COEFFICIENTS.values())
    raise RepairlibError(tempco, "no band has this temperature coefficient", f"{accepted} ppm/K")


def _check_count(count: int, figures: str, percent: str, tempco: float) -> None:
    """Raise where that number of bands cannot say the value, tolerance and coefficient."""
    if count not in BAND_COUNTS:
        raise RepairlibError(count, "no resistor has so many bands", "3, 4, 5 or 6")
    if len(figures) > (3 if count >= 5 else 2):
        wrong = f"{count} bands hold {3 if count >= 5 else 2} figures"
        raise RepairlibError(figures, wrong, "5 bands for three figures, or a shorter value")
    if (count == 3) != (percent == NO_BAND):
        raise RepairlibError(f"{percent} %", f"{count} bands cannot say this", _percents())
    if (count == 6) != bool(tempco):
        wrong = "6 bands and a temperature coefficient go together"
        raise RepairlibError(count, wrong, "6 bands with one, fewer without")
