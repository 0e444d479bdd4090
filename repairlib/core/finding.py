"""What a calculator returns: values with units, the working, sources, cautions and a verdict."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from typing import Any

from repairlib.core import html
from repairlib.core.quantity import Quantity
from repairlib.core.safety import caution
from repairlib.core.sources import source

SHOWN_NOTES = 2  # the others are folded
_WITH_E = re.compile(r"\b(\d(?:\.\d+)?)e([+-]\d{2,3})\b")  # as Python prints large and small
_RAISED = str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹")


@dataclass(frozen=True)
class Finding:
    """An answer that can be checked by reading it.

    `values` maps names to Quantity, text, whole number or truth value. `working` holds the steps a
    teacher would write on the board; `sources` and `cautions` hold keys of sources.SOURCES
    and safety.HAZARDS. `verdict` and `reason` are set where a decision is made.
    `finding.NAME` is `values["NAME"]`, which no field of the finding may hide.

    >>> finding = Finding("A rating", {"rated_voltage": Quantity(16, "V", 2)}, ("10 V, one up",))
    >>> print(finding)
    A rating: rated voltage 16 V
    >>> finding.rated_voltage, finding.rated_voltage / 2
    (16 V, 8.0)
    """

    title: str
    values: Mapping[str, object]
    working: tuple[str, ...] = ()
    sources: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    verdict: str | None = None
    reason: str | None = None
    notes: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        hidden = [name for name in self.values if name in self.__dict__ or hasattr(Finding, name)]
        if hidden:
            raise TypeError(f"{self.title}: a value called {hidden[0]} hides what a finding has")
        texts = {name: in_words(one) for name, one in self.values.items() if isinstance(one, str)}
        written = {
            "values": {**self.values, **texts},
            "working": tuple(map(in_words, self.working)),
            "notes": tuple(map(in_words, self.notes)),
            "reason": self.reason and in_words(self.reason),
        }
        self.__dict__.update(written)  # once, for every face

    def __getattr__(self, name: str) -> Any:
        # Only called for names that are not fields; "values" itself is missing while unpickling.
        values = self.__dict__.get("values", {})
        if name not in values:
            raise AttributeError(f"{name} is not in this finding; it has {', '.join(values)}")
        return values[name]

    def __str__(self) -> str:
        parts = [f"{spoken(name)} {in_words(value)}" for name, value in self.values.items()]
        if self.verdict:
            parts.insert(0, f"{self.verdict} ({self.reason})" if self.reason else self.verdict)
        return f"{self.title}: {'; '.join(parts)}"

    def to_dict(self) -> dict:
        """The finding as JSON-able dicts, lists, texts and numbers; quantities in SI."""
        return {
            "title": self.title,
            "values": {name: _plain(value) for name, value in self.values.items()},
            "verdict": self.verdict,
            "reason": self.reason,
            "working": list(self.working),
            "notes": list(self.notes),
            "sources": [
                {"key": key, "title": source(key).title, "how": source(key).how}
                for key in self.sources
            ],
            "cautions": list(self.cautions),
        }

    def _repr_html_(self) -> str:
        return html.soft(html.text(self.title)) + self.under_its_title()

    def under_its_title(self) -> str:
        """As HTML for a place that has the title: answer, values, notes, folded the working."""
        rows = [(spoken(name), in_words(value)) for name, value in self.values.items()]
        known, more = self.notes[:SHOWN_NOTES], self.notes[SHOWN_NOTES:]
        pieces = [
            html.answer(self.verdict, self.reason) if self.verdict or self.reason else "",
            html.named(rows) if rows else "",
            html.listed(known) if known else "",
            caution(*self.cautions).short() if self.cautions else "",
            html.fold("More to know", html.listed(more)) if more else "",
            html.fold("Working", html.listed(self.working, "ol")) if self.working else "",
            html.fold("Sources", html.listed(map(source, self.sources))) if self.sources else "",
        ]
        return "".join(pieces)


def spoken(name: str) -> str:
    """A name as a person would say it: `rated_voltage` is "rated voltage"."""
    return name.replace("_", " ")


def in_words(value: object) -> str:
    """A value as a person reads it: yes or no, and figures without Python's e+04.

    >>> in_words(True), in_words("5e+04 K/W"), in_words(2.5e-05), in_words("1.43e-07 m²/s")
    ('yes', '50000 K/W', '0.000025', '1.43 × 10⁻⁷ m²/s')
    """
    if isinstance(value, bool):
        return "yes" if value else "no"
    return _WITH_E.sub(_written_out, str(value))


def _written_out(found: re.Match[str]) -> str:
    power = int(found[2])
    if -6 < power < 7:
        return format(Decimal(found[0]), "f")
    return f"{found[1]} × 10{str(power).translate(_RAISED)}"


def _plain(value: object) -> object:
    if isinstance(value, Quantity):
        return {"value": value.value, "unit": value.unit}
    return value
