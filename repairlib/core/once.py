"""A question that comes again gets the answer that was worked out the first time."""

from __future__ import annotations


class Once(dict):
    """What a function answers, by what it was asked: one thing, or a tuple of several.

    It belongs to one list or one marking, and goes with it.

    >>> squares = Once(lambda number: print("asked") or number**2)
    >>> squares[3], squares[3]
    asked
    (9, 9)
    """

    def __init__(self, function):
        self.function = function

    def __missing__(self, asked):
        several = isinstance(asked, tuple)
        answer = self[asked] = self.function(*asked) if several else self.function(asked)
        return answer
