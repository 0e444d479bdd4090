"""Another kind of capacitor in the old one's place: what is forbidden, and what the rest asks for.

A substitute is a makeshift. No answer here calls one safe: each says what to verify, with what.
Pairs and ceramics under bias are worked out in makeshifts.py.
"""

from __future__ import annotations

from typing import Annotated, NamedTuple

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.limits import hazards_of_capacitor
from repairlib.core.quantity import Quantity, brief
from repairlib.core.verdicts import CANNOT_TELL, CONDITIONS, NEVER
from repairlib.health import working_share
from repairlib.recap.kind_ratings import (
    CERAMIC_2,
    POLYESTER_FILM,
    POLYPROPYLENE_FILM,
    POLYSTYRENE_FILM,
    TANTALUM_POLYMER,
    next_rating,
)
from repairlib.recap.words import ALUMINIUM, BIPOLAR, FILM, MAINS, PAPER, POLYMER, TANTALUM

_ELECTROLYTICS = (ALUMINIUM, BIPOLAR, POLYMER, TANTALUM, TANTALUM_POLYMER)
NEW_FILMS = (FILM, POLYESTER_FILM, POLYPROPYLENE_FILM)
FILMS = (*NEW_FILMS, POLYSTYRENE_FILM)
OLD_KINDS = (*_ELECTROLYTICS, *FILMS, PAPER, MAINS)
NEW_KINDS = (*_ELECTROLYTICS, *NEW_FILMS, CERAMIC_2)

_SAME_CLASS = "A part on the mains takes the same safety class and value, fitted by a qualified "
_SAME_CLASS += "person; nothing else goes in its place."
_REVERSED = "A polar part is reversed at times in a bipolar place. It can burst."
_UNSTABLE = "Its ESR is far lower. A regulator may need ESR to be stable: read the regulator's "
_UNSTABLE += "data sheet, and look at its output with an oscilloscope, with a load that steps."
_LEAKS = "It leaks more: not in timing, in signal coupling, or where a battery must last."
_SURGE = "A shorted solid tantalum burns. It needs resistance in series, about 3 Ω for each volt: "
_SURGE += "never straight across a supply that can give a large current."
_SIZE = "It is usually much larger: measure the room."


class Rule(NamedTuple):
    """What another kind asks for: `verdict`, the `conditions` in sentences, and the `source`."""

    verdict: str
    conditions: tuple[str, ...]
    source: str = "common practice"


