"""The exercise of lesson 05: from a reading to a verdict, without harm.

Answers are typed in by hand. Sources: makers' accuracy notes for the intervals and the leads;
tan δ limits from the Rubycon ZL and Lelon RGA data sheets, ESR = tan δ / (2 π f C); parallel
resistances and the order of work are common practice. The readings, and limits stated for 100 kHz,
are invented. The verdicts are in `interval_judgements`.
"""

from __future__ import annotations

from repairlib.core.draws import Draw
from repairlib.core.quantity import NBSP
from repairlib.learn.arranging import Order, Table, before
from repairlib.learn.asking import practice_question, question
from repairlib.learn.question import Choice, Mistake, Number
from repairlib.learn.questions.interval_judgements import pass_or_fail


@practice_question
def one_count(draw: Draw) -> Number:
    reading, answer, whole = draw.pick(
        [("120.0", 0.1, 120), ("2.000", 0.001, 2), ("14.52", 0.01, 14.52), ("236", 1, 236)]
    )
    return Number(
        prompt=f"A meter shows `{reading} V`. What is one count of its last place worth?",
        unit="V",
        answer=answer,
        mistakes=[Mistake(whole, "That is the whole reading. Look at the last figure only.")],
        hint="Put a 0 for each figure, and a 1 for the last one.",
    )


@practice_question
def four_wires(draw: Draw) -> Number:
    ampere, volt, answer = draw.pick(
        [
            ("20", "0.24", 0.012),
            ("2", "0.014", 0.007),
            ("1", "0.035", 0.035),
            ("0.5", "0.009", 0.018),
        ]
    )
    return Number(
        prompt=f"Four wires: {ampere}{NBSP}A flow through a contact, and the sense leads show "
        f"{volt}{NBSP}V. What is its resistance?",
        unit="Ω",
        answer=answer,
        mistakes=[
            Mistake(float(ampere) / float(volt), "Which one is divided by which?"),
            Mistake(float(ampere) * float(volt), "That is a power in watts."),
        ],
        hint="Ohm's law, with the voltage at the part itself.",
    )


@practice_question
def what_it_means(draw: Draw) -> Table:
    again = "the probes touch, or the part is shorted"
    range_ = "too much for this range, or a part that leaks"
    nothing = "nothing was measured"
    below = "less than the meter can show"
    options = draw.shuffle([again, range_, nothing, below])

    def means(answer: str) -> dict[str, Choice]:
        return {"means": Choice(options=options, answer=answer, hint="Say it aloud as a sentence.")}

    return Table(
        prompt="Four entries in a measuring sheet. What does each of them mean?",
        cells={
            "ESR: 0.00 Ω": means(again),
            "C: OL": means(range_),
            "D: -": means(nothing),
            "leakage: < 0.1 µA": means(below),
        },
    )


@question(points=2)
def upper_end(draw: Draw) -> Number:
    reading, percent, digits, high, low, as_percent, without = draw.pick(
        [
            ("100.0", "2", 2, 102.2, 97.8, 104.0, 102.0),
            ("120.0", "1", 3, 121.5, 118.5, 124.8, 121.2),
            ("2.000", "0.5", 3, 2.013, 1.987, 2.070, 2.010),
            ("100.0", "1", 2, 101.2, 98.8, 103.0, 101.0),
            ("250.0", "1", 3, 252.8, 247.2, 260.0, 252.5),
            ("50.00", "0.5", 4, 50.29, 49.71, 52.25, 50.25),
            ("12.00", "0.8", 2, 12.116, 11.884, 12.336, 12.096),
            ("4.000", "1.5", 5, 4.065, 3.935, 4.260, 4.060),
        ]
    )
    return Number(
        unit="V",
        answer=high,
        tolerance=0.0003,
        prompt=f"A meter shows `{reading} V`. Its data sheet says ±({percent}{NBSP}% of reading + "
        f"{digits} digits). How high can the true voltage be?",
        mistakes=[
            Mistake(as_percent, "Digits are counts of the last place, not extra per cent."),
            Mistake(without, "You left the digits out."),
            Mistake(low, "That is the other end of the interval."),
            Mistake(float(reading), "That is the reading. How far may it be off?"),
        ],
        hint="Per cent of the reading first. Then the digits, each worth one count of the last "
        "place.",
    )


