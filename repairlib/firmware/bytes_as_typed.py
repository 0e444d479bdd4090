"""Bytes as people type or paste them: EF 40 17, EF4017, 0xEF,0x40,0x17, EFh 40h 17h."""

from __future__ import annotations

from repairlib.core.errors import RepairlibError

_BETWEEN = dict.fromkeys(map(ord, ",;:-_/|.\t\r\n\u00a0\u2007\u2009\u202f\u3000"), " ")
_HEX = frozenset("0123456789ABCDEFabcdef")
_LONGEST = 6  # characters that one byte takes at most, with what stands before and behind it


def typed_bytes(typed: str | bytes, most: int, accepted: str) -> bytes:
    """The bytes that `typed` says, two hex digits each; what is bytes already comes back as it is.

    At most `most` of them. Raises RepairlibError, with `accepted`, for nothing, for more, for
    what is no hex digit and for an odd digit.

    >>> typed_bytes("0xEF 40h,17", 3, "three bytes").hex(" ")
    'ef 40 17'
    """
    if isinstance(typed, (bytes, bytearray, memoryview)):
        data = bytes(typed)
    elif isinstance(typed, str):
        data = _of_text(typed, most, accepted)
    else:
        raise RepairlibError(typed, "neither text nor bytes", accepted)
    if not data:
        raise RepairlibError(typed, "no byte is given", accepted)
    if len(data) > most:
        raise RepairlibError(in_hex(data[:8]), f"{len(data):,} bytes are too many", accepted)
    return data


def _of_text(typed: str, most: int, accepted: str) -> bytes:
    if len(typed) > _LONGEST * most:
        raise RepairlibError(typed, f"more than {most:,} bytes", accepted)
    digits = []
    for word in typed.translate(_BETWEEN).split():
        bare = word[2:] if word[:2] in ("0x", "0X") else word.lstrip("$#")
        bare = bare[:-1] if bare[-1:] in ("h", "H") else bare
        if not bare or not _HEX.issuperset(bare):
            raise RepairlibError(typed, f"{word[:12]} is not a byte in hex", accepted)
        if len(bare) % 2:
            wrong = f"{word[:12]} has an odd number of digits, and a byte has two"
            raise RepairlibError(typed, wrong, accepted)
        digits.append(bare)
    return bytes.fromhex("".join(digits))


def in_hex(data: bytes) -> str:
    """Bytes as data sheets write them.

    >>> in_hex(b"\\xef\\x40")
    'EF 40'
    """
    return data.hex(" ").upper()
