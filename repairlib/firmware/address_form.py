"""The six bytes of a network address: what they say of themselves, and which may be one."""

from __future__ import annotations

from itertools import pairwise

from repairlib.firmware.places import blank

LENGTH = 6  # bytes of an address


def is_group(address: bytes) -> bool:
    """Whether it is the address of a group, which no board has as its own: lowest bit of byte 0.

    Source: IEEE Registration Authority, Guidelines for Use of EUI, OUI, and CID.

    >>> is_group(bytes.fromhex("0180C2000000")), is_group(bytes.fromhex("ACDE48234567"))
    (True, False)
    """
    return bool(address[0] & 1)


def is_local(address: bytes) -> bool:
    """Whether somebody gave it who is no maker: second lowest bit of byte 0; source as `is_group`.

    >>> is_local(bytes.fromhex("025AC3104117")), is_local(bytes.fromhex("ACDE48234567"))
    (True, False)
    """
    return bool(address[0] & 2)


def written(address: bytes) -> str:
    """An address as people write it.

    >>> written(bytes.fromhex("025AC3104117"))
    '02:5A:C3:10:41:17'
    """
    return address.hex(":").upper()


def plausible(address: bytes) -> bool:
    """Whether a board may have it: no group, no row of equal or stepping bytes, no text."""
    if len(address) < LENGTH or is_group(address):
        return False
    if address[:3].count(0) > 1 or blank(address[:3]) or blank(address[3:]):
        return False
    printable = sum(0x20 <= byte < 0x7F for byte in address)
    return len(set(address)) >= 4 and uneven(address) and printable < LENGTH - 1


def uneven(address: bytes) -> bool:
    """Whether it is no row of equal or stepping bytes, as people make examples up."""
    steps = {(after - before) % 256 for before, after in pairwise(address)}
    return len(set(address)) >= 3 and len(steps) > 1