@question(points=1)
def leads(draw: Draw) -> Number:
    shown, tips, answer, total = draw.pick(
        [
            ("0.47", "0.31", 0.16, 0.78),
            ("0.35", "0.25", 0.10, 0.60),
            ("0.62", "0.24", 0.38, 0.86),
            ("0.53", "0.28", 0.25, 0.81),
            ("0.58", "0.27", 0.31, 0.85),
            ("0.40", "0.19", 0.21, 0.59),
            ("0.83", "0.30", 0.53, 1.13),
            ("0.66", "0.37", 0.29, 1.03),
        ]
    )
    return Number(
        unit="Ω",
        answer=answer,
        margin=0.004,
        prompt=f"Across a fuse your ohmmeter shows `{shown} Ω`. With the probe tips held "
        f"together it shows `{tips} Ω`. What is the resistance of the fuse?",
        mistakes=[
            Mistake(float(shown), "You forgot the resistance of the leads."),
            Mistake(float(tips), "That is the leads alone."),
            Mistake(total, "Are the leads a part of the reading, or do they come on top?"),
        ],
        hint="The reading is the leads and the fuse together.",
    )


@question(points=1)
def rms(draw: Draw) -> Number:
    whole, answer, peak, one_step = draw.pick(
        [
            (68, 24.04, 34, 48.08),
            (24, 8.485, 12, 16.97),
            (34, 12.02, 17, 24.04),
            (17, 6.010, 8.5, 12.02),
            (40, 14.14, 20, 28.28),
            (10, 3.536, 5, 7.071),
            (52, 18.38, 26, 36.77),
            (14, 4.950, 7, 9.899),
            (90, 31.82, 45, 63.64),
        ]
    )
    return Number(
        unit="V",
        answer=answer,
        prompt=f"On a scope a sine measures {whole}{NBSP}V from its lowest to its highest point. "
        "What does a meter that reads RMS show?",
        mistakes=[
            Mistake(peak, "That is the peak. RMS is less."),
            Mistake(whole, "That is peak to peak."),
            Mistake(one_step, "You divided by √2. From where to where does a peak count?"),
        ],
        hint="Peak to peak, then peak, then RMS: two steps.",
    )


@question(points=2)
def esr_limit(draw: Draw) -> Number:
    loss, microfarad, answer, reactance, upside_down = draw.pick(
        [
            ("0.14", 470, 0.3951, 2.822, 20.16),
            ("0.16", 220, 0.9646, 6.029, 37.68),
            ("0.22", 1000, 0.2918, 1.326, 6.029),
            ("0.10", 100, 1.326, 13.26, 132.6),
            ("0.20", 2200, 0.1206, 0.6029, 3.014),
            ("0.12", 330, 0.4823, 4.019, 33.49),
            ("0.09", 47, 2.540, 28.22, 313.5),
            ("0.23", 680, 0.4486, 1.950, 8.480),
        ]
    )
    return Number(
        unit="Ω",
        answer=answer,
        tolerance=0.02,
        prompt=f"A new {microfarad}{NBSP}µF capacitor may have at most tan{NBSP}δ = {loss} at "
        "120 Hz. Which ESR is that, at 120 Hz?",
        mistakes=[
            Mistake(
                answer * 120 / 100e3, "The limit is for 120 Hz. At which frequency did you work?"
            ),
            Mistake(answer * 1.2, "That is for 100 Hz. The data sheet says another frequency."),
            Mistake(answer * 2.4, "That is for 50 Hz. The data sheet says another frequency."),
            Mistake(reactance, "That is the reactance. Only a part of it is loss."),
            Mistake(upside_down, "tan δ stands on the other side of the stroke."),
        ],
        hint="Reactance 1/(2 π f C) first. tan δ is ESR over reactance.",
    )


