"""What eyes and nose find at a part: what is always seen, and what its condition may show.

A missing part, a lifted pad, the print on a part and the way it points are always told as they are.
Whether a bad part also looks bad hangs on its condition and the seed: many look sound, and some
sound ones look bad. How often is a choice of this workbook; that it is so is common practice.
"""

from __future__ import annotations

from typing import NamedTuple

from repairlib.bench.board_part import AS_RESISTOR, CONTACTS, ENDS, FUSES, BoardPart
from repairlib.bench.moves import Reading
from repairlib.bench.noise import share
from repairlib.bench.state import DIRTY, LIFTED, SOUND, WIRED, Fitted, State
from repairlib.core.quantity import Quantity, brief

MISSING, BULGED, STAINED, BURNT, RING, BLOWN_WIRE = (
    "missing", "bulged", "stained", "burnt", "ring in the solder", "wire gone",
)  # fmt: skip
HOLE, DULL, CHIPPED, BURST, GLUE = (
    "hole", "dull contacts", "hairline crack", "burst", "brown glue",
)  # fmt: skip
SAID = {
    BULGED: "its top is bulged",
    STAINED: "there is a dark stain at its foot",
    BURNT: "its body is burnt dark",
    RING: "a fine dark ring goes round its leg in the solder",
    BLOWN_WIRE: "the wire inside is gone",
    HOLE: "there is a small hole in its body",
    DULL: "its contacts are dull and dark",
    CHIPPED: "a hairline crack runs across it",
    BURST: "it has burst open",
    GLUE: "there is something brown at its foot, glue or worse",
}
FISH, SCORCHED, NOTHING = (
    "a sharp smell, a little like fish: electrolyte",
    "a scorched smell",
    "nothing in particular",
)


class Chance(NamedTuple):
    """A sign that a condition may show, in which share of cases, and whether it takes the lens."""

    sign: str
    of_cases: float
    lens: bool = False


CAN, TANTALUM, CHIP, RESISTOR, OTHER = "can", "tantalum", "chip", "resistor", "other"
MAY_SHOW: dict[tuple[str, str], Chance] = {
    ("dried out", CAN): Chance(BULGED, 0.4),
    ("leaks", CAN): Chance(STAINED, 0.6),
    ("open", CAN): Chance(BULGED, 0.2),
    ("short", CAN): Chance(BULGED, 0.5),
    ("short", TANTALUM): Chance(BURNT, 0.5),
    ("reversed", TANTALUM): Chance(BURNT, 0.5),
    ("leaks", TANTALUM): Chance(CHIPPED, 0.2, lens=True),
    ("open", TANTALUM): Chance(CHIPPED, 0.3, lens=True),
    ("short", CHIP): Chance(CHIPPED, 0.3, lens=True),
    ("leaks", CHIP): Chance(CHIPPED, 0.3, lens=True),
    ("open", CHIP): Chance(CHIPPED, 0.4, lens=True),
    ("reversed", CAN): Chance(BULGED, 0.5),
    ("open", RESISTOR): Chance(BURNT, 0.6),
    ("blown", OTHER): Chance(BLOWN_WIRE, 0.7, lens=True),
    ("short", OTHER): Chance(HOLE, 0.3, lens=True),
    ("open", OTHER): Chance(HOLE, 0.2, lens=True),
    ("worn", OTHER): Chance(DULL, 0.6, lens=True),
}
ANY_KIND = {"cracked": Chance(RING, 0.7, lens=True), "burst": Chance(BURST, 1.0)}
GLUED = 0.08  # of sound cans: what only looks like a leak
SMELLS = {BULGED: FISH, STAINED: FISH, BURST: FISH, BURNT: SCORCHED, HOLE: SCORCHED}
SMELLED = 0.6  # of those that show such a sign
UNITS = {"R": "Ω", "C": "F", "L": "H", "U": "V"}  # of what is printed, by letter of the circuit
LINK_OHM = 0.0125  # of a 0 Ω link, at most 50 mΩ: from memory; no resistor is printed with this
LARGE = 0.5e-6  # F, from which a capacitor counts as a can
PADS = {
    SOUND: "its pads are sound",
    DIRTY: "old solder is left on its pads",
    LIFTED: "one of its pads has come off the board",
    WIRED: "a wire bridges its lifted pad",
}
LEG_UP = "one of its legs stands up out of the board"
DIRECTIONS = {degrees: word for word, degrees in ENDS.items()}


