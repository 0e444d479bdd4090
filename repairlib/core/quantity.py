"""A number with its unit: read what people type, print what people expect.

Covers the units of the bench and the prefixes p n µ m k M G T. It does not convert between kinds
of unit, and it does not guess: text with two readings is an error that names both.
Pure builtins, because reading one marking must cost little more than starting Python.
"""

from __future__ import annotations

from repairlib.core.errors import RepairlibError

LONGEST = 60  # characters; nobody types a longer quantity
NBSP = "\u00a0"

PREFIXES = {
    "p": -12,
    "n": -9,
    "u": -6,
    "µ": -6,  # micro sign, U+00B5
    "μ": -6,  # Greek mu, U+03BC
    "m": -3,
    "k": 3,
    "K": 3,
    "M": 6,
    "meg": 6,
    "Meg": 6,
    "MEG": 6,
    "G": 9,
    "T": 12,
}

# spelling: (unit, factor to that unit). These take a prefix.
_PREFIXED = {
    "F": ("F", "1"),
    "Ω": ("Ω", "1"),  # Greek capital omega, U+03A9
    "\u2126": ("Ω", "1"),  # ohm sign
    "ohm": ("Ω", "1"),
    "Ohm": ("Ω", "1"),
    "ohms": ("Ω", "1"),
    "Ohms": ("Ω", "1"),
    "R": ("Ω", "1"),
    "H": ("H", "1"),
    "V": ("V", "1"),
    "A": ("A", "1"),
    "W": ("W", "1"),
    "Hz": ("Hz", "1"),
    "J": ("J", "1"),
    "C": ("C", "1"),
    "m": ("m", "1"),
    "s": ("s", "1"),
    "g": ("kg", "1e-3"),
}
# Times in seconds; a year is 365.25 days. Those above the second take no prefix.
_SECONDS = {
    **dict.fromkeys(("s", "sec", "secs", "second", "seconds"), "1"),
    **dict.fromkeys(("min", "mins", "minute", "minutes"), "60"),
    **dict.fromkeys(("h", "hr", "hrs", "hour", "hours"), "3600"),
    **dict.fromkeys(("d", "day", "days"), "86400"),
    **dict.fromkeys(("week", "weeks"), "604800"),
    **dict.fromkeys(("month", "months"), "2629800"),
    **dict.fromkeys(("yr", "yrs", "year", "years"), "31557600"),
}
# These stand as they are.
_WHOLE = {
    **{word: ("s", seconds) for word, seconds in _SECONDS.items()},
    **dict.fromkeys(("volt", "volts"), ("V", "1")),
    **dict.fromkeys(("amp", "amps", "ampere", "amperes"), ("A", "1")),
    **dict.fromkeys(("watt", "watts"), ("W", "1")),
    **dict.fromkeys(("kilohm", "kilohms"), ("Ω", "1e3")),
    **dict.fromkeys(("megohm", "megohms"), ("Ω", "1e6")),
    **dict.fromkeys(("uf", "UF", "µf", "μf", "mfd", "MFD"), ("F", "1e-6")),
    **dict.fromkeys(("microfarad", "microfarads"), ("F", "1e-6")),
    "%": ("%", "1"),
    "percent": ("%", "1"),
    "ppm/K": ("ppm/K", "1"),
    "ppm/°C": ("ppm/K", "1"),
    "ppm/C": ("ppm/K", "1"),
    "°C": ("°C", "1"),
    "degC": ("°C", "1"),
    "cm": ("m", "1e-2"),
    "in": ("m", "0.0254"),
    "nf": ("F", "1e-9"),
    "NF": ("F", "1e-9"),
    "pf": ("F", "1e-12"),
    "PF": ("F", "1e-12"),
    "VDC": ("V", "1"),
    "Vdc": ("V", "1"),
}
_ABOUT = ("≈", "~", "≅", "ca.", "approx.", "about ")  # said of a number, and no part of it
_THOUSANDS = "'’\u2009\u202f\u00a0"  # marks that stand for nothing else between two digits
UNITS = ("F", "Ω", "H", "V", "A", "W", "Hz", "J", "C", "m", "s", "kg", "%", "ppm/K", "°C")

# Engineering prefixes used when printing; capacitors are never printed in mF (common practice).
_PRINTED = {-12: "p", -9: "n", -6: "µ", -3: "m", 0: "", 3: "k", 6: "M", 9: "G", 12: "T"}
_STEPS = {"F": (-12, -9, -6, 0), "s": (-9, -6, -3, 0), "kg": (0,)}
_UNSCALED = ("%", "ppm/K", "°C", "")


