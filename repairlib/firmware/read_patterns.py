"""What the places in which two reads differ say of the cause: contact, speed or supply.

The rules are common practice, read from how each cause works:

* a contact that opens leaves the line at its rest, so that stretches read as FF or 00; or it is
  one line of several, and then the same bit is wrong each time;
* a clock that is too fast takes a bit before it has settled: single bits, everywhere, in both
  directions, and each wrong bit is the one that came before it;
* a supply that sinks makes levels too low: bits change in one direction only, all reads 00 up to
  the end, or the errors come at even distances (ripple) or grow towards the end of the read.

What fits two causes or none is "cannot tell".
"""

from __future__ import annotations

from typing import NamedTuple

from repairlib.core.verdicts import CANNOT_TELL
from repairlib.core.wording import counted
from repairlib.firmware.damage_kinds import address
from repairlib.firmware.image_file import Image
from repairlib.firmware.read_differences import Differences

EQUAL, ONE_SHORT, OFFSET = "equal", "one is short", "offset"
CONTACT, SPEED, SUPPLY = "contact", "speed", "supply"
OTHER, UNKNOWN = "another chip or content", CANNOT_TELL
PATTERNS = (EQUAL, ONE_SHORT, OFFSET, CONTACT, SPEED, SUPPLY, OTHER, UNKNOWN)

FEWEST = 4  # bytes that differ, below which nothing is a pattern
NEARLY_ALL = 0.9  # of what differs must fit a rule
BOTH_WAYS = 0.2  # of the bits that differ do so in either direction, at least
GAP = 64  # bytes: places farther apart than this are of different bursts
DENSE = 0.3  # of the bytes of a stretch without an answer differ, at least
BLOCK, EDGE = 4096, 4  # bytes: the smallest erase; how much at its edges may be FF anyway
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
        "these are reads of different chips, or the content was written in between",
        "check which file is of which chip",
    ),
    UNKNOWN: (
        "the places that differ fit no single cause",
        "set the clip anew and lower the clock, then read twice more and compare all of them",
    ),
}


class _Seen(NamedTuple):
    """The places that differ, as far as they were kept, and what stands there in each read."""

    size: int
    places: object
    before: object
    after: object
    bursts: tuple  # starts, ends


def pattern_of(first: Image, other: Image, found: Differences) -> tuple[str, str, str]:
    """The pattern, what it means and what to do next, of two reads that differ.

    >>> from repairlib.firmware.image_file import image_of
    >>> from repairlib.firmware.read_differences import differences
    >>> a = image_of(bytes(range(256)) * 8)
    >>> b = image_of(a.data[:300] + bytes([255]) * 100 + a.data[400:])
    >>> pattern_of(a, b, differences(a, [b]))[0]
    'contact'
    """
    import numpy as np

    places = found.places
    if len(places) < FEWEST:
        many = counted(found.bytes, "byte")
        return _said(UNKNOWN, f"only {many} differ, which is too few for a pattern")
    a, b = first.array()[places], other.array()[places]
    cuts = np.flatnonzero(np.diff(places) > GAP)
    starts = places[np.concatenate(([0], cuts + 1))]
    ends = places[np.concatenate((cuts, [len(places) - 1]))] + 1
    seen = _Seen(min(first.size, other.size), places, a, b, (starts, ends))
    for rule in (_no_answer, _one_line, _one_direction, _late, _other_content, _by_place):
        if told := rule(seen, first, other, found):
            return told
    return _said(UNKNOWN)


def _said(pattern: str, seen: str = "") -> tuple[str, str, str]:
    cause, then = SAID[pattern]
    return pattern, f"{seen}: {cause}" if seen else cause, then


