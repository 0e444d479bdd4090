"""What must not be lost when a donor's image goes into a chip: what only this board has.

Found by its form (text, addresses) and by comparing with images of other boards: the donor, and
twins that work. What no other board has at that place, and what the donor would overwrite, counts.
"""

from __future__ import annotations

from collections.abc import Sequence

from repairlib.core.errors import RepairlibError
from repairlib.firmware.address_form import LENGTH
from repairlib.firmware.calibration import calibrations
from repairlib.firmware.image_file import Image, image_of
from repairlib.firmware.keep import LIKELY, POSSIBLE, REGION, VERY_LIKELY, Keep, overlap, rank
from repairlib.firmware.network_addresses import network_addresses
from repairlib.firmware.places import Place, blank, long_places, places_that_differ
from repairlib.firmware.serial_numbers import serial_numbers
from repairlib.firmware.texts import wide_texts

MOST_POSSIBLE = 256  # finds that are only possible: as many as places are looked at
_SHOWN = 12  # bytes of a region that are told


def keep_list(old: Image, donor: Image, twin: Sequence[Image] = ()) -> tuple[Keep, ...]:
    """What of the `old` content a write of the `donor` image would overwrite, the surest first.

    `twin` are images of further boards of the same kind with the same firmware; each makes the list
    surer. A list that is empty means that nothing was found, not that there is nothing.

    >>> old = image_of(b"serial=PB-204117\\0".ljust(64, b"\\xff"))
    >>> donor = image_of(b"serial=PB-204162\\0".ljust(64, b"\\xff"))
    >>> [(keep.kind, keep.value) for keep in keep_list(old, donor)]
    [('serial number', 'PB-204117')]
    """
    boards = [donor, *twin]
    others = [one for one in boards if one.data != old.data]
    by_place = [place for other in others for place in places_that_differ(old, other)]
    wide = wide_texts(old)
    serials = serial_numbers(old, others, by_place, wide)
    addresses = network_addresses(old, others, by_place, wide)
    as_text = [one.where for one in addresses if one.where[1] - one.where[0] > LENGTH]
    serials = [one for one in serials if not _meets(one, as_text)]
    addresses = [one for one in addresses if not _meets(one, [two.where for two in serials])]
    certain = [one.where for one in (*addresses, *serials) if one.sure == VERY_LIKELY]
    certain += [one.where for one in serials if one.sure == LIKELY]
    tables = calibrations(old, by_place, certain)
    in_tables = [one.where for one in tables]
    addresses = [one for one in addresses if one.where in certain or not _meets(one, in_tables)]
    serials = [one for one in serials if one.where in certain or not _meets(one, in_tables)]
    found = [
        one for one in (*addresses, *serials, *tables) if _its_own(one.where, old, [donor, *others])
    ]
    found += _regions(old, donor, twin, by_place, found)
    return _bounded([*found, *_long_regions(old, donor, twin, found)])


def keep_into(donor: Image, old: Image, keeps: Sequence[Keep]) -> Image:
    """A new image: the donor's, with what is to be kept put in from the old one.

    Neither of the two is changed. `sums_in_doubt` says which check sums may no longer fit.
    Raises RepairlibError for images of two sizes and for a place that is not in them.

    >>> from repairlib.firmware.keep import SERIAL, LIKELY
    >>> kept = Keep(SERIAL, (1, 3), "17", "", LIKELY)
    >>> keep_into(image_of(b"a62b"), image_of(b"x17y"), [kept]).data
    b'a17b'
    """
    if donor.size != old.size:
        wrong = f"it has {donor.size:,} bytes, and {old.name} has {old.size:,}"
        raise RepairlibError(donor.name, wrong, "two images of the whole chip, equally long")
    made = bytearray(donor.data)
    for keep in keeps:
        start, end = keep.where
        if not 0 <= start < end <= old.size:
            wrong = f"no such place in {old.size:,} bytes"
            raise RepairlibError(keep.where, wrong, "a place of the keep-list of this image")
        made[start:end] = old.data[start:end]
    return image_of(bytes(made), f"{donor.name} with what was kept of {old.name}")


