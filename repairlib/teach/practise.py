"""What each member should practise next, from the sheets marked and the tries it took."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from repairlib.learn.exercise import lessons_known
from repairlib.learn.group import Group
from repairlib.learn.progress import NOT_BEGUN, again, first_to_do, state_of
from repairlib.learn.question import RIGHT, UNSAFE
from repairlib.teach.marked import Marked

MANY_TRIES = 3


class Practise(NamedTuple):
    """A question to practise: why in a few words, and the hint it gets."""

    lesson: str
    id: str
    why: str
    hint: str


class Next(NamedTuple):
    """What is next for one member: questions, the dangerous first, and the lesson to go on with."""

    word: str
    name: str
    questions: tuple[Practise, ...]
    lesson: str


class Due(NamedTuple):
    """What one lesson leaves to practise, and whether it is done, open or not begun."""

    questions: tuple[Practise, ...]
    state: str


def next_for(group: Group, due: Mapping[tuple[str, str], Due]) -> list[Next]:
    """What is next for each member. `due` is what each of their lessons leaves, by word and lesson.

    `lesson` is "" when all lessons of the group are done.
    """
    by_word: dict[str, dict[str, Due]] = {one.word: {} for one in group.members}
    for (word, lesson), one in due.items():
        by_word[word][lesson] = one
    return [_next(group, one.word, one.name, by_word[one.word]) for one in group.members]


def _next(group: Group, word: str, name: str, due: Mapping[str, Due]) -> Next:
    taken = group.lessons or lessons_known(group)
    lessons = (*taken, *(one for one in due if one not in taken))
    questions = [one for lesson in lessons if lesson in due for one in due[lesson].questions]
    questions.sort(key=lambda one: not one.why.startswith(UNSAFE))
    states = {one: due[one].state if one in due else NOT_BEGUN for one in taken}
    return Next(word, name, tuple(questions), first_to_do(states))


def due_in(one: Marked) -> Due:
    """Of one lesson: what is not right or was once dangerous, then what took many tries."""
    tries = {name: story.tries for name, story in one.stories.items()}
    due = {
        name: Practise(
            one.lesson, name, f"{UNSAFE} before, right now" if state == RIGHT else state, hint
        )
        for name, state, hint in again(one.sheet.lines)
    }
    for line in one.sheet.lines:
        if line.state == RIGHT and line.id not in due and tries.get(line.id, 0) >= MANY_TRIES:
            why = f"right at try {tries[line.id]}"
            due[line.id] = Practise(one.lesson, line.id, why, "")
    return Due(tuple(due.values()), state_of(one.sheet))
