"""An image of 64 MiB judged: time beside reading and hashing the same file, and the memory."""

import os
import subprocess
import sys
from statistics import median

import pytest

from tests.benchmarks.floor import report

SIZE = 64 << 20
TURNS = 5
# Each turn is a process of its own: what the other has loaded or kept flatters none.
FLOOR = """
import hashlib, sys, time, zlib
start = time.perf_counter()
with open(sys.argv[1], "rb") as file:
    data = file.read()
hashlib.sha256(data).hexdigest(), zlib.crc32(data)
print(time.perf_counter() - start)
"""
OURS = """
import resource, sys, time
start = time.perf_counter()
from repairlib.firmware import check_image, read_image
checked = check_image(read_image(sys.argv[1]), 64 << 20)
taken = time.perf_counter() - start
assert {one.kind for one in checked.damages} == set(sys.argv[2:]), checked
print(taken, resource.getrusage(resource.RUSAGE_SELF).ru_maxrss * 1024)
"""


def content(kind: str) -> bytes:
    """64 MiB that no run has seen before: without order, or of firmware with text all over."""
    from tests.firmware import invented_images as invented

    if kind == "random":
        return os.urandom(SIZE)
    import random

    chance = random.Random(os.urandom(8))
    made = bytearray(os.urandom(SIZE))
    for begin in range(0, SIZE, 1 << 20):
        made[begin : begin + (1 << 19)] = invented.firmware(chance, 1 << 19)
    if kind == "blank rest":
        made[SIZE // 3 :] = b"\xff" * (SIZE - SIZE // 3)
    if kind == "swapped":
        return invented.swapped(chance, bytes(made))
    return invented.line_low(chance, bytes(made)) if kind == "stuck" else bytes(made)


@pytest.mark.parametrize("kind", ["random", "firmware", "blank rest", "swapped", "stuck"])
def test_64_mib(kind, capsys, tmp_path):
    """Below 2 s, 4 times reading and hashing, and 256 MiB, with the start of numpy counted."""
    named = {"swapped": ["swapped bytes"], "stuck": ["stuck bit"]}.get(kind, [])
    floors, times, peaks = [], [], []
    for turn in range(TURNS):
        path = tmp_path / f"{turn}.bin"
        path.write_bytes(content(kind))
        floors += _run(FLOOR, path)
        taken, peak = _run(OURS, path, *named)
        times.append(taken)
        peaks.append(peak)
        path.unlink()
    peak = max(peaks) / (1 << 20)
    report(
        capsys,
        f"64 MiB, {kind}: {min(times):.2f} s ({median(times):.2f} s in the middle) = "
        f"{min(times) / min(floors):.1f} x reading and hashing ({min(floors):.2f} s); its own peak "
        f"{peak:.0f} MiB",
    )
    assert min(times) < 2
    assert min(times) < 4 * min(floors)
    assert peak <= 256


def _run(script: str, *arguments) -> list[float]:
    command = [sys.executable, "-c", script, *map(str, arguments)]
    done = subprocess.run(command, capture_output=True, text=True, check=True)
    return [float(word) for word in done.stdout.split()]
