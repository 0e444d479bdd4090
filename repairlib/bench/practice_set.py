"""A set on the practice board, as an instructor types it: its circuit and where each part stands.

The text begins with lines `word: what`, as KNOWN lists them; then comes a table with one part on
each line. The columns part, from, to, value and more are those of a circuit (circuits). A part
whose name is none of a circuit, such as F1 or J2, says under `is` what it is and counts as a
resistor. Lengths are in millimetres, the place of a part is its middle.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from functools import cache

from repairlib.circuits import CircuitPart, read_circuit
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import read_quantity
from repairlib.core.tables import demo_path
from repairlib.core.typed.headed import read_headed
from repairlib.power_up import window_around

COLUMNS = (
    "part", "is", "from", "to", "value", "more", "rated", "body", "x", "y", "wide", "high", "plus",
    "side", "price",
)  # fmt: skip
NEEDED = ("part", "is", "from", "to", "value", "x", "y", "wide", "high")
MAINS_SIDE = "mains"
AS_RESISTOR = (
    "fuse", "mains fuse", "joint", "connector", "switch", "inlet", "contact",
)  # fmt: skip
NO_CURRENT = ("memory chip",)
ENDS = {"right": 0.0, "up": 90.0, "left": 180.0, "down": 270.0}
EXAMPLE = "lines such as 'title: desk radio', then a table of parts with the columns part, is, …"


@dataclass(frozen=True, slots=True)
class BoardPart:
    """A part of a set: `circuit` is what it is when it is sound, None for one without currents.

    `what` is its name in words, `rated` in V (0 where none), `body` a name of show's drawn parts or
    "". Lengths in mm. `plus` in degrees, where the positive end or pin 1 points; None where it has
    none. `price` of a new one, in tokens.
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


@dataclass(frozen=True, slots=True)
class Rail:
    """A rail that the set must have, at a point: its window and the most ripple [V], or None."""

    name: str
    point: str
    low: float
    high: float
    ripple: float | None = None


@dataclass(frozen=True)
class PracticeSet:
    """A set that can be broken and repaired. Made by `read_set`.

    `says` is the customer's sentence. `feed` is the source that its own plug switches on, `inlet`
    the two points at which a bench supply takes its place, with its volts `feed_volts` and the
    current that is usual, `feed_amps`. `loads` are the parts whose current the set's own user sets:
    full as typed, light a fifth. `works` says what is heard or seen when all rails are right.
    """

    title: str
    says: str
    works: str
    feed: str
    inlet: tuple[str, str]
    feed_volts: float
    feed_amps: float
    rails: tuple[Rail, ...]
    loads: tuple[str, ...]
    wide: float
    high: float
    parts: tuple[BoardPart, ...]
    faults: tuple[str, ...] = ()
    behind: str = ""
    worth: float = 60.0
    text: str = field(default="", repr=False)

    def part(self, name: str) -> BoardPart:
        """The part of that name. Raises RepairlibError naming those that there are."""
        for part in self.parts:
            if part.name.casefold() == name.strip().casefold():
                return part
        raise RepairlibError(
            name, "no such part on this board", ", ".join(p.name for p in self.parts)
        )

    @property
    def points(self) -> tuple[str, ...]:
        """The points of its circuit, the zero point first."""
        found = {point for part in self.parts for point in part.nodes}
        return ("0", *sorted(found - {"0"}))


def read_set(text: str) -> PracticeSet:
    """The set that `text` describes. Raises RepairlibError naming the line and what is due there.

    >>> typed = '''title: lamp board
    ... says: It is dark.
    ... works: The lamp lights.
    ... feed: P1, inlet dc 0, 9 V, 100 mA
    ... rail: lamp, at out, 4.5 V, 20 %
    ... loads: I1
    ... board: 60 x 40
    ... fault: R1 open
    ... part,is,from,to,value,more,x,y,wide,high
    ... P1,adapter,dc,0,9 V,limit 1 A,5,20,8,8
    ... R1,resistor,dc,out,90 Ω,,30,20,8,3
    ... I1,lamp,out,0,50 mA,load,50,20,6,6
    ... '''
    >>> lamp = read_set(typed)
    >>> lamp.title, [part.name for part in lamp.parts], lamp.rails[0].low, lamp.faults
    ('lamp board', ['P1', 'R1', 'I1'], 3.6, ('R1 open',))
    """
    lines = text.splitlines()
    heading = next(
        (at for at, line in enumerate(lines) if line.strip().casefold().startswith("part")), None
    )
    if heading is None:
        raise RepairlibError("the set", "no table of parts", EXAMPLE)
    said = _said(lines[:heading])
    parts = _parts("\n".join(lines[heading:]))
    feed, ends, volts, amps = _pieces(said["feed"], 4, "feed: P1, inlet dc 0, 9 V, 100 mA")
    wide, high = (float(one) for one in said["board"].replace("x", " ").split())
    made = PracticeSet(
        title=said["title"],
        says=said["says"],
        works=said["works"],
        feed=feed,
        inlet=_ends(ends),
        feed_volts=read_quantity(volts, "V").value,
        feed_amps=read_quantity(amps, "A").value,
        rails=tuple(_rail(one) for one in said["rail"]),
        loads=tuple(one.strip() for one in said["loads"].split(",") if one.strip()),
        wide=wide,
        high=high,
        parts=parts,
        faults=tuple(said["fault"]),
        behind=said.get("behind", ""),
        worth=float(said.get("worth", 60)),
        text=text,
    )
    for name in (feed, *made.loads, *filter(None, [made.behind])):
        made.part(name)
    return made