_TO_TANTALUM = Rule(CONDITIONS, (_SURGE, "Never at the same rated voltage."), "KEMET derating 2015")
_TO_TANTALUM_POLYMER = Rule(
    CONDITIONS,
    (_UNSTABLE, _LEAKS, "Never at the same rated voltage where it works at its full rating."),
    "encyclopaedia, Electrolytic capacitor",
)
_TO_POLYMER = Rule(CONDITIONS, (_UNSTABLE, _LEAKS), "Nippon Chemi-Con APSA")
_TO_CERAMIC = Rule(
    CONDITIONS,
    (
        "It loses capacitance under voltage, often more than half: read the maker's bias curve and "
        "choose by what is left.",
        _UNSTABLE,
        "It turns vibration into voltage: not in a signal path.",
    ),
    "TI converter data sheet",
)
_TO_FILM = Rule(CONDITIONS, (_SIZE, _UNSTABLE))
_TO_BIPOLAR = Rule(CONDITIONS, ("It is usually larger for its ratings: measure the room.",))
_TO_ALUMINIUM = Rule(
    CONDITIONS,
    (
        "Its ESR is higher: look up the ripple current that the place asks for, and measure how "
        "warm it gets.",
        "It leaks more, and loses capacitance in the cold.",
        "It dries out with the years: write the date on it.",
    ),
)
_RATINGS = "A dc rating tells neither its ac rating, nor its pulse rating, nor its dv/dt: read all "
_RATINGS += "three in both data sheets, none may be below the old part's."
_FILM_FOR_FILM = Rule(
    CONDITIONS,
    (
        "The same dielectric: polypropylene stays polypropylene, polystyrene stays polystyrene or "
        "becomes polypropylene.",
        _RATINGS,
        "Polyester in a deflection, snubber, tuned or timing place overheats or drifts.",
    ),
)
_SAME_FILM = Rule(CONDITIONS, ("The same dielectric, value and tolerance.", _RATINGS))
_BETTER_FILM = Rule(CONDITIONS, ("It loses less and drifts otherwise.", _RATINGS, _SIZE))
_POLYSTYRENE_GONE = Rule(
    CONDITIONS,
    (
        "It drifts with temperature more than polystyrene: adjust a tuned or timed place anew.",
        "The same close tolerance, 1 or 2 % where the old one had it.",
        _RATINGS,
    ),
)
_WORSE_FILM = Rule(
    NEVER,
    (
        "Polyester loses many times more: with pulses or high frequency it heats until it burns.",
        "It drifts with temperature: not in a tuned or timing place.",
    ),
)
_WHICH_FILM = Rule(CANNOT_TELL, ("Which film is it? Find out: the two are not alike.",))
_FILM_FOR_PAPER = Rule(
    CONDITIONS,
    (
        "The same value, and at least the same dc rating.",
        "Only where it sits neither across the mains nor from the mains to the chassis: there it "
        "is a mains part and takes a safety class.",
        "The set holds high voltage: a qualified person fits it.",
    ),
)
_POLAR_FOR_FILM = Rule(NEVER, ("It leaks, drifts and has a plus: a film place has none.",))
_POLAR_FOR_BIPOLAR = Rule(NEVER, (_REVERSED, "Two of them back to back are another question."))
RULES = {
    (ALUMINIUM, TANTALUM): _TO_TANTALUM,
    (ALUMINIUM, TANTALUM_POLYMER): _TO_TANTALUM_POLYMER,
    (ALUMINIUM, POLYMER): _TO_POLYMER,
    (ALUMINIUM, FILM): _TO_FILM,
    (ALUMINIUM, CERAMIC_2): _TO_CERAMIC,
    (ALUMINIUM, BIPOLAR): _TO_BIPOLAR,
    (BIPOLAR, FILM): _TO_FILM,
    (BIPOLAR, CERAMIC_2): _TO_CERAMIC,
    (POLYMER, ALUMINIUM): _TO_ALUMINIUM,
    (POLYMER, TANTALUM): _TO_TANTALUM,
    (POLYMER, TANTALUM_POLYMER): _TO_TANTALUM_POLYMER,
    (POLYMER, CERAMIC_2): _TO_CERAMIC,
    (TANTALUM, ALUMINIUM): _TO_ALUMINIUM,
    (TANTALUM, TANTALUM_POLYMER): _TO_TANTALUM_POLYMER,
    (TANTALUM, POLYMER): _TO_POLYMER,
    (TANTALUM, CERAMIC_2): _TO_CERAMIC,
    (TANTALUM_POLYMER, TANTALUM): _TO_TANTALUM,
    (TANTALUM_POLYMER, POLYMER): _TO_POLYMER,
    (TANTALUM_POLYMER, ALUMINIUM): _TO_ALUMINIUM,
    (TANTALUM_POLYMER, CERAMIC_2): _TO_CERAMIC,
}


def rule_for(old: str, new: str) -> Rule:
    """The rule for a new kind in an old kind's place.

    >>> rule_for("bipolar electrolytic", "tantalum").verdict
    'do not'
    """
    if old == MAINS:
        return Rule(NEVER, (_SAME_CLASS,))
    if old == PAPER and new in NEW_FILMS:
        return _FILM_FOR_PAPER
    if old in FILMS and new in NEW_FILMS:
        return _film_for_film(old, new)
    if old == new:
        return Rule(
            CONDITIONS, ("The same kind: the rules of the plan hold, this is no makeshift.",)
        )
    if new in (ALUMINIUM, POLYMER, TANTALUM, TANTALUM_POLYMER):
        if old == BIPOLAR:
            return _POLAR_FOR_BIPOLAR
        if old in (*FILMS, PAPER):
            return _POLAR_FOR_FILM
    unknown = "No rule is known here for this pair: fit the same kind."
    of_kind = FILM if new in NEW_FILMS else new
    return RULES.get((old, of_kind)) or Rule(CANNOT_TELL, (unknown,))


def _film_for_film(old: str, new: str) -> Rule:
    """The rule for one film in the place of another."""
    if old == new:
        return _FILM_FOR_FILM if old == FILM else _SAME_FILM
    if FILM in (old, new):
        return _WHICH_FILM
    if old == POLYSTYRENE_FILM and new == POLYPROPYLENE_FILM:
        return _POLYSTYRENE_GONE
    return _BETTER_FILM if new == POLYPROPYLENE_FILM else _WORSE_FILM


def share_of_rating(kind: str) -> float:
    """What part of its rated voltage a kind may work at: tantalum less, other kinds all of it.

    >>> share_of_rating("tantalum"), share_of_rating("aluminium electrolytic")
    (0.5, 1.0)
    """
    return working_share(kind) if kind in (TANTALUM, TANTALUM_POLYMER) else 1.0


