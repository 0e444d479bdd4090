"""The exercise of lesson 09: a profile to measure and repair, a moisture decision, hot air safely.

Answers are typed in by hand. Sources: reflow limits from J-STD-020 tables 4-2 and 5-2 as quoted in
data sheets; floor lives from a table of levels as published; bake times from J-STD-033 as
published; three passes by a chip maker; the order of work and what never meets heat are common
practice.
"""

from __future__ import annotations

from repairlib.core.draws import Draw
from repairlib.core.quantity import NBSP
from repairlib.learn.arranging import Order, Table, before
from repairlib.learn.asking import practice_question, question
from repairlib.learn.question import Choice, Mistake, Number

PASS, FAIL, CANNOT_TELL = "pass", "fail", "cannot tell"
USE, BAKE, DISCARD = "use now", "bake first", "discard"
UNPLUG = "Unplug the set"
EMPTY = "Discharge the capacitors and measure them, twice"
CELL = "Take the backup cell out, shield electrolytics and plastic"
FUMES = "Switch the fume extraction on"
HEAT = "Switch the preheater on, then the hot air"
LIFT = "Lift the chip when the solder around it shines"


@practice_question
def preheat_time(draw: Draw) -> Number:
    first, second, answer = draw.pick([(70, 160, 90), (95, 170, 75), (60, 165, 105), (80, 145, 65)])
    return Number(
        prompt=f"A joint passes 150{NBSP}°C at {first}{NBSP}s and 200{NBSP}°C at {second}{NBSP}s. "
        "How long was its preheat?",
        unit="s",
        answer=answer,
        mistakes=[Mistake(second, "You took the end. When did it begin?")],
        hint="From the first rise through 150 °C to the first rise through 200 °C.",
    )


@practice_question
def which_limit(draw: Draw) -> Choice:
    said, answer = draw.pick(
        [
            ("It reached 263 °C; its Tc is 260 °C", "The peak"),
            ("It was above 217 °C for 41 s", "The time above liquidus"),
            ("From 150 to 200 °C it took 35 s", "The preheat"),
        ]
    )
    options = ("The peak", "The time above liquidus", "The preheat")
    return Choice(
        prompt=f"Lead-free. {said}. Which criterion does it fail?",
        options=draw.shuffle(options),
        answer=answer,
        hint="Go through the table: 60 to 120 s, 60 to 150 s, at most Tc.",
    )


@practice_question
def floor_hours(draw: Draw) -> Number:
    level, out, answer = draw.pick([("3", 68, 100), ("4", 22, 50), ("3", 100, 68), ("5", 8, 40)])
    return Number(
        prompt=f"A part of level {level} lay open for {out} h in good air. "
        "How many hours are left?",
        unit="",
        answer=answer,
        mistakes=[Mistake(out, "That is what is used.")],
        hint="Floor life: level 3 168 h, level 4 72 h, level 5 48 h.",
    )


@question(points=2)
def time_above(draw: Draw) -> Number:
    points, answer, whole, flat = draw.pick(
        [
            ("(150, 197) (210, 247) (230, 247) (270, 197)", 80, 120, 20),
            ("(180, 200) (220, 240) (240, 240) (280, 200)", 66, 100, 20),
            ("(160, 197) (220, 237) (230, 237) (250, 197)", 50, 90, 10),
            ("(200, 207) (240, 247) (260, 247) (280, 207)", 65, 80, 20),
            ("(150, 187) (220, 257) (235, 257) (285, 207)", 95, 135, 15),
            ("(170, 197) (210, 237) (225, 237) (265, 197)", 55, 95, 15),
            ("(200, 177) (260, 237) (280, 237) (310, 207)", 60, 110, 20),
            ("(190, 207) (230, 247) (255, 247) (315, 187)", 85, 125, 25),
            ("(100, 197) (150, 247) (180, 247) (240, 187)", 90, 140, 30),
            ("(200, 197) (220, 237) (240, 237) (260, 197)", 40, 60, 20),
        ]
    )
    return Number(
        unit="s",
        answer=answer,
        tolerance=0.01,
        prompt="Part of a lead-free profile, as points of seconds and °C with straight lines "
        f"between them:\n\n`{points}`\n\nHow long was the joint above 217{NBSP}°C?",
        mistakes=[
            Mistake(whole, "You counted from the first point to the last. Where is 217 °C?"),
            Mistake(flat, "You counted the flat top only. The slopes are above 217 °C in part."),
        ],
        hint="On each slope work out when it meets 217 °C. Then take the time between.",
    )


