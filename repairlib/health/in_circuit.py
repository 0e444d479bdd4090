"""What a meter sees on a part that is still on its board: the part and its neighbours together.

Covers resistors, capacitors and inductors at one frequency, and dc. Not diodes, transistors and
chips: the test voltage must be low enough (about 0.2 V or less) that none of them conducts.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Annotated

from repairlib.core.calculator import Choice, Found, Given, Text, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity, brief
from repairlib.health.neighbourhood import EXAMPLE, Part, part_named, read_neighbourhood

SERIES, PARALLEL = "series", "parallel"
LOWEST_HZ, HIGHEST_HZ = 1e-3, 1e9
SINGULAR = 1e-12  # below it fewer than four figures of the result can be trusted
MOST_STEPS = 12
_FREQUENCIES = "0 Hz (dc), or 1 mHz to 1 GHz"
NEGLIGIBLE = 1e-9  # of the impedance; smaller shares of it are rounding


@dataclass(frozen=True, slots=True)
class Seen:
    """The impedance `z` in Ω that a meter sees at `frequency` in Hz, as its models show it.

    An impedance of infinity is an open circuit. What a model cannot show is None.
    """

    z: complex
    frequency: float

    @property
    def magnitude(self) -> float:
        """|Z| in Ω. Simple ESR meters show this."""
        return abs(self.z)

    @property
    def resistance(self) -> float:
        """The resistance of the series model in Ω: the ESR of a capacitor."""
        return self.z.real

    @property
    def capacitance(self) -> float | None:
        """The capacitance of the series model in F; None when it is no capacitor."""
        if not self._reactive(self.z.imag < 0):
            return None
        return -1 / (2 * math.pi * self.frequency * self.z.imag)

    @property
    def parallel_capacitance(self) -> float | None:
        """The capacitance of the parallel model in F; None when it is no capacitor."""
        if not self._reactive(self.z.imag < 0):
            return None
        return (1 / self.z).imag / (2 * math.pi * self.frequency)

    @property
    def parallel_resistance(self) -> float:
        """The resistance of the parallel model in Ω."""
        conductance = (1 / self.z).real if self.z and math.isfinite(self.magnitude) else 0.0
        return 1 / conductance if conductance else (math.inf if self.z else 0.0)

    @property
    def inductance(self) -> float | None:
        """The inductance of the series model in H; None when it is no inductor."""
        if not self._reactive(self.z.imag > 0):
            return None
        return self.z.imag / (2 * math.pi * self.frequency)

    @property
    def dissipation(self) -> float | None:
        """The dissipation factor D; None when there is no reactance."""
        return self.z.real / abs(self.z.imag) if self._reactive(True) else None

    def _reactive(self, sign_fits: bool) -> bool:
        finite = self.frequency > 0 and math.isfinite(self.magnitude)
        return finite and sign_fits and abs(self.z.imag) > NEGLIGIBLE * self.magnitude


def look_between(parts: tuple[Part, ...], one: str, other: str, frequency: float) -> Seen:
    """What a meter sees from node `one` to node `other` of a neighbourhood.

    `frequency` in Hz; 0 is dc, where a capacitor is open and an inductor its winding resistance.
    Computed by nodal analysis. Raises RepairlibError for nodes that are not there, a frequency out
    of range, and a circuit without losses that resonates.

    >>> rows = "part,from,to,value / R1,a,b,10k / R2,a,c,5k / R3,c,b,5k / C1,a,b,100n"
    >>> parts = read_neighbourhood(rows)
    >>> look_between(parts, "a", "b", 0).resistance
    5000.0
    """
    if frequency != 0 and not LOWEST_HZ <= frequency <= HIGHEST_HZ:
        raise RepairlibError(frequency, "frequency is out of range", _FREQUENCIES)
    one, other = one.strip().casefold(), other.strip().casefold()
    nodes = sorted({node for part in parts for node in part.nodes})
    for node in (one, other):
        if node not in nodes:
            raise RepairlibError(node, "no such node here", ", ".join(nodes))
    joined = _joined_nodes(parts, nodes, frequency)
    branches = [
        (joined[part.nodes[0]], joined[part.nodes[1]], 1 / _impedance(part, frequency))
        for part in parts
        if not _is_link(part, frequency) and not _is_open(part, frequency)
    ]
    branches = [branch for branch in branches if branch[0] != branch[1]]
    start, end = joined[one], joined[other]
    if start == end:
        return Seen(0j, frequency)
    reached = _reached(branches, start)
    if end not in reached:
        return Seen(complex(math.inf), frequency)
    return Seen(_solve([b for b in branches if b[0] in reached], start, end), frequency)


def look_at(parts: tuple[Part, ...], name: str, frequency: float) -> tuple[Seen, Seen]:
    """What a meter sees across the part `name`: on the board, and with the part alone.

    >>> rows = "part,from,to,value,more / C1,a,b,100u,5 Ω / C2,a,b,100u,0.1 Ω"
    >>> parts = read_neighbourhood(rows)
    >>> on_board, alone = look_at(parts, "C1", 100e3)
    >>> round(on_board.resistance, 3), round(alone.resistance, 3)
    (0.098, 5.0)
    """
    part = part_named(parts, name)
    return (
        look_between(parts, *part.nodes, frequency),
        look_between((part,), *part.nodes, frequency),
    )


@calculator(
    topic="health",
    title="What a meter sees on the board",
    sources=("common practice",),
    cautions=("mains", "stored charge"),
)
def in_circuit_reading(
    neighbourhood: Annotated[str, Text(f"The part and those around it, {EXAMPLE}.")],
    part: Annotated[str, Text("The name of the part that the probes touch, such as C1.")],
    frequency: Annotated[
        float, Given("Hz", "The meter's test frequency; 0 is dc.", at_least=0, at_most=HIGHEST_HZ)
    ],
    model: Annotated[str, Choice((SERIES, PARALLEL), "The meter's model of the part.")] = SERIES,
) -> Found:
    """The reading of a meter on a part among its neighbours, and on the part alone.

    `neighbourhood` as neighbourhood.read_neighbourhood takes it; `part` the name of one of its
    parts; `frequency` 0 (an ohmmeter) or 1 mHz to 1 GHz; `model` the series model of ESR and LCR
    meters, or the parallel one. Diodes and chips are taken not to conduct. Raises RepairlibError
    for lines that cannot be read and a part that is not there. Source: nodal analysis.

    >>> rows = "part,from,to,value,more / C1,a,b,100u,5 Ω / C2,a,b,100u,0.1 Ω"
    >>> finding = in_circuit_reading(rows, "C1", "100 kHz")
    >>> print(finding.values["esr"], "alone", finding.values["esr_alone"])
    98.09 mΩ alone 5 Ω
    """
    parts = read_neighbourhood(neighbourhood)
    at = part_named(parts, part)
    on_board, alone = look_at(parts, at.name, frequency)
    values = {}
    for name, (measured, unit) in _shown(on_board, at, model).items():
        values[name] = _quantity(measured, unit)
        values[f"{name}_alone"] = _quantity(*_shown(alone, at, model)[name])
    return found(values, working=_steps(parts, at, on_board, model), notes=_notes(on_board, at))


def _shown(seen: Seen, part: Part, model: str) -> dict[str, tuple[float | None, str]]:
    """What the display shows of this kind of part: name to number and unit."""
    series = model == SERIES
    name = "esr" if series and part.letter == "C" else "resistance"
    rows = {name: (seen.resistance if series else seen.parallel_resistance, "Ω")}
    if seen.frequency and part.letter == "C":
        rows["capacitance"] = (seen.capacitance if series else seen.parallel_capacitance, "F")
        rows["dissipation_factor"] = (seen.dissipation, "")
    if seen.frequency and part.letter == "L":
        rows["inductance"] = (seen.inductance, "H")
    return rows


def _quantity(measured: float | None, unit: str) -> Quantity | str:
    if measured is None:
        return "none"
    return Quantity(float(f"{measured:.4g}"), unit) if math.isfinite(measured) else "open circuit"


def _steps(parts: tuple[Part, ...], at: Part, on_board: Seen, model: str) -> list[str]:
    """Each part's own impedance, so that the one that rules the reading can be seen."""
    where = f"at {brief(on_board.frequency, 'Hz')}" if on_board.frequency else "at dc"
    steps = []
    for part in parts[:MOST_STEPS]:
        own = look_between((part,), *part.nodes, on_board.frequency).magnitude
        size = brief(own, "Ω") if math.isfinite(own) else "open"
        steps.append(f"{part.name} alone, {part.nodes[0]} to {part.nodes[1]}: {size} {where}")
    if len(parts) > MOST_STEPS:
        steps.append(f"and {len(parts) - MOST_STEPS} more parts")
    size = brief(on_board.magnitude, "Ω") if math.isfinite(on_board.magnitude) else "open"
    return [*steps, f"all together, {at.nodes[0]} to {at.nodes[1]}: {size}; {model} model"]


