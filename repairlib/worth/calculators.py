"""The two calculators: whether a set is worth repairing, and where its repair just breaks even."""

from __future__ import annotations

from typing import Annotated

from repairlib.core.calculator import Found, Text, calculator, found
from repairlib.core.quantity import Quantity, brief
from repairlib.stored_charge import QUALIFIED
from repairlib.worth import job as asked
from repairlib.worth.deciding import decide_on
from repairlib.worth.hazards import NOT_SAFETY, read_hazards
from repairlib.worth.job import Job, read_currency, roughly
from repairlib.worth.waste import SOURCES as WASTE
from repairlib.worth.waste import kept_from_waste

_GUESS = (
    "The chance is a guess. At community repair events 53 % of the electronic products were "
    "repaired on the spot: if you expect more, say why."
)
_ON_PAPER = "The figures are for whoever is qualified: type what an hour of theirs costs."
_NO_CHANCE = "none: success earns nothing and failure costs nothing"
_CURRENCY = Text("What money is counted in.")


@calculator(
    topic="worth",
    title="Is it worth repairing",
    sources=("encyclopaedia, Expected value", "break-even analysis", "community repair data"),
)
def worth_repairing(
    value: Annotated[float, asked.VALUE],
    parts: Annotated[float, asked.PARTS],
    hours: Annotated[float, asked.HOURS],
    success_low: Annotated[float, asked.SUCCESS_LOW],
    success_high: Annotated[float, asked.SUCCESS_HIGH],
    hazards: Annotated[str, Text("What is dangerous where the work is: mains; lead; or none.")],
    hour_worth: Annotated[float, asked.HOUR_WORTH] = 0.0,
    tools: Annotated[float, asked.TOOLS] = 0.0,
    jobs: Annotated[float, asked.JOBS] = 1.0,
    replacement: Annotated[float | None, asked.REPLACEMENT] = None,
    failed: Annotated[float, asked.FAILED] = 0.0,
    mass: Annotated[float, asked.MASS] = 0.0,
    currency: Annotated[str, _CURRENCY] = "tokens",
) -> Found:
    """What a repair is expected to cost and gain, the decision, and what would change it.

    Money in `currency`, hours in h, chances in per cent, mass in kg. The gain is that over no
    repair; success earns the value, but no more than a replacement costs. A set with mains, stored
    charge, high-voltage tubes or poisons is left to a qualified person whatever the sum says.
    Raises RepairlibError outside the ranges, for a hazard not known, for chances the wrong way
    round. Source: expected value as the encyclopaedia defines it, zero gain as break-even analysis
    does.

    >>> finding = worth_repairing(60, 8, 2, 50, 80, "hot tools", hour_worth=5)
    >>> finding.verdict, finding.gain_low, finding.gain_high, finding.break_even_chance
    ('repair', 12 tokens, 30 tokens, 30 %)
    >>> worth_repairing(60, 8, 2, 50, 80, "mains").verdict
    'leave it to a qualified person'
    """
    job = Job(
        value,
        parts,
        hours,
        success_low,
        success_high,
        hour_worth=hour_worth,
        tools=tools,
        jobs=jobs,
        replacement=replacement,
        failed=failed,
        mass=mass,
        hazards=read_hazards(hazards),
        currency=read_currency(currency),
    )
    decision = decide_on(job)
    ends = (success_low,) if success_low == success_high else (success_low, success_high)
    kept, on_waste = kept_from_waste(mass)
    values = {
        "gain_low": job.money(job.gain(success_low)),
        "gain_high": job.money(job.gain(success_high)),
        "cost_low": job.money(job.cost(success_high)),
        "cost_high": job.money(job.cost(success_low)),
        "break_even_chance": _chance(job),
        "break_even_hours": _at_both(ends, lambda chance: _hours(job, chance)),
        "break_even_parts": _at_both(ends, lambda chance: _parts(job, chance)),
        "what_would_change_it": decision.change,
        **kept,
    }
    first = _ON_PAPER if decision.verdict == QUALIFIED else NOT_SAFETY
    return found(
        values,
        working=[*_working(job), *(_gain_line(job, chance) for chance in ends), _even_line(job)],
        verdict=decision.verdict,
        reason=decision.reason,
        notes=[first, _GUESS, *on_waste],
        sources=WASTE if mass else (),
        cautions=job.hazards,
    )