class Quantity(float):
    """A value in SI units that also knows its unit and the significant digits it carries.

    Percent, ppm/K and °C are kept in those units. It counts and compares like the plain number,
    and what is worked out of it is a plain number; two quantities are equal when value and unit
    are. Immutable.

    >>> Quantity(4700.0, "Ω", digits=2)
    4.7 kΩ
    >>> Quantity(0.25, "s") * 1000
    250.0
    """

    __slots__ = ("digits", "unit")
    digits: int | None
    unit: str

    def __new__(cls, value: float, unit: str, digits: int | None = None) -> Quantity:
        made = super().__new__(cls, value)
        object.__setattr__(made, "unit", unit)
        object.__setattr__(made, "digits", digits)
        return made

    @property
    def value(self) -> float:
        """The plain number."""
        return float(self)

    def __setattr__(self, name: str, value: object) -> None:
        raise AttributeError(
            f"a Quantity does not change; make a new one instead of setting {name}"
        )

    def __reduce__(self):
        return Quantity, (self.value, self.unit, self.digits)

    def __eq__(self, other: object) -> bool:
        if isinstance(other, Quantity) and self.unit != other.unit:
            return False
        return float.__eq__(self, other)

    def __ne__(self, other: object) -> bool:
        return not self == other

    __hash__ = float.__hash__  # as that of the plain number, which it may equal

    def __str__(self) -> str:
        return engineering(self.value, self.unit, self.digits)

    __repr__ = __str__


def read_quantity(text: str, unit: str | None = None) -> Quantity:
    """Read `text` as a number with its unit, in SI.

    With `unit` (one of UNITS) a bare number or a bare prefix means that unit, and another kind
    of unit is an error. Without it a bare number has the unit "". A comma is a decimal comma
    unless it can also be a thousands mark. Raises RepairlibError, naming both readings where
    there are two.

    >>> read_quantity("4k7", "Ω"), read_quantity("0.1uF"), read_quantity("662 °F")
    (4.7 kΩ, 100 nF, 350 °C)
    >>> read_quantity("1 h 30 min").value, read_quantity("≈ 10'000 volts.").value
    (5400.0, 10000.0)
    """
    cleaned = _clean(text, unit)
    parts = _split_times(cleaned) if unit in (None, "s") else None
    if parts:
        pieces = [_read_one(text, part, "s") for part in parts]
        return Quantity(sum(piece.value for piece in pieces), "s", pieces[-1].digits)
    return _read_one(text, cleaned, unit)


def engineering(value: float, unit: str, digits: int | None = None) -> str:
    """`value` in engineering notation: a power of ten in threes and a non-breaking unit.

    `digits` is the number of significant digits to show (more are shown when the whole part needs
    them); without it the shortest text that says the value to 12 digits.

    >>> print(engineering(1e-7, "F"), engineering(0.001, "F"), engineering(47300, "Ω", 3))
    100 nF 1000 µF 47.3 kΩ
    """
    if value != value or value in (float("inf"), float("-inf")):
        raise RepairlibError(value, "not a finite number", "a finite number")
    sign = "-" if value < 0 else ""
    kept = 12 if digits is None else max(digits, 1)
    figures, _, power = format(abs(value), f".{kept - 1}e").partition("e")
    figures = figures.replace(".", "")
    if digits is None:
        figures = figures.rstrip("0") or "0"
    exponent = int(power)
    plain = unit in _UNSCALED or unit not in UNITS  # such as money
    step = 0 if plain or value == 0 else _step_for(exponent, unit)
    number = _place_point(figures, exponent - step)
    joined = _PRINTED[step] + unit
    return f"{sign}{number}{NBSP}{joined}" if joined else f"{sign}{number}"


def _step_for(exponent: int, unit: str) -> int:
    """The power of ten whose prefix is printed for a value of 10**exponent."""
    if unit == "F" and exponent == -1:
        return 0  # 0.1 F, not 100000 µF
    steps = _STEPS.get(unit, tuple(_PRINTED))
    return max([step for step in steps if step <= exponent], default=steps[0])


def _place_point(figures: str, exponent: int) -> str:
    """The digits `figures` with the point after digit `exponent + 1`."""
    if exponent < 0:
        return "0." + "0" * (-exponent - 1) + figures
    whole = figures[: exponent + 1].ljust(exponent + 1, "0")
    rest = figures[exponent + 1 :]
    return f"{whole}.{rest}" if rest else whole


def _accepted(unit: str | None) -> str:
    if unit is None:
        return "a number with a unit, such as 4.7 kΩ, 4k7, 0.1 µF, 16 V or 350 °C"
    examples = {"Ω": "4.7 kΩ, 4k7 or 4700", "F": "0.1 µF, 100n or 4u7", "V": "16 V or 6.3"}
    examples |= {
        "°C": "350 °C or 662 °F",
        "s": "90 s, 5 min, 1 h 30 min or 14 days",
        "%": "-10 % or 10",
    }
    return f"a number in {unit}" + (f", such as {examples[unit]}" if unit in examples else "")


