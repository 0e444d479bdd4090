"""Whether a heated joint stays within the limits of its materials, and what would help.

Every limit is judged by itself; where a material is unknown, what stands beside is not said, or
the model is not worth enough, the answer is "cannot tell". Nothing here is called safe.
"""

from __future__ import annotations

from typing import Annotated, NamedTuple

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity
from repairlib.core.verdicts import CANNOT_TELL, OVER, TOO_LITTLE, WITHIN
from repairlib.heat.joint import (
    LIMITS,
    MARGIN,
    NEIGHBOUR_AWAY,
    TIME_FACTOR,
    Heating,
    about,
    heat_joint,
    rounded,
)
from repairlib.heat.joint_mesh import (
    HOT_AIR,
    IRON,
    NO_PLANE,
    RELIEF,
    SOLID,
    SURFACE,
    THROUGH_HOLE,
    TIPS,
    Setup,
)
from repairlib.heat.materials import (
    BOARDS,
    BREAKS_DOWN,
    MATS,
    NONE,
    PLASTICS,
    SOFTENS,
    figure,
    withstands,
)
from repairlib.heat.mixed_joint import RINSE
from repairlib.heat.neighbours import (
    NOT_SAID,
    may_be_a_cell,
    neighbours,
    neighbours_or_not_said,
)
from repairlib.heat.solder_alloys import alloy, alloy_name, alloy_names

LONGEST_CONTACT = {IRON: 5.0, HOT_AIR: 60.0}  # s; the iron's from memory, the air's of this model
PREHEATED = 100.0  # °C, within the 75 to 125 °C of rework practice
HOTTER = 30.0  # K
LOW_MELT = "Bi58Sn42"


class Check(NamedTuple):
    """One limit: what was judged, the verdict, and the sentence that gives the figures."""

    name: str
    verdict: str
    says: str


class Help(NamedTuple):
    """A change that may help: when the last solder melts with it, and the pad's highest °C.

    `seconds` is None when it does not melt. `saved` is against the joint as it was, in s; None
    when either does not melt. `note` is what to mind.
    """

    change: str
    seconds: float | None
    saved: float | None
    pad_celsius: float
    note: str


def judge(run: Heating, beside: str = NOT_SAID) -> list[Check]:
    """Every limit of a heated joint, each within, over, cannot tell, or does not melt.

    `beside`: what the neighbour is, "not said" or one of `neighbours`. Raises RepairlibError for
    anything else.
    """
    found_there = _neighbour(run, beside)
    return [_melting(run), _contact(run), _pad(run), _plastic(run), found_there, _mat(run)]


def verdict(checks: list[Check]) -> tuple[str, str]:
    """The verdict over all, and its reason: the worst counts."""
    for worst in (OVER, TOO_LITTLE, CANNOT_TELL):
        bad = [check for check in checks if check.verdict == worst]
        if bad:
            return worst, "; ".join(f"{check.name}: {check.says}" for check in bad)
    return WITHIN, "by this model; look at the joint and the pad yourself"


def last_melted(run: Heating) -> float | None:
    """Seconds until all solder is liquid, None when some stayed solid."""
    return run.all_melted


def what_helps(setup: Setup | None = None, **changes) -> list[Help]:
    """What would melt the joint sooner, computed one change at a time, the best first.

    A bigger tip and fresh solder on it (iron), preheat, low-melting solder, a hotter tool. Raises
    RepairlibError for values out of range.

    >>> [help.change for help in what_helps(tip="fine")][0] != ""
    True
    """
    setup = (setup or Setup()).but(**changes)
    before = last_melted(heat_joint(setup))
    helps = []
    for change, altered, note in _changes(setup):
        run = heat_joint(altered)
        after = last_melted(run)
        saved = None if before is None or after is None else before - after
        helps.append(Help(change, after, saved, run.peak("board under the pad"), note))
    return sorted(helps, key=_soonest)


def _soonest(one: Help):
    """The soonest melted first; those that do not melt after, the hottest first."""
    return one.seconds is None, one.seconds or 0.0, -one.pad_celsius


def _changes(setup: Setup):
    if setup.source == IRON:
        sizes = list(TIPS)
        bigger = sizes[sizes.index(setup.tip) + 1 :]
        if bigger:
            yield f"the {bigger[0]} tip", setup.but(tip=bigger[0]), "same setting, more copper"
        if not setup.wet_tip:
            yield "fresh solder on the tip", setup.but(wet_tip=True), "bridges tip and joint"
    if setup.preheat < PREHEATED:
        warm = setup.but(preheat=PREHEATED)
        yield f"preheat to {PREHEATED:g} °C", warm, "check that all parts stand it"
    if alloy(setup.solder).liquidus > alloy(LOW_MELT).liquidus + 10:
        note = "as if all solder were exchanged; what is left must be cleaned away"
        if alloy(setup.solder).leaded:
            note += ", for lead and bismuth together soften near 95 °C"
        yield f"low-melting solder ({LOW_MELT})", setup.but(solder=LOW_MELT), note
    if setup.celsius + HOTTER <= 400:
        hotter = setup.but(celsius=setup.celsius + HOTTER)
        yield f"{HOTTER:g} K hotter", hotter, "the last choice: pad and flux suffer first"


