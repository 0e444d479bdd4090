"""The recipe simulator: its exponential against the textbook, its knobs, its refusals."""

import numpy as np
import pytest

from repairlib.core.errors import RepairlibError
from repairlib.heat.analytic import lumped
from repairlib.heat.hot_air import HEAT, Recipe, Stage, air_at_part, play
from repairlib.heat.reflow import judge_profile
from repairlib.heat.reflow_limits import standard_limits

GOOD = (Stage(120, 250, 30), Stage(75, 390, 60))


@pytest.mark.from_memory("lumped body, T = Ta + (T0 - Ta) exp(-t/tau), worked by hand")
def test_lumped_bodies():
    """A chip of 0.5 g: tau 12.5 s, 217 °C at 14.97 s. One of 3 g: 450 s, 60 °C at 572.8 s."""
    assert lumped(25, 300, 0.5e-3 * 900 / (80 * 4.5e-4), 14.97) == pytest.approx(217, abs=0.05)
    assert lumped(150, 25, 3e-3 * 900 / (10 * 6e-4), 572.8) == pytest.approx(60, abs=0.01)


def test_steps_do_not_change_the_answer():
    """One stage of 120 s is the same as two of 60 s."""
    whole = play(Recipe((Stage(120, 250, 30), Stage(60, 380, 60))))
    halves = play(Recipe((Stage(60, 250, 30), Stage(60, 250, 30), Stage(60, 380, 60))))
    assert whole.celsius == pytest.approx(halves.celsius)


@pytest.mark.parametrize("part", HEAT)
def test_some_recipe_passes_for_every_part(part):
    """A learner's search by hand cannot be hopeless."""
    recipes = {
        "small part": GOOD,
        "large part": (Stage(95, 225, 30), Stage(90, 270, 40), Stage(65, 410, 60)),
        "on a ground plane": (Stage(100, 280, 60), Stage(70, 290, 60), Stage(70, 405, 80)),
    }
    judged = judge_profile(play(Recipe(recipes[part], part=part)), standard_limits("Pb-free", 260))
    assert judged.verdict == "pass", str(judged)


@pytest.mark.parametrize(
    "hotter",
    [
        Recipe((Stage(100, 320, 30),)),
        Recipe((Stage(100, 300, 60),)),
        Recipe((Stage(100, 300, 30),), preheater=180),
        Recipe((Stage(100, 300, 30),), distance=5),
        Recipe((Stage(140, 300, 30),)),
    ],
)
def test_every_knob_turns_the_right_way(hotter):
    plain = play(Recipe((Stage(100, 300, 30),)))
    assert play(hotter).celsius.max() > plain.celsius.max()


def test_a_log_ends_cool_and_rises_in_time():
    profile = play(Recipe((Stage(30.5, 300, 30),)))
    assert profile.celsius[-1] < 60
    assert (np.diff(profile.seconds) > 0).all()


def test_the_nozzle_far_away():
    assert air_at_part(380, 5) == 380
    assert air_at_part(380, 65) == pytest.approx(25 + 355 / np.e)


@pytest.mark.parametrize(
    "recipe",
    [
        Recipe(()),
        Recipe((Stage(0, 300, 30),)),
        Recipe((Stage(-5, 300, 30),)),
        Recipe((Stage(10, 900, 30),)),
        Recipe((Stage(10, 300, 130),)),
        Recipe((Stage(10, float("nan"), 30),)),
        Recipe((Stage(10, "hot", 30),)),
        Recipe(GOOD, preheater=400),
        Recipe(GOOD, distance=0),
        Recipe(GOOD, part="a whale"),
    ],
)
def test_recipes_that_cannot_be(recipe):
    with pytest.raises(RepairlibError, match="Accepted"):
        play(recipe)
