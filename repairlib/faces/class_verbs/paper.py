"""`class paper` and `class sign`: what a group prints, and who may work at the bench."""

from __future__ import annotations

from datetime import date
from pathlib import Path

from repairlib.core.errors import RepairlibError
from repairlib.faces.documents import json_text
from repairlib.learn.group import GROUP_FILE, read_group
from repairlib.learn.progress import number_of
from repairlib.teach.instructor import sign as sign_for
from repairlib.teach.paper import write_paper
from repairlib.teach.paper.first_tries import first_tries
from repairlib.teach.paper.permits import still_open


def paper(words: list[str], options: dict[str, str], as_json: bool) -> str:
    """All paper of the group of a folder, written into it."""
    (folder,) = _given(words, "FOLDER")
    group = read_group(folder / GROUP_FILE)
    written = write_paper(folder, group, "--letter" in options, options.get("--list", ""))
    if not as_json:
        return str(written)
    printed = [one._asdict() for one in written.printed]
    return json_text({"folder": str(written.folder), "printed": printed, "notes": written.notes})


def sign(words: list[str], options: dict[str, str], as_json: bool) -> str:
    """Note who talked the safety questions through with a member."""
    folder, who = _given(words, "FOLDER", "WORD")
    group = read_group(folder / GROUP_FILE)
    signed = sign_for(folder, group, str(who), options.get("--by", ""), date.today().isoformat())
    if as_json:
        return json_text(signed._asdict())
    member = group.member(signed.word)
    due = still_open(member, group, first_tries(folder, group).get(member.word, {}))
    told = [
        f"Signed for {member.name} ({signed.word}) by {signed.by} on {signed.on}. "
        "Then: class paper FOLDER"
    ]
    if due:
        which = ", ".join(f"{number_of(one.lesson)} {one.question.id} {one.state}" for one in due)
        told.append(f"It says that these were talked through, not right at first: {which}.")
    return "\n".join(told)


def _given(words: list[str], *due: str) -> list[Path]:
    if len(words) != len(due):
        wrong = f"{len(words)} given where {' '.join(due)} is due"
        raise RepairlibError(" ".join(words), wrong, " ".join(due))
    return [Path(word) for word in words]
