"""What the tests of own lessons share: how lines are typed, and what is told of bad ones."""

from pathlib import Path

import pytest

from repairlib.learn import DEMO
from repairlib.learn.own import OwnLesson, Slips, read_own
from repairlib.learn.own import __file__ as own_folder
from repairlib.learn.own.asked import shuffled
from repairlib.learn.question import Question

EXAMPLE = Path(own_folder).with_name("example.txt").read_text(encoding="utf-8")
TABLE = Path(own_folder).with_name("example.csv").read_text(encoding="utf-8")
HEAD = "Fuses\n\n"  # the question of `ask` begins on line 3


def lesson(text: str) -> OwnLesson:
    """The lesson in a text."""
    return read_own(text)


def ask(lines: str, variant: int = 0) -> Question:
    """The one question that these lines ask, in one of its variants."""
    (asked,) = read_own(f"{HEAD}Question\n{lines}").asked
    return shuffled(list(asked.variants.values())[variant], DEMO.draw("test"))


def slips(text: str, file: str = "fuses.txt") -> list[str]:
    """All that is told of a text that cannot be read."""
    with pytest.raises(Slips) as refused:
        read_own(text, file)
    return [str(one) for one in refused.value.each]


def slip_of(lines: str) -> str:
    """The one thing that is told of these lines of a question, which begin on line 4."""
    (told,) = slips(f"{HEAD}Question\n{lines}")
    return told
