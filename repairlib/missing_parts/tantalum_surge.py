"""What switching on and the wrong way round do to a chip tantalum, and what is due before power."""

from __future__ import annotations

from repairlib.core.quantity import brief

IN_SERIES = 0.65  # Ω that a maker counts with, beside the ESR, for the surge a tantalum bears
REVERSE_PART, REVERSE_VOLTS = 0.1, 1.0  # of the rating at 25 °C, and at most; AVX
RINGS = (
    "Where a live plug or a long lead feeds the place, a ceramic with nothing in series can ring "
    "to twice the voltage."
)


def surge(volts: float, rated: float, series: float | None, stiff: bool) -> str:
    """What the surge at switching on asks for.

    A maker's rule: at most rated / (0.65 Ω + ESR). With the resistance R of the way it is
    volts / (R + ESR), so ESR (1 - volts / rated) is at least 0.65 Ω × volts / rated - R.
    """
    if not stiff and series is None:
        return (
            "What feeds this place limits its current, so the rating is all that the surge asks "
            "for. A plug that is put in live takes that away."
        )
    share, way = volts / rated, series or 0.0
    needed = max(IN_SERIES * share - way, 0.0) / (1 - share)
    if needed == 0:
        return f"{brief(way, 'Ω')} in series limits the surge enough for a part of any ESR."
    known = f"With {brief(way, 'Ω')} in series" if series is not None else "Straight on the rail"
    return (
        f"{known} the surge at switching on asks for an ESR of "
        f"{brief(float(f'{needed:.3g}'), 'Ω')} or more by the part's data sheet (a maker's rule); "
        "an encyclopaedia asks for 3 Ω in series for each volt. Where nothing limits the current a "
        "low-ESR tantalum shorts and burns: polymer or aluminium is milder there."
    )


def burns(rated: float) -> str:
    """What a wrong one does, and what is due between the soldering and the power."""
    volts = brief(min(REVERSE_PART * rated, REVERSE_VOLTS), "V")
    return (
        "A chip tantalum that is reversed or rated too low turns into a short circuit and burns; "
        f"in reverse it bears peaks of {volts} at 25 °C, and no steady voltage. Before power: bar "
        "against ground by meter, then the rail against ground for a short; then a supply that "
        "limits its current."
    )