def _clean(text: str, unit: str | None) -> str:
    """`text` stripped and with plain spaces and signs, or an error before any real work."""
    if not isinstance(text, str):
        raise RepairlibError(text, "not a text", _accepted(unit))
    if unit is not None and unit not in UNITS:
        raise RepairlibError(unit, "not a unit known here", " ".join(UNITS))
    if len(text) > 2 * LONGEST:
        raise RepairlibError(text, f"longer than {LONGEST} characters", _accepted(unit))
    cleaned = text.strip()
    if not cleaned:
        raise RepairlibError(text, "nothing was typed", _accepted(unit))
    for character in cleaned:
        if character.isdigit() and not "0" <= character <= "9":
            raise RepairlibError(text, f"{character} is not a digit 0 to 9", _accepted(unit))
        if not character.isprintable() and not character.isspace():
            raise RepairlibError(text, "it has a character that cannot be seen", _accepted(unit))
    for word in _ABOUT:
        cleaned = cleaned.removeprefix(word)
    cleaned = " ".join(_joined_thousands(cleaned).replace("\u2212", "-").split())
    if cleaned.endswith(".") and cleaned[-2:-1].isalpha():  # a full stop, or "sec."
        cleaned = cleaned[:-1]
    if not cleaned:
        raise RepairlibError(text, "no number stands in front", _accepted(unit))
    return cleaned


def _joined_thousands(text: str) -> str:
    """`text` without the marks between three digits and three digits: "10'000 V" is "10000 V"."""
    for mark in _THOUSANDS:
        first, *groups = text.split(mark)
        for group in groups:
            grouped = _run_back(first) >= 1 and _run(group, "0123456789") == 3
            first = f"{first}{'' if grouped else mark}{group}"
        text = first
    return text


def _split_times(text: str) -> list[str] | None:
    """['1 h', '30 min'] of '1 h 30 min'; None when it is not a chain of two or more times."""
    parts, number = [], ""
    for word in text.split():
        bare = word.lstrip("0123456789.,")
        if bare == word and number and word in _SECONDS:
            parts.append(f"{number} {word}")
            number = ""
        elif bare == "" and not number:
            number = word
        elif bare in _SECONDS and bare != word and not number:
            parts.append(word)
        else:
            return None
    order = [float(_SECONDS[part.lstrip("0123456789., ")]) for part in parts]
    if number or len(parts) < 2 or order != sorted(set(order), reverse=True):
        return None
    return parts


def _read_one(text: str, cleaned: str, unit: str | None) -> Quantity:
    sign = "-" if cleaned[0] == "-" else ""
    body = cleaned[1:].lstrip() if cleaned[0] in "+-" else cleaned
    figures_end = _run(body, "0123456789.,")
    number = body[:figures_end]
    if not any(c.isdigit() for c in number):
        raise RepairlibError(text, "no number stands in front", _accepted(unit))
    exponent, rest = _take_exponent(body[figures_end:])
    suffix = rest.strip()
    tail = _run_back(suffix)
    if tail and suffix[:-tail] and not exponent and rest == suffix:
        number, suffix = _join_letter_code(text, number, suffix, tail, unit)
    plain = _plain_number(text, number, unit)
    kind, factor, offset = _unit_of(text, suffix, unit, spaced=rest != suffix)
    return _in_si(text, sign + plain, exponent, kind, factor, offset, unit)


def _run(text: str, characters: str) -> int:
    """How many characters at the start of `text` are among `characters`."""
    return len(text) - len(text.lstrip(characters))


def _run_back(text: str) -> int:
    """How many digits `text` ends with."""
    return len(text) - len(text.rstrip("0123456789"))


def _take_exponent(text: str) -> tuple[int, str]:
    """The power of ten of a leading 'e-6', and what follows it."""
    if text[:1] in ("e", "E"):
        sign = 1 if text[1:2] in ("+", "-") else 0
        digits = _run(text[1 + sign :], "0123456789")
        if 0 < digits <= 3:
            end = 1 + sign + digits
            return int(text[1:end]), text[end:]
    return 0, text


def _join_letter_code(text: str, number: str, suffix: str, tail: int, unit: str | None):
    """'4' and 'k7' become '4.7' and 'k': the letter stands where the decimal point is."""
    letter, decimals = suffix[:-tail], suffix[-tail:]
    if "." in number or "," in number:
        raise RepairlibError(
            text, f"it has a decimal point and digits after {letter} too", _accepted(unit)
        )
    if letter not in PREFIXES and letter not in _PREFIXED:
        raise RepairlibError(text, f"{letter} is not a unit or prefix", _accepted(unit))
    return f"{number}.{decimals}", letter


