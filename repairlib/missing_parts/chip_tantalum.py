"""A chip tantalum that is gone from a rail: value, rating, case, and which way round.

Each answer is worked out by itself in the files beside this one and put together here. The way
round comes from the board and a meter; where they say nothing the answer is "cannot tell".
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Annotated

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.finding import Finding
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
    misfit,
    nearest_misfit,
)
from repairlib.missing_parts.tantalum_fit import (
    Fit,
    below_the_rule,
    fit_of,
    named,
    rated_for,
    tallest_on,
)
from repairlib.missing_parts.tantalum_room import (
    more_than_fits,
    no_twin,
    twin_in_words,
    with_less_room,
)
from repairlib.missing_parts.tantalum_stand_in import StandIn, in_window, stability, stand_ins
from repairlib.missing_parts.tantalum_surge import RINGS, burns, surge
from repairlib.missing_parts.tantalum_value import (
    NOT_KNOWN,
    PLACES,
    REGULATOR_OUT,
    SIGNAL,
    TYPED,
    Bound,
    bounds_of,
    in_words,
    together,
)
from repairlib.polarity import board_marks

BY_PADS = "by the pads"

_PAD = {"at_least": 1e-4, "at_most": 0.02}
_OHM = {"at_least": 0, "at_most": 1e3}
_FARAD = {"at_least": 1e-8, "at_most": 0.01}


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
    rating = tantalum_rating(MNO2, highest)
    if rating.verdict:
        return _none_made(rating, highest, twin, twin_rated)
    on_pads, no_case = _cases(case, pads)
    rated = rated_for(float(rating.rated_voltage), twin_rated)
    bounds = bounds_of(place, tallest_on(on_pads, highest), rated, least, twin, highest)
    fit = fit_of(bounds, on_pads, rated, twin, least)
    smaller = None
    if twin and fit and not fit.cases:
        smaller = below_the_rule(on_pads, fit.farad, highest, rated, twin_rated)
    bar = bar_of(rail, board_mark, mark_at, ground_at, across)
    others = _instead(highest, fit.farad if fit else twin, on_pads)
    values: dict[str, object] = {"bar": f"to the {bar.pad}" if bar.pad else "not known"}
    values |= _value_and_fit(bounds, fit)
    if smaller and fit:
        rated_there = twin_rated or smaller.rated
        values["stood_there"] = f"{brief(fit.farad, 'F')}, rated {brief(rated_there, 'V')}"
    values |= {
        "rated_voltage": Quantity(rated, "V"),
        "at_least": rating.at_least,
        "cases": ", ".join(one.name for one in on_pads) or "not known",
        **_in_short(others),
    }
    if esr_low is not None and esr_high is not None:
        values["esr"] = in_window(esr_low, esr_high)
    open_yet = [
        *_of_bar(bar),
        *_of_value(bounds, fit, SIGNAL if place == SIGNAL and not twin else ""),
        *([no_case] if no_case else [] if smaller else _of_case(on_pads, fit)),
        *no_twin(twin_rated, highest),
    ]
    return found(
        values,
        working=[
            *rating.working,
            *_told(rail, across, twin_rated),
            *map(in_words, bounds),
            *bar.why,
        ],
        verdict=CANNOT_TELL if open_yet or fit is None else CONDITIONS,
        reason="; ".join(
            open_yet
            or (
                with_less_room(fit, smaller, rated, twin_rated, on_pads, bar)
                if smaller
                else _answer(fit, bar, esr_low, esr_high)
            )
        ),
        notes=[
            burns(rated),
            *([sentence(bar.next)] if bar.next else ()),
            surge(highest, rated, series, PLACES[place].stiff),
            *twin_in_words(twin_rated, rating.at_least, highest),
            *more_than_fits(bounds, fit, twin),
            *(f"Instead, {one}" for one in others),
            *([RINGS] if PLACES[place].stiff else ()),
            *(stability(esr_low, esr_high) if place == REGULATOR_OUT or esr_high else ()),
        ],
        sources=[
            *rating.sources,
            *(one.source for one in on_pads),
            *(one.source for one in bounds if one.source != TYPED),
        ],
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


def _cases(case: str, pads: Pads | None) -> tuple[tuple[Case, ...], str]:
    """The cases that may stand there; where there is none, why."""
    if case != BY_PADS:
        typed = cases()[case]
        wrong = misfit(typed, pads) if pads else ""
        return (
            ((), f"{typed.name} does not go with these pads: {wrong}") if wrong else ((typed,), "")
        )
    if pads is None:
        return (), "measure both pads and the gap between them"
    fitting = cases_on(pads)
    if fitting:
        return fitting, ""
    return (), f"no case of tantalum chips stands well on these pads: {nearest_misfit(pads)}"


def _told(rail: float, across: float | None, twin_rated: float | None) -> list[str]:
    """What was typed that sets the rating, beside the rail."""
    said = []
    if across is not None and abs(across) > abs(rail):
        said.append(f"{brief(abs(across), 'V')} were read across the place: more than the rail")
    if twin_rated:
        said.append(f"the twin is rated {brief(twin_rated, 'V')}")
    return said


def _value_and_fit(bounds: Sequence[Bound], fit: Fit | None) -> dict[str, object]:
    """Range and choice as values of the finding."""
    left = together(bounds)
    if left is None:
        return {}
    low, high = (float(f"{one:.3g}") for one in left)
    upwards = high == float("inf")
    said = f"{brief(low, 'F')} or more" if upwards else brief_range(low, high, "F")
    return {"capacitance": said, **({"fit": str(fit)} if fit and fit.cases else {})}


def _of_bar(bar: Bar) -> list[str]:
    """What is open about the way round, and what to do."""
    return [] if bar.pad else [f"{' '.join(bar.why)} {sentence(bar.next).rstrip('.')}"]


def _of_value(bounds: Sequence[Bound], fit: Fit | None, signal: str) -> list[str]:
    """What is open about the value, and what to do."""
    if signal:
        return [f"{PLACES[signal].why}: measure a twin or read the diagram"]
    if not bounds:
        return ["nothing tells the value: say where on the rail it stood, or measure a twin"]
    if fit is not None:
        return []
    said = "; ".join(map(in_words, bounds))
    apart = together(bounds) is None
    why = "the bounds contradict each other" if apart else "no value that is made lies within them"
    return [f"{why}: {said}"]


def _of_case(on_pads: Sequence[Case], fit: Fit | None) -> list[str]:
    """What is open about value and case together."""
    if fit is None or fit.cases:
        return []
    return [
        f"{fit.ratings} is more than a {named(on_pads)} usually holds, or not listed here: look "
        "for a low-ESR or polymer series, and measure the pads again"
    ]


def _answer(fit: Fit | None, bar: Bar, low: float | None, high: float | None) -> list[str]:
    """What goes in, in one sentence; `fit` is there when nothing is open."""
    if fit is None:
        return []
    rated = brief(fit.rated, "V")
    said = [
        f"{brief(fit.farad, 'F')}, rated {rated} or more, in case {named(fit.cases)}, its bar to "
        f"the {bar.pad}"
    ]
    if low is not None and high is not None:
        said.append(f"its ESR by the data sheet {brief_range(low, high, 'Ω')}")
    return said if bar.proven else [*said, bar.next]


def _instead(volts: float, farad: float | None, on_pads: Sequence[Case]) -> tuple[StandIn, ...]:
    """Other kinds; none as long as the value is not known."""
    return stand_ins(volts, farad, on_pads[-1].eia if on_pads else "") if farad else ()


def _in_short(others: Iterable[StandIn]) -> dict[str, object]:
    """Other kinds as values of the finding: `or_polymer`, `or_ceramic`."""
    return {f"or_{one.kind.split()[-1]}": one.short for one in others}


def _none_made(
    rating: Finding, volts: float, twin: float | None, twin_rated: float | None
) -> Found:
    """The finding for a rail that no tantalum with manganese dioxide may work on."""
    others = _instead(volts, twin, ())
    return found(
        {"at_least": rating.at_least, **_in_short(others)},
        working=rating.working,
        verdict=NEVER,
        reason=rating.reason,
        notes=[
            *(f"Instead, {one}" for one in others),
            *twin_in_words(twin_rated, float(rating.at_least), volts),
        ],
        sources=rating.sources,
    )
