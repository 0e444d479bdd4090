"""The variant a learner gets: the same on every machine and every Python version.

Covers the drawing of numbers, choices and orders from (class code, learner, lesson) by SHA-256.
It does not use the random module, whose streams may change between versions.
"""

from __future__ import annotations

import hashlib
import unicodedata


def normal(text: str) -> str:
    """The form in which two spellings of one name are the same.

    Upper and lower case, runs of spaces and the two Unicode spellings of an accented letter
    do not matter.

    >>> normal("  Ada   EXAMPLE ") == normal("ada example")
    True
    >>> normal("Zoe\\u0301") == normal("ZOÉ")
    True
    """
    folded = unicodedata.normalize("NFC", unicodedata.normalize("NFC", text).casefold())
    return " ".join(folded.split())


class Draw:
    """A stream of choices that depends only on class code, learner and lesson.

    Each choice takes the next number of the stream: the SHA-256 of the seed text, a line end and
    the running count. Use `part` once per question, so that editing one question leaves the
    variants of the others as they are.

    >>> draw = Draw.for_learner("bench-7", "Ada Example", "00-start-here")
    >>> draw.part("q1").pick(["10 µF", "22 µF", "47 µF"])
    '10 µF'
    >>> draw.part("q2").integer(1, 6)
    1
    >>> draw.part("q3").shuffle("abcd")
    ('c', 'd', 'a', 'b')
    """

    def __init__(self, seed: str):
        self.seed = seed
        self._taken = 0

    @classmethod
    def for_learner(cls, class_code: str, name: str, lesson: str) -> Draw:
        """The draw of one learner in one lesson."""
        return cls("\n".join(("learner", normal(class_code), normal(name), lesson)))

    @classmethod
    def demo(cls, lesson: str) -> Draw:
        """The draw of the demo variant, used while no learner is set."""
        return cls("\n".join(("demo", lesson)))

    def part(self, name: str) -> Draw:
        """An independent draw for one question: `draw.part("q1")`."""
        return Draw(f"{self.seed}\n{name}")

    def integer(self, low: int, high: int) -> int:
        """A whole number from low to high, both included."""
        if high < low:
            raise ValueError(f"nothing lies between {low} and {high}")
        text = f"{self.seed}\n{self._taken}".encode("utf-8", "surrogatepass")
        self._taken += 1
        return low + int.from_bytes(hashlib.sha256(text).digest(), "big") % (high - low + 1)

    def pick(self, options):
        """One of the options."""
        options = tuple(options)
        return options[self.integer(0, len(options) - 1)]

    def shuffle(self, items) -> tuple:
        """All of the items in a drawn order."""
        left = list(items)
        return tuple(left.pop(self.integer(0, len(left) - 1)) for _ in range(len(left)))

    def sample(self, items, count: int) -> tuple:
        """`count` different items in a drawn order."""
        return self.shuffle(items)[:count]
