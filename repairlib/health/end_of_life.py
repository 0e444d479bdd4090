"""When a capacitor counts as worn out: by how much it may change until then.

Data sheets name several tests, and their limits differ: after "endurance" a part may have 1.3 to
2 times the loss limit, at the end of its "useful life" 3 times. Every verdict names the one used.
"""

from __future__ import annotations

from functools import cache
from typing import Annotated, NamedTuple

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity, brief
from repairlib.core.tables import read_table
from repairlib.health.capacitor_families import FILM, check_part, families, family
from repairlib.health.esr import STATED_HZ, esr_of, loss_limit, loss_rows
from repairlib.health.leakage import own_leakage_choice, own_leakage_limit

ENDURANCE, USEFUL_LIFE, SHELF = "endurance", "useful life", "shelf"
BENCH_RULE = "bench rule"
USUAL = "the usual one"  # endurance where the data sheet gives it, or else the bench rule
CRITERIA = (USUAL, ENDURANCE, USEFUL_LIFE, SHELF, BENCH_RULE)


class Criterion(NamedTuple):
    """One row of the table end-of-life-limits.

    The capacitance may go from `low` to `high` times its first value, None where nothing is said;
    the loss may be `loss_times` its limit when new and tan δ `loss_more` on top, the leakage
    `leakage_times`.
    """

    family: str
    name: str
    from_v: float
    to_v: float
    hours: str
    low: float | None
    high: float | None
    loss_times: float
    leakage_times: float
    source: str
    loss_more: float = 0.0

    @property
    def on_top(self) -> bool:
        """Whether the change counts from wherever in its tolerance the part began."""
        return self.family in families() and families()[self.family].inside == FILM

    def __str__(self) -> str:
        return f"{self.name}, {self.hours} h" if self.hours else self.name


@cache
def criteria_of(name: str) -> tuple[Criterion, ...]:
    """Every criterion for a family: its data sheet's own, then the bench rule."""
    return tuple(
        Criterion(
            row["family"],
            row["criterion"],
            float(row["from_v"]),
            float(row["to_v"]),
            row["hours"],
            _times(row["capacitance_low_pct"]),
            _times(row["capacitance_high_pct"]),
            float(row["loss_times"]),
            float(row["leakage_times"]),
            row["source"],
            float(row["loss_more"]),
        )
        for row in read_table("end-of-life-limits")
        if row["family"] in (name, "any")
    )


def criterion_of(name: str, volts: float, wanted: str = USUAL) -> Criterion:
    """The criterion of that family at that rated voltage [V].

    USUAL is the endurance test of the family's data sheet, or else the bench rule. Raises
    RepairlibError when the data sheet has no such test.

    >>> str(criterion_of("aluminium general 105", 25))
    'endurance, 2000 h'
    """
    fitting = [one for one in criteria_of(family(name).name) if one.from_v <= volts <= one.to_v]
    names = (ENDURANCE, BENCH_RULE) if wanted == USUAL else (wanted,)
    for one in fitting:
        if one.name in names:
            return one
    accepted = ", ".join(dict.fromkeys(one.name for one in fitting)) or "a rated voltage to 1000 V"
    wrong = f"no such criterion is known for {name} at {volts:g} V"
    raise RepairlibError(wanted, wrong, accepted)


@calculator(
    topic="health",
    title="Limits at the end of life",
    sources=("common practice",),
)
def end_of_life_limits(
    family: Annotated[str, Choice(families, "What kind of capacitor it is.")],
    capacitance: Annotated[
        float,
        Given(
            "F",
            "The first measured capacitance, or else the marked one.",
            at_least=1e-13,
            at_most=1,
        ),
    ],
    rated_voltage: Annotated[float, Given("V", "The marked rated voltage.", above=0, at_most=1e3)],
    criterion: Annotated[str, Choice(CRITERIA, "Which test decides.")] = USUAL,
) -> Found:
    """How far capacitance, ESR, tan δ and leakage may go until the part counts as worn out.

    `capacitance` in farad, the one it began with; `rated_voltage` in volts, to 1000. `criterion`
    is the endurance or useful-life test of the data sheet, its shelf test, or the rule of thumb
    of the bench. ESR and tan δ are those at 120 Hz, 20 °C. Raises RepairlibError when the data
    sheet has no such test. Source: the data sheet of the family; the bench rule is from memory.

    >>> print(end_of_life_limits("aluminium low impedance", "450 µF", "16 V"))
    Limits at the end of life: criterion endurance, 1000 to 5000 h; capacitance low 337.5 µF;
    capacitance high 562.5 µF; loss times 2; tan delta 0.3200; esr 943.1 mΩ;
    leakage 72.00 µA
    """
    check_part(capacitance, rated_voltage)
    chosen = criterion_of(family, rated_voltage, criterion)
    values: dict[str, object] = {"criterion": str(chosen)}
    working = []
    for name, times in (("capacitance_low", chosen.low), ("capacitance_high", chosen.high)):
        if times is not None:
            values[name] = Quantity(times * capacitance, "F", 4)
            working.append(
                f"{brief(capacitance, 'F')} × {times:g} = {brief(times * capacitance, 'F')}"
            )
    values["loss_times"] = Quantity(chosen.loss_times, "")
    notes = [in_words(chosen)]
    if families()[family].inside == FILM or not loss_rows(family):
        notes.append("No loss limit at 120 Hz is known for this family: only the ratio is given.")
    else:
        limit = loss_limit(family, capacitance, rated_voltage)
        tan_delta = limit.tan_delta * chosen.loss_times
        values["tan_delta"] = Quantity(tan_delta, "", 4)
        values["esr"] = Quantity(esr_of(tan_delta, capacitance, STATED_HZ), "Ω", 4)
        working += [*limit.working, f"worn out above {chosen.loss_times:g} × that: {tan_delta:.4g}"]
        notes += limit.notes
    leakage = own_leakage_limit(family, capacitance, rated_voltage)
    if leakage is not None:
        values["leakage"] = Quantity(leakage * chosen.leakage_times, "A", 4)
        notes += own_leakage_choice(family, capacitance, rated_voltage)
    return found(values, working=working, notes=notes, sources=(chosen.source,))


def in_words(chosen: Criterion) -> str:
    """Which criterion a verdict used, and that others differ."""
    if chosen.name == BENCH_RULE:
        return "End-of-life limits, a choice: bench rule, -20 % of capacitance and twice the loss."
    more = f": tan δ {chosen.loss_more:g} more than new, stated to 1 µF" if chosen.loss_more else ""
    others = [one.name for one in criteria_of(chosen.family) if one.name != chosen.name]
    other = ", ".join(dict.fromkeys(others))
    return f"End-of-life limits: {chosen}{more}. Others differ: {other}."


def _times(percent: str) -> float | None:
    return 1 + float(percent) / 100 if percent else None
