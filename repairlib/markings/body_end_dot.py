"""Old resistors painted all over: the body, one end and a dot are the three bands.

Typed with the places named: `body red end violet dot orange`, and `tolerance gold` where the
other end is painted. A place that is left out has the colour of the body. All from memory.
"""

from __future__ import annotations

from repairlib.markings.bands import read_colours, why_not
from repairlib.markings.colours import MEMORY, bands_of, no_colour, words_of
from repairlib.markings.reading import Reading

_PLACES = {
    "body": "body",
    "end": "end",
    "tip": "end",
    "dot": "dot",
    "spot": "dot",
    "tolerance": "tolerance",
}
ACCEPTED = "body, end, dot, each with a colour, such as: body red end violet dot orange"


def is_painted(text: str) -> bool:
    """Whether the words name places of a painted body."""
    return "body" in [word.lower() for word in words_of(text)]


def read_painted(text: str) -> list[tuple[int, Reading]]:
    """Readings of a resistor painted in the body, end and dot style; none when it is no such."""
    places = places_of(text)
    if isinstance(places, str):
        return []
    bands = _bands(places)
    readings = []
    for rank, one in read_colours(text, bands, "resistor"):
        if "read from the other end" not in one.why:
            readings.append((rank, _told(one, places)))
    return readings


def why_not_painted(text: str) -> str:
    """What is wrong with a painted marking, in words."""
    places = places_of(text)
    return places if isinstance(places, str) else why_not(_bands(places))


def places_of(text: str) -> dict[str, str] | str:
    """{"body": "red", ...}, or what is wrong. A colour stands before or behind its place."""
    words = [word.lower() for word in words_of(text)]
    if len(words) % 2:
        return "a place or a colour is missing"
    places = {}
    for first, second in zip(words[::2], words[1::2], strict=True):
        place, colour = (first, second) if first in _PLACES else (second, first)
        if place not in _PLACES:
            return f"{place} is no place on a body"
        if not bands_of(colour):
            return no_colour(colour)
        if _PLACES[place] in places:
            return f"{place} is given twice"
        places[_PLACES[place]] = bands_of(colour)[0]
    return places if "body" in places else "the body has no colour"


def _bands(places: dict[str, str]) -> list[str]:
    body = places["body"]
    bands = [body, places.get("end", body), places.get("dot", body)]
    return bands + ([places["tolerance"]] if "tolerance" in places else [])


def _told(one: Reading, places: dict[str, str]) -> Reading:
    """The reading of the bands, with its why in the words of a painted body."""
    order = [f"{name} {places[name]}" for name in ("body", "end", "dot") if name in places]
    why = f"Body, end, dot in this order ({', '.join(order)}): {one.why}"
    why = why.replace("no fourth band: ±20", "no gold or silver end: ±20")
    return one.changed(why=why, sources=tuple(dict.fromkeys((*one.sources, MEMORY))))
