"""A graded exercise as a lesson uses it: open it, answer by form or by code, see the sheet."""

from __future__ import annotations

from importlib import import_module
from pathlib import Path

from repairlib.core.errors import RepairlibError
from repairlib.learn import files
from repairlib.learn.learner import DEMO, Demo, Learner, current_learner
from repairlib.learn.marking import Sheet, mark, mark_question
from repairlib.learn.question import UNREADABLE, UNSAFE, Question
from repairlib.learn.saved_answers import SavedAnswers, is_answers

# Lesson name: the module of repairlib.learn that asks its questions.
LESSONS = {
    "00-start-here": "start_here",
    "01-a-safe-bench": "a_safe_bench",
    "02-resistors-and-inductors": "resistors_and_inductors",
    "03-capacitor-markings": "capacitor_markings",
    "04-polarity": "polarity_marks",
    "05-measure-and-judge": "measure_and_judge",
    "06-how-capacitors-age": "how_capacitors_age",
    "07-plan-a-recap": "plan_a_recap",
    "09-hot-air-and-moisture": "hot_air_and_moisture",
    "08-solder-and-heat": "solder_and_heat",
}


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


def questions_of(lesson: str, learner: Learner | Demo = DEMO) -> tuple[Question, ...]:
    """The questions of a lesson in the variant of one learner.

    >>> questions_of("99-nothing")  # doctest: +ELLIPSIS
    Traceback (most recent call last):
        ...
    repairlib.core.errors.RepairlibError: '99-nothing': no exercise has this name. Accepted: ...
    """
    questions = tuple(_content(lesson).questions(learner.draw(lesson)))
    if len({one.id for one in questions}) < len(questions):
        raise ValueError(f"{lesson}: two questions have the same id")
    return questions


def warm_up(lesson: str):
    """The questions before the exercise of a lesson, as a function of a draw; not marked.

    >>> len(warm_up("00-start-here")(DEMO.draw("practice")))
    3
    """
    return _content(lesson).warm_up


def _content(lesson: str):
    """The module that asks the questions of a lesson."""
    if lesson not in LESSONS:
        raise RepairlibError(lesson, "no exercise has this name", ", ".join(LESSONS))
    return import_module(f"repairlib.learn.questions.{LESSONS[lesson]}")


class Exercise:
    """The questions of one lesson for one learner, with the answers saved so far."""

    def __init__(self, lesson: str, learner: Learner | Demo = DEMO, note: str = ""):
        self.lesson = lesson
        self.learner = learner
        self.questions = questions_of(lesson, learner)
        self.saved = SavedAnswers(lesson, learner)
        self.learner_note = note

    def __repr__(self) -> str:
        return f"{self.lesson}, {self.learner}: {len(self.questions)} questions"

    def answer(self, **answers) -> Told:
        """Save answers by question id: `ex.answer(q1="100 nF", q2="b")`.

        Says what was saved, and at once what is dangerous or cannot be read. Raises
        RepairlibError for an unknown id, and when the answers cannot be saved.
        """
        strangers = [name for name in answers if name not in self.by_id]
        if strangers:
            raise RepairlibError(strangers[0], "no question has this id", ", ".join(self.by_id))
        typed = {name: self.by_id[name].as_typed(given) for name, given in answers.items()}
        saved = self.saved.save(typed)
        told = [f"Saved: {', '.join(answers) or 'nothing'}.", *self.notes()]
        for name in answers:
            line = mark_question(self.by_id[name], saved[name])
            if line.state in (UNSAFE, UNREADABLE):
                told.extend(f"{name}: {said}" for said in line.says)
        return Told("\n".join(told))

    def sheet(self) -> Sheet:
        """The marks of the answers saved so far, worked out anew."""
        answers = self.saved.read()
        return mark(self.questions, answers, self.lesson, str(self.learner), self.notes())

    def notes(self) -> tuple[str, ...]:
        """What the learner must know about their files: usually nothing."""
        return tuple(note for note in (self.learner_note, self.saved.note) if note)

    @property
    def by_id(self) -> dict[str, Question]:
        """The questions by their ids."""
        return {one.id: one for one in self.questions}


def mark_file(path: str | Path) -> Sheet:
    """The sheet worked out anew from a file of saved answers, for whoever marks.

    The file is only read. Raises RepairlibError when it is missing or is no such file.
    """
    path = Path(path)
    found, trouble = files.read(path, is_answers)
    if found is None:
        wrong = trouble or "there is no such file"
        raise RepairlibError(path, wrong, "a file of saved answers, LESSON.json")
    learner = Learner(found["name"], found["class_code"]) if found["name"] else DEMO
    questions = questions_of(found["lesson"], learner)
    return mark(questions, found["answers"], found["lesson"], str(learner))
