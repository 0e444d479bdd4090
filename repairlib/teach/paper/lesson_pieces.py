"""A lesson taken apart for paper: its cells under their headings, without code.

A panel, which lives on a screen only, becomes one line that says what to do at the computer.
"""

from __future__ import annotations

import ast
import json
import re
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.core.html import Html, text
from repairlib.learn.group import Group
from repairlib.learn.notebooks import notebook_of
from repairlib.show.sheets.sheet_pieces import caution_in_full
from repairlib.teach.paper.stored import ONE_ROW, for_paper

CAUTIONS = "Cautions"
_LIVE = "nbval-ignore-output"  # the tag of a cell whose output is a panel
_HEADING = re.compile(r"^(##|###) (.+)$", re.MULTILINE)
_LINK = re.compile(r"(?<!!)\[([^\]]*)\]\([^)]*\)")


class Piece(NamedTuple):
    """One cell for paper: the heading and the smaller heading it stands under, and its HTML.

    `warns` is True for a piece with a caution, or one that stands under *Cautions*: it is never
    left out. `prose` are its words as written, "" for what the lesson shows.
    """

    section: str
    part: str
    html: Html
    warns: bool = False
    prose: str = ""


def pieces_of(lesson: str, group: Group | None = None) -> list[Piece]:
    """The cells of a lesson for paper, in their order; own lessons are those of the group.

    Raises RepairlibError without mistune.
    """
    cells = json.loads(notebook_of(lesson, group))["cells"]
    found, section, part = [], "", ""
    for cell in cells:
        source = "".join(cell["source"])
        if cell["cell_type"] == "markdown":
            for depth, title in _HEADING.findall(source):
                section, part = (title, "") if depth == "##" else (section, title)
            warns = section == CAUTIONS or "**A wrong" in source
            found.append(Piece(section, part, _prose(source), warns, source))
        elif keys := _hazards(source):
            cautions = "".join(map(caution_in_full, keys))
            found.append(Piece(section, part, Html(cautions), True))
        else:
            found += [Piece(section, part, one) for one in _shown(cell, source)]
    return found


def _hazards(source: str) -> list[str]:
    """The hazards that a cell of code names: `caution("mains", "lead")`."""
    calls = (node for node in ast.walk(ast.parse(source)) if isinstance(node, ast.Call))
    return [
        ast.literal_eval(given)
        for call in calls
        if isinstance(call.func, ast.Name) and call.func.id == "caution"
        for given in call.args
    ]


def hazards_of(lesson: str, group: Group | None = None) -> list[str]:
    """The hazards that a lesson warns of, each once, in the order in which they come up.

    >>> hazards_of("00-start-here")[:2]
    ['mains', 'stored charge']
    """
    cells = json.loads(notebook_of(lesson, group))["cells"]
    code = ("".join(one["source"]) for one in cells if one["cell_type"] == "code")
    return list(dict.fromkeys(key for source in code for key in _hazards(source)))


def _shown(cell: dict, source: str) -> list[Html]:
    """What a cell of code shows: a drawing or a table, printed lines, or a panel in words."""
    if _LIVE in cell["metadata"].get("tags", ()):
        panel = source.strip().splitlines()[-1].partition("(")[0].replace("_", " ")
        return [
            Html(
                f'<p class="at-the-computer">At the computer: the panel <i>{text(panel)}</i> '
                "stands in this place of the lesson.</p>"
            )
        ]
    shown = []
    for one in cell["outputs"]:
        if "text/html" in one.get("data", {}):
            made = for_paper("".join(one["data"]["text/html"]))
            looks = "shown whole" if made.startswith(ONE_ROW) else "shown"
            shown.append(Html(f'<div class="{looks}">{made}</div>'))
        elif one["output_type"] == "stream":
            shown.append(Html(f"<pre>{text(''.join(one['text']))}</pre>"))
    return shown


def _prose(source: str) -> Html:
    """The words of a cell as HTML; of a link its words stay."""
    try:
        import mistune
    except ImportError:
        wrong = "hand-outs are made of the lessons by mistune, which is not installed"
        raise RepairlibError("mistune", wrong, "pip install 'repairlib[class]'") from None
    unlinked = _LINK.sub(r"\1", source)
    return Html(mistune.create_markdown(escape=False, plugins=["table"])(unlinked))
