"""How boards look: green with white print, dark with white print, brown and single-sided."""

from __future__ import annotations

from dataclasses import dataclass

from repairlib.core.errors import RepairlibError
from repairlib.show.canvas import BOARD, INK, PAPER, QUIET


@dataclass(frozen=True)
class Look:
    """ground: the board itself. print: what is printed on it. trace: copper under the paint, or on
    the far side. other: the outlines of parts that do not matter here. outline: that of parts that
    do. bare: white must lie below a coloured sign, as on every ground that is not pale."""

    ground: str
    print: str
    trace: str
    other: str
    outline: str = INK
    bare: bool = True


LOOKS = {
    "green": Look("#2a6a46", PAPER, "#347a52", "#8fbfa3"),
    "dark": Look("#1d2b3a", PAPER, "#28394b", "#7f93a8", outline=PAPER),
    "brown": Look("#d9b987", "#3b2412", "#cfab75", "#8d6d43"),
    "plan": Look(BOARD, INK, "#d3e4d4", QUIET, bare=False),
}


def look_of(name: str) -> Look:
    """The look of that name; raises RepairlibError for one that is not in LOOKS."""
    if name not in LOOKS:
        raise RepairlibError(name, "no board of this look is drawn", ", ".join(LOOKS))
    return LOOKS[name]
