"""Tune a hot-air recipe: three stages, a preheater, and the profile judged as one moves a slider.

A thin view: the profile comes from `repairlib.heat.hot_air`, the verdict from
`repairlib.heat.reflow`, the chart from `repairlib.show.reflow_chart`.
"""

from __future__ import annotations

from html import escape

import ipywidgets as widgets

from repairlib.core.errors import RepairlibError
from repairlib.core.sources import source
from repairlib.faces.panels.look import Panel, picture_html, told, trouble, words
from repairlib.heat import (
    FAIL,
    HEAT,
    PASS,
    Judgement,
    Recipe,
    ReflowLimits,
    Stage,
    judge_profile,
    package_limits,
    play,
)
from repairlib.show.reflow_chart import draw_reflow

# What the chooser shows: solder, thickness in mm, volume in mm³.
PARTS = {
    "lead-free, thin chip (1.0 mm, 200 mm³)": ("Pb-free", 1.0, 200),
    "lead-free, thick connector (3.0 mm, 500 mm³)": ("Pb-free", 3.0, 500),
    "tin-lead, small chip (2.0 mm, 100 mm³)": ("Sn-Pb", 2.0, 100),
}
START = ((60, 200, 20), (60, 300, 30), (40, 400, 80))
NAMES = ("warm up", "preheat", "reflow")
_STATES = {PASS: "right", FAIL: "wrong"}
_LABELS = {"description_width": "8.5rem"}
_WIDE = widgets.Layout(width="27rem", max_width="100%")
_SHORT = {"description_width": "4rem"}
_SLIM = widgets.Layout(width="16.5rem", max_width="100%")


class HotAirTuner(Panel):
    """`stages` holds three triples of sliders: seconds, air in °C, flow in %. `answer`, `chart`."""

    def __init__(self, start=START, preheater: int = 150, part: str = "small part"):
        self.package = widgets.Dropdown(
            options=tuple(PARTS), description="Solder and part", style=_LABELS, layout=_WIDE
        )
        self.part = widgets.Dropdown(
            options=tuple(HEAT),
            value=part,
            description="Heat it takes",
            style=_LABELS,
            layout=_WIDE,
        )
        self.preheater = _slider("Preheater, °C", preheater, 40, 220)
        self.distance = _slider("Nozzle away, mm", 10, 2, 40)
        self.stages = [
            (
                _slider("seconds", seconds, 5, 240, _SHORT, _SLIM),
                _slider("air, °C", air, 100, 500, _SHORT, _SLIM),
                _slider("flow, %", flow, 0, 100, _SHORT, _SLIM),
            )
            for seconds, air, flow in start
        ]
        self.answer, self.chart = words(), words()
        fields = (self.package, self.part, self.preheater, self.distance)
        for field in (*fields, *(one for stage in self.stages for one in stage)):
            field.observe(self._update, "value")
        columns = [
            widgets.VBox([words(f'<div class="rl-head">{place}. {name}</div>'), *stage])
            for place, (name, stage) in enumerate(zip(NAMES, self.stages, strict=True), 1)
        ]
        flow = widgets.Layout(flex_flow="row wrap")
        super().__init__(
            widgets.HBox(fields[:2], layout=flow),
            widgets.HBox(fields[2:], layout=flow),
            widgets.HBox(columns, layout=flow),
            self.answer,
            self.chart,
        )
        self.layout.max_width = "62rem"
        self._update()

    @property
    def recipe(self) -> Recipe:
        """What the sliders say."""
        stages = tuple(Stage(*(float(one.value) for one in stage)) for stage in self.stages)
        return Recipe(
            stages, float(self.preheater.value), float(self.distance.value), self.part.value
        )

    @property
    def limits(self) -> ReflowLimits:
        return package_limits(*PARTS[self.package.value])

    def _update(self, _change=None) -> None:
        try:
            judged = judge_profile(play(self.recipe), self.limits)
        except RepairlibError as error:
            self.answer.value, self.chart.value = trouble(error), ""
            return
        self.answer.value = verdict_html(judged)
        self.chart.value = picture_html(draw_reflow(judged))


def hot_air_tuner() -> HotAirTuner:
    """The tuning panel, with a recipe that does not pass yet."""
    return HotAirTuner()


def verdict_html(judged: Judgement) -> str:
    """The verdict on a recipe, and what does not pass."""
    open_ones = [str(one) for one in judged.criteria.values() if one.verdict != PASS]
    headline = "The profile passes." if not open_ones else f"The profile: {judged.verdict}."
    state = _STATES.get(judged.verdict, "cannot read")
    told_with = (*judged.parts()["notes"], str(source("hot-air model")))
    notes = "".join(f"<li>{escape(note)}</li>" for note in told_with)
    more = f"<details><summary>Notes</summary><ul>{notes}</ul></details>"
    return told(state, headline, open_ones, more)


def _slider(description, value, low, high, style=_LABELS, layout=_WIDE) -> widgets.IntSlider:
    return widgets.IntSlider(
        value=value,
        min=low,
        max=high,
        step=5 if high > 60 else 1,
        description=description,
        style=style,
        layout=layout,
        continuous_update=False,
    )
