"""Circuits around a part, and the leads of a meter, drawn with schemdraw.

Each node is an upright line with its name above; each part lies across, on a row of its own. A
part joins a line only where a dot is. So any neighbourhood can be drawn, and nothing overlaps.
"""

from __future__ import annotations

from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity
from repairlib.health import INSIDE, KINDS, UNITS, Part, part_named
from repairlib.show.picture import Picture

GAP, ROW = 5.2, 1.5  # between node lines and between rows, in schemdraw's units
MOST_DRAWN = 12  # parts; more no longer fit on a screen
INK = "#22303c"
PROBE = "#a3271c"


def draw_neighbourhood(parts: tuple[Part, ...], name: str) -> Picture:
    """Draw the parts, with a meter across the part of that name.

    The first 12 parts are drawn; the words say how many more there are. Raises RepairlibError
    when there is no part of that name.

    >>> from repairlib.health import read_neighbourhood
    >>> rows = "part,from,to,value,more / C1,a,b,100u,5 Ω / R1,a,b,10k,"
    >>> draw_neighbourhood(read_neighbourhood(rows), "C1")
    A meter across C1, from node a to node b. C1: capacitor 100 µF, ESR 5 Ω, from a to b.
    R1: resistor 10 kΩ, from a to b.
    """
    probed = part_named(parts, name)
    drawn = _those_to_draw(parts, probed)
    across = _columns(drawn, probed)
    bottom = -ROW * (len(drawn) + 1)
    sheet, elements = new_sheet()
    ends = {node: [bottom] if node in probed.nodes else [] for node in across}
    for row, part in enumerate(drawn, start=1):
        _draw_part(sheet, elements, part, across, -ROW * row, part is probed)
        for node in part.nodes:
            ends[node].append(-ROW * row)
    left, right = sorted(across[node] for node in probed.nodes)
    sheet += elements.Dot().at((left, bottom)).color(PROBE)
    sheet += elements.Line().at((left, bottom)).to((left + 0.7, bottom)).color(PROBE)
    meter = elements.MeterOhm().endpoints((left + 0.7, bottom), (left + GAP - 0.7, bottom))
    sheet += meter.color(PROBE).label("meter", loc="bottom", ofst=0.15)
    sheet += elements.Line().at((left + GAP - 0.7, bottom)).to((right, bottom)).color(PROBE)
    sheet += elements.Dot().at((right, bottom)).color(PROBE)
    for node, x in across.items():
        sheet += elements.Line().at((x, 0)).to((x, min(ends[node])))
        sheet += elements.Label().at((x, 0.35)).label(f"node {node}")
    more = len(parts) - len(drawn)
    said = [f"A meter across {probed.name}, from node {' to node '.join(probed.nodes)}."]
    said += [_in_words(part) for part in drawn]
    said += [f"And {more} more parts, not drawn."] if more else []
    return picture_of(sheet, " ".join(said))


def draw_leads(wires: int) -> Picture:
    """Draw a meter on a small resistance with its leads: `wires` is 2 or 4."""
    if wires not in (2, 4):
        raise RepairlibError(wires, "no such way to measure is drawn here", "2 or 4 wires")
    sheet, elements = new_sheet()
    top, bottom, far = 0.0, -3.6, 8.4
    source = elements.SourceI() if wires == 4 else elements.MeterOhm()
    words = "current\nsource" if wires == 4 else "ohmmeter"
    sheet += source.endpoints((0, bottom), (0, top)).label(words, loc="top", ofst=0.2)
    for y, side in ((top, "top"), (bottom, "bottom")):
        lead = elements.Resistor().at((0, y)).to((far, y))
        sheet += lead.label("lead 0.1 Ω", loc=side, ofst=0.2)
    sheet += elements.Resistor().at((far, top)).to((far, bottom)).label("part\n0.1 Ω", loc="bottom")
    if wires == 2:
        alt = "An ohmmeter with two leads of 0.1 Ω each, in series with a part of 0.1 Ω."
        return picture_of(sheet, alt)
    inside, x = (top - 0.3, bottom + 0.3), far - 3.0
    for y in inside:
        sheet += elements.Dot().at((far, y))
        sheet += elements.Line().at((far, y)).to((x, y))
    voltmeter = elements.MeterV().endpoints((x, inside[1]), (x, inside[0]))
    sheet += voltmeter.label("voltmeter", loc="top", ofst=0.2)
    return picture_of(
        sheet,
        "A current source drives its current through two leads of 0.1 Ω and a part of 0.1 Ω. "
        "A voltmeter has two leads of its own, right at the part.",
    )


def new_sheet():
    """An empty drawing and schemdraw's elements."""
    import schemdraw
    from schemdraw import elements

    schemdraw.use("svg")
    sheet = schemdraw.Drawing(show=False)
    sheet.config(unit=3, fontsize=13, color=INK, lw=1.8, bgcolor="white", margin=0.4)
    return sheet, elements


def picture_of(sheet, alt: str) -> Picture:
    return Picture(sheet.get_imagedata("svg").decode("utf-8"), alt)


def _those_to_draw(parts: tuple[Part, ...], probed: Part) -> list[Part]:
    """The probed part first, then its neighbours in the order in which they were typed."""
    return [probed, *(part for part in parts if part is not probed)][:MOST_DRAWN]


def _columns(parts: list[Part], probed: Part) -> dict[str, float]:
    """Where each node's line stands: the probed nodes at both ends."""
    between = dict.fromkeys(node for part in parts for node in part.nodes)
    one, other = probed.nodes
    order = [one, *(node for node in between if node not in probed.nodes), other]
    return {node: GAP * place for place, node in enumerate(order)}


def _draw_part(sheet, elements, part: Part, across: dict[str, float], y: float, probed: bool):
    shapes = {"R": elements.Resistor, "C": elements.Capacitor, "L": elements.Inductor2}
    left, right = sorted(across[node] for node in part.nodes)
    sheet += elements.Dot().at((left, y))
    sheet += elements.Dot().at((right, y))
    shape = shapes[part.letter]().at((left, y)).to((left + GAP, y))
    sheet += shape.label(_label(part), loc="top", ofst=0.15, color=PROBE if probed else INK)
    if right > left + GAP:
        sheet += elements.Line().at((left + GAP, y)).to((right, y))


def _label(part: Part) -> str:
    inside = f", {INSIDE[part.letter]} {Quantity(part.series, 'Ω')}" if part.series else ""
    return f"{part.name}  {Quantity(part.value, UNITS[part.letter])}{inside}"


def _in_words(part: Part) -> str:
    value = Quantity(part.value, UNITS[part.letter])
    inside = f", {INSIDE[part.letter]} {Quantity(part.series, 'Ω')}" if part.series else ""
    return f"{part.name}: {KINDS[part.letter]} {value}{inside}, from {' to '.join(part.nodes)}."
