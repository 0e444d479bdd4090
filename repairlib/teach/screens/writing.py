"""The page for the projector: one file that needs nothing else, in any browser."""

from __future__ import annotations

from pathlib import Path

from repairlib.core.html import Html, text
from repairlib.learn.progress import number_of, stated
from repairlib.recap import write_whole
from repairlib.teach.screens.ideas import Idea, ideas_of

HERE = Path(__file__).parent
HOW = "→ next · ← back · O the choices of a question · Home, End · F the whole screen"


def write_screens(lesson: str, path: str | Path) -> str:
    """Write the page of a lesson; one line on how it is used.

    Raises RepairlibError for no lesson, and when the file is there or cannot be written.
    """
    made = write_whole(path, screens_page(lesson).encode("utf-8"), False)
    return f"Written: {made}. Open it in a browser. {HOW}"


def screens_page(lesson: str) -> str:
    """The whole page.

    >>> "<h1>Ask the room</h1>" in screens_page("04-polarity")
    True
    """
    title = f"{number_of(lesson)} {stated(lesson)[0]}"
    style, script = (
        (HERE / name).read_text(encoding="utf-8") for name in ("screens.css", "screens.js")
    )
    return (
        '<!DOCTYPE html>\n<html lang="en"><head><meta charset="utf-8">'
        '<meta name="viewport" content="width=device-width, initial-scale=1">'
        f"<title>{text(title)}</title><style>{style}</style></head>\n<body>\n<main>\n"
        + "\n".join(map(_section, ideas_of(lesson)))
        + f'\n</main>\n<footer><span>{text(title)}</span><span id="keys">{text(HOW)}</span>'
        '<span id="place" role="status"></span></footer>\n'
        f"<script>{script}</script>\n</body></html>\n"
    )


def _section(idea: Idea) -> Html:
    return Html(f"<section><h1>{text(idea.heading)}</h1>{''.join(idea.pieces)}</section>")
