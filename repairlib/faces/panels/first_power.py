"""The first power-up as a walk: one check at a time, a reading, the next check or a stop.

A thin view: checks, verdicts and ends come from `repairlib.power_up`. Every reading is kept at
once, so that the walk stands where it stood when the page is opened again.
"""

from __future__ import annotations

import json
from dataclasses import asdict

import ipywidgets as widgets

from repairlib.core.errors import RepairlibError
from repairlib.core.html import Html, fold, listed, soft, text, told
from repairlib.core.safety import caution
from repairlib.core.wording import sentence
from repairlib.faces.panels.cell_table import CellTable
from repairlib.faces.panels.fields import Fields
from repairlib.faces.panels.keeping import Keeping
from repairlib.faces.panels.look import Panel, trouble, words
from repairlib.power_up import (
    CAUSE,
    HAND_ON,
    LIMITED,
    LOOKS,
    POWER_OFF,
    RAIL_COLUMNS,
    SUPPLIES,
    VERIFY,
    Reading,
    State,
    may_take_back,
    read_reading,
    read_setup,
    step,
    take_back,
    walked,
)

SIZE = Fields("9rem", "24rem")
RAILS = "rail | tolerance | ripple\n+5 V | 5 % | 50 mV"
ROWS = 3
WHERE = """For what a bench supply feeds, up to 60 V dc. The mains side is licensed practice: it
stays covered, its plug out."""
ALWAYS = ("mains", "stored charge", "heat and fire")
ANEW, SURE = "Begin a new walk", "Sure? All readings go"


class FirstPowerUp(Panel):
    """The walk. `setup` holds the fields of the set, `typed` the readings and what is being typed.

    `card` says what to do, `answer` what the last reading came to, `state` where the walk stands;
    `buttons` holds the buttons by name.

    >>> panel = FirstPowerUp()
    >>> for name in ("as it should be", "as it should be", "not as it should be"):
    ...     panel.buttons[name].click()
    >>> panel.state.do[:14], panel.buttons["back"].disabled
    ('Find the cause', True)
    """

    def __init__(
        self,
        voltage: str = "11 V",
        current: str = "150 mA",
        rails: str = RAILS,
        supply: str = LIMITED,
        kept: str = "first power-up",
    ):
        self.setup = {
            "voltage": SIZE.text("Volts of the set", voltage),
            "current": SIZE.text("Current, expected", current),
            "supply": SIZE.choice("You have", SUPPLIES, supply),
            "rails": CellTable(RAIL_COLUMNS, ROWS, rails),
        }
        self.reading = SIZE.text("Reading", "")
        self.percent = SIZE.text("± % of the meter", "1")
        self.cause = SIZE.lines("Cause", "", 3)
        self.cause.placeholder = "What it was, and what was done"
        self.readings = widgets.Text(value="[]")  # kept, never shown
        self.typed = {
            "reading": self.reading,
            "percent": self.percent,
            "cause": self.cause,
            "readings": self.readings,
        }
        self.card, self.answer, self.so_far = words(), words(), words()
        self.buttons = self._buttons()
        self.state: State | None = None
        self.keeping = Keeping(kept, self.setup)
        self.keeping_walk = Keeping(f"{kept} {voltage} {current} {supply}", self.typed)
        for field in (*self.setup.values(), self.readings):
            field.observe(self._show, "value")
        row = widgets.Layout(flex_flow="row wrap")
        keys = widgets.HBox(list(self.buttons.values()), layout=row)
        walk = [self.answer, self.card, self.reading, self.percent, self.cause, keys, self.so_far]
        walk.append(self.keeping_walk.note)
        set_up = [words(soft(text(WHERE))), *self.setup.values(), self.keeping.strip]
        columns = [_column(set_up, "0 1 26rem"), _column(walk, "1 1 22rem")]
        always = words(caution(*ALWAYS).in_brief())
        super().__init__(widgets.HBox(columns, layout=row), always)
        self._show()

    def _buttons(self) -> dict[str, widgets.Button]:
        said = dict.fromkeys(LOOKS, "") | {
            "enter": "Enter the reading",
            POWER_OFF: "Power is off, plug out",
            CAUSE: "Cause found and put right",
            HAND_ON: "Hand it on",
            "back": "Back one check",
            "anew": ANEW,
        }
        made = {
            name: widgets.Button(description=label or name.capitalize(), layout={"width": "auto"})
            for name, label in said.items()
        }
        for name in LOOKS:
            made[name].on_click(lambda _, found=name: self._take(self._key(), found))
        made["enter"].on_click(lambda _: self._measured())
        made[POWER_OFF].on_click(lambda _: self._take(POWER_OFF))
        for name in (CAUSE, HAND_ON):
            made[name].on_click(lambda _, name=name: self._take(name, self.cause.value))
        made["back"].on_click(lambda _: self._back())
        made["anew"].on_click(lambda _: self._anew())
        return made

    def _key(self) -> str:
        return self.state.check.key if self.state and self.state.check else ""

    def _take(self, key: str, found: str = "") -> None:
        self._go(lambda state: step(state, Reading(key, found)))

    def _measured(self) -> None:
        typed, share = self.reading.value, self.percent.value
        self._go(lambda state: step(state, read_reading(state.check, typed, share)))

    def _back(self) -> None:
        self._go(take_back)

    def _go(self, move) -> None:
        """Go on by `move`; what it refuses is told, and all that is typed stays."""
        if self.state is None:
            return
        try:
            state = move(self.state)
        except RepairlibError as error:
            self.answer.value = trouble(error)
            self._controls()
            return
        self.reading.value = self.cause.value = ""
        self._keep(state)

    def _keep(self, state: State) -> None:
        self.readings.value = json.dumps([asdict(one) for one in state.readings])

    def _anew(self) -> None:
        button = self.buttons["anew"]
        if button.description == ANEW:
            button.description = SURE
            return
        self.reading.value = self.cause.value = ""
        self.readings.value = "[]"

    def _show(self, _change=None) -> None:
        """The card of where the walk stands, and the controls that belong to it."""
        if None in (field.value for field in self.setup.values()):
            return  # the options of a list are just being changed
        self.buttons["anew"].description = ANEW
        try:
            self.state = self._walked()
        except RepairlibError as error:
            self.state = None
            self.answer.value, self.card.value, self.so_far.value = trouble(error), "", ""
        else:
            self.answer.value = came_to_html(self.state)
            self.card.value = card_html(self.state)
            self.so_far.value = so_far_html(self.state)
        self._controls()

    def _walked(self) -> State:
        setup = read_setup(**{name: field.value for name, field in self.setup.items()})
        try:
            readings = [Reading(**one) for one in json.loads(self.readings.value)]
        except (ValueError, TypeError):
            wrong = "what was kept is no walk"
            raise RepairlibError(self.readings.value, wrong, f"the button {ANEW}") from None
        return walked(setup, readings)

    def _controls(self) -> None:
        state = self.state
        check, stop = (state.check, state.stop) if state else (None, None)
        powered = bool(state and state.powered)
        shown = {
            "enter": bool(check and check.unit),
            POWER_OFF: bool((check or stop) and powered),
            CAUSE: bool(stop and not powered),
            HAND_ON: bool((check or stop) and not powered),
            "back": bool(state),
            "anew": True,
        } | dict.fromkeys(LOOKS, bool(check and not check.unit))
        for name, button in self.buttons.items():
            button.layout.display = "" if shown[name] else "none"
        for said in (self.answer, self.card, self.so_far):
            said.layout.display = "" if said.value else "none"
        for field in (self.reading, self.percent):
            field.layout.display = "" if shown["enter"] else "none"
        self.cause.layout.display = "" if shown[CAUSE] else "none"
        self.buttons["back"].disabled = not (state and may_take_back(state))
        begun = self.readings.value != "[]"
        self.buttons["anew"].disabled = not begun
        self.keeping.again.disabled = begun
        rails = self.setup["rails"]
        for field in (
            *list(self.setup.values())[:3],
            *(cell for row in rails.cells for cell in row),
        ):
            field.disabled = begun


