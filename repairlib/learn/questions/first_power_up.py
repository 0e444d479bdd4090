"""The exercise of lesson 12: the order of a first power-up, its limits, its stops, its symptoms.

The figures drawn are invented; each answer is what `repairlib.power_up` and `repairlib.circuits`
work out. Sources: ripple by a university course sheet, FEEG1004; windows by a design guide for
supplies; the threshold of a short, the limit and the order of work are common practice and choices
of this workbook.
"""

from __future__ import annotations

from repairlib.circuits import symptom_rows
from repairlib.core.decide import decide
from repairlib.core.draws import Draw
from repairlib.core.quantity import NBSP, brief
from repairlib.core.verdicts import CANNOT_TELL, FAIL, PASS
from repairlib.learn.arranging import Order, Table, before
from repairlib.learn.asking import practice_question, question
from repairlib.learn.question import Choice, Mistake, Number
from repairlib.power_up import short_below, smoothing_ripple, steps_up, window_around

EMPTY = "Plug out, capacitors discharged and measured, twice"
METAL = "Look for loose metal, both sides, with a lens"
TURNED = "Check the polarity of each new part once more"
OHMS = "Measure ohms from each rail to ground"
LOW = "Output on: a few volts, the limit at 100 mA or less"
RAILS = "At full volts, measure the rails, then their ripple"

OFF = "I switch off and look for the cause"
RAISE = "I raise the limit until the volts come up"
ON = "I go on to the next step: the supply protects it"
FEEL = "I touch the parts, one by one, to find the hot one"

BY_HAND = "I hand it to somebody who has a limited supply"
QUICKLY = "I plug it into the mains for one second only"
MY_LAMP = "I wire a lamp into its mains lead myself"
BIG_FUSE = "I fit a larger fuse, so that it does not blow"

ROWS = {row.fault: row for row in symptom_rows()}
DRIED, DIODE, REGULATOR, JOINT = (
    "reservoir dried out",
    "one diode open",
    "regulator shorted",
    "bad joint before the rectifier",
)


@practice_question
def window_end(draw: Draw) -> Number:
    nominal, tolerance = draw.pick([(5, 5), (12, 5), (9, 10), (3.3, 5)])
    window = window_around(nominal, tolerance)
    return Number(
        prompt=f"A rail of {nominal:g}{NBSP}V may be off by ±{tolerance}{NBSP}%. What is the "
        "lowest voltage it may have?",
        unit="V",
        answer=window.low,
        tolerance=0.002,
        mistakes=[Mistake(window.high, "That is the highest.")],
        hint="Take the per cent off the volts.",
    )


@practice_question
def which_ripple(draw: Draw) -> Choice:
    hertz, answer = draw.pick(
        [
            (100, "All diodes charge the reservoir"),
            (50, "Half of the charging is missing: look at the diodes"),
        ]
    )
    options = (
        "All diodes charge the reservoir",
        "Half of the charging is missing: look at the diodes",
        "The reservoir is open",
    )
    return Choice(
        prompt=f"Behind a bridge on mains of 50{NBSP}Hz you see a ripple of {hertz}{NBSP}Hz. What "
        "does its frequency say?",
        options=draw.shuffle(options),
        answer=answer,
        hint="A bridge charges the reservoir twice in each period of mains.",
    )


@question(points=3)
def order_of_work(draw: Draw) -> Order:
    steps = (EMPTY, METAL, TURNED, OHMS, LOW, RAILS)
    return Order(
        prompt="A radio has new capacitors. Its low-voltage side gets its first power from a bench "
        "supply. Put the steps in order, first one first.",
        steps=steps,
        shown=draw.shuffle(steps),
        mistakes=[
            Mistake(
                lambda steps: any(before(one, EMPTY)(steps) for one in (METAL, TURNED, OHMS)),
                "Your hands and probes are on a board of which nobody knows that it is empty.",
                hazard="stored charge",
            ),
            Mistake(
                lambda steps: any(
                    before(power, look)(steps)
                    for power in (LOW, RAILS)
                    for look in (METAL, TURNED, OHMS)
                ),
                "Power comes before you know that nothing is shorted or the wrong way round.",
                hazard="heat and fire",
            ),
            Mistake(
                before(RAILS, LOW),
                "Full volts first: a mistake gets all that the supply can give.",
                hazard="heat and fire",
            ),
            Mistake(before(TURNED, METAL), "What could short everything, whatever its polarity?"),
        ],
        hint="Dead first. Then look, then measure without power, then little power.",
    )


