"""Outlines of the bodies that memory chips come in, and pads for them: sizes in mm.

Each has its source beside it.
"""

from __future__ import annotations

from typing import NamedTuple

Range = tuple[float, float]
CALLIPER = 0.1  # mm that a measured size may lie outside the drawing: our choice


class Outline(NamedTuple):
    """A body in mm: (least, most) of width, length, over the leads, and of a foot on its pad.

    Width is between the two rows of leads. `foot` is None for pads under the body and for pins.
    """

    name: str
    leads: int
    width: Range
    length: Range
    over_leads: Range
    pitch: float
    foot: Range | None
    source: str
    note: str = ""

    @property
    def ends(self) -> str:
        """How it meets the board: one of ENDS."""
        if self.foot is not None:
            return LEADS
        return PINS if self.pitch == 2.54 else UNDERNEATH


LEADS, UNDERNEATH, PINS = "leads", "pads under it", "pins in holes"
ENDS = (LEADS, UNDERNEATH, PINS)
_UNDER = "Its pads lie under the body, mostly with a large one in the middle: hot air takes it off."
_MEMORY = "from memory"
OUTLINES = {
    one.name: one
    for one in (
        Outline(
            *("150 mil", 8, (3.8, 4.0), (4.8, 5.0), (5.8, 6.2), 1.27, (0.4, 1.27)),
            "SO-8 outline",
        ),
        Outline(
            # 5.283 and 8.001 in the drawing, the spread around them from memory
            *("208 mil", 8, (5.18, 5.38), (5.18, 5.38), (7.8, 8.2), 1.27, (0.508, 0.762)),
            "S25FL064K",
            "Also called 200 or 209 mil.",
        ),
        Outline(
            *("300 mil, 16 leads", 16, (7.39, 7.6), (10.21, 10.41), (10.11, 10.52), 1.27),
            *((0.53, 0.99), "SO-16 outline", "Of its leads eight are mostly not connected."),
        ),
        Outline(
            *("TSSOP-8", 8, (4.3, 4.5), (2.9, 3.1), (6.2, 6.6), 0.65, (0.45, 0.75)),
            "TSSOP-8 outline",
        ),
        Outline(
            *("no leads, 6 × 5 mm", 8, (5.9, 6.1), (4.9, 5.1), (5.9, 6.1), 1.27, None),
            *("dual layout note, 150 mil", _UNDER),
        ),
        Outline(
            *("no leads, 8 × 6 mm", 8, (7.9, 8.1), (5.9, 6.1), (7.9, 8.1), 1.27, None),
            *(_MEMORY, _UNDER),
        ),
        Outline(
            *("no leads, 4 × 4 mm", 8, (3.9, 4.1), (3.9, 4.1), (3.9, 4.1), 0.8, None),
            *(_MEMORY, _UNDER),
        ),
        Outline(
            *("no leads, 4 × 3 mm", 8, (3.9, 4.1), (2.9, 3.1), (3.9, 4.1), 0.8, None),
            *(_MEMORY, _UNDER),
        ),
        Outline(
            *("no leads, 3 × 2 mm", 8, (2.9, 3.1), (1.9, 2.1), (2.9, 3.1), 0.5, None),
            *(_MEMORY, _UNDER),
        ),
        Outline(
            *("pins, 300 mil", 8, (6.1, 6.6), (9.0, 10.2), (7.6, 8.3), 2.54, None),
            *(_MEMORY, "It stands in holes or in a socket."),
        ),
    )
}


class Pads(NamedTuple):
    """Two rows of pads in mm: from inner end to inner end, and from outer end to outer end."""

    inside: float
    outside: float


# 150 mil: the footprint of an SO8 sheet. 208 mil: from memory, boards differ.
PADS = {"150 mil": Pads(4.0, 7.0), "208 mil": Pads(5.5, 9.0)}


def bodies_of(
    width: float | None = None,
    over_leads: float | None = None,
    pitch: float | None = None,
    leads: int | None = None,
    ends: str | None = None,
) -> tuple[Outline, ...]:
    """The bodies that what was measured in mm fits; what was not measured is left out.

    >>> [one.name for one in bodies_of(width=5.3, leads=8)]
    ['208 mil']
    >>> [one.name for one in bodies_of(over_leads=6.0)]
    ['150 mil', 'no leads, 6 × 5 mm']
    """
    return tuple(
        one
        for one in OUTLINES.values()
        if (leads is None or leads == one.leads)
        and (ends is None or ends == one.ends)
        and _measures(one, width, over_leads)
        and (pitch is None or abs(pitch - one.pitch) <= CALLIPER)
    )


def _measures(one: Outline, width: float | None, over_leads: float | None) -> bool:
    """Whether width and span are its own; the width of a body without leads is either side."""
    sides = (one.width, one.length) if one.ends == UNDERNEATH else (one.width,)
    wide = width is None or any(within(width, side) for side in sides)
    return wide and (over_leads is None or within(over_leads, one.over_leads))


def within(measured: float, drawn: Range) -> bool:
    """Whether a measured size in mm is that of a drawing, by a calliper."""
    return drawn[0] - CALLIPER - 1e-9 <= measured <= drawn[1] + CALLIPER + 1e-9
