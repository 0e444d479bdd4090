"""What the members of a group answered first, from what they handed in."""

from __future__ import annotations

from pathlib import Path

from repairlib.learn.group import Group
from repairlib.learn.tries import Story
from repairlib.teach.collecting import collect
from repairlib.teach.paper.permits import SAFETY_LESSONS, Stories

HANDED_IN = "handed-in"


def first_tries(folder: str | Path, group: Group) -> dict[str, Stories]:
    """How the safety questions went, by the word of each member, judged anew.

    Nothing was handed in: nothing is known. Raises RepairlibError when it may not be read.
    """
    place = Path(folder) / HANDED_IN
    found: dict[str, dict[str, dict[str, Story]]] = {}
    for one in collect(group, [place], cores=1).marked if place.is_dir() else ():
        if one.lesson in SAFETY_LESSONS:
            found.setdefault(one.word, {})[one.lesson] = dict(one.stories)
    return dict(found)
