"""How much room the part that is gone had in its rating: the choice of its maker, not our rule."""

from __future__ import annotations

from collections.abc import Sequence

from repairlib.core.quantity import brief
from repairlib.missing_parts.tantalum_bar import Bar
from repairlib.missing_parts.tantalum_cases import Case
from repairlib.missing_parts.tantalum_fit import Fit, Smaller, holding, named
from repairlib.missing_parts.tantalum_value import Bound, together, values_in


def with_less_room(
    fit: Fit | None,
    smaller: Smaller,
    rule: float,
    twin_rated: float | None,
    on_pads: Sequence[Case],
    bar: Bar,
) -> list[str]:
    """What it means that the part that stood there was rated below the rule; ratings in V."""
    if fit is None:
        return []
    what, where = brief(fit.farad, "F"), named(on_pads)
    newer = " of a newer or low-ESR series" if smaller.newer else ""
    rated = f"{brief(smaller.rated, 'V')} at most" if not twin_rated else brief(twin_rated, "V")
    said = [
        f"what stood there was {what}{newer} rated {rated}, for an ordinary {where} holds less "
        f"than that at {brief(rule, 'V')}: its maker took less room than the rule here",
        "take another kind with that value, as named below, or a larger case where there is room; "
        f"where it is polar, its bar to the {bar.pad}",
    ]
    return said if bar.proven else [*said, bar.next]


def no_twin(rated: float | None, volts: float) -> list[str]:
    """What is open where a twin could not stand on the rail at all."""
    if not rated or rated >= volts * (1 - 1e-9):
        return []
    return [
        f"the twin is rated {brief(rated, 'V')}, below the {brief(volts, 'V')} of the rail: it is "
        "no twin, or its print or the rail was misread; read both again"
    ]


def twin_in_words(rated: float | None, least: float, volts: float) -> list[str]:
    """What is to be said of a twin that is rated below the rule.

    `rated` is the rating on the twin, `least` what the rule asks for, `volts` the rail; all in V.

    >>> print(twin_in_words(35, 48, 24)[0].partition(",")[0])
    The twin's 35 V are 1.46 times the rail
    """
    if not rated or rated >= least or rated < volts * (1 - 1e-9):
        return []
    return [
        f"The twin's {brief(rated, 'V')} are {rated / volts:.3g} times the rail, less than the "
        f"{brief(least, 'V')} that the rule asks for: it was chosen with less room. That tells "
        "what stood there, and is no reason to do so again."
    ]


def more_than_fits(bounds: Sequence[Bound], fit: Fit | None, twin: float | None) -> list[str]:
    """That more may have stood there than what goes onto the pads at the rule's rating."""
    left = together(bounds)
    if twin or not left or fit is None or left[1] == float("inf"):
        return []
    most = max((one for one in values_in(*left)), default=0.0)
    if not fit.cases or holding(fit.cases, most, fit.rated):
        return []
    return [
        f"Up to {brief(most, 'F')} may have stood there, rated below {brief(fit.rated, 'V')}: more "
        "than these pads hold at that rating. Where a twin has it, or the rail ripples without it, "
        "another kind takes its place."
    ]
