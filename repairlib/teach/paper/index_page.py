"""The page that lists all paper of a group, what to print for whom and how often."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from repairlib.core.html import Html, paragraphs, row, table, text
from repairlib.learn.group import Group
from repairlib.show.sheets.sheet_pieces import page
from repairlib.teach.paper.printing import Printed
from repairlib.teach.paper.style import PAPER_STYLE

ROOMS = {
    "hand-outs": "Hand-outs: one for each learner",
    "questions": "Questions: each sheet has its name on it; print once",
    "bench": "For the bench",
    "instructor": "Instructor only",
}


def index_page(
    group: Group, printed: Sequence[Printed], size: str, notes: Iterable[str] = ()
) -> str:
    """The page as HTML: the files by whom they are for, with links."""
    parts = [
        f"<h1>Paper: {text(group.name)}</h1>",
        f"<p>{len(group.members)} learners, {len(group.lessons)} lessons, for {size} paper.</p>",
        paragraphs(notes),
    ]
    head = row(("", "pages", "to print", "to look at"), tag="th")
    for room, title in ROOMS.items():
        rows = [_row(one) for one in printed if one.place.startswith(f"{room}/")]
        parts.append(f"<h2>{text(title)}</h2>{table(rows, head)}")
    readings = '<a href="bench/readings.csv">readings.csv</a>'
    parts.append(f"<p>Readings from paper are typed into {readings}; plan --measured reads it.</p>")
    return page(f"Paper: {group.name}", parts, f"Paper · {group.name}", PAPER_STYLE)


def _row(one: Printed) -> Html:
    pdf = Html(f'<a href="{text(one.place)}.pdf">PDF</a>') if one.pages else "–"
    html = Html(f'<a href="{text(one.place)}.html">HTML</a>')
    return row((one.title, one.pages or "–", pdf, html))
