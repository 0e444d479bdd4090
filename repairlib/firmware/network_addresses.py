"""Network addresses that only one board has: as bytes, and as text with : or - between them.

Six bytes that could be an address stand everywhere in code. So bytes are taken for one only where
something else speaks for it: a text, a label, the next number, or another board with another
address of the same maker at the same place.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from repairlib.firmware.address_form import LENGTH, is_group, is_local, plausible, uneven, written
from repairlib.firmware.image_file import Image
from repairlib.firmware.keep import (
    ADDRESS,
    LIKELY,
    POSSIBLE,
    VERY_LIKELY,
    Keep,
    overlap,
)
from repairlib.firmware.places import Place, blank
from repairlib.firmware.texts import Text, matches, where_words_stand

_ROW = 32  # bytes of data alone among nothing that may be a row of addresses: our choice
_NEIGHBOURS = (1, -1, 2, -2)  # the next numbers: boards with several ports have them
_WHERE_NOTHING_STANDS = "bytes in the form of an address, where the other board has nothing"
_MOST_COPIES = 64  # further places that are told: our choice
_PAIR = rb"[0-9A-Fa-f]{2}"
_TEXT = re.compile(
    rb"(?<![0-9A-Fa-f])(?<![^0-9A-Za-z][0-9A-Fa-f]{2}[:-])"  # but MAC: may stand before it
    rb"%b([:-])%b(?:\1%b){4}(?![0-9A-Fa-f]|[:-]%b(?![0-9A-Za-z]))"
    rb"|(?<![0-9A-Fa-f.])[0-9A-Fa-f]{4}(?:\.[0-9A-Fa-f]{4}){2}(?![0-9A-Fa-f.])"
    % (_PAIR, _PAIR, _PAIR, _PAIR)
)
_NAMES = (
    rb"(?:mac(?:[ _-]?(?:addr(?:ess)?|id))?|(?:ether(?:net)?|hw|wi-?fi|wlan|lan|eth|bt|net)\d?"
    rb"[ _-]?(?:addr(?:ess)?|mac|id)|eth\daddr|bssid|network address)\d?"
)
_LABELLED = re.compile(
    rb"(?i)(?<![a-z])(?:%b)[ \t]*[:=#\0 ]{1,4}([0-9A-Fa-f]{12})(?![0-9A-Za-z])" % _NAMES
)
_LABEL_BEFORE = re.compile(rb"(?i)(?<![a-z])(?:%b)[ :=#\0\xff]{0,16}\Z" % _NAMES)
_LABELLED_BYTES = re.compile(rb"(?is)(?<![a-z])(?:%b)[:=\0]{1,4}([^\0:=].{5})" % _NAMES)
_FIRST_LETTERS = (b"mac", b"eth", b"hw", b"wi", b"wlan", b"lan", b"bt", b"net", b"bssid")
_labels = where_words_stand(_FIRST_LETTERS)
# Between the pairs of an address; the marks are looked for first, because they are rare.
_MARKS = (
    (re.compile(rb"(?s):(?=..:..:..:..:)"), 2),
    (re.compile(rb"(?s)-(?=..-..-..-..-)"), 2),
    (re.compile(rb"(?s)\.(?=....\.)"), 4),
)
_LABEL_REACH = 40  # bytes before an address in which its label is looked for


def network_addresses(
    old: Image, others: Sequence[Image], places: Iterable[Place], wide: list[Text]
) -> list[Keep]:
    """The addresses of `old` that are its own; `others` are images of other boards.

    `places` is where it differs from them, `wide` its texts with two bytes for each character.
    """
    finds = [*_as_text(old, others, wide), *_after_a_label(old, others), *_as_bytes(old, places)]
    finds += _copies_and_neighbours(old, finds)
    kept: list[_Find] = []
    for find in sorted(finds, key=lambda one: -one.weight):  # equal ones stay in order
        if not any(overlap(find.where, one.where) for one in kept):
            kept.append(find)
    return [_judged(find, kept) for find in kept if find.weight > 0]


class _Find(NamedTuple):
    """An address, where it stands, what speaks for it, and how much that weighs."""

    address: bytes
    where: tuple[int, int]
    why: str
    weight: int  # 3: cannot be chance; 2: speaks for itself; 1: needs a second look; 0: alone no


def _judged(find: _Find, kept: list[_Find]) -> Keep:
    """The find as it is told, with the other places where it or its neighbours stand."""
    same = [one for one in kept if one.address == find.address and one.where != find.where]
    number = int.from_bytes(find.address)
    beside = [one for one in kept if abs(int.from_bytes(one.address) - number) in (1, 2)]
    why, weight = find.why, find.weight
    if same:
        weight += 1
        there = f"0x{same[0].where[0]:06X}"
        why += f"; it stands at {there} too" if there not in why else ""
    if beside:
        weight += 1
        why += f"; {written(beside[0].address)} stands at 0x{beside[0].where[0]:06X}"
    if is_local(find.address):
        why += "; its local bit is set: somebody gave it who is no maker"
    sure = (POSSIBLE, LIKELY, VERY_LIKELY)[min(max(weight, 1), 3) - 1]
    return Keep(ADDRESS, find.where, written(find.address), why, sure)


def _as_text(old: Image, others: Sequence[Image], wide: list[Text]) -> Iterator[_Find]:
    """Addresses that stand as text and in no other board's image."""
    for pattern, starts, group, why in (
        (_TEXT, _pairs_stand, 0, "it stands there as text"),
        (_LABELLED, _labels, 1, "it stands there as text with its label"),
    ):
        for text, match in matches(pattern, starts, old, wide):
            address = bytes.fromhex(re.sub(rb"[^0-9A-Fa-f]", b"", match[group]).decode())
            if is_group(address) or blank(address[3:]):
                continue
            where = text.where(*match.span(group))
            own = old.data[where[0] : where[1]]
            if any(own in other.data for other in others):
                continue  # a constant of the firmware, or an example
            weight = 3 if group or _answered(pattern, others, where) else 2
            yield _Find(address, where, why, weight if uneven(address) else 1)


