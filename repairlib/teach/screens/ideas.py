"""A lesson taken apart into ideas to show one after the other: prose, drawings, questions.

What a panel does at the computer cannot be shown on paper or on a wall: its place is named. The
graded exercise is left out: its questions are each learner's own. In its place stand the questions
to practise on, which the room answers together.
"""

from __future__ import annotations

import json
import re
from base64 import b64decode
from collections.abc import Iterator
from typing import NamedTuple

from repairlib.core.html import Html, escape, picture, prose, text
from repairlib.learn.exercise import module_of, warm_up
from repairlib.learn.in_words import choices_in_words
from repairlib.learn.learner import DEMO
from repairlib.learn.notebooks import notebook_of
from repairlib.learn.question import Question

LEFT_OUT = ("Graded exercise", "Sources", "Going further")
PRACTICE = "Practice"
AT_THE_COMPUTER = "At the computer: use the panel of the lesson here."
PANEL = "nbval-ignore-output"  # the tag of a cell that shows a panel
_BEFORE_HEADINGS = re.compile(r"(?m)^(?=#+ )")
_HEADING = re.compile(r"(#+) (.+)")
_DRAWING = re.compile(r"<img [^>]*?src=\"data:image/svg\+xml;base64,([A-Za-z0-9+/=]+)\"[^>]*>")
_ROOT = re.compile(r"<svg[^>]*>")
_WIDTH, _HEIGHT = (re.compile(rf'\b{it}="([\d.]+)(pt|mm)?') for it in ("width", "height"))
_LETTERS = re.compile(r'font-size[=:]\s*"?([\d.]+)|font: ([\d.]+)px')
_IN_PIXELS = {"pt": 4 / 3, "mm": 96 / 25.4, None: 1.0}


class Idea(NamedTuple):
    """One idea: its heading, and what is shown below, each piece as HTML."""

    heading: str
    pieces: tuple[Html, ...]


def ideas_of(lesson: str) -> list[Idea]:
    """The ideas of a lesson in their order. Raises RepairlibError for a lesson that is not there.

    >>> ideas_of("04-polarity")[0].heading
    'Polarity'
    """
    module_of(lesson)
    cells = json.loads(notebook_of(lesson))["cells"]
    return [idea for idea in _ideas(lesson, cells) if idea.pieces]


def _ideas(lesson: str, cells: list[dict]) -> Iterator[Idea]:
    chapter = heading = ""
    pieces: list[Html] = []
    for kind, part in _parts(cells):
        found = _HEADING.match(part) if kind == "prose" else None
        if found:
            yield Idea(heading, tuple(pieces))
            heading, pieces = found[2], []
            chapter = found[2] if len(found[1]) < 3 else chapter
            part = part[found.end() :]
            if found[2] == PRACTICE:
                yield from map(ask_the_room, warm_up(lesson)(DEMO.draw("practice")))
        if chapter not in (*LEFT_OUT, PRACTICE):
            made = _read(part) if kind == "prose" else Html(part)
            pieces += [made] if made else []
    yield Idea(heading, tuple(pieces))


def _parts(cells: list[dict]) -> Iterator[tuple[str, str]]:
    """What a lesson holds: its prose, parted before each heading, and what its code shows."""
    for cell in cells:
        if cell["cell_type"] == "markdown":
            yield from (("prose", one) for one in _BEFORE_HEADINGS.split("".join(cell["source"])))
        else:
            yield "shown", _shown(cell)


def ask_the_room(question: Question) -> Idea:
    """A question to answer together: what can be chosen is hidden at first."""
    parts = [prose(question.prompt), Html(f'<div class="choices">{_choices(question)}</div>')]
    if question.picture:
        parts.append(drawings_sized(picture(question.picture())))
    return Idea("Ask the room", tuple(parts))


def _choices(question: Question) -> Html:
    """What can be chosen, put in order or filled in; of a number, how it is typed."""
    lines = choices_in_words(question) or [question.how()]
    return Html(f'<ul class="lettered">{"".join(f"<li>{text(one)}</li>" for one in lines)}</ul>')


def drawings_sized(html: str) -> Html:
    """Each drawing as a figure that says its size, and that of its smallest letters."""
    return Html(_DRAWING.sub(_sized, html))


def _sized(found: re.Match[str]) -> str:
    svg = b64decode(found[1]).decode("utf-8")
    root = _ROOT.search(svg)
    width, height = (it.search(root[0]) if root else None for it in (_WIDTH, _HEIGHT))
    if not (width and height):
        return found[0]
    pixel = _IN_PIXELS[width[2]]
    sizes = [float(one or other) for one, other in _LETTERS.findall(svg)]
    scale = pixel if width[2] != "mm" else 1.0
    letters = f' data-letters="{min(sizes) * scale:.1f}"' if sizes else ""
    wide, high = (float(one[1]) * pixel for one in (width, height))
    return f'<figure data-wide="{wide:.0f}" data-high="{high:.0f}"{letters}>{found[0]}</figure>'


def _read(markdown: str) -> Html:
    from mistune import create_markdown

    made = create_markdown(plugins=["table"])(markdown)
    return Html(re.sub(r'<a href="(?!https?:)[^"]*">(.*?)</a>', r"\1", str(made)).strip())


def _shown(cell: dict) -> Html:
    """What a cell of code shows: its drawings and tables, and a line in place of a panel."""
    if PANEL in cell["metadata"].get("tags", ()):
        return Html(f'<p class="panel">{AT_THE_COMPUTER}</p>')
    return Html("".join(_output(one) for one in cell["outputs"]))


def _output(output: dict) -> str:
    data = output.get("data", {})
    if "text/html" in data:
        return drawings_sized("".join(data["text/html"]))
    said = "".join(data.get("text/plain", output.get("text", "")))
    return f"<pre>{escape(said)}</pre>" if said else ""
