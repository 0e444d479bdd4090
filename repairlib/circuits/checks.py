"""What a circuit may not be: without a zero point, with a point that floats, a loop of sources."""

from __future__ import annotations

from repairlib.circuits.parts import KINDS, ZERO, ZERO_NAMES, CircuitPart
from repairlib.core.errors import RepairlibError

BLOCKS_DC = ("C", "I")
MAY_END_OPEN = ("V", "P", "U")  # a source or a regulator without a load


def checked(parts: tuple[CircuitPart, ...]) -> tuple[CircuitPart, ...]:
    """The parts, once they are known to make a circuit.

    Raises RepairlibError, one line that names points and parts, for what cannot be worked out.

    >>> from repairlib.circuits.parts import read_circuit
    >>> checked(read_circuit("part,from,to,value / V1,a,0,9 V / R1,a,0,1k / C1,b,a,1u"))
    Traceback (most recent call last):
    repairlib.core.errors.RepairlibError: 'b': only C1 ends on this point, nothing can flow. Accepted: a second part on it, or the name of the point that was meant: 0, a
    """  # noqa: E501
    points = sorted({point for part in parts for point in part.nodes})
    if ZERO not in points:
        raise RepairlibError(", ".join(points), "no zero point", " or ".join(ZERO_NAMES))
    for point in points:
        on_it = [part for part in parts if point in part.nodes]
        if len(on_it) == 1 and point != ZERO and on_it[0].letter not in MAY_END_OPEN:
            others = ", ".join(one for one in points if one != point)
            raise RepairlibError(
                point,
                f"only {on_it[0].name} ends on this point, nothing can flow",
                f"a second part on it, or the name of the point that was meant: {others}",
            )
    _check_paths(parts, points)
    _check_loops(parts)
    return parts


def _check_paths(parts: tuple[CircuitPart, ...], points: list[str]) -> None:
    """Each point has a way to zero on which dc can flow."""
    group = {point: point for point in points}
    for part in parts:
        if part.letter not in BLOCKS_DC:
            one, other = (ZERO, part.nodes[1]) if part.letter == "U" else part.nodes
            _join(group, one, other)
    floating = [point for point in points if group[point] != group[ZERO]]
    if floating:
        near = [part.name for part in parts if floating[0] in part.nodes]
        kinds = "capacitors, current sources and inputs of regulators"
        raise RepairlibError(
            floating[0],
            f"this point floats: no dc way to the zero point, only {kinds} ({', '.join(near)})",
            "a resistor from it to the zero point, such as 1 MΩ",
        )


def _check_loops(parts: tuple[CircuitPart, ...]) -> None:
    """No loop of sources and windings that have no resistance."""
    group = {point: point for part in parts for point in (*part.nodes, ZERO)}
    held: list[CircuitPart] = []
    for part in parts:
        if not _holds_volts(part):
            continue
        held.append(part)
        one, other = (ZERO, part.nodes[1]) if part.letter == "U" else part.nodes
        if group[one] == group[other]:
            names = ", ".join(each.name for each in held)
            kinds = " or ".join(KINDS[letter].name for letter in ("V", "P", "L"))
            raise RepairlibError(
                names,
                f"a loop of voltage sources without resistance, closed by {part.name}",
                f"a series resistance for a {kinds} in it, such as 0.1 Ω",
            )
        _join(group, one, other)


def _holds_volts(part: CircuitPart) -> bool:
    """Whether the part fixes the voltage between two points at dc, whatever flows."""
    inside = {"V": "series", "L": "winding"}.get(part.letter)
    return part.letter in ("P", "U") or bool(inside and not part.more.get(inside))


def _join(group: dict[str, str], one: str, other: str) -> None:
    keep, lose = group[one], group[other]
    for point, of in group.items():
        if of == lose:
            group[point] = keep
