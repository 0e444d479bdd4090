"""Quick estimates of heat at the bench: touching bodies, melting, resistance, depth, warming up.

The formulas are in analytic.py, the numbers of materials in materials.py.
"""

from __future__ import annotations

from typing import Annotated

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.quantity import Quantity
from repairlib.heat.analytic import (
    barrel_area,
    deep_celsius,
    deep_seconds,
    lumped_until,
    resistance,
    touch_celsius,
)
from repairlib.heat.materials import bodies, melting_heat_of, stuff
from repairlib.heat.solder_alloys import alloy, alloy_name, alloy_names

COLDEST = -273.15
_CELSIUS = {"at_least": COLDEST, "at_most": 2000}
ESTIMATE = "An estimate with typical figures of materials, not a measurement."


@calculator(
    topic="heat",
    title="Two bodies touch",
    sources=("Heat and Mass Transfer, ch. 4", "from memory"),
    cautions=("hot tools",),
)
def contact_temperature(
    hot: Annotated[str, Choice(bodies, "The hotter body.")],
    hot_temperature: Annotated[float, Given("°C", "Of the hotter body.", **_CELSIUS)],
    cold: Annotated[str, Choice(bodies, "The other body.")],
    cold_temperature: Annotated[float, Given("°C", "Of the other body.", **_CELSIUS)],
) -> Found:
    """Temperature in °C of the faces of two thick bodies in the first moments after they touch.

    Materials by name. Source: (e1 T1 + e2 T2) / (e1 + e2) with e = √(k ρ c).

    >>> contact_temperature("copper", 350, "FR-4", 25).face
    343.4 °C
    """
    one, other = stuff(hot), stuff(cold)
    face = touch_celsius(one, hot_temperature, other, cold_temperature)
    working = [
        f"{name}: e = √(k ρ c) = {body.effusivity:.4g} W s^½/(m² K)"
        for name, body in ((hot, one), (cold, other))
    ]
    working.append(f"(e1 T1 + e2 T2) / (e1 + e2) = {face:.1f} °C")
    return found({"face": Quantity(round(face, 1), "°C")}, working=working, notes=[ESTIMATE])


@calculator(
    topic="heat",
    title="Heat to melt a joint",
    sources=("from memory",),
    cautions=("hot tools", "fumes and flux"),
)
def melting_heat(
    solder: Annotated[str, Choice(alloy_names, "Which solder.", alloy_name)],
    mass: Annotated[float, Given("kg", "Of the solder, such as 20 mg.", above=0, at_most=1)],
    start: Annotated[float, Given("°C", "Before heating.", at_least=-50, at_most=1000)] = 25.0,
    copper: Annotated[
        float, Given("kg", "Of copper warmed with it.", at_least=0, at_most=10)
    ] = 0.0,
    seconds: Annotated[float, Given("s", "In which it is to melt.", above=0, at_most=3600)] = 2.0,
) -> Found:
    """Heat in J to bring solder, and copper with it, to the liquidus and melt it; mean power in W.

    Masses with units (a number alone is kg). Source: m (c ΔT + L), figures from memory.

    >>> melting_heat("Sn63Pb37", "20 mg").heat
    1.296 J
    """
    made = alloy(solder)
    rise = max(0.0, made.liquidus - start)
    solid, latent = melting_heat_of(solder)
    warm, melt = mass * solid * rise, mass * latent if rise else 0.0
    with_it = copper * stuff("copper").heat_capacity * rise
    heat = warm + melt + with_it
    working = [
        f"solder: {mass * 1e6:g} mg × ({solid:g} J/(kg K) × {rise:g} K + {latent:.0f} J/kg) = "
        f"{warm + melt:.4g} J",
        f"copper: {copper * 1e3:g} g × 385 J/(kg K) × {rise:g} K = {with_it:.4g} J",
        f"mean power: {heat:.4g} J / {seconds:g} s = {heat / seconds:.4g} W",
    ]
    notes = [ESTIMATE, "What the board carries away comes on top, and is often more."]
    values = {"heat": Quantity(heat, "J", 4), "power": Quantity(heat / seconds, "W", 3)}
    return found(values, working=working, notes=notes)


@calculator(
    topic="heat",
    title="Resistance to heat",
    sources=("encyclopaedia, FR-4", "encyclopaedia, Solder alloys", "from memory"),
)
def heat_resistance(
    material: Annotated[str, Choice(bodies, "What the heat goes through.")],
    length: Annotated[float, Given("m", "The way of the heat.", above=0, at_most=10)],
    area: Annotated[float, Given("", "mm² across the way of the heat.", above=0, at_most=1e7)],
) -> Found:
    """How many K drive one W through a piece of material: L / (k A).

    `length` in m or with its unit, `area` in mm². Source: k of the table of materials.

    >>> heat_resistance("FR-4", "1.6 mm", 100).kelvin_per_watt
    55.2
    """
    k = stuff(material).conductivity
    value = resistance(length, k, area * 1e-6)
    working = [f"{length * 1e3:g} mm / ({k:g} W/(m K) × {area:g} mm²) = {value:.4g} K/W"]
    return found({"kelvin_per_watt": Quantity(value, "", 4)}, working=working, notes=[ESTIMATE])


