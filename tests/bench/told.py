"""Attempts with all that they were told, kept as text, so that any machine can be held to them.

    python -m tests.bench.told

walks each attempt of `told/` anew and writes what it is told now; `git diff` shows what changed. A
line after `>` is a move, what follows is its answer, and the end tells the state and the mark.
"""

from __future__ import annotations

from pathlib import Path

from repairlib.bench import Attempt, Task, demo_set, judge
from repairlib.bench.attempt import Done, walked
from repairlib.bench.conditions import read_faults
from repairlib.bench.typed_move import say_move

HERE = Path(__file__).parent / "told"
KEPT = sorted(HERE.glob("*.txt"))
MOVE = "> "


def told_now(text: str) -> str:
    """The file with what its moves are told by this tree on this machine."""
    head, moves = text.splitlines()[:3], text.splitlines()[3:]
    title, faults, seed = (line.split(": ", 1)[1] for line in head)
    of = demo_set(title)
    task = Task(of, read_faults(faults, of), seed)
    attempt = walked(task, [line.removeprefix(MOVE) for line in moves if line.startswith(MOVE)])
    lines = [line for done in attempt.done for line in _of(done)]
    return "\n".join([*head, *lines, *_end(attempt)]) + "\n"


def _of(done: Done) -> list[str]:
    told, reading = done.told, done.told.reading
    lines = [f"{MOVE}{say_move(done.move)}", f"{'! ' if told.alarm else ''}{told.words}"]
    if reading is not None:
        value = "nothing" if reading.value is None else f"{reading.value:.9g}"
        lines.append(f"{reading.instrument}, {reading.range or 'no range'}: {value}")
    return lines


def _end(attempt: Attempt) -> list[str]:
    state, mark = attempt.state, judge(attempt)
    warm = {name: f"{kelvin:.6g}" for name, kelvin in dict(state.heat).items() if kelvin > 1}
    held = {name: f"{volts:.6g}" for name, volts in dict(state.charges).items()}
    return [
        f"clock {state.clock:.9g} s, spent {state.spent:.9g}, charges {held}, warm {warm}",
        f"mark {mark.share:.9g}, {'passed' if mark.passed else 'not passed'}",
        *(f"{one.got:.9g} of {one.of:g}: {one.words}" for one in mark.findings),
    ]


if __name__ == "__main__":
    for path in KEPT:
        path.write_text(told_now(path.read_text(encoding="utf-8")), encoding="utf-8")
