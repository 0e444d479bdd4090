"""How a lesson's module asks: each question enters itself, in the order in which it is written.

Covers the two decorators and what they have entered. Which lessons there are stands in `exercise`.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import NamedTuple, TypeVar

from repairlib.core.draws import Draw
from repairlib.learn.question import Question

Ask = TypeVar("Ask", bound=Callable[[Draw], Question])

# Module: the functions that it entered, by name, with the points of each.
_graded: dict[str, dict[str, tuple[Callable[[Draw], Question], float]]] = {}
_practised: dict[str, dict[str, Callable[[Draw], Question]]] = {}


def question(*, points: float) -> Callable[[Ask], Ask]:
    """Enter the function below as the next question of its module's exercise.

    The function takes a draw of its own and returns a question; id and points are put in here.
    """

    def enter(ask: Ask) -> Ask:
        _graded.setdefault(ask.__module__, {})[ask.__name__] = (ask, points)
        return ask

    return enter


def practice_question(ask: Ask) -> Ask:
    """Enter the function below as the next question to practise on before the exercise."""
    _practised.setdefault(ask.__module__, {})[ask.__name__] = ask
    return ask


def enter_all(
    module: str,
    asks: Mapping[str, tuple[Callable[[Draw], Question], float]],
    to_practise: Mapping[str, Callable[[Draw], Question]],
) -> None:
    """Enter questions that no module has, each by its name, on which its draw hangs.

    They stand under `module`, which is then asked for as if it were one.
    """
    for name, ask in (*((name, ask) for name, (ask, _) in asks.items()), *to_practise.items()):
        ask.__name__ = name
    _graded[module] = dict(asks)
    _practised[module] = dict(to_practise)


class Entry(NamedTuple):
    """One question of a module: its id, its points, and the function that makes it of its draw."""

    id: str
    points: float
    ask: Callable[[Draw], Question]

    def made(self, draw: Draw) -> Question:
        """The question as its own draw gives it."""
        return replace(self.ask(draw), id=self.id, points=self.points)


def each_graded(module: str) -> list[Entry]:
    """The questions that a module entered, q1, q2 …, before anything is drawn."""
    entered = _graded[module].values()
    return [Entry(f"q{n}", points, ask) for n, (ask, points) in enumerate(entered, start=1)]


def graded(module: str, draw: Draw) -> tuple[Question, ...]:
    """The questions that a module entered, q1, q2 …, each with its points and from its own draw."""
    return tuple(entry.made(own_draw(draw, entry.ask)) for entry in each_graded(module))


def names(module: str) -> dict[str, str]:
    """What each question of a module's exercise is called in short, by its id.

    It is the name of the part of the draw that the question hangs on.
    """
    return {entry.id: _part(entry.ask.__name__) for entry in each_graded(module)}


def practised(module: str, draw: Draw) -> tuple[Question, ...]:
    """The questions to practise on that a module entered, each from its own draw."""
    return tuple(ask(own_draw(draw, ask)) for ask in _practised[module].values())


def own_draw(draw: Draw, ask: Callable[[Draw], Question]) -> Draw:
    """The draw of one question. It hangs on the function's name, not on its place.

    So a question that is added, moved or edited leaves the variants of all others as they are.
    """
    return draw.part(_part(ask.__name__))


def _part(name: str) -> str:
    return name.replace("_", " ")
