"""How much solder a joint takes, how much wire that is, and whether a hole is filled enough.

Lengths are in metres when given to a calculator, in mm to the plain functions; volumes in mm³.
Fill limits are those of IPC-A-610, revision F, with what revision G put right.
"""

from __future__ import annotations

from math import pi
from typing import Annotated

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity
from repairlib.heat.solder_alloys import alloy, alloy_name, alloy_names

CLASSES = ("1", "2", "3")
FEW_LEADS = 14  # below it, the stricter rule of class 2
FLUX_DENSITY = 1.10  # g/cm³ of the flux in cored wire
PASTE_METAL = 0.5  # share of metal in paste by volume, from memory
AREA_RATIO, ASPECT_RATIO = 0.66, 1.5  # aims of IPC-7525, from memory
MM = 1e-3
SQUARE_CORNERED, ROUND = "rectangle", "round"


def hole_volume(hole, lead, board, fill=1.0, square=False) -> float:
    """Solder in a plated hole [mm³]: the room between hole and lead, times the fill (0 to 1).

    `hole` and `lead` are diameters in mm (`lead` the side of a square pin), `board` its thickness.
    Raises RepairlibError for lengths that are not above 0, a fill outside 0 to 1, and a lead
    (or its diagonal) wider than its hole.

    >>> hole_volume(1.0, 0.6, 1.6), hole_volume(1.1, 0.64, 1.57, square=True)
    (0.804, 0.849)
    """
    _positive(hole=hole, lead=lead, board=board)
    if not 0 <= fill <= 1:
        raise RepairlibError(f"{fill * 100:g} %", "not a hole fill", "0 % to 100 %")
    widest = lead * 2**0.5 if square else lead
    if widest > hole:
        wrong = f"the lead needs {widest:.3g} mm, wider than its hole of {hole:g} mm"
        raise RepairlibError(f"{lead:g} mm", wrong, f"a lead narrower than {hole:g} mm")
    lead_area = lead**2 if square else pi / 4 * lead**2
    return (pi / 4 * hole**2 - lead_area) * board * fill


def metal_share(flux_share: float, solder_density: float, flux_density=FLUX_DENSITY) -> float:
    """Share of a cored wire's volume that is metal; `flux_share` by mass, 0 to below 1.

    >>> metal_share(0.022, 8.40)
    0.853
    """
    _positive(solder_density=solder_density, flux_density=flux_density)
    if not 0 <= flux_share < 1:
        raise RepairlibError(f"{flux_share * 100:g} %", "not a flux content", "0 % to below 100 %")
    metal = (1 - flux_share) / solder_density
    return metal / (metal + flux_share / flux_density)


def wire_length(volume: float, wire: float, share: float) -> float:
    """Wire [mm] that carries `volume` mm³ of metal; `wire` its diameter in mm, `share` of metal.

    >>> wire_length(0.804, 0.7, 0.853)
    2.45
    """
    _positive(wire=wire, share=share)
    if not 0 <= volume <= 1e6:
        raise RepairlibError(volume, "not a volume of solder", "0 to 1e6 mm³")
    return volume / (share * pi / 4 * wire**2)


def fill_needed(
    product_class: str, leads: float, board: float, plane: bool = False
) -> float | None:
    """Least vertical fill of a plated hole [%], or None where the class does not say.

    `leads` of the part, `board` its thickness in mm, `plane`: a part of fewer than 14 leads tied
    to a heat-sinking plane. IPC-A-610F Table 7-4; the plane rule of class 2 as in revision G, which
    F left out by mistake. Raises RepairlibError for another class, no lead, no thickness.

    >>> fill_needed("2", 16, 1.6), fill_needed("2", 20, 3.2), fill_needed("3", 8, 1.6)
    (50.0, 37.5, 75.0)
    """
    _positive(board=board)
    if product_class not in CLASSES:
        raise RepairlibError(product_class, "not a product class", ", ".join(CLASSES))
    if not 1 <= leads < 1e5:
        raise RepairlibError(leads, "not a number of leads", "1 or more")
    if product_class == "1":
        return None
    if product_class == "3":
        return 75.0
    if leads >= FEW_LEADS:
        return min(50.0, 100 * 1.2 / board)
    return 50.0 if plane else 75.0