def _meets(keep: Keep, ranges: list[tuple[int, int]]) -> bool:
    """Whether it has a byte in common with one of these."""
    return any(overlap(keep.where, one) for one in ranges)


def _its_own(where: tuple[int, int], old: Image, boards: Sequence[Image]) -> bool:
    """Whether every other board has something else there."""
    start, end = where
    return all(one.data[start:end] != old.data[start:end] for one in boards)


def _regions(
    old: Image, donor: Image, twin: Sequence[Image], places: list[Place], found: list[Keep]
) -> list[Keep]:
    """Places where the donor differs from this board, and nothing else explains it.

    What a twin has too is no board's own, and is listed only beside something that is: a label
    without its number, or a number without its label, is no record.
    """
    regions = []
    for place in places:
        if place.other is not donor or not place.telling:
            continue
        for start, end in place.runs(old, gap=8):
            beside = [one for one in found if overlap((start, end), one.where)]
            for rest in _without(old, donor, (start, end), [one.where for one in beside]):
                its_own = _its_own(rest, old, twin)
                if its_own or beside:
                    why = _why(beside, its_own and bool(twin))
                    mine = old.data[slice(*rest)]
                    regions.append(Keep(REGION, rest, _in_words(mine), why, POSSIBLE))
    return regions


def _long_regions(old: Image, donor: Image, twin: Sequence[Image], found: list[Keep]) -> list[Keep]:
    """Blocks that are longer than settings are, without what was found in them."""
    regions = []
    for where in long_places(old, donor):
        taken = [one.where for one in found if overlap(where, one.where)]
        for rest in _without(old, donor, where, taken):
            if _its_own(rest, old, twin):
                why = (
                    "more than 4 KiB differ from the donor's in a row: a block of its own, such as "
                    "keys or a log, or another version of the firmware, or damage"
                )
                regions.append(Keep(REGION, rest, _in_words(old.data[slice(*rest)]), why, POSSIBLE))
    return regions


def _why(beside: list[Keep], from_twins: bool) -> str:
    """Why a place is listed of which nothing is known but that it differs."""
    where = f"beside the {beside[0].kind}" if beside else "where all around is equal"
    why = f"it differs from the donor's {where}"
    why += ", and from each twin too" if from_twins else ""
    return f"{why}; that can be data of its own, and it can be damage"


def _without(
    old: Image, donor: Image, run: tuple[int, int], taken: list[tuple[int, int]]
) -> list[tuple[int, int]]:
    """What is left of a run when what was found is cut out of it, and holds something that differs.

    Nothing that differs is lost: each piece reaches from its first such byte to its last.
    """
    import numpy as np

    pieces, begin = [], run[0]
    for first, end in sorted([*taken, (run[1], run[1])]):
        part = slice(begin, max(begin, min(first, run[1])))
        differ = np.flatnonzero(old.array()[part] != donor.array()[part])
        if len(differ):
            piece = begin + int(differ[0]), begin + int(differ[-1]) + 1
            if not blank(old.data[slice(*piece)]):
                pieces.append(piece)
        begin = max(begin, end)
    return pieces


def _in_words(data: bytes) -> str:
    """The first bytes, as text where they are text, and how many there are."""
    text = data.decode("latin-1")
    shown = repr(text[:_SHOWN]) if text.isascii() and text.isprintable() else data[:_SHOWN].hex(" ")
    return shown if len(data) <= _SHOWN else f"{shown} … ({len(data):,} bytes)"


def _bounded(found: list[Keep]) -> tuple[Keep, ...]:
    """The list in order; of what is only possible the first few, with the number of the others."""
    ordered = sorted(found, key=rank)
    sure = [one for one in ordered if one.sure != POSSIBLE]
    possible = [one for one in ordered if one.sure == POSSIBLE]
    told = possible[:MOST_POSSIBLE]
    if len(possible) > len(told):
        more = len(possible) - len(told)
        why = f"{told[-1].why}; {more} more places are like this and are not listed"
        told[-1] = told[-1]._replace(why=why)
    return (*sure, *told)
