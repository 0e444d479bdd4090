"""A part of a set on the practice board, and how it is read from its row of the table."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from math import isfinite

from repairlib.circuits import CircuitPart, read_circuit
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import read_quantity

COLUMNS = (
    "part", "is", "from", "to", "value", "more", "rated", "body", "x", "y", "wide", "high", "plus",
    "side", "price",
)  # fmt: skip
NEEDED = ("part", "is", "from", "to", "value", "x", "y", "wide", "high")
MAINS_SIDE = "mains"
FUSES = ("fuse", "mains fuse")
CONTACTS = ("joint", "connector", "switch", "inlet", "contact")
AS_RESISTOR = (*FUSES, *CONTACTS)
NO_CURRENT = ("memory chip",)
UNREGULATED = "unregulated"  # in the name of an adapter whose volts follow the mains
ENDS = {"right": 0.0, "up": 90.0, "left": 180.0, "down": 270.0}
ZERO, ZERO_NAMES = "0", ("0", "gnd", "ground", "0v")
NAME = re.compile(r"[A-Za-z]{1,3}[0-9]{1,3}")
POINT = re.compile(r"[a-z0-9+-][a-z0-9.+-]{0,7}")
LONGEST, MOST_TOKENS = 400.0, 1e4  # mm, tokens


@dataclass(frozen=True, slots=True)
class BoardPart:
    """A part of a set: `circuit` is what it is when it is sound, None for one without currents.

    `what` is its name in words. `rated` in V, of a fuse in A, 0 where none is known. `body` is a
    name of show's drawn parts or "". `x` and `y` of its middle, `wide` and `high` in mm. `plus` in
    degrees, where the positive end or pin 1 points; None where it has none. `price` of a new one,
    in tokens.
    """

    name: str
    what: str
    nodes: tuple[str, str]
    circuit: CircuitPart | None
    x: float
    y: float
    wide: float
    high: float
    rated: float = 0.0
    body: str = ""
    plus: float | None = None
    mains: bool = False
    price: float = 1.0

    @property
    def follows_line(self) -> bool:
        """Whether a feed gives more and less with the mains: a transformer, an adapter so named.

        Other adapters hold their volts from 90 to 264 V of mains: common practice.
        """
        sine = self.circuit is not None and bool(self.circuit.more.get("mains"))
        return sine or UNREGULATED in self.what


def read_part(cells: dict[str, str], line: int) -> BoardPart:
    """The part on one line of the table, `cells` by column. Raises RepairlibError naming the line.

    >>> cells = dict.fromkeys(COLUMNS, "") | {"part": "F1", "is": "fuse", "from": "in", "to": "a"}
    >>> cells |= {"value": "50 mΩ", "x": "10", "y": "10", "wide": "8", "high": "4", "rated": "1 A"}
    >>> fuse = read_part(cells, 12)
    >>> fuse.circuit.letter, fuse.rated, fuse.plus
    ('R', 1.0, None)
    """
    name, what, where = cells["part"], " ".join(cells["is"].casefold().split()), f"line {line}"
    if not NAME.fullmatch(name):
        raise RepairlibError(name, f"no name of a part ({where})", "a letter and a number: C1, F12")
    if not what:
        raise RepairlibError(name, f"the column is says nothing ({where})", "resistor, fuse, …")
    nodes = _nodes(cells, where)
    circuit = None if what in NO_CURRENT else _circuit(name, what, nodes, cells, line)
    rated_in = "A" if what in FUSES else "V"
    return BoardPart(
        name=name,
        what=what,
        nodes=nodes,
        circuit=circuit,
        x=number(cells["x"], where, "mm from the left", LONGEST),
        y=number(cells["y"], where, "mm from the top", LONGEST),
        wide=number(cells["wide"], where, "mm wide", LONGEST),
        high=number(cells["high"], where, "mm high", LONGEST),
        rated=within(cells["rated"], rated_in, where) if cells["rated"] else 0.0,
        body=cells["body"],
        plus=ENDS[_one_of(cells["plus"], ENDS, "plus", where)] if cells["plus"] else None,
        mains=bool(_one_of(cells["side"], (MAINS_SIDE, ""), "side", where)),
        price=number(cells["price"] or "1", where, "tokens", MOST_TOKENS, at_least=0.0),
    )


def read_point(text: str, where: str) -> str:
    """A point of the circuit in small letters, the zero point as 0. RepairlibError for no point.

    >>> read_point("GND", "line 3"), read_point("Rail", "line 3")
    ('0', 'rail')
    """
    point = text.strip().casefold()
    if not POINT.fullmatch(point):
        raise RepairlibError(text, f"no name of a point ({where})", "up to 8 letters and digits")
    return ZERO if point in ZERO_NAMES else point


def number(text: str, where: str, unit: str, at_most: float, at_least: float = 0.1) -> float:
    """A plain number in a range. Raises RepairlibError naming `where` and the unit that is due.

    >>> number("7,5", "line 2", "mm wide", 400)
    7.5
    """
    try:
        found = float(text.replace(",", ".").replace("_", "?"))
    except ValueError:
        found = float("nan")
    if not (isfinite(found) and at_least <= found <= at_most):
        raise RepairlibError(
            text, f"not so many {unit} ({where})", f"a number from {at_least:g} to {at_most:g}"
        )
    return found


def within(text: str, unit: str, where: str, at_most: float = 1e5) -> float:
    """A quantity above 0 in its unit. Raises RepairlibError that names `where`.

    >>> within("250 mA", "A", "line 5")
    0.25
    """
    try:
        found = read_quantity(text, unit).value
    except RepairlibError as problem:
        raise RepairlibError(text, f"{problem.wrong} ({where})", problem.accepted) from None
    if not 0 < found <= at_most:
        raise RepairlibError(text, f"out of range ({where})", f"above 0 to {at_most:g} {unit}")
    return found


def _nodes(cells: dict[str, str], where: str) -> tuple[str, str]:
    one, other = read_point(cells["from"], where), read_point(cells["to"], where)
    if one == other:
        raise RepairlibError(cells["part"], f"both ends are on point {one} ({where})", "two points")
    return one, other


def _circuit(name: str, what: str, nodes, cells: dict[str, str], line: int) -> CircuitPart:
    """What it is in a circuit. Empty lines before it make a refusal name the right line."""
    called = f"R{name}" if what in AS_RESISTOR else name
    row = [called, *nodes, cells["value"], cells["more"]]
    for cell in row:
        if "/" in cell or "\t" in cell or "\n" in cell:
            raise RepairlibError(cell, f"no stroke may stand here (line {line})", "9 V rms, 50 Hz")
    before = "\n" * (line - 1)
    (part,) = read_circuit("part\tfrom\tto\tvalue\tmore" + before + "\t".join(row))
    return replace(part, name=name if called == name else f"R of {name}")


def _one_of(text: str, known, column: str, where: str) -> str:
    word = text.casefold()
    if word not in known:
        due = ", ".join(one or "an empty cell" for one in known)
        raise RepairlibError(text, f"not known under {column} ({where})", due)
    return word
