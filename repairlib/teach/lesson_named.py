"""Which lesson an instructor means, who types its number or its name."""

from __future__ import annotations

from collections.abc import Iterable

from repairlib.learn.own import OWN
from repairlib.learn.progress import number_of


def lesson_among(typed: str, lessons: Iterable[str]) -> str | None:
    """The one of the lessons that is meant: by its name, its number, or an own one without `own-`.

    >>> lesson_among(" 3", ["00-start-here", "03-capacitor-markings"])
    '03-capacitor-markings'
    >>> lesson_among("Fuses", ["own-fuses"]), lesson_among("4", ["00-start-here"])
    ('own-fuses', None)
    """
    meant = typed.strip().casefold()
    number = meant.zfill(2) if meant.isdigit() else meant
    for lesson in lessons:
        if meant == lesson or number == number_of(lesson).removeprefix(OWN):
            return lesson
    return None
