"""Who is answering, where the computer knows a group: by word, by name out of a list, as a pair."""

from __future__ import annotations

from collections.abc import Iterable

import ipywidgets as widgets

from repairlib.core.draws import normal
from repairlib.core.errors import RepairlibError
from repairlib.core.html import told
from repairlib.faces.panels.following import turn_to
from repairlib.faces.panels.look import enter_presses, trouble, words
from repairlib.learn.group import Group, Member, known_group
from repairlib.learn.learner import DEMO, Demo, Learner

LISTED = 60  # members of a group that a list shows; in a larger one the word is typed
WORD, WORD_HINT = "Your word", "from your card, or your name"
FROM_LIST, CHOOSE = "Your name", "or choose it here"
SHOW = "Show my questions"
TOGETHER, ALONE, TOGETHER_HINT = "together with", "nobody", "word or name"
NOT_IN_IT = "Nobody in the group {group} has the word or name “{typed}”"
MEANT, NONE_NEAR = "Did you mean one of these?", "Look at the word on your card, or ask."
ON_MY_OWN = "Go on as {typed}, not in the group"
NO_WORD = "Type your word or your name"
STYLE = {"description_width": "6rem"}


def group_here() -> Group | None:
    """The group that this computer knows and can read, if it has members."""
    group, _ = known_group()
    return group if group is not None and group.members else None


class MemberFields(widgets.VBox):
    """The parts: `word` with the button `show`, `names` to choose from, `offered`, `status`.

    A slip is never taken silently: the nearest are offered as buttons in `offered`.
    """

    def __init__(self, group: Group, with_list: bool = True):
        self.group = group
        layout = widgets.Layout(width="28rem", max_width="100%")
        self.word = widgets.Text(
            description=WORD, placeholder=WORD_HINT, style=STYLE, layout=layout
        )
        self.show = widgets.Button(description=SHOW, button_style="primary")
        self.show.layout = widgets.Layout(width="auto")
        self.names = widgets.Dropdown(description=FROM_LIST, style=STYLE, layout=layout)
        self.offered = widgets.HBox(layout={"flex_flow": "row wrap"})
        self.status = words()
        self.show.on_click(self._show)
        enter_presses(self.word, self.show)
        self.names.observe(self._chosen, "value")
        self._filling = False
        typed = widgets.HBox([self.word, self.show], layout={"flex_flow": "row wrap"})
        listed = [self.names] if with_list and len(group.members) <= LISTED else []
        super().__init__([typed, *listed, self.status, self.offered])
        self.show_as_set(DEMO)

    def show_as_set(self, _learner: Learner | Demo) -> None:
        """As at first, once a learner is set: nothing typed, chosen or told."""
        self._filling = True
        self.word.value, self.status.value, self.offered.children = "", "", ()
        by_name = sorted((one.name for one in self.group.members), key=normal)
        self.names.options = [(CHOOSE, ""), *((name, name) for name in by_name[:LISTED])]
        self.names.value = ""
        self._filling = False

    def _chosen(self, change) -> None:
        if change["new"] and not self._filling:
            self._turn_to(self.group.member(change["new"]).name, self.group.name)

    def _show(self, _button=None) -> None:
        typed = " ".join(self.word.value.split())
        self.offered.children = ()
        if not typed:
            self.status.value = told("cannot read", NO_WORD)
            return
        try:
            member = self.group.member(typed)
        except RepairlibError:
            self._offer(typed)
        else:
            self._turn_to(member.name, self.group.name)

    def _offer(self, typed: str) -> None:
        near = self.group.nearest(typed)
        headline = NOT_IN_IT.format(group=self.group.name, typed=typed)
        self.status.value = told("cannot read", headline, [MEANT if near else NONE_NEAR])
        buttons = [
            self._button(f"{one.word}: {one.name}", one.name, self.group.name) for one in near
        ]
        buttons.append(self._button(ON_MY_OWN.format(typed=typed), typed, ""))
        self.offered.children = buttons

    def _button(self, label: str, name: str, group: str) -> widgets.Button:
        button = widgets.Button(description=label, layout={"width": "auto"})
        button.on_click(lambda _: self._turn_to(name, group))
        return button

    def _turn_to(self, name: str, group: str) -> None:
        try:
            turn_to(name, group)
        except RepairlibError as error:
            self.status.value = trouble(error)


class Together(widgets.HBox):
    """With whom a learner answers on one sheet: in `other`, a list, or a field in a large group."""

    def __init__(self):
        self.other: widgets.Dropdown | widgets.Text = widgets.Dropdown(description=TOGETHER)
        self.status = words()
        super().__init__(layout={"flex_flow": "row wrap", "align_items": "center"})

    def turn(self, group: Group | None, learner: Learner | Demo) -> None:
        """Offer the other members to a member; nothing to anybody else."""
        self.status.value = ""
        if group is None or not _is_in(group, learner):
            self.children = ()
            return
        self.group, self.learner = group, learner
        style = {"description_width": "initial"}
        layout = widgets.Layout(width="18rem", max_width="100%")
        if len(group.members) <= LISTED:
            names = sorted((one.name for one in group.members), key=normal)
            others = [name for name in names if normal(name) != normal(learner.name)]
            if learner.partner and learner.partner not in others:
                others.insert(0, learner.partner)
            self.other = widgets.Dropdown(
                description=TOGETHER,
                options=[(ALONE, ""), *((name, name) for name in others)],
                value=learner.partner,
                style=style,
                layout=layout,
            )
        else:
            self.other = widgets.Text(
                description=TOGETHER,
                value=learner.partner,
                placeholder=TOGETHER_HINT,
                continuous_update=False,
                style=style,
                layout=layout,
            )
        self.other.observe(self._pair, "value")
        self.children = (self.other, self.status)

    def _pair(self, change) -> None:
        try:
            partner = self.group.member(change["new"]).name if change["new"].strip() else ""
            if normal(partner) == normal(self.learner.name):
                partner = ""
            turn_to(self.learner.name, self.learner.group, partner)
        except RepairlibError as error:
            self.status.value = trouble(error)


def names_together(learner: Learner) -> str:
    """The name of a learner, or both names of a pair, without the group."""
    return Learner(learner.name, "", learner.partner).who


def to_hand_over_to(
    group: Group, known: Iterable[Learner], here: Learner | Demo
) -> tuple[list[Learner], list[Learner]]:
    """The members who were here before, the latest first, and the others of a small group."""
    before = [one for one in known if _is_in(group, one) and one.folder() != here.folder()]
    folders = {one.folder() for one in (*before, here)}
    rest: Iterable[Member] = group.members if len(group.members) <= LISTED else ()
    others = [Learner(one.name, group.name) for one in rest]
    return before, [one for one in others if one.folder() not in folders]


def _is_in(group: Group, learner: Learner | Demo) -> bool:
    return normal(learner.group) == normal(group.name) and normal(learner.name) in group.by_name()
