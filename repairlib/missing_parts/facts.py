"""What the text of an empty place comes to, as plain facts that the rules ask for.

A fact is one word: `rail-ground` for the nets each side; `end:reset` for a role of a side itself,
`near:reset` for one of the neighbours, `at:reset` for either; `size:small`, `mark:plus`,
`pads:three`, `twin:empty`, `letter:C`.
"""

from __future__ import annotations

from repairlib.health import MNO2, tantalum_rating
from repairlib.missing_parts.nets import Net
from repairlib.missing_parts.place import Place

TINY, SMALL, MIDDLE = 1.2e-3, 1.9e-3, 3.6e-3  # m, length of a body: to 0402, to 0603, to 1206
BROAD = 2.2e-3  # m, width from which even a short body is a large one
ROUND_FROM = 3e-3


def facts_of(place: Place) -> frozenset[str]:
    """Every fact of a place.

    >>> from repairlib.missing_parts.place import read_place
    >>> sorted(facts_of(read_place("R7 0402 from RESET to 3V3")))[:4]
    ['at:rail', 'at:reset', 'chip_size', 'end:rail']
    """
    ends = frozenset().union(*[net.roles for net in place.nets])
    facts = {f"end:{role}" for role in ends} | {f"near:{role}" for role in place.near}
    facts |= {f"at:{role}" for role in ends | place.near}
    facts |= {f"mark:{mark}" for mark in place.marks}
    facts |= _between(place.nets) | _size(place) | _twin(place)
    if place.letters:
        facts |= {f"letter:{place.letters}", "letter"}
    if place.danger is None and place.volts and tantalum_rating(MNO2, abs(place.volts)).verdict:
        facts.add("no tantalum rating")
    return frozenset(one.replace(" ", "_") for one in facts)


def _between(nets: tuple[Net, ...]) -> set[str]:
    if not nets:
        return {"nets unknown"}
    kinds = [net.side for net in nets]
    if len(nets) == 1:
        return {f"{kinds[0]} only"}
    kinds.sort(key=("rail", "signal", "ground").index)
    facts = {"-".join(kinds)}
    for role in nets[0].roles & nets[1].roles:
        facts.add(f"both:{role}")
    if kinds == ["rail", "rail"]:
        volts = [net.volts for net in nets]
        facts.add("volts alike" if volts[0] == volts[1] or None in volts else "volts differ")
    return facts


def _size(place: Place) -> set[str]:
    pads = place.footprint
    facts = set()
    if pads.length is not None and pads.width is not None:
        if pads.length > MIDDLE or pads.width > BROAD:
            facts.add("size:large")
        else:
            names = ((TINY, "size:tiny"), (SMALL, "size:small"), (MIDDLE, "size:middle"))
            facts.add(next(name for most, name in names if pads.length <= most))
    if pads.case and not pads.imperial:  # no chip resistor or ceramic has these proportions
        facts.add("tantalum size")
    if pads.case and pads.imperial:
        facts.add("tantalum or chip size")
    if pads.imperial:
        facts.add("chip size")
    if pads.package:
        facts |= {"semiconductor body", f"body:{pads.package}"}
    if (pads.across or 0) >= ROUND_FROM:
        facts.add("mark:round outline")
    if pads.through_holes:
        facts.add("holes")
    if pads.pads is not None and pads.pads > 2:
        facts.add("pads:three" if pads.pads == 3 else "pads:many")
    if pads.pads == 2:
        facts.add("pads:two")
    return facts


def _twin(place: Place) -> set[str]:
    if place.twin is None:
        return set()
    if place.twin.empty:
        return {"twin:empty"}
    return {f"twin:{place.twin.family}"} if place.twin.family else set()
