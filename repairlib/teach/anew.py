"""Questions whose key was corrected: they are marked against today's key, whatever was asked then.

A question is named `LESSON:QUESTION`, such as `03-capacitor-markings:q4`. Those that were named
once are remembered with the mark book, so that the next run does not take it back.
"""

from __future__ import annotations

from repairlib.core.errors import RepairlibError
from repairlib.learn.asking import names
from repairlib.learn.exercise import lessons_known, module_of
from repairlib.learn.group import Group
from repairlib.learn.progress import number_of
from repairlib.teach.lesson_named import lesson_among

FORM = "LESSON:QUESTION, such as 03:q4; several with commas between them"


def lesson_of(typed: str, group: Group) -> str:
    """The lesson meant by its name or number. Raises RepairlibError that names those there are.

    >>> lesson_of("3", Group("Tuesday bench")), lesson_of("03-capacitor-markings", Group("Bench"))
    ('03-capacitor-markings', '03-capacitor-markings')
    """
    found = lesson_among(typed, lessons_known(group))
    if found is None:
        numbers = ", ".join(map(number_of, group.lessons or lessons_known(group)))
        raise RepairlibError(typed, "no lesson has this number", numbers)
    return found


def anew_of(typed: str, group: Group) -> frozenset[str]:
    """The questions that are named, each with the whole name of its lesson.

    Raises RepairlibError for one that nobody asks.

    >>> sorted(anew_of("03:q4, 0:q1", Group("Tuesday bench")))
    ['00-start-here:q1', '03-capacitor-markings:q4']
    """
    found = set()
    for one in filter(None, (piece.strip() for piece in typed.split(","))):
        which, colon, name = one.partition(":")
        if not colon:
            raise RepairlibError(one, "it does not name a question", FORM)
        lesson = lesson_of(which, group)
        asked = names(module_of(lesson, group))
        if name.strip() not in asked:
            raise RepairlibError(one, "no question of this lesson has this id", ", ".join(asked))
        found.add(f"{lesson}:{name.strip()}")
    return frozenset(found)
