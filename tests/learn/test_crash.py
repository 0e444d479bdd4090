"""A kernel killed while answers are being saved loses none that it had reported as saved."""

import os
import random
import signal
import subprocess
import sys

import pytest

from repairlib.learn.saved_answers import SavedAnswers

KILLS = 50
LESSON = "00-start-here"
# Saves answer after answer and reports each one when it is saved.
ANSWERING = """
import sys
from repairlib.learn.saved_answers import SavedAnswers
saved = SavedAnswers("00-start-here")
for number in range(int(sys.argv[1]), 1_000_000):
    saved.save({f"q{number}": "x" * (number % 700)})
    sys.stdout.write(f"{number}\\n")
    sys.stdout.flush()
"""


@pytest.mark.slow
@pytest.mark.skipif(os.name != "posix", reason="kill -9 is a signal of POSIX systems")
def test_killed_at_fifty_random_moments():
    seed = random.SystemRandom().randrange(10**9)
    print(f"seed {seed}")  # shown by pytest when this fails
    moments = random.Random(seed)
    reported, start, unreported = set(), 0, 0
    for _ in range(KILLS):
        reported |= numbers_until_killed(start, moments)
        saved = SavedAnswers(LESSON)
        answers = saved.read()
        assert saved.note == ""
        assert {f"q{number}" for number in reported} <= set(answers)
        assert all(text == "x" * (int(name[1:]) % 700) for name, text in answers.items())
        unreported += len(answers) - len(reported)
        reported = {int(name[1:]) for name in answers}
        start = max(reported) + 1
    print(f"{len(reported)} answers saved, {unreported} saved but killed before they said so")


def numbers_until_killed(start: int, moments: random.Random) -> set[int]:
    """Let a process save answers, kill it after a random while, give what it reported."""
    process = subprocess.Popen(
        [sys.executable, "-c", ANSWERING, str(start)],
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
    lines = (first + rest).split(b"\n")[:-1]  # only lines that came whole
    return {int(line) for line in lines}
