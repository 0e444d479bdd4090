"""Files that the writing of a chip rests on: remembered by what they held, and looked at again."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from repairlib.core.errors import RepairlibError
from repairlib.core.plain_file import is_one_file
from repairlib.firmware.image_file import Image, read_image, sums


@dataclass(frozen=True, slots=True)
class StoredFile:
    """A file that was seen: its path, and the SHA-256 of what it held."""

    path: Path
    sha256: str


def seen(path: str | Path) -> tuple[Image, StoredFile]:
    """The image at a path, and the file as it is remembered."""
    if not isinstance(path, str | Path) or not str(path):
        raise RepairlibError(path, "no file is named", "the path of a file")
    where = Path(path).absolute()
    image = read_image(where)
    return image, StoredFile(where, sums(image).sha256)


def seen_whole(path: str | Path, capacity: int, what: str) -> tuple[Image, StoredFile]:
    """The same, of an image that has to be as large as the chip."""
    image, stored = seen(path)
    if image.size != capacity:
        wrong = f"it has {image.size:,} bytes, and the chip {capacity:,}"
        raise RepairlibError(stored.path.name, wrong, what)
    return image, stored


def is_another_file(stored: StoredFile, known: tuple[StoredFile, ...], wrong: str) -> None:
    """Refuse a file that is one of those known, also by another name."""
    for one in known:
        if one.path == stored.path or is_one_file(one.path, stored.path):
            raise RepairlibError(stored.path.name, wrong, "a new read in a file of its own")


def still_there(stored: StoredFile) -> Image:
    """The image in a file that was seen before; RepairlibError when it is gone or has changed."""
    try:
        image = read_image(stored.path)
    except RepairlibError as error:
        wrong = f"it was stored here and {error.wrong} now: nothing more is erased or written"
        raise RepairlibError(stored.path, wrong, "the file back in its place") from None
    if sums(image).sha256 != stored.sha256:
        wrong = "it has changed since it was stored: nothing more is erased or written"
        raise RepairlibError(stored.path, wrong, "the file as it was stored")
    return image