@calculator(
    topic="heat",
    title="Solder for a joint",
    sources=("IPC-A-610F", "from memory"),
    cautions=("hot tools", "fumes and flux"),
)
def solder_for_joint(
    hole: Annotated[
        float, Given("m", "Diameter of the finished hole.", at_least=1e-5, at_most=0.1)
    ],
    lead: Annotated[
        float,
        Given("m", "Diameter of the lead, or side of a square pin.", at_least=1e-5, at_most=0.1),
    ],
    board: Annotated[float, Given("m", "Thickness of the board.", at_least=1e-5, at_most=0.1)],
    fill: Annotated[
        float, Given("%", "How far the hole is filled.", at_least=0, at_most=100)
    ] = 100.0,
    wire: Annotated[
        float, Given("m", "Diameter of the solder wire.", at_least=1e-5, at_most=0.01)
    ] = 0.7e-3,
    flux: Annotated[float, Given("%", "Flux in the wire, by mass.", at_least=0, at_most=20)] = 2.2,
    solder: Annotated[str, Choice(alloy_names, "Which solder.", alloy_name)] = "Sn63Pb37",
    pin: Annotated[str, Choice(("round", "square"), "Shape of the lead.")] = "round",
) -> Found:
    """Volume and mass of solder in a plated hole, and the length of cored wire that holds it.

    Lengths in metres, `fill` 0 to 100 %, `flux` 0 to 20 % by mass. Fillets are not counted: take a
    little more. Raises RepairlibError for a lead wider than its hole. Source: geometry; flux
    density 1.10 g/cm³ from memory.

    >>> solder_for_joint("1 mm", "0.6 mm", "1.6 mm").wire
    2.45 mm
    """
    one = alloy(solder)
    volume = hole_volume(hole / MM, lead / MM, board / MM, fill / 100, pin == "square")
    share = metal_share(flux / 100, one.density)
    length = wire_length(volume, wire / MM, share)
    values = {
        "cubic_mm": Quantity(volume, "", 3),
        "milligrams": Quantity(volume * one.density, "", 3),
        "wire": Quantity(length * MM, "m", 3),
        "metal_in_wire": Quantity(100 * share, "%", 3),
        "grams_per_metre": Quantity(share * pi / 4 * (wire / MM) ** 2 * one.density, "", 3),
    }
    area = "π/4 D² − a²" if pin == "square" else "π/4 (D² − d²)"
    working = [
        f"volume = {area} × thickness × fill = {volume:.3g} mm³",
        f"mass = {volume:.3g} mm³ × {one.density:g} mg/mm³ = {volume * one.density:.3g} mg",
        f"wire: {100 * share:.3g} % of its volume is metal; length = {length:.3g} mm",
    ]
    notes = ["The hole only: fillets and what stays on the tip come on top."]
    return found(values, working=working, notes=notes, cautions=("lead",) if one.leaded else ())


@calculator(
    topic="heat",
    title="Hole fill",
    sources=("IPC-A-610F", "IPC-A-610G", "IPC-A-610, 2003"),
    cautions=("hot tools",),
)
def judge_hole_fill(
    product_class: Annotated[
        str, Choice(CLASSES, "1 general, 2 dedicated service, 3 must not fail.")
    ],
    leads: Annotated[float, Given("", "Leads of the part.", at_least=1, at_most=10_000)],
    board: Annotated[float, Given("m", "Thickness of the board.", at_least=1e-5, at_most=0.1)],
    measured: Annotated[float, Given("%", "The fill that you see.", at_least=0, at_most=100)],
    plane: Annotated[str, Choice(("no", "yes"), "Tied to a heat-sinking plane.")] = "no",
) -> Found:
    """Whether a plated hole is filled enough for its class.

    `board` in metres, `measured` 0 to 100 %. Verdict "accept", "reject", or "cannot tell" for class
    1, for which the table names no limit. Raises RepairlibError for another class. Source:
    IPC-A-610F Table 7-4; class 2 on a plane as in revision G.

    >>> judge_hole_fill("3", 8, "1.6 mm", 70).verdict
    'reject'
    """
    needed = fill_needed(product_class, leads, board / MM, plane == "yes")
    notes = [
        "Target for every class: 100 %.",
        "Followed: revision F, and G for planes. The edition of 2003 let class 1 fall to 50 % too.",
    ]
    if needed is None:
        reason = "this table names no fill for class 1: judge by use"
        return found(
            {"target": Quantity(100, "%")},
            verdict="cannot tell",
            reason=reason,
            notes=notes,
        )
    values = {
        "needed": Quantity(needed, "%", 3),
        "needed_height": Quantity(board * needed / 100, "m", 3),
    }
    step = f"class {product_class}, {leads:g} leads: at least {needed:.3g} %"
    if product_class == "2" and leads >= FEW_LEADS:
        step += f", the smaller of 50 % = {board / MM / 2:.3g} mm and 1.2 mm"
    verdict = "accept" if measured >= needed - 1e-9 else "reject"
    reason = f"{measured:g} % seen, {needed:.3g} % needed"
    return found(values, working=[step], verdict=verdict, reason=reason, notes=notes)


