"""Who is learning: the form in lesson 00, and the line at each exercise that hands over.

Both set the learner for all panels of the page at once; no cell is run again for it.
"""

from __future__ import annotations

from collections.abc import Callable

import ipywidgets as widgets

from repairlib.core.errors import RepairlibError
from repairlib.core.html import text, told
from repairlib.faces.panels.carry import CarryWork
from repairlib.faces.panels.following import follow, forget_here, turn_to
from repairlib.faces.panels.look import Panel, enter_presses, trouble, words
from repairlib.faces.panels.members import (
    MemberFields,
    Together,
    group_here,
    names_together,
    to_hand_over_to,
)
from repairlib.learn.group import Group, known_group
from repairlib.learn.home import home
from repairlib.learn.learner import DEMO, Demo, Learner, current_learner, known_learners

STYLE = {"description_width": "6rem"}

# What a person reads here
HELP = """<p>Your name chooses your variant of the questions. In a class, type the name of your
group too, as your instructor calls it. Capitals or small letters make no difference.
Leave both empty to work on the demo variant.</p>"""
GROUP_HELP = """<p>This computer is used by the group <b>{group}</b>. Type the word on your card, or
choose your name: it brings your own questions. Two of you at one sheet? One is set here; then
<i>together with</i> names the other.</p>"""
SHOW, FORGET, HAND_OVER = "Show my questions", "Do not show my name here", "Hand over"
CARRY = "Go on at another computer"
NAME, NAME_HINT = "Your name", "as your instructor knows you, or as you like"
GROUP, GROUP_HINT = "Group", "as your instructor calls it"
NO_NAME = "Type your name too"
GROUP_ALONE = "A group alone is nobody. Leave both empty for the demo variant."
NOBODY, NOBODY_ANSWERS = "Nobody: the demo variant", "Nobody is named: this is the demo variant."
NOBODY_SET = "Nobody is named: you work on the demo variant"
ASKS_AS_PRINTED = "Each exercise asks what the printed lessons ask. Your answers are saved."
ASKS_YOUR_OWN = "Each exercise now asks your own questions, and has your answers."
FORGOTTEN = (
    "The name {who} is no longer shown here. It is the demo variant's turn.",
    "The answers and the work stay on this computer, with the name in them: type name and group "
    "again, and they are back.",
    "To remove them for good, in a terminal: python -m repairlib class forget NAME. They lie in "
    "{answers} and {work}",
)

SOMEBODY_NEW, YOUR_WORD = "Somebody new?", "Or type your word:"
BEFORE, OTHERS = "Here before:", "Others of the group:"
WRAPPED = {"flex_flow": "row wrap"}
NAMES_SHOWN = 24  # of those known on this computer, the latest first


class NameFields(widgets.VBox):
    """Name, group and the button that sets them; what came of it stands in `status`."""

    def __init__(self):
        self.name = _text(NAME, NAME_HINT)
        self.group = _text(GROUP, GROUP_HINT)
        self.show = widgets.Button(description=SHOW, button_style="primary")
        self.status = words()
        self.show.on_click(self._show)
        for field in (self.name, self.group):
            enter_presses(field, self.show)
        super().__init__([self.name, self.group, self.show, self.status])

    def show_as_set(self, learner: Learner | Demo) -> None:
        """What stands in the fields once a learner is set."""
        self.name.value, self.group.value = learner.name, learner.group

    def _show(self, _button=None) -> None:
        if self.group.value.strip() and not self.name.value.strip():
            self.status.value = told("cannot read", NO_NAME, [GROUP_ALONE])
            return
        try:
            learner = turn_to(self.name.value, self.group.value)
        except RepairlibError as error:
            self.status.value = trouble(error)
        else:
            self.status.value = set_html(learner)


class LearnerForm(Panel):
    """The form's parts: `fields`, `together`, `forget`, `status`, and `carry`.

    The fields ask for name and group, or for one of the group that this computer knows.
    """

    def __init__(self):
        group = group_here()
        self.fields = NameFields() if group is None else MemberFields(group)
        self.show, self.status = self.fields.show, self.fields.status
        self.together = Together()
        help = HELP if group is None else GROUP_HELP.format(group=text(group.name))
        left = widgets.Layout(width="auto", align_self="flex-start")
        self.forget = widgets.Button(description=FORGET, layout=left)
        self.forget.on_click(self._forget)
        self.carry = CarryWork()
        more = widgets.Accordion([self.carry], titles=(CARRY,))
        super().__init__(words(help), self.fields, self.together, self.forget, more)
        self._show_current()
        follow("learner form", self._show_current)

    def _show_current(self) -> None:
        try:
            learner, note = current_learner()
            group, trouble_with_it = known_group()
        except RepairlibError as error:
            self.status.value = trouble(error)
            return
        self.fields.show_as_set(learner)
        self.together.turn(group, learner)
        self.forget.layout.display = "none" if learner is DEMO else ""
        note = note or trouble_with_it
        note_html = told("cannot read", "Please note", [note]) if note else ""
        self.status.value = note_html or set_html(learner)

    def _forget(self, _button=None) -> None:
        try:
            learner = current_learner()[0]
            forget_here(learner)
            self.status.value = forgotten_html(learner)
        except RepairlibError as error:
            self.status.value = trouble(error)


