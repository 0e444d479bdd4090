"""Texts as a hurried instructor leaves them: a demo set or a fault with a few things gone wrong."""

from __future__ import annotations

from random import Random

BITS = (
    *("", ",", ",,", ";", ":", "\t", "\n", " ", "0", "-1", "1e999", "nan", "∞", "9" * 40, "V"),
    *("Ω", "µF", "kΩ", "%", "x", "C1", "c1", "R99", "open", "short", "fault:", "rail:", "title:"),
    *("part", '"', "'", "/", " / ", "=", "\u00a0", "\u202e", "\x00", "é", "1_000", "½", "0x10"),
    *("load", "mains", "gnd", "at ", "inlet", "50 Hz", "1e-30", "-0", ".", "up", "65 kHz"),
)


def mutated(text: str, random: Random) -> str:
    """`text` with one to four changes: pieces lost, doubled, swapped, or put in."""
    for _ in range(random.randint(1, 4)):
        text = random.choice(CHANGES)(text, random)
    return text


def _put_in(text: str, random: Random) -> str:
    at = random.randint(0, len(text))
    return text[:at] + random.choice(BITS) + text[at:]


def _put_over(text: str, random: Random) -> str:
    at = random.randint(0, len(text))
    return text[:at] + random.choice(BITS) + text[at + random.randint(1, 6) :]


def _lose(text: str, random: Random) -> str:
    at = random.randint(0, len(text))
    return text[:at] + text[at + random.randint(1, 12) :]


def _cell(text: str, random: Random) -> str:
    """Another text in one cell of a line."""
    lines = text.split("\n")
    at = random.randrange(len(lines))
    cells = lines[at].split(",")
    cells[random.randrange(len(cells))] = random.choice(BITS)
    lines[at] = ",".join(cells)
    return "\n".join(lines)


def _cells_swapped(text: str, random: Random) -> str:
    lines = text.split("\n")
    at = random.randrange(len(lines))
    cells = lines[at].split(",")
    one, other = random.randrange(len(cells)), random.randrange(len(cells))
    cells[one], cells[other] = cells[other], cells[one]
    lines[at] = ",".join(cells)
    return "\n".join(lines)


def _line_lost(text: str, random: Random) -> str:
    lines = text.split("\n")
    del lines[random.randrange(len(lines))]
    return "\n".join(lines) or " "


def _line_twice(text: str, random: Random) -> str:
    lines = text.split("\n")
    at = random.randrange(len(lines))
    lines.insert(random.randint(0, len(lines)), lines[at])
    return "\n".join(lines)


CHANGES = (_put_in, _put_over, _lose, _cell, _cell, _cells_swapped, _line_lost, _line_twice)