def _notes(on_board: Seen, at: Part) -> list[str]:
    notes = ["Diodes and chips are left out: the test voltage must be too low to make them conduct"]
    if at.letter == "C" and not on_board.frequency:
        notes.append("At dc neither ESR nor capacitance can be seen: choose a frequency")
    if at.letter == "C" and on_board.frequency and on_board.capacitance is None:
        notes.append("At this frequency it does not read as a capacitor")
    return notes


def _impedance(part: Part, frequency: float) -> complex:
    omega = 2 * math.pi * frequency
    if part.letter == "R":
        return complex(part.value)
    if part.letter == "L":
        return complex(part.series, omega * part.value)
    return complex(part.series, -1 / (omega * part.value))


def _is_link(part: Part, frequency: float) -> bool:
    """Whether the part joins its nodes: a zero-ohm link, or an ideal inductor at dc."""
    return not _is_open(part, frequency) and _impedance(part, frequency) == 0


def _is_open(part: Part, frequency: float) -> bool:
    return part.letter == "C" and frequency == 0


def _joined_nodes(parts: tuple[Part, ...], nodes: list[str], frequency: float) -> dict[str, str]:
    """Each node to the one that stands for all nodes linked with it."""
    joined = {node: node for node in nodes}
    for part in parts:
        if _is_link(part, frequency):
            keep, lose = (joined[node] for node in part.nodes)
            joined = {node: keep if of == lose else of for node, of in joined.items()}
    return joined


