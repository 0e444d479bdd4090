"""The short table before power: type the ohms of each pair, see where to stop and where to go on.

The panel is a thin view; the verdicts come from `repairlib.connectors`.
"""

from __future__ import annotations

from collections.abc import Mapping

from repairlib.connectors import (
    GO_ON,
    NOT_MEASURED,
    NOT_THERE,
    Checked,
    Row,
    asked_pairs,
    check_pairs,
)
from repairlib.core.html import (
    LEFT,
    SIGNS,
    Html,
    fold,
    listed,
    row,
    sign_of,
    soft,
    table,
    text,
    told,
)
from repairlib.core.safety import caution
from repairlib.core.verdicts import AGAIN, STOP
from repairlib.faces.panels.fields import FieldPanel, Fields
from repairlib.faces.panels.look import words

SIZE = Fields("15rem", "25rem")
CORE = "core rail and ground"
HOW = """Power off, capacitors empty, measured twice. Type what the meter shows: <code>45 Ω</code>,
<code>3.2 kΩ</code>, <code>OL</code>. The set has no such pair? Type <code>not there</code>."""
_STATES = {STOP: "unsafe", AGAIN: "partly right", NOT_MEASURED: "unanswered"}
_HEADLINES = {
    STOP: "Stop: no power. Find what joins them",
    AGAIN: "Measure again",
    NOT_MEASURED: "Not yet: measure what is missing",
    GO_ON: "Go on to the next check: polarity and pin 1 of every plug, by a second person",
}
_SHORT = {
    GO_ON: "→ go on",
    NOT_MEASURED: f"{SIGNS['unanswered']} not yet",
    NOT_THERE: "– not there",
}


def before_power_panel(
    readings: Mapping[str, str] | None = None, leads: str = "0.3 Ω", kept: str = "before power"
) -> FieldPanel:
    """The panel, ready to be shown. `readings` are those typed in at first, by their pairs; with
    them only these pairs are asked for. What is typed is kept under the name `kept`.

    Its parts: `fields["pair 1"]` and so on in the order of the pairs, `leads`, `core_limit` where
    there is a core rail, then `answer`.

    >>> panel = before_power_panel({"neighbouring contacts": "2.1 Ω", "two rails": "OL"})
    >>> "Stop" in panel.answer.value
    True
    """
    if readings is None:
        readings = dict.fromkeys(asked_pairs(), "")
    names = tuple(readings)
    fields = {
        f"pair {number}": SIZE.text(name, readings[name])
        for number, name in enumerate(names, start=1)
    }
    fields["leads"] = SIZE.text("probes held together", leads)
    if CORE in names:
        fields["core_limit"] = SIZE.text("core rail: stop below", "")

    def checked(leads: str, core_limit: str = "", **typed: str) -> tuple[str]:
        measured = dict(zip(names, typed.values(), strict=True))
        return (answer_html(check_pairs(measured, leads, {CORE: core_limit})),)

    held = words(caution("stored charge", "heat and fire").short())
    panel = FieldPanel(fields, checked, ("answer",), above=[words(HOW)], below=[held], kept=kept)
    panel.answer.add_class("rl-beside")
    for field in fields.values():
        field.add_class("rl-stacked")
    return panel


def answer_html(checked: Checked) -> str:
    """The answer for the set, then each pair with its verdict and why."""
    top = 'style="text-align:left;vertical-align:top;padding-right:1em"'
    rows = [row((_named(one), one.reason), top) for one in checked.rows]
    those = [] if checked.verdict == GO_ON else checked.those(checked.verdict)
    head = row(("between", "why"), LEFT, "th")
    notes = next((one.finding.notes for one in checked.rows if one.finding), ())
    return told(
        _STATES.get(checked.verdict, "partly right"),
        _HEADLINES[checked.verdict],
        [f"{'; '.join(those)}."] if those else [],
        table(rows, head)
        + fold("More to know", listed(notes))
        + soft(text("Source: common practice.")),
    )


def _named(one: Row) -> Html:
    """A pair with its verdict under it."""
    return Html(f"{text(one.pair)}<br><strong>{text(_short(one.verdict))}</strong>")


def _short(verdict: str) -> str:
    """A verdict with its sign, in two words."""
    return _SHORT.get(verdict) or f"{sign_of(verdict)} {verdict}"
