"""The size of an image against the capacity of its chip: cut short, too long, moved along.

Serial flash and the parallel chips of this room hold a power of two of bytes, which is what a read
of a whole chip must have when its capacity is not known (common practice).
"""

from __future__ import annotations

from repairlib.core.plain_file import size_in_words
from repairlib.firmware.damage_kinds import FRONT, LONG, SHORT, Damage, Look
from repairlib.firmware.image_file import Image
from repairlib.firmware.runs import SLACK, front_run

SURE_RUN = 4  # bytes of one value in front, from which chance is no explanation
AGAIN = "set the reader to the chip's own capacity, from its identity bytes, and read it again"


def size_against_chip(image: Image, chip: int | None) -> Look:
    """What the size tells; `chip` is the capacity in bytes, or None where it is not known.

    >>> from repairlib.firmware.image_file import image_of
    >>> size_against_chip(image_of(bytes(range(100))), 128).damages[0].kind
    'short read'
    """
    size = image.size
    if chip is None:
        return _against_any_chip(image)
    if size < chip:
        why = f"{size_in_words(size)} were read of a chip of {size_in_words(chip)}"
        if not chip % size:
            why += f", which is 1/{chip // size} of it: the reader was set to a smaller chip"
        return Look((Damage(SHORT, (size, chip), why, AGAIN),))
    if size > chip:
        return Look(_too_long(image, chip))
    return Look()


def _against_any_chip(image: Image) -> Look:
    size = image.size
    below = 1 << (size.bit_length() - 1)
    if size == below:
        return Look()
    over = size - below
    if over <= below // 8 and (padding := _padding(image, over)):
        return Look(padding)
    if over <= below // 8:
        why = (
            f"{size_in_words(size)} are {size_in_words(over)} more than the {size_in_words(below)} "
            "of a chip: something stands before or behind the read, or this is a file of another "
            "kind, such as an update"
        )
        then = "compare with the capacity from the identity bytes; look at both ends"
        return Look((), (Damage(LONG, (below, size), why, then),))
    why = (
        f"no chip holds {size_in_words(size)}; the next holds {size_in_words(2 * below)}: the read "
        "was cut short, or this is no read of a whole chip, such as an update file"
    )
    return Look((), (Damage(SHORT, (size, 2 * below), why, AGAIN),))


def _too_long(image: Image, chip: int) -> tuple[Damage, ...]:
    size, data = image.size, image.data
    over = size - chip
    more = f"{size_in_words(size)} of a chip of {size_in_words(chip)}"
    if padding := _padding(image, over):
        return (*padding, Damage(LONG, (chip, size), more, AGAIN))
    if front_run(image.array()[chip:]) == over:
        more += f"; what is over is {data[-1]:02X} throughout, put there by a program or a reader"
    elif _begins_anew(image, chip):
        more += ", and it begins anew at the chip's end: the reader was set to a larger chip"
    return (Damage(LONG, (chip, size), more, AGAIN),)


def _padding(image: Image, over: int) -> tuple[Damage, ...]:
    """Padding in front, where the first `over` bytes are one value and the content comes then."""
    data = image.data
    run = front_run(image.array())
    if data[0] not in (0, 255) or not max(SURE_RUN, over) <= run <= over + SLACK:
        return ()
    why = (
        f"the first {size_in_words(over)} are {data[0]:02X} throughout, and by as much the file "
        "is too long: everything behind stands that much too far along"
    )
    then = "find out what put them there; read the chip again instead of cutting them off"
    return (Damage(FRONT, (0, over), why, then),)


def of_the_chip(image: Image, chip: int | None, look: Look) -> Image:
    """The part of the image that is the chip's, where `look` found more than that."""
    kinds = [damage.kind for damage in look.damages]
    front = next((one.where[1] for one in look.damages if one.kind == FRONT), 0)
    if not front and LONG not in kinds:
        return image
    return Image(image.name, image.data[front : front + (chip or image.size)])


def _begins_anew(image: Image, chip: int) -> bool:
    import numpy as np

    again = image.array()[chip : 2 * chip]
    return np.array_equal(again, image.array()[: len(again)])
