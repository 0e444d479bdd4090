"""Rated voltages: two-character codes, the single letters of chip parts, and plain volts."""

from __future__ import annotations

from repairlib.markings.kinds import POLAR
from repairlib.markings.ranks import (
    DOUBTED,
    HARDLY,
    IN_FULL,
    NEXT,
    PLAIN_VOLTS,
    SELDOM_VOLTS,
    TANTALUM_CODE,
    USUAL_CODE,
    VOLTAGE_LETTER,
    VOLTS_OF_A_KNOWN_BODY,
)
from repairlib.markings.reading import Reading

MAKER = "Panasonic part number system"

# The R10 figures and three outside R10; the digit before is the power of ten.
_FIGURES = {
    "A": "1",
    "B": "1.25",
    "C": "1.6",
    "D": "2",
    "E": "2.5",
    "F": "3.15",
    "G": "4",
    "H": "5",
    "J": "6.3",
    "K": "8",
    "V": "3.5",
    "W": "4.5",
    "L": "5.5",
}
_ONLY_HUNDREDS = {"Q": "1.1", "Z": "1.8", "P": "2.2"}
_SEEN = ("0J", "1A", "1C", "1E", "1V", "1H", "1J", "2A", "2C", "2D", "2E", "2V", "2G", "2W")

TWO_CHARACTERS = {
    f"{power}{letter}": float(f"{figure}e{power}")
    for power in range(4)
    for letter, figure in (_FIGURES | (_ONLY_HUNDREDS if power == 2 else {})).items()
}

# The trap: capital J is 6.3 V on a tantalum chip and 63 V on a can.
TANTALUM_LETTERS = {
    "e": 2.5,
    "g": 4.0,
    "G": 4.0,
    "j": 6.3,
    "J": 6.3,
    "A": 10.0,
    "C": 16.0,
    "D": 20.0,
    "E": 25.0,
    "V": 35.0,
    "H": 50.0,
    "T": 50.0,
}
CAN_LETTERS = {
    "e": 2.5,
    "g": 4.0,
    "j": 6.3,
    "A": 10.0,
    "C": 16.0,
    "E": 25.0,
    "V": 35.0,
    "H": 50.0,
    "J": 63.0,
    "K": 80.0,
}
_LETTER_SOURCES = {"tantalum": "Panasonic TEH", "can": "Nichicon CD"}
_LETTERS_FROM_MEMORY = {"tantalum": "egjHT", "can": "eg"}

# Ratings that capacitors are sold in (common practice); a bare number must be one of them.
_USUAL = "2 2.5 2.7 3 4 5.5 6 6.3 6.4 7.5 10 12 15 16 20 25 30 35 40 50 63 64 70 75 80 100"
_USUAL += (
    " 125 150 160 180 200 220 250 275 300 305 310 315 350 375 385 400 420 440 450 475 500 525 550"
)
_USUAL += " 600 630 700 750 800 850 900 1000 1200 1250 1500 1600 2000 2500 3000 3150 4000 5000 6000"
_USUAL += " 6300 8000 10000 15000 20000 30000"
USUAL = frozenset(float(volts) for volts in _USUAL.split())
# besides these, on parts for AC
USUAL_AC = frozenset((230.0, 240.0, 330.0, 370.0, 1900.0, 2000.0, 2100.0))
_HIGHEST = 100e3  # V; no part is marked with more
_ENDINGS = (
    "WVDC",
    "WVAC",
    "VDC",
    "VAC",
    "VDc",
    "Vdc",
    "Vac",
    "WV",
    "VW",
    "V~",
    "V=",
    "V-",
    "V",
    "v",
)


def two_characters(code: str) -> float | None:
    """Volts of a two-character code such as 2A, or None. Capitals or small letters.

    >>> two_characters("1V"), two_characters("1Q")
    (35.0, None)
    """
    return TWO_CHARACTERS.get(code.upper())


def code_source(code: str) -> str:
    """Where the meaning of a two-character code was read."""
    return MAKER if code.upper() in _SEEN else "from memory"


def letter_source(kind: str, letter: str) -> str:
    """Where the meaning of a single voltage letter on that kind was read."""
    return "from memory" if letter in _LETTERS_FROM_MEMORY[kind] else _LETTER_SOURCES[kind]


def bare_volts(piece: str) -> float | None:
    """Volts of a number without a unit when it is a usual rating, or None."""
    number = piece.replace(",", ".", 1)
    if number[:1] in ("", "0") or not number.replace(".", "", 1).isdecimal():
        return None
    volts = float(number)
    return volts if volts in USUAL else None