def first_power_up(**start: str) -> FirstPowerUp:
    """The walk, ready to be shown. `start` sets the set, as `voltage="9 V"`."""
    return FirstPowerUp(**start)


def came_to_html(state: State) -> str:
    """What the last reading came to; "" before the first."""
    if not state.readings:
        return ""
    if state.stop:
        return told("unsafe", f"Stop: {state.stop.why}")
    return soft(text(f"Last: {state.told}."))


def card_html(state: State) -> str:
    """What to do next and why, with the dangers of just this."""
    others = [one for one in state.cautions if one not in ALWAYS]
    more = caution(*others).short() if others else ""
    if state.end:
        headline = "Verify" if state.end == VERIFY else "Hand on"
        return told("partly right", headline, [state.do, sentence(state.why)], more)
    where = ""
    if state.check:
        power = "under power" if state.powered else "no power"
        where = f"{state.at + 1} of {len(state.checks)}: {state.check.stage}, {power}"
    why = "" if state.stop else f"<p>{text(state.why)}</p>"
    head = f'<div style="font-size:1.2em;font-weight:600">{text(state.do)}</div>'
    return Html(f'<div role="status">{soft(text(where))}{head}{why}</div>{more}')


def so_far_html(state: State) -> str:
    """Every reading so far, folded."""
    if not state.readings:
        return ""
    return fold(f"Read so far: {len(state.readings)}", listed(state.so_far, "ol"))


def _column(children: list[widgets.Widget], room: str) -> widgets.VBox:
    """A column that takes so much room, and stands below its neighbour on a narrow page."""
    return widgets.VBox(children, layout=widgets.Layout(flex=room, min_width="0"))
