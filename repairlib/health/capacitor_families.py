"""The families of capacitors whose limits are known here, and what is inside them."""

from __future__ import annotations

from functools import cache
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import engineering
from repairlib.core.tables import read_table

TEN_DEGREE_RULE, TWENTY_DEGREE_RULE = "10-degree rule", "20-degree rule"
STAYS = "does not dry out"
WET, FILM = "wet aluminium", "film"
LOW_IMPEDANCE = "aluminium low impedance"


class Family(NamedTuple):
    """A family of capacitors: `name`, what it is in `words`, what is `inside`.

    `hottest` is its rated temperature [°C]; `ages` the rule of its life, or STAYS, or none known;
    `added` what each further 1000 µF adds to its tan δ limit, None where no data sheet says.
    """

    name: str
    words: str
    inside: str
    hottest: float
    ages: str
    added: float | None
    source: str

    @property
    def dries_out(self) -> bool:
        return self.ages in (TEN_DEGREE_RULE, TWENTY_DEGREE_RULE)


@cache
def families() -> dict[str, Family]:
    """Every family by its name, in the order of the table capacitor-families.

    >>> families()["aluminium low impedance"].words
    'radial aluminium, low impedance, 105 °C'
    """
    return {
        row["family"]: Family(
            row["family"],
            row["words"],
            row["inside"],
            float(row["hottest_c"]),
            row["ages"],
            float(row["added_per_1000_uf"]) if row["added_per_1000_uf"] else None,
            row["source"],
        )
        for row in read_table("capacitor-families")
    }


def family(name: str) -> Family:
    """The family of that name. Raises RepairlibError for any other name."""
    if name not in families():
        raise RepairlibError(name, "not a capacitor family known here", ", ".join(families()))
    return families()[name]


def ageing_families() -> tuple[str, ...]:
    """Names of the families that wear out by drying or by their polymer."""
    return tuple(name for name, one in families().items() if one.dries_out)


def check_part(farad: float, volts: float) -> None:
    """Raise RepairlibError when a capacitance [F] or a rated voltage [V] cannot be one."""
    for value, unit, most in ((farad, "F", 10), (volts, "V", 1e5)):
        if not 0 < value <= most:
            name = "capacitance" if unit == "F" else "rated voltage"
            accepted = f"above 0 {unit}, at most {engineering(most, unit)}"
            raise RepairlibError(f"{value:g} {unit}", f"not a {name}", accepted)
