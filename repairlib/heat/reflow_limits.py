"""Limits for a reflow profile: J-STD-020 by package, or those of a solder paste.

The standard states what a part may see in the oven. It is no recipe: it says nothing of wetting.
The user's reading is used: the part's own rating Tc is the most that its body may reach.
"""

from __future__ import annotations

from typing import Annotated, NamedTuple

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity

LEADED, LEAD_FREE = "Sn-Pb", "Pb-free"
ALLOYS = (LEADED, LEAD_FREE)
D1, C = "D.1", "C"
EDITIONS = (D1, C)
NEAR = 5.0  # K below the highest peak; the time spent above that is limited
COLD = 25.0  # °C, from where the time to the peak counts

Range = tuple[float | None, float | None]


class ReflowLimits(NamedTuple):
    """What a profile must keep to: °C, seconds and K/s. None is a limit that is not stated.

    `soak` holds for the time from `soak_from` to `soak_to`, `above` for the time above `liquidus`,
    `near` for the time within 5 °C of the highest peak, `total` for the time from 25 °C to the
    peak. All limits are inclusive.
    """

    name: str
    liquidus: float
    soak_from: float
    soak_to: float
    soak: Range
    above: Range
    peak: Range
    near: Range = (None, None)
    ramp_up: Range = (None, None)
    ramp_down: Range = (None, None)
    total: Range = (None, None)
    notes: tuple[str, ...] = ()
    sources: tuple[str, ...] = ("limits as typed",)


# Tc in °C by volume below 350, 350 to 2000, above 2000 mm³: bodies below 1.6 mm, from 1.6 to
# 2.5 mm, and thicker ones.
_VERY_THIN_PEAKS, _THIN_PEAKS, _THICK_PEAKS = (260, 260, 260), (260, 250, 245), (250, 245, 245)
# Thickness below 2.5 mm, and from there on, by volume below 350 mm³ and from there on.
_LEADED_PEAKS = {D1: ((235, 220), (220, 220)), C: ((240, 225), (225, 225))}
_VERY_THIN, _THIN, _SMALL, _MEDIUM = 1.6, 2.5, 350.0, 2000.0  # mm, mm, mm³, mm³

_LEADED_NOTES = {
    D1: "The peaks of Sn-Pb parts are those of revisions D.1 and E, from memory: revision C had "
    "240 and 225 °C in the same places.",
    C: "Revision C: 240 and 225 °C, each +0/−5 °C. Later revisions ask for less.",
}
_EDITION_NOTES = {
    D1: "Time from 150 to 200 °C: 60 to 120 s as in revision D.1 and later; "
    "revisions C and D allow 180 s for Pb-free.",
    C: "Revision C is out of date: it allows a longer preheat and more time near the peak.",
}
_USER = "User's reading: the peak stays at or below Tc. A maker who rates a part reads it as least."


def body_peak(alloy: str, thickness_mm: float, volume_mm3: float, edition: str = D1) -> float:
    """Tc: the highest temperature in °C that the body of a part may see.

    `thickness_mm` and `volume_mm3` of the body without its terminals, above 0. Sources: J-STD-020C
    table 4-2 as quoted for Pb-free; Sn-Pb from memory. Raises RepairlibError for values that
    cannot be and for unknown words.

    >>> body_peak("Pb-free", 2.0, 2500), body_peak("Sn-Pb", 2.0, 100)
    (245.0, 235.0)
    """
    _check_word(alloy, ALLOYS, "alloy")
    _check_word(edition, EDITIONS, "edition")
    for value, what, unit in ((thickness_mm, "thickness", "mm"), (volume_mm3, "volume", "mm³")):
        if not (isinstance(value, (int, float)) and 0 < value < float("inf")):
            wrong = f"not the {what} of a part"
            raise RepairlibError(value, wrong, f"a number of {unit} above 0")
    if alloy == LEADED:
        thin, thick = _LEADED_PEAKS[edition]
        small, large = thin if thickness_mm < _THIN else thick
        return float(small if volume_mm3 < _SMALL else large)
    column = 0 if volume_mm3 < _SMALL else 1 if volume_mm3 <= _MEDIUM else 2
    return float(_lead_free_row(thickness_mm, edition)[column])


