"""The exercise of lesson 02: bands and codes of resistors and inductors, and what may replace them.

Answers are typed in by hand. Sources: colours from a maker's card (Vishay, after IEC 60062),
chip codes from makers' marking guides (Yageo, NIC) and data sheets (State of the Art, TRU, WFxxR),
letter codes from IEC 60062 as quoted in an encyclopaedia, K as 10 % from a service manual (Sanyo),
inductor bands from Token, inductor codes from CTC, fuse letters from IEC 60127 as GOST prints it.
What may replace a fuse or a fusible resistor is common practice.
"""

from __future__ import annotations

from repairlib.core.draws import Draw
from repairlib.core.quantity import NBSP
from repairlib.learn.asking import practice_question, question
from repairlib.learn.question import Choice, Mistake, Number
from repairlib.learn.questions.pictures import part

OTHER_END = "You started at the wrong end. Which band cannot be the first?"
AS_FIGURES = "You read the third band as a figure. What does it count?"


@question(points=1)
def four_bands(draw: Draw) -> Number:
    bands, answer, figures, turned = draw.pick(
        [
            ("yellow-violet-red-gold", 4.7e3, 472, 270e3),
            ("green-blue-orange-gold", 56e3, 563, 3.6e6),
            ("brown-green-yellow-gold", 150e3, 154, 4.5e2),
            ("blue-grey-red-gold", 6.8e3, 682, 2.8e7),
            ("orange-white-brown-gold", 390, 391, 19e3),
            ("red-red-orange-gold", 22e3, 223, 3.2e3),
            ("orange-blue-brown-gold", 360, 361, 16e3),
            ("green-brown-orange-gold", 51e3, 513, 3.1e6),
            ("brown-red-green-gold", 1.2e6, 125, 520),
        ]
    )
    return Number(
        unit="Ω",
        answer=answer,
        tolerance=0.001,
        prompt="The resistor lies in the board as you see it. What is its resistance?",
        picture=lambda: part("resistor", bands, flip=True),
        hint="Two figures, then the number of zeros. Start at the end where it makes sense.",
        mistakes=[Mistake(turned, OTHER_END), Mistake(figures, AS_FIGURES)],
    )


@question(points=2)
def gold_multiplier(draw: Draw) -> Number:
    bands, answer, no_zero, one_zero = draw.pick(
        [
            ("green-blue-gold-gold", 5.6, 56, 560),
            ("red-violet-gold-gold", 2.7, 27, 270),
            ("brown-green-gold-gold", 1.5, 15, 150),
            ("yellow-violet-gold-gold", 4.7, 47, 470),
            ("orange-orange-gold-gold", 3.3, 33, 330),
            ("blue-grey-gold-gold", 6.8, 68, 680),
            ("grey-red-gold-gold", 8.2, 82, 820),
            ("brown-red-gold-gold", 1.2, 12, 120),
        ]
    )
    gold = "You took gold for a figure or for zeros. What does gold mean in the third place?"
    return Number(
        unit="Ω",
        answer=answer,
        tolerance=0.001,
        prompt="Two bands of this resistor are gold. What is its resistance?",
        picture=lambda: part("resistor", bands),
        hint="Gold is never a figure. In the third place it moves the point.",
        mistakes=[
            Mistake(no_zero, gold),
            Mistake(one_zero, gold),
            Mistake(lambda ohm: ohm > one_zero * 1.01, gold),
        ],
    )


