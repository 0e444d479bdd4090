"""Judging a long table of measured parts costs little more than the bare arithmetic."""

import tracemalloc

import numpy as np

from repairlib.health.capacitor_families import families
from repairlib.health.table import family_codes, judge_table
from tests.benchmarks.floor import report, seconds

ROWS = 100_000
VALUES = np.array([1e-6, 4.7e-6, 10e-6, 47e-6, 100e-6, 470e-6, 1000e-6, 2200e-6, 4700e-6])
VOLTS = np.array([6.3, 10.0, 16.0, 25.0, 35.0, 50.0, 63.0])


def measured_parts(rows=ROWS):
    """Rows of mixed families and ratings; a tenth of each reading is missing."""
    draw = np.random.default_rng(1984)
    names = [name for name, one in families().items() if one.inside == "wet aluminium"]
    family = family_codes([names[place] for place in draw.integers(0, len(names), rows)])
    farad, volts = draw.choice(VALUES, rows), draw.choice(VOLTS, rows)
    measured = farad * draw.uniform(0.5, 1.4, rows)
    esr = draw.uniform(0.01, 0.8, rows) / (2 * np.pi * 120 * farad)
    leakage = draw.uniform(0, 0.03, rows) * farad * volts
    for column in (measured, esr, leakage):
        column[draw.random(rows) < 0.1] = np.nan
    return family, farad, volts, measured, esr, leakage


def bare(limits, farad, volts, measured, esr, leakage):
    """The same limits, already looked up, compared once with each reading and its uncertainty."""
    tan_delta, times, low, high, microamps = limits
    ratio = measured / farad
    bad = (ratio * 1.05 < low) | (ratio * 0.95 > high)
    good = (ratio * 0.95 >= 0.8) & (ratio * 1.05 <= 1.2)
    limit = tan_delta / (2 * np.pi * 120 * farad)
    bad |= esr * 0.95 > times * limit
    good &= esr * 1.05 <= limit
    most = np.maximum(0.01 * farad * volts, microamps)
    bad |= leakage * 0.95 > most
    good &= leakage * 1.05 <= most
    return np.where(bad, 3, np.where(good, 0, 2)).astype(np.int8)


def test_table_of_100_000_parts_against_bare_arithmetic(capsys):
    """Goal: within 5 times, with the families by name as a table has them.

    The floor has its limits looked up already; the call has not.
    """
    family, *columns = measured_parts()
    names = [tuple(families())[code] for code in family.tolist()]
    draw = np.random.default_rng(1)
    limits = [draw.uniform(low, high, ROWS) for low, high in ((0.08, 0.28), (1.5, 3))]
    limits += [np.full(ROWS, 0.8), np.full(ROWS, 1.2), np.full(ROWS, 3e-6)]
    judge_table(names, *columns)  # tables read once
    tracemalloc.start()
    judge_table(names, *columns)
    memory = tracemalloc.get_traced_memory()[1] / 1e6
    tracemalloc.stop()
    calls = (
        lambda: bare(limits, *columns),
        lambda: judge_table(family, *columns),
        lambda: judge_table(names, *columns),
    )
    turns = [[seconds(call, 1) for call in calls] for _ in range(60)]  # by turns: same machine
    floor, table, named = map(min, zip(*turns, strict=True))
    report(
        capsys,
        f"table of {ROWS:,} parts, families by name, {named * 1e3:.1f} ms = {named / floor:.1f} x "
        f"bare numpy ({floor * 1e3:.1f} ms), {table / floor:.1f} x with families by code; "
        f"{memory:.0f} MB at the peak",
    )
    assert table < 5 * floor
    assert named < 8 * floor  # what it takes to look up the names comes on top
