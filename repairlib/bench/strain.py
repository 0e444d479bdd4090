"""What parts bear above their rating and the wrong way round, by family, and let through then.

Where no source stands beside a figure it is a choice of this workbook, of the right size from
common practice: a wet aluminium leaks, warms and bursts, a chip tantalum turns into a short within
seconds to minutes and burns if enough current feeds it, a ceramic bears much more than is printed.
"""

from __future__ import annotations

from math import exp, inf
from typing import TYPE_CHECKING, NamedTuple

from repairlib.circuits import CircuitPart

if TYPE_CHECKING:
    from repairlib.bench.board_part import BoardPart

LEAKY = 0.1  # s, resistance times capacitance of one that stood reversed
"""Sound it is some 100 s: a leakage of 0.01 CV in IEC 60384-4, from memory."""
REVERSE_VOLTS = 1.5  # of a wet aluminium at most: GE 23A
TANTALUM_REVERSE_PART, TANTALUM_REVERSE_VOLTS = 0.1, 1.0  # of its rating, and at most; AVX


class Against(NamedTuple):
    """The wrong way round: a junction with a resistance in s/F behind it, and how long it bears.

    `volts` against it are borne for ever, more for `bears` s, e times less each `steps` V more.
    """

    saturation: float  # A
    n: float
    seconds_ohm: float
    volts: float
    bears: float  # s
    steps: float = inf  # V


class Family(NamedTuple):
    """`times` its rating a part bears for ever; then for `bears` s, e times less each `steps` more.

    `seconds_ohm` is the resistance in s/F, of a diode in Ω, of what flows above; 0 for nothing.
    A diode is ended by its heat alone.
    """

    times: float
    bears: float
    steps: float
    seconds_ohm: float
    against: Against | None = None


WET, TANTALUM, CERAMIC, JUNCTION, REGULATOR = "wet", "tantalum", "ceramic", "junction", "regulator"
FAMILIES = {
    # 1.15 times is the surge voltage of IEC 60384-4, from memory; reversed µA below 1 V, much above
    # 2 V: GE 23A has at most 1.5 V.
    WET: Family(1.15, 1800.0, 0.05, 10e-3, Against(1e-9, 5.0, 3e-3, REVERSE_VOLTS, 600.0, 2.5)),
    # Steady volts up to its rating; reversed peaks of a tenth of it, at most 1 V: AVX.
    TANTALUM: Family(
        1.02, 600.0, 0.06, 20e-3,
        Against(1e-9, 2.0, 30e-6, TANTALUM_REVERSE_VOLTS, 5.0),
    ),
    # 2.5 times its rating is the test of IEC 60384-21, for some seconds; from memory.
    CERAMIC: Family(2.5, 10.0, 0.3, 0.0),
    # A surge diode breaks through at 1.1 times its stand-off volts, others soon; from memory.
    JUNCTION: Family(1.1, inf, inf, 0.3),
    # Data sheets of regulators ask for a diode where more than 7 V may come backwards; from memory.
    REGULATOR: Family(1.1, 30.0, 0.1, 0.0, Against(0.0, 1.0, 0.0, 7.0, 2.0)),
}  # fmt: skip


def family_of(part: BoardPart) -> str:
    """The family of a part, by its letter and its words; "" for one that is never strained.

    >>> from repairlib.bench.practice_set import demo_set
    >>> switch = demo_set("network switch")
    >>> [family_of(switch.part(name)) for name in ("C2", "C3", "D1", "U1", "R1")]
    ['tantalum', 'ceramic', 'junction', 'regulator', '']
    """
    letter = part.circuit.letter if part.circuit and not part.mains else ""
    if letter == "C":
        return TANTALUM if "tantalum" in part.what else CERAMIC if part.plus is None else WET
    return {"D": JUNCTION, "U": REGULATOR}.get(letter, "")


def most_volts(part: BoardPart, rated: float | None) -> float:
    """The volts that a part bears for ever, `rated` of one that was fitted; inf where unknown."""
    family = FAMILIES.get(family_of(part))
    printed = rated or part.rated
    return family.times * printed if family and printed else inf


def seconds_borne(part: BoardPart, rated: float | None, volts: float) -> float:
    """How long a part bears so many volts the right way round.

    >>> from repairlib.bench.practice_set import demo_set
    >>> tantalum = demo_set("network switch").part("C2")
    >>> [float(f"{seconds_borne(tantalum, 10.0, volts):.2g}") for volts in (10, 11, 12, 13, 20)]
    [inf, 160.0, 30.0, 5.6, 4.8e-05]
    """
    if volts <= most_volts(part, rated):
        return inf
    family = FAMILIES[family_of(part)]
    over = volts / (rated or part.rated) - family.times
    return family.bears * exp(-over / family.steps)


def seconds_against(part: BoardPart, rated: float | None, volts: float) -> float:
    """How long a part bears so many volts the wrong way round."""
    family = FAMILIES.get(family_of(part))
    if family is None or family.against is None:
        return inf
    most = family.against.volts
    if family_of(part) == TANTALUM and (rated or part.rated):
        most = min(most, TANTALUM_REVERSE_PART * (rated or part.rated))
    law = family.against
    return law.bears * exp((most - volts) / law.steps) if volts > most else inf


def leak_ohm(farad: float) -> float:
    """The leak in Ω that is left in a capacitor which stood the wrong way round under power."""
    return LEAKY / farad


def paths_against(made: CircuitPart, family: str = WET) -> tuple[CircuitPart, ...]:
    """What a capacitor lets through the wrong way round, beside itself."""
    law = FAMILIES[family].against or FAMILIES[WET].against
    assert law is not None
    one, other = made.nodes
    inside = f"against {made.name.casefold()}"
    return (
        CircuitPart(f"R beside {made.name}", made.nodes, leak_ohm(made.value)),
        CircuitPart(f"D against {made.name}", (one, inside), law.saturation, {"n": law.n}),
        CircuitPart(f"R against {made.name}", (inside, other), law.seconds_ohm / made.value),
    )


def paths_beyond(
    part: BoardPart, made: CircuitPart, rated: float | None
) -> tuple[CircuitPart, ...]:
    """What a part lets through above the volts that it bears, of a diode the wrong way."""
    family = FAMILIES[family_of(part)]
    if not family.seconds_ohm:
        return ()
    name = made.name.casefold()
    one, other = made.nodes if made.letter == "C" else made.nodes[::-1]
    ohm = family.seconds_ohm / (made.value if made.letter == "C" else 1.0)
    inside, above = f"beyond {name}", f"above {name}"
    return (
        CircuitPart(f"D beyond {made.name}", (one, inside), 1e-9, {"n": 1.0}),
        CircuitPart(f"R beyond {made.name}", (inside, above), ohm),
        CircuitPart(
            f"V beyond {made.name}", (above, other), most_volts(part, rated),
            {"mains": 0.0, "series": 0.0},
        ),
    )  # fmt: skip
