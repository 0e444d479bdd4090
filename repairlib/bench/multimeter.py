"""The multimeter of the bench: what it shows, and what it does to the circuit and to itself.

A plain digital one of 6000 counts. Its figures are those that such instruments have, from memory:
10 MΩ on volts; on ohms 0.5 V in series with a known resistor, whose volts the unknown one's are
compared with: 0.3 V at the end of each range, so that junctions hardly conduct; on the diode test
3 V, of which 1 mA flows through a junction.
"""

from __future__ import annotations

from math import copysign, inf

from repairlib.bench.charging import PATIENCE, Charging
from repairlib.bench.counts import DASHES, Accuracy, Span, shows
from repairlib.bench.electric import FINE_STEPS, STEPS, Electric, as_it_is, electric
from repairlib.bench.moves import Reading
from repairlib.bench.probes_harm import DARK, MOST_VOLTS, PERSON_VOLTS
from repairlib.bench.resting import met_at, resting
from repairlib.bench.state import LIFTED, State
from repairlib.circuits import CircuitPart

INPUT_OHM = 10e6
VOLTS = (
    Span(0.6, 1e-4, "mV", 1e-3), Span(6.0, 1e-3, "V"), Span(60.0, 1e-2, "V"), Span(600.0, 0.1, "V"),
)  # fmt: skip
VOLTS_ERROR = Accuracy(0.5, 2)  # per cent, digits
AC_ERROR = Accuracy(1.0, 3, unsigned=True)
SINE_FACTOR = 1.1107  # r.m.s. over mean of a sine, π / (2 √2)
OHMS = (
    Span(600.0, 0.1, "Ω"), Span(6e3, 1.0, "kΩ", 1e3), Span(60e3, 10.0, "kΩ", 1e3),
    Span(600e3, 100.0, "kΩ", 1e3), Span(6e6, 1e3, "MΩ", 1e6), Span(60e6, 1e4, "MΩ", 1e6),
)  # fmt: skip
OHMS_ERROR = Accuracy(0.8, 2, unsigned=True)
FULL_VOLTS, OPEN_VOLTS = 0.3, 0.5  # across the probes at the end of each range of ohms, and open
LEADS_OHM = 0.2  # of the two test leads; "Meter error and accuracy" of core/sources: 0.2 to 0.5 Ω
DIODE_VOLTS, DIODE_OHM = 3.0, 2.4e3
DIODE = (Span(2.0, 1e-3, "V"),)
DIODE_ERROR = Accuracy(1.0, 2)
AMPS = (Span(6.0, 1e-3, "A"), Span(10.0, 1e-2, "A"))
AMPS_ERROR = Accuracy(1.2, 3)
BURDEN_OHM = 0.03  # of the 10 A input with its leads
FUSE_AMPS = 10.0
SHARES_OHM = 100 * BURDEN_OHM  # of what lies beside it: above, its share is below 1 %
NEAR = 0.005  # of the reading: as near as this it counts as settled
SOON = 2.0  # s, below which nobody speaks of settling


def volts(state: State, one: str, other: str) -> Reading:
    """The dc volts from one point to the other, with the meter's 10 MΩ across them.

    >>> from repairlib.bench.practice_set import demo_set
    >>> from repairlib.bench.state import begin
    >>> volts(begin(demo_set("desk radio"), (), "demo"), "out", "0").unit
    'V'
    """
    found = with_input(state, one, other)
    return _volts(state, one, other, found.between(one, other), "V dc", VOLTS_ERROR)


def ac_volts(state: State, one: str, other: str, true_rms: bool = True) -> Reading:
    """The ac volts between two points, dc blocked: true r.m.s., or the mean times 1.11.

    A meter that responds to the average is right for a sine only.
    """
    found = with_input(state, one, other, FINE_STEPS)
    value = 0.0
    if found.seconds is not None:
        wave = found.waves[one] - found.waves[other]
        wave = wave - wave.mean()
        mean = float(abs(wave).mean()) * SINE_FACTOR
        value = float((wave**2).mean()) ** 0.5 if true_rms else mean
    name = "V ac, true r.m.s." if true_rms else "V ac, responds to the average"
    return _volts(state, one, other, value, name, AC_ERROR)