class Look(NamedTuple):
    """What the bare eye finds, what the lens finds besides, and what lies there, as sentences.

    `turned` is whether the part points the other way than the board's print.
    """

    signs: frozenset[str]
    with_lens: frozenset[str]
    turned: bool
    facts: tuple[str, ...]


def looks_of(state: State, name: str) -> Look:
    """How a part looks. Raises RepairlibError for a part that is not there.

    >>> from repairlib.bench.conditions import read_fault
    >>> from repairlib.bench.practice_set import demo_set
    >>> from repairlib.bench.state import begin
    >>> radio = demo_set("desk radio")
    >>> look = looks_of(begin(radio, (read_fault("C1 gone", radio),), "demo"), "C1")
    >>> look.signs, look.facts[0]
    (frozenset({'missing'}), 'C1 is missing: its place is empty')
    """
    part = state.set.part(name)
    place = state.places[part.name]
    pads = () if place.pads == SOUND else (PADS[place.pads],)
    if place.fitted is None:
        empty = f"{part.name} is missing: its place is empty"
        way = () if part.plus is None else (f"{_marked(part)[1]} is {DIRECTIONS[part.plus]}",)
        return Look(frozenset({MISSING}), frozenset(), False, (empty, *way, *pads))
    fitted = place.fitted
    shown = _signs(state, part, fitted)
    reversed_ = fitted.fault is not None and fitted.fault.condition == "reversed"
    turned = fitted.turned or reversed_
    leg = (LEG_UP,) if place.leg_up else ()
    facts = (f"{part.name}, {part.what}{_print(part, fitted)}", *_way(part, turned), *leg, *pads)
    bare = frozenset(one.sign for one in shown if not one.lens)
    return Look(bare, frozenset(one.sign for one in shown if one.lens), turned, facts)


def look(state: State, name: str, lens: bool = False) -> Reading:
    """What is seen at a part, with or without a lens, in words.

    >>> from repairlib.bench.practice_set import demo_set
    >>> from repairlib.bench.state import begin
    >>> look(begin(demo_set("desk radio"), (), "demo"), "D1").shown
    "D1, rectifier diode, printed 100 V; its band points right, the board's band is right"
    """
    found = looks_of(state, name)
    signs = found.signs | (found.with_lens if lens else frozenset())
    said = [SAID[sign] for sign in SAID if sign in signs]
    part = state.set.part(name).name
    instrument = "eyes and lens" if lens else "eyes"
    return Reading(instrument, (part, ""), "; ".join((*found.facts, *said)), None, "")


def look_over(state: State, lens: bool = False) -> str:
    """What stands out on the whole board, part by part, in words.

    >>> from repairlib.bench.conditions import read_fault
    >>> from repairlib.bench.practice_set import demo_set
    >>> from repairlib.bench.state import begin
    >>> radio = demo_set("desk radio")
    >>> look_over(begin(radio, (read_fault("C1 gone", radio),), "5")).partition(".")[0]
    "C1 is missing: its place is empty; the board's plus is up"
    """
    told = []
    for part in state.set.parts:
        found = looks_of(state, part.name)
        signs = found.signs | (found.with_lens if lens else frozenset())
        said = [SAID[sign] for sign in SAID if sign in signs]
        if MISSING in signs:
            told.append("; ".join(found.facts))
        if state.places[part.name].leg_up:
            said.append(LEG_UP)
        if (pads := state.places[part.name].pads) != SOUND:
            said.append(PADS[pads])
        if said and MISSING not in signs:
            told.append(f"{part.name}: {'; '.join(said)}")
    rest = "Nothing else stands out" if told else "Nothing stands out"
    return ". ".join((*told, f"{rest}; print and the way a part points are seen from near"))


def smell(state: State, name: str) -> Reading:
    """What the nose finds at a part."""
    found = looks_of(state, name)
    part = state.set.part(name).name
    signs = sorted((found.signs | found.with_lens) & set(SMELLS))
    told = NOTHING
    if signs and _happens(state, part, "smell", SMELLED):
        told = SMELLS[signs[0]]
    return Reading("nose", (part, ""), told, None, "")


