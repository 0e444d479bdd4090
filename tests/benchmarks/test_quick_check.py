"""A quick check must cost little more than starting Python."""

import sys
import tracemalloc
from contextlib import suppress

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.markings import read
from tests.benchmarks.floor import report, seconds, start_seconds
from tests.benchmarks.typed_lists import markings

ENERGY = ("capacitance=100 uF", "voltage=25 V")


def test_cold_quick_check_against_bare_start(capsys, tmp_path):
    (tmp_path / "empty").mkdir()
    (tmp_path / "empty" / "__main__.py").touch()
    bare, module, quick = start_seconds(
        [sys.executable, "-c", "pass"],
        [sys.executable, "-m", "empty"],
        [sys.executable, "-m", "repairlib", "104K"],
        cwd=tmp_path,
    )
    report(
        capsys,
        f"quick check {quick * 1e3:.1f} ms = {quick / bare:.2f} x bare Python "
        f"({bare * 1e3:.1f} ms), {quick / module:.2f} x an empty module ({module * 1e3:.1f} ms)",
    )
    assert quick < 2 * bare


def test_readings_per_second(capsys):
    """Every marking of the corpus, nonsense included; the floor takes a figure code apart.

    Measured: 100 to 115 times (140 to 145 before pieces were taken apart once for all bodies).
    The goal is 100.
    """
    texts = markings()

    def floor():
        for text in texts:
            with suppress(ValueError):
                float(text[:2]) * 10.0 ** int(text[2:3])

    def reading():
        for text in texts:
            with suppress(RepairlibError):
                read(text)

    tracemalloc.start()
    reading()
    peak = tracemalloc.get_traced_memory()[1] / 1024
    tracemalloc.stop()
    each, bare = seconds(reading) / len(texts), seconds(floor) / len(texts)
    report(
        capsys,
        f"{1 / each:,.0f} readings a second of {len(texts)} mixed markings, {each / bare:.0f} x "
        f"the bare arithmetic, {peak:.0f} kB at the peak",
    )
    assert each < 250 * bare


def test_cold_calculator_against_bare_start(capsys, tmp_path):
    bare, quick = start_seconds(
        [sys.executable, "-c", "pass"],
        [sys.executable, "-m", "repairlib", "calc", "stored_energy", *ENERGY],
        repeats=10,
        cwd=tmp_path,
    )
    report(
        capsys,
        f"one calculator from a cold start {quick * 1e3:.0f} ms = {quick / bare:.1f} x bare "
        f"Python ({bare * 1e3:.0f} ms)",
    )
    assert quick < 25 * bare


def test_ten_megabytes_are_refused_without_reading_them(capsys):
    text = "104 " * 2_500_000

    def refuse():
        with pytest.raises(RepairlibError):
            read(text)

    refusal, scan = seconds(refuse), seconds(lambda: "K" in text)
    report(capsys, f"refusing 10 MB takes {refusal / scan:.2f} of looking through them once")
    assert refusal < scan
