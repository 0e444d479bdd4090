"""A kernel killed while answers are being saved loses none that it had reported as saved."""

import os
import random

import pytest

from repairlib.learn.saved_answers import SavedAnswers
from tests.learn.killing import reported_until_killed

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
        reported |= set(reported_until_killed(ANSWERING, start, moments))
        saved = SavedAnswers(LESSON)
        answers = saved.read()
        assert saved.note == ""
        assert {f"q{number}" for number in reported} <= set(answers)
        assert all(text == "x" * (int(name[1:]) % 700) for name, text in answers.items())
        unreported += len(answers) - len(reported)
        reported = {int(name[1:]) for name in answers}
        start = max(reported) + 1
    print(f"{len(reported)} answers saved, {unreported} saved but killed before they said so")
