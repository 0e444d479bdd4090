"""Measuring: what a meter sees on the board, and what a reading is worth against its limits.

Both panels are thin views. The readings come from `repairlib.health`, the pictures from
`repairlib.show`, the cautions from `repairlib.core.safety`.
"""

from __future__ import annotations

from repairlib.core import html
from repairlib.core.decide import NON_BINARY, RULES
from repairlib.core.finding import Finding, spoken
from repairlib.core.html import picture, state_of, told
from repairlib.core.quantity import read_quantity
from repairlib.core.safety import caution
from repairlib.faces.panels.cell_table import CellTable
from repairlib.faces.panels.fields import FieldPanel, Fields
from repairlib.faces.panels.look import words
from repairlib.health import (
    PARALLEL,
    PART_COLUMNS,
    SERIES,
    in_circuit_reading,
    judge_reading,
    read_neighbourhood,
)
from repairlib.learn import explain
from repairlib.show.circuits import draw_neighbourhood
from repairlib.show.intervals import draw_intervals

SIZE = Fields("9rem", "26rem")
NAMES = {"esr": "ESR"}
DEMO = "part | from | to | value | more\nC1 | a | b | 100 µF | 5 Ω\n"
DEMO += "C2 | a | b | 100 µF | 0.1 Ω\nR1 | a | b | 10 kΩ | "
ROWS = 7
HOW = """The parts nearby. Points with the same letter are joined by copper. Under <em>more</em>:
the ESR of a capacitor, the winding resistance of an inductor. Test frequency 0 is an ohmmeter."""
BOARD_WORDS = ("ESR", "impedance", "series", "parallel")
JUDGING_WORDS = ("digits", "interval", "guard band", "OL")


def on_the_board(
    parts: str = DEMO, part: str = "C1", frequency: str = "100 kHz", kept: str = "on the board"
) -> FieldPanel:
    """The panel of a meter on a board: the parts nearby in a table, see health.neighbourhood.

    Its parts: `parts`, `part`, `frequency`, `model`; then `answer`, `picture`. The picture of what
    was last understood stays while a row cannot be read. What is typed is kept under the
    name `kept`.

    >>> panel = on_the_board(DEMO, "C1", "100 kHz")
    >>> "98.0" in panel.answer.value
    True
    """
    fields = {
        "parts": CellTable(PART_COLUMNS, ROWS, parts),
        "part": SIZE.text("Probes on", part),
        "frequency": SIZE.text("Test frequency", frequency),
        "model": SIZE.choice("Meter's model", (SERIES, PARALLEL), SERIES),
    }
    rules = words(caution("stored charge").folded() + explain(*BOARD_WORDS).folded())
    panel = FieldPanel(
        fields, measured, keeps=True, above=[words(html.soft(HOW))], below=[rules], kept=kept
    )
    panel.stand_beside(panel.picture, panel.answer)
    return panel


def measured(parts: str, part: str, frequency: str, model: str) -> tuple[str, str]:
    """What the meter shows, and the circuit, as HTML."""
    finding = in_circuit_reading(parts, part, frequency, model)
    circuit = draw_neighbourhood(read_neighbourhood(parts), part)
    return board_html(finding), picture(circuit)


def judging(
    reading: str = "0.97 Ω",
    percent: str = "2",
    digits: str = "3",
    limit_low: str = "",
    limit_high: str = "1 Ω",
    kept: str = "judging",
) -> FieldPanel:
    """The panel of one reading against its limits. All values are text, as typed.

    What is typed is kept under the name `kept`.

    Its parts: a field for each value of the calculator, then `answer`, `picture`.

    >>> panel = judging("0.97 Ω", "2", "3", "", "1 Ω")
    >>> "cannot tell" in panel.answer.value
    True
    """
    fields = {
        "reading": SIZE.text("The meter shows", reading),
        "percent": SIZE.text("± % of reading", percent),
        "digits": SIZE.text("and digits", digits),
        "limit_low": SIZE.text("At least", limit_low),
        "limit_high": SIZE.text("At most", limit_high),
        "rule": SIZE.choice("Decision rule", tuple(RULES), NON_BINARY),
    }
    meant = words(explain(*JUDGING_WORDS).folded())
    return FieldPanel(fields, judged, below=[meant], kept=kept)


def judged(
    reading: str, percent: str, digits: str, limit_low: str, limit_high: str, rule: str
) -> tuple[str, str]:
    """The verdict, and the reading beside its limits, as HTML."""
    finding = judge_reading(reading, percent, digits, limit_low, limit_high, rule)
    shown = [finding.values.get(end) for end in ("low", "high")]
    if None in shown:  # OL or < 0.1 has no interval to draw
        return judged_html(finding), ""
    unit = shown[0].unit
    low, high = (
        read_quantity(limit, unit or None).value if limit.strip() else None
        for limit in (limit_low, limit_high)
    )
    bars = [(reading, *shown)]
    drawn = draw_intervals(bars, low, high, unit=unit, rule=rule)
    return judged_html(finding), picture(drawn)


def board_html(finding: Finding) -> str:
    """What the meter shows on the board beside what it would show on the part alone."""
    names = [name for name in finding.values if not name.endswith("_alone")]
    look = 'style="text-align:left;padding:2px 24px 2px 0"'
    rows = [
        html.row(
            (NAMES.get(name, spoken(name)), finding.values[name], finding.values[name + "_alone"]),
            look,
            first="th",
        )
        for name in names
    ]
    head = html.row(("", "on the board", "the part alone"), look, "th")
    notes = "".join(html.soft(html.text(f"{note}.")) for note in finding.notes)
    working = html.fold("Working", html.listed(finding.working, "ol"))
    return html.table(rows, head) + notes + html.sources(finding.sources) + working


def judged_html(finding: Finding) -> str:
    """The verdict with its reason; folded, how it was worked out and where the rule stands."""
    verdict, reason = finding.verdict or "", finding.reason or ""
    steps = html.listed([*finding.working, *(f"{note}." for note in finding.notes)])
    more = html.fold("Working", steps + html.sources(finding.sources))
    return told(state_of(verdict), verdict.capitalize(), [reason], more)
