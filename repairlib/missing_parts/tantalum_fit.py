"""A value at a rating in the cases that stand on the pads: what is fitted in the end."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from repairlib.core.quantity import brief
from repairlib.health import RATINGS
from repairlib.missing_parts.tantalum_cases import Case, largest_in
from repairlib.missing_parts.tantalum_value import (
    TOLERANCE,
    Bound,
    likely,
    middle_of,
    together,
    values_in,
)

NEWER = 2.0  # newer and low-ESR series hold up to so many times as much; from memory


class Fit(NamedTuple):
    """A value [F] at a rating [V], and the cases on the pads that hold it, maybe none."""

    farad: float
    rated: float
    cases: tuple[Case, ...]

    @property
    def ratings(self) -> str:
        """Value and rating in words."""
        return f"{brief(self.farad, 'F')} {brief(self.rated, 'V')}"

    def __str__(self) -> str:
        return f"{self.ratings} in {named(self.cases)}"


def named(those: Iterable[Case]) -> str:
    """Several cases in words."""
    return " or ".join(one.name for one in those)


def tallest_on(on_pads: Iterable[Case], rated: float) -> Case | None:
    """The case of those on the pads that holds most at this rating [V]; None if none is listed."""
    listed = [(most.farad, one) for one in on_pads if (most := largest_in(one.eia, rated))]
    return max(listed, key=lambda pair: pair[0])[1] if listed else None


def rated_for(least: float, twin_rated: float | None) -> float:
    """The rating [V] to take, one that is made: by the rule, and not below that of the twin.

    >>> rated_for(10.0, None), rated_for(10.0, 15.0), rated_for(25.0, 16.0)
    (10.0, 16.0, 25.0)
    """
    wanted = max(least, twin_rated or 0.0)
    return next((one for one in RATINGS if one >= wanted * (1 - 1e-9)), wanted)


def fit_of(
    bounds: Sequence[Bound],
    on_pads: Sequence[Case],
    rated: float,
    twin: float | None,
    least: float | None,
) -> Fit | None:
    """The value that goes in, with the cases that hold it; None where the bounds leave none.

    It is the middle one of those that may have stood there, or the largest that the pads hold at
    the rating `rated` [V], which may be higher than that of the part that is gone.
    """
    left = together(bounds)
    wanted = values_in(*left) if left else []
    if not wanted:
        return None
    held = [one for one in wanted if holding(on_pads, one, rated)] or wanted
    sure = (least or 0.0) / (1 - TOLERANCE)
    held = [one for one in held if one >= sure] or held
    if twin:
        farad = min(held, key=lambda one: abs(one / twin - 1))
    elif least:
        farad = likely(held)[0]
    else:
        middle = middle_of(wanted)
        farad = middle if middle in held else likely(held)[-1]
    return Fit(farad, rated, holding(on_pads, farad, rated))


def holding(on_pads: Iterable[Case], farad: float, rated: float) -> tuple[Case, ...]:
    """Of the cases those that are made with that value at that rating."""
    return tuple(
        one
        for one in on_pads
        if (most := largest_in(one.eia, rated)) and farad <= most.farad * (1 + 1e-9)
    )


class Smaller(NamedTuple):
    """A rating [V] below the rule at which the pads hold a value; `newer`: not an ordinary part."""

    rated: float
    newer: bool


def below_the_rule(
    on_pads: Iterable[Case],
    farad: float,
    rail: float,
    rule: float,
    twin_rated: float | None = None,
) -> Smaller | None:
    """The highest rating from the rail [V] up to the rule [V] at which the cases hold a value.

    None where no rating does, also not one of a newer series, which holds up to twice as much. The
    series is newer too where the listed ones do not hold the value at the rating of a twin [V].

    >>> from repairlib.missing_parts.tantalum_cases import cases
    >>> below_the_rule([cases()["3528-21"]], 2.2e-6, 24, 50)
    Smaller(rated=35.0, newer=False)
    """
    those = tuple(on_pads)
    between = [one for one in RATINGS if rail * (1 - 1e-9) <= one < rule]
    for newer in (False, True):
        asked = farad / NEWER if newer else farad
        kept = [one for one in between if holding(those, asked, one)]
        if kept:
            beyond = twin_rated is not None and not holding(those, farad, twin_rated)
            return Smaller(max(kept), newer or beyond)
    return None
