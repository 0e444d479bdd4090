"""The drawers of the bench: which new parts there are, and what is read off the old one.

A part lies there when its value and its rating are made and it has room in the place. It may still
be the wrong one: what is too small, too weak or of another value is fitted like any other.
"""

from __future__ import annotations

from collections.abc import Iterator

from repairlib.bench.board_part import CONTACTS, FUSES, BoardPart
from repairlib.bench.looks import CAN, CHIP, LINK_OHM, TANTALUM, UNITS, kind_of, value_of
from repairlib.bench.state import Fitted
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity, brief
from repairlib.core.series import is_made, next_down, next_up
from repairlib.core.tables import read_table

SLIP = 1000.0  # times the listed value, or a part of it: a prefix was mistyped; a choice
SPARE_ROOM = 2.0  # mm that a can may be wider than the old one; the gap to the next part
MADE_AMPS = (
    0.032, 0.04, 0.05, 0.063, 0.08, 0.1, 0.125, 0.16, 0.2, 0.25, 0.315, 0.4, 0.5, 0.63, 0.8, 1.0,
    1.25, 1.6, 2.0, 2.5, 3.15, 4.0, 5.0, 6.3, 8.0, 10.0,
)  # fmt: skip  # of small fuses, IEC 60127-2: from memory
MADE_VOLTS = {
    "regulator": (1.2, 1.5, 1.8, 2.5, 3.0, 3.3, 5.0, 6.0, 8.0, 9.0, 10.0, 12.0, 15.0, 18.0, 24.0),
    "surge diode": (5.0, 6.0, 6.5, 7.5, 8.5, 10.0, 12.0, 13.0, 15.0, 18.0, 20.0, 24.0, 28.0, 30.0),
    "diode": (20.0, 30.0, 40.0, 50.0, 60.0, 100.0, 200.0, 400.0, 600.0, 800.0, 1000.0),
    TANTALUM: (4.0, 6.3, 10.0, 16.0, 20.0, 25.0, 35.0, 50.0),
}  # from memory
SERIES = {"R": "E24", "C": "E12", "L": "E12", CAN: "E6", TANTALUM: "E6"}


def figures_due(part: BoardPart) -> dict[str, str]:
    """What must be known of a new part, as its figures by name with their units.

    >>> from repairlib.bench.practice_set import demo_set
    >>> radio = demo_set("desk radio")
    >>> figures_due(radio.part("C1")), figures_due(radio.part("F1")), figures_due(radio.part("I1"))
    ({'value': 'F', 'volts': 'V'}, {'amps': 'A'}, {})
    """
    if part.circuit is None or part.what in CONTACTS:
        return {}
    if part.what in FUSES:
        return {"amps": "A"} if part.rated else {}
    letter = part.circuit.letter
    due = {"value": UNITS[letter]} if letter in UNITS else {}
    return due | ({"volts": "V"} if letter in "CD" and part.rated else {})


def listed(part: BoardPart) -> dict[str, float]:
    """The figures of the part that belongs in the place, as the list of the set has them.

    >>> from repairlib.bench.practice_set import demo_set
    >>> listed(demo_set("desk radio").part("C1"))
    {'value': 0.0022, 'volts': 25.0}
    """
    value = part.circuit.value if part.circuit else 0.0
    return {name: value if name == "value" else part.rated for name in figures_due(part)}


def as_listed(part: BoardPart) -> str:
    """The same as it is typed behind `fit`, with a space before it; "" where there is nothing.

    >>> from repairlib.bench.practice_set import demo_set
    >>> as_listed(demo_set("desk radio").part("C1"))
    ' 2200 µF 25 V'
    """
    return "".join(f" {_said(one, figures_due(part)[name])}" for name, one in listed(part).items())


def in_figures(part: BoardPart, fitted: Fitted) -> dict[str, float]:
    """The figures of a part that was fitted, or that lies on the bench."""
    usual = listed(part)
    rated = fitted.rated if fitted.rated is not None else part.rated
    value = value_of(part, fitted)
    return {name: value if name == "value" else rated for name in usual}


