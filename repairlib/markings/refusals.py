"""The error for a marking that nothing fits: what is wrong, and what it might have been."""

from __future__ import annotations

from repairlib.core.errors import RepairlibError, shown
from repairlib.markings import candidates
from repairlib.markings.around_value import set_aside
from repairlib.markings.clean_text import EXAMPLES, split
from repairlib.markings.kinds import BANDED, TABLE
from repairlib.markings.other_pieces import SAFETY_CLASSES, explicit_piece, implied_piece
from repairlib.markings.tolerance_letters import LETTERS, tolerances
from repairlib.markings.value_codes import number_and_rest

_NO_FORM = "no marking has this form"
_LOOK_ALIKES = {"O": "0", "o": "0", "I": "1", "l": "1"}


def refusal(text: str, cleaned: str, part: str | None) -> RepairlibError:
    """The error to raise for `text`, of which `cleaned` has no reading on `part`."""
    if part is None:
        wrong, accepted = _slip(cleaned, part) or (_NO_FORM, EXAMPLES)
        return RepairlibError(text, wrong, accepted)
    elsewhere = candidates(cleaned, None)
    slip = None if elsewhere and part not in BANDED else _slip(cleaned, part)
    wrong, accepted = slip or (_NO_FORM, TABLE[part].accepted)
    if elsewhere:
        reading = elsewhere[0]
        what = f"{reading.headline} ({TABLE[reading.kind].name})"
        here = slip[0] if slip else f"not a marking of this kind: {TABLE[part].name}"
        wrong = f"{here}; elsewhere it would be {what}"
    return RepairlibError(text, wrong, accepted)


def _slip(cleaned: str, part: str | None) -> tuple[str, str] | None:
    """(what is wrong, what is accepted) for the slips that people make."""
    pieces = split(cleaned)
    found = _slip_of_words(cleaned, part) or _slip_of_look_alike(cleaned, part)
    if found:
        return found
    if cleaned in SAFETY_CLASSES:
        return f"{cleaned} alone is a safety class", f"the value with it: 0.1µF {cleaned} 250V~"
    found = _slip_of_sections(pieces)
    if found or len(pieces) > 1:
        return found or _slip_between_pieces(pieces, part)
    return _slip_of_piece(cleaned, part)


def _slip_of_piece(piece: str, part: str | None) -> tuple[str, str] | None:
    """For a marking of one piece, by the part it is on."""
    if part is None or TABLE[part].polar is not None:
        from repairlib.markings.part_numbers import what_it_may_say

        number = what_it_may_say(piece)
        if number:
            return number, "what is printed on the part itself: value, volts and polarity"
    if part in BANDED:
        return _slip_of_resistor_letter(piece, part)
    if part == "temperature-characteristic" or (len(piece) == 3 and piece[1].isdecimal()):
        return _slip_of_temperature(piece.upper())
    if part == "voltage-code" and len(piece) == 2 and piece[0].isdecimal():
        return f"{piece} is no voltage code", TABLE[part].accepted
    return _slip_of_letter(*number_and_rest(piece))


def _slip_of_words(cleaned: str, part: str | None) -> tuple[str, str] | None:
    """For a marking without a figure, on a part that carries colours."""
    if part is not None and part not in BANDED:
        return None
    if len(cleaned) <= 2 or _has_figure(cleaned):
        return None
    return _slip_of_colours(cleaned, part)


def _slip_of_look_alike(cleaned: str, part: str | None) -> tuple[str, str] | None:
    """For a letter O, o, I or l that stands where a 0 or a 1 would make a marking."""
    figures = cleaned
    for letter, figure in _LOOK_ALIKES.items():
        figures = figures.replace(letter, figure)
    if figures == cleaned or not _has_figure(cleaned) or not candidates(figures, part):
        return None
    letter = next(c for c in cleaned if c in _LOOK_ALIKES)
    return f"{letter} is a letter where a figure is due", f"{figures}, if that is printed"


def _slip_of_sections(pieces: list[str]) -> tuple[str, str] | None:
    """For 32+32: several capacitors in one can."""
    for place, piece in enumerate(pieces):
        count, times, value = piece.partition("x")
        if times and count.isdecimal() and value[:1].isdecimal():  # 0,1µF + 2x2500pF
            return "it has several capacitors in one case", f"each alone, such as {value}"
        first, plus, second = piece.partition("+")
        if plus and second[:1].isdecimal() and first[-1:].isdecimal():
            one = " ".join([first, *pieces[place + 1 :]])
            return "it has several sections, which share the minus", f"each section alone: {one}"
    return None


def _slip_between_pieces(pieces: list[str], part: str | None) -> tuple[str, str] | None:
    """For pieces of which some are understood: each that is not is named, and only these."""
    alone = [piece for piece in pieces if not _is_understood(piece, part)]
    for piece in alone or _doubtful_first(pieces):
        left = " ".join([one for one in pieces if one != piece])
        if left and candidates(left, part):
            how = "is not understood beside" if alone else "does not go with"
            wrong = f"{shown(piece)} {how} {shown(left)}"
            return wrong, f"{left}, where {piece} says nothing of volts, class or polarity"
    good = [piece for piece in pieces if piece not in alone]
    if not good or not alone:
        return None
    verb = "is" if len(alone) == 1 else "are"
    wrong = f"{' and '.join(map(shown, alone))} {verb} not understood"
    understood = ", ".join(good)
    return wrong, f"a value with volts, a tolerance or a class; understood: {understood}"


def _doubtful_first(pieces: list[str]) -> list[str]:
    """The pieces in the order in which they are likelier the odd one: values too many come first,
    those with a unit after those without; volts, classes and tolerances last."""
    values = [piece for piece in pieces if not explicit_piece(piece)]
    values.sort(key=lambda piece: piece[-1:].isalpha() and not piece[:1].isalpha())
    others = [piece for piece in pieces[::-1] if explicit_piece(piece)]
    return values + others if len(values) > 1 else others + values


def _is_understood(piece: str, part: str | None) -> bool:
    """Whether the piece can be read by itself, or beside a value."""
    if candidates(piece, part) or explicit_piece(piece) or implied_piece(piece, None, ""):
        return True
    return bool(set_aside(f"104 {piece}", ["104", piece])[1])


def _has_figure(text: str) -> bool:
    return any(character.isdecimal() for character in text)


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
    accepted = TABLE[part].accepted
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
