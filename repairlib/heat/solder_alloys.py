"""Solders: what is in them, where they melt, how heavy they are, whether they hold lead.

Compositions are in wt %, temperatures in °C, densities in g/cm³. The table solder-alloys holds
one row for each solder; where sources differ, the row says which figure was taken and what the
others say. Two solders that meet are the business of `mixed_joint`.
"""

from __future__ import annotations

import re
from functools import cache
from typing import Annotated, NamedTuple

from repairlib.core.calculator import Choice, Found, Text, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity
from repairlib.core.tables import read_table

LEAD_LIMIT = 0.1  # wt %, EU RoHS, homogeneous material; from memory
TOTAL_MARGIN = 0.5  # wt % by which a composition may miss 100


class Element(NamedTuple):
    """A metal: melts at [°C], heat of fusion [kJ/mol], density [g/cm³], molar mass [g/mol]."""

    melts: float
    fusion: float
    density: float
    molar_mass: float


# From memory. A public table, "Metals - Latent Heat of Melting", has 10.9 kJ/mol for bismuth and
# 13.1 for copper; for tin, lead and silver it agrees.
ELEMENTS = {
    "Sn": Element(231.9, 7.03, 7.28, 118.71),
    "Pb": Element(327.5, 4.77, 11.34, 207.2),
    "Bi": Element(271.4, 11.30, 9.78, 208.98),
    "Ag": Element(961.8, 11.28, 10.49, 107.87),
    "Cu": Element(1084.6, 13.26, 8.96, 63.546),
    "In": Element(156.6, 3.28, 7.31, 114.82),
    "Sb": Element(630.6, 19.8, 6.69, 121.76),
    "Au": Element(1064.2, 12.55, 19.3, 196.97),
}
_PIECE = re.compile(r"([A-Z][a-z]?)\s*([0-9]+(?:\.[0-9]+)?)\s*")


class Alloy(NamedTuple):
    """A solder of the table: `solidus` and `liquidus` in °C, `density` in g/cm³.

    `melts` says how: eutectic, near eutectic, range, compound or pure. `others` are figures of
    other sources.
    """

    name: str
    short: str
    parts: dict[str, float]
    solidus: float
    liquidus: float
    melts: str
    density: float
    density_how: str
    others: str
    flux: str
    j_std_006: str
    iso_9453: str
    source: str

    @property
    def leaded(self) -> bool:
        return has_lead(self.parts)

    @property
    def melting(self) -> str:
        """Its melting point or range in words.

        >>> alloy("SAC305").melting, alloy("Sn63Pb37").melting
        ('217 to 220 °C', '183 °C')
        """
        if self.solidus == self.liquidus:
            return f"{self.solidus:g} °C"
        return f"{self.solidus:g} to {self.liquidus:g} °C"


@cache
def alloys() -> dict[str, Alloy]:
    """Every solder of the table by its name, such as Sn63Pb37.

    >>> len(alloys()) >= 25
    True
    """
    return {row["alloy"]: _alloy(row) for row in read_table("solder-alloys")}


def alloy(name: str) -> Alloy:
    """The solder of that name or short name. Raises RepairlibError for any other.

    >>> alloy("SAC305").name, alloy("sn63pb37").liquidus, alloy("Pb37Sn63").name
    ('Sn96.5Ag3.0Cu0.5', 183.0, 'Sn63Pb37')
    """
    wanted = name.replace(" ", "").casefold() if isinstance(name, str) else name
    parts = _parts_of(name)
    for one in alloys().values():
        if wanted and (wanted in (one.name.casefold(), one.short.casefold()) or parts == one.parts):
            return one
    raise RepairlibError(name, _not_known(parts), ", ".join(alloys()))


def _parts_of(name: object) -> dict[str, float] | None:
    """The composition that the text is, or None where it is none."""
    try:
        return read_composition(name)  # type: ignore[arg-type]  # it refuses what is no text
    except RepairlibError:
        return None


