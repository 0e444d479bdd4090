"""The checks before a first power-up as a table, as the walk asks for them."""

from __future__ import annotations

from repairlib.power_up import Setup, checks_of
from repairlib.show.sourced_table import SourcedTable


def checks_before_power(setup: Setup) -> SourcedTable:
    """The checks of this set that come before power, in their order: what is done, and why.

    >>> from repairlib.power_up import read_setup
    >>> table = checks_before_power(read_setup("11 V", "150 mA", "rail\\n+5 V"))
    >>> print(table.rows[3][0], "-", table.rows[3][2])
    4. ohms +5 V - Below 27.8 Ω it counts as shorted and gets no power.
    """
    checks = [check for check in checks_of(setup) if not check.powered]
    rows = [(f"{place}. {one.key}", one.do, one.why) for place, one in enumerate(checks, 1)]
    head = ("check", "do", "why")
    return SourcedTable("Before power", head, rows, ("common practice",), (4, 11, 9))
