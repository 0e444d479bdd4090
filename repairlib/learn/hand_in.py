"""Hand in: one small file with all that a learner has answered, and a receipt for it.

The file goes to the instructor by a shared folder, a stick or a message. It holds the saved answers
of every lesson as they are, whose they are, and the record of tries. Marks are not in it: whoever
collects it works them out anew.

The file ends in a check of its content, and the receipt is eight signs made of that content: the
same answers give the same receipt, on every computer. Both notice damage and a careless change.
They are no secret: who can program can make a file with a check that fits.
"""

from __future__ import annotations

import hashlib
import json
import time
import zlib
from base64 import b64decode, b64encode
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any, NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.core.version import VERSION
from repairlib.learn import files
from repairlib.learn.arranging import Table
from repairlib.learn.bench_question import Bench
from repairlib.learn.carrying import ANSWERS, files_of
from repairlib.learn.exercise import questions_of
from repairlib.learn.learner import Demo, Learner, named_in, names_somebody
from repairlib.learn.progress import number_of
from repairlib.learn.question import Question
from repairlib.learn.saved_answers import SavedAnswers, is_answers
from repairlib.learn.times import is_time
from repairlib.learn.tries import answers_among, as_list, from_list, read_tries

KIND = "handed in"
OURS = "a file that Hand in has written"
LARGEST = 2_000_000  # bytes, of the file and of the tries in it when they are unpacked
SIGNS = "234679CDFGHJKMNPQRTWXY"  # no two of them look alike, and they spell no word
NOT_IN_THE_RECEIPT = ("at", "asked", "version", "check", "changed")
SAID_ONCE = ("format", "name", "group", "class_code", "lesson")  # for the whole file


class HandedIn(NamedTuple):
    """What was handed in: the name of the file, its bytes, its receipt, and when (ms)."""

    name: str
    data: bytes
    receipt: str
    at: int


def hand_in(learner: Learner | Demo) -> HandedIn:
    """The file with all that the learner has answered; it is not anywhere yet.

    Raises RepairlibError when barred.
    """
    content = content_of(learner)
    return HandedIn(file_name_of(learner), file_of(content), receipt_of(content), content["at"])


def file_of(content: Mapping[str, Any]) -> bytes:
    """What is handed in as the bytes of its file: the tries packed, the check at its end."""
    packed = {**content, "tries": _packed(content["tries"]), "check": sum_of(content)}
    return json.dumps(packed, separators=(",", ":")).encode("ascii")


def content_of(learner: Learner | Demo) -> dict[str, Any]:
    """What the file of a learner holds, the tries as lists: [at, id, typed, state, hazards]."""
    lessons, tries = {}, {}
    for lesson, found in files_of(ANSWERS, learner).items():
        lessons[lesson] = _without(found, SAID_ONCE)
        if lines := answers_among(read_tries(lesson, learner)):
            tries[lesson] = [as_list(one) for one in lines]
    content: dict[str, Any] = {"format": files.FORMAT, "kind": KIND, **named_in(learner)}
    content |= {"partner": learner.partner, "at": _moment(lessons, tries), "version": VERSION}
    return content | {"lessons": lessons, "tries": tries}


def put_into(folder: str | Path, handed: HandedIn) -> Path:
    """Write what is handed in into a folder that others read: all of it or none of it.

    A later file of the same learner takes the place of the earlier one. Raises RepairlibError when
    it cannot be written.
    """
    path = Path(folder).expanduser() / handed.name
    files.put_in_place(path, handed.data, mode=0o640)
    return path


def read_hand_in(data: bytes, name: str = "the file") -> dict[str, Any]:
    """What a file that was handed in holds, its form checked; `changed` says that its sum is wrong.

    The tries come unpacked, as lists [at, id, typed, state, hazards] by lesson. Nothing in a file
    is ever run, and no more of it is read than LARGEST. Raises RepairlibError for any other file.

    >>> read_hand_in(b"C1,10/16", "list.csv")
    Traceback (most recent call last):
    repairlib.core.errors.RepairlibError: 'list.csv': this is no file that was handed in, or it is \
damaged. Accepted: a file that Hand in has written
    """
    if len(data) > LARGEST:
        raise RepairlibError(name, f"larger than {LARGEST // 1_000_000} MB", OURS)
    try:
        content = json.loads(data)
    except (ValueError, RecursionError):
        wrong = "this is no file that was handed in, or it is damaged"
        raise RepairlibError(name, wrong, OURS) from None
    if not isinstance(content, dict) or content.get("kind") != KIND:
        raise RepairlibError(name, "this is no file that was handed in", OURS)
    version = content.get("format")
    if type(version) is int and version > files.FORMAT:
        wrong = f"it is of a later version ({version}; this one reads {files.FORMAT})"
        raise RepairlibError(name, wrong, "this file at a computer with the later version")
    if isinstance(content.get("tries"), str):
        content["tries"] = _unpacked(content["tries"], name)
    wrong = _what_is_wrong(content)
    if wrong:
        raise RepairlibError(name, f"this does not hold what it should: {wrong}", OURS)
    check = content.pop("check", None)
    return content | {"check": check, "changed": check != sum_of(content)}


def receipt_of(content: Mapping[str, Any]) -> str:
    """The receipt: eight signs for what was answered and tried, not for when it was saved.

    >>> receipt_of({"name": "Ada", "lessons": {}, "at": 1})
    'D2CY-7JJN'
    """
    said = _without(content, NOT_IN_THE_RECEIPT)
    said["lessons"] = {
        lesson: _without(found, NOT_IN_THE_RECEIPT) for lesson, found in content["lessons"].items()
    }
    signs = _signs(_text(said), 8)
    return f"{signs[:4]}-{signs[4:]}"


