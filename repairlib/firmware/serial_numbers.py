"""Serial numbers as text: behind a label, or where another board has another of the same form."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence

from repairlib.firmware.image_file import Image
from repairlib.firmware.keep import LIKELY, POSSIBLE, SERIAL, VERY_LIKELY, Keep, overlap
from repairlib.firmware.places import Place, blank
from repairlib.firmware.texts import Text, matches, where_words_stand

_VALUE = rb"[A-Za-z0-9][A-Za-z0-9._/-]{3,31}"
_LABELLED = re.compile(
    rb"(?i)(?:serial(?:[ _.-]?(?:number|num|no|nr|id))?|seriennummer|ser[ _.-]?(?:no|nr)"
    rb"|(?<![a-z0-9])(?:s/n|sn)|s/?n(?=[:=]))\.?[:=#>\"'\0\xff \t]{1,16}(%b)" % _VALUE
)
_labels = where_words_stand((b"ser", b"s/n", b"sn"))
_STANDS_ALONE = re.compile(rb"[A-Za-z0-9][A-Za-z0-9 ._/-]{3,39}")
_FEWEST_DIGITS = 3
_IN_HEX = re.compile(r"[0-9A-F]{8,}|[0-9a-f]{8,}")
_REACH = 64  # bytes around a place that differs in which its text may begin or end
_NO_SERIAL = re.compile(
    rb"(?i)(?:v|ver|version|rev)?[. ]?\d{1,3}(?:[._]\d{1,4}){1,3}[a-z]?"  # a version
    rb"|\d{4}-\d\d-\d\d.*|\d\d?[./]\d\d?[./]\d{2,4}|[a-z]{3} [ \d]\d \d{4}"  # a date
)


def serial_numbers(
    old: Image, others: Sequence[Image], places: Iterable[Place], wide: list[Text]
) -> list[Keep]:
    """The serial numbers of `old` that are its own; `others` are images of other boards.

    `places` is where it differs from them, `wide` its texts with two bytes for each character.
    """
    found: list[Keep] = []
    for keep in (*_behind_a_label(old, others, wide), *_where_boards_differ(old, places, wide)):
        if not any(overlap(keep.where, one.where) for one in found):
            found.append(keep)
    return found


def _behind_a_label(old: Image, others: Sequence[Image], wide: list[Text]) -> Iterator[Keep]:
    """Values with a label before them, which no other board has."""
    for text, match in matches(_LABELLED, _labels, old, wide):
        value = match[1].rstrip(b"._/-")
        where = text.where(match.start(1), match.start(1) + len(value))
        own = old.data[where[0] : where[1]]
        if _is_serial(value) and not any(own in other.data for other in others):
            how = " in characters of two bytes" if text.width == 2 else ""
            why = f"it stands behind a label as text{how}"
            yield Keep(SERIAL, where, value.decode(), why, VERY_LIKELY)


def _where_boards_differ(old: Image, places: Iterable[Place], wide: list[Text]) -> Iterator[Keep]:
    """Text of the form of a serial number where another board has another one, or nothing."""
    for place in places:
        begin = max(0, place.start - _REACH)
        near = Text(old.data[begin : place.end + _REACH], begin, 1)
        around = (begin, begin + len(near.characters))
        texts = [one for one in wide if overlap(one.where(0, len(one.characters)), around)]
        for text in (near, *texts):
            for match in _STANDS_ALONE.finditer(text.characters):
                where = text.where(*match.span())
                if overlap(where, (place.start, place.end)) and _is_serial(match[0]):
                    keep = _compared(match[0], where, place, text.width)
                    if keep and not _goes_on(text, match):
                        yield keep


def _compared(value: bytes, where: tuple[int, int], place: Place, width: int) -> Keep | None:
    """The value as a serial number, after what the other board has at the same place."""
    theirs = place.other.data[where[0] : where[1]]
    mine = value if width == 1 else b"\0".join(value[i : i + 1] for i in range(len(value)))
    if theirs.strip(b"\0") == mine:
        return None
    text = theirs.decode("latin-1").replace("\0", "") if width == 2 else theirs.decode("latin-1")
    if blank(theirs):
        why, sure = "text of that form, where the other board has nothing", LIKELY
    elif _form(text) == _form(value.decode()) or _both_in_hex(text, value.decode()):
        why = f"the other board has another of the same form there, {text}"
        sure = LIKELY if place.telling else POSSIBLE
    elif place.few:
        why, sure = "text of that form, where the other board has something else", POSSIBLE
    else:
        return None
    return Keep(SERIAL, where, value.decode(), why, sure)


def _goes_on(text: Text, match: re.Match[bytes]) -> bool:
    """Whether other characters stand right beside it: then it is a part of something longer."""
    before = text.characters[max(0, match.start() - 1) : match.start()]
    after = text.characters[match.end() : match.end() + 1]
    return any(0x20 < byte < 0x7F and byte not in b"=:\"'#,;()[]<>|" for byte in before + after)


def _is_serial(value: bytes) -> bool:
    """Whether it has the form of a serial number: digits enough, no words, no version, no date."""
    value = value.strip()
    digits = sum(0x30 <= byte <= 0x39 for byte in value)
    if digits < _FEWEST_DIGITS or 3 * digits < len(value) or len(value) < 4:
        return False
    return not _NO_SERIAL.fullmatch(value) and len(set(value)) > 2 and value.count(b" ") < 2


def _both_in_hex(one: str, other: str) -> bool:
    """Whether both are digits of hex, in which letters stand wherever the number has them."""
    return all(_IN_HEX.fullmatch(text.strip()) for text in (one, other))


def _form(text: str) -> str:
    """The kinds of its characters in order, repeats taken together: PB-204117 gives A-9."""
    kinds = "".join("9" if c.isdigit() else "A" if c.isalpha() else c for c in text)
    return re.sub(r"(.)\1+", r"\1", kinds)