def _pairs_stand(characters: bytes) -> list[int]:
    """Where addresses in text may begin."""
    found = [
        match.start() - before
        for marks, before in _MARKS
        for match in marks.finditer(characters)
        if match.start() >= before
    ]
    return sorted(found)


def _answered(pattern: re.Pattern[bytes], others: Sequence[Image], where: tuple[int, int]) -> bool:
    """Whether another board has an address of its own at the same place, or nothing yet."""
    cuts = (other.data[where[0] : where[1]] for other in others)
    return any(blank(cut) or pattern.fullmatch(cut.replace(b"\0", b"")) for cut in cuts)


def _after_a_label(old: Image, others: Sequence[Image]) -> Iterator[_Find]:
    """Addresses as bytes right behind a label, which stand in no other board's image."""
    for _, match in matches(_LABELLED_BYTES, _labels, old, []):
        address = match[1]
        printable = sum(0x20 <= byte < 0x7F for byte in address)
        if printable > LENGTH // 2 or not plausible(address):
            continue
        if not any(address in other.data for other in others):
            yield _Find(address, match.span(1), "bytes right behind a label", 1)


def _as_bytes(old: Image, places: Iterable[Place]) -> list[_Find]:
    """Addresses as bytes where another board has something else."""
    finds, seen = [], set()
    candidates = [one for place in places for one in _candidates(old, place)]
    copied = {(one.address, one.where) for one in candidates if one.why != _WHERE_NOTHING_STANDS}
    often = Counter(address for address, _ in copied)
    numbers = {int.from_bytes(one.address): one.where for one in candidates if one.tells}
    for address, where, why, weight, tells in candidates:
        beside = numbers.get(int.from_bytes(address) + 1, where)
        if _LABEL_BEFORE.search(old.data[max(0, where[0] - _LABEL_REACH) : where[0]]):
            why, weight = f"{why}, and a label before it", min(weight + 2, 3)
        elif tells and not overlap(beside, where):
            why, weight = "bytes in the form of an address, and the next number stands there too", 3
        elif often[address] > 1:
            weight = max(weight, 1)
        if (where, weight) not in seen:
            seen.add((where, weight))
            finds.append(_Find(address, where, why, weight))
    return finds


class _Candidate(NamedTuple):
    """Six bytes that may be an address; `tells` is whether the other board's bytes bear it out."""

    address: bytes
    where: tuple[int, int]
    why: str
    weight: int
    tells: bool


def _candidates(old: Image, place: Place) -> Iterator[_Candidate]:
    """Six bytes that may be an address, at a place where two boards differ, the best one first."""
    theirs = place.other.data
    if place.end - place.start > LENGTH - 3 and blank(theirs[place.start : place.end]):
        begin, end = _island(old, place)
        short = end - begin <= LENGTH + 2  # nothing but an address, or with a sum
        for first in sorted(_starts_in_island(old, begin, end), key=lambda one: -_fit(old, one, 0)):
            weight = 1 if short and first == begin else 0
            where = (first, first + LENGTH)
            tells = place.telling and end - begin <= _ROW
            yield _Candidate(_cut(old, first), where, _WHERE_NOTHING_STANDS, weight, tells)
        return
    for start, end in place.runs(old, gap=2):
        if _in_text(old, start):
            continue
        options = []
        for first in range(max(0, start - LENGTH + 1), start + 1):
            mine, other = _cut(old, first), theirs[first : first + LENGTH]
            same_maker = mine[:3] == other[:3]
            goes_on = end > first + LENGTH  # then something else begins right behind it
            if goes_on and not (same_maker and _begins(old, first)):
                continue
            if plausible(mine) and plausible(other) and not _runs_out(old, first):
                options.append((_fit(old, first, end) + 2 * same_maker, same_maker, first))
        for _, same_maker, first in sorted(options, reverse=True)[:1]:
            why = "bytes in the form of an address, where the other board has other ones"
            if same_maker:
                why = "the other board has another address with the same first half there"
            if not place.telling:
                weight = 0  # by chance one in four places would look like an address
            elif place.apart and same_maker and _beside_nothing(old, first):
                weight = 2
            else:
                weight = 1
            yield _Candidate(_cut(old, first), (first, first + LENGTH), why, weight, same_maker)


