"""One measured capacitor: fit, marginal, replace or cannot tell, and why.

Each reading is judged twice, with its uncertainty: against the limit of a new part, and against
the end-of-life limit. Within the first it is fit, past the second it is to be replaced, between
them it is marginal. The worst reading decides; what was not measured is said.
"""

from __future__ import annotations

from typing import Annotated, NamedTuple

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.decide import FAIL, PASS, decide
from repairlib.core.errors import RepairlibError
from repairlib.core.limits import TOUCHABLE_DC, hazards_of_capacitor
from repairlib.core.quantity import Quantity, brief, engineering
from repairlib.core.verdicts import CANNOT_TELL, FIT, MARGINAL, REPLACE
from repairlib.health.capacitor_families import FILM, check_part, families
from repairlib.health.end_of_life import CRITERIA, USUAL, Criterion, criterion_of, in_words
from repairlib.health.esr import (
    HIGH_HZ,
    LOWEST_HZ,
    STATED_HZ,
    esr_of,
    loss_limit,
    published_high_frequency_limit,
    usual_at_100_khz,
)
from repairlib.health.leakage import own_leakage_choice, own_leakage_limit

WORST_FIRST = (REPLACE, CANNOT_TELL, MARGINAL, FIT)
SHORTED_LEADS = (
    "0 Ω: no capacitor has that. The probes touch each other, or the part is shorted: "
    "measure again, then its resistance"
)
NOTHING_MEASURED = "nothing was measured"
WHICH_FREQUENCY = (
    "at which frequency was it measured? Most ESR meters read at 100 kHz, and limits of ordinary "
    "parts are for 120 Hz: look at the meter and say it"
)
AT_100_KHZ = (
    "An impedance at 100 kHz; that a worn part may have as many times as much as at 120 Hz is a "
    "choice: data sheets limit tan δ after life, not this."
)
NOT_ENOUGH = "a part with the right capacitance can still have a high ESR: measure ESR or D"


class Judged(NamedTuple):
    """One reading: what was read (`name`), its verdict and the reason."""

    name: str
    verdict: str
    reason: str


class Window(NamedTuple):
    """The limits of one reading: `new_*` of a new part, `old_*` at the end of life."""

    new_low: float | None
    new_high: float | None
    old_low: float | None
    old_high: float | None


def capacitance_window(farad: float, tolerance: float, worn: Criterion) -> Window:
    """Limits of capacitance [F] around the marked one; `tolerance` in per cent.

    The end-of-life limit never lies inside the tolerance of a new part.
    """
    low, high = 1 - tolerance / 100, 1 + tolerance / 100
    old_low = None if worn.low is None else min(low, worn.low) * farad
    old_high = None if worn.high is None else max(high, worn.high) * farad
    return Window(low * farad, high * farad, old_low, old_high)


def loss_window(limit: float, worn: Criterion) -> Window:
    """Limits of ESR [Ω] or tan δ, given that of a new part."""
    return Window(None, limit, None, limit * worn.loss_times)


def leakage_window(limit: float, worn: Criterion) -> Window:
    """Limits of leakage [A], given that of a new part."""
    return Window(None, limit, None, limit * worn.leakage_times)


def judge(name: str, reading: float, percent: float, window: Window, unit: str) -> Judged:
    """A reading with an uncertainty of ± `percent` against both limits of its window.

    >>> worn = criterion_of("aluminium general 105", 25)
    >>> judge("ESR", 0.9, 5, loss_window(0.5, worn), "Ω").verdict
    'marginal'
    """
    spread = abs(reading) * percent / 100
    ends = (reading - spread, reading + spread)
    new = decide(*ends, window.new_low, window.new_high, unit=unit)
    old = _old_decision(ends, window, unit)
    if new.verdict == PASS:
        return Judged(name, FIT, f"{new.reason}, the limit of a new part")
    if old.verdict == FAIL:
        return Judged(name, REPLACE, f"{old.reason}, the end-of-life limit")
    if old.verdict == PASS:
        as_new = "it is no longer" if new.verdict == FAIL else "it may no longer be"
        return Judged(name, MARGINAL, f"{old.reason}, the end-of-life limit; {as_new} as new")
    reason = old.reason.removeprefix(f"{old.zone}: ")
    return Judged(name, CANNOT_TELL, f"{reason}, the end-of-life limit")


def _old_decision(ends, window: Window, unit: str):
    if window.old_low is None and window.old_high is None:
        raise ValueError("a window without an end-of-life limit")
    return decide(*ends, window.old_low, window.old_high, unit=unit)


_PERCENT = {"at_least": 0, "at_most": 99}


