"""In whose folder a file lies. On a server each member has one, called by their word.

A folder is a member's own where it has their word for its name and lies beside those of others, as
on a server, which makes one for each. Words are plain nouns: a folder that only happens to be
called by one, such as the place itself or one for the files of an exam, is nobody's.
"""

from __future__ import annotations

import os
from collections.abc import Iterable, Mapping
from pathlib import Path

from repairlib.core.draws import normal
from repairlib.core.once import Once
from repairlib.learn import files
from repairlib.learn.group import Member


class Holders:
    """Whose folders there are below these places; `by_word` are the members of the group."""

    def __init__(self, places: Iterable[str | Path], by_word: Mapping[str, Member]):
        self._by_word = by_word
        real = [os.path.realpath(Path(place).expanduser()) for place in places]
        self._tops = {one if os.path.isdir(one) else os.path.dirname(one) for one in real}
        self._found = Once(self._holder)
        self._beside = Once(self._own_folders)

    def holder(self, path: str) -> Member | None:
        """In whose folder the file at `path` lies, also further down; None where in nobody's.

        Of a folder in a folder the outer one says it: what is inside of it its member has made.
        """
        return self._found[os.path.dirname(path)]

    def _holder(self, folder: str) -> Member | None:
        above = os.path.dirname(folder)
        if folder in self._tops or above == folder:
            return None
        outer = self._found[above]
        if outer is not None or self._beside[above] < 2:
            return outer
        return self._by_word.get(normal(os.path.basename(folder)))

    def _own_folders(self, folder: str) -> int:
        """How many folders in this one are called by the word of a member."""
        with files.saying_why(Path(folder)), os.scandir(folder) as inside:
            return sum(normal(one.name) in self._by_word and one.is_dir() for one in inside)
