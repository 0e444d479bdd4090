"""Which rated voltages each kind of capacitor is made for, from its lowest to its highest."""

from __future__ import annotations

from functools import cache

from repairlib.core.tables import read_table
from repairlib.recap.words import ALUMINIUM, BIPOLAR, FILM, POLYMER, TANTALUM

TANTALUM_POLYMER, CERAMIC_2 = "tantalum polymer", "class 2 ceramic"
POLYESTER_FILM, POLYPROPYLENE_FILM = "polyester film", "polypropylene film"
POLYSTYRENE_FILM = "polystyrene film"

# Highest ratings: polyester film 1000 V (ICEL MTB), polypropylene 2000 V (ICEL PPB), class 2
# ceramic 3000 V, polymer aluminium 100 V, solid tantalum of both kinds 75 V (makers' sheets).
# The steps below them are from memory.
_POLYESTER = (63.0, 100.0, 160.0, 250.0, 400.0, 630.0, 1000.0)
_POLYPROPYLENE = (250.0, 400.0, 630.0, 1000.0, 1250.0, 1600.0, 2000.0)
_BIPOLAR_MOST = 100.0  # V; above it the trade has no bipolar electrolytics: common practice
_TANTALUM = (2.5, 4.0, 6.3, 10.0, 16.0, 20.0, 25.0, 35.0, 50.0, 75.0)
_MADE = {
    FILM: tuple(sorted({*_POLYESTER, *_POLYPROPYLENE})),
    POLYESTER_FILM: _POLYESTER,
    POLYPROPYLENE_FILM: _POLYPROPYLENE,
    CERAMIC_2: (6.3, 10.0, 16.0, 25.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 2000.0, 3000.0),
    POLYMER: (2.5, 4.0, 6.3, 10.0, 16.0, 20.0, 25.0, 35.0, 50.0, 63.0, 80.0, 100.0),
    TANTALUM: _TANTALUM,
    TANTALUM_POLYMER: _TANTALUM,
}


@cache
def made_ratings(kind: str) -> tuple[float, ...]:
    """The rated voltages [V] of a kind, rising; those of wet aluminium stand in a table.

    >>> made_ratings("film")[-1], made_ratings("polymer electrolytic")[-1]
    (2000.0, 100.0)
    """
    if kind in (ALUMINIUM, BIPOLAR):
        volts = tuple(float(row["volts"]) for row in read_table("rated-voltages"))
        return volts if kind == ALUMINIUM else tuple(one for one in volts if one <= _BIPOLAR_MOST)
    return _MADE[kind]


def next_rating(volts: float, kind: str = ALUMINIUM) -> float | None:
    """The lowest rating of that kind that is not below `volts`, or None above the highest.

    >>> next_rating(16), next_rating(12), next_rating(500), next_rating(500, "film")
    (16.0, 16.0, None, 630.0)
    """
    return next((rating for rating in made_ratings(kind) if rating >= volts * (1 - 1e-9)), None)
