"""Pass, fail or cannot tell: an uncertain value against its limits, by a rule that is named.

Covers the decision rules of ILAC-G8. How uncertain a reading is, is worked out in meter.py.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import brief
from repairlib.core.verdicts import CANNOT_TELL, FAIL, PASS

CONDITIONAL_PASS, CONDITIONAL_FAIL = "conditional pass", "conditional fail"
SIMPLE, GUARDED, NON_BINARY = "simple", "guarded", "non-binary"
# Rule: (clause of ILAC-G8:09/2019, in words).
RULES = {
    SIMPLE: ("4.2.1", "pass up to the limit; the uncertainty of the reading is left out"),
    GUARDED: ("4.2.2", "pass when clear of the limit by the guard band, otherwise fail"),
    NON_BINARY: ("4.2.3", "pass or fail when clear of the limit, cannot tell in between"),
}
NORMAL, UNIFORM = "normal", "uniform"
_ROUNDING = 1e-12  # of the larger end; figures closer than this are the same


@dataclass(frozen=True, slots=True)
class Decision:
    """A `verdict` (PASS, FAIL or CANNOT_TELL), the `zone` of the rule it came from, and why.

    A reading from `accept_low` to `accept_high` passes; None where there is no limit. When
    `accept_low` is above `accept_high` no reading can pass.
    """

    verdict: str
    zone: str
    reason: str
    rule: str
    accept_low: float | None
    accept_high: float | None


def decide(
    low: float,
    high: float,
    limit_low: float | None = None,
    limit_high: float | None = None,
    rule: str = NON_BINARY,
    guard: float = 1.0,
    unit: str = "",
) -> Decision:
    """Whether a value that lies from `low` to `high` keeps its limits, by a stated rule.

    The reading is the middle, its uncertainty U half the width. At least one limit is given. All
    four figures are in the same `unit`, which is only used in words. For a reading such as
    "over 20 MΩ" one end is infinite. `rule` is one of RULES; `guard` is the guard band as a
    multiple of U. Under the non-binary rule a conditional pass or fail is "cannot tell". Where
    two guard bands are wider than the limits are apart nothing passes, and the reason says so.
    Source: ILAC-G8:09/2019, 4.2. Raises RepairlibError for figures that contradict each other.

    >>> decide(4.79, 4.85, 4.75, 5.25, unit="V").verdict
    'pass'
    >>> print(decide(4.79, 4.85, 4.75, 5.25, unit="V").reason)
    4.79 V to 4.85 V is within 4.75 V to 5.25 V
    >>> print(decide(4.6, 4.6, 4.75, 5.25, unit="V").reason)
    4.6 V is below 4.75 V
    >>> decide(5.21, 5.27, 4.75, 5.25, unit="V").zone
    'conditional pass'
    """
    _check(low, high, limit_low, limit_high, rule, guard)
    measured = math.isfinite(low) and math.isfinite(high)
    reading = low / 2 + high / 2 if measured else math.nan
    band = 0.0 if rule == SIMPLE or not measured else guard * (high - low) / 2
    bottom, top = (reading - band, reading + band) if measured else (low, high)
    accept_low = None if limit_low is None else limit_low + band
    accept_high = None if limit_high is None else limit_high - band
    value, limits = _value_words(low, high, unit), _limit_words(limit_low, limit_high, unit)
    slack = _ROUNDING * max(abs(low), abs(high)) if measured else 0.0

    def below(one: float, other: float | None) -> bool:
        return other is not None and other - one > slack

    def above(one: float, other: float | None) -> bool:
        return other is not None and one - other > slack

    def decision(verdict: str, zone: str, reason: str) -> Decision:
        return Decision(verdict, zone, reason, rule, accept_low, accept_high)

    shown = "the reading" if rule == SIMPLE else value
    if not below(bottom, limit_low) and not above(top, limit_high):
        return decision(PASS, PASS, f"{shown} is {limits}")
    if limit_low is not None and below(top, limit_low):
        return decision(FAIL, FAIL, f"{shown} is below {brief(limit_low, unit)}")
    if limit_high is not None and above(bottom, limit_high):
        return decision(FAIL, FAIL, f"{shown} is above {brief(limit_high, unit)}")
    across = f"{value} may or may not be {limits}"
    if not measured:
        return decision(CANNOT_TELL, CANNOT_TELL, across)
    inside = not below(reading, limit_low) and not above(reading, limit_high)
    zone = CONDITIONAL_PASS if inside else CONDITIONAL_FAIL
    no_zone = accept_low is not None and above(accept_low, accept_high)
    if no_zone and (inside or rule == NON_BINARY):
        too_wide = f"no acceptance zone: {value} is too wide to be judged {limits}"
        return decision(CANNOT_TELL, zone, too_wide)
    if rule == NON_BINARY:
        return decision(CANNOT_TELL, zone, f"{zone}: {across}")
    return decision(FAIL, FAIL, f"not clear of its limit by the guard band: {across}")


def false_accept_risk(guard: float, spread: str = NORMAL) -> float:
    """The chance that a part is beyond its limit although it just passes.

    `guard` is the guard band as a multiple of U, 0 or more. `spread` says what U is: NORMAL for
    two standard deviations of readings that spread normally (k = 2), UNIFORM for a bound within
    which every value is as likely, as a maker's accuracy figure is. Raises RepairlibError for a
    negative guard band. Source: ILAC-G8:09/2019; the uniform spread by hand, (1 - guard) / 2.

    >>> false_accept_risk(0), false_accept_risk(1)
    (0.5, 0.0228)
    >>> false_accept_risk(0.5, UNIFORM), false_accept_risk(1, UNIFORM)
    (0.25, 0.0)
    """
    if not 0 <= guard < math.inf:
        raise RepairlibError(guard, "a guard band is 0 or more", "a multiple of U, such as 1")
    if spread == UNIFORM:
        return max(1 - guard, 0.0) / 2
    return math.erfc(2 * guard / math.sqrt(2)) / 2


def _check(low, high, limit_low, limit_high, rule, guard) -> None:
    if rule not in RULES:
        raise RepairlibError(rule, "not a decision rule known here", ", ".join(RULES))
    if not 0 <= guard < math.inf:
        raise RepairlibError(guard, "a guard band is 0 or more", "a multiple of U, such as 1")
    if not low <= high or low == math.inf or high == -math.inf:
        wrong = "the low end is not below the high end"
        raise RepairlibError(f"{low} to {high}", wrong, "two numbers, the lower one first")
    limits = [limit for limit in (limit_low, limit_high) if limit is not None]
    if not limits:
        raise RepairlibError("no limit", "there is nothing to judge by", "one limit or two")
    if not all(math.isfinite(limit) for limit in limits) or limits != sorted(set(limits)):
        wrong = "the lower limit is not below the upper limit"
        read = " to ".join(str(limit) for limit in limits)
        raise RepairlibError(read, wrong, "two numbers, the lower one first")


def _value_words(low: float, high: float, unit: str) -> str:
    if math.isinf(low) and math.isinf(high):
        return "an unknown value"
    if math.isinf(low):
        return f"a value of at most {brief(high, unit)}"
    if math.isinf(high):
        return f"a value of at least {brief(low, unit)}"
    if low == high:
        return brief(low, unit)
    return f"{brief(low, unit)} to {brief(high, unit)}"


def _limit_words(low: float | None, high: float | None, unit: str) -> str:
    at_least = "" if low is None else brief(low, unit)
    at_most = "" if high is None else brief(high, unit)
    if at_least and at_most:
        return f"within {at_least} to {at_most}"
    return f"at least {at_least}" if at_least else f"at most {at_most}"
