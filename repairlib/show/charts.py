"""Charts made with matplotlib: the life of capacitors against temperature.

The same call gives the same bytes on each run: no date, no random ids. Importing this module loads
matplotlib, so it is not part of `repairlib.show` itself.
"""

from __future__ import annotations

from collections.abc import Iterable
from itertools import cycle
from typing import NamedTuple

from matplotlib import rc_context
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.ticker import FixedLocator, NullLocator

from repairlib.core.errors import RepairlibError
from repairlib.health import CAP_YEARS, HOURS_A_YEAR, expected
from repairlib.show.canvas import INK, NEGATIVE, POSITIVE, QUIET
from repairlib.show.picture import Picture
from repairlib.show.plotting import STYLE, svg_of

COLDEST = 25.0  # °C, where the curves begin
MOST_LINES = 6
SAID_AT = (45, 65, 85)  # °C, temperatures for which the words give the life
_LABEL_STEP = 2.0  # ratio of heights at which two labels of two lines stay apart
_TICKS = (0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100)
_LOOKS = (
    (NEGATIVE, "-", "o"),
    (POSITIVE, "--", "s"),
    (INK, "-.", "^"),
    ("#8a5a00", (0, (5, 1)), "D"),
    (QUIET, (0, (1, 1)), "v"),
    ("#2f6f4f", (0, (7, 2, 1, 2)), "X"),
)


class RatedLife(NamedTuple):
    """A part, or parts alike: what to call it, its rated `hours` at `celsius`, its family."""

    label: str
    hours: float
    celsius: float = 105.0
    family: str = "aluminium general 105"

    def years(self, celsius: float) -> float:
        """Years by rule in air of that temperature, before the cap of 15 years."""
        return expected(self.family, self.hours, self.celsius, celsius).hours / HOURS_A_YEAR


def draw_life(parts: Iterable[RatedLife], at: float | None = None) -> Picture:
    """Life against the temperature of the air, one curve for each part or group of parts.

    Life in years on a scale in which each step is the same ratio; dotted above 15 years, where no
    answer is believed. `at` marks a temperature in °C, such as that inside the set. Raises
    RepairlibError for no parts, for more than six, and for ratings that cannot be.

    >>> draw_life([RatedLife("old part", 2000, 85, "aluminium general 85")])
    Life in years against the temperature of the air around the part.
    old part (2000 h at 85 °C): 3.7 years at 45 °C, 0.9 years at 65 °C, 0.2 years at 85 °C.
    No answer above 15 years is believed.
    """
    parts = list(parts)
    if not 1 <= len(parts) <= MOST_LINES:
        wrong = "not a number of curves that can be told apart"
        raise RepairlibError(f"{len(parts)} parts", wrong, f"1 to {MOST_LINES} parts")
    said = ["Life in years against the temperature of the air around the part."]
    said += [_in_words(part) for part in parts]
    with rc_context(STYLE):
        figure = Figure(figsize=(6.8, 4.6), layout="constrained")
        axes = figure.add_subplot()
        for part, look in zip(parts, cycle(_LOOKS)):
            _draw_curve(axes, part, look)
        _label_ends(axes, parts)
        hottest = max(part.celsius for part in parts)
        _finish(axes, hottest)
        if at is not None:
            said.append(_mark(axes, at, hottest))
        said.append(f"No answer above {CAP_YEARS} years is believed.")
        return Picture(svg_of(figure), "\n".join(said))


