"""The exercise of lesson 11: contacts, leads, slots, pin 1, wire links, the table before power.

Numbers and verdicts come from `repairlib.connectors`, whose tables carry their sources; the tests
hold them to figures worked by hand. What must not be reused, and the order of work, are common
practice; lead with bismuth as in lesson 08.
"""

from __future__ import annotations

from functools import cache

from repairlib.connectors import (
    GO_ON,
    budget,
    contact_current,
    contact_heat,
    link_wire,
    shorts_before_power,
    ways,
    wire_drop,
)
from repairlib.core.draws import Draw
from repairlib.core.quantity import NBSP
from repairlib.core.verdicts import AGAIN, NEVER, STOP
from repairlib.learn.arranging import Order, Table, before
from repairlib.learn.asking import practice_question, question
from repairlib.learn.question import Choice, Mistake, Number

CARRIES, TOO_MUCH = "carries it", "too much"
NO_LINK = "no wire link: rebuild or replace"
EMPTY = "Plug out, capacitors emptied and measured"
PHOTO = "Take a photograph and mark pin 1"
LIFT = "Flood all leads with low-melt alloy and lift the socket"
RINSE = "Braid the alloy off, flood with fresh solder, braid again, twice"
FIT = "Solder the new socket in and look along the row"
OHMS = "Measure the short table"
POWER = "Power from a current-limited supply"


@practice_question
def drop_at_the_contact(draw: Draw) -> Number:
    ampere, ohm = draw.pick([(2, 0.05), (3, 0.04), (1.5, 0.2), (4, 0.025)])
    heat = contact_heat(ampere, ohm, new=ohm)
    return Number(
        prompt=f"{ampere:g}{NBSP}A flow through a contact of {ohm * 1000:g}{NBSP}mΩ. How many "
        "volts stand across it?",
        unit="V",
        answer=float(heat.drop),
        mistakes=[Mistake(float(heat.heat), "Those are the watts. Volts are I times R.")],
        hint="V = I × R. And mΩ are thousandths.",
    )


@practice_question
def out_and_back(draw: Draw) -> Number:
    metres, each, ampere = draw.pick([(1, 84.2, 1), (2, 33.3, 3), (1.5, 53, 2), (0.8, 133.9, 2)])
    lead = wire_drop(24, metres, ampere, ohm_per_km=each)
    return Number(
        prompt=f"A lead of two wires is {metres:g}{NBSP}m long. Its wire has {each:g}{NBSP}mΩ in "
        "each metre. What do both wires have together?",
        unit="Ω",
        answer=float(lead.resistance),
        mistakes=[Mistake(float(lead.resistance) / 2, "The current also comes back.")],
        hint="Length times mΩ in each metre, times two.",
    )


@practice_question
def one_pair(draw: Draw) -> Choice:
    pair, ohms = draw.pick(
        [
            ("supply input and ground", "1.4 Ω"),
            ("two rails", "OL"),
            ("neighbouring contacts", "220 Ω"),
            ("5 V rail and ground", "210 Ω"),
        ]
    )
    right = str(shorts_before_power(pair, ohms).verdict)
    return Choice(
        prompt=f"Power off, capacitors empty. Between {pair} the meter shows {ohms}. What now?",
        options=draw.shuffle([STOP, AGAIN, GO_ON]),
        answer=right,
        hint="Find the pair in the short table. Below the figure, below five times it, or above?",
    )


@question(points=2)
def watts_in_a_contact(draw: Draw) -> Number:
    ampere, milliohm = draw.pick(
        [
            (2.5, 160),
            (3, 90),
            (4, 70),
            (5, 45),
            (2, 240),
            (6, 30),
            (3.5, 110),
            (1.5, 300),
            (4.5, 60),
        ]
    )
    heat = contact_heat(ampere, milliohm / 1000, new=0.01)
    return Number(
        unit="W",
        answer=float(heat.heat),
        tolerance=0.02,
        prompt=f"A worn contact of an inlet has {milliohm}{NBSP}mΩ, measured with four wires. The "
        f"set draws {ampere:g}{NBSP}A. How much heat is made in that contact?",
        mistakes=[
            Mistake(float(heat.drop), "That is I times R, the volts across it."),
            Mistake(ampere * (milliohm / 1000) ** 2, "You squared the ohms. What is squared?"),
        ],
        hint="P = I × I × R. And mΩ are thousandths.",
    )


@question(points=3)
def contacts_loaded(draw: Draw) -> Table:
    fine = [(2, 18, 8.5), (6, 18, 7.5), (8, 16, 6.5), (10, 22, 3.5), (12, 20, 4.5), (24, 24, 2.5)]
    over = [(2, 22, 5.5), (4, 20, 6.5), (8, 18, 7.5), (12, 18, 6.5), (24, 20, 5.5), (4, 24, 3.5)]
    asked = draw.shuffle([*draw.sample(fine, 2), *draw.sample(over, 2)])
    return Table(
        prompt="Plugs of 4.20 mm pitch. Look each up in the table of the lesson, under `How much "
        "may a contact carry?`. Does it carry the current?",
        cells={
            f"{loaded} loaded, {gauge} AWG, {ampere:g} A in each": {
                "contact": _carried(loaded, gauge, ampere)
            }
            for loaded, gauge, ampere in asked
        },
    )


