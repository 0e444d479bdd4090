"""At which temperature to set the tip: by solder, size of the joint, and method, with reasons.

More heat is the last thing to reach for. A tip that is wide, clean and wet with solder passes more
heat than a hotter one, and does less harm. What the joint does in time is the business of `joint`.
"""

from __future__ import annotations

from functools import cache
from typing import Annotated, NamedTuple

from repairlib.core.calculator import Choice, Found, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity
from repairlib.core.tables import read_table
from repairlib.heat.solder_alloys import Alloy, alloy, alloy_name, alloy_names

SMALL, ORDINARY, HEAVY = "small", "ordinary", "heavy"
JOINTS = (SMALL, ORDINARY, HEAVY)
IRON, VACUUM, BRAID, AIR = "iron", "vacuum", "braid", "hot air"
METHODS = (IRON, VACUUM, BRAID, AIR)
FLUX_LIMIT = 350.0  # °C, the flux of one solder maker's note
HOTTEST = 400.0  # °C, heavy planes, with care; from memory
ABOVE_LIQUIDUS = (95.0, 132.0)  # K: 315 °C above SAC305 (220) and above Sn63Pb37 (183)
CONTACT = "1 to 3 s, under 5 s"
_LEADED, _LEAD_FREE, _OTHER = "leaded", "lead-free", "other"


class Limit(NamedTuple):
    """A row of hand-soldering-limits: `low` or `high` may be None. `unit` is °C, s, mm …"""

    topic: str
    item: str
    low: float | None
    high: float | None
    unit: str
    note: str
    source: str


class Setting(NamedTuple):
    """A range of tip or air temperature in °C, where to start, and why."""

    low: float
    start: float
    high: float
    why: tuple[str, ...]
    sources: tuple[str, ...]


@cache
def limits() -> dict[str, Limit]:
    """What makers, standards and practice allow in soldering by hand, by item.

    >>> limits()["lead of a component"].high
    260.0
    """
    return {
        row["item"]: Limit(
            row["topic"],
            row["item"],
            float(row["low"]) if row["low"] else None,
            float(row["high"]) if row["high"] else None,
            row["unit"],
            row["note"],
            row["source"],
        )
        for row in read_table("hand-soldering-limits")
    }


@calculator(
    topic="heat",
    title="Iron temperature",
    sources=("from memory",),
    cautions=("hot tools", "fumes and flux"),
)
def iron_temperature(
    solder: Annotated[str, Choice(alloy_names, "The solder of the joint.", alloy_name)],
    joint: Annotated[
        str, Choice(JOINTS, "small: chip part; heavy: ground plane, thick lead.")
    ] = ORDINARY,
    method: Annotated[
        str, Choice(METHODS, "What you work with; vacuum: a desoldering tip.")
    ] = IRON,
) -> Found:
    """A range for the tip (or the air of a hot-air tool), where to start, and the reasons.

    `solder` by name or short name. The verdict is "start at ..."; "not by this rule" where an
    ordinary iron and flux would have to be above 400 °C. Raises RepairlibError for unknown words.
    Source: usual bench ranges, from memory, beside one maker's note and a space standard.

    >>> iron_temperature("Sn63Pb37").start, iron_temperature("SAC305", "heavy").high
    (330 °C, 400 °C)
    """
    one = alloy(solder)
    setting = setting_for(one, joint, method)
    values = {
        "low": Quantity(setting.low, "°C", 3),
        "start": Quantity(setting.start, "°C", 3),
        "high": Quantity(setting.high, "°C", 3),
        "contact": CONTACT if method != AIR else "until the solder shines, then lift",
    }
    why = [f"{one.name} is all liquid at {one.liquidus:g} °C", *setting.why]
    notes = [
        "Sources differ: one solder maker sets 315 °C for leaded and lead-free alike; trade advice "
        "is 316 to 371 °C; a space standard takes 280 °C for small tin-lead joints.",
        "Not done in 5 s? Let it cool. Then a wider tip, flux, fresh solder or preheat, not force.",
    ]
    lead = ("lead",) if one.leaded else ()
    verdict, reason = f"start at {setting.start:.0f} °C", setting.why[0]
    if setting.start > HOTTEST:
        verdict = "not by this rule"
        reason = (
            f"this solder needs more than {HOTTEST:g} °C: ordinary flux and boards do not bear it"
        )
    elif setting.high > FLUX_LIMIT:
        notes.append(f"Above {FLUX_LIMIT:g} °C ordinary flux blackens: be quick, add flux.")
    return found(
        values,
        working=why,
        verdict=verdict,
        reason=reason,
        notes=notes,
        sources=setting.sources,
        cautions=lead,
    )


