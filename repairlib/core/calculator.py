"""The decorator that makes a plain function a calculator with four faces.

The function's own signature says every parameter once: its unit, range and sentence as a note on
the annotation, its default behind the equals sign. That one definition, with title, sources and
cautions, feeds the Python call, the command line, the interactive panel and the reference page.
Where each calculator lives stands in calculators.py.
"""

from __future__ import annotations

import inspect
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property
from math import inf
from typing import get_type_hints

from repairlib.core.errors import RepairlibError, as_printed
from repairlib.core.finding import Finding, spoken
from repairlib.core.quantity import Quantity, engineering, read_quantity
from repairlib.core.safety import HAZARDS
from repairlib.core.sources import SOURCES

# No bench has a volt, second or farad beyond these, and what is worked out of them stays finite:
# less than the one is nothing, more than the other is refused.
SMALLEST, LARGEST = 1e-20, 1e20


@dataclass(frozen=True)
class Given:
    """A number with a unit that a calculator takes, with the range it accepts."""

    unit: str
    sentence: str
    above: float | None = None
    at_least: float | None = None
    at_most: float | None = None

    def read(self, name: str, value: object) -> float:
        """`value` (text or a number in SI units) as a number in SI, within the range."""
        if isinstance(value, Quantity):
            number = self._in_unit(name, value)
        elif isinstance(value, str):
            number = self._in_unit(name, read_quantity(value, self.unit or None))
        elif isinstance(value, (int, float)) and not isinstance(value, bool):
            number = float(value) if abs(value) <= LARGEST else inf
        else:
            raise RepairlibError(value, f"{spoken(name)} is not a number", self.range())
        if abs(number) < SMALLEST:
            number = 0.0
        if not self._within(number):
            raise RepairlibError(value, f"{spoken(name)} {self._beyond(value)}", self.range())
        return number

    def _beyond(self, value: object) -> str:
        """Why a number is refused; one that was typed without its unit may have been meant so."""
        if self.unit and isinstance(value, str) and value.strip()[-1:].isdigit():
            return f"has no unit and was taken in {self.unit}: so it is out of range"
        return "is out of range"

    def _in_unit(self, name: str, quantity: Quantity) -> float:
        if quantity.unit != self.unit:  # or a plain count or ratio was due
            due = f"is not in {self.unit}" if self.unit else "has no unit"
            raise RepairlibError(quantity, f"{spoken(name)} {due}", self.range())
        return quantity.value

    def _within(self, number: float) -> bool:
        return (
            abs(number) <= LARGEST  # which not-a-number is not either
            and (self.above is None or number > self.above)
            and (self.at_least is None or number >= self.at_least)
            and (self.at_most is None or number <= self.at_most)
        )

    def range(self) -> str:
        """The accepted range in words, such as "a number in V above 0 V, at most 1 kV"."""
        limits = [
            f"{word} {engineering(limit, self.unit)}"
            for word, limit in (
                ("above", self.above),
                ("at least", self.at_least),
                ("at most", self.at_most),
            )
            if limit is not None
        ]
        kind = f"a number in {self.unit}" if self.unit else "a plain number"
        return f"{kind} {', '.join(limits)}".rstrip()


@dataclass(frozen=True)
class Choice:
    """One of a few words that a calculator takes.

    `otherwise` reads what is none of them into one, or raises RepairlibError with more to say.
    """

    options: tuple[str, ...] | Callable[[], Iterable[str]]
    sentence: str
    otherwise: Callable[[object], str] | None = None

    def all_options(self) -> tuple[str, ...]:
        return tuple(self.options() if callable(self.options) else self.options)

    def read(self, name: str, value: object) -> str:
        options = self.all_options()
        if isinstance(value, str) and value in options:
            return value
        wanted = as_printed(value).strip().casefold()
        for option in options:
            if option.casefold() == wanted:
                return option
        holding = [one for one in options if wanted in one.casefold().split(", ")]
        if len(holding) == 1:  # "no stripe" of "NP or BP, no stripe"
            return holding[0]
        if self.otherwise:
            return self.otherwise(value)
        raise RepairlibError(value, f"not a known {spoken(name)}", self.range())

    def range(self) -> str:
        """The options, parted by what none of them holds."""
        options = self.all_options()
        return ("; " if any("," in one for one in options) else ", ").join(options)


@dataclass(frozen=True)
class Text:
    """Free text that a calculator takes, such as a marking."""

    sentence: str

    def read(self, name: str, value: object) -> str:
        if not isinstance(value, str):
            raise RepairlibError(value, f"{spoken(name)} is not a text", self.range())
        return value

    def range(self) -> str:
        return "text"


Parameter = Given | Choice | Text


@dataclass(frozen=True)
class Found:
    """What the function under a calculator hands back, before title and sources are added."""

    values: Mapping[str, object]
    working: tuple[str, ...]
    verdict: str | None
    reason: str | None
    notes: tuple[str, ...]
    sources: tuple[str, ...]
    cautions: tuple[str, ...]


def found(
    values: Mapping[str, object],
    *,
    working: Iterable[str] = (),
    verdict: str | None = None,
    reason: str | None = None,
    notes: Iterable[str] = (),
    sources: Iterable[str] = (),
    cautions: Iterable[str] = (),
) -> Found:
    """Pack up an answer. `sources` and `cautions` add to those of the calculator."""
    return Found(
        values, tuple(working), verdict, reason, tuple(notes), tuple(sources), tuple(cautions)
    )


