"""Content that stands some bytes too far along, though the size is right.

What begins behind a blank area begins at a round address: areas are erased by blocks and filled
from a block's begin. When all such begins miss a round address by the same number, all has moved.
"""

from __future__ import annotations

from repairlib.core.plain_file import size_in_words
from repairlib.core.wording import counted
from repairlib.firmware.damage_kinds import FRONT, Damage, Look, address
from repairlib.firmware.image_file import Image
from repairlib.firmware.runs import SLACK, front_run

GAP = 256  # bytes of FF that are a blank area: a power of two
MOST_FRONT = 4096  # bytes; longer is a blank area of its own, not padding
MOST_BEGINS = 10_000
AGREE = 0.6  # of the begins miss by the same number
DENSE_END = 16  # bytes
THEN = (
    "find out what put bytes in front; read the chip again from address 0, do not cut them off "
    "before the read is proven"
)


def offset(image: Image) -> Look:
    """Whether all that is in the image stands too far along, or may do so.

    >>> from repairlib.firmware.image_file import image_of
    >>> area = (bytes(range(1, 200)) * 2).ljust(1024, b"\\xff")
    >>> offset(image_of((b"\\xff" * 37 + area * 6)[:6144])).damages[0].kind
    'padding at the front'
    """
    import numpy as np

    front = front_run(image.array())
    if image.data[0] not in (0, 255) or not 4 <= front <= min(MOST_FRONT, image.size // 8):
        return Look()
    begins = _begins(image)
    for round_to in (256, 4096):
        missed, often = np.unique(begins % round_to, return_counts=True)
        if not len(missed):
            break
        miss, same = int(missed[often.argmax()]), int(often.max())
        more = (front - miss) % round_to  # bytes of the content that have the padding's value
        enough = same >= (3 if miss % 16 else 5) and same >= AGREE * len(begins)
        if miss and enough and more <= min(SLACK, front - 1):
            why = (
                f"the first {counted(front - more, 'byte')} are {image.data[0]:02X}, and behind "
                f"{counted(same, 'blank area')} of {len(begins)} what follows begins "
                f"{counted(miss, 'byte')} after a round address"
            )
            return Look((Damage(FRONT, (0, front - more), why, THEN),))
    blank = image.data[0] == 255
    if front % (256 if blank else 16) and (blank or front >= 16):
        end = image.data[-DENSE_END:]
        cut = ", where the end would be lost," if end.count(end[:1]) < len(end) else ""
        why = (
            f"the first {size_in_words(front)} are {image.data[0]:02X} and content begins at "
            f"{address(front)}, no round address: it was moved along{cut} or begins so by design"
        )
        return Look((), (Damage(FRONT, (0, front), why, THEN),))
    return Look()


def _begins(image: Image):
    """The addresses at which something begins behind a blank area, as an array."""
    import numpy as np

    words = np.frombuffer(image.data, np.uint64, image.size // 8)
    run = words == np.uint64(0xFFFF_FFFF_FFFF_FFFF)
    many = 1
    while 8 * many < GAP:  # then true where a blank area of GAP bytes begins
        run = run[:-many] & run[many:]
        many *= 2
    ends = np.flatnonzero(run[:-1] & ~run[1:]) + many
    if len(run) and run[0]:
        ends = ends[1:]  # what stands in front is looked at by itself
    ends = ends[:MOST_BEGINS]
    first = image.array()[: image.size // 8 * 8].reshape(-1, 8)[ends] != 255
    return ends * 8 + first.argmax(axis=1)
