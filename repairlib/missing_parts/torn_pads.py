"""A pad that came off with its part: where its net goes on, which wire bridges it, and the proof.

The wire itself is that of the connectors. Here it is decided where it lands, and what the meter
says before the part goes on: a bridge to the wrong net is worse than a pad that is gone.
"""

from __future__ import annotations

from math import ceil
from typing import Annotated

from repairlib.connectors import cautious_current, link_wire, repairs
from repairlib.core.calculator import Choice, Found, Given, Text, calculator, found
from repairlib.core.finding import Finding
from repairlib.core.quantity import Quantity, brief
from repairlib.core.verdicts import CANNOT_TELL, CONDITIONS, NEVER
from repairlib.missing_parts.landings import (
    DETOUR,
    EXAMPLE,
    SAME_NET,
    TRACK,
    Landing,
    best_first,
    read_landings,
)

TORN = "torn pad of a surface part"
BROKEN = "broken track"
SUPPLY, SLOW = "rail or ground", "slow signal"
TOUCHY, FAST, MAINS = "crystal, feedback or switch node", "fast pair", "mains side"
# How long [m] a wire may be there. Common practice: a touchy node catches noise, a pair its echo.
REACH = {SUPPLY: 0.15, SLOW: 0.15, TOUCHY: 0.01, FAST: 0.005, MAINS: 0.0}
NOTHING_TYPED = "none"

MOST_WIRES = 3  # side by side: more have no room at a pad; common practice
EVEN = 0.8  # of what all of them carry: joints differ, and one of them gets more; our choice
_SIDE_BY_SIDE = (
    "Several wires: equal length and gauge, each with a joint of its own at both ends, side by "
    "side along the old track; under load none may be warmer than the others. One that comes off "
    "leaves too much to the rest: glue them all."
)
_ANOTHER_WAY = (
    "Another landing may do: a lead or plated hole of the same net takes a thicker wire, which is "
    "taken to the part's place only where it is glued first, so that no pad or terminal bears it."
)

HOW_TO_FIND = (
    "Follow the track from the place by eye, with light from the side and through the board.",
    "By meter, power off: from the stub of the track, or from the torn-off pad's part if it still "
    "hangs there, to vias, leads and test points around.",
    "On a twin place or another board: from its sound pad to the same points. What reads below "
    f"{SAME_NET:g} Ω there is the net.",
    "No track on either face? It goes into an inner layer at a via in or beside the pad: only a "
    "twin or the diagram tells where it comes out.",
)


def proof(landing: str, far: str = "another point of the same net") -> tuple[str, ...]:
    """What the meter must say, step by step, before power. Unplugged, and the capacitors empty.

    >>> len(proof("the via"))
    5
    """
    return (
        "Unplugged, capacitors discharged: leads together, and their ohms taken off.",
        f"Before the wire: {landing} to {far}: below {SAME_NET:g} Ω. It is the net.",
        f"{landing} to the other pad of the place and to ground: as on a twin, and no short where "
        "none belongs.",
        f"With the wire, without the part: its free end to {far} below {SAME_NET:g} Ω, also while "
        "it is pulled a little; to the other pad and to both neighbours no short.",
        "With the part: across it as on a twin. Then power, with a current limit.",
    )