def _reached(branches: list[tuple[str, str, complex]], start: str) -> set[str]:
    """The nodes that a path of parts joins to `start`."""
    reached, grew = {start}, True
    while grew:
        more = {n for one, other, _ in branches for n in (one, other) if {one, other} & reached}
        grew = not more <= reached
        reached |= more
    return reached


def _solve(branches: list[tuple[str, str, complex]], start: str, end: str) -> complex:
    """The voltage at `start` for 1 A from `end` into it, which is the impedance in Ω."""
    import numpy as np

    inner = sorted({node for one, other, _ in branches for node in (one, other)} - {end})
    row = {node: at for at, node in enumerate(inner)}
    admittances = np.zeros((len(inner), len(inner)), complex)
    sizes = np.zeros(len(inner))
    for one, other, admittance in branches:
        for node, far in ((one, other), (other, one)):
            if node == end:
                continue
            sizes[row[node]] += abs(admittance)
            admittances[row[node], row[node]] += admittance
            if far != end:
                admittances[row[node], row[far]] -= admittance
    # Each node is scaled by what meets there, so that mΩ and MΩ go together.
    scale = 1 / np.sqrt(sizes)
    scaled = admittances * np.outer(scale, scale)
    if np.linalg.svd(scaled, compute_uv=False)[-1] < SINGULAR:
        raise RepairlibError(
            "this neighbourhood",
            "it resonates without any loss, or its values lie too far apart",
            "its ESR or winding resistance for each part, and only values that matter",
        )
    current = np.zeros(len(inner), complex)
    current[row[start]] = scale[row[start]]
    return complex(np.linalg.solve(scaled, current)[row[start]] * scale[row[start]])