@question(points=2)
def ramp(draw: Draw) -> Number:
    at, liquid, peak, answer, upside_down, from_cold = draw.pick(
        [
            (200, 220, 242, 1.25, 0.8, 217 / 220),
            (150, 162, 253, 3.0, 1 / 3, 228 / 162),
            (140, 160, 249, 1.6, 0.625, 224 / 160),
            (120, 130, 257, 4.0, 0.25, 232 / 130),
            (160, 180, 247, 1.5, 2 / 3, 222 / 180),
            (170, 180, 242, 2.5, 0.4, 217 / 180),
            (180, 200, 257, 2.0, 0.5, 232 / 200),
        ]
    )
    return Number(
        unit="",
        answer=answer,
        tolerance=0.02,
        prompt=f"Lead-free: the joint is at 25{NBSP}°C at 0{NBSP}s. It passes 217{NBSP}°C at "
        f"{at}{NBSP}s and reaches its peak of {peak}{NBSP}°C at {liquid}{NBSP}s. How steep is its "
        "ramp up to the peak, in K/s? Type the number only.",
        mistakes=[
            Mistake(upside_down, "Seconds per kelvin. Turn it round."),
            Mistake(from_cold, "You began at room temperature. From where does this ramp count?"),
        ],
        hint="From liquidus to the first point at the peak: kelvin divided by seconds.",
    )


@question(points=3)
def highest_peaks(draw: Draw) -> Table:
    thin = draw.pick([("1.0 mm, 200 mm³", "260"), ("1.2 mm, 900 mm³", "260")])
    middle = draw.pick([("2.0 mm, 900 mm³", "250"), ("2.2 mm, 1500 mm³", "250")])
    thick = draw.pick([("3.0 mm, 500 mm³", "245"), ("2.0 mm, 2500 mm³", "245")])
    rows = draw.shuffle([thin, middle, thick])
    hint = "Find the row by thickness first, then the column by volume. A big body gets less heat."
    return Table(
        prompt="Lead-free parts. Which temperature in °C may the body of each reach? Use the table "
        "of the lesson, under `Which peak may a body see?`.",
        cells={
            row: {"Tc in °C": Choice(options=("260", "250", "245"), answer=tc, hint=hint)}
            for row, tc in rows
        },
    )


@question(points=3)
def criteria(draw: Draw) -> Table:
    close = draw.pick(
        [
            ("peak 259 °C; at most 260 °C", CANNOT_TELL),
            ("peak 261 °C; at most 260 °C", CANNOT_TELL),
        ]
    )
    good = draw.pick([("peak 252 °C; at most 260 °C", PASS), ("peak 247 °C; at most 250 °C", PASS)])
    hot = draw.pick([("peak 264 °C; at most 260 °C", FAIL), ("peak 249 °C; at most 245 °C", FAIL)])
    time = draw.pick(
        [
            ("146 s above 217 °C, but 141 to 153 s by the sensor; 60 to 150 s", CANNOT_TELL),
            ("62 s above 217 °C, but 57 to 66 s by the sensor; 60 to 150 s", CANNOT_TELL),
        ]
    )
    short = ("41 s above 217 °C, 37 to 45 s by the sensor; 60 to 150 s", FAIL)
    rows = draw.shuffle([close, good, hot, time, short])
    return Table(
        prompt="The thermocouple is good to ±2.5 °C. Judge each line: pass, fail, or cannot tell.",
        cells={row: {"verdict": _verdict(right)} for row, right in rows},
    )


def _verdict(right: str) -> Choice:
    hint = "Add and take away the uncertainty. On which side of the limit is each end?"
    return Choice(options=(PASS, FAIL, CANNOT_TELL), answer=right, hint=hint)


LONGER_PREHEAT = "A longer preheat, then cooler air for a longer time"
# Seconds of preheat of the tries that ask for something else.
MENDED_BY = {
    150: "A shorter preheat, then the same air for the same time",
    90: "The same preheat and the same air, but for less time",
    80: "The same preheat, then warmer air for a longer time",
}


