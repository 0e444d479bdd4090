"""Taking parts out: the method by part and tools, tip, braid, shields, and the order of the work.

Lengths are in mm in the plain functions, in metres when given to a calculator. Widths of braid and
tips are the usual ones, from memory; shield distances are a choice of this workbook, because no
published figure was found.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from typing import Annotated, NamedTuple

from repairlib.core import html
from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity
from repairlib.core.tables import read_table
from repairlib.heat.iron import (
    AIR,
    BRAID,
    HEAVY,
    IRON,
    METHODS,
    ORDINARY,
    SMALL,
    VACUUM,
    Setting,
    limits,
    setting_for,
)
from repairlib.heat.mixed_joint import RINSE
from repairlib.heat.neighbours import neighbours
from repairlib.heat.solder_alloys import Alloy, alloy, alloy_name, alloy_names

TOOLS = ("hand tools", "desoldering station", "hot air station")
BRAIDS = (1.0, 1.5, 2.0, 2.5, 3.0, 3.5, 5.0)  # mm wide
CHISELS = (0.8, 1.2, 1.6, 2.4, 3.2, 5.0)  # mm wide
NOZZLES = (0.8, 1.0, 1.3, 1.6, 1.8, 2.3)  # mm bore
ROOM_IN_NOZZLE = 0.3  # mm by which the bore is wider than the lead
LOW_MELT, PUMP, NO = "low-melt alloy", "pump", "no"
NOZZLE_SHARE = 2  # hot air: shields reach this many nozzle widths, at least the table's distance
BALL_GRID = "ball grid"
_SURFACE = ("two-terminal chip", "gull-wing chip", BALL_GRID, "leadless chip with a pad below")
# Usual lead diameters of radial and axial cans, by largest can diameter [mm], from memory.
_LEADS = ((5.0, 0.5), (13.0, 0.6), (100.0, 0.8))

FIRST = (
    "dead: plug out, capacitors discharged, measured, measured again",
    "every battery or cell out of the set",
    "a photograph, and every polarity written down",
    "solvent away and its can closed, before a tool is switched on",
    "fume extraction on",
)
LAST = (
    "clear the holes; look at every pad and barrel with a lens",
    "tools off and cold, then clean the flux off, then let it dry",
    "wash your hands: flux stays on them, and lead from old solder",
)


class Removal(NamedTuple):
    """A row of desoldering-methods: the method with each kind of tools, and why.

    `if_dead` is what may be done to a part that is dead and holds nothing; "" where nothing else.
    """

    part: str
    by_tools: dict[str, str]
    why: str
    if_dead: str
    source: str


class Job(NamedTuple):
    """A part to take out: its kind of removal, lead [mm], and whether it sits on a plane."""

    reference: str
    part: str
    lead: float
    plane: bool


@cache
def removals() -> dict[str, Removal]:
    """Kinds of parts, and how each comes out.

    >>> removals()["gull-wing chip"].by_tools["hot air station"]
    'hot air'
    """
    rows = read_table("desoldering-methods")
    return {
        row["part"]: Removal(row["part"], _by_tools(row), row["why"], row["if_dead"], row["source"])
        for row in rows
    }


def braid_width(land: float) -> float:
    """The usual braid [mm] that is as wide as the joint, or slightly less. `land` in mm, above 0.

    Source: EPD&T article; widths from memory. The narrowest one for still smaller joints.

    >>> braid_width(2.2), braid_width(0.6)
    (2.0, 1.0)
    """
    return _largest_within(BRAIDS, land)


def tip_width(land: float) -> float:
    """The widest usual chisel tip [mm] that stays on a land of that width in mm.

    >>> tip_width(2.2)
    1.6
    """
    return _largest_within(CHISELS, land)


def nozzle_bore(lead: float) -> float | None:
    """The narrowest usual desoldering nozzle [mm] that goes over the lead; None for thick leads.

    >>> nozzle_bore(0.6), nozzle_bore(2.1)
    (1.0, None)
    """
    _above_zero(lead)
    return next((bore for bore in NOZZLES if bore >= lead + ROOM_IN_NOZZLE - 1e-9), None)


@calculator(
    topic="heat",
    title="Taking a part out",
    sources=("from memory",),
    cautions=("hot tools", "fumes and flux", "stored charge", "flying leads and eyes"),
)
def take_out(
    part: Annotated[str, Choice(lambda: tuple(removals()), "What kind of part.")],
    tools: Annotated[str, Choice(TOOLS, "What you have.")] = "hand tools",
    solder: Annotated[
        str, Choice(alloy_names, "The solder on the board.", alloy_name)
    ] = "Sn60Pb40",
    land: Annotated[float, Given("m", "Width of the land.", at_least=1e-5, at_most=0.1)] = 2e-3,
    lead: Annotated[
        float, Given("m", "Diameter of the lead.", at_least=1e-5, at_most=0.05)
    ] = 0.6e-3,
    plane: Annotated[str, Choice(("no", "yes"), "On a plane that takes the heat away.")] = "no",
) -> Found:
    """How to take a part out: method, temperature, tip, braid or nozzle, contact time.

    Lengths in metres. The verdict is the method, or "stop" where these tools cannot do it without
    harm. Raises RepairlibError for unknown words. Source: a Navy training text on wick, a rework
    house on ball grids, an article on braid; the rest common practice and from memory.

    >>> out = take_out("two-lead part in plated holes")
    >>> out.verdict, out.tip
    ('pump', 1.6 mm)
    """
    removal = removals()[part]
    method = removal.by_tools[tools]
    one = alloy(solder)
    cautions = ("lead",) if one.leaded else ()
    if method == NO:
        reason = f"{removal.why}; not with {tools}"
        return found(
            {"part": part},
            verdict="stop",
            reason=reason,
            sources=(removal.source,),
            cautions=cautions,
        )
    setting = _setting(one, part, method, plane == "yes")
    values: dict[str, object] = {
        "set_to": Quantity(setting.start, "°C", 3),
        "at_most": Quantity(setting.high, "°C", 3),
    }
    values |= _tools_for(method, land * 1e3, lead * 1e3)
    notes = list(_NOTES.get(method, ()))
    if removal.if_dead:
        notes.append(f"Dead for certain, and no memory that is still wanted: {removal.if_dead}.")
    if plane == "yes":
        notes.append(
            "On a plane: preheat the board from below first. Longer contact lifts the pad."
        )
    on_balls = part == BALL_GRID
    working = [removal.why, *setting.why, *(_ball_grid(one) if on_balls else ()), *_STEPS[method]]
    sources = [removal.source, *setting.sources]
    sources += ["braid article"] if method == BRAID else []
    sources += ["component removal handbook"] if on_balls else []
    return found(
        values,
        working=working,
        verdict=method,
        reason=removal.why,
        notes=notes,
        sources=sources,
        cautions=cautions,
    )


@calculator(
    topic="heat",
    title="Shielding a neighbour",
    sources=("from memory", "common practice"),
    cautions=("hot tools", "batteries", "stored charge"),
)
def shield_neighbour(
    neighbour: Annotated[
        str,
        Choice(lambda: tuple(neighbours()), "What it is."),
    ],
    distance: Annotated[float, Given("m", "From the heated joint to it.", at_least=0, at_most=1)],
    source: Annotated[str, Choice(("hot air", "iron"), "What heats.")] = "hot air",
    nozzle: Annotated[
        float, Given("m", "Width of the hot-air nozzle.", at_least=1e-4, at_most=0.1)
    ] = 5e-3,
) -> Found:
    """Whether a neighbour needs a shield, and which. Lengths in metres.

    Verdict "stop" for batteries and charged capacitors, "shield it", or "far enough for this rule".
    Source: a choice of this workbook, from memory; no published distance was found.

    >>> shield_neighbour("plastic connector", "6 mm").verdict
    'shield it'
    >>> shield_neighbour("battery or cell", "80 mm", "iron").verdict
    'stop'
    """
    one = neighbours()[neighbour]
    reach = one.air if source == AIR else one.iron
    if reach is None:
        return found({"do": one.do}, verdict="stop", reason=f"{neighbour}: {one.do}")
    working = [f"{neighbour}: shield nearer than {reach:g} mm"]
    if source == AIR:
        reach = max(reach, NOZZLE_SHARE * nozzle * 1e3)
        working.append(f"or than {NOZZLE_SHARE} nozzle widths, whichever is more: {reach:g} mm")
    near = distance * 1e3 < reach
    values = {"shield_within": Quantity(reach * 1e-3, "m", 3), "do": one.do}
    if one.low is not None:
        values["bears"] = f"{one.low:g} to {one.high:g} °C, by its kind"
    verdict = "shield it" if near else "far enough for this rule"
    reason = f"{distance * 1e3:g} mm away, the rule says {reach:g} mm"
    notes = [
        "The distances are a choice: no published figure was found. Put a thermocouple on what is "
        "dear, and see joint_heat for the temperature that comes there.",
    ]
    return found(values, working=working, verdict=verdict, reason=reason, notes=notes)


def jobs_of(places, references: Iterable[str], on_plane: Iterable[str] = ()) -> list[Job]:
    """Jobs for these references of a board (places with `form` and `max_diameter_mm`).

    `on_plane` names those whose joints lead into a plane. Raises RepairlibError for a reference
    that the board does not have.
    """
    on_plane = set(on_plane)
    jobs = []
    for reference in references:
        place = places.get(reference)
        if place is None:
            raise RepairlibError(reference, "not a place on this board", "a reference of the board")
        part = "axial part" if place.form == "axial" else "two-lead part in plated holes"
        lead = next(lead for widest, lead in _LEADS if (place.max_diameter_mm or 5.0) <= widest)
        jobs.append(Job(reference, part, lead, reference in on_plane))
    return jobs


class DesolderingPlan(NamedTuple):
    """Jobs in the order of the work, with what comes before and after."""

    jobs: tuple[Job, ...]
    tools: str
    solder: str

    @property
    def groups(self) -> list[tuple[str, float, float | None, list[str]]]:
        """Jobs that are done alike: (method, °C, nozzle or None, references), in order."""
        groups: dict[tuple, list[str]] = {}
        for job in self.jobs:
            method = removals()[job.part].by_tools[self.tools]
            celsius = _setting(alloy(self.solder), job.part, method, job.plane).start
            bore = nozzle_bore(job.lead) if method == VACUUM else None
            preheat = ", preheat" if job.plane else ""
            groups.setdefault((method + preheat, celsius, bore), []).append(job.reference)
        return [(*key, references) for key, references in groups.items()]

    def lines(self) -> list[str]:
        """The plan as plain lines, numbered."""
        work = [
            f"{', '.join(references)}: {method}, {celsius:.0f} °C"
            + (f", nozzle {bore:g} mm" if bore else "")
            for method, celsius, bore, references in self.groups
        ]
        every = [*FIRST, *work, *LAST]
        return [f"{number}. {line}" for number, line in enumerate(every, start=1)]

    def __str__(self) -> str:
        return "\n".join(self.lines())

    __repr__ = __str__

    def _repr_html_(self) -> str:
        jobs = html.listed((line.partition(". ")[2] for line in self.lines()), "ol")
        return f'<strong>Desoldering plan</strong><div style="columns:24em 2">{jobs}</div>'


def plan_removal(jobs: Iterable[Job], tools: str = "desoldering station", solder: str = "Sn60Pb40"):
    """Jobs in order: ordinary joints, then those that need preheat, hot air last of all.

    Wide heat comes last, when the parts that it could harm are out. Raises RepairlibError for no
    jobs, unknown tools, and a part that these tools cannot take out.

    >>> job = Job("C1", "axial part", 0.8, False)
    >>> plan_removal([job._replace(reference="C2", plane=True), job]).groups[0][3]
    ['C1']
    """
    jobs = list(jobs)
    if not jobs:
        raise RepairlibError("no parts", "nothing to take out", "one part or more")
    if tools not in TOOLS:
        raise RepairlibError(tools, "not tools known here", ", ".join(TOOLS))
    for job in jobs:
        if job.part not in removals():
            raise RepairlibError(job.part, "not a kind of part known here", ", ".join(removals()))
        if removals()[job.part].by_tools[tools] == NO:
            wrong = f"{job.reference} cannot be taken out with {tools}"
            raise RepairlibError(job.part, wrong, "a hot air station and preheat")
    ordered = sorted(jobs, key=lambda job: (_wide_heat(job, tools), job.plane, job.lead))
    return DesolderingPlan(tuple(ordered), tools, alloy(solder).name)


_STEPS = {
    PUMP: (
        "add flux and a little fresh solder",
        "tip on land and lead; when it flows, pump at once; let it cool before a second try",
    ),
    VACUUM: (
        "add a little fresh solder",
        "nozzle over the lead; heat until the lead moves freely, then suck while you circle",
    ),
    BRAID: ("flux on the braid; braid on the joint, tip on the braid; lift both together",),
    LOW_MELT: (
        "flood all joints of the part with the low-melt alloy and flux, then lift",
        f"all of it off again: {RINSE}; none of it may stay",
    ),
    AIR: ("shield the neighbours; preheat; circle with the nozzle; lift when the solder shines",),
}
_NOTES = {
    PUMP: ("A one-shot plunger leaves some solder, and its recoil can lift a pad: hold it off.",),
    BRAID: ("Braid is for surface joints: it does not clear a plated hole.",),
    LOW_MELT: (
        "Bismuth with lead melts from about 95 °C: never put lead on a joint that keeps bismuth "
        "solder, nor on a lead-free board; see solders_meet.",
    ),
}


def _setting(one: Alloy, part: str, method: str, plane: bool) -> Setting:
    joint = HEAVY if plane else (SMALL if part in _SURFACE else ORDINARY)
    return setting_for(one, joint, method if method in METHODS else IRON)


def _ball_grid(one: Alloy) -> list[str]:
    """What the board, the joint and the neighbours of a ball grid have, in sentences."""
    kind = "leaded" if one.leaded else "lead-free"
    board, other = limits()["preheat of the whole board"], limits()["preheat in a handbook"]
    joint, beside = limits()[f"joint to be removed {kind}"], limits()[f"neighbours stay {kind}"]
    cycles = limits()["reflow cycles after assembly"]
    return [
        f"the whole board at {board.low:g} to {board.high:g} °C first; a handbook says "
        f"{other.low:g} to {other.high:g} °C",
        f"a {kind} joint lifts from {joint.low:g} °C; its neighbours stay under {beside.high:g} °C",
        f"at most {cycles.high:g} reflow cycles after assembly: {cycles.note}",
    ]


def _tools_for(method: str, land: float, lead: float) -> dict[str, object]:
    contact = {"contact": "1 to 3 s, under 5 s"}
    if method == AIR:
        return {"contact": "until the solder shines, then lift"}
    if method == VACUUM:
        bore = nozzle_bore(lead)
        fits = (
            Quantity(bore * 1e-3, "m") if bore else "none: the lead is too thick, use pump and tip"
        )
        return {"nozzle": fits, **contact}
    width = {"tip": Quantity(tip_width(land) * 1e-3, "m")}
    if method in (BRAID, LOW_MELT):
        width["braid"] = Quantity(braid_width(land) * 1e-3, "m")
    return {**width, **contact}


def _wide_heat(job: Job, tools: str) -> bool:
    return removals()[job.part].by_tools[tools] == AIR


def _by_tools(row: dict[str, str]) -> dict[str, str]:
    columns = ("hand_tools", "desoldering_station", "hot_air_station")
    return {tools: row[column] for tools, column in zip(TOOLS, columns, strict=True)}


def _largest_within(widths: tuple[float, ...], land: float) -> float:
    _above_zero(land)
    return max((width for width in widths if width <= land + 1e-9), default=widths[0])


def _above_zero(length: float) -> None:
    if not 0 < length < float("inf"):
        raise RepairlibError(length, "not a length", "a length above 0 mm")