class HandOver(widgets.VBox):
    """Who is answering, at an exercise. *Hand over* shows who else may, one click each.

    Its parts: `who`, `together` for a pair, the button `hand_over`, `others` with a button for each
    who was here before, `members` with one for each other member of the group that this computer
    knows, and `fields` for somebody new. `cover` is told whether it is open: then nobody answers.
    """

    def __init__(self, cover: Callable[[bool], None] = lambda is_open: None):
        self._cover = cover
        self.who, self.together = words(), Together()
        self.hand_over = widgets.Button(description=HAND_OVER)
        self.hand_over.on_click(self._toggle)
        self.others, self.members = (widgets.HBox(layout=WRAPPED) for _ in range(2))
        group = group_here()
        if group is None:
            self.fields = NameFields()
            listed = [self.others, words(SOMEBODY_NEW)]
        else:
            self.fields = MemberFields(group, with_list=False)
            listed = [words(BEFORE), self.others, words(OTHERS), self.members, words(YOUR_WORD)]
        self.choices = widgets.VBox([*listed, self.fields])
        line = widgets.HBox([self.who, self.together, self.hand_over])
        line.layout = widgets.Layout(flex_flow="row wrap", align_items="center", grid_gap="0 12px")
        super().__init__([line, self.choices])
        self.turn()

    def turn(self) -> None:
        """Say who is answering now, and fold the rest away."""
        try:
            learner, group = current_learner()[0], known_group()[0]
        except RepairlibError:
            learner, group = DEMO, None
        named = NOBODY_ANSWERS
        if isinstance(learner, Learner):
            verb = "are" if learner.partner else "is"
            named = f"<b>{text(learner.who)}</b> {verb} answering."
        self.who.value = named
        self.together.turn(group, learner)
        self.choices.layout.display = "none"
        self.fields.show_as_set(DEMO)

    def _toggle(self, _button=None) -> None:
        hidden = self.choices.layout.display == "none"
        self.choices.layout.display = "" if hidden else "none"
        self._cover(hidden)
        if hidden:
            self.fields.status.value = ""
            group = self.fields.group if isinstance(self.fields, MemberFields) else None
            self._or_say_why(lambda: self._offer(group))

    def _or_say_why(self, do: Callable[[], object]) -> None:
        """Do it, or say beside the choices why it could not be done."""
        try:
            do()
        except RepairlibError as error:
            self.fields.status.value = trouble(error)

    def _offer(self, group: Group | None) -> None:
        here = current_learner()[0]
        known = [one for one in known_learners() if one.folder() != here.folder()]
        if group is not None:
            before, rest = to_hand_over_to(group, known, here)
            strangers = [one for one in known if one not in before]
            buttons = [self._button_for(one, names_together(one)) for one in before[:NAMES_SHOWN]]
            known = strangers[: NAMES_SHOWN - len(buttons)]
            self.members.children = [self._button_for(one, one.name) for one in rest]
        else:
            buttons = []
        buttons += [self._button_for(one, one.who) for one in known[:NAMES_SHOWN]]
        if here is not DEMO:
            buttons.append(self._button_for(DEMO, NOBODY))
        self.others.children = buttons

    def _button_for(self, learner: Learner | Demo, label: str) -> widgets.Button:
        def turn(_button=None) -> None:
            self._or_say_why(lambda: turn_to(learner.name, learner.group, learner.partner))

        button = widgets.Button(description=label, layout={"width": "auto"})
        button.on_click(turn)
        return button


def set_html(learner: Learner | Demo) -> str:
    """What is said when a learner is set."""
    if learner is DEMO:
        return told("unanswered", NOBODY_SET, [ASKS_AS_PRINTED])
    return told("right", f"It is the turn of {learner.who}", [ASKS_YOUR_OWN])


def forgotten_html(learner: Learner | Demo) -> str:
    """What is said when a learner was forgotten: what stays on the disk, and where."""
    folders = {kind: home() / kind / learner.folder() for kind in ("answers", "work")}
    says = [said.format(who=learner.who, **folders) for said in FORGOTTEN]
    return told("right", "Your name is off the list", says)


def learner_form() -> LearnerForm:
    """The form for name and group, ready to be shown."""
    return LearnerForm()


def _text(label: str, placeholder: str) -> widgets.Text:
    layout = widgets.Layout(width="28rem", max_width="100%")
    return widgets.Text(description=label, placeholder=placeholder, style=STYLE, layout=layout)
