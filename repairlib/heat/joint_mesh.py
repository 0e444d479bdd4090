"""A solder joint on its board as a mesh of cells about the axis of the joint.

From below: bench, mat, gap with the part's plastic body, board with its copper, solder around the
lead, and the tip of the iron on top. Round where real parts are square, one joint at a time:
a model, not a measurement. Lengths in m, temperatures in °C.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise
from math import pi

from repairlib.core.errors import RepairlibError
from repairlib.heat.conduction import INSULATED, Stuff, grid
from repairlib.heat.materials import (
    BOARDS,
    MATS,
    PLASTICS,
    figure,
    mat_stuff,
    melting_heat_of,
    stuff,
)
from repairlib.heat.solder_alloys import alloy
from repairlib.heat.stepping import Mesh, Outside

THROUGH_HOLE, SURFACE = "through hole", "surface"
IRON, HOT_AIR = "iron", "hot air"
NO_PLANE, RELIEF, SOLID = "no plane", "thermal relief", "solid plane"
TIPS = {"fine": 0.5e-3, "usual": 1.2e-3, "large": 2.5e-3}  # radius of the round that stands for it

# Figures of this model, chosen to be of the usual size; no source states them.
TIP_LENGTH = 6e-3
# W/(m² K) between tip and joint. Wet: 0.4 mm of molten solder at 20 W/(m K), from memory.
# Dry: two pressed metal faces with air between, 2.75e-4 m² K/W in a textbook, from memory.
DRY_CONTACT, WET_CONTACT = 4e3, 5e4
# W/(m² K) under a nozzle of USUAL_NOZZLE, the upper end of 50 to 200 for hand tools; forced gas
# goes to 250, and a textbook's soldering jet of 1 mm comes to about 345.
AIR_FILM, MOST_AIR_FILM = 200.0, 250.0
USUAL_NOZZLE = 4e-3
STILL_FILM = 10.0  # W/(m² K) on the board in still air, radiation in it
MAT_CONTACT = 200.0  # W/(m² K) between things that lie on each other
BENCH = 20e-3
COPPER = 35e-6
PLATING = 25e-6
FILLET = 0.3e-3
BODY_RADIUS, FREE_LEAD = 2.5e-3, 1.2e-3
GAP_CONDUCTIVITY = 0.05  # W/(m K), still air under a board with some radiation and movement
BOARD_BANDS = ("far copper", "lower board", "plane", "upper board", "near copper")
SPOKES, SPOKE_WIDTH, RELIEF_GAP = 4, 0.3e-3, 0.4e-3
FIELD = 25e-3  # how far the board is followed
NARROWEST_MELTING = 2.0  # K; a melting point is spread over as much, its top where it melts


@dataclass(frozen=True)
class Setup:
    """One joint, its board, what it stands on, and the tool. Lengths in m, temperatures in °C.

    kind: "through hole" or "surface". source: "iron" or "hot air". tip: fine, usual, large.
    wet_tip: fresh solder bridges tip and joint. plane: "no plane", "thermal relief", "solid
    plane". nozzle: radius of the hot-air nozzle. gap: under the board.
    """

    kind: str = THROUGH_HOLE
    source: str = IRON
    celsius: float = 350.0
    tip: str = "usual"
    wet_tip: bool = True
    nozzle: float = USUAL_NOZZLE
    solder: str = "Sn63Pb37"
    plane: str = NO_PLANE
    preheat: float = 25.0
    room: float = 25.0
    board: str = "FR-4"
    thickness: float = 1.6e-3
    lead: float = 0.6e-3
    hole: float = 1.0e-3
    pad: float = 1.9e-3
    plastic: str = "nylon 66"
    mat: str = "silicone"
    mat_thickness: float = 3e-3
    gap: float = 3e-3

    def __post_init__(self):
        options = {
            "kind": (THROUGH_HOLE, SURFACE),
            "source": (IRON, HOT_AIR),
            "tip": tuple(TIPS),
            "plane": (NO_PLANE, RELIEF, SOLID),
            "board": BOARDS,
            "mat": MATS,
            "plastic": PLASTICS,
        }
        for name, accepted in options.items():
            if getattr(self, name) not in accepted:
                wrong = f"not a {name} known here"
                raise RepairlibError(getattr(self, name), wrong, ", ".join(accepted))
        alloy(self.solder)
        self._check_lengths()
        for name, low, high in (("celsius", 60, 600), ("preheat", -40, 200), ("room", -40, 60)):
            if not low <= getattr(self, name) <= high:
                value = f"{getattr(self, name):g} °C"
                raise RepairlibError(value, f"{name} out of range", f"{low} to {high} °C")

    def _check_lengths(self):
        ranges = (
            ("thickness", 0.2e-3, 10e-3),
            ("lead", 0.1e-3, 5e-3),
            ("hole", 0.2e-3, 6e-3),
            ("pad", 0.3e-3, 12e-3),
            ("mat_thickness", 0.5e-3, 20e-3),
            ("gap", 0.1e-3, 20e-3),
            ("nozzle", 1e-3, 15e-3),
        )
        for name, low, high in ranges:
            if not low <= getattr(self, name) <= high:
                value = f"{getattr(self, name) * 1e3:g} mm"
                accepted = f"{low * 1e3:g} mm to {high * 1e3:g} mm"
                raise RepairlibError(value, f"{name.replace('_', ' ')} out of range", accepted)
        if self.kind == THROUGH_HOLE and not self.lead + 2 * PLATING < self.hole:
            read = f"lead {self.lead * 1e3:g} mm, hole {self.hole * 1e3:g} mm"
            raise RepairlibError(read, "the lead is wider than its hole", "a lead that fits")
        widest = self.hole if self.kind == THROUGH_HOLE else self.lead
        if not widest + 4 * PLATING < self.pad:
            read = f"pad {self.pad * 1e3:g} mm"
            raise RepairlibError(read, "the pad is not wider than its hole or lead", "a wider pad")

    def but(self, **changes) -> Setup:
        """The same with some things changed."""
        return replace(self, **changes)


@dataclass(frozen=True)
class JointMesh:
    """The mesh, its edges, its bands of columns by name (from below), what every cell is part of.

    parts: rows × columns of "tip", "solder", "lead", "copper", "board", "air", "plastic", "mat",
    "bench" or "".
    """

    mesh: Mesh
    radii: object  # edges, falling
    heights: object  # edges, from the bottom of the bench
    bands: dict[str, tuple[int, int]]
    parts: object
    solid: object  # rows × columns: True where there is something


def joint_mesh(setup: Setup, heating: bool = True) -> JointMesh:
    """The mesh of that setup, with its source of heat or, after, without it."""
    import numpy as np

    radii = _radii(setup)
    heights, bands = _heights(setup, heating)
    middles = (radii[:-1] + radii[1:]) / 2
    cells = _Cells(setup, middles, bands)
    seams = {bands["mat"][1] - 1: MAT_CONTACT, bands["bench"][1] - 1: MAT_CONTACT}
    if "tip" in bands:
        seams[bands["tip"][0] - 1] = WET_CONTACT if setup.wet_tip else DRY_CONTACT
    mesh = grid(radii, heights, cells.stuffs, {"left": INSULATED}, radial=True, seams=seams)
    solid = mesh.capacity > 0
    outsides = [_air(setup, mesh, radii, heights, cells.stuffs, solid, heating)]
    if "tip" in bands:
        outsides.append(_heater(setup, mesh, radii, heights))
    made = alloy(setup.solder)
    low = min(made.solidus, made.liquidus - NARROWEST_MELTING)
    heat_capacity, melting = melting_heat_of(setup.solder)
    latent = np.where(cells.parts == "solder", mesh.capacity * melting / heat_capacity, 0.0)
    whole = replace(mesh, outsides=outsides, latent=latent, solidus=low, liquidus=made.liquidus)
    return JointMesh(whole, radii, heights, bands, cells.parts, solid)


def solder_stuff(name: str) -> Stuff:
    """A solder's stuff: figures of tin-lead for those with lead, of tin-silver-copper else."""
    made = alloy(name)
    like = stuff("Sn63Pb37" if made.leaded else "SAC305")
    return like._replace(density=made.density * 1e3)


