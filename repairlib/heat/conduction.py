"""Heat conduction in time, in one and two dimensions: layers, rectangles, and discs on an axis.

Finite volumes: what leaves one cell enters the next, so that heat is kept to rounding. A model of
conduction only: no radiation, no temperature-dependent material, no flow inside a body. Steps in
time are in stepping.py; numbers of materials in materials.py.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.heat.stepping import Mesh, Outside, Stepper

ABSOLUTE_ZERO = -273.15
MOST_CELLS = 40_000


class Stuff(NamedTuple):
    """What a body is made of: conductivity [W/(m K)], density [kg/m³], heat capacity [J/(kg K)].

    >>> Stuff(0.29, 1850, 1100).diffusivity
    1.425e-07
    """

    conductivity: float
    density: float
    heat_capacity: float

    @property
    def diffusivity(self) -> float:
        """How fast temperature spreads, k / (ρ c), in m²/s."""
        return self.conductivity / (self.density * self.heat_capacity)

    @property
    def effusivity(self) -> float:
        """How strongly it holds its temperature when touched, √(k ρ c), in W s^½/(m² K)."""
        return (self.conductivity * self.density * self.heat_capacity) ** 0.5


class Layer(NamedTuple):
    """A layer of a slab: its stuff, its thickness in m, and its share of the cells."""

    stuff: Stuff
    thickness: float


class Face(NamedTuple):
    """What happens at a face: `film` in W/(m² K) to `celsius`, and a fixed `flux` in W/m² into it.

    An infinite film holds the face at that temperature.
    """

    film: float
    celsius: float
    flux: float = 0.0


INSULATED = Face(0.0, 0.0)


def held(celsius: float) -> Face:
    """A face held at that temperature."""
    return Face(float("inf"), temperature(celsius))


def convecting(film: float, celsius: float) -> Face:
    """A face in a fluid of that temperature, with a film coefficient in W/(m² K) above 0."""
    return Face(above_zero(film, "film coefficient", "W/(m² K)"), temperature(celsius))


def fed(flux: float) -> Face:
    """A face that takes a fixed heat flux in W/m²; negative takes heat away."""
    if not abs(flux) < 1e12:
        raise RepairlibError(flux, "not a heat flux", "a number in W/m²")
    return Face(0.0, 0.0, flux)


@dataclass(frozen=True)
class History:
    """A run: `seconds` (n), `celsius` (n × rows × columns), J `arrived` by outside, J `gained`.

    `imbalance` is the part of what flowed in that the balance cannot account for.
    """

    seconds: object
    celsius: object
    arrived: dict[str, float]
    gained: float
    flowed: float

    @property
    def imbalance(self) -> float:
        return abs(sum(self.arrived.values()) - self.gained) / self.flowed if self.flowed else 0.0


def conduct(mesh: Mesh, start, seconds: float, tolerance=0.05, step=None, longest=None) -> History:
    """March a mesh from temperatures `start` in °C through `seconds`.

    tolerance: error allowed in a step, in K. step: steps of that length instead, in s. longest:
    the longest step allowed. Raises RepairlibError for times and temperatures that cannot be.
    """
    import numpy as np

    if not np.all(np.asarray(start, dtype=float) >= ABSOLUTE_ZERO):
        raise RepairlibError(start, "colder than absolute zero", f"{ABSOLUTE_ZERO} °C or more")
    stepper = Stepper(mesh, tolerance, step, longest)
    first = last = stepper.begin(start)
    times, fields, flowed = [0.0], [first.celsius], 0.0
    for state in stepper.march(first, seconds):
        flowed += sum(abs(state.arrived[name] - last.arrived[name]) for name in state.arrived)
        times.append(state.seconds)
        fields.append(state.celsius)
        last = state
    gained = float((last.stored - first.stored).sum())
    return History(np.array(times), np.array(fields), last.arrived, gained, flowed)


def slab(layers: Sequence[Layer], left: Face, right: Face, cells: int = 60, towards=None) -> Mesh:
    """A slab of layers, 1 m² of it, as one row of cells from left to right.

    The cells are shared out by thickness, at least two a layer. `towards="left"` makes cells finer
    towards the left face, for heat that enters a thick body there. See `centres` for their depths.
    Raises RepairlibError for thicknesses that are not above 0.
    """
    edges, stuffs = _layered(layers, cells, towards)
    faces = {"left": left, "right": right}
    return grid([0.0, 1.0], edges, [stuffs], faces)


def centres(edges: Sequence[float]):
    """The middle of every cell between its edges, in m."""
    import numpy as np

    edges = np.asarray(edges, dtype=float)
    return (edges[:-1] + edges[1:]) / 2


def slab_edges(layers: Sequence[Layer], cells: int = 60, towards=None):
    """The edges of the cells that `slab` makes, in m from the left face."""
    return _layered(layers, cells, towards)[0]


def grid(x_edges, y_edges, stuffs, faces, radial: bool = False, seams=None) -> Mesh:
    """A rectangle of cells, rows along x, columns along y; 1 m deep, or turned about x = 0.

    stuffs: for every row the Stuff of every cell, or None where there is nothing. faces: Face by
    side: "left" (first y), "right" (last y), "near" (first x), "far" (last x). With `radial`, x is
    a radius in m, in falling or rising order. seams: W/(m² K) between columns, as {column: film or
    film by row}, for two bodies that only touch. Raises RepairlibError for meshes that cannot be.
    """
    import numpy as np

    x_edges, y_edges = np.asarray(x_edges, dtype=float), np.asarray(y_edges, dtype=float)
    dx, dy = np.abs(np.diff(x_edges)), np.diff(y_edges)
    if dx.size * dy.size > MOST_CELLS:
        raise RepairlibError(f"{dx.size * dy.size} cells", "too many", f"up to {MOST_CELLS}")
    if not (dx.min() > 0 and dy.min() > 0):
        raise RepairlibError(f"{min(dx.min(), dy.min()):g} m", "a cell without width", "above 0 m")
    along_x, along_y, per_volume = _properties(stuffs, (dx.size, dy.size))
    turn = 2 * np.pi * np.abs(x_edges) if radial else np.ones_like(x_edges)
    ground = (turn[:-1] + turn[1:]) / 2 * dx  # m² of each row seen along y
    capacity = per_volume * ground[:, None] * dy
    with np.errstate(divide="ignore"):
        half_y = dy / 2 / (along_y * ground[:, None])
        half_in = dx[:, None] / 2 / (along_x * turn[:-1, None] * dy)
        half_out = dx[:, None] / 2 / (along_x * turn[1:, None] * dy)
    between = half_y[:, :-1] + half_y[:, 1:]
    for column, film in (seams or {}).items():
        with np.errstate(divide="ignore"):
            between[:, column] += 1 / (np.asarray(film, dtype=float) * ground)
    along = 1 / between
    across = 1 / (half_out[:-1] + half_in[1:])
    sides = {
        "left": (np.s_[:, 0], half_y[:, 0], ground),
        "right": (np.s_[:, -1], half_y[:, -1], ground),
        "near": (np.s_[0, :], half_in[0], turn[0] * dy),
        "far": (np.s_[-1, :], half_out[-1], turn[-1] * dy),
    }
    outsides = [
        _outside(name, face, *sides[name], capacity.shape)
        for name, face in faces.items()
        if face != INSULATED
    ]
    return Mesh(capacity, along, across, outsides)


def _outside(name, face, cells, half, area, shape) -> Outside:
    import numpy as np

    conductance, watts = np.zeros(shape), np.zeros(shape)
    if face.film:
        conductance[cells] = 1 / (half + 1 / (face.film * area))
    watts[cells] = face.flux * area
    return Outside(name, conductance, face.celsius, watts)


def _properties(stuffs, shape):
    import numpy as np

    along_x, along_y, per_volume = np.zeros(shape), np.zeros(shape), np.zeros(shape)
    for row, stuffs_of_row in enumerate(stuffs):
        for column, stuff in enumerate(stuffs_of_row):
            if stuff is not None:
                k = stuff.conductivity
                along_x[row, column], along_y[row, column] = k if isinstance(k, tuple) else (k, k)
                per_volume[row, column] = stuff.density * stuff.heat_capacity
    return along_x, along_y, per_volume


def _layered(layers, cells, towards):
    import numpy as np

    if not layers:
        raise RepairlibError("no layers", "nothing to heat", "one layer or more")
    whole = 0.0
    for layer in layers:
        whole += above_zero(layer.thickness, "thickness", "m")
        for name in ("conductivity", "density", "heat_capacity"):
            above_zero(getattr(layer.stuff, name), name.replace("_", " "), "SI units")
    if not 2 <= cells <= MOST_CELLS:
        raise RepairlibError(cells, "not a number of cells", f"2 to {MOST_CELLS}")
    edges, stuffs = [0.0], []
    for layer in layers:
        number = max(2, round(cells * layer.thickness / whole))
        steps = np.linspace(0, 1, number + 1)[1:]
        if towards == "left":
            steps = (np.expm1(3 * steps)) / np.expm1(3)
        edges += [edges[-1] + layer.thickness * one for one in steps]
        stuffs += [layer.stuff] * number
    return np.array(edges), stuffs


def above_zero(value: float, name: str, unit: str) -> float:
    if not 0 < value < float("inf"):
        raise RepairlibError(f"{value:g}", f"{name} is not above 0", f"a number in {unit} above 0")
    return value


def temperature(celsius: float) -> float:
    if not ABSOLUTE_ZERO <= celsius < 1e5:
        accepted = f"{ABSOLUTE_ZERO} °C or more"
        raise RepairlibError(f"{celsius:g} °C", "not a temperature", accepted)
    return celsius
