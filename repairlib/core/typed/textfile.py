"""A text file as it comes from other people's computers: its encoding found, and said.

Covers UTF-8 (with or without byte order mark), UTF-16 with one, and Windows-1252. Anything that
is not text is refused with a reason. What the text means is read elsewhere.
"""

from __future__ import annotations

import codecs
from dataclasses import dataclass
from pathlib import Path

from repairlib.core import plain_file
from repairlib.core.errors import RepairlibError

LARGEST = 64_000_000  # bytes; a parts list of a million lines
# All of ASCII's control characters but tab, line feed, form feed and carriage return.
_CONTROLS = bytes({*range(32), 127} - set(b"\t\n\f\r"))
_ACCEPTED = "a text file saved as CSV or plain text, best in UTF-8"
_SIGNATURES = {
    b"PK\x03\x04": "a zip file or spreadsheet workbook",
    b"%PDF": "a PDF",
    b"\x89PNG": "a picture",
    b"\xff\xd8\xff": "a picture",
    b"\xd0\xcf\x11\xe0": "an old spreadsheet workbook",
    b"\x1f\x8b": "a compressed file",
}


@dataclass(eq=False, slots=True)
class TextFile:
    """The `text` of a file, and `note`: what its encoding was when it was not plain UTF-8."""

    text: str
    note: str = ""


def as_text(given: TextFile | str | bytes, name: str = "the data") -> TextFile:
    """What a reader was given, as a TextFile; bytes are decoded.

    Raises RepairlibError as `decode` does, and for what is no text at all.
    """
    if isinstance(given, TextFile):
        return given
    if isinstance(given, bytes):
        return decode(given, name)
    if isinstance(given, str):
        return TextFile(given)
    raise RepairlibError(given, "not a text", _ACCEPTED)


def read_text(path: str | Path) -> TextFile:
    """The text of the file at `path`.

    Raises RepairlibError when the path is a folder or cannot be read, and when the content is
    empty, binary, cut inside a character, or in an encoding that cannot be told.
    """
    data = plain_file.read_bytes(path, LARGEST, _ACCEPTED)
    return decode(data, Path(path).name)


def bytes_of(path: Path) -> bytes:
    """What the file at `path` holds, as `core.plain_file` reads it, up to LARGEST."""
    return plain_file.bytes_of(path, LARGEST, _ACCEPTED)


def decode(data: bytes, name: str = "the data") -> TextFile:
    r"""The text of `data`; `name` is used in messages.

    >>> decode("C1,10µF".encode("cp1252")).note
    'not UTF-8: read as Windows-1252'
    >>> decode("C1,10µF".encode("utf-8")).text
    'C1,10µF'
    """
    if not data.strip():
        raise RepairlibError(name, "the file is empty", _ACCEPTED)
    for signature, what in _SIGNATURES.items():
        if data.startswith(signature):
            raise RepairlibError(name, f"this is {what}, not text", _ACCEPTED)
    if data.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        text = _strictly(data, "utf-16", name)
        _refuse_controls(text.encode("utf-8", "surrogatepass"), name)
        return TextFile(text, "read as UTF-16")
    if b"\0" in data:
        where = data.index(b"\0")
        wrong = f"a NUL byte at byte {where + 1}: binary, or UTF-16 without its byte order mark"
        raise RepairlibError(name, wrong, _ACCEPTED)
    _refuse_controls(data, name)
    if data.startswith(codecs.BOM_UTF8):
        return TextFile(_strictly(data, "utf-8-sig", name), "read as UTF-8 with byte order mark")
    try:
        return TextFile(data.decode("utf-8"))
    except UnicodeDecodeError as problem:
        if problem.end == len(data) and "unexpected end" in problem.reason:
            raise _cut(name) from None
    return TextFile(_strictly(data, "cp1252", name), "not UTF-8: read as Windows-1252")


def _strictly(data: bytes, encoding: str, name: str) -> str:
    try:
        return data.decode(encoding)
    except UnicodeDecodeError as problem:
        if encoding != "cp1252" and problem.end == len(data):
            raise _cut(name) from None
        wrong = f"byte {problem.start + 1} fits no encoding known here"
        raise RepairlibError(name, wrong, _ACCEPTED) from None


def _cut(name: str) -> RepairlibError:
    return RepairlibError(name, "the file ends inside a character: it was cut off", "a whole file")


def _refuse_controls(data: bytes, name: str) -> None:
    """Raise an error when `data` holds characters that no typed list holds."""
    if len(data.translate(None, _CONTROLS)) == len(data):
        return
    where = min(data.index(control) for control in _CONTROLS if control in data)
    line = data.count(b"\n", 0, where) + 1
    wrong = f"control character {data[where]} on line {line}: this is not plain text"
    raise RepairlibError(name, wrong, _ACCEPTED)