def _begins(old: Image, first: int) -> bool:
    """Whether nothing stands right before it, as before the first thing in a record."""
    before = old.data[max(0, first - 4) : first]
    return blank(before)


def _runs_out(old: Image, first: int) -> bool:
    """Whether its last byte is the first of the nothing behind it."""
    last = first + LENGTH - 1
    return blank(old.data[last : last + 2])


def _beside_nothing(old: Image, first: int) -> bool:
    """Whether four bytes of nothing stand right before or right behind it."""
    last = first + LENGTH
    beside = old.data[max(0, first - 4) : first], old.data[last : last + 4]
    return any(len(one) == 4 and blank(one) for one in beside)


def _in_text(old: Image, at: int) -> bool:
    """Whether six characters or more stand there side by side."""
    before, after = old.data[max(0, at - LENGTH) : at], old.data[at : at + LENGTH]
    left = next((n for n, byte in enumerate(before[::-1]) if not 0x20 <= byte < 0x7F), len(before))
    right = next((n for n, byte in enumerate(after) if not 0x20 <= byte < 0x7F), len(after))
    return right > 0 and left + right >= LENGTH


def _island(old: Image, place: Place) -> tuple[int, int]:
    """Where data that stands alone begins and ends, when the other board has nothing there.

    A zero at its front is no difference where the other has zeros, and ones behind it are one.
    """
    nothing = place.other.data[place.start : place.start + 1]
    begin, end = place.start, place.end
    while begin and place.start - begin < 2 and old.data[begin - 1 : begin] == nothing == b"\0":
        begin -= 1
    if nothing == b"\0":
        end = begin + len(old.data[begin:end].rstrip(b"\xff"))
    return begin, end


def _starts_in_island(old: Image, begin: int, end: int) -> list[int]:
    """Where an address may begin in data that stands alone among nothing."""
    starts = range(begin, end - LENGTH + 1)
    return [first for first in starts if plausible(_cut(old, first))]


def _fit(old: Image, first: int, end: int) -> int:
    """How well an address would fit there: it ends with what differs, and nothing stands beside."""
    last = first + LENGTH
    before, after = old.data[max(0, first - 1) : first], old.data[last : last + 1]
    beside = blank(before) + blank(after) - 2 * blank(old.data[last - 1 : last])
    return 2 * (last == end) + beside + (first % 2 == 0)


def _copies_and_neighbours(old: Image, finds: list[_Find]) -> list[_Find]:
    """Further places of the addresses found, and the next numbers, as bytes in either order."""
    more: list[_Find] = []
    known = {find.where for find in finds if find.weight == 3}
    sought = {find.address: find for find in finds if find.weight == 3}
    queue = list(sought)[:_MOST_COPIES]
    while queue:
        address = queue.pop(0)
        for step in (0, *_NEIGHBOURS):
            number = int.from_bytes(address) + step
            if not 0 <= number < 1 << 48:
                continue
            other = number.to_bytes(LENGTH)
            for form, how in ((other, ""), (other[::-1], ", last byte first")):
                for at in _all(old.data, form):
                    where = (at, at + LENGTH)
                    if where in known or len(more) >= _MOST_COPIES:
                        continue
                    known.add(where)
                    more.append(_Find(other, where, _told(sought[address], step, how), 3))
                    if other not in sought:
                        sought[other] = more[-1]
                        queue.append(other)
    return more


def _told(found: _Find, step: int, how: str) -> str:
    """Why an address beside another one is taken for one."""
    what = "the same address" if not step else f"the address {step:+d}"
    return f"{what} as at 0x{found.where[0]:06X}, as bytes{how}"


def _all(data: bytes, form: bytes) -> Iterator[int]:
    """Where these bytes stand."""
    at = data.find(form)
    while at >= 0:
        yield at
        at = data.find(form, at + 1)


def _cut(old: Image, first: int) -> bytes:
    return old.data[first : first + LENGTH]
