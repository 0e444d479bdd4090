"""What the places in which two reads differ say of the cause: contact, speed or supply.

The rules are common practice, read from how each cause works:

* a contact that opens leaves the line at its rest, so that stretches read as FF or 00; or it is
  one line of several, and then the same bit is wrong each time;
* a clock that is too fast takes a bit before it has settled: single bits, everywhere, and each
  wrong bit is the one that came before it;
* a supply that sinks makes levels too low: bits change in one direction only, all reads 00 up to
  the end, or the errors come at even distances (ripple) or grow towards the end of the read;
* what is erased or written between the reads is blank in one of them up to the end of its block.

What fits two causes or none is "cannot tell".
"""

from __future__ import annotations

from repairlib.core.verdicts import CANNOT_TELL
from repairlib.core.wording import counted
from repairlib.firmware.damage_kinds import address
from repairlib.firmware.image_file import Image
from repairlib.firmware.read_tally import BLOCK, GAP, PARTS, Side, Tally

EQUAL, ONE_SHORT, OFFSET = "equal", "one is short", "offset"
CONTACT, SPEED, SUPPLY = "contact", "speed", "supply"
OTHER, BETWEEN, UNKNOWN = "another chip or content", "written in between", CANNOT_TELL
PATTERNS = (EQUAL, ONE_SHORT, OFFSET, CONTACT, SPEED, SUPPLY, OTHER, BETWEEN, UNKNOWN)

FEWEST = 4  # bytes that differ, below which nothing is a pattern
NEARLY_ALL = 0.9  # of what differs must fit a rule
DENSE = 0.3  # of the bytes of a stretch differ, at least
MUCH = 0.25  # of a read that ends in FF, from which that is no erased block: our choice
LATE = 0.2  # of the wrong bits that chance would not make late are not late, at most
LONG_BURST = 8  # bytes that differ in a burst, on average
EVEN = 0.1  # by which distances may scatter, as a share of their mean, to be called even
EVENLY = 4  # bursts at least
CONTENT_DIFFERS = 0.4  # of all bytes, from which it is another content

SAID = {
    EQUAL: (
        "the reads repeat, byte for byte; a line that is stuck repeats itself too",
        "store both before anything is written, and check the image by itself",
    ),
    ONE_SHORT: (
        "the read was stopped, or the reader was set to a smaller chip",
        "set the capacity from the identity bytes and read again, twice",
    ),
    CONTACT: (
        "the connection",
        "clean the chip's leads, set the clip anew, check each line from the chip's lead to the "
        "reader with a meter, and read again",
    ),
    SPEED: (
        "a clock too fast for the wiring",
        "lower the clock, shorten the leads, lead ground beside the clock, and read again",
    ),
    SUPPLY: (
        "a supply that sinks or carries ripple",
        "measure the supply at the chip's own leads while it is read; feed the chip from a supply "
        "of its own, fit 100 nF at it, and read again",
    ),
    OTHER: (
        "these are reads of different chips, or the content was written anew in between",
        "check which file is of which chip",
    ),
    BETWEEN: (
        "the content was erased or written between the reads, or these are reads of different "
        "chips",
        "check which file is of which chip; keep the processor in reset, or lift the chip, so that "
        "nothing writes to it, and read it twice again",
    ),
    UNKNOWN: (
        "the places that differ fit no single cause",
        "set the clip anew and lower the clock, then read twice more and compare all of them",
    ),
}


Told = tuple[str, str, str]  # the pattern, what it means, what to do next


def pattern_of(found: Tally, first: Image, other: Image) -> Told:
    """The pattern, what it means and what to do next, of two reads that differ as `found` counts.

    >>> from repairlib.firmware.image_file import image_of
    >>> from repairlib.firmware.read_tally import tally
    >>> a = image_of(bytes(range(256)) * 8)
    >>> b = image_of(a.data[:300] + bytes([255]) * 100 + a.data[400:])
    >>> pattern_of(tally(a, b), a, b)[0]
    'contact'
    """
    if found.bytes < FEWEST:
        many = f"{counted(found.bytes, 'byte')} differ{'s' * (found.bytes == 1)}"
        return _said(UNKNOWN, f"only {many} in what both have, which is too few for a pattern")
    for rule in (_no_answer, _one_line, _late, _one_direction, _other_content, _by_place):
        if told := rule(found, first, other):
            return told
    return _said(UNKNOWN)


def _said(pattern: str, seen: str = "") -> Told:
    cause, then = SAID[pattern]
    return pattern, f"{seen}: {cause}" if seen else cause, then


def _no_answer(found: Tally, first: Image, other: Image) -> Told | None:
    """Where they differ, one of the reads holds FF or 00 only, in stretches."""
    bursts = found.bursts
    if found.bytes < max(LONG_BURST * bursts.many, DENSE * bursts.span):
        return None
    for at, read in ((1, other), (0, first)):
        side = found.sides[at]
        if side.ones + side.zeros < NEARLY_ALL * found.bytes:
            continue
        what = "FF or 00"
        if max(side.ones, side.zeros) >= NEARLY_ALL * found.bytes:
            what = "FF" if side.ones > side.zeros else "00"
        rest = read.data[bursts.end : found.size]
        to_end = not rest.strip(b"\xff" if what == "FF" else b"\0")
        where = f"{_stretches(found)} of {what} in {read.name}, from {address(bursts.start)} on"
        where += ", to the end" * to_end
        if what == "00" and to_end:
            return _said(SUPPLY, f"{where}: the chip went off, its supply first")
        if what == "00":
            where += " (00 may also be the supply failing: measure it)"
        if what == "FF" and (told := _in_between(found, side, found.sides[1 - at], to_end, where)):
            return told
        if what == "FF" and _either(found, side, found.sides[1 - at], to_end):
            return _said(CONTACT, f"{where}: in one of the two reads nothing answered there")
        return _said(CONTACT, f"{where}: nothing answered there")
    return None


