"""Planning a typed parts list, beside reading the same text with pandas, cold and warm.

Every run gets lines that no run before it had, so that nothing remembered can flatter. Within one
list each distinct cell is read once; nothing is kept when the list is done.
"""

import gc
import io
import itertools
import math
import sys
import time
import tracemalloc

import pandas
import pytest

from repairlib.recap import plan
from tests.benchmarks.floor import report, start_seconds
from tests.benchmarks.typed_lists import parts_list

SEEDS = itertools.count(1)
ROOM = 150  # times pandas
MOST_MEGABYTES = 150


@pytest.fixture(autouse=True)
def without_the_heap_of_the_test_run():
    """Keep the garbage collector from walking the test runner's own objects while we measure."""
    gc.collect()
    gc.freeze()
    yield
    gc.unfreeze()


def on_new_lines(action, length: int, repeats: int = 3) -> float:
    """The shortest of a few runs of `action`, each on a list of its own."""
    best = math.inf
    for _ in range(repeats):
        text = parts_list(length, next(SEEDS))
        start = time.perf_counter()
        action(text)
        best = min(best, time.perf_counter() - start)
    return best


def planned(text: str):
    made = plan(text)
    assert len(made.all_items) == text.count("\n") - 1
    return made.checklist


def test_plan_of_10_000_distinct_lines_against_reading_them(capsys):
    """The floor is pandas reading the same text into columns, asking nothing of it.

    Measured: 80 to 100 times (215 to 225 before each cell was read once), of which the words that
    name a place take a quarter. The goal is 30.
    """
    length = 10_000
    read = on_new_lines(lambda text: pandas.read_csv(io.StringIO(text)), length, 5)
    whole = on_new_lines(planned, length)
    report(
        capsys,
        f"plan of {length:,} distinct lines {whole * 1e3:.0f} ms, {whole / length * 1e6:.0f} µs "
        f"a line = {whole / read:.0f} x reading them with pandas ({read * 1e3:.1f} ms)",
    )
    assert whole < ROOM * read


def test_a_list_of_45_lines_from_a_cold_start(capsys, tmp_path):
    """What a person waits for: a new process, everything imported, one list of ordinary length."""
    (tmp_path / "parts.csv").write_text(parts_list(45, 1984), encoding="utf-8")
    reading = "import pandas; pandas.read_csv('parts.csv')"
    bare, pandas_only, whole = start_seconds(
        [sys.executable, "-c", "pass"],
        [sys.executable, "-c", reading],
        [sys.executable, "-m", "repairlib", "plan", "parts.csv"],
        repeats=8,
        cwd=tmp_path,
    )
    report(
        capsys,
        f"plan of 45 lines from a cold start {whole * 1e3:.0f} ms = {whole / bare:.1f} x bare "
        f"Python ({bare * 1e3:.0f} ms), {whole / pandas_only:.2f} x pandas reading it",
    )
    assert whole < 20 * bare


def test_time_grows_with_the_length_only(capsys):
    """The exponent of time against length, on distinct lines; a quadratic step would make it 2.

    Measured: 0.85 to 1.0: a long list repeats more of its cells.
    """
    lengths = (1_000, 10_000, 100_000)
    times = [on_new_lines(planned, length) for length in lengths]
    exponent = math.log(times[-1] / times[0]) / math.log(lengths[-1] / lengths[0])
    each = ", ".join(f"{n:,}: {t * 1e3:.0f} ms" for n, t in zip(lengths, times, strict=True))
    report(capsys, f"plan of distinct lines, growth exponent {exponent:.2f} ({each})")
    assert exponent < 1.2


def test_memory_of_100_000_lines(capsys):
    """The peak of tracemalloc while planning: all that Python holds for it beside the text.

    Measured: 74 MB; the whole process, Python included, then holds about 120 MB (ru_maxrss).
    """
    text = parts_list(100_000, next(SEEDS))
    tracemalloc.start()
    planned(text)
    megabytes = tracemalloc.get_traced_memory()[1] / 1e6
    tracemalloc.stop()
    report(capsys, f"plan of 100,000 distinct lines: {megabytes:.0f} MB at the peak")
    assert megabytes < MOST_MEGABYTES
