"""Cleaning: which solvent for which residue on which material, when it is dry, when it is clean.

Flammable vapour and hot tools never meet: with a hot or powered thing near, the answer is a stop,
whatever the solvent would dissolve. Tables of solvents are common practice and from memory: try on
a hidden spot first, and read the safety data sheet.
"""

from __future__ import annotations

from functools import cache
from typing import Annotated, NamedTuple

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.quantity import Quantity
from repairlib.core.tables import read_table
from repairlib.core.wording import sentence
from repairlib.heat.air_limits import IPA_FLASH

RESIDUES = (
    "rosin flux",
    "no-clean flux",
    "water-soluble flux",
    "grease",
    "adhesive",
    "dust",
    "nicotine",
    "electrolyte",
    "alkaline battery leak",
    "acrylic coating",
    "silicone coating",
    "polyurethane coating",
    "epoxy coating",
    "parylene coating",
)
MATERIALS = (
    "bare board",
    "ABS",
    "polystyrene",
    "polycarbonate",
    "acrylic window",
    "rubber",
    "printed label",
    "carbon track",
    "relay or switch",
    "transformer",
    "aluminium",
)
NOTHING, SWITCHED_OFF = "nothing hot or live", "iron off but warm"
NEAR = (NOTHING, SWITCHED_OFF, "hot iron", "hot air", "board under power")
ROSE_LIMIT = 1.56  # µg NaCl equivalent per cm²
SQUARE_CM_PER_SQUARE_INCH = 6.4516
# Coatings that no solvent of the table takes off, and what the trade does. From memory.
BY_HAND = {
    "silicone coating": "cut and peel it; special removers swell it",
    "polyurethane coating": "scrape or a special remover. Never burn through it: its smoke "
    "holds isocyanates, which harm lungs for good",
    "epoxy coating": "scrape with a fibre pen; no solvent spares the board",
    "parylene coating": "fine abrasion; no solvent touches it",
}


class Solvent(NamedTuple):
    """A row of the table solvents; drying times in minutes."""

    name: str
    burns: bool
    dissolves: tuple[str, ...]
    attacks: tuple[str, ...]
    dry_open: int
    dry_under_parts: int
    note: str
    source: str


@cache
def solvents() -> dict[str, Solvent]:
    """Every solvent of the table by name.

    >>> solvents()["isopropyl alcohol"].burns, solvents()["demineralised water"].burns
    (True, False)
    """
    return {
        row["solvent"]: Solvent(
            row["solvent"],
            row["burns"] == "yes",
            tuple(row["dissolves"].split("; ")),
            tuple(row["attacks"].split("; ")),
            int(row["dry_open_min"]),
            int(row["dry_under_parts_min"]),
            row["note"],
            row["source"],
        )
        for row in read_table("solvents")
    }


@calculator(
    topic="heat",
    title="Solvent for a residue",
    sources=("from memory", "common practice", "NIOSH isopropyl alcohol"),
    cautions=("solvents", "hot tools", "fumes and flux", "stored charge"),
)
def solvent_for(
    residue: Annotated[str, Choice(RESIDUES, "What is to come off.")],
    material: Annotated[str, Choice(MATERIALS, "What it lies on, or what is next to it.")],
    near: Annotated[str, Choice(NEAR, "What is hot or live on this bench.")],
) -> Found:
    """The first solvent of the table that takes the residue off and spares the material.

    Verdict "stop" when a hot tool or power is near: nothing is wetted then. "by hand" for coatings
    that no solvent takes off, "cannot tell" when every solvent would attack the material. Raises
    RepairlibError for unknown words. Source: common practice and from memory; flash point of
    isopropyl alcohol from the NIOSH Pocket Guide.

    >>> solvent_for("rosin flux", "bare board", "nothing hot or live").verdict
    'isopropyl alcohol'
    >>> solvent_for("rosin flux", "bare board", "hot iron").verdict
    'stop'
    """
    if near != NOTHING:
        return _stop(near)
    able = [one for one in solvents().values() if residue in one.dissolves]
    sparing = [one for one in able if material not in one.attacks]
    working = [f"{one.name}: attacks {material}" for one in able if one not in sparing]
    working += [f"{one.name}: fits" for one in sparing]
    if residue in BY_HAND:
        return found(
            {"way": BY_HAND[residue]},
            working=working,
            verdict="by hand",
            reason="no solvent of the table",
        )
    if not sparing:
        reason = f"each solvent for {residue} attacks {material}: ask the maker, or work dry"
        return found(
            {"way": "a dry brush, or leave it"},
            working=working,
            verdict="cannot tell",
            reason=reason,
        )
    best = sparing[0]
    values = {
        "dry_on_open_surfaces": Quantity(best.dry_open * 60.0, "s"),
        "dry_under_parts": Quantity(best.dry_under_parts * 60.0, "s"),
        "burns": best.burns,
    }
    notes = [sentence(best.note), "Try it on a hidden spot first."]
    if best.burns:
        notes.insert(
            0, f"It burns. Its vapour lights from {IPA_FLASH:g} °C on: your room is warmer."
        )
        if best.name != "isopropyl alcohol":
            notes[0] = "It burns, like all solvents of this kind: see its data sheet."
    others = ", ".join(one.name for one in sparing[1:])
    reason = f"takes off {residue}, spares {material}" + (f"; also: {others}" if others else "")
    cell = ("batteries",) if residue == "alkaline battery leak" else ()
    return found(
        values, working=working, verdict=best.name, reason=reason, notes=notes, cautions=cell
    )


