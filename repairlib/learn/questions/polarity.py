"""The exercise of lesson 04: which end a mark shows, and whether a part may go in like that.

Answers are typed in by hand. Sources: black mark of a can from Panasonic FC and FN SMD; bar of a
tantalum chip from Panasonic TEH; plus sign of a dipped tantalum from AVX TAP and TEP; band of a
diode from a Navy training handbook. Stripe, arrows, polymer parts, LEDs and lead lengths are from
memory; Zener, rails, bipolar places and the order of work are common practice. The drawn places to
judge are in `polarity_judgements`.
"""

from __future__ import annotations

from repairlib.core.draws import Draw
from repairlib.core.quantity import NBSP
from repairlib.learn.arranging import Order, Table, before
from repairlib.learn.asking import practice_question, question
from repairlib.learn.question import Choice, Mistake
from repairlib.learn.questions.pictures import part
from repairlib.learn.questions.polarity_judgements import (
    ALUMINIUM,
    AT_THE_MARK,
    OTHERS,
    TANTALUM,
    above_its_place,
    judgement,
)

POSITIVE, NEGATIVE, CATHODE, ANODE = "positive", "negative", "cathode", "anode"
NOT_FIXED = "the mark does not tell"
ENDS = (POSITIVE, NEGATIVE, CATHODE, ANODE, NOT_FIXED)
FLAT_CHIPS = (("polymer chip", "330\n6"), ("moulded tantalum", "107\nC"))
CANS = (
    ("radial", "100µF\n25V"),
    ("axial", "33µF 25V"),
    ("can", "47\n16V"),
    ("polymer can", "560\n4"),
)


@question(points=4)
def left_ends(draw: Draw) -> Table:
    chosen = draw.shuffle(
        [
            (draw.pick(FLAT_CHIPS), POSITIVE),
            (draw.pick(CANS), NEGATIVE),
            (draw.pick([("diode", ""), ("zener", "5V1")]), CATHODE),
            draw.pick([(("dipped tantalum", "10\n25"), POSITIVE), (("chip led", ""), NOT_FIXED)]),
        ]
    )
    parts = [(*drawn, letter) for letter, (drawn, _) in zip("ABCD", chosen, strict=True)]
    return Table(
        prompt="Four new parts lie on the bench. Each has a mark at its left end. What is the "
        "left end of each part?",
        picture=lambda: _row(parts),
        cells={
            letter: {"its left end": _end(body, end)}
            for letter, ((body, _), end) in zip("ABCD", chosen, strict=True)
        },
    )


def _end(body: str, answer: str) -> Choice:
    if answer in (POSITIVE, NEGATIVE):
        opposite = NEGATIVE if answer == POSITIVE else POSITIVE
        turned = "A bar or stripe means opposite things on two kinds of body. Which body is this?"
        mistakes = [Mistake(opposite, turned, hazard="heat and fire")]
    elif answer == CATHODE:
        read = "A Zener works in reverse, but what does its band show?"
        mistakes = [Mistake(ANODE, read if body == "zener" else "What does the band show?")]
    else:
        trusted = "You trust this mark. Does every maker of chip LEDs mean the same by it?"
        mistakes = [Mistake(end, trusted) for end in (CATHODE, ANODE, POSITIVE, NEGATIVE)]
    return Choice(
        options=ENDS, answer=answer, mistakes=mistakes, hint="First the body, then its mark."
    )


@question(points=1)
def judge_aluminium(draw: Draw) -> Choice:
    return judgement(draw, ALUMINIUM, "flying leads and eyes")


@question(points=2)
def judge_tantalum(draw: Draw) -> Choice:
    return judgement(draw, TANTALUM, "heat and fire")


@question(points=1)
def judge_others(draw: Draw) -> Choice:
    return judgement(draw, OTHERS, "heat and fire")


@question(points=2)
def cut_leads(draw: Draw) -> Choice:
    stripe_right = draw.pick([True, False])
    value = draw.pick(["47µF\n16V", "100µF\n25V", "220µF\n16V"])
    left, right = "The left lead", "The right lead"
    either = "Either lead: this part has no polarity"
    nobody = "Nobody can tell any more: throw it away"
    at_stripe, answer = (right, left) if stripe_right else (left, right)
    return Choice(
        prompt="This part comes from a scrap board and measures well. Its leads were cut long "
        "ago. Which lead goes into the pad with the plus?",
        options=(left, right, either, nobody),
        answer=answer,
        picture=lambda: part("radial", value, mark="cut leads", flip=stripe_right),
        mistakes=[
            Mistake(
                at_stripe,
                "You went by the length of the leads, or read the stripe the wrong way. Which of "
                "the two can somebody have changed?",
                hazard="flying leads and eyes",
            ),
            Mistake(
                either,
                "Look at its sleeve again. A polar part that goes in by chance can burst.",
                hazard="flying leads and eyes",
            ),
            Mistake(nobody, "One mark is still there, and it cannot be cut off. Which one?"),
        ],
    )


