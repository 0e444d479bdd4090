"""Who is learning: a name and a group, set once and remembered outside the workbook."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path

from repairlib.core.draws import DemoDraw, Draw, normal
from repairlib.core.errors import RepairlibError
from repairlib.learn import files
from repairlib.learn.group import Again, Group, Member, group_called
from repairlib.learn.home import file_name, home

LONGEST = 80
NO_GROUP = "no-group"  # the folder of those who learn on their own; others end in a hash


@dataclass(frozen=True)
class Learner:
    """A learner, in a group or on their own. Raises RepairlibError when a text is no plain line.

    `partner` is the name of somebody who answers together with them, on the same sheet. `apart`
    says which draws were thrown anew so that the variants of a group differ (Member.again).

    >>> str(Learner("Ada Example", "bench-7"))
    'variant of Ada Example, group bench-7'
    >>> Learner("Ada Example").who
    'Ada Example'
    """

    name: str
    group: str = ""
    partner: str = field(default="", compare=False)
    apart: Again = field(default_factory=dict, compare=False, repr=False)

    def __post_init__(self):
        said = {"name": self.name, "group": self.group, "partner": self.partner}
        for what, text in said.items():
            if not isinstance(text, str):
                raise RepairlibError(text, f"the {what} is not a text", f"a {what} in quotes")
            if (text and not text.isprintable()) or len(text) > LONGEST:
                wrong = f"this is no {what} on one line"
                raise RepairlibError(text, wrong, f"up to {LONGEST} letters, digits and spaces")
        if not normal(self.name):
            raise RepairlibError(self.name, "the name is empty", "a name of letters or digits")

    def __str__(self) -> str:
        return f"variant of {self.who}"

    @property
    def who(self) -> str:
        """The learner in words, with whom they answer together."""
        names = f"{self.name} and {self.partner}" if normal(self.partner) else self.name
        return f"{names}, group {self.group}" if normal(self.group) else names

    def draw(self, lesson: str) -> Draw:
        """The draw that makes this learner's variant of a lesson."""
        return Draw.for_learner(self.group, self.name, lesson, self.apart.get(lesson, {}))

    def folder(self) -> Path:
        """Where this learner's files lie, below the folder of all answers or of all work."""
        group = file_name(self.group) if normal(self.group) else NO_GROUP
        return Path(group, file_name(self.name))


class Demo:
    """Nobody in particular: the variant in which the lessons are printed."""

    name = ""
    group = ""
    partner = ""
    who = "nobody in particular"

    def __str__(self) -> str:
        return "demo variant"

    def draw(self, lesson: str) -> Draw:
        """The draw of the demo variant of a lesson."""
        return DemoDraw.of(lesson)

    def folder(self) -> Path:
        """Where the files of the demo variant lie, as for a learner."""
        return Path("demo")


DEMO = Demo()


def learner_in(found: Mapping) -> Learner | Demo:
    """Whose file this is, by what stands in it; DEMO where no name does.

    Files of before call the group `class_code`. Raises RepairlibError when it names nobody.

    >>> learner_in({"name": "Ada Example", "class_code": "bench-7"}).who
    'Ada Example, group bench-7'
    """
    name, group = found.get("name"), found.get("group", found.get("class_code"))
    if (name, group) == ("", ""):
        return DEMO
    return Learner(name, group, found.get("partner", ""))  # type: ignore[arg-type]


def member_of(group: Group, member: Member) -> Learner:
    """A member of a group as a learner, with variants apart from those of the others."""
    return Learner(member.name, group.name, apart=member.again)


def named_in(learner: Learner | Demo) -> dict[str, str]:
    """How a file says whose it is: what `learner_in` reads."""
    named = {"name": learner.name, "group": learner.group}
    return named | {"partner": learner.partner} if learner.partner else named


def names_somebody(found: Mapping) -> bool:
    """True when `learner_in` can tell whose file this is."""
    try:
        return bool(learner_in(found))
    except RepairlibError:
        return False


def current_learner() -> tuple[Learner | Demo, str]:
    """The learner that was set (or DEMO), and a note when a file could not be used.

    A member of a group that this computer knows has the variants of that group.
    """
    found, note = files.read_or_keep_aside(home() / "learner.json", _is_learner)
    if not found:
        return DEMO, f"{note} Set your name again in lesson 00." if note else ""
    return as_member(learner_in(found))


def as_member(learner: Learner | Demo) -> tuple[Learner | Demo, str]:
    """The learner with the variants of their group, if they are in one, and a note, or ""."""
    if isinstance(learner, Demo) or not normal(learner.group):
        return learner, ""
    group, note = group_called(learner.group)
    if group is None:
        return learner, note
    member = group.by_name().get(normal(learner.name))
    return (replace(learner, apart=member.again) if member else learner), note


def known_learners() -> list[Learner]:
    """Those who were set on this computer and not forgotten, the latest first."""
    found, _ = files.read_or_keep_aside(home() / "learner.json", _is_learner)
    return _known(found)


def set_learner(name: str, group: str = "", partner: str = "") -> Learner | Demo:
    """Remember who is learning, and who answers together with them; all empty is the demo variant.

    Answers of another name stay, apart, and come back with it. Raises RepairlibError for a group
    without a name, and when it cannot be remembered.
    """
    said = {"name": name, "group": group, "partner": partner}
    learner = learner_in({k: v.strip() if isinstance(v, str) else v for k, v in said.items()})
    path = home() / "learner.json"
    with files.locked(path):
        found, _ = files.settle(path, _is_learner)
        others = [one for one in _known(found) if one.folder() != learner.folder()]
        first = [learner] if isinstance(learner, Learner) else []
        _write(path, learner, [*first, *others])
    return as_member(learner)[0]


def forget(learner: Learner | Demo) -> None:
    """Forget this name and group, also as somebody's partner. What was answered stays on the disk.

    The demo variant is set, if it was their turn.
    """
    path = home() / "learner.json"
    with files.locked(path):
        found, _ = files.settle(path, _is_learner)
        set_now = learner_in(found) if found else DEMO
        known = [one for one in _known(found) if one.folder() != learner.folder()]
        known = [_without_partner(one, learner) for one in known]
        stays = (one for one in known if one.folder() == set_now.folder())
        _write(path, next(stays, DEMO), known)


def _without_partner(one: Learner, gone: Learner | Demo) -> Learner:
    """A learner, alone if the partner is who is gone."""
    both = normal(one.group) == normal(gone.group) and normal(one.partner) == normal(gone.name)
    return replace(one, partner="") if both else one


def _write(path: Path, set_now: Learner | Demo, known: Sequence[Learner]) -> None:
    files.write(path, {**named_in(set_now), "known": [named_in(one) for one in known]})


def _known(found: Mapping | None) -> list[Learner]:
    if not found:
        return []
    known = map(learner_in, found.get("known", [found]))
    return [one for one in known if isinstance(one, Learner)]


def _is_learner(found: dict) -> bool:
    known = found.get("known", [])
    if not isinstance(known, list) or not all(isinstance(one, dict) for one in known):
        return False
    return all(map(names_somebody, (found, *known)))