def least_rating(kind: str, working: float) -> float | None:
    """The lowest standard rating [V] of a kind that may work at `working` [V], None above them.

    >>> least_rating("tantalum", 12), least_rating("tantalum polymer", 12)
    (25.0, 16.0)
    """
    return next_rating(working / share_of_rating(kind), kind)


def _keeps_rating(old: str, new: str) -> bool:
    """Whether the new part is of the old one's kind, so that its rating is not below the old one's.

    >>> _keeps_rating("paper", "film"), _keeps_rating("tantalum", "aluminium electrolytic")
    (True, False)
    """
    return old == new or (old in (*FILMS, PAPER) and new in NEW_FILMS)


def _not_below_the_old(rule: Rule, kind: str, rated: float, steps: list, cautions: tuple) -> Found:
    """The finding for a part whose place works far below its rating: the rating stays."""
    sources = (rule.source,)
    least = next_rating(rated, kind)
    if least is None:
        reason = f"no {kind} rated {brief(rated, 'V')} or more is made"
        return found(
            {}, working=steps, verdict=NEVER, reason=reason, sources=sources, cautions=cautions
        )
    steps.append(f"the same kind: its rating is not below the old one's, so {brief(least, 'V')}")
    return found(
        {"rated_voltage": Quantity(least, "V")},
        working=steps,
        verdict=CONDITIONS,
        reason=f"rated {brief(least, 'V')} or more, and all that the notes say is verified",
        notes=rule.conditions,
        sources=sources,
        cautions=cautions,
    )


@calculator(
    topic="recap",
    title="Another kind in its place",
    sources=("common practice",),
    cautions=("stored charge", "heat and fire"),
)
def substitute_capacitor(
    old_kind: Annotated[str, Choice(OLD_KINDS, "What stood there.")],
    new_kind: Annotated[str, Choice(NEW_KINDS, "What you have.")],
    rated_voltage: Annotated[
        float, Given("V", "The marked rated voltage of the old part.", above=0, at_most=1e4)
    ],
    working_voltage: Annotated[
        float | None,
        Given("V", "The highest voltage in that place, if known.", above=0, at_most=1e4),
    ] = None,
) -> Found:
    """Whether another kind of capacitor may go in the old one's place, and what it then needs.

    Voltages in volts. Where the working voltage is not known, the old rating stands for it. The
    verdict is "do not", "only with these conditions" or "cannot tell": a makeshift is never
    called safe. Raises RepairlibError when the place works above the old part's rating. Source:
    each rule names its own.

    >>> finding = substitute_capacitor("aluminium electrolytic", "tantalum", "16 V")
    >>> print(finding.verdict, finding.rated_voltage)
    only with these conditions 35 V
    >>> substitute_capacitor("bipolar electrolytic", "tantalum", "16 V").verdict
    'do not'
    """
    if working_voltage is not None and working_voltage > rated_voltage:
        read = f"{working_voltage:g} V on {rated_voltage:g} V"
        wrong = "the place works above the old part's rating"
        raise RepairlibError(read, wrong, "the right rating; measure the voltage again")
    rule = rule_for(old_kind, new_kind)
    line_part, oil = old_kind in (MAINS, PAPER), old_kind == PAPER
    cautions = hazards_of_capacitor(rated_voltage, line_part=line_part, oil=oil, valves=oil)
    sources = (rule.source,)
    first, *others = rule.conditions
    if rule.verdict != CONDITIONS:
        reason = first.rstrip(".")
        return found(
            {},
            verdict=rule.verdict,
            reason=reason,
            notes=others,
            sources=sources,
            cautions=cautions,
        )
    working = working_voltage or rated_voltage
    least = least_rating(new_kind, working)
    highest = "the old rating stands for it" if working_voltage is None else "as given"
    steps = [f"it may have to work at {brief(working, 'V')}: {highest}"]
    if least is None:
        reason = f"no {new_kind} that may work at {brief(working, 'V')} is made"
        return found(
            {}, working=steps, verdict=NEVER, reason=reason, sources=sources, cautions=cautions
        )
    if _keeps_rating(old_kind, new_kind) and rated_voltage > least:
        return _not_below_the_old(rule, new_kind, rated_voltage, steps, cautions)
    share = share_of_rating(new_kind)
    needed = f"{brief(working, 'V')} / {share:g} = {brief(working / share, 'V')}"
    steps.append(f"rated at least {needed}, so {brief(least, 'V')}")
    reason = f"rated {brief(least, 'V')} or more, and all that the notes say is verified"
    values = {"rated_voltage": Quantity(least, "V")}
    return found(
        values,
        working=steps,
        verdict=CONDITIONS,
        reason=reason,
        notes=rule.conditions,
        sources=sources,
        cautions=cautions,
    )
