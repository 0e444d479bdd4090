"""Heat for taking a connector out: a through-hole inlet, and a fine-pitch surface connector.

The temperatures, limits and ways are those of `repairlib.heat`; here they are put in order for a
part whose body is plastic. A mains inlet is handed on.
"""

from __future__ import annotations

from typing import Annotated

from repairlib.core.calculator import Choice, Found, calculator, found
from repairlib.heat import alloy, shield_neighbour, solders_meet, take_out
from repairlib.stored_charge import QUALIFIED

INLET, MAINS_INLET = "low-voltage inlet, through holes", "mains inlet"
FINE = "fine-pitch surface connector"
SOLDERS = ("Sn60Pb40", "Sn63Pb37", "SAC305")
LOW_MELT, HELPER = "low-melt alloy", "Bi58Sn42"
# Kind of part in the table of desoldering methods; of surface connectors it has none.
_KIND = {INLET: "through-hole connector", FINE: "gull-wing chip"}
_FIRST = (
    "plug out, capacitors empty and measured, batteries out",
    "photograph it, and mark pin 1",
)
_LAST = {
    INLET: (
        "clear the holes, look at every barrel with a lens",
        "fit the new one with its mating plug in, seat its posts before its pins are soldered",
    ),
    FINE: (
        "clean the pads with braid: no pulling sideways while it is cold",
        "fit the new one by its posts, tack two far ends, look along the row, then the rest",
    ),
}


@calculator(
    topic="connectors",
    title="Heat for a connector",
    sources=("common practice",),
    cautions=("hot tools", "fumes and flux", "stored charge"),
)
def connector_heat(
    connector: Annotated[str, Choice((INLET, FINE, MAINS_INLET), "What is taken out.")],
    tools: Annotated[
        str,
        Choice(("hand tools", "desoldering station", "hot air station"), "What you have."),
    ] = "hand tools",
    solder: Annotated[str, Choice(SOLDERS, "The solder on the board.")] = "Sn60Pb40",
    plane: Annotated[str, Choice(("no", "yes"), "A pin on a plane or a thick lug.")] = "no",
) -> Found:
    """The way, the temperatures and the order of work for taking a connector out.

    The verdict is the way; a mains inlet is left to a qualified person. With the low-melt alloy it
    says what bismuth makes of the solder on the board. Raises RepairlibError for unknown words.
    Source: the tables of `repairlib.heat`; the order is common practice.

    >>> out = connector_heat("low-voltage inlet, through holes", "desoldering station")
    >>> out.verdict, out.set_to, out.body_bears
    ('vacuum', 350 °C, '85 to 250 °C, by its kind')
    """
    if connector == MAINS_INLET:
        reason = "an inlet of the mains is fitted and tested by licensed practice"
        return found(
            {"connector": connector}, verdict=QUALIFIED, reason=reason, cautions=("mains",)
        )
    out = take_out(_KIND[connector], tools, solder, plane=plane)
    body = shield_neighbour("plastic connector", 0.0, "iron" if connector == INLET else "hot air")
    values = {name: out.values[name] for name in ("set_to", "at_most", "contact")}
    values["body_bears"] = body.bears
    working = [*_FIRST, *out.working]
    notes = [
        "Tip and nozzle go by land and lead: see take_out.",
        "The body is plastic: the shortest heat wins. Soft plastic lets the pins shift; a mating "
        "half plugged in holds them.",
        f"Beside it: {body.do}.",
    ]
    if connector == FINE:
        notes.append("No row of its own among the ways of desoldering: taken as a gull-wing chip.")
    sources, cautions = [*out.sources, *body.sources], list(out.cautions)
    if out.verdict == LOW_MELT:
        joint = solders_meet(solder, 1, HELPER, 4)
        values["mixed_joint_soft_from"] = joint.stay_below
        working.append(f"{HELPER} 4 parts on 1 of {solder}: {joint.reason}")
        notes[:0] = list(out.notes)
        if not alloy(solder).leaded:
            notes.insert(0, "A lead-free board can have lead on a lead or pad: clean it all off.")
        sources += joint.sources
        cautions += joint.cautions
    else:
        notes += out.notes
    return found(
        values,
        working=[*working, *_LAST[connector]],
        verdict=out.verdict,
        reason=out.reason,
        notes=notes,
        sources=sources,
        cautions=cautions,
    )
