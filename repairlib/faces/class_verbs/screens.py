"""A lesson for the projector: `class screens LESSON --out FILE.html`."""

from __future__ import annotations

from repairlib.core.errors import RepairlibError
from repairlib.learn import lessons_known


def show_on_screens(words: list[str], options: dict[str, str], as_json: bool) -> str:
    """Write the page of one lesson, named in full or by its number."""
    from repairlib.teach.screens import write_screens

    if len(words) != 1 or "--out" not in options:
        raise RepairlibError(" ".join(words), "one lesson and a file are due", "04 --out FILE.html")
    return write_screens(lesson_called(words[0]), options["--out"])


def lesson_called(typed: str) -> str:
    """The lesson meant by its name or its number; own lessons too, of the known group.

    Raises RepairlibError for none.

    >>> lesson_called("4"), lesson_called("04-polarity")
    ('04-polarity', '04-polarity')
    """
    from repairlib.teach.lesson_named import lesson_among

    known = lessons_known()
    found = lesson_among(typed, known)
    if found is None:
        raise RepairlibError(typed, "no lesson has this name or number", ", ".join(known))
    return found
