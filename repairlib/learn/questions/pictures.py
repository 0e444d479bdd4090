"""The picture of one part, as questions show it: without the words that would give it away."""

from __future__ import annotations


def part(body: str, marking: str = "", **options):
    """The drawing of a part with this marking; `options` are those of `draw_part`."""
    from repairlib.show import draw_part

    return draw_part(body, marking, labels=False, **options)
