"""The text of a marking before it is read: refused when it cannot be one, else made regular.

The result has µ for both micro signs, plain spaces, and line ends only where the marking has lines.
"""

from __future__ import annotations

from repairlib.core.errors import RepairlibError
from repairlib.markings.voltage_codes import bare_volts

LONGEST = 80  # characters; no part carries more
EXAMPLES = "a marking such as 104K, 4n7, 220 16V, 107 C, X7R, 2135, 4K7, brown-black-red-gold"

_SAME = str.maketrans(
    {
        "\u03bc": "µ",  # Greek mu
        "\u2212": "-",
        "\u2013": "-",
        "\u00a0": " ",
        "\u2009": " ",
        "\u202f": " ",
        "\u2103": "°C",
        "\u2126": "Ω",  # ohm sign
        "\t": " ",
        "\r": "\n",
    }
)
_SIGNS = "µ±°Ω\n"


def clean(text: str) -> str:
    """`text` made regular. Raises RepairlibError for what cannot be a marking.

    >>> print(clean(" 10 μF "))
    10 µF
    """
    if not isinstance(text, str):
        raise RepairlibError(text, "not a text", EXAMPLES)
    if len(text) > LONGEST:
        wrong = f"longer than {LONGEST} characters, which no part carries"
        raise RepairlibError(text, wrong, EXAMPLES)
    if text.isascii() and text.isalnum():
        return text
    cleaned = text.translate(_SAME).strip()
    if not cleaned:
        raise RepairlibError(text, "nothing was typed", EXAMPLES)
    if cleaned.isascii() and cleaned.isprintable():
        return cleaned
    for character in cleaned:
        if not (" " <= character <= "~" or character in _SIGNS):
            raise RepairlibError(text, _why_refused(character), EXAMPLES)
    return cleaned


def _why_refused(character: str) -> str:
    code = f"U+{ord(character):04X}"
    if character.isnumeric():
        return f"{character} ({code}) is a figure of another script; type 0 to 9"
    if not character.isprintable():
        return f"it has a character that cannot be seen ({code})"
    return f"{character} ({code}) stands on no part"


def split(cleaned: str) -> list[str]:
    """The pieces of a cleaned marking, a number and its unit joined: ["220µF", "16V"].

    >>> split("220 µF / 16 V (M)")
    ['220µF', '16V', 'M']
    """
    if cleaned.isalnum():
        return [cleaned]
    pieces = []
    text = cleaned.replace("+/-", "±").replace("+-", "±").replace("/+", "+").replace("±", " ±")
    text = text.replace("(", " ").replace(")", " ")
    if "/" in text and " " in text.strip():  # 1/2W alone is no value
        for fraction, decimal in _WATTS.items():
            text = text.replace(fraction, decimal)
        text = text.replace("50/60Hz", "")
    text = _without_slashes(_without_commas(text))
    text = _without_hyphens(text)
    for line in text.split("\n"):
        row: list[str] = []
        words = [_spelt(_without_sign(word.rstrip(",;."))) for word in line.split()]
        for word in _unit_behind(_together(words)):
            if row and _belongs(row[-1], word):
                row[-1] += ".0V" if word == "V" and row[-1] in _CODE_FIGURES else word
            elif word:
                row.append(word)
        pieces += _ac_behind(row)
    return pieces


def _spelt(word: str) -> str:
    """The word as volts are written elsewhere: 450wv, V.D.C, AC250V; nothing for 50Hz."""
    if word[:2].upper() in ("AC", "DC") and word[2:3].isdecimal() and word[-1] in "Vv":
        return f"{word[2:-1]}V{word[:2].upper()}"
    if word[-2:] in ("Hz", "HZ", "hz") and word[:-2].isdecimal():
        return ""
    number = word.rstrip("VWDCAvwdca.")
    unit = word[len(number) :].upper().replace(".", "")
    return number + _SPELT[unit] if unit in _SPELT else word


def _together(words: list[str]) -> list[str]:
    """The words with what is one thing in two put together: NON POLAR, -10 +50%."""
    joined: list[str] = []
    for word in words:
        before = joined[-1] if joined else ""
        polar = before.upper() in ("NON", "BI", "UN") and word.upper().startswith("POL")
        sides = before[:1] == "-" and word[:1] == "+" and word[-1] == "%"
        if polar or sides:
            joined[-1] += word
        else:
            joined.append(word)
    return joined


def _ac_behind(row: list[str]) -> list[str]:
    """The pieces with AC behind its volts: AC 250V, 220pF AC 250."""
    if "AC" not in row[:-1]:
        return row
    place = row.index("AC")
    volts = row[place + 1].removesuffix("V")
    if not bare_volts(volts):
        return row
    return [*row[:place], f"{volts}VAC", *row[place + 2 :]]


def _unit_behind(words: list[str]) -> list[str]:
    """The words with each unit behind its number: MFD 10 VAC 370 of motor-run parts."""
    if not words or words[0] not in _UNITS_FIRST:
        return words
    if len(words) % 2 or any([one not in _UNITS_FIRST for one in words[::2]]):
        return words
    return [number + unit for unit, number in zip(words[::2], words[1::2], strict=True)]


