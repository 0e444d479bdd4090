"""The history of a moisture-sensitive part, from its bag to now: use now, bake first, or discard.

A history is a table with the columns when, event, celsius and humidity. Each event says what
begins: sealed (in its dry bag), out (open on the bench), dry (in a dry cabinet), bake (in the
oven), reflow (one pass through soldering heat; then it is out), now.
"""

from __future__ import annotations

from datetime import datetime
from itertools import pairwise
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.core.finding import Finding
from repairlib.core.typed.headed import read_headed
from repairlib.core.typed.table import with_point
from repairlib.core.typed.textfile import TextFile, read_text
from repairlib.heat.bake import (
    CELL,
    HOT,
    HOT_LIMIT,
    INTERRUPTION,
    LATE,
    MOST_HOT_HOURS,
    OVENS,
    TRAY,
    bake_time,
    hottest_oven,
    wears_leads,
)
from repairlib.heat.moisture import (
    BAG_MONTHS,
    BAKE,
    DISCARD,
    FLOOR_LIFE,
    USE,
    check_air,
    check_level,
    counts_on_the_floor,
    days_and_hours,
    floor_life,
    reset_rule,
)

SEALED, OUT, DRY, OVEN, REFLOW, NOW = EVENTS = ("sealed", "out", "dry", "bake", "reflow", "now")
COLUMNS = ("when", "event", "celsius", "humidity")
MOST_PASSES = 3
DRY_ENOUGH = 10.0  # % RH; in drier air the clock stands still
_BAG_HOURS = BAG_MONTHS * 730.5


class Event(NamedTuple):
    """What began at that hour; air in °C and % RH, None where it was not written down."""

    hour: float
    event: str
    celsius: float | None
    humidity: float | None


class _Clock:
    """The state of one part while its history is walked through."""

    def __init__(self, level: str, thickness_mm: float):
        check_level(level)
        if level not in ("1", "6"):
            bake_time(level, thickness_mm, OVENS[0], late=True)  # refuses a body not in the table
        self.level, self.thickness = level, thickness_mm
        self.life = FLOOR_LIFE.get(level, 0.0)
        self.used = self.hot_hours = self.baked = self.pause = 0.0
        self.oven: int | None = None
        self.passes = 0
        self.wet_air = self.old_bag = False
        self.lines: list[str] = []
        self.notes: list[str] = []

    def run(self, events: list[Event]) -> list[float]:
        """Walk through a history; the hours used at each of its events."""
        shown = [0.0]
        for one, after in pairwise(events):
            _STEPS[one.event](self, one, after.hour - one.hour)
            shown.append(self.used)
        return shown

    @property
    def needs_bake(self) -> bool:
        return self.wet_air or self.old_bag or self.used > self.life or self.level == "6"

    @property
    def late(self) -> bool:
        return self.wet_air or self.old_bag or self.used - self.life > LATE


def read_exposure_log(path) -> list[Event]:
    """The events in a CSV file. Raises RepairlibError as `parse_exposure_log` does."""
    return parse_exposure_log(read_text(path), getattr(path, "name", str(path)))


def parse_exposure_log(text: TextFile | str | bytes, name: str = "history") -> list[Event]:
    r"""The events in a text with the columns when, event, celsius, humidity.

    Raises RepairlibError for missing columns, unknown events, times that do not rise or are no
    dates, air that cannot be, and a history that does not end with "now".

    >>> text = "when,event,celsius,humidity\n2031-05-06 08:00,out,23,45\n2031-05-07 08:00,now,,"
    >>> parse_exposure_log(text)[-1].hour
    24.0
    """
    table = read_headed(text, name, COLUMNS, COLUMNS)
    events: list[Event] = []
    start: datetime | None = None
    for row in table.rows_below():
        if row.what:
            raise RepairlibError(f"{name} line {row.line}", row.why, ",".join(COLUMNS))
        when, what, celsius, humidity = table.by_heading(row, COLUMNS).values()
        event, at = _event(what), _time(when)
        start = start or at
        hour = (at - start).total_seconds() / 3600
        if events and hour <= events[-1].hour:
            raise RepairlibError(when, "not later than the row before it", "times that rise")
        air = _figure(celsius), _figure(humidity)
        check_air(air[0] or 0.0, air[1] or 0.0)
        events.append(Event(hour, event, *air))
    kinds = [one.event for one in events]
    if len(kinds) < 2 or kinds[-1] != NOW or NOW in kinds[:-1]:
        raise RepairlibError(name, "the history does not end now", 'a last row with "now"')
    return events


