"""What a working set keeps from the waste: its mass, and the energy of making another one.

The energy is a rough span from one study of one product, and stays beside the sum, not in it.
"""

from __future__ import annotations

from repairlib.core.quantity import Quantity, brief, engineering

# Williams 2004: 6400 MJ and 260 kg of fuel made one computer with its screen; fuel per kg of
# product was 11, and 1 to 2 for many other goods. So 25 to 270 MJ for a kg, to two figures.
MJ_OF_FUEL = 6400 / 260
LEAST, MOST = 1 * MJ_OF_FUEL * 1e6, 11 * MJ_OF_FUEL * 1e6  # J/kg
WASTE_A_HEAD = 7.8  # kg in 2022, Global E-waste Monitor 2024
RECYCLED = 22.3  # per cent of it, on record
SOURCES = ("computer manufacturing energy", "Global E-waste Monitor 2024")


def energy_of_making(mass: float) -> tuple[float, float]:
    """Joule that went into making `mass` kg of electronics, at least and at most; doubtful.

    >>> [float(f"{joule:.2g}") for joule in energy_of_making(1)]
    [25000000.0, 270000000.0]
    """
    return mass * LEAST, mass * MOST


def kept_from_waste(mass: float) -> tuple[dict[str, object], list[str]]:
    """The values and notes on a set of `mass` kg that works again; none for no mass."""
    if not mass:
        return {}, []
    least, most = (engineering(joule, "J", 2) for joule in energy_of_making(mass))
    values = {"mass_kept": Quantity(mass, "kg"), "energy_kept": f"{least} to {most}, doubtful"}
    share = brief(float(f"{100 * mass / WASTE_A_HEAD:.2g}"), "%")
    notes = [
        "Energy: what went into making such a set, worked out from one study of 2004 on a computer "
        "and its screen. An old set may draw more power than a new one: that is left out.",
        f"Mass: {share} of the {WASTE_A_HEAD} kg of electrical waste for each person in 2022, of "
        f"which {RECYCLED} % was recycled on record.",
    ]
    return values, notes
