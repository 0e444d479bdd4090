"""The missing resistor of a feedback divider, from the one that is left and the reference voltage.

A wrong one puts a wrong voltage on everything behind the regulator, so that nothing is guessed: the
reference is read in the data sheet, the output on a twin or in the diagram.
"""

from __future__ import annotations

from typing import Annotated

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity, brief
from repairlib.core.series import nearest

UPPER, LOWER = "upper, to the output", "lower, to ground"


@calculator(
    topic="missing parts",
    title="Missing resistor of a feedback divider",
    sources=("common practice",),
    cautions=("heat and fire",),
)
def divider_resistor(
    missing: Annotated[str, Choice((UPPER, LOWER), "Which of the two is gone.")],
    other: Annotated[
        float, Given("Ω", "The other resistor, by its print.", above=0, at_least=1, at_most=1e8)
    ],
    output: Annotated[
        float, Given("V", "The output that is due.", above=0, at_least=0.1, at_most=60)
    ],
    reference: Annotated[
        float,
        Given("V", "At the feedback pin, from the data sheet.", above=0, at_least=0.05, at_most=30),
    ],
) -> Found:
    """The missing resistor, the nearest one made, and the output that it gives.

    `other` in Ω; `output` and `reference` in V, the output being the higher. The feedback pin's own
    current is left out. Raises RepairlibError where the output is not above the reference. Source:
    Ohm's law, output = reference × (1 + upper / lower).

    >>> finding = divider_resistor("lower", "30 kΩ", "3.3 V", "0.8 V")
    >>> finding.missing_resistor, finding.nearest_made, finding.output_then
    (9.6 kΩ, 9.53 kΩ, 3.318 V)
    """
    if output <= reference:
        accepted = f"an output above the reference of {brief(reference, 'V')}"
        raise RepairlibError(brief(output, "V"), "a divider cannot make it", accepted)
    ratio = output / reference - 1
    ohms = other * ratio if missing == UPPER else other / ratio
    made = nearest(ohms, "E96")
    upper, lower = (made, other) if missing == UPPER else (other, made)
    then = reference * (1 + upper / lower)
    said = f"{brief(other, 'Ω')} {'×' if missing == UPPER else '/'}"
    return found(
        {
            "missing_resistor": Quantity(float(f"{ohms:.4g}"), "Ω"),
            "nearest_made": Quantity(made, "Ω"),
            "output_then": Quantity(float(f"{then:.4g}"), "V"),
        },
        working=[
            f"{said} ({brief(output, 'V')} / {brief(reference, 'V')} - 1) = {brief(ohms, 'Ω')}",
            f"{brief(reference, 'V')} × (1 + {brief(upper, 'Ω')} / {brief(lower, 'Ω')})"
            f" = {brief(then, 'V')}",
        ],
        notes=[
            "Measure the output with nothing behind it, from a current-limited supply, before "
            "anything is connected",
            "Do not power it without it: with the upper one gone the output runs to its highest, "
            "with the lower one gone it falls to about the reference",
        ],
    )
