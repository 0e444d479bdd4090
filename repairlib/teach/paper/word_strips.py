"""A strip for each member to cut off: the name, and the short word to type in its place."""

from __future__ import annotations

from repairlib.core.html import Html, row, table, text
from repairlib.learn.group import Group, Member
from repairlib.teach.paper.printing import Sheet
from repairlib.teach.paper.style import STRIPS_STYLE

TITLE = "Words to type, to cut apart"
USE = "Type it where an exercise asks for your word. It is no password."


def word_strips(group: Group) -> Sheet:
    """Two strips in a row, in the order of the list."""
    strips = [_strip(one, group) for one in group.members]
    pairs = (strips[place : place + 2] for place in range(0, len(strips), 2))
    parts = (f"<h1>{text(TITLE)}</h1>", str(table(map(row, pairs))))
    return Sheet(TITLE, f"{TITLE} · {group.name}", parts, STRIPS_STYLE)


def _strip(member: Member, group: Group) -> Html:
    return Html(
        f"<p>{text(member.name)}<small>{text(group.name)}</small></p>"
        f'<p class="word">{text(member.word)}</p><p><small>{text(USE)}</small></p>'
    )
