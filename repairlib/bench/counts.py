"""A display of so many counts: a value as it is shown, on the range that holds it."""

from __future__ import annotations

from typing import NamedTuple

from repairlib.bench.noise import noisy
from repairlib.bench.state import State

OVER = "OL"
DASHES = "- - -"


class Span(NamedTuple):
    """A range: the highest value and one count of its last place, in SI units; the unit shown."""

    full: float
    step: float
    unit: str
    scale: float = 1.0

    @property
    def places(self) -> int:
        """The decimal places that are shown."""
        text = f"{self.step / self.scale:.9f}".rstrip("0")
        return len(text.partition(".")[2])

    def text(self, value: float) -> str:
        """A value as the display shows it.

        >>> Span(0.6, 1e-4, "mV", 1e-3).text(0.0123), Span(60.0, 0.01, "V").text(-0.001)
        ('12.3 mV', '0.00 V')
        """
        number = f"{value / self.scale:.{self.places}f}"
        if not float(number):
            number = number.lstrip("-")
        return f"{number} {self.unit}"

    @property
    def said(self) -> str:
        """The range in words: 600 mV."""
        return f"{self.full / self.scale:g} {self.unit}"


class Accuracy(NamedTuple):
    """± (`percent` of the reading + `digits` counts of its last place).

    What is `unsigned` shows nothing below 0.
    """

    percent: float
    digits: int
    unsigned: bool = False


class Shown(NamedTuple):
    """What a display shows; `value` is None where it is over its highest range."""

    text: str
    value: float | None
    span: Span
    error: float


def shows(
    value: float,
    spans: tuple[Span, ...],
    accuracy: Accuracy,
    state: State,
    instrument: str,
) -> Shown:
    """`value` on the first of the ranges that holds it; `value` in SI units.

    >>> from repairlib.bench.practice_set import demo_set
    >>> from repairlib.bench.state import begin
    >>> volts = (Span(6.0, 1e-3, "V"), Span(60.0, 1e-2, "V"))
    >>> EXACT = Accuracy(0, 0)
    >>> state = begin(demo_set("desk radio"), (), "demo")
    >>> shows(14.238, volts, EXACT, state, "V").text, shows(75.0, volts, EXACT, state, "V").text
    ('14.24 V', 'OL')
    """
    value = float(f"{value:.9g}")  # infinite where nothing flows at all
    for span in spans:
        if abs(value) <= span.full:
            share = accuracy.percent / 100
            read = noisy(value, share, span.step, accuracy.digits, state, instrument)
            read = max(read, 0.0) if accuracy.unsigned else read
            error = abs(read) * share + (accuracy.digits + 0.5) * span.step
            return Shown(span.text(read), read, span, error)
    return Shown(OVER if value > 0 else f"-{OVER}", None, spans[-1], 0.0)
