"""A reflow profile measured and held against limits.

A sensor's uncertainty shifts the whole profile up and down: what then passes once and fails once
is "cannot tell". So is what a gap, a stuck sensor or a log cut short leaves open.
"""

from __future__ import annotations

from typing import Annotated, NamedTuple

from repairlib.core import html
from repairlib.core.calculator import Choice, Found, Given, Text, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.finding import Finding
from repairlib.core.quantity import Quantity
from repairlib.core.verdicts import CANNOT_TELL, FAIL, PASS
from repairlib.heat.profile import Doubt, Profile, read_points
from repairlib.heat.reflow_limits import (
    ALLOYS,
    COLD,
    D1,
    EDITIONS,
    NEAR,
    Range,
    ReflowLimits,
    in_words,
    package_limits,
)
from repairlib.heat.reflow_measures import ROUNDING, SENSOR, Measured, measure

_CAUTIONS = ("hot tools", "fumes and flux")


class Criterion(NamedTuple):
    """One measure held against its limits, with its values at both ends of the uncertainty."""

    name: str
    value: float | None
    low: float | None
    high: float | None
    unit: str
    limits: Range
    verdict: str
    why: str

    def __str__(self) -> str:
        because = f" ({self.why})" if self.why else ""
        return f"{self.name}: {self.measured()}; {self.asked()}: {self.verdict}{because}"

    def measured(self) -> str:
        """The value in words, with its spread where the sensor's uncertainty gives one."""
        if self.value is None:
            return "not found"
        if None in (self.low, self.high) or _figures(self.low) == _figures(self.high):
            return f"{_figures(self.value)} {self.unit}"
        spread = f"{_figures(self.low)} to {_figures(self.high)}"
        return f"{_figures(self.value)} {self.unit} ({spread})"

    def asked(self) -> str:
        return in_words(self.limits, self.unit)


class Judgement(NamedTuple):
    """A profile judged: each criterion, and the verdict on the whole.

    `begins` says at which second the preheat and the time above liquidus begin to count.
    """

    profile: Profile
    limits: ReflowLimits
    uncertainty: float
    criteria: dict[str, Criterion]
    begins: dict[str, float]

    @property
    def verdict(self) -> str:
        """`fail` when one criterion fails, else `cannot tell` when one cannot be told."""
        verdicts = {one.verdict for one in self.criteria.values()}
        return next((word for word in (FAIL, CANNOT_TELL) if word in verdicts), PASS)

    @property
    def reason(self) -> str:
        told = [one.name for one in self.criteria.values() if one.verdict == self.verdict]
        return "every criterion is kept" if self.verdict == PASS else "; ".join(told)

    def finding(self) -> Finding:
        """The same as a finding, with its working and sources."""
        return Finding(title=f"Reflow profile against {self.limits.name}", **self.parts())

    def parts(self) -> dict:
        """What a finding or calculator says of this judgement."""
        return {
            "values": {key: _quantity(one) for key, one in self.criteria.items()},
            "working": tuple(str(one) for one in self.criteria.values()),
            "verdict": self.verdict,
            "reason": self.reason,
            "notes": (self._spread_note(), *self.limits.notes),
            "sources": (*self.limits.sources, *(("IEC 60584",) if self.uncertainty else ())),
            "cautions": _CAUTIONS,
        }

    def _spread_note(self) -> str:
        if not self.uncertainty:
            return "Judged as if the sensor were exact."
        return f"The sensor is taken as good to ±{self.uncertainty:g} °C."

    def __str__(self) -> str:
        head = f"{self.profile.name}, {self.limits.name}: {self.verdict} ({self.reason})"
        return "\n".join([head, *(f"  {one}" for one in self.criteria.values())])

    __repr__ = __str__

    def _repr_html_(self) -> str:
        names = ("criterion", "measured", "asked for", "verdict")
        rows = [html.row(names, html.LEFT, "th"), *map(_shown, self.criteria.values())]
        title = html.text(f"{self.profile.name}, {self.limits.name}")
        return (
            f"<strong>{title}: {html.sign_of(self.verdict)} {self.verdict}</strong> "
            f"({html.text(self.reason)}){html.table(rows)}{html.listed(self.parts()['notes'])}"
        )


def _shown(one: Criterion) -> str:
    """One criterion as the row of a table."""
    verdict = html.Html(f"{html.sign_of(one.verdict)} <b>{one.verdict}</b> {html.text(one.why)}")
    looks = (html.LEFT, "", "", "style='text-align:left'")
    return html.row((one.name, one.measured(), one.asked(), verdict), looks)


def judge_profile(profile: Profile, limits: ReflowLimits, uncertainty: float = SENSOR) -> Judgement:
    """Hold a profile against limits; the sensor is good to ± `uncertainty` in K, 0 to 50.

    Raises RepairlibError for an uncertainty out of range.

    >>> from repairlib.heat.profile import read_points
    >>> from repairlib.heat.reflow_limits import standard_limits
    >>> points = "0 25, 90 150, 180 200, 210 217, 240 245, 255 245, 285 217, 360 25"
    >>> judge_profile(read_points(points), standard_limits("Pb-free", 260), 0).verdict
    'pass'
    """
    if not 0 <= uncertainty <= 50:
        raise RepairlibError(f"{uncertainty}", "not an uncertainty in K", "0 to 50 K")
    exact = measure(profile, limits)
    shifted = (
        [measure(profile, limits, shift) for shift in (-uncertainty, uncertainty)]
        if uncertainty
        else [exact]
    )
    criteria = {
        key: _judge(
            name,
            unit,
            limit,
            exact[key],
            [one[key] for one in shifted],
            _doubt_in(profile.doubts, [exact, *shifted], key),
        )
        for key, (name, unit, limit) in _asked(limits).items()
        if limit != (None, None)
    }
    begins = {"soak": exact["soak"].span[0], "above": exact["ramp_up"].span[0]}
    return Judgement(profile, limits, uncertainty, criteria, begins)


