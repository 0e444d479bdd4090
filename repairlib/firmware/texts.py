"""Text in an image: one byte or two bytes (UTF-16, either order) for each character."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import NamedTuple

from repairlib.firmware.image_file import Image

_LOW_FIRST = re.compile(rb"(?:[\x20-\x7e]\0){5,}")
_HIGH_FIRST = re.compile(rb"(?:\0[\x20-\x7e]){5,}")


class Text(NamedTuple):
    """A piece of text: its characters, the address of the first byte, and bytes for each."""

    characters: bytes
    start: int
    width: int

    def where(self, begin: int, end: int) -> tuple[int, int]:
        """The bytes in which the characters from `begin` to `end` stand.

        >>> Text(b"SN 12345", 100, 2).where(3, 8)
        (106, 116)
        """
        return self.start + begin * self.width, self.start + end * self.width


def wide_texts(image: Image) -> list[Text]:
    """The pieces of five characters or more with two bytes for each, none of them twice."""
    found = [Text(one[0][::2], one.start(), 2) for one in _LOW_FIRST.finditer(image.data)]
    found += [Text(one[0][1::2], one.start(), 2) for one in _HIGH_FIRST.finditer(image.data)]
    kept: list[Text] = []
    for one in sorted(found, key=lambda text: text.start):
        if not kept or kept[-1].start + 2 * len(kept[-1].characters) <= one.start:
            kept.append(one)
        elif len(kept[-1].characters) < len(one.characters):
            kept[-1] = one
    return kept


def matches(
    pattern: re.Pattern[bytes], image: Image, wide: list[Text]
) -> Iterator[tuple[Text, re.Match[bytes]]]:
    """Each match of a pattern in the image, with the text in which it stands.

    `wide` are the image's texts with two bytes for each character, from `wide_texts`.
    """
    whole = Text(image.data, 0, 1)
    for text in (whole, *wide):
        for match in pattern.finditer(text.characters):
            yield text, match
