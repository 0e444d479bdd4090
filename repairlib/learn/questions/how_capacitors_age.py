"""The exercise of lesson 06: how long a part lasts, what it may show, and how to wake it safely.

Answers are typed in by hand. Sources: the 10-degree rule by Cosel's technical information and an
encyclopaedia; ESR = tan δ / (2 π f C) by the definition of DF in a data sheet (Cornell Dubilier
ESRD); leakage and limits of wear from the Rubycon ZL and Lelon RGA data sheets; re-forming through
a resistor from a databook after IEC 60384-4, as quoted; the order of work is common practice. The
readings, and limits stated for 100 kHz, are invented.
"""

from __future__ import annotations

from repairlib.core.draws import Draw
from repairlib.core.quantity import NBSP
from repairlib.learn.arranging import Order, Table, before
from repairlib.learn.asking import practice_question, question
from repairlib.learn.question import Choice, Mistake, Number

FIT, MARGINAL, REPLACE, CANNOT_TELL = "fit", "marginal", "replace", "cannot tell"
VERDICTS = (FIT, MARGINAL, REPLACE, CANNOT_TELL)
MEASURE = "Measure the voltage across it, with a meter tried on a known source"
AGAIN = "Wait a minute and measure again"
TOUCH = "Take the part out of the clips"
RESISTOR = "Let it discharge through the series resistor"
OFF = "Turn the bench supply to zero and switch it off"


@practice_question
def ten_degrees(draw: Draw) -> Number:
    hours, answer = draw.pick([(1000, 2000), (2000, 4000), (3000, 6000), (5000, 10_000)])
    return Number(
        prompt=f"An electrolytic lasts {hours} h at 95{NBSP}°C. How many hours at 85{NBSP}°C?",
        unit="",
        answer=answer,
        mistakes=[Mistake(hours / 2, "Does a cooler part last longer or shorter?")],
        hint="One step of 10 °C. What does the rule say for each step?",
    )


@practice_question
def what_dries_out(draw: Draw) -> Choice:
    wet = draw.pick(["A small aluminium can with a stripe", "A big aluminium can with a vent"])
    options = (wet, "A plastic film box", "A ceramic disc", "A mica plate")
    return Choice(
        prompt="Which of these dries out with the years?",
        options=draw.shuffle(options),
        answer=wet,
        hint="Which one is wet inside?",
    )


@practice_question
def years(draw: Draw) -> Number:
    hours, answer = draw.pick([(17_520, 2), (26_280, 3), (43_800, 5), (87_600, 10)])
    return Number(
        prompt=f"A part is to last {hours} h, and its set is never switched off. "
        "How many years is that? A year has 8760 h.",
        unit="",
        answer=answer,
        tolerance=0.02,
        hint="Divide by the hours of a year.",
    )


@question(points=2)
def cooler(draw: Draw) -> Number:
    hours, rated, air, answer, added = draw.pick(
        [
            (3000, 105, 75, 24_000, 9000),
            (1000, 105, 45, 64_000, 6000),
            (1000, 105, 65, 16_000, 4000),
            (2000, 105, 45, 128_000, 12_000),
            (2000, 105, 75, 16_000, 6000),
            (2000, 85, 45, 32_000, 8000),
            (5000, 105, 65, 80_000, 20_000),
            (3000, 105, 55, 96_000, 15_000),
            (1000, 85, 55, 8000, 3000),
            (7000, 105, 75, 56_000, 21_000),
            (3000, 85, 45, 48_000, 12_000),
            (1500, 85, 55, 12_000, 4500),
            (5000, 105, 75, 40_000, 15_000),
        ]
    )
    return Number(
        unit="",
        answer=answer,
        tolerance=0.02,
        prompt=f"A capacitor is rated {hours} h at {rated}{NBSP}°C. It works in air of "
        f"{air}{NBSP}°C, at rated ripple and voltage. How many hours does it last by the "
        "10-degree rule? Type the number only.",
        mistakes=[
            Mistake(
                lambda typed: 0 < typed < hours,
                "Your part lasts shorter than at its rated temperature. Is it hotter or cooler?",
            ),
            Mistake(added, "You added the life for each step. Each step doubles what is there."),
            Mistake(hours * 2, "You took one step only. How many steps of 10 °C are there?"),
        ],
        hint="Count the steps of 10 °C from the rated temperature down to the air.",
    )


