"""The exercise of lesson 00: decisions at the bench before anything is touched.

Answers are typed in by hand. Sources: 60 V dc is the steady limit of energy class 1 in
IEC 62368-1; a bare three-figure number is pF on a ceramic disc (IEC 60062) and µF on an aluminium
can (makers' marking); the order of work is common practice.
"""

from __future__ import annotations

from repairlib.core.draws import Draw
from repairlib.core.quantity import NBSP
from repairlib.learn.arranging import Order, before
from repairlib.learn.asking import practice_question, question
from repairlib.learn.question import Choice, Mistake, Number
from repairlib.learn.questions.pictures import part


@practice_question
def value_code(draw: Draw) -> Number:
    marking, answer = draw.pick(
        [("103", 10e-9), ("224", 220e-9), ("472", 4.7e-9), ("681", 680e-12), ("154", 150e-9)]
    )
    return Number(
        prompt="What is the value of this part? Try it without the quick check.",
        unit="F",
        answer=answer,
        picture=lambda: part("disc", marking),
        hint="Two figures, then the number of zeros. All in pF.",
    )


@practice_question
def letter_code(draw: Draw) -> Choice:
    letter, answer = draw.pick([("J", "±5 %"), ("K", "±10 %"), ("M", "±20 %")])
    return Choice(
        prompt=f"A film capacitor is marked `333{letter}`. Type it into the quick check above. "
        "How far off may a good part be?",
        options=("±5 %", "±10 %", "±20 %"),
        answer=answer,
        hint="Look at the sign ± in the answer of the quick check.",
    )


@practice_question
def may_you_touch(draw: Draw) -> Choice:
    minutes = draw.pick([1, 2, 5])
    touch = "Yes, that is long enough"
    twice = (
        "Only when a meter that was just tried shows next to nothing, and again a minute later. "
        "Above 60 V dc you leave it to a qualified person"
    )
    once = "Yes, as soon as you have measured across it"
    return Choice(
        prompt=f"The plug has been out for {minutes} min. A large capacitor stands in the supply. "
        "May you touch its leads?",
        options=(touch, twice, once),
        answer=twice,
        mistakes=[
            Mistake(
                touch,
                "Nobody knows that without measuring.",
                hazard="stored charge",
            ),
            Mistake(
                once,
                "And if the meter shows 40 V, or 0 V because its battery is flat?",
                hazard="stored charge",
            ),
        ],
    )


@question(points=1)
def opening_the_case(draw: Draw) -> Choice:
    thing = draw.pick(["desk radio", "keyboard instrument", "document scanner"])
    plug_out = "Pull the plug, lay it where you can see it, and only then undo the screws"
    switch_is_off = "Undo the screws: the switch is off"
    fuse_out = "Take out the fuse, leave the plug in, then undo the screws"
    gloves = "Put on gloves that are made for the mains, leave the plug in, then undo the screws"
    still_live = "With the plug in, some parts inside are live. What still joins them to the wall?"
    return Choice(
        prompt=f"A {thing} lies on the bench. Its mains switch is off, its plug is in the wall. "
        "You want to open it. What do you do?",
        options=draw.shuffle([plug_out, switch_is_off, fuse_out, gloves]),
        answer=plug_out,
        mistakes=[
            Mistake(switch_is_off, still_live, hazard="mains"),
            Mistake(fuse_out, still_live, hazard="mains"),
            Mistake(gloves, still_live, hazard="mains"),
        ],
    )


@question(points=2)
def falling_voltage(draw: Draw) -> Number:
    readings, answer = draw.pick(
        [
            (((0, 310), (20, 150), (40, 73), (60, 35), (80, 17)), 60),
            (((0, 325), (30, 199), (60, 121), (90, 74), (120, 45)), 120),
            (((0, 150), (15, 90), (30, 54), (45, 33), (60, 20)), 30),
        ]
    )
    listed = ", ".join(f"{volt}{NBSP}V after {second}{NBSP}s" for second, volt in readings)
    return Number(
        unit="s",
        answer=answer,
        prompt="A qualified person has clipped the meter across the main capacitor of a supply. "
        f"The plug is out. The meter shows: {listed}.\n\nThese lessons stop above the limit for "
        "touchable steady dc voltage. From which of these times on is the capacitor below it?",
        mistakes=[
            Mistake(
                lambda seconds: 0 <= seconds < answer,
                "At this time the capacitor is still above the limit. Look the limit up again.",
                hazard="stored charge",
            ),
            Mistake(
                lambda seconds: seconds > answer,
                "It is below the limit then, but it was so at an earlier reading too.",
            ),
        ],
    )