@question(points=2)
def zener(draw: Draw) -> Choice:
    sign, volts = draw.pick([("+", "5.1"), ("−", "5.1"), ("+", "9.1"), ("−", "9.1")])
    rail = f"{sign}{volts}{NBSP}V"
    to_rail, to_ground = f"To the {rail} rail", "To ground"
    either = "To either side: a Zener conducts both ways"
    by_number = "That cannot be known without the type number"
    answer, other = (to_rail, to_ground) if sign == "+" else (to_ground, to_rail)
    return Choice(
        prompt=f"In the keyboard's supply a Zener diode holds a rail at {rail}. It sits between "
        "that rail and ground. Its band has to face which side?",
        options=draw.shuffle([to_rail, to_ground, either, by_number]),
        answer=answer,
        picture=lambda: part("zener", f"{volts}V"),
        mistakes=[
            Mistake(
                other,
                "You put it like a plain diode that is to conduct. It would hold 0.7 V. Which end "
                "is the band, and which of the two sides is more positive?",
                hazard="heat and fire",
            ),
            Mistake(
                either,
                "It does, but at two very different voltages. Which one is wanted?",
                hazard="heat and fire",
            ),
            Mistake(by_number, "The band shows the same end on every diode. Which end?"),
        ],
    )


# What is known of a chip LED, and which end the mark is then at. Makers mark either end.
NO_DATA = "This new chip LED has lost its bag, so there is no data sheet."
LED_FACTS = (
    (NO_DATA, ""),
    ("The data sheet of this chip LED draws the mark at the cathode.", "K"),
    ("The data sheet of this chip LED draws the mark at the anode.", "A"),
    ("On the diode range it glowed with the red probe at the mark, and not the other way.", "A"),
    ("On the diode range it glowed with the black probe at the mark, and not the other way.", "K"),
)
PLAIN_END = (
    ("The data sheet of this chip LED draws the anode at the end without a mark.", "A"),
    ("The data sheet of this chip LED draws the cathode at the end without a mark.", "K"),
    ("On the diode range it glowed with the red probe at the end without a mark only.", "A"),
    ("On the diode range it glowed with the black probe at the end without a mark only.", "K"),
)


@question(points=1)
def chip_led(draw: Draw) -> Choice:
    mark = draw.pick(["dot", "notch", "green mark"])
    known, told = draw.pick(LED_FACTS + PLAIN_END)
    is_at = f"the {mark} is at"
    if (known, told) in PLAIN_END:
        is_at = f"the end without the {mark} is"
    meter = "It takes the diode range: when it glows, the black probe is on K"
    swapped = "It takes the diode range: when it glows, the red probe is on K"
    at_k = f"No further test: the {mark} is at K, as it always is with this mark"
    at_a = f"No further test: the {mark} is at A, as it always is with this mark"
    if told:
        at_k, at_a = (f"No further test: on this part {is_at} {pole}" for pole in "KA")
    trusted = "You trust this mark. Would another maker mean the same by it?"
    read = "Current flows out of the red probe and in at the anode. Read the first sentence again."
    return Choice(
        prompt=f"{known} The board shows K at one pad. How do you find the K of the part?",
        options=draw.shuffle([meter, swapped, at_k, at_a]),
        answer={"": meter, "K": at_k, "A": at_a}[told],
        picture=lambda: part("chip led", mark=mark),
        mistakes=[
            *[
                Mistake(option, read if told else trusted)
                for option, pole in ((at_k, "K"), (at_a, "A"))
                if pole != told
            ],
            *([Mistake(meter, "Is it not known already?")] if told else []),
            Mistake(swapped, "Current flows out of the red probe. At which end does it go in?"),
        ],
    )


@question(points=2)
def which_pad(draw: Draw) -> Choice:
    ground, other = draw.pick([("pad 2", "pad 1"), ("pad 1", "pad 2")])
    rail = draw.pick([f"+12{NBSP}V", f"−12{NBSP}V", f"−5{NBSP}V"])
    answer, wrong = (other, ground) if rail.startswith("+") else (ground, other)
    either, powered = "Into either pad", "Nobody can tell: fit it and measure under power"
    readings = {
        ground: f"{ground} to the ground of the supply, 0.2{NBSP}Ω",
        other: f"{other} to the output of the {rail} regulator, 0.1{NBSP}Ω",
    }
    said = "; ".join(readings[pad] for pad in sorted(readings))
    guess = "That is fitting on a guess. What do the two readings already say?"
    return Choice(
        prompt="The print beside C12 in the keyboard's supply is scraped off. Power off and proved "
        f"dead, the meter finds: {said}.\n\nInto which pad goes the lead at the plus sign of this "
        "new part?",
        options=("Into pad 1", "Into pad 2", either, powered),
        answer=f"Into {answer}",
        picture=lambda: part("dipped tantalum", "10\n35"),
        mistakes=[
            Mistake(
                f"Into {wrong}",
                "That would be reversed, and a reversed tantalum burns. Which of the two is more "
                "positive, ground or this rail?",
                hazard="heat and fire",
            ),
            Mistake(either, guess, hazard="heat and fire"),
            Mistake(powered, guess, hazard="heat and fire"),
        ],
    )


