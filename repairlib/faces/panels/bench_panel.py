"""The practice board on the screen: a drawn set, its instruments, a box for typed moves, a log.

A thin view: what a move does is decided in `repairlib.bench`. Each move goes by the words in which
it is typed, also one that is made with the mouse, so an attempt is a list of lines.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from pathlib import Path
from time import perf_counter
from typing import Any

import anywidget
import traitlets

from repairlib.bench import Attempt, PracticeSet, Reading, State, Task, demo_set, read_fault
from repairlib.core.errors import RepairlibError
from repairlib.faces.panels import bench_offers
from repairlib.faces.panels.following import follow
from repairlib.faces.panels.look import Panel
from repairlib.faces.panels.moves_kept import KeptMoves, WentOn
from repairlib.learn.learner import current_learner
from repairlib.show.practice_board import draw_practice_board
from repairlib.show.practice_layout import Layout, lay_out


class BenchView(anywidget.AnyWidget):
    """What is seen and touched. `board` is the drawing with what can be chosen on it, `told` all
    that changes with each move. The browser sends `{"do": words, "mark": …}` or
    `{"anew": "same"}`."""

    _esm = Path(__file__).with_name("bench_panel.js")
    _css = Path(__file__).with_name("bench_panel.css")
    board = traitlets.Dict().tag(sync=True)
    told = traitlets.Dict().tag(sync=True)


class PracticeBoard(Panel):
    """An attempt at one task. `moves` are its lines so far and can be observed; `attempt` is it.

    moves: with which it begins. on_moves: called with all lines after each move, before anything
    of it is shown; where it raises RepairlibError the move is shown with the sentence that it is
    not kept, and where that is WentOn it is not made. anew: called when a new attempt is asked for,
    with "same" or "another".

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
    ):
        self.on_moves, self.anew, self.more_boards = on_moves, anew, more_boards
        self._mark = ""
        self.view = BenchView()
        self.view.add_class("rl-bench")
        self.view.on_msg(self._heard)
        super().__init__(self.view)
        self.begin(task, moves)

    def begin(self, task: Task, moves: Iterable[str] = (), note: str = "") -> None:
        """Show this task, after these moves. Those that are not understood are told, and left."""
        lines = list(moves)
        self.layout_of_board = lay_out(task.set)
        self.attempt = Attempt(task)
        for number, line in enumerate(lines):
            try:
                self.attempt = self.attempt.after(line)
            except RepairlibError as error:
                note = f"It goes on from move {number}. What was kept behind it: {error}."
                lines = lines[:number]
                break
        self.moves = lines
        self._show(note=note)

    def do(self, typed: str, mark: str = "") -> None:
        """Make a move by its words. What is refused is told, and nothing is done.

        `mark` goes back to the browser, which knows by it what was answered.
        """
        self._mark = mark
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

    def _heard(self, _view, content: dict, _buffers) -> None:
        if "do" in content:
            self.do(str(content["do"]), str(content.get("mark", "")))
        elif "anew" in content and self.anew:
            self.anew(str(content["anew"]))

    def _show(self, refused: dict | None = None, note: str = "", took: float = 0.0) -> None:
        state = self.attempt.state
        reading = self.attempt.done[-1].told.reading if self.attempt.done else None
        self.view.board = board_of(state, self.layout_of_board, reading)
        self.view.told = {
            "facts": facts_of(state),
            "log": [
                {
                    "move": line,
                    "told": done.told.words,
                    "alarm": done.told.alarm,
                    "took": took_in_words(done.told.seconds, done.told.tokens),
                }
                for line, done in zip(self.moves, self.attempt.done, strict=True)
            ],
            "refused": refused or {},
            "note": note,
            "ended": state.ended.why if state.ended else "",
            "again": ["same", "another"][: 1 + self.more_boards] if self.anew else [],
            "milliseconds": round(1000 * took),
            "heard": self._mark,
        }


def board_of(state: State, layout: Layout, reading: Reading | None) -> dict[str, Any]:
    """The drawing, its words, and what can be chosen on it: where it lies, in per cent."""
    of, drawn = state.set, draw_practice_board(state, reading, layout)
    parts = [
        {
            "name": part.name,
            "says": part_in_words(state, part),
            **_share(layout, layout.parts[part.name]),
            "offers": [one._asdict() for one in bench_offers.of_part(state, part)],
        }
        for part in of.parts
    ]
    points = [
        {
            "name": point,
            "says": f"point {point}",
            "left": 100 * x / layout.wide,
            "top": 100 * y / layout.high,
            "offers": [one._asdict() for one in bench_offers.of_point(state, point)],
        }
        for point, (x, y) in layout.points.items()
    ]
    return {
        "title": of.title,
        "says": of.says,
        "works": of.works,
        "svg": drawn.svg,
        "alt": drawn.alt,
        "size": [layout.wide, layout.high],
        "parts": parts,
        "points": points,
        "bench": [one._asdict() for one in bench_offers.of_bench(of)],
    }


