"""The exercise of lesson 07: from a parts list to parts that are safe to fit.

Answers are typed in by hand. Sources: standard rated voltages from the Lelon RGA data sheet; E6
values from IEC 60063; what ages, what is kept and the order of work are common practice; the
can size 10 × 20 mm of 1000 µF 25 V is from memory.
"""

from __future__ import annotations

from repairlib.core.draws import Draw
from repairlib.core.quantity import NBSP
from repairlib.learn.arranging import Order, Table, before
from repairlib.learn.asking import practice_question, question
from repairlib.learn.question import Choice, Mistake, Number, Question
from repairlib.learn.questions.pictures import part
from repairlib.learn.questions.recap_judgements import tantalum_rating, worn_or_not

REPLACE = "Replace it: it ages"
STAYS = "Leave it: nothing in it dries out"
JUDGE = "Leave it unless it is shorted, burnt or named by the service notes"
REVERSED = "Where would the plus of the new part end up? A reversed part can burst."
TOO_LOW = "This rating is below the old one. The part can burst."
POLAR, BIPOLAR = "polar", "bipolar"


@practice_question
def how_many(draw: Draw) -> Number:
    written, answer = draw.pick(
        [("C1-C4, C7", 5), ("C10~C12, C15, C16", 5), ("C3/4", 2), ("C20-C23, C30", 5)]
    )
    return Number(
        prompt=f"A line begins with `{written}`. How many capacitors must you order for it?",
        unit="",
        answer=answer,
        hint="Write the references down one by one. Both ends of a range count.",
    )


@practice_question
def old_way_to_write(draw: Draw) -> Number:
    written, answer = draw.pick([("10/16", 16), ("47/25", 25), ("1000/10", 10), ("4.7/50", 50)])
    return Number(
        prompt=f"An electrolytic is listed as `{written}`. What is its rated voltage?",
        unit="V",
        answer=answer,
        hint="The capacitance in µF comes first. What stands behind the stroke?",
    )


@practice_question
def mains_part(draw: Draw) -> Choice:
    value = draw.pick(["0.1", "0.047", "0.22"])
    hand_on = "It sits on the mains: a qualified person fits the same safety class"
    film = f"Fit a {value} µF 400 V film capacitor from the drawer"
    return Choice(
        prompt=f"The list says `{value}µF 250VAC X2`. What do you do?",
        options=draw.shuffle([hand_on, film]),
        answer=hand_on,
        mistakes=[
            Mistake(
                film,
                "A part without that safety class can burn when it fails on the mains.",
                hazard="mains",
            )
        ],
    )


@practice_question
def how_many_to_order(draw: Draw) -> Number:
    boards, each, answer = draw.pick([(12, 4, 53), (10, 2, 22), (8, 1, 9), (5, 3, 17)])
    return Number(
        prompt=f"A class mends {boards} boards, each with {each} of one part. With one spare for "
        "each ten, rounded up: how many must come?",
        unit="",
        answer=answer,
        mistakes=[Mistake(boards * each, "That leaves none for a part that is lost or reversed.")],
        hint="First all boards together, then the spares on top.",
    )


WET = (
    "C4: radial can, 47 µF 25 V",
    "C9: radial can, 100 µF 16 V",
    "C17: axial can, 22 µF 40 V",
    "C21: axial can, 470 µF 16 V",
    "C12: radial can, 2.2 µF 50 V",
    "C30: SMD can, 10 µF 16 V",
    "C26: radial can, 1000 µF 25 V",
    "C3: radial can, 4.7 µF 63 V",
    "C15: axial can, 220 µF 10 V",
    "C38: SMD can, 33 µF 10 V",
)
DRY_FILM = ("C5: film box, 100 nF 63 V", "C11: film box, 10 nF 100 V", "C18: film box, 470 nF 63 V")
DRY_DISC = ("C6: ceramic disc, 22 pF", "C14: ceramic disc, 100 nF", "C25: ceramic disc, 1 nF 50 V")
SOLID = ("C8: tantalum bead, 10 µF 16 V", "C22: tantalum bead, 1 µF 35 V")


def _one_of_four(draw: Draw, wet: str) -> Choice:
    film, disc, bead = (draw.pick(bank) for bank in (DRY_FILM, DRY_DISC, SOLID))
    dry = "What in it could dry out or leak?"
    return Choice(
        prompt="A keyboard from 1984 works, but hums. No part of these four is shorted or burnt, "
        "and the service notes name none. Which one does the plan replace, because it ages?",
        options=draw.shuffle([wet, film, disc, bead]),
        answer=wet,
        mistakes=[
            Mistake(film, dry),
            Mistake(disc, dry),
            Mistake(bead, "Is there a liquid in it, or a solid?"),
        ],
    )