def ohms(state: State, one: str, other: str) -> Reading:
    """The ohms between two points, its own range chosen, as it reads once it has settled.

    Leads of 0.2 Ω are in it. Capacitors between the probes charge first; after a minute the
    reading is taken as it is then. On a live or charged circuit it lies, and above 60 V it is
    destroyed.
    """
    state = met_at(state, one)
    if state.powered:
        return _ohms_live(state, one, other)
    run = _run(state, one, other)
    at = _range_of(run)
    course = run.course(_ohms_source(OHMS[at or 0], run.probes), NEAR * FULL_VOLTS)
    if abs(course.start) > MOST_VOLTS:
        return _destroyed("ohms", one, other, course.start)
    if at is None:
        seconds = course.until(course.last - FULL_VOLTS)
        span, value = OHMS[-1], inf
    else:
        seconds, span = course.until(NEAR * course.last), OHMS[at]
        value = _compared(course.after(min(seconds, PATIENCE)), span)
    seen = shows(value, OHMS[at or 0 :], OHMS_ERROR, state, "Ω")
    return Reading(
        "multimeter, Ω", (one, other), seen.text, seen.value, "Ω", _settled(seconds), span.said,
        seen.error, _waited(seconds),
    )  # fmt: skip


def diode(state: State, one: str, other: str) -> Reading:
    """The volts at which 1 mA flows from the first point (red) to the second; OL above 2 V."""
    state = met_at(state, one)
    if state.powered:
        live = electric(state, (_diode_source((one, other)),)).between(one, other)
        return _tested(state, one, other, live, "", 0.0)
    run = _run(state, one, other)
    source = _diode_source(run.probes)
    course = run.course(source, NEAR * FULL_VOLTS)
    if abs(course.start) > MOST_VOLTS:
        return _destroyed("the diode test", one, other, course.start)
    seconds = course.until(NEAR * max(abs(course.last), FULL_VOLTS))
    now = course.after(min(seconds, PATIENCE))
    return _tested(state, one, other, now, _settled(seconds), _waited(seconds))


def amps(state: State, one: str, other: str) -> Reading:
    """The amps from one point through the meter to the other: in series, where a part is out.

    The true r.m.s. of dc and ac together, with the sign of its mean.
    Across anything else it is a short of 0.03 Ω; above 10 A its fuse blows. What that does to the
    board while the meter is there, `passing` tells: `shunt` is the meter as a part of the circuit.
    """
    meter = shunt(one, other)
    value = _all_of(electric(state, (meter,)), one, other) / BURDEN_OHM
    seen = shows(value, AMPS, AMPS_ERROR, state, "A")
    if seen.value is None:
        return Reading(
            "multimeter, A", (one, other), DASHES, None, "A", "its fuse has blown",
            harm="The amps input is a short across what it touches: its fuse blew with a bang.",
            hurts=abs(value) * BURDEN_OHM > PERSON_VOLTS,
        )  # fmt: skip
    return Reading(
        "multimeter, A", (one, other), seen.text, seen.value, "A", _beside(state, one, other),
        seen.span.said, seen.error,
    )  # fmt: skip


def shunt(one: str, other: str) -> CircuitPart:
    """The amps input between two points, as a part of the circuit."""
    return CircuitPart("R of the meter", (one, other), BURDEN_OHM)


def _beside(state: State, one: str, other: str) -> str:
    """A word about the part that is still in its place and takes a share of the current."""
    for part in state.set.parts:
        place = state.places[part.name]
        if set(part.nodes) != {one, other} or place.fitted is None or place.pads == LIFTED:
            continue
        made = as_it_is(state, part)
        if all(one.letter in "RL" for one in made) and sum(map(_ohm, made)) < SHARES_OHM:
            return f"{part.name} is still in its place: only a part goes through the meter"
    return ""


def _ohm(part: CircuitPart) -> float:
    return part.value if part.letter == "R" else part.more["winding"]


