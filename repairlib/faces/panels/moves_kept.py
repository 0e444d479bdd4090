"""The moves of a learner at one practice board, on the disk before they are shown.

So whatever kills the kernel takes nothing away that was on the screen. Attempts that were left for
a new one are kept below it.
"""

from __future__ import annotations

from collections.abc import Sequence

from repairlib.core.errors import RepairlibError
from repairlib.learn.home import file_name
from repairlib.learn.kept_work import KeptWork
from repairlib.learn.learner import current_learner


class WentOn(RepairlibError):
    """What is shown is not what is kept: somebody else's turn, or another window went on."""


class KeptMoves:
    """The moves kept under a name for who learns now; `moves` are those on the disk.

    Without a name nothing is kept. RepairlibError where the folder cannot be read or written.
    """

    def __init__(self, name: str):
        self.name = file_name(f"board {name}") if name else ""
        self.note = ""

    def read(self) -> tuple[int, list[str]]:
        """Which board it is, counted from 0, and the moves so far."""
        if not self.name:
            return 0, []
        self.work = KeptWork(self.name)
        kept = self.work.read()
        self.note = self.work.note
        return int(kept.get("board", 0)), list(kept.get("moves", []))

    def save(self, moves: Sequence[str]) -> None:
        """Keep the moves, of which the last is new. WentOn where others came in between."""
        if not self.name:
            return
        if current_learner()[0].folder() != self.work.learner.folder():
            raise WentOn(moves[-1], "in another lesson it became somebody else's turn", "a move")
        if self.work.read().get("moves", []) != list(moves[:-1]):
            raise WentOn(moves[-1], "the attempt went on in another window", "the move once more")
        self.work.save({"moves": list(moves)})

    def begin(self, board: int, moves: Sequence[str] = ()) -> None:
        """Begin an attempt anew, with these moves; the one so far is kept below it."""
        if not self.name:
            return
        kept = self.work.read()
        earlier = kept.get("earlier", [])
        if kept.get("moves"):
            earlier = [*earlier, {"board": kept.get("board", 0), "moves": kept["moves"]}]
        self.work.save({"board": board, "moves": list(moves), "earlier": earlier})