@question(points=2)
def without_a_limit(draw: Draw) -> Choice:
    thing = draw.pick(["radio", "tape recorder", "record player", "synthesiser"])
    return Choice(
        prompt=f"You changed the capacitors of a {thing} that runs from the mains. You have no "
        "supply with a current limit. How does it get its first power?",
        options=draw.shuffle([BY_HAND, QUICKLY, MY_LAMP, BIG_FUSE]),
        answer=BY_HAND,
        mistakes=[
            Mistake(QUICKLY, "How fast does a reversed can burst?", hazard="heat and fire"),
            Mistake(MY_LAMP, "The lamp and all behind it are live. Who may?", hazard="mains"),
            Mistake(BIG_FUSE, "Then the board burns in its place.", hazard="heat and fire"),
        ],
    )


@question(points=2)
def ohms_of_a_short(draw: Draw) -> Number:
    volts, ampere = draw.pick(
        [
            *((5, 0.2), (12, 0.25), (9, 0.3), (3.3, 0.5), (12, 0.4), (6, 0.1)),
            *((5, 0.25), (3.3, 0.2), (12, 0.8), (15, 0.2), (6, 0.5), (24, 0.25)),
        ]
    )
    answer = short_below(volts, ampere)
    return Number(
        prompt=f"A rail of {volts:g}{NBSP}V should carry {brief(ampere, 'A')}. By the rule of this "
        "lesson: below how many ohms to ground does it count as shorted?",
        unit="Ω",
        answer=answer,
        tolerance=0.02,
        mistakes=[
            Mistake(volts / ampere, "That is at the expected current. The limit is set above it."),
            Mistake(1.2 * volts / ampere, "Is the limit above or below the expected current?"),
        ],
        hint="The volts of the rail divided by the current limit.",
    )


@question(points=2)
def last_limit(draw: Draw) -> Number:
    volts, ampere = draw.pick(
        [
            *((9, 0.25), (12, 0.4), (11, 0.15), (6, 0.35), (24, 0.6), (12, 0.7)),
            *((5, 0.5), (15, 0.3), (9, 0.8), (12, 0.2), (24, 0.45)),
        ]
    )
    answer = steps_up(volts, ampere)[-1].limit
    return Number(
        prompt=f"A set for {volts}{NBSP}V dc should draw {brief(ampere, 'A')}. To what current is "
        "the limit set at the last step, with the full volts?",
        unit="A",
        answer=answer,
        tolerance=0.02,
        mistakes=[
            Mistake(ampere, "Then a sound set stands at the limit already."),
            Mistake(0.1, "That is the limit to begin with."),
            Mistake(2 * ampere, "That much lets a fault burn."),
        ],
        hint="A little above what is expected: by a fifth.",
    )


@question(points=3)
def rails_judged(draw: Draw) -> Table:
    logic = draw.pick([(5.02, 5.61, 4.77), (4.97, 4.41, 5.23), (5.11, 4.52, 4.73)])
    higher, *readings = draw.pick(
        [(12, 12.31, 11.04, 12.57), (9, 9.18, 7.2, 9.41), (12, 11.86, 13.4, 11.44)]
    )
    rows = {}
    for nominal, reading in (*((5, one) for one in logic), *((higher, one) for one in readings)):
        error, window = 0.01 * nominal, window_around(nominal, 5)
        found = decide(reading - error, reading + error, window.low, window.high, unit="V")
        rows[f"{nominal} V rail: {reading:.2f} V, ±{error:.2f} V"] = found.verdict
    return Table(
        prompt="Each rail may be off by ±5 %. The meter's own error stands behind each reading. "
        "Judge: pass, fail, or cannot tell.",
        cells={row: {"verdict": _verdict(rows[row])} for row in draw.shuffle(list(rows))},
    )


