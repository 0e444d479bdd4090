"""A quick check must cost little more than starting Python."""

import sys
import tracemalloc

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.markings import read
from tests.benchmarks.floor import report, seconds, start_seconds


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
    codes = [f"{a}{b}{c}K" for a in "123456789" for b in "0123456789" for c in "012345"]

    def floor():
        for code in codes:
            float(code[:2]) * 10.0 ** int(code[2])

    def reading():
        for code in codes:
            read(code)

    tracemalloc.start()
    reading()
    peak = tracemalloc.get_traced_memory()[1] / 1024
    tracemalloc.stop()
    each, bare = seconds(reading) / len(codes), seconds(floor) / len(codes)
    report(
        capsys,
        f"{1 / each:,.0f} readings a second, {each / bare:.0f} x the bare arithmetic, "
        f"{peak:.0f} kB at the peak",
    )
    assert each < 1000 * bare


def test_ten_megabytes_are_refused_without_reading_them(capsys):
    text = "104 " * 2_500_000

    def refuse():
        with pytest.raises(RepairlibError):
            read(text)

    refusal, scan = seconds(refuse), seconds(lambda: "K" in text)
    report(capsys, f"refusing 10 MB takes {refusal / scan:.2f} of looking through them once")
    assert refusal < scan
