"""A broken set to repair: answered by its moves, one a line, and judged by what came of them.

The answer is walked again from its first move whenever it is judged, so the same lines earn the
same mark on every machine. While somebody works, only the last line is walked.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from repairlib.bench import GIVEN_UP, REPAIRED, Attempt, Finding, Task, judge, known_way
from repairlib.core.errors import RepairlibError
from repairlib.core.wording import counted
from repairlib.learn.question import (
    PARTLY,
    RIGHT,
    UNANSWERED,
    UNREADABLE,
    UNSAFE,
    WRONG,
    Judgement,
    Question,
    as_text,
)

MOST_MOVES = 200  # of one answer; a repair takes some twenty to sixty
LONGEST_MOVE = 300  # characters
MOST_KEPT = 60  # attempts that are remembered, so that one move more is one step more
ENOUGH = 0.9  # of a repair, for all points of the question; a choice of this workbook
HAZARD = "heat and fire"  # of what is dangerous and has not struck
NOTHING_MENDED = "It was given up: no points. A new attempt begins at the same board."
NOTHING_DONE = "It was handed back as it came: no points. A new attempt begins at the same board."
UNTOLD = {
    "the cause": "What is wrong with it is still in it, or nothing had pointed to it.",
    "good parts": "Good parts came out.",
    "handed on": "What is wrong with it could be mended here, or nothing pointed to the mains.",
    "job card": "The job card is not complete: found, measured, fitted, told.",
}
_JUDGED: dict[tuple[str, tuple[str, ...]], Judgement] = {}
_WALKED: dict[tuple[str, tuple[str, ...]], Attempt] = {}


@dataclass(frozen=True, kw_only=True, repr=False)
class Bench(Question):
    """A board to repair; `task` is its set, what is wrong with it, and the seed of its instruments.

    Typed as lines of moves, or as moves with `;` between them. It is answered once the set is
    handed back, handed on or given up. A move that hurts somebody is dangerous whatever else was
    done. Until the set works, nothing that is told names a part of it.

    >>> from repairlib.bench import demo_set
    >>> ask = Bench(task=Task(demo_set("desk radio"), (), "demo"))
    >>> ask.judge("look").state, ask.judge("kick it").says[0][:44]
    ('unanswered', "'kick it': no move begins like this (move 1)")
    """

    task: Task

    @property
    def answer(self) -> str:
        """What is wrong with the set, without its figures; for the instructor."""
        wrong = ", ".join(f"{one.part} {one.condition}" for one in self.task.faults)
        return f"{self.task.set.title}: {wrong or 'nothing'}"

    def one_way(self) -> tuple[str, ...]:
        """The moves of somebody who knows what is wrong: one way of many that earns all points."""
        return known_way(self.task)

    def hazards(self) -> tuple[str, ...]:
        """What a careless move at the bench can meet."""
        return ("mains", "stored charge", "heat and fire")

    def judge(self, typed) -> Judgement:
        if self.is_blank(typed):
            return Judgement(UNANSWERED)
        try:
            attempt = self.read(typed)
        except RepairlibError as error:
            return Judgement(UNREADABLE, says=(str(error),))
        if attempt.state.ended is None:
            return Judgement(UNANSWERED, says=(_begun(attempt),))
        key = str(self.task), moves_in(typed)
        if key not in _JUDGED:
            _JUDGED[key] = _judged(attempt)
            _let_go(_JUDGED)
        return _JUDGED[key]

    def read(self, typed) -> Attempt:
        """The attempt after all its moves. Raises RepairlibError naming the first bad move."""
        lines = moves_in(as_text(typed))
        if len(lines) > MOST_MOVES:
            raise RepairlibError(f"{len(lines)} moves", "too many", f"at most {MOST_MOVES}")
        return walked_again(self.task, lines)

    def in_short(self, typed):
        """The moves, each on its line and without needless spaces: all of them, to judge again."""
        return as_lines(moves_in(typed)[:MOST_MOVES]) if isinstance(typed, str) else typed

    def is_whole(self, typed) -> bool:
        """True once the attempt has ended."""
        try:
            return not self.is_blank(typed) and self.read(typed).state.ended is not None
        except RepairlibError:
            return False

    def in_a_word(self, typed) -> str:
        """An answer for a list: how many moves, and how it ended."""
        try:
            attempt = self.read(typed)
        except RepairlibError:
            return f"{counted(len(moves_in(str(typed))), 'move')} that cannot be read"
        end = attempt.state.ended
        return f"{counted(len(attempt.done), 'move')}, {end.kind if end else 'not ended'}"

    def how(self) -> str:
        return (
            "Do one thing after the other, by mouse or typed, until you hand the set back or on. "
            "The clock and the purse are seen."
        )


def moves_in(text: str) -> tuple[str, ...]:
    """The moves in a text, one a line; where it is one line, with `;` between them.

    >>> moves_in("look C1; unplug;")
    ('look C1', 'unplug')
    """
    whole = text[: MOST_MOVES * LONGEST_MOVE]
    pieces = whole.splitlines() if "\n" in whole else whole.split(";")
    lines = (" ".join(one.split())[:LONGEST_MOVE] for one in pieces)
    return tuple(line for line in lines if line)


def as_lines(moves: Sequence[str]) -> str:
    """Moves as the text of an answer, each on its line.

    >>> moves_in(as_lines(["write found: hum; it is loud"]))
    ('write found: hum; it is loud',)
    """
    return "".join(f"{one}\n" for one in moves)


def walked_again(task: Task, lines: Sequence[str]) -> Attempt:
    """The attempt after these moves. One that goes on from a remembered one is not begun anew.

    Raises RepairlibError for the first move that is not understood or cannot be done.
    """
    lines, key = tuple(lines), str(task)
    done = next((at for at in (len(lines), len(lines) - 1) if (key, lines[:at]) in _WALKED), 0)
    attempt = _WALKED.get((key, lines[:done])) or Attempt(task)
    for number, line in enumerate(lines[done:], start=done + 1):
        try:
            attempt = attempt.after(line)
        except RepairlibError as error:
            wrong = f"{error.wrong} (move {number})"
            raise RepairlibError(error.read, wrong, error.accepted) from None
    _WALKED[key, lines] = attempt
    _let_go(_WALKED)
    return attempt


def _let_go(kept: dict) -> None:
    """Forget the oldest where there are many."""
    if len(kept) > MOST_KEPT:
        del kept[next(iter(kept))]


def _judged(attempt: Attempt) -> Judgement:
    """The judgement on an attempt that has ended, in words that leave the fault to be found."""
    end = attempt.state.ended
    if end and end.kind == GIVEN_UP:
        return Judgement(WRONG, 0.0, (NOTHING_MENDED,))
    found = judge(attempt)
    untouched = attempt.state.places == Attempt(attempt.task).state.places
    if end and end.kind == REPAIRED and untouched and attempt.task.faults and not found.dangers:
        return Judgement(WRONG, 0.0, (NOTHING_DONE,))
    if found.dangers:
        hazard = (end and end.hazard) or HAZARD
        return Judgement(
            UNSAFE, 0.0, tuple(f"Danger ({hazard}): {one}" for one in found.dangers), (hazard,)
        )
    if found.passed and not found.luck and found.share >= ENOUGH:
        return Judgement(RIGHT, 1.0)
    share = min(found.share, ENOUGH)
    said = tuple(_told(one, found.passed) for one in found.findings if one.got < one.of)
    return Judgement(PARTLY if share else WRONG, share, (*said, *map(str, found.luck)))


def _told(finding: Finding, passed: bool) -> str:
    """Why points were lost. While the set is not mended, no part of it is named."""
    return finding.words if passed else UNTOLD.get(finding.subject, finding.words)


def _begun(attempt: Attempt) -> str:
    moves = counted(len(attempt.done), "move")
    return f"Begun: {moves}. It counts once the set is handed back, handed on or given up."
