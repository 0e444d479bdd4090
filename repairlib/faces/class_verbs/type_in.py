"""`class type-in FOLDER LINES.txt`: answers on paper become files handed in."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from repairlib.core.errors import RepairlibError
from repairlib.core.typed.textfile import read_text
from repairlib.faces.documents import json_text
from repairlib.learn.group import GROUP_FILE, read_group
from repairlib.teach.typed_in import type_in


def type_in_lines(words: list[str], options: Mapping[str, str], as_json: bool) -> str:
    """What was taken and what is wrong, line by line. Raises RepairlibError when none was taken."""
    if len(words) != 2:
        raise RepairlibError(" ".join(words), "a folder and a text are due", "FOLDER LINES.txt")
    folder, lines = words
    done = type_in(folder, read_group(Path(folder) / GROUP_FILE), read_text(lines).text)
    if not done.sheets:
        wrong = "; ".join(map(str, done.troubles)) or "it holds no line of answers"
        raise RepairlibError(Path(lines).name, wrong, "kite 03: b | 100 nF | c a b")
    if not as_json:
        return str(done)
    sheets = [
        {"line": one.line, "word": one.member.word, "lesson": one.lesson, "answers": one.answers}
        for one in done.sheets
    ]
    return json_text(
        {
            "sheets": sheets,
            "troubles": [one._asdict() for one in done.troubles],
            "replaced": done.replaced,
            "files": [one.name for one in done.files],
        }
    )
