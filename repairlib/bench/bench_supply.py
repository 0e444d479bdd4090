"""The displays of the bench supply: its volts, its amps, and which of the two it holds."""

from __future__ import annotations

from repairlib.bench.counts import Accuracy, Span, shows
from repairlib.bench.electric import electric
from repairlib.bench.moves import Reading
from repairlib.bench.state import SUPPLY, State
from repairlib.core.errors import RepairlibError

SOURCE = "P of the bench"
VOLTS = (Span(100.0, 0.01, "V"),)
AMPS = (Span(10.0, 1e-3, "A"),)
ERROR = Accuracy(0.5, 2)  # per cent, digits, from memory
HOLDS_VOLTS, HOLDS_AMPS = "constant voltage", "constant current"
AT_LIMIT = 0.999  # of the limit, from which it says that it holds the current


def supply_shows(state: State) -> Reading:
    """What the supply displays now; the value is its amps.

    Raises RepairlibError where no supply feeds the set.
    """
    if state.feed.kind != SUPPLY:
        raise RepairlibError("supply", "the bench supply is off", "plug in with supply")
    now = electric(state)
    one, other = state.set.inlet
    amps = -now.amps[SOURCE]
    volts = shows(now.between(one, other), VOLTS, ERROR, state, "supply, V")
    seen = shows(amps, AMPS, ERROR, state, "supply, A")
    holds = HOLDS_AMPS if amps >= AT_LIMIT * state.feed.limit else HOLDS_VOLTS
    return Reading(
        "bench supply", (one, other), f"{volts.text}, {seen.text}, {holds}", seen.value, "A",
        range=seen.span.said, error=seen.error,
    )  # fmt: skip
