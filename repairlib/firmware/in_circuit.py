"""Reading a memory chip on its board: what the rest of the board does to it, and when to lift it.

A clip on the chip feeds everything that hangs on the chip's supply, and drives every line that the
processor drives too. What that comes to is worked out here for the worst case.
"""

from __future__ import annotations

from typing import Annotated

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.quantity import Quantity, brief
from repairlib.core.verdicts import CANNOT_TELL, CONDITIONS, NEVER

RESET, DEAD, RUNNING, NOT_KNOWN = "in reset", "without supply", "running", "not known"
PROGRAMMER, BOARD = "programmer", "board"
ALONE, RESTS = "none", "not selected"
NOT_YET, EQUAL, DIFFER, SILENT = "not yet", "two equal", "differ", "no answer"

DRIVER = 30.0  # Ω inside an output, of the programmer as of the processor
HIGH, LOW = 0.7, 0.3  # of the supply: above the one a chip reads high, below the other low
PROTECTION = 0.6  # V across the diode from a pin into the supply of its chip
CLAMP = 5e-3  # A that such a diode may carry for long
SHORT = 5.0  # Ω: so little from supply to ground is a fault, or a processor's core
LIFT = "lift the chip, or its supply lead alone, and read it in a socket"


@calculator(
    topic="firmware",
    title="Reading a chip on its board",
    sources=("common practice", "from memory"),
    # its supply is measured on the running board, so mains is never far
    cautions=("mains", "chip supply", "static charge", "stored charge", "only copy"),
)
def reading_on_board(
    supply: Annotated[
        float, Given("V", "At the chip's supply pin, as its board gives it.", above=0, at_most=5.5)
    ],
    to_ground: Annotated[
        float | None,
        Given("Ω", "From that pin to ground, power off and discharged.", above=0, at_most=1e7),
    ] = None,
    series: Annotated[
        float, Given("Ω", "In each line between it and the processor.", at_least=0, at_most=1e6)
    ] = 0.0,
    processor: Annotated[
        str, Choice((NOT_KNOWN, RESET, DEAD, RUNNING), "What the processor does meanwhile.")
    ] = NOT_KNOWN,
    others: Annotated[
        str, Choice((NOT_KNOWN, ALONE, RESTS), "Further chips on the same lines.")
    ] = NOT_KNOWN,
    fed_by: Annotated[
        str, Choice((PROGRAMMER, BOARD), "Where the chip gets its supply from.")
    ] = PROGRAMMER,
    current: Annotated[
        float, Given("A", "What the programmer can give.", above=0, at_most=3)
    ] = 0.1,
    reads: Annotated[
        str, Choice((NOT_YET, EQUAL, DIFFER, SILENT), "What came of it so far.")
    ] = NOT_YET,
) -> Found:
    """Whether to try reading a chip on its board, under which conditions, and when to lift it.

    `supply` in volts, `to_ground` and `series` in ohms, `current` in amperes. Outputs are taken as
    30 Ω, thresholds as 0.3 and 0.7 of the supply, an input's protection as 0.6 V and 5 mA: usual
    figures, from memory; the data sheets come first. The verdict is "do not", "only with these
    conditions", or "cannot tell" with what to measure; never that it is harmless.

    >>> reading_on_board("3.3 V", to_ground="8 Ω", processor="without supply").verdict
    'do not'
    >>> reading_on_board("3.3 V", "2 kΩ", "220 Ω", "in reset", "not selected").verdict
    'only with these conditions'
    """
    values: dict[str, object] = {}
    working: list[str] = []
    stops: list[str] = []
    unknown: list[str] = []
    if fed_by == PROGRAMMER:
        _fed_through(supply, to_ground, current, values, working, stops, unknown)
    _driven_twice(supply, series, processor, fed_by, values, working, stops, unknown)
    if others == NOT_KNOWN:
        unknown.append(
            "whether other chips share its lines: each of them needs its chip select pulled to its "
            "resting level, or two answer at once"
        )
    if reads in (DIFFER, SILENT):
        working.append(_WHAT_NOW[reads])
    conditions = _conditions(supply, processor, others, fed_by)
    verdict, reason = _verdict(stops, unknown, reads)
    return found(
        values,
        working=working,
        verdict=verdict,
        reason=reason,
        notes=(*conditions, *_WHEN_TO_LIFT),
    )


