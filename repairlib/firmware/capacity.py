"""The capacity of a chip as people type it. K, M and G are 1024, as memory makers count."""

from __future__ import annotations

import re

from repairlib.core.errors import RepairlibError
from repairlib.firmware.image_file import LARGEST

_TYPED = re.compile(r"(\d{1,12}(?:[.,]\d{1,6})?)\s*([kmg]?)(i?b|i?byte|bytes|bits?|ibits?|)")
_TIMES = {"": 1, "k": 1 << 10, "m": 1 << 20, "g": 1 << 30}
_ACCEPTED = "bytes or bits up to 256 MiB, such as 8 MiB, 64 Mbit, 512 Kbit, 8388608"


def read_size(typed: str) -> int:
    """A size in bytes. Words that end in "bit" are bits, all others bytes.

    A lone "Mb" is refused: it is read as both. Raises RepairlibError for that, for no whole number
    of bytes, and for more than 256 MiB.

    >>> read_size("8 MiB"), read_size("64Mbit"), read_size("4096"), read_size("0,5 MB")
    (8388608, 8388608, 4096, 524288)
    """
    text = " ".join(typed.split())
    if re.fullmatch(r"[\d.,]+ ?[KkMG]b", text):
        raise RepairlibError(typed, "b alone is read as bits and as bytes", _ACCEPTED)
    if re.match(r"[1-9]\d{0,2}(,\d{3})+(?![\d,])", text):  # commas between thousands
        text = text.replace(",", "")
    found = _TYPED.fullmatch(text.lower())
    if not found:
        raise RepairlibError(typed, "not a size of a memory chip", _ACCEPTED)
    number, times, unit = found.groups()
    whole, _, part = number.replace(",", ".").partition(".")
    scale = 10 ** len(part)
    size, rest = divmod(int(whole + part) * _TIMES[times], scale * (8 if "bit" in unit else 1))
    if rest or not 0 < size <= LARGEST:
        raise RepairlibError(typed, "no chip of this size is known here", _ACCEPTED)
    return size
