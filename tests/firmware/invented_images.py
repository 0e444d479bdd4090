"""Invented images, sound and damaged, for the tests of this room. No processor would run them.

Contents are made of what chips hold: code of several makes, text, tables, pictures, compressed and
encrypted data, a file system, settings, blank areas. `sound(chance)` puts them together; the
damages change an image as the fault at the bench would, without regard to how it is found.
"""

from __future__ import annotations

import math
import random
import zlib
from collections.abc import Callable

SAID = (
    "paper tray empty; cover open",
    "Motor feed error at step %d",
    "press any key to continue",
    "firmware image is not valid",
    "temperature of the head too high",
    "waiting for the network",
    "address in use",
    "cannot mount partition %s",
    "self test passed",
    "Version 2.04 of the controller",
    "settings restored to defaults",
    "please close the door and try again",
    "low ink, order a new cartridge",
    "timeout while reading register %04x",
    "Copyright of the invented workshop, all rights reserved",
    "loading the second stage",
    "unknown command, type help",
    "battery voltage below limit",
    "calibration required",
    "Papierfach ist leer",
    "Bitte Klappe schliessen und erneut versuchen",
    "Gerät wird gestartet",
    "le capot est ouvert, veuillez le fermer",
    "erreur de communication avec le moteur",
    "abra la tapa trasera y retire el papel",
    "calibratie van de kop is mislukt",
)


def text(chance: random.Random, size: int, end: str = "\0") -> bytes:
    """Messages, each with the same end."""
    made = bytearray()
    while len(made) < size:
        made += (chance.choice(SAID).replace("%d", str(chance.randrange(99))) + end).encode("latin")
    return bytes(made[:size])


def ascii_lines(chance: random.Random, size: int) -> bytes:
    """A script or a page: letters, digits and signs below 0x80 alone."""
    lines = bytearray()
    while len(lines) < size:
        words = chance.choice(SAID).encode("ascii", "ignore")
        lines += b"%d: %s = {%d, %d};\r\n" % (
            chance.randrange(999),
            words,
            chance.randrange(99),
            chance.randrange(9),
        )
    return bytes(lines[:size])


def utf16(chance: random.Random, size: int) -> bytes:
    """Messages in 16 bits for each letter, low or high byte first."""
    return (
        text(chance, size).decode("latin").encode(chance.choice(("utf-16-le", "utf-16-be")))[:size]
    )


def wide_code(chance: random.Random, size: int, big: bool | None = None) -> bytes:
    """Instructions of 32 bits: few operations, few registers, numbers; either byte first."""
    big = chance.random() < 0.5 if big is None else big
    heads = [chance.randrange(256) for _ in range(12)]
    made = bytearray()
    while len(made) < size:
        number = chance.choice((0, 1, 4, 8, chance.randrange(256), chance.randrange(65536)))
        word = (chance.choice(heads) << 24) | (chance.randrange(32) << 16) | number
        made += word.to_bytes(4, "big" if big else "little")
    return bytes(made[:size])


def narrow_code(chance: random.Random, size: int) -> bytes:
    """Instructions of 16 bits, either byte first."""
    big = chance.random() < 0.5
    heads = [chance.randrange(256) for _ in range(20)]
    made = bytearray()
    while len(made) < size:
        word = (chance.choice(heads) << 8) | (chance.getrandbits(8) & chance.getrandbits(8))
        made += word.to_bytes(2, "big" if big else "little")
    return bytes(made[:size])


def byte_code(chance: random.Random, size: int) -> bytes:
    """Instructions of one to three bytes."""
    heads = [chance.randrange(256) for _ in range(40)]
    made = bytearray()
    while len(made) < size:
        made.append(chance.choice(heads))
        made += chance.randbytes(chance.choice((0, 0, 1, 1, 2)))
    return bytes(made[:size])


