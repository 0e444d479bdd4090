"""Choosing a catalogue part for one place: what may go in, and which of those is taken.

Covers the same kind of part only: aluminium for aluminium, bipolar for bipolar. Another kind is a
substitution, with rules of its own in substitution.py.
"""

from __future__ import annotations

from typing import NamedTuple

from repairlib.core.quantity import brief, engineering
from repairlib.health import CAP_YEARS, LOW_IMPEDANCE, WET, families
from repairlib.recap.board import Position
from repairlib.recap.catalogue import Catalogue, CataloguePart
from repairlib.recap.expectation import INSIDE_C, hours_inside, years_in_words
from repairlib.recap.rules import Proposal
from repairlib.recap.sizes import obstacle_to
from repairlib.recap.words import BIPOLAR, FILM

LEAST_C = 105.0  # of an electrolytic; film parts do not dry out, and many are made for less
CHOICE_RULE = (
    "A part may go in when kind, build and capacitance are those of the plan, its rated voltage is "
    "not below, it is rated for 105 °C, and nothing known about its size speaks against the place. "
    f"Of those: the longest life at {INSIDE_C:g} °C, counted up to {CAP_YEARS} years; then the "
    "lowest price for one piece; then the higher ripple current, the lower rated voltage, the part "
    "number. Where low impedance is asked for, ripple current and impedance come before the price."
)
_BIPOLAR = ("aluminium non-polar axial", "aluminium non-polar", "aluminium bipolar")
_BENDS_MM = 4.0  # an axial part needs about 2 mm at each end before its lead bends
_NOWHERE = Position("")


class Selection(NamedTuple):
    """The `part` taken, or None, and `why`.

    `tied` are the parts that are equal in life and price; `cheapest` is the cheapest part that may
    go in where that is another one; `passed_over` says what a longer-lived part failed on.
    """

    part: CataloguePart | None
    why: str
    tied: tuple[CataloguePart, ...] = ()
    cheapest: CataloguePart | None = None
    passed_over: str = ""

    def explained(self) -> tuple[str, ...]:
        """The whole choice in sentences."""
        says = [self.why, self.passed_over]
        if self.cheapest:
            one = self.cheapest
            says.append(f"the cheapest that may go in: {one.part}, {one.price} each, {_life(one)}")
        return tuple(sentence for sentence in says if sentence)


class _Alike(NamedTuple):
    """Parts that differ in nothing that decides whether they may go in: the best one comes first.

    Few sizes and ratings are made, so a long catalogue has few of these for each value.
    """

    parts: list[CataloguePart]
    cheapest: CataloguePart


class Selector:
    """Chooses from one catalogue; the same question is answered once."""

    def __init__(self, catalogue: Catalogue):
        self.catalogue = catalogue
        self.answers: dict[tuple, Selection] = {}
        by_shape: dict[tuple, dict[tuple, list[CataloguePart]]] = {}
        for part in catalogue.parts:
            shelf = by_shape.setdefault((part.mounting, _value_key(part.farad)), {})
            shelf.setdefault(_shape(part), []).append(part)
        self.shelves = {
            place: [
                _Alike(sorted(parts, key=rank), min(parts, key=_price_then_life))
                for parts in shelf.values()
            ]
            for place, shelf in by_shape.items()
        }

    def choose(
        self, new: Proposal, place: Position | None = None, low_impedance: bool = False
    ) -> Selection:
        """The part for that proposal at that place (see CHOICE_RULE).

        `low_impedance` says that the list asks for such a type.
        """
        place = place or _NOWHERE
        form = new.form or place.form or "radial"
        room = place.spacing_mm, place.max_diameter_mm, place.max_height_mm
        question = form, new.farad, new.volts, new.kind, low_impedance, room
        if question not in self.answers:
            kinds = _families(new.kind, low_impedance)
            wanted = _Wanted(low_impedance, new.volts, kinds, form, place)
            shelf = self.shelves.get((form, _value_key(new.farad)), [])
            self.answers[question] = _chosen(shelf, wanted, _spoken(new, form, low_impedance))
        return self.answers[question]


class _Wanted(NamedTuple):
    low_impedance: bool
    volts: float
    families: frozenset[str]
    form: str
    place: Position

    def obstacle(self, part: CataloguePart) -> str:
        """Why that part may not go in; "" when it may."""
        if part.family not in self.families:
            return f"{part.family}, which is another kind"
        if part.volts < self.volts:
            return f"rated {part.volts:g} V only"
        if part.celsius < LEAST_C and not part.family.startswith("film"):
            return f"rated for {part.celsius:g} °C only"
        if self.form == "axial":
            return _axial_obstacle(part, self.place)
        return obstacle_to(part.diameter, part.length, part.spacing, self.place)


def rank(part: CataloguePart) -> tuple:
    """Sorting key: the part to take first comes first."""
    life = hours_inside(part.family, part.hours, part.celsius) or 0.0
    return -life, part.price, -(part.ripple or 0.0), part.volts, part.part


def _value_key(farad: float) -> float:
    """A capacitance [F] to six figures, so that 4.7 µF is the same from every spelling."""
    return float(f"{farad:.6g}")


def _shape(part: CataloguePart) -> tuple:
    """Everything that decides whether a part may go into a place."""
    return part.family, part.volts, part.celsius, part.diameter, part.length, part.spacing


