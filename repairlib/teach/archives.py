"""What lies in a place: every file of a folder, a drive or an archive, read within limits.

A place is walked in a fixed order, by name. Zip archives are read member by member into memory;
nothing is ever unpacked to a disk. A link is told and not followed, a pipe or device is not opened.
Whatever cannot be taken in is met all the same, with the reason, so that nothing goes missing.
"""

from __future__ import annotations

import io
import os
import stat
import struct
import zipfile
import zlib
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.learn.hand_in import LARGEST

TOO_LARGE, TOO_DEEP, LINK = "too large", "too deep", "link"
PATH_TRICK, ENCRYPTED, DAMAGED = "path trick", "encrypted", "damaged"
NO_FILE, UNREADABLE, NO_HAND_IN = "no plain file", "cannot be read", "no hand-in"

DEEPEST = 20  # folders in folders
MOST_FILES = 100_000  # of all places together, members of archives too
LARGEST_ARCHIVE = 2_000_000_000  # bytes on the disk; it is not read whole
LARGEST_INSIDE = 20_000_000  # bytes of an archive inside an archive, which is read whole
MOST_UNPACKED = 500_000_000  # bytes out of one archive
LARGEST_DIRECTORY = 4_000_000  # bytes of the list of members at the end of an archive
HIGHEST_RATIO = 100  # times its packed size; what learners hand in is packed to a third

ZIP = b"PK\x03\x04", b"PK\x05\x06"
OTHER_ARCHIVES = {
    b"\x1f\x8b": "gzip",
    b"BZh": "bzip2",
    b"\xfd7zXZ": "xz",
    b"7z\xbc\xaf": "7z",
    b"Rar!": "rar",
}
END, END_SIZE = b"PK\x05\x06", 22  # of the list of members
LATER_END, LATER_END_SIZE = b"PK\x06\x07", 20  # stands before it where numbers are too large
ENCRYPTED_FLAG = 0x1


class Met(NamedTuple):
    """A file that was met: its path on the disk, and the way to it inside of archives.

    `inside` counts members from 0, one number for each archive. `outcome` and `why` say why it
    cannot be taken in, and are "" where it can be read.
    """

    path: str
    inside: tuple[int, ...] = ()
    shown: str = ""
    outcome: str = ""
    why: str = ""

    def refused(self, outcome: str, why: str) -> Met:
        """The same file with the reason why it is not taken in."""
        return self._replace(outcome=outcome, why=why)


class Refused(Exception):
    """What was met cannot be read: the outcome, and why."""

    def __init__(self, outcome: str, why: str):
        super().__init__(outcome, why)
        self.outcome, self.why = outcome, why


def walk(places: Iterable[str | Path]) -> Iterator[tuple[Met, bytes]]:
    """Every file and member in the places, in a fixed order, with what it holds.

    What cannot be taken in holds nothing. Raises RepairlibError for a place that is not there.
    """
    found = [Path(os.path.realpath(Path(place).expanduser())) for place in places]
    for place in found:
        if not place.exists():
            raise RepairlibError(place, "there is no such place", "a folder, a zip or a file")
    count = 0
    for place in dict.fromkeys(found):
        for met, data in _in_place(place):
            count += 1
            if count > MOST_FILES:
                wrong = f"more than {MOST_FILES:,} files: what comes behind this was not looked at"
                yield met.refused(TOO_LARGE, wrong), b""
                return
            yield met, data


class Reader:
    """Reads what was met again. The last archive stays open, since its neighbours come next."""

    def __init__(self) -> None:
        self._path = ""
        self._archive: zipfile.ZipFile | None = None

    def read(self, met: Met) -> bytes:
        """What the file holds. Raises Refused when it can no longer be read."""
        if not met.inside:
            return _content(met.path)[0]
        if met.path != self._path:
            self.close()
            self._archive, self._path = _opened(_file(met.path)), met.path
        archive = self._archive
        for number in met.inside:
            if archive is None or number >= len(archive.infolist()):
                raise Refused(DAMAGED, "the archive has changed meanwhile")
            data = _member(archive, archive.infolist()[number])
            archive = _opened(io.BytesIO(data)) if data.startswith(ZIP) else None
        return data

    def close(self) -> None:
        """Close the archive that is open."""
        if self._archive is not None:
            self._archive.close()
        self._archive, self._path = None, ""


