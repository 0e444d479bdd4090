"""Small JSON files that survive a crash, a second kernel and a bad copy.

A file is written whole beside the old one and then put in its place. A file that cannot be read
as this version's is kept aside under another name, never overwritten.
"""

from __future__ import annotations

import json
import os
import stat
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import partial
from pathlib import Path

from repairlib.core import saving
from repairlib.core.typed.textfile import bytes_of

FORMAT = 1
WRITABLE = "a folder that can be written, set in REPAIRLIB_HOME, on a disk with room"
saying_why = partial(saving.saying_why, accepted=WRITABLE)


@contextmanager
def locked(path: Path) -> Iterator[None]:
    """Hold the right to change `path` alone; a folder made for it is its owner's alone.

    Names, answers and marks lie in such folders. Raises RepairlibError when it cannot be had.
    """
    make_private(path.parent)
    with saving.locked(path, WRITABLE):
        yield


def make_private(folder: Path) -> None:
    """Make a folder, and those above it, for its owner alone; one that is there stays as it is.

    Raises RepairlibError when it cannot be made.
    """
    with saying_why(folder):
        for missing in reversed([one for one in (folder, *folder.parents) if not one.exists()]):
            missing.mkdir(mode=0o700, exist_ok=True)


def read(path: Path, is_ours: Callable[[dict], bool]) -> tuple[dict | None, str]:
    """What `path` holds, or None with a reason in words when it cannot be used.

    A file that is not there is None with no reason. Changes nothing. Raises RepairlibError when
    the folder or the file may not be read, and for a folder, pipe or device in its place.
    """
    with saying_why(path):
        try:
            content = bytes_of(path)
        except FileNotFoundError:
            return None, ""
    if not content.strip():
        return None, "it is empty"
    try:
        found = json.loads(content)
    except (ValueError, RecursionError):
        return None, "it is cut short or is not JSON"
    version = found.get("format") if isinstance(found, dict) else None
    if type(version) is int and version > FORMAT:
        return None, f"it is of a later version ({version}; this one reads {FORMAT})"
    if version != FORMAT or not is_ours(found):
        return None, "it does not hold what it should"
    return found, ""


def write(path: Path, content: dict, mode: int | None = None) -> None:
    """Put `content` in `path`: all of it or none of it. Call it while `path` is locked.

    `mode` as of `put_in_place`.
    """
    text = json.dumps({**content, "format": FORMAT}, indent=1)
    put_in_place(path, text.encode("ascii") + b"\n", mode)


def put_in_place(path: Path, data: bytes, mode: int | None = None) -> None:
    """Put `data` in `path`, all of it or none of it; `mode` says who may read it, else who did.

    Nobody else may be writing there. Raises RepairlibError when it cannot be written.
    """
    with saying_why(path):
        path = Path(os.path.realpath(path))  # what a link leads to is written, the link stays
        fresh = path.with_name(path.name + ".new")
        fresh.unlink(missing_ok=True)  # half written by a killed kernel, or a link to elsewhere
        try:
            with open(fresh, "xb", opener=_for_nobody_else if mode is not None else None) as file:
                file.write(data)
                file.flush()
                os.fsync(file.fileno())
            if mode is None and path.exists():
                mode = stat.S_IMODE(path.stat().st_mode)
            if mode is not None:
                os.chmod(fresh, mode)
            os.replace(fresh, path)
        except BaseException:  # a full disk gets its room back
            fresh.unlink(missing_ok=True)
            raise
        saving.sync_folder(path.parent)


def _for_nobody_else(path: str, flags: int) -> int:
    """Open a file that only its owner reads, until it is said who may."""
    return os.open(path, flags, 0o600)


def read_or_keep_aside(path: Path, is_ours: Callable[[dict], bool]) -> tuple[dict | None, str]:
    """What `path` holds, or None and one sentence on the file that was kept aside."""
    found, trouble = read(path, is_ours)
    if not trouble:
        return found, ""
    with locked(path):
        return settle(path, is_ours)


def settle(path: Path, is_ours: Callable[[dict], bool]) -> tuple[dict | None, str]:
    """`read_or_keep_aside` for those who hold `path` locked already.

    The bad file gets the first free name beside it, so that no earlier one is overwritten.
    """
    found, trouble = read(path, is_ours)
    if not trouble:
        return found, ""
    number = 1
    while (aside := path.with_name(f"{path.stem}.kept-{number}{path.suffix}")).exists():
        number += 1
    with saying_why(path):
        os.rename(path, aside)
    return None, f"The saved file could not be used: {trouble}. It is kept as {aside}."
