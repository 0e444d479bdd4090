"""Images of memory chips on the command line: `python -m repairlib image VERB ...`.

Files are only read. What is made goes into a new file, and nothing is written over.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import NamedTuple

from repairlib.core.errors import RepairlibError, escaped
from repairlib.core.plain_file import is_one_file, read_bytes, size_in_words
from repairlib.core.wording import counted
from repairlib.faces.arguments import take_options
from repairlib.faces.documents import json_text
from repairlib.faces.plain_text import caution_lines, finding_text

USAGE = """\
python -m repairlib image check READ [SECOND ...] [--chip 8MiB] [--map MAP.svg] [--json]
                    what is wrong with a read, and where further reads of the chip differ
python -m repairlib image compare OLD NEW [--erase 4KiB] [--json]
                    which sectors must be erased so that the chip holds NEW
python -m repairlib image keep OLD DONOR [--twin IMAGE]... [--out NEW [--also 3,4] [--leave 5]]
                    [--json]
                    what only this board has; NEW is the donor's image with that put in: all that
                    is at least likely, and of what is only possible the numbers of --also; those
                    of --leave stay the donor's; `all` is all that is only possible
python -m repairlib image sfdp DUMP [--json]
                    what a chip says of itself; the bytes, or a text of them in hex
python -m repairlib image convert FILE [--fill ff] [--from 0x8000000] --out NEW [--json]
                    a file of Intel HEX or S-records as an image"""
_TYPED = frozenset("0123456789abcdefABCDEFxXhH ,:-\t\r\n")  # of bytes written in hex
GIVEN_AGAIN = "the same file as one before it, so this is no second read of the chip"
MOST_SHOWN = 16  # ranges that are listed


class Verb(NamedTuple):
    """A verb: the function that answers, its options, and how many plain words it takes."""

    answer: Callable[[list[str], dict], tuple[dict, list[str]]]
    options: tuple[str, ...]
    words: tuple[int, int]


def run_image(arguments: list[str], as_json: bool) -> str:
    """The text to print. Raises RepairlibError for bad input, never anything else."""
    verb, *rest = arguments or [""]
    if verb not in VERBS:
        raise RepairlibError(verb, "not a verb for images", ", ".join(VERBS))
    chosen = VERBS[verb]
    repeated: dict[str, list[str]] = {"--twin": []} if verb == "keep" else {}
    words, options = take_options(rest, chosen.options, repeated=repeated)
    least, most = chosen.words
    twins = repeated.get("--twin", [])
    if twins:  # --twin A B
        twins += words[most:]
        words = words[:most]
    if not least <= len(words) <= most:
        wrong = "a file is due" if least == 1 else f"{least} files are due"
        if len(words) > most:
            wrong = f"{len(words)} files are too many: it takes {most}"
        line = next(line for line in USAGE.splitlines() if f" image {verb} " in line)
        raise RepairlibError(" ".join(words), wrong, line.removeprefix("python -m repairlib "))
    document, lines = chosen.answer(words, {**options, "--twin": twins})
    return json_text(document) if as_json else "\n".join(map(escaped, lines))


def _check(words: list[str], options: dict) -> tuple[dict, list[str]]:
    from repairlib.firmware import check_image, compare_reads, read_image, read_size

    chip = read_size(options["--chip"]) if "--chip" in options else None
    images = [read_image(word) for word in words]
    checked = [check_image(image, chip) for image in images]
    document = {"images": [_of_checked(*each) for each in zip(images, checked, strict=True)]}
    lines = [line for one in document["images"] for line in _lines_of_image(one)]
    again = _given_again(words)
    document["given_again"] = [images[place].name for place in again]
    reads_of_it = [image for place, image in enumerate(images) if place not in again]
    if len(reads_of_it) > 1:
        reads = compare_reads(reads_of_it)
        document["reads"] = {
            **{name: getattr(reads, name) for name in ("equal", "pattern", "means", "next")},
            "names": list(reads.names),
            "differing_bytes": reads.bytes_differ,
            "places": reads.in_all,
            "ranges": [list(one) for one in reads.ranges],
            "alike": [list(group) for group in reads.alike],
        }
        lines += _lines_of_reads(reads)
    lines += [f"{images[place].name}: {GIVEN_AGAIN}" for place in again]
    if "--map" in options:
        document["map"] = options["--map"]
        lines.append(_save_map(images[0], checked[0], options["--map"]))
    return document, lines


def _given_again(words: list[str]) -> list[int]:
    """The places of files that stand earlier in the list too, by whatever name."""
    return [
        place
        for place, word in enumerate(words)
        if any(is_one_file(word, before) for before in words[:place])
    ]


def _of_checked(image, checked) -> dict:
    """What is told of one image, as JSON."""
    return {
        "image": checked.name,
        "size": checked.size,
        "chip": checked.chip,
        "crc32": checked.sums.crc32,
        "sha256": checked.sums.sha256,
        "damages": [_of_damage(one) for one in checked.damages],
        "doubts": [_of_damage(one) for one in checked.doubts],
        "notes": [*_of_text(image), *checked.notes],
    }


def _lines_of_image(told: dict) -> list[str]:
    """The same in lines."""
    against = f", chip of {size_in_words(told['chip'])}" if told["chip"] else ""
    lines = [
        f"{told['image']}: {size_in_words(told['size'])}{against}",
        f"   CRC-32 {told['crc32']}",
        f"   SHA-256 {told['sha256']}",
    ]
    lines += [f"   damage: {_placed(one)}" for one in told["damages"]]
    lines += [f"   doubt: {_placed(one)}" for one in told["doubts"]]
    if not told["damages"]:
        lines.append("   No damage is told by its own bytes.")
    return lines + [f"   note: {note}" for note in told["notes"]]


def _of_text(image) -> list[str]:
    """What to say of an image that is a file of records, as far as its first line tells."""
    line = image.data[:80].split(b"\n")[0].strip()
    if (
        line[:1] in (b":", b"S")
        and len(line) > 8
        and set(line[1:]) <= set(b"0123456789ABCDEFabcdef")
    ):
        return ["It is text, Intel HEX or S-records: `image convert` makes an image of it."]
    return []


def _of_damage(one) -> dict:
    return {"kind": one.kind, "where": list(one.where), "why": one.why, "next": one.next}


def _placed(told: dict) -> str:
    start, end = told["where"]
    where = f"0x{start:06X} to 0x{end - 1:06X}"
    return f"{told['kind']}, {where}: {told['why']}. Next: {told['next']}"


def _lines_of_reads(reads) -> list[str]:
    told = "equal" if reads.equal else f"they differ, {reads.pattern}"
    lines = [f"{len(reads.names)} reads: {told}", f"   {reads.means}"]
    lines += _listed(reads.ranges, reads.in_all)
    if not reads.equal:
        lines.append(f"   bytes that differ: {reads.bytes_differ:,}")
    return [*lines, f"   next: {reads.next}"]


def _listed(ranges: Sequence[tuple[int, int]], in_all: int) -> list[str]:
    lines = [f"   0x{start:06X} to 0x{end - 1:06X}" for start, end in ranges[:MOST_SHOWN]]
    more = in_all - len(lines)
    return [*lines, f"   and {counted(f'{more:,}', 'more place')}"] if more > 0 else lines


def _save_map(image, checked, path: str) -> str:
    from repairlib.firmware import block_map, save_new
    from repairlib.show import draw_image_map

    marked = [one.where for one in (*checked.damages, *checked.doubts)]
    save_new(draw_image_map(block_map(image), marked).svg.encode(), path)
    return f"map saved: {path}"


def _compare(words: list[str], options: dict) -> tuple[dict, list[str]]:
    from repairlib.firmware import ERASE, PROGRAM, read_erase, read_image, sectors_that_differ

    old, new = map(read_image, words)
    erase = {"erase": read_erase(options["--erase"])} if "--erase" in options else {}
    found = sectors_that_differ(old, new, **erase)
    document = {
        "old": old.name,
        "new": new.name,
        "size": found.size,
        "erase": found.erase,
        "why": found.why,
        "next": found.next,
    }
    lines = [f"{old.name} to {new.name}: {size_in_words(found.size)}", f"   {found.why}"]
    for kind in (ERASE, PROGRAM):
        ranges = found.ranges(kind)
        document[kind] = [list(one) for one in ranges]
        if ranges:
            lines += [f"{kind}:", *_listed(ranges, len(ranges))]
    return document, [*lines, f"   next: {found.next}", *caution_lines(("only copy",))]


def _keep(words: list[str], options: dict) -> tuple[dict, list[str]]:
    from repairlib.firmware import (
        keep_into,
        keep_list,
        read_image,
        save_new,
        sums_in_doubt,
    )

    old, donor = map(read_image, words)
    twins = [read_image(one) for one in options["--twin"]]
    for board in (donor, *twins):
        if board.size != old.size:
            wrong = f"it has {board.size:,} bytes, and {old.name} has {old.size:,}"
            raise RepairlibError(board.name, wrong, "images of the whole chip, equally long")
    keeps = keep_list(old, donor, twins)
    document = {
        "old": old.name,
        "donor": donor.name,
        "keep": [{**one._asdict(), "where": list(one.where), "next": one.next} for one in keeps],
    }
    lines = [f"what {donor.name} would overwrite in {old.name}: {len(keeps)} found"]
    for number, one in enumerate(keeps, 1):
        lines += [f"{number}: {one}", f"   {one.why}", f"   next: {one.next}"]
    lines.append("What is not found may be there all the same: keep the old image.")
    if "--out" in options:
        put_in = _answered(keeps, options, donor.name)
        made = keep_into(donor, old, put_in)
        save_new(made.data, options["--out"])
        doubts = sums_in_doubt(donor, made, put_in)
        document |= {"out": options["--out"], "put_in": len(put_in), "doubts": list(doubts)}
        lines.append(f"saved: {options['--out']}, with {len(put_in)} of {len(keeps)} put in")
        left = [one for one in keeps if one not in put_in]
        document["left"] = [list(one.where) for one in left]
        lines += [f"   not put in, {donor.name} has its own there: {one}" for one in left]
        lines += [f"   doubt: {one}" for one in doubts]
    elif stray := [name for name in ("--also", "--leave") if name in options]:
        raise RepairlibError(stray[0], "no new file is named", "--out NEW beside it")
    return document, [*lines, *caution_lines(("only copy",))]


def _answered(keeps, options: dict, donor: str) -> list:
    """What is to be put in: all that is at least likely and what --also names, without --leave.

    What is only possible may as well be damage, and what is left out is the donor's from then on.
    So nothing of it goes either way without an answer.
    """
    from repairlib.firmware import HOW_SURE

    possible = {number for number, one in enumerate(keeps, 1) if one.sure == HOW_SURE[-1]}
    also, leave = (
        _numbers(options[name], len(keeps), possible) if name in options else set()
        for name in ("--also", "--leave")
    )
    if both := also & leave:
        raise RepairlibError(min(both), "named by --also and by --leave", "one of the two")
    if not_said := sorted(possible - also - leave):
        first = keeps[not_said[0] - 1]
        rest = f", and {len(not_said) - 1} more" if len(not_said) > 1 else ""
        wrong = f"{not_said[0]}: {first}{rest}: without an answer {donor} would have its own there"
        example = ",".join(map(str, not_said))
        accepted = f"--also {example} to put in, --leave {example} not to, or some to each"
        raise RepairlibError(options["--out"], wrong, accepted)
    chosen = [
        one
        for number, one in enumerate(keeps, 1)
        if number not in leave and (number in also or number not in possible)
    ]
    if not chosen:
        wrong = "there is nothing to put in"
        raise RepairlibError(options["--out"], wrong, f"{donor} as it is, without --out")
    return chosen


def _numbers(typed: str, last: int, possible: set[int]) -> set[int]:
    """Numbers of the list, as people type them; `all` is all that is only possible."""
    if typed == "all":
        return possible
    words = typed.replace(",", " ").split()
    for word in words:
        if not (word.isascii() and word.isdigit() and len(word) < 9 and 1 <= int(word) <= last):
            raise RepairlibError(word, "not a number of the list", f"1 to {last}, or all")
    return {int(word) for word in words}


def _sfdp(words: list[str], options: dict) -> tuple[dict, list[str]]:
    from repairlib.firmware import LARGEST_DUMP, in_hex, sfdp_dump

    accepted = "a dump read with 5Ah, at most 64 KiB"
    data = read_bytes(words[0], 4 * LARGEST_DUMP, accepted)
    if not data:
        raise RepairlibError(Path(words[0]).name, "it is empty", accepted)
    finding = sfdp_dump(_as_typed(data) or in_hex(data))
    return finding.to_dict(), finding_text(finding).splitlines()


def _as_typed(data: bytes) -> str:
    """The text of a file that holds bytes in hex; empty where it holds the bytes themselves."""
    text = data.decode("ascii", "replace")
    return text if text[:2].strip() and _TYPED.issuperset(text) else ""


def _convert(words: list[str], options: dict) -> tuple[dict, list[str]]:
    from repairlib.firmware import read_records, save_new, sums, typed_bytes

    if "--out" not in options:
        raise RepairlibError("convert", "no new file is named", "image convert FILE --out NEW")
    fill = typed_bytes(options.get("--fill", "ff"), 1, "one byte in hex, such as ff or 00")[0]
    records = read_records(words[0])
    image = records.image(fill, _address(options["--from"]) if "--from" in options else None)
    save_new(image.data, options["--out"])
    start = _address(options["--from"]) if "--from" in options else records.window
    told = sums(image)
    document = {
        "file": records.name,
        "form": records.form,
        "start": start,
        "size": image.size,
        "given": records.size,
        "gaps": [list(one) for one in records.gaps],
        "fill": fill,
        "crc32": told.crc32,
        "sha256": told.sha256,
        "out": options["--out"],
    }
    given, pieces = counted(f"{records.size:,}", "byte"), counted(len(records.segments), "piece")
    lines = [
        f"{records.name}: {records.form}, {given} in {pieces}",
        f"   image from 0x{start:06X}, {size_in_words(image.size)}, gaps filled with {fill:02X}",
        *_listed(records.gaps, len(records.gaps)),
        f"   CRC-32 {told.crc32}",
        f"saved: {options['--out']}",
        "   An image for a chip has the size of the chip: compare before you write.",
    ]
    return document, lines


def _address(typed: str) -> int:
    digits = typed.lower().removeprefix("0x")
    if not digits or len(digits) > 8 or not set(digits) <= set("0123456789abcdef"):
        raise RepairlibError(typed, "not an address in hex", "such as 0x8000000")
    return int(digits, 16)


VERBS = {
    "check": Verb(_check, ("--chip", "--map"), (1, 16)),
    "compare": Verb(_compare, ("--erase",), (2, 2)),
    "keep": Verb(_keep, ("--also", "--leave", "--out", "--twin"), (2, 2)),
    "sfdp": Verb(_sfdp, (), (1, 1)),
    "convert": Verb(_convert, ("--fill", "--from", "--out"), (1, 1)),
}