@question(points=2)
def five_band_limit(draw: Draw) -> Number:
    bands, value, most, five_percent, as_four = draw.pick(
        [
            ("orange-grey-orange-orange-brown", 383e3, 386.83e3, 402.15e3, 38e3),
            ("yellow-white-white-brown-brown", 4.99e3, 5.0399e3, 5.2395e3, 49e9),
            ("red-red-blue-brown-brown", 2.26e3, 2.2826e3, 2.373e3, 22e6),
            ("green-brown-brown-black-brown", 511, 516.11, 536.55, 510),
            ("brown-brown-orange-red-brown", 11.3e3, 11.413e3, 11.865e3, 11e3),
            ("blue-grey-brown-brown-brown", 6.81e3, 6.8781e3, 7.1505e3, 680),
            ("grey-red-green-black-brown", 825, 833.25, 866.25, 8.2e6),
            ("brown-violet-grey-orange-brown", 178e3, 179.78e3, 186.9e3, 1.7e9),
        ]
    )
    return Number(
        unit="Ω",
        answer=most,
        tolerance=0.0005,
        prompt="You measure this resistor out of the board. What is the largest resistance that "
        "still agrees with its bands?",
        picture=lambda: part("resistor", bands),
        hint="Three figures, the zeros, and the last band says how far off it may be.",
        mistakes=[
            Mistake(value, "That is the value itself. A good part may measure more. How much?"),
            Mistake(five_percent, "That is another tolerance. Look the last band up again."),
            Mistake(value * 1.02, "That is another tolerance. Look the last band up again."),
            Mistake(as_four, "With five bands the third one is not the zeros."),
        ],
    )


@question(points=2)
def either_end(draw: Draw) -> Choice:
    bands, measured, fits, other = draw.pick(
        [
            ("brown-black-black-brown-brown", "110.4 Ω", "110 Ω", "1 kΩ"),
            ("brown-black-black-red-brown", "120.6 Ω", "120 Ω", "10 kΩ"),
            ("brown-green-black-red-brown", "15.03 kΩ", "15 kΩ", "12 MΩ"),
            ("brown-red-black-brown-brown", "1.204 kΩ", "1.2 kΩ", "11 kΩ"),
            ("brown-orange-black-red-brown", "119.3 kΩ", "120 kΩ", "13 kΩ"),
            ("brown-black-black-orange-brown", "129.4 Ω", "130 Ω", "100 kΩ"),
            ("brown-green-black-brown-brown", "1.492 kΩ", "1.5 kΩ", "11 MΩ"),
        ]
    )
    good, bad, burnt, unread = (
        text.replace(" Ω", f"{NBSP}Ω").replace(" kΩ", f"{NBSP}kΩ").replace(" MΩ", f"{NBSP}MΩ")
        for text in (
            f"It is a {fits} resistor, and good",
            f"It is a {other} resistor, and bad",
            "It is burnt: the meter must agree with the first end",
            "It cannot be used: bands with two meanings are a misprint",
        )
    )
    return Choice(
        prompt="These bands stand at even distances. From both ends they give a value that is "
        f"made. Out of the board the meter says {measured.replace(' ', NBSP)}. "
        "What do you write down?",
        picture=lambda: part("resistor", bands, mark="even distances"),
        options=draw.shuffle([good, bad, burnt, unread]),
        answer=good,
        mistakes=[
            Mistake(bad, "Read the bands from the other end too. Does the meter agree now?"),
            Mistake(burnt, "Which end is the first? Read them both and compare."),
            Mistake(unread, "Makers cannot avoid it. What tells the two readings apart?"),
        ],
    )


@question(points=1)
def chip_of_three(draw: Draw) -> Number:
    code, answer, plain, kilo = draw.pick(
        [
            ("472", 4.7e3, 472, 4.7e6),
            ("103", 10e3, 103, 10e6),
            ("220", 22, 220, 22e3),
            ("331", 330, 331, 330e3),
            ("564", 560e3, 564, 560e6),
            ("183", 18e3, 183, 18e6),
            ("822", 8.2e3, 822, 8.2e6),
            ("151", 150, 151, 150e3),
            ("274", 270e3, 274, 270e6),
            ("390", 39, 390, 39e3),
        ]
    )
    return Number(
        unit="Ω",
        answer=answer,
        tolerance=0.001,
        prompt="What is the resistance of this chip?",
        picture=lambda: part("chip resistor", code),
        hint="Two figures, then the number of zeros, in Ω.",
        mistakes=[
            Mistake(plain, "You read the code as a plain number of ohms. What is its last figure?"),
            Mistake(kilo, "The zeros are right, the unit is not. In what does a chip count?"),
        ],
    )


