"""`python -m repairlib image keep`: what only one board has, and a new image with that put in."""

from __future__ import annotations

from repairlib.core.errors import RepairlibError
from repairlib.faces.plain_text import caution_lines


def keep_verb(words: list[str], options: dict) -> tuple[dict, list[str]]:
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
        put_in = answered(keeps, options, donor.name)
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


def answered(keeps, options: dict, donor: str) -> list:
    """What is to be put in: all that is at least likely and what --also names, without --leave.

    What is only possible may as well be damage, and what is left out is the donor's from then on.
    So nothing of it goes either way without an answer.
    """
    from repairlib.firmware import HOW_SURE

    possible = {number for number, one in enumerate(keeps, 1) if one.sure == HOW_SURE[-1]}
    also, leave = (
        numbers_of(options[name], len(keeps), possible) if name in options else set()
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


def numbers_of(typed: str, last: int, possible: set[int]) -> set[int]:
    """Numbers of the list, as people type them; `all` is all that is only possible."""
    if typed == "all":
        return possible
    words = typed.replace(",", " ").split()
    for word in words:
        if not (word.isascii() and word.isdigit() and len(word) < 9 and 1 <= int(word) <= last):
            raise RepairlibError(word, "not a number of the list", f"1 to {last}, or all")
    return {int(word) for word in words}
