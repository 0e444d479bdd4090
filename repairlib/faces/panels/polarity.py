"""Polarity check: say what you see on the part and on the board; see the verdict and why.

The panel is a thin view. The verdict comes from `repairlib.polarity`, the picture from
`repairlib.show`, the cautions from `repairlib.core.safety`.
"""

from __future__ import annotations

from html import escape

import ipywidgets as widgets

from repairlib.core.safety import caution
from repairlib.core.sources import source
from repairlib.core.verdicts import CANNOT_TELL
from repairlib.faces.panels.look import Panel, picture_html, told, words
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
    "right": ("right", "Right"),
    "reversed": ("unsafe", "Reversed: do not fit it like this"),
    CANNOT_TELL: ("cannot read", "Cannot tell"),
}
WIDE = widgets.Layout(width="30rem", max_width="100%")
LABELS = {"description_width": "9rem"}


class PolarityCheck(Panel):
    """The panel's parts: a field for each choice, then `answer`, `picture` and `cautions`.

    >>> check = PolarityCheck()
    >>> check.fitted.value = "part's mark at the board's mark"
    >>> "Reversed" in check.answer.value
    True
    """

    def __init__(self, family: str = "aluminium radial"):
        self.family = _dropdown("The part is", tuple(families()), family)
        self.part_mark = _dropdown("On the part", _seen_on(family))
        self.board_mark = _dropdown("On the board", tuple(board_marks()))
        self.fitted = _dropdown("How I fit it", FITTED, NOT_DECIDED)
        self.also_on_part = _dropdown("Also on the part", (NOTHING_ELSE, *_seen_on(family)))
        self.also_on_part_at = _dropdown("at the", ENDS, ENDS[-1])
        self.also_on_board = _dropdown("Also on the board", (NOTHING_ELSE, *board_marks()))
        self.also_on_board_at = _dropdown("at the", ENDS, ENDS[-1])
        self.picture = words()
        self.answer = words()
        self.cautions = words()
        second = (
            *(self.also_on_part, self.also_on_part_at),
            *(self.also_on_board, self.also_on_board_at),
        )
        first = (self.family, self.part_mark, self.board_mark, self.fitted)
        more = widgets.Accordion([widgets.VBox(second)], titles=("A second mark",))
        super().__init__(*first, more, self.answer, self.picture, self.cautions)
        self.family.observe(self._offer_its_marks, "value")
        for field in (*first, *second):
            field.observe(self._update, "value")
        self._update()

    def _offer_its_marks(self, change=None) -> None:
        seen = _seen_on(self.family.value)
        self.part_mark.options = seen
        self.also_on_part.options = (NOTHING_ELSE, *seen)

    def _update(self, change=None) -> None:
        if None in (self.part_mark.value, self.also_on_part.value):
            return  # the marks of another family are just being put in
        second = {
            "also_on_part": self.also_on_part.value,
            "also_on_part_at": self.also_on_part_at.value,
            "also_on_board": self.also_on_board.value,
            "also_on_board_at": self.also_on_board_at.value,
        }
        family, mark, board = self.family.value, self.part_mark.value, self.board_mark.value
        finding = check_polarity(family, mark, board, self.fitted.value, **second)
        self.answer.value = verdict_html(finding, self.fitted.value)
        self.cautions.value = cautions_html(finding)
        rule = marks_of(family).get(mark)
        if rule is None:
            self.picture.value = "<p>No drawing: the mark on the part is not known.</p>"
            return
        fitted = "" if self.fitted.value == NOT_DECIDED else self.fitted.value
        self.picture.value = picture_html(draw_polarity(rule.id, board, fitted, **second))


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
        headline = "Not fitted yet"
    says = [
        finding.reason,
        *finding.notes,
        f"If it goes in wrong: {finding.if_wrong}",
        f"Look also {finding.look_at}.",
    ]
    return told(state, headline, says)


def cautions_html(finding) -> str:
    """The cautions that go with this work, and where the rules are written."""
    titles = "<br>".join(f"Source: {escape(str(source(key)))}" for key in finding.sources)
    return (
        f'<div class="rl-soft">{titles}</div>'
        f"<details open><summary>Cautions</summary>{caution(*finding.cautions)._repr_html_()}"
        "</details>"
    )


def _seen_on(family: str) -> tuple[str, ...]:
    return (*marks_of(family), NOTHING_SEEN, SOMETHING_ELSE)


def _dropdown(label: str, options: tuple[str, ...], value: str | None = None) -> widgets.Dropdown:
    value = options[0] if value is None else value
    return widgets.Dropdown(
        options=options, value=value, description=label, layout=WIDE, style=LABELS
    )