@cache
def _carried(loaded: int, gauge: int, ampere: float) -> Choice:
    limit = contact_current("4.20 mm pitch", loaded, gauge).limit
    return Choice(
        options=(CARRIES, TOO_MUCH),
        answer=CARRIES if ampere <= limit else TOO_MUCH,
        hint="Find how many are loaded, then the wire.",
    )


@question(points=2)
def drop_of_the_lead(draw: Draw) -> Number:
    gauge, metres, ampere = draw.pick(
        [
            (22, 1.8, 2.5),
            (24, 1.2, 2),
            (20, 3, 3),
            (26, 0.8, 1.5),
            (18, 2.5, 4),
            (22, 1.2, 3),
            (24, 2, 1.5),
            (20, 1.5, 5),
            (26, 1.5, 1),
        ]
    )
    drop = float(wire_drop(gauge, metres, ampere).drop)
    return Number(
        unit="V",
        answer=drop,
        tolerance=0.02,
        prompt=f"The lead of a supply is {metres:g}{NBSP}m long, with two wires of {gauge} AWG, at "
        f"20{NBSP}°C. The set draws {ampere:g}{NBSP}A. How many volts stay in the lead? Use the "
        "table of the lesson.",
        mistakes=[
            Mistake(drop / 2, "One wire out. And the way back?"),
            Mistake(drop / ampere, "Those are the ohms of the lead. How much current is in it?"),
        ],
        hint="Twice the length, times the ohms of a metre, times the current.",
    )


@question(points=2)
def burnt_plug(draw: Draw) -> Choice:
    seen = draw.pick(
        [
            "The inlet is brown and its pin pitted. The plug of the supply has a dark ring.",
            "One contact of a plug is dark and its plastic soft. The other contacts look clean.",
            "A plug got so hot that it smelt. After cleaning, it reads as few ohms as a new one.",
        ]
    )
    both = "New inlet and new plug, after finding out why it got hot"
    file = "File the dark contact bright, bend its spring, and watch it for a while"
    half = "A new inlet; the plug still fits, so it may stay"
    solder = "Solder the lead's wires to the lugs and leave the plug off for good, fuse and all"
    return Choice(
        prompt=f"{seen} What do you do?",
        options=draw.shuffle([both, file, half, solder]),
        answer=both,
        mistakes=[
            Mistake(
                file,
                "Heat has taken the spring out of it. What comes of a loose contact?",
                hazard="heat and fire",
            ),
            Mistake(
                half,
                "One half is damaged. What does it do to a new one?",
                hazard="heat and fire",
            ),
            Mistake(
                solder,
                "What pulls on the board now, and what cuts the current off?",
                hazard="heat and fire",
            ),
        ],
    )


@question(points=2)
def left_for_the_card(draw: Draw) -> Number:
    cables, watts = draw.pick(
        [
            ("6-pin", 118),
            ("8-pin", 190),
            ("two 6-pin", 170),
            ("6-pin and 8-pin", 265),
            ("8-pin", 160),
            ("6-pin", 95),
            ("6-pin and 8-pin", 230),
            ("two 6-pin", 205),
        ]
    )
    said = {
        "6-pin": "one 6-pin cable",
        "8-pin": "one 8-pin cable",
        "two 6-pin": "two 6-pin cables",
        "6-pin and 8-pin": "a 6-pin and an 8-pin cable",
    }[cables]
    whole, slot = budget(cables), budget("none")
    return Number(
        unit="W",
        answer=whole - watts,
        tolerance=0.005,
        prompt=f"A card in an x16 slot has {said}, and draws {watts}{NBSP}W at most. How many "
        "watts of the budget are left?",
        mistakes=[
            Mistake(whole, "That is the whole budget. What does the card take?"),
            Mistake(abs(whole - slot - watts), "The slot gives something too."),
        ],
        hint="Slot and cables together, less what the card draws.",
    )


