"""Supplies as a bench has them, drawn at random, and every fault that a part of them can have."""

from dataclasses import replace
from random import Random

from repairlib.circuits import CircuitPart, aged, opened, shorted

ESR = (0.0, 1e-3, 0.02, 0.1, 0.5, 2.0, 10.0, 50.0)
REGULATED = (3.3, 5.0, 9.0, 12.0, 15.0)
FLOATING, METER, FUSE = 1e9, 10e6, 50e-3  # Ω


def random_supply(random: Random) -> tuple[CircuitPart, ...]:
    """A sound supply of about 8 to 35 parts: the source, a rectifier, regulators, their loads."""
    parts = _source(random)
    parts += _reservoir(random, "C1", "rail", random.choice((100e-6, 470e-6, 2200e-6, 10e-3)))
    parts += _consumer(random, 1, "rail")
    points = ["rail"]
    for at in range(1, random.randint(0, 2) + 1):
        behind = random.choice(points)
        parts += _regulator(random, at, behind)
        points.append(f"out{at}")
    for at in range(random.randint(0, 4)):
        parts += _branch(random, at, random.choice(points))
    if random.random() < 0.4:
        one, other = random.sample(sorted(_points(parts)), 2)
        parts.append(CircuitPart("R99", (one, other), METER))
    return _grounded(parts)


def random_fault(random: Random, parts: tuple[CircuitPart, ...]) -> tuple[CircuitPart, ...]:
    """The supply with one of its parts broken, in one of the ways in which that kind breaks."""
    return random.choice(faults_of(random.choice(_breakable(parts)), parts))


def faults_of(part: CircuitPart, parts: tuple[CircuitPart, ...]):
    """The supply with each fault that this part can have."""
    found = [opened(parts, part.name), shorted(parts, part.name), leaking(parts, part)]
    if part.letter == "C":
        found += [aged(parts, part.name, share, 1) for share in (0.5, 0.01)]
        found += [_with(parts, part, {**part.more, "esr": ohm}) for ohm in ESR]
    if part.letter == "D":
        found += [_changed(parts, part, replace(part, nodes=part.nodes[::-1]))]
    if part.letter in "RI":
        found += [_changed(parts, part, replace(part, value=part.value * by)) for by in (0.1, 10)]
    return found


def leaking(parts: tuple[CircuitPart, ...], part: CircuitPart, ohm: float = 47.0):
    """The supply with a leak across a part."""
    return (*parts, CircuitPart(f"R of {part.name}", part.nodes, ohm))


def _breakable(parts):
    return [part for part in parts if part.letter != "V" and part.value != FLOATING]


def _with(parts, part, more):
    return _changed(parts, part, replace(part, more=more))


def _changed(parts, part, made):
    return tuple(made if one is part else one for one in parts)


def _source(random: Random) -> list[CircuitPart]:
    """What feeds the supply, as far as the point `rail`: the mains, or a bench supply."""
    if random.random() < 0.2:
        value, limit = random.choice((9.0, 12.0, 24.0)), random.choice((0.02, 0.1, 0.5, 2.0))
        parts = [CircuitPart("P1", ("dc", "0"), value, {"limit": limit})]
        return parts + _in_series(random, "dc", "rail")
    volts, ohm = random.choice((6.0, 9.0, 12.0, 18.0, 24.0)), random.choice((0.2, 1.0, 5.0, 20.0))
    more = {"mains": random.choice((50.0, 60.0)), "series": ohm}
    kind = random.choice(("half wave", "bridge", "bridge", "centre tap"))
    back = {"half wave": "0", "bridge": "b", "centre tap": "0"}[kind]
    parts = [CircuitPart("V1", ("t", back), volts, more), *_in_series(random, "t", "a")]
    parts.append(_diode("D1", "a", "d"))
    if kind == "bridge":
        parts += [_diode("D2", "b", "d"), _diode("D3", "0", "a"), _diode("D4", "0", "b")]
    if kind == "centre tap":
        parts += [CircuitPart("V2", ("0", "b"), volts, more), _diode("D2", "b", "d")]
    return [*parts, CircuitPart("R98", ("d", "rail"), FUSE)]


def _in_series(random: Random, one: str, other: str) -> list[CircuitPart]:
    """A fuse, or a lamp that stands in for it."""
    if random.random() < 0.3:
        hot = random.choice((6.0, 24.0, 96.0))
        lamp = {"cold": hot / 10, "rated": 144.0 / hot}
        return [CircuitPart("H1", (one, other), hot, lamp)]
    return [CircuitPart("R97", (one, other), FUSE)]


def _diode(name: str, one: str, other: str) -> CircuitPart:
    return CircuitPart(name, (one, other), 10e-9, {"n": 1.8})


def _reservoir(random: Random, name: str, point: str, farad: float) -> list[CircuitPart]:
    return [CircuitPart(name, (point, "0"), farad, {"esr": random.choice(ESR[:5])})]


def _consumer(random: Random, at: int, point: str) -> list[CircuitPart]:
    if random.random() < 0.5:
        amps = random.choice((0.002, 0.02, 0.1, 0.5))
        return [CircuitPart(f"I{at}", (point, "0"), amps, load=True)]
    return [CircuitPart(f"R{at}", (point, "0"), random.choice((22.0, 220.0, 2.2e3, 1e6)))]


def _regulator(random: Random, at: int, behind: str) -> list[CircuitPart]:
    """A regulator with the capacitors on both sides, and what it feeds."""
    more = {"dropout": random.choice((0.3, 1.2, 2.0)), "own": random.choice((0.0, 5e-3))}
    volts = random.choice(REGULATED)
    parts = [CircuitPart(f"U{at}", (behind, f"out{at}"), volts, more)]
    if random.random() < 0.6:
        parts += _reservoir(random, f"C{10 * at}", behind, 100e-9)
    if random.random() < 0.6:
        parts += _reservoir(random, f"C{10 * at + 1}", f"out{at}", 10e-6)
    return parts + _consumer(random, 10 * at, f"out{at}")


def _branch(random: Random, at: int, point: str) -> list[CircuitPart]:
    """Something small at a rail: a resistor with a capacitor, a diode that shines, a choke."""
    here = f"x{at}"
    ohm = random.choice((10.0, 330.0, 4.7e3, 100e3))
    parts = [CircuitPart(f"R{40 + at}", (point, here), ohm)]
    kind = random.randrange(4)
    if kind == 0:
        parts += _reservoir(random, f"C{40 + at}", here, random.choice((1e-6, 1000e-6, 10e-3)))
    elif kind == 1:
        parts.append(CircuitPart(f"D{40 + at}", (here, "0"), 1e-18, {"n": 2.0}))
    elif kind == 2:
        parts.append(CircuitPart(f"L{40 + at}", (here, "0"), 10e-3, {"winding": 1.0}))
    else:
        parts.append(CircuitPart(f"R{50 + at}", (here, "0"), 1e3))
    return parts


def _points(parts) -> set[str]:
    return {point for part in parts for point in part.nodes}


def _grounded(parts: list[CircuitPart]) -> tuple[CircuitPart, ...]:
    """With a large resistance from every point to zero, so that none floats."""
    points = sorted(_points(parts) - {"0"})
    return (
        *parts,
        *(CircuitPart(f"R{200 + at}", (point, "0"), FLOATING) for at, point in enumerate(points)),
    )
