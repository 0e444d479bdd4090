"""A joint while it is heated and while it cools: when it melts, and what gets how hot.

The mesh is in joint_mesh.py, the limits and the verdict in joint_verdict.py. A model, not a
measurement: it shows what matters and by how much, and it is no proof that a part survived.
"""

from __future__ import annotations

from dataclasses import dataclass

from repairlib.core.errors import RepairlibError
from repairlib.heat.joint_mesh import HOT_AIR, IRON, THROUGH_HOLE, JointMesh, Setup, joint_mesh
from repairlib.heat.solder_alloys import alloy
from repairlib.heat.stepping import Stepper

FLOW_TIME = 1.0  # s the heat stays on after the last solder melts
LONGEST = {IRON: 10.0, HOT_AIR: 60.0}  # s after which heating is given up
LONGEST_STEP = {IRON: 0.2, HOT_AIR: 1.0}  # s, so that heating can end soon after melting
TOLERANCE = 2.5  # K of error allowed in a step, well below what the model is worth
NEIGHBOUR_AWAY = 5e-3  # m from the joint, where nothing else is said
COOLING = 30.0  # s followed after the tool is taken away
# What the model is worth, a choice: half or twice the contact or the air moves it by about as much.
TIME_FACTOR = 2.0
MARGIN = 20.0  # K
LIMITS = (
    "A model, not a measurement: round joint, typical materials, contact and air flow of the usual "
    f"size. Its times may be wrong by a factor of {TIME_FACTOR:g}, its temperatures by "
    f"{MARGIN:g} K: what is nearer to a limit cannot be told. Measure where it matters."
)
SPOTS = (
    "joint",
    "far side",
    "board under the pad",
    "plastic at the lead",
    "neighbour",
    "board below",
    "mat top",
    "mat underside",
)


@dataclass(frozen=True)
class Heating:
    """What became of a Setup: `seconds`, and °C of every spot of `traces` at those times.

    melted, far_melted: seconds until the solder on the near and on the far side is liquid, None
    when it stayed solid. heat_on: seconds of heating. arrived: J from each surrounding while
    heated. imbalance: share of the heat that the balance does not account for. hottest: °C of all
    cells of the mesh `made` at the end of heating. asked: the heating time that was asked for, None
    when the tool stayed until the solder flowed.
    """

    setup: Setup
    seconds: object
    traces: dict[str, object]
    melted: float | None
    far_melted: float | None
    heat_on: float
    arrived: dict[str, float]
    imbalance: float
    hottest: object
    made: JointMesh
    neighbour: float
    asked: float | None = None

    @property
    def all_melted(self) -> float | None:
        """Seconds until all solder is liquid, None when some stayed solid."""
        return self.far_melted if self.setup.kind == THROUGH_HOLE else self.melted

    @property
    def timed(self) -> bool:
        """Whether `heat_on` was set, or the longest that is tried, and not the model's answer."""
        return self.asked is not None or self.all_melted is None

    @property
    def held(self) -> str:
        """How long the tool stayed, as it may be said."""
        return f"{self.heat_on:.3g} s" if self.timed else about(self.heat_on)

    def peak(self, spot: str) -> float:
        """The highest temperature of a spot in °C. Raises RepairlibError for unknown spots."""
        return float(self._trace(spot).max())

    def when(self, spot: str, celsius: float) -> float | None:
        """Seconds until a spot first reaches a temperature; None when it never does."""
        return _first(self.seconds, self._trace(spot), celsius)

    def seconds_above(self, spot: str, celsius: float) -> float:
        """How long a spot is above a temperature, in s."""
        import numpy as np

        trace = self._trace(spot)
        steps, low, high = np.diff(self.seconds), trace[:-1], trace[1:]
        span = np.where(high == low, 1.0, np.abs(high - low))
        above = np.clip((np.maximum(low, high) - celsius) / span, 0, 1)
        above = np.where(high == low, (low > celsius) * 1.0, above)
        return float((steps * above).sum())

    def _trace(self, spot: str):
        if spot not in self.traces:
            raise RepairlibError(spot, "not a spot of this joint", ", ".join(self.traces))
        return self.traces[spot]


def rounded(seconds: float) -> float:
    """A time of the model to no more digits than it is worth: whole seconds, from 10 s fives.

    >>> rounded(0.3), rounded(2.4), rounded(36.6)
    (1.0, 2.0, 35.0)
    """
    if seconds < 10:
        return float(max(1, round(seconds)))
    return 5.0 * round(seconds / 5)


def about(seconds: float) -> str:
    """A time of the model as it may be said.

    >>> about(0.3), about(2.4), about(36.6)
    ('less than 1 s', 'about 2 s', 'about 35 s')
    """
    return "less than 1 s" if seconds < 0.75 else f"about {rounded(seconds):g} s"


def heat_joint(
    setup: Setup | None = None,
    seconds: float | None = None,
    neighbour: float = NEIGHBOUR_AWAY,
    **changes,
) -> Heating:
    """Heat a joint and let it cool.

    setup: the joint (the usual one when left out); `changes` alter it, as
    `heat_joint(tip="fine", plane="solid plane")`. seconds: how long the tool stays; when left out,
    until all solder has been liquid for 1 s, at most 10 s with an iron, 60 s with hot air.
    neighbour: distance of the neighbour from the middle of the joint, in m. Raises RepairlibError
    for values out of range.

    >>> run = heat_joint()
    >>> run.melted < run.far_melted < run.heat_on
    True
    """
    setup = (setup or Setup()).but(**changes)
    if seconds is not None and not 0.1 <= seconds <= 120:
        raise RepairlibError(f"{seconds:g} s", "heating time out of range", "0.1 s to 120 s")
    if not setup.pad / 2 < neighbour <= 20e-3:
        accepted = f"beyond the pad, up to 20 mm (pad radius {setup.pad / 2 * 1e3:g} mm)"
        raise RepairlibError(f"{neighbour * 1e3:g} mm", "neighbour is not there", accepted)
    return _Run(setup, seconds, neighbour).whole()


