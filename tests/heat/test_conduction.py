"""repairlib.heat.conduction and stepping against exact solutions, with the order of convergence."""

import math
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pytest import approx

from repairlib.core.errors import RepairlibError
from repairlib.heat.analytic import (
    deep_celsius,
    deep_flux,
    touch_celsius,
)
from repairlib.heat.conduction import (
    INSULATED,
    Face,
    Layer,
    Stuff,
    centres,
    conduct,
    convecting,
    fed,
    grid,
    held,
    slab,
    slab_edges,
)
from repairlib.heat.stepping import Mesh, Stepper
from tests.heat.series import fed_celsius, held_share, slab_share

FR4 = Stuff(0.29, 1850, 1100)
COPPER = Stuff(400, 8933, 385)
CHAPTER_4 = "Çengel and Ghajar, Heat and Mass Transfer, 4th edition, chapter 4, "
SERIES = "exact solutions of the conduction equation in textbooks of heat transfer"
HALF = [Layer(FR4, 0.8e-3)]


def at(edges, run, depth, row=0):
    return float(np.interp(depth, centres(edges), run.celsius[-1][row]))


@pytest.mark.from_memory(SERIES + ": thick body, face held")
def test_thick_body_with_its_face_held():
    layers = [Layer(FR4, 12e-3)]
    mesh, edges = slab(layers, held(350), INSULATED, 120, "left"), slab_edges(layers, 120, "left")
    run = conduct(mesh, 25, 3, tolerance=0.01)
    for depth in (0.2e-3, 0.4e-3, 0.8e-3, 1.2e-3):
        exact = deep_celsius(FR4, 25, 350, depth, 3)
        assert at(edges, run, depth) - 25 == approx(exact - 25, rel=0.01)
    # Worked by hand: 150.8 °C in 0.8 mm after 3 s.
    assert at(edges, run, 0.8e-3) == approx(150.8, rel=0.01)
    exact = 2 * 0.29 * 325 * math.sqrt(3 / (math.pi * FR4.diffusivity))
    assert run.arrived["left"] == approx(exact, rel=0.01)
    assert exact == approx(2 * 3 * deep_flux(FR4, 25, 350, 3))


@pytest.mark.from_memory(SERIES + ": thick body, constant flux")
def test_thick_body_that_takes_a_flux():
    layers = [Layer(FR4, 12e-3)]
    mesh, edges = slab(layers, fed(4e4), INSULATED, 120, "left"), slab_edges(layers, 120, "left")
    run = conduct(mesh, 25, 3, tolerance=0.01)
    for depth in (0.05e-3, 0.4e-3, 0.8e-3):
        assert at(edges, run, depth) - 25 == approx(
            fed_celsius(FR4, 25, 4e4, depth, 3) - 25, rel=0.01
        )
    assert run.arrived["left"] == approx(4e4 * 3, rel=1e-9)


@pytest.mark.from_memory(SERIES + ": slab in hot air, both faces and one")
def test_slab_in_hot_air():
    both = conduct(slab(HALF, INSULATED, convecting(60, 200), 30), 25, 60, tolerance=0.01)
    assert both.celsius[-1][0][0] == approx(177.9, rel=0.01)
    assert both.celsius[-1][0][-1] == approx(179.6, rel=0.01)
    whole = [Layer(FR4, 1.6e-3)]
    below = conduct(slab(whole, convecting(80, 180), INSULATED, 60), 25, 60, tolerance=0.01)
    assert below.celsius[-1][0][-1] == approx(134.2, rel=0.01)
    assert below.celsius[-1][0][0] == approx(142.7, rel=0.01)


@pytest.mark.from_memory(SERIES + ": slab with held faces")
@pytest.mark.parametrize(("fourier", "share"), [(0.2, 0.7723), (0.5, 0.3708), (1.0, 0.1080)])
def test_slab_with_held_faces(fourier, share):
    seconds = fourier * 0.8e-3**2 / FR4.diffusivity
    run = conduct(slab(HALF, INSULATED, held(0), 40), 100, seconds, tolerance=0.005)
    assert run.celsius[-1][0][0] == approx(100 * share, rel=0.01)


@pytest.mark.published(CHAPTER_4 + "example 4-4: brass plate, 282 °C from a chart")
def test_brass_plate_is_almost_lumped():
    brass = Stuff(110, 8530, 380)
    mesh = slab([Layer(brass, 0.02)], INSULATED, convecting(120, 500), 20)
    middle = conduct(mesh, 20, 420, tolerance=0.05).celsius[-1][0][0]
    assert 277 < middle < 282
    # As one lump, by hand: 500 − 480 e^(−0.001851 × 420) = 279 °C.
    assert middle - 20 == approx(279 - 20, rel=0.01)


