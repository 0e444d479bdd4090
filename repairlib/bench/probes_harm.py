"""What a live or charged circuit does to an instrument that was made for one at rest.

The instrument's protection is taken as 1 Ω across its probes; what goes into it in the first second
decides. The limits are choices of this workbook: instruments for mains categories bear more, and
say so on their faces.
"""

from __future__ import annotations

from typing import NamedTuple

from repairlib.bench.charging import Charging
from repairlib.bench.electric import electric
from repairlib.bench.resting import resting
from repairlib.bench.state import State
from repairlib.circuits import CircuitPart
from repairlib.core.limits import ES1, STEADY

PROTECTION_OHM = 1.0
MOST_JOULE = 0.1  # into an ESR tester or a capacitance meter
MOST_VOLTS = 60.0  # on the ohms input of the multimeter
PERSON_VOLTS = STEADY[ES1].dc
STEPS = (1e-6, 1e-5, 1e-4, 1e-3, 1e-2, 0.1, 0.9)  # s
STILL = 5e-3  # V, below which a circuit counts as discharged


DARK = "its display stays dark"
UNSTEADY = "no steady figure: the circuit is live"


class Harm(NamedTuple):
    """What is told, and whether a person could be hurt too."""

    told: str
    hurts: bool


NO_HARM = Harm("", False)


def charged(state: State) -> bool:
    """Whether anything on the board holds a charge that an instrument would see."""
    return any(abs(volts) > STILL for volts in dict(state.charges).values())


def joules_into(state: State, one: str, other: str) -> float:
    """The energy [J] that goes into the protection of an instrument in the first second."""
    guard = CircuitPart("R of the protection", (one, other), PROTECTION_OHM)
    if state.powered:
        found = electric(state, (guard,))
        if found.seconds is None:
            return found.between(one, other) ** 2 / PROTECTION_OHM
        wave = found.waves[one] - found.waves[other]
        return float((wave**2).mean()) / PROTECTION_OHM
    if not charged(state):
        return 0.0
    run = Charging(resting(state, (guard,)), (one, other), dict(state.charges))
    idle = CircuitPart("R of nothing", (one, other), 1e12)
    return sum(run.go_on(idle, step) ** 2 / PROTECTION_OHM * step for step in STEPS)


def spoiled(state: State, one: str, other: str, instrument: str) -> Harm:
    """What the circuit does to an instrument for parts at rest; NO_HARM where it bears it."""
    joule = joules_into(state, one, other)
    if joule <= MOST_JOULE:
        return NO_HARM
    across = volts_across(state, one, other)
    told = f"{abs(across):.0f} V went into the {instrument} with a crack: its input is burnt."
    return Harm(told, abs(across) > PERSON_VOLTS)


def volts_across(state: State, one: str, other: str) -> float:
    """The volts between two points with nothing put there."""
    return electric(state).between(one, other)
