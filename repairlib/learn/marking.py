"""The mark: always worked out anew from the questions and the answers as typed.

Pure: nothing is read, saved or shown here, and nothing that a learner typed is ever run.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from math import floor
from types import MappingProxyType
from typing import Protocol

from repairlib.learn.question import CHANGED, HELD, UNANSWERED, UNSAFE, Judgement, Question

NOT_COUNTED = {CHANGED: "not counted", HELD: HELD}  # and what a sheet says in place of points


class Markable(Protocol):
    """What is marked: a Question, or one that is remembered for all who have the same."""

    @property
    def id(self) -> str: ...

    @property
    def points(self) -> float: ...

    def is_blank(self, typed) -> bool: ...

    def judge(self, typed) -> Judgement: ...


UNSAFE_FIRST = "This one was answered unsafely first."


@dataclass(frozen=True)
class Line:
    """The mark of one question: its id, its points out of how many, and the judgement.

    A question that has changed since it was answered has no mark: its points count neither as
    earned nor as lost, and `counted` is 0. `unsafe_first` says that it was once answered
    dangerously. That costs no points, since a danger understood is what the exercise is for; but
    the sheet says it for good, so that whoever marks can see who found the answer by trying.
    """

    id: str
    points: float
    out_of: float
    judgement: Judgement
    unsafe_first: bool = False

    @property
    def state(self) -> str:
        """right, partly right, wrong, unsafe, unanswered, cannot read, changed or told later."""
        return self.judgement.state

    @property
    def says(self) -> tuple[str, ...]:
        """Hints, or why the text cannot be read; and whether it was once dangerous."""
        noted = self.unsafe_first and self.state != UNSAFE
        return (*self.judgement.says, *((UNSAFE_FIRST,) if noted else ()))

    @property
    def counted(self) -> float:
        """The points of this question that the total is out of."""
        return 0 if self.state in NOT_COUNTED else self.out_of


@dataclass(frozen=True)
class Sheet:
    """The marks of one exercise. `str(sheet)` is one line per question and a total.

    `variant` says whose questions these are; `notes` are about the saved file, if anything is.
    The total leaves out the points of questions that have changed since they were answered, and
    says how many: a sheet must neither lose nor gain by an edit of the questions.
    """

    lesson: str
    variant: str
    lines: tuple[Line, ...]
    notes: tuple[str, ...] = ()

    @property
    def points(self) -> float:
        """Points earned."""
        return sum(line.points for line in self.lines)

    @property
    def out_of(self) -> float:
        """Points that can be earned, without those of changed questions."""
        return sum(line.counted for line in self.lines)

    @property
    def held(self) -> bool:
        """True when it is told later what is right and wrong."""
        return any(line.state == HELD for line in self.lines)

    @property
    def answered(self) -> int:
        """How many questions have an answer, right or not."""
        return sum(line.state != UNANSWERED for line in self.lines)

    def __str__(self) -> str:
        wide = max((len(line.id) for line in self.lines), default=0)
        text = [f"{self.lesson}, {self.variant}", *(f"Note: {note}" for note in self.notes)]
        for line in self.lines:
            earned = f"{points(line.points)} of {points(line.counted)}"
            shown = NOT_COUNTED.get(line.state, earned)
            text.append(f"{line.id:{wide}}  {line.state:12}  {shown}")
            text.extend(f"    {said}" for said in line.says)
        text.append(self.total())
        return "\n".join(text)

    def total(self) -> str:
        """The last line: what was earned, out of what, and what is not counted."""
        if self.held:
            return f"Answered: {self.answered} of {len(self.lines)}. Points are told later."
        total = f"Total: {points(self.points)} of {points(self.out_of)} points"
        left_out = sum(line.out_of for line in self.lines) - self.out_of
        return f"{total}; not counted: {points(left_out)}" if left_out else total

    __repr__ = __str__

    def to_dict(self) -> dict:
        """The sheet as plain values for JSON."""
        lines = [
            {
                "id": line.id,
                "state": line.state,
                "points": line.points,
                "out_of": line.out_of,
                "says": list(line.says),
                "unsafe_first": line.unsafe_first,
            }
            for line in self.lines
        ]
        return {
            "lesson": self.lesson,
            "variant": self.variant,
            "points": self.points,
            "out_of": self.out_of,
            "lines": lines,
        }


def points(number: float) -> str:
    """Points without a needless `.0`.

    >>> points(2.0), points(1.5)
    ('2', '1.5')
    """
    return f"{number:g}"


def worth(question: Question) -> str:
    """What a question is worth: "1 point", "3 points"."""
    return f"{points(question.points)} point{'s' * (question.points != 1)}"


def mark_question(
    question: Markable, typed, answered_with: str | None = None, unsafe_first: bool = False
) -> Line:
    """The line of one question. A share of the points is rounded down to half a point.

    `answered_with` is the version of the library in which the question was another one when it
    was answered, or None. Such an answer is not judged. `unsafe_first`: it was once answered
    dangerously.
    """
    if answered_with is not None and not question.is_blank(typed):
        says = (
            f"This question has changed since it was answered (in version {answered_with}). "
            f"Points not counted: {points(question.points)}. Answer it anew to have it marked.",
            f"Answered then: {_in_short(typed)}",
        )
        changed = Judgement(CHANGED, says=says)
        return Line(question.id, 0, question.points, changed, unsafe_first)
    judgement = question.judge(typed)
    earned = floor(2 * question.points * judgement.share + 1e-9) / 2
    earned = min(earned, question.points)
    return Line(question.id, earned, question.points, judgement, unsafe_first)


def _in_short(typed) -> str:
    """What was typed, on one line of at most 100 characters."""
    if isinstance(typed, Mapping):
        typed = "; ".join(f"{key}: {_in_short(value)}" for key, value in typed.items())
    line = " ".join(str(typed).split())
    return line if len(line) <= 100 else f"{line[:99]}…"


def mark(
    questions: Sequence[Markable],
    answers: Mapping,
    lesson: str = "practice",
    variant: str = "demo variant",
    notes: Sequence[str] = (),
    changed: Mapping[str, str] = MappingProxyType({}),
    unsafe: Collection[str] = (),
) -> Sheet:
    """The sheet for these answers, a mapping of question id to what was typed.

    `changed` maps the id of a question that has changed since to the version it was answered in;
    `unsafe` are the ids of those that were once answered dangerously.

    >>> from repairlib.learn import Number
    >>> print(mark([Number(id="q1", answer=9, unit="V", points=2)], {"q1": "9 V"}))
    practice, demo variant
    q1  right         2 of 2
    Total: 2 of 2 points
    """
    lines = tuple(
        mark_question(one, answers.get(one.id, ""), changed.get(one.id), one.id in unsafe)
        for one in questions
    )
    return Sheet(lesson, variant, lines, tuple(notes))