@question(points=2)
def wire_for_the_link(draw: Draw) -> Choice:
    what, damage, ampere = draw.pick(
        [
            ("A pad of a surface socket is off", "torn pad of a surface part", 0.2),
            ("The barrel of an inlet's pin is torn out", "torn barrel", 0.5),
            ("A pad of a surface socket is off", "torn pad of a surface part", 0.6),
            ("The barrel of an inlet's pin is torn out", "torn barrel", 2.4),
            ("A land of a plated hole is torn off", "torn land of a plated hole", 0.8),
            ("A land of a plated hole is torn off", "torn land of a plated hole", 1.6),
        ]
    )
    link = link_wire(ampere, damage)
    options = ("28 AWG", "24 AWG", "22 AWG", NO_LINK)
    right = NO_LINK if link.verdict == NEVER else str(link.verdict)
    thin = "How much may that wire carry? Too thin a wire glows in its glue."
    thick = "It carries enough. Does the place hold it, and is there a thinner one that will do?"
    at = options.index(right)
    return Choice(
        prompt=f"{what}. The track carried {ampere:g}{NBSP}A, on the low-voltage side. Which is "
        "the thinnest wire that mends it?",
        options=options,
        answer=right,
        mistakes=[
            *(Mistake(one, thin, hazard="heat and fire") for one in options[: min(at, 3)]),
            *(Mistake(one, thick) for one in options[at + 1 : 3]),
            *([Mistake(NO_LINK, "Look at the table again: a wire does it here.")] * (at < 3)),
        ],
    )


@question(points=3)
def before_power(draw: Draw) -> Table:
    stop = draw.pick(
        [
            ("supply contact and signal contact", "2.1 Ω"),
            ("supply input and ground", "0.9 Ω"),
            ("neighbouring contacts", "14 Ω"),
        ]
    )
    again = draw.pick(
        [
            ("12 V rail and ground", "31 Ω"),
            ("3.3 V rail and ground", "OL"),
            ("5 V rail and ground", "18 Ω"),
        ]
    )
    fine = draw.pick(
        [("5 V rail and ground", "160 Ω"), ("12 V rail and ground", "1.3 kΩ"), ("two rails", "OL")]
    )
    shield = draw.pick(
        [
            ("supply contact and shield", "OL"),
            ("supply contact and shield", "620 Ω"),
            ("supply contact and shield", "2.2 kΩ"),
        ]
    )
    rows = draw.shuffle(dict.fromkeys((stop, again, fine, shield)))
    return Table(
        prompt="After a new socket, power off, capacitors empty. Judge each pair by the short "
        "table of the lesson.",
        cells={
            f"{pair}: {ohms}": {"verdict": _judged(str(shorts_before_power(pair, ohms).verdict))}
            for pair, ohms in rows
        },
    )


def _judged(right: str) -> Choice:
    danger = "That is a short circuit. What happens when power comes on?"
    return Choice(
        options=(STOP, AGAIN, GO_ON),
        answer=right,
        mistakes=[Mistake(GO_ON, danger, hazard="heat and fire")] if right == STOP else [],
        hint="Below its figure, below five times it, or above? And what is an open reading there?",
    )


@question(points=3)
def what_marks_tell(draw: Draw) -> Table:
    asked = draw.sample(
        [
            "square pad",
            "triangle on the housing",
            "coloured edge of a ribbon",
            "notch or rib of the housing",
            "latch side",
            "colour of the wires",
            "missing pin and plugged hole",
            "figure 1 or dot in the print",
        ],
        4,
    )
    options = ("pin 1 or wire 1", "which way round it goes in", "nothing for certain")
    return Table(
        prompt="What does each of these point to? The meter still has the last word.",
        cells={
            way: {
                "points to": Choice(
                    options=options,
                    answer=_pointed(ways()[way].points_to),
                    hint="Look at the table of marks again.",
                )
            }
            for way in asked
        },
    )


def _pointed(to: str) -> str:
    """What a mark points to, in the words of the question: pin 1 and wire 1 are one answer."""
    return "pin 1 or wire 1" if to in ("pin 1", "wire 1") else to


@question(points=3)
def order_of_work(draw: Draw) -> Order:
    steps = (EMPTY, PHOTO, LIFT, RINSE, FIT, OHMS, POWER)
    return Order(
        prompt="A torn socket on a leaded board comes off with low-melt bismuth alloy, and a new "
        "one goes on with leaded solder. Put the steps in order, first one first.",
        steps=steps,
        shown=draw.shuffle(steps),
        mistakes=[
            Mistake(
                lambda steps: any(before(one, EMPTY)(steps) for one in (LIFT, RINSE, FIT, OHMS)),
                "You touch and heat a board that may still be charged.",
                hazard="stored charge",
            ),
            Mistake(
                before(FIT, RINSE),
                "Lead meets bismuth in every joint. How warm may that board get?",
                hazard="heat and fire",
            ),
            Mistake(
                before(POWER, OHMS),
                "Nobody has looked for a bridge yet, and power is on.",
                hazard="heat and fire",
            ),
            Mistake(
                before(POWER, FIT),
                "Power, and then the iron on a live board?",
                hazard="heat and fire",
            ),
            Mistake(before(LIFT, PHOTO), "The socket is off. Where was pin 1?"),
            Mistake(before(OHMS, FIT), "A bridge under the new socket is not there yet."),
        ],
    )