def _draw_curve(axes: Axes, part: RatedLife, look) -> None:
    colour, dashes, marker = look
    steps = int((part.celsius - COLDEST) * 2)
    if steps < 2:
        accepted = f"a rated temperature of {COLDEST + 1:g} °C or more"
        raise RepairlibError(f"{part.celsius:g} °C", "too cold for this chart", accepted)
    celsius = [COLDEST + step / 2 for step in range(steps)] + [part.celsius]
    years = [part.years(one) for one in celsius]
    believed = [year if year <= CAP_YEARS else None for year in years]
    beyond = [year if year >= CAP_YEARS else None for year in years]
    axes.plot(celsius, _or_gap(beyond), color=colour, linestyle=":", linewidth=1.2)
    axes.plot(celsius, _or_gap(believed), color=colour, linestyle=dashes, linewidth=2.2)
    marked = [one for one in range(35, int(part.celsius) + 1, 10) if part.years(one) <= CAP_YEARS]
    axes.plot(marked, [part.years(one) for one in marked], marker, color=colour, markersize=6)


def _or_gap(values):
    return [float("nan") if value is None else value for value in values]


def _label_ends(axes: Axes, parts: list[RatedLife]) -> None:
    """Each curve's name at its hot end, moved apart where they would overlap."""
    coolest = min(part.celsius for part in parts)
    column = max(part.celsius for part in parts) + 2.5
    height = 0.0
    by_height = sorted(zip(parts, cycle(_LOOKS)), key=lambda one: one[0].years(coolest))
    for part, (colour, _, _) in by_height:
        years = part.hours / HOURS_A_YEAR
        height = max(years, height * _LABEL_STEP)
        axes.annotate(
            f"{_short(part.label)}\n{_rating(part)}",
            (part.celsius, years),
            (column, height),
            color=colour,
            fontsize=11,
            verticalalignment="center",
            arrowprops={
                "arrowstyle": "-",
                "color": colour,
                "linewidth": 0.8,
                "relpos": (0, 0.5),
                "shrinkA": 0,
            },
        )


def _finish(axes: Axes, hottest: float) -> None:
    axes.set_yscale("log")
    axes.set_ylim(0.08, 150)
    axes.set_xlim(COLDEST - 2, hottest + 30)
    axes.yaxis.set_major_locator(FixedLocator(_TICKS))
    axes.yaxis.set_minor_locator(NullLocator())
    axes.set_yticklabels([f"{tick:g}" for tick in _TICKS])
    axes.xaxis.set_major_locator(FixedLocator(range(25, int(hottest) + 1, 10)))
    axes.set_xlabel("temperature of the air around the part (°C)")
    axes.set_ylabel("expected life (years, always on)")
    axes.grid(True, color="#d5dbe0", linewidth=0.7)
    axes.spines[["top", "right"]].set_visible(False)
    axes.axhline(CAP_YEARS, color=INK, linewidth=1)
    words = f"{CAP_YEARS} years: no longer life is believed"
    axes.text(
        hottest + 29, CAP_YEARS * 1.08, words, ha="right", va="bottom", color=INK, fontsize=11
    )


def _mark(axes: Axes, at: float, hottest: float) -> str:
    if not COLDEST <= at <= hottest:
        accepted = f"{COLDEST:g} °C to {hottest:g} °C"
        raise RepairlibError(f"{at:g} °C", "not on this chart", accepted)
    axes.axvline(at, color=QUIET, linewidth=1.2, linestyle=(0, (2, 2)))
    axes.text(at + 0.8, 0.09, f"inside the set: {at:g} °C", color=INK, fontsize=11, va="bottom")
    return f"A line marks {at:g} °C, the temperature inside the set."


def _short(label: str) -> str:
    """A label of at most 24 characters, the room beside the chart."""
    label = " ".join(label.split())
    return label if len(label) <= 24 else label[:23] + "…"


def _rating(part: RatedLife) -> str:
    return f"{part.hours:g} h at {part.celsius:g} °C"


def _in_words(part: RatedLife) -> str:
    lives = []
    for celsius in SAID_AT:
        if celsius <= part.celsius:
            years = part.years(celsius)
            capped = f"more than {CAP_YEARS}" if years > CAP_YEARS else f"{years:.1f}"
            lives.append(f"{capped} years at {celsius} °C")
    return f"{part.label} ({_rating(part)}): {', '.join(lives)}."