def sine(chance: random.Random, size: int) -> bytes:
    """A sine in 16 bits, its values in whole steps; either byte first, signed or not."""
    period = chance.choice((256, 360, 512, 1000, 1024, 2048, 4096))
    height = chance.choice((2047, 4095, 32767))
    order, middle = chance.choice(("big", "little")), chance.choice((0, height))
    return b"".join(
        ((middle + round(height * math.sin(2 * math.pi * at / period))) & 0xFFFF).to_bytes(2, order)
        for at in range(size // 2 + 1)
    )[:size]


def even_table(chance: random.Random, size: int) -> bytes:
    """A curve in bytes that are even throughout, as tables of word addresses are."""
    power = chance.uniform(0.5, 2.5)
    period = chance.choice((256, 300, 1024))
    return bytes(round(127 * (at % period / period) ** power) * 2 for at in range(size))


def seven_bit(chance: random.Random, size: int) -> bytes:
    """Samples of sound in seven bits."""
    level, made = 64.0, bytearray()
    for _ in range(size):
        level += chance.gauss(0, 9) + (64 - level) * 0.1
        made.append(min(127, max(0, round(level))))
    return bytes(made)


def bitmap(chance: random.Random, size: int) -> bytes:
    """The dots of characters and of a logo: mostly empty, rows alike."""
    made = bytearray()
    while len(made) < size:
        row = bytes(chance.choice((0, 0, 0, 255, 0x7E, 0x18, 0x3C)) for _ in range(16))
        made += row * chance.randrange(1, 6)
    return bytes(made[:size])


def palette(chance: random.Random, size: int) -> bytes:
    """Colours of six bits, one a byte."""
    return bytes(chance.randrange(64) for _ in range(size))


def compressed(chance: random.Random, size: int) -> bytes:
    """A compressed stream, with its header."""
    made = b""
    while len(made) < size:
        made += zlib.compress(text(chance, 4000) + chance.randbytes(size // 2 + 99), 9)
    return made[:size]


def encrypted(chance: random.Random, size: int) -> bytes:
    """Bytes without any order."""
    return chance.randbytes(size)


def file_system(chance: random.Random, size: int) -> bytes:
    """Blocks of files with their names in front, each begun at a round address."""
    made = bytearray()
    while len(made) < size:
        name = f"{chance.choice(('etc', 'www', 'lib'))}/{chance.randrange(999)}.conf".encode()
        body = chance.choice((text, compressed, ascii_lines, byte_code))(
            chance, chance.randrange(100, 3000)
        )
        node = b"\x85\x19" + len(body).to_bytes(4, "little") + name + b"\0" + body
        made += node + b"\xff" * (-len(node) % chance.choice((4, 256, 512)))
    return bytes(made[:size])


def settings(chance: random.Random, size: int) -> bytes:
    """Names and values in two equal copies, the rest blank."""
    block = b"\0".join(b"name%d=%d" % (at, chance.randrange(9999)) for at in range(20)) + b"\0"
    block = block.ljust(size // 2, b"\xff")[: size // 2]
    return (block + block).ljust(size, b"\xff")


def jumps(chance: random.Random, size: int) -> bytes:
    """Addresses of routines in 32 bits, rising, as vectors and jump tables are."""
    at, made, order = 0x08000000, bytearray(), chance.choice(("big", "little"))
    while len(made) < size:
        at += chance.randrange(4, 400, 4)
        made += at.to_bytes(4, order)
    return bytes(made[:size])


PIECES: tuple[Callable[[random.Random, int], bytes], ...] = (
    *(text, ascii_lines, utf16, wide_code, narrow_code, byte_code, sine, even_table, seven_bit),
    *(bitmap, palette, compressed, encrypted, file_system, settings, jumps),
)


def sound(chance: random.Random, size: int | None = None) -> bytes:
    """A sound image: one piece alone, several with blanks between, small in large, or twice."""
    size = size or 1 << chance.choice((12, 13, 14, 15, 16, 16, 17))
    kind = chance.random()
    if kind < 0.25:
        return chance.choice(PIECES)(chance, size)
    if kind < 0.35:
        small = chance.choice(PIECES)(chance, chance.randrange(40, max(41, size // 16)))
        return small.ljust(size, chance.choice((b"\xff", b"\xff", b"\0")))
    if kind < 0.45:
        slot = sound_pieces(chance, size // 2 - chance.randrange(16, size // 4))
        return slot.ljust(size // 2, b"\xff") * 2
    if kind < 0.5:
        late = sound_pieces(chance, chance.randrange(size // 8, size // 2))
        return late.rjust(size, b"\xff")  # as where the processor starts at the top
    made = sound_pieces(chance, chance.randrange(size // 4, size))
    return made.ljust(size, chance.choice((b"\xff", b"\xff", b"\xff", b"\0")))


def sound_pieces(chance: random.Random, size: int) -> bytes:
    """Pieces one behind the other, some begun at a round address."""
    made = bytearray()
    while len(made) < size:
        piece = chance.choice(PIECES)
        made += piece(chance, min(size - len(made), chance.randrange(200, max(201, size // 2))))
        if chance.random() < 0.5:
            made += b"\xff" * (-len(made) % chance.choice((16, 256, 4096)))
    return bytes(made[:size])


def firmware(chance: random.Random, size: int = 1 << 16) -> bytes:
    """An image as a chip holds it: areas at round addresses, and a blank rest."""
    areas = [
        *(chance.choice((wide_code, narrow_code, byte_code)), text),
        *chance.sample((compressed, bitmap, sine, settings, file_system, encrypted), 3),
    ]
    made = bytearray()
    for area in areas:
        made += area(chance, chance.randrange(size // 12, size // 6))
        made += b"\xff" * (-len(made) % 4096)
    return bytes(made[:size]).ljust(size, b"\xff")


def cut(chance: random.Random, image: bytes) -> bytes:
    """The read ended before the chip did."""
    return image[: chance.randrange(len(image) // 2, len(image))]


def lengthened(chance: random.Random, image: bytes) -> bytes:
    """The file has more than the chip."""
    return image + chance.choice((b"\xff" * 512, chance.randbytes(77), image[:1000]))


def wrapped(chance: random.Random, image: bytes) -> bytes:
    """The reader was set to a chip of twice the capacity."""
    return image * 2


def erased(chance: random.Random, image: bytes) -> bytes:
    """No answer, or nothing in it."""
    return b"\xff" * len(image)


def zeroed(chance: random.Random, image: bytes) -> bytes:
    """No supply."""
    return bytes(len(image))


def padded_and_cut(chance: random.Random, image: bytes) -> bytes:
    """Bytes in front, and as many lost behind."""
    many = chance.choice((17, 37, 90, 100, 301, 1000))
    return (chance.choice((b"\xff", b"\0")) * many + image)[: len(image)]


def padded(chance: random.Random, image: bytes) -> bytes:
    """Bytes in front, and nothing lost."""
    return chance.choice((b"\xff", b"\0")) * chance.choice((16, 64, 512, 1000)) + image


def half_twice(chance: random.Random, image: bytes) -> bytes:
    """The highest address line does not reach the chip."""
    return image[: len(image) // 2] * 2


def line_dead(chance: random.Random, image: bytes) -> bytes:
    """A lower address line does not reach the chip."""
    line = 1 << chance.randrange(0, 9)
    return bytes(image[at & ~line] for at in range(len(image)))


def block_twice(chance: random.Random, image: bytes) -> bytes:
    """A block was read again in the place of the next."""
    code = encrypted(chance, 4096)
    at = len(image) // 16384 * 4096 + 8192  # behind the text, within the first half
    return image[:at] + code * 2 + image[at + 8192 :]


def swapped(chance: random.Random, image: bytes) -> bytes:
    """Pairs of bytes turned round."""
    turned = bytearray(image)
    even = len(image) & ~1
    turned[0:even:2], turned[1:even:2] = image[1:even:2], image[0:even:2]
    return bytes(turned)


def bits_reversed(chance: random.Random, image: bytes) -> bytes:
    """The lowest bit taken for the highest."""
    return image.translate(bytes(int(f"{byte:08b}"[::-1], 2) for byte in range(256)))


def inverted(chance: random.Random, image: bytes) -> bytes:
    """Each bit the other way round."""
    return bytes(255 - byte for byte in image)


def line_low(chance: random.Random, image: bytes) -> bytes:
    """A data line that is always low."""
    bit = 1 << chance.randrange(8)
    return bytes(byte & ~bit for byte in image)


def line_high(chance: random.Random, image: bytes) -> bytes:
    """A data line that is always high."""
    bit = 1 << chance.randrange(8)
    return bytes(byte | bit for byte in image)


ALONE = {
    cut: {"short read"},
    lengthened: {"longer than the chip"},
    wrapped: {"longer than the chip"},
    erased: {"blank"},
    zeroed: {"all zero"},
    padded: {"padding at the front", "longer than the chip"},
    padded_and_cut: {"padding at the front"},
    half_twice: {"repeated half"},
    line_dead: {"address line stuck"},
    block_twice: {"repeated block"},
    swapped: {"swapped bytes"},
    bits_reversed: {"reversed bits"},
    inverted: {"inverted bits"},
    line_low: {"stuck bit"},
    line_high: {"stuck bit"},
}
# What comes first happened at the chip, what comes second on the way.
PAIRS = (
    *((erased, cut), (zeroed, cut), (erased, lengthened), (erased, line_low)),
    *((zeroed, line_high), (half_twice, cut), (half_twice, swapped), (half_twice, line_low)),
    *((half_twice, bits_reversed), (line_dead, cut), (line_dead, line_high), (swapped, cut)),
    *((swapped, padded), (line_low, swapped), (block_twice, swapped), (bits_reversed, cut)),
    *((bits_reversed, line_high), (inverted, cut), (inverted, line_high), (line_low, cut)),
    *((line_high, padded), (line_low, lengthened), (block_twice, cut), (line_high, swapped)),
    *((block_twice, line_low),),
)