def split_at_volts(piece: str) -> list[str]:
    """Volts before a value, or AC volts behind it, as one word, taken apart; else the word.

    >>> split_at_volts("25V470µF"), split_at_volts("8µF400VAC"), split_at_volts("6V3")
    (['25V', '470µF'], ['8µF', '400VAC'], ['6V3'])
    """
    value, unit, volts = piece.partition("F")
    if volts[:1].isdecimal() and volts.endswith(("AC", "ac", "~")):
        return [value + unit, volts]
    volts, letter, value = piece.partition("V")
    is_value = value[:1].isdecimal() and value[-1] in ("F", "D", "µ", "u", "n", "p")
    return [volts + letter, value] if is_value and volts.isdecimal() else [piece]


def _without_hyphens(text: str) -> str:
    """The text with a space for a hyphen between value and volts: 0.1-400. Not in 3216-18."""
    before, hyphen, after = text.partition("-")
    ends = before[-1:].isdigit() or before.endswith(("u", "µ", "n", "p", "F", "FD", "fd"))
    if "%" in text or not hyphen or not ends or not after[:1].isdigit():
        return text
    is_size = before in _METRIC_SIZES and len(after) == 2 and after.isdigit()
    return text if is_size else f"{before} {after}"


def _without_slashes(text: str) -> str:
    """The text with spaces for slashes, but in a climatic category: 40/110/56 or 40/110/56/B."""
    if text.count("/") < 2:
        return text.replace("/", " ")
    return " ".join(
        [word if is_climate(word) else word.replace("/", " ") for word in text.split(" ")]
    )


def is_climate(word: str) -> bool:
    """Whether it is a climatic category: °C of cold, °C of heat, days, maybe a letter."""
    fields = word.split("/")
    if len(fields) == 4 and len(fields[3]) == 1 and fields[3].isalpha():
        fields.pop()
    return len(fields) == 3 and all([one.isdecimal() and len(one) in (2, 3) for one in fields])


def _without_commas(text: str) -> str:
    """The text with a space for a comma behind a unit: 1000uF,16V."""
    if "," not in text:
        return text
    head, *rest = text.split(",")
    for part in rest:
        head += (" " if head[-1:].isalpha() else ",") + part
    return head


def has_plus(cleaned: str) -> bool:
    """Whether a plus marks a lead, so that the part is polar: + 47µF, or 10 25+.

    >>> has_plus("10 25+"), has_plus("100µF -10+50%"), has_plus("32+32")
    (True, False, False)
    """
    if "+" not in cleaned or "+/-" in cleaned:
        return False
    words = cleaned.split()
    return any(
        ["%" not in word and "°" not in word and "+" in (word[0], word[-1]) for word in words]
    )


def _without_sign(word: str) -> str:
    """The word without the plus that marks a lead; a lone + or - is nothing."""
    if word in ("+", "-"):
        return ""
    return word if "%" in word or "°" in word else word.removeprefix("+").removesuffix("+")


_UNITS_IN_WORDS = "µF uF UF nF NF pF PF mF F MFD mfd Mfd MF mf uf nf pf µf p n u µ kpF kV KV"
_UNITS_IN_WORDS += " VDC VAC WV WVDC MMF mmf MMFD mmfd uuF uuf UUF µµF"
_UNITS_IN_WORDS += " Ω kΩ MΩ mΩ GΩ ohm ohms kohm Ohm OHM OHMS KOHM MEG Meg meg MEGOHM megohm"
_UNITS_IN_WORDS += " W H mH µH uH nH °C %"
_UNITS = frozenset(_UNITS_IN_WORDS.split())

_UNITS_FIRST = ("MFD", "UF", "uF", "µF", "VAC", "VDC")
_SPELT = {"WV": "WV", "DCWV": "VDC", "WVDC": "VDC", "VDC": "VDC", "VAC": "VAC", "ACWV": "VAC"}
_WATTS = {"1/8W": "0.125W", "1/4W": "0.25W", "1/2W": "0.5W", "3/4W": "0.75W", "1/8 W": "0.125W"}
_WATTS |= {"1/4 W": "0.25W", "1/2 W": "0.5W"}
_METRIC_SIZES = ("1608", "2012", "3216", "3528", "6032", "7343", "7360", "7361")
_CODE_FIGURES = ("1", "2")  # 2V in one word is the code of 350 V
_VOLTS = ("V", "v", "V~", "V=", "V-")
_E12 = ("10", "12", "15", "18", "22", "27", "33", "39", "47", "56", "68", "82")


def _belongs(before: str, word: str) -> bool:
    """Whether `word` is the unit of the number `before`, set apart by a space.

    A lone V is one but behind the code of a tantalum: `107 V` is a code and a voltage letter.
    """
    if before == "±":
        return True
    if before[-1] in "Vv" and before[0].isdecimal():
        return word in ("AC", "DC", "ac", "dc", "~", "=")
    if not before[-1].isdigit():
        return False
    return word in _UNITS or (word in _VOLTS and not _is_tantalum_code(before))


def _is_tantalum_code(number: str) -> bool:
    """Whether a number before a V is rather a code and the letter V: 107, which is no rating."""
    if len(number) != 3 or not number.isdecimal() or bare_volts(number):
        return False
    return number[:2] in _E12 and number[2] in "4567"
