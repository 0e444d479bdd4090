"""Bodies that memory chips come in, and which pads take which: sizes in mm.

The same chip is sold 150 and 208 mil wide, with the same leads in the same order, and one does not
go on the pads of the other.
"""

from __future__ import annotations

from typing import Annotated, NamedTuple

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError, as_printed
from repairlib.core.quantity import Quantity
from repairlib.core.verdicts import CANNOT_TELL, FIT, MARGINAL, NEVER

Range = tuple[float, float]
CALLIPER = 0.1  # mm that a measured size may lie outside the drawing: our choice
ENOUGH = 0.8  # of the foot on its pad: our choice
HALF = 0.5  # of the foot, below which nothing holds


class Outline(NamedTuple):
    """A body in mm: (least, most) of width, length, over the leads, and of a foot on its pad.

    Width is between the two rows of leads. `foot` is None for pads under the body and for pins.
    """

    name: str
    leads: int
    width: Range
    length: Range
    over_leads: Range
    pitch: float
    foot: Range | None
    source: str
    note: str = ""

    @property
    def ends(self) -> str:
        """How it meets the board: one of ENDS."""
        if self.foot is not None:
            return LEADS
        return PINS if self.pitch == 2.54 else UNDERNEATH


LEADS, UNDERNEATH, PINS = "leads", "pads under it", "pins in holes"
ENDS = (LEADS, UNDERNEATH, PINS)
_UNDER = "Its pads lie under the body, mostly with a large one in the middle: hot air takes it off."
_MEMORY = "from memory"
OUTLINES = {
    one.name: one
    for one in (
        Outline(
            *("150 mil", 8, (3.8, 4.0), (4.8, 5.0), (5.8, 6.2), 1.27, (0.4, 1.27)),
            "SO-8 outline",
        ),
        Outline(
            # 5.283 and 8.001 in the drawing, the spread around them from memory
            *("208 mil", 8, (5.18, 5.38), (5.18, 5.38), (7.8, 8.2), 1.27, (0.508, 0.762)),
            "S25FL064K",
            "Also called 200 or 209 mil.",
        ),
        Outline(
            *("300 mil, 16 leads", 16, (7.39, 7.6), (10.21, 10.41), (10.11, 10.52), 1.27),
            *((0.53, 0.99), "SO-16 outline", "Of its leads eight are mostly not connected."),
        ),
        Outline(
            *("TSSOP-8", 8, (4.3, 4.5), (2.9, 3.1), (6.2, 6.6), 0.65, (0.45, 0.75)),
            "TSSOP-8 outline",
        ),
        Outline(
            *("no leads, 6 × 5 mm", 8, (5.9, 6.1), (4.9, 5.1), (5.9, 6.1), 1.27, None),
            *("dual layout note, 150 mil", _UNDER),
        ),
        Outline(
            *("no leads, 8 × 6 mm", 8, (7.9, 8.1), (5.9, 6.1), (7.9, 8.1), 1.27, None),
            *(_MEMORY, _UNDER),
        ),
        Outline(
            *("no leads, 4 × 4 mm", 8, (3.9, 4.1), (3.9, 4.1), (3.9, 4.1), 0.8, None),
            *(_MEMORY, _UNDER),
        ),
        Outline(
            *("no leads, 4 × 3 mm", 8, (3.9, 4.1), (2.9, 3.1), (3.9, 4.1), 0.8, None),
            *(_MEMORY, _UNDER),
        ),
        Outline(
            *("no leads, 3 × 2 mm", 8, (2.9, 3.1), (1.9, 2.1), (2.9, 3.1), 0.5, None),
            *(_MEMORY, _UNDER),
        ),
        Outline(
            *("pins, 300 mil", 8, (6.1, 6.6), (9.0, 10.2), (7.6, 8.3), 2.54, None),
            *(_MEMORY, "It stands in holes or in a socket."),
        ),
    )
}


class Pads(NamedTuple):
    """Two rows of pads in mm: from inner end to inner end, and from outer end to outer end."""

    inside: float
    outside: float


# 150 mil: the footprint of an SO8 sheet. 208 mil: from memory, boards differ.
PADS = {"150 mil": Pads(4.0, 7.0), "208 mil": Pads(5.5, 9.0)}


