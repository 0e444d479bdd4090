"""An image: the bytes that were read out of a memory chip, or that are to be written to one.

Image files are only read. What is made of them goes into a new file (`save_new`).
"""

from __future__ import annotations

import hashlib
import zlib
from pathlib import Path
from typing import NamedTuple

from repairlib.core.errors import RepairlibError, escaped
from repairlib.core.plain_file import read_bytes
from repairlib.core.saving import put_new

LARGEST = 256 << 20  # bytes: 2 Gbit, the largest serial flash whose capacity byte is known here
_ACCEPTED = "a binary image of a memory chip, at most 256 MiB"


class Image(NamedTuple):
    """The bytes of an image, and the name that messages call it by."""

    name: str
    data: bytes

    @property
    def size(self) -> int:
        """How many bytes it holds."""
        return len(self.data)

    def array(self):
        """The same bytes as a numpy array, which cannot be changed and takes no further room."""
        import numpy as np

        return np.frombuffer(self.data, np.uint8)


class Sums(NamedTuple):
    """Two check sums of an image, as people write them down: CRC-32 and SHA-256 in hex."""

    crc32: str
    sha256: str


def read_image(path: str | Path) -> Image:
    """The image in the file at `path`.

    Raises RepairlibError for a folder, a pipe or a device, an empty file, more than 256 MiB, and
    for what the disk does not give.
    """
    return image_of(read_bytes(path, LARGEST, _ACCEPTED), Path(path).name)


def image_of(data: bytes, name: str = "the image") -> Image:
    """The image that these bytes are; in its name is written out what cannot be seen.

    >>> image_of(b"\\x00\\xff").size, image_of(b"\\x00", "two\\nlines").name
    (2, 'two\\\\nlines')
    """
    if not data:
        raise RepairlibError(name, "it is empty", _ACCEPTED)
    return Image(escaped(name), data)


def sums(image: Image) -> Sums:
    """The check sums of an image: CRC-32 as in ISO 3309 and zlib, SHA-256 as in FIPS 180-4.

    >>> sums(image_of(b"123456789")).crc32
    'CBF43926'
    """
    return Sums(f"{zlib.crc32(image.data):08X}", hashlib.sha256(image.data).hexdigest())


def save_new(data: bytes, path: str | Path) -> None:
    """Write a new file: whole, or not at all. One that is there already is never touched.

    Raises RepairlibError when there is something at `path`, and when the disk refuses.
    """
    path = Path(path)
    try:
        put_new(path, data)
    except FileExistsError:
        wrong = "there is something of this name already, and it is not written over"
        raise RepairlibError(path, wrong, "a new name") from None
    except (OSError, ValueError) as problem:
        wrong = f"cannot be written ({getattr(problem, 'strerror', None) or problem})"
        raise RepairlibError(path, wrong, "a place that can be written to") from None