@pytest.mark.published(CHAPTER_4 + "example 4-5: steel shaft, 0.41 and 364 °C")
def test_shaft_in_oil():
    # Bi 0.537 and Fo 1.07: the book finds 0.41 of the difference left at the axis.
    steel, radius = Stuff(1, 1, 1), 1.0
    edges = np.linspace(0, radius, 41)
    mesh = grid(edges, [0, 1], [[steel]] * 40, {"far": Face(0.537, 200)}, radial=True)
    axis = conduct(mesh, 600, 1.07, tolerance=0.01).celsius[-1][0][0]
    assert (axis - 200) / 400 == approx(0.41, rel=0.015)
    assert axis == approx(364, rel=0.01)


@pytest.mark.from_memory(SERIES + ": two thick bodies that touch")
def test_hot_copper_touches_board():
    layers = [Layer(COPPER, 0.2), Layer(FR4, 8e-3)]
    edges = np.concatenate([np.linspace(0, 0.2, 200), 0.2 + 8e-3 * np.linspace(0, 1, 201)[1:] ** 2])
    number = 199
    mesh = grid([0, 1], edges, [[COPPER] * number + [FR4] * 200], {"left": INSULATED})
    start = np.where(np.arange(mesh.capacity.shape[1]) < number, 350.0, 25.0)[None, :]
    run = conduct(mesh, start, 1.0, tolerance=0.01)
    first = run.celsius[-1][0][number]
    assert first == approx(touch_celsius(COPPER, 350, FR4, 25), rel=0.01)
    assert first == approx(343.4, rel=0.01)
    assert len(layers) == 2


@pytest.mark.from_memory(SERIES + ": product of two slabs")
def test_corner_of_a_bar_is_the_product_of_two_slabs():
    edges = np.linspace(0, 0.8e-3, 31)
    faces = {"right": convecting(300, 200), "far": held(200)}
    mesh = grid(edges, edges, [[FR4] * 30] * 30, faces)
    run = conduct(mesh, 25, 2.0, tolerance=0.01)
    biot, fourier = 300 * 0.8e-3 / 0.29, FR4.diffusivity * 2.0 / 0.8e-3**2
    for row, column in ((0, 0), (14, 3), (3, 25), (20, 29)):
        x, y = centres(edges)[row] / 0.8e-3, centres(edges)[column] / 0.8e-3
        left = held_share(fourier, x) * slab_share(biot, fourier, y)
        assert (200 - run.celsius[-1][row][column]) / 175 == approx(left, rel=0.01)


@pytest.mark.from_memory("Neumann's solution of the one-phase Stefan problem: λ exp(λ²) erf(λ)")
def test_melting_front():
    # A solid just at its melting point; its face is held 50 K above. Ste = c ΔT / L = 0.5.
    stuff, latent = Stuff(1.0, 1000.0, 1000.0), 1e5
    edges = np.linspace(0, 0.05, 81)
    mesh = slab([Layer(stuff, 0.05)], held(50), INSULATED, 80)
    per_cell = 1000 * np.diff(edges) * latent
    mesh = Mesh(
        mesh.capacity, mesh.along, mesh.across, mesh.outsides, per_cell[None, :], -0.01, 0.01
    )
    run = conduct(mesh, -0.01, 500.0, tolerance=0.2)
    celsius = run.celsius[-1][0]
    lam = 0.46478  # of λ exp(λ²) erf(λ) = 0.5 / √π
    assert lam * math.exp(lam**2) * math.erf(lam) == approx(0.5 / math.sqrt(math.pi), rel=1e-3)
    front = 2 * lam * math.sqrt(1e-6 * 500)
    exact = 50 * (1 - math.erf(0.01 / (2 * math.sqrt(1e-6 * 500))) / math.erf(lam))
    assert float(np.interp(0.01, centres(edges), celsius)) == approx(exact, rel=0.01)
    reached = edges[1:][celsius > 0.01][-1]
    assert reached == approx(front, abs=0.05 / 80)
    assert run.imbalance < 1e-6


def eigenmode(cells):
    edges = np.linspace(0, 1, cells + 1)
    mesh = grid([0, 1], edges, [[Stuff(1, 1, 1)] * cells], {"right": held(0)})
    return mesh, 100 * np.cos(np.pi / 2 * centres(edges))[None, :]


