"""A maker's part number, typed as if it were a marking: what its pieces may mean, and no value.

Makers order their numbers as they like, so nothing is taken from one: it is said what to look for.
"""

from __future__ import annotations

from repairlib.core.quantity import engineering
from repairlib.core.series import E_SERIES
from repairlib.markings.voltage_codes import two_characters

_LEAST = 7  # characters; shorter texts are markings
_PERCENT = {"J": "5", "K": "10", "M": "20"}


def what_it_may_say(text: str) -> str | None:
    """What stands in a part number, as the `wrong` of a refusal; None where it is no such number.

    >>> what_it_may_say("XYZ1HM100").partition("; ")[2].replace("\u00a0", " ")
    'in it 1H may be 50 V, 100 then 10 µF on an aluminium part, 10 pF on others'
    >>> what_it_may_say("104K"), what_it_may_say("gizmo")
    (None, None)
    """
    code = text.upper().replace("-", "")
    figures = sum([character.isdecimal() for character in code])
    if len(code) < _LEAST or not code.isalnum() or not code.isascii():
        return None
    if figures < 3 or figures > len(code) - 2:
        return None
    said = _volts_and_value(code) or _value(code)
    if "NP" in code or "BP" in code or "HN" in code or "CN" in code:
        said.append("N or BP may ask for a part without polarity")
    looked = f"; in it {', '.join(said)}" if said else ""
    return f"a maker's part number, not a marking{looked}"


def _volts_and_value(code: str) -> list[str]:
    """Of a code of two characters for volts, and three figures behind it: 1H100, 1HM100."""
    for place in range(len(code) - 4):
        pair = code[place : place + 2]
        volts = two_characters(pair) if pair[0].isdecimal() and pair[1].isalpha() else None
        before = code[place - 1 : place]
        if volts is None or before.isdecimal():
            continue
        for gap in (0, 1, 2):
            between = code[place + 2 : place + 2 + gap]
            start = place + 2 + gap
            if (not between or between.isalpha()) and _is_value(code, start):
                value = code[start : start + 3]
                rated = f"{pair} may be {volts:g} V"
                return [rated, f"{value} then {_in_words(value)}", *_percent(code, start)]
    return []


def _value(code: str) -> list[str]:
    """Of three figures and a tolerance letter alone: 106K."""
    for place in range(1, len(code) - 3):
        letter = code[place + 3]
        if _is_value(code, place) and letter in _PERCENT and not code[place - 1].isdecimal():
            value = code[place : place + 3]
            if value.isdecimal() and int(value[:2]) in E_SERIES["E24"] and value[2] in "234567":
                farad = engineering(float(f"{value[:2]}e{int(value[2]) - 12}"), "F")
                return [f"{value} may be {farad}", *_percent(code, place)]
    return []


def _in_words(value: str) -> str:
    """The value that three figures may be: in µF on an aluminium part, in pF on others."""
    if "R" in value:
        figures = value.replace("R", ".").lstrip("0")
        return f"{figures} µF on an aluminium part, {figures} pF on a ceramic one"
    number = float(f"{value[:2]}e{value[2]}")
    farads = [engineering(float(f"{number!r}e{power}"), "F") for power in (-6, -12)]
    return f"{farads[0]} on an aluminium part, {farads[1]} on others"


def _percent(code: str, place: int) -> list[str]:
    letter = code[place + 3 : place + 4]
    return [f"{letter} ±{_PERCENT[letter]} %"] if letter in _PERCENT else []


def _is_value(code: str, place: int) -> bool:
    """Whether three figures stand there, or two and an R, and no figure behind them."""
    value, behind = code[place : place + 3], code[place + 3 : place + 4]
    return len(value) == 3 and value.replace("R", "0", 1).isdecimal() and not behind.isdecimal()
