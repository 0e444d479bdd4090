"""The ESR tester of the bench: the size of the impedance at one frequency, across what it touches.

It sends a small ac of 0.1 V at most, so that junctions do not conduct, and shows |Z|, as simple
testers do: at 100 kHz that is the ESR of an electrolytic capacitor, and of all that lies in
parallel to it. A small capacitor shows its reactance instead. Frequencies and figures from memory.
"""

from __future__ import annotations

from repairlib.bench.counts import DASHES, Accuracy, Span, shows
from repairlib.bench.impedance import impedance
from repairlib.bench.moves import Reading
from repairlib.bench.probes_harm import DARK, UNSTEADY, spoiled
from repairlib.bench.resting import met_at
from repairlib.bench.state import State
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import brief

FREQUENCIES = (100e3, 10e3, 1e3)  # Hz, the usual one first
OHMS = (Span(10.0, 0.01, "Ω"), Span(100.0, 0.1, "Ω"))
ERROR = Accuracy(2.0, 2, unsigned=True)  # per cent, digits; the leads are taken off


def esr(state: State, one: str, other: str, hertz: float = FREQUENCIES[0]) -> Reading:
    """What the tester shows between two points; OL above 100 Ω, dashes on a live circuit.

    Raises RepairlibError for a frequency that it does not have.

    >>> from repairlib.bench.practice_set import demo_set
    >>> from repairlib.bench.state import begin
    >>> esr(begin(demo_set("desk radio"), (), "demo"), "rail", "0").range
    '10 Ω'
    """
    if hertz not in FREQUENCIES:
        raise RepairlibError(
            hertz,
            "the tester has no such frequency",
            ", ".join(brief(f, "Hz") for f in FREQUENCIES),
        )
    name = f"ESR tester, {brief(hertz, 'Hz')}"
    state = met_at(state, one)
    harm = spoiled(state, one, other, "ESR tester")
    if harm.told:
        return Reading(
            name, (one, other), DASHES, None, "Ω", DARK, harm=harm.told, hurts=harm.hurts
        )
    if state.powered:
        return Reading(name, (one, other), DASHES, None, "Ω", UNSTEADY)
    seen = shows(abs(impedance(state, one, other, hertz)), OHMS, ERROR, state, name)
    return Reading(
        name, (one, other), seen.text, seen.value, "Ω", range=seen.span.said, error=seen.error
    )
