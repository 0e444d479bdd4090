"""A marking given in words of colours: bands in their order, or a body painted all over."""

from __future__ import annotations

from repairlib.markings.bands import read_colours
from repairlib.markings.body_end_dot import is_painted, read_painted
from repairlib.markings.colours import bands_of
from repairlib.markings.reading import Reading


def read_colour_text(text: str, pieces: list[str], part: str | None) -> list[tuple[int, Reading]]:
    """Readings of a marking in words of colours, each with its rank; none when they are no such."""
    if is_painted(text):
        return read_painted(text) if part in (None, "resistor") else []
    return read_colours(text, bands_of(text), part)