def part_in_words(state: State, part) -> str:
    """What a part is, where it is joined, and whether its place is empty."""
    one, other = part.nodes
    said = [part.what, f"from {one} to {other}"]
    if part.mains:
        said.append("on the mains side")
    if state.places[part.name].fitted is None:
        said.append("its place is empty")
    return ", ".join(said)


def facts_of(state: State) -> list[tuple[str, str]]:
    """What is always seen: the clock, the purse, and how the set is fed."""
    return [
        ("Time", clock(state.clock)),
        ("Spent", f"{state.spent:.1f} tokens"),
        ("Feed", feed_in_words(state)),
        ("Load", state.load),
        ("Black probe", f"clipped to {state.clipped}" if state.clipped else "in the hand"),
    ]


def feed_in_words(state: State) -> str:
    """How the set is fed."""
    feed = state.feed
    return {
        "off": "unplugged",
        "own plug": "its own plug",
        "series lamp": "its own plug, with the lamp in series",
        "bench supply": f"bench supply, {feed.volts:g} V, at most {feed.limit:g} A",
    }[feed.kind]


def took_in_words(seconds: float, tokens: float) -> str:
    """What a move took.

    >>> took_in_words(180, 1.2), took_in_words(20, 0)
    ('3 min, 1.2 tokens', '20 s')
    """
    time = f"{seconds / 60:g} min" if seconds >= 60 and seconds % 60 == 0 else f"{seconds:g} s"
    return ", ".join([time, *([f"{tokens:g} tokens"] if tokens else [])])


def clock(seconds: float) -> str:
    """A time as a clock shows it: hours, minutes, seconds.

    >>> clock(3725)
    '1:02:05'
    """
    minutes, left = divmod(round(seconds), 60)
    return f"{minutes // 60}:{minutes % 60:02d}:{left:02d}"


def _share(layout: Layout, box) -> dict[str, float]:
    return {
        "left": 100 * box.left / layout.wide,
        "top": 100 * box.top / layout.high,
        "wide": 100 * (box.right - box.left) / layout.wide,
        "high": 100 * (box.bottom - box.top) / layout.high,
    }


class OwnBoard:
    """A learner's practice at a set: which board it is now, its moves kept, the next one.

    `panel` shows it.
    """

    def __init__(self, of: PracticeSet, level: int, faults: Sequence[str] | None, kept: str):
        self.of, self.level, self.faults = of, level, faults
        said = "; ".join(faults) if faults is not None else f"level {level}"
        self.kept = KeptMoves(f"{kept} {of.title} {said}" if kept else "")
        self.board = 0
        self.panel = PracticeBoard(
            self._task(), (), self._save, self._anew, more_boards=faults is None
        )
        self._turn()
        if kept:
            follow(self.kept.name, self._turn)

    def _task(self) -> Task:
        """The board of that number for who learns now."""
        draw = current_learner()[0].draw("practice board").part(f"{self.of.title} {self.board}")
        lines = self.faults
        if lines is None:
            lines = [draw.part("fault").pick(self.of.faults)]
        faults = tuple(read_fault(line, self.of) for line in lines)
        return Task(self.of, faults, f"{draw.seed}", self.level)

    def _turn(self) -> None:
        """Show what the learner of now has kept."""
        moves: list[str] = []
        try:
            self.board, moves = self.kept.read()
            note = self.kept.note
        except RepairlibError as error:
            note = f"Nothing will be kept: {error}."
        self.panel.begin(self._task(), moves, note)

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
    kept: str = "practice board",
) -> PracticeBoard:
    """A broken set to find and mend, ready to be shown.

    set: the title of a demo set, or an own one (`bench.read_set`). level: 1 to 3. faults: lines
    such as "C1 open"; left out, they are drawn for who learns, and there is always another board.
    kept: the name under which the moves are kept, "" to keep nothing. Raises RepairlibError for no
    such set, level or fault.
    """
    of = demo_set(set) if isinstance(set, str) else set
    return OwnBoard(of, level, faults, kept).panel