@question(points=2)
def after_the_phone_call(draw: Draw) -> Choice:
    minutes = draw.pick([10, 5, 20])
    measure = "Measure across it again before your fingers come near"
    work_on = "Work on: it was at 0 V"
    wait = f"Wait {minutes} more minutes, so that the rest can run off too, then work on"
    short = "Lay a screwdriver across it, then work on"
    return Choice(
        prompt="You discharged a large capacitor through its resistor and the meter showed 0 V. "
        f"Then the telephone rang. {minutes} minutes later you are back. What do you do first?",
        options=draw.shuffle([measure, work_on, wait, short]),
        answer=measure,
        mistakes=[
            Mistake(
                work_on,
                "A large capacitor may win back part of its charge by itself.",
                hazard="stored charge",
            ),
            Mistake(
                wait,
                "Time does not help here. Charge comes back while you wait.",
                hazard="stored charge",
            ),
            Mistake(
                short,
                "A bare short makes an arc, throws metal and tells you nothing.",
                hazard="stored charge",
            ),
        ],
    )


@question(points=3)
def proving_dead(draw: Draw) -> Order:
    plug = "Pull the plug and keep it where you can see it"
    wait = "Wait some minutes with your hands away, while most of the charge runs off"
    discharge = "Discharge the capacitor through the resistor made for it"
    measure = (
        "Try the meter on a known source, then measure across the capacitor until it shows next to "
        "nothing"
    )
    check = (
        "Try the meter on the known source once more, wait a minute, and measure again that it "
        "shows next to nothing"
    )
    work = "Take the board in your hands"
    steps = (plug, wait, discharge, measure, check, work)
    return Order(
        prompt="A keyboard instrument has its mains side closed under a cover. On the open board a "
        "large capacitor holds 35 V dc. It has to be made safe. Put the steps in order, first one "
        "first.",
        steps=steps,
        shown=draw.shuffle(steps),
        mistakes=[
            Mistake(
                before(work, measure),
                "You touch the board before you know that it is dead.",
                hazard="stored charge",
            ),
            Mistake(
                lambda order: order[0] != plug,
                "Something is done while the supply is still on the mains.",
                hazard="mains",
            ),
            Mistake(
                before(work, check),
                "A meter that died in between also shows 0 V. When would you notice?",
                hazard="stored charge",
            ),
            Mistake(
                before(check, measure),
                "Once more means after something. After what?",
            ),
            Mistake(
                before(measure, discharge),
                "What is the measurement to prove?",
            ),
        ],
    )


@question(points=1)
def one_hand(draw: Draw) -> Choice:
    volts = draw.pick([36, 24, 48])
    clipped = (
        "Clip the black lead on before you switch on, then probe with one hand, the other behind "
        "your back"
    )
    chassis = "Hold the metal chassis with the other hand, so that nothing slips"
    both = "One probe in each hand, elbows resting on the chassis"
    ring = (
        "Probe with one hand and hold the board by its edge connector with the other, so that it "
        "cannot slip"
    )
    path = "What path does a current find through you if something is wrong?"
    return Choice(
        prompt=f"A supply must be on while you measure its {volts}{NBSP}V output. Its mains side "
        "lies under a cover on the same board. How do you hold the probes?",
        options=draw.shuffle([clipped, chassis, both, ring]),
        answer=clipped,
        mistakes=[
            Mistake(chassis, path, hazard="mains"),
            Mistake(both, path, hazard="mains"),
            Mistake(
                ring,
                "Two hands on one circuit close a path. Keep only one near it.",
                hazard="mains",
            ),
        ],
    )


@question(points=1)
def handing_over(draw: Draw) -> Choice:
    defer = draw.pick(
        [
            "A supply blows its mains fuse again and again",
            "A display with a picture tube is dim",
            "A microwave oven hums and does not heat",
            "The mains dimmer of a lamp has burnt",
            "A flash unit whistles and does not fire",
            "A valve amplifier has lost its 280 V",
            "The heater of a fan heater stays cold",
            "The 325 V capacitor of a switching supply bulges",
            "A laser printer arcs beside its drum",
            "The primary winding of a mains transformer smells burnt",
            "An induction hob trips its fuse as soon as it is switched on",
            "The motor of a washing machine hums and does not turn",
            "A neon sign flickers on one side",
            "An oil radiator does not switch off any more",
            "The lamp of a projector no longer strikes its arc",
            "An insect killer with a high-voltage grid has gone quiet",
        ]
    )
    ours = [
        "A scanner that is unplugged has a torn data socket",
        "A keyboard that was proved dead needs its 16 V capacitors changed",
        "A label maker's inlet is burnt; its 12 V adapter is unplugged",
    ]
    return Choice(
        prompt="Four jobs come to the community bench. Which one do you hand on, unopened, to a "
        "qualified person?",
        options=draw.shuffle([defer, *ours]),
        answer=defer,
        hint="That one runs on low voltage and is dead. Look for the mains side, or for kilovolts.",
    )


