"""The notebook of an own lesson, in the order of headings that all lessons have.

What an instructor typed stands in it as text and nothing else: signs that a notebook would take for
commands of its own are written so that they are shown as they are. Cautions and drawings stand in
it before it is run, as in the lessons of the workbook.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Iterator
from typing import Any

from repairlib.core.safety import caution
from repairlib.learn.own.drawn import DrawnPart
from repairlib.learn.own.lesson import OwnLesson

HIDDEN = {"source_hidden": True}
LIVE = ["nbval-ignore-output"]
_PLAIN = set(" ,;:?'\"()/%=.")  # beside letters and digits; all else has a stroke before it
# What begins a formula, whatever is put before it: so it is shown as a mark on a part is. Two @
# keep the place of a formula in JupyterLab.
_FORMULA = re.compile(r"(\\+|\$+|(?<=@)@)")
_COMMANDS = re.compile(r"^(?=\s*[0-9]{1,9}[.)])(\s*[0-9]+)|(https?|ftp)(?=://)|(www)(?=\.)", re.I)
IMPORTS = """\
from repairlib import caution
from repairlib.faces.panels import answer_form, practice, quick_check
from repairlib.learn import open_exercise, warm_up
from repairlib.show import draw_part"""
GRADED = """\
## Graded exercise