def _melting(run: Heating) -> Check:
    when = run.all_melted
    if when is None:
        peak = run.peak("far side" if run.setup.kind == THROUGH_HOLE else "joint")
        liquid = run.made.mesh.liquidus
        says = f"the coolest solder reaches {peak:.0f} °C, liquid at {liquid:g} °C"
        near = peak >= liquid - MARGIN
        return Check("solder", CANNOT_TELL if near else TOO_LITTLE, f"{says} after {run.held}")
    if run.asked is not None and when * TIME_FACTOR > run.asked:
        says = f"all liquid after {about(when)} of {run.held}: watch the far side, do not pull"
        return Check("solder", CANNOT_TELL, says)
    return Check("solder", WITHIN, f"all liquid after {about(when)}")


def _contact(run: Heating) -> Check:
    """A time that was set is judged as it is, one of the model by what the model is worth."""
    most, factor = LONGEST_CONTACT[run.setup.source], 1.0 if run.timed else TIME_FACTOR
    says = f"{run.held}, usual limit {most:g} s"
    if run.heat_on * factor <= most:
        return Check("time under heat", WITHIN, says)
    if run.heat_on > most * factor:
        return Check("time under heat", OVER, says)
    helps = "a wider wet tip or preheat" if run.setup.source == IRON else "preheat"
    return Check("time under heat", CANNOT_TELL, f"{says}: count, and take {helps}")


def _pad(run: Heating) -> Check:
    board, peak = run.setup.board, run.peak("board under the pad")
    breaks, softens = figure(board, BREAKS_DOWN), figure(board, SOFTENS).value
    says = f"board under it {peak:.0f} °C"
    word = _judged(peak, breaks.low, breaks.high)
    if word != WITHIN:
        says += f", breaks down near {breaks.value:g} °C: a cooler tool or less time"
        return Check("pad", word, says)
    soft = run.seconds_above("board under the pad", softens)
    if soft > 0:
        says += f", soft (above {softens:g} °C) for {about(soft)}: use no force"
    return Check("pad", WITHIN, says)


def _plastic(run: Heating) -> Check:
    if "plastic at the lead" not in run.traces or run.setup.plastic == NONE:
        return Check("plastic", WITHIN, "none is in this model of the joint")
    return _against(run, "plastic", "plastic at the lead", run.setup.plastic)


def _mat(run: Heating) -> Check:
    return _against(run, "mat", "mat top", run.setup.mat)


def _against(run: Heating, what: str, spot: str, name: str) -> Check:
    peak, limit = run.peak(spot), withstands(name)
    if limit is None:
        return Check(what, CANNOT_TELL, f"{peak:.0f} °C, but what it withstands is not known")
    says = f"{name} {peak:.0f} °C, withstands {_span(limit.low, limit.high)}"
    word = _judged(peak, limit.low, limit.high)
    return Check(what, word, says if word == WITHIN else f"{says}: less time or a cooler tool")


def _neighbour(run: Heating, beside: str) -> Check:
    """By what stands there; what is soldered there comes loose with its solder in any case."""
    peak, solidus = run.peak("neighbour"), alloy(run.setup.solder).solidus
    says = f"{peak:.0f} °C {run.neighbour * 1e3:g} mm away"
    loose = f"its solder softens at {solidus:g} °C"
    if beside == NOT_SAID:
        return Check("neighbour", CANNOT_TELL, f"{says}; what stands there? Say it, or shield it")
    if beside not in neighbours():
        accepted = ", ".join(neighbours_or_not_said())
        raise RepairlibError(beside, "not a neighbour known here", accepted)
    there = neighbours()[beside]
    says = f"{there.name}, {says}"
    if there.never:
        return Check("neighbour", OVER, f"{says}; {there.do}")
    low, high = solidus, solidus
    if there.low is not None and there.high is not None:
        low, high = there.low, there.high
    word = _judged(peak, min(low, solidus), min(high, solidus))
    says += f", {loose}" if there.low is None else f", bears {_span(low, high)} by its kind"
    if word == CANNOT_TELL and there.low is not None:
        says += "; read its rating"
    return Check("neighbour", word, says if word == WITHIN else f"{says}; {there.do}")


def _judged(peak: float, low: float, high: float) -> str:
    """Against a limit that lies between `low` and `high`, by a model that is worth MARGIN."""
    if peak > high + MARGIN:
        return OVER
    return WITHIN if peak < low - MARGIN else CANNOT_TELL


def _span(low: float, high: float) -> str:
    return f"{low:g} °C" if low == high else f"{low:g} to {high:g} °C"


