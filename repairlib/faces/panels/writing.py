"""Writing a memory chip as a walk: one step at a time, and none before what it rests on.

A thin view: steps, refusals and reasons come from `repairlib.firmware`. Nothing here writes to a
chip: that is done at the programmer, and told here. Every step is kept at once, so that the walk
stands where it stood when the page is opened again, as long as its files do.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import ipywidgets as widgets

from repairlib.core.errors import RepairlibError
from repairlib.core.html import soft, text
from repairlib.core.quantity import read_quantity
from repairlib.core.safety import caution
from repairlib.faces.panels.fields import Fields
from repairlib.faces.panels.file_button import FileButton
from repairlib.faces.panels.images import ERASES, LARGEST, path_of
from repairlib.faces.panels.keeping import Keeping
from repairlib.faces.panels.look import Panel, trouble, words
from repairlib.faces.shown.writing import (
    answers_of,
    came_html,
    card_html,
    looked_at_html,
    so_far_html,
)
from repairlib.firmware import (
    CHIP_IS_BLANK,
    DONE,
    ERASED,
    GO,
    INTENDED,
    KEEP_LIST,
    READ,
    READ_BACK,
    SECTOR,
    SUPPLY,
    WRITTEN,
    Keep,
    WriteEvent,
    WriteState,
    events_text,
    keep_into,
    keep_list,
    may_take_back,
    read_image,
    read_size,
    take_back,
    write_again,
    write_step,
)
from repairlib.learn.kept_images import keep_image

SIZE = Fields("9rem", "26rem")
ALWAYS = ("mains", "stored charge")
ANEW, SURE = "Begin a new one", "Sure? All steps go"
NOTHING_YET = "[]"
WHERE = "Nothing here touches a chip: do each step at the programmer, then tell it here."
ENTER = {
    SUPPLY: "Enter the volts",
    READ: "Take this read",
    KEEP_LIST: "Enter the answers",
    INTENDED: "Take this image",
    GO: "It may begin",
    ERASED: "It is erased",
    WRITTEN: "It is written",
    READ_BACK: "Take this read back",
}
# What a step asks for, by the names of the fields.
ASKS = {
    SUPPLY: ("volts", "measured"),
    READ: ("file", "reason"),
    KEEP_LIST: ("donor", "twin", "keep", "leave", "reason"),
    INTENDED: ("file", "reason"),
    GO: ("erase",),
    ERASED: ("erase",),
    WRITTEN: ("erase",),
    READ_BACK: ("file",),
}
FILES = {"file": "Choose this file", "donor": "Choose the donor's", "twin": "Choose the twin's"}


class WritingPanel(Panel):
    """The walk. `fields` holds what is typed, by name; `buttons` and `choose` what is pressed.

    `card` says what to do, `answer` what the last step came to, `shown` what is to be looked at,
    `refused` why something cannot be done, `state` where it stands.

    >>> panel = write_plan(kept="")
    >>> panel.fields["volts"].value, panel.fields["measured"].value = "3.3", "3.28 V"
    >>> panel.buttons["supply"].click()
    >>> panel.state.step
    'read'
    """

    def __init__(self, chip: str, kept: str):
        self.fields = {
            "chip": SIZE.text("The chip holds", chip),
            "volts": SIZE.text("It is made for", ""),
            "measured": SIZE.text("Measured at clip", ""),
            "file": SIZE.text("File", ""),
            "donor": SIZE.text("Image of a donor", ""),
            "twin": SIZE.text("A further twin", ""),
            "keep": SIZE.text("Keep, by number", ""),
            "leave": SIZE.text("Leave behind", ""),
            "reason": SIZE.text("Why, if asked", ""),
            "erase": SIZE.choice("It erases at once", ERASES, SECTOR),
            "events": widgets.Text(value=NOTHING_YET),  # kept, never shown
        }
        hints = {"volts": "3.3 V", "measured": "3.28 V", "keep": "1 2 4", "leave": "3"}
        for name, hint in {**hints, "reason": f"in words, as: {CHIP_IS_BLANK}"}.items():
            self.fields[name].placeholder = hint
        for name in FILES:
            self.fields[name].continuous_update = False  # a path is looked at when it is whole
        self.choose = {name: self._file_button(name, label) for name, label in FILES.items()}
        self.card, self.answer, self.shown = words(), words(), words()
        self.refused, self.so_far = words(), words()
        self.buttons = self._buttons()
        self.state: WriteState | None = None
        self.keeps: tuple[Keep, ...] = ()
        self._listed: tuple = ()
        self.keeping = Keeping(kept, self.fields)
        for name in ("chip", "events", "donor", "twin", "erase"):
            self.fields[name].observe(self._show, "value")
        super().__init__(*self._in_order())
        self._show()

    def _in_order(self) -> list[widgets.Widget]:
        keys = widgets.HBox(list(self.buttons.values()), layout={"flex_flow": "row wrap"})
        form = []
        for name, field in self.fields.items():
            if name not in ("chip", "events"):
                form += [field, self.choose[name]] if name in self.choose else [field]
        head = [words(soft(text(WHERE))), self.fields["chip"], self.answer, self.card]
        always = words(caution(*ALWAYS).in_brief())
        below = [self.refused, self.so_far, self.keeping.strip, always]
        return [*head, self.shown, *form, keys, *below]

    def _file_button(self, name: str, label: str) -> FileButton:
        button = FileButton(
            label,
            lambda called, data: self._chosen(name, called, data),
            kinds="",
            largest=LARGEST,
            instead="type its path instead",
        )
        button.layout = widgets.Layout(width="26rem", max_width="100%", margin="0 0 8px 0")
        return button

    def _buttons(self) -> dict[str, widgets.Button]:
        others = {"make": "Make it of the donor's", "again": "Look again", "back": "Back one step"}
        said = {**ENTER, **others, "anew": ANEW}
        made = {
            name: widgets.Button(description=label, layout={"width": "auto"})
            for name, label in said.items()
        }
        for step in ENTER:
            made[step].on_click(lambda _, step=step: self._enter(step))
        made["make"].on_click(lambda _: self._make())
        made["again"].on_click(lambda _: self._show())
        made["back"].on_click(lambda _: self._go(lambda: take_back(self._stood())))
        made["anew"].on_click(lambda _: self._anew())
        return made

    def _stood(self) -> WriteState:
        """Where the walk stands. Raises RepairlibError where that cannot be told now."""
        if self.state is None:
            raise RepairlibError("the step", "it is not known where this stands", "Look again")
        return self.state

    def _enter(self, step: str) -> None:
        self._go(lambda: write_step(self._stood(), self._event(step)))

    def _event(self, step: str) -> WriteEvent:
        """What was done, as the fields of that step say."""
        typed = {name: self.fields[name].value.strip() for name in ASKS[step] if name != "erase"}
        if step == SUPPLY:
            volts, measured = (read_quantity(typed[one], "V").value for one in ASKS[step])
            return WriteEvent(step, volts=volts, measured=measured)
        if step in (GO, ERASED, WRITTEN):
            return WriteEvent(step, found=DONE)
        if step == KEEP_LIST:
            answers = answers_of(self.keeps, typed["keep"], typed["leave"])
            donor = self._donor() or ""
            return WriteEvent(
                step, found=typed["reason"], donor=donor, keeps=self.keeps, answers=answers
            )
        if not typed["file"]:
            raise RepairlibError(step, "no file is named", "its path, or the button below")
        path = path_of(typed["file"]).absolute()
        donor = self._donor() or "" if step == INTENDED else ""
        return WriteEvent(step, path=path, donor=donor, found=typed.get("reason", ""))

    def _donor(self) -> Path | None:
        typed = self.fields["donor"].value
        return path_of(typed).absolute() if typed.strip() else None

    def _go(self, move: Callable[[], WriteState]) -> None:
        """Go on by `move`; what it refuses is told, and all that is typed stays."""
        try:
            state = move()
        except RepairlibError as error:
            self._refuse(error)
            return
        self.state = state
        for name in ("file", "reason"):
            self.fields[name].value = ""
        self.fields["events"].value = events_text(state)  # shows it

    def _make(self) -> None:
        """The donor's image with what is kept put in: a new file, whose path is typed in."""
        try:
            state, donor = self._stood(), self._donor()
            if donor is None:
                raise RepairlibError("the donor", "no file is named", "the path of its image")
            new = read_image(donor)
            made = keep_into(new, read_image(state.old[0].path), state.kept)
            path = keep_image(f"to-write-{Path(new.name).stem}.bin", made.data)
        except RepairlibError as error:
            self._refuse(error)
            return
        self.fields["file"].value = str(path)

    def _chosen(self, name: str, called: str, data: bytes) -> None:
        """Keep a file that was chosen, and let its path stand in its field."""
        try:
            self.fields[name].value = str(keep_image(called, data))
        except RepairlibError as error:
            self._refuse(error)

    def _refuse(self, error: RepairlibError) -> None:
        """Say what could not be done, beside the button that was pressed."""
        self.refused.value = trouble(error)
        self.refused.layout.display = ""

    def _said(self) -> tuple[widgets.HTML, ...]:
        return self.card, self.answer, self.shown, self.refused, self.so_far

    def _anew(self) -> None:
        button = self.buttons["anew"]
        if button.description == ANEW:
            button.description = SURE
            return
        for name in ("file", "reason", "keep", "leave"):
            self.fields[name].value = ""
        self.fields["events"].value = NOTHING_YET

    def _show(self, _change=None) -> None:
        """The card of where the walk stands, and the controls that belong to it."""
        if self.fields["erase"].value is None:
            return  # the options of a list are just being changed
        self.buttons["anew"].description = ANEW
        for said in self._said():
            said.value = ""
        try:
            self.state = self._where()
            self.answer.value = came_html(self.state)
            self.card.value = card_html(self.state)
            self.so_far.value = so_far_html(self.state.events)
            self.keeps = self._list()
            donor, erase = self._donor(), self.fields["erase"].value
            self.shown.value = looked_at_html(self.state, self.keeps, donor, erase)
        except RepairlibError as error:
            self.refused.value = trouble(error)
        self._controls()

    def _where(self) -> WriteState:
        """The state of what is kept: files are looked at again only when it is another one."""
        capacity, kept = read_size(self.fields["chip"].value), self.fields["events"].value
        before, self.state = self.state, None
        if before and before.capacity == capacity and events_text(before) == kept:
            return before
        return write_again(capacity, kept)

    def _list(self) -> tuple[Keep, ...]:
        """What only this board has, once two reads are equal and a donor's image is named."""
        donor, twin = self._donor(), self.fields["twin"].value
        if self.state is None or self.state.step != KEEP_LIST or donor is None:
            return ()
        paths = (self.state.old[0].path, donor, *([path_of(twin)] if twin.strip() else []))
        old, new, *twins = map(read_image, paths)
        given = (old, new, twins)
        if not self._listed or self._listed[0] != given:
            self._listed = (given, keep_list(old, new, twins))
        return self._listed[1]

    def _controls(self) -> None:
        state = self.state
        due = state.takes if state else ()
        begun = self.fields["events"].value != NOTHING_YET
        asked = {name for step in due for name in ASKS[step]}
        made = bool(state and INTENDED in due and self._donor())
        shown = {"make": made, "again": begun and state is None, "back": begun, "anew": begun}
        for name, button in self.buttons.items():
            button.layout.display = "" if shown.get(name, name in due) else "none"
        for name, field in self.fields.items():
            if name not in ("chip", "events"):
                field.layout.display = "" if name in asked else "none"
        for name, choose in self.choose.items():
            choose.layout.display = "" if name in asked else "none"
        for said in self._said():
            said.layout.display = "" if said.value else "none"
        self.buttons["back"].disabled = not (state and may_take_back(state))
        self.fields["chip"].disabled = self.keeping.again.disabled = begun


def write_plan(chip: str = "64 KiB", kept: str = "write plan") -> WritingPanel:
    """The walk, ready to be shown, for a chip of that capacity, as typed."""
    return WritingPanel(chip, kept)
