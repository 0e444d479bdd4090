"""Who is learning may change while panels are on the page: they follow at once.

A panel enters what it does then under its name. The newest one of a name is followed: it is the one
that is on the page after its cell was run again.
"""

from __future__ import annotations

from collections.abc import Callable

from repairlib.learn.learner import Demo, Learner, forget, set_learner

_turns: dict[str, Callable[[], None]] = {}


def follow(name: str, turn: Callable[[], None]) -> None:
    """Call `turn` whenever another learner is set in this notebook."""
    _turns[name] = turn


def turn_to(name: str, group: str, partner: str = "") -> Learner | Demo:
    """Set who is learning, with whom, and turn all panels to them.

    Raises RepairlibError for no such name.
    """
    learner = set_learner(name, group, partner)
    turn_all()
    return learner


def forget_here(learner: Learner | Demo) -> None:
    """Forget a learner on this computer, and turn all panels to the demo variant."""
    forget(learner)
    turn_all()


def turn_all() -> None:
    """Turn all panels to who is set now, as after another kernel set somebody."""
    for turn in tuple(_turns.values()):
        turn()