def _plain_number(text: str, number: str, unit: str | None) -> str:
    """`number` with a decimal point and no thousands marks; two readings are an error."""
    if number.count(",") == 1 and "." not in number:
        before, _, after = number.partition(",")
        if len(after) == 3 and 1 <= len(before) <= 3 and before[0] != "0":
            readings = f"{before}.{after} or {before}{after}"
            raise RepairlibError(text, f"{number} may be {readings}", readings)
    marks = [c for c in number if not c.isdigit()]
    alone = len(marks) == 1 or marks.count(marks[-1]) == 1 if marks else False
    whole, point, decimals = number.rpartition(marks[-1]) if alone else (number, "", "")
    groups = whole.replace(",", ".").split(".")
    well_grouped = 1 <= len(groups[0]) <= 3 and all(len(group) == 3 for group in groups[1:])
    if len(groups) > 1 and not (well_grouped and len(set(marks) - {point}) == 1):
        raise RepairlibError(text, f"{number} is not one number", _accepted(unit))
    return f"{''.join(groups) or '0'}.{decimals}" if decimals else "".join(groups)


def _unit_of(text: str, suffix: str, unit: str | None, spaced: bool):
    """(unit, factor as text, offset) that `suffix` means; checked against the wanted `unit`."""
    if unit == "°C":
        if suffix in ("", "C"):
            return "°C", "1", 0.0
        if suffix == "K":
            return "°C", "1", -273.15
    if suffix in ("°F", "degF") or (suffix == "F" and unit == "°C"):
        return _wanted(text, "°C", unit), "F", 0.0
    if suffix == "MF":
        raise RepairlibError(
            text, "MF may be microfarad (old drawings) or megafarad", "µF for microfarad"
        )
    if suffix == "":
        return unit or "", "1", 0.0
    if suffix == "m" and (unit == "m" or (unit is None and spaced)):
        return "m", "1", 0.0  # metre; "5m" without a unit wanted is 5 thousandths
    if suffix == "K" and unit is None and spaced:
        raise RepairlibError(
            text, "K may be thousand or kelvin", "k for thousand, °C for a temperature"
        )
    whole = suffix.lower() if len(suffix) > 2 and suffix not in _WHOLE else suffix  # Volts, SEC
    if whole in _WHOLE:
        kind, factor = _WHOLE[whole]
        return _wanted(text, kind, unit), factor, 0.0
    if suffix in PREFIXES:
        if unit in ("%", "ppm/K", "°C"):
            raise RepairlibError(text, f"{suffix} does not go with {unit}", _accepted(unit))
        return unit or "", f"1e{PREFIXES[suffix]}", 0.0
    for prefix in ("", *PREFIXES):
        stem = suffix[len(prefix) :].lstrip() if suffix.startswith(prefix) else ""
        if stem in _PREFIXED:
            kind, factor = _PREFIXED[stem]
            power = PREFIXES.get(prefix, 0) + (-3 if factor == "1e-3" else 0)
            return _wanted(text, kind, unit), f"1e{power}", 0.0
    raise RepairlibError(text, f"{suffix} is not a unit known here", _accepted(unit))


def _wanted(text: str, kind: str, unit: str | None) -> str:
    if unit is not None and kind != unit:
        raise RepairlibError(text, f"it is in {kind} where {unit} is due", _accepted(unit))
    return kind


def _in_si(text, number, exponent, kind, factor, offset, unit) -> Quantity:
    figures = number.lstrip("-").replace(".", "").lstrip("0")
    digits = max(len(figures), 1)
    if factor == "F":  # Fahrenheit: a scale with an offset
        value = (float(f"{number}e{exponent}") - 32) / 1.8
        return Quantity(round(value, 9), kind, digits)
    if factor.startswith("1e"):
        exponent, factor = exponent + int(factor[2:]), "1"
    value = float(f"{number}e{exponent}")
    if factor != "1":
        value *= float(factor)
    value = round(value + offset, 9) if offset else value
    if value in (float("inf"), float("-inf")):
        raise RepairlibError(text, "the number is too large", _accepted(unit))
    if value == 0 and figures:
        raise RepairlibError(text, "the number is too small", _accepted(unit))
    return Quantity(value, kind, digits)


def brief(value: float, unit: str) -> str:
    """`value` with its unit, to at most five figures and without trailing zeros.

    >>> print(brief(0.45 / 0.0123, "Ω"))
    36.585 Ω
    """
    return engineering(float(f"{value:.5g}"), unit)


def brief_range(low: float, high: float, unit: str) -> str:
    """Two values as `brief` says them; one where both read the same.

    >>> print(brief_range(50, 80, "%"), brief_range(50, 50, "%"), sep="; ")
    50 % to 80 %; 50 %
    """
    first, last = brief(low, unit), brief(high, unit)
    return first if first == last else f"{first} to {last}"
