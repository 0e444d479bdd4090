"""An own lesson: what an instructor typed into a text file or a table, read as a whole.

    text → what it says, line by line (`said`) → its questions (`asked`) → the lesson

Either all of it can be read, or all that cannot is told with its lines and nothing is taken.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from pathlib import Path, PurePath
from typing import NamedTuple

from repairlib.core.draws import normal
from repairlib.core.errors import RepairlibError
from repairlib.core.typed.textfile import TextFile, as_text, read_text
from repairlib.learn.own.asked import OwnQuestion, question_in
from repairlib.learn.own.drawn import DrawnPart, read_picture
from repairlib.learn.own.parts import hazard_of, slipping
from repairlib.learn.own.said import LESSON_WORDS, MOST_LINES, QUESTIONS, TEXT, Said, said_in
from repairlib.learn.own.slips import Slip, Slips

OWN = "own-"  # what the name of an own lesson begins with
MOST_QUESTIONS = 100
MOST_MINUTES = 600
LONGEST_TITLE = 80
ENDINGS = (".txt", ".csv")
_RICH = "{\\rtf"


class OwnLesson(NamedTuple):
    """A lesson as its instructor typed it. `idea` and `example` are paragraphs and drawn parts."""

    name: str
    title: str
    minutes: int | None
    cautions: tuple[str, ...]
    goals: tuple[str, ...]
    tools: tuple[str, ...]
    idea: tuple[str | DrawnPart, ...]
    example: tuple[str | DrawnPart, ...]
    further: tuple[str, ...]
    sources: tuple[str, ...]
    asked: tuple[OwnQuestion, ...]

    def hazards(self) -> tuple[str, ...]:
        """Those that its cautions name, and those of its dangerous answers."""
        dangers = [
            hazard
            for one in self.asked
            for variant in one.variants.values()
            for hazard in variant.hazards()
        ]
        return tuple(dict.fromkeys((*self.cautions, *dangers)))


def lesson_name(file: str) -> str:
    """What the lesson in a file of that name is called.

    >>> lesson_name("My Fuses.txt")
    'own-my-fuses'
    """
    kept = "".join(c if c.isascii() and c.isalnum() else " " for c in normal(PurePath(file).stem))
    return OWN + "-".join(kept.split())


def look_at_name(file: str) -> None:
    """Raise RepairlibError when no lesson can be called after a file of that name."""
    accepted = f"a name of plain letters and digits that ends in {' or '.join(ENDINGS)}: fuses.txt"
    if PurePath(file).suffix.lower() not in ENDINGS:
        raise RepairlibError(file, "neither a text file nor a table", accepted)
    if lesson_name(file) == OWN or len(file) > LONGEST_TITLE:
        raise RepairlibError(file, "no lesson can be called after it", accepted)


def read_own_file(path: str | Path) -> tuple[OwnLesson, TextFile]:
    """The lesson in a file, and its text. Raises Slips with every line that cannot be read."""
    name = Path(path).name
    look_at_name(name)
    text = read_text(path)
    return read_own(text.text, name), text


@lru_cache(32)
def read_own(text: str, file: str = "fuses.txt") -> OwnLesson:
    r"""The lesson in the text of a file of that name. Raises Slips, or RepairlibError for no text.

    >>> lesson = read_own("Fuses\n\nQuestion\nHow many volts has a flat cell?\nAnswer: 1.2 V")
    >>> lesson.name, lesson.title, lesson.asked[0].points
    ('own-fuses', 'Fuses', 1)
    >>> read_own("Fuses\n\nQuestion\nHow many?\nAnwser: 2\nPonits: 3")
    Traceback (most recent call last):
    repairlib.learn.own.slips.Slips: 'fuses.txt': 2 errors, so nothing of it was taken. Accepted:
    the lines told above, mended
    """
    if text.lstrip().startswith(_RICH):
        wrong = "this is a letter of a word processor"
        raise RepairlibError(file, wrong, "the same saved as plain text")
    slips: list[Slip] = []
    said = said_in(as_text(text, file).text, slips)
    if slips and not said:  # too long to be looked at
        raise Slips(file, slips)
    starts = [at for at, one in enumerate(said) if one.word in QUESTIONS] or [len(said)]
    lesson = _lesson_in(said[: starts[0]], lesson_name(file), slips)
    parts = [said[at:end] for at, end in zip(starts, [*starts[1:], len(said)], strict=True)]
    ends = [*(part[0].line for part in parts[1:]), MOST_LINES + 1]
    asked = tuple(
        question_in(part, end, slips)
        for part, end in zip(parts[:MOST_QUESTIONS], ends, strict=False)
        if part
    )
    if len(parts) > MOST_QUESTIONS:
        line = parts[MOST_QUESTIONS][0].line
        wrong = "too many questions for one lesson"
        slips.append(Slip(line, f"{len(parts)} questions", wrong, f"up to {MOST_QUESTIONS}"))
    elif not any(one.graded for one in asked):
        last = said[-1].line if said else 1
        slips.append(Slip(last, "the end", "no question stands in it", "a line Question"))
    if slips:
        raise Slips(file, slips)
    return lesson._replace(asked=asked)


def _lesson_in(said: Sequence[Said], name: str, slips: list[Slip]) -> OwnLesson:
    """What stands above the first question."""
    shown = [one for one in said if one.word != "not shown"]
    for one in shown:
        if one.word not in (TEXT, *LESSON_WORDS):
            wrong = "belongs to a question, and none has begun"
            slips.append(
                Slip(one.line, f"{one.word.capitalize()}:", wrong, "a line Question above it")
            )
        elif not one.text and one.word != "example":
            named = f"{one.word.capitalize()}:"
            slips.append(
                Slip(one.line, named, "nothing stands behind it", f"{named} and some words")
            )
    idea, example = _sections(shown, slips)
    return OwnLesson(
        name,
        _title(shown, slips),
        _minutes(shown, slips),
        _cautions(shown, slips),
        _texts(shown, "goal"),
        _texts(shown, "tools"),
        idea,
        example,
        _texts(shown, "further"),
        _texts(shown, "source"),
        (),
    )


def _texts(said: Sequence[Said], word: str) -> tuple[str, ...]:
    return tuple(one.text for one in said if one.word == word)


def _sections(said: Sequence[Said], slips: list[Slip]):
    """The paragraphs and drawings of the idea, and those from the word Example on."""
    sections: dict[str, list[str | DrawnPart]] = {"idea": [], "example": []}
    now = sections["idea"]
    for one in said:
        if one.word == "example":
            now = sections["example"]
        if one.word in (TEXT, "example") and one.text:
            now.append(one.text)
        elif one.word == "picture" and one.text:
            with slipping(one.line, slips):
                now.append(read_picture(one.text))
    return tuple(sections["idea"]), tuple(sections["example"])


def _title(said: Sequence[Said], slips: list[Slip]) -> str:
    titles = [one for one in said if one.word == "title"]
    if not titles:
        line = said[0].line if said else 1
        slips.append(Slip(line, "the beginning", "it has no title", "the title as the first line"))
        return ""
    for one in titles[1:]:
        slips.append(Slip(one.line, one.text, "a second title", "one title"))
    if len(titles[0].text) > LONGEST_TITLE:
        wrong = "too long for a title"
        slips.append(Slip(titles[0].line, titles[0].text, wrong, f"up to {LONGEST_TITLE} letters"))
    return titles[0].text


def _minutes(said: Sequence[Said], slips: list[Slip]) -> int | None:
    for one in said:
        if one.word == "minutes":
            figure = one.text.split()[0] if one.text else ""
            known = one.text.lower() in (figure, f"{figure} minutes", f"{figure} min")
            whole = known and figure.isascii() and figure.isdigit() and len(figure) < 4
            if whole and 0 < int(figure) <= MOST_MINUTES:
                return int(figure)
            accepted = f"a whole number from 1 to {MOST_MINUTES}"
            slips.append(Slip(one.line, one.text, "no number of minutes", accepted))
    return None


def _cautions(said: Sequence[Said], slips: list[Slip]) -> tuple[str, ...]:
    found: list[str] = []
    for one in said:
        if one.word == "cautions":
            for about in one.text.replace(";", ",").split(","):
                with slipping(one.line, slips):
                    found.append(hazard_of(about.strip()))
    return tuple(dict.fromkeys(found))
