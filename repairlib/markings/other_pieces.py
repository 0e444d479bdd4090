"""The pieces of a marking beside its value: volts, tolerance, temperature, dates, signs."""

from __future__ import annotations

from repairlib.markings.reading import Tolerance, percent_either_side
from repairlib.markings.voltage_codes import bare_volts, code_source, printed_volts, two_characters

PRACTICE = "common practice"
IS_AC = "the voltage is AC: never fit a polar part in its place"
IS_RATING = "is the rated voltage"
_SAYS_NON_POLAR = """NP BP N.P B.P N.P. B.P. N/P N-P B-P BIP BIPOL BIPOLAR BI-POL BI-POLAR
    NONPOL NONPOLAR NON-POL NON-POLAR NON-POLARISED NON-POLARIZED UNPOL UNPOLAR UNPOLARISED
    UNPOLARIZED UNGEPOLT APOLAR TONFREQUENZ"""
_NON_POLAR = frozenset(_SAYS_NON_POLAR.split())
_BARE_TEMPERATURES = ("85C", "105C", "125C", "130C", "135C", "150C")
_KINDS_OF_VOLTS = {"AC": IS_AC, "DC": "the voltage is DC", "": ""}
_LONE_LETTERS = "BCDFGHJKMNQSTZjkmz"  # E L P W are too tight for any capacitor
# German names of film capacitors, from memory: the build, then the film.
FILMS = {
    "MKT": "metallised polyester",
    "MKS": "metallised polyester",
    "MMK": "metallised polyester",
    "MKP": "metallised polypropylene",
    "MKC": "metallised polycarbonate",
    "FKP": "polypropylene and foil",
    "KP": "polypropylene and foil",
    "FKS": "polyester and foil",
    "KT": "polyester and foil",
    "KS": "polystyrene and foil",
    "FKC": "polycarbonate and foil",
    "FKT": "polyester and foil",
    "MKH": "metallised polyester",
    "MKB": "metallised polyester",
    "MKY": "metallised polypropylene",
    "MKU": "metallised cellulose acetate",
    "MKL": "metallised cellulose acetate",
    "MPP": "metallised polypropylene",
    "MPX": "metallised polypropylene",
    "MEX": "metallised polyester",
    "MEF": "metallised polyester",
    "MPE": "metallised polyester",
    "CBB": "polypropylene, the Chinese name",
    "CL": "polyester, the Chinese name",
}
_MOST_PERCENT_UP = 2.5  # a fraction: +250 %, on old electrolytics
SAFETY_CLASSES = ("X1", "X2", "X3", "Y1", "Y2", "Y3", "Y4", "X1Y1", "X1Y2")


def explicit_piece(piece: str) -> tuple[str, object, str, str] | None:
    """(name, what, words for the why, source) of a piece that says what it is, else None.

    >>> explicit_piece("16V"), explicit_piece("±10%")
    (('rated_voltage', 16.0, '', 'common practice'), ('tolerance', ±10 %, '', 'common practice'))
    """
    if piece in ("1V", "2V"):  # 35 V and 350 V; no capacitor is rated 1 V
        return implied_piece(piece, None, "")
    volts = printed_volts(piece)
    if volts is not None:
        return "rated_voltage", volts[0], _KINDS_OF_VOLTS[volts[1]], PRACTICE
    if piece[-1] == "%":
        tolerance = percent_tolerance(piece[:-1])
        return None if tolerance is None else ("tolerance", tolerance, "", PRACTICE)
    if piece[-1] == "C" and "°" in piece:
        lowest, plus, highest = piece[:-2].rpartition("+")  # -40+105°C, on a sleeve
        sleeve = lowest.strip("-/") if plus and lowest[:1] == "-" else ""
        number = highest if plus and (not lowest or sleeve.isdecimal()) else piece[:-2]
        if number.isdecimal() and len(number) <= 3:
            return "highest_temperature", float(number), "", PRACTICE
        return None
    if piece[0] == "±" and piece.endswith("pF") and piece[1:-2].replace(".", "", 1).isdecimal():
        farad = float(f"{piece[1:-2]}e-12")
        return "tolerance", Tolerance(-farad, farad, "F"), "", PRACTICE
    if piece.upper() in _NON_POLAR:
        return "polarity", "non-polar", "", PRACTICE
    if piece in SAFETY_CLASSES:
        words = f"{piece} is a safety class: fit the same class only"
        return "safety_class", piece, words, "from memory"
    film = piece.rstrip("0123456789")  # MKS4: a build of one maker
    if film in FILMS:
        return "dielectric", piece, f"{piece} is film: {FILMS[film]}", "from memory"
    if len(piece) >= 3 and not piece[0].isdecimal():
        from repairlib.markings.temperature_codes import STANDARD, characteristic

        code = characteristic(piece)
        if code is not None:
            return "temperature_characteristic", code, "", STANDARD
    return None


def implied_piece(piece: str, letters: dict | None, body: str):
    """The same for a piece that only its place explains: a bare rating, a code, a lone letter."""
    volts = bare_volts(piece)
    if volts is not None:
        return "rated_voltage", volts, f"{piece} {IS_RATING}", PRACTICE
    if letters and piece in letters:
        from repairlib.markings.voltage_codes import letter_source

        words = f"{piece} is {letters[piece]:g} V"
        return "rated_voltage", letters[piece], words, letter_source(body, piece)
    volts = two_characters(piece) if len(piece) == 2 and piece[0].isdecimal() else None
    if volts is not None:
        return "rated_voltage", volts, f"{piece} is {volts:g} V", code_source(piece)
    if piece in _BARE_TEMPERATURES:
        return "highest_temperature", float(piece[:-1]), "", PRACTICE
    if len(piece) == 1 and piece in _LONE_LETTERS:
        return "tolerance_letter", piece, "", "IEC 60062:2016"
    if 2 <= len(piece) <= 4:
        from repairlib.markings.date_codes import dates

        found = dates(piece)
        if found:
            return "date", " or ".join(found), f"{piece} is the date", "from memory"
    return None


def join_safety_classes(pieces: list[str]) -> tuple[list[str], tuple | None]:
    """The pieces without two or more safety classes and the volts of each, and these as one.

    >>> join_safety_classes(["X1", "440~", "Y2", "300~", "472M"])[0]
    ['472M']
    """
    if sum([piece in SAFETY_CLASSES for piece in pieces]) < 2:
        return pieces, None
    rest, said = [], []
    for piece in pieces:
        volts = printed_volts(piece)
        if piece in SAFETY_CLASSES:
            said.append(piece)
        elif volts and said and " " not in said[-1]:
            said[-1] += f" {volts[0]:g} V {volts[1] or 'AC'}"
        else:
            rest.append(piece)
    words = (
        f"{' and '.join(said)} are safety classes: fit the same classes only, never a polar part"
    )
    return rest, ("safety_class", ", ".join(said), words, "from memory")


def percent_tolerance(text: str) -> Tolerance | None:
    """The tolerance of ±10, 10, -20+80 or +80-20."""
    body = text.removeprefix("±")
    if body.replace(".", "", 1).isdecimal():
        return percent_either_side(body) if len(body) < 6 and float(body) < 100 else None
    sides = text.replace("+", " +").replace("-", " -").split()
    if len(sides) != 2 or {side[0] for side in sides} != {"+", "-"}:
        return None
    if not all(side[1:].replace(".", "", 1).isdecimal() and len(side) < 7 for side in sides):
        return None
    low, high = sorted(float(f"{side}e-2") for side in sides)
    if low <= -1 or high > _MOST_PERCENT_UP:
        return None
    return Tolerance(low, high)
