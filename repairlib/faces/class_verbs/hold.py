"""`class hold` and `class release`: a lesson's marks told later, and then to all at once."""

from __future__ import annotations

from repairlib.core.errors import RepairlibError
from repairlib.faces.documents import json_text
from repairlib.learn.holding import PRACTICE
from repairlib.teach import holding
from repairlib.teach.holding import Held

HELD = """{lesson} is {held} for {group}. Answers are saved; what is right or wrong is told
later. What is dangerous is told at once.
Release word: {word}. It stands in instructor.json; keep it to yourself until then.
- A server that reads this group.json holds from the next answer on.
- For laptops hand group.json out: python -m repairlib lessons --group FILE on each.
To release: python -m repairlib class release FOLDER {lesson}
{practice}"""
RELEASED = """{lesson} is released for {group}.
- On a server that reads this group.json each form tells on its next turn.
- On laptops without a network say the release word aloud: {word}. Each learner types it into the
  form, above the questions."""
LOST = "lost: it is not in instructor.json"


def hold(words: list[str], options: dict[str, str], as_json: bool) -> str:
    """Hold a lesson of the group in a folder, and say the word that releases it."""
    held = holding.hold(*_folder_and_lesson(words, "hold"))
    said = held._asdict() | {"held": "held" if held.new else "held already"}
    return _told(HELD, held, said, as_json)


def release(words: list[str], options: dict[str, str], as_json: bool) -> str:
    """Release a lesson for everybody."""
    held = holding.release(*_folder_and_lesson(words, "release"))
    return _told(RELEASED, held, held._asdict(), as_json)


def _told(text: str, held: Held, said: dict, as_json: bool) -> str:
    if as_json:
        return json_text({"group": held.group, "lesson": held.lesson, "word": held.word})
    return text.format(**{**said, "word": held.word or LOST}, practice=PRACTICE)


def _folder_and_lesson(words: list[str], verb: str) -> list[str]:
    if len(words) != 2:
        accepted = f"class {verb} FOLDER 03"
        raise RepairlibError(" ".join(words), "a folder and one lesson are due", accepted)
    return words
