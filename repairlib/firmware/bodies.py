"""The body of a memory chip from what was measured, and which pads take it.

The same chip is sold 150 and 208 mil wide, with the same leads in the same order, and one does not
go on the pads of the other.
"""

from __future__ import annotations

from typing import Annotated, NamedTuple

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity
from repairlib.core.verdicts import CANNOT_TELL, CONDITIONS, FIT, MARGINAL, NEVER
from repairlib.firmware.body_names import body_typed
from repairlib.firmware.outlines import (
    CALLIPER,
    ENDS,
    LEADS,
    OUTLINES,
    PADS,
    Outline,
    Pads,
    Range,
    bodies_of,
)

ENOUGH = 0.8  # of the foot on its pad: our choice
HALF = 0.5  # of the foot, below which nothing holds


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