def _event(text: str) -> str:
    event = text.casefold()
    if event not in EVENTS:
        raise RepairlibError(event, "not an event known here", ", ".join(EVENTS))
    return event


def _time(text: str) -> datetime:
    try:
        when = datetime.fromisoformat(text)
    except ValueError:
        accepted = "a date and time such as 2031-05-06 08:00"
        raise RepairlibError(text, "not a date and time", accepted) from None
    if when.tzinfo:
        raise RepairlibError(text, "it has a time zone", "local time for all rows, without one")
    return when


def _figure(text: str) -> float | None:
    if not text:
        return None
    plain = with_point(text)
    try:
        return float(plain)
    except ValueError:
        raise RepairlibError(text, "not a number", "°C or % RH, or nothing") from None


def clock_readings(events: list[Event], level: str, thickness_mm: float) -> list[float]:
    """The hours of floor life that are used at each event of a history.

    `level` is the MSL, `thickness_mm` that of the body up to 4.5. Sources and errors as of
    `judge_exposure`.

    >>> text = "when,event,celsius,humidity\\n2031-05-06 08:00,out,23,45\\n2031-05-07 08:00,now,,"
    >>> clock_readings(parse_exposure_log(text), "3", 1.0)
    [0.0, 24.0]
    """
    return _Clock(level, thickness_mm).run(events)


def judge_exposure(
    events: list[Event],
    level: str,
    thickness_mm: float,
    carries: str = TRAY,
    name: str = "the part",
) -> Finding:
    """What a history asks for: use now, bake first, or discard; with the clock at every step.

    `level` is the MSL, `thickness_mm` that of the body up to 4.5, `carries` one of bake.CARRIED.
    Sources: floor lives as published, clock rules from memory of J-STD-033; three passes at most
    by a chip maker. Raises RepairlibError for values that cannot be.

    >>> text = "when,event,celsius,humidity\\n2031-05-06 08:00,out,23,45\\n2031-05-07 08:00,now,,"
    >>> judge_exposure(parse_exposure_log(text), "3", 1.0).left
    '144 h'
    """
    hottest = hottest_oven(carries)
    clock = _Clock(level, thickness_mm)
    clock.run(events)
    if clock.hot_hours:
        clock.notes.append(_hot_bakes(clock.hot_hours))
    verdict, reason = _verdict(clock, hottest, carries)
    left = "see its label" if level == "6" else days_and_hours(max(clock.life - clock.used, 0))
    values = {
        "floor_life": "see its label" if level == "6" else days_and_hours(floor_life(level)),
        "used": days_and_hours(clock.used),
        "left": "none: bake first" if clock.needs_bake else left,
        "passes": clock.passes,
    }
    if verdict == BAKE and level not in ("1", "6"):
        values["bake"] = _bakes(clock, hottest)
    return Finding(
        title=f"Moisture history of {name}, level {level}",
        values=values,
        working=tuple(clock.lines),
        verdict=verdict,
        reason=reason,
        notes=tuple(clock.notes),
        sources=(
            "moisture level table",
            "J-STD-033 bake conditions",
            "J-STD-033, not looked up",
            "J-STD-033A, quoted",
            "three reflow passes",
        ),
        cautions=("hot tools", *(("batteries",) if carries == CELL else ())),
    )


def _verdict(clock: _Clock, hottest: int | None, carries: str) -> tuple[str, str]:
    if clock.passes >= MOST_PASSES:
        return DISCARD, f"{clock.passes} passes through reflow; {MOST_PASSES} in all are allowed"
    if not clock.needs_bake:
        return USE, f"{days_and_hours(clock.used)} of {days_and_hours(clock.life)} are used"
    if hottest is None:
        return DISCARD, (
            f"it needs a bake, and it carries {carries}: never into the oven. Can that be taken "
            "off? Then take it off and bake"
        )
    if clock.level == "6":
        return BAKE, "level 6 is baked before each use"
    if clock.wet_air:
        return BAKE, "it lay in air warmer or wetter than its floor life allows"
    if clock.old_bag:
        return BAKE, f"its bag was older than {BAG_MONTHS} months"
    return BAKE, f"{days_and_hours(clock.used - clock.life)} past its floor life"


