"""The head of the bench sheet: what set it is, who works on it, and the boxes of the way there.

What must be dead is ticked in its order. What is left to a qualified person has no box here.
"""

from __future__ import annotations

import re
from pathlib import PurePath

from repairlib.core.html import Html, text
from repairlib.core.limits import TOUCHABLE_DC
from repairlib.core.safety import HAZARDS
from repairlib.recap import Plan
from repairlib.show.sheets.sheet_pieces import BOX

WRITE = '<span class="write"></span>'
_OF_PAPER = {"parts", "part", "list", "board", "map", "capacitors"}
_NAMELESS = ("the list", "My board")  # of what was pasted, and of a map that nobody named
_AT_THE_IRON = ("heat and fire", "fumes and flux", "lead")
_IN_THE_STEPS = ("stored charge", "mains")  # what to do against them are the boxes below
STEPS = (
    ("Plug out", "It lies where you see it."),
    ("Discharged", "Through a resistor made for it."),
    (
        "Measured",
        f"{WRITE} V, a minute later {WRITE} V: next to nothing, twice. "
        f"Above {TOUCHABLE_DC:g} V dc: stop, hand it on.",
    ),
    (
        "Before full power",
        "Supply voltages tested in steps, before the rest gets its parts. Live mains is not yours.",
    ),
    (
        "First power-up",
        "Current-limited supply, glasses on, face away. No such supply? Hand it on.",
    ),
)


def set_name(plan: Plan) -> str:
    """What the set is called, by the names of its list and its board; "" where neither says.

    >>> from repairlib.recap import plan
    >>> set_name(plan("C1,10/16,el", name="desk-radio-parts.csv")), set_name(plan("C1,10/16,el"))
    ('desk radio', '')
    """
    board = plan.board.name.partition(" (")[0] if plan.board is not None else ""
    for name in (plan.name, board):
        words = re.split(r"[\s_-]+", PurePath(name).stem if name == plan.name else name)
        told = " ".join(word for word in words if word.lower() not in _OF_PAPER)
        if told and name not in _NAMELESS:
            return told
    return ""


def head(plan: Plan) -> Html:
    """The title, the fields for name and date, and which list this is."""
    called = text(set_name(plan)) or WRITE
    listed = WRITE if plan.name in _NAMELESS else text(plan.name)
    counted = text(str(plan).removeprefix(f"{plan.name}: "))
    return Html(
        f"<h1>Recap: {called}</h1>"
        f'<p class="fields">Your name {WRITE} Date {WRITE} Device number {WRITE}</p>'
        f'<p class="list">List: <b>{listed}</b>, {counted}.</p>'
    )


def before_work(plan: Plan) -> Html:
    """The cautions of opening it, in short, and the five boxes in their order."""
    special = [key for key in plan.cautions if key not in (*_IN_THE_STEPS, *_AT_THE_IRON)]
    said = [_title_and(key, HAZARDS[key].defer) for key in _IN_THE_STEPS]
    said += [_title_and(key, HAZARDS[key].do[0], HAZARDS[key].defer) for key in special]
    boxes = "".join(f"<li>{BOX} <b>{title}</b><small>{how}</small></li>" for title, how in STEPS)
    return Html(
        f'<p class="caution">⚠ {" ".join(said)}</p>{_handed_on(plan)}'
        f'<ol class="steps" aria-label="In this order">{boxes}</ol>'
    )


def at_the_iron() -> Html:
    """The cautions of soldering, in short."""
    said = (_title_and(key, HAZARDS[key].do[0]) for key in _AT_THE_IRON)
    return Html(f'<p class="caution stays">⚠ {" ".join(said)}</p>')


def _title_and(key: str, *sentences: str) -> str:
    return f"<b>{text(HAZARDS[key].title)}.</b> {text(' '.join(sentences))}"


def _handed_on(plan: Plan) -> str:
    places = list(dict.fromkeys(one.reference for one in plan.all_items if one.handed_on))
    if not places:
        return ""
    return (
        f'<p class="caution"><b>Not yours: {text(", ".join(places))}.</b> A qualified person makes '
        f"these dead, works on them and signs, before you begin: {WRITE}</p>"
    )
