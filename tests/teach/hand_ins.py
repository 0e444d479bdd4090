"""Hand-ins of an invented group, whose members type as people do: variously, and partly wrong."""

from itertools import permutations
from random import Random

from repairlib.core.quantity import NBSP, engineering
from repairlib.core.version import VERSION
from repairlib.learn import LESSONS, Choice, Number, Order, Table
from repairlib.learn.bench_question import Bench
from repairlib.learn.exercise import module_of
from repairlib.learn.group import Group, Member
from repairlib.learn.hand_in import KIND
from repairlib.learn.hand_in import file_of as as_file
from repairlib.learn.learner import member_of
from repairlib.learn.remembered import asked_of
from tests.learn.asking import right_answer

EVENING = 1_750_000_000_000  # ms


def group_of_size(size, lessons=LESSONS):
    """A group of that many members with words of their own."""
    members = (Member(f"Somebody Number {n}", f"word{n}") for n in range(size))
    return Group("Tuesday bench", tuple(members), tuple(lessons))


def typed_by_somebody(ask, dice: Random, knows: float = 0.7):
    """One answer to a question, right with this chance, in one of the ways in which people type."""
    if isinstance(ask, Table):
        return {
            row: {column: typed_by_somebody(cell, dice, knows) for column, cell in cells.items()}
            for row, cells in ask.cells.items()
        }
    if isinstance(ask, Bench):
        return "look\ngive up\n"
    right = dice.random() < knows
    if isinstance(ask, Choice):
        return ask.answer if right else dice.choice(ask.options)
    if isinstance(ask, Order):
        steps = list(ask.steps)
        if not right:
            one, other = dice.sample(range(len(steps)), 2)
            steps[one], steps[other] = steps[other], steps[one]
        return {step: str(steps.index(step) + 1) for step in ask.shown}
    return _number(ask, dice, right)


def _number(ask: Number, dice: Random, right: bool) -> str:
    """A number as people type it: mostly short, in a few spellings; now and then worked out."""
    value = ask.answer
    if not right:
        usual = [one.when for one in ask.mistakes if isinstance(one.when, float)]
        value = dice.choice([*usual, value * 10, value / 1000, value * dice.randrange(2, 90) / 20])
    elif dice.random() < 0.1:
        value *= 1 + dice.uniform(-0.9, 0.9) * ask.tolerance
    text = engineering(value, ask.unit, dice.choice([None, 3, 3, 4]))
    spelt = {NBSP: dice.choice(["", " "]), "µ": dice.choice(["µ", "u"])}
    spelt["."] = dice.choice([".", ".", ".", ","])
    for sign, instead in spelt.items():
        text = text.replace(sign, instead)
    if dice.random() < 0.04:
        return dice.choice(["", "?", text.split()[0][:1], "no idea"])
    return dice.choice(["", "", "", "", "", "about "]) + text


def content_of(group, member, dice, lessons=LESSONS, at=EVENING, partner=""):
    """What a member hands in: each question with its last answer and one to four tries."""
    learner = member_of(group, member)
    answered, tries = {}, {}
    for lesson in lessons:
        found = {"answers": {}, "asked": {}, "at": {}}
        lines = []
        for asked in asked_of(module_of(lesson), learner.draw(lesson)):
            question, moment = asked.question, at - dice.randrange(10**6, 10**8)
            for chance in (0.5, 0.7, 0.8, 0.9)[: dice.choice([1, 1, 2, 2, 3, 4])]:
                typed = typed_by_somebody(question, dice, chance)
                judged = question.judge(typed)
                moment += dice.randrange(6_000, 90_000)
                short = question.in_short(typed)
                lines.append([moment, question.id, short, judged.state, list(judged.hazards)])
            found["answers"][question.id] = typed
            found["at"][question.id] = moment
            found["asked"][question.id] = {"fingerprint": asked.fingerprint(), "version": VERSION}
        found["unsafe"] = sorted({line[1] for line in lines if line[3] == "unsafe"})
        answered[lesson] = found | ({"partner": partner} if partner else {})
        tries[lesson] = sorted(lines)
    content = {"format": 1, "kind": KIND, "name": member.name, "group": group.name}
    return content | {
        "partner": partner,
        "at": at,
        "version": VERSION,
        "lessons": answered,
        "tries": tries,
    }


def hand_in_of(group, member, **how) -> bytes:
    """The file of one member, the same each time."""
    return as_file(content_of(group, member, Random(f"{member.name} {how}"), **how))


def all_right(group, member, at=EVENING, unsafe=(), partner=""):
    """What a member hands in who has all right at first try, but first answers these dangerously.

    `unsafe` are (lesson, id); what is dangerous is put right at the second try.
    """
    learner = member_of(group, member)
    content = content_of(group, member, Random(0), group.lessons, at, partner)
    for lesson in group.lessons:
        found, lines = content["lessons"][lesson], []
        for place, asked in enumerate(asked_of(module_of(lesson), learner.draw(lesson))):
            question, moment = asked.question, at - 10**6 + place * 20_000
            tried = [right_answer(question)]
            if (lesson, question.id) in unsafe:
                tried.insert(0, dangerous_answer(question))
            for number, typed in enumerate(tried):
                judged, short = question.judge(typed), question.in_short(typed)
                lines.append([moment + number * 9000, question.id, short, judged.state, []])
            found["answers"][question.id] = tried[-1]
        found["unsafe"] = sorted({line[1] for line in lines if line[3] == "unsafe"})
        content["tries"][lesson] = lines
    return content


def dangerous_answer(question):
    """What could hurt whoever follows it: an option, an order, or what a known mistake gives."""
    if isinstance(question, Table):
        cells = {row: dict.fromkeys(of, "") for row, of in question.cells.items()}
        tried = (
            cells | {row: cells[row] | {column: dangerous_answer(cell)}}
            for row, of in question.cells.items()
            for column, cell in of.items()
        )
    elif isinstance(question, Choice):
        tried = iter(question.options)
    elif isinstance(question, Order):
        orders = permutations(question.steps)
        tried = ({step: str(one.index(step) + 1) for step in question.shown} for one in orders)
    else:
        usual = [one.when for one in question.mistakes if isinstance(one.when, float)]
        tried = (engineering(value, question.unit) for value in (*usual, 1.0))
    return next((one for one in tried if question.judge(one).state == "unsafe"), "")
