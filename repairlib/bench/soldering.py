"""The tool at the joints of a part: whether its solder flows, and whether the pad survives.

The answers of the joint model stand in a table (datasets/make_bench_joints.py), because one joint
takes it up to a second. A joint at the zero point sits on a plane by thermal relief, others do not;
the solder is tin-lead: choices of this workbook. Which tool frees which part is that of heat.
"""

from __future__ import annotations

from functools import cache
from itertools import pairwise
from typing import NamedTuple

from repairlib.bench.board_part import CONTACTS, BoardPart
from repairlib.bench.move_words import HOT_AIR, LOW_MELT, PUMP, TIPS, TOOLS
from repairlib.bench.moves import Move
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import brief
from repairlib.core.tables import read_table
from repairlib.heat import FLOW_TIME, about, removals

CONNECTOR, TWO_LEADS = "through-hole connector", "two-lead part in plated holes"
DUAL_IN_LINE, GULL_WING, TWO_ENDS = "dual-in-line chip", "gull-wing chip", "two-terminal chip"
SURFACE_BODIES = (
    "chip", "chip resistor", "chip led", "moulded tantalum", "polymer chip", "sot-23",
    "polymer can",
)  # fmt: skip
IRON, USUAL_TIP = "iron", "usual tip"
USUAL = {IRON: (330.0, 3.0), HOT_AIR: (350.0, 30.0)}  # °C, s; within hand-soldering-limits
LONGEST = {IRON: 30.0, HOT_AIR: 60.0}  # s, as far as the table goes
SHORTEST = 0.5
BEGINS = {IRON: 25.0, HOT_AIR: 100.0}  # °C of the board; under hot air it lies on a hot plate
# °C of FR-4 beyond any doubt of the model, and from which it ages: heat-materials, MARGIN of heat.
TEARS, AGES = 330.0, 300.0
MOST_AGEING = 10.0  # s above AGES, all heatings of one pad together; a choice of this workbook


Pad = tuple[tuple[float, float], ...]


class Joint(NamedTuple):
    """A row of the table: when all solder is liquid [s], the pad's °C after so many seconds."""

    celsius: float
    melts: float | None
    pad: Pad


class Worked(NamedTuple):
    """What a tool did: whether the solder flowed, the pad's highest °C, its ageing [s], words."""

    flowed: bool
    pad: float
    ageing: float
    words: str

    def tears(self, before: float) -> bool:
        """Whether the pad comes off, with the ageing of earlier heatings."""
        return self.pad > TEARS or before + self.ageing > MOST_AGEING


def way_out(part: BoardPart) -> str:
    """The kind of removal that the part is.

    >>> from repairlib.bench.practice_set import demo_set
    >>> radio = demo_set("desk radio")
    >>> way_out(radio.part("C1")), way_out(radio.part("F1"))
    ('two-lead part in plated holes', 'two-lead part in plated holes')
    """
    if part.what in CONTACTS:
        return CONNECTOR
    if part.body == "dip":
        return DUAL_IN_LINE
    letter = part.circuit.letter if part.circuit else ""
    if part.body == "soic" or ("chip" in part.what and letter in ("", "I")):
        return GULL_WING
    if part.body in SURFACE_BODIES or "chip" in part.what:
        return TWO_ENDS
    return TWO_LEADS


def usual_tool(part: BoardPart) -> str:
    """The tool that frees the part at a bench without a station."""
    usual = removals()[way_out(part)].by_tools["hand tools"]
    return usual if usual in TOOLS else HOT_AIR


def frees(tool: str, part: BoardPart) -> bool:
    """Whether the part comes out with that tool once its solder is liquid.

    >>> from repairlib.bench.practice_set import demo_set
    >>> frees("braid", demo_set("desk radio").part("C1"))
    False
    """
    return tool == LOW_MELT or tool in removals()[way_out(part)].by_tools.values()


def why_not(tool: str, part: BoardPart) -> str:
    """Why the part does not come out with that tool."""
    row = removals()[way_out(part)]
    ways = " or ".join(dict.fromkeys(one for one in row.by_tools.values() if one != "no"))
    return f"A {row.part} comes out with {ways}, not with {tool}: {row.why}."


