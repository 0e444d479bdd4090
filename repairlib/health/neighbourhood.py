"""The parts around a part, as a learner types them: one part a line, its two nodes, its value.

Covers resistors, capacitors (with ESR) and inductors (with winding resistance). What a meter
sees between two nodes is worked out in in_circuit.py.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity, engineering, read_quantity

UNITS = {"R": "Ω", "C": "F", "L": "H"}
KINDS = {"R": "resistor", "C": "capacitor", "L": "inductor"}
INSIDE = {"C": "esr", "L": "dcr"}  # the word for the resistance inside the part
SMALLEST = {"R": 0.0, "C": 1e-15, "L": 1e-12}
LARGEST = {"R": 1e12, "C": 1e3, "L": 1e5}
MOST_PARTS = 200
EXAMPLE = "lines such as R1 a b 10k, C2 a 0 100u esr=0.3, L1 a c 10u dcr=0.05"
_EXTRA = re.compile(r"([A-Za-z]+)\s*=\s*")


@dataclass(frozen=True, slots=True)
class Part:
    """A part between two nodes. `value` in Ω, F or H; `series` is the resistance inside, Ω."""

    name: str
    nodes: tuple[str, str]
    value: float
    series: float = 0.0

    @property
    def letter(self) -> str:
        """R, C or L."""
        return self.name[0].upper()

    def __str__(self) -> str:
        inside = f" {INSIDE[self.letter]}={Quantity(self.series, 'Ω')}" if self.series else ""
        value = Quantity(self.value, UNITS[self.letter])
        return f"{self.name} {' '.join(self.nodes)} {value}{inside}"


def read_neighbourhood(text: str) -> tuple[Part, ...]:
    """The parts that `text` describes, in its order.

    A line is a name (R, C or L first), two nodes, a value, and for a capacitor `esr=`, for an
    inductor `dcr=`. Lines end at a line end or a semicolon; what follows # is a remark. Names and
    nodes may be written in either case. Raises RepairlibError naming the line.

    >>> print(*read_neighbourhood("R1 a b 10k; C2 a b 100u esr=0.3"), sep=", ")
    R1 a b 10 kΩ, C2 a b 100 µF esr=300 mΩ
    """
    if not isinstance(text, str):
        raise RepairlibError(text, "not a text", EXAMPLE)
    parts: dict[str, Part] = {}
    for line in re.split(r"[;\n\r]", text):
        words = line.partition("#")[0].strip()
        if not words:
            continue
        part = _read_line(words)
        if part.name.casefold() in parts:
            raise RepairlibError(line, f"{part.name} stands twice", "each part once")
        parts[part.name.casefold()] = part
        if len(parts) > MOST_PARTS:
            raise RepairlibError(line, f"more than {MOST_PARTS} parts", "the parts nearby only")
    if not parts:
        raise RepairlibError(text, "no part was typed", EXAMPLE)
    return tuple(parts.values())


def part_named(parts: tuple[Part, ...], name: str) -> Part:
    """The part of that name. Raises RepairlibError naming those that there are."""
    for part in parts:
        if part.name.casefold() == name.strip().casefold():
            return part
    raise RepairlibError(name, "no such part here", ", ".join(part.name for part in parts))


def _read_line(line: str) -> Part:
    words = line.split(maxsplit=3)
    if len(words) < 4:
        raise RepairlibError(line, "a name, two nodes and a value are due", EXAMPLE)
    name, one, other, rest = words
    letter = name[0].upper()
    if letter not in UNITS:
        raise RepairlibError(line, f"{name} begins with neither R, C nor L", EXAMPLE)
    if one.casefold() == other.casefold():
        raise RepairlibError(line, f"both ends are on node {one}", "two different nodes")
    value, *extras = _EXTRA.split(rest)
    smallest, largest = SMALLEST[letter], LARGEST[letter]
    number = _read_value(line, value, UNITS[letter], smallest, largest)
    series = 0.0
    for word, said in zip(extras[::2], extras[1::2], strict=True):
        if word.casefold() != INSIDE.get(letter):
            due = f"{INSIDE[letter]}=" if letter in INSIDE else "nothing after the value"
            raise RepairlibError(line, f"{word}= does not go with a {KINDS[letter]}", due)
        series = _read_value(line, said, "Ω", 0.0, LARGEST["R"])
    return Part(name, (one.casefold(), other.casefold()), number, series)


def _read_value(line: str, text: str, unit: str, smallest: float, largest: float) -> float:
    try:
        number = read_quantity(text, unit).value
    except RepairlibError as problem:
        raise RepairlibError(line, problem.wrong, problem.accepted) from None
    if not smallest <= number <= largest:
        span = f"{engineering(smallest, unit)} to {engineering(largest, unit)}"
        raise RepairlibError(line, f"{text.strip()} is out of range", span)
    return number
