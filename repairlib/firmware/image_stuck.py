"""A bit that is the same in every byte: a stuck data line, or bytes that are made so.

Much that is sound has such a bit. ASCII text never sets bit 7, a table of even numbers never bit 0,
colours of six bits neither 6 nor 7, and in text of 16 bits every second byte is nearly constant. So
the bit alone says nothing. It is named when something shows what stood there before: filling that
would be FF or 00 but for this bit; letters that no text avoids; or, for a bit between others that
move, content that has no other reason.
"""

from __future__ import annotations

from typing import NamedTuple

from repairlib.firmware.damage_kinds import STUCK, Damage, Look
from repairlib.firmware.image_file import Image
from repairlib.firmware.image_table import is_table
from repairlib.firmware.runs import runs_of

FEWEST = 256  # bytes beside the filling, below which nothing is told
FILLED = 64  # bytes in a row that hold what filling becomes
MOST_BITS = 2  # that are constant, from which more are a matter of what is stored
HALF_A_BUS = 4  # bits that are constant; of more the others say too little
VARIED = 0.7  # of the values that the moving bits can take are there, in content of all kinds
NEARLY_ALL = 0.9  # likewise; text alone has fewer
TEXT_RUN, TEXT_BYTES = 16, 200  # bytes that look like text: in a row, in all
LOOKED_AT, PIECE = 1 << 20, 1 << 12
AT_LINE = (
    "measure that line from the chip's own lead to the reader: a short to supply, ground or its "
    "neighbour, or no contact; then read again"
)


class Constant(NamedTuple):
    """A bit that is the same in each byte; of pairs of bytes `half` 0 is the first, None all."""

    bit: int
    level: int
    half: int | None = None

    def said(self) -> str:
        whose = "byte" if self.half is None else ("even byte", "odd byte")[self.half]
        return f"bit {self.bit} of each {whose} is {self.level}"


def stuck(image: Image) -> Look:
    """Bits that are stuck, and those that may be so or are meant so.

    >>> from repairlib.firmware.image_file import image_of
    >>> code = bytes(at * at // 7 % 251 & 0xF7 for at in range(4096)) + b"\\xf7" * 256
    >>> [damage.why[:36] for damage in stuck(image_of(code)).damages]
    ['bit 3 of each byte is 0, and what se']
    """
    if image.size < FEWEST:
        return Look()
    bits = constant_bits(image.data)
    whole = [one for one in bits if one.half is None]
    damages, doubts = [], []
    if 0 < len(whole) <= MOST_BITS:
        sample = _content(image)
        for one in whole:
            if why := _shown(image, one, whole, sample):
                damages.append(Damage(STUCK, (0, image.size), f"{one.said()}, {why}", AT_LINE))
            elif why := _doubtful(one, whole, sample):
                doubts.append(Damage(STUCK, (0, image.size), f"{one.said()}: {why}", AT_LINE))
    elif why := _half_a_bus(image, whole):
        doubts.append(Damage(STUCK, (0, image.size), why, AT_LINE))
    if not whole:
        for one in bits if len(bits) <= MOST_BITS else ():
            if one.half is not None and (why := _half_filled(image, one, one.half)):
                damages.append(Damage(STUCK, (0, image.size), f"{one.said()}, {why}", AT_LINE))
    return Look(tuple(damages), tuple(doubts))