class Calculator:
    """A function with its definition. Call it with SI numbers or with text as typed."""

    def __init__(
        self,
        function: Callable[..., Found],
        title: str,
        topic: str,
        sources: tuple[str, ...],
        cautions: tuple[str, ...],
    ):
        self.name = function.__name__
        self.title = title
        self.topic = topic
        self.sources = sources
        self.cautions = cautions
        self.__doc__ = function.__doc__
        self.__name__ = function.__name__
        self.__module__ = function.__module__
        self.__wrapped__ = function
        self.__signature__ = _names_and_defaults(function)
        _check_keys(self)

    @cached_property
    def parameters(self) -> dict[str, Parameter]:
        """What it takes, in order. Annotations are read when first needed: start-up stays light."""
        told = get_type_hints(self.__wrapped__, include_extras=True)
        return {
            name: _note(self.name, name, told.get(name)) for name in self.__signature__.parameters
        }

    @cached_property
    def defaults(self) -> dict[str, object]:
        """What is taken for the parameters that may be left out."""
        return {
            name: one.default
            for name, one in self.__signature__.parameters.items()
            if one.default is not one.empty
        }

    def __call__(self, /, *args: object, **kwargs: object) -> Finding:
        if len(args) > len(self.parameters):
            raise RepairlibError(args, "too many values", self.usage())
        given = dict(zip(self.parameters, args, strict=False))
        for name, value in kwargs.items():
            if name not in self.parameters:
                raise RepairlibError(name, f"{self.name} has no such value", self.usage())
            if name in given:
                raise RepairlibError(name, "given twice", self.usage())
            given[name] = value
        taken = dict(self.defaults)
        for name, parameter in self.parameters.items():
            if name in given:
                taken[name] = parameter.read(name, given[name])
            elif name not in taken:
                raise RepairlibError(
                    self.name, f"{spoken(name)} is missing", f"{name}={parameter.range()}"
                )
        answer = self.__wrapped__(**taken)
        return Finding(
            title=self.title,
            values=answer.values,
            working=answer.working,
            sources=_joined(self.sources, answer.sources),
            cautions=_joined(self.cautions, answer.cautions),
            verdict=answer.verdict,
            reason=answer.reason,
            notes=answer.notes,
        )

    def usage(self) -> str:
        """How the command line takes it: `check_polarity family=... mark=...`."""
        words = [
            f"[{name}=...]" if name in self.defaults else f"{name}=..."
            for name in self.__signature__.parameters
        ]
        return " ".join([self.name, *words])

    def page(self) -> str:
        """The reference page as plain text: title, usage, parameters, sources, cautions."""
        lines = [self.title, f"  {self.usage()}", ""]
        for name, parameter in self.parameters.items():
            lines.append(f"  {name}: {parameter.sentence} {parameter.range()}.")
        lines += ["", *(f"  source: {SOURCES[key]}" for key in self.sources)]
        lines += [f"  caution: {HAZARDS[key].title}" for key in self.cautions]
        return "\n".join(lines)

    def __repr__(self) -> str:
        return f"<calculator {self.usage()}>"


def calculator(
    *, topic: str, title: str, sources: Iterable[str], cautions: Iterable[str] = ()
) -> Callable[[Callable[..., Found]], Calculator]:
    """Make the function under it a Calculator; each parameter carries a Given, Choice or Text.

    >>> from typing import Annotated
    >>> @calculator(topic="demo", title="Twice", sources=("common practice",))
    ... def twice(voltage: Annotated[float, Given("V", "Any voltage.", above=0)] = 5.0) -> Found:
    ...     return found({"voltage": Quantity(2 * voltage, "V")}, working=[f"2 × {voltage} V"])
    >>> print(twice("6.3 V"))
    Twice: voltage 12.6 V
    >>> inspect.signature(twice)
    <Signature (voltage=5.0)>
    """

    def make(function: Callable[..., Found]) -> Calculator:
        return Calculator(function, title, topic, tuple(sources), tuple(cautions))

    return make


def _names_and_defaults(function: Callable[..., Found]) -> inspect.Signature:
    """What help and the editor show; page() says units and ranges."""
    signature = inspect.signature(function)
    bare = [one.replace(annotation=one.empty) for one in signature.parameters.values()]
    return signature.replace(parameters=bare, return_annotation=signature.empty)


def _note(calculator_name: str, name: str, annotation: object) -> Parameter:
    """The Given, Choice or Text that an annotation carries; without one it is our mistake."""
    notes: tuple[object, ...] = getattr(annotation, "__metadata__", ())
    if len(notes) != 1 or not isinstance(notes[0], Given | Choice | Text):
        raise TypeError(f"{calculator_name}: {name} is not annotated with a Given, Choice or Text")
    return notes[0]


def _check_keys(made: Calculator) -> None:
    """A calculator defined wrongly is a mistake of ours and stops at import."""
    unknown = [key for key in made.sources if key not in SOURCES]
    unknown += [key for key in made.cautions if key not in HAZARDS]
    if unknown or not made.sources:
        raise TypeError(f"{made.name}: sources or cautions not known or missing: {unknown}")


def _joined(first: tuple[str, ...], second: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(first + second))
