"""Polarity check: say what you see on the part and on the board; see the verdict and why.

The panel is a thin view: what it shows is made in `repairlib.faces.shown`.
"""

from __future__ import annotations

import ipywidgets as widgets

from repairlib.faces.panels.fields import FieldPanel, Fields
from repairlib.faces.shown.polarity import checked, seen_on
from repairlib.polarity import ENDS, FITTED, NOT_DECIDED, NOTHING_ELSE, board_marks, families

SIZE = Fields("9rem", "30rem")


class PolarityCheck(FieldPanel):
    """The panel's parts: a field for each choice, then `answer`, `picture` and `cautions`.

    >>> check = PolarityCheck()
    >>> check.fitted.value = "part's mark at the board's mark"
    >>> "Reversed" in check.answer.value
    True
    """

    def __init__(self, family: str = "aluminium radial", kept: str = "polarity"):
        seen, on_board = seen_on(family), tuple(board_marks())
        first = {
            "family": SIZE.choice("The part is", tuple(families()), family),
            "part_mark": SIZE.choice("On the part", seen),
            "board_mark": SIZE.choice("On the board", on_board),
            "fitted": SIZE.choice("How I fit it", FITTED, NOT_DECIDED),
        }
        second = {
            "also_on_part": SIZE.choice("Also on the part", (NOTHING_ELSE, *seen)),
            "also_on_part_at": SIZE.choice("at the", ENDS, ENDS[-1]),
            "also_on_board": SIZE.choice("Also on the board", (NOTHING_ELSE, *on_board)),
            "also_on_board_at": SIZE.choice("at the", ENDS, ENDS[-1]),
        }
        # Before the panel looks: the marks of another family are put in first.
        first["family"].observe(self._offer_its_marks, "value")
        super().__init__(first | second, checked, ("answer", "picture", "cautions"), kept=kept)
        more = widgets.Accordion([widgets.VBox(tuple(second.values()))], titles=("A second mark",))
        self.children = (
            self.children[0],
            *first.values(),
            more,
            self.keeping.strip,
            *self.shown.values(),
        )

    def _offer_its_marks(self, _change=None) -> None:
        seen = seen_on(self.fields["family"].value)
        self.fields["part_mark"].options = seen
        self.fields["also_on_part"].options = (NOTHING_ELSE, *seen)


def polarity_check(family: str = "aluminium radial") -> PolarityCheck:
    """The polarity panel, ready to be shown.

    family: the kind of part chosen at first, a name from `repairlib.polarity.families()`.
    """
    return PolarityCheck(family)
