"""The notebook of a lesson as it is laid, of the workbook or of a group's own."""

from __future__ import annotations

from repairlib.core.tables import LESSON_FOLDER
from repairlib.learn.group import Group
from repairlib.learn.own import OWN, own_lesson, own_notebook


def notebook_of(lesson: str, group: Group | None = None) -> str:
    """The text of a lesson's notebook. Own lessons are those of `group`, or of the known group.

    Raises RepairlibError when there is no such own lesson, or it cannot be read.

    >>> '"cells"' in notebook_of("00-start-here")
    True
    """
    if lesson.startswith(OWN):
        return own_notebook(own_lesson(lesson, group)).decode("utf-8")
    return (LESSON_FOLDER / f"{lesson}.ipynb").read_text(encoding="utf-8")