def test_second_order_in_time():
    """Halving the step divides the error by four; the mesh is the same, its exact decay known."""
    mesh, start = eigenmode(50)
    # The mode is an eigenvector of this mesh; its rate follows from the mesh itself.
    stepper = Stepper(mesh)
    rate = -float((stepper._flow(start.astype(float)) / mesh.capacity / start)[0].mean())
    errors = []
    for step in (0.1, 0.05, 0.025, 0.0125):
        end = conduct(mesh, start, 0.8, step=step).celsius[-1]
        errors.append(float(np.abs(end - start * math.exp(-rate * 0.8)).max()))
    orders = [math.log2(one / two) for one, two in pairwise(errors)]
    assert all(1.9 < order < 2.15 for order in orders), (errors, orders)


def test_second_order_in_space():
    """Halving the cells divides the error by four, against the exact series."""
    errors = []
    for cells in (5, 10, 20, 40):
        mesh, start = eigenmode(cells)
        end = conduct(mesh, start, 0.4, step=0.4 / 2000).celsius[-1]
        exact = start * math.exp(-((math.pi / 2) ** 2) * 0.4)
        errors.append(float(np.abs(end - exact).max()))
    orders = [math.log2(one / two) for one, two in pairwise(errors)]
    assert all(1.9 < order < 2.1 for order in orders), (errors, orders)


def test_tolerance_bounds_the_error():
    """A tenth of the tolerance gives a smaller error, and the error stays near the tolerance."""
    mesh = slab(HALF, INSULATED, held(200), 40)
    exact = conduct(mesh, 25, 2.0, tolerance=1e-4).celsius[-1]
    errors = [
        float(np.abs(conduct(mesh, 25, 2.0, tolerance=one).celsius[-1] - exact).max())
        for one in (1.0, 0.1, 0.01)
    ]
    assert errors[0] > errors[1] > errors[2]
    assert errors[0] < 5 and errors[2] < 0.1


def test_no_ringing_after_a_sudden_change():
    run = conduct(slab(HALF, held(350), INSULATED, 40), 25, 1.0, step=0.5)
    assert run.celsius.min() > 25 - 30 and run.celsius[-1].min() >= 25 - 1


numbers = st.floats(0.05, 400)


@settings(max_examples=40, deadline=None)
@given(
    first=numbers,
    second=numbers,
    film=st.floats(1, 5e4),
    hot=st.floats(-200, 500),
    flux=st.floats(-1e4, 1e5),
    seconds=st.floats(0.01, 100),
    latent=st.floats(0, 1e8),
)
def test_heat_is_kept(first, second, film, hot, flux, seconds, latent):
    """What flowed in is what is stored, to a millionth, melting included."""
    one, two = Stuff(first, 2000, 900), Stuff((second, first), 5000, 300)
    edges = np.linspace(0, 2e-3, 7)
    faces = {"left": convecting(film, hot), "far": fed(flux)}
    stuffs = [[one, two, one, None, two, two]] * 3 + [[two] * 6] * 3
    mesh = grid(edges, edges, stuffs, faces, radial=True)
    melting = Mesh(
        mesh.capacity,
        mesh.along,
        mesh.across,
        mesh.outsides,
        np.where(mesh.capacity > 0, latent * 1e-9 / 9, 0.0),
        100.0,
        102.0,
    )
    run = conduct(melting, 25, seconds, tolerance=1.0)
    assert run.imbalance < 1e-6


@pytest.mark.parametrize(
    "wrong",
    [
        lambda: slab([], held(1), held(1)),
        lambda: slab([Layer(FR4, -1e-3)], held(1), held(1)),
        lambda: slab([Layer(Stuff(0, 1, 1), 1e-3)], held(1), held(1)),
        lambda: slab(HALF, held(1), held(1), cells=0),
        lambda: slab(HALF, held(-300), held(1)),
        lambda: slab(HALF, convecting(-1, 20), held(1)),
        lambda: slab(HALF, fed(float("nan")), held(1)),
        lambda: conduct(slab(HALF, held(1), held(1)), -400, 1),
        lambda: conduct(slab(HALF, held(1), held(1)), 20, 0),
        lambda: conduct(slab(HALF, held(1), held(1)), 20, float("nan")),
        lambda: grid(np.linspace(0, 1, 400), np.linspace(0, 1, 400), [], {}),
        lambda: grid([0, 1], [0, 0], [[FR4]], {}),
    ],
)
def test_what_cannot_be_is_refused(wrong):
    with pytest.raises(RepairlibError, match="Accepted"):
        wrong()
