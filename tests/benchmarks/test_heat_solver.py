"""The heat solver beside scipy's stiff solvers on the same mesh, its growth, memory beside.

Same mesh, same sparsity told to scipy, same error at the end against a much tighter run of scipy.
scipy gets the best of several tolerances that reach our error, so that the comparison is fair.
"""

import math
import tracemalloc

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.linalg import solve_banded
from scipy.sparse import diags_array

from repairlib.faces.panels.joint_heat import joint_heat_panel, setup
from repairlib.heat.conduction import Stuff, conduct, convecting, grid, held
from repairlib.heat.joint import heat_joint
from tests.benchmarks.floor import report, seconds

BOARD = Stuff((0.81, 0.29), 1850, 1100)
COPPER = Stuff(400, 8933, 385)
HEATED_S = 3.0
NOISE = 1.3  # how far two timings of the same run differ on a busy machine


def board(rows: int, columns: int):
    """A ring of board with a plane around a copper barrel; the barrel's inside is held hot."""
    radii = np.linspace(0.4e-3, 10e-3, rows + 1)
    heights = np.linspace(0, 1.6e-3, columns + 1)
    stuffs = [[BOARD] * columns for _ in range(rows)]
    for row in range(rows):
        stuffs[row][columns // 2] = COPPER
    stuffs[0] = [COPPER] * columns
    faces = {"near": held(350), "right": convecting(60, 25), "left": convecting(10, 25)}
    return grid(radii, heights, stuffs, faces, radial=True)


def as_ode(mesh):
    """The same balance as scipy wants it: its right side, its Jacobian as a sparse matrix."""
    shape = np.shape(mesh.capacity)
    columns = shape[1]
    capacity = np.asarray(mesh.capacity).ravel()
    gain = sum(np.asarray(one.conductance) * one.celsius + one.watts for one in mesh.outsides)
    diagonal = sum(np.asarray(one.conductance) for one in mesh.outsides).copy()
    diagonal[:, :-1] += mesh.along
    diagonal[:, 1:] += mesh.along
    diagonal[:-1] += mesh.across
    diagonal[1:] += mesh.across
    beside = np.zeros(shape)
    beside[:, :-1] = mesh.along
    beside = beside.ravel()[:-1]
    over = np.asarray(mesh.across).ravel()
    matrix = diags_array(
        [-diagonal.ravel(), beside, beside, over, over],
        offsets=[0, 1, -1, columns, -columns],
        format="csr",
    )
    jacobian = (diags_array(1 / capacity) @ matrix).tocsc()
    source = (gain.ravel()) / capacity
    return (lambda _t, celsius: jacobian @ celsius + source), jacobian


def run_scipy(ode, cells, method, tolerance):
    right, jacobian = ode
    start = np.full(cells, 25.0)
    solved = solve_ivp(
        right, (0, HEATED_S), start, method, jac=jacobian, rtol=tolerance, atol=tolerance * 10
    )
    return solved.y[:, -1]


def compare(rows, columns, wanted):
    mesh = board(rows, columns)
    ode, cells = as_ode(mesh), rows * columns
    exact = run_scipy(ode, cells, "BDF", 1e-7)

    def miss(found):
        return float(np.abs(np.ravel(found) - exact).max())

    tolerance = next(
        one
        for one in (3, 1, 0.3, 0.1, 0.03, 0.01, 0.003, 1e-3)
        if miss(conduct(mesh, 25, HEATED_S, tolerance=one).celsius[-1]) <= wanted
    )
    ours, theirs = math.inf, {"BDF": math.inf, "Radau": math.inf}
    good = [
        (method, rtol)
        for method in theirs
        for rtol in (1e-2, 3e-3, 1e-3, 3e-4)
        if miss(run_scipy(ode, cells, method, rtol)) <= wanted
    ]
    for _ in range(3):  # by turns, so that all see the same machine
        ours = min(ours, seconds(lambda: conduct(mesh, 25, HEATED_S, tolerance=tolerance), 2))
        for method, rtol in good:
            once = seconds(lambda m=method, t=rtol: run_scipy(ode, cells, m, t), 1)
            theirs[method] = min(theirs[method], once)
    return mesh, tolerance, ours, theirs


@pytest.mark.parametrize("wanted", [1.0, 0.1])
@pytest.mark.parametrize(("rows", "columns"), [(30, 20), (60, 40)])
def test_beside_scipy_at_the_same_error(capsys, rows, columns, wanted):
    """Goal: at least as fast as the faster of BDF and Radau, at the same error at the end."""
    mesh, tolerance, ours, theirs = compare(rows, columns, wanted)
    best = min(theirs.values())
    tracemalloc.start()
    conduct(mesh, 25, HEATED_S, tolerance=tolerance)
    memory = tracemalloc.get_traced_memory()[1] / 1e6
    tracemalloc.stop()
    each = ", ".join(f"{name} {time * 1e3:.0f} ms" for name, time in theirs.items())
    report(
        capsys,
        f"heat in {rows * columns} cells to {wanted:g} K: {ours * 1e3:.0f} ms = "
        f"{ours / best:.2f} x scipy's best ({each}); {memory:.1f} MB at the peak",
    )
    assert ours < best * NOISE


def test_growth_with_the_mesh(capsys):
    """Exponent of time against the number of cells; rows × columns³ bounds it by 2."""
    sizes = ((15, 10), (30, 20), (60, 40), (90, 60))
    times = []
    for rows, columns in sizes:
        mesh = board(rows, columns)
        times.append(seconds(lambda m=mesh: conduct(m, 25, HEATED_S, tolerance=0.3), 3))
    cells = [rows * columns for rows, columns in sizes]
    exponent = math.log(times[-1] / times[0]) / math.log(cells[-1] / cells[0])
    each = ", ".join(f"{n}: {t * 1e3:.0f} ms" for n, t in zip(cells, times, strict=True))
    report(capsys, f"heat solver, growth exponent {exponent:.2f} (cells: {each})")
    assert exponent < 1.8


def test_one_joint_against_its_linear_equations(capsys):
    """A joint heated and cooled, melting included. The floor solves one banded set of equations of
    its mesh for each step that it takes, which no implicit method can do without."""
    run = heat_joint()
    rows, columns = np.shape(run.made.mesh.capacity)
    bands = np.full((2 * columns + 1, rows * columns), 0.1)
    bands[columns] = 2.0
    right = np.ones(rows * columns)
    steps = len(run.seconds)
    floor = seconds(lambda: [solve_banded((columns, columns), bands, right) for _ in range(steps)])
    each = seconds(heat_joint, 3)
    report(
        capsys,
        f"one joint, {rows * columns} cells, {steps} steps: {each * 1e3:.0f} ms = "
        f"{each / floor:.1f} x solving its equations alone",
    )
    assert each < 30 * floor


def test_panel_keeps_up(capsys):
    """Every change is to a temperature that was not asked for before."""
    panel = joint_heat_panel()
    field = panel.fields["celsius"]
    asked = iter(range(331, 400))
    usual = setup(**panel.typed())

    def change():
        field.value = next(asked)

    each = seconds(change, 5)
    same = iter(range(331, 400))
    floor = seconds(lambda: heat_joint(usual, celsius=next(same)), 5)
    report(capsys, f"joint panel {each * 1e3:.0f} ms = {each / floor:.1f} x the bare model")
    assert each < 2.5 * floor
