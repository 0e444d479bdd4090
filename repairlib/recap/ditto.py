"""Ditto marks of a parts list: `"`, `do.`, `dto.`, `id.`, `-"-`: as on the line above.

A mark fills a cell of its own, or stands among the words of a line without columns. It is read only
where it is clear what stands above it; else it stays, and holds the line.
"""

from __future__ import annotations

from repairlib.core.errors import RepairlibError
from repairlib.core.typed.references import read_references
from repairlib.recap.words import DITTO, DITTO_BEGINS


def without_dittos(
    cells: list[str], at: int, above: tuple[int, list[str]] | None, groups: bool = False
) -> tuple[list[str], str]:
    """The cells of a row with the cells above in place of ditto marks, and what to look at.

    The references stand in the cell `at`; `above` is the line and the cells of the part above,
    None where the line above is no capacitor. A row of a mark alone is the whole row above.
    An empty cell beside a mark is as above too: a bipolar part would else lose its kind. `groups`
    says that the list counts in groups (see read_references).

    >>> without_dittos(["C2", '"', "25"], 0, (4, ["C1", "10uF", "16"]))
    (['C2', '10uF', '25'], 'ditto mark: as on line 4')
    >>> without_dittos(["C2", "do."], 0, (4, ["C1", "10uF", "16"]))[0]
    ['C2', '10uF', '16']
    >>> without_dittos(['C2 do.'], 0, (4, ["C1 10uF 16V NP"]))[0]
    ['C2 10uF 16V NP']
    """
    marked = [
        place
        for place, cell in enumerate(cells)
        if cell[:1] in DITTO_BEGINS and place != at and DITTO.fullmatch(cell)
    ]
    if marked:
        if above is None:
            return cells, ""
        line, filled = above
        others = [cell for place, cell in enumerate(cells) if place != at and cell]
        if len(cells) < len(filled) and len(others) == 1:
            return [*filled[:at], cells[at], *filled[at + 1 :]], f"ditto mark: as on line {line}"
        if len(filled) != len(cells):
            return cells, ""
        cells = [
            filled[place] if place != at and (place in marked or not cell) else cell
            for place, cell in enumerate(cells)
        ]
        return cells, f"ditto mark: as on line {line}"
    if len(cells) == 1 and above is not None and len(above[1]) == 1:
        return _in_words(cells[0], above, groups)
    return cells, ""


def _in_words(cell: str, above: tuple[int, list[str]], groups: bool) -> tuple[list[str], str]:
    """The same for a line of words, where the marks stand among them."""
    line, (filled,) = above
    own, former = _rest(cell, groups), _rest(filled, groups)
    words, earlier = own.split(), former.split()
    marked = [place for place, word in enumerate(words) if DITTO.fullmatch(word)]
    if not marked:
        return [cell], ""
    if len(words) == 1:
        words = earlier
    elif len(words) == len(earlier):
        words = [earlier[place] if place in marked else word for place, word in enumerate(words)]
    else:
        return [cell], ""
    references = cell[: len(cell) - len(own)].rstrip()
    return [f"{references} {' '.join(words)}"], f"ditto mark: as on line {line}"


def _rest(cell: str, groups: bool) -> str:
    """What stands behind the references of a line; nothing where they cannot be counted."""
    try:
        found = read_references(cell, groups)
    except RepairlibError:
        return ""
    return found.rest if found and cell.endswith(found.rest) else ""