@calculator(
    topic="heat",
    title="Stencil opening",
    sources=("from memory",),
    cautions=("fumes and flux",),
)
def stencil_opening(
    length: Annotated[
        float, Given("m", "Length of the opening, or its diameter.", at_least=1e-6, at_most=0.1)
    ],
    width: Annotated[
        float, Given("m", "Width; of a round one the diameter again.", at_least=1e-6, at_most=0.1)
    ],
    stencil: Annotated[float, Given("m", "Thickness of the stencil.", at_least=1e-6, at_most=0.01)],
    shape: Annotated[
        str, Choice((SQUARE_CORNERED, ROUND), "Shape of the opening.")
    ] = SQUARE_CORNERED,
) -> Found:
    """Paste and metal of a stencil opening, and whether the paste lets go of the wall.

    Lengths in metres. Verdict "aim met" or "aim missed". Raises RepairlibError for a round opening
    with two different widths. Source: aims of IPC-7525, area ratio above
    0.66 and width over thickness above 1.5, and half metal by volume, all from memory.

    >>> stencil_opening("0.28 mm", "1.2 mm", "0.125 mm").area_ratio
    0.908
    >>> stencil_opening("0.3 mm", "0.3 mm", "0.12 mm", "round").paste_cubic_mm
    0.00848
    """
    if shape == ROUND and abs(length - width) > 1e-9:
        read = f"{length / MM:g} mm by {width / MM:g} mm"
        raise RepairlibError(read, "a round opening has one diameter", "the same figure twice")
    filled = pi / 4 if shape == ROUND else 1.0  # of the square or rectangle around it
    opening, wall = filled * length * width, filled * 2 * (length + width) * stencil
    area_ratio, aspect = opening / wall, min(length, width) / stencil
    paste = opening * stencil / MM**3
    values = {
        "area_ratio": Quantity(area_ratio, "", 3),
        "aspect_ratio": Quantity(aspect, "", 3),
        "paste_cubic_mm": Quantity(paste, "", 3),
        "metal_cubic_mm": Quantity(paste * PASTE_METAL, "", 3),
    }
    met = area_ratio > AREA_RATIO and aspect > ASPECT_RATIO
    reason = f"aims: area ratio above {AREA_RATIO:g}, width over thickness above {ASPECT_RATIO:g}"
    area = "π/4 × diameter²" if shape == ROUND else "length × width"
    working = [
        f"opening = {area}; area ratio = opening / wall",
        "about half of the paste is metal by volume",
    ]
    notes = []
    if shape == SQUARE_CORNERED and abs(length - width) <= 1e-9:
        notes.append("Taken as a square. A round one holds 21 % less paste: shape=round.")
    word = "aim met" if met else "aim missed"
    return found(values, working=working, verdict=word, reason=reason, notes=notes)


def _positive(**lengths: float) -> None:
    for name, length in lengths.items():
        if not 1e-6 <= length <= 1e6:
            wrong = f"{name.replace('_', ' ')} is not above 0, or far too large or small"
            raise RepairlibError(length, wrong, "a number from 1e-6 to 1e6")