def air_film(nozzle: float) -> float:
    """W/(m² K) below a hot-air nozzle of that radius [m]: a wider one blows more softly.

    The film of a jet goes with √(speed / width). Between nozzles with the same speed of air and
    nozzles with the same flow this makes 1 / width, which is taken.

    >>> air_film(4e-3), air_film(10e-3)
    (200.0, 80.0)
    """
    return min(MOST_AIR_FILM, AIR_FILM * USUAL_NOZZLE / nozzle)


def _radii(setup: Setup):
    """Edges from the outside in: fine at the joint, wider and wider towards the board's edge."""
    import numpy as np

    lead, pad = setup.lead / 2, setup.pad / 2
    marks = [0.0, lead]
    if setup.kind == THROUGH_HOLE:
        marks += [setup.hole / 2, setup.hole / 2 + PLATING]
    marks += [pad, pad + RELIEF_GAP]
    radius = TIPS[setup.tip]
    if setup.source == IRON and min(abs(radius - mark) for mark in marks) > 1e-4:
        marks.append(radius)
    marks.sort()
    edges = [0.0]
    for low, high in pairwise(marks):
        number = 1 if high - low <= 2 * PLATING else max(2, min(4, round((high - low) / 2e-4)))
        edges += list(np.linspace(low, high, number + 1)[1:])
    number = 11
    edges += list(np.geomspace(edges[-1], FIELD, number + 1)[1:])
    return np.array(edges[::-1])


