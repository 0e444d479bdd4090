"""What stands beside a heated joint: what it bears, and what is done about it.

The figures are those of `datasets/reference/heat-shielding.csv`: what the tenderest of its kind
bears and what the toughest does, from ratings that are usual in the trade.
"""

from __future__ import annotations

from functools import cache
from typing import NamedTuple

from repairlib.core.tables import read_table

NOT_SAID = "not said"
CELL = "battery or cell"


class Neighbour(NamedTuple):
    """A kind of neighbour. `air` and `iron`: shield it nearer than so many mm, None for never heat.

    `low` and `high`: °C that the tenderest and the toughest of its kind bear; None where its solder
    is what gives way first, and where it must not be heated at all.
    """

    name: str
    air: float | None
    iron: float | None
    low: float | None
    high: float | None
    do: str
    source: str

    @property
    def never(self) -> bool:
        """Whether no heat at all may come near it."""
        return self.iron is None


@cache
def neighbours() -> dict[str, Neighbour]:
    """Every kind of neighbour by its name.

    >>> neighbours()["aluminium electrolytic"].low, neighbours()["battery or cell"].never
    (85.0, True)
    """
    return {
        row["neighbour"]: Neighbour(
            row["neighbour"],
            _figure(row["hot_air_mm"]),
            _figure(row["iron_mm"]),
            _figure(row["bears_low_c"]),
            _figure(row["bears_high_c"]),
            row["do"],
            row["source"],
        )
        for row in read_table("heat-shielding")
    }


def neighbours_or_not_said() -> tuple[str, ...]:
    """The names, after "not said"."""
    return (NOT_SAID, *neighbours())


def may_be_a_cell(name: str) -> bool:
    """Whether the caution about batteries is due: a cell, or nobody said what stands there."""
    return name in (NOT_SAID, CELL)


def _figure(text: str) -> float | None:
    return None if text in ("", "never") else float(text)
