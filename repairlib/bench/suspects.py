"""What may be wrong with a board, as somebody thinks who sees it but not its fault.

Each part may be in each condition that can happen to such a part, from slightly to badly. What an
instrument would show then is worked out on the same bench, with that fault in the board.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from repairlib.bench.conditions import CONDITIONS, Fault, happens, read_faults
from repairlib.bench.practice_set import BoardPart, PracticeSet
from repairlib.bench.state import LIFTED, Fitted, Place, State
from repairlib.circuits import CircuitPart

SEED = "as it would be"  # the noise of a prediction stays below the tolerance of a comparison


@dataclass(frozen=True, slots=True)
class Suspect:
    """What may be wrong: `faults` (none: nothing is), how common, and its neighbours' name.

    Suspects of one `kind` differ in how bad it is and stand in that order.
    """

    kind: str
    faults: tuple[Fault, ...]
    weight: float

    @property
    def parts(self) -> tuple[str, ...]:
        """The parts that it blames."""
        return tuple(fault.part for fault in self.faults)

    def __str__(self) -> str:
        return " and ".join(map(str, self.faults)) or "nothing that was measured yet"


# How often a condition is met, against each other; a choice of this workbook. What looks the same
# to every instrument is one suspect: an open part stands for a lifted pad and a part that is gone.
COMMON = {
    "dried out": 3.0, "open": 1.0, "short": 1.0, "leaks": 0.5, "wrong value": 0.3,
    "cracked": 0.5, "worn": 0.5, "gives": 1.0, "reversed": 0.2,
}  # fmt: skip
DRIED = ((0.75, 2.0), (0.5, 4.0), (0.25, 8.0), (0.05, 30.0))
LEAK_OHM = (8.0, 60.0, 500.0, 5e3, 50e3)
WORN_OHM = (0.7, 3.0, 30.0, 300.0)
WRONG = {"R": (0.1, 0.4, 0.8, 1.25, 4.0, 100.0), "C": (0.03, 0.3, 3.0)}
GIVES = (0.45, 0.7, 0.9, 0.96, 1.04, 1.15, 1.4)  # of what it is to give
BLOWS = ("fuse",)


def _severities(condition: str, sound: CircuitPart) -> Iterator[tuple[str, list[dict]]]:
    """The rows of figures of a condition, from slight to bad, and a word for each way it goes."""
    value = sound.value
    if condition == "dried out":
        yield "", [{"to": to, "esr": esr} for to, esr in DRIED]
    elif condition == "leaks":
        yield "", [{"ohm": ohm} for ohm in LEAK_OHM]
    elif condition == "worn":
        yield "", [{"ohm": ohm} for ohm in WORN_OHM]
    elif condition == "wrong value":
        shares = WRONG[sound.letter]
        yield "low", [{"value": value * share} for share in shares if share < 1]
        yield "high", [{"value": value * share} for share in shares if share > 1]
    elif condition == "gives":
        yield "low", [{"volts": value * share} for share in GIVES if share < 1]
        yield "high", [{"volts": value * share} for share in GIVES if share > 1]
    else:
        figures = CONDITIONS[condition].figures
        yield "", [{name: figure.usual for name, figure in figures.items()}]


def _of_part(part: BoardPart) -> Iterator[Suspect]:
    letter = part.circuit.letter if part.circuit else ""
    for condition, common in COMMON.items():
        if not part.circuit or not happens(CONDITIONS[condition], letter, part):
            continue
        if part.mains and condition != "open":
            continue
        for way, rows in _severities(condition, part.circuit):
            for figures in rows:
                fault = Fault(part.name, condition, figures)
                kind = f"{part.name} {condition} {way}".strip()
                yield Suspect(kind, (fault,), common / len(rows))


def all_suspects(of: PracticeSet) -> tuple[Suspect, ...]:
    """All that may be wrong with a set, one fault each, and a fuse that blew for a reason.

    >>> from repairlib.bench.practice_set import demo_set
    >>> one = all_suspects(demo_set("desk radio"))[1]
    >>> print(one.kind, "|", one)
    F9 open | F9 open
    """
    singles = [one for part in of.parts for one in _of_part(part)]
    fuses = [part.name for part in of.parts if part.what in BLOWS]
    causes = [one for one in singles if one.faults[0].condition in ("short", "reversed")]
    pairs = [
        Suspect(f"{fuse} and {one.kind}", (Fault(fuse, "open", {}), *one.faults), one.weight / 2)
        for fuse in fuses
        for one in causes
        if one.faults[0].part != fuse and not of.part(one.faults[0].part).mains
    ]
    return (Suspect("", (), 1.0), *singles, *pairs)


def listed_suspects(of: PracticeSet, faults: tuple[Fault, ...] = ()) -> tuple[Suspect, ...]:
    """The suspects that a set itself lists as its faults, with these where they are none of them.

    >>> from repairlib.bench.practice_set import demo_set
    >>> radio = demo_set("desk radio")
    >>> len(listed_suspects(radio)) == len(radio.faults) + len(radio.together) + 1
    True
    """
    texts = (*of.faults, *of.together)
    rows = [Suspect(text, read_faults(text, of), 1.0) for text in texts]
    own = Suspect(" and ".join(map(str, faults)), faults, 1.0)
    known = {str(one) for one in rows}
    return (Suspect("", (), 1.0), *rows, *([own] if faults and str(own) not in known else []))


def as_if(state: State, suspect: Suspect) -> State:
    """The bench as it stands, with the suspect's faults in the parts that were always there.

    A part that was renewed is sound, one that lies on the bench keeps the suspected fault.
    """
    by_part = {fault.part: fault for fault in suspect.faults}
    places = {}
    for name, place in state.places.items():
        places[name] = _suspected(place, by_part.get(name))
    return replace(state, places=places, seed=SEED, moves=0, ended=None)


def _suspected(place: Place, fault: Fault | None) -> Place:
    if place.fitted is not None and not place.fitted.new:
        gone = fault is not None and fault.condition == "gone"
        lifted = fault is not None and fault.condition == "pad lifted"
        fitted = None if gone else replace(place.fitted, fault=fault, strain=0.0)
        return replace(place, fitted=fitted, pads=LIFTED if lifted else place.pads)
    if place.taken is not None and not place.taken.new:
        return replace(place, taken=replace(place.taken, fault=fault))
    if place.fitted is None:
        return place
    return replace(place, fitted=replace(place.fitted, fault=None))


def bench_key(state: State) -> tuple:
    """What a reading hangs on but for the faults: a renewed part is one that never failed."""
    places = tuple(
        (name, _as_key(place.fitted), _as_key(place.taken), place.leg_up)
        for name, place in state.places.items()
        if place.leg_up or _as_key(place.fitted) != SOUND_PART
    )
    held = dict(state.charges).items()
    charges = tuple((name, float(f"{volts:.3g}")) for name, volts in held)
    return (state.set.title, state.set.text, places, state.feed, state.load, charges)


SOUND_PART = (None, False)


def _as_key(fitted: Fitted | None) -> tuple | None:
    return None if fitted is None else (fitted.value, fitted.turned)
