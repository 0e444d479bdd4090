"""The decorator that makes a plain function a calculator with four faces.

One definition (typed parameters, title, sources, cautions) feeds the Python call, the command
line, the interactive panel and the reference page. Tests walk `all_calculators()`, so that every
calculator is fuzzed, documented and sourced.
"""

from __future__ import annotations

import inspect
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from importlib import import_module

from repairlib.core.errors import RepairlibError
from repairlib.core.finding import Finding, spoken
from repairlib.core.quantity import Quantity, engineering, read_quantity
from repairlib.core.safety import HAZARDS
from repairlib.core.sources import SOURCES

REQUIRED = object()

# The topics whose modules define calculators.
TOPICS = (
    "repairlib.markings.calculators",
    "repairlib.core.pairs",
    "repairlib.polarity.checker",
    "repairlib.recap.calculators",
    "repairlib.recap.substitution",
    "repairlib.recap.makeshifts",
    "repairlib.health.meter",
    "repairlib.health.in_circuit",
    "repairlib.health.esr",
    "repairlib.health.leakage",
    "repairlib.health.end_of_life",
    "repairlib.health.reforming",
    "repairlib.health.verdict",
    "repairlib.health.ripple",
    "repairlib.health.ageing",
    "repairlib.health.derating",
    "repairlib.heat.solder_alloys",
    "repairlib.heat.phase_diagrams",
    "repairlib.heat.invariants",
    "repairlib.heat.mixed_joint",
    "repairlib.heat.iron",
    "repairlib.heat.volume",
    "repairlib.heat.desoldering",
    "repairlib.heat.flux",
    "repairlib.heat.cleaning",
    "repairlib.heat.air_limits",
    "repairlib.heat.reflow_limits",
    "repairlib.heat.reflow",
    "repairlib.esd.limits",
    "repairlib.esd.charge",
    "repairlib.esd.parts",
    "repairlib.esd.strap",
    "repairlib.stored_charge.energy_classes",
    "repairlib.stored_charge.steady_limits",
    "repairlib.stored_charge.discharge",
    "repairlib.stored_charge.unplugging",
    "repairlib.heat.joint_verdict",
    "repairlib.heat.estimates",
    "repairlib.heat.moisture",
    "repairlib.heat.bake",
)


