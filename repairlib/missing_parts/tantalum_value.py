"""How much capacitance stood in the place of a chip tantalum: bounds, each with its reason."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from repairlib.core.quantity import brief, brief_range
from repairlib.core.series import is_made, values_between
from repairlib.missing_parts.tantalum_cases import Case, largest_in

TYPED = "as typed"  # in place of a source
TOLERANCE = 0.2  # of a tantalum chip, and of the reading of a twin
# Largest to smallest of a case at one rating: 5 in a maker's list, twice that here.
IN_ONE_CASE = 10

REGULATOR_OUT, REGULATOR_IN = "regulator output", "regulator input"
CONVERTER_OUT, CONVERTER_IN = "converter output", "converter input"
ENTRY, AT_CHIPS, BRANCH = "supply entry", "rail at chips", "branch of a rail"
SIGNAL, NOT_KNOWN = "signal or timing", "not known"


class Bound(NamedTuple):
    """Least and most capacitance [F] by one witness, why, and its source."""

    least: float
    most: float
    why: str
    source: str


class Place(NamedTuple):
    """What a place on a rail usually has [F], why, and whether what feeds it limits no current."""

    least: float
    most: float
    why: str
    stiff: bool
    source: str


PLACES = {
    REGULATOR_OUT: Place(
        1e-6,
        100e-6,
        "linear regulators ask for 1 µF to 22 µF at their output at least, and bear more",
        False,
        "LP2950 data sheet",
    ),
    REGULATOR_IN: Place(
        1e-6,
        47e-6,
        "a regulator's input usually gets 1 µF to 47 µF; a maker's advice is 10 µF",
        True,
        "LM1117 data sheet",
    ),
    CONVERTER_OUT: Place(
        22e-6, 470e-6, "the output of a switching converter usually has 22 µF to 470 µF", False,
        "common practice",
    ),
    CONVERTER_IN: Place(
        10e-6, 220e-6, "the input of a switching converter usually has 10 µF to 220 µF", True,
        "common practice",
    ),
    ENTRY: Place(
        10e-6, 47e-6, "where the supply enters a board, a maker's manual asks for 10 µF to 47 µF",
        True,
        "Intel 386 hardware manual",
    ),
    AT_CHIPS: Place(
        4.7e-6, 47e-6, "far from the supply, a maker advises a store of 4.7 µF to 47 µF", False,
        "Microchip tank capacitors",
    ),
    BRANCH: Place(
        1e-6, 10e-6, "where a rail branches, 1 µF is advised; 10 µF is usual too", False,
        "Intel 386 hardware manual",
    ),
    SIGNAL: Place(1e-7, 1e-3, "in a signal or timing place the circuit sets the value", False,
                  "common practice"),
    NOT_KNOWN: Place(1e-7, 1e-3, "the place on the rail is not known", True, "common practice"),
}  # fmt: skip


def bounds_of(
    place: str,
    case: Case | None,
    rated: float,
    least: float | None,
    twin: float | None,
    rail: float | None = None,
) -> tuple[Bound, ...]:
    """What each witness says of the value: the twin, the regulator, the place, the case.

    `rated` in V is the rating by the rule, `rail` the voltage [V] of the rail: the board's maker
    may have chosen any rating from there on, so that the case bounds the value over all of
    them. `least` [F] is what the regulator's data sheet asks for, `twin` [F] what a twin
    has. A twin makes the usual values of the place and of the case needless.
    """
    found = []
    if least:
        why = "the regulator asks for it; a tantalum may have 20 % less than its mark, so take more"
        found.append(Bound(least, float("inf"), why, TYPED))
    if twin:
        why = f"the twin has {brief(twin, 'F')}, ±20 %"
        return (
            Bound(twin / (1 + TOLERANCE), twin / (1 - TOLERANCE), why, TYPED),
            *found,
        )
    usual = PLACES[place]
    if place not in (SIGNAL, NOT_KNOWN):
        found.append(Bound(usual.least, usual.most, usual.why, usual.source))
    if case and (held := _held(case, rail or rated, rated)):
        fewest, most = min(held) / IN_ONE_CASE, max(held)
        why = (
            f"with a rating of {brief(rail or rated, 'V')} or more a {case.name} usually holds "
            f"{brief(fewest, 'F')} to {brief(most, 'F')}: less would have been put into a smaller "
            "case"
        )
        found.append(Bound(fewest, most, why, _source_of(case, rail or rated)))
    return tuple(found)


def _held(case: Case, *ratings: float) -> list[float]:
    """The largest capacitances [F] of a case at some ratings [V], where they are listed."""
    return [most.farad for one in ratings if (most := largest_in(case.eia, one))]


def _source_of(case: Case, rated: float) -> str:
    most = largest_in(case.eia, rated)
    return most.source if most else TYPED


def together(bounds: Iterable[Bound]) -> tuple[float, float] | None:
    """The range [F] that all bounds leave; None where they contradict each other, or are none.

    >>> together([Bound(1e-6, 1e-4, "", ""), Bound(1e-5, 1e-3, "", "")])
    (1e-05, 0.0001)
    """
    said = list(bounds)
    if not said:
        return None
    least, most = max(one.least for one in said), min(one.most for one in said)
    return None if least > most * (1 + 1e-9) else (least, most)


def values_in(least: float, most: float) -> list[float]:
    """The values of E6 in a range [F], as tantalum chips are made."""
    return values_between(least, min(most, 1.0), "E6")


def likely(values: Sequence[float]) -> Sequence[float]:
    """Of some values those of E3, which are in stock; all of them where none is.

    >>> likely([6.8, 10.0, 15.0, 22.0]), likely([33.0])
    ([10.0, 22.0], [33.0])
    """
    return [one for one in values if is_made(one, "E3")] or values


def middle_of(values: Sequence[float]) -> float:
    """The middle one of the likely ones of rising values.

    Of two middle ones it is the larger: on a rail more is milder than less.

    >>> middle_of([4.7, 6.8, 10.0, 15.0, 22.0, 33.0, 47.0])
    22.0
    """
    in_stock = likely(values)
    return in_stock[len(in_stock) // 2]


def in_words(bound: Bound) -> str:
    """A bound as a sentence of the working.

    >>> print(in_words(Bound(1e-6, float("inf"), "the regulator asks for it", "")))
    1 µF or more: the regulator asks for it
    """
    if bound.most == float("inf"):
        return f"{brief(bound.least, 'F')} or more: {bound.why}"
    return f"{brief_range(bound.least, bound.most, 'F')}: {bound.why}"