def printed_volts(piece: str) -> tuple[float, str] | None:
    """(volts, "AC" or "DC" or "") of a piece that ends in a V, or None.

    >>> printed_volts("1kV"), printed_volts("275VAC"), printed_volts("6V3")
    ((1000.0, ''), (275.0, 'AC'), (6.3, ''))
    """
    before = bare_volts(piece[:-1]) if piece[-1] in "~-" else None
    if before is not None:  # 63- and 250~, as on film capacitors
        return before, "AC" if piece[-1] == "~" else "DC"
    if "V" not in piece and "v" not in piece:
        return None
    whole, point, decimals = piece.partition("V")
    if point and whole.isdecimal() and decimals.isdecimal() and len(decimals) == 1:
        return float(f"{whole}.{decimals}"), ""
    for ending in _ENDINGS:
        if piece.endswith(ending):
            number = piece[: -len(ending)]
            power = 3 if number[-1:] in ("k", "K") else 0
            number = (number[:-1] if power else number).replace(",", ".", 1)
            if not number.replace(".", "", 1).isdecimal() or len(number) > 6:
                return None
            volts = float(f"{number}e{power}")
            kind = "AC" if ending.endswith(("AC", "ac", "~")) else ""
            kind = "DC" if ending.endswith(("DC", "dc", "Dc", "=", "-")) else kind
            return (volts, kind) if 0 < volts <= _HIGHEST else None
    return None


def read_voltage(text: str, piece: str, part: str | None) -> list[tuple[int, Reading]]:
    """Readings of a rated voltage that stands alone, each with its rank (0 is likeliest)."""
    readings = []
    kind = part if part in POLAR else "voltage-code"
    volts = two_characters(piece) if len(piece) == 2 else None
    if volts is not None:
        why = f"The letter gives the figure, the digit {piece[0]} the power of ten."
        rank = USUAL_CODE if volts in USUAL else SELDOM_VOLTS
        readings.append((rank, _voltage(kind, text, volts, why, code_source(piece))))
    printed = printed_volts(piece)
    if printed is not None:
        usual = printed[0] in USUAL or (printed[1] == "AC" and printed[0] in USUAL_AC)
        doubt = "" if usual or (part is None and _is_some_voltage(printed[0])) else _NO_RATING
        carries = {"voltage_type": printed[1]} if printed[1] else {}
        why = "A number in volts is the rated voltage."
        why += "" if usual else " Capacitors are sold in no such rating."
        rank = DOUBTED if doubt else _rank_of_volts(text, piece, kind, usual)
        plain = _voltage(kind, text, printed[0], why, "common practice", doubt, carries)
        readings.append((rank, plain))
    if len(piece) == 1:
        for place, (body, letters) in enumerate(
            (("tantalum", TANTALUM_LETTERS), ("can", CAN_LETTERS))
        ):
            if piece in letters and part in (None, "voltage-code", body):
                why = f"A voltage letter on {_BODY[body]}. Behind a value it may be a tolerance."
                volts, origin = letters[piece], letter_source(body, piece)
                reading = _voltage(body, text, volts, why, origin)
                readings.append((VOLTAGE_LETTER + NEXT * place, reading))
    return readings


def _is_some_voltage(volts: float) -> bool:
    """Whether it may be a voltage of any part: a bare "9 V" is volts, and no capacitance."""
    return volts <= _MOST_VOLTS


def _rank_of_volts(text: str, piece: str, kind: str, usual: bool) -> int:
    """Where volts alone stand: first with a space before the V, else behind what they may be."""
    if kind in _BODY:
        return VOLTS_OF_A_KNOWN_BODY
    if piece != text:
        return IN_FULL
    rank = PLAIN_VOLTS if usual else HARDLY
    return rank + (TANTALUM_CODE if _is_bead_code(piece) else 0)


def _is_bead_code(piece: str) -> bool:
    """Whether it is rather the code of a tantalum bead and its letter, 475V: in E6, with zeros."""
    return len(piece) == 4 and piece[:2] in _E6 and piece[2] in "4567" and piece[3] == "V"


_MOST_VOLTS = 20e3
_NO_RATING = "not a rating that capacitors are sold in"
_E6 = ("10", "15", "22", "33", "47", "68")
_BODY = {"tantalum": "a moulded tantalum chip", "can": "an aluminium SMD can"}


def _voltage(kind, text, volts, why, origin, doubt="", carries=None) -> Reading:
    return Reading(
        kind=kind,
        text=text,
        quantity="voltage",
        value=volts,
        unit="V",
        why=why,
        carries=carries,
        doubt=doubt,
        sources=(origin,),
    )