def with_input(state: State, one: str, other: str, steps: int = STEPS) -> Electric:
    """The electrical state with an input of 10 MΩ across two points, in so many steps a cycle."""
    return electric(state, (CircuitPart("R of the meter", (one, other), INPUT_OHM),), steps=steps)


def _all_of(found: Electric, one: str, other: str) -> float:
    """The r.m.s. volts of dc and ac together, with the sign of their mean."""
    mean = found.between(one, other)
    if found.seconds is None:
        return mean
    square = float(((found.waves[one] - found.waves[other]) ** 2).mean())
    return copysign(square**0.5, mean if abs(mean) > square**0.5 / 100 else 1.0)


def _volts(state, one, other, value, name, error) -> Reading:
    seen = shows(value, VOLTS, error, state, name)
    return Reading(
        f"multimeter, {name}", (one, other), seen.text, seen.value, "V",
        range=seen.span.said, error=seen.error,
    )  # fmt: skip


def _ohms_source(span: Span, probes: tuple[str, str]) -> CircuitPart:
    return _source(probes, OPEN_VOLTS, _known_ohm(span))


def _diode_source(probes: tuple[str, str]) -> CircuitPart:
    return _source(probes, DIODE_VOLTS, DIODE_OHM)


def _source(probes: tuple[str, str], volts: float, ohm: float) -> CircuitPart:
    return CircuitPart("V of the meter", probes, volts, {"mains": 0.0, "series": ohm})


def _known_ohm(span: Span) -> float:
    return span.full * (OPEN_VOLTS - FULL_VOLTS) / FULL_VOLTS


def _compared(across: float, span: Span) -> float:
    """The ohms that those volts come to on that range; infinite where nothing flows."""
    if across >= OPEN_VOLTS:
        return inf
    return _known_ohm(span) * across / (OPEN_VOLTS - across)


RED = "the red probe"


def _run(state: State, one: str, other: str) -> Charging:
    """The board at rest with the leads on it; the source goes from the red lead's far end."""
    leads = CircuitPart("R of the leads", (RED, one), LEADS_OHM)
    return Charging(resting(state, (leads,)), (RED, other), dict(state.charges))


def _range_of(run: Charging) -> int | None:
    """The range on which it will settle; None where it is over on the highest too."""
    for at, span in enumerate(OHMS):
        if _compared(run.at_last(_ohms_source(span, run.probes)), span) <= span.full:
            return at
    return None


def _waited(seconds: float) -> float:
    """How long the probes were held on [s]."""
    return round(min(seconds, PATIENCE), 1)


def _settled(seconds: float) -> str:
    """A word about a reading that took its time."""
    if seconds > PATIENCE:
        return "still moving after a minute"
    return f"settled after {seconds:.0f} s" if seconds > SOON else ""


def _ohms_live(state: State, one: str, other: str) -> Reading:
    span = OHMS[1]
    across = electric(state, (_ohms_source(span, (one, other)),)).between(one, other)
    if abs(across) > MOST_VOLTS:
        return _destroyed("ohms", one, other, across)
    seen = shows(_compared(across, span), (span,), OHMS_ERROR, state, "Ω")
    return Reading("multimeter, Ω", (one, other), seen.text, seen.value, "Ω", "", span.said)


def _tested(state, one, other, across, note, seconds) -> Reading:
    if abs(across) > MOST_VOLTS:
        return _destroyed("the diode test", one, other, across)
    seen = shows(across, DIODE, DIODE_ERROR, state, "diode test")
    return Reading(
        "multimeter, diode test", (one, other), seen.text, seen.value, "V", note,
        seen.span.said, seen.error, seconds,
    )  # fmt: skip


def _destroyed(what: str, one: str, other: str, across: float) -> Reading:
    return Reading(
        f"multimeter, {what}", (one, other), DASHES, None, "", DARK,
        harm=f"{abs(across):.0f} V stood between the probes: the meter cracked and smokes.",
        hurts=abs(across) > PERSON_VOLTS,
    )  # fmt: skip
