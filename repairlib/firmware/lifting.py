"""Lifting a memory chip off its board and putting it, or another, back: order, heat, pin 1."""

from __future__ import annotations

from typing import Annotated

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.quantity import Quantity
from repairlib.firmware.body_names import body_typed
from repairlib.firmware.outlines import ENDS, OUTLINES, Outline
from repairlib.heat import (
    FLOOR_LIFE,
    NOT_SAID,
    bake_before_reflow,
    may_be_a_cell,
    neighbours_or_not_said,
    package_limits,
    shield_neighbour,
    take_out,
)

LEADS, UNDER, HOLES = "gull-wing chip", "leadless chip with a pad below", "dual-in-line chip"
HAND, STATION, AIR = "hand tools", "desoldering station", "hot air station"
LEAD_FREE, TIN_LEAD = "SAC305", "Sn63Pb37"
_THICK = {LEADS: 2.0, UNDER: 0.8, HOLES: 3.5}  # mm at most, of such bodies; from memory
_DRY = ("not known", *FLOOR_LIFE)

BEFORE = (
    "Try reading it on the board first: two equal reads, stored, before any heat.",
    "Power off, plug out, capacitors discharged, measured, measured again; every cell out.",
    "Wrist strap tested and on, mat under the board; the chip never lies on bare plastic.",
    "A photograph; the dot of pin 1 written down as it lies, with the mark on the board.",
    "It has taken up water for years: dry it warm first, or preheat slowly, or its body cracks.",
    "Solvent away and closed before a tool is switched on; fume extraction on.",
)
AFTER = (
    "Let it cool where it is, then look at every pad with a lens: one that came off is bridged "
    "before anything goes on it.",
    "Pads flat with braid and flux, without pressing; flux off, dry.",
    "Read it in a socket of its own width, at its measured supply: two equal reads, stored.",
)
REFIT = (
    "The same width of body, the same voltage, the same number of pins: prove the new one's mark.",
    "Pin 1: the dot, notch or bevel on pin 1 of the board; turned round, it dies at power-on.",
    "Tack one corner, look along both rows, tack the opposite corner, then the rest with flux.",
    "Power still off: no short between neighbouring leads, none from supply to ground, and each "
    "lead to where its track goes.",
    "First power from a supply with a limit of current; its supply pin measured first.",
)


