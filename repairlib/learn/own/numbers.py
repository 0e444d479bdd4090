"""A number with its unit, how far off an answer may be, and numbers or ranges that are wrong."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity, engineering, read_quantity
from repairlib.learn.own.parts import Asked, Wrong, mistake, slipping
from repairlib.learn.own.said import Said
from repairlib.learn.own.slips import Slip
from repairlib.learn.question import Mistake, Number, Question

CLOSE = 0.01  # of a number with a unit, where nothing else is said
LONGEST = 120  # characters of a number with how far off it may be
_WITHIN = re.compile(r"(.*?)[\s,]*(?:\bwithin\b|±|\+/-|\+-)\s*(.*)", re.IGNORECASE)
_BEYOND = re.compile(r"(more than|above|over|less than|below|under)\s+(.*)", re.IGNORECASE)
_MORE = ("more than", "above", "over")


@dataclass(frozen=True)
class Beyond:
    """A range of wrong numbers, `said` as typed, without those that are right."""

    said: str
    more: bool
    limit: float
    right: Number

    def __call__(self, value: float) -> bool:
        beyond = value > self.limit if self.more else value < self.limit
        return beyond and not self.right.share(value)


def read_number(asked: Asked, slips: list[Slip]) -> Question | None:
    """A number with its unit: `Answer: 100 nF, within 5 %`."""
    common = asked.common(slips)
    right = number_in(asked.one("answer"), asked.one("answer").text, slips)
    if right is None:
        return None
    mistakes = wrong_numbers(right, asked.wrong, slips)
    return Number(**number_fields(right), mistakes=mistakes, **common)


def number_fields(right: Number) -> dict[str, Any]:
    names = ("answer", "unit", "tolerance", "margin")
    return {name: getattr(right, name) for name in names}


def number_in(said: Said, text: str, slips: list[Slip]) -> Number | None:
    """A number and how far off an answer may be. A plain count is right as it is and not else."""
    with slipping(said.line, slips):
        found = _parted(text)
        value, within = found.groups() if found else (text, "")
        answer = _quantity(value)
        close, margin = 0.0, 0.0
        if found:
            close, margin = _closeness(within, answer)
        elif answer.unit:
            close = CLOSE
        return Number(answer=answer.value, unit=answer.unit, tolerance=close, margin=margin)
    return None


def _parted(text: str) -> re.Match[str] | None:
    """A number and how far off it may be; None where nothing is said of that."""
    if len(text) > LONGEST:
        raise RepairlibError(text, "too long for a number", "a number with its unit, within 5 %")
    return _WITHIN.fullmatch(text)


def _quantity(text: str) -> Quantity:
    """A number with its unit. "350 C" would be a charge, and means a temperature."""
    read = read_quantity(text)
    if read.unit == "C":
        raise RepairlibError(text, "C stands for coulombs", f"{read.value:g} °C")
    return read


def _closeness(text: str, answer: Quantity) -> tuple[float, float]:
    """(share of the answer, amount in its unit) that an answer may be off."""
    off = _quantity(text)
    shown = engineering(answer.value / 10, answer.unit)
    if off.value < 0 or (off.unit != answer.unit and (off.unit != "%" or off.value > 100)):
        raise RepairlibError(text, "not how far off an answer may be", f"5 %, or {shown}")
    return (0.0, off.value) if off.unit == answer.unit else (off.value / 100, 0.0)


def wrong_numbers(right: Number, wrong: Sequence[Wrong], slips: list[Slip]) -> list[Mistake]:
    made: list[Mistake] = []
    for one in wrong:
        with slipping(one.said.line, slips):
            when = _wrong_number(one.said.text, right)
            made += mistake(one, when, slips)
    return made


def _wrong_number(text: str, right: Number) -> float | Beyond:
    """A wrong number, or a range of them. Raises RepairlibError when the right one is among it."""
    found = _BEYOND.fullmatch(text)
    value = _quantity(found[2] if found else text)
    if value.unit != right.unit:
        accepted = f"the unit of the answer, {right.unit}" if right.unit else "a plain number"
        raise RepairlibError(text, "not in the unit of the answer", accepted)
    if not found and not right.share(value.value):
        return value.value
    if found:
        beyond = Beyond(text, " ".join(found[1].lower().split()) in _MORE, value.value, right)
        takes_right = value.value < right.answer if beyond.more else value.value > right.answer
        if not takes_right:
            return beyond
    raise RepairlibError(text, "the right answer is among it", "answers that are wrong")


def is_number(text: str) -> bool:
    try:
        found = _parted(text)
        _quantity(found[1] if found else text)
    except RepairlibError:
        return False
    return True