def _in_place(place: Path) -> Iterator[tuple[Met, bytes]]:
    if place.is_dir():
        yield from _in_folder(place, place.name or str(place), 0)
    else:
        yield from _in_file(Met(str(place), (), place.name))


def _in_folder(folder: Path, shown: str, depth: int) -> Iterator[tuple[Met, bytes]]:
    met = Met(str(folder), (), shown)
    if depth > DEEPEST:
        yield met.refused(TOO_DEEP, f"more than {DEEPEST} folders deep"), b""
        return
    try:
        with os.scandir(folder) as entries:
            found = sorted(entries, key=lambda entry: os.fsencode(entry.name))
    except OSError as problem:
        yield met.refused(UNREADABLE, problem.strerror or "the disk says no"), b""
        return
    for entry in found:
        inner = f"{shown}/{_printable(entry.name)}"
        if entry.is_symlink():
            yield Met(entry.path, (), inner, LINK, "a link; links are not followed"), b""
        elif entry.is_dir(follow_symlinks=False):
            yield from _in_folder(Path(entry.path), inner, depth + 1)
        else:
            yield from _in_file(Met(entry.path, (), inner))


def _in_file(met: Met) -> Iterator[tuple[Met, bytes]]:
    try:
        data, is_archive = _content(met.path)
        if not is_archive:
            yield met, data
            return
        file = _file(met.path)
    except Refused as reason:
        yield met.refused(reason.outcome, reason.why), b""
        return
    with file:
        yield from _in_archive(met, file)


def _in_archive(met: Met, file) -> Iterator[tuple[Met, bytes]]:
    """The members of an archive; of one inside another its members too, and no further."""
    try:
        archive = _opened(file)
    except Refused as reason:
        yield met.refused(reason.outcome, reason.why), b""
        return
    seen: dict[str, int] = {}
    unpacked = 0
    for number, info in enumerate(archive.infolist()):
        name = info.orig_filename
        seen[name] = times = seen.get(name, 0) + 1
        again = f" (number {times} of this name)" if times > 1 else ""
        member = Met(met.path, (*met.inside, number), f"{met.shown} > {_printable(name)}{again}")
        if info.is_dir() and not info.file_size and not _leads_out(name):
            continue
        try:
            if unpacked > MOST_UNPACKED:
                raise Refused(TOO_LARGE, f"the archive unpacks to over {MOST_UNPACKED:,} bytes")
            data = _member(archive, info)
            unpacked += len(data)
            if not data.startswith(ZIP):
                yield member, data
            elif met.inside:
                raise Refused(TOO_DEEP, "an archive in an archive in an archive")
            else:
                yield from _in_archive(member, io.BytesIO(data))
        except Refused as reason:
            yield member.refused(reason.outcome, reason.why), b""


def _file(path: str):
    """The plain file at `path`, opened. A link, a pipe or a device is never opened."""
    flags = os.O_RDONLY | getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_NONBLOCK", 0)
    try:
        if not stat.S_ISREG(os.lstat(path).st_mode):
            raise Refused(NO_FILE, "a pipe, a device or a link, which is not opened")
        return open(os.open(path, flags | getattr(os, "O_BINARY", 0)), "rb")
    except OSError as problem:
        raise Refused(UNREADABLE, problem.strerror or "the disk says no") from None


