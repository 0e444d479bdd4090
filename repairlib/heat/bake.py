"""Baking moisture out of plastic bodies: how long, how hot, and what must never go in.

Times are those of the user's table of J-STD-033 by body thickness and level. What carries a cell,
a wet electrolytic or a plastic tape does not go into a hot oven, whatever the table says.
"""

from __future__ import annotations

from typing import Annotated, NamedTuple

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.sources import SOURCES
from repairlib.core.tables import read_table
from repairlib.heat.moisture import LEVELS, check_level, days_and_hours

OVENS = (125, 90, 40)  # °C
LATE = 72.0  # hours past the floor life, from where the longer time holds
MOST_HOT_HOURS = 96.0  # all bakes above HOT together: leads oxidise. J-STD-033B.1, 4.2.7.1
HOT = 90.0  # °C; at or below it the standard sets no limit
HOT_LIMIT = (
    f"Bakes above {HOT:g} °C, up to 125 °C, may add up to {MOST_HOT_HOURS:g} h, for leads oxidise "
    f"(J-STD-033B.1, clause 4.2.7.1, from memory); at {HOT:g} °C or below there is no such limit. "
    "Revision A, as quoted, allowed 48 h."
)
INTERRUPTION = 0.25  # hours; a longer one is added to the bake
THICKEST = 4.5  # mm
CELL, WET, TAPE, TRAY = "a cell or battery", "a wet electrolytic", "tape on a reel", "nothing else"
CARRIED = (TRAY, TAPE, WET, CELL)
_HOTTEST = {TRAY: 125, TAPE: 40, WET: 40, CELL: 0}


class BakeTime(NamedTuple):
    """A row of the table: `hours` at `celsius`, with the source's key and how it was obtained."""

    hours: float
    celsius: int
    source: str
    how: str


def bake_time(level: str, thickness_mm: float, celsius: int, late: bool) -> BakeTime:
    """How long to bake. `late`: more than 72 h past the floor life, or of unknown history.

    `thickness_mm` of the body above 0, up to 4.5; `celsius` is 125, 90 or 40. Raises
    RepairlibError outside, and for levels 1 (needs none) and 6 (its label says it).

    >>> bake_time("3", 1.0, 125, late=True).hours
    9.0
    """
    check_level(level)
    if level in ("1", "6"):
        wrong = "never needs a bake" if level == "1" else "its bake stands on its own label"
        raise RepairlibError(f"level {level}", wrong, "2, 2a, 3, 4, 5, 5a")
    if not 0 < thickness_mm <= THICKEST:
        raise RepairlibError(f"{thickness_mm:g} mm", "not in the table", f"up to {THICKEST:g} mm")
    if celsius not in OVENS:
        raise RepairlibError(f"{celsius} °C", "not an oven of the table", "125, 90 or 40 °C")
    for row in read_table("bake-times"):
        if (
            row["level"] == level
            and int(row["celsius"]) == celsius
            and float(row["thicker_than_mm"]) < thickness_mm <= float(row["up_to_mm"])
        ):
            hours = float(row["late_h" if late else "in_time_h"])
            return BakeTime(hours, celsius, row["source"], SOURCES[row["source"]].how)
    raise AssertionError("the table has a row for every level, thickness and oven")


def wears_leads(celsius: float, hours: float) -> bool:
    """Whether bakes of so many hours in all, the last at that temperature, are too much.

    The limit of 96 h is for bakes above 90 °C only.

    >>> wears_leads(125, 97), wears_leads(90, 240)
    (True, False)
    """
    return celsius > HOT and hours > MOST_HOT_HOURS


def hottest_oven(carries: str) -> int | None:
    """The hottest oven of the table that what is baked stands, in °C, or None for no oven.

    Tape on a reel stands 40 °C (an RF module data sheet), wet electrolytics too (common practice).
    A cell or battery is not baked.

    >>> hottest_oven("tape on a reel"), hottest_oven("a cell or battery")
    (40, None)
    """
    if carries not in _HOTTEST:
        raise RepairlibError(carries, "not known here", ", ".join(CARRIED))
    return _HOTTEST[carries] or None


