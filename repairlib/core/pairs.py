"""Values that are not made: the nearest one that is, and two parts that make it together."""

from __future__ import annotations

from typing import Annotated, NamedTuple

from repairlib.core.calculator import Choice, Found, Given, Text, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity, read_quantity
from repairlib.core.series import E_SERIES, nearest, next_down, next_up, series_of, values_between

SOURCE = "encyclopaedia, E series"
LEAST_SHARE = 1e-3  # a part that adds less than this is not worth its place
HOW = ("in series", "in parallel")


class Pair(NamedTuple):
    """Two parts, the larger first, `how` they are joined, what they make, and how far off it is.

    `error` is a fraction: 0.01 is 1 % above the wanted value.
    """

    first: float
    second: float
    how: str
    value: float
    error: float


def best_pairs(
    value: float, series: str = "E24", count: int = 5, adds_in: str = "in series"
) -> list[Pair]:
    """The pairs of made values that come nearest to `value`, best first.

    `adds_in` is "in series" for resistors and inductors, "in parallel" for capacitors: how two
    parts are joined whose values add. Among equally good pairs the one of more equal parts comes
    first. Raises RepairlibError for a value or series that does not exist.

    >>> [(pair.first, pair.second, pair.how) for pair in best_pairs(50e3, "E12", 2)]
    [(100000.0, 100000.0, 'in parallel'), (470000.0, 56000.0, 'in parallel')]
    """
    if adds_in not in HOW:
        raise RepairlibError(adds_in, "not a way to join two parts", ", ".join(HOW))
    other = HOW[1 - HOW.index(adds_in)]
    next_down(value, series)  # refuses what is no value or no series
    pairs: dict[tuple, Pair] = {}
    for first in values_between(value / 10, value * (1 - LEAST_SHARE), series):
        for second in _around(value - first, series):
            _keep(pairs, first, second, adds_in, first + second, value)
    for first in values_between(value * (1 + LEAST_SHARE), 10 * value, series):
        for second in _around(1 / (1 / value - 1 / first), series):
            made = 1 / (1 / first + 1 / second)
            _keep(pairs, first, second, other, made, value)
    ranked = sorted(pairs.values(), key=lambda one: (abs(one.error), _inequality(one)))
    return ranked[:count]


def _around(value: float, series: str) -> tuple[float, float]:
    return next_down(value, series), next_up(value, series)


def _keep(
    pairs: dict[tuple, Pair], first: float, second: float, how: str, made: float, wanted: float
) -> None:
    low, high = sorted((first, second))
    error = round(made / wanted - 1, 12)
    pairs.setdefault((low, high, how), Pair(high, low, how, float(f"{made:.12g}"), error))


def _inequality(pair: Pair) -> float:
    return pair.first / pair.second


@calculator(
    topic="values",
    title="Nearest made value",
    sources=(SOURCE,),
)
def nearest_value(
    value: Annotated[str, Text("The value that is wanted, with its unit: 50 kΩ, 5 µF, 12 µH.")],
    series: Annotated[str, Choice(tuple(E_SERIES), "The series it shall come from.")] = "E24",
) -> Found:
    """The made value nearest to a wanted one, the next up and down, and whether it is made.

    `value` is a text with any unit; `series` E3 to E192. Nearest is meant as a ratio.

    >>> finding = nearest_value("50 kΩ", "E24")
    >>> finding.nearest, finding.next_down, finding.next_up, finding.made
    (51 kΩ, 47 kΩ, 51 kΩ, False)
    """
    wanted = read_quantity(value)
    if wanted.value <= 0:
        raise RepairlibError(value, "no part has this value", "a value above 0")

    def as_read(number: float) -> Quantity:
        return Quantity(number, wanted.unit)

    best = nearest(wanted.value, series)
    coarsest = series_of(wanted.value)
    values = {
        "nearest": as_read(best),
        "next_down": as_read(next_down(wanted.value, series)),
        "next_up": as_read(next_up(wanted.value, series)),
        "made": abs(best / wanted.value - 1) < 1e-6,
        "coarsest_series": coarsest or "none",
    }
    off = (best / wanted.value - 1) * 100
    working = [f"{as_read(best)} / {wanted} = {best / wanted.value:.4g}: {off:+.2g} %"]
    return found(values, working=working)


def _answer(wanted: float, unit: str, series: str, adds_in: str, notes: list[str]):
    pairs = best_pairs(wanted, series, 5, adds_in)
    best = pairs[0]

    def line(pair: Pair) -> str:
        first, second = Quantity(pair.first, unit), Quantity(pair.second, unit)
        made = Quantity(pair.value, unit, 4)
        return f"{first} and {second} {pair.how}: {made}, {pair.error * 100 + 0.0:+.2g} %"

    values = {
        "first": Quantity(best.first, unit),
        "second": Quantity(best.second, unit),
        "joined": best.how,
        "makes": Quantity(best.value, unit),
        "off": Quantity(best.error * 100, "%", 2),
    }
    return found(values, working=[line(pair) for pair in pairs], notes=notes)


@calculator(
    topic="values",
    title="Two resistors for one",
    sources=(SOURCE,),
)
def resistor_pairs(
    resistance: Annotated[
        float, Given("Ω", "The resistance that is wanted.", at_least=1e-3, at_most=1e12)
    ],
    series: Annotated[str, Choice(tuple(E_SERIES), "The series that lies in the drawer.")] = "E24",
) -> Found:
    """Two made resistors, in series or in parallel, that come nearest to a resistance in ohm.

    Five pairs, best first. Raises RepairlibError outside 1 mΩ to 1 TΩ.

    >>> finding = resistor_pairs("50 kΩ", "E12")
    >>> finding.first, finding.second, finding.joined
    (100 kΩ, 100 kΩ, 'in parallel')
    """
    notes = [
        "In series the larger resistor takes the larger share of the power, in parallel the "
        "smaller one. Work out both.",
        "Not in place of a fusible or flameproof resistor.",
    ]
    return _answer(resistance, "Ω", series, "in series", notes)


@calculator(
    topic="values",
    title="Two capacitors for one",
    sources=(SOURCE,),
    cautions=("stored charge",),
)
def capacitor_pairs(
    capacitance: Annotated[
        float, Given("F", "The capacitance that is wanted.", at_least=1e-13, at_most=1)
    ],
    series: Annotated[str, Choice(tuple(E_SERIES), "The series that lies in the drawer.")] = "E12",
) -> Found:
    """Two made capacitors, in parallel or in series, that come nearest to one in farad.

    Five pairs, best first. Raises RepairlibError outside 0.1 pF to 1 F.

    >>> finding = capacitor_pairs("50 µF", "E6")
    >>> finding.first, finding.second, finding.joined
    (100 µF, 100 µF, 'in series')
    """
    notes = [
        "In parallel each part gets the whole voltage.",
        "In series the voltage divides unevenly; the parts need resistors that share it.",
        "Polar parts in series: plus to minus. Not in place of a part of a safety class (X or Y).",
    ]
    return _answer(capacitance, "F", series, "in parallel", notes)
