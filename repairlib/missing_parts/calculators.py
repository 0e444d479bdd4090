"""What may have stood in an empty place, asked on the command line or in a panel."""

from __future__ import annotations

from typing import Annotated

from repairlib.core.calculator import Found, Text, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.verdicts import CANNOT_TELL, NEVER
from repairlib.missing_parts.candidate import (
    LIKELY,
    MOST_LIKELY,
    Candidate,
    candidates,
)
from repairlib.missing_parts.danger import TUBES
from repairlib.missing_parts.place import EXAMPLE, Place, read_place, with_more
from repairlib.missing_parts.usual_values import HANDED_ON

_ORDER = ("likeliest", "second", "third", "fourth", "fifth")


@calculator(
    topic="missing parts",
    title="What may have stood in an empty place",
    sources=("common practice",),
    cautions=("stored charge", "heat and fire"),
)
def missing_part(
    place: Annotated[str, Text(f"All that is seen, in your own words: {EXAMPLE}.")] = "",
    reference: Annotated[str, Text("The reference printed there, such as C? or R12.")] = "",
    pads: Annotated[str, Text("The empty pads, such as 0603 or 2 pads 3.2 x 1.6 mm.")] = "",
    one_side: Annotated[str, Text("The net at one side, such as +3.3 V.")] = "",
    other_side: Annotated[str, Text("The net at the other side, such as ground.")] = "",
    near: Annotated[str, Text("What stands near, such as regulator U2 output.")] = "",
    twin: Annotated[str, Text("What a twin channel or board has there, such as 10 µF.")] = "",
    marks: Annotated[str, Text("Marks printed round it, such as a bar at one end.")] = "",
) -> Found:
    """The kinds of parts that may have stood in an empty place, each with its reasons.

    All in words, in any order; what is typed apart is held to be right. Common practice: it
    ranks by rules of the trade and proves nothing, so that each answer says what to measure.
    Raises RepairlibError where nothing is said.

    >>> finding = missing_part("R7 0402, from RESET of U1 to +3.3 V")
    >>> finding.likeliest, finding.how_likely
    ('pull-up resistor', 'most likely')
    """
    said = [text for text in (reference, pads, place, marks) if text.strip()]
    given = [text for text in (one_side, other_side, near, twin) if text.strip()]
    if not said and not given:
        raise RepairlibError("nothing", "nothing is said of the place", f'place="{EXAMPLE}"')
    seen = with_more(
        read_place(", ".join(said) or "part"),
        one_side=one_side,
        other_side=other_side,
        near=near,
        twin=twin,
    )
    ranked = candidates(seen)
    first = ranked[0]
    values: dict[str, object] = {"likeliest": first.what, "how_likely": first.likely}
    values |= {"value": first.values}
    if first.rating:
        values["rating"] = first.rating
    for name, one in zip(_ORDER[1:], ranked[1:], strict=False):
        values[name] = f"{one.what} ({one.likely}): {one.values}"
    verdict, reason = _verdict(first, seen)
    return found(
        values,
        working=_reasons(ranked),
        verdict=verdict,
        reason=reason,
        notes=[*first.never, *first.decide, *_unread(seen)],
        cautions=_cautions(seen),
    )


def _verdict(first: Candidate, place: Place) -> tuple[str | None, str | None]:
    if place.danger:
        return NEVER, f"{place.danger.why}. {HANDED_ON}"
    if first.likely not in (MOST_LIKELY, LIKELY):
        return CANNOT_TELL, "too little is known: say the net each side, and what is near"
    return None, None


def _cautions(place: Place) -> tuple[str, ...]:
    """Hazards of the place beyond those of every place."""
    battery = ("batteries",) if "battery" in place.near else ()
    if place.danger is None:
        return battery
    return ("high-voltage tubes" if place.danger.kind == TUBES else "mains", *battery)


def _reasons(ranked: list[Candidate]) -> list[str]:
    return [
        f"{one.what}, {one.likely}. For: {'; '.join(one.pro) or 'nothing'}. "
        f"Against: {'; '.join(one.con) or 'nothing'}"
        for one in ranked
    ]


def _unread(place: Place) -> list[str]:
    if not place.unread:
        return []
    return [f"Not understood, and left out: {', '.join(place.unread)}"]
