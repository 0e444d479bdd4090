"""Bodies that memory chips come in, and which pads take which: sizes in mm.

The same chip is sold 150 and 208 mil wide, with the same leads in the same order, and one does not
go on the pads of the other.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from typing import Annotated, NamedTuple

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError, as_printed
from repairlib.core.quantity import Quantity
from repairlib.core.verdicts import CANNOT_TELL, CONDITIONS, FIT, MARGINAL, NEVER

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
        and _measures(one, width, over_leads)
        and (pitch is None or abs(pitch - one.pitch) <= CALLIPER)
    )


def _measures(one: Outline, width: float | None, over_leads: float | None) -> bool:
    """Whether width and span are its own; the width of a body without leads is either side."""
    sides = (one.width, one.length) if one.ends == UNDERNEATH else (one.width,)
    wide = width is None or any(_within(width, side) for side in sides)
    return wide and (over_leads is None or _within(over_leads, one.over_leads))


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
    """A body with feet as people write it."""
    return body_typed(value, tuple(one for one in OUTLINES.values() if one.foot))


_SIDES = re.compile(r"(\d+(?:[.,]\d+)?)\s*(?:mm)?\s*(?:x|×|by|\*)\s*(\d+(?:[.,]\d+)?)\s*(?:mm)?")
_MILS = re.compile(r"(\d{2,3})\s*[- ]?(?:mils?|thou)\b")
_MILLIMETRES = re.compile(r"(\d+(?:[.,]\d+)?)\s*mm\b")
_FAMILY = re.compile(
    r"\b(?:(\d{1,2})[- ]?(?:pins?|leads?|pads?)?[- ]?)?"
    r"(tssop|soic|sop|so|pdip|dip|dil|wson|uson|dfn|udfn|son)(?:[- ]?(\d{1,2}))?(w|n)?\b"
)
_ENDS_OF = {
    **dict.fromkeys(("tssop", "soic", "sop", "so"), LEADS),
    **dict.fromkeys(("pdip", "dip", "dil"), PINS),
    **dict.fromkeys(("wson", "uson", "dfn", "udfn", "son"), UNDERNEATH),
}
_ALSO_CALLED = {200.0: 208.0, 209.0: 208.0}  # mil


def body_typed(value: object, among: Sequence[Outline] = tuple(OUTLINES.values())) -> str:
    """The name of a body as people write it: 150mil, 6 x 5, SO-8 narrow, TSSOP8, DIP-8, 5.3 mm.

    Raises RepairlibError for what names none of `among`, and for what names several: those.

    >>> body_typed("6 x 5"), body_typed("SOIC-8, 208 mil"), body_typed("DIP-8")
    ('no leads, 6 × 5 mm', '208 mil', 'pins, 300 mil')
    """
    typed = as_printed(value).casefold()
    left = [one for one in among if one.name.casefold().replace(" ", "") == typed.replace(" ", "")]
    if not left:
        left = _that_fit(typed, among)
    if len(left) == 1:
        return left[0].name
    if left and len(left) < len(among):
        wrong = "a name of several bodies: measure the plastic between its leads"
        raise RepairlibError(value, wrong, "; ".join(_with_width(one) for one in left))
    raise RepairlibError(value, "not a known body", "; ".join(one.name for one in among))


def _that_fit(typed: str, among: Iterable[Outline]) -> list[Outline]:
    """The bodies that all of what was typed fits; all of them where nothing in it names one."""
    left = list(among)
    if sides := _SIDES.search(typed):
        pair = sorted(float(one.replace(",", ".")) for one in sides.groups())
        left = [one for one in left if _has_sides(one, pair)]
    elif mils := _MILS.search(typed):
        size = _ALSO_CALLED.get(float(mils[1]), float(mils[1]))
        left = [one for one in left if f"{size:g} mil" in one.name]
    elif width := _MILLIMETRES.search(typed):
        left = [one for one in left if _within(float(width[1].replace(",", ".")), one.width)]
    if family := _FAMILY.search(typed):
        left = [one for one in left if one.ends == _ENDS_OF[family[2]]]
        left = [one for one in left if ("TSSOP" in one.name) == (family[2] == "tssop")]
        count = family[1] or family[3]
        left = [one for one in left if not count or one.leads == int(count)]
    for word, mil in (("narrow", "150"), ("wide", "208")):
        if re.search(rf"\b{word}\b", typed) and any(mil in one.name for one in left):
            left = [one for one in left if mil in one.name]
    return left


def _has_sides(one: Outline, pair: Sequence[float]) -> bool:
    drawn = sorted((one.width, one.length))
    return all(_within(size, side) for size, side in zip(pair, drawn, strict=True))


def _with_width(one: Outline) -> str:
    return f"{one.name} ({_mm(one.width)})"


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
    pitch: Annotated[
        float | None, Given("m", "From the middle of a pad to that of the next.", **_SIZE)
    ] = None,
) -> Found:
    """Whether the feet of a chip of this body stand on two rows of pads.

    It fits with four fifths of each foot on its pad, which is our choice, for the smallest and the
    largest chip of its drawing, and with pads as far apart as its leads. Without the `pitch` of the
    pads the best verdict is "only with these conditions". Raises RepairlibError where the inner
    ends are not inside the outer ones. Sources: the drawings of the makers.

    >>> chip_on_pads("208 mil", inside="5.5 mm", outside="9 mm", pitch="1.27 mm").verdict
    'fit'
    >>> chip_on_pads("TSSOP-8", inside="3.6 mm", outside="9 mm", pitch="1.27 mm").verdict
    'do not'
    """
    if inside >= outside:
        read = f"{inside * 1000:g} mm inside, {outside * 1000:g} mm outside"
        raise RepairlibError(read, "the inner ends lie outside the outer ones", "inside < outside")
    one, pads = OUTLINES[body], Pads(inside * 1000, outside * 1000)
    foot = sum(one.foot or (0.0, 0.0)) / 2
    standings = [feet_on_pads(over, foot, pads) for over in one.over_leads]
    worst = min(standings, key=lambda standing: standing.on)
    verdict, reason = _by_pitch(one, worst, None if pitch is None else pitch * 1000)
    values = {
        "on_the_pad": Quantity(worst.on / 1000, "m"),
        "foot": Quantity(foot / 1000, "m"),
        "pitch": Quantity(one.pitch / 1000, "m"),
    }
    steps = [
        f"{over:g} mm over the leads: {standing.on:.2f} mm of a foot of {foot:.2f} mm on its pad"
        for over, standing in zip(one.over_leads, standings, strict=True)
    ]
    notes = ["Same width is not the same pinout: hold the data sheets side by side, find pin 1."]
    if one.width[0] > pads.inside + 2 * foot:
        notes.append("The body covers the inner part of the pads: look that nothing bridges there.")
    return found(values, verdict=verdict, reason=reason, working=steps,
                 notes=notes, sources=(one.source,))  # fmt: skip


def _by_pitch(one: Outline, standing: Standing, pitch: float | None) -> tuple[str, str]:
    """The verdict on the feet once the distance of the pads in mm, maybe not known, is asked."""
    if pitch is not None and abs(pitch - one.pitch) > CALLIPER:
        return NEVER, (
            f"The pads lie {pitch:g} mm apart and its leads {one.pitch:g} mm: they meet one lead "
            "at most. Take a chip of that pitch, or an adapter board."
        )
    if pitch is None and standing.verdict != NEVER:
        count = one.leads // 2
        whole = f"{(count - 1) * one.pitch:.2f} mm from the middle of the first to the last"
        verdict = CONDITIONS if standing.verdict == FIT else standing.verdict
        return verdict, (
            f"{standing.sentence} Only where the pads lie {one.pitch:g} mm apart, {whole} of the "
            f"{count} in a row: measure it."
        )
    return standing.verdict, standing.sentence
