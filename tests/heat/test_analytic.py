"""repairlib.heat.analytic and the estimates: worked examples of textbooks, values by hand."""

import math

import pytest
from pytest import approx

from repairlib.core.errors import RepairlibError
from repairlib.heat.analytic import (
    barrel_area,
    deep_celsius,
    deep_flux,
    deep_seconds,
    lumped,
    lumped_until,
    resistance,
    touch_celsius,
)
from repairlib.heat.conduction import Stuff
from repairlib.heat.estimates import heat_resistance
from repairlib.heat.materials import figure, stuff
from tests.heat.series import held_share, lumped_seconds, slab_roots, slab_share

FR4 = Stuff(0.29, 1850, 1100)
COPPER = Stuff(400, 8933, 385)
SOLDER = Stuff(50, 8400, 176)
ALUMINA = Stuff(24, 3720, 880)
BRASS = Stuff(110, 8530, 380)
CHAPTER_4 = "Çengel and Ghajar, Heat and Mass Transfer, 4th edition, chapter 4"
FORMULAS = "textbook formulas of transient conduction, worked by hand from the stated inputs"


@pytest.mark.from_memory("solder bead of a textbook not found again: 1.116 s, three of them")
def test_solder_bead():
    constant = lumped_seconds(Stuff(45, 9300, 180), 1e-3 / 6, 1, 250)
    assert constant == approx(1.116, rel=1e-3)
    assert 3 * constant == approx(3.35, rel=1e-3)
    assert lumped(0, 100, constant, 3 * constant) == approx(95, abs=0.1)


@pytest.mark.published(CHAPTER_4 + ", example 4-1: thermocouple bead, 10 s")
def test_thermocouple_bead():
    constant = lumped_seconds(Stuff(35, 8500, 320), 1e-3 / 6, 1, 210)
    assert 1 / constant == approx(0.4632, rel=1e-3)
    seconds = lumped_until(0, 100, constant, 99)
    assert seconds == approx(9.94, rel=1e-3)  # by hand
    assert round(seconds) == 10


@pytest.mark.published(CHAPTER_4 + ", example 4-4: brass plate in an oven, 282 °C")
def test_brass_plate():
    constant = lumped_seconds(BRASS, 0.02, 1, 120)
    assert 1 / constant == approx(0.001851, rel=1e-3)
    assert lumped(20, 500, constant, 420) == approx(279, abs=0.5)
    biot, fourier = 120 * 0.02 / 110, BRASS.diffusivity * 420 / 0.02**2
    # The book reads 282 °C from a chart, which cannot be read closer than this.
    assert 500 - 480 * slab_share(biot, fourier, 0) == approx(282, abs=5)


@pytest.mark.published(CHAPTER_4 + ", example 4-6: depth of a water pipe, 0.78 m from a chart")
def test_pipe_depth():
    soil = Stuff(0.15e-6, 1, 1)
    days_90 = 90 * 86400
    # The chart's 0.78 m is 2 cm less than by the formula: 11 K/m × 0.02 m below 0 °C.
    assert deep_celsius(soil, 15, -10, 0.78, days_90) == approx(-0.2, abs=0.1)
    assert deep_celsius(soil, 15, -10, 0.80, days_90) == approx(0, abs=0.1)
    assert deep_seconds(soil, 15, -10, 0.80, 0) == approx(days_90, rel=0.01)
    assert 0.80 / (2 * math.sqrt(0.15e-6 * days_90)) == approx(0.371, abs=0.001)


@pytest.mark.published(CHAPTER_4 + ", section 4-3: wood feels warm, 30 °C")
def test_wood_and_skin():
    wood, skin = Stuff(0.38, 0.38, 1), Stuff(1.1, 1.1, 1)
    assert touch_celsius(wood, 15, skin, 35) == approx(29.9, abs=0.05)  # by hand
    assert round(touch_celsius(wood, 15, skin, 35)) == 30


@pytest.mark.from_memory("tables of one-term coefficients of the slab")
@pytest.mark.parametrize(
    ("biot", "root", "first"),
    [(0.1, 0.3111, 1.0161), (1, 0.8603, 1.1191), (10, 1.4289, 1.2620)],
)
def test_one_term_slab(biot, root, first):
    z = slab_roots(biot, 1)[0]
    assert z == approx(root, abs=5e-5)
    assert 4 * math.sin(z) / (2 * z + math.sin(2 * z)) == approx(first, abs=5e-5)


@pytest.mark.from_memory(FORMULAS)
@pytest.mark.parametrize(("fourier", "share"), [(0.2, 0.7723), (0.5, 0.3708), (1.0, 0.1080)])
def test_held_faces(fourier, share):
    assert held_share(fourier) == approx(share, abs=5e-5)


@pytest.mark.from_memory(FORMULAS)
def test_diffusivity_and_effusivity():
    assert FR4.diffusivity == approx(1.425e-7, rel=1e-3)
    assert 1.6e-3**2 / FR4.diffusivity == approx(18.0, abs=0.05)
    for one, effusivity in ((COPPER, 37090), (FR4, 768), (SOLDER, 8598), (ALUMINA, 8864)):
        assert one.effusivity == approx(effusivity, rel=1e-3)


