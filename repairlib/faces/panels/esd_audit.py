"""Bench audit: what was measured, line by line, and a verdict on each by the edition chosen.

The panel is a thin view; the verdicts come from `repairlib.esd.audit`.
"""

from __future__ import annotations

from html import escape

import ipywidgets as widgets

from repairlib.core.decide import CANNOT_TELL, FAIL, PASS
from repairlib.core.errors import RepairlibError
from repairlib.core.tables import demo_path
from repairlib.esd import EDITIONS, Audit, audit_bench, items
from repairlib.faces.panels.look import SIGNS, Panel, told, trouble, words

WIDE = widgets.Layout(width="44rem", max_width="100%")
LABELS = {"description_width": "9rem"}
_STATES = {PASS: "right", FAIL: "wrong", CANNOT_TELL: "cannot read"}
_HEADLINES = {
    PASS: "Nothing fails by this edition. Test the strap again tomorrow",
    FAIL: "Something fails: mend it before parts come out of their bags",
    CANNOT_TELL: "Cannot tell yet: measure what is missing",
}


class BenchAudit(Panel):
    """The panel's parts: `lines`, `edition`, `uncertainty`; `answer`.

    >>> panel = BenchAudit("strap: 40 MΩ", "S20.20-2021")
    >>> "is not below" in panel.answer.value
    True
    """

    def __init__(self, lines: str, edition: str):
        self.lines = widgets.Textarea(
            value=lines, rows=9, description="Measured", layout=WIDE, style=LABELS
        )
        self.edition = widgets.Dropdown(
            options=EDITIONS, value=edition, description="Judge by", layout=WIDE, style=LABELS
        )
        self.uncertainty = widgets.BoundedFloatText(
            value=5.0, min=0, max=100, description="Meter, ± %", style=LABELS
        )
        self.answer = words()
        known = "; ".join(escape(item) for item in items())
        how = words(
            '<div class="rl-soft">A line: the thing, a colon, the reading. <code>at 100 V</code> '
            "is what the meter measured with, <code>walk 60 V</code> the body voltage of a "
            f"walking test.<details><summary>Things it knows</summary>{known}</details></div>"
        )
        fields = (self.lines, self.edition, self.uncertainty)
        for field in fields:
            field.observe(self._update, "value")
        super().__init__(how, *fields, self.answer)
        self._update()

    def _update(self, _change=None) -> None:
        try:
            audit = audit_bench(self.lines.value, self.edition.value, self.uncertainty.value)
        except RepairlibError as error:
            self.answer.value = trouble(error)
            return
        self.answer.value = audit_html(audit)


def bench_audit(lines: str | None = None, edition: str = EDITIONS[0]) -> BenchAudit:
    """The audit panel, ready to be shown; without lines it opens on the demo bench."""
    if lines is None:
        lines = demo_path("bench-audit.txt").read_text(encoding="utf-8")
    return BenchAudit(lines, edition)


def audit_html(audit: Audit) -> str:
    """The audit as a table: thing, verdict with its sign, reason, source."""
    rows = [
        (row.item, row.verdict, row.reason, _sources(row.finding) if row.finding else "")
        for row in audit.rows
    ]
    rows += [(item, CANNOT_TELL, "not measured", "") for item in audit.missing]
    body = "".join(
        f"<tr>{_cell(item)}{_cell(f'{SIGNS[_STATES[verdict]]} {verdict}', 'white-space:nowrap;')}"
        f"{_cell(reason)}{_cell(where, 'opacity:.75;')}</tr>"
        for item, verdict, reason, where in rows
    )
    head = "".join(
        f'<th style="text-align:left">{name}</th>' for name in ("thing", "verdict", "why", "source")
    )
    headline = f"{_HEADLINES[audit.verdict]} ({audit.edition})"
    return told(_STATES[audit.verdict], headline, (), f"<table><tr>{head}</tr>{body}</table>")


def _cell(text: str, style: str = "") -> str:
    return f'<td style="text-align:left;vertical-align:top;{style}">{escape(text)}</td>'


def _sources(finding) -> str:
    """The sources that state the limit; the common law behind every line is left out."""
    return "; ".join(key for key in finding.sources if key != "common practice")
