"""The hazard sheet: every caution of the group's lessons, and a line for each member to sign."""

from __future__ import annotations

from repairlib.core.html import row, table, text
from repairlib.learn.group import Group
from repairlib.show.sheets.sheet_pieces import caution_in_full
from repairlib.teach.paper.lesson_pieces import hazards_of
from repairlib.teach.paper.printing import Sheet
from repairlib.teach.paper.style import AGENDA_STYLE

SAID = (
    "I have read these cautions and asked about what I did not understand. Local rules, the rules "
    "of this room and a qualified person come first."
)


def hazards_of_group(group: Group) -> list[str]:
    """The hazards that the lessons of a group warn of, each once."""
    named = (key for lesson in group.lessons for key in hazards_of(lesson, group))
    return list(dict.fromkeys(named))


def hazard_sheet(group: Group) -> Sheet:
    """All cautions in full, and a table to sign."""
    cautions = "".join(map(caution_in_full, hazards_of_group(group)))
    rows = [row((member.name, member.word, "", "")) for member in group.members]
    head = row(("name", "word", "date", "signature"), tag="th")
    parts = (
        f"<h1>Hazards at the bench: {text(group.name)}</h1>{cautions}",
        f'<h2>Signed</h2><p>{text(SAID)}</p><div class="signed">{table(rows, head)}</div>',
    )
    return Sheet("Hazard sheet", f"Hazard sheet · {group.name}", parts, AGENDA_STYLE)
