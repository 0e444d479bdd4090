"""A process that saves and reports, killed at a random moment."""

import os
import random
import signal
import subprocess
import sys


def reported_until_killed(code: str, start: int, moments: random.Random) -> list[int]:
    """Let `code` count up from `start`, kill it after a random while, give what it reported.

    It writes each number on a line of its own, once what belongs to it is saved.
    """
    process = subprocess.Popen(
        [sys.executable, "-c", code, str(start)],
        env=os.environ | {"PYTHONPATH": os.pathsep.join(sys.path)},
        stdout=subprocess.PIPE,
    )
    first = process.stdout.readline()  # it is at work now
    try:
        process.wait(timeout=moments.uniform(0, 0.06))
    except subprocess.TimeoutExpired:
        process.send_signal(signal.SIGKILL)
    rest = process.stdout.read()
    assert process.wait() == -signal.SIGKILL
    return [int(line) for line in (first + rest).split(b"\n")[:-1]]  # lines that came whole