def _heights(setup: Setup, heating: bool):
    import numpy as np

    body = max(setup.gap - FREE_LEAD - FILLET, 0.0)
    through = setup.kind == THROUGH_HOLE and setup.gap > FREE_LEAD + FILLET + 0.2e-3
    layers = [("bench", BENCH, 4), ("mat", setup.mat_thickness, 6)]
    if through:
        layers += [("body", body, 3), ("free lead", FREE_LEAD, 2), ("far fillet", FILLET, 1)]
    else:
        layers += [("free lead", setup.gap, 2)]
    half = setup.thickness / 2
    layers += [
        ("far copper", COPPER, 1),
        ("lower board", half, 4),
        ("plane", COPPER, 1),
        ("upper board", half, 4),
        ("near copper", COPPER, 1),
        ("near fillet", FILLET, 2),
    ]
    if heating and setup.source == IRON:
        layers.append(("tip", TIP_LENGTH, 4))
    heights, bands = [0.0], {}
    for name, thick, number in layers:
        bands[name] = (len(heights) - 1, len(heights) - 1 + number)
        parts = np.linspace(0, 1, number + 1)[1:]
        if name == "bench":
            parts = 1 - (1 - parts) ** 2.5
        if name == "upper board":
            parts = 1 - (1 - parts) ** 1.5
        start = heights[-1]
        heights += [start + thick * part for part in parts]
    return np.array(heights), bands


