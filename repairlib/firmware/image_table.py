"""Is this a table of a curve: numbers that go up or down for long, in 8 or in 16 bits?"""

from __future__ import annotations

TURNS = 0.15  # of the steps change direction in a curve, at most; in code and text about half do
LOOKED_AT = 1 << 16  # bytes
FEWEST_STEPS = 32


def is_table(content) -> bool:
    """Whether an array of bytes holds a curve, with numbers of 8 bits or of 16, either byte first.

    >>> import numpy as np
    >>> curve = np.round(2000 + 2000 * np.sin(np.arange(500) / 40)).astype(">u2")
    >>> is_table(curve.view(np.uint8)), is_table(np.frombuffer(b"press any key" * 9, np.uint8))
    (True, False)
    """
    import numpy as np

    content = np.ascontiguousarray(content[: min(len(content), LOOKED_AT) & ~1])
    for kind in ("u1", "<u2", ">u2"):
        numbers = content.view(kind).astype(kind.strip("<>"))
        # From the highest number on to the lowest is one step too, where a curve has signs.
        steps = np.diff(numbers).view(f"i{numbers.itemsize}")
        steps = np.sign(steps[steps != 0])
        if len(steps) >= FEWEST_STEPS and np.mean(steps[1:] != steps[:-1]) <= TURNS:
            return True
    return False
