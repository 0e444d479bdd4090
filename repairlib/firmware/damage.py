"""Is this image what the chip holds? What can be told from one read alone, and what cannot.

Each kind of damage has a file of its own beside this one. A damage is named only when nothing else
explains what is seen. What may be damage and may be meant stands among the doubts, with both
explanations. Without either, the image may still be wrong: one read cannot tell.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.core.plain_file import size_in_words
from repairlib.firmware.address_lines import repeats
from repairlib.firmware.damage_kinds import FRONT, LINE, Damage, Look
from repairlib.firmware.image_blank import filling
from repairlib.firmware.image_file import LARGEST, Image, Sums, sums
from repairlib.firmware.image_offset import offset
from repairlib.firmware.image_order import order
from repairlib.firmware.image_size import of_the_chip, size_against_chip
from repairlib.firmware.image_stuck import stuck

WORDS_BROKEN = (
    "The order of bytes and bits is not judged: words are broken while an address line has no "
    "effect."
)
ONE_READ = (
    "One read cannot tell whether every byte is right: set the clip anew, read the chip again, "
    "and compare the two."
)


class Checked(NamedTuple):
    """What an image's own bytes tell. `size` and `chip`, the capacity of the chip, in bytes.

    `damages` are certain. `doubts` have a sound explanation too, which they name. `notes` are
    neither; the last of them says what one read cannot tell.
    """

    name: str
    size: int
    chip: int | None
    damages: tuple[Damage, ...]
    doubts: tuple[Damage, ...]
    notes: tuple[str, ...]
    sums: Sums


def check_image(image: Image, chip: int | None = None) -> Checked:
    """What is wrong with an image as far as its own bytes tell, and its sums.

    `chip` is the capacity of the chip in bytes, where it is known. Raises RepairlibError for a
    capacity that no chip has.

    >>> from repairlib.firmware import image_of
    >>> blank = check_image(image_of(bytes([255]) * 4096), chip=8192)
    >>> [one.kind for one in blank.damages]
    ['short read', 'blank']
    """
    if chip is not None and (type(chip) is not int or not 0 < chip <= LARGEST):
        wrong = "this is no capacity of a chip"
        raise RepairlibError(chip, wrong, f"a whole number of bytes, at most {LARGEST}")
    sized = size_against_chip(image, chip)
    own = of_the_chip(image, chip, sized)
    found = [sized, filling(own)]
    if own.size < image.size:
        part = f"Addresses count from where the chip's {size_in_words(own.size)} begin"
        found.append(Look(notes=(f"{part}; what is too much is left out of what follows.",)))
    if not found[1].damages:  # one value over and over holds nothing else to look at
        moved = offset(own)
        again = _also_behind(moved, repeats, own)
        broken = any(one.kind == LINE for one in again.damages)
        turned = Look(notes=(WORDS_BROKEN,)) if broken else _also_behind(moved, order, own)
        found += [moved, again, turned, _also_behind(moved, stuck, own)]
    return Checked(
        image.name,
        image.size,
        chip,
        tuple(damage for look in found for damage in look.damages),
        tuple(doubt for look in found for doubt in look.doubts),
        (*(note for look in found for note in look.notes), ONE_READ),
        sums(image),
    )


def _also_behind(moved: Look, look: Callable[[Image], Look], image: Image) -> Look:
    """What `look` finds; where that is nothing, what it finds behind the padding at the front."""
    found = look(image)
    front = next((one.where[1] for one in moved.damages + moved.doubts if one.kind == FRONT), 0)
    if not front or found.damages or found.doubts:
        return found
    behind = look(Image(image.name, image.data[front:]))
    return Look(_along(behind.damages, front), _along(behind.doubts, front), found.notes)


def _along(damages: tuple[Damage, ...], front: int) -> tuple[Damage, ...]:
    """The same damages, with the addresses of the whole image."""
    return tuple(
        one._replace(where=(one.where[0] + front, one.where[1] + front)) for one in damages
    )
