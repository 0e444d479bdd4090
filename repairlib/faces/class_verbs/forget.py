"""`class forget` and `class clear`: a person, or a whole group, is taken off a computer."""

from __future__ import annotations

from repairlib.core.errors import RepairlibError
from repairlib.learn.forgetting import (
    Forgotten,
    forget_group,
    forget_learner,
    learner_meant,
    still_named,
)
from repairlib.learn.group import GROUP_FILE, group_file, known_group
from repairlib.learn.home import home

NOT_ELSEWHERE = (
    "What was handed in or carried to another computer is there still. A working copy of the "
    "lessons that was laid elsewhere (--to) may show a name in its outputs."
)


def forget_person(words: list[str], options: dict[str, str], as_json: bool) -> str:
    """Take one person off this computer, or with --from out of the instructor's folder."""
    if not words:
        raise RepairlibError("class forget", "nobody is named", "class forget WORD or NAME")
    who = " ".join(words)
    if "--from" in options:
        if "--for-good" in options:
            wrong = "with --from all of them goes in any case"
            raise RepairlibError("--for-good", wrong, "class forget WHO --from FOLDER")
        from repairlib.teach.taking_out import take_out

        taken = take_out(options["--from"], who)
        return _json(taken.to_dict()) if as_json else str(taken)
    learner = learner_meant(who)
    found = forget_learner(learner, "--for-good" in options)
    left = [str(path) for path in still_named([learner.name])]
    if as_json:
        return _json({**_document(found), "still_named_in": left})
    lines = [f"Forgotten. {found}.", *_told(left)]
    return "\n".join([*lines, *_group_file_note(), NOT_ELSEWHERE])


def clear_group(words: list[str], options: dict[str, str], as_json: bool) -> str:
    """Make this computer ready for the next group."""
    if words:
        accepted = "class clear; for one person class forget WHO"
        raise RepairlibError(" ".join(words), "nothing is due behind clear", accepted)
    group, found = forget_group("--for-good" in options)
    names = {one.name for one in group.members} | {one.learner.name for one in found}
    left = [str(path) for path in still_named(names)]
    if as_json:
        forgotten = [_document(one) for one in found]
        return _json({"group": group.name, "forgotten": forgotten, "still_named_in": left})
    lines = [f"Cleared: the group {group.name}. {_people(len(found))} had something here."]
    lines += [*(f"  {one}" for one in found), *_told(left)]
    return "\n".join([*lines, *_group_file_note(), NOT_ELSEWHERE])


def _told(left: list[str]) -> list[str]:
    return [f"Named in a file of somebody else still: {path}" for path in left]


def _people(count: int) -> str:
    return "1 person" if count == 1 else f"{count} people"


def _group_file_note() -> list[str]:
    """Where the file of the group is not this computer's own, it stays, and is named."""
    here = group_file() == home() / GROUP_FILE
    if here or known_group()[0] is None:
        return []
    return [f"The file of the group is not this computer's own and stays: {group_file()}"]


def _document(found: Forgotten) -> dict:
    return {
        "name": found.learner.name,
        "group": found.learner.group,
        "answers": found.answers,
        "typed": found.typed,
        "cards": found.cards,
        "never_handed_in": list(found.never_handed_in),
    }


def _json(document: dict) -> str:
    from repairlib.faces.documents import json_text

    return json_text(document)
