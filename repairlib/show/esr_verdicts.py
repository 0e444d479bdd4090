"""Parts alike on one scale of ESR: which are as new, which are worn, which are past their end.

The verdicts and limits come from `repairlib.health`; this module only draws them.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import log
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.core.finding import Finding
from repairlib.core.quantity import read_quantity
from repairlib.core.verdicts import FIT
from repairlib.health import judge_capacitor, spread_of
from repairlib.show.canvas import INK, POSITIVE, QUIET, Canvas, Point
from repairlib.show.intervals import bar
from repairlib.show.picture import Picture

WIDTH, LEFT, RIGHT = 528, 118, 350
TOP, ROW = 94, 48
WORDS = 15
FREQUENCY = "120 Hz"
MOST_PARTS = 8
ROOM = 3.0  # the scale begins at the limit of a new part by this, and ends at the worn one times it
FIT_GROUND, MARGINAL_GROUND, REPLACE_GROUND = "#e4f1e6", "#fbf0d4", "#f8e2df"


class Zones(NamedTuple):
    """The two limits [Ω] and where an ESR lies between the ends of the scale."""

    new: float
    worn: float

    def __call__(self, ohm: float) -> float:
        """The place of an ESR; what lies beyond the scale is at its end."""
        low, high = self.new / ROOM, self.worn * ROOM
        inside = min(max(ohm, low), high)
        return LEFT + (RIGHT - LEFT) * log(inside / low) / log(high / low)


def draw_esr_verdicts(
    family: str,
    capacitance: str,
    rated_voltage: str,
    parts: Sequence[tuple[str, str, str]],
    uncertainty: str = "5 %",
) -> Picture:
    """Draw parts alike, each (name, measured capacitance, ESR at 120 Hz), with their verdicts.

    `family`, `capacitance` and `rated_voltage` are what all of them are, as judge_capacitor takes
    them; a capacitance that was not measured is left empty. Each bar is an ESR with the meter's
    error, `uncertainty` and two counts. The verdict counts the capacitance too, and the words under
    it say which reading brought it. Raises RepairlibError for none or more than 8 parts, and where
    no ESR limit at 120 Hz is known.

    >>> draw_esr_verdicts("aluminium general 85", "10 µF", "16 V", [("C20", "9.6 µF", "71 Ω")])
    ESR at 120 Hz of 10 µF, 16 V. A new part has at most 26.53 Ω, a worn one at most 53.05 Ω.
    C20: 9.6 µF, 71 Ω: replace, by ESR.
    """
    if not 1 <= len(parts) <= MOST_PARTS:
        raise RepairlibError(f"{len(parts)} parts", "not a number that is drawn", "1 to 8 parts")
    part = family, capacitance, rated_voltage
    found = [_judged(part, farad, ohm, uncertainty) for _, farad, ohm in parts]
    if "esr_limit_new" not in found[0].values:
        known = "a family with a tan δ limit at 120 Hz"
        raise RepairlibError(family, "no ESR limit at 120 Hz is known", known)
    zones = Zones(found[0].esr_limit_new, found[0].esr_limit_worn)
    canvas = Canvas(WIDTH, TOP + ROW * len(parts) + 12)
    limits = [str(found[0].values[name]) for name in ("esr_limit_new", "esr_limit_worn")]
    _draw_zones(canvas, zones, limits, TOP + ROW * len(parts))
    said = [
        f"ESR at {FREQUENCY} of {capacitance}, {rated_voltage}. A new part has at most "
        f"{limits[0]}, a worn one at most {limits[1]}."
    ]
    percent = read_quantity(uncertainty, "%").value
    for place, ((name, farad, ohm), finding) in enumerate(zip(parts, found, strict=True)):
        readings = ", ".join(filter(None, (farad, ohm)))
        why, y = _why(finding), TOP + ROW * (place + 0.5)
        _draw_reading(canvas, zones, y, ohm, percent)
        _name(canvas, (12, y), name, readings)
        _name(canvas, (RIGHT + 14, y), str(finding.verdict), why)
        said.append(f"{name}: {readings}: {finding.verdict}{', ' + why if why else ''}.")
    return canvas.picture("\n".join(said))


def _judged(part: tuple[str, str, str], farad: str, ohm: str, uncertainty: str) -> Finding:
    more = {"measured": farad} if farad else {}
    return judge_capacitor(*part, esr=ohm, frequency=FREQUENCY, uncertainty=uncertainty, **more)


def _why(finding: Finding) -> str:
    """Which readings brought the verdict."""
    if finding.verdict == FIT:
        return ""
    readings = ("capacitance", "ESR")
    deciding = [name for name in readings if finding.values.get(name) == finding.verdict]
    return f"by {' and '.join(deciding)}"


def _draw_zones(canvas: Canvas, zones: Zones, limits: Sequence[str], bottom: float) -> None:
    new, worn = zones(zones.new), zones(zones.worn)
    for start, end, ground, words in (
        (LEFT, new, FIT_GROUND, "as new"),
        (new, worn, MARGINAL_GROUND, "worn"),
        (worn, RIGHT, REPLACE_GROUND, "past its end"),
    ):
        canvas.rect(start, TOP - 24, end - start, bottom - TOP + 24, ground, stroke="none")
        canvas.text((start + end) / 2, TOP - 12, words, WORDS - 2)
    for x, words, anchor in ((new, limits[0], "end"), (worn, limits[1], "start")):
        canvas.line((x, TOP - 34), (x, bottom), stroke=POSITIVE, dash="6 5")
        shift = 8 if anchor == "end" else -8
        canvas.text(x + shift, TOP - 46, f"at most {words}", WORDS, anchor, POSITIVE, bold=True)
    canvas.text(12, TOP - 76, f"ESR at {FREQUENCY}", WORDS, "start", bold=True)


def _draw_reading(canvas: Canvas, zones: Zones, y: float, ohm: str, percent: float) -> None:
    reading = read_quantity(ohm, "Ω").value
    spread = spread_of(reading, "Ω", percent)
    bar(canvas, zones(reading - spread), zones(reading + spread), y)
    canvas.circle(zones(reading), y, 3, INK)


def _name(canvas: Canvas, place: Point, words: str, more: str) -> None:
    """Words in bold with, if there is more to say, a second line under them."""
    x, y = place
    canvas.text(x, y - 9 if more else y, words, WORDS + 1, "start", bold=True)
    if more:
        canvas.text(x, y + 10, more, WORDS - 1, "start", QUIET)