def setting_for(one: Alloy, joint: str = ORDINARY, method: str = IRON) -> Setting:
    """The setting by solder, joint and method. Raises RepairlibError for unknown words.

    >>> setting_for(alloy("Sn63Pb37"), "small").high
    320.0
    """
    for word, accepted in ((joint, JOINTS), (method, METHODS)):
        if word not in accepted:
            raise RepairlibError(word, "not a word known here", ", ".join(accepted))
    kind = _kind(one)
    if kind == _OTHER:
        return _above_liquidus(one, joint)
    if method == AIR:
        return _hot_air(kind, joint)
    setting = _tips()[kind, joint]
    if method == VACUUM and joint == ORDINARY:
        return _vacuum(kind, setting)
    if method == BRAID:
        why = ("the braid takes heat away: start higher, with a wide tip", *setting.why)
        start = max(setting.start, min(setting.high, setting.start + 15))
        return setting._replace(start=start, why=why)
    return setting


@cache
def _tips() -> dict[tuple[str, str], Setting]:
    """By kind of solder and size of the joint; the ends stand in the table of limits."""
    leaded, free = limits()["usual bench range leaded"], limits()["usual bench range lead-free"]
    maker = limits()["set point that one solder maker suggests"]
    agency = limits()["space agency tin-lead surface mount"]
    plane = "a plane takes the heat away; preheat first"
    notes = {
        (_LEADED, SMALL): "small joints need little heat; a space standard never goes above "
        f"{agency.high:g} °C here",
        (_LEADED, ORDINARY): "usual bench range for leaded joints",
        (_LEADED, HEAVY): f"{plane}; 360 °C is a space standard's ceiling",
        (_LEAD_FREE, SMALL): f"small joints need little heat; one maker's {maker.low:g} °C is "
        "enough with a wet tip",
        (_LEAD_FREE, ORDINARY): "usual bench range for lead-free joints",
        (_LEAD_FREE, HEAVY): f"{plane}; {HOTTEST:g} °C with care",
    }
    ends = {
        (_LEADED, SMALL): (agency.low, agency.low, agency.high, agency.source),
        (_LEADED, ORDINARY): (leaded.low, 330, leaded.high, leaded.source, maker.source),
        (_LEADED, HEAVY): (330, leaded.high, HOTTEST, leaded.source),
        (_LEAD_FREE, SMALL): (maker.low, 330, free.low, maker.source),
        (_LEAD_FREE, ORDINARY): (free.low, free.low, free.high, free.source, maker.source),
        (_LEAD_FREE, HEAVY): (370, free.high, HOTTEST, free.source),
    }
    return {
        key: Setting(low, start, high, (notes[key],), tuple(sources))
        for key, (low, start, high, *sources) in ends.items()
    }


def _kind(one: Alloy) -> str:
    if set(one.parts) <= {"Sn", "Pb", "Ag"} and one.leaded and one.liquidus <= 240:
        return _LEADED
    if not one.leaded and "Bi" not in one.parts and 217 <= one.liquidus <= 240:
        return _LEAD_FREE
    return _OTHER


def _vacuum(kind: str, setting: Setting) -> Setting:
    if kind == _LEADED:
        why = ("about 350 °C at a desoldering tip suits leaded through-hole work",)
        return Setting(setting.low, 350, 370, why, ("common practice",))
    why = ("the nozzle touches little: start in the upper half", *setting.why)
    return setting._replace(start=370, high=HOTTEST, why=why)


def _hot_air(kind: str, joint: str) -> Setting:
    outlet = limits()[f"outlet of a hand tool {kind}"]
    low, high = outlet.low, outlet.high
    start = {SMALL: low, ORDINARY: (low + high) / 2, HEAVY: high}[joint]
    why = ("outlet of a hand tool, low to medium flow; preheat from below for large parts",)
    return Setting(low, start, high, why, ("from memory",))


def _above_liquidus(one: Alloy, joint: str) -> Setting:
    low, high = (round(one.liquidus + rise) for rise in ABOVE_LIQUIDUS)
    start = {SMALL: low, ORDINARY: (low + high) / 2, HEAVY: high}[joint]
    if start <= HOTTEST:  # where the rule gives an answer, no hotter end than the bench allows
        high = min(high, HOTTEST)
    why = (
        "no usual range known: 95 to 132 °C above liquidus, as one maker's 315 °C is for others",
    )
    return Setting(low, round(start), high, why, ("hand solder tip note",))
