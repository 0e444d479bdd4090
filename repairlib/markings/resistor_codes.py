"""Resistors with text: letter codes (IEC 60062), and plain values in ohm with %, W and ppm."""

from __future__ import annotations

from repairlib.markings.other_pieces import percent_tolerance
from repairlib.markings.ranks import (
    IN_FULL,
    LETTER_AMONG_FIGURES,
    NEXT,
    OHM_BY_E_OF_ONE_FIGURE,
    OLD_MICROFARAD_OR_MEGOHM,
    RESISTOR_ABOVE_MEGOHM,
    RESISTOR_IN_MILLIOHM,
    RESISTOR_OF_THREE_FIGURES,
    RESISTOR_ON_LINES,
    RESISTOR_OR_VOLTS,
    USUAL_CODE,
)
from repairlib.markings.reading import Reading, Tolerance, percent_either_side
from repairlib.markings.value_codes import (
    leading_digits,
    number_and_rest,
    plain_numbers,
    ten_to,
    times,
)
from repairlib.markings.value_doubt import value_doubt
from repairlib.markings.voltage_codes import bare_volts

STANDARD = "IEC 60062:2016"
CARD = "Vishay colour card"
MEMORY = "from memory"
PRACTICE = "common practice"

# letter: (power of ten in ohm, source)
POWERS = {
    "L": (-3, MEMORY),
    "R": (0, STANDARD),
    "K": (3, STANDARD),
    "M": (6, STANDARD),
    "G": (9, MEMORY),
    "T": (12, MEMORY),
}
_ALSO = {"r": "R", "k": "K", "Ω": "R", "E": "R"}  # E for the point: seen on some old parts
_UNITS = {
    "Ω": 0,
    "ohm": 0,
    "ohms": 0,
    "Ohm": 0,
    "Ohms": 0,
    "OHM": 0,
    "OHMS": 0,
    "kΩ": 3,
    "KΩ": 3,
    "MΩ": 6,
    "mΩ": -3,
    "GΩ": 9,
    "kohm": 3,
    "Kohm": 3,
    "Mohm": 6,
    "kOhm": 3,
    "KOHM": 3,
    **dict.fromkeys(("MEG", "Meg", "meg", "MEGOHM", "megohm"), 6),
}
_LONGEST_UNIT = 6
_MOST_WATTS = 100.0

# letter: ((percent either side, source), ...), likeliest first. One maker letters differently.
TOLERANCES = {
    "E": (("0.005", MEMORY),),
    "L": (("0.01", MEMORY),),
    "P": (("0.02", MEMORY),),
    "W": (("0.05", MEMORY),),
    "B": (("0.1", "Hong Kong Resistors"),),
    "C": (("0.25", "Hong Kong Resistors"),),
    "D": (("0.5", "Sanyo DP19649"),),
    "F": (("1", "Sanyo DP19649"),),
    "G": (("2", "Sanyo DP19649"),),
    "H": (("3", MEMORY), ("0.02", CARD)),
    "J": (("5", "Sanyo DP19649"),),
    "K": (("10", "Sanyo DP19649"),),
    "M": (("20", "Sanyo DP19649"),),
    "N": (("30", MEMORY),),
    "T": (("0.01", CARD),),
    "Z": (("0.025", CARD),),
    "A": (("0.05", CARD),),
}
# letter: (ppm/K, source). Z is any other value, given elsewhere.
COEFFICIENTS = {
    "K": (1, STANDARD),
    "M": (5, STANDARD),
    "N": (10, MEMORY),
    "P": (15, STANDARD),
    "Q": (25, STANDARD),
    "R": (50, STANDARD),
    "S": (100, STANDARD),
    "U": (250, STANDARD),
}
LETTERS = "B C D F G J K M, seldom E L P W H N"

_MOST_OHM = 1e14  # more is no resistor, but the insulation round one; common practice
_FILM_LETTERS = ("B", "C", "D", "F", "G")  # behind four figures: 1003F