class Standing(NamedTuple):
    """How the feet of a body stand on two rows of pads: verdict, mm on the pad, in a sentence."""

    verdict: str
    on: float
    sentence: str


def feet_on_pads(over_leads: float, foot: float, pads: Pads) -> Standing:
    """Whether feet of `foot` mm, `over_leads` mm from tip to tip, stand on these pads.

    >>> feet_on_pads(8.0, 0.64, PADS["208 mil"]).sentence
    'Its feet stand whole on their pads.'
    >>> feet_on_pads(6.0, 0.65, PADS["208 mil"]).verdict
    'do not'
    """
    tip, heel = over_leads / 2, over_leads / 2 - foot
    on = max(min(tip, pads.outside / 2) - max(heel, pads.inside / 2), 0.0)
    if on >= ENOUGH * foot - 1e-9:
        return Standing(FIT, on, "Its feet stand whole on their pads.")
    other = "Take a chip of the other width, or an adapter board."
    if heel < pads.inside / 2:
        reach = f"Its feet reach their pads by {on:.2g} mm of {foot:g} mm"
        held = "too little to hold" if on < HALF * foot else "less than it should be"
    else:
        beyond = f"{tip - pads.outside / 2:.2g} mm beyond the pads"
        reach = f"Its feet stand {beyond}, {on:.2g} mm of {foot:g} mm on them"
        held = "solder cannot be seen or trusted"
    verdict = MARGINAL if on >= HALF * foot else NEVER
    return Standing(verdict, on, f"{reach}: {held}. {other}")


def bodies_of(
    width: float | None = None,
    over_leads: float | None = None,
    pitch: float | None = None,
    leads: int | None = None,
    ends: str | None = None,
) -> tuple[Outline, ...]:
    """The bodies that what was measured in mm fits; what was not measured is left out.

    >>> [one.name for one in bodies_of(width=5.3, leads=8)]
    ['208 mil']
    >>> [one.name for one in bodies_of(over_leads=6.0)]
    ['150 mil', 'no leads, 6 × 5 mm']
    """
    return tuple(
        one
        for one in OUTLINES.values()
        if (leads is None or leads == one.leads)
        and (ends is None or ends == one.ends)
        and (width is None or _within(width, one.width))
        and (over_leads is None or _within(over_leads, one.over_leads))
        and (pitch is None or abs(pitch - one.pitch) <= CALLIPER)
    )


def _within(measured: float, drawn: Range) -> bool:
    return drawn[0] - CALLIPER - 1e-9 <= measured <= drawn[1] + CALLIPER + 1e-9


_SIZE = {"above": 0, "at_most": 0.05}
_TAKES = {
    "150 mil": "pads for 150 mil, about 4 mm from inner to inner end and 7 mm outside",
    "208 mil": "pads for 208 mil, about 5.5 mm from inner to inner end and 9 mm outside",
}
_SAME_CHIP = (
    "Some chips are sold 150 and 208 mil wide with the same leads, others in one width only: the "
    "letters behind the number say which."
)
_BOTH = (
    "Pads that are long enough take both widths: measure inner and outer ends, and ask "
    "chip_on_pads. Pads drawn for both also take the body without leads, 6 × 5 mm."
)


