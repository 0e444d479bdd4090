"""What is said of images of a memory chip: one read, several, what would be written, what it keeps.

What is wrong with an image is decided in `repairlib.firmware`; it is drawn in `repairlib.show`.
"""

from __future__ import annotations

from collections.abc import Sequence

from repairlib.core.errors import RepairlibError
from repairlib.core.html import (
    LEFT,
    Html,
    fold,
    listed,
    paragraphs,
    picture,
    row,
    table,
    told,
)
from repairlib.core.plain_file import size_in_words
from repairlib.core.safety import caution
from repairlib.core.wording import counted, sentence
from repairlib.firmware import (
    HOW_SURE,
    Checked,
    Image,
    Keep,
    ReadBack,
    Reads,
    Sectors,
    block_map,
    check_image,
    check_read_back,
    compare_reads,
    sectors_that_differ,
)
from repairlib.show import draw_image_map, draw_sectors, draw_two_reads
from repairlib.show.cell_map import places_said

SHOWN = 12  # ranges that are told
NOTHING_SEEN = "Nothing wrong can be seen in it"


def image_html(image: Image, chip: int | None) -> Html:
    """What can be told of one image, and its map, with what is named outlined."""
    checked = check_image(image, chip)
    places = [one.where for one in (*checked.damages, *checked.doubts) if _is_part(one, image)]
    return with_picture(checked_html(checked), draw_image_map(block_map(image), places))


def checked_html(checked: Checked) -> Html:
    """What is wrong with an image, what may be, and its sums."""
    name = f"{checked.name}, {size_in_words(checked.size)}"
    pieces = []
    if checked.damages:
        says = [f"{one}" for one in checked.damages]
        pieces.append(told("wrong", f"{name}: {counted(len(says), 'damage')}", says))
    if checked.doubts:
        says = [f"{one}" for one in checked.doubts]
        pieces.append(told("cannot read", f"{name}: cannot tell", says))
    if not pieces:
        pieces.append(told("partly right", f"{name}: {NOTHING_SEEN}", checked.notes[-1:]))
    sums = (f"CRC-32: {checked.sums.crc32}", f"SHA-256: {checked.sums.sha256}")
    pieces.append(fold("Notes and check sums", listed((*checked.notes, *sums))))
    return Html("".join(pieces))


def reads_html(reads: list[Image]) -> Html:
    """Whether reads of one chip are equal; else what the pattern means, with a picture."""
    found = compare_reads(reads)
    said = said_of_reads(found)
    return said if found.equal else with_picture(said, draw_two_reads(reads))


def said_of_reads(found: Reads) -> Html:
    """The words for what reads say of each other."""
    says = [sentence(found.means.rstrip(".")), f"Next: {sentence(found.next.rstrip('.'))}"]
    names = " and ".join(found.names)
    if found.equal:
        return told("right", f"{names} are equal", says)
    count = counted(f"{found.bytes_differ:,}", "byte")
    headline = f"{names} differ in {count}, pattern: {found.pattern}"
    return Html(told("wrong", headline, says) + _ranges(found.ranges, found.in_all))


def keeps_html(keeps: Sequence[Keep], old: Image, new: Image) -> Html:
    """What only this board has and a write would overwrite, numbered, on the map of the old."""
    if not keeps:
        nothing = "That is no proof: look at the label, and compare with a further twin."
        head = f"Nothing found that only {old.name} has"
        return told("cannot read", head, [nothing])
    head = f"{counted(len(keeps), 'place')} of {old.name} would be lost with {new.name}"
    rows = [
        row((number, one.kind, one.value, places_said([one.where]), one.sure), LEFT, first="th")
        for number, one in enumerate(keeps, 1)
    ]
    columns = row(("No.", "What", "It is", "Where", "Sure?"), f'scope="col" {LEFT}', "th")
    why = [f"{number}: {one.why}. {one.next}" for number, one in enumerate(keeps, 1)]
    said = (
        told("partly right", head) + table(rows, columns) + fold("Why, and what next", listed(why))
    )
    drawn = draw_image_map(block_map(old), [one.where for one in keeps])
    return with_picture(said, drawn)


def chosen_of(keeps: Sequence[Keep], numbers: str) -> list[Keep]:
    """Those with these numbers, from 1 on; of "" all that are more than possible.

    Raises RepairlibError for what is no number of the list, and where nothing is left to keep.

    >>> chosen_of([], "1")
    Traceback (most recent call last):
        ...
    repairlib.core.errors.RepairlibError: '1': not a number of the list. Accepted: 1 to 0
    """
    if chosen := numbers_of(keeps, numbers):
        return [keeps[number - 1] for number in chosen]
    sure = [one for one in keeps if one.sure != HOW_SURE[-1]]
    if not sure:
        wrong = "nothing in the list is more than possible"
        raise RepairlibError(numbers, wrong, "the numbers of what you decide to keep")
    return sure


def numbers_of(keeps: Sequence[Keep], typed: str) -> list[int]:
    """The numbers that were typed, in order; RepairlibError for one that the list has not.

    >>> numbers_of([], " ")
    []
    """
    words = typed.replace(",", " ").split()
    for word in words:
        if not (word.isascii() and word.isdigit() and 1 <= int(word) <= len(keeps)):
            raise RepairlibError(word, "not a number of the list", f"1 to {len(keeps)}")
    return sorted({int(word) for word in words})


def write_html(old: Image, new: Image, chip: int | None, erase: int) -> Html:
    """What writing an image over the old content does, and whether it looks whole itself."""
    head = paragraphs(["What would be written, judged by itself:"])
    sectors = sectors_that_differ(old, new, erase)
    said = head + checked_html(check_image(new, chip)) + sectors_html(sectors)
    return Html(with_picture(said, draw_sectors(sectors, new.name)) + caution("only copy").short())


def sectors_html(sectors: Sectors) -> Html:
    """How many sectors have to be erased, and what to do first."""
    changes = any(sectors.states)
    return told("partly right" if changes else "right", sectors.why, [sectors.next])


def back_html(intended: Image, read: Image, old: Image | None) -> Html:
    """Whether a chip holds what was meant; else where not, with a picture."""
    found = check_read_back(intended, read, old)
    said = said_of_back(found, read.name)
    return said if found.equal else with_picture(said, draw_two_reads([intended, read]))


def said_of_back(found: ReadBack, name: str) -> Html:
    """The words for a read after writing."""
    says = [found.why, f"Next: {found.next}"]
    if found.equal:
        return told("right", f"{name}: the chip holds what was meant", says)
    count = f"{counted(f'{found.differing:,}', 'byte')} not as meant"
    return Html(
        told("wrong", f"{name}: {count}, {found.pattern}", says)
        + _ranges(found.ranges, found.places)
    )


def with_picture(said: str, drawn) -> Html:
    """Words and a picture side by side, or one below the other where there is no room."""
    return Html(
        '<div style="display:flex;flex-wrap:wrap;gap:4px 24px;align-items:flex-start">'
        f'<div style="flex:1 1 20rem;min-width:0;overflow-wrap:break-word">{said}</div>'
        f'<div style="flex:0 1 auto;min-width:0">{picture(drawn)}</div></div>'
    )


def _is_part(damage, image: Image) -> bool:
    return damage.where[0] < image.size and damage.where != (0, image.size)


def _ranges(ranges, in_all: int) -> Html:
    if not ranges:
        return Html("")
    lines = [places_said([one]) for one in ranges[:SHOWN]]
    more = in_all - len(lines)
    return fold("Where", listed([*lines, *([f"and {more:,} more"] if more > 0 else [])]))