# (tolerance, ppm/K, words, sources) of the letters behind a value
_Tail = tuple[Tolerance | None, int | None, list[str], list[str]]


def read_resistor(text: str, pieces: list[str], part: str | None) -> list[tuple[int, Reading]]:
    """Readings of a resistor's text, each with its rank; none when it is no such text."""
    carries, tolerance, value_piece, power = {}, None, "", ""
    for piece in pieces:
        if piece[-1] in "Ww" and plain_numbers(piece[:-1]) and not power:
            power = piece
        elif piece[-1] == "%" and tolerance is None:
            tolerance = percent_tolerance(piece[:-1])
            if tolerance is None:
                return []
        elif not value_piece:
            value_piece = piece
        elif piece in _UNITS or (piece in TOLERANCES and piece != "E"):
            value_piece += piece
        else:
            return []
    if not value_piece:
        return []
    head, watt, tail = value_piece.partition("W")
    if watt and tail and plain_numbers(head) and not power:  # 5W10RJ
        power, value_piece = head + watt, tail
    if power:
        watts = float(plain_numbers(power[:-1])[0])
        carries["rated_power"] = watts
        if " " in text and _is_plain_ohm(value_piece) and watts <= _MOST_WATTS:
            value_piece += "Ω"
    lone = len(pieces) == 1 and not power
    return _readings(text, value_piece, tolerance, carries, lone)


def _is_plain_ohm(piece: str) -> bool:
    """Whether a number beside watts is in Ω: 5W 0.22. Three figures may be a code."""
    return bool(plain_numbers(piece)) and ("." in piece or len(piece) < 3)


def _readings(text, piece, percent, carries, lone) -> list[tuple[int, Reading]]:
    found = []
    for number, power, why, source, tail, base in _values(piece):
        for place, (tolerance, tempco, words, keys) in enumerate(_tails(tail)):
            if percent is not None and tolerance is not None:
                continue
            value = float(f"{number}e{power}")
            if value > _MOST_OHM:
                continue
            if not value:
                if not tail and percent is None and power == 0:
                    found.append((base, zero_link(text)))
                continue
            limit = percent or tolerance
            doubt, down = value_doubt("resistor", value, number, limit)
            rank = base + NEXT * place + down
            rank += _rank_among_parts(piece) if lone else LETTER_AMONG_FIGURES
            rank += RESISTOR_ON_LINES if "\n" in text else IN_FULL
            more = {} if tempco is None else {"tempco": float(tempco)}
            reading = Reading(
                kind="resistor",
                text=text,
                quantity="resistance",
                value=value,
                unit="Ω",
                why="; ".join([why, *words]) + ".",
                digits=len(number.replace(".", "").lstrip("0")) or 1,
                tolerance=limit,
                carries={**carries, **more},
                steps=(f"{piece}: {number} × {ten_to(power)} Ω",),
                doubt=doubt,
                sources=tuple(dict.fromkeys((source, *keys))),
            )
            found.append((rank, reading))
    return found


def _rank_among_parts(piece: str) -> int:
    """Where the reading stands when the part is not known.

    Three figures and a letter are rather a capacitor; L G T are rarer than R K M.
    """
    number, rest = number_and_rest(piece)
    if rest == "MF":
        return OLD_MICROFARAD_OR_MEGOHM
    if rest == "E" and len(number) == 1:  # 1E is rather a voltage code
        return OHM_BY_E_OF_ONE_FIGURE
    if rest[:1] == "M" and len(number) > 1 and len(rest) == 3 and bare_volts(rest[1:]):
        return RESISTOR_OR_VOLTS  # 10M50
    if rest[:1] == "M" and not number and rest[-1] == "A":
        return RESISTOR_OR_VOLTS  # M2A: rather a fuse
    if rest[:1] in ("L", "G", "T"):
        return RESISTOR_IN_MILLIOHM if rest[0] == "L" else RESISTOR_ABOVE_MEGOHM
    if len(number) == 3 and number.isdecimal() and len(rest) == 1 and rest in ("K", "k", "M"):
        return USUAL_CODE if number[2] == "0" and rest != "M" else RESISTOR_OF_THREE_FIGURES
    return LETTER_AMONG_FIGURES


