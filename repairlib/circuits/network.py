"""A circuit as equations: nodal analysis of what is straight, a few ports for what is not.

The straight part is inverted once. Each port of a part that follows no straight line is then one
unknown current, and ports.py solves for those few alone, however many points there are.
"""

from __future__ import annotations

from typing import Any

from repairlib.circuits.laws import law_of
from repairlib.circuits.parts import ZERO, CircuitPart
from repairlib.circuits.ports import ACROSS, Ports
from repairlib.core.errors import RepairlibError


class Network:
    """The equations of a circuit; `admittances` in S of its resistors, capacitors, inductors.

    A part whose admittance is None is not there; one that is infinite joins its points. Sources
    are the columns: voltage sources and currents first, then one current for each part of
    `histories`, which the steps of time feed.
    """

    def __init__(
        self,
        parts: tuple[CircuitPart, ...],
        admittances: dict[str, complex | None],
        histories: tuple[str, ...] = (),
    ):
        import numpy as np

        self.parts = parts
        self.points = sorted({point for part in parts for point in part.nodes} - {ZERO})
        self.laws = [law for law in map(law_of, parts) if law]
        self.driven = [part for part in parts if part.letter == "V" or _is_plain_current(part)]
        joins = [part for part in parts if _joins(part, admittances)]
        self._row = {point: at for at, point in enumerate(self.points)}
        self._branch = {part.name: len(self.points) + at for at, part in enumerate(joins)}
        size = len(self.points) + len(joins)
        straight = np.zeros((size, size), complex)
        for part in parts:
            admittance = admittances.get(part.name)
            if part.letter == "R":
                admittance = 1 / part.value
            elif part.letter == "V" and part.more["series"]:
                admittance = 1 / part.more["series"]
            if part.name not in self._branch and admittance:
                straight += admittance * self._between(size, part.nodes)
        for part in joins:
            ends, branch = self._ends(size, part.nodes), self._branch[part.name]
            straight[:, branch] += ends
            straight[branch, :] += ends
        ends = [port for law in self.laws for port in law.ports]
        for port in ends:
            straight += ACROSS * self._between(size, port)
        if not straight.imag.any():
            straight = straight.real
        sources = np.zeros((size, len(self.driven) + len(histories)))
        for column, part in enumerate(self.driven):
            if part.name in self._branch:
                sources[self._branch[part.name], column] = 1
            elif part.letter == "V":
                sources[:, column] = self._ends(size, part.nodes) / part.more["series"]
            else:
                sources[:, column] = -self._ends(size, part.nodes)
        nodes_of = {part.name: part.nodes for part in parts}
        for column, name in enumerate(histories, len(self.driven)):
            sources[:, column] = self._ends(size, nodes_of[name])
        pushed = -np.array([self._ends(size, port) for port in ends]).reshape(-1, size).T
        self._pushed = pushed
        try:
            inverse = np.linalg.inv(straight)
        except np.linalg.LinAlgError:
            raise RepairlibError(
                "this circuit", "it has no single answer", "resistances in what is joined directly"
            ) from None
        self.from_sources = inverse @ sources  # points and branches, for 1 of each source
        self.from_ports = inverse @ pushed  # the same for 1 A into each port
        self.port_sources = -pushed.T @ self.from_sources
        self.ports = Ports(self.laws, -pushed.T @ self.from_ports)

    def ends_of(self, part: CircuitPart):
        """The row that takes the voltage across a part out of a solution."""
        return self._ends(len(self.from_sources), part.nodes)

    def branch_of(self, part: CircuitPart) -> int | None:
        """Where the current of a part that joins its points stands in a solution; else None."""
        return self._branch.get(part.name)

    def volts_of(self, solution) -> dict[str, complex]:
        """The voltages of a solution by their points, the zero point too."""
        return {ZERO: 0.0} | {point: solution[at].item() for point, at in self._row.items()}

    def amps_of(self, solution, given, at_ports, reactive: dict) -> dict[str, Any]:
        """The current [A] through each part from its first point, for one solution or row by row.

        `given` are the sources, `at_ports` the currents of the ports, `reactive` those of
        capacitors and inductors, by name. Of a regulator it is that into its input.
        """
        found, port, ports = {}, {}, 0
        for law in self.laws:
            port[law.part.name] = ports
            ports += len(law.ports)
        for part in self.parts:
            across = solution @ self.ends_of(part)
            branch = self.branch_of(part)
            if part.name in port:
                found[part.name] = at_ports[..., port[part.name]]
            elif branch is not None:
                found[part.name] = solution[..., branch]
            elif part.name in reactive:
                found[part.name] = reactive[part.name]
            elif part.letter == "V":
                gives = given[..., self.driven.index(part)]
                found[part.name] = (across - gives) / part.more["series"]
            elif part.letter == "I":
                found[part.name] = part.value + 0 * across
            else:
                found[part.name] = across / part.value
        return found

    def port_volts(self, solution):
        """The voltages of the ports, for one solution or row by row."""
        return -solution @ self._pushed

    def _ends(self, size: int, nodes: tuple[str, str]):
        import numpy as np

        ends = np.zeros(size)
        for point, sign in zip(nodes, (1, -1), strict=True):
            if point != ZERO:
                ends[self._row[point]] += sign
        return ends

    def _between(self, size: int, nodes: tuple[str, str]):
        import numpy as np

        ends = self._ends(size, nodes)
        return np.outer(ends, ends)


def no_answer(parts: tuple[CircuitPart, ...], where: str) -> RepairlibError:
    """The error for a circuit whose laws could not all be held."""
    return RepairlibError(
        ", ".join(part.name for part in parts),
        f"no currents and voltages were found that hold every law {where}",
        "values a bench has; a small resistance in series with each source helps",
    )


def _is_plain_current(part: CircuitPart) -> bool:
    return part.letter == "I" and not part.load


def _joins(part: CircuitPart, admittances: dict[str, complex | None]) -> bool:
    if part.letter == "V":
        return not part.more["series"]
    return part.letter == "L" and admittances.get(part.name) == float("inf")
