"""A whole page shown inside a lesson, such as the room view of a group."""

from __future__ import annotations

from pathlib import Path

from repairlib.core.html import Html, text
from repairlib.faces.panels.look import Panel, words
from repairlib.learn.files import saying_why


def page_view(path: str | Path, title: str) -> Panel:
    """The page in a file, in a frame of its own. Raises RepairlibError when it cannot be read.

    Nothing in the page reaches the lesson around it.
    """
    with saying_why(Path(path)):
        page = Path(path).read_text(encoding="utf-8")
    frame = (
        f'<iframe sandbox title="{text(title)}" srcdoc="{text(page)}" '
        'style="width:100%;height:46rem;border:1px solid #888;background:#fff"></iframe>'
    )
    return Panel(words(Html(frame)))
