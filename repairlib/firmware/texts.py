"""Text in an image: one byte or two bytes (UTF-16, either order) for each character."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator
from typing import NamedTuple

from repairlib.firmware.image_file import Image

# Zeros are looked for first, because most bytes are none: this takes a tenth of the time.
_WIDE = re.compile(rb"(?:\0[\x20-\x7e]){4,}")
_FEWEST = 5  # characters


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
    """The pieces of five characters or more with two bytes for each, in order.

    Where both orders of the two bytes would do, amid zeros, the low byte stands first.

    >>> [text.characters for text in wide_texts(Image("", "  serial  ".encode("utf-16-le")))]
    [b'  serial  ']
    """
    data, found = image.data, []
    for match in _WIDE.finditer(data):
        start, end = match.span()
        if start and 0x20 <= data[start - 1] < 0x7F:
            start -= 1
            end += 1 if data[end : end + 1] == b"\0" else -1
            found.append(Text(data[start:end:2], start, 2))
        elif start and data[start - 1] == 0 and data[end : end + 1] == b"\0":
            found.append(Text(data[start + 1 : end + 1 : 2], start + 1, 2))
        else:
            found.append(Text(data[start + 1 : end : 2], start, 2))
    return [text for text in found if len(text.characters) >= _FEWEST]


def matches(
    pattern: re.Pattern[bytes],
    starts: Callable[[bytes], Iterable[int]],
    image: Image,
    wide: list[Text],
) -> Iterator[tuple[Text, re.Match[bytes]]]:
    """Each match of a pattern in the image, with the text in which it stands.

    `starts` tells where in some characters the pattern may begin, which is quicker than trying it
    everywhere; `wide` are the image's texts with two bytes for each character, from `wide_texts`.
    """
    for text in (Text(image.data, 0, 1), *wide):
        end = 0
        for start in starts(text.characters):
            match = pattern.match(text.characters, start) if start >= end else None
            if match:
                end = match.end()
                yield text, match


def where_words_stand(words: tuple[bytes, ...]) -> Callable[[bytes], list[int]]:
    """What finds the places of these words, given in small letters, in large and small ones.

    >>> where_words_stand((b"sn", b"serial"))(b"SN 1 Serial 2")
    [0, 5]
    """

    def places(characters: bytes) -> list[int]:
        small, found = characters.lower(), set()
        for word in words:
            at = small.find(word)
            while at >= 0:
                found.add(at)
                at = small.find(word, at + 1)
        return sorted(found)

    return places