@question(points=2)
def air_or_case(draw: Draw) -> Number:
    hours, rated, air, case, answer, by_case = draw.pick(
        [
            (1000, 105, 45, 51, 64_000, 42_224),
            (2000, 105, 55, 60, 64_000, 45_255),
            (2000, 85, 55, 59, 16_000, 12_126),
            (5000, 105, 65, 72, 80_000, 49_246),
            (3000, 105, 55, 61, 96_000, 63_336),
            (2000, 105, 65, 70, 32_000, 22_627),
            (5000, 105, 75, 81, 40_000, 26_390),
            (3000, 85, 45, 49, 48_000, 36_377),
            (1500, 85, 55, 60, 12_000, 8485),
            (7000, 105, 75, 80, 56_000, 39_598),
            (3000, 105, 75, 79, 24_000, 18_189),
        ]
    )
    return Number(
        unit="",
        answer=answer,
        tolerance=0.02,
        prompt=f"The data sheet says {hours} h in air of {rated}{NBSP}°C with rated ripple. In "
        f"your set rated ripple flows too. You measure {air}{NBSP}°C in the air beside the part "
        f"and {case}{NBSP}°C on its case. How many hours by the 10-degree rule? Type the number "
        "only.",
        mistakes=[
            Mistake(
                by_case,
                "The part warmed itself in the maker's test too. Which temperature did the data "
                "sheet state?",
            ),
            Mistake(
                lambda typed: 0 < typed < hours,
                "Your part lasts shorter than at its rated temperature. Is it hotter or cooler?",
            ),
        ],
        hint="Compare like with like: the same kind of temperature in both places.",
    )


@question(points=2)
def better_part(draw: Draw) -> Number:
    old, new, down, answer, added, without_rating = draw.pick(
        [
            (2000, 5000, 10, 20, 8.5, 5),
            (2000, 2000, 10, 8, 7, 2),
            (1000, 2000, 10, 16, 8, 4),
            (2000, 4000, 20, 32, 10, 8),
            (1000, 5000, 10, 40, 11, 10),
            (2000, 3000, 10, 12, 7.5, 3),
            (1000, 3000, 10, 24, 9, 6),
            (2000, 7000, 10, 28, 9.5, 7),
            (1000, 4000, 20, 64, 12, 16),
            (2000, 10_000, 20, 80, 13, 20),
        ]
    )
    return Number(
        unit="",
        answer=answer,
        tolerance=0.02,
        prompt=f"An old part is rated {old} h at 85{NBSP}°C. You fit one of {new} h at "
        f"105{NBSP}°C, and a cleaned vent makes the air {down}{NBSP}°C cooler. How many times "
        "longer does the new part last, by the 10-degree rule?",
        mistakes=[
            Mistake(added, "You added the gains. What happens to a doubled life that doubles?"),
            Mistake(without_rating, "Part of the gain is missing: the rated temperature rose too."),
            Mistake(lambda typed: 0 < typed < 1, "Is the new part better or worse off?"),
        ],
        hint="Three gains: rated hours, rated temperature, cooler air. They multiply.",
    )


@question(points=2)
def esr_limit(draw: Draw) -> Number:
    loss, microfarad, answer, upside_down, reactance = draw.pick(
        [
            (0.16, 220, 0.9646, 37.68, 6.029),
            (0.25, 10, 33.16, 530.5, 132.6),
            (0.10, 100, 1.326, 132.6, 13.26),
            (0.12, 330, 0.4823, 33.49, 4.019),
            (0.14, 470, 0.3951, 20.16, 2.822),
            (0.22, 1000, 0.2918, 6.029, 1.326),
            (0.20, 2200, 0.1206, 3.014, 0.6029),
            (0.09, 47, 2.540, 313.5, 28.22),
            (0.24, 33, 9.646, 167.5, 40.19),
            (0.19, 680, 0.3706, 10.27, 1.950),
            (0.18, 150, 1.592, 49.12, 8.842),
        ]
    )
    return Number(
        unit="Ω",
        answer=answer,
        tolerance=0.02,
        prompt=f"A data sheet allows tan δ {loss:.2f} at 120{NBSP}Hz. The part has "
        f"{microfarad}{NBSP}µF. What is the highest ESR of a good one at 120{NBSP}Hz?",
        mistakes=[
            Mistake(upside_down, "tan δ stands in the wrong place. More loss must mean more ESR."),
            Mistake(reactance, "That is the reactance. The loss is only a part of it."),
        ],
        hint="ESR is tan δ times the reactance 1 / (2 π f C). Put C in farad.",
    )


