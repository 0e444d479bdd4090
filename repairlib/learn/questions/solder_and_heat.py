"""The exercise of lesson 08: solder, heat, taking parts out, cleaning, and what must not meet.

Answers are typed in by hand. Sources: the lead and bismuth phase from an abstract on lead in Sn-Bi
solder; flux codes from a trade article on J-STD-004B and J-STD-001D; wick and plunger from a Navy
training text; salt limit from J-STD-001 as quoted; the order of work and the tools are common
practice; volumes and mixtures are arithmetic. The joints to judge are in `joint_judgements`.
"""

from __future__ import annotations

from repairlib.core.draws import Draw
from repairlib.core.quantity import NBSP
from repairlib.learn.arranging import Order, Table, before
from repairlib.learn.asking import practice_question, question
from repairlib.learn.question import Choice, Mistake, Number
from repairlib.learn.questions.joint_judgements import cut_open, what_next

VACUUM, BRAID, LOW_MELT, LEAVE = (
    "vacuum or pump",
    "braid",
    "low-melt alloy",
    "not with these tools",
)
WAYS = (VACUUM, BRAID, LOW_MELT, LEAVE)
PLUG = "Pull the plug"
EMPTY = "Discharge the large capacitors through a resistor"
MEASURE = "Measure them, with a meter tried on a known source"
BATTERY = "Take the memory battery out"
TOOL = "Switch the desoldering tool on and begin"


@practice_question
def how_far_to_melt(draw: Draw) -> Number:
    name, liquidus, tip, answer = draw.pick(
        [
            ("Sn63Pb37", 183, 315, 132),
            ("Sn96.5Ag3.0Cu0.5", 220, 315, 95),
            ("Sn99.3Cu0.7", 227, 350, 123),
            ("Sn50Pb50", 212, 330, 118),
        ]
    )
    return Number(
        prompt=f"{name} is all liquid at {liquidus}{NBSP}°C. The tip has {tip}{NBSP}°C. "
        "By how many degrees is the tip hotter?",
        unit="",
        answer=answer,
        mistakes=[Mistake(tip + liquidus, "How far apart are the two, not how much together.")],
        hint="Tip minus liquidus.",
    )


@practice_question
def which_braid(draw: Draw) -> Choice:
    land, fits, wide, narrow = draw.pick(
        [
            ("2.0 mm", "2.0 mm wide", "3.5 mm wide", "1.0 mm wide"),
            ("2.7 mm", "2.5 mm wide", "5.0 mm wide", "1.0 mm wide"),
            ("1.6 mm", "1.5 mm wide", "3.0 mm wide", "0.5 mm wide"),
        ]
    )
    return Choice(
        prompt=f"A surface pad is {land} wide. Which braid do you take?",
        options=draw.shuffle([fits, wide, narrow]),
        answer=fits,
        mistakes=[
            Mistake(wide, "What does the part of the braid beside the pad do to the board?"),
            Mistake(narrow, "How many strokes will that be, each of them with heat?"),
        ],
    )


@practice_question
def holds_lead(draw: Draw) -> Choice:
    leaded = draw.pick(["Sn62Pb36Ag2", "Sn60Pb40", "Sn43Pb43Bi14"])
    options = (leaded, "Sn96.5Ag3.0Cu0.5", "Sn99.3Cu0.7", "Bi58Sn42")
    return Choice(
        prompt="Which of these holds lead?",
        options=draw.shuffle(options),
        answer=leaded,
        hint="Which symbol stands for lead?",
    )


@question(points=2)
def solder_in_a_hole(draw: Draw) -> Number:
    hole, lead, board, answer, no_lead = draw.pick(
        [
            ("1.0", "0.6", "2.4", 1.206, 1.885),
            ("1.0", "0.6", "1.6", 0.804, 1.257),
            ("1.1", "0.8", "1.6", 0.716, 1.521),
            ("0.9", "0.5", "1.6", 0.704, 1.018),
            ("1.3", "0.8", "1.6", 1.319, 2.124),
            ("1.2", "0.7", "1.6", 1.194, 1.810),
            ("1.0", "0.5", "1.6", 0.942, 1.257),
            ("0.8", "0.4", "1.6", 0.603, 0.804),
            ("1.5", "1.0", "2.4", 2.356, 4.241),
        ]
    )
    return Number(
        unit="",
        answer=answer,
        tolerance=0.02,
        prompt=f"A plated hole has a diameter of {hole}{NBSP}mm, the lead {lead}{NBSP}mm, the "
        f"board is {board}{NBSP}mm thick. How many mm³ of solder fill the hole? Leave the fillets "
        "out. Type the number only.",
        mistakes=[
            Mistake(no_lead, "Something stands in the hole and takes up room."),
            Mistake(answer * 4, "Diameters were given. What does the area of a circle take?"),
        ],
        hint="Area of the hole less area of the lead, times the thickness.",
    )