@question(points=2)
def place_and_letter(draw: Draw) -> Number:
    code, figures, answer, as_value, plain = draw.pick(
        [
            ("68C", 499, 49.9e3, 6.8e3, 499),
            ("02C", 102, 10.2e3, 200, 102),
            ("85X", 750, 75, 8.5, 750),
            ("25D", 178, 178e3, 25e3, 178),
            ("51B", 332, 3.32e3, 510, 332),
            ("93C", 909, 90.9e3, 9.3e3, 909),
            ("18D", 150, 150e3, 18e3, 150),
            ("30B", 200, 2e3, 300, 200),
        ]
    )
    return Number(
        unit="Ω",
        answer=answer,
        tolerance=0.001,
        prompt=f"A chip of 1 % shows two figures and a letter. In the list of 96 values, place "
        f"{code[:2]} is {figures}. What is its resistance?",
        picture=lambda: part("chip resistor", code),
        hint="The place gives three figures. The letter says by how much to multiply them.",
        mistakes=[
            Mistake(as_value, "The two figures are a place in the list, not the value."),
            Mistake(plain, "Right figures. What does the letter do with them?"),
        ],
    )


@question(points=2)
def two_letters(draw: Draw) -> Number:
    code, value, most, five = draw.pick(
        [
            ("2R2K", 2.2, 2.42, 2.31),
            ("33KK", 33e3, 36.3e3, 34.65e3),
            ("4K7K", 4.7e3, 5.17e3, 4.935e3),
            ("10KK", 10e3, 11e3, 10.5e3),
            ("6K8K", 6.8e3, 7.48e3, 7.14e3),
            ("1R5K", 1.5, 1.65, 1.575),
            ("82KK", 82e3, 90.2e3, 86.1e3),
            ("3K9K", 3.9e3, 4.29e3, 4.095e3),
        ]
    )
    last = "The last letter is the tolerance, the letter before it is the unit and the point."
    return Number(
        unit="Ω",
        answer=most,
        tolerance=0.001,
        prompt=f"A resistor is marked `{code}`. What is the largest resistance that a good one "
        "may have?",
        hint=last,
        mistakes=[
            Mistake(value, "That is the value itself. What does the last letter allow?"),
            Mistake(five, "That is another letter's tolerance. Look the letter up again."),
            Mistake(value * 1000, f"You took the last letter for thousand. {last}"),
            Mistake(most * 1000, f"You took one letter for thousand once too often. {last}"),
        ],
    )


@question(points=2)
def inductor_value(draw: Draw) -> Number:
    bands, answer, nano, henry = draw.pick(
        [
            ("red-violet-brown-gold", 270e-6, 270e-9, 270),
            ("brown-green-red-silver", 1.5e-3, 1.5e-6, 1500),
            ("yellow-violet-black-silver", 47e-6, 47e-9, 47),
            ("red-red-orange-silver", 22e-3, 22e-6, 22000),
            ("orange-orange-brown-gold", 330e-6, 330e-9, 330),
            ("blue-grey-black-silver", 68e-6, 68e-9, 68),
            ("brown-red-red-gold", 1.2e-3, 1.2e-6, 1200),
            ("grey-red-brown-gold", 820e-6, 820e-9, 820),
        ]
    )
    return Number(
        unit="H",
        answer=answer,
        tolerance=0.001,
        prompt="This rounded green part measures as a short with an ohmmeter. The board calls it "
        "L3. What is its inductance?",
        picture=lambda: part("inductor", bands),
        hint="The colours are those of resistors. In which unit do they count here?",
        mistakes=[
            Mistake(nano, "You counted in nH. Only three dots on a tiny chip do that."),
            Mistake(henry, "You forgot the unit that bands on an inductor count in."),
        ],
    )


@question(points=2)
def blown_fuse(draw: Draw) -> Choice:
    same, stronger, quick, weak = draw.pick(
        [
            ("T3.15AH250V", "T5AH250V", "F3.15AH250V", "T3.15AL250V"),
            ("T1AL250V", "T2AL250V", "F1AL250V", "T1AL125V"),
            ("T500mAL250V", "T1AL250V", "F500mAL250V", "T500mAL125V"),
        ]
    )
    bridge = "A piece of wire, only to find out what is wrong"
    return Choice(
        prompt="This mains fuse has blown. The fault behind it was found and mended. "
        "Which one do you fit?",
        picture=lambda: part("fuse", same, state="blown"),
        options=draw.shuffle([same, stronger, quick, weak, bridge]),
        answer=same,
        mistakes=[
            Mistake(
                stronger,
                "A stronger fuse lets the wires burn before it opens.",
                hazard="heat and fire",
            ),
            Mistake(
                bridge,
                "Nothing opens any more when the fault comes back.",
                hazard="heat and fire",
            ),
            Mistake(quick, "Compare the first letter. It says how fast the fuse opens."),
            Mistake(
                weak,
                "Compare every letter and figure. This one may not be able to break the fault.",
                hazard="mains",
            ),
        ],
    )