@question(points=2)
def other_frequency(draw: Draw) -> Choice:
    limit, reading, microfarad, loss = draw.pick(
        [
            ("1.33", "0.9", 100, "0.10"),
            ("0.96", "0.6", 220, "0.16"),
            ("0.40", "0.3", 470, "0.14"),
            ("0.13", "0.10", 100, ""),
            ("0.22", "0.15", 47, ""),
            ("0.056", "0.05", 470, ""),
            ("0.30", "0.22", 22, ""),
            ("0.117", "0.08", 150, ""),
            ("0.041", "0.03", 680, ""),
            ("0.16", "0.12", 68, ""),
            ("0.072", "0.06", 330, ""),
        ]
    )
    worked_out = (
        f"From tan δ {loss} at 120{NBSP}Hz you worked out {limit}{NBSP}Ω for a general "
        f"{microfarad}{NBSP}µF part."
    )
    stated = f"The data sheet of a {microfarad}{NBSP}µF part allows {limit}{NBSP}Ω at 100{NBSP}kHz."
    unknown = "It does not tell: this limit holds at another frequency"
    good = f"It is good: {reading} Ω is less than its limit"
    scaled = "It is bad: the limit shrinks by 120 / 100 000"
    worse = "It is bad: a good part reads just its limit, at whatever frequency"
    other = Mistake(unknown, "At which frequency does each of the two numbers hold?")
    if loss:
        other = Mistake(
            good, "ESR is lower at high frequency. At which frequency was the limit stated?"
        )
    return Choice(
        prompt=f"{worked_out if loss else stated} Your ESR meter works at 100{NBSP}kHz and shows "
        f"{reading}{NBSP}Ω. What do you write down?",
        options=draw.shuffle([unknown, good, scaled, worse]),
        answer=unknown if loss else good,
        mistakes=[
            other,
            Mistake(scaled, "tan δ itself changes with frequency. Such a sum proves nothing."),
            Mistake(worse, "A limit is the most that is allowed, not what a good part shows."),
        ],
    )


@question(points=2)
def leakage_limit(draw: Draw) -> Number:
    microfarad, volts, answer, total, smaller = draw.pick(
        [
            ("10", 16, 3e-6, 4.6e-6, 1.6e-6),
            ("100", 25, 25e-6, 28e-6, 3e-6),
            ("220", 16, 35.2e-6, 38.2e-6, 3e-6),
            ("47", 35, 16.45e-6, 19.45e-6, 3e-6),
            ("470", 10, 47e-6, 50e-6, 3e-6),
            ("1000", 6.3, 63e-6, 66e-6, 3e-6),
            ("22", 50, 11e-6, 14e-6, 3e-6),
            ("2.2", 50, 3e-6, 4.1e-6, 1.1e-6),
            ("1", 63, 3e-6, 3.63e-6, 0.63e-6),
            ("4.7", 25, 3e-6, 4.175e-6, 1.175e-6),
            ("330", 25, 82.5e-6, 85.5e-6, 3e-6),
            ("68", 50, 34e-6, 37e-6, 3e-6),
            ("150", 35, 52.5e-6, 55.5e-6, 3e-6),
            ("33", 63, 20.79e-6, 23.79e-6, 3e-6),
        ]
    )
    return Number(
        unit="A",
        answer=answer,
        tolerance=0.005,
        prompt="A data sheet says: leakage after 2 min at rated voltage not above 0.01 CV or "
        f"3{NBSP}µA, whichever is larger, with C in µF and V in volts. What is the limit of a "
        f"part of {microfarad}{NBSP}µF, {volts}{NBSP}V?",
        mistakes=[
            Mistake(total, "You took both together. Read the rule again: whichever is …"),
            Mistake(smaller, "That is one of the two figures. Which one counts?"),
        ],
        hint="Work out both figures in µA and compare them.",
    )


