"""Judgements of lesson 07: a measured part, and a solid tantalum where aluminium stood.

Answers are typed in by hand. Sources: tan δ and end-of-life limits of the Lelon RGA data sheet;
half of the rating for solid tantalum from KEMET. The list of tantalum ratings is from memory.
"""

from __future__ import annotations

from repairlib.core.draws import Draw
from repairlib.core.quantity import NBSP
from repairlib.learn.question import Choice, Mistake, Number

GO = "It must go"
STAY = "It may stay: write the values down, measure again within a year"
MORE = "These readings do not tell: measure again, or more"

# µF, V, ESR limit of a new part and of a worn one [Ω]. RGA: tan δ 0.16 at 16 V, 0.14 at 25 V;
# ESR = tan δ / (2 π 120 Hz C), worn out at twice that.
MEASURED_PARTS = ((47, 16, 4.5, 9.0), (100, 25, 1.86, 3.7), (220, 16, 0.96, 1.9))
# Share of the capacitance, multiple of the new ESR limit (None: not read), judgement.
CASES = ((0.99, 0, MORE), (0.97, 4.6, GO), (0.62, 0.7, GO), (0.98, 0.6, STAY), (0.96, None, MORE))


def worn_or_not(draw: Draw) -> Choice:
    microfarad, volts, new, worn = draw.pick(MEASURED_PARTS)
    share, times, answer = draw.pick(CASES)
    lowest = microfarad * 0.8
    esr = "not read: the meter's battery is flat" if times is None else f"{new * times:.2f}{NBSP}Ω"
    mistakes = [Mistake(MORE, "Both readings were taken. Set each beside its limit.")]
    if answer == GO:
        mistakes.append(Mistake(STAY, "Is each of the two readings within its limit?"))
    elif answer == STAY:
        mistakes.append(Mistake(GO, "Which limit has it passed?"))
    else:
        mistakes = _cannot_tell(times)
    return Choice(
        prompt=f"An old {microfarad}{NBSP}µF {volts}{NBSP}V electrolytic looks sound. It was "
        f"taken out and measured at 120{NBSP}Hz. "
        f"Capacitance: {microfarad * share:.3g}{NBSP}µF. ESR: {esr}. "
        f"Its data sheet allows {lowest:g} to {microfarad * 1.2:g}{NBSP}µF. A new one has at most "
        f"{new:g}{NBSP}Ω, one above {worn:g}{NBSP}Ω is worn out. What does the plan say?",
        options=draw.shuffle([GO, STAY, MORE]),
        answer=answer,
        mistakes=mistakes,
    )


def _cannot_tell(times: float | None) -> list[Mistake]:
    if times is None:
        low = "A part with the right capacitance can still have a high ESR."
        return [Mistake(STAY, low), Mistake(GO, "Which reading says so?")]
    shorted = (
        "No capacitor has 0 Ω. Are the probes touching, or is the part shorted? A short burns."
    )
    touching = "No capacitor has 0 Ω. What else could give this reading?"
    return [
        Mistake(STAY, shorted, hazard="heat and fire"),
        Mistake(GO, touching),
    ]


# What the place works at [V]: the lowest rating of a solid tantalum that is at least twice that.
TANTALUMS = ((5, 10), (8, 16), (9, 20), (12, 25), (15, 35))


def tantalum_rating(draw: Draw) -> Number:
    working, answer = draw.pick(TANTALUMS)
    too_low = "Solid tantalum may work at half of its rating only. One that shorts burns."
    return Number(
        unit="V",
        answer=answer,
        tolerance=0,
        prompt="The aluminium part for a place cannot be had. The place works at "
        f"{working}{NBSP}V, behind a resistor. Solid tantalums are made for 4, 6.3, 10, 16, 20, "
        "25, 35 and 50 V. Which is the lowest rating that you may consider?",
        mistakes=[
            Mistake(lambda volts: volts < 2 * working, too_low, hazard="heat and fire"),
            Mistake(
                lambda volts: volts > answer,
                "High enough, but not the lowest. Which rating comes just above the limit?",
            ),
        ],
        hint="Which share of its rating may a solid tantalum work at?",
    )