@calculator(
    topic="firmware",
    title="Body of a memory chip",
    sources=("SO-8 outline", "S25FL064K", "TSSOP-8 outline", "dual layout note, 150 mil"),
)
def chip_body(
    width: Annotated[
        float | None, Given("m", "Of the plastic, between the leads.", **_SIZE)
    ] = None,
    span: Annotated[float | None, Given("m", "Over the leads, tip to tip.", **_SIZE)] = None,
    pitch: Annotated[float | None, Given("m", "From lead to lead.", **_SIZE)] = None,
    ends: Annotated[str, Choice(ENDS, "How it meets the board.")] = LEADS,
    leads: Annotated[float, Given("", "How many of them.", at_least=4, at_most=64)] = 8.0,
) -> Found:
    """Which body a memory chip has, from its width or span, and which pads take it.

    A size may lie 0.1 mm outside the drawing. Raises RepairlibError where nothing was measured.
    Sources: the drawings of the makers; bodies without leads mostly from memory.

    >>> chip_body(width="5.28 mm").body, chip_body(span="4 mm", ends="pads under it").verdict
    ('208 mil', 'cannot tell')
    """
    if width is None and span is None:
        wrong = "neither the width nor the span was measured"
        raise RepairlibError("the body", wrong, "width=5.28 mm or span=8 mm")
    measured = {"width": width, "span": span, "pitch": pitch}
    mm = {name: None if size is None else size * 1000 for name, size in measured.items()}
    fitting = bodies_of(mm["width"], mm["span"], mm["pitch"], round(leads), ends)
    steps = [
        f"{one.name}: width {_mm(one.width)}, over leads {_mm(one.over_leads)}, "
        f"pitch {one.pitch:g} mm"
        for one in OUTLINES.values()
        if one.leads == round(leads) and one.ends == ends
    ]
    if len(fitting) == 1:
        one = fitting[0]
        takes = _TAKES.get(one.name, "pads drawn for this body")
        values = {"body": one.name, "goes_on": takes, "pitch": Quantity(one.pitch / 1000, "m")}
        notes = [*([one.note] if one.note else []), _BOTH]
        notes += [_SAME_CHIP] if one.name in PADS else []
        return found(values, working=steps, notes=notes, sources=(one.source,))
    names = " or ".join(one.name for one in fitting)
    reason = f"it may be {names}" if fitting else "no body known here has this size"
    notes = ["Measure width, span and pitch: with all three the bodies differ.", _BOTH]
    return found({"body": names or "not known"}, working=steps, verdict=CANNOT_TELL,
                 reason=reason, notes=notes)  # fmt: skip


def _mm(drawn: Range) -> str:
    return f"{drawn[0]:g} to {drawn[1]:g} mm"


def _with_feet() -> tuple[str, ...]:
    return tuple(one.name for one in OUTLINES.values() if one.foot)


def _body_named(value: object) -> str:
    """A body as people write it: 150mil, and 200 or 209 mil for 208."""
    typed = as_printed(value).replace(" ", "").casefold()
    typed = {"200mil": "208mil", "209mil": "208mil"}.get(typed, typed)
    for name in _with_feet():
        if name.replace(" ", "").casefold() == typed:
            return name
    raise RepairlibError(value, "not a known body with leads", "; ".join(_with_feet()))


@calculator(
    topic="firmware",
    title="Memory chip on pads",
    sources=("SO-8 outline", "S25FL064K"),
    cautions=("hot tools",),
)
def chip_on_pads(
    body: Annotated[str, Choice(_with_feet, "Of the chip.", _body_named)],
    inside: Annotated[float, Given("m", "From inner end to inner end of the pads.", **_SIZE)],
    outside: Annotated[float, Given("m", "From outer end to outer end.", **_SIZE)],
) -> Found:
    """Whether the feet of a chip of this body stand on two rows of pads.

    It fits with four fifths of each foot on its pad, which is our choice, for the smallest and the
    largest chip of its drawing. Raises RepairlibError where the inner ends are not inside the outer
    ones. Sources: the drawings of the makers.

    >>> chip_on_pads("208 mil", inside="5.5 mm", outside="9 mm").verdict
    'fit'
    >>> chip_on_pads("208 mil", inside="4 mm", outside="7 mm").verdict
    'do not'
    """
    if inside >= outside:
        read = f"{inside * 1000:g} mm inside, {outside * 1000:g} mm outside"
        raise RepairlibError(read, "the inner ends lie outside the outer ones", "inside < outside")
    one, pads = OUTLINES[body], Pads(inside * 1000, outside * 1000)
    foot = sum(one.foot or (0.0, 0.0)) / 2
    standings = [feet_on_pads(over, foot, pads) for over in one.over_leads]
    worst = min(standings, key=lambda standing: standing.on)
    values = {"on_the_pad": Quantity(worst.on / 1000, "m"), "foot": Quantity(foot / 1000, "m")}
    steps = [
        f"{over:g} mm over the leads: {standing.on:.2f} mm of a foot of {foot:.2f} mm on its pad"
        for over, standing in zip(one.over_leads, standings, strict=True)
    ]
    notes = ["Same width is not the same pinout: hold the data sheets side by side, find pin 1."]
    if one.width[0] > pads.inside + 2 * foot:
        notes.append("The body covers the inner part of the pads: look that nothing bridges there.")
    return found(values, verdict=worst.verdict, reason=worst.sentence, working=steps,
                 notes=notes, sources=(one.source,))  # fmt: skip
