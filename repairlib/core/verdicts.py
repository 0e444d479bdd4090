"""The words in which verdicts are given, and what each means: good, bad, look, or cannot tell.

A room keeps the words that its trade uses; each stands here once with its meaning, so that every
face gives it the same sign and colour.
"""

from __future__ import annotations

CANNOT_TELL = "cannot tell"
PASS, FAIL = "pass", "fail"
FIT, MARGINAL, REPLACE = "fit", "marginal", "replace"
MAY_STAY, MUST_GO = "may stay", "must go"
RIGHT, REVERSED = "right", "reversed"
WITHIN, OVER, TOO_LITTLE = "within the limits", "over a limit", "does not melt"
OUTSIDE = "outside the limits"
CONDITIONS, NEVER = "only with these conditions", "do not"
REPAIR, DO_NOT_REPAIR, DEPENDS = "repair", "do not repair", "it depends"

GOOD, BAD, LOOK = "good", "bad", "look"

MEANS = {
    **dict.fromkeys((PASS, FIT, MAY_STAY, RIGHT, WITHIN, REPAIR), GOOD),
    **dict.fromkeys(
        (FAIL, REPLACE, MUST_GO, REVERSED, OVER, OUTSIDE, TOO_LITTLE, NEVER, DO_NOT_REPAIR), BAD
    ),
    **dict.fromkeys((MARGINAL, CONDITIONS, DEPENDS), LOOK),
}


def meaning(verdict: str | None) -> str:
    """GOOD, BAD, LOOK or CANNOT_TELL: what a verdict comes to. Words not listed say CANNOT_TELL.

    >>> meaning("within the limits"), meaning("marginal"), meaning("start at 330 °C")
    ('good', 'look', 'cannot tell')
    """
    return MEANS.get(verdict or "", CANNOT_TELL)