def _lead_free_row(thickness_mm: float, edition: str) -> tuple[int, int, int]:
    if thickness_mm < _VERY_THIN:
        return _VERY_THIN_PEAKS
    thick = thickness_mm >= _THIN if edition == C else thickness_mm > _THIN
    return _THICK_PEAKS if thick else _THIN_PEAKS


def standard_limits(alloy: str, peak: float, edition: str = D1) -> ReflowLimits:
    """J-STD-020, table 5-2, for a part whose body may see `peak` °C.

    Raises RepairlibError for an unknown alloy or edition, and for a peak that no part has.

    >>> standard_limits("Pb-free", 260).above
    (60, 150)
    """
    _check_word(alloy, ALLOYS, "alloy")
    _check_word(edition, EDITIONS, "edition")
    if not 200 <= peak <= 300:
        raise RepairlibError(f"{peak:g} °C", "no part is rated so", "a Tc of 200 to 300 °C")
    leaded = alloy == LEADED
    soak_most = 120 if leaded or edition == D1 else 180
    near_most = {D1: (20, 30), C: (30, 40)}[edition][not leaded]
    notes = [_USER, _EDITION_NOTES[edition]]
    sources = ["J-STD-020D table 5-2", "J-STD-020C tables"]
    if edition == D1:
        sources.append("J-STD-020D.1 profile")
    return ReflowLimits(
        name=f"J-STD-020 {alloy}, Tc {peak:g} °C",
        liquidus=183.0 if leaded else 217.0,
        soak_from=100.0 if leaded else 150.0,
        soak_to=150.0 if leaded else 200.0,
        soak=(60, soak_most),
        above=(60, 150),
        peak=(None, peak),
        near=(None, near_most),
        ramp_up=(None, 3),
        ramp_down=(None, 6),
        total=(None, 360 if leaded else 480),
        notes=tuple(notes),
        sources=tuple(sources),
    )


def package_limits(
    alloy: str, thickness_mm: float, volume_mm3: float, edition: str = D1
) -> ReflowLimits:
    """J-STD-020 for a package by the thickness in mm and the volume in mm³ of its body.

    >>> package_limits("Pb-free", 1.0, 200).peak
    (None, 260.0)
    """
    limits = standard_limits(alloy, body_peak(alloy, thickness_mm, volume_mm3, edition), edition)
    if alloy == LEAD_FREE:
        if thickness_mm != _THIN:
            return limits
        note = "Exactly 2.5 mm: revision C counts it as thicker, later ones as 1.6 to 2.5 mm."
        return limits._replace(notes=(*limits.notes, note))
    sources = (*limits.sources, "J-STD-020 Sn-Pb peaks") if edition == D1 else limits.sources
    return limits._replace(notes=(*limits.notes, _LEADED_NOTES[edition]), sources=sources)


