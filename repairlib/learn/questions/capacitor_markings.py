"""The exercise of lesson 03: what the marking on a capacitor says, and what may replace the part.

Answers are typed in by hand. Sources: value code with 9 as x0.1 from a maker's ordering table
(KEMET ceramics); letter code and tolerance letters from IEC 60062:2016; voltage codes from
makers' tables (Panasonic radial aluminium, TEH tantalum; Nichicon CD cans); temperature codes from
EIA-198. The rule for the rated voltage of a replacement is common practice.
"""

from __future__ import annotations

from repairlib.core.draws import Draw
from repairlib.core.quantity import NBSP
from repairlib.learn.arranging import Order, before
from repairlib.learn.asking import practice_question, question
from repairlib.learn.question import Choice, Mistake, Number
from repairlib.learn.questions.pictures import part

# Value code; the value; all three figures read as pF; the right zeros in nF.
DISC_CODES = (
    ("473", 47e-9, 473e-12, 47e-6),
    ("224", 220e-9, 224e-12, 220e-6),
    ("681", 680e-12, 681e-12, 680e-9),
    ("152", 1.5e-9, 152e-12, 1.5e-6),
    ("333", 33e-9, 333e-12, 33e-6),
    ("822", 8.2e-9, 822e-12, 8.2e-6),
    ("154", 150e-9, 154e-12, 150e-6),
    ("331", 330e-12, 331e-12, 330e-9),
    ("563", 56e-9, 563e-12, 56e-6),
    ("272", 2.7e-9, 272e-12, 2.7e-6),
)

TOO_HIGH = "You would fit this part where the voltage is too high for it."


@question(points=1)
def disc_code(draw: Draw) -> Number:
    code, answer, plain, in_nano = draw.pick(DISC_CODES)
    return Number(
        unit="F",
        answer=answer,
        tolerance=0.001,
        prompt="This part has two leads and no polarity mark. What is its capacitance?",
        picture=lambda: part("disc", code),
        hint="Two figures, then the number of zeros.",
        mistakes=[
            Mistake(
                plain, "You read all three figures as a number. What does the third one count?"
            ),
            Mistake(in_nano, "Right zeros, but in which unit does this code count?"),
        ],
    )


@question(points=2)
def tolerance_limit(draw: Draw) -> Number:
    code, value, most, other_most, as_kilo = draw.pick(
        [
            ("224K", 220e-9, 242e-9, 231e-9, 224e-9),
            ("473K", 47e-9, 51.7e-9, 49.35e-9, 473e-9),
            ("103K", 10e-9, 11e-9, 10.5e-9, 103e-9),
            ("683K", 68e-9, 74.8e-9, 71.4e-9, 683e-9),
            ("334K", 330e-9, 363e-9, 346.5e-9, 334e-9),
            ("153K", 15e-9, 16.5e-9, 15.75e-9, 153e-9),
            ("472K", 4.7e-9, 5.17e-9, 4.935e-9, 472e-9),
            ("104K", 100e-9, 110e-9, 105e-9, 104e-9),
        ]
    )
    return Number(
        unit="F",
        answer=most,
        tolerance=0.002,
        prompt="You measure this film capacitor out of the board. "
        "What is the largest capacitance that still agrees with its marking?",
        picture=lambda: part("film box", code),
        hint="First the value, then how far off it may be, upwards.",
        mistakes=[
            Mistake(
                value, "That is the value itself. A good part may measure more. How much more?"
            ),
            Mistake(other_most, "That is another letter's tolerance. Look the letter up again."),
            Mistake(value * 1.2, "That is another letter's tolerance. Look the letter up again."),
            Mistake(as_kilo, "You read K as thousand. What does a letter at the end say?"),
            Mistake(as_kilo * 1.1, "You read K as thousand. What does a letter at the end say?"),
        ],
    )


@question(points=2)
def smallest_first(draw: Draw) -> Order:
    steps = draw.pick(
        [
            ("p82", "82p", "n33", "3n3", "µ1"),
            ("p47", "4p7", "n15", "15n", "µ15"),
            ("p68", "6p8", "n22", "22n", "2µ2"),
            ("p33", "33p", "n47", "4n7", "µ22"),
            ("p56", "5p6", "n10", "10n", "µ47"),
            ("p15", "15p", "n68", "6n8", "1µ5"),
            ("p22", "2p2", "n82", "82n", "µ33"),
            ("p39", "39p", "n27", "27n", "3µ3"),
            ("p12", "1p2", "n56", "5n6", "µ68"),
            ("p27", "27p", "n18", "1n8", "4µ7"),
        ]
    )
    starts, ends = steps[0], steps[1]
    return Order(
        prompt="Five capacitors lie on the bench. They are marked in the letter code. "
        "Put them in order, the smallest capacitance first.",
        steps=steps,
        shown=draw.shuffle(steps),
        mistakes=[
            Mistake(
                before(ends, starts),
                f"Look at {starts} and {ends}. The letter stands where the point is.",
            ),
            Mistake(
                before(steps[3], steps[2]),
                f"Look at {steps[2]}. Which figure stands before the point?",
            ),
            Mistake(
                before(steps[4], steps[3]),
                "nF and µF are mixed up. Which one is a thousand times the other?",
            ),
        ],
    )