def _content(path: str) -> tuple[bytes, bool]:
    """What a file holds, or b"" and True for an archive that is to be opened."""
    with _file(path) as file:
        try:
            start = file.read(8)
            size = os.fstat(file.fileno()).st_size
            if start.startswith(ZIP):
                if size > LARGEST_ARCHIVE:
                    raise Refused(TOO_LARGE, f"an archive of {size:,} bytes")
                return b"", True
            _refuse_other_archives(start)
            if size > LARGEST:
                raise Refused(TOO_LARGE, f"{size:,} bytes; what is handed in has under {LARGEST:,}")
            return start + file.read(LARGEST + 1 - len(start)), False
        except OSError as problem:
            raise Refused(UNREADABLE, problem.strerror or "the disk says no") from None


def _opened(file) -> zipfile.ZipFile:
    """The archive in a file, once its list of members is known to be of a sane length."""
    size = file.seek(0, io.SEEK_END)
    file.seek(max(0, size - 0xFFFF - END_SIZE))
    tail = file.read()
    at = tail.rfind(END)
    if at < 0 or len(tail) < at + END_SIZE:
        raise Refused(DAMAGED, "the archive has no end: it was cut short")
    members, length = struct.unpack_from("<HL", tail, at + 10)
    if length > LARGEST_DIRECTORY or tail[max(0, at - LATER_END_SIZE) :].startswith(LATER_END):
        raise Refused(TOO_LARGE, f"an archive of more than {members:,} members")
    try:
        return zipfile.ZipFile(file)
    except (zipfile.BadZipFile, ValueError, NotImplementedError, struct.error, OSError):
        raise Refused(DAMAGED, "the list of members in the archive is damaged") from None


def _member(archive: zipfile.ZipFile, info: zipfile.ZipInfo) -> bytes:
    """What a member holds, unpacked in memory up to the limits."""
    kind = stat.S_IFMT(info.external_attr >> 16)
    if _leads_out(info.orig_filename):
        raise Refused(PATH_TRICK, "its name leads out of the archive")
    if kind == stat.S_IFLNK:
        raise Refused(LINK, "a link; links are not followed")
    if kind not in (0, stat.S_IFREG, stat.S_IFDIR):
        raise Refused(NO_FILE, "a pipe or a device")
    if info.flag_bits & ENCRYPTED_FLAG:
        raise Refused(ENCRYPTED, "encrypted; it takes a password")
    if info.compress_type not in (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED):
        raise Refused(UNREADABLE, "packed in a way that is not read here")
    if info.file_size > HIGHEST_RATIO * max(info.compress_size, 1000):
        raise Refused(TOO_LARGE, f"unpacks to over {HIGHEST_RATIO} times its size")
    try:
        with archive.open(info) as member:
            start = member.read(8)
            _refuse_other_archives(start)
            most = LARGEST_INSIDE if start.startswith(ZIP) else LARGEST
            if info.file_size > most:
                raise Refused(TOO_LARGE, f"{info.file_size:,} bytes; taken in up to {most:,}")
            data = start + member.read(most + 1 - len(start))
    except (zipfile.BadZipFile, zlib.error, EOFError, ValueError, NotImplementedError, OSError):
        raise Refused(DAMAGED, "this member of the archive is damaged") from None
    if len(data) > most:
        raise Refused(TOO_LARGE, f"unpacks to more than it says, over {most:,} bytes")
    return data


def _refuse_other_archives(start: bytes) -> None:
    for signature, kind in OTHER_ARCHIVES.items():
        if start.startswith(signature):
            raise Refused(NO_HAND_IN, f"an archive of the kind {kind}; only zip is opened")


def _leads_out(name: str) -> bool:
    """True for a name that would leave the folder in which it was unpacked."""
    parts = name.replace("\\", "/").split("/")
    return ".." in parts or name[:1] in ("/", "\\") or name[1:2] == ":" or "\0" in name


def _printable(name: str) -> str:
    """A name that a terminal and a page can show, cut where it is very long."""
    from repairlib.core.errors import escaped

    text = name.encode("utf-8", "backslashreplace").decode()
    return escaped(text if len(text) <= 200 else f"{text[:199]}…")
