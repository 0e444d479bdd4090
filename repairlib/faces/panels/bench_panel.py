"""The practice board on the screen: a drawn set, its instruments, a box for typed moves, a log.

A thin view: what a move does is decided in `repairlib.bench`. Each move goes by the words in which
it is typed, also one that is made with the mouse, so an attempt is a list of lines.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from pathlib import Path
from time import perf_counter
from typing import Any

import anywidget
import traitlets

from repairlib.bench import Attempt, Task, read_move
from repairlib.core.errors import RepairlibError
from repairlib.faces.panels.bench_seen import (
    board_of,
    facts_of,
    instruments_of,
    last_reading,
    log_of,
)
from repairlib.faces.panels.look import Panel, words
from repairlib.faces.panels.moves_kept import WentOn
from repairlib.faces.panels.script import script
from repairlib.show.practice_layout import Layout, lay_out
from repairlib.show.report_of_attempt import attempt_report

ENDS = ("hand back", "hand on", "give up")  # asked once more before they are done
ASKED = "Sure? The attempt ends, and is judged as the set is now. Once more does it."
UNSAID = " Nothing is said yet of what was found: hand on: the mains fuse, for example."


class BenchView(anywidget.AnyWidget):
    """What is seen and touched. `board` is the drawing with what can be chosen on it, `told` all
    that changes with each move. The browser sends `{"do": words, "mark": …, "sure": …}`,
    `{"anew": "same"}` or `{"report": True}`."""

    _esm = script("bench_panel.js")
    _css = Path(__file__).with_name("bench_panel.css")
    board = traitlets.Dict().tag(sync=True)
    told = traitlets.Dict().tag(sync=True)


class PracticeBoard(Panel):
    """An attempt at one task. `moves` are its lines so far and can be observed; `attempt` is it.

    moves: with which it begins. on_moves: called with all lines after each move, before anything
    of it is shown; where it raises RepairlibError the move is shown with the sentence that it is
    not kept, and where that is WentOn it is not made. anew: called when a new attempt is asked for,
    with "same" or, where there are more_boards, "another". reports: whether the report is shown
    when the attempt has ended; it tells what was wrong with the board. note: told at first.

    >>> from repairlib.bench import demo_set
    >>> panel = PracticeBoard(Task(demo_set("desk radio"), (), "demo"), ["plug in"])
    >>> panel.do("volts out 0")
    >>> panel.moves, panel.view.told["log"][-1]["told"][:10]
    (['plug in', 'volts out 0'], 'out to 0: ')
    """

    moves = traitlets.List(traitlets.Unicode())

    def __init__(
        self,
        task: Task,
        moves: Iterable[str] = (),
        on_moves: Callable[[list[str]], Any] = lambda lines: None,
        anew: Callable[[str], None] | None = None,
        more_boards: bool = False,
        reports: bool = True,
        note: str = "",
    ):
        self.on_moves, self.anew, self.reports = on_moves, anew, reports
        self._ways = ["same", "another"][: 1 + more_boards] if anew else []
        self._mark = self._asked = ""
        self.attempt = Attempt(task)
        self._layout: Layout | None = None
        self._seen: tuple | None = None  # what the drawing shows, by which it is drawn anew
        self.view, self.report = BenchView(), words()
        self.view.add_class("rl-bench")
        self.view.on_msg(self._heard)
        super().__init__(self.view, self.report)
        self.begin(task, moves, note)

    def begin(self, task: Task, moves: Iterable[str] = (), note: str = "") -> None:
        """Show this task, after these moves. Those that are not understood are told, and left."""
        lines = list(moves)
        if self._layout is None or self.attempt.task.set is not task.set:
            self._layout = lay_out(task.set)
        self._seen, self._asked = None, ""
        self.attempt = Attempt(task)
        for number, line in enumerate(lines):
            try:
                self.attempt = self.attempt.after(line)
            except RepairlibError as error:
                note = f"It goes on from move {number}. What was kept behind it: {error}."
                lines = lines[:number]
                break
        self.moves, self.report.value = lines, ""
        self._show(note=note)

    def do(self, typed: str, mark: str = "") -> None:
        """Make a move by its words. What is refused is told, and nothing is done.

        `mark` goes back to the browser, which knows by it what was answered.
        """
        self._mark, self._asked = mark, ""
        line = " ".join(typed.split())
        started = perf_counter()
        try:
            attempt = self.attempt.after(line)
        except RepairlibError as error:
            self._show(refused={"typed": typed, "why": f"{error}."})
            return
        took = perf_counter() - started
        lines, note = [*self.moves, line], ""
        try:
            self.on_moves(lines)
        except WentOn as error:
            self._show(refused={"typed": typed, "why": f"{error}."})
            return
        except RepairlibError as error:
            note = f"Not kept: {error}."
        self.attempt, self.moves = attempt, lines
        self._show(note=note, took=took)
        if attempt.state.ended and self.reports:
            self.show_report()

    def show_report(self) -> None:
        """Show the report of an attempt that has ended."""
        self.report.value = attempt_report(self.attempt)
        self._show()

    def ask_or_do(self, typed: str, mark: str = "") -> None:
        """Make a move as somebody at the bench types it: what ends the attempt is asked once."""
        question = "" if typed == self._asked else self._question(typed)
        if not question:
            self.do(typed, mark)
            return
        self._mark, self._asked = mark, typed
        self._show(refused={"typed": typed, "why": question, "asks": True})

    def _question(self, typed: str) -> str:
        """What is asked before that move, "" where nothing is."""
        try:
            move = read_move(typed, self.attempt.task.set)
        except RepairlibError:
            return ""  # it is refused when it is made
        if move.verb not in ENDS or self.attempt.state.ended:
            return ""
        return ASKED + (UNSAID if move.verb == "hand on" and not move.words else "")

    def _heard(self, _view, content: dict, _buffers) -> None:
        if "do" in content:
            make = self.do if content.get("sure") else self.ask_or_do
            make(str(content["do"]), str(content.get("mark", "")))
        elif "report" in content and self.attempt.state.ended and self.reports:
            self.show_report()
        elif content.get("anew") in self._ways and self.anew:
            self.anew(content["anew"])

    def _show(self, refused: dict | None = None, note: str = "", took: float = 0.0) -> None:
        state = self.attempt.state
        seen = (state.places, state.clipped, last_reading(self.attempt))
        if self._layout and seen != self._seen:
            self.view.board, self._seen = board_of(self.attempt, self._layout), seen
        self.view.told = {
            "facts": facts_of(state),
            "log": log_of(self.attempt, self.moves),
            "instruments": instruments_of(self.attempt),
            "refused": refused or {},
            "note": note,
            "ended": state.ended.why if state.ended else "",
            "report": bool(state.ended and self.reports and not self.report.value),
            "again": self._ways,
            "milliseconds": round(1000 * took),
            "heard": self._mark,
        }