@pytest.mark.from_memory(FORMULAS)
@pytest.mark.parametrize(("other", "celsius"), [(FR4, 343.4), (ALUMINA, 287.3), (COPPER, 187.5)])
def test_hot_copper_touches(other, celsius):
    assert touch_celsius(COPPER, 350, other, 25) == approx(celsius, abs=0.1)


@pytest.mark.from_memory(FORMULAS)
def test_board_whose_face_is_held_at_350():
    assert deep_celsius(FR4, 25, 350, 0.8e-3, 3) == approx(150.8, abs=0.1)
    assert deep_seconds(FR4, 25, 350, 1e-3, 130) == approx(3.59, abs=0.01)
    assert deep_flux(FR4, 25, 350, 2) == approx(9.96e4, rel=1e-3)


@pytest.mark.from_memory(FORMULAS)
def test_board_in_hot_air_from_both_faces():
    biot, fourier = 60 * 0.8e-3 / 0.29, FR4.diffusivity * 60 / 0.8e-3**2
    assert (biot, fourier) == (approx(0.1655, abs=1e-4), approx(13.36, abs=0.01))
    assert 200 - 175 * slab_share(biot, fourier, 0) == approx(177.9, abs=0.1)
    assert 200 - 175 * slab_share(biot, fourier, 1) == approx(179.6, abs=0.1)
    constant = lumped_seconds(FR4, 0.8e-3, 1, 60)
    assert lumped(25, 200, constant, 60) == approx(180.8, abs=0.1)


@pytest.mark.from_memory(FORMULAS)
def test_board_heated_from_below():
    biot, fourier = 80 * 1.6e-3 / 0.29, FR4.diffusivity * 60 / 1.6e-3**2
    assert (biot, fourier) == (approx(0.4414, abs=1e-4), approx(3.340, abs=0.001))
    assert 180 - 155 * slab_share(biot, fourier, 0) == approx(134.2, abs=0.1)
    assert 180 - 155 * slab_share(biot, fourier, 1) == approx(142.7, abs=0.1)


@pytest.mark.from_memory(FORMULAS)
def test_lumped_parts():
    chip = 0.5e-3 * 900 / (80 * 4.5e-4)
    assert chip == approx(12.5)
    assert lumped_until(25, 300, chip, 217) == approx(14.97, abs=0.01)
    part = 3e-3 * 900 / (10 * 6e-4)
    assert part == approx(450)
    assert lumped_until(150, 25, part, 60) == approx(572.8, abs=0.1)


@pytest.mark.from_memory(FORMULAS)
def test_resistances():
    assert resistance(0.5e-3, 1.5, 100e-6) == approx(3.33, abs=0.005)
    assert resistance(1.6e-3, 0.29, 100e-6) == approx(55.2, abs=0.05)
    one = resistance(1.6e-3, 400, barrel_area(0.3e-3, 25e-6))
    assert one == approx(185.2, abs=0.1)
    assert one / 9 == approx(20.6, abs=0.05)
    assert resistance(20e-3, 400, 35e-6 * 1e-3) == approx(1429, abs=0.5)


@pytest.mark.published(
    "Wikipedia, Solder alloys, Properties: copper 393 to 401 W/(m K), Sn63Pb37 50.9"
)
def test_conductivities_of_copper_and_solder():
    # 1 mm / (50.9 W/(m K) × 1 mm²) = 19.65 K/W
    assert heat_resistance("Sn63Pb37", "1 mm", 1).kelvin_per_watt == approx(19.65, abs=0.005)
    copper = figure("copper", "conductivity")
    assert (copper.low, copper.high) == (393, 401)
    assert copper.low <= copper.value <= copper.high


@pytest.mark.published(
    "Bolotoff (Alasir), Solder Alloys, section 1: SAC305 58 W/(m K), 7.38 g/cm³; Sn63Pb37 8.40"
)
def test_solders_of_the_table():
    # 1 mm / (58 W/(m K) × 1 mm²) = 17.24 K/W
    assert heat_resistance("SAC305", "1 mm", 1).kelvin_per_watt == approx(17.24, abs=0.005)
    assert stuff("SAC305").density == approx(1000 * 7.38)
    assert stuff("Sn63Pb37").density == approx(1000 * 8.40)


@pytest.mark.parametrize(
    "wrong",
    [
        lambda: lumped_until(25, 300, 12.5, 301),
        lambda: lumped_until(25, 300, 12.5, 300),
        lambda: lumped_until(25, 300, -1, 200),
        lambda: deep_seconds(FR4, 25, 350, 1e-3, 360),
        lambda: deep_seconds(FR4, 25, 25, 1e-3, 25),
        lambda: deep_celsius(FR4, 25, 350, 1e-3, 0),
        lambda: touch_celsius(FR4, -300, FR4, 25),
        lambda: resistance(0, 1, 1),
        lambda: barrel_area(0.3e-3, 0.2e-3),
    ],
)
def test_what_cannot_be_is_refused(wrong):
    with pytest.raises(RepairlibError, match="Accepted"):
        wrong()
