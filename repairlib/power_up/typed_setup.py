"""A set and its readings as people type them: a table of rails, a reading with its unit."""

from __future__ import annotations

from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import read_quantity
from repairlib.core.typed.headed import read_headed
from repairlib.health import interval
from repairlib.power_up.checks import Check, RailToCheck, Setup, rail_to_check
from repairlib.power_up.rails import window_around
from repairlib.power_up.supply import LIMITED, short_below
from repairlib.power_up.walk import Reading

RAIL_COLUMNS = ("rail", "tolerance", "ripple")
TOLERANCE = 5.0  # %, where none is typed
_SHOWS_OVER = ("ol", "o.l", "o.l.", "overload")


def read_setup(voltage: str, current: str, rails: str, supply: str = LIMITED) -> Setup:
    """The set from what is typed: volts and ampere of its supply, a table of its rails.

    `rails` has the columns rail, tolerance [%] and ripple [V peak to peak]; where the last two are
    empty, 5 % is taken and ripple is not judged. A rail is called by its volts. It counts as
    shorted below its volts by the current limit. Raises RepairlibError naming the row.

    >>> setup = read_setup("11 V", "150 mA", "rail | tolerance | ripple\\n+5 V | | 50 mV")
    >>> rail = setup.rails[0]
    >>> rail.name, rail.low, rail.high, round(rail.short_below, 1), rail.ripple
    ('+5 V', 4.75, 5.25, 27.8, 0.05)
    """
    volts, amps = read_quantity(voltage, "V").value, read_quantity(current, "A").value
    table = read_headed(rails, "the table of rails", RAIL_COLUMNS, ("rail",))
    read = [
        _rail(table.by_heading(row, RAIL_COLUMNS), number, amps)
        for number, row in enumerate(table.rows_below(), 1)
    ]
    return Setup(volts, amps, tuple(read), supply)


def read_reading(check: Check, typed: str, percent: str = "0") -> Reading:
    """The reading of a measurement as typed, ± `percent` of it by the meter's data sheet.

    Raises RepairlibError for what is no number in the unit of the check, and for OL, which has no
    number: the top of the meter's range is typed in its place.

    >>> from repairlib.power_up.walk import begin
    >>> setup = read_setup("11 V", "150 mA", "rail\\n+5 V")
    >>> read_reading(begin(setup).checks[3], "320 Ω", "1").error
    3.2
    """
    if typed.strip().casefold() in _SHOWS_OVER:
        wrong = "the meter shows that it is above its range"
        raise RepairlibError(typed, wrong, f"the top of that range, such as 20 M{check.unit}")
    if not typed.strip():
        raise RepairlibError(check.key, "no reading is typed", f"a number in {check.unit}")
    share = read_quantity(percent.strip().removesuffix("%") or "0").value
    read = interval(typed, share, 0, check.unit)
    return Reading(check.key, value=read.reading, error=float(f"{read.high - read.reading:.6g}"))


def _rail(cells: dict[str, str], number: int, amps: float) -> RailToCheck:
    try:
        nominal = read_quantity(cells["rail"], "V").value
        share = cells["tolerance"].strip().removesuffix("%")
        tolerance = read_quantity(share).value if share.strip() else TOLERANCE
        ripple = read_quantity(cells["ripple"], "V").value if cells["ripple"].strip() else None
        return rail_to_check(window_around(nominal, tolerance, ripple), short_below(nominal, amps))
    except RepairlibError as problem:
        wrong = f"{problem.wrong} (row {number} of the rails)"
        raise RepairlibError(problem.read, wrong, problem.accepted) from None