@calculator(
    topic="heat",
    title="Plated holes that carry heat",
    sources=("encyclopaedia, Solder alloys",),
)
def hole_resistance(
    drill: Annotated[float, Given("m", "Diameter of the drill.", above=0, at_most=0.01)],
    plating: Annotated[
        float, Given("m", "Thickness of the copper.", above=0, at_most=1e-3)
    ] = 25e-6,
    length: Annotated[float, Given("m", "Thickness of the board.", above=0, at_most=0.05)] = 1.6e-3,
    number: Annotated[float, Given("", "How many side by side.", at_least=1, at_most=10000)] = 1.0,
) -> Found:
    """K per W through the copper of plated holes side by side, empty ones: L / (k A n).

    Lengths in m or with units. Raises RepairlibError when the plating fills the hole. Source: k of
    copper 400 W/(m K).

    >>> hole_resistance("0.3 mm", number=9).kelvin_per_watt
    20.6
    """
    area = barrel_area(drill, plating)
    one = resistance(length, stuff("copper").conductivity, area)
    working = [
        f"copper of one hole: π/4 × (D² - (D - 2t)²) = {area * 1e6:.4g} mm²",
        f"one hole: {one:.4g} K/W; {number:g} side by side: {one / number:.4g} K/W",
    ]
    return found(
        {"kelvin_per_watt": Quantity(one / number, "", 4)}, working=working, notes=[ESTIMATE]
    )


@calculator(
    topic="heat",
    title="How deep heat has gone",
    sources=("Heat and Mass Transfer, ch. 4", "encyclopaedia, FR-4", "from memory"),
    cautions=("hot tools",),
)
def heat_at_depth(
    face: Annotated[
        float, Given("°C", "At which its face is held.", at_least=COLDEST, at_most=2000)
    ],
    depth: Annotated[float, Given("m", "How deep.", above=0, at_most=1)],
    target: Annotated[float, Given("°C", "That matters there.", at_least=COLDEST, at_most=2000)],
    material: Annotated[str, Choice(bodies, "The thick body.")] = "FR-4",
    start: Annotated[
        float, Given("°C", "Of the body before.", at_least=COLDEST, at_most=2000)
    ] = 25.0,
    seconds: Annotated[float, Given("s", "After which time.", above=0, at_most=1e6)] = 3.0,
) -> Found:
    """Temperature at a depth of a thick body whose face is held hot, and when the target is there.

    Lengths in m or with units. Raises RepairlibError when the target does not lie between start and
    face. Source: Ti + (Ts - Ti) erfc(x / (2 √(α t))).

    >>> print(heat_at_depth(350, "1 mm", 130))
    How deep heat has gone: there 115.7 °C; target after 3.59 s
    """
    body = stuff(material)
    there = deep_celsius(body, start, face, depth, seconds)
    when = deep_seconds(body, start, face, depth, target)
    working = [
        f"α = k / (ρ c) = {body.diffusivity:.4g} m²/s",
        f"after {seconds:g} s: {there:.1f} °C",
        f"{target:g} °C after {when:.3g} s",
    ]
    notes = [ESTIMATE, "A thick body: a thin board gets hotter than this at its far face."]
    values = {
        "there": Quantity(round(there, 1), "°C"),
        "target_after": Quantity(float(f"{when:.3g}"), "s"),
    }
    return found(values, working=working, notes=notes)


@calculator(
    topic="heat",
    title="A part warms up or cools down",
    sources=("Heat and Mass Transfer, ch. 4",),
    cautions=("hot tools",),
)
def warming_time(
    mass: Annotated[float, Given("kg", "Of the part, such as 0.5 g.", above=0, at_most=10)],
    area: Annotated[float, Given("", "mm² that the air touches.", above=0, at_most=1e6)],
    film: Annotated[
        float, Given("", "W/(m² K): still air 5 to 25, small hot-air nozzle 50 to 200.", above=0)
    ],
    air: Annotated[float, Given("°C", "Of the air.", at_least=-100, at_most=1000)],
    start: Annotated[float, Given("°C", "Of the part before.", at_least=-100, at_most=1000)],
    target: Annotated[float, Given("°C", "To be reached.", at_least=-100, at_most=1000)],
    heat_capacity: Annotated[float, Given("", "J/(kg K).", above=0, at_most=10000)] = 900.0,
) -> Found:
    """Seconds until a small part in moving or still air has the target temperature.

    Raises RepairlibError when the target does not lie between start and air. It holds for a part
    equally warm all through. Source: T = Ta + (T0 - Ta) exp(-t / τ), τ = m c / (h A).

    >>> warming_time("0.5 g", 450, 80, 300, 25, 217).seconds
    14.97 s
    """
    constant = mass * heat_capacity / (film * area * 1e-6)
    seconds = lumped_until(start, air, constant, target)
    first = film * area * 1e-6 * (air - start)
    working = [
        f"τ = m c / (h A) = {constant:.4g} s",
        f"heat at first: h A ΔT = {first:.3g} W",
        f"t = τ ln((Ta - T0) / (Ta - T)) = {seconds:.4g} s",
    ]
    values = {
        "seconds": Quantity(seconds, "s", 4),
        "time_constant": Quantity(constant, "s", 4),
        "heat_at_first": Quantity(first, "W", 3),
    }
    return found(values, working=working, notes=[ESTIMATE])