@question(points=2)
def two_readings(draw: Draw) -> Number:
    body, marking, answer, other = draw.pick(
        [
            ("disc", "100", 10e-12, 100e-6),
            ("can", "220\n16V", 220e-6, 22e-12),
            ("can", "100\n25V", 100e-6, 10e-12),
            ("disc", "220", 22e-12, 220e-6),
            ("disc", "330", 33e-12, 330e-6),
            ("can", "330\n10V", 330e-6, 33e-12),
            ("disc", "470", 47e-12, 470e-6),
            ("can", "470\n6.3V", 470e-6, 47e-12),
            ("disc", "150", 15e-12, 150e-6),
            ("can", "150\n35V", 150e-6, 15e-12),
            ("disc", "680", 68e-12, 680e-6),
            ("can", "680\n10V", 680e-6, 68e-12),
            ("disc", "560", 56e-12, 560e-6),
            ("can", "560\n6.3V", 560e-6, 56e-12),
        ]
    )
    figures = marking.split("\n")[0]
    return Number(
        unit="F",
        answer=answer,
        prompt=f"The quick check gives more than one reading for `{figures}`: as a code in pF, "
        "and as a plain number of µF. The part is the one in the picture. "
        "Which capacitance do you write down?",
        picture=lambda: part(body, marking),
        hint="Which body is in the picture, and how are such parts marked?",
        mistakes=[
            Mistake(other, "That is how another kind of part is marked. Look at the body again."),
            Mistake(
                lambda farad: abs(farad / (answer * 10) - 1) < 0.01 and body == "disc",
                "The third figure of a code is no figure of the value. What does it count?",
            ),
        ],
    )


WITH_UNIT = "Type the unit too, in the same box"
NO_COMMA = "Type it without the comma, with a prefix if need be"
NUMBER_ONLY = "Type the number alone, without a unit"
OTHER_UNIT = "Type the unit of what was asked for"


# What was typed, what is asked for, what should be typed instead.
TYPED_ANEW = (
    ("1,500 pF", "a capacitance", "1500 pF"),
    ("33", "a capacitance", "33 nF"),
    ("9 V", "a plain number of cells", "9"),
    ("15 mA", "a voltage", "15 mV"),
    ("2,200 µH", "an inductance", "2.2 mH"),
    ("68", "an inductance", "68 µH"),
    ("1,200 Ω", "a resistance", "1.2 kΩ"),
    ("330 F", "a resistance", "330 Ω"),
    ("24 pcs", "a plain number of screws", "24"),
    ("6,800 pF", "a capacitance", "6.8 nF"),
    ("90 V", "a time", "90 s"),
    ("12,000 pF", "a capacitance", "12 nF"),
)
# What was meant by it in words, and what is no better.
MEANT = {
    "1,500 pF": ("fifteen hundred pF", "1.500 pF", "1500", "1500 pV"),
    "33": ("thirty-three nF", "33.0", "33 nH", "33 pF"),
    "9 V": ("nine cells", "9 F", "9 mV", "9 pcs"),
    "15 mA": ("fifteen mV", "15 V", "15 mΩ", "0.15 A"),
    "2,200 µH": ("twenty-two hundred µH", "2.2 µH", "2200", "2.2 mF"),
    "68": ("sixty-eight µH", "68.0", "68 µF", "68 mH"),
    "1,200 Ω": ("twelve hundred Ω", "1.2 Ω", "1.200 Ω", "1.2 kF"),
    "330 F": ("three hundred and thirty Ω", "330 V", "330 kΩ", "330 pF"),
    "24 pcs": ("two dozen screws", "24 m", "24 V", "2 dozen"),
    "6,800 pF": ("sixty-eight hundred pF", "6.8 pF", "6800", "6.8 nH"),
    "90 V": ("a minute and a half", "90 Ω", "90 min", "90 ms"),
    "12,000 pF": ("twelve thousand pF", "12 pF", "12", "12 nA"),
}


@question(points=1)
def cannot_be_read(draw: Draw) -> Choice:
    typed, asked, right = draw.pick(
        [
            ("47", "a capacitance", WITH_UNIT),
            ("330", "a capacitance", WITH_UNIT),
            ("10", "an inductance", WITH_UNIT),
            ("1,000 pF", "a capacitance", NO_COMMA),
            ("2,200 µF", "a capacitance", NO_COMMA),
            ("12 V", "a plain number of parts", NUMBER_ONLY),
            ("8 h", "a plain number of hours", NUMBER_ONLY),
            ("25 A", "a voltage", OTHER_UNIT),
            ("47 kΩ", "a capacitance", OTHER_UNIT),
            *TYPED_ANEW,
        ]
    )
    says = f"You typed `{typed}` and the form says that it cannot be read yet."
    asks = f"A question asks for {asked}. {says} What do you do?"
    options = [WITH_UNIT, NO_COMMA, NUMBER_ONLY, OTHER_UNIT]
    if typed in MEANT:
        meant, *others = MEANT[typed]
        asks = f"A question asks for {asked}. You mean {meant}. {says} What do you type instead?"
        options = [right, *others]
    return Choice(
        prompt=asks,
        options=draw.shuffle(options),
        answer=right,
        hint="Read the line under the box: it says what is wrong and what is accepted.",
    )
