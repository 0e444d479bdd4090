"""What is dangerous about a set, and what is handed on whatever the sum says."""

from __future__ import annotations

from repairlib.core.errors import RepairlibError
from repairlib.core.safety import HAZARDS

NONE = "none"
# Left to trained or licensed people, as their cautions say; so is the dust of beryllium oxide.
HANDED_ON = (
    "mains",
    "stored charge",
    "high-voltage tubes",
    "PCB oil",
    "asbestos",
    "beryllium oxide",
)
NOT_SAFETY = (
    "The sum counts money, not danger. Look for mains, stored charge and the rest before you open "
    "the set, and name them here."
)


def read_hazards(text: str) -> tuple[str, ...]:
    """The hazards named in a text, as keys of safety.HAZARDS; "none" has to be said.

    Raises RepairlibError for nothing, for a hazard not known here, and for "none" beside others.

    >>> read_hazards("Mains; stored charge"), read_hazards("none")
    (('mains', 'stored charge'), ())
    """
    accepted = f"{NONE}, or {'; '.join(HAZARDS)}"
    known = {key.casefold(): key for key in (*HAZARDS, NONE)}
    words = [" ".join(one.split()) for one in text.replace(",", ";").split(";")]
    words = [one for one in words if one]
    if not words:
        raise RepairlibError(text, "no hazard is named; where there is none, say so", accepted)
    unknown = [one for one in words if one.casefold() not in known]
    if unknown:
        raise RepairlibError(unknown[0], "not a hazard known here", accepted)
    named = tuple(dict.fromkeys(known[one.casefold()] for one in words))
    if NONE in named and len(named) > 1:
        raise RepairlibError(text, "none stands beside a hazard", accepted)
    return () if named == (NONE,) else named


def handed_on(hazards: tuple[str, ...]) -> tuple[str, ...]:
    """Those of the hazards for which the set is left to a qualified person.

    >>> handed_on(("mains", "lead")), handed_on(("hot tools",))
    (('mains',), ())
    """
    return tuple(one for one in hazards if one in HANDED_ON)