@calculator(
    topic="missing parts",
    title="Torn pad",
    sources=("common practice",),
    cautions=("hot tools", "fumes and flux", "stored charge"),
)
def torn_pad(
    current: Annotated[float, Given("A", "That the net has to carry.", above=0, at_most=100)],
    lands: Annotated[str, Text(f"Points of the net around, such as {EXAMPLE}; none.")],
    damage: Annotated[str, Choice(lambda: tuple(repairs()), "What is torn.")] = TORN,
    line: Annotated[str, Choice(tuple(REACH), "What the net is.")] = SLOW,
) -> Found:
    """Where a wire from a torn pad lands, which wire it is, and how it is proven before power.

    `current` in A. `lands` are points around as typed: what, how far, and what a meter reads from
    the stub or on a twin. The verdict is "only with these conditions" with a point that is proven,
    "cannot tell" as long as none is, "do not" where no wire carries the current or is short enough.
    On a rail or a slow signal up to three wires share a current that is too much for one;
    the mains side is for a qualified person. Raises RepairlibError for points that cannot be read.
    Source: common practice.

    >>> finding = torn_pad("0.2 A", "via 3 mm 0.2 Ω; R12 pin 1 8 mm OL; TP5 40 mm 0.3 Ω")
    >>> print(finding.verdict, finding.lands_on, finding.wire, sep="; ")
    only with these conditions; via (via, 3 mm away); 28 AWG
    >>> torn_pad("0.2 A", "via 3 mm").verdict
    'cannot tell'
    """
    landings = () if lands.strip().casefold() == NOTHING_TYPED else read_landings(lands)
    kinds = [kind for kind in DETOUR if damage != BROKEN or kind != TRACK]
    chosen = best_first(landings, REACH[line], kinds)
    where = MAINS if line == MAINS else "low voltage"
    length = min(max(chosen[0].distance or 0.03, 1e-3), 1.0) if chosen else 0.03
    count = wires_side_by_side(current, damage) if line in (SUPPLY, SLOW) else 1
    each = current if count == 1 else current / count / EVEN
    wire = link_wire(each, damage, length, where)
    if not wire.verdict.endswith("AWG"):
        return _no_wire(wire, landings)
    refused = [str(one) for one in landings if one.refuted]
    values: dict[str, object] = {"wire": wire.verdict, "carries": wire.carries, "how": wire.how}
    if count > 1:
        carried = Quantity(float(wire.carries) * count * EVEN, "A", 3)
        values |= {"wire": f"{count} × {wire.verdict}, side by side", "carries": carried}
    verdict, reason = _judged(chosen, landings, line)
    if chosen:
        name = "lands_on" if verdict == CONDITIONS else "measure_first"
        values = {name: str(chosen[0]), **values, "drop": wire.drop}
    if chosen[1:]:
        values["also_possible"] = ", ".join(map(str, chosen[1:4]))
    if refused:
        values["not_this_net"] = ", ".join(refused)
    return found(
        values,
        working=[
            *_shared(count, current, each),
            *wire.working,
            *(proof(chosen[0].name) if chosen else HOW_TO_FIND),
        ],
        verdict=verdict,
        reason=reason,
        notes=[
            "Prove it by meter before the part goes on; the steps stand under Working.",
            *(HOW_TO_FIND if verdict == CANNOT_TELL else ()),
            *_of_line(line),
            *((_SIDE_BY_SIDE,) if count > 1 else ()),
            *wire.notes,
        ],
        sources=wire.sources,
        cautions=wire.cautions,
    )


def wires_side_by_side(ampere: float, damage: str) -> int:
    """How many of the thickest wires that a place can hold carry a current [A] together.

    1 where one is enough, and where even three are not: then no wire is told.

    >>> torn = "torn pad of a surface part"
    >>> [wires_side_by_side(ampere, torn) for ampere in (0.2, 0.3, 0.5, 0.6)]
    [1, 2, 3, 1]
    """
    most = cautious_current(repairs()[damage].thickest)
    if ampere <= most:
        return 1
    count = ceil(ampere / (EVEN * most) - 1e-9)
    return count if count <= MOST_WIRES else 1


def _shared(count: int, current: float, each: float) -> list[str]:
    """How the current is shared among several wires, as a line of the working."""
    if count == 1:
        return []
    share = f"{brief(current, 'A')} / {count} / {EVEN:g} = {brief(float(f'{each:.3g}'), 'A')}"
    return [f"{count} wires, of which one may get more than its share: {share} for each"]


def _judged(chosen: list[Landing], landings: tuple[Landing, ...], line: str) -> tuple[str, str]:
    """The verdict on the best point, and its reason."""
    if not chosen:
        beyond = [one for one in landings if not one.refuted]
        if beyond:
            longest = brief(REACH[line], "m")
            reason = f"a wire on a net of this kind ({line}) is {longest} long at most, and what "
            reason += f"was typed serves not: {', '.join(map(str, beyond[:4]))}"
            return NEVER, reason
        return CANNOT_TELL, "no point of its net is known yet: find where the net goes on"
    best = chosen[0]
    if not best.proven:
        reason = f"nobody measured yet whether {best.name} is the net: below {SAME_NET:g} Ω from "
        return CANNOT_TELL, reason + "the stub, or on a twin, and it is"
    if best.distance is None:
        return CANNOT_TELL, f"{best.name} is the net; measure how far the wire to it goes"
    return CONDITIONS, f"to {best.name}, which a meter proved, glued down, and proven again"


def _of_line(line: str) -> tuple[str, ...]:
    """What a net of that kind asks of its wire."""
    return {
        TOUCHY: ("Straight down on the board, the shortest way: this node catches noise.",),
        FAST: ("Both wires of the pair alike, side by side: else it loses speed or fails.",),
        SUPPLY: (
            "The pad of a capacitor carries its ripple and the surge at switching on, not what the "
            "rail feeds elsewhere.",
        ),
    }.get(line, ())


def _no_wire(wire: Finding, landings: tuple[Landing, ...]) -> Found:
    """What the wire's own rules refuse: the mains side, or more current than a wire carries."""
    most = wire.values.get("carries_at_most")
    values: dict[str, object] = {"carries_at_most": most} if isinstance(most, Quantity) else {}
    if landings:
        values["points"] = ", ".join(map(str, landings[:4]))
    return found(
        values,
        working=wire.working,
        verdict=wire.verdict,
        reason=wire.reason,
        notes=[_ANOTHER_WAY] if most else [],
        sources=wire.sources,
        cautions=wire.cautions,
    )