Your answers are saved while you type. Change them as often as you like.
An answer that could hurt someone is told at once and gets no points."""


def own_notebook(lesson: OwnLesson) -> bytes:
    """The file of the notebook."""
    cells = [_cell(f"own-{place:03}", **one) for place, one in enumerate(_cells(lesson))]
    metadata = {
        "kernelspec": {"display_name": "Python 3", "language": "python", "name": "python3"},
        "language_info": {"name": "python"},
        "repairlib": {"lesson": lesson.name},
    }
    content = {"cells": cells, "metadata": metadata, "nbformat": 4, "nbformat_minor": 5}
    return (json.dumps(content, indent=1, ensure_ascii=False) + "\n").encode("utf-8")


def _cells(lesson: OwnLesson) -> Iterator[dict[str, Any]]:
    """The cells in their order, each with its text, and code with its tags."""
    takes = f"\n\n*About {lesson.minutes} minutes.*" if lesson.minutes else ""
    yield _words(f"# {as_shown(lesson.title)}{takes}")
    yield _code(IMPORTS)
    yield _words("## Try it\n\nType what is printed on a part in your hand.")
    yield _code(f"quick_check({_first_marking(lesson)!r})", LIVE)
    yield from _section("What you will be able to do", _points(lesson.goals))
    yield from _section("Time, parts and tools", _points(lesson.tools))
    if hazards := lesson.hazards():
        yield _words("## Cautions\n\nThis work can hurt you. These count here.")
        yield _code(f"caution({', '.join(map(repr, hazards))})", shows=caution(*hazards))
    yield from _shown("The idea", lesson.idea)
    yield from _shown("Worked example", lesson.example)
    if any(not one.graded for one in lesson.asked):
        yield _words("## Practice\n\nNot saved, not marked, told at once.")
        yield _code(f"practice(warm_up({lesson.name!r}))", LIVE)
    yield _words(GRADED)
    yield _code(f"ex = open_exercise({lesson.name!r})")
    yield _code("answer_form(ex)", [*LIVE, "answers"])
    yield _code("print(ex.sheet())", ["grading"], {**HIDDEN, "outputs_hidden": True})
    further = [*map(as_shown, lesson.further), "[The map of all lessons](README.md)"]
    yield from _section("Going further", [f"- {one}" for one in further], "\n")
    yield from _sources(lesson)


def _first_marking(lesson: OwnLesson) -> str:
    """What is printed on the first part that the lesson draws, on one line."""
    drawn = (one for one in (*lesson.idea, *lesson.example) if isinstance(one, DrawnPart))
    marking = next((one.marking for one in drawn if one.marking), "104K")
    return " ".join(marking.split())


def _sources(lesson: OwnLesson) -> Iterator[dict[str, Any]]:
    yield _words("## Sources") | {"metadata": {"jp-MarkdownHeadingCollapsed": True}}
    own = "- This lesson was written by the instructor of the group; its figures are theirs."
    yield _words("\n".join([*_points(lesson.sources), own]))


def _section(title: str, texts: Iterable[str], between: str = "\n\n") -> Iterator[dict[str, Any]]:
    texts = list(texts)
    if texts:
        yield _words(f"## {title}\n\n{between.join(texts)}")


def _shown(title: str, pieces: Iterable[str | DrawnPart]) -> Iterator[dict[str, Any]]:
    """A section of paragraphs and drawn parts."""
    pieces = list(pieces)
    if pieces:
        yield _words(f"## {title}")
    for piece in pieces:
        if isinstance(piece, str):
            yield _words(as_shown(piece))
        else:
            state = f", state={piece.state!r}" if piece.state else ""
            drawn = piece.labelled()
            yield _code(f"draw_part({piece.body!r}, {piece.marking!r}{state})", shows=drawn)


def _points(texts: Iterable[str]) -> list[str]:
    return ["\n".join(f"- {as_shown(one)}" for one in texts)] if texts else []


def as_shown(words: str) -> str:
    """Text for a notebook that is shown as it was typed; `marks` stand out.

    >>> print(as_shown("<b> costs 5 $, marked `104`."))
    \\<b\\> costs 5 `$`, marked `104`.
    """
    pieces = words.split("`")
    if len(pieces) % 2 == 0:  # one mark stands alone
        pieces[-2:] = ["`".join(pieces[-2:])]
    shown = ""
    for place, piece in enumerate(pieces):
        shown = _joined(shown, _marked(piece) if place % 2 else _plain(piece))
    return _COMMANDS.sub(lambda found: f"{found[0]}\\", shown)  # they begin a list or a link


def _joined(shown: str, more: str) -> str:
    """Two pieces one behind the other; two that stand out would be one without a space."""
    return f"{shown} {more}" if shown.endswith("`") and more.startswith("`") else shown + more


def _marked(words: str) -> str:
    """What stands between two marks, as code; nothing, or with spaces at an end, as typed."""
    code = words and words == words.strip() and "@@" not in words
    return f"`{words}`" if code else _plain(f"`{words}`")


def _plain(words: str) -> str:
    """Words in which no sign is a command."""
    shown = ""
    for place, piece in enumerate(_FORMULA.split(words.replace("\t", " "))):
        shown = _joined(shown, f"`{piece}`" if place % 2 else "".join(map(_sign, piece)))
    return shown


def _sign(sign: str) -> str:
    return sign if sign.isalnum() or sign in _PLAIN or sign > "\x7f" else f"\\{sign}"


def _words(text: str) -> dict[str, Any]:
    return {"text": text, "metadata": {}}


def _code(
    text: str,
    tags: Iterable[str] = (),
    jupyter: dict[str, bool] | None = None,
    shows: Any = None,
) -> dict[str, Any]:
    tagged = {"tags": list(tags)} if tags else {}
    metadata = {"jupyter": jupyter or HIDDEN, **tagged}
    return {"text": text, "metadata": metadata, "code": True, "shows": shows}


def _cell(
    name: str, text: str, metadata: dict[str, Any], code: bool = False, shows: Any = None
) -> dict[str, Any]:
    cell: dict[str, Any] = {
        "cell_type": "code" if code else "markdown",
        "id": name,
        "metadata": metadata,
        "source": text.splitlines(keepends=True),
    }
    if not code:
        return cell
    return cell | {"execution_count": None, "outputs": [_output(shows)] if shows else []}


def _output(shown: Any) -> dict[str, Any]:
    """What a cell shows, as a notebook stores it."""
    data = {"text/html": [shown._repr_html_()], "text/plain": repr(shown).splitlines(keepends=True)}
    return {
        "output_type": "execute_result",
        "data": data,
        "execution_count": None,
        "metadata": {},
    }
