"""A set on the practice board, as an instructor types it: its circuit and where each part stands.

The text begins with lines `word: what`, as set_lines.py lists them; then comes a table with one
part on each line. The columns part, from, to, value and more are those of a circuit (circuits). A
part whose name is none of a circuit, such as F1 or J2, says under `is` what it is and counts as a
resistor. An adapter holds its volts whatever the mains does, unless it is called `unregulated
adapter` there; a transformer follows the mains. Lengths are in millimetres, the place of a part is
its middle.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cache

from repairlib.bench.board_part import COLUMNS, NEEDED, BoardPart, number, read_part
from repairlib.bench.set_lines import (
    EXAMPLE,
    LONGEST_LINE,
    MOST_LINES,
    WHEN,
    Rail,
    Said,
    read_feed,
    read_lines,
    read_rail,
    read_ripple,
    read_size,
)
from repairlib.core.errors import RepairlibError
from repairlib.core.tables import demo_path
from repairlib.core.typed.headed import read_headed

MOST_WORTH = 1e5  # tokens


@dataclass(frozen=True)
class PracticeSet:
    """A set that can be broken and repaired. Made by `read_set`.

    `says` is the customer's sentence, `heard` those for one kind of symptom (complaint.py).
    `feed` is the source that its own plug switches on, `ripple` what lies in series with it, in V
    r.m.s. and Hz, or None; `inlet` the two points at which a bench supply takes its place, with its
    volts `feed_volts` and the current that is usual, `feed_amps`. `behind` is the part that cuts
    the feed off when it is open, or "". `loads` are the parts whose current the set's own user
    sets: full as typed, light a fifth. `works` says what is heard or seen when all rails are right.
    `faults` and `together` (several, parted by semicolons) are what the generator may break.
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
    ripple: tuple[float, float] | None = None
    together: tuple[str, ...] = ()
    heard: Mapping[str, str] = field(default_factory=dict)
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

    Whether it works and whether its faults show is another question (fair_set.py).

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
    if not isinstance(text, str):
        raise RepairlibError(text, "not a text", EXAMPLE)
    lines = text.splitlines()
    if len(lines) > MOST_LINES or any(len(line) > LONGEST_LINE for line in lines):
        longest = f"up to {MOST_LINES} lines of {LONGEST_LINE} characters"
        raise RepairlibError("the set", "it is too long", longest)
    heading = next((at for at, line in enumerate(lines) if _heads_table(line)), None)
    if heading is None:
        read_lines(lines)  # the first that is none of its lines is told before
        raise RepairlibError("the set", "no table of parts", EXAMPLE)
    said = read_lines(lines[:heading])
    feed = read_feed(said["feed"][0])
    wide, high = read_size(said["board"][0])
    made = PracticeSet(
        title=said["title"][0].what,
        says=said["says"][0].what,
        works=said["works"][0].what,
        feed=feed.part,
        inlet=feed.inlet,
        feed_volts=feed.volts,
        feed_amps=feed.amps,
        rails=tuple(map(read_rail, said["rail"])),
        loads=tuple(one.strip() for one in said["loads"][0].what.split(",") if one.strip()),
        wide=wide,
        high=high,
        parts=_parts(lines[heading:], heading),
        faults=tuple(one.what for one in said["fault"]),
        behind=said["behind"][0].what if said["behind"] else "",
        worth=_worth(said["worth"]),
        ripple=read_ripple(said["ripple"][0]) if said["ripple"] else None,
        together=tuple(one.what for one in said["together"]),
        heard={
            word.removeprefix(WHEN): of_word[0].what
            for word, of_word in said.items()
            if word.startswith(WHEN) and of_word
        },
        text=text,
    )
    _check(made)
    return replace(
        made,
        feed=made.part(made.feed).name,
        loads=tuple(made.part(name).name for name in made.loads),
        behind=made.part(made.behind).name if made.behind else "",
    )


def _heads_table(line: str) -> bool:
    return line.strip().casefold().startswith("part") and not line.partition(":")[1]


def _worth(said: list[Said]) -> float:
    return number(said[0].what, said[0].where, "tokens", MOST_WORTH, 1.0) if said else 60.0


def _parts(lines: list[str], above: int) -> tuple[BoardPart, ...]:
    """The parts of the table, whose heading has `above` lines above it."""
    table = read_headed("\n".join(lines), "the parts of the set", COLUMNS, NEEDED)
    unknown = [heading for heading in table.headings if heading not in COLUMNS]
    if unknown:
        raise RepairlibError(", ".join(unknown), "not a column of parts", ", ".join(COLUMNS))
    parts = []
    for row in table.rows_below():
        if row.what:
            raise RepairlibError(f"line {row.line + above}", row.why, EXAMPLE)
        parts.append(read_part(table.by_heading(row, COLUMNS), row.line + above))
    return tuple(parts)


def _check(made: PracticeSet) -> None:
    """What the lines and the table say of each other. Raises RepairlibError."""
    names: set[str] = set()
    for part in made.parts:
        if part.name.casefold() in names:
            raise RepairlibError(part.name, "this part stands twice", "each part once")
        names.add(part.name.casefold())
    both = names.intersection(made.points)
    if both:
        wrong = "the name of a part and of a point, so that nobody knows where to probe"
        raise RepairlibError(", ".join(sorted(both)), wrong, "two names")
    _check_letter(made, made.feed, "VP", "a voltage source or an adapter: V1, P1")
    for name in made.loads:
        _check_letter(made, name, "I", "loads, such as I1")
    if made.behind:
        _check_letter(made, made.behind, "R", "a fuse, a switch or a contact")
    for point in (*made.inlet, *(rail.point for rail in made.rails)):
        if point not in made.points:
            raise RepairlibError(point, "no part ends on this point", ", ".join(made.points))
    if made.ripple and any(p.circuit and p.circuit.more.get("mains") for p in made.parts):
        wrong = "a ripple of the feed beside a sine on the board: two frequencies"
        raise RepairlibError("ripple", wrong, "one of the two")


def _check_letter(made: PracticeSet, name: str, letters: str, accepted: str) -> None:
    circuit = made.part(name).circuit
    if circuit is None or circuit.letter not in letters:
        raise RepairlibError(name, f"a {made.part(name).what} cannot do that here", accepted)


DEMO = ("desk radio", "label maker", "network switch", "keyboard", "printer controller")


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
