"""One of some options, and steps to put in order."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from repairlib.core.draws import normal
from repairlib.core.errors import RepairlibError
from repairlib.learn.arranging import Order
from repairlib.learn.own.parts import Asked, mistake, slipping
from repairlib.learn.own.said import Said
from repairlib.learn.own.slips import Slip
from repairlib.learn.question import LETTERS, Choice, Mistake, Question

_SOONER = re.compile(r"step\s*(\d{1,2})\s+before\s+step\s*(\d{1,2})", re.IGNORECASE)


def read_choice(asked: Asked, slips: list[Slip]) -> Question | None:
    """One of some options: Right is the right one, each Wrong and Danger another."""
    common = asked.common(slips)
    right = asked.one("right")
    options = [right, *(one.said for one in asked.wrong)]
    look_at_options(options, slips)
    if len(options) < 2:
        slips.append(Slip(right.line, right.text, "nothing else to choose from", "a Wrong: below"))
    mistakes = [
        made for one in asked.wrong for made in mistake(one, one.said.text, slips, needs_say=False)
    ]
    if slips:
        return None
    texts = tuple(one.text for one in options)
    return Choice(options=texts, answer=right.text, mistakes=mistakes, **common)


def look_at_options(options: Sequence[Said], slips: list[Slip]) -> None:
    """Each option once, and none that would be taken for the letter of another."""
    letters = LETTERS[: len(options)]
    seen: set[str] = set()
    for one in options[: len(LETTERS)]:
        meant = normal(one.text)
        if meant in seen:
            slips.append(Slip(one.line, one.text, "stands there twice", "each of them once"))
        if len(meant) == 1 and meant in letters:
            wrong = "may be taken for the letter before an answer"
            slips.append(Slip(one.line, one.text, wrong, f"more words: the letter {one.text}"))
        seen.add(meant)
    for one in options[len(LETTERS) :]:
        slips.append(Slip(one.line, one.text, "too many of them", f"up to {len(LETTERS)}"))


@dataclass(frozen=True)
class Sooner:
    """A step that was put before another one."""

    first: str
    second: str

    @property
    def said(self) -> str:
        """The mistake in words."""
        return f"{self.first} before {self.second}"

    def __call__(self, steps: Sequence[str]) -> bool:
        return steps.index(self.first) < steps.index(self.second)


def read_order(asked: Asked, slips: list[Slip]) -> Question | None:
    """Steps in their right order: First and each Then; `Wrong: step 3 before step 1`."""
    common = asked.common(slips)
    first, then = asked.one("first"), asked.by_word.get("then", [])
    look_at_options([first, *then], slips)
    if len(then) < 1:
        slips.append(Slip(first.line, first.text, "one step is no order", "a Then: below it"))
    steps = tuple(one.text for one in (first, *then))
    mistakes: list[Mistake] = []
    for one in asked.wrong:
        with slipping(one.said.line, slips):
            mistakes += mistake(one, _sooner(one.said.text, steps), slips)
    if slips:
        return None
    return Order(steps=steps, shown=steps, mistakes=mistakes, **common)


def _sooner(text: str, steps: Sequence[str]) -> Sooner:
    found = _SOONER.fullmatch(text)
    if not found:
        raise RepairlibError(text, "not an order that is wrong", "step 3 before step 2")
    one, other = int(found[1]), int(found[2])
    if not 0 < one <= len(steps) or not 0 < other <= len(steps):
        raise RepairlibError(text, "there is no such step", f"steps 1 to {len(steps)}")
    if one <= other:
        raise RepairlibError(text, "that is the right order", f"step {other} before step {one}")
    return Sooner(steps[one - 1], steps[other - 1])
