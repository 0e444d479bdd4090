"""The thermometer of the bench: a bead on a wire, held against the middle of a part."""

from __future__ import annotations

from repairlib.bench.counts import Accuracy, Span, shows
from repairlib.bench.moves import Reading
from repairlib.bench.state import ROOM, State

SPANS = (Span(300.0, 0.1, "°C"), Span(1300.0, 1.0, "°C"))
ERROR = Accuracy(
    0.5, 15
)  # per cent, and 1.5 °C of a plain bead: from memory, class 1 of such beads
SECONDS = 5.0  # until the bead has the part's temperature; a choice of this workbook


def temperature(state: State, part: str) -> Reading:
    """The temperature of a part [°C]. Raises RepairlibError for a part that is not there.

    >>> from repairlib.bench.practice_set import demo_set
    >>> from repairlib.bench.state import begin
    >>> reading = temperature(begin(demo_set("desk radio"), (), "demo"), "u1")
    >>> reading.points, 20 < reading.value < 24
    (('U1', ''), True)
    """
    name = state.set.part(part).name
    warm = ROOM + dict(state.heat).get(name, 0.0)
    seen = shows(warm, SPANS, ERROR, state, "thermometer")
    return Reading(
        "thermometer", (name, ""), seen.text, seen.value, "°C",
        range=seen.span.said, error=seen.error, seconds=SECONDS,
    )  # fmt: skip