@question(points=3)
def measured_parts(draw: Draw) -> Table:
    fit = draw.pick([("C7: 104 µF, 1.2 Ω", FIT), ("C7: 98 µF, 0.9 Ω", FIT)])
    between = draw.pick([("C9: 96 µF, 2.6 Ω", MARGINAL), ("C9: 93 µF, 3.0 Ω", MARGINAL)])
    worn = draw.pick([("C12: 95 µF, 4.9 Ω", REPLACE), ("C12: 61 µF, 5.8 Ω", REPLACE)])
    close = draw.pick([("C15: 99 µF, 3.6 Ω", CANNOT_TELL), ("C15: 97 µF, 3.7 Ω", CANNOT_TELL)])
    shorted = ("C18: 99 µF, 0.0 Ω", CANNOT_TELL)
    rows = draw.shuffle([fit, between, worn, close, shorted])
    return Table(
        prompt="Five parts of 100 µF 25 V were measured out of the board at 120 Hz, with a meter "
        "good to ±5 %. A new part has 80 to 120 µF and at most 1.86 Ω. At the end of the "
        "endurance test it may have 3.71 Ω; its capacitance must still be 80 to 120 µF.\n\n"
        "Judge each: fit as new, marginal (worn, but not at its end), replace, or cannot tell.",
        cells={label: {"verdict": _verdict(label, right)} for label, right in rows},
    )


def _verdict(label: str, right: str) -> Choice:
    hint = "Hold both readings against both limits."
    if right == CANNOT_TELL:
        hint = "Add and take away the meter's 5 %. On which side of the limit is the part?"
    if "0.0 Ω" in label:
        hint = "Does any capacitor have no resistance at all? What did the probes touch?"
    if right == REPLACE:
        hint = "One reading past its end is enough."
    return Choice(options=VERDICTS, answer=right, hint=hint)


@question(points=2)
def wake_up(draw: Draw) -> Choice:
    volts, age = draw.pick([(35, 12), (25, 9), (50, 15)])
    slow = "Out of the set, through a resistor, from a current-limited bench supply, in steps"
    mains = "In the set: switch it on at the mains and let it form by itself"
    lamp = "On the mains, through a diode and a lamp"
    direct = "Out of the set, rated voltage at once from a strong supply, no resistor in between"
    return Choice(
        prompt=f"An electrolytic of 470 µF {volts} V lay in a drawer for {age} years, and it can "
        "no longer be bought. How do you bring it back to rated voltage?",
        options=draw.shuffle([slow, mains, lamp, direct]),
        answer=slow,
        mistakes=[
            Mistake(
                mains,
                "Nothing limits the current into a part that may leak like a short.",
                hazard="mains",
            ),
            Mistake(
                lamp,
                "Every clip and lead of such a lash-up is live, whatever the lamp does.",
                hazard="mains",
            ),
            Mistake(
                direct,
                "What happens in the part when it leaks and nothing limits the current?",
                hazard="heat and fire",
            ),
        ],
    )


@question(points=2)
def after_the_test(draw: Draw) -> Order:
    steps = (OFF, RESISTOR, MEASURE, AGAIN, TOUCH)
    return Order(
        prompt="The leakage test is over. The capacitor is still at its voltage. "
        "Put the steps in order, first one first.",
        steps=steps,
        shown=draw.shuffle(steps),
        mistakes=[
            Mistake(
                before(TOUCH, MEASURE),
                "You touch the part before you know that it is empty.",
                hazard="stored charge",
            ),
            Mistake(
                before(TOUCH, AGAIN),
                "Charge creeps back while you look away. When would you notice?",
                hazard="stored charge",
            ),
            Mistake(before(RESISTOR, OFF), "What fills the part up while you empty it?"),
            Mistake(before(AGAIN, MEASURE), "Again means after something. After what?"),
        ],
    )
