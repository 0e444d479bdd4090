"""The exercise of lesson 14: one set of your own, from the customer's sentence to the job card.

The first question is the repair itself, judged by what came of it (`learn/bench_question.py`). The
others are the thoughts on the way: what tells two suspects apart, what an instrument shows that is
not there, what is cause and what consequence, what the job came to. Parallel and divided
resistances follow from Ohm's law; what tells faults of a supply apart is common practice and is
worked out in lesson 12; what is handed on is our caution.
"""

from __future__ import annotations

from repairlib.bench import task as drawn_task
from repairlib.core.draws import Draw
from repairlib.learn.arranging import Order, before
from repairlib.learn.asking import practice_question, question
from repairlib.learn.bench_question import Bench
from repairlib.learn.question import Choice, Mistake, Number

SETS = ("network switch", "label maker", "keyboard", "printer controller", "desk radio")
METER = 10e6  # Ω, what a usual multimeter puts across its probes on volts


@practice_question
def where_to_begin(draw: Draw) -> Choice:
    what, hears = draw.pick(
        [("desk radio", "It hums"), ("label maker", "It is dead"), ("keyboard", "It restarts")]
    )
    right = "I look and sniff, and measure before I take anything out"
    return Choice(
        prompt=f"A {what} comes to the bench. Its owner says: “{hears}.” How do you begin?",
        options=draw.shuffle(
            [right, "I change all electrolytics", "I change the part that fails most often"]
        ),
        answer=right,
        hint="What do you know of this set so far?",
    )


@practice_question
def which_half(draw: Draw) -> Choice:
    late, early = draw.pick([("output", "reservoir"), ("+5 V rail", "inlet"), ("lamp", "fuse")])
    middle = "At a point halfway between the two"
    return Choice(
        prompt=f"Volts arrive at the {early}, none at the {late}. Six parts lie between, each as "
        "suspect as the others. Where do you measure next?",
        options=draw.shuffle([middle, f"Behind the first part after the {early}", "At the plug"]),
        answer=middle,
        hint="How many suspects are left after each of the readings, at worst?",
    )


@practice_question
def no_reading(draw: Draw) -> Choice:
    points = draw.pick(["rail and ground", "both ends of R4", "output and ground"])
    right = "That the set is dead there now"
    return Choice(
        prompt=f"Plug out. The meter on volts shows 0.00 V between {points}, and it shows the "
        "volts of a good battery before and after. What does that tell?",
        options=draw.shuffle([right, "That the part there is good", "That its fuse has blown"]),
        answer=right,
        hint="What was asked of the meter, and what was not?",
    )


@question(points=12)
def the_repair(draw: Draw) -> Bench:
    task = drawn_task(draw.pick(SETS), draw=draw)
    return Bench(
        task=task,
        prompt=f"A {task.set.title}. Its owner says: “{task.set.says}”\n\nFind the cause, mend it, "
        "prove that it works at all loads, write the job card and hand the set back. What is not "
        "yours, hand on.",
        hint="What have you measured, and what did it rule out?",
    )


@question(points=1)
def tells_apart(draw: Draw) -> Choice:
    known, one, other, right, *wrong = draw.pick(SUSPECTS)
    return Choice(
        prompt=f"{known} Two suspects are left: {one}, or {other}. Which reading tells them apart?",
        options=draw.shuffle([right, *wrong]),
        answer=right,
        hint="Say for each reading what it shows with the one fault, and what with the other.",
    )