@calculator(
    topic="heat",
    title="Dry enough for power",
    sources=("from memory", "common practice"),
    cautions=("solvents", "mains", "stored charge"),
)
def dry_before_power(
    solvent: Annotated[str, Choice(lambda: tuple(solvents()), "What was used.")],
    waited: Annotated[float, Given("s", "How long it has dried.", at_least=0, at_most=1e7)],
    where: Annotated[
        str, Choice(("open surface", "under parts"), "Where it may sit.")
    ] = "under parts",
) -> Found:
    """How long a board must dry before power. `waited` in seconds.

    Verdict "wait", or "look and smell": a time alone proves nothing. Raises RepairlibError for
    unknown words. Source: common practice and from memory.

    >>> dry_before_power("isopropyl alcohol", "20 min", "under parts").verdict
    'wait'
    """
    one = solvents()[solvent]
    needed = 60.0 * (one.dry_open if where == "open surface" else one.dry_under_parts)
    values = {"time": Quantity(needed, "s"), "left": Quantity(max(needed - waited, 0.0), "s")}
    notes = [sentence(one.note), "Times from memory, in moving room air."]
    if waited < needed:
        return found(
            values,
            verdict="wait",
            reason="wet boards leak current, and vapour burns",
            notes=notes,
        )
    reason = "time is up: look under the parts, smell, blow dry, and only then power up"
    return found(values, verdict="look and smell", reason=reason, notes=notes)


@calculator(
    topic="heat",
    title="Ionic cleanliness",
    sources=("J-STD-001, quoted", "from memory"),
    cautions=("solvents",),
)
def ionic_cleanliness(
    measured: Annotated[
        float, Given("kg", "Salt found, as NaCl, such as 120 ug.", at_least=0, at_most=1)
    ],
    length: Annotated[float, Given("m", "Length of the board.", at_least=1e-3, at_most=2)],
    width: Annotated[float, Given("m", "Width of the board.", at_least=1e-3, at_most=2)],
    faces: Annotated[float, Given("", "Faces of the board, 1 or 2.", at_least=1, at_most=2)] = 2.0,
) -> Found:
    """Salt on a board against the historic limit of 1.56 µg/cm² as NaCl.

    Verdict "pass" or "fail"; the limit is inclusive. Raises RepairlibError out of range. Source:
    IPC-WP-019B on J-STD-001; that newer editions ask for evidence, from memory.

    >>> ionic_cleanliness("120 ug", "10 cm", "8 cm").micrograms_per_square_cm
    0.75
    """
    area = length * width * faces * 1e4
    micrograms = measured * 1e9
    level = micrograms / area
    values = {
        "micrograms_per_square_cm": Quantity(level, "", 3),
        "micrograms_per_square_inch": Quantity(level * SQUARE_CM_PER_SQUARE_INCH, "", 3),
        "limit_for_this_board": f"{ROSE_LIMIT * area:.4g} µg",
    }
    working = [f"{micrograms:.4g} µg / {area:.4g} cm² = {level:.3g} µg/cm²"]
    notes = ["Historic limit. Newer J-STD-001 asks for evidence of the process instead."]
    passed = level <= ROSE_LIMIT * (1 + 1e-9)
    reason = f"{level:.4g} µg/cm², limit {ROSE_LIMIT:g}"
    return found(
        values, working=working, verdict="pass" if passed else "fail", reason=reason, notes=notes
    )


def _stop(near: str):
    do = (
        "tools off, in their stands and cold; plug out; capacitors discharged; solvents then, in "
        "moving air"
    )
    reason = f"{near}: most solvents burn, and water conducts"
    notes = ["Flammable vapour creeps along the bench and lights far from the rag."]
    return found({"first": do}, verdict="stop", reason=reason, notes=notes)