@question(points=1)
def what_ages(draw: Draw) -> Choice:
    body, marking, answer = draw.pick(
        [
            ("disc", "104", STAYS),
            ("radial", "10µF\n16V", REPLACE),
            ("axial", "33µF 25V", REPLACE),
            ("film box", "0.1\n63V", STAYS),
            ("dipped tantalum", "10\n16", JUDGE),
            *(("one of four", wet, wet) for wet in WET),
        ]
    )
    if body == "one of four":
        return _one_of_four(draw, answer)
    return Choice(
        prompt="This part sits in a keyboard from 1984 that works, but hums. What does the plan "
        "say about it?",
        options=draw.shuffle([REPLACE, STAYS, JUDGE]),
        answer=answer,
        picture=lambda: part(body, marking),
        hint="Look at the body. Is there a liquid inside, a solid, or a plain insulator?",
    )


@question(points=1)
def next_rating(draw: Draw) -> Number:
    old, answer = draw.pick([(20, 25), (12, 16), (15, 16), (40, 50), (30, 35)])
    return Number(
        unit="V",
        answer=answer,
        tolerance=0,
        prompt=f"An old electrolytic is rated {old}{NBSP}V. That rating is no longer made. "
        "Which is the lowest standard rating that you may fit?",
        mistakes=[
            Mistake(lambda volts: volts < old, TOO_LOW, hazard="heat and fire"),
            Mistake(old, "That is the old rating. Which one is made today?"),
            Mistake(
                lambda volts: volts > answer,
                "Safe for the part, but not the lowest. Look for one in between.",
            ),
        ],
    )


@question(points=1)
def value_no_longer_made(draw: Draw) -> Number:
    old, answer, too_far = draw.pick(
        [
            (250, 220, 330),
            (25, 22, 33),
            (50, 47, 68),
            (30, 33, 22),
            (500, 470, 680),
            (20, 22, 15),
            (16, 15, 22),
            (5, 4.7, 6.8),
            (75, 68, 100),
            (600, 680, 470),
            (300, 330, 220),
            (2000, 2200, 1500),
            (8, 6.8, 10),
            (160, 150, 220),
            (2, 2.2, 1.5),
            (120, 100, 150),
        ]
    )
    return Number(
        unit="F",
        answer=answer * 1e-6,
        prompt=f"The list says {old}{NBSP}µF, ±20{NBSP}%. Which E6 value lies within that "
        "tolerance?",
        mistakes=[
            Mistake(too_far * 1e-6, "Work out how far that is from the old value, in per cent."),
            Mistake(old * 1e-6, "That value is no longer made."),
        ],
        hint="E6 has six figures a decade. Take the nearest on either side, then check the per "
        "cent.",
    )


@question(points=2)
def bipolar_place(draw: Draw) -> Choice:
    value, volts, higher = draw.pick(
        [("10", 16, 35), ("4.7", 50, 100), ("1", 50, 100), ("3.3", 25, 50)]
    )
    right = f"{value} µF {volts} V 105 °C, bipolar"
    polar = f"{value} µF {volts} V 105 °C, polar"
    twice = f"{value} µF {higher} V 105 °C, polar"
    tantalum = f"{value} µF {volts} V, tantalum"
    reverse = "In this place the voltage changes its direction. What does a polar part do then?"
    return Choice(
        prompt=f"The list says `{value}/{volts} Elect. NP`. What do you fit?",
        options=draw.shuffle([right, polar, twice, tantalum]),
        answer=right,
        mistakes=[
            Mistake(option, reverse, hazard="heat and fire") for option in (polar, twice, tantalum)
        ],
    )


@question(points=2)
def stripe(draw: Draw) -> Choice:
    plus, minus = draw.pick([("right", "left"), ("up", "down"), ("down", "up"), ("left", "right")])
    astray = [side for side in ("up", "down", "left", "right") if side not in (plus, minus)]
    lost = "The leads do not lie that way. Find the plus first."
    return Choice(
        prompt="You fit a new radial aluminium electrolytic into the empty place C23. To which "
        "side of the picture does the stripe on its sleeve face?",
        options=draw.shuffle(["up", "down", "left", "right"]),
        answer=minus,
        picture=lambda: _place(plus),
        mistakes=[
            Mistake(plus, REVERSED, hazard="heat and fire"),
            *[Mistake(side, lost) for side in astray],
        ],
    )


@question(points=1)
def missing_rating(draw: Draw) -> Choice:
    microfarad, low = draw.pick([(220, 16), (100, 10), (47, 6.3), (470, 10)])
    read = "Hold the line until the rating is read on the old part or in another manual"
    neighbour = f"Take {low:g} V, because the part next to it has {low:g} V"
    highest = "Take the highest rating in the drawer: a higher rating is better in every place"
    leave = "Leave the old part in: the list does not say enough"
    return Choice(
        prompt=f"The list says `{microfarad}µF Elect.` and no rated voltage. What do you do?",
        options=draw.shuffle([read, neighbour, highest, leave]),
        answer=read,
        mistakes=[
            Mistake(
                neighbour,
                "Nothing says that both places see the same voltage. Too low a rating bursts.",
                hazard="heat and fire",
            ),
            Mistake(highest, "Will that can fit, and what do you write into the plan?"),
            Mistake(leave, "It ages like the others. How can you find out what is missing?"),
        ],
    )


