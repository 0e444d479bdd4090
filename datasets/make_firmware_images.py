"""Writes demo/printer-*.bin: images of the firmware chips of three boards, the same on every run.

    python datasets/make_firmware_images.py

The boards are of one kind: the controller that came to the bench, and two sisters of it that work.
All of it is invented, and no processor would run it: the code only has the look of code, the text
that of text. What only one board has stands in its settings: a serial number, a network address
(twice, as bytes and as text) and the calibration of its print head.

An update of the first board was cut short: one block is erased, the next one only begun, and the
last bytes that were written have lost ones.
"""

from __future__ import annotations

import zlib
from collections.abc import Iterator
from hashlib import sha256
from pathlib import Path
from typing import NamedTuple

DEMO = Path(__file__).parent / "demo"
SIZE = 64 << 10  # bytes: a chip of 512 kbit
CODE, TEXT, SHAPES, SETTINGS, REST = 0x0100, 0xB000, 0xD000, 0xE000, 0xF000  # where each begins
ERASED, BEGUN = range(0x5000, 0x6000), range(0x6000, 0x7000)  # what the update left behind
SOUND, LOST = 0x0480, 0x0490  # in the block begun: so far all is well, and so far it got
BAD_CONTACT = ((0x2340, 0x23C0), (0x8E00, 0x9010), (0xB7C4, 0xB7E0), (0xE0F8, 0xE110))
ERASED_BYTE = 0xFF
# What code is made of here: a few bytes come up often, as instructions do.
USUAL = bytes.fromhex("00 00 00 01 02 04 08 10 20 3E 47 48 4E 60 66 67 B0 D0 E5 F0 FF 75")
WORDS = ("paper", "tray", "door", "ribbon", "head", "motor", "page", "line", "buffer", "port")
STATES = ("ready", "is out", "is open", "too warm", "not found", "waits", "jammed", "is back")


class Board(NamedTuple):
    """What is its own to each board."""

    name: str
    serial: str
    address: str  # with the bit set of addresses that somebody gave, and no maker
    shift: int  # of its print head, in steps


OWN = Board("controller", "PB-204117", "02:5A:C3:10:41:17", 11)
SISTER = Board("sister", "PB-204162", "02:5A:C3:10:41:62", -7)
OTHER = Board("other-sister", "PB-203980", "02:5A:C3:10:39:80", 23)


def files() -> dict[str, bytes]:
    """Each file by its name: two equal reads, one with a bad contact, the images of the sisters."""
    old = cut_short(image_of(OWN))
    return {
        "printer-read-first.bin": old,
        "printer-read-second.bin": old,
        "printer-read-loose-clip.bin": badly_read(old),
        "printer-sister.bin": image_of(SISTER),
        "printer-other-sister.bin": image_of(OTHER),
    }


def image_of(board: Board) -> bytes:
    """All that the firmware chip of a board holds."""
    program = _code() + _text() + _shapes()
    title = b"PRINTER CONTROLLER REV B\0FIRMWARE 1.04\0"
    check = zlib.crc32(program).to_bytes(4, "big")
    head = (title + check).ljust(CODE, b"\0")
    return (head + program + _settings(board)).ljust(SIZE, bytes([ERASED_BYTE]))


def cut_short(image: bytes) -> bytes:
    """The image as an update leaves it that lost its power while it was written."""
    block = image[BEGUN.start : BEGUN.stop]
    spoilt = bytes(byte & 0x18 for byte in block[SOUND:LOST])
    begun = (block[:SOUND] + spoilt).ljust(len(BEGUN), bytes([ERASED_BYTE]))
    erased = bytes([ERASED_BYTE]) * len(ERASED)
    return image[: ERASED.start] + erased + begun + image[BEGUN.stop :]


def badly_read(image: bytes) -> bytes:
    """The image as a clip reads it that lets go now and then: only ones arrive."""
    read = bytearray(image)
    for begin, end in BAD_CONTACT:
        read[begin:end] = bytes([ERASED_BYTE]) * (end - begin)
    return bytes(read)


def _code() -> bytes:
    """Bytes with the look of code: the usual ones often, numbers of all kinds between them."""
    chance, made = _chance("code"), bytearray()
    while len(made) < TEXT - CODE:
        made.append(USUAL[next(chance) % len(USUAL)])
        if next(chance) % 3:
            made.append(next(chance))
    return bytes(made[: TEXT - CODE])


def _text() -> bytes:
    """Messages, each with a zero at its end."""
    chance, made = _chance("text"), bytearray()
    while len(made) < SHAPES - TEXT:
        what, how = WORDS[next(chance) % len(WORDS)], STATES[next(chance) % len(STATES)]
        made += f"{what} {next(chance) % 9 + 1} {how}".encode() + b"\0"
    return bytes(made[: SHAPES - TEXT - 1]) + b"\0"


def _shapes() -> bytes:
    """The dots of characters: mostly empty rows, each like the one above it."""
    chance, made = _chance("shapes"), bytearray()
    while len(made) < SETTINGS - SHAPES:
        stroke = next(chance) & 0x7E
        made += bytes(stroke & (0x7E >> row % 3) if 1 <= row <= 9 else 0 for row in range(16))
    return bytes(made)


def _settings(board: Board) -> bytes:
    """The block of what belongs to one board, with 0xFF where nothing stands."""
    block = bytearray([ERASED_BYTE]) * (REST - SETTINGS)
    _put(block, 0x000, f"serial={board.serial}\0model=B\0language=en\0".encode())
    _put(block, 0x040, bytes.fromhex(board.address.replace(":", "")))
    _put(block, 0x080, f"net={board.address}\0".encode())
    _put(block, 0x100, b"".join(step.to_bytes(2, "big") for step in _calibration(board)))
    return bytes(block)


def _put(block: bytearray, where: int, data: bytes) -> None:
    block[where : where + len(data)] = data


def _calibration(board: Board) -> list[int]:
    """64 steps of the print head along the line: nearly the same on each board, and never quite."""
    chance = _chance(board.serial)
    return [2048 + 16 * place + board.shift + next(chance) % 5 for place in range(64)]


def _chance(seed: str) -> Iterator[int]:
    """Bytes without end that are the same on every Python."""
    count = 0
    while True:
        yield from sha256(f"{seed} {count}".encode()).digest()
        count += 1


if __name__ == "__main__":
    for name, data in files().items():
        (DEMO / name).write_bytes(data)
