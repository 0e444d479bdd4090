"""Moisture in plastic bodies: floor life by level, the clock's reset, the humidity card.

A plastic body takes up water from the air. In reflow heat the water turns to steam and cracks the
body. The level (MSL) on the bag says how long it may lie open. Baking is in `bake`, whole
histories in `exposure_log`.
"""

from __future__ import annotations

from typing import Annotated

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError

# Hours on the floor at 30 °C / 60 % RH at most. Level 1 has no limit, at 85 % RH at most.
FLOOR_LIFE = {
    "1": float("inf"),
    "2": 8760.0,
    "2a": 672.0,
    "3": 168.0,
    "4": 72.0,
    "5": 48.0,
    "5a": 24.0,
}
LEVELS = (*FLOOR_LIFE, "6")
FLOOR_C, FLOOR_RH = 30.0, 60.0
FLOOR_RH_LEVEL_1 = 85.0
BAG_MONTHS = 12  # sealed, below 40 °C and 90 % RH
USE, BAKE, DISCARD = "use now", "bake first", "discard"
FRESH, HALF, PINK = "dry", "between", "wet"
SPOTS = (FRESH, HALF, PINK)

# Levels: longest time out in hours, highest humidity of the dry keep in % RH, times the exposure.
_RESETS = {
    **dict.fromkeys(("2", "2a", "3"), (12.0, 10.0, 5.0)),
    **dict.fromkeys(("4", "5", "5a"), (8.0, 5.0, 10.0)),
}
_HOUR = 3600.0
_LEVEL = Annotated[str, Choice(LEVELS, "Moisture sensitivity level, as on the bag.")]


def floor_life(level: str) -> float:
    """Hours on the floor at up to 30 °C / 60 % RH; infinite for level 1.

    Source: a table of levels as published. Raises RepairlibError for level 6, whose time stands
    on its label, and for unknown levels.

    >>> floor_life("3"), floor_life("2a")
    (168.0, 672.0)
    """
    check_level(level)
    if level == "6":
        wrong = "bake it before use; how long it may then lie open stands on its own label"
        raise RepairlibError("level 6", wrong, ", ".join(FLOOR_LIFE))
    return FLOOR_LIFE[level]


def check_level(level: str) -> None:
    """Raise RepairlibError for what is no moisture sensitivity level."""
    if level not in LEVELS:
        raise RepairlibError(level, "not a moisture sensitivity level", ", ".join(LEVELS))


def counts_on_the_floor(level: str, celsius: float, humidity: float) -> bool:
    """Whether the floor life of that level holds in this air. Raises as `check_air` does."""
    check_level(level)
    check_air(celsius, humidity)
    wettest = FLOOR_RH_LEVEL_1 if level == "1" else FLOOR_RH
    return celsius <= FLOOR_C and humidity <= wettest


def check_air(celsius: float, humidity: float) -> None:
    """Raise RepairlibError for air that cannot be."""
    if not 0 <= humidity <= 100:
        raise RepairlibError(f"{humidity:g} %", "not a humidity of air", "0 to 100 % RH")
    if not -273.15 <= celsius <= 200:
        raise RepairlibError(f"{celsius:g} °C", "not a temperature of air", "-273.15 to 200 °C")


def reset_rule(level: str, hours_out: float) -> tuple[float, float] | None:
    """The dry keep that sets the clock back: (hours, highest % RH), or None when only baking does.

    From memory of J-STD-033: levels 2 to 3 out for 12 h at most, then 5 times as long at 10 % RH
    or less; levels 4 to 5a out for 8 h at most, then 10 times as long at 5 % RH or less.

    >>> reset_rule("4", 3), reset_rule("3", 13)
    ((30.0, 5.0), None)
    """
    check_level(level)
    if hours_out < 0:
        raise RepairlibError(f"{hours_out:g} h", "not a time out of the bag", "0 h or more")
    if level not in _RESETS:
        return None
    longest, humidity, times = _RESETS[level]
    return (times * hours_out, humidity) if hours_out <= longest else None


def days_and_hours(hours: float) -> str:
    """A time as one says it.

    >>> days_and_hours(168), days_and_hours(10 * 24), days_and_hours(1.5)
    ('168 h', '10 days', '1.5 h')
    """
    if hours == float("inf"):
        return "unlimited"
    if hours >= 192 and hours % 24 == 0:
        return f"{hours / 24:g} days"
    return f"{hours:.4g} h"