def paste_limits(
    name: str,
    liquidus: float,
    peak: Range,
    above: Range,
    *,
    soak_from: float = 150.0,
    soak_to: float = 200.0,
    soak: Range = (None, None),
    ramp_up: float | None = None,
    ramp_down: float | None = None,
) -> ReflowLimits:
    """A paste's own limits, as its data sheet states them. What it does not state is left out.

    Temperatures in °C, times in seconds, ramps in K/s. `peak` and `above` (time above `liquidus`)
    are pairs (least, most). Raises RepairlibError for pairs the wrong way round and for
    temperatures that do not rise from preheat to peak.

    >>> paste_limits("low-melting", 138, (150, 180), (30, 90), soak_from=90, soak_to=120).above
    (30, 90)
    """
    for what, (least, most) in (("peak", peak), ("time above", above), ("soak", soak)):
        if least is not None and most is not None and not 0 <= least <= most:
            raise RepairlibError(f"{least:g} to {most:g}", f"{what}: turned round", "least, most")
    highest = peak[1]
    if highest is None or not -50 < soak_from < soak_to < highest or not liquidus < highest < 400:
        wrong = "the temperatures do not rise from preheat over liquidus to the peak"
        read = f"{soak_from:g}, {soak_to:g}, {liquidus:g}, {highest}"
        raise RepairlibError(read, wrong, "for example 150, 200, 217, 249 °C")
    for ramp in (ramp_up, ramp_down):
        if ramp is not None and ramp <= 0:
            raise RepairlibError(f"{ramp:g}", "not a ramp", "a number of K/s above 0")
    return ReflowLimits(
        name,
        float(liquidus),
        float(soak_from),
        float(soak_to),
        soak,
        above,
        peak,
        ramp_up=(None, ramp_up),
        ramp_down=(None, ramp_down),
        notes=("A paste's limits do not protect the part: hold the profile against both.",),
    )


def in_words(limits: Range, unit: str) -> str:
    """A range as one says it.

    >>> in_words((60, 120), "s"), in_words((None, 3), "K/s"), in_words((230, None), "°C")
    ('60 to 120 s', 'at most 3 K/s', 'at least 230 °C')
    """
    least, most = limits
    if least is not None and most is not None:
        return f"{least:g} to {most:g} {unit}"
    if most is not None:
        return f"at most {most:g} {unit}"
    return f"at least {least:g} {unit}" if least is not None else "not stated"


@calculator(
    topic="heat",
    title="Reflow limits of a package",
    sources=("J-STD-020D table 5-2", "J-STD-020C tables"),
    cautions=("hot tools",),
)
def reflow_limits(
    alloy: Annotated[str, Choice(ALLOYS, "Kind of solder.")],
    thickness: Annotated[float, Given("m", "Thickness of the body.", above=0, at_most=0.1)],
    volume: Annotated[
        float, Given("", "Volume of the body without terminals, in mm³.", above=0, at_most=1e6)
    ],
    edition: Annotated[str, Choice(EDITIONS, "Revision: D.1 (and later) or C.")] = D1,
) -> Found:
    """What J-STD-020 allows a part to see, by the thickness and volume of its body.

    `thickness` in metres (or text such as "1.6 mm"), `volume` in mm³, both above 0. Raises
    RepairlibError otherwise. Sources: J-STD-020 tables 4-2 and 5-2 as quoted; Sn-Pb peaks from
    memory.

    >>> reflow_limits("Pb-free", "2 mm", 2500).highest_peak
    245 °C
    """
    millimetres = round(thickness * 1000, 9)
    limits = package_limits(alloy, millimetres, volume, edition)
    values = {
        "highest_peak": Quantity(body_peak(alloy, millimetres, volume, edition), "°C"),
        "liquidus": Quantity(limits.liquidus, "°C"),
        "preheat": f"{limits.soak_from:g} to {limits.soak_to:g} °C in {in_words(limits.soak, 's')}",
        "time_above_liquidus": in_words(limits.above, "s"),
        "time_within_5_of_highest": in_words(limits.near, "s"),
        "ramp_up": in_words(limits.ramp_up, "K/s"),
        "ramp_down": in_words(limits.ramp_down, "K/s"),
        "from_25_to_peak": in_words(limits.total, "s"),
    }
    working = [f"{alloy}, {millimetres:g} mm thick, {volume:g} mm³: Tc {limits.peak[1]:g} °C"]
    return found(values, working=working, notes=limits.notes, sources=limits.sources)


def _check_word(word: str, known: tuple[str, ...], what: str) -> None:
    if word not in known:
        raise RepairlibError(word, f"not a {what} known here", ", ".join(known))
