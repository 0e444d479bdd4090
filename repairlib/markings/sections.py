"""Several capacitors in one can: 16+16µF 450V, 20-20-20 450V."""

from __future__ import annotations

from repairlib.markings.value_codes import number_and_rest, plain_numbers


def sections_in(cleaned: str) -> tuple[list[str], str] | None:
    """The numbers of the sections, and what stands behind them: unit, volts; or None.

    >>> sections_in("16+24µF 450V"), sections_in("20-20-20 450V"), sections_in("100-25")
    ((['16', '24'], 'µF 450V'), (['20', '20', '20'], ' 450V'), None)
    """
    words, space, rest = cleaned.replace("/", " ").partition(" ")
    mark = "+" if "+" in words else "-"
    *first, last = words.split(mark)
    number, unit = number_and_rest(last)
    numbers = [*first, number]
    if not first or not all([bool(plain_numbers(one)) for one in numbers]):
        return None
    if mark == "-" and (unit or (len(numbers) == 2 and "V" not in rest)):
        return None
    if unit and not unit.startswith(("µ", "u", "U", "m", "M")):
        return None
    return numbers, unit + space + rest


def joined(numbers: list[str]) -> str:
    """The sections in words."""
    return f"one of {len(numbers)} sections, {' + '.join(numbers)} µF, which share the minus"