@calculator(
    topic="heat",
    title="Bake before reflow",
    sources=(
        "J-STD-033 bake conditions",
        "J-STD-033B.1",
        "J-STD-033A, quoted",
        "RF module data sheet",
    ),
    cautions=("hot tools",),
)
def bake_before_reflow(
    level: Annotated[str, Choice(LEVELS, "Moisture sensitivity level, as on the bag.")],
    thickness: Annotated[float, Given("m", "Thickness of the body.", above=0, at_most=0.0045)],
    past_floor_life: Annotated[
        float | None,
        Given("s", "How long past its floor life; leave empty when unknown.", at_least=0),
    ] = None,
    carries: Annotated[str, Choice(CARRIED, "What else goes into the oven with it.")] = TRAY,
    interrupted: Annotated[
        float, Given("s", "Time the oven was open or cold meanwhile.", at_least=0)
    ] = 0.0,
    baked_before: Annotated[
        float, Given("s", "All bakes so far above 90 °C; cooler ones do not count.", at_least=0)
    ] = 0.0,
) -> Found:
    """How long to bake a part, at each temperature that it stands.

    `thickness` in metres (text such as "1.4 mm"), times in seconds (text such as "30 h"). Without
    `past_floor_life` the longer times are taken. An interruption of more than 15 min is added.
    Raises RepairlibError for thicker bodies and for level 1. Sources: J-STD-033 table as
    published, some rows from memory.

    >>> print(bake_before_reflow("3", "1 mm", "100 h"))
    Bake before reflow: bake first (more than 72 h late); at 125 9 h; at 90 33 h; at 40 13 days
    """
    if level == "6":
        return found(
            {"time": "see its label"},
            verdict="bake first",
            reason="level 6, before each use",
        )
    late = past_floor_life is None or past_floor_life / 3600 > LATE
    added = interrupted / 3600 if interrupted / 3600 > INTERRUPTION else 0.0
    hottest = hottest_oven(carries)
    values, working, sources = {}, [], []
    for oven in OVENS:
        row = bake_time(level, round(thickness * 1000, 9), oven, late)
        hours = row.hours + added
        worn = wears_leads(oven, baked_before / 3600 + hours)
        told = days_and_hours(hours)
        if not hottest or oven > hottest:
            told = f"never with {carries}"
        elif worn:
            told = f"no: more than {MOST_HOT_HOURS:g} h above {HOT:g} °C in all"
        else:
            sources.append(row.source)
        values[f"at_{oven}"] = told
        more = f" + {days_and_hours(added)} of interruption" if added else ""
        working.append(f"{oven} °C: {days_and_hours(row.hours)}{more} ({row.how})")
    reason = "its history is not known" if past_floor_life is None else "more than 72 h late"
    reason = reason if late else "up to 72 h late"
    cautions = ("batteries",) if carries == CELL else ()
    if hottest is None:
        verdict, reason = "do not bake", "take the cell out first: a heated cell burns or bursts"
    else:
        verdict = "bake first"
    return found(
        values,
        working=working,
        verdict=verdict,
        reason=reason,
        notes=_notes(level, carries),
        sources=sources,
        cautions=cautions,
    )


def _notes(level: str, carries: str) -> tuple[str, ...]:
    notes = ["The oven at 125, 90 or 40 °C; at 90 and 40 °C its air has 5 % RH or less.", HOT_LIMIT]
    if level in ("2", "2a"):
        notes.append(
            "The row of level 2 for thin bodies is from memory; one published page prints it "
            "against level 2a. The times of revision B.1 are followed."
        )
    if carries == TAPE:
        notes.append("Usual tape and reel do not stand 125 °C: 40 °C, or out of the tape.")
    if carries == WET:
        notes.append("A hot oven dries a wet electrolytic out: 40 °C, or take it off first.")
    return tuple(notes)
