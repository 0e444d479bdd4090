"""Exact solutions of heat conduction as series, for the solver to be held against.

Formulas as in textbooks of heat transfer; tests/heat/test_analytic.py holds them against worked
examples.
"""

from __future__ import annotations

from math import cos, erfc, exp, pi, sin, sqrt

from scipy.optimize import brentq

from repairlib.heat.conduction import Stuff

TERMS = 60
_STEPS = 200


def lumped_seconds(stuff: Stuff, volume: float, area: float, film: float) -> float:
    """Time constant ρ c V / (h A) in s of a body that is equally warm all through.

    volume in m³, area in m², film in W/(m² K). It holds for h (V/A) / k below 0.1.
    """
    return stuff.density * stuff.heat_capacity * volume / (film * area)


def fed_celsius(stuff: Stuff, start: float, flux: float, depth: float, seconds: float) -> float:
    """Temperature at a depth [m] of a thick body that takes a constant flux [W/m²] at its face."""
    spread = sqrt(stuff.diffusivity * seconds)
    eta = depth / (2 * spread)
    rise = 2 * spread / sqrt(pi) * exp(-(eta**2)) - depth * erfc(eta)
    return start + flux / stuff.conductivity * rise


def slab_roots(biot: float, number: int = TERMS) -> list[float]:
    """The first roots z of z tan z = Bi."""

    def miss(z):
        return z * sin(z) - biot * cos(z)

    return [brentq(miss, n * pi, n * pi + pi / 2, xtol=1e-13) for n in range(number)]


def slab_share(biot: float, fourier: float, place: float) -> float:
    """How much of (Ti - Ta) is left in a slab with convecting faces, by its series.

    biot = h L / k and fourier = α t / L² with L half the thickness; place = x / L, 0 at the
    middle (or the insulated face) and 1 at the face.
    """
    return sum(
        4 * sin(z) / (2 * z + sin(2 * z)) * exp(-(z**2) * fourier) * cos(z * place)
        for z in slab_roots(biot)
    )


def held_share(fourier: float, place: float = 0.0) -> float:
    """How much of (Ti - Ts) is left in a slab with both faces held, by its series."""
    total = 0.0
    for n in range(_STEPS):
        half = (2 * n + 1) * pi / 2
        total += (-1) ** n / (2 * n + 1) * exp(-(half**2) * fourier) * cos(half * place)
    return 4 / pi * total