# What is known, two suspects, the reading that differs, readings that are alike with both.
SUSPECTS = (
    (
        "A bridge rectifier; the output hums.",
        "its reservoir has dried out",
        "one of its diodes is open",
        "How often in a second the ripple of the reservoir comes",
        "Ohms from the reservoir to ground, plug out, for a minute",
        "How loud it hums",
    ),
    (
        "Nothing lights. Plug out, proven dead.",
        "the fuse behind the inlet has blown",
        "the switch behind that fuse makes no contact",
        "Ohms from one end of the fuse to its other end",
        "Ohms from the inlet through fuse and switch to the far side",
        "Volts at the output",
    ),
    (
        "A regulator gives 0 V.",
        "it is open inside",
        "a part behind it is shorted",
        "Ohms from its output to ground, dead",
        "The volts at its output once more, plug in, a minute later",
        "The colour of its marking",
    ),
    (
        "The output of a regulator is a fifth too low.",
        "it is out of its range",
        "what it feeds takes more than it can give",
        "The output with its load taken off",
        "The output once more, when a minute has gone by",
        "The volts of its output on another range",
    ),
    (
        "It fails when it is loud.",
        "the contact in the inlet is worn",
        "the adapter is too weak",
        "Volts on either side of the inlet, full load",
        "Volts behind the inlet, at full load, for a whole minute",
        "Volts behind the inlet at light load",
    ),
    (
        "The rail behind R7 is too low.",
        "R7 has risen in value",
        "a capacitor behind R7 leaks",
        "Ohms of R7, one end lifted, plug out",
        "The volts across R7, then those behind it, plug in",
        "The volts behind R7",
    ),
    (
        "Two equal cans lie side by side on one rail, which ripples too much.",
        "the left one has dried out",
        "the right one has dried out",
        "µF of either one with a lead lifted",
        "The ripple of the rail, right at the leads of the left one",
        "µF across both of them, in the board",
    ),
    (
        "It works cold, and stops after ten minutes.",
        "the joint of the output coil opens when warm",
        "the regulator switches itself off when hot",
        "Volts in front of that coil, when it has stopped",
        "Volts behind that coil, when it has stopped and is still warm",
        "Volts behind that coil when it is cold",
    ),
    (
        "A diode in a rectifier reads 0.00 V on the diode test, both ways.",
        "it is shorted",
        "a winding of a few ohms lies across it",
        "The diode test, one lead of it lifted",
        "The diode test once more, with the probes changed over",
        "Ohms across it, in the board",
    ),
    (
        "The fuse blew as soon as it was plugged in.",
        "a rectifier diode is shorted",
        "the reservoir is shorted",
        "Each diode by itself, on the diode test",
        "Whether a new fuse of its kind blows as fast as this one",
        "How black the glass of the fuse is",
    ),
)


@question(points=1)
def what_the_meter_shows(draw: Draw) -> Number:
    volts, each = draw.pick(
        [
            *((12, 1.0), (9, 2.2), (5, 4.7), (24, 1.5), (15, 3.3), (10, 2.0)),
            *((14, 4.7), (18, 1.0), (8, 3.3), (6, 2.2), (20, 4.7), (16, 2.7)),
        ]
    )
    ohms = each * 1e6
    together = ohms * METER / (ohms + METER)
    return Number(
        prompt=f"Two resistors of {each:g} MΩ each stand one above the other, from {volts} V to "
        "ground. A meter of 10 MΩ is put across the lower one. What does it show?",
        unit="V",
        answer=volts * together / (ohms + together),
        tolerance=0.005,
        mistakes=[
            Mistake(volts / 2, "That is what stands there without the meter."),
            Mistake(volts * METER / (ohms + METER), "Is the lower resistor gone?"),
            Mistake(volts * ohms / (ohms + METER), "Which two lie side by side, and which above?"),
        ],
        hint="The meter lies beside the lower resistor. How much are the two together?",
    )


@question(points=1)
def the_other_can(draw: Draw) -> Number:
    sound, other = draw.pick(
        [
            *((0.15, 0.6), (0.2, 0.8), (0.12, 0.36), (0.1, 0.9), (0.3, 0.6), (0.25, 1.0)),
            *((0.18, 0.9), (0.24, 0.48), (0.16, 1.2), (0.4, 1.2), (0.14, 0.84), (0.35, 1.4)),
        ]
    )
    shown = sound * other / (sound + other)
    return Number(
        prompt=f"Two equal cans lie side by side. The ESR tester shows {shown:.3g} Ω across both; "
        f"their reactance does not count at its 100 kHz. One is taken out: {sound:g} Ω. What is "
        "the ESR of the other?",
        unit="Ω",
        answer=other,
        tolerance=0.06,
        mistakes=[
            Mistake(shown, "That is the two of them side by side."),
            Mistake(2 * shown - sound, "Side by side, ohms do not go by the mean."),
            Mistake(sound * shown / (sound + shown), "The one by itself is more than both."),
        ],
        hint="1 / both = 1 / the one + 1 / the other.",
    )


@question(points=2)
def the_job_in_order(draw: Draw) -> Order:
    what, dead = draw.pick(
        [
            ("desk radio", "its reservoir"),
            ("label maker", "its reservoir"),
            ("keyboard", "its supply"),
            ("network switch", "its supply"),
        ]
    )
    steps = (
        "Hear the owner, look, sniff",
        "Pull the plug and let it discharge",
        f"Prove {dead} dead with the meter",
        "Measure until one cause is left",
        "Take that part out, fit the new one, plus to plus",
        "Power up with a limit, at light load",
        "Verify at full load, and once more warm",
    )
    out, proven, limit = steps[4], steps[2], steps[5]
    return Order(
        prompt=f"A {what}, found by measuring without power. Put the work in order.",
        steps=steps,
        shown=draw.shuffle(steps),
        mistakes=[
            Mistake(before(out, proven), "A hand is in it already.", hazard="stored charge"),
            Mistake(before(limit, out), "Power on, and the old fault still in it?"),
        ],
        hint="What must be known before the next step can begin?",
    )


