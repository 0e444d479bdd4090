"""A learner's own practice at a broken set: which board it is now, its moves kept, the next one."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from repairlib.bench import PracticeSet, Task, demo_set, read_faults, task, told_by
from repairlib.core.draws import Draw
from repairlib.core.errors import RepairlibError
from repairlib.faces.panels.bench_panel import PracticeBoard
from repairlib.faces.panels.following import follow
from repairlib.faces.panels.moves_kept import KeptMoves, WentOn
from repairlib.learn.learner import current_learner

NAME = "practice board"


class OwnPractice:
    """The boards of one learner after the other; `panel` shows the one of now."""

    def __init__(self, of: PracticeSet, level: int, faults: Sequence[str] | None, kept: str):
        self.of, self.level, self.faults = of, level, faults
        said = f"level {level}" if faults is None else "; ".join(faults)
        self.kept = KeptMoves(f"{kept} {of.title} {said}" if kept else "")
        self.board = 0
        board, moves, note = self._kept()
        self.board = board
        self.panel = PracticeBoard(
            self._task(), moves, self._save, self._anew, more_boards=faults is None, note=note
        )
        self._put_aside(moves)
        if kept:
            follow(self.kept.name, self._turn)

    def _task(self) -> Task:
        """The board of that number for who learns now."""
        who = current_learner()[0]
        draw = Draw.for_learner(who.group, who.name, NAME)
        draw = draw.part(f"board {self.board}") if self.board else draw
        if self.faults is None:
            drawn = task(self.of, level=self.level, draw=draw)
        else:
            faults = read_faults("; ".join(self.faults), self.of)
            drawn = Task(self.of, faults, draw.seed, self.level)
        return replace(drawn, set=told_by(self.of, drawn.faults))

    def _kept(self) -> tuple[int, list[str], str]:
        """Which board it is, its moves, and what must be told of them."""
        try:
            board, moves = self.kept.read()
        except RepairlibError as error:
            return 0, [], f"Nothing will be kept: {error}."
        return board, moves, self.kept.note

    def _turn(self) -> None:
        """Show what the learner of now has kept."""
        self.board, moves, note = self._kept()
        self.panel.begin(self._task(), moves, note)
        self._put_aside(moves)

    def _put_aside(self, moves: list[str]) -> None:
        """What is no longer understood is kept below the attempt, which goes on without it."""
        if len(self.panel.moves) < len(moves):
            self.kept.begin(self.board, self.panel.moves)

    def _save(self, lines: list[str]) -> None:
        try:
            self.kept.save(lines)
        except WentOn:
            self._turn()
            raise

    def _anew(self, way: str) -> None:
        self.board += way == "another"
        note = ""
        try:
            self.kept.begin(self.board)
        except RepairlibError as error:
            note = f"Not kept: {error}."
        self.panel.begin(self._task(), (), note)


def practice_board(
    set: str | PracticeSet = "desk radio",
    level: int = 1,
    faults: Sequence[str] | None = None,
    kept: str = NAME,
) -> PracticeBoard:
    """A broken set to find and mend, ready to be shown.

    set: the title of a demo set, or an own one (`bench.read_set`). level: 1 to 3. faults: lines
    such as "C1 open"; left out, they are drawn for who learns, and there is always another board.
    kept: the name under which the moves are kept, "" to keep nothing. Raises RepairlibError for no
    such set, level or fault.
    """
    of = demo_set(set) if isinstance(set, str) else set
    return OwnPractice(of, level, faults, kept).panel
