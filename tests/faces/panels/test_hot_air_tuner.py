"""The tuning panel: it opens on a recipe that fails, and can be tuned until it passes."""

import pytest

from repairlib.faces.panels.hot_air import PARTS, hot_air_tuner


def test_opens_on_a_recipe_to_repair():
    panel = hot_air_tuner()
    assert "The profile: fail." in panel.answer.value
    assert "<img" in panel.chart.value


def test_can_be_tuned_until_it_passes():
    panel = hot_air_tuner()
    for sliders, values in zip(
        panel.stages, ((60, 250, 30), (60, 250, 30), (75, 390, 60)), strict=True
    ):
        for slider, value in zip(sliders, values, strict=True):
            slider.value = value
    assert "The profile passes." in panel.answer.value


@pytest.mark.parametrize("package", PARTS)
def test_every_part_has_an_answer(package):
    panel = hot_air_tuner()
    panel.package.value = package
    panel.part.value = "on a ground plane"
    assert "The profile" in panel.answer.value