class _Run:
    def __init__(self, setup: Setup, seconds: float | None, neighbour: float):
        self.setup, self.asked, self.neighbour = setup, seconds, neighbour
        self.hot = joint_mesh(setup)
        self.spots = _spots(self.hot, setup, neighbour)
        self.liquidus = alloy(setup.solder).liquidus
        self.times, self.rows = [], []

    def whole(self) -> Heating:
        import numpy as np

        stepper = Stepper(self.hot.mesh, TOLERANCE, longest=LONGEST_STEP[self.setup.source])
        state = begun = stepper.begin(self._start())
        self._note(0.0, state.celsius)
        for state in stepper.march(begun, self.asked or LONGEST[self.setup.source]):
            self._note(state.seconds, state.celsius)
            if self.asked is None and self._flowed():
                break
        heat_on = state.seconds
        gained = float((state.stored - begun.stored)[self.hot.solid].sum())
        flowed = sum(abs(joule) for joule in state.arrived.values())
        imbalance = abs(sum(state.arrived.values()) - gained) / flowed
        hottest = state.celsius
        self._cool(state, heat_on)
        traces = dict(zip(self.spots, np.array(self.rows).T, strict=True))
        return Heating(
            self.setup,
            np.array(self.times),
            traces,
            self._melted("joint"),
            self._melted("far side") if self._has_far() else None,
            heat_on,
            state.arrived,
            imbalance,
            hottest,
            self.hot,
            self.neighbour,
            self.asked,
        )

    def _start(self):
        """Board, part and joint at preheat; mat and bench at room; the tip at its setting."""
        import numpy as np

        celsius = np.full(self.hot.mesh.capacity.shape, self.setup.preheat)
        celsius[:, : self.hot.bands["mat"][1]] = self.setup.room
        if "tip" in self.hot.bands:
            start, end = self.hot.bands["tip"]
            celsius[:, start:end] = self.setup.celsius
        return celsius

    def _cool(self, state, heat_on: float) -> None:
        """The tool is taken away; what is left goes on from the heat it holds."""
        cold = joint_mesh(self.setup, heating=False)
        columns = cold.mesh.capacity.shape[1]
        stepper = Stepper(cold.mesh, TOLERANCE)
        begun = stepper.begin(state.celsius[:, :columns])._replace(stored=state.stored[:, :columns])
        for step in stepper.march(begun, COOLING):
            self._note(heat_on + step.seconds, step.celsius)

    def _note(self, seconds: float, celsius) -> None:
        self.times.append(seconds)
        self.rows.append([_read(celsius, spot) for spot in self.spots.values()])

    def _flowed(self) -> bool:
        """Whether all solder has been liquid for a second."""
        done = self._melted("far side" if self._has_far() else "joint")
        return done is not None and self.times[-1] >= done + FLOW_TIME

    def _has_far(self) -> bool:
        return self.setup.kind == THROUGH_HOLE

    def _melted(self, spot: str) -> float | None:
        place = list(self.spots).index(spot)
        return _first(self.times, [row[place] for row in self.rows], self.liquidus)


def _spots(made: JointMesh, setup: Setup, neighbour: float) -> dict[str, object]:
    """For every spot the cells to read: the coolest solder, or the hottest of anything else."""
    import numpy as np

    bands, latent = made.bands, made.mesh.latent
    middles = (made.radii[:-1] + made.radii[1:]) / 2
    rows = np.arange(len(middles))

    def cells(row, band, place):
        column = bands[band][0] if place == "bottom" else bands[band][1] - 1
        return np.atleast_1d(row), np.full(np.size(row), column)

    def solder(band):
        start, end = bands[band]
        where = np.argwhere(latent[:, start:end] > 0)
        return where[:, 0], where[:, 1] + start

    pad = rows[middles < setup.pad / 2]
    under = pad[middles[pad] > (setup.hole / 2 + 25e-6 if setup.kind == THROUGH_HOLE else 0)]
    beside = int(np.abs(middles - neighbour).argmin())
    spots = {"joint": ("coolest", solder("near fillet"))}
    if setup.kind == THROUGH_HOLE:
        far = "far fillet" if "far fillet" in bands else "far copper"
        spots["far side"] = ("coolest", solder(far))
    spots["board under the pad"] = ("mean", cells(under, "upper board", "top"))
    if "body" in bands:
        lead = rows[middles < setup.lead / 2]
        spots["plastic at the lead"] = ("hottest", cells(lead, "body", "top"))
    spots["neighbour"] = ("hottest", cells(beside, "near copper", "top"))
    spots["board below"] = ("hottest", cells(pad, "far copper", "bottom"))
    spots["mat top"] = ("hottest", cells(rows, "mat", "top"))
    spots["mat underside"] = ("hottest", cells(rows, "mat", "bottom"))
    return spots


def _read(celsius, spot) -> float:
    how, cells = spot
    found = celsius[cells]
    return float({"coolest": found.min, "hottest": found.max, "mean": found.mean}[how]())


def _first(seconds, celsius, level: float) -> float | None:
    for place, value in enumerate(celsius):
        if value >= level - 1e-9:
            if place == 0:
                return 0.0
            low, early = celsius[place - 1], seconds[place - 1]
            share = (level - low) / (value - low)
            return float(early + share * (seconds[place] - early))
    return None