def _asked(limits: ReflowLimits) -> dict[str, tuple[str, str, Range]]:
    near = limits.peak[1] - NEAR if limits.peak[1] is not None else 0
    return {
        "soak": (
            f"preheat {limits.soak_from:g} to {limits.soak_to:g} °C",
            "s",
            limits.soak,
        ),
        "ramp_up": ("ramp up to the peak", "K/s", limits.ramp_up),
        "above": (f"time above {limits.liquidus:g} °C", "s", limits.above),
        "peak": ("peak", "°C", limits.peak),
        "near": (f"time above {near:g} °C", "s", limits.near),
        "ramp_down": ("ramp down from the peak", "K/s", limits.ramp_down),
        "total": (f"{COLD:g} °C to peak", "s", limits.total),
    }


def _judge(name, unit, limit, exact: Measured, shifted: list[Measured], doubt) -> Criterion:
    values = [one.value for one in (exact, *shifted)]
    known = [value for value in values if value is not None]
    low, high = (min(known), max(known)) if known else (None, None)
    if None in values:
        why = next(one.why for one in (exact, *shifted) if one.value is None)
        return Criterion(name, exact.value, low, high, unit, limit, CANNOT_TELL, why)
    kept = {_keeps(value, limit) for value in values}
    verdict = CANNOT_TELL if len(kept) > 1 else PASS if kept == {True} else FAIL
    why = "the limit lies inside the sensor's uncertainty" if len(kept) > 1 else ""
    too_much = limit[1] is not None and low > limit[1] + ROUNDING
    if exact.least and not too_much:
        verdict, why = CANNOT_TELL, exact.why
    if doubt and not (unit == "°C" and too_much):  # what was read too hot stays too hot
        verdict, why = CANNOT_TELL, doubt.why
    return Criterion(name, exact.value, low, high, unit, limit, verdict, why)


def _keeps(value: float, limit: Range) -> bool:
    least, most = limit
    above = least is None or value >= least - ROUNDING
    return above and (most is None or value <= most + ROUNDING)


def _doubt_in(doubts: tuple[Doubt, ...], measures, key: str) -> Doubt | None:
    """The first doubtful stretch that touches where a measure was taken; a gap may hide a peak."""
    keys = (key, "peak") if key == "total" else (key,)
    spans = [one[name].span for one in measures for name in keys]
    touched = (
        one for one in doubts if any(one.start <= end and one.end >= start for start, end in spans)
    )
    return next(touched, None)


def _figures(value: float) -> str:
    """Three figures, and no figures behind the point from 100 on.

    >>> _figures(0.9333), _figures(25.714), _figures(240.0)
    ('0.933', '25.7', '240')
    """
    return f"{value:.0f}" if abs(value) >= 99.95 else f"{value:.3g}"


def _quantity(one: Criterion) -> object:
    if one.value is None:
        return "not found"
    if one.unit == "K/s":
        return f"{_figures(one.value)} K/s"
    return Quantity(float(f"{one.value:.4g}"), one.unit)


@calculator(
    topic="heat",
    title="Reflow profile judged",
    sources=("J-STD-020D table 5-2", "J-STD-020C tables"),
    cautions=_CAUTIONS,
)
def judge_reflow(
    points: Annotated[
        str, Text("The profile: seconds and °C, points parted by commas: 0 25, 90 150, 180 200.")
    ],
    alloy: Annotated[str, Choice(ALLOYS, "Kind of solder.")],
    thickness: Annotated[float, Given("m", "Thickness of the part's body.", above=0, at_most=0.1)],
    volume: Annotated[
        float, Given("", "Volume of the body without terminals, in mm³.", above=0, at_most=1e6)
    ],
    uncertainty: Annotated[
        float, Given("°C", "The sensor is good to plus or minus this.", at_least=0, at_most=50)
    ] = SENSOR,
    edition: Annotated[str, Choice(EDITIONS, "Revision: D.1 (and later) or C.")] = D1,
) -> Found:
    """A typed profile against J-STD-020 by package: pass, fail or cannot tell, with each reason.

    `points` are seconds and °C; `thickness` in metres, `volume` in mm³; `uncertainty` in K.
    Raises RepairlibError for profiles and packages that cannot be. Sources: J-STD-020 as quoted.

    >>> points = "0 25, 90 150, 180 200, 210 217, 240 245, 255 245, 285 217, 360 25"
    >>> judge_reflow(points, "Pb-free", "1 mm", 200).verdict
    'pass'
    """
    limits = package_limits(alloy, round(thickness * 1000, 9), volume, edition)
    return found(**judge_profile(read_points(points), limits, uncertainty).parts())
