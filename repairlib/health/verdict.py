"""One measured capacitor: fit, marginal, replace or cannot tell, and why.

Each reading is judged twice, with its uncertainty: against the limit of a new part, and against
the end-of-life limit. Within the first it is fit, past the second it is to be replaced, between
them it is marginal. The worst reading decides; what was not measured is said. ESR and D mean
nothing without the frequency at which they were read: it is asked for, never taken.
"""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from typing import Annotated, NamedTuple

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.decide import FAIL, PASS, decide
from repairlib.core.errors import RepairlibError
from repairlib.core.limits import TOUCHABLE_DC, hazards_of_capacitor
from repairlib.core.quantity import Quantity, brief, engineering
from repairlib.core.verdicts import CANNOT_TELL, FIT, MARGINAL, REPLACE
from repairlib.health.capacitor_families import FILM, WET, check_part, families
from repairlib.health.derating import DERATED, HOTTEST_C, working_share
from repairlib.health.end_of_life import CRITERIA, USUAL, Criterion, criterion_of, in_words
from repairlib.health.esr import (
    ASK_FREQUENCY,
    HIGH_HZ,
    LOWEST_HZ,
    STATED_HZ,
    esr_of,
    high_frequency_limit,
    loss_limit,
    usual_at_high,
)
from repairlib.health.leakage import own_leakage_choice, own_leakage_limit

WORKING = "working voltage"
WORST_FIRST = (REPLACE, CANNOT_TELL, MARGINAL, FIT)
SHORTED_LEADS = (
    "0 Ω: no capacitor has that. The probes touch each other, or the part is shorted: "
    "measure again, then its resistance"
)
NO_SHORT_TOLD = (
    "it may as well be 0 Ω: not told from a short. Measure the capacitance, or ESR on a lower range"
)
NOTHING_MEASURED = "nothing was measured"
NOT_ENOUGH = "a part with the right capacitance can still have a high ESR: measure ESR or D"