@calculator(
    topic="firmware",
    title="Lifting a memory chip",
    sources=("common practice", "from memory"),
    cautions=("static charge", "stored charge", "hot tools", "fumes and flux", "only copy"),
)
def lift_chip(
    body: Annotated[
        str, Choice(lambda: tuple(OUTLINES), "Which body it has.", body_typed)
    ] = "208 mil",
    tools: Annotated[str, Choice((HAND, STATION, AIR), "What you have.")] = HAND,
    solder: Annotated[
        str, Choice((LEAD_FREE, TIN_LEAD, "not known"), "The solder on the board.")
    ] = "not known",
    neighbour: Annotated[
        str, Choice(neighbours_or_not_said, "What stands nearest to it.")
    ] = NOT_SAID,
    distance: Annotated[
        float, Given("m", "From its leads to that.", at_least=0, at_most=0.5)
    ] = 5e-3,
    level: Annotated[
        str, Choice(_DRY, "Moisture level of the chip that goes on, from its bag.")
    ] = "not known",
    open_for: Annotated[
        float | None, Given("s", "How long that chip has been out of its bag.", at_least=0)
    ] = None,
) -> Found:
    """How to take a memory chip off and put one on: method, heat, body's limit, steps in order.

    `distance` in metres, `open_for` in seconds. Solder that is not known is taken as lead-free for
    the heat and as leaded for the cautions. The verdict is the method, or "stop" where these tools
    or a neighbour forbid it. Raises RepairlibError for unknown words. Heat, shields and moisture
    are those of the room `heat`; thickness of bodies from memory.

    >>> lift_chip("208 mil", "hot air station").verdict
    'hot air'
    >>> lift_chip("no leads, 6 × 5 mm", "hand tools").verdict
    'stop'
    >>> lift_chip("150 mil", "hot air station", neighbour="battery or cell").verdict
    'stop'
    """
    outline = OUTLINES[body]
    kind = kind_of(outline)
    hotter = LEAD_FREE if solder == "not known" else solder
    removal = take_out(kind, tools, hotter)
    leaded = () if solder == LEAD_FREE else ("lead",)
    cells = ("batteries",) if may_be_a_cell(neighbour) else ()
    values: dict[str, object] = {"part": kind}
    notes = [*(f"Before: {step}" for step in BEFORE)]
    stopped = ""
    if removal.verdict == "stop":
        stopped = str(removal.reason)
    else:
        values |= {"set_to": removal.set_to, "at_most": removal.at_most}
    with_air = removal.verdict == "hot air"
    if neighbour != NOT_SAID:
        shield = shield_neighbour(neighbour, distance, "hot air" if with_air else "iron")
        if shield.verdict == "stop":
            stopped = stopped or f"{neighbour}: {shield.do}"
        notes.append(f"Beside it, {neighbour}: {shield.verdict}; {shield.do}.")
    else:
        notes.append("Look what stands around it: cells out, plastic and cans shielded.")
    peak = _body_limit(outline, kind, solder)
    values["body_at_most"] = Quantity(peak, "°C", 3)
    working = [
        *removal.working,
        f"the body bears {peak:g} °C at most (J-STD-020, by thickness and volume), its leads more "
        "for seconds: a thermocouple on a scrap board, not the tool's setting, tells",
    ]
    notes.append(_ONLY_COPY)
    notes += [f"After: {step}" for step in AFTER]
    notes += [f"Refit: {step}" for step in REFIT]
    notes.append(_moisture(level, open_for, kind))
    cautions = (*leaded, *cells)
    if stopped:
        return found(
            values, working=working, verdict="stop", reason=stopped, notes=notes, cautions=cautions
        )
    return found(
        values,
        working=working,
        verdict=str(removal.verdict),
        reason=f"{removal.reason}; {_NEVER_LEVER}",
        notes=notes,
        cautions=cautions,
    )


_ONLY_COPY = (
    "It may hold the only copy, also where it seems dead: never cut its leads, never lever. Free "
    "them all with heat, or leave it to somebody who can."
)
_NEVER_LEVER = "it comes away by its own weight or a light lift, and is never levered"


def kind_of(outline: Outline) -> str:
    """Which kind of removal a body is: leads on the board, pads below, or pins in holes.

    >>> kind_of(OUTLINES["208 mil"])
    'gull-wing chip'
    """
    return dict(zip(ENDS, (LEADS, UNDER, HOLES), strict=True))[outline.ends]


def _body_limit(outline: Outline, kind: str, solder: str) -> float:
    """The peak in °C that J-STD-020 gives for a body of that size; the lower where not known."""
    thick = _THICK[kind]
    volume = outline.width[1] * outline.length[1] * thick
    made = {LEAD_FREE: ("Pb-free",), TIN_LEAD: ("Sn-Pb",)}.get(solder, ("Pb-free", "Sn-Pb"))
    peaks = [package_limits(one, thick, volume).peak for one in made]
    return min(max(side for side in peak if side is not None) for peak in peaks)


def _moisture(level: str, open_for: float | None, kind: str) -> str:
    """What the new chip's time in the air asks for, before hot air."""
    if level == "1":
        return "Moisture: level 1 has no limit."
    if level == "not known":
        return (
            "Moisture: the bag of the new chip tells its level. Not known, and hot air: bake it as "
            "its data sheet says, or fit it lead by lead with an iron, which keeps its body cool."
        )
    hours = FLOOR_LIFE[level]
    if open_for is None:
        return f"Moisture: level {level} may lie open {hours:g} h; not known for how long: bake."
    late = open_for / 3600 - hours
    if late <= 0:
        return f"Moisture: {open_for / 3600:g} h of {hours:g} h are used: it may go on now."
    bake = bake_before_reflow(level, _THICK[kind] * 1e-3, late * 3600)
    times = " or ".join(
        f"{name.removeprefix('at_')} °C for {told}"
        for name, told in bake.values.items()
        if name.startswith("at_")
    )
    return f"Moisture: {late:g} h past its {hours:g} h: {bake.verdict}, {times}."
