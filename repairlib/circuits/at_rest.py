"""The dc operating point of a circuit, and how small signals go through it there.

At dc a capacitor is open, an inductor its winding, a sine its mean, which is 0.
"""

from __future__ import annotations

from collections.abc import Iterable
from math import inf, pi
from typing import NamedTuple

from repairlib.circuits.checks import checked
from repairlib.circuits.network import Network, no_answer
from repairlib.circuits.parts import CircuitPart
from repairlib.core.errors import RepairlibError


class OperatingPoint(NamedTuple):
    """`volts` at each point against zero; `amps` through each part from its first point."""

    volts: dict[str, float]
    amps: dict[str, float]


def operating_point(parts: tuple[CircuitPart, ...]) -> OperatingPoint:
    """Voltages [V] and currents [A] once everything has come to rest.

    Raises RepairlibError for what is no circuit (checks.py). Source: nodal analysis; diodes by
    Newton's method.

    >>> from repairlib.circuits.parts import read_circuit
    >>> rows = "part,from,to,value,more / P1,a,0,12 V,limit 1 A / R1,a,0,6 Ω,"
    >>> point = operating_point(read_circuit(rows))
    >>> point.volts["a"], point.amps["P1"]
    (6.0, -1.0)
    """
    network, sources, solution, at_ports = _rest(checked(parts))
    reactive = {
        part.name: float(network.ends_of(part) @ solution) * (_at_dc(part) or 0.0)
        for part in parts
        if part.letter in "CL" and network.branch_of(part) is None
    }
    amps = network.amps_of(solution, sources, at_ports, reactive)
    return OperatingPoint(
        network.volts_of(solution), {name: float(one) for name, one in amps.items()}
    )


def small_signals(
    parts: tuple[CircuitPart, ...], source: str, frequencies: Iterable[float]
) -> list[dict[str, complex]]:
    """The voltage [V] at each point for 1 V (or 1 A) of ac from `source`, at each frequency [Hz].

    Laws that are not straight are taken by their slope at the operating point. Raises
    RepairlibError for a source that is not there and a frequency that is not above 0.

    >>> from repairlib.circuits.parts import read_circuit
    >>> rows = "part,from,to,value / V1,a,0,9 V / R1,a,b,1k / C1,b,0,1u"
    >>> (found,) = small_signals(read_circuit(rows), "V1", [159.15494])
    >>> abs(found["b"])
    0.7071
    """
    network, *_ = _rest(checked(parts))
    names = [part.name.casefold() for part in network.driven]
    if source.casefold() not in names:
        accepted = ", ".join(part.name for part in network.driven) or "a circuit with a source"
        raise RepairlibError(source, "no such source here", accepted)
    answers = []
    for hertz in frequencies:
        if not 0 < hertz < inf:
            raise RepairlibError(hertz, "frequency is out of range", "a number in Hz above 0 Hz")
        reactive = {part.name: _admittance(part, 2 * pi * hertz) for part in parts}
        ac = Network(parts, reactive)
        column = names.index(source.casefold())
        solution = ac.from_sources[:, column]
        if ac.laws:
            pushed = network.ports.slopes_in(ac.ports.ohms) @ ac.port_sources[:, column]
            solution = solution + ac.from_ports @ pushed
        answers.append(ac.volts_of(solution))
    return answers


def _rest(parts: tuple[CircuitPart, ...]):
    """The network at dc, its sources, its solution, and the currents of its ports."""
    import numpy as np

    network = Network(parts, {part.name: _at_dc(part) for part in parts})
    sources = np.array([_mean(part) for part in network.driven])
    opened = network.port_sources @ sources
    pushed = network.ports.currents(opened)
    if pushed is None:
        raise no_answer(parts, "at dc")
    solution = network.from_sources @ sources + network.from_ports @ pushed
    return network, sources, solution, network.ports.at(opened, pushed)[1]


def _mean(part: CircuitPart) -> float:
    """What a source gives at dc."""
    return 0.0 if part.more.get("mains") else part.value


def _at_dc(part: CircuitPart) -> float | None:
    if part.letter == "L":
        return 1 / part.more["winding"] if part.more["winding"] else inf
    return None


def _admittance(part: CircuitPart, omega: float) -> complex | None:
    if part.letter == "C":
        return 1 / complex(part.more["esr"], -1 / (omega * part.value))
    if part.letter == "L":
        return 1 / complex(part.more["winding"], omega * part.value)
    return None
