"""Ways to find pin 1 and to tell which way round a plug goes, and what is wrong with each."""

from __future__ import annotations

from functools import cache
from typing import Annotated, NamedTuple

from repairlib.core.calculator import Choice, Found, calculator, found
from repairlib.core.tables import read_table

PROVE = "prove it with the meter"


class Way(NamedTuple):
    """A way to find pin 1: what it points to, what can be wrong, what to look at besides."""

    points_to: str
    beware: str
    look_instead: str
    source: str


@cache
def ways() -> dict[str, Way]:
    """The ways by name.

    >>> ways()["square pad"].points_to, ways()["latch side"].points_to
    ('pin 1', 'which way round it goes in')
    """
    return {
        row["way"]: Way(row["points_to"], row["beware"], row["look_instead"], row["source"])
        for row in read_table("pin-one")
    }


@calculator(
    topic="connectors",
    title="Which is pin 1",
    sources=("common practice",),
    cautions=("heat and fire",),
)
def pin_one(
    way: Annotated[str, Choice(lambda: tuple(ways()), "What you see.")],
) -> Found:
    """What a mark or key of a connector points to, what can be wrong with it, what to look at too.

    No mark is proof: the verdict is to prove the pin with the meter, power off. Raises
    RepairlibError for other words. Source: common practice.

    >>> print(pin_one("coloured edge of a ribbon").verdict)
    prove it with the meter
    """
    one = ways()[way]
    values = {"points_to": one.points_to, "beware": one.beware, "look_at": one.look_instead}
    notes = [
        "One contact known to be ground, traced with the meter at both ends, settles the rest.",
        "Photograph and mark both halves before you pull them apart.",
    ]
    return found(
        values,
        verdict=PROVE,
        reason=f"it points to: {one.points_to}; but {one.beware}",
        notes=notes,
        sources=(one.source,),
    )