@calculator(
    topic="health",
    title="Verdict on a measured capacitor",
    sources=("common practice", "ILAC-G8:09/2019"),
    cautions=("stored charge",),
)
def judge_capacitor(
    family: Annotated[str, Choice(families, "What kind of capacitor it is.")],
    capacitance: Annotated[float, Given("F", "The marked capacitance.", at_least=1e-13, at_most=1)],
    rated_voltage: Annotated[float, Given("V", "The marked rated voltage.", above=0, at_most=1000)],
    measured: Annotated[
        float | None, Given("F", "The measured capacitance.", at_least=0, at_most=10)
    ] = None,
    esr: Annotated[float | None, Given("Ω", "The measured ESR.", at_least=0, at_most=1e9)] = None,
    loss: Annotated[
        float | None, Given("", "The measured D, which is tan δ.", at_least=0, at_most=1e6)
    ] = None,
    frequency: Annotated[
        float | None,
        Given("Hz", "Where ESR or D was read; most ESR meters: 100 kHz.", at_least=1, at_most=1e7),
    ] = None,
    leakage: Annotated[
        float | None, Given("A", "The leakage, at rated voltage.", at_least=0, at_most=100)
    ] = None,
    uncertainty: Annotated[
        float, Given("%", "Of your meter, in per cent of reading.", **_PERCENT)
    ] = 5.0,
    tolerance: Annotated[float, Given("%", "Of a new part, both ways.", **_PERCENT)] = 20.0,
    working_voltage: Annotated[
        float | None, Given("V", "What it works at.", at_least=0, at_most=1e5)
    ] = None,
    criterion: Annotated[str, Choice(CRITERIA, "Which end-of-life test decides.")] = USUAL,
    diameter: Annotated[
        float | None, Given("m", "At 100 kHz: the can's diameter.", above=0, at_most=0.1)
    ] = None,
    length: Annotated[
        float | None, Given("m", "At 100 kHz: the can's length.", above=0, at_most=0.2)
    ] = None,
) -> Found:
    """Fit, marginal, replace or cannot tell, from what was measured at 20 °C, out of circuit.

    `capacitance` and `measured` in farad, `rated_voltage` and `working_voltage` in volts, `esr` in
    ohm or `loss` (D) at `frequency` in hertz, `leakage` in ampere at rated voltage; `uncertainty`
    of the meter and `tolerance` of the part in per cent. Leave out what was not measured. An ESR or
    D without its `frequency` is never good: only one that is too high at any frequency is judged.
    Limits are those of the family's data sheet, the verdict names the end-of-life criterion. Raises
    RepairlibError for values that cannot be, and where no limit is known.

    >>> part = ("aluminium general 105", "100 µF", "25 V", "92 µF")
    >>> finding = judge_capacitor(*part, esr="9 Ω", frequency="120 Hz")
    >>> print(finding.verdict, "because", finding.reason)
    replace because ESR: 8.55 Ω to 9.45 Ω is above 3.7136 Ω, the end-of-life limit
    >>> judge_capacitor(*part, esr="1 Ω").verdict
    'cannot tell'
    """
    check_part(capacitance, rated_voltage)
    worn = criterion_of(family, rated_voltage, criterion)
    limit, notes = None, [in_words(worn)]
    judged: list[Judged] = []
    if working_voltage is not None and working_voltage > rated_voltage:
        judged.append(_underrated(rated_voltage, working_voltage))
    if measured is not None:
        window = capacitance_window(capacitance, tolerance, worn)
        judged.append(_judge_capacitance(measured, uncertainty, window))
    if esr is not None or loss is not None:
        limit = _loss_limit_at(family, capacitance, rated_voltage, frequency, diameter, length)
        notes += limit.notes
        judged += _judge_losses(limit, esr, loss, uncertainty, worn, capacitance)
    if leakage is not None:
        most = own_leakage_limit(family, capacitance, rated_voltage)
        judged.append(_judge_leakage(family, most, leakage, uncertainty, worn))
        notes += own_leakage_choice(family, capacitance, rated_voltage)
    if judged and esr is None and loss is None and families()[family].inside != FILM:
        judged.append(Judged("ESR", CANNOT_TELL, NOT_ENOUGH))
    verdict, reason = worst(judged)
    missing = [
        name
        for name, value in (("capacitance", measured), ("leakage", leakage))
        if value is None and (name != "leakage" or families()[family].inside != FILM)
    ]
    if missing:
        notes.append(f"Not measured: {' and '.join(missing)}.")
    notes.append(f"± {uncertainty:g} % was taken for the meter.")
    if rated_voltage > TOUCHABLE_DC:
        notes.append(f"Above {TOUCHABLE_DC:g} V dc: leave the discharging to a qualified person.")
    return found(
        {one.name.replace(" ", "_"): one.verdict for one in judged} | _limits(limit, worn),
        working=[f"{one.name}: {one.reason}: {one.verdict}" for one in judged],
        verdict=verdict,
        reason=reason,
        notes=notes,
        sources=(worn.source, *([limit.source] if limit else [])),
        cautions=(
            *hazards_of_capacitor(rated_voltage),
            *(("heat and fire",) if verdict == REPLACE else ()),
        ),
    )