def _verdict(right: str) -> Choice:
    hint = "Work out both ends of the window. Then add and take away the meter's error."
    return Choice(options=(PASS, FAIL, CANNOT_TELL), answer=right, hint=hint)


@question(points=2)
def from_the_waveform(draw: Draw) -> Choice:
    fault = draw.pick([DIODE, DRIED, JOINT, REGULATOR])
    hints = {
        DRIED: "How often in 20 ms does the reservoir fall and rise, and how far?",
        DIODE: "Count the peaks in 40 ms: two, or four?",
        REGULATOR: "Where is the output, and where its window?",
        JOINT: "Is the whole reservoir low, or does it only ripple?",
    }
    return Choice(
        prompt="This supply should give 5 V at its output. The dashed line is a sound reservoir. "
        "What is likely?",
        picture=lambda: _waves(fault),
        options=draw.shuffle([DIODE, DRIED, JOINT, REGULATOR]),
        answer=fault,
        mistakes=[Mistake(other, hints[other]) for other in hints if other != fault],
    )


def _waves(fault: str):
    from repairlib.show.rail_chart import draw_rail

    return draw_rail(fault, "the supply at hand")


@question(points=2)
def at_the_limit(draw: Draw) -> Choice:
    volts, ampere = draw.pick([(12, 0.25), (9, 0.3), (11, 0.15), (24, 0.2)])
    step = steps_up(volts, ampere)[1]
    return Choice(
        prompt=f"Second step. You set {brief(step.volts, 'V')} and a limit of "
        f"{brief(step.limit, 'A')}. The supply shows {brief(step.limit, 'A')}, and its volts have "
        f"fallen to {brief(float(f'{0.3 * step.volts:.1g}'), 'V')}. What do you do?",
        options=draw.shuffle([OFF, RAISE, ON, FEEL]),
        answer=OFF,
        mistakes=[
            Mistake(RAISE, "Something takes too much. What happens to it?", hazard="heat and fire"),
            Mistake(ON, "It limits, and heat goes on in a part.", hazard="heat and fire"),
            Mistake(
                FEEL,
                "Something that takes so much burns skin, and may burst in your face.",
                hazard="flying leads and eyes",
            ),
        ],
    )


@question(points=3)
def from_symptom_to_part(draw: Draw) -> Table:
    groups = (
        [DRIED, "ESR of the reservoir high"],
        [DIODE, "one diode shorted"],
        [REGULATOR, "regulator open"],
        ["output shorted", "load too heavy"],
    )
    chosen = [draw.pick(group) for group in groups]
    parts = ("reservoir", "rectifier", "regulator", "what the rail feeds")
    hint = "Look the signs up in the table of the lesson: all of them, and no others."
    return Table(
        prompt="A supply shows just these signs. Which part do you measure first?",
        cells={
            "; ".join(ROWS[fault].shows): {
                "part": Choice(options=parts, answer=ROWS[fault].part, hint=hint)
            }
            for fault in draw.shuffle(chosen)
        },
    )


@question(points=2)
def ripple_by_formula(draw: Draw) -> Number:
    ampere, microfarad = draw.pick(
        [
            *((0.2, 1000), (0.3, 2200), (0.25, 1000), (0.5, 4700), (0.4, 2200), (0.15, 470)),
            *((0.1, 470), (0.6, 4700), (0.35, 1000), (0.8, 6800), (0.3, 1000)),
        ]
    )
    farad = microfarad / 1e6
    answer = smoothing_ripple(ampere, farad, 50)
    return Number(
        prompt=f"A bridge on mains of 50{NBSP}Hz charges a reservoir of {microfarad}{NBSP}µF. The "
        f"load takes {brief(ampere, 'A')}. How much ripple, peak to peak, does the formula give?",
        unit="V",
        answer=answer,
        tolerance=0.02,
        mistakes=[
            Mistake(2 * answer, "A bridge charges it twice in each period."),
            Mistake(answer / 2, "Twice 50 Hz is 100 Hz. You doubled once too often."),
            Mistake(answer / 0.8, "That is the most it may have, with 20 % less capacitance."),
        ],
        hint="The current, divided by twice the frequency and by the farads.",
    )
