"""Measuring: what a meter sees on the board, and what a reading is worth against its limits.

Both panels are thin views. The readings come from `repairlib.health`, the pictures from
`repairlib.show`, the cautions from `repairlib.core.safety`.
"""

from __future__ import annotations

from html import escape

import ipywidgets as widgets

from repairlib.core.decide import FAIL, NON_BINARY, PASS, RULES
from repairlib.core.errors import RepairlibError
from repairlib.core.finding import Finding, spoken
from repairlib.core.quantity import read_quantity
from repairlib.core.safety import caution
from repairlib.core.sources import source
from repairlib.faces.panels.look import Panel, picture_html, told, trouble, words
from repairlib.health import PARALLEL, SERIES, in_circuit_reading, judge_reading, read_neighbourhood
from repairlib.show.circuits import draw_neighbourhood
from repairlib.show.intervals import draw_intervals

WIDE = widgets.Layout(width="26rem", max_width="100%")
LABELS = {"description_width": "9rem"}
NAMES = {"esr": "ESR"}
DEMO = "C1 a b 100u esr=5\nC2 a b 100u esr=0.1\nR1 a b 10k"


class OnTheBoard(Panel):
    """The panel's parts: `lines`, `part`, `frequency`, `model`; then `answer`, `picture`.

    >>> panel = OnTheBoard(DEMO, "C1", "100 kHz")
    >>> "98.0" in panel.answer.value
    True
    """

    def __init__(self, lines: str, part: str, frequency: str):
        self.lines = widgets.Textarea(
            value=lines, rows=6, description="Parts nearby", layout=WIDE, style=LABELS
        )
        self.part = _text("Probes on", part)
        self.frequency = _text("Test frequency", frequency)
        self.model = _choice("Meter's model", (SERIES, PARALLEL), SERIES)
        self.answer, self.picture = words(), words()
        fields = (self.lines, self.part, self.frequency, self.model)
        how = words(
            '<div class="rl-soft">A line: name, two nodes, value. A capacitor may have '
            "<code>esr=</code>, an inductor <code>dcr=</code>. Test frequency 0 is an ohmmeter."
            "</div>"
        )
        super().__init__(how, *fields, self.answer, self.picture, _cautions("stored charge"))
        for field in fields:
            field.observe(self._update, "value")
        self._update()

    def _update(self, _change=None) -> None:
        try:
            typed = (self.lines.value, self.part.value, self.frequency.value, self.model.value)
            finding = in_circuit_reading(*typed)
            picture = draw_neighbourhood(read_neighbourhood(typed[0]), typed[1])
        except RepairlibError as error:
            self.answer.value = trouble(error)
            return  # the picture of what was last understood stays
        self.answer.value = board_html(finding)
        self.picture.value = picture_html(picture)


class Judging(Panel):
    """The panel's parts: a field for each value of the calculator, then `answer`, `picture`.

    >>> panel = Judging("0.97 Ω", "2", "3", "", "1 Ω")
    >>> "cannot tell" in panel.answer.value
    True
    """

    def __init__(self, reading: str, percent: str, digits: str, limit_low: str, limit_high: str):
        self.reading = _text("The meter shows", reading)
        self.percent = _text("± % of reading", percent)
        self.digits = _text("and digits", digits)
        self.limit_low = _text("At least", limit_low)
        self.limit_high = _text("At most", limit_high)
        self.rule = _choice("Decision rule", tuple(RULES), NON_BINARY)
        self.answer, self.picture = words(), words()
        meter = (self.reading, self.percent, self.digits)
        limits = (self.limit_low, self.limit_high, self.rule)
        super().__init__(*meter, *limits, self.answer, self.picture)
        for field in (*meter, *limits):
            field.observe(self._update, "value")
        self._update()

    def _update(self, _change=None) -> None:
        limits = (self.limit_low.value, self.limit_high.value)
        typed = (self.reading.value, self.percent.value, self.digits.value, *limits)
        try:
            finding = judge_reading(*typed, self.rule.value)
        except RepairlibError as error:
            self.answer.value, self.picture.value = trouble(error), ""
            return
        unit = finding.low.unit
        low, high = (
            read_quantity(text, unit or None).value if text.strip() else None for text in limits
        )
        bar = [(self.reading.value, finding.low, finding.high)]
        self.answer.value = judged_html(finding)
        picture = draw_intervals(bar, low, high, unit=unit, rule=self.rule.value)
        self.picture.value = picture_html(picture)


def on_the_board(lines: str = DEMO, part: str = "C1", frequency: str = "100 kHz") -> OnTheBoard:
    """The panel of a meter on a board: the parts nearby as text, see health.neighbourhood."""
    return OnTheBoard(lines, part, frequency)


def judging(
    reading: str = "0.97 Ω",
    percent: str = "2",
    digits: str = "3",
    limit_low: str = "",
    limit_high: str = "1 Ω",
) -> Judging:
    """The panel of one reading against its limits. All values are text, as typed."""
    return Judging(reading, percent, digits, limit_low, limit_high)


def board_html(finding: Finding) -> str:
    """What the meter shows on the board beside what it would show on the part alone."""
    names = [name for name in finding.values if not name.endswith("_alone")]
    rows = "".join(
        f"<tr>{_cells('th', NAMES.get(name, spoken(name)))}"
        f"{_cells('td', finding.values[name], finding.values[name + '_alone'])}</tr>"
        for name in names
    )
    head = f"<tr>{_cells('th', '', 'on the board', 'the part alone')}</tr>"
    steps = "".join(f"<li>{escape(step)}</li>" for step in finding.working)
    notes = "".join(f'<div class="rl-soft">{escape(note)}.</div>' for note in finding.notes)
    return (
        f"<table>{head}{rows}</table>{notes}{_sources(finding)}"
        f"<details><summary>Working</summary><ol>{steps}</ol></details>"
    )


def judged_html(finding: Finding) -> str:
    """The verdict with its reason and working."""
    state = {PASS: "right", FAIL: "wrong"}.get(finding.verdict, "cannot read")
    says = [finding.reason, *finding.working, *(f"{note}." for note in finding.notes)]
    return told(state, finding.verdict.capitalize(), says, _sources(finding))


def _cells(tag: str, *texts: object) -> str:
    style = "text-align:left;padding:2px 24px 2px 0"
    return "".join(f'<{tag} style="{style}">{escape(str(text))}</{tag}>' for text in texts)


def _sources(finding: Finding) -> str:
    titles = "<br>".join(f"Source: {escape(str(source(key)))}" for key in finding.sources)
    return f'<div class="rl-soft">{titles}</div>'


def _cautions(*keys: str) -> widgets.HTML:
    return words(f"<details><summary>Cautions</summary>{caution(*keys)._repr_html_()}</details>")


def _text(label: str, value: str) -> widgets.Text:
    return widgets.Text(value=value, description=label, layout=WIDE, style=LABELS)


def _choice(label: str, options: tuple[str, ...], value: str) -> widgets.Dropdown:
    return widgets.Dropdown(
        options=options, value=value, description=label, layout=WIDE, style=LABELS
    )