@question(points=2)
def repair(draw: Draw) -> Choice:
    preheat, above, peak, points = draw.pick(
        [
            (45, 40, 263, "0 25, 60 150, 105 200, 118 217, 136 263, 140 263, 158 217, 220 25"),
            (38, 44, 264, "0 25, 60 150, 98 200, 110 217, 130 264, 136 264, 154 217, 220 25"),
            (31, 48, 266, "0 25, 70 150, 101 200, 112 217, 134 266, 140 266, 160 217, 230 25"),
            (150, 70, 250, "0 25, 70 150, 220 200, 230 217, 250 250, 275 250, 300 217, 370 25"),
            (90, 170, 254, "0 25, 75 150, 165 200, 175 217, 205 252, 312 254, 345 217, 420 25"),
            (80, 38, 232, "0 25, 70 150, 150 200, 165 217, 185 232, 190 232, 203 217, 270 25"),
        ]
    )
    hotter = "Hotter air for a shorter time"
    closer = "The same recipe with the nozzle closer"
    straight = "No preheat at all: the board is then hot for less time"
    right, options = LONGER_PREHEAT, [LONGER_PREHEAT, hotter, closer, straight]
    mistakes = [
        Mistake(hotter, "The peak is too high already, and the time too short."),
        Mistake(closer, "Closer is hotter at the part. Look at the peak."),
        Mistake(straight, "What happens to a cold board with one hot spot?"),
    ]
    if preheat in MENDED_BY:
        right, options = MENDED_BY[preheat], [LONGER_PREHEAT, *MENDED_BY.values()]
        look = "Set each of the three beside its limits. Which one is outside, and on which side?"
        mistakes = [Mistake(one, look) for one in options if one != right]
    return Choice(
        prompt=f"A first try at a lead-free chip (Tc 260{NBSP}°C): preheat {preheat}{NBSP}s, "
        f"{above}{NBSP}s above 217{NBSP}°C, peak {peak}{NBSP}°C. What do you change?",
        picture=lambda: _first_try(points),
        options=draw.shuffle(options),
        answer=right,
        mistakes=mistakes,
    )


def _first_try(points: str):
    from repairlib.heat import judge_profile, read_points, standard_limits
    from repairlib.show.reflow_chart import draw_reflow

    profile = read_points(points, "first try")
    return draw_reflow(judge_profile(profile, standard_limits("Pb-free", 260), 0))


@question(points=2)
def strange_log(draw: Draw) -> Choice:
    heading, top, other = draw.pick(
        [
            ("TC1", 473, 245),
            ("TC1", 482, 250),
            ("TC1", 464, 240),
            ("TC1 °F", 473, 245),
            ("TC1 °F", 464, 240),
            ("TC1 °F", 455, 235),
            ("TC1 °C", 284, 140),
            ("TC1 °C", 302, 150),
            ("TC1 °F", 446, 230),
            ("TC1 °F", 482, 250),
            ("TC1 °C", 275, 135),
            ("TC1 °C", 293, 145),
        ]
    )
    unknown = "Nothing yet: I find out the unit of this log first"
    failed = f"It failed: {top} °C is far too hot for this part"
    fahrenheit = f"Its peak is {other} °C, within the limit of this part"
    rescale = "I scale it down until its peak lies just within the limit"
    right = {"TC1": unknown, "TC1 °F": fahrenheit, "TC1 °C": failed}[heading]
    hints = {
        unknown: "Read the headings again.",
        failed: "Nobody wrote that these are °C.",
        fahrenheit: "Likely is not known. Where could you look it up?",
        rescale: "Then the log says what you want, not what was.",
    }
    if heading != "TC1":
        hints |= dict.fromkeys((failed, fahrenheit), "Which unit do the headings name?")
    return Choice(
        prompt=f"A log has the headings `time` and `{heading}`. Its highest reading is `{top}`, "
        f"and {top}{NBSP}°F is {other}{NBSP}°C. The part may see 260{NBSP}°C. What do you write "
        "down about its peak?",
        options=draw.shuffle([unknown, failed, fahrenheit, rescale]),
        answer=right,
        mistakes=[Mistake(option, hint) for option, hint in hints.items() if option != right],
    )


@question(points=2)
def hours_left(draw: Draw) -> Number:
    level, life, first, second, answer, only_last, used = draw.pick(
        [
            ("2a", 672, 100, 200, 372, 472, 300),
            ("3", 168, 30, 50, 88, 118, 80),
            ("3", 168, 20, 60, 88, 108, 80),
            ("4", 72, 10, 30, 32, 42, 40),
            ("5", 48, 10, 15, 23, 33, 25),
            ("2a", 672, 150, 60, 462, 612, 210),
            ("4", 72, 12, 20, 40, 52, 32),
            ("3", 168, 45, 25, 98, 143, 70),
            ("3", 168, 50, 40, 78, 128, 90),
            ("4", 72, 15, 10, 47, 62, 25),
            ("5", 48, 5, 12, 31, 36, 17),
            ("2a", 672, 200, 120, 352, 552, 320),
        ]
    )
    return Number(
        unit="",
        answer=answer,
        margin=0.1,
        tolerance=0,
        prompt=f"A chip of level {level} lay open for {first} h, then 20 h in a dry cabinet at 8 % "
        f"RH, then open again for {second} h. The air was good. Its floor life is {life} h. "
        "How many hours are left?",
        mistakes=[
            Mistake(only_last, "The dry cabinet stopped the clock. Did it turn it back?"),
            Mistake(used, "That is what is used. The question is what is left."),
            Mistake(answer - 20, "In dry enough air the clock stands still."),
        ],
        hint="Add up the time in the open. Take it from the floor life.",
    )