def _fed_through(supply, to_ground, current, values, working, stops, unknown) -> None:
    """What the programmer must give where its supply runs on into the board."""
    if to_ground is None:
        unknown.append(
            "ohms from its supply pin to ground, power off and discharged, both ways round: they "
            "say how much of the board the clip would feed"
        )
        return
    amperes = supply / to_ground
    values["feeds_at_least"] = Quantity(amperes, "A", 2)
    working.append(
        f"{brief(supply, 'V')} / {brief(to_ground, 'Ω')} = {brief(amperes, 'A')} into the board, "
        "and more once its chips wake up: a meter sees them asleep"
    )
    if to_ground <= SHORT:
        stops.append(f"{brief(to_ground, 'Ω')} to ground: a short, or a core's supply")
    elif amperes > current:
        left = to_ground * current
        values["supply_left"] = Quantity(left, "V", 2)
        working.append(f"{brief(current, 'A')} × {brief(to_ground, 'Ω')} leave {brief(left, 'V')}")
        stops.append(
            f"the board takes {brief(amperes, 'A')}, the programmer gives {brief(current, 'A')}: "
            "its supply breaks down, and what is read then is wrong"
        )


def _driven_twice(supply, series, processor, fed_by, values, working, stops, unknown) -> None:
    """What comes of two outputs on one line, or of a line into a chip without supply."""
    if processor == NOT_KNOWN:
        unknown.append(
            "what the processor does: hold its reset pin at the level of reset, and see with a "
            "probe that clock and chip select rest before the clip drives them"
        )
    elif processor == RUNNING:
        whole = 2 * DRIVER + series
        share = (DRIVER + series) / whole
        amperes = supply / whole
        values |= {
            "level_when_high": Quantity(supply * share, "V", 2),
            "into_each_other": Quantity(amperes, "A", 2),
        }
        need = f"{HIGH:g} of the supply is {brief(HIGH * supply, 'V')}"
        working.append(
            f"both drive a line, one high and one low: {brief(supply, 'V')} × "
            f"({DRIVER:g} + {series:g}) / {whole:g} = {brief(supply * share, 'V')} at the chip; "
            f"{need}; {brief(amperes, 'A')} flow from one output into the other"
        )
        stops.append("the processor runs and drives the same lines: two masters, wrong bytes")
    elif processor == DEAD and fed_by == PROGRAMMER:
        whole = DRIVER + series
        amperes = max(supply - PROTECTION, 0.0) / whole
        values["into_each_pin"] = Quantity(amperes, "A", 2)
        working.append(
            f"a line that is high feeds a processor without supply through its protection: "
            f"({brief(supply, 'V')} - {PROTECTION:g} V) / {whole:g} Ω = {brief(amperes, 'A')} a pin"
        )
        if amperes > CLAMP:
            least = max(supply - PROTECTION, 0.0) / CLAMP - DRIVER
            stops.append(
                f"{brief(amperes, 'A')} into each pin of a processor without supply is more than "
                f"{brief(CLAMP, 'A')}: that wants {brief(least, 'Ω')} in each line, or the "
                "processor supplied too and held in reset"
            )


def _verdict(stops: list[str], unknown: list[str], reads: str) -> tuple[str, str]:
    if stops:
        return NEVER, f"{'; '.join(stops)}. Else {LIFT}"
    if unknown:
        return CANNOT_TELL, f"not known yet: {'; '.join(unknown)}"
    if reads == EQUAL:
        return CONDITIONS, (
            "two equal reads: store both, look whether they are blank or repeat, and take the clip "
            "off with the supply off"
        )
    if reads in (DIFFER, SILENT):
        return CONDITIONS, f"one more try, slower and with a better clip; then {LIFT}"
    return CONDITIONS, "nothing that is known speaks against a try under these conditions"


_WHAT_NOW = {
    DIFFER: "reads that differ: slower clock, shorter wires, a cleaned chip, the clip set anew, "
    "a supply measured at the chip while it reads; never write",
    SILENT: "no answer: is the clip on pin 1, does its supply stand at the chip while it reads, "
    "are hold and write protect high, is chip select free to move?",
}


def _conditions(supply: float, processor: str, others: str, fed_by: str) -> tuple[str, ...]:
    """In the order of the work."""
    feed = (
        f"The programmer set to {brief(supply, 'V')} and measured before the clip goes on, with a "
        "limit of current; the board's own supply off and unplugged."
        if fed_by == PROGRAMMER
        else "The board feeds the chip; the programmer's supply lead stays open: two supplies "
        f"never meet. Its lines at {brief(supply, 'V')}, measured. Join the grounds first."
    )
    return (
        "Power off, plug out, discharged, measured; battery and cells out.",
        "Pin 1 of the clip on pin 1 of the chip, seen with a lens, before anything is switched on.",
        feed,
        "The processor stays without supply: nothing is fed into it but through its resistors."
        if processor == DEAD
        else "The processor held in reset all the time; a watchdog or a second master may end it.",
        *(("Chip selects of the others pulled to rest.",) if others != ALONE else ()),
        "First the identity, three times the same; then slowly; two whole reads, compared.",
        "No erase and no write through a clip before two equal reads are stored in two places.",
    )


_WHEN_TO_LIFT = (
    "Lift it when the supply breaks down, when the processor cannot be held, when the identity "
    "changes from try to try, or when reads still differ at the slowest clock.",
)
