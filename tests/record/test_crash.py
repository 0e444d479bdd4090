"""A process killed while it writes loses at most that entry; two that write lose none."""

import os
import random
import subprocess
import sys
from itertools import pairwise

import pytest

from repairlib.record import add_entry, open_job, read_card
from tests.learn.killing import reported_until_killed
from tests.record.cards import JOB

KILLS = 50
WRITERS = ("Ana", "Ben")
EACH = 120
# Writes entry after entry and reports each one when it is written.
WRITING = """
import sys
from repairlib.record import add_entry
for number in range(int(sys.argv[1]), 1_000_000):
    add_entry({path!r}, "note", "Ana", text=f"{{number}} " + "x" * (number % 3900))
    sys.stdout.write(f"{{number}}\\n")
    sys.stdout.flush()
"""
MANY = """
import sys
from repairlib.record import add_entry
path, who, many = sys.argv[1:]
for number in range(int(many)):
    add_entry(path, "note", who, text=f"{number} " + "µ" * (number * 13 % 800))
"""


def said_numbers(card, by):
    return [int(one["text"].split()[0]) for one in card.standing("note") if one.by == by]


@pytest.mark.slow
@pytest.mark.skipif(os.name != "posix", reason="kill -9 is a signal of POSIX systems")
def test_killed_at_fifty_random_moments(tmp_path):
    seed = random.SystemRandom().randrange(10**9)
    print(f"seed {seed}")  # shown by pytest when this fails
    moments = random.Random(seed)
    path = str(open_job(tmp_path, "Ana", **JOB))
    start, before = 0, b""
    for _ in range(KILLS):
        reported = reported_until_killed(WRITING.format(path=path), start, moments)
        now = (tmp_path / path).read_bytes()
        assert now.startswith(before)
        card, before = read_card(path), now
        numbers = said_numbers(card, "Ana")
        assert set(reported) <= set(numbers)
        assert all(one["text"].split(" ")[1] == "x" * (n % 3900) for one, n in _with(card))
        assert numbers == sorted(set(numbers))
        start = max(numbers) + 1
    add_entry(path, "note", "Ben", text="0 after all")
    card = read_card(path)
    assert [one.number for one in card.entries] == list(range(1, len(card.entries) + 1))
    assert len(card.unread) <= KILLS
    print(f"{len(card.entries)} entries, {len(card.unread)} cut short")


def _with(card):
    notes = [one for one in card.standing("note") if one.by == "Ana"]
    return [(one, int(one["text"].split()[0])) for one in notes]


@pytest.mark.slow
def test_two_writers_at_the_same_time_lose_nothing_and_tear_nothing(tmp_path):
    path = open_job(tmp_path, "Ana", **JOB)
    at_work = [
        subprocess.Popen(
            [sys.executable, "-c", MANY, str(path), who, str(EACH)],
            env=os.environ | {"PYTHONPATH": os.pathsep.join(sys.path)},
        )
        for who in WRITERS
    ]
    assert [process.wait(timeout=300) for process in at_work] == [0, 0]
    card = read_card(path)
    assert card.trouble == ""
    assert [one.number for one in card.entries] == list(range(1, 2 * EACH + 2))
    for who in WRITERS:
        assert said_numbers(card, who) == list(range(EACH))
    for one in card.standing("note"):
        number, _, rest = one["text"].partition(" ")
        assert rest == "µ" * (int(number) * 13 % 800)
    order = [one.by for one in card.standing("note")]
    turns = sum(one != other for one, other in pairwise(order))
    assert turns > 1, "they did not write at the same time"