def _no_answer(seen, first, other, found):
    """Where they differ, one of the reads holds FF or 00 only, in stretches."""
    import numpy as np

    starts, ends = seen.bursts
    if len(seen.places) < max(LONG_BURST * len(starts), DENSE * np.sum(ends - starts)):
        return None
    for values, read in ((seen.after, other), (seen.before, first)):
        ones, zeros = np.mean(values == 255), np.mean(values == 0)
        if ones + zeros < NEARLY_ALL:
            continue
        word = "one stretch" if len(starts) == 1 else f"{len(starts)} stretches"
        what = "FF" if ones >= NEARLY_ALL else "00" if zeros >= NEARLY_ALL else "FF or 00"
        begin, rest = address(int(starts[0])), read.data[ends[-1] : seen.size]
        to_end = not rest.strip(b"\xff" if what == "FF" else b"\0")
        where = f"{word} of {what} in {read.name}, from {begin} on{', to the end' * to_end}"
        if what == "00" and to_end:
            return _said(SUPPLY, f"{where}: the chip went off, its supply first")
        if what == "00":
            where += " (00 may also be the supply failing: measure it)"
        longest = int(np.argmax(ends - starts))
        begin, end = int(starts[longest]), int(ends[longest])
        if what == "FF" and begin % BLOCK < EDGE and -end % BLOCK < EDGE:
            return _said(OTHER, f"{where}: whole blocks as an erase leaves them")
        return _said(CONTACT, f"{where}: nothing answered there")
    return None


def _one_line(seen, first, other, found):
    """All that differs is one bit of each byte, or the two that one of four lines carries."""
    changed = [up + down for up, down in zip(found.rising, found.falling, strict=True)]
    lines = [bit for bit in range(8) if changed[bit]]
    if len(seen.places) < 2 * FEWEST:
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


def _late(seen, first, other, found):
    """Each bit that differs is, in one of the reads, the bit that came before it on the line."""
    import numpy as np

    up, down = sum(found.rising), sum(found.falling)
    if min(up, down) < max(2 * FEWEST, BOTH_WAYS * (up + down)):
        return None  # a late bit errs both ways alike, since levels rise as often as they fall
    for read, values, others in (
        (other, seen.after, seen.before),
        (first, seen.before, seen.after),
    ):
        data = read.array()
        last = np.where(seen.places > 0, data[np.maximum(seen.places - 1, 0)], 0)
        previous = (values >> 1) | ((last & 1) << 7)
        wrong = values ^ others
        fits = np.bitwise_count(wrong & ~(previous ^ values)).sum()
        if fits >= NEARLY_ALL * np.bitwise_count(wrong).sum():
            return _said(SPEED, f"each wrong bit of {read.name} repeats the bit before it")
    return None


def _one_direction(seen, first, other, found):
    """Bits of many kinds change, and all of them from 1 to 0 or all from 0 to 1."""
    up, down = sum(found.rising), sum(found.falling)
    if up + down < 4 * FEWEST or min(up, down) > (1 - NEARLY_ALL) / 2 * (up + down):
        return None
    lower = other.name if down > up else first.name
    return _said(
        SUPPLY,
        f"{lower} has 0 where the other has 1, and hardly ever the other way round: levels that "
        "are too low",
    )


def _other_content(seen, first, other, found):
    if found.bytes > CONTENT_DIFFERS * seen.size and _per_byte(seen) > 2:
        share = 100 * found.bytes / max(first.size, other.size)
        return _said(OTHER, f"{share:.0f} % of all bytes differ")
    return None


def _by_place(seen, first, other, found):
    """Single bits all over, bursts, bursts at even distances, or errors that grow."""
    import numpy as np

    starts = seen.bursts[0]
    third = seen.size // 3
    if len(seen.places) >= 4 * FEWEST and len(starts) >= EVENLY:
        distances = np.diff(starts)
        if np.std(distances) <= EVEN * np.mean(distances) and len(distances) >= EVENLY:
            mean = int(np.mean(distances))
            return _said(SUPPLY, f"errors come again every {mean:,} bytes, as ripple does")
        early = np.count_nonzero(seen.places < third)
        late = np.count_nonzero(seen.places >= 2 * third)
        if early <= 0.02 * late and late >= 0.6 * len(seen.places):
            begin = address(int(seen.places[0]))
            return _said(SUPPLY, f"errors begin at {begin} and grow towards the end")
    if len(seen.places) >= LONG_BURST * len(starts):
        where = "one stretch" if len(starts) == 1 else f"{len(starts)} stretches"
        return _said(CONTACT, f"all that differs lies in {where}, with sound bytes between them")
    spread = np.unique(seen.places * 8 // max(seen.size, 1)).size
    if _per_byte(seen) <= 2 and len(seen.places) >= 2 * FEWEST and spread >= 4:
        return _said(SPEED, "single bits differ all over the read, in both directions")
    return None


def _per_byte(seen) -> float:
    """How many bits differ, on average, in a byte that differs."""
    import numpy as np

    return float(np.mean(np.bitwise_count(seen.before ^ seen.after)))