def taken_from(part: BoardPart, said: dict[str, float], old: Fitted | None) -> dict[str, float]:
    """The figures of the new part: what was said, and for the rest what is printed on the old one.

    Raises RepairlibError where the old one is not there or carries no print, for what is not made,
    has no room in the place, and for a value so far from the listed one that it is a slip.
    """
    due = figures_due(part)
    printed = in_figures(part, old) if old and kind_of(part) != CHIP else {}
    missing = [name for name in due if name not in said and name not in printed]
    if missing:
        why = (
            "nothing of the old one is there to read"
            if old is None
            else "nothing is printed on the old one"
        )
        form = f"as the list of this set has it: fit {part.name}{as_listed(part)}"
        raise RepairlibError(f"fit {part.name}", why, form)
    chosen = {name: said.get(name, printed.get(name, 0.0)) for name in due}
    if unfit := [name for name in said if name not in due]:
        raise RepairlibError(unfit[0], f"{part.name} has no such figure", f"fit {part.name}")
    for name in said:
        _check(part, name, chosen)
    if "volts" in chosen and said:
        _has_room(part, chosen)
    if due.get("value") == "Ω" and chosen["value"] == 0:
        chosen["value"] = LINK_OHM
    return chosen


def _check(part: BoardPart, name: str, chosen: dict[str, float]) -> None:
    figure, unit, usual = chosen[name], figures_due(part)[name], listed(part)[name]
    if unit == "Ω" and figure == 0:
        return
    if not figure > 0:
        raise RepairlibError(_said(figure, unit), "no part has that", f"above 0 {unit}")
    if name == "value" and not 1 / SLIP < figure / usual < SLIP:
        wrong = f"a slip of the prefix? {part.name} is listed with {_said(usual, unit)}"
        raise RepairlibError(_said(figure, unit), wrong, "a value less than a thousand times off")
    near = list(_near(part, unit, figure))
    if figure != usual and figure not in near:
        safe = [one for one in near if _is_no_worse(part, name, one, usual)] or [usual]
        accepted = " or ".join(dict.fromkeys(_said(one, unit) for one in safe))
        raise RepairlibError(_said(figure, unit), "not made: not in the drawer", accepted)


def _is_no_worse(part: BoardPart, name: str, figure: float, usual: float) -> bool:
    """Whether it is nothing to warn of: no lower rating in volts, and no larger fuse."""
    if name == "volts" and figures_due(part) != {"volts": "V"}:
        return figure >= usual
    return name != "amps" or figure <= usual


def _near(part: BoardPart, unit: str, figure: float) -> Iterator[float]:
    """The figure itself where it is made, else what is made next to it."""
    made = _ratings(part, unit)
    if made:
        yield from [max((one for one in made if one <= figure), default=made[0])]
        yield from [one for one in made if one > figure][:1]
        return
    kind = kind_of(part)
    series = SERIES[kind if kind in SERIES else part.circuit.letter if part.circuit else "R"]
    if is_made(figure, series):
        yield figure
    else:
        yield from (next_down(figure, series), next_up(figure, series))


def _ratings(part: BoardPart, unit: str) -> tuple[float, ...]:
    """The standard figures of that unit for such a part, none where it goes by a series."""
    if unit == "A":
        return MADE_AMPS
    if unit != "V":
        return ()
    letter = part.circuit.letter if part.circuit else ""
    kind = {"D": "diode", "U": "regulator"}.get(letter, kind_of(part))
    made = MADE_VOLTS.get(part.what) or MADE_VOLTS.get(kind)
    return made or tuple(float(row["volts"]) for row in read_table("rated-voltages"))


def _has_room(part: BoardPart, chosen: dict[str, float]) -> None:
    """Raises RepairlibError for an electrolytic that has no room in the place."""
    if chosen == listed(part) or kind_of(part) not in (CAN, TANTALUM):
        return
    if not any(_rooms(part, chosen["value"] * 1e6, chosen["volts"])):
        said = " ".join(_said(one, figures_due(part)[name]) for name, one in chosen.items())
        place = f"a place of {part.wide:g} x {part.high:g} mm"
        raise RepairlibError(said, f"none is made that fits {place}", "fewer µF, or fewer volts")


def _rooms(part: BoardPart, microfarad: float, volts: float) -> Iterator[bool]:
    room = max(part.wide, part.high)
    slack = 1 - 1e-6
    if kind_of(part) == TANTALUM:
        for row in read_table("tantalum-largest"):
            length = int(row["eia"][:2]) / 10
            enough = float(row["largest_uf"]) >= microfarad * slack
            yield enough and float(row["rated_v"]) >= volts and length <= room
        return
    for row in read_table("radial-can-sizes"):
        enough = float(row["c_uf"]) >= microfarad * slack and float(row["volts"]) >= volts
        yield enough and float(row["diameter_mm"]) <= room + SPARE_ROOM


def _said(figure: float, unit: str) -> str:
    shown = brief(figure, unit) if unit in "AV" else str(Quantity(figure, unit))
    return shown.replace("\u00a0", " ")
