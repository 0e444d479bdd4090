"""What is shown for a polarity check: the verdict and why, the part drawn at its place, cautions.

The notebook's panel and the page show this. The verdict comes from `repairlib.polarity`, the
picture from `repairlib.show`.
"""

from __future__ import annotations

from repairlib.core.html import fold, listed, paragraphs, picture, told
from repairlib.core.safety import caution
from repairlib.core.sources import source
from repairlib.core.verdicts import CANNOT_TELL, REVERSED, RIGHT
from repairlib.polarity import (
    NOT_DECIDED,
    NOTHING_SEEN,
    OPPOSITE,
    SOMETHING_ELSE,
    check_polarity,
    marks_of,
)
from repairlib.show import draw_polarity

HEADLINES = {
    RIGHT: ("right", "Right"),
    REVERSED: ("unsafe", "Reversed: do not fit it like this"),
    CANNOT_TELL: ("cannot read", "Cannot tell"),
}


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


def seen_on(family: str) -> tuple[str, ...]:
    """What may be seen on a part of this family, and that nothing or something else is."""
    return (*marks_of(family), NOTHING_SEEN, SOMETHING_ELSE)