WORKED_OUT = f"worked out from tan{NBSP}δ at 120 Hz"
AS_STATED = "as its data sheet states it for 100 kHz"


@question(points=1)
def other_frequency(draw: Draw) -> Choice:
    shown, limit, stated = draw.pick(
        [
            ("0.21", "0.40", WORKED_OUT),
            ("0.18", "0.29", WORKED_OUT),
            ("0.30", "0.97", WORKED_OUT),
            ("0.42", "1.3", WORKED_OUT),
            ("0.042", "0.056", AS_STATED),
            ("0.10", "0.13", AS_STATED),
            ("0.17", "0.22", AS_STATED),
            ("0.30", "0.36", AS_STATED),
        ]
    )
    nothing = "Nothing yet: the reading and the limit are for different frequencies"
    passes = f"It passes: {shown} Ω is below {limit} Ω"
    scaled = "Multiply the reading by 100 kHz / 120 Hz, then compare it with the limit"
    again = "Measure again at 100 kHz, until the readings agree"
    which = "At which frequency does each of the two numbers hold?"
    return Choice(
        prompt=f"An ESR meter works at 100 kHz and shows `{shown} Ω`. Your limit is "
        f"{limit}{NBSP}Ω, {stated}. What does the reading say about the part?",
        options=draw.shuffle([nothing, passes, scaled, again]),
        answer=nothing if stated == WORKED_OUT else passes,
        mistakes=[
            Mistake(passes if stated == WORKED_OUT else nothing, which),
            Mistake(scaled, "The reactance goes with frequency. Does the ESR of a wet part do so?"),
            Mistake(again, "What would more readings at the same frequency add?"),
        ],
    )


@question(points=2)
def hidden(draw: Draw) -> Choice:
    value, shown, beside = draw.pick(
        [
            ("100u", "0.09", "C2,a,b,100u / C3,a,b,100n"),
            ("220u", "0.07", "C2,a,b,220u / C3,a,b,100n"),
            ("470u", "0.05", "C2,a,b,470u / C3,a,b,100n"),
            ("47u", "0.12", "C2,a,b,47u / C3,a,b,100n"),
            ("220u", "0.11", "R1,a,b,10k"),
            ("100u", "0.14", "R1,a,b,4k7"),
            ("470u", "0.06", "R1,a,b,22k"),
            ("47u", "0.28", "R1,a,b,2k2"),
        ]
    )
    neighbours = "C2" in beside
    hides = "C1 may be worn out: its neighbours can hide it. Lift one lead and measure again"
    fine = "C1 is good by its ESR: the reading can come from no other part"
    worn = "C1 is worn out: with neighbours around it the reading would have to be higher than this"
    higher = "C1 has double that ESR, because the meter sees two ways side by side"
    which = "Which parts does the meter's current flow through?"
    return Choice(
        prompt="The set is dead and discharged. On the board, an ESR meter across C1 shows "
        f"`{shown} Ω`. A new part of its kind has about as much. What do you know?",
        options=draw.shuffle([hides, fine, worn, higher]),
        answer=hides if neighbours else fine,
        picture=lambda: _around(f"C1,a,b,{value} / {beside}", "C1"),
        mistakes=[
            Mistake(fine if neighbours else hides, which),
            Mistake(worn, "Would a good C1 give another reading here?"),
            Mistake(higher, "Are there two equal ways side by side, and is that known?"),
        ],
    )