def _signs(state: State, part: BoardPart, fitted: Fitted) -> tuple[Chance, ...]:
    if fitted.fault is None or (fitted.new and fitted.fault.condition == "reversed"):
        glued = kind_of(part) == CAN and not fitted.new
        found = (Chance(GLUE, GLUED),) if glued else ()
    else:
        condition = fitted.fault.condition
        if condition != "burst" and _died_here(state, part):
            return (Chance(BURNT, 1.0),)
        one = ANY_KIND.get(condition) or MAY_SHOW.get((condition, kind_of(part)))
        found = (one,) if one else ()
    return tuple(one for one in found if _happens(state, part.name, one.sign, one.of_cases))


def _died_here(state: State, part: BoardPart) -> bool:
    """Whether the part smoked or charred on this bench, as the list of what was damaged tells."""
    return any(told.startswith(f"{part.name} ") and "smoked" in told for told in state.harm)


def _happens(state: State, part: str, what: str, of_cases: float) -> bool:
    return (share(state.seed, part, what) + 1) / 2 < of_cases


def kind_of(part: BoardPart) -> str:
    """CAN, TANTALUM, CHIP, RESISTOR or OTHER: what it looks like to somebody at the bench."""
    made = part.circuit
    if made and made.letter == "C":
        if part.plus is not None and "tantalum" in part.what:
            return TANTALUM
        return CAN if part.plus is not None and made.value >= LARGE else CHIP
    resistor = made and made.letter == "R" and part.what not in AS_RESISTOR
    return RESISTOR if resistor else OTHER


def value_of(part: BoardPart, fitted: Fitted) -> float:
    """The value that is printed on the part that is in, or lies on the bench."""
    if fitted.fault is not None and fitted.fault.condition == "wrong value":
        return fitted.fault.figures["value"]
    if fitted.value is not None:
        return fitted.value
    return part.circuit.value if part.circuit else 0.0


def _print(part: BoardPart, fitted: Fitted) -> str:
    """What is printed on it; small ceramic capacitors carry nothing."""
    if kind_of(part) == CHIP:
        return ", nothing printed on it"
    figures = said_of(part, fitted)
    return f", printed {figures}" if figures else ""


def said_of(part: BoardPart, fitted: Fitted) -> str:
    r"""The value and the rating of a part, "" where it has neither.

    >>> from repairlib.bench.practice_set import demo_set
    >>> radio = demo_set("desk radio")
    >>> [said_of(radio.part(name), Fitted()) for name in ("D1", "C1", "I1")]
    ['100 V', '2200\xa0µF 25 V', '']
    """
    rated = part.rated if fitted.rated is None else fitted.rated
    letter = part.circuit.letter if part.circuit else ""
    if part.what in FUSES:
        return brief(rated, "A") if rated else ""
    if part.what in CONTACTS:
        return ""
    volts = [f"{rated:g} V"] if rated and letter in ("C", "D") else []
    value = value_of(part, fitted)
    if letter == "R" and value == LINK_OHM:
        return "0 Ω"
    valued = [str(Quantity(value, UNITS[letter]))] if letter in UNITS else []
    return " ".join(valued + volts)


def _way(part: BoardPart, turned: bool) -> tuple[str, ...]:
    """Which way it points and the board's print does, where it has a way to point."""
    if part.plus is None:
        return ()
    return (f"{way_of(part, turned)}, {_marked(part)[1]} is {DIRECTIONS[part.plus]}",)


def way_of(part: BoardPart, turned: bool) -> str:
    """Which way a part that has a way round points, in words."""
    plus = part.plus or 0.0
    points = (plus + 180) % 360 if turned else plus
    return f"{_marked(part)[0]} points {DIRECTIONS[points]}"


def _marked(part: BoardPart) -> tuple[str, str]:
    """What marks the way a part points: on the part, and in the board's print."""
    letter = part.circuit.letter if part.circuit else ""
    end = {"C": "plus", "D": "band"}.get(letter, "pin 1")
    return f"its {end} end" if letter == "C" else f"its {end}", f"the board's {end}"
