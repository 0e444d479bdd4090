"""A graded exercise as a lesson uses it: open it, answer by form or by code, see the sheet."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from functools import partial
from importlib import import_module
from pathlib import Path
from typing import Any

from repairlib.core.draws import Draw
from repairlib.core.errors import RepairlibError
from repairlib.core.version import VERSION
from repairlib.learn import files
from repairlib.learn.asking import graded, practised
from repairlib.learn.fingerprint import fingerprint
from repairlib.learn.group import Group, known_group
from repairlib.learn.holding import held_back, is_held
from repairlib.learn.learner import DEMO, Demo, Learner, current_learner, learner_in
from repairlib.learn.marking import Sheet, mark, mark_question
from repairlib.learn.own import OWN, own_files, own_module
from repairlib.learn.question import UNANSWERED, UNREADABLE, UNSAFE, Question
from repairlib.learn.saved_answers import Saved, SavedAnswers, is_answers
from repairlib.learn.tries import UNFINISHED, note_try

# Each lesson with an exercise, in order. `03-capacitor-markings` asks what is in the module
# `questions/capacitor_markings.py`.
LESSONS = (
    "00-start-here",
    "01-a-safe-bench",
    "02-resistors-and-inductors",
    "03-capacitor-markings",
    "04-polarity",
    "05-measure-and-judge",
    "06-how-capacitors-age",
    "07-plan-a-recap",
    "08-solder-and-heat",
    "09-hot-air-and-moisture",
    "10-firmware-and-missing-parts",
    "11-connectors-and-power-entry",
    "12-first-power-up",
    "13-worth-repairing-and-the-record",
    "14-the-whole-job",
)

# The shorter of the two ways through the workbook: to change old capacitors in one evening.
ONE_EVENING = (
    "00-start-here",
    "01-a-safe-bench",
    "03-capacitor-markings",
    "04-polarity",
    "07-plan-a-recap",
    "08-solder-and-heat",
    "12-first-power-up",
)


class Told(str):
    """Text that a notebook shows as it is, without quotes."""

    __slots__ = ()
    __repr__ = str.__str__


def open_exercise(lesson: str) -> Exercise:
    """The exercise of a lesson, in the variant of the learner set in lesson 00.

    Raises RepairlibError for a lesson without an exercise.
    """
    learner, note = current_learner()
    return Exercise(lesson, learner, note)


def lessons_known(group: Group | None = None) -> tuple[str, ...]:
    """Each lesson with an exercise: those of the workbook, then those that a group brings.

    Without a group it is the one that this computer knows.
    """
    return (*LESSONS, *own_files(group or known_group()[0]))


def questions_of(
    lesson: str, learner: Learner | Demo = DEMO, group: Group | None = None
) -> tuple[Question, ...]:
    """The questions of a lesson in the variant of one learner.

    Own lessons are those of `group`, or of the group that this computer knows.

    >>> questions_of("99-nothing")  # doctest: +ELLIPSIS
    Traceback (most recent call last):
        ...
    repairlib.core.errors.RepairlibError: '99-nothing': no exercise has this name. Accepted: ...
    """
    return graded(module_of(lesson, group), learner.draw(lesson))


def warm_up(lesson: str) -> Callable[[Draw], tuple[Question, ...]]:
    """The questions before the exercise of a lesson, as a function of a draw; not marked.

    >>> len(warm_up("00-start-here")(DEMO.draw("practice")))
    3
    """
    return partial(practised, module_of(lesson))


def module_of(lesson: str, group: Group | None = None) -> str:
    """The name of the module that asks the questions of a lesson, once it is imported.

    The questions of an own lesson, of `group` or of the group that this computer knows, are
    entered under such a name too.
    """
    if lesson.startswith(OWN):
        return own_module(lesson, group)
    if lesson not in LESSONS:
        raise RepairlibError(lesson, "no exercise has this name", ", ".join(lessons_known()))
    name = lesson.partition("-")[2].replace("-", "_")
    return import_module(f"repairlib.learn.questions.{name}").__name__


class Exercise:
    """The questions of one lesson for one learner, with the answers saved so far."""

    def __init__(self, lesson: str, learner: Learner | Demo = DEMO, note: str = ""):
        self.lesson = lesson
        self.turn_to(learner, note)

    def __repr__(self) -> str:
        return f"{self.lesson}, {self.learner}: {len(self.questions)} questions"

    def turn_to(self, learner: Learner | Demo, note: str = "") -> None:
        """Ask the questions of this learner from now on, and take their answers."""
        self.learner = learner
        self.questions = questions_of(self.lesson, learner)
        self.saved = SavedAnswers(self.lesson, learner)
        self.learner_note = note
        self._fingerprints: dict[str, str] = {}

    def answer(self, **answers) -> Told:
        """Save answers by question id: `ex.answer(q1="100 nF", q2="b")`.

        Says what was saved, and at once what is dangerous or cannot be read. Raises
        RepairlibError for an unknown id, and when the answers cannot be saved.
        """
        strangers = [name for name in answers if name not in self.by_id]
        if strangers:
            raise RepairlibError(strangers[0], "no question has this id", ", ".join(self.by_id))
        typed = {name: self.by_id[name].as_typed(given) for name, given in answers.items()}
        was_unsafe = self._unsafe_among(typed)
        saved = self.save(typed)
        for name in typed:
            self.note_try(name, saved[name])
        now = [name for name in typed if self._is_unsafe(name, saved[name])]
        if was_unsafe or now:
            self.save({}, unsafe=(*was_unsafe, *now))
        told = [f"Saved: {', '.join(answers) or 'nothing'}.", *self.notes()]
        for name in answers:
            line = mark_question(self.by_id[name], saved[name])
            if line.state in (UNSAFE, UNREADABLE):
                told.extend(f"{name}: {said}" for said in line.says)
        return Told("\n".join(told))

    def _unsafe_among(self, names: Iterable[str]) -> list[str]:
        """Those of the questions whose answer as it is saved is dangerous."""
        saved = self.saved.read_all()
        changed = changed_since(self.questions, saved)
        return [
            name
            for name in names
            if name not in changed and self._is_unsafe(name, saved.answers.get(name, ""))
        ]

    def _is_unsafe(self, name: str, typed) -> bool:
        return self.by_id[name].judge(typed).state == UNSAFE

    def note_try(self, name: str, typed) -> None:
        """Put an answer, judged as it stands, into the record of tries; a blank one is none.

        Raises RepairlibError when it cannot be noted.
        """
        ask = self.by_id[name]
        judged = ask.judge(typed)
        if judged.state == UNANSWERED:
            return
        unfinished = not ask.is_whole(typed) and judged.state != UNSAFE
        state = UNFINISHED if unfinished else judged.state
        note_try(self.lesson, self.learner, name, ask.in_short(typed), state, judged.hazards)

    def save(self, typed: Mapping, unsafe: Iterable[str] = ()) -> dict:
        """Save what was typed, by question id, with the fingerprints of what is asked now.

        `unsafe` are the ids of questions that were answered dangerously: noted for good. Gives
        all answers that are saved. Raises RepairlibError when they cannot be.
        """
        for name in typed:
            if name not in self._fingerprints:  # made once: it draws the picture
                self._fingerprints[name] = fingerprint(self.by_id[name])
        return self.saved.save(typed, self._fingerprints, unsafe)

    def sheet(self, trusted: str | None = None) -> Sheet:
        """The marks of the answers saved so far, worked out anew.

        A question is looked at for changes since it was answered, which draws its picture; not
        where it was answered in the `trusted` version of the library. An own lesson can change
        without a new version. While the lesson is held, what is right and
        wrong is left out; what is dangerous is not.
        """
        trusted = None if self.lesson.startswith(OWN) else trusted
        saved = self.saved.read_all()
        notes = (*self.notes(), *remarks(self.questions, saved))
        changed = changed_since(self.questions, saved, trusted)
        who = str(self.learner)
        sheet = mark(self.questions, saved.answers, self.lesson, who, notes, changed, saved.unsafe)
        return held_back(sheet, self.questions, saved.answers) if self.is_held() else sheet

    def is_held(self) -> bool:
        """True while it is not told what is right. Raises RepairlibError when barred."""
        return is_held(self.lesson)

    def note_missed(self) -> None:
        """Note what was saved and not judged any more before this kernel or the last one ended."""
        saved = self.saved.read_all()
        trusted = None if self.lesson.startswith(OWN) else VERSION
        changed = changed_since(self.questions, saved, trusted)
        for name, typed in saved.answers.items():
            if name in self.by_id and name not in changed:
                self.note_try(name, typed)

    def notes(self) -> tuple[str, ...]:
        """What the learner must know about their files: usually nothing."""
        return tuple(note for note in (self.learner_note, self.saved.note) if note)

    @property
    def by_id(self) -> dict[str, Question]:
        """The questions by their ids."""
        return {one.id: one for one in self.questions}


def mark_file(path: str | Path, anew: bool = False, group: Group | None = None) -> Sheet:
    """The sheet worked out anew from a file of saved answers, for whoever marks.

    A question that has changed since it was answered is named and not marked: its points are left
    out of what was earned and of what could be. With `anew` the answers are marked against the
    questions of today all the same. Own lessons are those of `group`, or of the group that this
    computer knows. The file is only read. Raises RepairlibError when it is
    missing or is no such file.
    """
    path = Path(path)
    found, trouble = files.read(path, is_answers)
    if found is None:
        wrong = trouble or "there is no such file"
        raise RepairlibError(path, wrong, "a file of saved answers, LESSON.json")
    learner = learner_in(found)
    questions, saved = questions_of(found["lesson"], learner, group), Saved.of(found)
    notes = remarks(questions, saved)
    changed = {} if anew else changed_since(questions, saved)
    lesson, who = found["lesson"], str(learner)
    return mark(questions, saved.answers, lesson, who, notes, changed, saved.unsafe)


def changed_since(
    questions: Sequence,
    saved: Saved,
    trusted: str | None = None,
    fingerprint_of: Callable[[Any], str] | None = None,
) -> dict[str, str]:
    """The questions that have changed since they were answered: id to the version of then.

    Those answered in the `trusted` version are not looked at. `fingerprint_of` tells that of one
    of the questions, for those that remember it.
    """
    fingerprint_of = fingerprint_of or fingerprint
    then = {name: asked for name, asked in saved.asked.items() if asked["version"] != trusted}
    return {
        one.id: then[one.id]["version"]
        for one in questions
        if one.id in then and then[one.id]["fingerprint"] != fingerprint_of(one)
    }


def remarks(questions: Sequence, saved: Saved) -> tuple[str, ...]:
    """What a sheet must say about answers whose question is not known, or no longer asked."""
    unknown = [name for name in saved.answers if name not in saved.asked]
    gone = sorted(set(saved.answers) - {one.id for one in questions})
    told = []
    if unknown:
        which = ", ".join(unknown) if saved.asked else "any answer"
        told.append(
            f"The file carries no fingerprint of the question for {which}: saved by an earlier "
            "version, marked against the questions of today."
        )
    if gone:
        told.append(f"Answered, but no longer asked, so not counted: {', '.join(gone)}.")
    return tuple(told)
