"""Life view: choose a rating, turn up the heat, and see how long the part lasts.

The panel is a thin view. The life comes from `repairlib.health`, the chart from
`repairlib.show.charts`.
"""

from __future__ import annotations

from repairlib.core.errors import RepairlibError
from repairlib.core.html import fold, listed, picture, told
from repairlib.faces.panels.fields import FieldPanel, Fields
from repairlib.faces.panels.look import trouble
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
SIZE = Fields("9rem", "26rem")


def life_view(temperature: int = 45, kept: str = "life") -> FieldPanel:
    """The life panel, ready to be shown. `temperature`: of the air at first, 25 to 115 °C.
    kept: the name under which what is chosen is kept.

    Its parts: `rating`, `temperature`, `ripple`, `voltage`; then `answer` and `chart`.

    >>> view = life_view()
    >>> view.temperature.value = 65
    >>> "3.7 years" in view.answer.value
    True
    """
    fields = {
        "rating": SIZE.choice("The part is rated", tuple(RATINGS), "2000 h at 105 °C, aluminium"),
        "temperature": SIZE.slider("Air around it, °C", temperature, 25, 115),
        "ripple": SIZE.slider("Ripple, % of rated", 100, 0, 150),
        "voltage": SIZE.slider("Voltage, % of rated", 100, 0, 120),
    }
    return FieldPanel(fields, lived, ("answer", "chart"), beside=("chart",), kept=kept)


def lived(rating: str, temperature: int, ripple: int, voltage: int) -> tuple[str, str]:
    """The life and its chart, as HTML; the chart is drawn also where the life is refused."""
    hours, celsius, family = RATINGS[rating]
    air = float(temperature)
    try:
        finding = expected_life(
            hours * 3600.0,
            air,
            family,
            float(celsius),
            ripple=float(ripple),
            voltage=float(voltage),
        )
        answer = life_html(finding)
    except RepairlibError as error:
        answer = trouble(error)
    part = RatedLife(rating.partition(", ")[2], hours, celsius, family)
    return answer, picture(draw_life([part], air if air <= celsius else None))


def life_html(finding) -> str:
    """A life in words, with its working and notes folded under it."""
    years = "15 years or more" if finding.years >= 15 else f"{finding.values['years']} years"
    headline = f"{years}, always on"
    more = fold("Working and notes", listed(finding.working, "ol") + listed(finding.notes))
    return told("right", headline, [f"Expect {finding.from_to}."], more)
