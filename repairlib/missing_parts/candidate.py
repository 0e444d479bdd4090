"""What may have stood in an empty place: kinds of parts, likeliest first, each with its reasons.

The points are the sum of what speaks for a kind and against it: the letter of the reference, the
twin, and the rules of the trade in the files `rules_…`. They rank; they are no probability.
"""

from __future__ import annotations

from dataclasses import dataclass

from repairlib.missing_parts.deciding import deciding_steps
from repairlib.missing_parts.facts import facts_of
from repairlib.missing_parts.kinds import INDUCTIVE, KINDS, NOTHING, Kind
from repairlib.missing_parts.letters import points_of_letters
from repairlib.missing_parts.place import Place, read_place
from repairlib.missing_parts.rule import Rule
from repairlib.missing_parts.rules_capacitors import RULES as _CAPACITORS
from repairlib.missing_parts.rules_others import RULES as _OTHERS
from repairlib.missing_parts.rules_resistors import RULES as _RESISTORS
from repairlib.missing_parts.usual_values import (
    never_guessed,
    rating_words,
    value_fits,
    value_words,
)

MOST = 5
ENOUGH = 6  # points below which too little is known to call anything likely
CLEAR, CLOSE, FAR = 4, 3, 8  # points ahead of the next, and behind the first
MOST_LIKELY, LIKELY, POSSIBLE, UNLIKELY = "most likely", "likely", "possible", "unlikely"
_TWIN_IS, _TWIN_IS_NOT, _VALUE_FITS, _VALUE_DOES_NOT = 8, -6, 3, -4

_RULES: dict[str, list[Rule]] = {name: [] for name in KINDS}
for _rule in (*_CAPACITORS, *_RESISTORS, *_OTHERS):
    _RULES[_rule.kind].append(_rule)


@dataclass(frozen=True, slots=True)
class Candidate:
    """A kind of part that may have stood there.

    `likely` is one of "most likely", "likely", "possible", "unlikely"; `values` and `rating` are
    in words; `pro` and `con` are the reasons, the strongest first; `never` is what must
    not be guessed; `decide` says what to measure, step by step.
    """

    kind: Kind
    points: int
    likely: str
    values: str
    rating: str
    pro: tuple[str, ...]
    con: tuple[str, ...]
    never: tuple[str, ...]
    decide: tuple[str, ...]

    @property
    def what(self) -> str:
        """The kind of part in words, such as "pull-up resistor"."""
        return self.kind.name

    def __str__(self) -> str:
        return f"{self.likely}: {self.what}, {self.values}"


def candidates(place: Place | str) -> list[Candidate]:
    """What may have stood in `place` (a Place, or its text), likeliest first, at most five.

    Raises RepairlibError for a text that is no place.

    >>> for one in candidates("R7 0402, from RESET of U1 to +3.3 V")[:2]:
    ...     print(one)
    most likely: pull-up resistor, 1 kΩ to 100 kΩ, mostly 4.7 or 10 kΩ
    unlikely: pull-down resistor, 1 kΩ to 1 MΩ, mostly 10 or 100 kΩ
    """
    if isinstance(place, str):
        place = read_place(place)
    facts = facts_of(place)
    judged = [(_reasons(kind, place, facts), kind) for kind in KINDS.values()]
    judged.sort(key=_points, reverse=True)
    ranked = [(_points(one), *one) for one in judged]
    first, second = ranked[0][0], ranked[1][0]
    kept = [one for at, one in enumerate(ranked[:MOST]) if at < 3 or first - one[0] <= FAR]
    return [
        _candidate(place, kind, reasons, _in_words(points, first, second, at))
        for at, (points, reasons, kind) in enumerate(kept)
    ]


def on_the_mains(place: Place) -> bool:
    """Whether a place is on the mains side or above 60 V, or may be: then the job is handed on."""
    return place.danger is not None


def _points(judged: tuple[list[tuple[int, str]], Kind]) -> int:
    return sum(points for points, _ in judged[0])


def _reasons(kind: Kind, place: Place, facts: frozenset[str]) -> list[tuple[int, str]]:
    """Points and words of all that speaks for a kind or against it."""
    said = [(rule.points, rule.why) for rule in _RULES[kind.name] if rule.holds(facts)]
    said.append(points_of_letters(place.letters, kind))
    said += _by_twin(kind, place)
    return [one for one in said if one[0]]


def _by_twin(kind: Kind, place: Place) -> list[tuple[int, str]]:
    twin = place.twin
    if twin is None or twin.empty or kind.family == NOTHING or not twin.family:
        return []
    if kind.family == twin.family:
        said = [(_TWIN_IS, f"The twin has a part of that kind: {twin.family}")]
    elif _reads_alike(kind, place):
        said = [(_TWIN_IS, f"The twin reads {twin.value}, as such a part does")]
    else:
        return [(_TWIN_IS_NOT, f"The twin has a part of another kind: {twin.family}")]
    fits = None if twin.value is None else value_fits(kind, twin.value)
    if fits:
        said.append((_VALUE_FITS, f"The twin's {twin.value} is usual for it"))
    elif fits is False and not twin.in_circuit:
        said.append((_VALUE_DOES_NOT, f"The twin's {twin.value} is not usual for it"))
    elif fits is False:
        said.append(
            (_VALUE_DOES_NOT // 2, f"The twin's {twin.value}, read in circuit, is not usual")
        )
    return said


def _reads_alike(kind: Kind, place: Place) -> bool:
    """A bead, a fuse and a coil read as a few ohms or none, so that a meter's ohms fit them too."""
    value = place.twin.value if place.twin else None
    if value is None or value.unit != "Ω" or value > 2:
        return False
    return kind.family == INDUCTIVE or kind.name in ("fuse", "zero-ohm link")


def _in_words(points: int, first: int, second: int, at: int) -> str:
    if first < ENOUGH:
        return POSSIBLE if first - points <= CLOSE else UNLIKELY
    if at == 0:
        return MOST_LIKELY if first - second >= CLEAR else LIKELY
    if first - points <= CLOSE:
        return LIKELY
    return POSSIBLE if first - points <= FAR and points > 0 else UNLIKELY


def _candidate(place: Place, kind: Kind, reasons: list[tuple[int, str]], likely: str) -> Candidate:
    reasons.sort(key=lambda one: -abs(one[0]))
    mains = on_the_mains(place)
    return Candidate(
        kind=kind,
        points=sum(points for points, _ in reasons),
        likely=likely,
        values="handed on" if mains else value_words(kind, place),
        rating="handed on" if mains else rating_words(kind, place),
        pro=tuple(why for points, why in reasons if points > 0),
        con=tuple(why for points, why in reasons if points < 0),
        never=never_guessed(kind, mains),
        decide=deciding_steps(kind, place, mains),
    )
