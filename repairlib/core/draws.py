"""The variant a learner gets: the same on every machine and every Python version.

Covers the drawing of numbers, choices and orders from (group, learner, lesson) by SHA-256.
It does not use the random module, whose streams may change between versions.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Mapping, Sequence
from hashlib import sha256
from types import MappingProxyType
from typing import TypeVar

Option = TypeVar("Option")
NOT_AGAIN: Mapping[str, int] = MappingProxyType({})


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
    """A stream of choices that depends only on group, learner and lesson.

    Each choice gives every option a number: the SHA-256 of the seed text, the running count of
    choices and the option itself, one below the other. The highest number wins. An option added
    to a bank of six so moves one learner in seven; all others keep what they had. Options are
    texts, numbers, or tuples of these, whose written form is the same everywhere.

    >>> draw = Draw.for_learner("bench-7", "Ada Example", "00-start-here")
    >>> draw.part("first").pick(["10 µF", "22 µF", "47 µF"])
    '47 µF'
    >>> draw.part("second").integer(1, 6)
    2
    >>> draw.part("third").shuffle("abcd")
    ('b', 'd', 'a', 'c')
    """

    def __init__(self, seed: str, again: Mapping[str, int] = NOT_AGAIN):
        self.seed = seed
        self.again = again
        self._taken = 0

    @classmethod
    def for_learner(
        cls, group: str, name: str, lesson: str, again: Mapping[str, int] = NOT_AGAIN
    ) -> Draw:
        """The draw of one learner in one lesson.

        `again` says by the name of a part how often it was thrown anew, where it was.
        """
        return cls("\n".join(("learner", normal(group), normal(name), lesson)), again)

    def part(self, name: str) -> Draw:
        """An independent draw, for instance for one question: `draw.part("stripe")`."""
        times = self.again.get(name, 0)
        thrown = f"\nthrown anew {times}" if times else ""
        return type(self)(f"{self.seed}\n{name}{thrown}")

    def integer(self, low: int, high: int) -> int:
        """A whole number from low to high, both included. A wider range moves few learners."""
        if high < low:
            raise ValueError(f"nothing lies between {low} and {high}")
        return self.pick(range(low, high + 1))

    def pick(self, options: Iterable[Option]) -> Option:
        """One of the options."""
        return self.sample(options, 1)[0]

    def shuffle(self, items: Iterable[Option]) -> tuple[Option, ...]:
        """All of the items in a drawn order. One item more leaves the order of the others."""
        return self.sample(items)

    def order(self, texts: Sequence[bytes], count: int | None = None) -> tuple[int, ...]:
        """The places of the first `count` options (all) in drawn order, each option `as_bytes`."""
        stream = f"{self.seed}\n{self._taken}\n".encode("utf-8", "surrogatepass")
        self._taken += 1
        hashes = [sha256(stream + text).digest() for text in texts]
        if count == 1:
            return (hashes.index(max(hashes)),)
        falling = sorted(range(len(hashes)), key=hashes.__getitem__, reverse=True)
        return tuple(falling[:count])

    def sample(self, items: Iterable[Option], count: int | None = None) -> tuple[Option, ...]:
        """`count` different items in a drawn order."""
        items = tuple(items)
        places = self.order([as_bytes(item) for item in items], count)
        return tuple(items[place] for place in places)


class DemoDraw(Draw):
    """The draw of the demo variant, in which the lessons are printed: it goes by place alone.

    It picks the first of a bank, and its orders depend on how many items there are. So a bank can
    grow at its end while the printed lessons and the answers worked by hand stay as they are.

    >>> DemoDraw.of("00-start-here").pick(["10 µF", "22 µF", "47 µF"])
    '10 µF'
    """

    @classmethod
    def of(cls, lesson: str) -> DemoDraw:
        """The demo draw of one lesson."""
        return cls(f"demo\n{lesson}")

    def pick(self, options: Iterable[Option]) -> Option:
        """The first of the options."""
        self._taken += 1
        return next(iter(options))

    def shuffle(self, items: Iterable[Option]) -> tuple[Option, ...]:
        """All of the items in an order that hangs on their number."""
        left = list(items)
        return tuple(left.pop(self._next() % len(left)) for _ in range(len(left)))

    def sample(self, items: Iterable[Option], count: int | None = None) -> tuple[Option, ...]:
        """`count` of the items in an order that hangs on their number."""
        return self.shuffle(items)[:count]

    def _next(self) -> int:
        self._taken += 1
        return int.from_bytes(sha256(f"{self.seed}\n{self._taken - 1}".encode()).digest(), "big")


def written(option: object) -> str:
    """An option as text, the same on every machine. Raises TypeError for what has no such form.

    >>> written(("473", 47e-9, True))
    "('473', 4.7e-08, True)"
    """
    if isinstance(option, (tuple, list)):
        return f"({', '.join(written(part) for part in option)})"
    if not isinstance(option, (str, int, float, type(None))):
        raise TypeError(f"an option is a text, a number or a tuple of these, not {option!r}")
    return ascii(option)  # which characters repr shows as they are differs between versions


def as_bytes(option: object) -> bytes:
    """An option as it goes into the hash. Raises TypeError for what has no such form."""
    return written(option).encode("ascii")