def _values(piece: str):
    """(number, power of ten, why, source, letters left, rank) for each way to read the value."""
    number, rest = number_and_rest(piece)
    for length in range(min(_LONGEST_UNIT, len(rest)), 0, -1):
        power = _UNITS.get(rest[:length])
        if power is not None and number and rest[length:] in ("", *TOLERANCES):
            for place, plain in enumerate(plain_numbers(number) or ["0"] * (number == "0")):
                why = f"The number is in {rest[:length]}"
                yield plain, power, why, PRACTICE, rest[length:], IN_FULL + NEXT * place
            return
    if len(number) == 4 and number.isdecimal() and number[0] != "0" and rest in _FILM_LETTERS:
        why = f"{number[:3]} times {times(int(number[3]))}, in Ω, as on metal film"
        yield number[:3], int(number[3]), why, PRACTICE, rest, IN_FULL
        return
    letter = _ALSO.get(rest[:1], rest[:1])
    if letter not in POWERS:
        return
    decimals, tail = leading_digits(rest[1:])
    if rest[0] == "E" and not number and len(decimals) > 2:
        return  # E475: a tantalum chip
    power, source = POWERS[letter]
    source = PRACTICE if rest[0] == "E" else source
    unit = {"L": "mΩ", "R": "Ω"}.get(letter, f"{letter.replace('K', 'k')}Ω")
    if "." in number or "," in number:  # 4.7K
        if not decimals:
            for place, plain in enumerate(plain_numbers(number)):
                why = f"The letter {rest[0]} is {unit}"
                yield plain, power, why, PRACTICE, tail, IN_FULL + NEXT * place
        return
    if not (number or decimals) or len(number) > 4 or len(decimals) > 4:
        return
    if len(number) > 1 and number[0] == "0":
        return
    if decimals:
        why = f"The letter {rest[0]} is {unit} and the decimal point"
        yield f"{number or '0'}.{decimals}", power, why, source, tail, IN_FULL
    else:
        yield number, power, f"The letter {rest[0]} is {unit}", source, tail, IN_FULL


def _tails(tail: str) -> list[_Tail]:
    """(tolerance, ppm/K, words, sources) for each meaning of the letters behind the value."""
    if not tail:
        return [(None, None, [], [])]
    coefficient = COEFFICIENTS.get(tail[1:])
    if (
        len(tail) > 2
        or tail[0] not in TOLERANCES
        or (tail[1:] and not (coefficient or tail[1] == "Z"))
    ):
        return []
    options: list[_Tail] = []
    if tail == "A":
        options.append((None, None, ["A leaves the tolerance to the data sheet"], [MEMORY]))
    for percent, source in TOLERANCES[tail[0]]:
        tolerance = percent_either_side(percent)
        maker = " in one maker's lettering" if source == CARD else ""
        words, keys = [f"{tail[0]} is {tolerance}{maker}"], [source]
        if coefficient:
            words.append(f"{tail[1]} is ±{coefficient[0]} ppm/K")
            keys.append(coefficient[1])
        elif tail[1:]:
            words.append("Z leaves the temperature coefficient to the data sheet")
            keys.append(STANDARD)
        options.append((tolerance, coefficient[0] if coefficient else None, words, keys))
    return options


def zero_link(text: str, why: str = "A link of 0 Ω.") -> Reading:
    """The reading of a link."""
    return Reading(
        kind="resistor",
        text=text,
        quantity="resistance",
        value=0.0,
        unit="Ω",
        why=why,
        sources=("encyclopaedia, Zero-ohm link",),
    )
