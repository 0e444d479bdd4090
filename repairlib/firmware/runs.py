"""Runs in an image: of one value at its front or end, and of the bytes that a test picks out."""

from __future__ import annotations

AT_ONCE = 1 << 20  # bytes
SLACK = 16  # bytes at the begin of content that may have the value of what stands in front


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


def runs_of(picked):
    """Where runs of true ones begin and where they end, as two arrays.

    >>> import numpy as np
    >>> [ends.tolist() for ends in runs_of(np.array([True, True, False, True]))]
    [[0, 3], [2, 4]]
    """
    import numpy as np

    edges = np.flatnonzero(np.diff(np.concatenate(([False], picked, [False]))))
    return edges[::2], edges[1::2]