@question(points=1)
def cause_and_consequence(draw: Draw) -> Choice:
    told, cause, *others = draw.pick(CAUSES)
    return Choice(
        prompt=f"{told} Which of these is the cause, and must be mended whatever else is?",
        options=draw.shuffle([cause, *others]),
        answer=cause,
        hint="Which of them could have brought about the others, and not the other way round?",
    )


CAUSES = (
    (
        "Found in one set: a dark fuse, a diode of 0.00 V both ways, a rail of 0 V.",
        "The shorted diode",
        "The blown fuse",
        "The rail without volts",
    ),
    (
        "Found: an output of 0 V, a very hot regulator, 0.2 Ω from the output to ground.",
        "The short behind it",
        "The heat of the regulator",
        "The missing output",
    ),
    (
        "Found: a bulged can on the output, its stripe at plus, a fuse that blew.",
        "Its way round",
        "The bulge of that can",
        "The fuse",
    ),
    (
        "Found: a restart every few seconds, 9 V at the adapter, 6 V behind the inlet when loaded.",
        "The inlet's contact",
        "The restarts of the set",
        "The 6 V of the rail",
    ),
    (
        "Found: hum, a ripple of 3 V a hundred times a second, a reservoir of 300 µF marked 2200.",
        "The reservoir",
        "The ripple of the rail",
        "The hum",
    ),
    (
        "Found: a lamp that goes out when warm, 9 V before its joint, 0 V behind it.",
        "The cracked joint",
        "The warmth",
        "The dark lamp",
    ),
    (
        "Found: a burnt resistor, 0 V behind it, a chip capacitor of 0.3 Ω behind it.",
        "The chip capacitor",
        "The burnt resistor",
        "The 0 V behind the resistor",
    ),
    (
        "Found: 7.9 V on a 5 V rail, a hot logic chip, a restart every minute.",
        "The regulator",
        "The hot logic chip",
        "The restarts of the set",
    ),
    (
        "Found: ripple 50 times a second behind a bridge, hum, a rail that sags when loud.",
        "The open diode",
        "The sagging rail",
        "The ripple of the rail",
    ),
    (
        "Found: a pad torn off, a can that hangs on one leg, hum.",
        "The torn pad",
        "The can on one leg",
        "The hum",
    ),
)


@question(points=1)
def what_it_came_to(draw: Draw) -> Number:
    minutes, parts, worth = draw.pick(
        [
            *((50, 3.4, 6), (40, 2.5, 9), (75, 1.8, 8), (35, 4.2, 12), (90, 0.9, 6), (25, 6.5, 12)),
            *((55, 2.1, 12), (65, 5.3, 6), (45, 1.2, 8), (20, 7.7, 9), (80, 3.6, 9), (70, 4.4, 6)),
        ]
    )
    return Number(
        prompt=f"The job is done. The clock says {minutes} min, the purse {parts:g} tokens. An "
        f"hour is worth {worth} tokens. What did the job come to, in tokens? Type the number only.",
        unit="",
        answer=parts + minutes / 60 * worth,
        mistakes=[
            Mistake(parts, "Is the time free here?"),
            Mistake(minutes / 60 * worth, "Where is what the purse gave out?"),
            Mistake(parts + minutes * worth, "An hour is not a minute."),
        ],
        hint="The purse, and the minutes as a part of an hour.",
    )


@question(points=1)
def not_yours(draw: Draw) -> Choice:
    what, part = draw.pick(
        [
            ("desk radio", "the fuse in front of its transformer"),
            ("label maker", "the capacitor from one mains blade to the other"),
            ("network switch", "the mains switch"),
            ("keyboard", "the resistor across its mains filter"),
        ]
    )
    right = "I write it on the card and hand the set on"
    quick = "I change it: plug out, it is a part like any other"
    probe = "I measure it first, plug in, with one hand behind my back"
    wait = "I wait an hour until all is empty, then I change it"
    return Choice(
        prompt=f"In a {what} all speaks for {part}. You are not trained for mains. What now?",
        options=draw.shuffle([right, quick, probe, wait]),
        answer=right,
        mistakes=[
            Mistake(quick, "What is fitted there keeps its owner alive.", hazard="mains"),
            Mistake(probe, "One hand is enough to be hurt.", hazard="mains"),
            Mistake(wait, "Time empties a capacitor. Does it train anybody?", hazard="mains"),
        ],
    )