def heated(part: BoardPart, move: Move, tool: str = PUMP) -> Worked:
    """What the tool of a move does to the joints of a part, one after the other.

    Raises RepairlibError for a temperature or a time that no tool here has.

    >>> from repairlib.bench.practice_set import demo_set
    >>> worked = heated(demo_set("desk radio").part("C1"), Move("take out", ("C1",)))
    >>> worked.flowed, worked.tears(0)
    (True, False)
    """
    heater = HOT_AIR if tool == HOT_AIR else IRON
    celsius = move.figures.get("celsius", USUAL[heater][0])
    seconds = move.figures.get("seconds", USUAL[heater][1])
    _check(celsius, seconds, heater)
    solder = LOW_MELT if tool == LOW_MELT else ""
    tip = USUAL_TIP if heater == HOT_AIR else tip_of(move)
    kind = "surface" if way_out(part) in (GULL_WING, TWO_ENDS) else "through hole"
    runs = [_joint(heater, tip, solder, kind, node == "0", celsius) for node in part.nodes]
    slowest = (
        None if any(one.melts is None for one in runs) else max(one.melts or 0 for one in runs)
    )
    flowed = slowest is not None and seconds >= slowest + FLOW_TIME
    pad = max(_at(one.pad, seconds) for one in runs)
    ageing = max(_above(one.pad, seconds) for one in runs)
    return Worked(flowed, pad, ageing, _said(slowest, flowed, seconds, pad))


def _said(slowest: float | None, flowed: bool, seconds: float, pad: float) -> str:
    if slowest is None:
        solder = "The solder stayed solid"
    elif not flowed:
        solder = f"The last solder takes {about(slowest)} and a second to flow, and it had"
        solder += f" {brief(seconds, 's')}"
    else:
        solder = f"All solder was liquid after {about(slowest)}"
    return f"{solder}; the board under the pad reached about {round(pad, -1):.0f} °C."


def _check(celsius: float, seconds: float, heater: str) -> None:
    grid = sorted({float(row["celsius"]) for row in read_table("bench-joints")})
    if not grid[0] <= celsius <= grid[-1]:
        accepted = f"{grid[0]:g} °C to {grid[-1]:g} °C"
        raise RepairlibError(f"{celsius:g} °C", f"no setting of the {heater} here", accepted)
    if not SHORTEST <= seconds <= LONGEST[heater]:
        accepted = f"{SHORTEST:g} s to {LONGEST[heater]:g} s"
        raise RepairlibError(f"{seconds:g} s", f"no time for the {heater} at a joint", accepted)


def tool_of(move: Move, part: BoardPart) -> str:
    """The tool that a move names, or the usual one for the part."""
    return next((one for one in TOOLS if one in move.words), usual_tool(part))


def tip_of(move: Move) -> str:
    """The tip that a move names, or the usual one."""
    return next((one for one in TIPS if one in move.words), USUAL_TIP)


@cache
def _joints() -> dict[tuple[str, str, str, str, str], tuple[Joint, ...]]:
    """The rows of the table by tool, tip, solder, joint and plane, the coolest first."""
    found: dict[tuple[str, str, str, str, str], list[Joint]] = {}
    for row in read_table("bench-joints"):
        low = LOW_MELT if row["solder"] == "Bi58Sn42" else ""
        key = (row["tool"], f"{row['tip']} tip", low, row["joint"], row["plane"])
        pad = zip(map(float, row["after"].split()), map(float, row["pad"].split()), strict=True)
        begins = (0.0, BEGINS[row["tool"]])
        melts = float(row["melts"]) if row["melts"] else None
        found.setdefault(key, []).append(Joint(float(row["celsius"]), melts, (begins, *pad)))
    return {key: tuple(sorted(rows)) for key, rows in found.items()}


def _joint(heater: str, tip: str, solder: str, kind: str, plane: bool, celsius: float) -> Joint:
    """The joint at that setting, between two rows by straight lines; melting by its inverse."""
    rows = _joints()[heater, tip, solder, kind, "thermal relief" if plane else "no plane"]
    for low, high in pairwise(rows):
        if celsius <= high.celsius:
            part = (celsius - low.celsius) / (high.celsius - low.celsius)
            quick = [1 / one.melts if one.melts else 0.0 for one in (low, high)]
            pace = quick[0] + (quick[1] - quick[0]) * part
            pad = tuple(
                (seconds, one + (other - one) * part)
                for (seconds, one), (_, other) in zip(low.pad, high.pad, strict=True)
            )
            return Joint(celsius, 1 / pace if pace else None, pad)
    raise AssertionError(celsius)  # _check lets nothing above the last row pass


def _at(pad: Pad, seconds: float) -> float:
    """The pad's °C after so many seconds."""
    for (early, low), (late, high) in pairwise(pad):
        if seconds <= late:
            return low + (high - low) * (seconds - early) / (late - early)
    return pad[-1][1]


def _above(pad: Pad, seconds: float) -> float:
    """How long of these seconds the pad is hotter than AGES."""
    for (early, low), (late, high) in pairwise(pad):
        if high > AGES:
            begins = early + (late - early) * (AGES - low) / (high - low)
            return max(seconds - max(begins, early), 0.0)
    return 0.0
