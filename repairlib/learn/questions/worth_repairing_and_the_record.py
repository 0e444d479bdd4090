"""The exercise of lesson 13: what a repair costs and brings, which set first, and the job card.

Each draw gives the figures; the answers follow from the rooms `worth` and `record`, which the tests
hold to figures worked by hand. Sources: expected value as an encyclopaedia defines it, zero gain by
break-even analysis, most gain for each unit of what is scarce by the rule of the limiting factor.
What is handed on is our caution; how an entry is corrected is common practice.
"""

from __future__ import annotations

from repairlib.core.draws import Draw
from repairlib.core.verdicts import DEPENDS, DO_NOT_REPAIR, REPAIR
from repairlib.learn.arranging import Order, Table, before
from repairlib.learn.asking import practice_question, question
from repairlib.learn.question import Choice, Mistake, Number
from repairlib.record import Card, Entry
from repairlib.stored_charge import QUALIFIED
from repairlib.worth import Job, decide_on, which_first

SURE = 100  # per cent
WHEN = "2026-11-29T10:00:00+00:00"


@practice_question
def share_of_a_tool(draw: Draw) -> Number:
    cost, jobs = draw.pick([(60, 6), (48, 8), (90, 10)])
    return Number(
        prompt=f"A tool costs {cost} tokens and will serve {jobs} jobs. How much of it does one "
        "job pay?",
        unit="",
        answer=Job(0, 0, 0, SURE, SURE, tools=cost, jobs=jobs).spent,
        mistakes=[Mistake(cost, "That is the whole tool. Who pays for the others?")],
        hint="Divide it by the jobs.",
    )


@practice_question
def even(draw: Draw) -> Choice:
    chance, low, high = draw.pick([(55, 40, 75), (45, 30, 60), (70, 60, 90)])
    depends = "It depends: I look for a better guess of the chance"
    return Choice(
        prompt=f"A repair is even at a chance of {chance} %. Your range is {low} % to {high} %. "
        "What does that tell?",
        options=draw.shuffle(["It pays", "It does not pay", depends]),
        answer=depends,
        hint="Look at each end of the range: is it above or below the point where it is even?",
    )


@practice_question
def cut_short(draw: Draw) -> Choice:
    number = draw.integer(4, 9)
    right = "The half line stays as it is, and I write the entry anew below it"
    delete = "I delete the half line first, so that the card is clean"
    return Choice(
        prompt=f"The computer lost its power while entry {number} was being written. Half a line "
        "stands at the end of the card. What do you do?",
        options=draw.shuffle([right, delete, "I begin a new card"]),
        answer=right,
        hint="A card is only ever written on at its end.",
    )


@question(points=2)
def what_is_spent(draw: Draw) -> Number:
    parts, hours, worth, tools, jobs = draw.pick(
        [
            (6, 2.5, 6, 60, 6),
            (4, 3, 6, 24, 8),
            (5, 2, 8, 45, 9),
            (9, 1.5, 10, 80, 10),
            (3, 4, 5, 30, 6),
            (7, 2, 9, 40, 8),
            (8, 3, 7, 36, 6),
            (12, 2, 9, 28, 7),
            (10, 1, 9, 33, 11),
            (6, 3, 9, 56, 8),
            (3, 1.5, 4, 30, 3),
        ]
    )
    job = Job(0, parts, hours, SURE, SURE, hour_worth=worth, tools=tools, jobs=jobs)
    return Number(
        prompt=f"Parts {parts} tokens. {hours:g} h of work, an hour is worth {worth} tokens. A "
        f"tool for {tools} tokens that will serve {jobs} jobs. How many tokens are spent on this "
        "try? Type the number only.",
        unit="",
        answer=job.spent,
        mistakes=[
            Mistake(job.spent - tools / jobs + tools, "This job pays for the whole tool."),
            Mistake(job.spent - tools / jobs, "Where is its share of the tool?"),
            Mistake(parts + tools / jobs, "Is the time free here?"),
        ],
        hint="Three things: parts, time, and a share of the tool.",
    )


@question(points=2)
def expected_gain(draw: Draw) -> Number:
    value, parts, hours, worth, chance = draw.pick(
        [
            (30, 2.5, 1.5, 6, 80),
            (60, 8, 2, 5, 70),
            (40, 6, 1.5, 8, 60),
            (90, 12, 3, 7, 50),
            (50, 5, 2, 4, 60),
            (70, 10, 2.5, 8, 75),
            (80, 9, 2, 6, 50),
            (45, 4, 1, 8, 60),
            (100, 14, 4, 5, 60),
            (36, 3, 1.5, 4, 75),
            (64, 6, 2.5, 8, 75),
        ]
    )
    job = Job(value, parts, hours, chance, chance, hour_worth=worth)
    return Number(
        prompt=f"A set is worth {value} tokens when it works. Parts {parts:g}, {hours:g} h at "
        f"{worth} tokens. The chance that it works is {chance} %. A failed try costs nothing on "
        "top. What is the expected gain in tokens? Type the number only.",
        unit="",
        answer=job.gain(chance),
        mistakes=[
            Mistake(job.gain(SURE), "You counted it as sure. What about the chance?"),
            Mistake(job.gain(chance) + hours * worth, "Is the time free here?"),
            Mistake(
                (value - job.spent) * chance / 100,
                "What is spent is spent, whether it works or not.",
            ),
        ],
        hint="Chance times what success earns, less all that is spent.",
    )


