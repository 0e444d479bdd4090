"""Reads as faults at the bench make them of a true one; the tests hold each to its cause."""

from __future__ import annotations

import random


def loose_contact(chance: random.Random, true: bytes) -> bytes:
    """The data line lets go now and then and is pulled up."""
    read = bytearray(true)
    for _ in range(chance.randrange(2, 9)):
        begin, many = chance.randrange(len(read) - 900), chance.randrange(60, 900)
        read[begin : begin + many] = b"\xff" * many
    return bytes(read)


def noisy_contact(chance: random.Random, true: bytes) -> bytes:
    """The clip chatters: what arrives then has no order."""
    read = bytearray(true)
    for _ in range(chance.randrange(2, 4)):
        begin, many = chance.randrange(len(read) - 900), chance.randrange(200, 900)
        read[begin : begin + many] = chance.randbytes(many)
    return bytes(read)


def bad_line(chance: random.Random, true: bytes) -> bytes:
    """One of eight data lines has a poor contact."""
    read, bit, level = bytearray(true), 1 << chance.randrange(8), chance.random() < 0.5
    for _ in range(900):
        at = chance.randrange(len(read))
        read[at] = read[at] | bit if level else read[at] & ~bit
    return bytes(read)


def fast_clock(chance: random.Random, true: bytes) -> bytes:
    """A bit is taken before it has settled, and is then the one before it."""
    whole = int.from_bytes(true, "big")
    wrong = 0
    for _ in range(2000):
        wrong |= 1 << chance.randrange(8 * len(true))
    changed = (whole ^ (whole >> 1)) & wrong
    return (whole ^ changed).to_bytes(len(true), "big")


def ringing_clock(chance: random.Random, true: bytes) -> bytes:
    """Single bits are wrong wherever an edge rang."""
    read = bytearray(true)
    for _ in range(chance.randrange(60, 2000)):
        read[chance.randrange(len(read))] ^= 1 << chance.randrange(8)
    return bytes(read)


def lost_edge(chance: random.Random, true: bytes) -> bytes:
    """One clock edge is lost or counted twice: from there on all stands a bit away."""
    at = chance.randrange(len(true) // 2)
    rest, many = int.from_bytes(true[at:], "big"), len(true) - at
    rest = rest >> 1 if chance.random() < 0.5 else (rest << 1) & ((1 << 8 * many) - 1)
    return true[:at] + rest.to_bytes(many, "big")


def low_supply(chance: random.Random, true: bytes) -> bytes:
    """Levels too low: ones are taken for zeros."""
    read = bytearray(true)
    for _ in range(chance.randrange(300, 3000)):
        read[chance.randrange(len(read))] &= ~(1 << chance.randrange(8))
    return bytes(read)


def ripple(chance: random.Random, true: bytes) -> bytes:
    """The supply dips at even times."""
    read, every = bytearray(true), chance.randrange(900, 7000)
    for begin in range(chance.randrange(100, every), len(read) - 20, every):
        read[begin : begin + 12] = chance.randbytes(12)
    return bytes(read)


def sinking_supply(chance: random.Random, true: bytes) -> bytes:
    """Errors begin behind the middle and grow."""
    read = bytearray(true)
    for _ in range(900):
        at = int(len(read) * max(chance.random() for _ in range(9)))
        read[at] ^= 1 << chance.randrange(8)
    return bytes(read)


def supply_gone(chance: random.Random, true: bytes) -> bytes:
    """The chip goes off, and the line with it."""
    return true[: chance.randrange(len(true) // 2)].ljust(len(true), b"\0")


def lost_bytes(chance: random.Random, true: bytes) -> bytes:
    """Some bytes were lost on the way, and the end was filled."""
    at = chance.randrange(len(true) // 2)
    return (true[:at] + true[at + chance.randrange(1, 70) :]).ljust(len(true), b"\xff")


def bytes_in_front(chance: random.Random, true: bytes) -> bytes:
    """A program put bytes in front."""
    return (bytes(chance.randrange(1, 300)) + true)[: len(true)]


def stopped(chance: random.Random, true: bytes) -> bytes:
    """The read ended too early."""
    return true[: chance.randrange(1, len(true))]


def other_content(chance: random.Random, true: bytes) -> bytes:
    """Another chip."""
    return chance.randbytes(len(true))


SPOILED = {
    **dict.fromkeys((loose_contact, noisy_contact, bad_line), "contact"),
    **dict.fromkeys((fast_clock, ringing_clock, lost_edge), "speed"),
    **dict.fromkeys((low_supply, ripple, sinking_supply, supply_gone), "supply"),
    **dict.fromkeys((lost_bytes, bytes_in_front), "offset"),
    stopped: "one is short",
    other_content: "another chip or content",
}
