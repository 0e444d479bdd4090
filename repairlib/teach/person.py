"""Who is taken out of a group, and how what is theirs is known in files of every kind."""

from __future__ import annotations

import re
from typing import Any

from repairlib.core.draws import normal
from repairlib.core.html import escape
from repairlib.learn.forgetting import readable
from repairlib.learn.group import Group, Member
from repairlib.learn.learner import learner_in, member_of, names_somebody

WHO = ("name", "word", "member", "who")  # under these keys a record says whose it is


class Person:
    """A member of a group by name, by word, and by the folder of what they answered."""

    def __init__(self, group: Group, member: Member):
        self.name, self.word = normal(member.name), normal(member.word)
        self.folder = member_of(group, member).folder()
        ways = {self.name, normal(escape(member.name, quote=False))}
        self.shown = _words(*ways)
        self.meant = _words(*ways, self.word)

    def is_meant(self, value: Any) -> bool:
        """True for their name and their word."""
        return isinstance(value, str) and normal(value) in (self.name, self.word)

    def is_shown(self, data: bytes) -> bool:
        """True for a text in which their name stands."""
        return bool(self.shown.search(normal(readable(data))))

    def may_be_meant(self, data: bytes) -> bool:
        """True for a text in which their name stands, or their word, which may be any noun."""
        return bool(self.meant.search(normal(readable(data))))

    def owns(self, content: Any) -> bool:
        """True for a file of answers, in whatever form, that is theirs."""
        if not isinstance(content, dict) or not names_somebody(content):
            return False
        return learner_in(content).folder() == self.folder

    def without(self, value: Any) -> Any:
        """`value` without their records, and without their name where it stands beside others."""
        if isinstance(value, dict):
            kept = {key: one for key, one in value.items() if not self.is_meant(key)}
            return {key: self._inside(one) for key, one in kept.items() if not self._is_record(one)}
        if isinstance(value, list):
            return [self._inside(one) for one in value if not self._is_record(one)]
        return value

    def _inside(self, value: Any) -> Any:
        if isinstance(value, str):
            return "" if normal(value) == self.name else value
        if isinstance(value, list):
            value = [one for one in value if not self.is_meant(one)]
        return self.without(value)

    def _is_record(self, value: Any) -> bool:
        if isinstance(value, dict):
            return any(self.is_meant(value.get(key)) for key in WHO)
        if isinstance(value, list):
            return any(isinstance(one, str) and normal(one) == self.word for one in value)
        return False


def _words(*ways: str) -> re.Pattern[str]:
    """Finds any of these, written as `normal` writes, where it is not part of a longer word."""
    return re.compile(rf"(?<!\w)(?:{'|'.join(map(re.escape, ways))})(?!\w)")