@question(points=2)
def another_set(draw: Draw) -> Number:
    value, other, chance, parts = draw.pick(
        [
            (80, 45, 60, 20),
            (70, 40, 75, 18),
            (90, 60, 50, 22),
            (65, 30, 80, 15),
            (100, 70, 90, 35),
            (55, 35, 80, 12),
            (75, 50, 80, 17),
            (60, 40, 70, 10),
            (85, 55, 60, 13),
            (120, 80, 75, 34),
            (50, 30, 90, 13),
        ]
    )
    job = Job(value, parts, 0, chance, chance, replacement=other)
    return Number(
        prompt=f"A set is worth {value} tokens to its owner. Another one that does the same costs "
        f"{other}. The try costs {parts} tokens in all, the chance is {chance} %. What is the "
        "expected gain in tokens? Type the number only.",
        unit="",
        answer=job.gain(chance),
        mistakes=[
            Mistake(
                value * chance / 100 - parts,
                "Would its owner spend that much, with another one to be had?",
            ),
            Mistake(other - parts, "You counted it as sure. What about the chance?"),
        ],
        hint="What does success really save?",
    )


@question(points=2)
def break_even_chance(draw: Draw) -> Number:
    value, spent, failed = draw.pick(
        [
            *((50, 25, 5), (60, 30, 10), (80, 26, 20), (45, 20, 15), (70, 25, 10), (55, 30, 5)),
            *((40, 18, 10), (90, 33, 10), (48, 24, 2), (70, 26, 10), (35, 15, 5)),
        ]
    )
    job = Job(value, spent, 0, SURE, SURE, failed=failed)
    return Number(
        prompt=f"Success earns {value} tokens. The try costs {spent}. If it fails, the set must "
        f"be disposed of, which costs {failed} more. At which chance, in %, does the repair "
        "neither gain nor lose?",
        unit="%",
        answer=job.break_even_chance(),
        mistakes=[
            Mistake(100 * spent / value, "Where is the cost of a failed try?"),
            Mistake(
                100 * (spent + failed) / value,
                "A try that works saves that cost: it stands below the line too.",
            ),
        ],
        hint="Spent and failed above the line, earned and failed below it.",
    )


@question(points=4)
def decisions(draw: Draw) -> Table:
    pays = draw.pick([(30, 11, 70, 90), (50, 15, 60, 80), (40, 9, 50, 90)])
    turns = draw.pick([(50, 25, 40, 75), (60, 30, 30, 70), (40, 20, 40, 60)])
    loses = draw.pick([(35, 31, 20, 50), (20, 18, 40, 70), (50, 45, 30, 60)])
    hazard = draw.pick(["mains", "high-voltage tubes", "stored charge"])
    jobs = [
        Job(value, spent, 0, low, high)
        for value, spent, low, high in draw.shuffle([pays, turns, loses])
    ]
    jobs.append(Job(80, 20, 0, 75, 95, hazards=(hazard,)))
    return Table(
        prompt="The expected gain at both ends of the chance, and what is dangerous about the "
        "set. Decide for each.",
        cells={_row(job): {"decision": _decision(decide_on(job).verdict, hazard)} for job in jobs},
    )


def _row(job: Job) -> str:
    low, high = (job.gain(chance) for chance in (job.success_low, job.success_high))
    named = ", ".join(job.hazards) or "none"
    return f"{low:+.4g} tokens to {high:+.4g} tokens; hazards: {named}"


def _decision(right: str, hazard: str) -> Choice:
    hint = "Are both ends above zero, both below, or one of each?"
    tempted = [
        Mistake(one, "A number does not make it less dangerous.", hazard=hazard)
        for one in (REPAIR, DEPENDS)
        if right == QUALIFIED
    ]
    options = (REPAIR, DEPENDS, DO_NOT_REPAIR, QUALIFIED)
    return Choice(options=options, answer=right, hint=hint, mistakes=tempted)