def constant_bits(data: bytes) -> list[Constant]:
    """The bits that never change in all bytes, or in every second one.

    >>> constant_bits(bytes([1, 127, 126, 0]))
    [Constant(bit=7, level=0, half=None)]
    """
    import numpy as np

    even = len(data) // 8 * 8
    words = np.frombuffer(data, np.uint64, even // 8)
    lows = np.frombuffer(data[even:].ljust(8, b"\xff"), np.uint8)  # what changes neither
    highs = np.frombuffer(data[even:].ljust(8, b"\0"), np.uint8)
    if len(words):
        lows = lows & np.array([np.bitwise_and.reduce(words)]).view(np.uint8)
        highs = highs | np.array([np.bitwise_or.reduce(words)]).view(np.uint8)
    found = []
    ones = [np.bitwise_and.reduce(lows[half::2]) for half in (0, 1)]
    zeros = [~np.bitwise_or.reduce(highs[half::2]) for half in (0, 1)]
    for bit in range(8):
        for level, rows in ((0, zeros), (1, ones)):
            halves = [bool(row >> np.uint8(bit) & np.uint8(1)) for row in rows]
            if all(halves):
                found.append(Constant(bit, level))
            else:
                found += [Constant(bit, level, half) for half in (0, 1) if halves[half]]
    return found


def _content(image: Image):
    """Pieces of the image that are no filling, as one array."""
    import numpy as np

    array = image.array()
    step = max(PIECE, len(array) // (LOOKED_AT // PIECE) // PIECE * PIECE)
    pieces = [array[at : at + PIECE] for at in range(0, len(array), step)]
    kept = [piece for piece in pieces if np.ptp(piece)]
    return np.concatenate(kept) if kept else array[:0]


def _shown(image: Image, one: Constant, whole: list[Constant], sample) -> str:
    """What shows that the bit is stuck; empty where nothing does."""
    import numpy as np

    masks = [_mask(whole, level) for level in (0, 1)]
    filling = 0xFF & ~masks[0] if one.level == 0 else masks[1]
    content = sample[sample != filling]
    if len(content) < FEWEST or len(np.unique(content)) < 16:
        return ""
    in_ascii = one.level == 1 and one.bit == 5  # spaces are then filling, and blank text sound
    if not in_ascii and bytes([filling]) * FILLED in image.data:
        return f"and what seems filling is {filling:02X} instead of {'00' if one.level else 'FF'}"
    if one.bit < 5 and _text_bytes(sample) >= TEXT_BYTES:
        return "also in what looks like text, which no text avoids"
    if one.level and len(whole) == 1 and _varied(content, whole, NEARLY_ALL):
        return "" if is_table(sample) else "while the other bits take nearly every pattern"
    if not _at_edge(one, whole) and _varied(content, whole):
        return "while the other bits take nearly every pattern, on both sides of it"
    return ""


def _doubtful(one: Constant, whole: list[Constant], sample) -> str:
    """What a single bit at either end may mean; empty where a table or text explains it."""
    if len(whole) > 1 or not _varied(sample, whole, NEARLY_ALL) or is_table(sample):
        return ""
    sound = {
        (0, 0): "a table of even numbers is so",
        (7, 0): "samples or text of seven bits are so",
    }.get((one.bit, one.level), "numbers of few bits are so")
    return f"{sound}, and so is a stuck line"


def _half_a_bus(image: Image, whole: list[Constant]) -> str:
    """Up to half of the bits that never change while the others do; empty where a table is so."""
    if not MOST_BITS < len(whole) <= HALF_A_BUS:
        return ""
    sample = _content(image)
    if len(sample) < FEWEST or not _varied(sample, whole, NEARLY_ALL) or is_table(sample):
        return ""
    said = ", ".join(f"bit {one.bit} is {one.level}" for one in whole)
    return f"{said} in each byte: numbers of few bits are so, and so are lines without contact"


def _mask(whole: list[Constant], level: int) -> int:
    return sum(1 << one.bit for one in whole if one.level == level)


def _at_edge(one: Constant, whole: list[Constant]) -> bool:
    """Whether the constant bits reach from this one to bit 0 or to bit 7: numbers may be so."""
    bits = {other.bit for other in whole}
    return set(range(one.bit)) <= bits or set(range(one.bit, 8)) <= bits


def _varied(content, whole: list[Constant], share: float = VARIED) -> bool:
    import numpy as np

    return len(np.unique(content)) >= share * (1 << (8 - len(whole)))


def _text_bytes(sample) -> int:
    """How many bytes stand in long runs that look like text, and neither rise nor fall steadily."""
    import numpy as np

    small = (sample >= 0x60) & (sample < 0x80)
    shown = (sample >= 0x20) & (sample < 0x80)
    starts, ends = runs_of(shown)
    long = ends - starts >= TEXT_RUN
    total = 0
    sums = np.concatenate(([0], np.cumsum(small)))
    steps = np.sign(np.diff(sample.astype(np.int16)))
    turns = np.concatenate(([0], np.cumsum(np.concatenate((steps[1:] * steps[:-1] < 0, [0, 0])))))
    for start, end in zip(starts[long].tolist(), ends[long].tolist(), strict=True):
        many = end - start
        if sums[end] - sums[start] >= 0.5 * many and turns[end] - turns[start] >= 0.3 * many:
            total += many
    return total


def _half_filled(image: Image, one: Constant, half: int) -> str:
    """A bit of one half of 16 lines: shown by filling alone, since numbers of 16 bits vary."""
    import numpy as np

    lane = image.array()[half::2]
    other = image.array()[1 - half :: 2]
    normal = 0 if one.level else 0xFF
    filling = normal ^ (1 << one.bit)
    if len(np.unique(lane[: LOOKED_AT // 2])) < 100:
        return ""
    pair = [0, 0]
    pair[half], pair[1 - half] = filling, normal
    run = bytes(pair) * FILLED
    if run not in image.data or not len(other):
        return ""
    word = "/".join(f"{value:02X}" for value in pair)
    return f"and what seems filling is {word} instead of {normal:02X}/{normal:02X}"