def _chosen(shelf: list[_Alike], wanted: _Wanted, spoken: str) -> Selection:
    able, barred = [], []
    for alike in shelf:
        obstacle = wanted.obstacle(alike.parts[0])
        (barred.append((alike.parts[0], obstacle)) if obstacle else able.append(alike))
    if not able:
        return Selection(None, _nothing_fits(spoken, barred))
    if wanted.low_impedance:
        return _for_ripple([part for alike in able for part in alike.parts], barred)
    taken = min((alike.parts[0] for alike in able), key=rank)
    best = rank(taken)[:2]
    tied = [part for alike in able for part in _leading(alike.parts, best) if part is not taken]
    others = sum(len(alike.parts) for alike in able) - 1
    cheapest = min((alike.cheapest for alike in able), key=_price_then_life)
    return Selection(
        taken,
        _why(taken, tied, others),
        tuple(sorted(tied, key=rank)),
        cheapest if cheapest.price < taken.price else None,
        _passed_over(taken, barred),
    )


def _for_ripple(able: list[CataloguePart], barred: list) -> Selection:
    """The choice where ripple current and impedance count: they come before the price."""
    taken = min(able, key=_ripple_rank)
    cheapest = min(able, key=_price_then_life)
    ripple = f"{brief(taken.ripple, 'A')} of ripple" if taken.ripple else "ripple not stated"
    ohm = f", {brief(taken.ohm, 'Ω')} at 100 kHz" if taken.ohm else ""
    why = (
        f"{taken.part}: of {len(able)} low-impedance parts that may go in the longest life, "
        f"{_life(taken)}, then the most ripple current, {ripple}{ohm}; {taken.price} each"
    )
    cheaper = cheapest if cheapest.price < taken.price else None
    return Selection(taken, why, (), cheaper, _passed_over(taken, barred))


def _ripple_rank(part: CataloguePart) -> tuple:
    """Sorting key where low impedance is asked for: ripple and impedance before the price."""
    life = hours_inside(part.family, part.hours, part.celsius) or 0.0
    ohm = part.ohm if part.ohm is not None else float("inf")
    return -life, -(part.ripple or 0.0), ohm, part.price, part.volts, part.part


def _leading(parts: list[CataloguePart], best: tuple) -> list[CataloguePart]:
    """Those at the front of a sorted list that have the best life and price."""
    found = []
    for part in parts:
        if rank(part)[:2] != best:
            break
        found.append(part)
    return found


def _price_then_life(part: CataloguePart) -> tuple:
    return part.price, rank(part)


def _why(taken: CataloguePart, tied: list[CataloguePart], others: int) -> str:
    if not others:
        return f"{taken.part} is the only part that may go in: {_life(taken)}, {taken.price} each"
    said = f"{taken.part}: the longest life of {others + 1} that may go in, {_life(taken)}"
    if not tied:
        return f"{said}; at that life the lowest price, {taken.price} each"
    names = ", ".join(part.part for part in sorted(tied, key=rank)[:3])
    more = f" and {len(tied) - 3} more" if len(tied) > 3 else ""
    return f"{said}; at {taken.price} each as cheap as {names}{more}: {_tie(taken, tied)}"


def _tie(taken: CataloguePart, tied: list[CataloguePart]) -> str:
    """What parts the taken one from the next of those that are equal in life and price."""
    following = min(tied, key=rank)
    if (taken.ripple or 0.0) != (following.ripple or 0.0):
        return "the higher ripple current decided"
    if taken.volts != following.volts:
        return "the lower rated voltage decided"
    return "all else is equal, so the part number decided"


def _passed_over(taken: CataloguePart, barred: list[tuple[CataloguePart, str]]) -> str:
    """The best of the parts that would have come before the taken one, had they fitted."""
    better = [
        (part, why)
        for part, why in barred
        if rank(part) < rank(taken) and part.family == taken.family and part.volts >= taken.volts
    ]
    if not better:
        return ""
    part, why = min(better, key=lambda pair: rank(pair[0]))
    return f"passed over: {part.part} ({_life(part)}) is {why}"


def _nothing_fits(spoken: str, barred: list[tuple[CataloguePart, str]]) -> str:
    if not barred:
        return f"no line of the catalogue is {spoken}"
    reasons = dict.fromkeys(why for _, why in sorted(barred, key=lambda pair: rank(pair[0])))
    shown = "; ".join(list(reasons)[:3]) + ("; and so on" if len(reasons) > 3 else "")
    return f"no line of the catalogue may go in as {spoken}: {shown}"


def _life(part: CataloguePart) -> str:
    hours = hours_inside(part.family, part.hours, part.celsius)
    return years_in_words(hours) or "life not stated"


def _families(kind: str, low_impedance: bool) -> frozenset[str]:
    if kind == FILM:
        return frozenset(name for name in families() if name.startswith("film"))
    if kind == BIPOLAR:
        return frozenset(_BIPOLAR)
    if low_impedance:
        return frozenset((LOW_IMPEDANCE,))
    wet = {name for name, one in families().items() if one.inside == WET}
    return frozenset(wet.difference(_BIPOLAR))


def _spoken(new: Proposal, form: str, low_impedance: bool) -> str:
    kind = "low impedance, polar" if low_impedance else "polar" if new.polar else new.kind
    kind = "bipolar" if new.kind == BIPOLAR else kind
    return f"{engineering(new.farad, 'F')} {engineering(new.volts, 'V')} {form} {kind}"


def _axial_obstacle(part: CataloguePart, place: Position) -> str:
    """Why a lying part does not go in: its diameter is its height, its length needs the holes."""
    rooms = [room for room in (place.max_diameter_mm, place.max_height_mm) if room is not None]
    if rooms and part.diameter is not None and part.diameter > min(rooms):
        return f"{part.diameter:g} mm in diameter, the board has room for {min(rooms):g} mm"
    if place.spacing_mm and part.length and part.length + _BENDS_MM > place.spacing_mm:
        bent = f"{part.length:g} mm long and needs {_BENDS_MM:g} mm for its bends"
        return f"{bent}, the holes are {place.spacing_mm:g} mm apart"
    return ""
