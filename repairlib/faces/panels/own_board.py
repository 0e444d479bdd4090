"""My own board: a learner maps the capacitors of their equipment, on a photo or squared paper.

What a map means is decided in `repairlib.recap.board_map`, its paper in `repairlib.show.sheets`.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import anywidget
import traitlets

from repairlib.core.errors import RepairlibError
from repairlib.core.html import told
from repairlib.core.wording import counted
from repairlib.faces.panels.file_button import FileButton
from repairlib.faces.panels.keeping import Keeping
from repairlib.faces.panels.look import Panel, trouble, words
from repairlib.faces.panels.plan_pieces import saved_link
from repairlib.faces.panels.script import script
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


class MapDrawing(anywidget.AnyWidget):
    """What is seen and touched: `typed` is the map as text, `photo` the picture as a data address.

    The board's name, side, edge and width stand in `typed` beside its `places`.
    """

    _esm = script("own_board.js")
    _css = Path(__file__).with_name("own_board.css")
    typed = traitlets.Dict(NO_MAP).tag(sync=True)
    photo = traitlets.Unicode().tag(sync=True)


class _Kept(traitlets.HasTraits):
    """One trait of the drawing as a field that can be kept: its `value`."""

    value = traitlets.Any()

    def __init__(self, drawing: MapDrawing, name: str):
        super().__init__(value=getattr(drawing, name))
        traitlets.link((drawing, name), (self, "value"))


class BoardMap(Panel):
    """The panel's parts: `drawing`, `file` (opens a board file), `answer` and `files`.

    `board` is the Board that the map says, or None while something is missing; it can be observed.
    The map and its photo are kept for the learner under the name `kept`.

    >>> panel = BoardMap(kept="")
    >>> panel.drawing.typed = {**NO_MAP, "side": "solder side"}
    >>> panel.board is None, "A fixed edge" in panel.answer.value
    (True, True)
    """

    board = traitlets.Instance(Board, allow_none=True)

    def __init__(self, kept: str = "my board"):
        self.drawing = MapDrawing()
        self.drawing.add_class("rl-map")
        self.file = FileButton("Open a board file", self._open)
        self.answer, self.files = words(), words()
        fields = {name: _Kept(self.drawing, name) for name in ("typed", "photo")}
        self.keeping = Keeping(kept, fields)
        strip = self.keeping.strip
        super().__init__(self.drawing, self.answer, self.files, self.file, strip)
        self.drawing.observe(self._judge, ["typed", "photo"])
        self._judge()

    def _judge(self, _change=None) -> None:
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


def board_map(kept: str = "my board") -> BoardMap:
    """The panel in which a learner maps the capacitors of their own board.

    kept: the name under which the map is kept, "" to keep nothing.
    """
    return BoardMap(kept)


def map_html(board: Board) -> str:
    """What the map holds, and what it does not know."""
    unknown = plus_not_known(board)
    count = counted(len(board), "capacitor")
    says = [f"Each plus is {board.positions[0].where_plus.partition(', ')[2]}."]
    if not unknown:
        return told("right", f"{count} on the map of {board.name}, each plus looked at", says)
    says.insert(0, "Look at each on the board, or at the old part, before you take it out.")
    return told("partly right", f"{count} on the map; plus not known: {', '.join(unknown)}", says)


def files_html(board: Board, photo: str, typed: dict[str, Any]) -> str:
    """Links that save the map on paper, from both sides, and as a board file."""
    sheet = map_sheet(board, photo, typed)
    paper = saved_link("map-of-my-board.html", "text/html", sheet, "Save the map to print")
    table = saved_link("my-board.csv", "text/csv", "\ufeff" + board_csv(board), "Save board file")
    return f'<p class="rl-links">{paper}{table}</p>'
