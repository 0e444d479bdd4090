"""Where tin-lead and tin-bismuth begin to melt and are all liquid, by composition.

Straight lines between published points, good to about ±4 °C for tin-lead. Compositions in wt %,
temperatures in °C. Tin-lead uses 183 °C and the textbook's three points 19, 61.9 and 97.5 wt % tin;
the NIST assessment has 18.91, 62.13 and 96.59 at 182.2 °C.
"""

from __future__ import annotations

from bisect import bisect_right
from typing import Annotated, NamedTuple

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity

Points = tuple[tuple[float, float], ...]


class Diagram(NamedTuple):
    """A system of tin and another metal; points are (wt % of `axis`, °C).

    Between `left` and `right` the solid begins to melt at the `eutectic_celsius`; there the
    liquid has `eutectic` wt %.
    """

    axis: str
    other: str
    liquidus: Points
    solidus: Points
    left: float
    eutectic: float
    right: float
    eutectic_celsius: float
    margin: float
    sources: tuple[str, ...]
    note: str


TIN_LEAD = Diagram(
    axis="Sn",
    other="Pb",
    liquidus=(
        (0, 327.5),  # from memory
        (2, 322),
        (5, 312),
        (10, 302),
        (15, 288),
        (20, 280),
        (25, 266),
        (40, 238),
        (50, 212),
        (60, 190),  # 191 and 188 in two tables: 190 ± 2
        (61.9, 183),
        (90, 213),
        (100, 231.9),  # from memory
    ),
    solidus=(
        (0, 327.5),
        (2, 316),
        (5, 308),
        (10, 275),  # the same page also has 268
        (15, 227),
        (19, 183),
        (97.5, 183),
        (100, 231.9),
    ),
    left=19,
    eutectic=61.9,
    right=97.5,
    eutectic_celsius=183,
    margin=4,
    sources=(
        "encyclopaedia, Solder alloys",
        "solder alloys table",
        "alloy paste maker",
        "Princeton MAE 324",
        "from memory",
    ),
    note="Textbook points 19, 61.9, 97.5 wt % Sn at 183 °C; NIST has 18.91, 62.13, 96.59 at 182.2.",
)
TIN_BISMUTH = Diagram(
    axis="Bi",
    other="Sn",
    liquidus=((0, 231.9), (40, 170), (58, 138), (100, 271.4)),  # 0, 40 and 100 from memory
    solidus=((0, 231.9), (20, 138), (99.9, 138), (100, 271.4)),
    left=20,
    eutectic=58,
    right=99.9,
    eutectic_celsius=138,
    margin=10,
    sources=("alloy paste maker", "Bi-Sn diagram note", "Bi-Sn solubility, 2007", "from memory"),
    note="Tin takes up about 20 wt % Bi by one assessment, about 10 by a later measurement. "
    "138 °C is one maker's figure, others have 139 and 140.",
)
DIAGRAMS = {"Sn-Pb": TIN_LEAD, "Sn-Bi": TIN_BISMUTH}


def liquidus(system: str, percent: float) -> float:
    """Where all is liquid [°C]; `percent` is wt % Sn for Sn-Pb, wt % Bi for Sn-Bi, 0 to 100.

    >>> liquidus("Sn-Pb", 63), liquidus("Sn-Pb", 50)
    (184.2, 212.0)
    """
    return _on_line(_diagram(system).liquidus, percent)


def solidus(system: str, percent: float) -> float:
    """Where melting begins [°C]; `percent` as for `liquidus`.

    >>> solidus("Sn-Pb", 40), solidus("Sn-Bi", 57)
    (183.0, 138.0)
    """
    return _on_line(_diagram(system).solidus, percent)


def liquid_fraction(percent: float, solid: float, liquid: float) -> float:
    """Lever rule: the share by mass that is liquid, 0 to 1.

    `solid` and `liquid` are the wt % of the two phases, `percent` that of the whole, between them.
    Raises RepairlibError when it is not between them.

    >>> liquid_fraction(40, 19, 61.9)
    0.490
    """
    low, high = min(solid, liquid), max(solid, liquid)
    if not (0 <= low <= percent <= high <= 100 and low < high):
        wrong = f"{percent:g} wt % is not between the two phases"
        raise RepairlibError(percent, wrong, f"{low:g} to {high:g} wt %, both within 0 to 100")
    return (percent - solid) / (liquid - solid)


def just_melted(system: str, percent: float) -> float:
    """The share that is liquid just above the eutectic temperature, 0 to 1.

    >>> just_melted("Sn-Pb", 63), just_melted("Sn-Pb", 10)
    (0.969, 0.0)
    """
    diagram = _diagram(system)
    _check(percent)
    if not diagram.left < percent < diagram.right:
        return 0.0
    solid = diagram.left if percent <= diagram.eutectic else diagram.right
    return liquid_fraction(percent, solid, diagram.eutectic)


@calculator(
    topic="heat",
    title="Melting by composition",
    sources=("from memory",),
    cautions=("hot tools",),
)
def melting_by_composition(
    system: Annotated[str, Choice(tuple(DIAGRAMS), "Which two metals.")],
    percent: Annotated[
        float, Given("%", "wt % Sn in Sn-Pb, wt % Bi in Sn-Bi.", at_least=0, at_most=100)
    ],
) -> Found:
    """Solidus, liquidus and the share that is liquid just above the eutectic temperature.

    `percent` is wt % Sn for Sn-Pb and wt % Bi for Sn-Bi, 0 to 100. Raises RepairlibError outside.
    Source: published points, named in the answer, joined by straight lines.

    >>> melting_by_composition("Sn-Pb", 40).liquidus
    238 °C
    """
    diagram = _diagram(system)
    low, high = solidus(system, percent), liquidus(system, percent)
    share = just_melted(system, percent)
    values = {
        "solidus": Quantity(round(low, 1), "°C"),
        "liquidus": Quantity(round(high, 1), "°C"),
        "pasty_degrees": Quantity(round(high - low, 1), ""),
        "liquid_just_above_eutectic": Quantity(100 * share, "%", 3),
    }
    working = [
        f"{system}, {percent:g} wt % {diagram.axis}: straight lines between published points",
        f"eutectic: {diagram.eutectic:g} wt % {diagram.axis} at {diagram.eutectic_celsius:g} °C",
    ]
    notes = [f"Good to about ±{diagram.margin:g} °C between the points.", diagram.note]
    lead = ("lead",) if system == "Sn-Pb" else ()
    return found(values, working=working, notes=notes, sources=diagram.sources, cautions=lead)


def _diagram(system: str) -> Diagram:
    if system not in DIAGRAMS:
        raise RepairlibError(system, "no diagram of this system here", ", ".join(DIAGRAMS))
    return DIAGRAMS[system]


def _check(percent: float) -> None:
    if not 0 <= percent <= 100:
        raise RepairlibError(percent, "not a share in wt %", "0 to 100 wt %")


def _on_line(points: Points, percent: float) -> float:
    _check(percent)
    right = min(bisect_right([x for x, _ in points], percent), len(points) - 1)
    (x0, y0), (x1, y1) = points[right - 1], points[right]
    return y0 + (y1 - y0) * (percent - x0) / (x1 - x0)