class _Cells:
    """What every cell is made of, and which part it belongs to."""

    def __init__(self, setup: Setup, middles, bands):
        import numpy as np

        self.setup, self.bands = setup, bands
        columns = max(end for _, end in bands.values())
        self.stuffs = [[None] * columns for _ in middles]
        self.parts = np.full((len(middles), columns), "", dtype="<U8")
        board, copper = stuff("FR-4"), stuff("copper")
        in_plane = figure("FR-4", "conductivity in plane").value
        self.made_of = {
            "tip": copper,
            "lead": copper,
            "copper": copper,
            "solder": solder_stuff(setup.solder),
            "board": Stuff((in_plane, board.conductivity), *board[1:]),
            "air": stuff("air")._replace(conductivity=GAP_CONDUCTIVITY),
            "plastic": stuff("plastic body"),
            "mat": mat_stuff(setup.mat),
            "bench": stuff("wood"),
        }
        for row, r in enumerate(middles):
            self._fill(row, "bench", ("bench",))
            self._fill(row, "mat", ("mat",))
            self._fill(row, "plastic" if r < BODY_RADIUS else "air", ("body",))
            self._fill(row, "air", ("free lead", "far fillet"))
            self._fill(row, "board", BOARD_BANDS)
            self._plane(row, r)
            if setup.kind == SURFACE:
                self._surface_joint(row, r)
            else:
                self._through_joint(row, r)
            if r < TIPS[setup.tip]:
                self._fill(row, "tip", ("tip",))

    def _fill(self, row: int, part: str, bands, made_of: Stuff | None = None) -> None:
        for band in bands:
            for column in range(*self.bands.get(band, (0, 0))):
                self.stuffs[row][column] = made_of or self.made_of[part]
                self.parts[row, column] = part

    def _plane(self, row: int, r: float) -> None:
        """The plane meets a through hole inside the board, a surface pad at the top."""
        setup, pad = self.setup, self.setup.pad / 2
        if setup.plane == NO_PLANE:
            return
        copper = self.made_of["copper"]
        if setup.plane == RELIEF and pad < r < pad + RELIEF_GAP:
            share = min(1.0, SPOKES * SPOKE_WIDTH / (2 * pi * r))
            through = self.made_of["board"].conductivity[1]
            copper = Stuff((copper.conductivity * share, through), *copper[1:])
        band = "near copper" if setup.kind == SURFACE else "plane"
        self._fill(row, "copper", (band,), copper)

    def _surface_joint(self, row: int, r: float) -> None:
        if r < self.setup.pad / 2:
            self._fill(row, "copper", ("near copper",))
            lead = r < self.setup.lead / 2
            self._fill(row, "lead" if lead else "solder", ("near fillet",))

    def _through_joint(self, row: int, r: float) -> None:
        setup = self.setup
        if r < setup.lead / 2:
            whole = ("body", "free lead", "far fillet", *BOARD_BANDS, "near fillet")
            self._fill(row, "lead", whole)
            return
        if r < setup.hole / 2:
            self._fill(row, "solder", BOARD_BANDS)
        elif r < setup.hole / 2 + PLATING:
            self._fill(row, "copper", BOARD_BANDS)
        if r < setup.pad / 2:
            self._fill(row, "solder", ("far fillet", "near fillet"))
            if r > setup.hole / 2:
                self._fill(row, "copper", ("far copper", "near copper"))


def _air(setup, mesh, radii, heights, stuffs, solid, heating) -> Outside:
    """The air above everything that is not under the tip: still, or blown from the nozzle."""
    import numpy as np

    conductance, celsius = np.zeros(solid.shape), np.full(solid.shape, setup.room)
    tip = TIPS[setup.tip] if heating and setup.source == IRON else 0.0
    for row, (outer, inner) in enumerate(pairwise(radii)):
        r = (outer + inner) / 2
        if r < tip:
            continue
        top = int(np.flatnonzero(solid[row])[-1])
        film, air = STILL_FILM, setup.room
        if heating and setup.source == HOT_AIR:
            fades = min(1.0, setup.nozzle / r)
            film = max(STILL_FILM, air_film(setup.nozzle) * fades**2)
            air = setup.room + (setup.celsius - setup.room) * fades
        k = stuffs[row][top].conductivity
        half = (heights[top + 1] - heights[top]) / 2 / (k[1] if isinstance(k, tuple) else k)
        conductance[row, top] = pi * (outer**2 - inner**2) / (1 / film + half)
        celsius[row, top] = air
    name = HOT_AIR if heating and setup.source == HOT_AIR else "air"
    return Outside(name, conductance, 0.0, conductance * celsius)


def _heater(setup, mesh, radii, heights) -> Outside:
    """The top of the tip, held at the set temperature."""
    import numpy as np

    conductance = np.zeros(mesh.capacity.shape)
    half = (heights[-1] - heights[-2]) / 2 / stuff("copper").conductivity
    rows = mesh.capacity[:, -1] > 0
    conductance[rows, -1] = (pi * (radii[:-1] ** 2 - radii[1:] ** 2))[rows] / half
    return Outside(IRON, conductance, setup.celsius)
