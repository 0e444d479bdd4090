"""How bright the lamp in series glows."""

from __future__ import annotations

from repairlib.bench.electric import Electric, electric
from repairlib.bench.moves import Reading
from repairlib.bench.series_lamp import SOCKET
from repairlib.bench.state import LAMP, State
from repairlib.core.errors import RepairlibError

GLOWS = (
    (0.1, "the lamp stays dark"),
    (0.4, "the lamp glows dimly"),
    (0.75, "the lamp is half bright"),
    (float("inf"), "the lamp is bright"),
)  # below which share of its volts; a choice of this workbook


def glow(state: State) -> Reading:
    """How bright the lamp is; the value is the volts across it as a share of those of the feed.

    Raises RepairlibError where no lamp is in series.
    """
    if state.feed.kind != LAMP:
        raise RepairlibError(state.feed.kind, "no lamp is in series", "plug in with a lamp")
    feed = state.set.part(state.set.feed)
    one, found = feed.nodes[0], electric(state)
    if SOCKET not in found.mean or feed.circuit is None:
        across, whole = 0.0, 1.0
    else:
        line = state.feed.line if feed.follows_line else 1.0
        across, whole = _across(found, one), feed.circuit.value * line
    share = float(f"{across / whole:.9g}")
    words = next(words for below, words in GLOWS if share < below)
    return Reading("series lamp", (feed.name, ""), words, share, "")


def _across(found: Electric, one: str) -> float:
    """The r.m.s. volts across the lamp."""
    if found.seconds is None:
        return abs(found.between(one, SOCKET))
    return float(((found.waves[one] - found.waves[SOCKET]) ** 2).mean()) ** 0.5
