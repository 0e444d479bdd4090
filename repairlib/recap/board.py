"""A board as a technician measures it: where each capacitor sits, and what fits there.

Its file is read and written in board_file.py. Which part goes there is the planner's business.
"""

from __future__ import annotations

from dataclasses import dataclass

from repairlib.recap.board_side import spoken

DIRECTIONS = ("up", "down", "left", "right", "none", "")
FORMS = ("radial", "axial", "")


@dataclass(eq=False, slots=True)
class Position:
    """One place on the board. Lengths in mm, None where nobody measured.

    `plus` is the side of the part on which the board shows its plus: "up", "down", "left" or
    "right"; "none" where the board says that the part has no polarity; "" where the board shows
    nothing at all. x runs right, y runs down. `seen_from` is the side from which all that is seen
    and an edge, such as "component side, connector edge down"; "" where the board does not say.
    """

    reference: str
    area: str = ""
    x_mm: float = 0.0
    y_mm: float = 0.0
    form: str = ""
    spacing_mm: float | None = None
    max_diameter_mm: float | None = None
    max_height_mm: float | None = None
    plus: str = ""
    seen_from: str = ""

    @property
    def where_plus(self) -> str:
        """Where the plus is, and from which side that is seen.

        >>> Position("C1", plus="left").where_plus
        'plus left, as the board file has it, side not stated'
        """
        return f"plus {self.plus}, {spoken(self.seen_from)}"

    def __repr__(self) -> str:
        return f"Position({self.reference!r}, {self.area!r}, {self.x_mm:g}, {self.y_mm:g})"


class Board:
    """A named board and its positions, in the order in which they were listed.

    `areas` is the order of the areas as listed; `board["C5"]` is a Position, `board.get("C99")`
    is None when the board has no such place. `seen_from` is that of its places (see Position),
    `others` what else is on the board, as OtherParts.

    >>> board = Board("panel", [Position("C1", "supply", 10, 5, plus="left")])
    >>> board["C1"].plus, board.areas, board.get("C2")
    ('left', ('supply',), None)
    """

    def __init__(self, name: str, positions, others=()):
        self.name = name
        self.positions = tuple(positions)
        self.others = tuple(others)
        self.areas = tuple(dict.fromkeys(position.area for position in self.positions))
        self.seen_from = self.positions[0].seen_from if self.positions else ""
        self._by_reference = {position.reference: position for position in self.positions}

    def __getitem__(self, reference: str) -> Position:
        return self._by_reference[reference]

    def get(self, reference: str) -> Position | None:
        return self._by_reference.get(reference)

    def __contains__(self, reference: str) -> bool:
        return reference in self._by_reference

    def __len__(self) -> int:
        return len(self.positions)