ONCE = ("title", "says", "works", "feed", "loads", "board", "behind", "worth")
SEVERAL = ("rail", "fault")


def _said(lines: list[str]) -> dict:
    said: dict = {word: [] for word in SEVERAL}
    for line in lines:
        if not line.strip():
            continue
        word, _, what = (piece.strip() for piece in line.partition(":"))
        if word.casefold() in SEVERAL:
            said[word.casefold()].append(what)
        elif word.casefold() in ONCE:
            said[word.casefold()] = what
        else:
            raise RepairlibError(line, "not a line of a set", ", ".join((*ONCE, *SEVERAL)))
    for word in ONCE[:-2]:
        if word not in said:
            raise RepairlibError("the set", f"no line {word}:", EXAMPLE)
    return said


def _pieces(text: str, many: int, accepted: str) -> list[str]:
    pieces = [piece.strip() for piece in text.split(",")]
    if len(pieces) != many:
        raise RepairlibError(text, f"{len(pieces)} pieces where {many} are due", accepted)
    return pieces


def _ends(text: str) -> tuple[str, str]:
    words = text.casefold().split()
    if len(words) != 3 or words[0] != "inlet":
        raise RepairlibError(text, "not the two points of an inlet", "inlet rail 0")
    return words[1], words[2]


def _rail(text: str) -> Rail:
    pieces = [piece.strip() for piece in text.split(",")]
    if len(pieces) not in (4, 5) or not pieces[1].startswith("at "):
        raise RepairlibError(text, "not a rail", "rail: +9 V, at out, 9 V, 5 %, 50 mV")
    nominal = read_quantity(pieces[2], "V").value
    ripple = read_quantity(pieces[4], "V").value if len(pieces) == 5 else None
    window = window_around(nominal, float(pieces[3].rstrip("% ")), ripple)
    return Rail(pieces[0], pieces[1][3:].strip(), window.low, window.high, ripple)


def _parts(text: str) -> tuple[BoardPart, ...]:
    table = read_headed(text, "the parts of the set", COLUMNS, NEEDED)
    parts = []
    for row in table.rows_below():
        where = f"line {row.line} of the table"
        if row.what:
            raise RepairlibError(where, row.why, EXAMPLE)
        parts.append(_part(table.by_heading(row, COLUMNS), where))
    return tuple(parts)


def _part(cells: dict[str, str], where: str) -> BoardPart:
    name, what = cells["part"], cells["is"]
    one, other = cells["from"].casefold(), cells["to"].casefold()
    circuit = None
    if what not in NO_CURRENT:
        called = f"R{name}" if what in AS_RESISTOR else name
        row = ",".join((called, one, other, cells["value"], cells["more"]))
        (circuit,) = read_circuit(f"part,from,to,value,more / {row}")
        circuit = replace(circuit, name=name if called == name else f"R of {name}")
    plus = cells["plus"].casefold()
    if plus and plus not in ENDS:
        raise RepairlibError(cells["plus"], f"no way to point ({where})", ", ".join(ENDS))
    return BoardPart(
        name=name,
        what=what,
        nodes=circuit.nodes if circuit else (one, other),
        circuit=circuit,
        x=float(cells["x"]),
        y=float(cells["y"]),
        wide=float(cells["wide"]),
        high=float(cells["high"]),
        rated=read_quantity(cells["rated"], "V").value if cells["rated"] else 0.0,
        body=cells["body"],
        plus=ENDS[plus] if plus else None,
        mains=cells["side"].casefold() == MAINS_SIDE,
        price=float(cells["price"] or 1),
    )


DEMO = ("desk radio",)


@cache
def demo_set(title: str) -> PracticeSet:
    """A set of the demo scenario by its title. Raises RepairlibError naming those that there are.

    >>> demo_set("desk radio").feed
    'V1'
    """
    if title not in DEMO:
        raise RepairlibError(title, "no practice set of that title", ", ".join(DEMO))
    path = demo_path(f"practice/{title.replace(' ', '-')}.txt")
    return read_set(path.read_text(encoding="utf-8"))
