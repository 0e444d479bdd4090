"""My own board: a learner maps the capacitors of their equipment, on a photo or squared paper.

What a map means is decided in `repairlib.recap.board_map`, its paper in `repairlib.show.sheets`.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import anywidget
import traitlets

from repairlib.core.errors import RepairlibError
from repairlib.core.html import told
from repairlib.faces.panels.file_button import FileButton
from repairlib.faces.panels.look import Panel, trouble, words
from repairlib.faces.panels.plan_pieces import saved_link
from repairlib.recap import (
    EMPTY,
    Board,
    board_csv,
    board_of_map,
    map_of_board,
    plus_not_known,
    read_board_text,
)
from repairlib.show.sheets import map_sheet

NO_MAP = {**EMPTY, "places": []}
EDGE_MM = 10  # of the board beside its outermost place, where a file is opened
Kept = dict[str, Any]


class MapDrawing(anywidget.AnyWidget):
    """What is seen and touched: `typed` is the map as text, `photo` the picture as a data address.

    The board's name, side, edge and width stand in `typed` beside its `places`.
    """

    _esm = Path(__file__).with_name("own_board.js")
    _css = Path(__file__).with_name("own_board.css")
    typed = traitlets.Dict(NO_MAP).tag(sync=True)
    photo = traitlets.Unicode().tag(sync=True)


class BoardMap(Panel):
    """The panel's parts: `drawing`, `file` (opens a board file), `answer` and `files`.

    `board` is the Board that the map says, or None while something is missing; it can be observed.
    `load` gives what was kept before, `save` is called with it at every change.

    >>> panel = BoardMap(load=lambda: {"typed": {"side": "solder side"}, "photo": ""})
    >>> panel.board is None, panel.drawing.typed["side"]
    (True, 'solder side')
    """

    board = traitlets.Instance(Board, allow_none=True)

    def __init__(
        self,
        load: Callable[[], Kept | None] = lambda: None,
        save: Callable[[Kept], None] = lambda _: None,
    ):
        kept = load() or {}
        typed = {**NO_MAP, **kept.get("typed", {})}
        self.drawing = MapDrawing(typed=typed, photo=kept.get("photo", ""))
        self.drawing.add_class("rl-map")
        self.file = FileButton("Open a board file", self._open)
        self.answer, self.files = words(), words()
        self.save = save
        super().__init__(self.drawing, self.answer, self.files, self.file)
        self.add_class("rl-wide")
        self.drawing.observe(self._changed, ["typed", "photo"])
        self._judge()

    def _changed(self, _change) -> None:
        self._judge()
        try:
            self.save({"typed": self.drawing.typed, "photo": self.drawing.photo})
        except RepairlibError as problem:
            self.answer.value = trouble(problem)

    def _judge(self) -> None:
        try:
            self.board = board_of_map(self.drawing.typed)
        except RepairlibError as problem:
            self.board, self.files.value = None, ""
            begun = self.drawing.typed["places"]
            headline = "This is not a board yet" if begun else "Your map is empty"
            self.answer.value = told("unanswered", headline, [f"{problem}."])
            return
        self.answer.value = map_html(self.board)
        self.files.value = files_html(self.board, self.drawing.photo, self.drawing.typed)

    def _open(self, name: str, content: bytes) -> None:
        try:
            board = read_board_text(content, name)
        except RepairlibError as problem:
            self.answer.value = trouble(problem)
            return
        width = max(place.x_mm for place in board.positions) + EDGE_MM if board.positions else 0
        height = max(place.y_mm for place in board.positions) + EDGE_MM if board.positions else 0
        self.drawing.photo = ""
        self.drawing.typed = map_of_board(board, width) | {"height_mm": f"{height:g}"}
        self.drawing.send({"opened": name})


def board_map(
    load: Callable[[], Kept | None] = lambda: None,
    save: Callable[[Kept], None] = lambda _: None,
) -> BoardMap:
    """The panel in which a learner maps the capacitors of their own board.

    load: gives what was kept, or None. save: is called with what to keep, at every change.
    """
    return BoardMap(load, save)


def map_html(board: Board) -> str:
    """What the map holds, and what it does not know."""
    unknown = plus_not_known(board)
    count = f"{len(board)} capacitor" + ("" if len(board) == 1 else "s")
    says = [f"Each plus is {board.positions[0].where_plus.partition(', ')[2]}."]
    if not unknown:
        return told("right", f"{count} on the map of {board.name}, each plus looked at", says)
    says.insert(0, "Look at each on the board, or at the old part, before you take it out.")
    return told("partly right", f"{count} on the map; plus not known: {', '.join(unknown)}", says)


def files_html(board: Board, photo: str, typed: Kept) -> str:
    """Links that save the map on paper, from both sides, and as a board file."""
    sheet = map_sheet(board, photo, typed)
    paper = saved_link("map-of-my-board.html", "text/html", sheet, "Save the map to print")
    table = saved_link("my-board.csv", "text/csv", "\ufeff" + board_csv(board), "Save board file")
    return f'<p class="rl-links">{paper}{table}</p>'
