"""`class new`: a group out of a list of names, its paper, and what to do next."""

from __future__ import annotations

import sys
from difflib import get_close_matches

from repairlib.core.errors import RepairlibError
from repairlib.core.typed.textfile import decode, read_text
from repairlib.core.wording import counted
from repairlib.learn.group import GROUP_FILE
from repairlib.teach.names import NameList, Told, read_names
from repairlib.teach.preparing import Prepared, lessons_named, prepare

NEXT = (
    "1. Copy {file} to each learner's computer; there: python -m repairlib lessons --group {name}",
    "2. Tell each learner their word: it is shorter to type than the name, and no password. "
    "It stands on the strips to cut, and on each of their sheets.",
    "3. When they have handed in: python -m repairlib class collect {folder}",
)
WRITTEN_ANEW = 0.85  # how like two names must be to be asked about
MANY = 300  # names, from which on drawing the variants takes half a minute and more
MOST_ON_PAPER = 60  # members whose paper is made without being asked for
LONGEST_TABLE = 60  # members whose words are printed; more stand in the file


def make_group(words: list[str], options: dict[str, str], as_json: bool) -> str:
    """Make or lengthen a group; the text to print."""
    if len(words) != 1:
        raise RepairlibError(" ".join(words), "one list of names is due", "class new NAMES.txt")
    if "--out" not in options:
        raise RepairlibError("class new", "no folder for the group is given", "--out FOLDER")
    lessons = lessons_named(options["--lessons"]) if "--lessons" in options else ()
    listed = _read(words[0])
    leave_out = "--leave-out" in options
    if len(listed.names) > MANY:
        print(f"Drawing variants for {len(listed.names)} names: minutes ...", file=sys.stderr)
    made = prepare(options["--out"], listed, options.get("--called", ""), lessons, leave_out)
    paper = "" if "--no-paper" in options else _paper(made)
    if as_json:
        from repairlib.faces.documents import json_text

        return json_text(_document(made, listed.told) | {"paper": paper})
    return "\n".join([*_table(made), *_notes(made, listed.told), "", paper, *_what_next(made)])


def _paper(made: Prepared) -> str:
    """Write what is to be printed; what there is to say of it."""
    from repairlib.teach.paper import write_paper

    if len(made.group.members) > MOST_ON_PAPER:
        return f"Paper for so many takes a while: python -m repairlib class paper {made.folder}"
    return str(write_paper(made.folder, made.group))


def _read(name: str) -> NameList:
    if name == "-":
        return read_names(decode(sys.stdin.buffer.read(), "standard input"), "standard input")
    return read_names(read_text(name), name)


def _table(made: Prepared) -> list[str]:
    """How many, which lessons, and the word of each; those who are new are marked."""
    group = made.group
    numbers = ", ".join(one.partition("-")[0] for one in group.lessons)
    lines = [f"Group {group.name}: {counted(len(group.members), 'member')}, {len(made.new)} new."]
    lines += [f"Lessons: {numbers}.", ""]
    width = max(len(one.name) for one in group.members) if group.members else 0
    new = set(made.new) if len(made.new) < len(group.members) else ()
    for one in group.members[:LONGEST_TABLE]:
        lines.append(f"  {one.name:{width}}  {one.word}{'  (new)' if one.name in new else ''}")
    if len(group.members) > LONGEST_TABLE:
        more = len(group.members) - LONGEST_TABLE
        lines.append(f"  and {more} more, in {made.folder / GROUP_FILE}")
    return lines


def _notes(made: Prepared, told: tuple[Told, ...]) -> list[str]:
    lines = [str(one) for one in told]
    for name in made.gone:
        stays = "and was left out" if made.left_out else "and stays in the group (--leave-out)"
        like = get_close_matches(name, made.new, 1, WRITTEN_ANEW)
        hint = f" Is it {like[0]}, written anew? Then write the name as before." if like else ""
        lines.append(f"{name} is not in this list {stays}.{hint}")
    return ["", *lines] if lines else []


def _what_next(made: Prepared) -> list[str]:
    said = {"file": made.folder / GROUP_FILE, "name": GROUP_FILE, "folder": made.folder}
    return [line.format(**said) for line in NEXT]


def _document(made: Prepared, told: tuple[Told, ...]) -> dict:
    return {
        "folder": str(made.folder),
        "group": made.group.name,
        "lessons": list(made.group.lessons),
        "members": [{"name": one.name, "word": one.word} for one in made.group.members],
        "new": list(made.new),
        "gone": list(made.gone),
        "left_out": made.left_out,
        "told": [one._asdict() for one in told],
    }
