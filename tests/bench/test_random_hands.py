"""Any typed line and any order of moves: a result or one clear line, never anything else."""

import math
import os
import random
from copy import deepcopy
from dataclasses import fields, is_dataclass

import pytest

from repairlib.bench import Attempt, Task, demo_set, read_fault, read_move, say_move
from repairlib.bench.move_words import BETWEEN, FORMS, POINTS
from repairlib.bench.practice_set import DEMO
from repairlib.bench.typed_move import names_of
from repairlib.bench.where import on_mains_side
from repairlib.core.errors import RepairlibError

ALL = os.environ.get("BENCH") == "all"
LINES, WALKS, LONG = (20_000, 2_000, 12) if ALL else (600, 3, 6)
FIGURES = (
    "5 V", "12V", "0 V", "-3 V", "1e9 V", "200 mA", "1k", "4k7", "100 Ω", "10 mΩ", "1000 µF",
    "100n", "25", "40 W", "330 °C", "380C", "900 °C", "3 s", "0 s", "2 min", "1 h 30 min", "90 %",
    "5 ms", "1 MF", "1 kHz", "0.5 V", "9999999999999 s", "1,5 V", "1.000,5", "+", "-", "°C",
)  # fmt: skip
ODD = (
    "\u202e",
    "\x00",
    "é",
    "𝟙",
    "ß",
    "İ",
    "#",
    "'",
    '"',
    "\n",
    "\t",
    "::",
    "old",
    "plus",
    "9" * 70,
)


def words_of(of):
    """What a line may be made of."""
    phrases = [phrase for form in FORMS.values() for phrase in (*form.phrases, *form.words)]
    return [*phrases, *BETWEEN, *names_of(of), *FIGURES, *ODD]


def a_line(draw, of, words):
    """A line that somebody might type, or a cat."""
    verb = draw.choice([phrase for form in FORMS.values() for phrase in form.phrases])
    pieces = [verb, *(draw.choice(words) for _ in range(draw.randint(0, 4)))]
    if draw.random() < 0.3:
        draw.shuffle(pieces)
    line = " ".join(pieces)
    while draw.random() < 0.2 and line:
        at = draw.randrange(len(line))
        line = line[:at] + draw.choice(["", "x", " ", "µ", line[at:]]) + line[at + 1 :]
    return line


@pytest.mark.behaviour
def test_any_line_is_a_move_that_can_be_typed_again_or_refused_in_one_line():
    draw, read = random.Random(14), 0
    sets = [demo_set(title) for title in DEMO]
    words = {of.title: words_of(of) for of in sets}
    for _ in range(LINES):
        of = draw.choice(sets)
        line = a_line(draw, of, words[of.title])
        try:
            move = read_move(line, of)
        except RepairlibError as refused:
            assert "\n" not in str(refused)
            continue
        read += 1
        assert all(map(math.isfinite, move.figures.values()))
        assert read_move(say_move(move), of) == move, line
    assert read > LINES / 10


ENDS = ("hand on", "hand back", "give up")
WORK = ("take out", "clean", "fit", "resolder", "bridge", "touch", "discharge")


def a_move(draw, state):
    """A move with some sense: the walk shall not end at once by its own will or at the mains."""
    of, careful = state.set, draw.random() < 0.9
    verb = draw.choice([one for one in FORMS if not (careful and one in ENDS)])
    form = FORMS[verb]
    if careful and state.powered and verb in WORK:
        return "unplug"
    parts = [part for part in of.parts if not (careful and part.mains)]
    points = [one for one in of.points if not (careful and on_mains_side(of, one))]
    names = [*(part.name for part in parts), *(points if verb in POINTS else ())]
    some = [draw.choice(names) for _ in range(draw.randint(form.least, form.most))]
    tail = {
        "plug in": ["", "with supply 12 V 500 mA", "with supply 1 V 10 mA", "with lamp 40 W"],
        "fit": ["", "old", "turned", "old turned", "1 µF 6.3 V", "10 mF", "1 Ω", "10 A"],
        "wait": ["1 s", "1 min", "1 h"],
        "discharge": ["with 1 kΩ", "with a screwdriver", "with 100 Ω for 60 s"],
        "line": ["low", "usual", "high"],
        "load": ["light", "full"],
        "take out": ["", "", "with vacuum", "with hot air", "450 °C 20 s", "fine tip 200 °C 1 s"],
        "resolder": ["", "450 °C 30 s"],
        "write": [" found: it hums", " told: turn it off"],
        "look": ["", "with lens"],
    }.get(verb, [""])
    return " ".join([verb, *some, draw.choice(tail)])


def numbers_in(thing):
    """Every float in a state, a reading or what is told."""
    if isinstance(thing, float):
        yield thing
    elif isinstance(thing, dict):
        for one in thing.values():
            yield from numbers_in(one)
    elif isinstance(thing, tuple):
        for one in thing:
            yield from numbers_in(one)
    elif is_dataclass(thing):
        for one in fields(thing):
            if one.name != "set":
                yield from numbers_in(getattr(thing, one.name))


@pytest.mark.behaviour
@pytest.mark.parametrize("walk", range(WALKS))
def test_any_order_of_moves_keeps_a_finite_state_and_changes_none_in_place(walk):
    draw = random.Random(f"walk {walk}")
    of = demo_set(draw.choice(DEMO))
    faults = (read_fault(draw.choice(of.faults), of),) if of.faults else ()
    attempt = Attempt(Task(of, faults, f"seed {walk}"))
    for _ in range(LONG):
        before, kept = attempt.state, deepcopy(attempt.state)
        try:
            attempt = attempt.after(a_move(draw, attempt.state))
        except RepairlibError as refused:
            assert "\n" not in str(refused)
        assert before == kept
        assert all(map(math.isfinite, numbers_in(attempt.state)))
        if attempt.done:
            assert all(map(math.isfinite, numbers_in(attempt.done[-1].told)))
            assert attempt.state.clock >= before.clock and attempt.state.spent >= before.spent
