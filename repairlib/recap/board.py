"""A board as a technician measures it: where each capacitor sits, and what fits there.

Covers reading its positions from a saved table. Which part goes there is the planner's business.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path

from repairlib.core.errors import RepairlibError
from repairlib.core.typed.headed import read_headed
from repairlib.core.typed.table import with_point
from repairlib.core.typed.textfile import read_text
from repairlib.recap.board_side import check_seen_from, spoken
from repairlib.recap.other_parts import read_others

DIRECTIONS = ("up", "down", "left", "right", "none", "")
FORMS = ("radial", "axial", "")
_COLUMNS = (
    "reference",
    "area",
    "x_mm",
    "y_mm",
    "form",
    "lead_spacing_mm",
    "max_diameter_mm",
    "max_height_mm",
    "plus",
    "seen_from",
)


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


def read_board(path, others=None) -> Board:
    """The board of a table with the headings of `_COLUMNS`; only `reference` must be there.

    `others` is a table of what else is on the board (see other_parts), to find one's way on its
    picture. Lengths are in mm; a `seen_from` that stands in any line holds for all.
    Raises RepairlibError for a file that is not such a table, for a place
    listed twice, for a length that is not a number above 0, for an unknown direction, and for
    lines that are seen from different sides.
    """
    path = Path(path)
    table = read_headed(read_text(path), path.name, _COLUMNS, ("reference",))
    positions: dict[str, Position] = {}
    for row in table.rows_below():
        where = f"{path.name} line {row.line}"
        if row.what:
            raise RepairlibError(where, row.why, "one place of the board on each line")
        position = _position(table.by_heading(row, _COLUMNS), where)
        if position.reference in positions:
            raise RepairlibError(position.reference, "listed twice on the board", "each place once")
        positions[position.reference] = position
    name = path.stem.replace("-", " ")
    seen_from = _one_side([place.seen_from for place in positions.values()], path.name)
    places = [replace(one, seen_from=seen_from) for one in positions.values()]
    return Board(name, places, read_others(others) if others else ())


def _one_side(stated: list[str], name: str) -> str:
    """The side from which all lines are seen; "" where none states one."""
    sides = [side for side in dict.fromkeys(stated) if side]
    if len(sides) > 1:
        wrong = f"two sides on one board, beside '{sides[0]}' ({name})"
        raise RepairlibError(sides[1], wrong, "one side and one edge for all its places")
    return sides[0] if sides else ""


def _position(cells: dict[str, str], where: str) -> Position:
    if not cells["reference"]:
        raise RepairlibError(where, "no reference", "a reference such as C5 in each line")
    _one_of(cells["plus"], DIRECTIONS, where)
    _one_of(cells["form"], FORMS, where)
    return Position(
        cells["reference"].upper(),
        cells["area"],
        _length(cells["x_mm"], where) or 0.0,
        _length(cells["y_mm"], where) or 0.0,
        cells["form"],
        _length(cells["lead_spacing_mm"], where),
        _length(cells["max_diameter_mm"], where),
        _length(cells["max_height_mm"], where),
        cells["plus"],
        check_seen_from(" ".join(cells["seen_from"].split()), where),
    )


def _one_of(text: str, accepted: tuple[str, ...], where: str) -> None:
    if text not in accepted:
        wrong = f"not a word known here ({where})"
        raise RepairlibError(text, wrong, ", ".join(accepted[:-1]) + " or nothing")


def _length(text: str, where: str) -> float | None:
    if not text:
        return None
    wrong = "not a length in mm"
    try:
        length = float(with_point(text))
    except RepairlibError as problem:
        length, wrong = -1.0, problem.wrong
    except ValueError:
        length = -1.0
    if not 0 <= length < 10_000:
        raise RepairlibError(text, f"{wrong} ({where})", "a number from 0, or nothing")
    return length