@question(points=2)
def burnt_fusible(draw: Draw) -> Choice:
    value, power, more = draw.pick(
        [("4.7 Ω", "1 W", "3 W"), ("10 Ω", "0.5 W", "2 W"), ("22 Ω", "0.5 W", "1 W")]
    )
    ohms, watt, much = (text.replace(" ", NBSP) for text in (value, power, more))
    right = f"Find why it opened, then fit a fusible resistor of {ohms}, {watt}"
    plain = f"Fit a carbon film resistor of {ohms}, {watt}"
    strong = f"Fit a metal film resistor of {ohms}, {much}: it will not burn again"
    lower = "Fit a wire link: the set worked without losing power there"
    return Choice(
        prompt=f"A resistor of {ohms} in the supply line is open. The parts list says "
        f"`fusible, flameproof, {power}`. What do you do?",
        picture=lambda: part("resistor", _BURNT[value], state="burnt"),
        options=draw.shuffle([right, plain, strong, lower]),
        answer=right,
        mistakes=[
            Mistake(
                wrong,
                "This resistor is there to open without a flame when too much flows. "
                "What you chose does not.",
                hazard="heat and fire",
            )
            for wrong in (plain, strong, lower)
        ],
    )


_BURNT = {
    "10 Ω": "brown-black-black-gold",
    "4.7 Ω": "yellow-violet-gold-gold",
    "22 Ω": "red-red-black-gold",
}


@practice_question
def practise_four(draw: Draw) -> Number:
    bands, answer = draw.pick(
        [
            ("brown-black-red-gold", 1e3),
            ("red-red-orange-gold", 22e3),
            ("orange-orange-brown-silver", 330),
            ("grey-red-black-gold", 82),
            ("blue-grey-green-gold", 6.8e6),
        ]
    )
    return Number(
        prompt="What is the resistance?",
        unit="Ω",
        answer=answer,
        picture=lambda: part("resistor", bands),
        hint="Two figures, then the number of zeros.",
    )


@practice_question
def practise_five(draw: Draw) -> Number:
    bands, answer = draw.pick(
        [
            ("brown-black-black-yellow-violet", 1e6),
            ("yellow-violet-black-brown-red", 4.7e3),
            ("brown-red-brown-orange-green", 121e3),
            ("red-yellow-orange-brown-blue", 2.43e3),
        ]
    )
    return Number(
        prompt="Five bands: what is the resistance?",
        unit="Ω",
        answer=answer,
        picture=lambda: part("resistor", bands),
        hint="Three figures, then the number of zeros. The last band stands apart.",
    )


@practice_question
def practise_chip(draw: Draw) -> Number:
    code, answer = draw.pick(
        [("4701", 4.7e3), ("1002", 10e3), ("4R7", 4.7), ("R300", 0.3), ("10R0", 10), ("105", 1e6)]
    )
    return Number(
        prompt="What is the resistance?",
        unit="Ω",
        answer=answer,
        picture=lambda: part("chip resistor", code),
        hint="The last figure counts zeros, unless there is an R. R is the point.",
    )


@practice_question
def practise_inductor(draw: Draw) -> Number:
    code, answer = draw.pick(
        [("101", 100e-6), ("6R8", 6.8e-6), ("R27", 270e-9), ("82N", 82e-9), ("272", 2.7e-3)]
    )
    return Number(
        prompt=f"An inductor is marked `{code}`. What is its inductance?",
        unit="H",
        answer=answer,
        hint="Figures count in µH, R is the point in µH, N is the point in nH.",
    )
