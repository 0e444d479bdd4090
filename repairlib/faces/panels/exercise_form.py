"""The graded exercise as a form: it saves at every change and tells at once what it thinks."""

from __future__ import annotations

from repairlib.core.errors import RepairlibError
from repairlib.faces.panels.following import follow, turn_all
from repairlib.faces.panels.hand_in_view import HandInView
from repairlib.faces.panels.hold_view import HoldView
from repairlib.faces.panels.learner import HandOver
from repairlib.faces.panels.look import Panel, told, trouble, words
from repairlib.faces.panels.question_view import QuestionView
from repairlib.faces.panels.sheet_view import sheet_html, who_answers
from repairlib.faces.panels.tries_view import record_html
from repairlib.learn.exercise import Exercise, changed_since
from repairlib.learn.learner import current_learner
from repairlib.learn.marking import Sheet
from repairlib.learn.saved_answers import Saved, merged

SET_ELSEWHERE = (
    "It was set in another lesson who is answering. What was typed here just now is not saved: "
    "answer it again if it is yours."
)


def answer_form(exercise: Exercise) -> ExerciseForm:
    """The questions of an exercise as a form that saves while you type."""
    return ExerciseForm(exercise)


class ExerciseForm(Panel):
    """The form of one exercise: who is answering, `views` with the questions by id, the `sheet`.

    Above the questions `kept` says what is kept, and `hold` that marks are told later, if they are;
    below the sheet stands `hand_in`. When another learner is set it asks their questions, and has
    their answers, at once.
    """

    views: dict[str, QuestionView]

    def __init__(self, exercise: Exercise):
        self.exercise = exercise
        self.unsaved: dict = {}
        self.who = HandOver(self._cover)
        self.notes, self.sheet, self.kept = words(), words(), words()
        self.hold, self.hand_in = HoldView(exercise.lesson, self._look), HandInView(exercise)
        self.held = False
        super().__init__()
        self._ask()
        self._set_then = self._set_now()
        follow(f"exercise {exercise.lesson}", self._turn)

    def _cover(self, is_open: bool) -> None:
        """Hide the questions during a hand-over: they are still those of the one before."""
        for view in self.views.values():
            view.layout.display = "none" if is_open else ""

    def _ask(self, problem: str = "") -> None:
        """Put in the questions of the exercise's learner, with the answers so far."""
        exercise = self.exercise
        saved, barred = self._answers_so_far()
        self.held = self._is_held()
        changed = changed_since(exercise.questions, saved)
        count = len(exercise.questions)
        self.views = {
            one.id: QuestionView(
                one,
                f"Question {number} of {count} ({one.id})",
                saved.answers.get(one.id, ""),
                self._save,
                self._judged,
                answered_with=changed.get(one.id),
                unsafe_first=one.id in saved.unsafe,
                held=self.held,
            )
            for number, one in enumerate(exercise.questions, start=1)
        }
        above = (self.children[0], self.who, self.notes, self.kept, self.hold)
        self.children = (*above, *self.views.values(), self.sheet, self.hand_in)
        self.hold.show(self.held)
        self._show_notes(problem or barred or self._note_missed())
        self._show_sheet()
        self._show_kept()

    def _answers_so_far(self) -> tuple[Saved, str]:
        try:
            return self.exercise.saved.read_all(), ""
        except RepairlibError as error:
            return Saved({}, {}), str(error)

    def _note_missed(self) -> str:
        """Note the tries that a killed kernel or a hand-over did not; what went wrong, or ""."""
        try:
            self.exercise.note_missed()
        except RepairlibError as error:
            return str(error)
        return ""

    def _is_held(self) -> bool:
        """Whether marks are told later; as before when that cannot be told."""
        try:
            return self.exercise.is_held()
        except RepairlibError:
            return self.held

    def _look(self) -> bool:
        """Look whether marks are told now, and tell them; True while they are not."""
        held = self._is_held()
        if held != self.held:
            self.held = held
            self.hold.show(held)
            for view in self.views.values():
                view.held = held
                view.tell()
            self._show_sheet()
            self._show_kept()
        return held

    def _judged(self, view: QuestionView) -> None:
        """Note the try that was just judged, and show what follows from it.

        A question of the learner before, judged after a hand-over, is theirs: it was noted then.
        """
        if self.views.get(view.question.id) is not view:
            return
        try:
            self.exercise.note_try(view.question.id, view.typed)
        except RepairlibError as error:
            self._show_notes(str(error))
        self._look()
        self._show_sheet()
        self._show_kept()
        self.hand_in.changed()

    def _set_now(self):
        """Where the files of the learner lie who is set now; None when that cannot be told."""
        try:
            return current_learner()[0].folder()
        except RepairlibError:
            return None

    def _turn(self, problem: str = "") -> None:
        """Ask the learner who is set now. What could not be saved before is tried once more."""
        try:
            if self.unsaved:
                self.exercise.save(self.unsaved)
            self._note_missed()
            self.exercise.turn_to(*current_learner())
        except RepairlibError as error:
            self._show_notes(str(error))
            return
        self.unsaved, self._set_then = {}, self._set_now()
        self.who.turn()
        self.hand_in.turn()
        self._ask(problem)

    def _save(self, name: str, change) -> str:
        """Save this change and any that could not be saved before.

        Where somebody else was set in another lesson, nothing is saved: it is their turn here.
        """
        if self._set_now() not in (None, self._set_then):
            turn_all()
            self._turn(SET_ELSEWHERE)
            return ""
        self.unsaved = merged(self.unsaved, {name: change})
        unsafe = [view.question.id for view in self.views.values() if view.unsafe_first]
        self.exercise.save(self.unsaved, unsafe)
        self.unsaved = {}
        self._show_notes()
        return "Saved"

    def _show_notes(self, problem: str = "") -> None:
        notes = [note for note in (problem, *self.exercise.notes()) if note]
        self.notes.value = told("cannot read", "Please note", notes) if notes else ""

    def _show_sheet(self) -> None:
        exercise = self.exercise
        lines = tuple(view.shown for view in self.views.values())
        sheet = Sheet(exercise.lesson, str(exercise.learner), lines, exercise.notes())
        try:
            self.sheet.value = sheet_html(sheet, who_answers(exercise.learner))
        except RepairlibError as error:
            self.sheet.value = trouble(error)

    def _show_kept(self) -> None:
        try:
            self.kept.value = record_html(self.exercise)
        except RepairlibError as error:
            self.kept.value = trouble(error)
