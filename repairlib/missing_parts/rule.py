"""One rule of the trade: what speaks for a kind of part in a place, or against it, and why."""

from __future__ import annotations

from typing import NamedTuple


class Rule(NamedTuple):
    """`points` for a kind where `when` holds; `why` says so in plain words.

    `when` names facts: all must hold; `a|b` is either, `!a` is where it does not hold. Points are
    a judgement of the trade: 7 names the job, 4 is strong, 1 a hint; below 0 it speaks against.
    """

    kind: str
    points: int
    when: str
    why: str

    def holds(self, facts: frozenset[str]) -> bool:
        """Whether the rule speaks in a place of these facts.

        >>> Rule("fuse", 1, "rail-rail|at:power_input !rail-ground", "").holds({"rail-rail"})
        True
        """
        return all(_holds(word, facts) for word in self.when.split())


def _holds(word: str, facts: frozenset[str]) -> bool:
    if word.startswith("!"):
        return not any(one in facts for one in word[1:].split("|"))
    return any(one in facts for one in word.split("|"))
