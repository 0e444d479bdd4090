"""The bytes of a plain file, which is read only: no folder, pipe, device or endless one."""

from __future__ import annotations

import os
import stat
from pathlib import Path

from repairlib.core.errors import RepairlibError


def bytes_of(path: Path, largest: int, accepted: str) -> bytes:
    """What the file at `path` holds; at most `largest` bytes and one are read, whatever its size.

    Pipes and devices may never end, or never begin: they are refused without being opened.
    Raises RepairlibError for these, for a folder and for more than `largest`, where `accepted`
    says what would do; else OSError.
    """
    seen = path.stat()
    mode = seen.st_mode
    if stat.S_ISDIR(mode):
        raise RepairlibError(path.name or path, "this is a folder", "the path of one file")
    if not stat.S_ISREG(mode):
        wrong = "this is a pipe or a device, which may never end"
        raise RepairlibError(path, wrong, "the path of one file, saved before")
    data = b""
    if seen.st_size <= largest:
        with open(path, "rb") as file:
            data = file.read(largest + 1)
    if max(seen.st_size, len(data)) > largest:  # it may have grown meanwhile
        raise RepairlibError(path.name, f"larger than {size_in_words(largest)}", accepted)
    return data


def read_bytes(path: str | Path, largest: int, accepted: str) -> bytes:
    """What the file at `path` holds, as `bytes_of`; RepairlibError also when the disk refuses."""
    path = Path(path)
    try:
        return bytes_of(path, largest, accepted)
    except (OSError, ValueError) as problem:
        if isinstance(problem, RepairlibError):
            raise
        reason = getattr(problem, "strerror", None) or str(problem)
        raise RepairlibError(path, f"cannot be read ({reason})", "a file that exists") from None


def is_one_file(one: str | Path, other: str | Path) -> bool:
    """Whether two paths lead to one and the same file, as links do; False where one leads nowhere.

    >>> is_one_file(__file__, Path(__file__).parent / ".." / "core" / Path(__file__).name)
    True
    """
    try:
        return os.path.samefile(one, other)
    except (OSError, ValueError):
        return False


def size_in_words(size: int) -> str:
    """A number of bytes as people say it: in MiB, MB or KiB where that is a whole number.

    >>> size_in_words(8 << 20), size_in_words(65536), size_in_words(64_000_000), size_in_words(1)
    ('8 MiB', '64 KiB', '64 MB', '1 byte')
    """
    for name, unit in (("MiB", 1 << 20), ("MB", 1_000_000), ("KiB", 1 << 10)):
        if size and size % unit == 0:
            return f"{size // unit:,} {name}"
    return f"{size:,} byte{'s' if size != 1 else ''}"
