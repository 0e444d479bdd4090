"""Tolerance letters of capacitors (IEC 60062): symmetric, unsymmetrical, and in pF below 10 pF.

Not here: the colours, and the temperature coefficient letters of resistors.
"""

from __future__ import annotations

from repairlib.markings.reading import Tolerance, percent_either_side

STANDARD = "IEC 60062:2016"
MEMORY = "from memory"
SERVICE_MANUAL = "Sanyo DP19649"

# letter: (percent either side, source). IEC 60062. The sheet at hand with B C D F G in percent is
# one of resistors: on capacitors these, and E L P W H, are from memory.
_PERCENT = {
    "E": ("0.005", MEMORY),
    "L": ("0.01", MEMORY),
    "P": ("0.02", MEMORY),
    "W": ("0.05", MEMORY),
    "B": ("0.1", MEMORY),
    "C": ("0.25", MEMORY),
    "D": ("0.5", MEMORY),
    "F": ("1", MEMORY),
    "G": ("2", MEMORY),
    "H": ("3", MEMORY),
    "J": ("5", STANDARD),
    "K": ("10", STANDARD),
    "M": ("20", STANDARD),
    "N": ("30", STANDARD),
}
# letter: (percent down, percent up, source)
_UNSYMMETRICAL = {
    "Q": ("-10", "30", MEMORY),
    "T": ("-10", "50", STANDARD),
    "S": ("-20", "50", MEMORY),
    "Z": ("-20", "80", STANDARD),
}
# below 10 pF, letter: (pF either side, source)
_PICOFARADS = {
    "B": ("0.1", STANDARD),
    "C": ("0.25", STANDARD),
    "D": ("0.5", STANDARD),
    "F": ("1", STANDARD),
    "G": ("2", MEMORY),
}
# P on capacitors: its source, and what is said of the other one
P_DISPUTED = {
    SERVICE_MANUAL: "in a service manual on capacitors, followed first; ±0.02 % in the letter code",
    MEMORY: "in the letter code; -0/+100 % in a service manual on capacitors, followed first",
}
LETTERS = "B C D F G H J K M N, Q T S Z"


_BELOW_TEN, _AT_TEN = 9.999999e-12, 10.000001e-12  # F


def tolerances(letter: str, farad: float) -> tuple[tuple[Tolerance, str], ...]:
    """The meanings of a tolerance letter behind a value, likeliest first, each with its source.

    Small j, k, m and z count as their capitals. Empty when the letter is no tolerance.

    >>> tolerances("K", 1e-7)
    ((±10 %, 'IEC 60062:2016'),)
    >>> [tolerance for tolerance, source in tolerances("P", 1e-9)]
    [-0/+100 %, ±0.02 %]
    """
    if letter in ("j", "k", "m", "z"):
        letter = letter.upper()
    if farad < _AT_TEN and letter in _PICOFARADS:
        pico, source = _PICOFARADS[letter]
        in_pico = (Tolerance(float(f"-{pico}e-12"), float(f"{pico}e-12"), "F"), source)
        if farad < _BELOW_TEN:
            return (in_pico,)
        percent, memory = _PERCENT[letter]  # at 10 pF makers mean pF with B C D, % with F G
        both = in_pico, (percent_either_side(percent), memory)
        return both if letter in "BCD" else both[::-1]
    if letter in _UNSYMMETRICAL:
        low, high, source = _UNSYMMETRICAL[letter]
        return ((_fractions(low, high), source),)
    if letter not in _PERCENT:
        return ()
    percent, source = _PERCENT[letter]
    symmetric = (percent_either_side(percent), source)
    if letter == "P":  # the sources disagree: a service manual has -0/+100 % on capacitors
        return ((_fractions("-0", "100"), SERVICE_MANUAL), symmetric)
    return (symmetric,)


def _fractions(low: str, high: str) -> Tolerance:
    return Tolerance(float(f"{low}e-2"), float(f"{high}e-2"))
