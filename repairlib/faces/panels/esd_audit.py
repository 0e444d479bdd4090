"""Bench audit: what was measured, line by line, and a verdict on each by the edition chosen.

The panel is a thin view; the verdicts come from `repairlib.esd.audit`.
"""

from __future__ import annotations

import ipywidgets as widgets

from repairlib.core.decide import CANNOT_TELL, FAIL, PASS
from repairlib.core.html import LEFT, fold, row, sign_of, soft, state_of, table, text, told
from repairlib.core.tables import demo_path
from repairlib.esd import EDITIONS, Audit, audit_bench, items
from repairlib.faces.panels.fields import FieldPanel, Fields
from repairlib.faces.panels.look import words

SIZE = Fields("9rem", "44rem")
HOW = """A line: the thing, a colon, the reading. <code>at 100 V</code> is what the meter measured
with, <code>walk 60 V</code> the body voltage of a walking test."""
KNOWN = "Things it knows"
_HEADLINES = {
    PASS: "Nothing fails by this edition. Test the strap again tomorrow",
    FAIL: "Something fails: mend it before parts come out of their bags",
    CANNOT_TELL: "Cannot tell yet: measure what is missing",
}


def bench_audit(
    lines: str | None = None, edition: str = EDITIONS[0], kept: str = "bench audit"
) -> FieldPanel:
    """The audit panel, ready to be shown; without lines it opens on the demo bench.

    What is typed is kept under the name `kept`.

    Its parts: `lines`, `edition`, `uncertainty`; then `answer`.

    >>> panel = bench_audit("strap: 40 MΩ", "S20.20-2021")
    >>> "is not below" in panel.answer.value
    True
    """
    if lines is None:
        lines = demo_path("bench-audit.txt").read_text(encoding="utf-8")
    fields = {
        "lines": SIZE.lines("Measured", lines, 9),
        "edition": SIZE.choice("Judge by", EDITIONS, edition),
        "uncertainty": widgets.BoundedFloatText(
            value=5.0,
            min=0,
            max=100,
            description="Meter, ± %",
            style={"description_width": SIZE.label},
        ),
    }
    how = soft(HOW + fold(KNOWN, text("; ".join(items()))))
    return FieldPanel(fields, audited, ("answer",), above=[words(how)], kept=kept)


def audited(lines: str, edition: str, uncertainty: float) -> tuple[str]:
    """The audit of what was measured, as HTML."""
    return (audit_html(audit_bench(lines, edition, uncertainty)),)


def audit_html(audit: Audit) -> str:
    """The audit as a table: thing, verdict with its sign, reason, source."""
    rows = [
        (row.item, row.verdict, row.reason, _sources(row.finding) if row.finding else "")
        for row in audit.rows
    ]
    rows += [(item, CANNOT_TELL, "not measured", "") for item in audit.missing]
    top = 'style="text-align:left;vertical-align:top;padding-right:1em;{}"'.format
    looks = (top(""), top("white-space:nowrap;"), top(""), top("opacity:.75;"))
    body = [
        row((item, f"{sign_of(verdict)} {verdict}", reason, where), looks)
        for item, verdict, reason, where in rows
    ]
    head = row(("thing", "verdict", "why", "source"), LEFT, "th")
    headline = f"{_HEADLINES[audit.verdict]} ({audit.edition})"
    return told(state_of(audit.verdict), headline, more=table(body, head))


def _sources(finding) -> str:
    """The sources that state the limit; the common law behind every line is left out."""
    return "; ".join(key for key in finding.sources if key != "common practice")