@question(points=2)
def decisions(draw: Draw) -> Table:
    fresh = draw.pick(
        [
            ("level 3, open 150 h at 24 °C and 50 %", USE),
            ("level 2a, open 600 h at 25 °C and 45 %", USE),
        ]
    )
    late = draw.pick(
        [
            ("level 4, open 80 h at 24 °C and 50 %", BAKE),
            ("level 5, open 50 h at 22 °C and 40 %", BAKE),
        ]
    )
    damp = draw.pick(
        [
            ("level 3, open 20 h at 28 °C and 75 %", BAKE),
            ("level 3, open 10 h at 34 °C and 55 %", BAKE),
        ]
    )
    worn = ("level 3, open 10 h at 24 °C and 50 %, reflowed 3 times", DISCARD)
    rows = draw.shuffle([fresh, late, damp, worn])
    hints = {
        USE: "Hold the hours against the floor life of its level.",
        BAKE: "Two questions: how long, and in which air?",
        DISCARD: "Count its passes through reflow.",
    }
    return Table(
        prompt="Chips for reflow. The maker allows three passes in all. Decide for each.",
        cells={
            row: {"decision": Choice(options=(USE, BAKE, DISCARD), answer=right, hint=hints[right])}
            for row, right in rows
        },
    )


@question(points=2)
def board_with_a_cell(draw: Draw) -> Choice:
    cell, late = draw.pick(
        [
            ("a rechargeable backup cell", 20),
            ("a lithium coin cell", 16),
            ("a lithium coin cell", 30),
        ]
    )
    right = "I take the cell off the board first, then I bake"
    oven = "Into the oven at 125 °C as it is: the table says so"
    cooler = "Into the oven at 90 °C as it is: that is gentler"
    use = "I use it now: it is only some hours late"
    return Choice(
        prompt=f"A chip on a board is {late} h past its floor life, and hot air will take it above "
        f"200{NBSP}°C. The board carries {cell}. What do you do?",
        options=draw.shuffle([right, oven, cooler, use]),
        answer=right,
        mistakes=[
            Mistake(oven, "What does a cell do in an oven? Look at the board.", hazard="batteries"),
            Mistake(cooler, "No cell of this kind is made for that heat.", hazard="batteries"),
            Mistake(use, "What does the water in its body do at 200 °C?"),
        ],
    )


@question(points=3)
def order_of_work(draw: Draw) -> Order:
    steps = (UNPLUG, EMPTY, CELL, FUMES, HEAT, LIFT)
    return Order(
        prompt="A chip beside the power supply is to come off with hot air. Put the steps in "
        "order, first one first.",
        steps=steps,
        shown=draw.shuffle(steps),
        mistakes=[
            Mistake(
                before(EMPTY, UNPLUG),
                "You reach into a set that still has its plug in.",
                hazard="mains",
            ),
            Mistake(
                before(CELL, EMPTY),
                "You touch the board before you know that it is empty.",
                hazard="stored charge",
            ),
            Mistake(
                before(HEAT, EMPTY),
                "Hot air on a charged board: what is in the capacitor beside it?",
                hazard="stored charge",
            ),
            Mistake(
                before(HEAT, CELL),
                "Hot air reaches the cell and the electrolytics. They burst.",
                hazard="batteries",
            ),
            Mistake(
                before(HEAT, FUMES),
                "The flux smokes already. Who breathes it?",
                hazard="fumes and flux",
            ),
            Mistake(
                lambda steps: any(before(LIFT, one)(steps) for one in (UNPLUG, EMPTY)),
                "Your hands are on a board that may be live or charged.",
                hazard="stored charge",
            ),
            Mistake(before(LIFT, HEAT), "Cold solder holds. What comes off with the chip?"),
        ],
        hint="What could hurt you, what could burst, and what will you breathe? In this order.",
    )