@calculator(
    topic="worth",
    title="Where a repair breaks even",
    sources=("break-even analysis", "encyclopaedia, Expected value"),
)
def break_even(
    value: Annotated[float, asked.VALUE],
    parts: Annotated[float, asked.PARTS],
    hours: Annotated[float, asked.HOURS],
    chance: Annotated[float, asked.SUCCESS_LOW],
    hour_worth: Annotated[float, asked.HOUR_WORTH] = 0.0,
    tools: Annotated[float, asked.TOOLS] = 0.0,
    jobs: Annotated[float, asked.JOBS] = 1.0,
    replacement: Annotated[float | None, asked.REPLACEMENT] = None,
    failed: Annotated[float, asked.FAILED] = 0.0,
    currency: Annotated[str, _CURRENCY] = "tokens",
) -> Found:
    """The chance, the hours and the cost of parts at which a repair neither gains nor loses.

    Money in `currency`, hours in h, `chance` in per cent. Chance C* = (S + F) / (B + F); hours
    (p B - (1 - p) F - parts - tools) / worth of an hour; parts likewise, with S what is spent, B
    what success earns, F what failure costs. It decides nothing: that takes the hazards. Raises
    RepairlibError outside the ranges. Source: break-even analysis, zero gain of an expected value.

    >>> finding = break_even(60, 8, 2, 50, hour_worth=5)
    >>> finding.break_even_chance, finding.break_even_hours, finding.break_even_parts
    (30 %, '4.4\\xa0h', '20\\xa0tokens')
    """
    job = Job(
        value,
        parts,
        hours,
        chance,
        chance,
        hour_worth=hour_worth,
        tools=tools,
        jobs=jobs,
        replacement=replacement,
        failed=failed,
        currency=read_currency(currency),
    )
    values = {
        "break_even_chance": _chance(job),
        "break_even_hours": _hours(job, chance),
        "break_even_parts": _parts(job, chance),
        "gain": job.money(job.gain(chance)),
    }
    working = [*_working(job), _gain_line(job, chance), _even_line(job)]
    return found(values, working=working, notes=[NOT_SAFETY])


def _chance(job: Job) -> Quantity | str:
    chance = job.break_even_chance()
    if chance is None:
        return _NO_CHANCE
    if chance > 100:
        return "none: even 100 % is not enough"
    return Quantity(float(f"{chance:.3g}"), "%")


def _hours(job: Job, chance: float) -> str:
    hours = job.break_even_hours(chance)
    if hours is None:
        return "any: an hour is worth nothing here"
    return roughly(hours, "h") if hours >= 0 else "none: a loss without any work"


def _parts(job: Job, chance: float) -> str:
    parts = job.break_even_parts(chance)
    return str(job.money(parts)) if parts >= 0 else "none: a loss even with free parts"


def _at_both(ends: tuple[float, ...], words) -> str:
    """What holds at each end of the chance; once where it is the same."""
    told = {words(chance): brief(chance, "%") for chance in ends}
    if len(told) == 1:
        return next(iter(told))
    return "; ".join(f"at {chance}: {said}" for said, chance in told.items())


def _working(job: Job) -> list[str]:
    other = "" if job.replacement is None else f", at most {job.money(job.replacement)} for another"
    return [
        f"S, spent: {job.parts:g} + {job.hours:g} h × {job.hour_worth:g} + "
        f"{job.tools:g} / {job.jobs:g} = {job.money(job.spent)}",
        f"B, success earns: {job.money(job.value)}{other}: {job.money(job.earned)}",
        f"F, failure costs: {job.money(job.failed)}",
    ]


def _gain_line(job: Job, chance: float) -> str:
    p = chance / 100
    return (
        f"at {brief(chance, '%')}: p B - (1 - p) F - S = {p:g} × {job.earned:g} - "
        f"{1 - p:g} × {job.failed:g} - {job.spent:g} = {job.money(job.gain(chance))}"
    )


def _even_line(job: Job) -> str:
    chance = job.break_even_chance()
    if chance is None:
        return f"break-even chance: {_NO_CHANCE}"
    return (
        f"break-even chance: (S + F) / (B + F) = {job.spent + job.failed:g} / "
        f"{job.earned + job.failed:g} = {roughly(chance, '%')}"
    )
