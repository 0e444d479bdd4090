"""Life view: choose a rating, turn up the heat, and see how long the part lasts.

The panel is a thin view. The life comes from `repairlib.health`, the chart from
`repairlib.show.charts`.
"""

from __future__ import annotations

from html import escape

import ipywidgets as widgets

from repairlib.core.errors import RepairlibError
from repairlib.faces.panels.look import Panel, picture_html, told, trouble, words
from repairlib.health import expected_life
from repairlib.show.charts import RatedLife, draw_life

# What the chooser shows: (rated hours, rated °C, family).
RATINGS = {
    "2000 h at 85 °C, aluminium": (2000, 85, "aluminium general 85"),
    "1000 h at 105 °C, aluminium": (1000, 105, "aluminium general 105"),
    "2000 h at 105 °C, aluminium": (2000, 105, "aluminium general 105"),
    "5000 h at 105 °C, low impedance": (5000, 105, "aluminium low impedance"),
    "2000 h at 105 °C, polymer": (2000, 105, "polymer radial"),
}
LABELS = {"description_width": "11rem"}
WIDE = widgets.Layout(width="34rem", max_width="100%")


class LifeView(Panel):
    """The panel's parts: `rating`, `temperature`, `ripple`, `voltage`, then `answer` and `chart`.

    >>> view = LifeView()
    >>> view.temperature.value = 65
    >>> "3.7 years" in view.answer.value
    True
    """

    def __init__(self, temperature: int = 45):
        self.rating = widgets.Dropdown(
            options=tuple(RATINGS),
            value="2000 h at 105 °C, aluminium",
            description="The part is rated",
            style=LABELS,
            layout=WIDE,
        )
        self.temperature = _slider("Air around it, °C", temperature, 25, 115)
        self.ripple = _slider("Ripple, % of rated", 100, 0, 150)
        self.voltage = _slider("Voltage, % of rated", 100, 0, 120)
        self.answer, self.chart = words(), words()
        fields = (self.rating, self.temperature, self.ripple, self.voltage)
        for field in fields:
            field.observe(self._update, "value")
        super().__init__(*fields, self.answer, self.chart)
        self._update()

    def _update(self, change=None) -> None:
        hours, celsius, family = RATINGS[self.rating.value]
        air = float(self.temperature.value)
        use = {"ripple": float(self.ripple.value), "voltage": float(self.voltage.value)}
        try:
            finding = expected_life(hours * 3600.0, air, family, float(celsius), **use)
            self.answer.value = life_html(finding)
        except RepairlibError as error:
            self.answer.value = trouble(error)
        part = RatedLife(self.rating.value.partition(", ")[2], hours, celsius, family)
        mark = air if air <= celsius else None
        self.chart.value = picture_html(draw_life([part], mark))


def life_view(temperature: int = 45) -> LifeView:
    """The life panel, ready to be shown. `temperature`: of the air at first, 25 to 115 °C."""
    return LifeView(temperature)


def life_html(finding) -> str:
    """A life in words, with its working and notes folded under it."""
    years = f"{finding.values['years']}"
    most = "more than " if finding.years >= 15 else ""
    headline = f"{most}{years} years, always on"
    steps = "".join(f"<li>{escape(step)}</li>" for step in finding.working)
    notes = "".join(f"<li>{escape(note)}</li>" for note in finding.notes)
    more = (
        f"<details><summary>Working and notes</summary><ol>{steps}</ol><ul>{notes}</ul></details>"
    )
    return told("right", headline, [f"Expect {finding.from_to}."], more)


def _slider(description: str, value: int, low: int, high: int) -> widgets.IntSlider:
    return widgets.IntSlider(
        value=value,
        min=low,
        max=high,
        description=description,
        style=LABELS,
        layout=WIDE,
        continuous_update=False,
    )