def worst(judged: list[Judged]) -> tuple[str, str]:
    """The verdict on the whole part, and the reasons of the readings that brought it."""
    if not judged:
        return CANNOT_TELL, NOTHING_MEASURED
    verdict = next(word for word in WORST_FIRST if any(one.verdict == word for one in judged))
    deciding = [f"{one.name}: {one.reason}" for one in judged if one.verdict == verdict]
    return verdict, "; ".join(deciding)


class _LossLimit(NamedTuple):
    """Limits of a new part at the frequency measured; None, and why, where none was stated."""

    ohm: float | None = None
    tan_delta: float | None = None
    ohm_at_120: float | None = None
    why_not: str = ""
    notes: tuple[str, ...] = ()
    source: str = "common practice"


def _loss_limit_at(*part) -> _LossLimit:
    try:
        return _stated_loss_limit(*part)
    except RepairlibError as error:  # no such limit: told as the reason why nobody can tell
        return _LossLimit(why_not=f"{error.read}: {error.wrong}")


def _stated_loss_limit(family, farad, volts, hertz, diameter, length) -> _LossLimit:
    inside = families()[family].inside
    if hertz is None and inside == FILM:
        return _LossLimit(why_not=WHICH_FREQUENCY)
    if hertz == HIGH_HZ:
        published = published_high_frequency_limit(family, farad, volts)
        if published:
            return _LossLimit(published[0], notes=(AT_100_KHZ,), source=published[1])
    if hertz is not None and (inside == FILM or LOWEST_HZ <= hertz <= STATED_HZ):
        limit = loss_limit(family, farad, volts, hertz)
        ohm = esr_of(limit.tan_delta, farad, hertz)
        return _LossLimit(ohm, limit.tan_delta, notes=limit.notes, source=limit.source)
    limit = loss_limit(family, farad, volts)
    ohm = esr_of(limit.tan_delta, farad, STATED_HZ)
    if hertz is None:
        return _LossLimit(None, None, ohm, WHICH_FREQUENCY, limit.notes, limit.source)
    why = (
        f"it was read at {engineering(hertz, 'Hz')}, and no limit of such a {family} part was "
        "published there, only for 120 Hz: measure at 120 Hz, or measure a new part of the same "
        "size beside it"
    )
    hint = usual_at_100_khz(inside, diameter, length) if hertz == HIGH_HZ else ""
    notes = (*limit.notes, hint) if hint else limit.notes
    return _LossLimit(None, None, ohm, why, notes, limit.source)


def _judge_losses(limit: _LossLimit, esr, loss, percent, worn, farad) -> list[Judged]:
    judged = []
    if esr is not None:
        judged.append(_judge_esr(limit, esr, percent, worn))
    if loss is not None:
        if loss == 0:
            judged.append(Judged("D", CANNOT_TELL, "D of 0: the meter could not resolve it"))
        elif limit.tan_delta is None:
            why = limit.why_not or "the limit there is an impedance: measure ESR"
            judged.append(Judged("D", CANNOT_TELL, why))
        else:
            window = loss_window(limit.tan_delta, worn)
            judged.append(judge("D", loss, percent, window, ""))
    return judged


def _judge_esr(limit: _LossLimit, esr, percent, worn) -> Judged:
    if esr == 0:
        return Judged("ESR", CANNOT_TELL, SHORTED_LEADS)
    if limit.ohm is not None:
        return judge("ESR", esr, percent, loss_window(limit.ohm, worn), "Ω")
    old = (limit.ohm_at_120 or float("inf")) * worn.loss_times
    if esr * (1 - percent / 100) > old:
        reason = (
            f"{brief(esr, 'Ω')} is more than the end-of-life limit at 120 Hz, {brief(old, 'Ω')}, "
            "and ESR falls with frequency"
        )
        return Judged("ESR", REPLACE, reason)
    return Judged("ESR", CANNOT_TELL, limit.why_not)


def _judge_capacitance(measured, percent, window: Window) -> Judged:
    if measured == 0:
        return Judged("capacitance", CANNOT_TELL, "0 F: no contact, or the part is open")
    return judge("capacitance", measured, percent, window, "F")


def _judge_leakage(family, limit, leakage, percent, worn) -> Judged:
    if limit is None:
        return Judged("leakage", CANNOT_TELL, f"no leakage limit of {family} is known here")
    return judge("leakage", leakage, percent, leakage_window(limit, worn), "A")


def _underrated(rated, working) -> Judged:
    reason = (
        f"rated {brief(rated, 'V')}, it works at {brief(working, 'V')}: it can burst, fit a part "
        "with a higher rating"
    )
    return Judged("rating", REPLACE, reason)


def _limits(limit: _LossLimit | None, worn: Criterion) -> dict[str, object]:
    values: dict[str, object] = {"criterion": str(worn)}
    if limit and limit.ohm is not None:
        values["esr_limit_new"] = Quantity(limit.ohm, "Ω", 4)
        values["esr_limit_worn"] = Quantity(limit.ohm * worn.loss_times, "Ω", 4)
    return values