@calculator(
    topic="heat",
    title="Floor life left",
    sources=("moisture level table", "J-STD-033, not looked up"),
)
def floor_life_left(
    level: _LEVEL,
    out: Annotated[float, Given("s", "All the time it lay open so far.", at_least=0, at_most=1e9)],
    temperature: Annotated[
        float, Given("°C", "The warmest air it lay in.", at_least=-40, at_most=100)
    ] = 23.0,
    humidity: Annotated[
        float, Given("%", "The wettest air it lay in.", at_least=0, at_most=100)
    ] = 50.0,
) -> Found:
    """How long a part of that level may still lie open: use now, or bake first.

    `out` in seconds (or text such as "80 h"), `temperature` in °C, `humidity` in % RH. The
    published floor life holds up to 30 °C and 60 % RH (level 1: 85 %). Level 6 is always baked.

    >>> print(floor_life_left("3", "80 h").reason)
    80 h of 168 h are used, in air of at most 23 °C and 50 % RH
    """
    hours = out / _HOUR
    if level == "6":
        reason = "level 6 is baked before each use; its label says how long it may then lie open"
        return found({"floor_life": "see its label"}, verdict=BAKE, reason=reason)
    whole = floor_life(level)
    left = whole - hours
    values = {
        "floor_life": days_and_hours(whole),
        "left": days_and_hours(left) if left >= 0 else f"none, {days_and_hours(-left)} too late",
    }
    working = [f"{days_and_hours(whole)} − {hours:g} h = {days_and_hours(left)}"]
    if not counts_on_the_floor(level, temperature, humidity):
        wettest = FLOOR_RH_LEVEL_1 if level == "1" else FLOOR_RH
        reason = (
            f"the floor life holds up to {FLOOR_C:g} °C and {wettest:g} % RH only; "
            f"it lay in {temperature:g} °C and {humidity:g} % RH"
        )
        values["left"] = "not known in such air"
        return found(values, working=working, verdict=BAKE, reason=reason, notes=_notes())
    if left < 0:
        reason = f"{days_and_hours(-left)} past its floor life"
        return found(values, working=working, verdict=BAKE, reason=reason, notes=_notes())
    air = f"in air of at most {temperature:g} °C and {humidity:g} % RH"
    reason = f"{hours:g} h of {days_and_hours(whole)} are used, {air}"
    return found(values, working=working, verdict=USE, reason=reason, notes=_notes())


@calculator(
    topic="heat",
    title="Resetting the floor clock in dry air",
    sources=("J-STD-033, not looked up",),
)
def reset_in_dry_air(
    level: _LEVEL,
    out: Annotated[float, Given("s", "How long it lay open.", at_least=0, at_most=1e9)],
) -> Found:
    """How long a dry cabinet takes to set the clock back to zero, where it can.

    `out` in seconds, or text such as "3 h". Source: J-STD-033 from memory.

    >>> print(reset_in_dry_air("4", "3 h"))
    Resetting the floor clock in dry air: keep dry (3 h out); for 30 h; humidity 5 % RH at most
    """
    hours = out / _HOUR
    rule = reset_rule(level, hours)
    if rule is None:
        if level == "1":
            return found({}, verdict="not needed", reason="level 1 has no floor life to reset")
        reason = "dry air does not reset this clock" if level == "6" else "it lay open too long"
        return found({}, verdict=BAKE, reason=reason)
    dry, humidity = rule
    times = _RESETS[level][2]
    values = {"for": days_and_hours(dry), "humidity": f"{humidity:g} % RH at most"}
    return found(
        values, working=[f"{times:g} × {hours:g} h"], verdict="keep dry", reason=f"{hours:g} h out"
    )


@calculator(
    topic="heat",
    title="Humidity card read",
    sources=("humidity indicator card", "J-STD-033, not looked up", "dry-pack FAQ"),
)
def humidity_card(
    level: _LEVEL,
    spot_5: Annotated[str, Choice(SPOTS, "The 5 % spot: dry is blue, wet is pink.")],
    spot_10: Annotated[str, Choice(SPOTS, "The 10 % spot.")],
    spot_60: Annotated[str, Choice(SPOTS, "The 60 % spot.")],
) -> Found:
    """What the spots of a humidity card in a bag just opened ask for.

    From memory of J-STD-033: level 2 is baked when the 60 % spot is not dry; levels 2a to 5a when
    the 5 % spot is wet and the 10 % spot is not dry. A 10 % spot that turns while the 5 % spot is
    still between is a bake too: a choice made here. Level 6 is always baked.

    >>> humidity_card("3", "wet", "between", "dry").verdict
    'bake first'
    """
    notes = (
        "Spots stand for 5, 10 and 60 % RH here; some makers of LEDs print 5, 10 and 15 %.",
        "An older single rule: bake when the card shows more than 10 %.",
    )
    order = [SPOTS.index(spot) for spot in (spot_5, spot_10, spot_60)]
    if order != sorted(order, reverse=True):
        wrong = "a drier spot turns later: this card is damaged, or was read upside down"
        read = f"5 % {spot_5}, 10 % {spot_10}, 60 % {spot_60}"
        raise RepairlibError(read, wrong, "spots that turn from 5 % up")
    if level == "6":
        return found({}, verdict=BAKE, reason="level 6 is always baked", notes=notes)
    if level == "1":
        return found({}, verdict=USE, reason="level 1 needs no dry pack", notes=notes)
    if level == "2":
        bake, told = spot_60 != FRESH, f"the 60 % spot is {spot_60}"
    else:
        bake = spot_10 != FRESH  # the 5 % spot has turned at least as far, see above
        told = f"the 5 % spot is {spot_5}, the 10 % spot is {spot_10}"
    return found({}, verdict=BAKE if bake else USE, reason=told, notes=notes)


def _notes() -> tuple[str, ...]:
    return (
        f"A sealed dry bag keeps for {BAG_MONTHS} months below 40 °C and 90 % RH; "
        "read its humidity card when you open it.",
    )
