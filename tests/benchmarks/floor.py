"""Speed as a ratio to a floor measured in the same run, and the memory beside it."""

from __future__ import annotations

import os
import resource
import subprocess
import time


def seconds(action, repeats: int = 5) -> float:
    """The shortest of `repeats` runs of `action`: what it costs when nothing else disturbs it."""
    times = []
    for _ in range(repeats):
        start = time.perf_counter()
        action()
        times.append(time.perf_counter() - start)
    return min(times)


def start_seconds(*commands: list[str], repeats: int = 20, cwd=None) -> list[float]:
    """The shortest start of each command, measured by turns so that all see the same machine.

    The first turn stores the bytecode, as it does for a person; the others find it.
    """
    env = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    best = [float("inf")] * len(commands)
    for _ in range(repeats):
        for place, command in enumerate(commands):
            start = time.perf_counter()
            subprocess.run(command, check=True, stdout=subprocess.DEVNULL, cwd=cwd, env=env)
            best[place] = min(best[place], time.perf_counter() - start)
    return best


def report(capsys, text: str) -> None:
    """Print a measurement past pytest's capture, with this process's peak memory."""
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    with capsys.disabled():
        print(f"\n  {text}; peak memory of the test run {peak:.0f} MB", end="")
