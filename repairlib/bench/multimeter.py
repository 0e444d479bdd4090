"""The multimeter of the bench: what it shows, and what it does to the circuit and to itself.

A plain digital one of 6000 counts. Its figures are those that such instruments have, from memory:
10 MΩ on volts; on ohms 0.5 V in series with a known resistor, whose volts the unknown one's are
compared with: 0.3 V at the end of each range, so that junctions hardly conduct; on the diode test
3 V, of which 1 mA flows through a junction.
"""

from __future__ import annotations

from functools import cache
from math import inf

from repairlib.bench.charging import FIRST, PATIENCE, Charging, longer
from repairlib.bench.counts import DASHES, OVER, Accuracy, Span, shows
from repairlib.bench.electric import Electric, electric
from repairlib.bench.moves import Reading
from repairlib.bench.probes_harm import DARK, MOST_VOLTS, PERSON_VOLTS
from repairlib.bench.resting import met_at, resting
from repairlib.bench.state import State
from repairlib.circuits import CircuitPart

INPUT_OHM = 10e6
VOLTS = (
    Span(0.6, 1e-4, "mV", 1e-3), Span(6.0, 1e-3, "V"), Span(60.0, 1e-2, "V"), Span(600.0, 0.1, "V"),
)  # fmt: skip
VOLTS_ERROR = Accuracy(0.5, 2)  # per cent, digits
AC_ERROR = Accuracy(1.0, 3)
SINE_FACTOR = 1.1107  # r.m.s. over mean of a sine, π / (2 √2)
OHMS = (
    Span(600.0, 0.1, "Ω"), Span(6e3, 1.0, "kΩ", 1e3), Span(60e3, 10.0, "kΩ", 1e3),
    Span(600e3, 100.0, "kΩ", 1e3), Span(6e6, 1e3, "MΩ", 1e6), Span(60e6, 1e4, "MΩ", 1e6),
)  # fmt: skip
OHMS_ERROR = Accuracy(0.8, 2)
FULL_VOLTS, OPEN_VOLTS = 0.3, 0.5  # across the probes at the end of each range of ohms, and open
LEADS_OHM = 0.2  # of the two test leads; "Meter error and accuracy" of core/sources: 0.2 to 0.5 Ω
DIODE_VOLTS, DIODE_OHM = 3.0, 2.4e3
DIODE = (Span(2.0, 1e-3, "V"),)
DIODE_ERROR = Accuracy(1.0, 2)
AMPS = (Span(6.0, 1e-3, "A"), Span(10.0, 1e-2, "A"))
AMPS_ERROR = Accuracy(1.2, 3)
BURDEN_OHM = 0.03  # of the 10 A input with its leads
FUSE_AMPS = 10.0
NEAR = 0.005  # of the reading: as near as this it counts as settled
FLAT = 0.09  # of a range, below which the next lower one is taken


def volts(state: State, one: str, other: str) -> Reading:
    """The dc volts from one point to the other, with the meter's 10 MΩ across them.

    >>> from repairlib.bench.practice_set import demo_set
    >>> from repairlib.bench.state import begin
    >>> volts(begin(demo_set("desk radio"), (), "demo"), "out", "0").unit
    'V'
    """
    found = _with_input(state, one, other)
    return _volts(state, one, other, found.between(one, other), "V dc", VOLTS_ERROR)


def ac_volts(state: State, one: str, other: str, true_rms: bool = True) -> Reading:
    """The ac volts between two points, dc blocked: true r.m.s., or the mean times 1.11.

    A meter that responds to the average is right for a sine only.
    """
    found = _with_input(state, one, other)
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
    start = run.go_on(_ohms_source(OHMS[0], run.probes), 1e-6)[0]
    if abs(start) > MOST_VOLTS:
        return _destroyed("ohms", one, other, start)
    at, value, settled = _auto_range(run)
    note = "" if settled else "still moving after a minute"
    if value is None:
        return Reading(
            "multimeter, Ω", (one, other), OVER, None, "Ω", note, OHMS[-1].said,
            seconds=run.seconds,
        )  # fmt: skip
    seen = shows(value, OHMS[at:], OHMS_ERROR, state, "Ω")
    return Reading(
        "multimeter, Ω", (one, other), seen.text, seen.value, "Ω", note, seen.span.said,
        seen.error, run.seconds,
    )  # fmt: skip


def diode(state: State, one: str, other: str) -> Reading:
    """The volts at which 1 mA flows from the first point (red) to the second; OL above 2 V."""
    state = met_at(state, one)
    if state.powered:
        live = electric(state, (_diode_source((one, other)),)).between(one, other)
        return _tested(state, one, other, live, "", 0.0)
    run = _run(state, one, other)
    source = _diode_source(run.probes)
    now = run.go_on(source, 1e-6)[0]
    last = run.at_last(source)[0]
    step = FIRST
    while abs(now - last) > NEAR * max(abs(last), FULL_VOLTS) and run.seconds < PATIENCE:
        now = run.go_on(source, step)[0]
        step = longer(step)
    note = "" if run.seconds < PATIENCE else "still moving after a minute"
    return _tested(state, one, other, now, note, run.seconds)


def amps(state: State, one: str, other: str) -> Reading:
    """The dc amps from one point through the meter to the other: in series, where a part is out.

    Across anything else it is a short of 0.03 Ω; above 10 A its fuse blows.
    """
    meter = CircuitPart("R of the meter", (one, other), BURDEN_OHM)
    value = electric(state, (meter,)).between(one, other) / BURDEN_OHM
    seen = shows(value, AMPS, AMPS_ERROR, state, "A")
    if seen.value is None:
        return Reading(
            "multimeter, A dc", (one, other), DASHES, None, "A", "its fuse has blown",
            harm="The amps input is a short across what it touches: its fuse blew with a bang.",
            hurts=abs(value) * BURDEN_OHM > PERSON_VOLTS,
        )  # fmt: skip
    return Reading(
        "multimeter, A dc", (one, other), seen.text, seen.value, "A",
        range=seen.span.said, error=seen.error,
    )  # fmt: skip


def _with_input(state: State, one: str, other: str) -> Electric:
    return electric(state, (CircuitPart("R of the meter", (one, other), INPUT_OHM),))


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


def _auto_range(run: Charging) -> tuple[int, float | None, bool]:
    """The range it ends on, the ohms there (None for OL), and whether it has settled.

    It goes up a range as soon as a reading is over, and down where the next lower one holds what
    the reading will come to.
    """
    at, step, value, top = 0, FIRST, inf, len(OHMS) - 1
    lasts = cache(
        lambda at: _compared(run.at_last(_ohms_source(OHMS[at], run.probes))[0], OHMS[at])
    )
    while run.seconds < PATIENCE:
        span = OHMS[at]
        value = _compared(run.go_on(_ohms_source(span, run.probes), step)[0], span)
        step = longer(step)
        if value > span.full and at < top:
            at, step = at + 1, FIRST
        elif at and value < FLAT * span.full and lasts(at - 1) <= OHMS[at - 1].full:
            at, step = at - 1, FIRST
        elif value > span.full and lasts(at) > span.full:
            return at, None, True
        elif abs(value - lasts(at)) <= max(NEAR * lasts(at), span.step):
            return at, value, True
    return at, None if value > OHMS[at].full else value, False


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
