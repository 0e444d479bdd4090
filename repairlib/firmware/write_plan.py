"""Writing a memory chip as a walk from step to step: a state, what was done, the next state.

What is erased cannot be brought back. So nothing is erased before the supply is known, two equal
reads of the old content are stored, what only this board has is dealt with, and the image to be
written is as large as the chip. Reads and image are checked: one that is damaged goes on only with
a reason in words. Stored files are looked at again before each step that destroys something, and a
file that is gone or changed holds everything.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path

from repairlib.core.errors import RepairlibError
from repairlib.core.plain_file import size_in_words
from repairlib.firmware.image_file import LARGEST, Image
from repairlib.firmware.keep import Keep
from repairlib.firmware.places import blank
from repairlib.firmware.read_back import NOT_ERASED, NOT_WRITTEN, OLD, ReadBack, check_read_back
from repairlib.firmware.write_doubts import judged, reasoned, sums_asked
from repairlib.firmware.write_files import (
    StoredFile,
    is_another_file,
    seen,
    seen_whole,
    still_there,
)

SUPPLY, READ, KEEP_LIST, INTENDED = "supply", "read", "keep-list", "intended image"
GO, ERASED, WRITTEN, READ_BACK = "go", "erased", "written", "read back"
WRITE_STEPS = (SUPPLY, READ, KEEP_LIST, INTENDED, GO, ERASED, WRITTEN, READ_BACK)
DONE = "done"
KEPT, LEFT = "kept", "left behind"
CHIP_IS_BLANK = "the chip gives its identity and is blank"
_WITHIN = 0.1  # of the chip's supply: common practice
_VOLTS = (1.0, 5.5)  # of the supplies that memory chips are made for


@dataclass(frozen=True, slots=True)
class WriteEvent:
    """What was done at a step, one of WRITE_STEPS.

    SUPPLY takes `volts`, the supply the chip is made for, and `measured`, what a meter shows at the
    programmer's clip before it goes on. READ, INTENDED and READ_BACK take the `path` of a file.
    KEEP_LIST takes `keeps` and as many `answers`, KEPT or LEFT; where there is nothing to keep,
    `found` says who looked and how. GO, ERASED and WRITTEN take DONE as `found`. A read of nothing
    but ones or zeros counts only with CHIP_IS_BLANK as `found`, one with another damage only with
    a reason there, in three words or more. So does an image to be written that is damaged, or in
    which a check sum no longer fits; `donor` is the file it was made of, where there is one.

    >>> WriteEvent(SUPPLY, volts=3.3, measured=3.28).path
    ''
    """

    step: str
    path: str | Path = ""
    found: str = ""
    donor: str | Path = ""
    volts: float | None = None
    measured: float | None = None
    keeps: tuple[Keep, ...] = ()
    answers: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class WriteState:
    """Where the writing of a chip stands. Made by `begin_write` and `write_step`.

    `capacity` of the chip in bytes; `reads` are the files that were read so far, `old` those two of
    them that are equal; `intended` is the file to be written; `kept` what has to be in it; `backs`
    are the files read after writing that were not as intended, and `bad` what the last of them was
    like; `told` says what the last event came to.
    """

    capacity: int
    at: int = 0
    events: tuple[WriteEvent, ...] = ()
    reads: tuple[StoredFile, ...] = ()
    old: tuple[StoredFile, ...] = ()
    kept: tuple[Keep, ...] = ()
    intended: StoredFile | None = None
    backs: tuple[StoredFile, ...] = ()
    bad: ReadBack | None = None
    told: str = ""

    @property
    def step(self) -> str | None:
        """The step that is due, one of WRITE_STEPS; None at the end."""
        return WRITE_STEPS[self.at] if self.at < len(WRITE_STEPS) else None

    @property
    def takes(self) -> tuple[str, ...]:
        """The steps that may come now, the one that is due first; more than one after a bad read.

        A read that is not as intended may be the read's fault or the write's. So the chip may be
        read again or erased and written again; written alone only where nothing but ones is wrong.
        """
        if self.bad is None:
            return (self.step,) if self.step else ()
        others = (READ_BACK, ERASED, *((WRITTEN,) if self.bad.pattern == NOT_WRITTEN else ()))
        return tuple(dict.fromkeys((WRITE_STEPS[self.at], *others)))

    @property
    def do(self) -> str:
        """What to do next."""
        return self.bad.next if self.bad else _DO[self.step]

    @property
    def why(self) -> str:
        """Why that is next."""
        return self.bad.why if self.bad else _WHY[self.step]

    @property
    def cautions(self) -> tuple[str, ...]:
        """The hazards of what is next, keys of core.safety.HAZARDS."""
        if self.step in (SUPPLY, READ):
            return ("chip supply", "static charge")
        return ("only copy",) if self.step else ()


_DO: dict[str | None, str] = {
    SUPPLY: "Find out which supply the chip is made for, set the programmer, and measure at its "
    "clip before it touches the chip.",
    READ: "Read the whole chip into a new file. Take the clip off and on between two reads.",
    KEEP_LIST: "Go through the list of what only this board has, and answer each line.",
    INTENDED: "Name the file that is to be written, with what was kept put in.",
    GO: "Last look: supply, pin 1, the right file. Then say that it may begin.",
    ERASED: "Erase the sectors that differ, or the whole chip.",
    WRITTEN: "Write the intended image. Do not touch clip or supply meanwhile.",
    READ_BACK: "Read the whole chip into a new file.",
    None: "Fit the chip or take the clip off, and try the set. Keep the old reads.",
}
_WHY: dict[str | None, str] = {
    SUPPLY: "A chip for a low supply dies at the first touch of a higher one.",
    READ: "Only two equal reads are a copy: one alone may be a bad contact.",
    KEEP_LIST: "A donor's image brings the donor's numbers, and this board's own are lost.",
    INTENDED: "An image of another size lies in the wrong place.",
    GO: "From here on the old content is gone.",
    ERASED: "Programming makes ones to zeros only; an erase makes them ones again.",
    WRITTEN: "The erased chip holds nothing now.",
    READ_BACK: "What was written counts only when it was read.",
    None: "Every byte was read as it was meant.",
}


def begin_write(capacity: int) -> WriteState:
    """The state before the first step, for a chip of `capacity` bytes.

    >>> begin_write(8 << 20).step
    'supply'
    """
    if isinstance(capacity, bool) or not isinstance(capacity, int) or not 1 <= capacity <= LARGEST:
        accepted = f"whole bytes, 1 to {LARGEST:,}; 64 Mbit are 8388608"
        raise RepairlibError(capacity, "no capacity of a chip", accepted)
    return WriteState(capacity)


def write_step(state: WriteState, event: WriteEvent) -> WriteState:
    """The state after an event; the one before is left as it is.

    A further READ is taken until two that follow each other are equal. After a read-back that is
    not as intended the chip may be read again, or erased and written again. Raises RepairlibError
    for whatever does not fit there or may not go on; nothing is lost by it.

    >>> state = write_step(begin_write(4096), WriteEvent(SUPPLY, volts=3.3, measured=3.28))
    >>> state.step, state.told
    ('read', 'the programmer gives 3.28 V, the chip is made for 3.3 V')
    >>> write_step(state, WriteEvent(ERASED, found=DONE))
    Traceback (most recent call last):
    ...
    repairlib.core.errors.RepairlibError: 'erased': not what is due now. Accepted: read
    """
    if event.step not in state.takes:
        wrong = "not what is due now" if state.step else "the writing is at its end"
        raise RepairlibError(event.step, wrong, ", ".join(state.takes) or "nothing more")
    ready = replace(state, at=WRITE_STEPS.index(event.step), bad=None)
    after = _TAKES[event.step](ready, event)
    return replace(after, events=(*state.events, event))


def _supply(state: WriteState, event: WriteEvent) -> WriteState:
    low, high = _VOLTS
    volts = _number(event.volts, "the supply of the chip")
    measured = _number(event.measured, "what was measured at the clip")
    if not low <= volts <= high:
        raise RepairlibError(f"{volts:g} V", "no supply of a memory chip", f"{low:g} to {high:g} V")
    if abs(measured - volts) > _WITHIN * volts:
        wrong = f"the chip is made for {volts:g} V: this would not read it, or would kill it"
        accepted = f"{volts * (1 - _WITHIN):.2f} to {volts * (1 + _WITHIN):.2f} V at the clip"
        raise RepairlibError(f"{measured:g} V", wrong, accepted)
    told = f"the programmer gives {measured:g} V, the chip is made for {volts:g} V"
    return replace(state, at=state.at + 1, told=told)


def _read(state: WriteState, event: WriteEvent) -> WriteState:
    image, stored = seen_whole(event.path, state.capacity, "a read of the whole chip")
    is_another_file(stored, state.reads, "this file was given before")
    if blank(image.data):
        if event.found != CHIP_IS_BLANK:
            wrong = f"every byte is {image.data[0]:02X}: the chip is blank, or does not answer"
            accepted = f"check supply, contact and identity; if it is blank, {CHIP_IS_BLANK!r}"
            raise RepairlibError(stored.path.name, wrong, accepted)
        told = [f"{stored.path.name}: {CHIP_IS_BLANK}"]
    else:
        told = judged(image, state.capacity, event.found)
    taken = replace(state, reads=(*state.reads, stored))
    before = state.reads[-1] if state.reads else None
    if before is None:
        told.append("one read is no copy yet: read again into another file")
    elif before.sha256 == stored.sha256:
        still_there(before)
        told.insert(0, f"{before.path.name} and {stored.path.name} are equal")
        taken = replace(taken, at=state.at + 1, old=(before, stored))
    else:
        told.append(_how_they_differ(before, image))
        if stored.sha256 in [one.sha256 for one in state.reads]:
            told.append("an earlier one is equal to it, and two equal ones must follow each other")
    return replace(taken, told="; ".join(told))


def _how_they_differ(before: StoredFile, image: Image) -> str:
    """What a read and the one before it differ in."""
    found = check_read_back(still_there(before), image)
    first, end = found.ranges[0]
    return (
        f"{before.path.name} and {image.name} differ in {found.differing:,} bytes, first at "
        f"0x{first:06X} to 0x{end - 1:06X}: clean the contact, and read again into another file"
    )


def _keep_list(state: WriteState, event: WriteEvent) -> WriteState:
    if not event.keeps and not reasoned(event.found):
        wrong = "no list, and nobody said that there is nothing to keep"
        accepted = "the list, or who looked and how, in three words or more"
        raise RepairlibError(event.found or KEEP_LIST, wrong, accepted)
    if len(event.keeps) != len(event.answers):
        wrong = f"{len(event.keeps)} lines and {len(event.answers)} answers"
        raise RepairlibError(KEEP_LIST, wrong, "one answer for each line")
    for keep, answer in zip(event.keeps, event.answers, strict=True):
        if answer not in (KEPT, LEFT):
            raise RepairlibError(answer, f"no answer to {keep}", f"{KEPT}, {LEFT}")
        if not 0 <= keep.where[0] < keep.where[1] <= state.capacity:
            raise RepairlibError(keep, "not in the chip", f"within {state.capacity:,} bytes")
    answered = zip(event.keeps, event.answers, strict=True)
    kept = tuple(keep for keep, answer in answered if answer == KEPT)
    left = len(event.keeps) - len(kept)
    told = f"to be kept: {len(kept)}, left behind: {left}" if event.keeps else event.found.strip()
    return replace(state, at=state.at + 1, kept=kept, told=told)


def _intended(state: WriteState, event: WriteEvent) -> WriteState:
    image, stored = seen_whole(event.path, state.capacity, "the image that is to be written")
    if blank(image.data):
        wrong = f"every byte is {image.data[0]:02X}: that would write nothing"
        raise RepairlibError(stored.path.name, wrong, "the image that is to be written")
    old = still_there(state.old[0])
    for keep in state.kept:
        start, end = keep.where
        if image.data[start:end] != old.data[start:end]:
            wrong = f"it has not what was to be kept: {keep}"
            raise RepairlibError(stored.path.name, wrong, "an image with that put in")
    donor = seen_whole(event.donor, state.capacity, "the donor's image")[0] if event.donor else None
    told = f"{stored.path.name} is as large as the chip, {size_in_words(state.capacity)}"
    if image.data == old.data:
        told += ", and is what stands in it already"
    doubts = judged(image, state.capacity, event.found)
    doubts += sums_asked(image, [one for one in (old, donor) if one], state.kept, event.found)
    return replace(state, at=state.at + 1, intended=stored, told="; ".join([told, *doubts]))


def _go(state: WriteState, event: WriteEvent) -> WriteState:
    _all_there(state)
    return _done(state, event, "both reads and the image are in place, unchanged")


def _erased(state: WriteState, event: WriteEvent) -> WriteState:
    _all_there(state)
    return _done(state, event, "erased")


def _written(state: WriteState, event: WriteEvent) -> WriteState:
    _all_there(state)
    return _done(state, event, "written")


def _read_back(state: WriteState, event: WriteEvent) -> WriteState:
    old, intended = _all_there(state)
    image, stored = seen(event.path)
    known = (*state.reads, *([state.intended] if state.intended else []))
    is_another_file(stored, known, "this file was stored before the chip was written")
    is_another_file(stored, state.backs, "this file was given before")
    found = check_read_back(intended, image, old)
    if found.equal:
        return replace(state, at=state.at + 1, told="every byte is as intended")
    first, end = found.ranges[0]
    told = (
        f"{found.differing:,} bytes are not as intended, first at 0x{first:06X} to "
        f"0x{end - 1:06X}. {found.why} {found.next}"
    )
    at = WRITE_STEPS.index(_AFTER.get(found.pattern, READ_BACK))
    return replace(state, at=at, bad=found, backs=(*state.backs, stored), told=told)


# What is due after a read-back that a write made so; after any other the chip is read again first.
_AFTER = {NOT_ERASED: ERASED, OLD: ERASED, NOT_WRITTEN: WRITTEN}

_TAKES: dict[str, Callable[[WriteState, WriteEvent], WriteState]] = {
    SUPPLY: _supply,
    READ: _read,
    KEEP_LIST: _keep_list,
    INTENDED: _intended,
    GO: _go,
    ERASED: _erased,
    WRITTEN: _written,
    READ_BACK: _read_back,
}


def _done(state: WriteState, event: WriteEvent, told: str) -> WriteState:
    if event.found != DONE:
        raise RepairlibError(event.found, f"no answer to {event.step}", DONE)
    return replace(state, at=state.at + 1, told=told)


def _number(value: object, what: str) -> float:
    """A voltage as a number; RepairlibError when it is none."""
    if isinstance(value, bool) or not isinstance(value, int | float) or not math.isfinite(value):
        raise RepairlibError(value, f"{what} is no number", "volts, as 3.3")
    return float(value)


def _all_there(state: WriteState) -> tuple[Image, Image]:
    """The old content and the intended image, both reads and the image being as they were."""
    if len(state.old) < 2 or state.intended is None:
        raise RepairlibError(GO, "two equal reads are not stored", "the steps in their order")
    images = [still_there(one) for one in (*state.old, state.intended)]
    return images[0], images[-1]
