"""What six rules call low for a steady voltage: ac and dc, in volts and in ampere.

They differ by standard and edition, so each answer names its rule. They are rules for the design
of equipment and no permission to touch.
"""

from __future__ import annotations

from typing import Annotated

from repairlib.core.calculator import Choice, Found, calculator, found
from repairlib.core.limits import STEADY
from repairlib.core.quantity import Quantity

NO_PERMISSION = "A low class is no permission to touch."


FIGURES = ("ac_rms", "ac_peak", "dc", "ac_rms_current", "ac_peak_current", "dc_current")


@calculator(
    topic="stored charge",
    title="Low voltage by a rule",
    sources=("common practice",),
    cautions=("mains",),
)
def steady_limits(
    rule: Annotated[str, Choice(tuple(STEADY), "The rule and its edition.")],
) -> Found:
    """The steady voltages and currents that a rule calls low, ac up to 1 kHz.

    Raises RepairlibError for a rule not listed. Source: IEC 62368-1; IEC 60335-1 and a TV safety
    clause as quoted; IEC 61010-1 and the ac current of ES2 from memory.

    >>> steady_limits("IEC 62368-1, ES1").dc
    60 V
    """
    limits = STEADY[rule]
    stated = {name: getattr(limits, name) for name in FIGURES}
    values = {
        name: Quantity(value, "A" if name.endswith("current") else "V")
        for name, value in stated.items()
        if value is not None
    }
    notes = [NO_PERMISSION, "Verify with a meter, twice."]
    return found(values, working=[f"limits of {rule}"], notes=notes, sources=limits.sources)
