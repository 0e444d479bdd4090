"""What everything that saves needs: one writer at a time, names that stay, refusals in one line."""

from __future__ import annotations

import os
import sys
import tempfile
import time
from contextlib import contextmanager, suppress
from pathlib import Path

from repairlib.core.errors import RepairlibError

PATIENCE = 10.0  # seconds to wait for another program that is writing
AGAIN = 0.01  # seconds between two tries
FOLDER = "a folder that can be written, on a disk with room"


@contextmanager
def locked(path: Path, accepted: str = FOLDER):
    """Hold the right to change `path` alone, and make its folder where there is none.

    The lock is a file beside it, and the system lets go of it when its holder is killed. Raises
    RepairlibError when it cannot be had.
    """
    with saying_why(path, accepted):
        path.parent.mkdir(parents=True, exist_ok=True)
        beside = os.open(path.with_name(path.name + ".lock"), os.O_RDWR | os.O_CREAT, 0o644)
    try:
        with saying_why(path, accepted):
            _wait_for(beside, path)
        yield
    finally:
        with suppress(OSError):  # it may not be ours, and to close it lets go of it as well,
            _let_go(beside)  # but not while a process that was forked meanwhile has it open
        os.close(beside)


@contextmanager
def saying_why(path: Path, accepted: str = FOLDER):
    """Turn what the system refuses into one clear line."""
    try:
        yield
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        raise RepairlibError(path, f"this cannot be read or saved: {reason}", accepted) from error


def put_new(path: Path, data: bytes, overwrite: bool = False) -> None:
    """Write `data` to `path` in one step: a reader sees the whole file or none.

    It is written beside, and takes its name when it is whole; what cannot be written leaves nothing
    behind. Raises FileExistsError when there is something at `path`, unless `overwrite`, and
    OSError when the disk refuses.
    """
    handle, beside = tempfile.mkstemp(prefix=".saving-", dir=path.parent)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        os.chmod(beside, 0o644)
        if overwrite:
            os.replace(beside, path)
        else:
            _move_without_overwriting(beside, path)
    finally:
        Path(beside).unlink(missing_ok=True)


def _move_without_overwriting(beside: str, path: Path) -> None:
    try:
        os.link(beside, path)  # fails when `path` exists, even if it came up just now
    except FileExistsError:
        raise
    except OSError:  # a file system without hard links
        if os.path.lexists(path):
            raise FileExistsError(path) from None
        os.replace(beside, path)


def sync_folder(folder: Path) -> None:
    """Let the names in `folder`, new ones too, reach the disk."""
    if os.name != "posix":
        return
    opened = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(opened)
    finally:
        os.close(opened)


def add_line(path: Path, line: bytes, before: bytes) -> None:
    """Write one line at the end of a file that holds `before`; it is on the disk on return.

    What a killed process left of a line stays as a line of its own, and this one begins below it.
    Call it while `path` is locked.
    """
    torn = bool(before) and not before.endswith(b"\n")
    write_at_end(path, (b"\n" if torn else b"") + line + b"\n")


def write_at_end(path: Path, left: bytes) -> None:
    """Write at the end of a file that is there; it is on the disk on return."""
    opened = os.open(path, os.O_WRONLY | os.O_APPEND | getattr(os, "O_BINARY", 0))
    try:
        while left:
            left = left[os.write(opened, left) :]
        os.fsync(opened)
    finally:
        os.close(opened)


def _wait_for(beside: int, path: Path) -> None:
    end = time.monotonic() + PATIENCE
    while not _took(beside):
        if time.monotonic() > end:
            wrong = f"another program has held this file for {PATIENCE:g} s"
            raise RepairlibError(path, wrong, "one more try when it has finished")
        time.sleep(AGAIN)


def _took(beside: int) -> bool:
    try:
        _take(beside)
    except (BlockingIOError, PermissionError):  # somebody else has it: EAGAIN, or EACCES
        return False
    return True


if sys.platform == "win32":
    import msvcrt

    def _take(beside: int) -> None:
        msvcrt.locking(beside, msvcrt.LK_NBLCK, 1)

    def _let_go(beside: int) -> None:
        msvcrt.locking(beside, msvcrt.LK_UNLCK, 1)

else:
    import fcntl

    def _take(beside: int) -> None:
        fcntl.flock(beside, fcntl.LOCK_EX | fcntl.LOCK_NB)

    def _let_go(beside: int) -> None:
        fcntl.flock(beside, fcntl.LOCK_UN)
