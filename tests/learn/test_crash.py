"""A kernel killed while answers and tries are saved loses none that it had reported as saved."""

import os
import random

import pytest

from repairlib.learn.learner import DEMO
from repairlib.learn.saved_answers import SavedAnswers
from repairlib.learn.tries import read_tries
from tests.learn.killing import reported_until_killed

KILLS = 200 if os.environ.get("CLASS") == "all" else 12  # 200 is the whole
LESSON = "00-start-here"
# Saves answer after answer, notes each as a try, and reports it when both are on the disk.
ANSWERING = """
import sys
from repairlib.learn.learner import DEMO
from repairlib.learn.saved_answers import SavedAnswers
from repairlib.learn.tries import note_try
saved = SavedAnswers("00-start-here")
for number in range(int(sys.argv[1]), 1_000_000):
    saved.save({f"q{number}": "x" * (number % 700)})
    note_try("00-start-here", DEMO, f"q{number}", "x" * (number % 700), "wrong")
    sys.stdout.write(f"{number}\\n")
    sys.stdout.flush()
"""


@pytest.mark.slow
@pytest.mark.skipif(os.name != "posix", reason="kill -9 is a signal of POSIX systems")
def test_killed_at_random_moments():
    seed = random.SystemRandom().randrange(10**9)
    print(f"seed {seed}")  # shown by pytest when this fails
    moments = random.Random(seed)
    reported, start = set(), 0
    for _ in range(KILLS):
        reported |= set(reported_until_killed(ANSWERING, start, moments))
        saved = SavedAnswers(LESSON)
        answers = saved.read()
        assert saved.note == ""
        noted = {one.id: one.typed for one in read_tries(LESSON, DEMO)}
        assert {f"q{number}" for number in reported} <= set(answers) & set(noted)
        assert all(text == answers[name] for name, text in noted.items())
        assert all(text == "x" * (int(name[1:]) % 700) for name, text in answers.items())
        start = max(int(name[1:]) for name in answers) + 1
    unreported = len(answers) - len(reported)
    print(f"{len(reported)} answers saved, {unreported} saved but killed before they said so")