@question(points=2)
def which_set_first(draw: Draw) -> Order:
    sets = draw.pick(
        [
            (("clock", 20, 4), ("label maker", 12, 1.5), ("lamp", 6, 0.5), ("scanner", 9, 2)),
            (("amplifier", 30, 6), ("clock", 12, 2), ("lamp", 9, 1), ("scanner", 16, 4)),
            (("clock", 24, 8), ("label maker", 10, 2), ("lamp", 4, 0.5), ("scanner", 18, 3)),
            (("amplifier", 24, 6), ("lamp", 5, 0.5), ("clock", 9, 1.5), ("scanner", 14, 4)),
            (("scanner", 28, 8), ("label maker", 9, 1), ("amplifier", 24, 5), ("lamp", 3, 0.5)),
            (("lamp", 8, 2), ("scanner", 21, 3), ("clock", 10, 1), ("amplifier", 30, 5)),
            (("label maker", 8, 0.5), ("scanner", 20, 2), ("amplifier", 33, 6), ("lamp", 4, 0.5)),
            (("scanner", 9, 1), ("lamp", 6, 1), ("amplifier", 28, 4), ("clock", 12, 2.5)),
            (("amplifier", 18, 1.5), ("clock", 22, 4), ("label maker", 10, 1), ("scanner", 14, 2)),
            (("scanner", 16, 1), ("clock", 9, 1), ("lamp", 5, 1), ("label maker", 20, 2.5)),
        ]
    )
    jobs = [Job(gain, 0, hours, SURE, SURE, name=name) for name, gain, hours in sets]
    steps = tuple(one.job.name for one in which_first(jobs))
    most = max(jobs, key=lambda job: job.value).name
    told = "; ".join(f"{name}: gains {gain} tokens in {hours:g} h" for name, gain, hours in sets)
    return Order(
        prompt="All of them pay at both ends of the chance, and none is dangerous. Hours are "
        f"what the bench runs out of. {told}. Put the sets in the order in which you take them.",
        steps=steps,
        shown=draw.shuffle(steps),
        mistakes=[Mistake(before(most, steps[0]), "You took the largest gain. How long is it?")],
        hint="How much does each gain in one hour?",
    )


@question(points=2)
def handed_on(draw: Draw) -> Choice:
    what, hazard = draw.pick(
        [
            ("A desk radio: its worn capacitors sit on the mains side of its supply", "mains"),
            ("An old screen with a picture tube", "high-voltage tubes"),
            ("A photo flash: its large capacitor is charged to 300 V", "stored charge"),
        ]
    )
    right = "It gets no place in my row: a qualified person decides and does the work"
    first = "It comes first: nothing else on the shelf gains as much"
    last = "It comes last, with the plug out and one hand behind my back"
    lower = "I type a lower chance until it no longer pays"
    return Choice(
        prompt=f"{what}. The sum says that it gains 39 to 55 tokens, the most of the shelf. You "
        "are not trained for that work. Where does it stand?",
        options=draw.shuffle([right, first, last, lower]),
        answer=right,
        mistakes=[
            Mistake(first, "What does the sum leave out?", hazard=hazard),
            Mistake(last, "Later is not less dangerous.", hazard=hazard),
            Mistake(lower, "Then the sum says what you want. And the next one believes it."),
        ],
    )


@question(points=2)
def correct_an_entry(draw: Draw) -> Choice:
    number, wrong, meant = draw.pick(
        [
            *((7, "2.10 kΩ", "2.10 Ω"), (5, "47 V", "4.7 V"), (9, "C12", "C21")),
            *((6, "35 V", "3.5 V"), (8, "0.22 µF", "22 µF"), (11, "R13", "R31")),
            *((4, "16 V", "1.6 V"), (12, "90 Ω", "9.0 Ω"), (13, "D2", "D7")),
        ]
    )
    right = f"I write a new entry in place of entry {number}"
    change = f"I open the file and change entry {number}"
    strike = "I write a note: one of the entries above is wrong"
    anew = "I begin a new card and copy the rest"
    return Choice(
        prompt=f"Entry {number} of the card says {wrong}. It should say {meant}. What do you do?",
        options=draw.shuffle([right, change, strike, anew]),
        answer=right,
        mistakes=[
            Mistake(change, "Then nobody can tell what was written at the time."),
            Mistake(strike, "Which one? And what is right?"),
            Mistake(anew, "Two cards of one job: which of them holds?"),
        ],
    )


@question(points=2)
def hours_on_the_card(draw: Draw) -> Number:
    first, wrong, meant = draw.pick(
        [
            *((45, 15, 75), (30, 10, 60), (90, 20, 45), (20, 15, 70), (50, 10, 40), (25, 5, 95)),
            *((35, 10, 70), (40, 25, 110), (15, 5, 45), (55, 15, 110), (80, 30, 100)),
        ]
    )
    spent = {3: first, 7: wrong, 9: meant}
    entries = [
        Entry(number, WHEN, "Ana", "hours", {"spent": f"{minutes} min"}, 7 if number == 9 else None)
        for number, minutes in spent.items()
    ]
    return Number(
        prompt=f"A card has three entries of hours:\n\n`3: {first} min`\n\n`7: {wrong} min`\n\n"
        f"`9: {meant} min, in place of 7`\n\nHow many hours were worked? Type the number only.",
        unit="",
        answer=Card("card", entries).hours,
        mistakes=[
            Mistake((first + wrong + meant) / 60, "Does each of the three entries still stand?"),
            Mistake((first + wrong) / 60, "Which of the two stands in the place of the other?"),
            Mistake(first + meant, "Those are minutes."),
        ],
        hint="Cross out what was corrected, add up the rest, divide by 60.",
    )
