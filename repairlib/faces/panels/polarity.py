"""Polarity check: say what you see on the part and on the board; see the verdict and why.

The panel is a thin view. The verdict comes from `repairlib.polarity`, the picture from
`repairlib.show`, the cautions from `repairlib.core.safety`.
"""

from __future__ import annotations

import ipywidgets as widgets

from repairlib.core.html import fold, listed, paragraphs, picture, told
from repairlib.core.safety import caution
from repairlib.core.sources import source
from repairlib.core.verdicts import CANNOT_TELL, REVERSED, RIGHT
from repairlib.faces.panels.fields import FieldPanel, Fields
from repairlib.polarity import (
    ENDS,
    FITTED,
    NOT_DECIDED,
    NOTHING_ELSE,
    NOTHING_SEEN,
    OPPOSITE,
    SOMETHING_ELSE,
    board_marks,
    check_polarity,
    families,
    marks_of,
)
from repairlib.show import draw_polarity

HEADLINES = {
    RIGHT: ("right", "Right"),
    REVERSED: ("unsafe", "Reversed: do not fit it like this"),
    CANNOT_TELL: ("cannot read", "Cannot tell"),
}
SIZE = Fields("9rem", "30rem")


class PolarityCheck(FieldPanel):
    """The panel's parts: a field for each choice, then `answer`, `picture` and `cautions`.

    >>> check = PolarityCheck()
    >>> check.fitted.value = "part's mark at the board's mark"
    >>> "Reversed" in check.answer.value
    True
    """

    def __init__(self, family: str = "aluminium radial", kept: str = "polarity"):
        seen, on_board = _seen_on(family), tuple(board_marks())
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
        seen = _seen_on(self.fields["family"].value)
        self.fields["part_mark"].options = seen
        self.fields["also_on_part"].options = (NOTHING_ELSE, *seen)


def checked(
    family: str, part_mark: str, board_mark: str, fitted: str, **second: str
) -> tuple[str, str, str]:
    """The verdict, the drawing and the cautions, as HTML."""
    finding = check_polarity(family, part_mark, board_mark, fitted, **second)
    drawn = paragraphs(["No drawing: the mark on the part is not known."])
    rule = marks_of(family).get(part_mark)
    if rule is not None:
        way = "" if fitted == NOT_DECIDED else fitted
        drawn = picture(draw_polarity(rule.id, board_mark, way, **second))
    return verdict_html(finding, fitted), drawn, cautions_html(finding)


def polarity_check(family: str = "aluminium radial") -> PolarityCheck:
    """The polarity panel, ready to be shown.

    family: the kind of part chosen at first, a name from `repairlib.polarity.families()`.
    """
    return PolarityCheck(family)


def verdict_html(finding, fitted: str) -> str:
    """The verdict, why, what happens if it goes in wrong, and where else to look."""
    state, headline = HEADLINES[finding.verdict]
    both_known = {finding.part_shows, finding.board_shows} <= set(OPPOSITE)
    if fitted == NOT_DECIDED and both_known:
        headline = "Not fitted yet: this is how it goes in"
    says = [
        finding.reason,
        *finding.notes,
        f"If it goes in wrong: {finding.if_wrong}",
        f"Look also {finding.look_at}.",
    ]
    return told(state, headline, says)


def cautions_html(finding) -> str:
    """The cautions that go with this work, and where the rules are written."""
    written = fold("Where this is written", listed(source(key) for key in finding.sources))
    return caution(*finding.cautions).short() + written


def _seen_on(family: str) -> tuple[str, ...]:
    return (*marks_of(family), NOTHING_SEEN, SOMETHING_ELSE)