@question(points=2)
def hole_fill(draw: Draw) -> Choice:
    return cut_open(draw)


@question(points=2)
def lead_in_the_joint(draw: Draw) -> Number:
    old, new, answer, against_new = draw.pick(
        [
            (10, 27, 10.0, 13.70),
            (10, 30, 9.25, 12.33),
            (10, 40, 7.4, 9.25),
            (5, 32, 5.0, 5.78),
            (12, 36, 9.25, 12.33),
            (15, 22, 15.0, 25.23),
            (4, 33, 4.0, 4.485),
            (6, 31, 6.0, 7.161),
            (12, 25, 12.0, 17.76),
            (8, 29, 8.0, 10.21),
            (7, 30, 7.0, 8.633),
            (9, 28, 9.0, 11.89),
            (11, 26, 11.0, 15.65),
        ]
    )
    return Number(
        unit="%",
        answer=answer,
        tolerance=0.01,
        prompt=f"{old}{NBSP}mg of Sn63Pb37 were left on a pad. You melt {new}{NBSP}mg of Bi58Sn42 "
        "into it. How many wt % of lead has the joint now?",
        mistakes=[
            Mistake(against_new, "You divided by the new solder. What is the whole joint?"),
            Mistake(37, "That was the old solder. It is thinned out now."),
            Mistake(37 / 2, "Half and half? Look at how much there is of each."),
        ],
        hint="Lead in mg first, then over the mass of both solders.",
    )


@question(points=2)
def bismuth_left(draw: Draw) -> Choice:
    where = draw.pick(
        [
            "a supply beside a warm heat sink",
            "a power amplifier that runs at 90 °C",
            "a lamp driver that gets hot to the touch",
        ]
    )
    clean = (
        "Braid all of it off; flood the pads with the solder that the new joint gets and braid "
        "that off too, twice or more; only then solder anew"
    )
    leave = (
        "Leave it as it is: one solder melts at 138 °C, the other at 183 °C, and both are hot "
        "enough"
    )
    thin = "Add leaded solder until the joint shines"
    boil = "Turn the iron up to 400 °C to drive the bismuth out"
    return Choice(
        prompt="You took a chip off a leaded board with low-melt bismuth alloy and fitted a new "
        f"one. The pads were only wiped once. The board goes into {where}. What now?",
        options=draw.shuffle([clean, leave, thin, boil]),
        answer=clean,
        mistakes=[
            Mistake(
                leave,
                "The mixture melts far below both. What does a live part do when its joints go "
                "soft?",
                hazard="heat and fire",
            ),
            Mistake(
                thin,
                "A little bismuth with lead is enough for the low-melting phase.",
                hazard="heat and fire",
            ),
            Mistake(
                boil,
                "Metals of solder do not boil off at an iron: the mixture stays, the pads go.",
                hazard="heat and fire",
            ),
        ],
    )


@question(points=2)
def joint_on_a_plane(draw: Draw) -> Choice:
    return what_next(draw)


@question(points=3)
def ways_out(draw: Draw) -> Table:
    lytic = draw.pick(["C3: radial, 1000 µF, plated holes", "C40: radial, 100 µF, plated holes"])
    pads = draw.pick(["Old solder on flat pads of U9", "Old solder on the pads of R7, chip"])
    chip = draw.pick(["U5: 28 gull-wing leads", "U2: 20 gull-wing leads"])
    grid = ("U1: ball grid, 144 balls", "U1: ball grid, 256 balls")
    rows = ((lytic, VACUUM), (pads, BRAID), (chip, LOW_MELT), (draw.pick(grid), LEAVE))
    return Table(
        prompt="You have a desoldering station, a pump, an iron, braid and low-melt alloy. You "
        "have no hot air and no preheater. Choose the way for each.",
        cells={label: {"way": _way(right)} for label, right in draw.shuffle(rows)},
    )


def _way(right: str) -> Choice:
    hints = {
        VACUUM: "Can capillary pull clear a hole through the board?",
        BRAID: "Flat copper: what soaks solder up from it?",
        LOW_MELT: "All leads must be liquid at once. What stays liquid long enough?",
        LEAVE: "Where are its joints? Can any of your tools reach them?",
    }
    return Choice(options=WAYS, answer=right, hint=hints[right])


