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
from repairlib.faces.image_keep import keep_verb
from repairlib.faces.image_write import WRITE_OPTIONS, write_verb
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
python -m repairlib image write READ READ... --chip 8MiB [--supply 3.3 --measured 3.28]
                    [--donor DONOR [--twin IMAGE]... --keep 1,2 --leave 3 | --looked HOW]
                    [--new NEW] [--back READ]... [--why REASON] [--why-new REASON] [--json]
                    how far the writing of a chip has come, what comes next, and what holds it; a
                    damaged read or image counts only with a reason, in three words or more
python -m repairlib image sfdp DUMP [--json]
                    what a chip says of itself; the bytes, or a text of them in hex
python -m repairlib image convert FILE [--fill ff] [--from 0x8000000] --out NEW [--json]
                    a file of Intel HEX or S-records as an image"""
_TYPED = frozenset("0123456789abcdefABCDEFxXhH ,:-\t\r\n")  # of bytes written in hex
GIVEN_AGAIN = "the same file as one before it, so this is no second read of the chip"
MOST_SHOWN = 16  # ranges that are listed


class Verb(NamedTuple):
    """A verb: what answers, its options, how many plain words it takes, and what may come again."""

    answer: Callable[[list[str], dict], tuple[dict, list[str]]]
    options: tuple[str, ...]
    words: tuple[int, int]
    repeated: tuple[str, ...] = ()


def run_image(arguments: list[str], as_json: bool) -> str:
    """The text to print. Raises RepairlibError for bad input, never anything else."""
    verb, *rest = arguments or [""]
    if verb not in VERBS:
        raise RepairlibError(verb, "not a verb for images", ", ".join(VERBS))
    chosen = VERBS[verb]
    repeated: dict[str, list[str]] = {name: [] for name in chosen.repeated}
    words, options = take_options(rest, chosen.options, repeated=repeated)
    least, most = chosen.words
    if verb == "keep" and repeated["--twin"]:  # --twin A B
        repeated["--twin"] += words[most:]
        words = words[:most]
    if not least <= len(words) <= most:
        wrong = "a file is due" if least == 1 else f"{least} files are due"
        if len(words) > most:
            wrong = f"{len(words)} files are too many: it takes {most}"
        line = next(line for line in USAGE.splitlines() if f" image {verb} " in line)
        raise RepairlibError(" ".join(words), wrong, line.removeprefix("python -m repairlib "))
    document, lines = chosen.answer(words, {**options, **repeated})
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
    "keep": Verb(keep_verb, ("--also", "--leave", "--out", "--twin"), (2, 2), ("--twin",)),
    "write": Verb(write_verb, WRITE_OPTIONS, (1, 16), ("--twin", "--back")),
    "sfdp": Verb(_sfdp, (), (1, 1)),
    "convert": Verb(_convert, ("--fill", "--from", "--out"), (1, 1)),
}
