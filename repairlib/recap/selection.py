"""Which catalogue parts may go into a place. Which of them is taken is decided in choice.py.

Covers the same kind of part only: aluminium for aluminium, bipolar for bipolar. Another kind is a
substitution, with rules of its own in substitution.py.
"""

from __future__ import annotations

from decimal import Decimal
from functools import cache, lru_cache
from typing import NamedTuple

from repairlib.core.quantity import engineering
from repairlib.health import LOW_IMPEDANCE, WET, families
from repairlib.recap.board import Position
from repairlib.recap.catalogue import Catalogue, CataloguePart
from repairlib.recap.expectation import hours_inside
from repairlib.recap.rules import Proposal
from repairlib.recap.sizes import obstacle_to
from repairlib.recap.words import BIPOLAR, FILM

LEAST_C = 105.0  # of an electrolytic; film parts do not dry out, and many are made for less
_BIPOLAR = ("aluminium non-polar axial", "aluminium non-polar", "aluminium bipolar")
_BENDS_MM = 4.0  # an axial part needs about 2 mm at each end before its lead bends
_NOWHERE = Position("")


class Alike:
    """Parts that differ in nothing that decides whether they may go in.

    Few sizes and ratings are made, so a long catalogue has few of these for each value. `parts`
    are sorted by their lowest price; `best` lives longest, and is the cheapest of those.
    """

    __slots__ = ("best", "parts")

    def __init__(self, parts: list[CataloguePart]):
        self.parts = sorted(parts, key=lowest_price)
        self.best = min(parts, key=rank)


class Fitting(NamedTuple):
    """What may go into a place: `able` to choose from, `barred` with the reason of each.

    Where low impedance is asked for, `able` are those of the longest life, most ripple current and
    lowest impedance alone, and `all_able` the others too. `spoken` is what was looked for.
    """

    able: frozenset[Alike]
    all_able: frozenset[Alike]
    barred: tuple[tuple[CataloguePart, str], ...]
    spoken: str

    def why_none(self) -> str:
        """Why nothing may go in."""
        if not self.barred:
            return f"no line of the catalogue is {self.spoken}"
        every = sorted(self.barred, key=lambda pair: rank(pair[0]))
        reasons = list(dict.fromkeys(why for _, why in every))
        shown = "; ".join(reasons[:3]) + ("; and so on" if len(reasons) > 3 else "")
        return f"no line of the catalogue may go in as {self.spoken}: {shown}"


class Selector:
    """Looks what of one catalogue may go in; the same question is answered once."""

    def __init__(self, catalogue: Catalogue):
        self.catalogue = catalogue
        self.answers: dict[tuple, Fitting] = {}
        self.best: dict[tuple[str, ...], Alike] = {}
        by_shape: dict[tuple, dict[tuple, list[CataloguePart]]] = {}
        for part in catalogue.parts:
            shelf = by_shape.setdefault((part.mounting, _value_key(part.farad)), {})
            shelf.setdefault(_shape(part), []).append(part)
        self.shelves = {
            place: [Alike(parts) for parts in shelf.values()] for place, shelf in by_shape.items()
        }

    def fitting(
        self, new: Proposal, place: Position | None = None, low_impedance: bool = False
    ) -> Fitting:
        """What may go in for that proposal at that place (see choice.CHOICE_RULE).

        `low_impedance` says that the list asks for such a type.
        """
        place = place or _NOWHERE
        form = new.form or place.form or "radial"
        room = place.spacing_mm, place.max_diameter_mm, place.max_height_mm
        question = form, new.farad, new.volts, new.kind, low_impedance, room
        if question not in self.answers:
            kinds = _families(new.kind, low_impedance)
            wanted = _Wanted(new.volts, kinds, form, place)
            shelf = self.shelves.get((form, _value_key(new.farad)), [])
            able, barred = _looked_through(shelf, wanted)
            best = self._most_ripple(able) if low_impedance and able else able
            spoken = _spoken(new, form, low_impedance)
            self.answers[question] = Fitting(best, able, barred, spoken)
        return self.answers[question]

    def _most_ripple(self, able: frozenset[Alike]) -> frozenset[Alike]:
        """The parts of the longest life, then the most ripple, then the lowest impedance."""
        parts = sorted((part for alike in able for part in alike.parts), key=_ripple_key)
        first = [part for part in parts if _ripple_key(part) == _ripple_key(parts[0])]
        names = tuple(sorted(part.part for part in first))
        return frozenset((self.best.setdefault(names, Alike(first)),))


@lru_cache(maxsize=1)
def selector_of(catalogue: Catalogue) -> Selector:
    """The Selector of a catalogue, kept while the same one is asked."""
    return Selector(catalogue)


class _Wanted(NamedTuple):
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


def life_of(part: CataloguePart) -> float:
    """Expected hours inside the set, counted up to 15 years; 0 where no life is stated."""
    return _hours(part.family, part.hours, part.celsius)


@cache
def _hours(family: str, hours: float | None, celsius: float) -> float:
    return hours_inside(family, hours, celsius) or 0.0


def lowest_price(part: CataloguePart) -> Decimal:
    """Sorting key: the lowest price of one piece."""
    return part.price


def rank(part: CataloguePart) -> tuple:
    """Sorting key of parts whatever number is bought: long life first, then the lowest price."""
    return -life_of(part), part.price, -(part.ripple or 0.0), part.volts, part.part


def _ripple_key(part: CataloguePart) -> tuple:
    ohm = part.ohm if part.ohm is not None else float("inf")
    return -life_of(part), -(part.ripple or 0.0), ohm


def _value_key(farad: float) -> float:
    """A capacitance [F] to six figures, so that 4.7 µF is the same from every spelling."""
    return float(f"{farad:.6g}")


def _shape(part: CataloguePart) -> tuple:
    """Everything that decides whether a part may go into a place."""
    return part.family, part.volts, part.celsius, part.diameter, part.length, part.spacing


def _looked_through(shelf: list[Alike], wanted: _Wanted) -> tuple[frozenset[Alike], tuple]:
    """Those of a shelf that may go in, and the best of each other kind with its obstacle."""
    able, barred = [], []
    for alike in shelf:
        obstacle = wanted.obstacle(alike.parts[0])
        if obstacle:
            barred.append((alike.best, obstacle))
        else:
            able.append(alike)
    return frozenset(able), tuple(barred)


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