@question(points=1)
def plain_film(draw: Draw) -> Number:
    printed, answer, as_nano, as_pico = draw.pick(
        [
            (".47\n100", 470e-9, 0.47e-9, 0.47e-12),
            (".022\n400", 22e-9, 0.022e-9, 0.022e-12),
            (".1\n250", 100e-9, 0.1e-9, 0.1e-12),
            (".0068\n630", 6.8e-9, 0.0068e-9, 0.0068e-12),
            (".033\n400", 33e-9, 0.033e-9, 0.033e-12),
            (".22\n160", 220e-9, 0.22e-9, 0.22e-12),
            (".0047\n1000", 4.7e-9, 0.0047e-9, 0.0047e-12),
            (".015\n600", 15e-9, 0.015e-9, 0.015e-12),
        ]
    )
    first, second = printed.split("\n")
    return Number(
        unit="F",
        answer=answer,
        tolerance=0.001,
        prompt=f"An old film capacitor shows `{first}` and under it `{second}`. "
        "What is its capacitance?",
        picture=lambda: part("film box", printed),
        hint="One line is the capacitance, the other is not.",
        mistakes=[
            Mistake(
                as_nano, "You took another unit. In which unit is a plain number with a point?"
            ),
            Mistake(as_pico, "Only codes without a point count in pF. This is a plain number."),
            Mistake(float(second) * 1e-12, "That line is the rated voltage."),
            Mistake(float(second) * 1e-6, "That line is the rated voltage."),
        ],
    )


@question(points=2)
def code_that_ends_in_nine(draw: Draw) -> Choice:
    code, value, measured = draw.pick(
        [
            ("229C", "2.2", "2.4"),
            ("479C", "4.7", "4.5"),
            ("339C", "3.3", "3.5"),
            ("689C", "6.8", "6.6"),
            ("159C", "1.5", "1.7"),
            ("399C", "3.9", "3.7"),
            ("569C", "5.6", "5.8"),
            ("829C", "8.2", "8.0"),
            ("279C", "2.7", "2.5"),
        ]
    )
    good = f"It is good: {value}{NBSP}pF may be off by more than this"
    percent = "It is bad: C allows 0.25 %, and this is more than that"
    zeros = "It is bad: the 9 asks for nine zeros"
    no_code = "It cannot be judged: no code ends in 9"
    return Choice(
        prompt=f"This disc was measured out of the board with a good meter: {measured}{NBSP}pF. "
        "What do you write down?",
        picture=lambda: part("disc", code),
        options=draw.shuffle([good, percent, zeros, no_code]),
        answer=good,
        mistakes=[
            Mistake(percent, "Below 10 pF the letter does not count in percent. In what then?"),
            Mistake(zeros, "Nine zeros in pF would be thousands of µF. Can a disc be that large?"),
            Mistake(no_code, "It can. Look at the two special figures for very small parts."),
        ],
    )


@question(points=2)
def film_voltage(draw: Draw) -> Number:
    code, answer, hint = draw.pick(
        [
            ("1J224K", 63, "224"),
            ("2E473K", 250, "473"),
            ("2A104J", 100, "104"),
            ("2G333K", 400, "333"),
        ]
    )
    return Number(
        unit="V",
        answer=answer,
        prompt="Up to which voltage may this part be used?",
        picture=lambda: part("film box", code),
        hint=f"{hint} is the capacitance. What stands before it?",
        mistakes=[
            Mistake(
                lambda volts: volts > answer * 1.01,
                TOO_HIGH + " Take the letter's figure, then shift the point by the digit.",
                hazard="heat and fire",
            ),
            Mistake(
                lambda volts: 0 < volts < answer,
                "The part can do more than this. The digit before the letter is a power of ten.",
            ),
        ],
    )


@question(points=2)
def letter_j(draw: Draw) -> Number:
    body, marking, answer, other = draw.pick(
        [
            ("can", "22\nJ", 63, 6.3),
            ("moulded tantalum", "476\nJ", 6.3, 63),
            ("moulded tantalum", "107\nJ", 6.3, 63),
            ("can", "47\nJ", 63, 6.3),
        ]
    )
    return Number(
        unit="V",
        answer=answer,
        prompt="You find this part in your drawer of spare capacitors. "
        "What rated voltage do you write on the bag?",
        picture=lambda: part(body, marking),
        hint="The letter under the value is the rated voltage. Which body carries it?",
        mistakes=[
            Mistake(other, "The letter means that on another body. Look at the body again."),
            Mistake(
                lambda volts: volts > answer * 1.01,
                TOO_HIGH + " Look at the body again.",
                hazard="heat and fire",
            ),
            Mistake(5, "Here the letter is no tolerance. It stands on a line of its own."),
        ],
    )


