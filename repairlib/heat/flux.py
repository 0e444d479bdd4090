"""Flux codes of J-STD-004, such as ROL0: what the flux is made of, how active, with halides or not.

The structure is read from a trade article; the halide limits of revision B are from memory.
"""

from __future__ import annotations

from typing import Annotated

from repairlib.core.calculator import Found, Text, calculator, found
from repairlib.core.errors import RepairlibError

MATERIALS = {"RO": "rosin", "RE": "resin", "OR": "organic", "IN": "inorganic"}
ACTIVITIES = {"L": "low", "M": "medium", "H": "high"}
# Halide of the flux solids as chloride, revision B, from memory.
HALIDES = {
    "L0": "under 0.05 %",
    "M0": "under 0.05 %",
    "H0": "under 0.05 %",
    "L1": "under 0.5 %",
    "M1": "0.5 % to 2.0 %",
    "H1": "over 2.0 %",
}
CODES = tuple(kind + level for kind in MATERIALS for level in HALIDES)


@calculator(
    topic="heat",
    title="Flux code",
    sources=("J-STD-004B article", "J-STD-001D", "from memory"),
    cautions=("fumes and flux",),
)
def flux_code(
    code: Annotated[str, Text("The code on the can or reel, such as ROL0.")],
) -> Found:
    """What a flux code says, and whether J-STD-001D takes such a flux for electronics.

    Two letters for the material, one for the activity, a digit for halides: 24 codes. Raises
    RepairlibError for anything else. Source: the structure from a trade article on J-STD-004B,
    use from J-STD-001D, halide limits of revision B from memory.

    >>> flux = flux_code("ROL0")
    >>> flux.material, flux.activity, flux.halides
    ('rosin', 'low', 'none: under 0.05 %')
    """
    bare = code.strip().upper()
    if bare not in CODES:
        accepted = "RO, RE, OR or IN, then L, M or H, then 0 or 1, such as ROL0"
        raise RepairlibError(code, "not a flux code", accepted)
    material, level = bare[:2], bare[2:]
    halide = HALIDES[level]
    values = {
        "material": MATERIALS[material],
        "activity": ACTIVITIES[level[0]],
        "halides": f"none: {halide}" if level[1] == "0" else f"yes: {halide}",
    }
    verdict, reason = _use(material, level)
    notes = [
        "Revision A let L0 and M0 pass on a spot test; revision B dropped it and hardened the "
        "insulation test. An old L0 may hold more halide than a new L1.",
        "Halide limits: of the flux solids, revision B, from memory.",
    ]
    if material == "OR":
        notes.append("Organic flux: wash it all off with water, on the same day (from memory).")
    working = [
        f"{material} is {MATERIALS[material]}, {level[0]} is {ACTIVITIES[level[0]]} activity"
    ]
    return found(values, working=working, verdict=verdict, reason=reason, notes=notes)


def _use(material: str, level: str) -> tuple[str, str]:
    if material == "IN" or level[0] != "L":
        reason = "J-STD-001D names L0 and L1 of rosin, resin and organic flux"
        if level[0] != "L":
            reason += "; M and H never for tinning stranded wire"
        return "not for boards without tests", reason
    if material == "OR" and level == "L1":
        return "only when washed off", "J-STD-001D: organic L1 not for no-clean work"
    return "listed for electronics", "J-STD-001D: L0 or L1 of rosin, resin or organic flux"
