"""What else could it be: bands whose colour was changed by heat, age or the lamp.

Which colours are taken for each other is common practice; a value counts only when it is made.
"""

from __future__ import annotations

from repairlib.markings.bands import read_colours
from repairlib.markings.colours import read_bands
from repairlib.markings.reading import Reading

# colour seen: what it may have been
CONFUSED = {
    "red": ("brown", "orange"),
    "brown": ("red", "black"),
    "orange": ("red", "yellow"),
    "yellow": ("orange", "white"),
    "grey": ("white", "blue"),
    "white": ("grey",),
    "violet": ("blue", "brown"),
    "blue": ("violet", "grey"),
    "black": ("brown",),
}


def what_else(text: str, part: str = "resistor") -> list[tuple[str, Reading]]:
    """The sound readings with one band changed, each with what was changed, as typed order.

    `text` holds colours, `part` is "resistor" or "inductor". Values already read are left out.
    Raises RepairlibError for a word that is no colour.

    >>> for change, reading in what_else("brown-black-red-gold")[:3]:
    ...     print(f"{change}: {reading.headline}")
    band 1 red, not brown: 2 kΩ ±5 %
    band 2 brown, not black: 1.1 kΩ ±5 %
    band 3 brown, not red: 100 Ω ±5 %
    """
    bands = read_bands(text)
    known = {_meaning(one) for _, one in read_colours(text, bands, part)}
    found = []
    for place, colour in enumerate(bands):
        for other in CONFUSED.get(colour, ()):
            changed = [*bands[:place], other, *bands[place + 1 :]]
            for _, reading in sorted(read_colours(text, changed, part), key=lambda one: one[0])[:1]:
                if not reading.doubt and _meaning(reading) not in known:
                    known.add(_meaning(reading))
                    found.append((f"band {place + 1} {other}, not {colour}", reading))
    return found


def _meaning(reading: Reading) -> tuple:
    return reading.value, reading.tolerance, tuple(reading.carries.items())
