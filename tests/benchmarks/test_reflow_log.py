"""A long thermocouple log is read and judged in little more than parsing its numbers takes."""

import tracemalloc

import numpy as np

from repairlib.heat.reflow import judge_profile
from repairlib.heat.reflow_limits import standard_limits
from repairlib.heat.thermocouple_log import read_log
from tests.benchmarks.floor import report, seconds

ROWS = 1_000_000
POINTS = [(0, 25), (90, 150), (180, 200), (210, 217), (240, 245), (255, 245), (285, 217), (500, 25)]


def long_log(path, rows=ROWS):
    """A log of two channels with noise, written to `path`."""
    times = np.linspace(0, 500, rows)
    noise = np.random.default_rng(1984).normal(0, 0.2, rows)
    joint = np.interp(times, *zip(*POINTS, strict=True)) + noise
    table = np.column_stack((times, joint, joint + 2))
    with open(path, "w", encoding="utf-8", newline="\n") as file:
        file.write("time (s),joint (°C),body (°C)\n")
        np.savetxt(file, table, fmt=("%.4f", "%.2f", "%.2f"), delimiter=",")


def judged(path):
    log = read_log(path)
    limits = standard_limits("Pb-free", 260)
    return [judge_profile(log.profile(channel), limits) for channel in log.channels]


def bare(path):
    """The floor: the same file turned into numbers by numpy, and nothing asked of them."""
    return np.loadtxt(path, delimiter=",", skiprows=1, encoding="utf-8")


def test_log_of_1_000_000_rows_against_bare_parsing(tmp_path, capsys):
    """Goal: under 2 s on this machine, held as a ratio: within 8 times the bare parsing."""
    path = tmp_path / "long.csv"
    long_log(path)
    assert [one.verdict for one in judged(path)] == ["pass", "pass"]
    tracemalloc.start()
    judged(path)
    memory = tracemalloc.get_traced_memory()[1] / 1e6
    tracemalloc.stop()
    floor = seconds(lambda: bare(path), 5)
    whole = seconds(lambda: judged(path), 5)
    size = path.stat().st_size / 1e6
    report(
        capsys,
        f"log of {ROWS:,} rows, 2 channels, {size:.0f} MB: read and judged in {whole:.2f} s = "
        f"{whole / floor:.1f} x bare parsing ({floor:.2f} s); {memory:.0f} MB at the peak",
    )
    assert whole < 8 * floor
