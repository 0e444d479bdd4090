"""Invented boards of one kind: the same code, and settings that are each board's own."""

from __future__ import annotations

import random
import struct

CODE, SETTINGS = 24_576, 4096  # bytes; the settings stand behind the code
USUAL = bytes.fromhex("00 00 00 01 02 04 08 10 20 3E 47 48 4E 60 66 67 B0 D0 E5 F0 FF 75")
WORDS = (b"error %d\0", b"Serial port open\0", b"mac layer\0", b"ver 1.04\0", b"SN mismatch\0")


def code(seed: int, size: int = CODE) -> bytes:
    """Bytes with the look of code: usual ones, pointers, words and numbers."""
    chance, made = random.Random(seed), bytearray()
    while len(made) < size:
        match chance.randrange(6):
            case 0:
                made += chance.choice(WORDS)
            case 1:
                made += struct.pack("<I", 0x0800_0000 + chance.randrange(0, 1 << 18, 4))
            case 2:
                made += chance.randbytes(4)
            case _:
                made += bytes(chance.choices(USUAL, k=4))
    return bytes(made[:size])


def patched(data: bytes, seed: int, places: int) -> bytes:
    """The same code with that many small changes, as another build of it has."""
    chance, made = random.Random(seed), bytearray(data)
    for _ in range(places):
        at, length = chance.randrange(len(made) - 8), chance.choice((1, 2, 2, 3, 4))
        made[at : at + length] = chance.randbytes(length)
    return bytes(made)


def board(own: dict[int, bytes], program: bytes | None = None, blank: int = 0xFF) -> bytes:
    """An image: code, and settings with what is `own` at its places, nothing elsewhere."""
    settings = bytearray([blank]) * SETTINGS
    for at, data in own.items():
        settings[at : at + len(data)] = data
    return (code(1) if program is None else program) + bytes(settings) + b"\xff" * 4096