@question(points=2)
def before_heat(draw: Draw) -> Order:
    steps = (PLUG, EMPTY, MEASURE, BATTERY, TOOL)
    return Order(
        prompt="The 1984 keyboard has a mains supply and a memory battery soldered to its board. "
        "Put the steps in order, first one first.",
        steps=steps,
        shown=draw.shuffle(steps),
        mistakes=[
            Mistake(
                lambda steps: any(before(TOOL, one)(steps) for one in (PLUG, EMPTY, MEASURE)),
                "You heat and touch a board that may still be charged.",
                hazard="stored charge",
            ),
            Mistake(
                before(TOOL, BATTERY),
                "A heated cell bursts, and its current runs through what you touch.",
                hazard="batteries",
            ),
            Mistake(
                before(EMPTY, PLUG),
                "You put a resistor and your hands into a set on the mains.",
                hazard="mains",
            ),
            Mistake(
                before(MEASURE, PLUG),
                "You put your probes and your hands into a set on the mains.",
                hazard="mains",
            ),
            Mistake(
                lambda steps: any(before(BATTERY, one)(steps) for one in (PLUG, EMPTY, MEASURE)),
                "You unsolder it by hand. Is the board empty yet?",
                hazard="stored charge",
            ),
            Mistake(before(MEASURE, EMPTY), "What does the last measurement before work prove?"),
        ],
    )


@question(points=2)
def flux_off(draw: Draw) -> Choice:
    what = draw.pick(["rosin flux", "no-clean flux"])
    cold = "Iron off, in its stand and cold; then brush with alcohol, blot, let it dry"
    hot = "Wipe with alcohol at once, beside the hot iron: warm flux comes off best of all"
    blow = "Alcohol first, then hot air, so that it dries in a minute"
    power = "Alcohol first, then power: the set warms itself dry"
    return Choice(
        prompt=f"The last joint is made. Brown {what} lies around it. How do you take it off?",
        options=draw.shuffle([cold, hot, blow, power]),
        answer=cold,
        mistakes=[
            Mistake(
                hot,
                "Alcohol gives off vapour that lights from 12 °C on. What stands beside it?",
                hazard="solvents",
            ),
            Mistake(
                blow,
                "You drive vapour through a heater that glows.",
                hazard="heat and fire",
            ),
            Mistake(
                power,
                "Wet boards leak current, and one spark is enough for the vapour.",
                hazard="solvents",
            ),
        ],
    )


@question(points=1)
def which_flux(draw: Draw) -> Choice:
    right = draw.pick(["ROL0", "REL0", "ROL1", "REL1"])
    strong, plumber, organic = draw.pick([("ROH1", "INH1", "ORM1"), ("ROM1", "INM1", "ORH1")])
    return Choice(
        prompt="Four bottles of flux. The board gets no wash afterwards. Which one do you take?",
        options=draw.shuffle([right, strong, plumber, organic]),
        answer=right,
        mistakes=[
            Mistake(strong, "Third letter: how active may it be when it stays on the board?"),
            Mistake(plumber, "First two letters: such flux is for pipes."),
            Mistake(organic, "First two letters, then the third. Must this one be washed off?"),
        ],
    )


@question(points=2)
def salt(draw: Draw) -> Number:
    micrograms, length, width, answer, one_face = draw.pick(
        [
            (234, 15, 6, 1.3, 2.6),
            (120, 10, 8, 0.75, 1.5),
            (300, 12, 10, 1.25, 2.5),
            (84, 10, 6, 0.7, 1.4),
            (192, 12, 8, 1.0, 2.0),
            (330, 15, 10, 1.1, 2.2),
            (90, 10, 5, 0.9, 1.8),
            (176, 11, 5, 1.6, 3.2),
            (480, 20, 10, 1.2, 2.4),
            (224, 16, 5, 1.4, 2.8),
            (255, 15, 10, 0.85, 1.7),
            (152, 10, 8, 0.95, 1.9),
        ]
    )
    return Number(
        unit="",
        answer=answer,
        tolerance=0.01,
        prompt=f"A cleanliness tester finds {micrograms}{NBSP}µg of salt, as NaCl, on a board of "
        f"{length} × {width}{NBSP}cm. It washed both faces. How many µg are that on each cm²? "
        "Type the number only.",
        mistakes=[Mistake(one_face, "How many faces did the tester wash?")],
        hint="Salt over the washed area.",
    )