@question(points=2)
def resistor_on_the_board(draw: Draw) -> Number:
    r1, r2, r3, answer, one_only, chain, alone = draw.pick(
        [
            ("100k", "68k", "82k", 60e3, 40.48e3, 250e3, 100e3),
            ("10k", "22k", "18k", 8000, 6875, 50e3, 10e3),
            ("1k", "680", "820", 600, 404.8, 2500, 1000),
            ("22k", "10k", "12k", 11e3, 6875, 44e3, 22e3),
            ("15k", "18k", "12k", 10e3, 8181.8, 45e3, 15e3),
            ("33k", "15k", "18k", 16.5e3, 10312.5, 66e3, 33e3),
            ("12k", "3k3", "2k7", 4e3, 2588.2, 18e3, 12e3),
        ]
    )
    return Number(
        unit="Ω",
        answer=answer,
        prompt="All parts are good and the board is dead. Which resistance does an ohmmeter show "
        "across R1, once its reading is steady?",
        picture=lambda: _around(f"R1,a,b,{r1} / R2,a,c,{r2} / R3,c,b,{r3} / C1,a,b,100n", "R1"),
        mistakes=[
            Mistake(alone, "That is R1 alone. What else joins its two ends?"),
            Mistake(
                one_only, "From a through R2 you are only at c. How does the current get to b?"
            ),
            Mistake(chain, "The ways lie side by side, not one after the other."),
        ],
        hint="Two ways lead from a to b. What does a capacitor do at dc?",
    )


@question(points=2)
def verdict(draw: Draw) -> Choice:
    return pass_or_fail(draw)


PLUG = "Pull the plug"
DISCHARGE = "Wait, then discharge the capacitor through a resistor"
PROVE = "Measure the voltage across it: nothing is left"
TIPS = "Change to the ESR range, hold the probe tips together and note the reading"
ESR = "Measure the ESR"
NOTE = "Write the reading down, with its frequency"
STEPS = (PLUG, DISCHARGE, PROVE, TIPS, ESR, NOTE)


@question(points=2)
def order_of_work(draw: Draw) -> Order:
    charged = "What can still be in the capacitor at that moment, and where would it go?"
    live = "Where does the set still get its voltage from?"
    return Order(
        prompt="You measure the ESR of a capacitor in the supply. Put the steps in order.",
        steps=STEPS,
        shown=draw.shuffle(STEPS),
        mistakes=[
            Mistake(_not_first(PLUG, DISCHARGE, PROVE, ESR), live, hazard="mains"),
            Mistake(_too_early, charged, hazard="stored charge"),
            Mistake(
                before(PROVE, DISCHARGE),
                "How do you know that it is empty afterwards?",
                hazard="stored charge",
            ),
            Mistake(before(TIPS, PROVE), "On which range do you prove that it is dead?"),
            Mistake(before(ESR, TIPS), "How much of the reading belongs to the leads?"),
        ],
    )


def _not_first(first: str, *others: str):
    """Recognises an order in which one of `others` comes before `first`."""
    return lambda steps: any(before(other, first)(steps) for other in others)


def _too_early(steps) -> bool:
    """Whether the ESR is measured before the capacitor is empty and proved so."""
    return before(ESR, DISCHARGE)(steps) or before(ESR, PROVE)(steps)


@question(points=1)
def still_on(draw: Draw) -> Choice:
    value = draw.pick(["1 kΩ", "4.7 kΩ", "220 Ω", "10 kΩ"])
    right = "Plug out, discharge, prove it dead, then use the ohms range"
    ohms = "Set the meter to ohms, then touch both ends with the probes, quickly"
    switch = "Switch the set off at the front, then use the ohms range"
    autorange = "Use a meter that finds its range by itself"
    live = "The meter would feed its own current into a circuit that has voltage."
    return Choice(
        prompt=f"The set is running. You doubt a resistor of {value} in it. How do you measure its "
        "resistance?",
        options=draw.shuffle([right, ohms, switch, autorange]),
        answer=right,
        mistakes=[
            Mistake(ohms, live, hazard="mains"),
            Mistake(
                switch,
                "A switch at the front may leave the supply live and its capacitors charged.",
                hazard="stored charge",
            ),
            Mistake(autorange, live, hazard="mains"),
        ],
    )


def _around(rows: str, name: str):
    """The parts around `name` drawn; the rows are those of a table without its headings."""
    from repairlib.health import read_neighbourhood
    from repairlib.show.circuits import draw_neighbourhood

    return draw_neighbourhood(read_neighbourhood(f"part,from,to,value / {rows}"), name)
