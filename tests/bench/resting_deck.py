"""The unpowered board as ngspice reads it, written from the list of its parts."""

from tests.circuits import ngspice


def deck_of(parts) -> str:
    """A line or two for each part: resistors, capacitors, inductors, junctions, sources."""
    return "\n".join(_lines(at, part) for at, part in enumerate(parts))


def node(name: str) -> str:
    """The name of a point in a deck."""
    return name.replace(" ", "_").replace("+", "p").replace("-", "m")


def _lines(at: int, part) -> str:
    one, other, inside = *map(node, part.nodes), f"x{at}"
    if part.letter == "C":
        esr = part.more["esr"] or 1e-6
        return f"C{at} {one} {inside} {part.value}\nR{at}s {inside} {other} {esr}"
    if part.letter == "L":
        winding = part.more["winding"] or 1e-6
        return f"L{at} {one} {inside} {part.value}\nR{at}s {inside} {other} {winding}"
    if part.letter == "D":
        model = f".model d{at} D(Is={part.value} N={part.more['n']})"
        return f"D{at} {one} {other} d{at}\nR{at}l {one} {other} 1g\n{model}"
    if part.letter == "V":
        return f"V{at} {one} {inside} {part.value}\nR{at}s {inside} {other} {part.more['series']}"
    assert part.letter == "R", part
    return f"R{at} {one} {other} {part.value}"


def volts_between(folder, parts, one: str, other: str) -> float:
    """The volts from one point to another at rest."""
    said = ngspice.run(folder, f"{deck_of(parts)}\n.op\n.print op v({node(one)}) v({node(other)})")
    row = next(line for line in said.splitlines() if line.startswith("0\t"))
    numbers = [float(text) for text in row.split()[1:]]
    return numbers[0] - (numbers[1] if other != "0" else 0.0)


def ohms_between(folder, parts, one: str, other: str, hertz: float) -> float:
    """The size of the impedance between two points at one frequency."""
    source = f"I0 {node(other)} {node(one)} dc 0 ac 1\n.ac lin 1 {hertz} {hertz}"
    across = f"vm({node(one)},{node(other)})" if other != "0" else f"vm({node(one)})"
    said = ngspice.run(folder, f"{deck_of(parts)}\n{source}\n.print ac {across}")
    return float(next(line for line in said.splitlines() if line.startswith("0\t")).split()[2])
