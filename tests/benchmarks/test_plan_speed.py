"""Planning a long parts list costs little more than reading it, and grows with its length only."""

import gc
import io
import tracemalloc

import pandas
import pytest

from repairlib.recap import plan
from tests.benchmarks.floor import report, seconds

VALUES = ("10uF", "47uF", "100uF", ".1", "1000uF", "4u7", "2.2")
VOLTS = ("16", "25", "35", "50")
KINDS = ("Elect radial", "Film", "Ceramic", "Elect axial", "Tantalum")


@pytest.fixture(autouse=True)
def without_the_heap_of_the_test_run():
    """Keep the garbage collector from walking the test runner's own objects while we measure."""
    gc.collect()
    gc.freeze()
    yield
    gc.unfreeze()


def parts_list(length: int) -> str:
    """A list of `length` lines that repeats its parts at different steps, as long lists do."""
    rows = [
        f"C{n},{VALUES[n % 7]},{VOLTS[n % 4]},{KINDS[n % 5]},1,page {n % 9}"
        for n in range(1, length + 1)
    ]
    return "\n".join(["Ref,Value,Volts,Type,Qty,Note", *rows, ""])


def planned(text: str) -> int:
    return len(plan(text).checklist)


def test_plan_of_10_000_lines_against_reading_them(capsys):
    """Goal: within 5 times. The limit leaves room for a busy machine."""
    text = parts_list(10_000)
    tracemalloc.start()
    planned(text)
    memory = tracemalloc.get_traced_memory()[1] / 1e6
    tracemalloc.stop()
    read = seconds(lambda: pandas.read_csv(io.StringIO(text)), 9)
    plan_only = seconds(lambda: plan(text), 9)
    ordered = seconds(lambda: planned(text), 9)
    report(
        capsys,
        f"plan of 10,000 lines {plan_only * 1e3:.1f} ms = {plan_only / read:.1f} x reading them "
        f"with pandas ({read * 1e3:.1f} ms); with the fitting order {ordered / read:.1f} x; "
        f"{memory:.1f} MB at the peak",
    )
    assert plan_only < 10 * read


@pytest.mark.parametrize("length", [10_000, 100_000])
def test_time_grows_with_the_length_only(capsys, length):
    short, long = parts_list(1_000), parts_list(length)
    planned(short), planned(long)
    each_short = seconds(lambda: planned(short), 9) / 1_000
    each_long = seconds(lambda: planned(long), 3) / length
    report(
        capsys,
        f"plan of {length:,} lines: {each_long * 1e6:.2f} µs a line, "
        f"{each_long / each_short:.2f} x that of 1,000 lines",
    )
    assert each_long < 5 * each_short  # a quadratic step would make it 100
