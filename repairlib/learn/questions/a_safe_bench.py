"""The exercise of lesson 01: stored charge, the strap, and the bench itself.

Answers are typed in by hand. Sources: E = C V² / 2 and t = R C ln(V0 / V); 60 V dc is ES1 of
IEC 62368-1; limits of strap, mat, person and floor from S20.20 and IEC 61340 as quoted by makers,
the iron tip from memory of S13.1; strap off from 250 V (TR20.20-2008, quoted); the order of work
is common practice.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import isclose

from repairlib.core.draws import Draw
from repairlib.core.quantity import NBSP
from repairlib.learn.arranging import Order, Table, before
from repairlib.learn.asking import practice_question, question
from repairlib.learn.question import Choice, Mistake, Number

PASS, FAIL, CANNOT_TELL = "pass", "fail", "cannot tell"


@practice_question
def time_constant(draw: Draw) -> Number:
    ohms, farads, answer = draw.pick(
        [
            ("1 kΩ", "1000 µF", 1.0),
            ("10 kΩ", "220 µF", 2.2),
            ("4.7 kΩ", "100 µF", 0.47),
            ("1 MΩ", "470 nF", 0.47),
        ]
    )
    return Number(
        prompt=f"{ohms} lies across {farads}. What is the time constant?",
        unit="s",
        answer=answer,
        mistakes=[Mistake(answer * 5, "One time constant, not five of them.")],
        hint="R times C. Kilo times micro is milli.",
    )


@practice_question
def energy_class(draw: Draw) -> Choice:
    volts, answer = draw.pick([("48", "ES1"), ("75", "ES2"), ("100", "ES2"), ("325", "ES3")])
    return Choice(
        prompt=f"A supply gives {volts}{NBSP}V dc, steadily. Which class is that by IEC 62368-1?",
        options=("ES1", "ES2", "ES3"),
        answer=answer,
        hint="Two limits for steady dc: which ones?",
    )


@practice_question
def part_and_body(draw: Draw) -> Choice:
    body, lowest, name = draw.pick(
        [("800", "100", "an EPROM"), ("400", "100", "a MOSFET"), ("800", "250", "a Schottky diode")]
    )
    yes = "Yes, and nobody would feel it"
    no = "No: without a spark there is no damage"
    felt = "Yes, and the spark would warn you"
    return Choice(
        prompt=f"At the bench your body is at {body}{NBSP}V. You pick up {name}, listed from "
        f"{lowest}{NBSP}V on. Can it be damaged?",
        options=draw.shuffle([yes, no, felt]),
        answer=yes,
        hint="From which voltage on is a spark felt?",
    )


@question(points=1)
def plug_pulled(draw: Draw) -> Number:
    rms, peak, twice = draw.pick(
        [
            (120, 169.7, 339.4),
            (230, 325.3, 650.5),
            (240, 339.4, 678.8),
            (264, 373.4, 746.7),
            (220, 311.1, 622.3),
            (127, 179.6, 359.2),
            (100, 141.4, 282.8),
            (277, 391.7, 783.5),
        ]
    )
    return Number(
        unit="V",
        answer=peak,
        tolerance=0.005,
        prompt=f"The mains is {rms}{NBSP}V RMS. A capacitor lies right across the pins of the "
        "plug. The plug is pulled. Which voltage can the capacitor hold at most?",
        mistakes=[
            Mistake(rms, "That is the RMS value. At which moment may the plug be pulled?"),
            Mistake(twice, "That is from the lowest to the highest point."),
            Mistake(rms / 2**0.5, "Multiply or divide? The top of a sine is above its RMS."),
        ],
        hint="The worst moment is the top of the sine.",
    )


@question(points=2)
def energy(draw: Draw) -> Number:
    microfarad, volts, answer, without_half, charge = draw.pick(
        [
            (10_000, 50, 12.5, 25.0, 0.5),
            (470, 400, 37.6, 75.2, 0.188),
            (220, 385, 16.30, 32.61, 0.0847),
            (1000, 63, 1.985, 3.969, 0.063),
            (330, 200, 6.6, 13.2, 0.066),
            (2200, 80, 7.04, 14.08, 0.176),
            (100, 325, 5.281, 10.563, 0.0325),
            (68, 450, 6.885, 13.77, 0.0306),
            (4700, 35, 2.879, 5.758, 0.1645),
        ]
    )
    return Number(
        unit="J",
        answer=answer,
        prompt=f"A capacitor of {microfarad}{NBSP}µF is charged to {volts}{NBSP}V. How much "
        "energy is in it?",
        mistakes=[
            Mistake(without_half, "You left out the half."),
            Mistake(charge, "That is the charge in coulomb. The voltage comes in twice."),
            Mistake(charge / 2, "The voltage comes in squared."),
        ],
        hint="Half of C, times the voltage, times the voltage again.",
    )


@question(points=2)
def time_to_limit(draw: Draw) -> Number:
    microfarad, volts, kiloohm, answer, tau, by_ten = draw.pick(
        [
            (220, 400, "100", 41.74, 22.0, 18.13),
            (470, 385, "2.2", 1.922, 1.034, 0.8347),
            (1000, 100, "10", 5.108, 10.0, 2.218),
            (100, 325, "10", 1.689, 1.0, 0.7337),
            (330, 200, "22", 8.741, 7.26, 3.796),
            (68, 450, "47", 6.440, 3.196, 2.797),
            (150, 340, "33", 8.586, 4.95, 3.729),
            (2200, 80, "4.7", 2.975, 10.34, 1.292),
            (1500, 90, "5.6", 3.406, 8.4, 1.479),
        ]
    )
    return Number(
        unit="s",
        answer=answer,
        prompt=f"{microfarad}{NBSP}µF at {volts}{NBSP}V, with {kiloohm}{NBSP}kΩ across it. After "
        "which time is it down to 60 V, the limit of ES1 in IEC 62368-1, by calculation?",
        mistakes=[
            Mistake(tau, "That is one time constant. It leaves 37 %: is that 60 V?"),
            Mistake(5 * tau, "Five time constants leave less than 1 %. 60 V was asked for."),
            Mistake(by_ten, "That is the logarithm to base ten. Take the natural one, ln."),
            Mistake(answer * 1000, "Did you put in MΩ for kΩ?"),
        ],
        hint="R C, times the natural logarithm of start over end.",
    )


@dataclass(frozen=True, kw_only=True, repr=False)
class Largest(Number):
    """The largest value that will do; the next ones `made` below it, E24 and E12, are right too."""

    made: Sequence[float]

    def share(self, answer) -> float:
        return float(any(self._near(answer, one) for one in (self.answer, *self.made)))


@question(points=2)
def bleeder(draw: Draw) -> Number:
    microfarad, volts, seconds, answer, made, one_tau = draw.pick(
        [
            (47, "170", 5, 102.1e3, (100e3,), 106.4e3),
            (100, "325.3", 2, 11.83e3, (11e3, 10e3), 20e3),
            (220, "400", 60, 143.8e3, (130e3, 120e3), 272.7e3),
            (470, "385", 10, 11.45e3, (11e3, 10e3), 21.28e3),
            (68, "450", 5, 36.49e3, (36e3, 33e3), 73.53e3),
            (330, "200", 10, 25.17e3, (24e3, 22e3), 30.30e3),
            (150, "340", 5, 19.22e3, (18e3,), 33.33e3),
            (47, "380", 3, 34.58e3, (33e3,), 63.83e3),
            (33, "325.3", 3, 53.78e3, (51e3, 47e3), 90.91e3),
        ]
    )
    usual = (answer * 1000, answer / 1000, one_tau)

    def unusual(ohm: float) -> bool:
        return not any(isclose(ohm, one, rel_tol=0.01) for one in usual)

    return Largest(
        unit="Ω",
        answer=answer,
        made=made,
        prompt=f"{microfarad}{NBSP}µF at {volts}{NBSP}V must come down to 60 V within "
        f"{seconds}{NBSP}s. What is the largest resistor that is quick enough?",
        mistakes=[
            Mistake(answer * 1000, "MΩ for kΩ: that one would need a thousand times as long."),
            Mistake(answer / 1000, "Ω for kΩ: that one would burn."),
            Mistake(one_tau, "You made the time one time constant. Does that end at 60 V?"),
            Mistake(
                lambda ohm: ohm > answer and unusual(ohm),
                f"Too slow: after {seconds}{NBSP}s it still has more than 60 V.",
            ),
            Mistake(
                lambda ohm: 0 < ohm < answer and unusual(ohm),
                "Quick enough. But a larger one still is: how large may it be?",
            ),
        ],
        hint="Turn t = R C ln(V0 / V) round.",
    )


@question(points=1)
def bleeder_trusted(draw: Draw) -> Choice:
    minutes = draw.pick([30, 5, 10, 20])
    right = "Nothing for sure: a qualified person measures it, and measures it again"
    empty = f"It is empty: {minutes} min are far more than 42 s, so both hands may touch it"
    one_hand = "It is empty enough for one hand"
    ohms = "It shows when you measure the bleeder with the ohms range, in place"
    open_ = "And if the bleeder is open? Then nothing has left the capacitor."
    return Choice(
        prompt="A supply capacitor of 220 µF starts at 400 V. A bleeder of 100 kΩ lies across it: "
        f"60 V after 42 s, by calculation. The plug has been out for {minutes}{NBSP}min. What do "
        "you know about the capacitor?",
        options=draw.shuffle([right, empty, one_hand, ohms]),
        answer=right,
        mistakes=[
            Mistake(empty, open_, hazard="stored charge"),
            Mistake(one_hand, open_, hazard="stored charge"),
            Mistake(
                ohms,
                "An ohms range on a charged capacitor hurts the meter, and perhaps you.",
                hazard="stored charge",
            ),
        ],
    )


@question(points=1)
def measured_once(draw: Draw) -> Choice:
    shown, minutes = draw.pick([("0.1", 15), ("0.4", 5), ("1.2", 10), ("0.8", 20)])
    right = "Try the meter on a known source, then measure: touch only at next to nothing"
    touch = "Touch it: it was measured, and it was empty"
    screwdriver = "Short it with an insulated screwdriver, so that nothing is left, then touch it"
    wait = "Wait as long again, then touch it"
    back = "Charge creeps back, and a meter can be broken. What did the one reading prove?"
    return Choice(
        prompt="You discharged a 50 V capacitor through its resistor, and the meter showed "
        f"`{shown} V`. Then the telephone rang. {minutes}{NBSP}min later you are back. What now?",
        options=draw.shuffle([right, touch, screwdriver, wait]),
        answer=right,
        mistakes=[
            Mistake(touch, back, hazard="stored charge"),
            Mistake(
                screwdriver,
                "A short throws hot metal and ruins the part. What takes the energy instead?",
                hazard="stored charge",
            ),
            Mistake(wait, back, hazard="stored charge"),
        ],
    )


PLUG = "Pull the plug, lay it where you can see it, and wait"
KNOWN = "While it waits, try the meter on a known source"
DISCHARGE = "Discharge it through the resistor, the meter across it"
KNOWN_AGAIN = "At once, try the meter on the known source again"
MINUTE = "Wait a minute, measure once more: next to nothing. Try the meter a last time"
TOUCH = "Begin to work on it"
STEPS = (PLUG, KNOWN, DISCHARGE, KNOWN_AGAIN, MINUTE, TOUCH)


@question(points=2)
def order_of_work(draw: Draw) -> Order:
    charged = "What can still be in it at that moment, and how do you know?"
    return Order(
        prompt="A supply with a capacitor at 48 V dc. You make it dead. Put the steps in order.",
        steps=STEPS,
        shown=draw.shuffle(STEPS),
        mistakes=[
            Mistake(_touched_early, charged, hazard="stored charge"),
            Mistake(
                before(DISCHARGE, PLUG),
                "Where does the capacitor get new charge from?",
                hazard="mains",
            ),
            Mistake(before(KNOWN, PLUG), "What goes on filling the capacitor meanwhile?"),
            Mistake(before(DISCHARGE, KNOWN), "How do you know that the meter works?"),
            Mistake(before(MINUTE, DISCHARGE), "What is the minute for?"),
        ],
    )


def _touched_early(steps) -> bool:
    return any(before(TOUCH, one)(steps) for one in STEPS if one != TOUCH)


@question(points=1)
def strap_current(draw: Draw) -> Number:
    rms, answer, by_peak = draw.pick(
        [
            (110, 0.110e-3, 0.1556e-3),
            (220, 0.220e-3, 0.3111e-3),
            (127, 0.127e-3, 0.1796e-3),
            (100, 0.100e-3, 0.1414e-3),
            (240, 0.240e-3, 0.3394e-3),
            (230, 0.230e-3, 0.3253e-3),
            (120, 0.120e-3, 0.1697e-3),
            (250, 0.250e-3, 0.3536e-3),
        ]
    )
    return Number(
        unit="A",
        answer=answer,
        prompt=f"Someone wears a strap of 1 MΩ and by accident touches {rms}{NBSP}V RMS. Which "
        "current flows through strap and person, RMS?",
        picture=lambda: _strap(rms),
        mistakes=[
            Mistake(by_peak, "That is the peak of the current. RMS was asked for."),
            Mistake(answer * 1000, "What does the M before the Ω say?"),
        ],
        hint="Ohm's law. Beside 1 MΩ the person hardly counts.",
    )


@question(points=1)
def strap_at_high_voltage(draw: Draw) -> Choice:
    thing = draw.pick(
        [
            "The valve set on the bench runs with 280 V dc bare",
            "The supply on the bench runs with 300 V dc bare",
            "The supply on the bench runs with 230 V RMS bare",
            "The flash unit on the bench is charged to 330 V",
        ]
    )
    right = "Strap off, hands away. A qualified person does this one"
    keeps = "Keep the strap on: its 1 MΩ protects you"
    one_hand = "Keep the strap on and work with one hand"
    mat = "Unclip the strap from ground and clip it to the chassis of the set"
    ties = "A strap ties you to ground, or to the set. At which voltage must it be off?"
    return Choice(
        prompt=f"{thing}. You wear your wrist strap. What do you do?",
        options=draw.shuffle([right, keeps, one_hand, mat]),
        answer=right,
        mistakes=[Mistake(option, ties, hazard="mains") for option in (keeps, one_hand, mat)],
    )


@question(points=3)
def audit(draw: Draw) -> Table:
    strap, strap_says = draw.pick([("1.02 MΩ", PASS), ("36.9 MΩ", FAIL), ("0.96 MΩ", PASS)])
    bare = draw.pick(["1.1 kΩ", "3.2 kΩ", "4.7 kΩ"])
    mat, mat_says = draw.pick(
        [
            ("0.98 GΩ at 100 V", CANNOT_TELL),
            ("2.4 GΩ at 100 V", FAIL),
            ("45 MΩ at 100 V", PASS),
            ("12 MΩ at 2.5 V", CANNOT_TELL),
        ]
    )
    person, person_says = draw.pick(
        [
            ("28 MΩ at 100 V, nobody walked", CANNOT_TELL),
            ("500 MΩ at 100 V, walking 120 V", FAIL),
            ("80 MΩ at 100 V, walking 40 V", PASS),
        ]
    )
    iron, iron_says = draw.pick([("22 Ω", FAIL), ("14 Ω", FAIL), ("3.0 Ω", PASS)])
    no_resistor = Mistake(
        PASS,
        "What would flow through this strap, if you touched the mains?",
        hazard="mains",
    )
    return Table(
        prompt="An audit by S20.20-2021. The meter is good to ±5 %. Which verdict has each "
        "line?\n\nA strap needs its resistor, whatever the edition says.",
        cells={
            f"wrist strap 1: {strap}": {"verdict": _verdict(strap_says)},
            f"wrist strap 2: {bare}": {"verdict": _verdict(FAIL, no_resistor)},
            f"mat: {mat}": {"verdict": _verdict(mat_says)},
            f"person with shoes and floor: {person}": {"verdict": _verdict(person_says)},
            f"iron tip to ground (in use): {iron}": {"verdict": _verdict(iron_says)},
        },
    )


def _verdict(answer: str, *mistakes: Mistake) -> Choice:
    return Choice(
        options=(PASS, FAIL, CANNOT_TELL),
        answer=answer,
        mistakes=mistakes,
        hint="The limit, the ± of the meter, the test voltage: which of them decides here?",
    )


def _strap(volts: float):
    from repairlib.show.discharge import draw_strap_path

    return draw_strap_path(volts, solved=False)
