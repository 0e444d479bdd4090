"""What speaks against a read or an image before a chip is written, and what counts as an answer."""

from __future__ import annotations

from collections.abc import Sequence

from repairlib.core.errors import RepairlibError
from repairlib.firmware.damage import check_image
from repairlib.firmware.image_file import Image
from repairlib.firmware.keep import Keep
from repairlib.firmware.stored_sums import OTHER_WAYS, broken_sums

_FEWEST_WORDS = 3  # a reason says who or what, and why: our choice


def reasoned(answer: str) -> bool:
    """Whether an answer gives a reason: three different words or more, which no tick or "x" does.

    >>> reasoned("x"), reasoned("another programmer reads it so too")
    (False, True)
    """
    words = {word.lower() for word in answer.split() if sum(map(str.isalpha, word)) > 1}
    return len(words) >= _FEWEST_WORDS


def judged(image: Image, capacity: int, answer: str) -> list[str]:
    """What is to be told of an image: its doubts, and the damage that an answer explains.

    Raises RepairlibError for damage without a reason.
    """
    checked = check_image(image, capacity)
    damages = [f"{one.kind}: {one.why}" for one in checked.damages]
    if damages and not reasoned(answer):
        wrong = f"it is damaged: {'; '.join(damages)}"
        accepted = f"{checked.damages[0].next.rstrip('.')}; or why it counts all the same"
        raise RepairlibError(image.name, wrong, accepted)
    told = [f"{image.name}: {one}, explained: {answer.strip()}" for one in damages]
    return told + [f"{image.name}, doubt: {one}" for one in checked.doubts]


def sums_asked(
    image: Image, models: Sequence[Image], kept: Sequence[Keep], answer: str
) -> list[str]:
    """What is to be told of check sums that fit in the models and not in the image made of them.

    `models` are the old content and the donor's image. Raises RepairlibError when such a sum is
    found and no reason given; one of a single byte may fit by chance and is only told.
    """
    if not kept:
        return []
    broken = [one for model in models for one in broken_sums(model, image, kept)]
    asked = [told.rstrip(".") for width, told in broken if width > 1]
    if asked and not reasoned(answer):
        raise RepairlibError(image.name, "; ".join(asked), "the sum put right; or why it may stay")
    by_chance = [told.rstrip(".") for width, told in broken if width == 1]
    return [*(f"{one}, explained: {answer.strip()}" for one in asked), *by_chance, OTHER_WAYS]
