"""The error for a marking that nothing fits: what is wrong, and what it might have been."""

from __future__ import annotations

from repairlib.core.errors import RepairlibError, shown
from repairlib.markings import candidates
from repairlib.markings.clean_text import EXAMPLES, split
from repairlib.markings.other_pieces import SAFETY_CLASSES
from repairlib.markings.reading import KIND_NAMES
from repairlib.markings.tolerance_letters import LETTERS, tolerances
from repairlib.markings.value_codes import number_and_rest

_ACCEPTED = {
    "capacitor": "a code such as 104K, a letter code such as 4n7, a value such as 0.1 or 47pF",
    "tantalum": "a code such as 107, with a voltage letter 107 C, or a value such as 47 16V",
    "can": "µF and a voltage letter such as 220 E, or µF and volts such as 220 16V",
    "radial": "µF and volts such as 220 16V, 47/25 or 1000µF 16V",
    "date": "year letter and month such as N6, or year and week such as 2135",
    "voltage-code": "a code such as 1C or 2A, or volts such as 16V",
    "temperature-characteristic": "a code such as X7R, Y5V, C0G, NP0 or N750",
    "case-size": "a chip size such as 0805, or a tantalum case such as 3528-21 or B",
    "resistor": "bands such as brown-black-red-gold, or a code such as 4K7, R22J or 470 ohm",
    "chip-resistor": "a code such as 103, 4701, 4R7, 5L00 or 68C",
    "inductor": "a code such as 101K, 6R8 or R10, or bands such as brown-black-red-silver",
    "fuse": "a text such as T3.15AL250V, or bands such as red-black-red-red",
}
_ACCEPTED |= {"ceramic": _ACCEPTED["capacitor"], "film": _ACCEPTED["capacitor"]}
_ACCEPTED |= {"axial": _ACCEPTED["radial"], "chip-inductor": "a code such as 82N, 2N7, 6R8 or 102"}
_COLOURED = ("resistor", "chip-resistor", "inductor", "chip-inductor", "fuse")
_LOOK_ALIKES = {"O": "0", "o": "0", "I": "1", "l": "1"}


def refusal(text: str, cleaned: str, part: str | None) -> RepairlibError:
    """The error to raise for `text`, of which `cleaned` has no reading on `part`."""
    accepted = _ACCEPTED[part] if part else EXAMPLES
    elsewhere = candidates(cleaned, None) if part else []
    slip = None if elsewhere and part not in _COLOURED else _slip(cleaned, part)
    wrong, accepted = slip or ("no marking has this form", accepted)
    if elsewhere:
        reading = elsewhere[0]
        what = f"{reading.headline} ({KIND_NAMES[reading.kind]})"
        here = slip[0] if slip else f"not a marking of this kind: {KIND_NAMES[part]}"
        wrong = f"{here}; elsewhere it would be {what}"
    return RepairlibError(text, wrong, accepted)


def _slip(cleaned: str, part: str | None) -> tuple[str, str] | None:
    """(what is wrong, what is accepted) for the slips that people make."""
    if part in (None, *_COLOURED) and len(cleaned) > 2 and not any(c.isdecimal() for c in cleaned):
        coloured = _slip_of_colours(cleaned, part)
        if coloured:
            return coloured
    figures = cleaned
    for letter, figure in _LOOK_ALIKES.items():
        figures = figures.replace(letter, figure)
    if figures != cleaned and any(c.isdecimal() for c in cleaned) and candidates(figures, part):
        letter = next(c for c in cleaned if c in _LOOK_ALIKES)
        return f"{letter} is a letter where a figure is due", f"{figures}, if that is printed"
    pieces = split(cleaned)
    if cleaned in SAFETY_CLASSES:
        return f"{cleaned} alone is a safety class", f"the value with it: 0.1µF {cleaned} 250V~"
    for piece in pieces:
        first, plus, second = piece.partition("+")
        if plus and second[:1].isdecimal() and first[-1:].isdecimal():
            one = " ".join([first, *pieces[pieces.index(piece) + 1 :]])
            return "it has several sections, which share the minus", f"each section alone: {one}"
    if len(pieces) > 1:
        good = [piece for piece in pieces if candidates(piece, part)]
        bad = [piece for piece in pieces if piece not in good]
        if good and bad:
            if bad[0].isalpha():
                wrong = f"{shown(bad[0])} is no value; it may be a series or a safety mark"
                left = " ".join(piece for piece in pieces if piece != bad[0])
                return wrong, f"{left}; with approval signs beside it, fit the same class only"
            wrong = f"{shown(bad[0])} does not go with {shown(good[0])}"
            return wrong, "a value, then volts, a tolerance or a temperature characteristic"
        return None
    if part in _COLOURED:
        return _slip_of_resistor_letter(cleaned, part)
    if part == "temperature-characteristic" or (len(cleaned) == 3 and cleaned[1].isdecimal()):
        return _slip_of_temperature(cleaned.upper())
    if part == "voltage-code" and len(cleaned) == 2 and cleaned[0].isdecimal():
        return f"{cleaned} is no voltage code", _ACCEPTED[part]
    return _slip_of_letter(*number_and_rest(cleaned))


