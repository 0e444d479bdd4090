"""What six rules call low for a steady voltage: ac and dc, in volts and in ampere.

They differ by standard and edition, so each answer names its rule. They are rules for the design
of equipment and no permission to touch.
"""

from __future__ import annotations

from typing import Annotated, NamedTuple

from repairlib.core.calculator import Choice, Found, calculator, found
from repairlib.core.quantity import Quantity

NO_PERMISSION = "A low class is no permission to touch."


class Steady(NamedTuple):
    """Limits of one rule: V rms, V peak, V dc, A rms, A peak, A dc; None where it states none."""

    ac_rms: float | None
    ac_peak: float | None
    dc: float
    ac_rms_current: float | None
    ac_peak_current: float | None
    dc_current: float | None
    sources: tuple[str, ...]


ES1, ES2 = "IEC 62368-1, ES1", "IEC 62368-1, ES2"
# ac up to 1 kHz. The stored text prints the ac current of ES2 as that of ES1: 5 mA is from memory.
RULES = {
    ES1: Steady(30, 42.4, 60, 0.5e-3, 0.707e-3, 2e-3, ("IEC 62368-1",)),
    ES2: Steady(50, 70.7, 120, 5e-3, 7.07e-3, 25e-3, ("IEC 62368-1", "from memory")),
    "IEC 60335-1 8.1.4": Steady(
        None, 42.4, 42.4, None, 0.7e-3, 2e-3, ("IEC 60335-1 8.1.4, quoted",)
    ),
    "IEC 61010-1:2010": Steady(33, 46.7, 70, None, None, None, ("from memory",)),
    "IEC 61010-1, before 2010": Steady(30, 42.4, 60, None, None, None, ("from memory",)),
    "TV safety clause": Steady(None, 35, 60, None, 0.7e-3, 2e-3, ("TV safety clause, quoted",)),
}


@calculator(
    topic="stored charge",
    title="Low voltage by a rule",
    sources=("common practice",),
    cautions=("mains",),
)
def steady_limits(
    rule: Annotated[str, Choice(tuple(RULES), "The rule and its edition.")],
) -> Found:
    """The steady voltages and currents that a rule calls low, ac up to 1 kHz.

    Raises RepairlibError for a rule not listed. Source: IEC 62368-1; IEC 60335-1 and a TV safety
    clause as quoted; IEC 61010-1 and the ac current of ES2 from memory.

    >>> steady_limits("IEC 62368-1, ES1").dc
    60 V
    """
    limits = RULES[rule]
    values = {
        name: Quantity(value, "A" if name.endswith("current") else "V")
        for name, value in limits._asdict().items()
        if name != "sources" and value is not None
    }
    notes = [NO_PERMISSION, "Verify with a meter, twice."]
    return found(values, working=[f"limits of {rule}"], notes=notes, sources=limits.sources)
