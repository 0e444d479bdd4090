"""What the members of a group answered first, from what they handed in."""

from __future__ import annotations

from pathlib import Path

from repairlib.learn.group import Group
from repairlib.teach.collecting import HANDED_IN, collect
from repairlib.teach.marked import Marked
from repairlib.teach.paper.permits import SAFETY_LESSONS, Answered


def first_tries(folder: str | Path, group: Group) -> dict[str, Answered]:
    """How the safety lessons went, by the word of each member, judged anew.

    Nothing was handed in: nothing is known. Raises RepairlibError when it may not be read.
    """
    place = Path(folder) / HANDED_IN
    found: dict[str, dict[str, Marked]] = {}
    for one in collect(group, [place], cores=1).marked if place.is_dir() else ():
        if one.lesson in SAFETY_LESSONS:
            found.setdefault(one.word, {})[one.lesson] = one
    return dict(found)