@dataclass(frozen=True)
class Given:
    """A number with a unit that a calculator takes, with the range it accepts."""

    unit: str
    sentence: str
    above: float | None = None
    at_least: float | None = None
    at_most: float | None = None
    default: object = REQUIRED

    def read(self, name: str, value: object) -> float:
        """`value` (text or a number in SI units) as a number in SI, within the range."""
        if isinstance(value, Quantity):
            number = self._in_unit(name, value)
        elif isinstance(value, str):
            number = self._in_unit(name, read_quantity(value, self.unit or None))
        elif isinstance(value, (int, float)) and not isinstance(value, bool):
            number = float(value)
        else:
            raise RepairlibError(value, f"{spoken(name)} is not a number", self.range())
        if not self._within(number):
            raise RepairlibError(value, f"{spoken(name)} is out of range", self.range())
        return number

    def _in_unit(self, name: str, quantity: Quantity) -> float:
        if quantity.unit != self.unit:  # or a plain count or ratio was due
            due = f"is not in {self.unit}" if self.unit else "has no unit"
            raise RepairlibError(quantity, f"{spoken(name)} {due}", self.range())
        return quantity.value

    def _within(self, number: float) -> bool:
        return (
            number - number == 0  # neither infinite nor not-a-number
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
    """One of a few words that a calculator takes."""

    options: tuple[str, ...] | Callable[[], Iterable[str]]
    sentence: str
    default: object = REQUIRED

    def all_options(self) -> tuple[str, ...]:
        return tuple(self.options() if callable(self.options) else self.options)

    def read(self, name: str, value: object) -> str:
        options = self.all_options()
        if value in options:
            return value
        wanted = str(value).strip().casefold()
        for option in options:
            if option.casefold() == wanted:
                return option
        raise RepairlibError(value, f"not a {spoken(name)} known here", self.range())

    def range(self) -> str:
        return ", ".join(self.all_options())


@dataclass(frozen=True)
class Text:
    """Free text that a calculator takes, such as a marking."""

    sentence: str
    default: object = REQUIRED

    def read(self, name: str, value: object) -> str:
        if not isinstance(value, str):
            raise RepairlibError(value, f"{spoken(name)} is not a text", self.range())
        return value

    def range(self) -> str:
        return "text"


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


def found(values, working=(), verdict=None, reason=None, notes=(), sources=(), cautions=()):
    """Pack up an answer. `sources` and `cautions` add to those of the calculator."""
    return Found(
        values, tuple(working), verdict, reason, tuple(notes), tuple(sources), tuple(cautions)
    )


class Calculator:
    """A function with its definition. Call it with SI numbers or with text as typed."""

    def __init__(self, function, title, topic, sources, cautions, parameters):
        self.name = function.__name__
        self.title = title
        self.topic = topic
        self.sources = sources
        self.cautions = cautions
        self.parameters = parameters
        self._function = function
        self.__doc__ = function.__doc__
        self.__name__ = function.__name__
        self.__module__ = function.__module__
        self.__wrapped__ = function
        _check_definition(self)

    def __call__(self, *args, **kwargs) -> Finding:
        if len(args) > len(self.parameters):
            raise RepairlibError(args, "too many values", self.usage())
        given = dict(zip(self.parameters, args, strict=False))
        for name, value in kwargs.items():
            if name not in self.parameters:
                raise RepairlibError(name, f"{self.name} has no such value", self.usage())
            if name in given:
                raise RepairlibError(name, "given twice", self.usage())
            given[name] = value
        taken = {}
        for name, parameter in self.parameters.items():
            if name in given:
                taken[name] = parameter.read(name, given[name])
            elif parameter.default is REQUIRED:
                raise RepairlibError(
                    self.name, f"{spoken(name)} is missing", f"{name}={parameter.range()}"
                )
            else:
                taken[name] = parameter.default
        answer = self._function(**taken)
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
            f"{name}=..." if parameter.default is REQUIRED else f"[{name}=...]"
            for name, parameter in self.parameters.items()
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


def calculator(*, topic, title, sources, cautions=(), **parameters):
    """Make the function under it a Calculator; `parameters` are Given, Choice or Text.

    >>> from repairlib.core.quantity import Quantity
    >>> @calculator(topic="demo", title="Twice", sources=("common practice",),
    ...             voltage=Given("V", "Any voltage.", above=0))
    ... def twice(voltage):
    ...     return found({"voltage": Quantity(2 * voltage, "V")}, [f"2 × {voltage} V"])
    >>> print(twice("6.3 V"))
    Twice: voltage 12.6 V
    """

    def make(function):
        return Calculator(function, title, topic, tuple(sources), tuple(cautions), parameters)

    return make


def all_calculators() -> dict[str, Calculator]:
    """Every calculator by name, in the order of the topics; TypeError when two share a name."""
    calculators = {}
    for module in TOPICS:
        for value in vars(import_module(module)).values():
            if not isinstance(value, Calculator):
                continue
            if calculators.setdefault(value.name, value) is not value:
                raise TypeError(f"two calculators are called {value.name}")
    return calculators


def _check_definition(made: Calculator) -> None:
    """A calculator defined wrongly is a mistake of ours and stops at import."""
    if list(inspect.signature(made.__wrapped__).parameters) != list(made.parameters):
        raise TypeError(f"{made.name}: the definition's parameters differ from the function's")
    unknown = [key for key in made.sources if key not in SOURCES]
    unknown += [key for key in made.cautions if key not in HAZARDS]
    if unknown or not made.sources:
        raise TypeError(f"{made.name}: sources or cautions not known or missing: {unknown}")


def _joined(first: tuple[str, ...], second: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(first + second))