PLUG = "Pull the plug, discharge, and measure that it is dead"
PHOTO = "Photograph the board and note each plus"
SUPPLY = "Renew the capacitors of the power supply"
RAILS = "Test the supply's voltages"
VOICES = "Make it dead again, then renew the low parts of the voice board"
LAST = "Make it dead again, then renew the high parts of the voice board"
STEPS = (PLUG, PHOTO, SUPPLY, RAILS, VOICES, LAST)


@question(points=2)
def order_of_work(draw: Draw) -> Order:
    live = "What must be sure before a finger goes near the board?"
    forgotten = "Once the old part is out, who knows where its plus was?"
    untested = "A wrong supply voltage would go into all the new parts."
    return Order(
        prompt="Put the work on the keyboard in order.",
        steps=STEPS,
        shown=draw.shuffle(STEPS),
        mistakes=[
            *[Mistake(before(step, PLUG), live, hazard="mains") for step in (SUPPLY, VOICES, LAST)],
            Mistake(before(SUPPLY, PHOTO), forgotten),
            Mistake(before(VOICES, RAILS), untested),
            Mistake(before(LAST, VOICES), "A high part keeps the board from lying flat."),
        ],
    )


@question(points=1)
def too_high(draw: Draw) -> Choice:
    room = draw.pick([15, 16, 14])
    smaller = f"Find a 1000 µF 25 V 105 °C part of at most {room} mm in a data sheet"
    lower = "Take 1000 µF 10 V: its can is lower"
    less = "Take 470 µF 25 V: its can is lower"
    lying = "Fit it lying on its side on long bare leads, bent over the parts beside it"
    return Choice(
        prompt=f"The plan wants 1000{NBSP}µF 25{NBSP}V. Such a can is usually 20{NBSP}mm high. "
        f"Under the lid there is room for {room}{NBSP}mm. What do you do?",
        options=draw.shuffle([smaller, lower, less, lying]),
        answer=smaller,
        mistakes=[
            Mistake(lower, TOO_LOW, hazard="heat and fire"),
            Mistake(less, "How far is that from the capacitance that the circuit was made for?"),
            Mistake(lying, "What can bare leads touch, and what holds the part?"),
        ],
    )


@question(points=6)
def little_plan(draw: Draw) -> Table:
    odd = draw.pick(
        [
            ("C13", "250µF 12V", 220, 12, 16),
            ("C8", "50µF 15V", 47, 15, 16),
            ("C21", "500µF 20V", 470, 20, 25),
            ("C15", "30µF 40V", 33, 40, 50),
        ]
    )
    plain = draw.pick(
        [
            ("C24", "47µF 25V", 47, 25),
            ("C40", "100µF 16V", 100, 16),
            ("C27", "220µF 16V", 220, 16),
            ("C43", "10µF 50V", 10, 50),
        ]
    )
    bipolar = draw.pick(
        [
            ("C26", "4.7/50 NP", 4.7, 50),
            ("C31", "10/16 BP", 10, 16),
            ("C29", "1/50 NP", 1, 50),
            ("C33", "22/25 BP", 22, 25),
        ]
    )
    lines = ", ".join(f"`{place} {text} Elect.`" for place, text, *_ in (odd, plain, bipolar))
    return Table(
        prompt=f"Three lines of a parts list: {lines}. Fill in what you order for each: E6 value, "
        "lowest standard rating, kind.",
        cells={
            odd[0]: _new_part(odd[2], odd[3], odd[4], POLAR),
            plain[0]: _new_part(plain[2], plain[3], plain[3], POLAR),
            bipolar[0]: _new_part(bipolar[2], bipolar[3], bipolar[3], BIPOLAR),
        },
    )


def _new_part(microfarad: float, old_volts: float, volts: float, kind: str) -> dict[str, Question]:
    """One row of the plan. A lower rating, and polar for bipolar, are dangerous."""
    swapped = [
        Mistake(POLAR, "What does NP or BP in the list say?", hazard="heat and fire")
        if kind == BIPOLAR
        else Mistake(BIPOLAR, "The old part has a plus and a minus. Keep it so.")
    ]
    return {
        "capacitance": Number(
            unit="F",
            answer=microfarad * 1e-6,
            hint="The same value, or the nearest E6 value when it is no longer made.",
        ),
        "rated voltage": Number(
            unit="V",
            answer=volts,
            tolerance=0,
            hint="Not below the old rating, and a standard one.",
            mistakes=[Mistake(lambda typed: typed < old_volts, TOO_LOW, hazard="heat and fire")],
        ),
        "kind": Choice(options=(POLAR, BIPOLAR), answer=kind, mistakes=swapped),
    }


def _place(plus: str):
    from repairlib.show.recap_board import draw_empty_place

    return draw_empty_place("C23", plus)


@question(points=1)
def must_it_go(draw: Draw) -> Choice:
    return worn_or_not(draw)


@practice_question
def tantalum_instead(draw: Draw) -> Number:
    return tantalum_rating(draw)
