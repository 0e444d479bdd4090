"""A hot-air recipe played through: what the joint's thermocouple would show.

The board around the part is one lump of heat: hot air from above, a preheater below and the cool
room pull at it, each through its own conductance. Within a stage its temperature runs towards a
balance as an exponential, which is worked out exactly. The figures are those of a teaching model,
not of your tool: tune a recipe here to learn what each knob does, and at the bench with a
thermocouple on a scrap board.
"""

from __future__ import annotations

from math import exp
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.heat.analytic import lumped
from repairlib.heat.profile import Profile, make_profile

ROOM = 25.0  # °C
HEAT = {
    "small part": 8.0,
    "large part": 14.0,
    "on a ground plane": 22.0,
}  # J/K of its neighbourhood
AIR_FULL = 0.36  # W/K, from the nozzle at full flow, close by
AIR_POWER = 0.6  # of the flow: how fast moving air takes and gives heat
PREHEATER = 0.16  # W/K
LOSS = 0.06  # W/K, to the room
NEAR_NOZZLE, NOZZLE_FADE = 5.0, 60.0  # mm: no loss up to here; then the air mixes with the room's
COOL_FLOW = 0.05  # W/K, more loss once the preheater is off and the board lies free
STEP = 1.0  # s between readings
END = 60.0  # °C: the log ends when it is as cool
LONGEST = 1800.0  # s for one stage

MOST_STAGES = 12


class Stage(NamedTuple):
    """Hot air for `seconds`: the tool's setting in °C and its flow, 0 to 100 %."""

    seconds: float
    air: float
    flow: float


class Recipe(NamedTuple):
    """Stages one after the other over a preheater at `preheater` °C, 0 for none.

    `distance` from nozzle to part in mm; `part` is one of HEAT.
    """

    stages: tuple[Stage, ...]
    preheater: float = 150.0
    distance: float = 10.0
    part: str = "small part"


def play(recipe: Recipe, name: str = "recipe") -> Profile:
    """The temperature at the joint, second by second, until it has cooled to 60 °C.

    Raises RepairlibError for stages without time, air beyond 100 to 550 °C, a flow beyond 0 to
    100 %, a preheater above 250 °C, a distance beyond 1 to 100 mm, and an unknown part.

    >>> profile = play(Recipe((Stage(120, 250, 30), Stage(60, 380, 60))))
    >>> round(float(profile.celsius.max()))
    243
    """
    _check(recipe)
    times, temperatures = [0.0], [ROOM]
    for stage in recipe.stages:
        balance, rate = _pull(recipe, stage)
        _run(times, temperatures, balance, rate, stage.seconds)
    rate = (LOSS + COOL_FLOW) / HEAT[recipe.part]
    while temperatures[-1] > END:
        _run(times, temperatures, ROOM, rate, STEP)
    _run(times, temperatures, ROOM, rate, 3 * STEP)
    return make_profile(name, times, temperatures)


def air_at_part(air: float, distance: float) -> float:
    """The temperature of the air that reaches the part: it mixes with the room's on its way.

    >>> air_at_part(380, 5), round(air_at_part(380, 20))
    (380.0, 301)
    """
    way = max(distance - NEAR_NOZZLE, 0.0)
    return ROOM + (air - ROOM) * exp(-way / NOZZLE_FADE)


def _pull(recipe: Recipe, stage: Stage) -> tuple[float, float]:
    """Where the temperature runs to in that stage, and how fast, in 1/s."""
    by_air = AIR_FULL * (stage.flow / 100) ** AIR_POWER
    below = PREHEATER if recipe.preheater else 0.0
    whole = by_air + below + LOSS
    balance = (
        by_air * air_at_part(stage.air, recipe.distance) + below * recipe.preheater + LOSS * ROOM
    ) / whole
    return balance, whole / HEAT[recipe.part]


def _run(times, temperatures, balance: float, rate: float, seconds: float) -> None:
    """Readings at every second up to the end of a stretch, and one at its end."""
    began, start = times[-1], temperatures[-1]
    steps = [STEP * count for count in range(1, int(seconds / STEP) + 1)]
    if not steps or steps[-1] < seconds - 1e-9:
        steps.append(seconds)
    times += [began + step for step in steps]
    temperatures += [lumped(start, balance, 1 / rate, step) for step in steps]


def _check(recipe: Recipe) -> None:
    if not 1 <= len(recipe.stages) <= MOST_STAGES:
        accepted = f"1 to {MOST_STAGES} stages"
        raise RepairlibError(f"{len(recipe.stages)} stages", "not a recipe", accepted)
    for stage in recipe.stages:
        _within("seconds of a stage", stage.seconds, 1, LONGEST, "s")
        _within("air", stage.air, 100, 550, "°C")
        _within("flow", stage.flow, 0, 100, "%")
    if recipe.preheater:
        _within("preheater", recipe.preheater, 40, 250, "°C")
    _within("distance", recipe.distance, 1, 100, "mm")
    if recipe.part not in HEAT:
        raise RepairlibError(recipe.part, "not a part of this model", ", ".join(HEAT))


def _within(what: str, value, low: float, high: float, unit: str) -> None:
    if not (isinstance(value, (int, float)) and low <= value <= high):
        raise RepairlibError(value, f"{what} is out of range", f"{low:g} to {high:g} {unit}")
