"""What may stand in the place of a chip tantalum, and what its ESR does to a linear regulator.

A regulator that was made for tantalum may need resistance in its output capacitor: with less it
swings, and its output then has a voltage on it that no meter for dc shows.
"""

from __future__ import annotations

from typing import NamedTuple

from repairlib.core.quantity import brief, brief_range
from repairlib.core.series import next_up
from repairlib.health import POLYMER, tantalum_rating

ORDINARY, LOW_ESR = "ordinary tantalum", "low-ESR tantalum"
CERAMIC = "class 2 ceramic"
# ESR [Ω] at 100 kHz of new parts: orders of magnitude, from memory. The data sheet decides.
USUAL_ESR = {
    ORDINARY: (0.5, 4.0),
    LOW_ESR: (0.05, 1.0),
    POLYMER: (0.005, 0.2),
    CERAMIC: (0.002, 0.02),
}
IN_IT, PARTLY, OUT_OF_IT = "in the window", "partly in the window", "out of the window"
BIAS_LEFT = 0.5  # of a class 2 ceramic at half its rating: a 10 µF 10 V 0805 has 5 µF at 5 V
CERAMIC_TIMES = 2  # rated voltage by the rail: LP2950 data sheet
CERAMIC_RATINGS = (6.3, 10.0, 16.0, 25.0, 35.0, 50.0, 100.0)  # from memory
OF_LOW, OF_HIGH = (
    2.0,
    0.4,
)  # of the window, for a resistor: LP2950 data sheet, 0.1 to 2 of 0.05 to 5
LARGEST_CERAMIC = 330e-6  # F that one part has at all; from memory
CERAMIC_SIZE = {"2012": "0805", "3216": "1206", "3528": "1210"}  # on the same pads; from memory


class StandIn(NamedTuple):
    """Another kind in the place: rating [V] or None where none is made, capacitance, conditions."""

    kind: str
    rated: float | None
    farad: float
    conditions: tuple[str, ...]

    @property
    def short(self) -> str:
        """Value and rating in words."""
        if self.rated is None:
            return "none is made for this rail"
        if self.kind == CERAMIC and self.farad > LARGEST_CERAMIC:
            return f"none is made with {brief(self.farad, 'F')}"
        return f"{brief(self.farad, 'F')} or more, {brief(self.rated, 'V')} or more"

    def __str__(self) -> str:
        conditions = () if self.short.startswith("none") else self.conditions
        return " ".join((f"{self.kind}: {self.short}.", *conditions))


def against_window(kind: str, low: float, high: float) -> str:
    """Where the usual ESR of a kind lies against a window [Ω] that a regulator asks for.

    >>> against_window("ordinary tantalum", 0.3, 22), against_window("class 2 ceramic", 0.3, 22)
    ('in the window', 'out of the window')
    """
    least, most = USUAL_ESR[kind]
    if low <= least and most <= high:
        return IN_IT
    return OUT_OF_IT if most < low or least > high else PARTLY


def resistor_for(low: float, high: float) -> tuple[float, float] | None:
    """Resistors [Ω] in series with a ceramic that bring it well into a window; None where none do.

    >>> resistor_for(0.05, 5)
    (0.1, 2.0)
    """
    least, most = OF_LOW * low, OF_HIGH * high
    return (least, most) if 0 < least <= most else None


def in_window(low: float, high: float) -> str:
    """Each kind against a window of ESR [Ω], in one line.

    >>> in_window(0.3, 22).split("; ")[0]
    'ordinary tantalum in the window'
    """
    return "; ".join(f"{kind} {against_window(kind, low, high)}" for kind in USUAL_ESR)


def stability(low: float | None, high: float | None) -> tuple[str, ...]:
    """What each kind does to a regulator with this window of ESR [Ω], in sentences.

    Without a window nothing is judged, and it is said what to look up.
    """
    if low is None or high is None:
        return (
            "Look up in the regulator's data sheet which ESR its output capacitor must have: some "
            "ask for 0.3 Ω to 22 Ω, others for 0.05 Ω to 5 Ω, and newer ones bear ceramics of "
            "5 mΩ. Without it nobody can tell whether a ceramic or polymer part makes it swing.",
            LOOK,
        )
    said = []
    for kind, usual in USUAL_ESR.items():
        words = f"{kind}, usually {brief_range(*usual, 'Ω')}: {against_window(kind, low, high)}"
        if kind == CERAMIC and against_window(kind, low, high) != IN_IT:
            series = resistor_for(low, high)
            if series and low > USUAL_ESR[kind][0]:
                words += f"; with {brief(next_up(series[0], 'E6'), 'Ω')} in series it is in it"
        said.append(f"{words}.")
    window = f"The regulator asks for an ESR of {brief_range(low, high, 'Ω')}"
    return (
        f"{window}; the usual values here are from memory, the data sheet decides.",
        *said,
        LOOK,
    )


LOOK = "Whatever goes in: look at the output with an oscilloscope, with a load that steps."


def stand_ins(rail: float, farad: float, pads: str = "") -> tuple[StandIn, ...]:
    """Polymer and ceramic in the place of a tantalum of `farad` [F] on a rail of `rail` volts.

    `pads` is the EIA number of the case that fits, for the ceramic that stands on the same pads.

    >>> [str(one.rated) for one in stand_ins(5, 22e-6)]
    ['6.3', '10.0']
    """
    volts = abs(rail)
    polymer = tantalum_rating(POLYMER, volts)
    rated = float(polymer.rated_voltage) if not polymer.verdict else None
    made = (one for one in CERAMIC_RATINGS if one >= CERAMIC_TIMES * volts)
    size = CERAMIC_SIZE.get(pads[:4], "")
    on_pads = f"A {size} stands on these pads." if size else "Compare its size with the pads."
    return (
        StandIn(
            POLYMER,
            rated,
            farad,
            (
                "Its ESR is far lower, and it leaks more.",
                "It is polar too: its bar is the plus. Reversed it shorts; it burns less readily.",
            ),
        ),
        StandIn(
            CERAMIC,
            next(made, None),
            next_up(farad / BIAS_LEFT, "E6"),
            (
                "X7R or X5R; half and more of its value is lost under voltage, so read the maker's "
                "curve of that very part and choose by what is left.",
                on_pads,
                "It has no plus.",
            ),
        ),
    )
