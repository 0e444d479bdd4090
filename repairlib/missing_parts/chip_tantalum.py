"""A chip tantalum that is gone from a rail: value, rating, case, and which way round.

Each answer is worked out by itself in the files beside this one and put together here. The way
round comes from the board and a meter; where they say nothing the answer is "cannot tell".
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Annotated, NamedTuple

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity, brief, brief_range
from repairlib.core.verdicts import CANNOT_TELL, CONDITIONS, NEVER
from repairlib.core.wording import sentence
from repairlib.health import MNO2, tantalum_rating
from repairlib.missing_parts.tantalum_bar import (
    GROUNDED,
    MARKED,
    NO_MARK,
    NOT_MEASURED,
    NOT_SEEN,
    Bar,
    bar_of,
)
from repairlib.missing_parts.tantalum_cases import (
    Case,
    Pads,
    case_named,
    cases,
    cases_on,
    largest_in,
    nearest_misfit,
)
from repairlib.missing_parts.tantalum_stand_in import StandIn, in_window, stability, stand_ins
from repairlib.missing_parts.tantalum_value import (
    NOT_KNOWN,
    PLACES,
    REGULATOR_OUT,
    SIGNAL,
    TOLERANCE,
    Bound,
    bounds_of,
    in_words,
    likely,
    middle_of,
    together,
    values_in,
)
from repairlib.polarity import board_marks

BY_PADS = "by the pads"
IN_SERIES = 0.65  # Ω that a maker counts with, beside the ESR, for the surge a tantalum bears
RINGS = (
    "Where a live plug or a long lead feeds the place, a ceramic with nothing in series can ring "
    "to twice the voltage."
)
REVERSE_PART, REVERSE_VOLTS = 0.1, 1.0  # of the rating at 25 °C, and at most; AVX

_PAD = {"at_least": 1e-4, "at_most": 0.02}
_OHM = {"at_least": 0, "at_most": 1e3}
_FARAD = {"at_least": 1e-8, "at_most": 0.01}


class Fit(NamedTuple):
    """A value [F] at a rating [V], the cases that it stands in, and what none of them holds."""

    farad: float
    rated: float
    cases: tuple[Case, ...]


@calculator(
    topic="missing parts",
    title="Missing chip tantalum",
    sources=("KEMET derating 2015", "AVX tantalum summary", "common practice"),
    cautions=("heat and fire", "flying leads and eyes", "stored charge"),
)
def missing_tantalum(
    rail: Annotated[
        float,
        Given("V", "Highest voltage of the rail; below 0 on a negative one.", None, -500, 500),
    ],
    pad_length: Annotated[float | None, Given("m", "One pad, along the part.", **_PAD)] = None,
    gap: Annotated[float | None, Given("m", "Between the two pads.", **_PAD)] = None,
    pad_width: Annotated[float | None, Given("m", "One pad, across the part.", **_PAD)] = None,
    case: Annotated[
        str,
        Choice(
            lambda: (BY_PADS, *cases()), "Where a twin or the print shows the case.", case_named
        ),
    ] = BY_PADS,
    place: Annotated[str, Choice(tuple(PLACES), "Where on the rail it stood.")] = NOT_KNOWN,
    twin: Annotated[
        float | None, Given("F", "What a twin has, as marked or measured by itself.", **_FARAD)
    ] = None,
    twin_rated: Annotated[
        float | None, Given("V", "The rating marked on the twin.", above=0, at_most=500)
    ] = None,
    least: Annotated[
        float | None, Given("F", "What the regulator's data sheet asks for at least.", **_FARAD)
    ] = None,
    esr_low: Annotated[
        float | None, Given("Ω", "Least ESR that the regulator asks for.", **_OHM)
    ] = None,
    esr_high: Annotated[
        float | None, Given("Ω", "Most ESR that the regulator bears.", **_OHM)
    ] = None,
    series: Annotated[
        float | None, Given("Ω", "Between what feeds the rail and the part.", **_OHM)
    ] = None,
    board_mark: Annotated[
        str, Choice(board_marks, "The mark that the board shows at its place.")
    ] = NO_MARK,
    mark_at: Annotated[str, Choice(MARKED, "At which pad that mark is.")] = NOT_SEEN,
    ground_at: Annotated[
        str, Choice(GROUNDED, "The pad joined to ground, by meter, power off.")
    ] = NOT_MEASURED,
    across: Annotated[
        float | None,
        Given("V", "Left against right pad, with power, place empty.", None, -500, 500),
    ] = None,
) -> Found:
    """What may go where a chip tantalum is gone: value, rating, case, and where its bar goes.

    Voltages in V, pads in m, capacitances in F, resistances in Ω. Pads are given all three, or the
    `case`. The verdict is "only with these conditions" when value, rating, case and the way round
    are known; "cannot tell" as long as one is missing, with what to measure; "do not" where no
    tantalum is made for the rail. The way round is never guessed. Raises RepairlibError for a
    rail of 0 V, for pads given in part, and for a window of ESR that is upside down. Source: a
    maker's half of the rating; bodies and parts of two makers; pads, common practice.

    >>> finding = missing_tantalum("5 V", "1.4 mm", "1.2 mm", "2.8 mm", place="regulator output",
    ...     board_mark="plus sign", mark_at="left pad", ground_at="right pad")
    >>> print(finding.verdict, finding.fit, finding.bar, sep="; ")
    only with these conditions; 22 µF 10 V in 3528-21 (B); to the left pad
    >>> missing_tantalum("5 V", case="B", place="regulator output").verdict
    'cannot tell'
    """
    pads = _pads(pad_length, gap, pad_width)
    _check(rail, esr_low, esr_high)
    highest = max(abs(rail), abs(across or 0.0))
    bar = bar_of(rail, board_mark, mark_at, ground_at, across)
    rating = tantalum_rating(MNO2, highest)
    on_pads = _cases(case, pads)
    sources = [*rating.sources, *(one.source for one in on_pads)]
    if rating.verdict:
        return _none_made(rating, highest, twin or 0.0, sources)
    rated = _rated(float(rating.rated_voltage), twin_rated)
    tallest = _tallest(on_pads, rated)
    bounds = bounds_of(place, tallest, rated, least, twin)
    fit = _fit(bounds, on_pads, rated, twin, least)
    values: dict[str, object] = {"bar": f"to the {bar.pad}" if bar.pad else "not known"}
    values |= _values_of(bounds, fit)
    values |= {
        "rated_voltage": Quantity(rated, "V"),
        "at_least": rating.at_least,
        "cases": ", ".join(one.name for one in on_pads) or "not known",
    }
    others = _instead(rail, fit.farad if fit else (twin or 0.0), on_pads)
    values |= {f"or_{one.kind.split()[-1]}": one.short for one in others}
    if esr_low is not None and esr_high is not None:
        values["esr"] = in_window(esr_low, esr_high)
    stiff = PLACES[place].stiff
    missing = _missing(place, bounds, fit, on_pads, pads, bar)
    must = (_burns(rated), *([sentence(bar.next)] if bar.next else ()))
    must += (_surge(highest, rated, series, stiff),)
    if twin_rated and twin_rated < rating.at_least:
        must += (
            f"The twin's {brief(twin_rated, 'V')} are less than the rule asks for: it was chosen "
            "with less room, and is no reason to do so again.",
        )
    verdict = CANNOT_TELL if missing else CONDITIONS
    reason = "; ".join(missing) if missing else _reason(fit, bar, esr_low, esr_high)
    return found(
        values,
        working=[
            *rating.working,
            *([f"the twin is rated {brief(twin_rated, 'V')}"] if twin_rated else ()),
            *map(in_words, bounds),
            *bar.why,
        ],
        verdict=verdict,
        reason=reason,
        notes=[
            *must,
            *(f"Instead, {one}" for one in others),
            *([RINGS] if stiff else ()),
            *(stability(esr_low, esr_high) if place == REGULATOR_OUT or esr_high else ()),
        ],
        sources=[*sources, *(one.source for one in bounds if one.source != "as typed")],
    )


def _check(rail: float, esr_low: float | None, esr_high: float | None) -> None:
    if rail == 0:
        raise RepairlibError("0 V", "a rail has a voltage", "such as 5 V, or -12 V")
    if (esr_low is None) != (esr_high is None):
        wrong = "only one end of the window of ESR is given"
        raise RepairlibError("esr", wrong, "both esr_low and esr_high, or neither")
    if esr_low is not None and esr_high is not None and esr_low >= esr_high:
        read = f"{brief(esr_low, 'Ω')} to {brief(esr_high, 'Ω')}"
        raise RepairlibError(read, "the window of ESR is empty", "the lower figure as esr_low")


def _pads(length: float | None, gap: float | None, width: float | None) -> Pads | None:
    """The pads as measured, or none of them."""
    if length is not None and gap is not None and width is not None:
        return Pads(length, gap, width)
    if (length, gap, width) == (None, None, None):
        return None
    named = {"pad_length": length, "gap": gap, "pad_width": width}
    lacking = ", ".join(name for name, value in named.items() if value is None)
    raise RepairlibError("pads", f"{lacking} is missing", "all three in mm, or the case instead")


def _cases(case: str, pads: Pads | None) -> tuple[Case, ...]:
    """The cases that may stand there."""
    if case != BY_PADS:
        return (cases()[case],)
    return cases_on(pads) if pads else ()


def _tallest(on_pads: Iterable[Case], rated: float) -> Case | None:
    """The case of those on the pads that holds most at this rating."""
    listed = [(most.farad, one) for one in on_pads if (most := largest_in(one.eia, rated))]
    return max(listed, key=lambda pair: pair[0])[1] if listed else None


def _rated(least: float, twin_rated: float | None) -> float:
    """The rating to take: by the rule, and not below that of the twin."""
    return max(least, twin_rated or 0.0)


def _fit(
    bounds: Sequence[Bound],
    on_pads: Sequence[Case],
    rated: float,
    twin: float | None,
    least: float | None,
) -> Fit | None:
    """The value that goes in, with the cases that hold it; None where the bounds leave none."""
    left = together(bounds)
    wanted = values_in(*left) if left else []
    if not wanted:
        return None
    held = [one for one in wanted if _holding(on_pads, one, rated)] or wanted
    sure = (least or 0.0) / (1 - TOLERANCE)
    held = [one for one in held if one >= sure] or held
    if twin:
        farad = min(held, key=lambda one: abs(one / twin - 1))
    else:
        farad = likely(held)[0] if least else middle_of(held)
    return Fit(farad, rated, _holding(on_pads, farad, rated))


def _holding(on_pads: Iterable[Case], farad: float, rated: float) -> tuple[Case, ...]:
    """Of the cases those that are made with that value at that rating."""
    return tuple(
        one
        for one in on_pads
        if (most := largest_in(one.eia, rated)) and farad <= most.farad * (1 + 1e-9)
    )


def _values_of(bounds: Sequence[Bound], fit: Fit | None) -> dict[str, object]:
    """Range and choice as values of the finding."""
    left = together(bounds)
    if left is None:
        return {}
    low, high = (float(f"{one:.3g}") for one in left)
    values: dict[str, object] = {"capacitance": brief_range(low, high, "F")}
    if high == float("inf"):
        values["capacitance"] = f"{brief(low, 'F')} or more"
    if fit and fit.cases:
        names = " or ".join(one.name for one in fit.cases)
        values["fit"] = f"{brief(fit.farad, 'F')} {brief(fit.rated, 'V')} in {names}"
    return values


def _missing(
    place: str,
    bounds: Sequence[Bound],
    fit: Fit | None,
    on_pads: Sequence[Case],
    pads: Pads | None,
    bar: Bar,
) -> list[str]:
    """What is not known yet, most dangerous first, each with what to do."""
    said = []
    if not bar.pad:
        said.append(f"{' '.join(bar.why)} {sentence(bar.next)}")
    if place == SIGNAL and not any("twin" in one.why for one in bounds):
        said.append(f"{PLACES[SIGNAL].why}: measure a twin or read the diagram")
    elif not bounds:
        said.append("nothing tells the value: say where on the rail it stood, or measure a twin")
    elif together(bounds) is None:
        said.append("the bounds contradict each other: " + "; ".join(map(in_words, bounds)))
    elif fit is None:
        said.append(
            "no value that is made lies within the bounds: " + "; ".join(map(in_words, bounds))
        )
    if not on_pads:
        why = nearest_misfit(pads) if pads else "measure both pads and the gap between them"
        said.append(f"no case of tantalum chips stands well on these pads: {why}" if pads else why)
    elif fit and not fit.cases:
        names = " or ".join(one.name for one in on_pads)
        said.append(
            f"{brief(fit.farad, 'F')} {brief(fit.rated, 'V')} is more than a {names} usually "
            "holds, or not listed here: look for a low-ESR or polymer series, and measure the pads "
            "again"
        )
    return said


def _reason(fit: Fit | None, bar: Bar, low: float | None, high: float | None) -> str:
    """The answer in one sentence."""
    if fit is None:
        return bar.next
    names = " or ".join(one.name for one in fit.cases)
    said = [
        f"{brief(fit.farad, 'F')}, rated {brief(fit.rated, 'V')} or more, in case {names}, its bar "
        f"to the {bar.pad}"
    ]
    if low is not None and high is not None:
        said.append(f"its ESR by the data sheet {brief_range(low, high, 'Ω')}")
    if not bar.proven:
        said.append(bar.next)
    return "; ".join(said)


def _surge(volts: float, rated: float, series: float | None, stiff: bool) -> str:
    """What the surge at switching on asks for.

    A maker's rule: at most rated / (0.65 Ω + ESR). With the resistance R of the way it is
    volts / (R + ESR), so ESR (1 - volts / rated) is at least 0.65 Ω × volts / rated - R.
    """
    if not stiff and series is None:
        return (
            "What feeds this place limits its current, so the rating is all that the surge asks "
            "for. A plug that is put in live takes that away."
        )
    share, way = volts / rated, series or 0.0
    needed = max(IN_SERIES * share - way, 0.0) / (1 - share)
    if needed == 0:
        return f"{brief(way, 'Ω')} in series limits the surge enough for a part of any ESR."
    known = f"With {brief(way, 'Ω')} in series" if series is not None else "Straight on the rail"
    return (
        f"{known} the surge at switching on asks for an ESR of "
        f"{brief(float(f'{needed:.3g}'), 'Ω')} or more by the part's data sheet (a maker's rule); "
        "an encyclopaedia asks for 3 Ω in series for each volt. Where nothing limits the current a "
        "low-ESR tantalum shorts and burns: polymer or aluminium is milder there."
    )


def _burns(rated: float) -> str:
    """What a wrong one does, and what is due between the soldering and the power."""
    volts = brief(min(REVERSE_PART * rated, REVERSE_VOLTS), "V")
    return (
        "A chip tantalum that is reversed or rated too low turns into a short circuit and burns; "
        f"in reverse it bears peaks of {volts} at 25 °C, and no steady voltage. Before power: bar "
        "against ground by meter, then the rail against ground for a short; then a supply that "
        "limits its current."
    )


def _instead(rail: float, farad: float, on_pads: Sequence[Case]) -> tuple[StandIn, ...]:
    """Other kinds; none as long as the value is not known."""
    if not farad:
        return ()
    return stand_ins(rail, farad, on_pads[-1].eia if on_pads else "")


def _none_made(rating, volts: float, farad: float, sources: Iterable[str]) -> Found:
    """The finding for a rail that no tantalum with manganese dioxide may work on."""
    others = _instead(volts, farad, ())
    return found(
        {
            "at_least": rating.at_least,
            **{f"or_{one.kind.split()[-1]}": one.short for one in others},
        },
        working=rating.working,
        verdict=NEVER,
        reason=rating.reason,
        notes=[f"Instead, {one}" for one in others],
        sources=sources,
    )
