"""Tune a hot-air recipe: three stages, a preheater, and the profile judged as one moves a slider.

A thin view: the profile comes from `repairlib.heat.hot_air`, the verdict from
`repairlib.heat.reflow`, the chart from `repairlib.show.reflow_chart`.
"""

from __future__ import annotations

import ipywidgets as widgets

from repairlib.core.html import fold, listed, picture, state_of, told
from repairlib.core.sources import source
from repairlib.faces.panels.fields import FieldPanel, Fields
from repairlib.faces.panels.look import words
from repairlib.heat import (
    HEAT,
    PASS,
    Judgement,
    Recipe,
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
WIDE = Fields("8.5rem", "27rem")
SLIM = Fields("4rem", "16.5rem")


class HotAirTuner(FieldPanel):
    """`stages` holds three triples of sliders: seconds, air in °C, flow in %. `answer`, `chart`."""

    def __init__(
        self, start=START, preheater: int = 150, part: str = "small part", kept: str = "hot air"
    ):
        asked = {
            "package": WIDE.choice("Solder and part", tuple(PARTS)),
            "part": WIDE.choice("Heat it takes", tuple(HEAT), part),
            "preheater": WIDE.slider("Preheater, °C", preheater, 40, 220, 5),
            "distance": WIDE.slider("Nozzle away, mm", 10, 2, 40),
        }
        self.stages = [
            (
                SLIM.slider("seconds", seconds, 5, 240, 5),
                SLIM.slider("air, °C", air, 100, 500, 5),
                SLIM.slider("flow, %", flow, 0, 100, 5),
            )
            for seconds, air, flow in start
        ]
        sliders = {
            f"{name}, {slider.description}": slider
            for name, stage in zip(NAMES, self.stages, strict=True)
            for slider in stage
        }
        super().__init__(asked | sliders, tuned, ("answer", "chart"), kept=kept)
        columns = [
            widgets.VBox([words(f'<div class="rl-head">{place}. {name}</div>'), *stage])
            for place, (name, stage) in enumerate(zip(NAMES, self.stages, strict=True), 1)
        ]
        flow = widgets.Layout(flex_flow="row wrap")
        package, heat, *others = asked.values()
        rows = [widgets.HBox(row, layout=flow) for row in ([package, heat], others, columns)]
        seen = widgets.VBox([self.chart, self.answer])
        seen.add_class("rl-beside")
        self.children = (self.children[0], *rows, self.keeping.strip, seen)


def hot_air_tuner() -> HotAirTuner:
    """The tuning panel, with a recipe that does not pass yet."""
    return HotAirTuner()


def tuned(
    package: str, part: str, preheater: int, distance: int, **sliders: int
) -> tuple[str, str]:
    """The verdict and the profile of a recipe, as HTML; `sliders` holds stage after stage."""
    numbers = [float(value) for value in sliders.values()]
    stages = tuple(Stage(*numbers[first : first + 3]) for first in range(0, len(numbers), 3))
    profile = play(Recipe(stages, float(preheater), float(distance), part))
    judged = judge_profile(profile, package_limits(*PARTS[package]))
    return verdict_html(judged), picture(draw_reflow(judged))


def verdict_html(judged: Judgement) -> str:
    """The verdict on a recipe, and what does not pass."""
    open_ones = [str(one) for one in judged.criteria.values() if one.verdict != PASS]
    headline = "The profile passes." if not open_ones else f"The profile: {judged.verdict}."
    state = state_of(judged.verdict)
    told_with = (*judged.parts()["notes"], str(source("hot-air model")))
    return told(state, headline, open_ones, fold("Notes", listed(told_with)))
