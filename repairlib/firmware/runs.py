"""How long one value runs at the front or the end of an image, without copying any of it."""

from __future__ import annotations

AT_ONCE = 1 << 20  # bytes


def front_run(array) -> int:
    """How many bytes in front equal the first.

    >>> import numpy as np
    >>> front_run(np.array([7, 7, 7, 1, 7], np.uint8)), front_run(np.array([7], np.uint8))
    (3, 1)
    """
    step = 256  # most runs are short
    begin = 0
    while begin < len(array):
        other = array[begin : begin + step] != array[0]
        first = int(other.argmax())
        if other[first]:
            return begin + first
        begin += step
        step = min(AT_ONCE, step * 4)
    return len(array)


def end_run(array) -> int:
    """How many bytes at the end equal the last."""
    return front_run(array[::-1])