def _not_known(parts: dict[str, float] | None) -> str:
    """What is wrong with a solder that the table does not hold, and who may know it."""
    if parts is None:
        return "not a known solder"
    wrong = "not a known solder; for any composition see calc solder_composition"
    for axis, other in (("Sn", "Pb"), ("Bi", "Sn")):
        if set(parts) == {axis, other}:
            system = "Sn-Pb" if other == "Pb" else "Sn-Bi"
            asked = f"calc melting_by_composition system={system} percent={parts[axis]:g}"
            wrong += f", for its melting see {asked}"
    return wrong


def alloy_name(text: object) -> str:
    """The table's name of a solder that was written another way. Raises as `alloy` does."""
    return alloy(text).name  # type: ignore[arg-type]  # it refuses what is no text


def alloy_names() -> tuple[str, ...]:
    """All names, then all short names."""
    return (*alloys(), *(one.short for one in alloys().values() if one.short))


def check_parts(parts: dict[str, float], read: object = None) -> dict[str, float]:
    """The composition, if each part is 0 to 100 wt % and all make 100 within 0.5.

    Raises RepairlibError for anything else. `read` is what the error says was read.

    >>> check_parts({"Sn": 63, "Pb": 37})
    {'Sn': 63, 'Pb': 37}
    """
    read = parts if read is None else read
    for symbol, percent in parts.items():
        if symbol not in ELEMENTS:
            raise RepairlibError(symbol, "not a metal of solders known here", ", ".join(ELEMENTS))
        if not 0 <= percent <= 100:
            raise RepairlibError(read, f"{symbol} has {percent:g} wt %", "each part 0 to 100 wt %")
    total = sum(parts.values())
    if not abs(total - 100) <= TOTAL_MARGIN + 1e-9:
        wrong = f"the parts make {total:g} wt %"
        raise RepairlibError(read, wrong, f"parts that make 100 wt % within {TOTAL_MARGIN:g}")
    return parts


def read_composition(text: str) -> dict[str, float]:
    """Symbols each followed by wt %, such as "Sn63Pb37" or "Sn 96.5 Ag 3 Cu 0.5".

    Raises RepairlibError for other text, unknown metals and parts that do not make 100.

    >>> read_composition("Sn96.5Ag3.0Cu0.5")
    {'Sn': 96.5, 'Ag': 3.0, 'Cu': 0.5}
    """
    example = "symbols with wt %, such as Sn63Pb37"
    bare = text.strip() if isinstance(text, str) else ""
    parts: dict[str, float] = {}
    end = 0
    while bare and end < len(bare):
        piece = _PIECE.match(bare, end)
        if not piece or len(piece[2]) > 12:
            raise RepairlibError(text, "not a composition", example)
        if piece[1] in parts:
            raise RepairlibError(text, f"{piece[1]} stands in it twice", example)
        parts[piece[1]] = float(piece[2])
        end = piece.end()
    if not parts:
        raise RepairlibError(text, "not a composition", example)
    return check_parts(parts, text)


def has_lead(parts: dict[str, float]) -> bool:
    """Whether lead rules apply: more than 0.1 wt % lead (EU RoHS, from memory)."""
    return parts.get("Pb", 0.0) > LEAD_LIMIT


def density(parts: dict[str, float]) -> float:
    """Estimate of the density in g/cm³: 100 / Σ(wt % / density).

    >>> density({"Sn": 63, "Pb": 37})
    8.39
    """
    check_parts(parts)
    return sum(parts.values()) / sum(share / ELEMENTS[one].density for one, share in parts.items())


def fusion_heat(parts: dict[str, float]) -> float:
    """Estimate of the heat of melting in kJ/kg, mixed by mass. Published values run lower.

    >>> fusion_heat({"Sn": 63, "Pb": 37})
    45.8
    """
    check_parts(parts)
    return sum(
        share / 100 * 1000 * ELEMENTS[one].fusion / ELEMENTS[one].molar_mass
        for one, share in parts.items()
    )