def _bakes(clock: _Clock, hottest: int) -> str:
    told = []
    for oven in OVENS:
        hours = bake_time(clock.level, clock.thickness, oven, clock.late).hours
        if oven <= hottest and not wears_leads(oven, clock.hot_hours + hours):
            told.append(f"{days_and_hours(hours)} at {oven} °C")
    return " or ".join(told)


def _hot_bakes(hours: float) -> str:
    so_far = f"Baked above {HOT:g} °C for {days_and_hours(hours)} so far. {HOT_LIMIT}"
    worn = " Try whether its leads still take solder." if hours > MOST_HOT_HOURS else ""
    return so_far + worn


def _sealed(clock: _Clock, one: Event, hours: float) -> None:
    _say(clock, one, f"sealed for {days_and_hours(round(hours, 2))}: the clock stands")
    if hours > _BAG_HOURS and clock.level != "1":
        clock.old_bag = True
        clock.notes.append("The bag is out of date: its humidity card may still pass it.")


def _out(clock: _Clock, one: Event, hours: float) -> None:
    if None in (one.celsius, one.humidity):
        clock.notes.append(
            f"No air written down at {one.hour:g} h: taken as 30 °C and 60 % RH at most."
        )
    if not counts_on_the_floor(clock.level, one.celsius or 0.0, one.humidity or 0.0):
        clock.wet_air = True
    clock.used += hours
    if clock.oven and hours > INTERRUPTION:
        clock.pause += hours
    _say(clock, one, f"out for {hours:.4g} h: {clock.used:.4g} h used")


def _dry(clock: _Clock, one: Event, hours: float) -> None:
    if one.humidity is None or one.humidity > DRY_ENOUGH:
        clock.notes.append(f"The cabinet at {one.hour:g} h was not dry: it counts as out.")
        _out(clock, one._replace(celsius=one.celsius or 23.0), hours)
        return
    rule = None if clock.needs_bake else reset_rule(clock.level, clock.used)
    if rule and hours >= rule[0] - 1e-9 and one.humidity <= rule[1]:
        clock.used = 0.0
        _say(clock, one, f"dry for {hours:.4g} h: long enough, the clock is back at zero")
        return
    _say(clock, one, f"dry for {hours:.4g} h: the clock stands at {clock.used:.4g} h")


def _bake(clock: _Clock, one: Event, hours: float) -> None:
    if one.celsius is None or not OVENS[-1] <= one.celsius <= OVENS[0] + 5:
        wrong = "not an oven of the table"
        raise RepairlibError(f"bake at {one.celsius} °C", wrong, "40 to 130 °C")
    oven = next(oven for oven in OVENS if one.celsius >= oven - (5 if oven == OVENS[0] else 0))
    if oven != clock.oven:
        clock.oven, clock.baked, clock.pause = oven, 0.0, 0.0
    clock.baked += hours
    clock.hot_hours += hours if one.celsius > HOT else 0.0
    if clock.level in ("1", "6"):
        _say(clock, one, f"baked for {hours:.4g} h")
        return
    wanted = bake_time(clock.level, clock.thickness, oven, clock.late).hours + clock.pause
    if clock.baked < wanted - 1e-9:
        _say(clock, one, f"baked for {clock.baked:.4g} h of {wanted:.4g} h at {oven} °C: too short")
        return
    clock.used = clock.pause = clock.baked = 0.0
    clock.oven, clock.wet_air, clock.old_bag = None, False, False
    _say(clock, one, f"baked for {wanted:.4g} h or more at {oven} °C: the clock is back at zero")


def _reflow(clock: _Clock, one: Event, hours: float) -> None:
    if clock.needs_bake:
        clock.notes.append(
            f"It went through reflow at {one.hour:g} h when it needed a bake: look for cracks."
        )
    clock.passes += 1
    _say(clock, one, f"pass {clock.passes} through reflow")
    _out(clock, one, hours)


def _say(clock: _Clock, one: Event, words: str) -> None:
    clock.lines.append(f"{one.hour:.4g} h: {words}")


_STEPS = {SEALED: _sealed, OUT: _out, DRY: _dry, OVEN: _bake, REFLOW: _reflow}