def _either(found: Tally, side: Side, full: Side, to_end: bool) -> bool:
    """Whether FF may as well be what the chip holds: blank blocks, or 00 in the other read."""
    blank = side.blank == found.blocks and not (to_end and _much(found))
    return blank or full.zeros >= NEARLY_ALL * found.bytes


def _much(found: Tally) -> bool:
    return found.bursts.end - found.bursts.start >= MUCH * found.size


def _in_between(found: Tally, side: Side, full: Side, to_end: bool, where: str) -> Told | None:
    """Whole blocks that are blank in one read, or readable text written behind what was there."""
    text = full.text >= NEARLY_ALL * found.bytes
    if (to_end and _much(found)) or full.zeros >= NEARLY_ALL * found.bytes:
        return None
    if side.blank == found.blocks and (text or found.bursts.start % BLOCK <= GAP):
        return _said(BETWEEN, f"{where}: whole blocks as an erase leaves them, or before a write")
    if side.left_blank == found.blocks and text:
        return _said(BETWEEN, f"{where}, each to the end of its block, and text in the other read")
    return None


def _stretches(found: Tally) -> str:
    many = found.bursts.many
    return "one stretch" if many == 1 else f"{many:,} stretches"


def _one_line(found: Tally, first: Image, other: Image) -> Told | None:
    """All that differs is one bit of each byte, or the two that one of four lines carries."""
    changed = [up + down for up, down in zip(found.rising, found.falling, strict=True)]
    lines = [bit for bit in range(8) if changed[bit]]
    if found.bytes < 2 * FEWEST:
        return None
    if len(lines) == 1:
        return _said(CONTACT, f"only bit {lines[0]} differs, at each place: line D{lines[0]}")
    if len(lines) == 2 and lines[1] == lines[0] + 4:
        return _said(
            CONTACT,
            f"only bits {lines[0]} and {lines[1]} differ, which IO{lines[0]} carries when four "
            "lines are read",
        )
    return None


def _late(found: Tally, first: Image, other: Image) -> Told | None:
    """Each bit that differs is, in one of the reads, the bit that came before it on the line."""
    for at, read in ((1, other), (0, first)):
        side = found.sides[at]
        if side.chance >= 2 * FEWEST and side.not_late <= LATE * side.chance:
            return _said(SPEED, f"each wrong bit of {read.name} repeats the bit before it")
    return None


def _one_direction(found: Tally, first: Image, other: Image) -> Told | None:
    """Bits of many kinds change, and all of them from 1 to 0 or all from 0 to 1."""
    up, down = sum(found.rising), sum(found.falling)
    if found.bits < 4 * FEWEST or min(up, down) > (1 - NEARLY_ALL) / 2 * found.bits:
        return None
    lower = other.name if down > up else first.name
    return _said(
        SUPPLY,
        f"{lower} has 0 where the other has 1, and hardly ever the other way round: levels that "
        "are too low",
    )


def _other_content(found: Tally, first: Image, other: Image) -> Told | None:
    bursts = found.bursts
    if bursts.many == 1 and bursts.start % BLOCK > GAP:
        return None  # what is written anew begins at a block, at most its header may be the same
    if found.bytes > CONTENT_DIFFERS * found.size and found.bits > 2 * found.bytes:
        share = 100 * found.bytes / max(first.size, other.size)
        return _said(OTHER, f"{share:.0f} % of all bytes differ")
    return None


def _by_place(found: Tally, first: Image, other: Image) -> Told | None:
    """Single bits all over, bursts, bursts at even distances, or errors that grow."""
    bursts, third = found.bursts, PARTS // 3
    if found.bytes >= 4 * FEWEST and bursts.many >= EVENLY:
        if bursts.many > EVENLY and bursts.scatter <= EVEN * bursts.distance:
            mean = int(bursts.distance)
            return _said(SUPPLY, f"errors come again every {mean:,} bytes, as ripple does")
        early, late = sum(found.parts[:third]), sum(found.parts[-third:])
        if early <= 0.02 * late and late >= 0.6 * found.bytes:
            begin = address(bursts.start)
            return _said(SUPPLY, f"errors begin at {begin} and grow towards the end")
    if found.bytes >= max(LONG_BURST * bursts.many, DENSE * bursts.span):
        where = _stretches(found)
        return _said(CONTACT, f"all that differs lies in {where}, with sound bytes between them")
    eighth = PARTS // 8
    spread = sum(any(found.parts[at : at + eighth]) for at in range(0, PARTS, eighth))
    if found.bits <= 2 * found.bytes and found.bytes >= 2 * FEWEST and spread >= 4:
        return _said(SPEED, "single bits differ all over the read, in both directions")
    return None