def in_words(parts: dict[str, float]) -> str:
    """A composition as it is said: "Sn 63, Pb 37 wt %", largest part first.

    >>> in_words({"Pb": 9.25, "Sn": 47.25, "Bi": 43.5})
    'Sn 47.25, Bi 43.5, Pb 9.25 wt %'
    """
    largest_first = sorted(parts.items(), key=lambda one: -one[1])
    return ", ".join(f"{one} {share:.4g}" for one, share in largest_first if share > 0) + " wt %"


@calculator(
    topic="heat",
    title="A solder",
    sources=("solder alloys table",),
    cautions=("hot tools", "fumes and flux"),
)
def solder_alloy(
    solder: Annotated[
        str, Choice(alloy_names, "Which solder, by composition or short name.", alloy_name)
    ],
) -> Found:
    """What is in a solder, where it melts, its density, its flux, and whether it holds lead.

    `solder` is one of the table, by name or short name. Raises RepairlibError for any other.
    Source: the row of the table solder-alloys; designations from memory.

    >>> one = solder_alloy("SAC305")
    >>> one.solidus, one.liquidus, one.leaded
    (217 °C, 220 °C, False)
    """
    one = alloy(solder)
    values = {
        "alloy": one.name,
        "solidus": Quantity(one.solidus, "°C"),
        "liquidus": Quantity(one.liquidus, "°C"),
        "melts": one.melts,
        "leaded": one.leaded,
        "grams_per_cubic_cm": Quantity(one.density, ""),
        "flux": one.flux,
    }
    if one.iso_9453:
        values["J_STD_006"], values["ISO_9453"] = f"{one.j_std_006} + letter", one.iso_9453
    notes = [f"Other figures: {one.others}."] if one.others else []
    if one.density_how != "published":
        notes.append(f"Density {one.density_how or 'estimated from its metals'}.")
    if one.iso_9453:
        notes.append("Designations from memory: check before you quote them.")
        notes.append("J-STD-006 prints melting figures for information, not as a requirement.")
    memory = ("from memory",) if one.iso_9453 or one.density_how == "from memory" else ()
    standard = ("J-STD-006C draft",) if one.iso_9453 else ()
    lead = ("lead",) if one.leaded else ()
    working = [in_words(one.parts)]
    return found(
        values,
        working=working,
        notes=notes,
        sources=(one.source, *standard, *memory),
        cautions=lead,
    )


@calculator(
    topic="heat",
    title="A composition",
    sources=("from memory",),
    cautions=("hot tools", "fumes and flux"),
)
def solder_composition(
    composition: Annotated[str, Text("Symbols with wt %, such as Sn63Pb37.")],
) -> Found:
    """Density and heat of melting of a composition, estimated from its metals.

    The parts must make 100 wt % within 0.5. Raises RepairlibError for anything else. Source:
    densities and heats of the metals, from memory, mixed by volume and by mass.

    >>> solder_composition("Sn96.5Ag3Cu0.5").grams_per_cubic_cm
    7.35
    """
    parts = read_composition(composition)
    values = {
        "grams_per_cubic_cm": Quantity(density(parts), "", 3),
        "kJ_per_kg_to_melt": Quantity(fusion_heat(parts), "", 3),
        "leaded": has_lead(parts),
    }
    working = [
        "density = 100 / Σ(wt % / density of the metal)",
        "heat of melting = Σ(wt % / 100 × heat of the metal)",
    ]
    notes = ["Estimates: measured heats of melting run lower, 37 to 45 kJ/kg for Sn63Pb37."]
    return found(
        values, working=working, notes=notes, cautions=("lead",) if has_lead(parts) else ()
    )


def _alloy(row: dict[str, str]) -> Alloy:
    parts = read_composition(row["alloy"])
    return Alloy(
        row["alloy"],
        row["short"],
        parts,
        float(row["solidus_c"]),
        float(row["liquidus_c"]),
        row["melts"],
        float(row["density_g_cm3"]) if row["density_g_cm3"] else round(density(parts), 2),
        row["density_how"],
        row["other_figures"],
        row["flux"],
        row["j_std_006"],
        row["iso_9453"],
        row["source"],
    )
