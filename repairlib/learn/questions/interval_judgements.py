"""Readings to judge in lesson 05: where the whole interval lies beside a limit.

Intervals and verdicts are typed in by hand, the verdicts by ILAC-G8:09/2019, 4.2.3; what lies on
both sides of its limit cannot be told. Readings and limits are invented.
"""

from __future__ import annotations

from repairlib.core.draws import Draw
from repairlib.core.quantity import NBSP
from repairlib.learn.question import Choice, Mistake

CANNOT_TELL = "Cannot tell: the limit lies inside the interval"
PASSES = "Pass: the whole interval is below the limit"
FAILS = "Fail: the whole interval is above the limit"

# What is shown: verdict, limit, interval with ±(2 % + 3 digits), and with the 2 % alone, all in Ω.
WITH_INTERVAL = {
    "1.90": ("pass", "2.00", "1.83 to 1.97 Ω", "1.86 to 1.94 Ω"),
    "2.04": ("cannot tell", "2.00", "1.97 to 2.11 Ω", "2.00 to 2.08 Ω"),
    "2.15": ("fail", "2.00", "2.08 to 2.22 Ω", "2.11 to 2.19 Ω"),
    "0.45": ("pass", "0.50", "0.41 to 0.49 Ω", "0.44 to 0.46 Ω"),
    "0.48": ("cannot tell", "0.50", "0.44 to 0.52 Ω", "0.47 to 0.49 Ω"),
    "0.56": ("fail", "0.50", "0.52 to 0.60 Ω", "0.55 to 0.57 Ω"),
    "3.10": ("pass", "3.30", "3.01 to 3.19 Ω", "3.04 to 3.16 Ω"),
    "3.50": ("fail", "3.30", "3.40 to 3.60 Ω", "3.43 to 3.57 Ω"),
}


def pass_or_fail(draw: Draw) -> Choice:
    """A reading beside a limit: pass, fail, or cannot tell."""
    shown, answer = draw.pick(
        [
            *(("0.97", CANNOT_TELL), ("0.94", PASSES), ("1.08", FAILS), ("1.03", CANNOT_TELL)),
            *((shown, said) for shown, (said, *_) in WITH_INTERVAL.items()),
        ]
    )
    if shown in WITH_INTERVAL:
        return _interval_and_verdict(draw, shown)
    look = "Work out the interval. On which side of 1 Ω do its two ends lie?"
    return Choice(
        prompt=f"The limit is 1.00{NBSP}Ω at most. The meter shows `{shown} Ω` and has "
        f"±(2{NBSP}% + 3 digits). Which verdict, by the rule with three verdicts?",
        options=draw.shuffle([PASSES, FAILS, CANNOT_TELL]),
        answer=answer,
        hint=look,
    )


def _interval_and_verdict(draw: Draw, shown: str) -> Choice:
    right, limit, interval, without = WITH_INTERVAL[shown]
    others = [f"{interval}: {said}" for said in ("pass", "fail", "cannot tell") if said != right]
    narrow = f"{without}: {right}"
    return Choice(
        prompt=f"The limit is {limit}{NBSP}Ω at most. The meter shows `{shown} Ω` and has "
        f"±(2{NBSP}% + 3 digits). Which interval is that, and which verdict by the rule with three "
        "verdicts?",
        options=draw.shuffle([f"{interval}: {right}", narrow, *others]),
        answer=f"{interval}: {right}",
        mistakes=[
            Mistake(narrow, "You left the digits out. What is one count of the last place worth?"),
            *(Mistake(one, "On which side of the limit do its two ends lie?") for one in others),
        ],
    )