def _slip_of_colours(cleaned: str, part: str | None) -> tuple[str, str] | None:
    """For a text in which at least one word is a colour."""
    from repairlib.markings.bands import why_not
    from repairlib.markings.body_end_dot import ACCEPTED, is_painted, why_not_painted
    from repairlib.markings.colours import NAMES, bands_of, colour_of, no_colour, words_of

    if is_painted(cleaned):
        return why_not_painted(cleaned), ACCEPTED
    if not any(colour_of(word) for word in words_of(cleaned)):
        return None
    if no_colour(cleaned):
        return no_colour(cleaned), " ".join(NAMES)
    if part == "fuse":
        wrong = "no fuse has these bands"
        return wrong, "two figures of a rating, a power of ten, then black red yellow blue or grey"
    bands = bands_of(cleaned)
    wrong = why_not(bands) or f"{len(bands)} bands do not stand on this part"
    return wrong, "3 to 6 bands on a resistor, 3 or 4 on an inductor, such as brown-black-red-gold"


def _slip_of_resistor_letter(code: str, part: str) -> tuple[str, str] | None:
    number, rest = number_and_rest(code)
    letters = [c for c in code if c.isalpha()]
    accepted = _ACCEPTED[part]
    if not any(c.isdecimal() for c in code):
        return ("no figures stand with the letter", accepted) if len(code) == 1 else None
    if part == "chip-resistor" and not letters:
        return "a chip carries three or four figures, or two and a letter", accepted
    if part == "chip-resistor" and len(number) == 2 and number.isdecimal() and len(rest) == 1:
        if not 1 <= int(number) <= 96:
            return f"there is no place {number} among the 96 values", accepted
        return f"{rest} is no multiplier of the 96-value code", "A B C D E F X Y Z, seldom R S G H"
    if part == "resistor" and letters and letters[0] not in "LRKMGTrkΩE":
        return f"{letters[0]} is no multiplier of a resistor", "R K M, seldom L G T"
    if part == "resistor" and len(letters) == 2 and not code[-1].isdecimal():
        from repairlib.markings.resistor_codes import LETTERS as RESISTOR_LETTERS

        return f"{letters[1]} is no tolerance letter of a resistor", RESISTOR_LETTERS
    if part == "resistor" and len(letters) > 1:
        return "it has two letters between figures", "one letter at the decimal point, such as 4K7"
    return None


def _slip_of_temperature(code: str) -> tuple[str, str] | None:
    accepted = "X Y or Z, a digit, a letter such as R (X7R); or a class 1 code such as C0G"
    if len(code) != 3 or not code[1].isdecimal() or not code[0].isalpha():
        return None
    if code[0] in "XYZ":
        return f"{code[1:]} does not follow {code[0]} in a temperature characteristic", accepted
    return f"{code} is no temperature characteristic", accepted


def _slip_of_letter(number: str, rest: str) -> tuple[str, str] | None:
    if not number and tolerances(rest, 1.0):
        tolerance = tolerances(rest, 1.0)[0][0]
        return f"{rest} alone is a tolerance, {tolerance}", "the value with it, such as 104K"
    if not number and rest in ("p", "n", "u", "µ", "m", "F", "R"):
        return "no figures stand with the letter", "figures and the letter, such as 4n7 or 33n"
    if not number or not rest:
        return None
    letter, behind = rest[0], rest[1:]
    if sum(rest.count(unit) for unit in "pnuµm") > 1 and "F" not in rest:
        return "it has two unit letters", "one letter at the decimal point, such as 3n3"
    if letter.isalpha() and not behind and len(number) <= 3:
        return f"{letter} is not a tolerance letter", LETTERS
    return None