@question(points=1)
def bipolar_place(draw: Draw) -> Choice:
    value, volts, twice = draw.pick([("4.7", 50, 100), ("10", 16, 35), ("2.2", 25, 50)])
    order = "Leave the place empty and order a part that is marked NP or BP"
    left = "Fit it, stripe to the left as drawn"
    either = "Fit it: NP says that either way round will do"
    higher = f"Fit a polar one for {twice}{NBSP}V: it stands more"
    asked = "NP is about the part that belongs there. Is the part above it one of those?"
    return Choice(
        prompt=f"The board wants {value}{NBSP}µF {volts}{NBSP}V here. The part above the place has "
        "the right value and voltage, and it is the only one in the drawer. What do you do?",
        options=draw.shuffle([order, left, either, higher]),
        answer=order,
        picture=lambda: above_its_place("radial-stripe", "NP or BP", AT_THE_MARK),
        mistakes=[
            Mistake(
                left,
                "In this place the voltage changes its direction. What does a polar part do then?",
                hazard="flying leads and eyes",
            ),
            Mistake(either, asked, hazard="flying leads and eyes"),
            Mistake(
                higher,
                "A higher rating is for the right direction only. What about the other one?",
                hazard="flying leads and eyes",
            ),
        ],
    )


DEAD = "Pull the plug, discharge, and measure that the board is dead"
LOOK = "Clean the place and look with a magnifier: no plus, no minus, no bar"
DIAGRAM = "Find the place in the circuit diagram and write down which pad must be plus"
METER = "Prove with the meter that this pad really goes to that rail"
FIT = "Fit the part, its plus at the pad that you proved"
POWER = "Power up from a current-limited supply, your face turned away"
STEPS = (DEAD, LOOK, DIAGRAM, METER, FIT, POWER)


@question(points=3)
def mark_is_gone(draw: Draw) -> Order:
    guess = "That is fitting on a guess. What has to be known before the part goes in?"
    live = "What must be sure before a probe or an iron comes near the board?"
    powered = "You would work on a board that is under power. What belongs at the very end?"
    return Order(
        prompt="A network switch has lost a chip tantalum, and with it the print on the board. "
        "Put the work in order.",
        steps=STEPS,
        shown=draw.shuffle(STEPS),
        mistakes=[
            *[
                Mistake(before(step, DEAD), live, hazard="stored charge")
                for step in (LOOK, METER, FIT)
            ],
            *[
                Mistake(before(FIT, step), guess, hazard="heat and fire")
                for step in (DIAGRAM, METER)
            ],
            Mistake(lambda order: order[-1] != POWER, powered, hazard="heat and fire"),
            Mistake(before(METER, DIAGRAM), "Which rail is the meter to look for?"),
            Mistake(before(DIAGRAM, LOOK), "Perhaps the answer stands on the board itself."),
        ],
    )


@practice_question
def practise_plus(draw: Draw) -> Choice:
    body, marking, mark_is_plus = draw.pick(
        [
            ("radial", "10µF\n50V", False),
            ("axial", "47µF 25V", False),
            ("can", "22\n35V", False),
            ("moulded tantalum", "226\nA", True),
            ("dipped tantalum", "1\n35", True),
        ]
    )
    flip = draw.pick([True, False])
    left, right = "the left end", "the right end"
    answer, other = (right, left) if flip == mark_is_plus else (left, right)
    return Choice(
        prompt="Which end is positive?",
        options=(left, right),
        answer=answer,
        picture=lambda: part(body, marking, flip=flip),
        mistakes=[
            Mistake(
                other,
                "Look at the body first. What does the mark show on such a body?",
                hazard="heat and fire",
            )
        ],
    )


@practice_question
def practise_judgement(draw: Draw) -> Choice:
    return judgement(draw, ALUMINIUM + TANTALUM, "heat and fire")


@practice_question
def practise_pin_one(draw: Draw) -> Choice:
    flip, mark = draw.pick([True, False]), draw.pick(["notch", "dot"])
    return Choice(
        prompt="The chip is seen from above. At which corner is its pin 1?",
        options=("upper left", "upper right", "lower left", "lower right"),
        answer="upper right" if flip else "lower left",
        picture=lambda: part("dip", mark=mark, flip=flip),
        hint="Turn the notch to your left. Pin 1 is then the first one below it.",
    )


def _row(parts):
    from repairlib.show import draw_row

    return draw_row(*parts)
