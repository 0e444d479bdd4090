"""Images of one value over and over, and ends that hold nothing, which is usual."""

from __future__ import annotations

from repairlib.core.plain_file import size_in_words
from repairlib.firmware.damage_kinds import (
    ALL_ZERO,
    BLANK,
    ONE_VALUE,
    STUCK,
    Damage,
    Look,
    address,
)
from repairlib.firmware.image_file import Image
from repairlib.firmware.runs import end_run, front_run

TOLD_END = 64  # bytes, from which an end that holds nothing is worth a note
CONTACTS = "check supply, ground, chip select and the data line at the chip's own pins; read again"


def filling(image: Image) -> Look:
    """Whether the image is one value throughout; else how its ends are filled.

    >>> from repairlib.firmware.image_file import image_of
    >>> [damage.kind for damage in filling(image_of(b"\\xfe" * 100)).damages]
    ['blank', 'stuck bit']
    """
    value, whole = image.data[0], (0, image.size)
    if front_run(image.array()) != image.size:
        return Look(notes=_ends(image))
    damages = []
    many = f"every byte is {value:02X}"
    if value == 0xFF:
        why = f"{many}: the chip is erased, or it never answered and the line was pulled up"
        return Look((Damage(BLANK, whole, why, f"read the identity bytes; {CONTACTS}"),))
    if value == 0:
        why = f"{many}: no answer, the data line held low or the chip without its supply"
        return Look((Damage(ALL_ZERO, whole, why, f"measure the supply at the chip; {CONTACTS}"),))
    for kind, other, level in ((BLANK, 0xFF, "low"), (ALL_ZERO, 0, "high")):
        if (value ^ other).bit_count() == 1:
            bit = (value ^ other).bit_length() - 1
            why = f"{many}, which is {other:02X} with bit {bit} {level}"
            damages.append(Damage(kind, whole, why, f"read the identity bytes; {CONTACTS}"))
            why = f"bit {bit} is always {int(level == 'high')}"
            damages.append(Damage(STUCK, whole, why, f"look at data line D{bit}; {CONTACTS}"))
    if not damages:
        why = f"{many}, which no chip holds by itself: the lines float, or it was written so"
        damages.append(Damage(ONE_VALUE, whole, why, CONTACTS))
    return Look(tuple(damages))


def _ends(image: Image) -> tuple[str, ...]:
    notes, array = [], image.array()
    said = {0xFF: "blank (FF)", 0: "zero"}
    front, end = front_run(array), end_run(array)
    if front >= TOLD_END and array[0] in said:
        notes.append(
            f"The first {size_in_words(front)} are {said[array[0]]}; what follows begins at "
            f"{address(front)}. That is usual where a program starts elsewhere."
        )
    if end >= TOLD_END and array[-1] in said:
        begin = address(image.size - end)
        notes.append(f"From {begin} to its end it is {said[array[-1]]}, which is usual.")
    return tuple(notes)
