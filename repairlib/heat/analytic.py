"""Heat conduction by formula: bodies simple enough for an exact answer.

For quick estimates. SI units; temperatures in °C.
Convection films and materials are constant. Formulas as in textbooks of heat transfer.
"""

from __future__ import annotations

from math import erfc, exp, log, pi, sqrt

from repairlib.core.errors import RepairlibError
from repairlib.heat.conduction import Stuff, above_zero, temperature


def lumped(start: float, around: float, constant: float, seconds: float) -> float:
    """Temperature of a lumped body after some time: Ta + (T0 - Ta) exp(-t / τ).

    >>> lumped(20, 500, 1 / 0.001851, 420)
    279.4
    """
    above_zero(constant, "time constant", "s")
    return around + (start - around) * exp(-seconds / constant)


def lumped_until(start: float, around: float, constant: float, target: float) -> float:
    """Seconds until a lumped body has the target temperature.

    Raises RepairlibError when the target does not lie between start and surroundings.

    >>> lumped_until(25, 300, 12.5, 217)
    14.97
    """
    above_zero(constant, "time constant", "s")
    low, high = sorted((start, around))
    if not low <= target <= high or target == around:
        accepted = f"between {start:g} °C and {around:g} °C"
        raise RepairlibError(f"{target:g} °C", "it never gets there", accepted)
    return constant * log((start - around) / (target - around))


def deep_celsius(stuff: Stuff, start: float, face: float, depth: float, seconds: float) -> float:
    """Temperature at a depth [m] of a thick body whose face is held: Ti + (Ts - Ti) erfc(...).

    >>> deep_celsius(Stuff(0.29, 1850, 1100), 25, 350, 0.8e-3, 3)
    150.8
    """
    above_zero(seconds, "time", "s")
    return start + (face - start) * erfc(depth / (2 * sqrt(stuff.diffusivity * seconds)))


def deep_seconds(stuff: Stuff, start: float, face: float, depth: float, target: float) -> float:
    """Seconds until a depth [m] of a thick body with a held face has the target temperature.

    Raises RepairlibError when the target does not lie between start and face.

    >>> deep_seconds(Stuff(0.29, 1850, 1100), 25, 350, 1e-3, 130)
    3.59
    """
    above_zero(depth, "depth", "m")
    share = (target - start) / (face - start) if face != start else 2.0
    if not 0 < share < 1:
        accepted = f"between {start:g} °C and {face:g} °C"
        raise RepairlibError(f"{target:g} °C", "it never gets there", accepted)
    eta = _root(lambda x: share - erfc(x), 0.0, 6.0)
    return (depth / (2 * eta)) ** 2 / stuff.diffusivity


def deep_flux(stuff: Stuff, start: float, face: float, seconds: float) -> float:
    """Heat flux in W/m² into a thick body whose face is held, k ΔT / √(π α t).

    >>> deep_flux(Stuff(0.29, 1850, 1100), 25, 350, 2) / 1e4
    9.96
    """
    above_zero(seconds, "time", "s")
    return stuff.conductivity * (face - start) / sqrt(pi * stuff.diffusivity * seconds)


def touch_celsius(one: Stuff, hot: float, other: Stuff, cold: float) -> float:
    """Temperature where two thick bodies touch: (e1 T1 + e2 T2) / (e1 + e2).

    >>> touch_celsius(Stuff(400, 8933, 385), 350, Stuff(0.29, 1850, 1100), 25)
    343.4
    """
    first, second = one.effusivity, other.effusivity
    return (first * temperature(hot) + second * temperature(cold)) / (first + second)


def resistance(thickness: float, conductivity: float, area: float) -> float:
    """Resistance to heat L / (k A) in K/W, lengths in m.

    >>> resistance(0.5e-3, 1.5, 100e-6)
    3.33
    """
    above_zero(thickness, "thickness", "m")
    above_zero(conductivity, "conductivity", "W/(m K)")
    return thickness / (conductivity * above_zero(area, "area", "m²"))


def barrel_area(drill: float, plating: float) -> float:
    """Cross-section in m² of the plating of a hole: (π/4)(D² - (D - 2t)²).

    >>> resistance(1.6e-3, 400, barrel_area(0.3e-3, 25e-6))
    185.2
    """
    above_zero(plating, "plating", "m")
    if not 2 * plating < drill:
        read = f"drill {drill * 1e3:g} mm, plating {plating * 1e6:g} µm"
        raise RepairlibError(read, "the plating is thicker than the hole", "thinner plating")
    return pi / 4 * (drill**2 - (drill - 2 * plating) ** 2)


def _root(miss, low: float, high: float) -> float:
    """Where a function that rises through 0 between low and high is 0, by halving."""
    for _ in range(80):
        middle = (low + high) / 2
        low, high = (low, middle) if miss(middle) > 0 else (middle, high)
    return (low + high) / 2