BISMUTH = (
    "Bismuth with a trace of lead softens near 95 °C in service: take every trace of leaded solder "
    f"off first. As a tool it comes off after use: {RINSE} (see solders_meet)."
)


@calculator(
    topic="heat",
    title="A joint under heat",
    sources=(
        "joint model",
        "encyclopaedia, FR-4",
        "FR-4 data sheet",
        "FR-4 Tg page",
        "jet at a solder joint",
        "from memory",
    ),
    cautions=("stored charge", "hot tools", "fumes and flux"),
)
def joint_heat(
    joint: Annotated[str, Choice((THROUGH_HOLE, SURFACE), "What kind of joint.")] = Setup.kind,
    source: Annotated[str, Choice((IRON, HOT_AIR), "What heats it.")] = Setup.source,
    tool: Annotated[
        float, Given("°C", "What the tool is set to.", at_least=60, at_most=600)
    ] = Setup.celsius,
    tip: Annotated[str, Choice(tuple(TIPS), "The iron's tip.")] = Setup.tip,
    tip_wet: Annotated[
        str, Choice(("yes", "no"), "Whether fresh solder bridges tip and joint.")
    ] = "yes",
    solder: Annotated[str, Choice(alloy_names, "Solder in the joint.", alloy_name)] = Setup.solder,
    plane: Annotated[str, Choice((NO_PLANE, RELIEF, SOLID), "Copper at the joint.")] = Setup.plane,
    preheat: Annotated[
        float, Given("°C", "Of the board before.", at_least=-40, at_most=200)
    ] = Setup.preheat,
    board: Annotated[str, Choice(BOARDS, "The board.")] = Setup.board,
    thickness: Annotated[
        float, Given("m", "Of the board.", at_least=0.2e-3, at_most=10e-3)
    ] = Setup.thickness,
    plastic: Annotated[str, Choice(PLASTICS, "Of the part at the lead.")] = Setup.plastic,
    mat: Annotated[str, Choice(MATS, "What lies on the bench.")] = Setup.mat,
    seconds: Annotated[
        float, Given("s", "Under heat; 0 s: until all is melted.", at_least=0, at_most=120)
    ] = 0,
    neighbour: Annotated[
        float, Given("m", "Distance of the neighbour.", above=0, at_most=20e-3)
    ] = NEIGHBOUR_AWAY,
    beside: Annotated[
        str, Choice(neighbours_or_not_said, "What stands there: the neighbour.")
    ] = NOT_SAID,
) -> Found:
    """When the solder of one joint melts on both sides, and how hot the things around it get.

    Temperatures in °C, lengths in m (or text with units). `seconds` 0: the tool stays until all
    solder has been liquid for 1 s. The verdict is "within the limits", "over a limit", "does not
    melt" or "cannot tell". Times are rounded to what the model is worth. Raises RepairlibError for
    values out of range. Source: a conduction model with typical materials, checked against
    analytic cases; it is not a measurement.

    >>> joint_heat(tool="330 °C", beside="not said").verdict
    'cannot tell'
    """
    setup = Setup(
        kind=joint,
        source=source,
        celsius=tool,
        tip=tip,
        wet_tip=tip_wet == "yes",
        solder=solder,
        plane=plane,
        preheat=preheat,
        board=board,
        thickness=thickness,
        plastic=plastic,
        mat=mat,
    )
    if 0 < seconds < 0.1:
        seconds = 0.1
    run = heat_joint(setup, seconds or None, neighbour)
    checks = judge(run, beside)
    word, reason = verdict(checks)
    values = {"melted": _when(run.melted)}
    if joint == THROUGH_HOLE:
        values["far_side_melted"] = _when(run.far_melted)
    values["under_heat"] = Quantity(run.heat_on if run.timed else rounded(run.heat_on), "s", 3)
    for spot in ("board under the pad", "plastic at the lead", "neighbour", "mat top"):
        if spot in run.traces:
            values[spot.replace(" ", "_")] = Quantity(round(run.peak(spot)), "°C")
    values["mat_underside"] = Quantity(round(run.peak("mat underside")), "°C")
    working = [f"{check.name}: {check.says} ({check.verdict})" for check in checks]
    working += [
        f"heat from {name}: {joule:.1f} J" for name, joule in run.arrived.items() if name != "air"
    ]
    cautions: tuple[str, ...] = ("lead",) if alloy(solder).leaded else ()
    cautions += ("batteries",) if may_be_a_cell(beside) else ()
    notes = [LIMITS, *_choices()]
    if "Bi" in alloy(solder).parts:
        notes.append(BISMUTH)
    return found(
        values, working=working, verdict=word, reason=reason, notes=notes, cautions=cautions
    )


def _choices() -> list[str]:
    return [
        "A choice: 5 s under the iron is the usual limit of the trade; data sheets differ.",
        "A pad lifts by time above the softening point, force and repetition, not at one "
        "temperature.",
    ]


def _when(seconds: float | None):
    return "not melted" if seconds is None else Quantity(rounded(seconds), "s")
