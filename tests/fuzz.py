"""Any input against all questions and all calculators: a judgement, a finding or one clear line.

    python -m tests.fuzz answers 100000
    python -m tests.fuzz calls 400000

A number behind that repeats a run, which names it in its first line. Exit status 1, with what was
given, when anything else comes out. Short runs are in the suite.
"""

from __future__ import annotations

import json
import random
import re
import sys
from collections.abc import Iterator
from math import isfinite

from repairlib.core import calculator
from repairlib.core.calculators import all_calculators
from repairlib.core.errors import RepairlibError
from repairlib.core.finding import Finding
from repairlib.core.quantity import UNITS
from repairlib.learn import LESSONS, Learner, Order, Table, questions_of
from repairlib.learn.bench_question import Bench
from repairlib.learn.marking import mark_question

STATES = {"right", "partly right", "wrong", "unsafe", "unanswered", "cannot read"}
FIGURES = (
    *("0", "1", "-1", "9" * 20, "1e308", "-1e308", "9e-324", "1e-320", "1e999", "1e-999"),
    *("0.0", "-0", "4.7", "4,7", "1,000", "1'000", "5" * 70, "٣", "²", "½", "inf", "nan"),
)
UNIT_WORDS = ("", *UNITS, "µF", "mΩ", "kHz", "h", "min", "d", "years", "V/s", "°F", "K")
SIGNS = (
    *(",", ";", ", ;", ">", ">>", "|", "a", "b", "abc", "cab", "a > b", "\x00", "\x1b[2J"),
    *("\u202e", "\ud800", "🔥", "\n", " ", "=1+1", "'", '"', "{}", "%s", "a" * 2000, "ß", "ǰ"),
)


MOVES = ("look; ", "look C1\n", "plug in; ", "volts C1; ", "unplug\n", "give up", "wait 1 min; ")


def any_text(chance: random.Random, likely: tuple[str, ...] = ()) -> str:
    """A text made of what people type and of what nobody should."""
    made = [
        lambda: f"{chance.choice(FIGURES)} {chance.choice(UNIT_WORDS)}",
        lambda: f"{10 ** chance.uniform(-330, 308)!r}{chance.choice(UNIT_WORDS)}",
        lambda: chance.choice(SIGNS),
        lambda: "".join(chance.choices(SIGNS + FIGURES + likely, k=chance.randint(1, 5))),
        lambda: "".join(chr(chance.randrange(0x110000)) for _ in range(chance.randint(1, 6))),
        lambda: chance.choice(likely or SIGNS),
    ]
    return chance.choice(made)()


def any_answer(chance: random.Random, question) -> object:
    """What a file of saved answers may hold for a question: text, or tables of texts."""
    if isinstance(question, Table) and chance.random() < 0.9:
        return {
            row: {column: any_text(chance, words_of(cell)) for column, cell in cells.items()}
            if chance.random() < 0.9
            else any_text(chance)
            for row, cells in question.cells.items()
        }
    if isinstance(question, Order) and chance.random() < 0.6:
        numbers = [str(number) for number in range(len(question.steps) + 2)]
        return {step: chance.choice([*numbers, any_text(chance)]) for step in question.steps}
    if chance.random() < 0.05:
        return {any_text(chance): {any_text(chance): any_text(chance)}}
    return any_text(chance, words_of(question))


def words_of(question) -> tuple[str, ...]:
    """The options or steps that a question shows, or moves at a board."""
    if isinstance(question, Bench):
        return MOVES
    return tuple(getattr(question, "options", ()) or getattr(question, "steps", ()))


def answers(chance: random.Random, count: int) -> Iterator[str]:
    """What went wrong in `count` answers, spread over the questions of a few learners."""
    learners = [Learner(f"Learner {number}", "bench-7") for number in range(4)]
    asked = [one for lesson in LESSONS for who in learners for one in questions_of(lesson, who)]
    for number in range(count):
        question = asked[number % len(asked)]
        typed = any_answer(chance, question)
        try:
            line = mark_question(question, typed)
            fine = line.state in STATES and 0 <= line.points <= line.out_of
            wrong = "" if fine else f"gives {line}"
        except Exception as error:
            wrong = f"raises {error!r}"
        if wrong:
            yield f"{question!r}: {typed!r} {wrong}"


def any_value(chance: random.Random, parameter) -> object:
    """A value for a parameter of a calculator: mostly of its kind, often at an edge."""
    if chance.random() < 0.02:
        return chance.choice([None, True, 10**400, 10**5000, float("nan"), [1.0], b"x", object()])
    if isinstance(parameter, calculator.Choice):
        options = parameter.all_options()
        return chance.choice(options) if chance.random() < 0.95 else any_text(chance, options)
    if isinstance(parameter, calculator.Text) or chance.random() < 0.1:
        return any_text(chance, ("brown black red", "C1 a b 100u", "Sn63Pb37", "220 16V"))
    if chance.random() < 0.5:
        return float(f"{10 ** chance.uniform(-4, 4):.3g}")
    edges = [one for one in (parameter.above, parameter.at_least, parameter.at_most) if one]
    edges = [edge * factor for edge in edges for factor in (1, 1 + 1e-15, 1 - 1e-15, 0.999, 1.001)]
    return chance.choice([10 ** chance.uniform(-323, 308), -1.0, 0, 5e-324, 1e308, *edges])


def calls(chance: random.Random, count: int) -> Iterator[str]:
    """What went wrong in `count` calls, spread over all calculators."""
    every = list(all_calculators().values())
    for number in range(count):
        one = every[number % len(every)]
        given = {
            name: any_value(chance, parameter)
            for name, parameter in one.parameters.items()
            if name not in one.defaults or chance.random() < 0.5
        }
        try:
            wrong = trouble(one(**given), given)
        except RepairlibError as error:
            wrong = f"is told in two lines: {error}" if "\n" in str(error) else ""
        except Exception as error:
            wrong = f"raises {error!r}"
        if wrong:
            shown = ", ".join(f"{name}={in_short(value)}" for name, value in given.items())
            yield f"{one.name}({shown}) {wrong}"


def trouble(finding: Finding, given: dict[str, object]) -> str:
    """What is wrong with a finding: nothing, or a figure that no one can read."""
    told = " ".join((str(finding), finding._repr_html_(), *finding.working, *finding.notes))
    json.dumps(finding.to_dict(), allow_nan=False)
    for name, value in finding.values.items():
        if isinstance(value, float) and not isfinite(value):
            return f"has the {name} {value!r}"
    odd = {"inf", "nan", "True", "False", "None"} & set(told.replace(";", " ").split())
    odd |= set(re.findall(r"\b[0-9.]+e[+-][0-9]+", told))
    odd = {word for word in odd if not any(word in in_short(one) for one in given.values())}
    return f"says {odd}: {told}" if odd else ""


def in_short(value: object) -> str:
    """`value` as Python writes it, cut."""
    return "a huge number" if isinstance(value, int) and value > 1e300 else repr(value)[:200]


def main(arguments: list[str]) -> int:
    """Run one of the two, and print what goes wrong."""
    what, count, *seeds = arguments
    seed = int(seeds[0]) if seeds else random.SystemRandom().randrange(10**9)
    print(f"{what}: {count}, repeated by {seed}")
    wrong = 0
    for line in {"answers": answers, "calls": calls}[what](random.Random(seed), int(count)):
        wrong += 1
        if wrong <= 20:
            print(line[:400].encode("ascii", "backslashreplace").decode())
    print(f"{wrong} of {count} went wrong")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
