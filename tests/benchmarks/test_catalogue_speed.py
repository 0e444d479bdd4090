"""Choosing from a long catalogue: a ratio to reading it, growth with its length, memory beside."""

import csv
import gc
import io
import math
import tracemalloc

import pytest

from repairlib.recap import Position, plan
from repairlib.recap.catalogue import COLUMNS as EVERY_COLUMN
from repairlib.recap.catalogue import parse_catalogue
from repairlib.recap.choice import selection_of
from repairlib.recap.selection import Selector
from tests.benchmarks.floor import report, seconds

COLUMNS = EVERY_COLUMN[:-2]  # without the smallest number and the currency
FIGURES = (1, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2)
VOLTS = (6.3, 10, 16, 25, 35, 50, 63, 100)
HOURS = (1000, 2000, 4000, 5000, 10000)


@pytest.fixture(autouse=True)
def without_the_heap_of_the_test_run():
    gc.collect()
    gc.freeze()
    yield
    gc.unfreeze()


def catalogue(length: int) -> str:
    """`length` lines that spread over values, ratings and sizes as catalogues do."""
    rows = [
        f"P{n},S{n % 97},aluminium general 105,{FIGURES[n % 12] * 10 ** (n // 12 % 4):g},"
        f"{VOLTS[n // 48 % 8]},105,{HOURS[n % 5]},{10 + n % 400},120,general,,{5 + n % 6},"
        f"{11 + n % 10},{2 + n % 3},radial,{0.05 + n % 83 / 100:.2f},{(1, 10, 50)[n % 3]}"
        for n in range(length)
    ]
    return "\n".join([",".join(COLUMNS), *rows, ""])


def wanted(number: int):
    """`number` places, no two alike, each with the part that the plan proposes for it."""
    lines = [
        f"C{n},{FIGURES[n % 12] * 10 ** (n // 12 % 4):g}uF,{VOLTS[n % 6]}V,elect radial"
        for n in range(1, number + 1)
    ]
    items = plan("\n".join(lines) + "\n").items
    return [
        (item.new, Position(item.reference, spacing_mm=2 + n % 4, max_height_mm=12 + n / 50))
        for n, item in enumerate(items)
    ]


def choose_all(text: str, places) -> list:
    return chosen(Selector(parse_catalogue(text)), places)


def chosen(selector: Selector, places) -> list:
    """The part of each place, bought for this place alone."""
    found = []
    for new, place in places:
        fitting = selector.fitting(new, place)
        found.append(selection_of(fitting, 1, "")[0].part if fitting.able else None)
    return found


def test_200_lines_from_50_000(capsys):
    """Goal: under 1 s, reading the catalogue included. The floor is the bare csv module."""
    text, places = catalogue(50_000), wanted(200)
    assert len(places) == 200
    floor = seconds(lambda: list(csv.reader(io.StringIO(text))), 5)
    whole = seconds(lambda: choose_all(text, places), 5)
    selector = Selector(parse_catalogue(text))
    only = seconds(lambda: chosen(selector, places), 1)
    tracemalloc.start()
    found = choose_all(text, places)
    memory = tracemalloc.get_traced_memory()[1] / 1e6
    tracemalloc.stop()
    assert sum(part is not None for part in found) >= 140
    report(
        capsys,
        f"200 lines from a catalogue of 50,000: {whole * 1e3:.0f} ms, of it choosing "
        f"{only * 1e3:.0f} ms, = {whole / floor:.1f} x reading it with csv ({floor * 1e3:.0f} ms); "
        f"{memory:.0f} MB at the peak",
    )
    assert whole < 20 * floor


def test_growth_with_the_catalogue(capsys):
    """The exponent of time against length; n log n is about 1.1 here, n² would be 2."""
    places = wanted(200)
    lengths = (6_250, 12_500, 25_000, 50_000)
    times = []
    for length in lengths:
        text = catalogue(length)
        times.append(seconds(lambda text=text: choose_all(text, places), 5))
    exponent = math.log(times[-1] / times[0]) / math.log(lengths[-1] / lengths[0])
    each = ", ".join(f"{n:,}: {t * 1e3:.0f} ms" for n, t in zip(lengths, times, strict=True))
    report(capsys, f"choosing 200 lines, growth exponent {exponent:.2f} ({each})")
    assert exponent < 1.6


def test_growth_when_every_line_is_a_candidate(capsys):
    """All lines of one value: the shelf is long, and still no line is looked at twice."""
    head = ",".join(COLUMNS)
    (item,) = plan("C1,10uF,16V,elect radial\n").items
    places = [(item.new, Position("C1", max_height_mm=11 + n / 100)) for n in range(200)]
    times = []
    for length in (10_000, 40_000):
        rows = [
            f"P{n},S,aluminium general 105,10,{VOLTS[n % 8]},105,{HOURS[n % 5]},{n % 900 + 1},"
            f"120,general,,{5 + n % 6},{11 + n % 10},{2 + n % 3},radial,{n % 997 + 1},1"
            for n in range(length)
        ]
        text = "\n".join([head, *rows, ""])
        times.append(seconds(lambda text=text: choose_all(text, places), 3))
    exponent = math.log(times[1] / times[0]) / math.log(4)
    report(capsys, f"200 places on one value, growth exponent {exponent:.2f}, {times[1]:.2f} s")
    assert exponent < 1.6