def sum_of(content: Mapping[str, Any]) -> str:
    """The check at the end of a file: a sum of all else that it holds."""
    content = _without(content, ("check",))
    return hashlib.sha256(_text(content).encode("ascii")).hexdigest()[:16]


def file_name_of(learner: Learner | Demo) -> str:
    """The name of a learner's file: some letters to read, and signs that are theirs alone.

    >>> file_name_of(Learner("Ada Example", "Tuesday bench"))
    'handed-in-ada-example-rmgg3d9d.json'
    """
    folder = learner.folder()
    plain = folder.name.rpartition("-")[0] or "demo"
    return f"handed-in-{plain}-{_signs(folder.as_posix(), 8).lower()}.json"


def answer_line(learner: Learner | Demo, lesson: str, word: str = "") -> str:
    """The answers to one lesson in one line to read out: who, lesson, answers, two check signs.

    `word` is the short word of a member, else the name is said. The answers stand in the order of
    the questions, with | between them; - is none. The cells of a table stand row by row, with a
    comma and a space between them. Raises RepairlibError when the answers cannot be read.

        kite 03: b | 100 nF | c a b | 16, 25 = 7K
    """
    saved = SavedAnswers(lesson, learner).read()
    said = [in_one_line(one, saved.get(one.id, "")) for one in questions_of(lesson, learner)]
    who = word or learner.name or "nobody"
    line = f"{who} {number_of(lesson)}: {' | '.join(said)}"
    return f"{line} = {check_signs(line)}"


def check_signs(line: str) -> str:
    """The two signs at the end of a line that is read out, of what stands before the `=`.

    Capitals and spaces make no difference.

    >>> check_signs("kite 03: b | 100 nF") == check_signs("KITE 03:  B|100nf ")
    True
    """
    return _signs("".join(line.casefold().split()), 2)


def in_one_line(ask: Question, typed: Any) -> str:
    """One answer in short, on one line; "-" where there is none.

    >>> from repairlib.learn import Choice
    >>> in_one_line(Choice(options=("film", "ceramic"), answer="film"), "Ceramic")
    'b'
    """
    if ask.is_blank(typed):
        return "-"
    short = ask.in_short(typed)
    if isinstance(ask, Bench) and isinstance(short, str):
        return _one_part("; ".join(line.replace(";", ",") for line in short.splitlines()))
    if not isinstance(short, Mapping):
        return _one_part(short)
    if not isinstance(ask, Table):  # an order that is not finished
        return "-"
    cells = ((row, column) for row, cells in ask.cells.items() for column in cells)
    parts = (short.get(row, {}).get(column, "") for row, column in cells)
    return ", ".join(_one_part(part).replace(", ", ",") if part else "-" for part in parts)


def _one_part(short: str) -> str:
    """Text that takes no other part of the line for its own."""
    return " ".join(short.replace("|", " ").replace("=", " ").split()) or "-"


def _moment(lessons: Mapping, tries: Mapping) -> int:
    """Now, and never earlier than anything in the file."""
    answered = (at for one in lessons.values() for at in one.get("at", {}).values())
    tried = (line[0] for lines in tries.values() for line in lines)
    return max([time.time_ns() // 1_000_000, *answered, *tried])


def _packed(tries: Mapping) -> str:
    """The tries as one text: packed, because the same few answers come again and again."""
    return b64encode(zlib.compress(_text(tries).encode("ascii"), 9)).decode("ascii")


def _unpacked(packed: str, name: str) -> Any:
    wrong = "its record of tries is damaged"
    try:
        unpack = zlib.decompressobj()
        text = unpack.decompress(b64decode(packed, validate=True), LARGEST)
        if not unpack.eof:
            wrong = f"its record of tries is larger than {LARGEST // 1_000_000} MB, or cut short"
            raise RepairlibError(name, wrong, OURS)
        return json.loads(text)
    except (ValueError, zlib.error, RecursionError):
        raise RepairlibError(name, wrong, OURS) from None


def _what_is_wrong(content: Mapping[str, Any]) -> str:
    """What does not have the form of something handed in, or ""."""
    if content.get("format") != files.FORMAT or not names_somebody(content):
        return "it names nobody"
    if not is_time(content.get("at")):
        return "it does not say when"
    lessons, tries = content.get("lessons"), content.get("tries")
    if not isinstance(lessons, dict) or not isinstance(tries, dict):
        return "it has no lessons"
    for lesson, found in lessons.items():
        if not isinstance(found, dict) or not is_answers(_whole(found, content, lesson)):
            return f"the answers to {lesson[:80]} are none"
    for lesson, lines in tries.items():
        if not isinstance(lines, list) or not all(map(from_list, lines)):
            return f"the tries of {lesson[:80]} are none"
    return ""


def _whole(found: Mapping, content: Mapping, lesson: str) -> dict[str, Any]:
    """The saved answers to one lesson, with what is said once for the whole file."""
    return {**found, "name": content["name"], "group": content["group"], "lesson": lesson}


def _without(content: Mapping[str, Any], names: Sequence[str]) -> dict[str, Any]:
    return {name: value for name, value in content.items() if name not in names}


def _text(content: object) -> str:
    if isinstance(content, str):
        return content
    return json.dumps(content, sort_keys=True, ensure_ascii=True, separators=(",", ":"))


def _signs(text: str, count: int) -> str:
    """So many signs that say a text in short."""
    number = int.from_bytes(hashlib.sha256(text.encode("utf-8", "surrogatepass")).digest())
    signs = ""
    while len(signs) < count:
        number, which = divmod(number, len(SIGNS))
        signs += SIGNS[which]
    return signs
