"""The text on each page of a PDF as Chromium prints it; of other makers' files nothing is promised.

Its objects lie open, its streams are packed with zlib, and each font says which sign is which
letter. Where the letters stand is not looked at: words come in the order in which they are painted.
"""

from __future__ import annotations

import re
import zlib
from collections.abc import Iterator

_OBJECT = re.compile(rb"(\d+) 0 obj\n(.*?)endobj", re.DOTALL)
_PAINTED = re.compile(r"/(\w+) [\d.]+ Tf|<([0-9A-F]+)> Tj|\b(ET)\b")
_RANGE = re.compile(r"<(\w{4})> (?:<(\w{4})> )?<(\w{4})>")


def pages_of(pdf: bytes) -> list[str]:
    """The words of each page; a run of letters that was placed anew begins behind a space."""
    objects = {int(number): body for number, body in _OBJECT.findall(pdf)}
    trees = (body for body in objects.values() if b"/Type /Pages" in body)
    whole = next(body for body in trees if b"/Parent" not in body)
    return [_words(objects, page) for page in _pages(objects, whole)]


def _pages(objects: dict[int, bytes], tree: bytes) -> Iterator[bytes]:
    """The pages below a part of the tree, in their order; of more than eight they make branches."""
    kids = re.search(rb"/Kids \[(.*?)\]", tree, re.DOTALL)
    if kids is None:
        yield tree
        return
    for number in re.findall(rb"(\d+) 0 R", kids[1]):
        yield from _pages(objects, objects[int(number)])


def _words(objects: dict[int, bytes], page: bytes) -> str:
    fonts = re.search(rb"/Font <<(.*?)>>", page, re.DOTALL)
    letters = {
        name.decode(): _letters(objects, objects[int(number)])
        for name, number in re.findall(rb"/(\w+) (\d+) 0 R", fonts[1] if fonts else b"")
    }
    said, of_font = "", {}
    for font, signs, ends in _PAINTED.findall(_stream(objects[_named(page, "Contents")])):
        if font:
            of_font = letters[font]
        if ends and not said.endswith(" "):
            said += " "
        said += "".join(of_font.get(signs[at : at + 4], "?") for at in range(0, len(signs), 4))
    return re.sub(r"\s+", " ", said)


def _letters(objects: dict[int, bytes], font: bytes) -> dict[str, str]:
    """Which letter each sign of a font is, by the sign as it stands in the file."""
    if b"/ToUnicode" not in font:
        return {}
    found: dict[str, str] = {}
    for first, last, letter in _RANGE.findall(_stream(objects[_named(font, "ToUnicode")])):
        low, high = int(first, 16), int(last or first, 16)
        for sign in range(low, high + 1):
            found[f"{sign:04X}"] = chr(int(letter, 16) + sign - low)
    return found


def _named(thing: bytes, key: str) -> int:
    found = re.search(rf"/{key} (\d+) 0 R".encode(), thing)
    assert found, key
    return int(found[1])


def _stream(thing: bytes) -> str:
    packed = thing.partition(b"stream\n")[2].rpartition(b"\nendstream")[0]
    return zlib.decompress(packed).decode("latin-1")