# What one count of a hand meter is worth on its lowest range, Ω and D; common practice.
COUNT_OF = {"Ω": 0.01, "": 0.001}
# Per cent, both ways, of a new part that does not say: film is made to 5, 10 and 20 %, the
# electrolytics to 20 %.
USUAL_TOLERANCE = {FILM: 10.0}
OTHERWISE = 20.0


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

    The end-of-life limit never lies inside the tolerance of a new part. A film part may change by
    its end-of-life figure from anywhere within its tolerance.
    """
    low, high = 1 - tolerance / 100, 1 + tolerance / 100
    least, most = (low, high) if worn.on_top else (1.0, 1.0)
    old_low = None if worn.low is None else min(low, least * worn.low) * farad
    old_high = None if worn.high is None else max(high, most * worn.high) * farad
    return Window(low * farad, high * farad, old_low, old_high)


def loss_window(limit: float, worn: Criterion, one: float = 1.0) -> Window:
    """Limits of ESR [Ω] or tan δ, given that of a new part; tan δ of 1 comes to `one` there."""
    return Window(None, limit, None, limit * worn.loss_times + worn.loss_more * one)


def one_count(reading: float, unit: str) -> float:
    """What one count of an ESR [Ω] or a D is worth: a hand meter's, or the finer place written.

    >>> one_count(1.9, "Ω"), one_count(0.438, "Ω"), one_count(0.0003, "")
    (0.01, 0.001, 0.0001)
    """
    written = Decimal(repr(float(reading))).normalize().as_tuple().exponent
    return min(COUNT_OF[unit], float(Decimal(1).scaleb(int(written))))


def spread_of(reading: float, unit: str, percent: float = 5.0, digits: float = 2.0) -> float:
    """How far an ESR [Ω] or a D may be off: `percent` of the reading and `digits` counts.

    >>> spread_of(71, "Ω")
    3.57
    """
    return abs(reading) * percent / 100 + digits * one_count(reading, unit)


def leakage_window(limit: float, worn: Criterion) -> Window:
    """Limits of leakage [A], given that of a new part."""
    return Window(None, limit, None, limit * worn.leakage_times)


def judge(name: str, reading: float, spread: float, window: Window, unit: str) -> Judged:
    """A reading with an uncertainty of ± `spread` against both limits of its window.

    >>> worn = criterion_of("aluminium general 105", 25)
    >>> judge("ESR", 0.9, 0.045, loss_window(0.5, worn), "Ω").verdict
    'marginal'
    """
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
        float | None, Given("Hz", "Where ESR or D was read.", at_least=1, at_most=1e7)
    ] = None,
    leakage: Annotated[
        float | None, Given("A", "The leakage, at rated voltage.", at_least=0, at_most=100)
    ] = None,
    uncertainty: Annotated[
        float, Given("%", "Of your meter, in per cent of reading.", **_PERCENT)
    ] = 5.0,
    tolerance: Annotated[float | None, Given("%", "Of a new part, both ways.", **_PERCENT)] = None,
    working_voltage: Annotated[
        float | None, Given("V", "What it works at.", at_least=0, at_most=1e5)
    ] = None,
    criterion: Annotated[str, Choice(CRITERIA, "Which end-of-life test decides.")] = USUAL,
    diameter: Annotated[
        float | None,
        Given("m", "At 100 kHz: the can's diameter, a chip's width.", above=0, at_most=0.1),
    ] = None,
    length: Annotated[
        float | None, Given("m", "At 100 kHz: its length.", above=0, at_most=0.2)
    ] = None,
    digits: Annotated[
        float, Given("", "Of your meter, counts of the last place.", at_least=0, at_most=1000)
    ] = 2.0,
) -> Found:
    """Fit, marginal, replace or cannot tell, from what was measured at 20 °C, out of circuit.

    `capacitance` and `measured` in farad, `rated_voltage` and `working_voltage` in volts, `esr` in
    ohm or `loss` (D) at `frequency` in hertz, without which they are never good; `leakage` in
    ampere at rated voltage; `uncertainty` of the meter and `tolerance` of the part in per cent
    (without it 10 % for film, 20 % for all else), `digits` in counts of 0.01 Ω or 0.001 of D, or
    of the finer place written. Leave out what was not measured. Limits are those of the family's
    data sheet, the verdict names the end-of-life criterion. Raises RepairlibError for values that
    cannot be, and where no limit is known.

    >>> part = "aluminium general 105", "100 µF", "25 V"
    >>> finding = judge_capacitor(*part, "92 µF", esr="9 Ω", frequency="120 Hz")
    >>> print(finding.verdict, "because", finding.reason)
    replace because ESR: 8.53 Ω to 9.47 Ω is above 3.7136 Ω, the end-of-life limit
    >>> judge_capacitor(*part, "92 µF", esr="0.2 Ω").verdict
    'cannot tell'
    """
    check_part(capacitance, rated_voltage)
    worn = criterion_of(family, rated_voltage, criterion)
    limit, notes = None, [in_words(worn)]
    inside = families()[family].inside
    judged = _judge_voltage(family, rated_voltage, working_voltage)
    if measured is not None:
        made = USUAL_TOLERANCE.get(inside, OTHERWISE) if tolerance is None else tolerance
        window = capacitance_window(capacitance, made, worn)
        judged.append(_judge_capacitance(measured, uncertainty, window))
        notes.append(f"A new part was taken as ±{made:g} %.")
    if esr is not None or loss is not None:
        limit = _loss_limit_at(family, capacitance, rated_voltage, frequency, diameter, length)
        notes += limit.notes
        if esr and frequency == HIGH_HZ and limit.ohm is None:
            notes += _usual(family, diameter, length, esr)

        def spread(reading: float, unit: str) -> float:
            return spread_of(reading, unit, uncertainty, digits)

        judged += _judge_losses(limit, esr, loss, spread, worn, bool(measured))
    if leakage is not None:
        most = own_leakage_limit(family, capacitance, rated_voltage)
        judged.append(_judge_leakage(family, most, leakage, uncertainty, worn))
        notes += own_leakage_choice(family, capacitance, rated_voltage)
    if judged and esr is None and loss is None and inside != FILM:
        judged.append(Judged("ESR", CANNOT_TELL, NOT_ENOUGH))
    verdict, reason = worst(judged)
    if working_voltage is None and family in DERATED:
        notes.append("Say what it works at: solid tantalum is not used near its rating.")
    missing = [
        name
        for name, value in (("capacitance", measured), ("leakage", leakage))
        if value is None and (name != "leakage" or families()[family].inside != FILM)
    ]
    if missing:
        notes.append(f"Not measured: {' and '.join(missing)}.")
    counts = f" and {digits:g} counts of ESR and D" if limit else ""
    notes.append(f"± {uncertainty:g} %{counts} was taken for the meter.")
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
            *hazards_of_capacitor(rated_voltage, farad=capacitance),
            *(("wet tantalum",) if inside == "wet tantalum" else ()),
            *(("heat and fire",) if verdict == REPLACE else ()),
        ),
    )


def worst(judged: list[Judged]) -> tuple[str, str]:
    """The verdict on the whole part, and the reasons of the readings that brought it."""
    if not judged:
        return CANNOT_TELL, NOTHING_MEASURED
    verdict = next(word for word in WORST_FIRST if any(one.verdict == word for one in judged))
    deciding = [
        f"{one.name}: {one.reason}"
        for one in judged
        if one.verdict == verdict or (one.name == WORKING and verdict != FIT)
    ]
    return verdict, "; ".join(deciding)


class _LossLimit(NamedTuple):
    """Limits of a new part at the frequency measured; None, and why, where none was stated."""

    ohm: float | None = None
    tan_delta: float | None = None
    one: float | None = None  # Ω that a tan δ of 1 comes to there
    ohm_at_120: float | None = None
    why_not: str = ""
    notes: tuple[str, ...] = ()
    source: str = "common practice"


def _loss_limit_at(family, farad, volts, hertz, wide, long) -> _LossLimit:
    try:
        return _stated_loss_limit(family, farad, volts, hertz, wide, long)
    except RepairlibError as error:  # no such limit: told as the reason why nobody can tell
        return _LossLimit(why_not=f"{error.read}: {error.wrong}")


def _stated_loss_limit(family, farad, volts, hertz, wide, long) -> _LossLimit:
    film = families()[family].inside == FILM
    if hertz is None:
        return _LossLimit(why_not=ASK_FREQUENCY) if film else _at_120(family, farad, volts)
    if film or LOWEST_HZ <= hertz <= STATED_HZ:
        limit = loss_limit(family, farad, volts, hertz)
        one = esr_of(1.0, farad, hertz)
        ohm = limit.tan_delta * one
        return _LossLimit(ohm, limit.tan_delta, one, notes=limit.notes, source=limit.source)
    why = (
        f"it was read at {engineering(hertz, 'Hz')}, and the limit of {family} is for 120 Hz: "
        "measure at 120 Hz"
    )
    if hertz == HIGH_HZ:
        try:
            high = high_frequency_limit(family, farad, volts, wide, long)
        except RepairlibError as error:
            why = f"{error.wrong}: {error.accepted}"
        else:
            notes = (high.note, _CHOSEN_END)
            return _LossLimit(high.ohm, notes=notes, source=high.source)
    return _at_120(family, farad, volts, why)


def _at_120(family: str, farad: float, volts: float, why: str = ASK_FREQUENCY) -> _LossLimit:
    """No limit, because of `why`; that at 120 Hz, where there is one, still condemns."""
    try:
        limit = loss_limit(family, farad, volts)
    except RepairlibError:
        return _LossLimit(why_not=why)
    ohm = esr_of(limit.tan_delta, farad, STATED_HZ)
    return _LossLimit(ohm_at_120=ohm, why_not=why, notes=limit.notes, source=limit.source)


_CHOSEN_END = (
    "A choice: the factor of the end-of-life test for tan δ is used at 100 kHz too; makers of wet "
    "parts state none there."
)


def _usual(family: str, wide: float | None, long: float | None, esr: float) -> list[str]:
    """A hint, from memory, beside a reading at 100 kHz that nobody can judge."""
    usual = usual_at_high(family, wide, long)
    if usual is None:
        if families()[family].inside != WET:
            return []
        return ["With diameter and length a usual range at 100 kHz can be shown as a hint."]
    low, high = usual
    lies = "above it" if esr > high else "below it" if esr < low else "within it"
    return [
        f"From memory, a hint and no limit: new parts of this kind and size have about "
        f"{brief(low, 'Ω')} to {brief(high, 'Ω')} at 100 kHz; the reading is {lies}."
    ]


def _judge_losses(
    limit: _LossLimit,
    esr: float | None,
    loss: float | None,
    spread: Callable[[float, str], float],
    worn: Criterion,
    not_shorted: bool,
) -> list[Judged]:
    judged = []
    if esr is not None:
        judged.append(_judge_esr(limit, esr, spread(esr, "Ω"), worn, not_shorted))
    if loss is not None:
        if loss == 0:
            judged.append(Judged("D", CANNOT_TELL, "D of 0: the meter could not resolve it"))
        elif limit.tan_delta is None:
            why = limit.why_not or "the limit there is an impedance: measure ESR"
            judged.append(Judged("D", CANNOT_TELL, why))
        else:
            window = loss_window(limit.tan_delta, worn)
            judged.append(judge("D", loss, spread(loss, ""), window, ""))
    return judged


def _judge_esr(
    limit: _LossLimit, esr: float, spread: float, worn: Criterion, not_shorted: bool
) -> Judged:
    if esr == 0:
        return Judged("ESR", CANNOT_TELL, SHORTED_LEADS)
    if limit.ohm is not None:
        judged = judge("ESR", esr, spread, loss_window(limit.ohm, worn, limit.one or 1.0), "Ω")
        if esr <= spread and not not_shorted and judged.verdict in (FIT, MARGINAL):
            return Judged("ESR", CANNOT_TELL, NO_SHORT_TOLD)
        return judged
    old = (limit.ohm_at_120 or float("inf")) * worn.loss_times
    if esr - spread > old:
        reason = (
            f"{brief(esr, 'Ω')} is more than the end-of-life limit at 120 Hz, {brief(old, 'Ω')}, "
            "and ESR falls with frequency"
        )
        return Judged("ESR", REPLACE, reason)
    return Judged("ESR", CANNOT_TELL, limit.why_not)


def _judge_capacitance(measured, percent, window: Window) -> Judged:
    if measured == 0:
        return Judged("capacitance", CANNOT_TELL, "0 F: no contact, or the part is open")
    return judge("capacitance", measured, measured * percent / 100, window, "F")


def _judge_leakage(family, limit, leakage, percent, worn) -> Judged:
    if limit is None:
        return Judged("leakage", CANNOT_TELL, f"no leakage limit of {family} is known here")
    return judge("leakage", leakage, leakage * percent / 100, leakage_window(limit, worn), "A")


def _judge_voltage(family: str, rated: float, working: float | None) -> list[Judged]:
    """What the working voltage says: nothing, too near to the rating, or above it."""
    if working is None:
        return []
    if working > rated:
        reason = (
            f"rated {brief(rated, 'V')}, it works at {brief(working, 'V')}: it can burst, fit a "
            "part with a higher rating"
        )
        return [Judged("rating", REPLACE, reason)]
    if family not in DERATED or working <= rated * working_share(family):
        return []
    most = brief(rated * working_share(family), "V")
    reason = (
        f"a {family} part rated {brief(rated, 'V')} may work at {most} at most, to "
        f"{HOTTEST_C:g} °C; it works at {brief(working, 'V')}: fit one with a higher rating"
    )
    return [Judged(WORKING, MARGINAL, reason)]


def _limits(limit: _LossLimit | None, worn: Criterion) -> dict[str, object]:
    values: dict[str, object] = {"criterion": str(worn)}
    if limit and limit.ohm is not None:
        values["esr_limit_new"] = Quantity(limit.ohm, "Ω", 4)
        window = loss_window(limit.ohm, worn, limit.one or 1.0)
        values["esr_limit_worn"] = Quantity(window.old_high or 0.0, "Ω", 4)
    return values
