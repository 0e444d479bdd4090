"""The graded exercise as a form: it saves at every change and tells at once what it thinks."""

from __future__ import annotations

from html import escape

from repairlib.core.errors import RepairlibError
from repairlib.faces.panels.look import Panel, told, words
from repairlib.faces.panels.question_view import QuestionView
from repairlib.learn.exercise import Exercise, changed_since
from repairlib.learn.marking import Sheet, points
from repairlib.learn.saved_answers import Saved, merged


def answer_form(exercise: Exercise) -> ExerciseForm:
    """The questions of an exercise as a form that saves while you type."""
    return ExerciseForm(exercise)


class ExerciseForm(Panel):
    """The form of one exercise. `views` holds the questions by id."""

    def __init__(self, exercise: Exercise):
        self.exercise = exercise
        self.unsaved: dict = {}
        self.notes = words()
        self.progress = words()
        saved, problem = self._answers_so_far()
        changed = changed_since(exercise.questions, saved)
        count = len(exercise.questions)
        self.views = {
            one.id: QuestionView(
                one,
                f"Question {number} of {count} ({one.id})",
                saved.answers.get(one.id, ""),
                self._save,
                self._show_progress,
                answered_with=changed.get(one.id),
                unsafe_first=one.id in saved.unsafe,
            )
            for number, one in enumerate(exercise.questions, start=1)
        }
        variant = escape(str(exercise.learner), quote=False)
        who = words(f'<div class="rl-soft">These questions are the {variant}.</div>')
        super().__init__(who, self.notes, *self.views.values(), self.progress)
        self._show_notes(problem)
        self._show_progress()

    def _answers_so_far(self) -> tuple[Saved, str]:
        try:
            return self.exercise.saved.read_all(), ""
        except RepairlibError as error:
            return Saved({}, {}), str(error)

    def _save(self, name: str, change) -> str:
        """Save this change and any that could not be saved before."""
        self.unsaved = merged(self.unsaved, {name: change})
        unsafe = [view.question.id for view in self.views.values() if view.unsafe_first]
        self.exercise.save(self.unsaved, unsafe)
        self.unsaved = {}
        self._show_notes()
        return "Saved"

    def _show_notes(self, problem: str = ""):
        notes = [note for note in (problem, *self.exercise.notes()) if note]
        self.notes.value = told("cannot read", "Please note", notes) if notes else ""

    def _show_progress(self):
        lines = tuple(view.line for view in self.views.values())
        sheet = Sheet(self.exercise.lesson, str(self.exercise.learner), lines)
        self.progress.value = (
            f'<progress value="{sheet.points}" max="{sheet.out_of}" aria-label="points"></progress>'
            f"<b>{points(sheet.points)} of {points(sheet.out_of)} points</b>, "
            f"{sheet.answered} of {len(lines)} questions answered"
        )
