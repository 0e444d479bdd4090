"""What was asked, in twelve characters: saved beside an answer, so that it is marked as asked."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple

from repairlib.learn.question import Question

LENGTH = 12
# Fields that do not change what was asked or what it earns: the id, help after a wrong answer.
HERE = "\0here"  # stands where the pieces are cut
LEFT_OUT = ("id", "hint", "picture", "mistakes")


def fingerprint(question: Question) -> str:
    """A short hash of what a question asks, shows, takes for right and earns.

    It covers the prompt, the options in their order, the unit, the answer, the tolerance, the
    points, the words of the picture and what is dangerous; for a table each of its cells. It
    leaves the hints out. A learner's variant has the same one on every machine and Python.

    >>> from repairlib.learn import Number
    >>> fingerprint(Number(answer=9, unit="V")) == fingerprint(Number(answer=9.0, unit="V"))
    True
    >>> fingerprint(Number(answer=9, unit="V")) == fingerprint(Number(answer=9, unit="A"))
    False
    """
    return _in_short(_as_json(_asked(question)))


class Pieces(NamedTuple):
    """What the fingerprint of a question covers, cut up where the items of one field stand."""

    before: str
    items: tuple[str, ...]
    after: str

    @classmethod
    def of(cls, question: Question, field: str) -> Pieces:
        """The pieces of a question, of whose `field` the order varies."""
        asked = _asked(question)
        before, _, after = _as_json(asked | {field: HERE}).partition(_as_json(HERE))
        return cls(before, tuple(map(_as_json, asked[field])), after)

    def in_order(self, places: Sequence[int]) -> str:
        """The fingerprint of the question with the items of its field in another order.

        >>> from repairlib.learn import Choice
        >>> ask = Choice(options=("film", "mica"), answer="mica")
        >>> turned = Choice(options=("mica", "film"), answer="mica")
        >>> Pieces.of(ask, "options").in_order([1, 0]) == fingerprint(turned)
        True
        """
        items = ", ".join([self.items[place] for place in places])
        return _in_short(f"{self.before}[{items}]{self.after}")


def _in_short(text: str) -> str:
    return hashlib.sha256(text.encode("ascii")).hexdigest()[:LENGTH]


def _as_json(value: Any) -> str:
    return json.dumps(value, ensure_ascii=True, sort_keys=True)


def _asked(question: Question) -> dict[str, Any]:
    asked = {name: _plain(value) for name, value in vars(question).items() if name not in LEFT_OUT}
    return asked | {
        "kind": type(question).__name__,
        "picture": question.picture().alt if question.picture else "",
        "dangers": [[_when(one.when), one.hazard] for one in question.mistakes if one.hazard],
    }


def _when(wrong: Any) -> Any:
    """A wrong answer; of a function what it says of itself, if it says anything."""
    return getattr(wrong, "said", "") if callable(wrong) else _plain(wrong)


def _plain(value: Any) -> Any:
    """A field as lists and texts. Numbers keep ten figures: the last ones differ by machine."""
    if isinstance(value, Question):
        return _asked(value)
    if isinstance(value, Mapping):
        return [[str(key), _plain(one)] for key, one in value.items()]
    if isinstance(value, Sequence) and not isinstance(value, str):
        return [_plain(one) for one in value]
    return f"{value:.10g}" if isinstance(value, (int, float)) else str(value)