@question(points=1)
def which_dielectric(draw: Draw) -> Choice:
    value, place = draw.pick(
        [
            ("2.2 nF", "sets the corner of a sound filter"),
            ("1 nF", "sets the pitch of an oscillator"),
            ("470 pF", "sets the clock of a small processor"),
            ("3.3 nF", "sets the length of a pulse"),
            ("330 pF", "tunes the filter of a receiver"),
            ("680 pF", "sets the corner of a tone control"),
            ("4.7 nF", "sets the sweep of an oscilloscope"),
            ("100 pF", "loads the crystal of a clock"),
        ]
    )
    steady, fair, poor, worst = (f"{value}, {code}" for code in ("C0G", "X7R", "Y5V", "Z5U"))
    return Choice(
        prompt=f"A ceramic capacitor of {value} {place}. It is cracked. The value must not "
        "wander when the case warms up. Four new parts fit. Which one do you take?",
        options=draw.shuffle([steady, fair, poor, worst]),
        answer=steady,
        mistakes=[
            Mistake(fair, "This one may change by up to 15 %. You would hear or see that."),
            Mistake(poor, "Look up its last letter: how far may it fall?"),
            Mistake(worst, "Look up its last letter: how far may it fall?"),
        ],
    )


@question(points=2)
def replacement(draw: Draw) -> Choice:
    value, rated, measured, higher, lower, tenth, nano = draw.pick(
        [
            ("220", 35, "28", 50, 25, "22", "220 nF, 63 V"),
            ("470", 25, "18", 35, 16, "47", "470 nF, 63 V"),
            ("1000", 16, "12", 25, 10, "100", "1 nF, 63 V"),
        ]
    )
    right = f"{value}{NBSP}µF, {higher}{NBSP}V"
    too_low = f"{value}{NBSP}µF, {lower}{NBSP}V"
    too_small = f"{tenth}{NBSP}µF, {higher}{NBSP}V"
    return Choice(
        prompt=f"This part is dried out. The board gives it {measured}{NBSP}V. "
        "Four new parts have the right leads and fit. Which one do you order?",
        picture=lambda: part("radial", f"{value}µF\n{rated}V"),
        options=draw.shuffle([right, too_low, too_small, nano.replace(" ", NBSP)]),
        answer=right,
        mistakes=[
            Mistake(
                too_low,
                "Compare its rated voltage with the old part's. Too low a rating can make it "
                "burst.",
                hazard="flying leads and eyes",
            ),
            Mistake(too_small, "Compare the capacitance figure by figure."),
            Mistake(nano.replace(" ", NBSP), "Compare the unit of the capacitance."),
        ],
    )


@practice_question
def practise_code(draw: Draw) -> Number:
    code, answer = draw.pick(
        [("103", 10e-9), ("334", 330e-9), ("472", 4.7e-9), ("820", 82e-12), ("105", 1e-6)]
    )
    return Number(
        prompt="What is the capacitance?",
        unit="F",
        answer=answer,
        picture=lambda: part("disc", code),
        hint="Two figures, then the number of zeros. All in pF.",
    )


@practice_question
def practise_letter_code(draw: Draw) -> Number:
    code, answer = draw.pick(
        [("4n7K", 4.7e-9), ("µ47J", 470e-9), ("n68K", 680e-12), ("2µ2K", 2.2e-6), ("15nJ", 15e-9)]
    )
    return Number(
        prompt="What is the capacitance? Put the point where the small letter stands.",
        unit="F",
        answer=answer,
        picture=lambda: part("film box", code),
        hint="The letter at the end is the tolerance. The one before it is the unit and the point.",
    )


@practice_question
def practise_tantalum(draw: Draw) -> Number:
    marking, answer = draw.pick([("226\nA", 10), ("106\nC", 16), ("335\nD", 20), ("475\nE", 25)])
    return Number(
        prompt="What is the rated voltage?",
        unit="V",
        answer=answer,
        picture=lambda: part("moulded tantalum", marking),
        hint="The letter has its own table. It is no tolerance here.",
        mistakes=[
            Mistake(
                lambda volts: volts > answer * 1.01,
                TOO_HIGH,
                hazard="heat and fire",
            )
        ],
    )


@practice_question
def practise_two_meanings(draw: Draw) -> Choice:
    body, answer = draw.pick([("disc", "22 pF"), ("can", "220 µF")])
    options = ("22 pF", "220 pF", "22 µF", "220 µF")
    return Choice(
        prompt="`220` can mean more than one thing. What does it mean here?",
        picture=lambda: part(body, "220" if body == "disc" else "220\n16V"),
        options=options,
        answer=answer,
        hint="Look at the body first. A can prints plain µF. A small disc prints a code in pF.",
    )
