"""Where what is handed in goes: into the folder of the group, or else it is given by hand."""

from __future__ import annotations

from pathlib import Path
from typing import NamedTuple

from repairlib.core.draws import normal
from repairlib.core.errors import RepairlibError
from repairlib.learn import files
from repairlib.learn.exercise import Told
from repairlib.learn.group import Group, known_group
from repairlib.learn.hand_in import (
    HandedIn,
    file_name_of,
    hand_in,
    put_into,
    read_hand_in,
    receipt_of,
)
from repairlib.learn.handed import note_handed_in
from repairlib.learn.home import home
from repairlib.learn.learner import DEMO, Demo, Learner, current_learner

NOBODY = "nobody is named, so nobody would know whose it is"


class Delivered(NamedTuple):
    """What was handed in, and where it lies: `path` is None where it has to be given by hand."""

    handed: HandedIn
    path: Path | None


def deliver(learner: Learner | Demo) -> Delivered:
    """Hand in, and put the file into the folder of the group, if it has one.

    Only what lies there is noted as handed in; what is given by hand, `note_given` notes.
    Kernels of the same learner take turns, so that no older file takes the place of a newer one.
    Raises RepairlibError when it cannot be read or written.
    """
    with files.locked(_folder(learner) / "handed in"):
        handed = hand_in(learner)
        group = group_of_learner(learner)
        if group is None or not group.hand_in_to:
            return Delivered(handed, None)
        path = put_into(group.hand_in_to, handed)
        note_given(learner, handed.data)
        return Delivered(handed, path)


def note_given(learner: Learner | Demo, data: bytes) -> None:
    """Note what stands in a file as handed in: somebody else has the file, or it is saved for them.

    Answers that are changed after it are not meant. Raises RepairlibError when it cannot be noted.
    """
    note_handed_in(learner, read_hand_in(data)["lessons"])


def hand_in_work(given: bool = False) -> Told:
    """Hand in by code: `hand_in_work()`. Says the receipt and where the file is.

    Where the file is to be given by hand, `hand_in_work(given=True)` says that it was: it notes
    the answers in the file that was made last as handed in, so that they may be forgotten here.
    Raises RepairlibError where nobody is named, and when it cannot be read or written.
    """
    learner, _ = current_learner()
    if learner is DEMO:
        raise RepairlibError("", NOBODY, "your name, set in lesson 00 or by set_learner")
    if given:
        return _given(learner)
    handed, path = deliver(learner)
    if path is None:
        path = _folder(learner) / handed.name
        with files.locked(path):
            files.put_in_place(path, handed.data, mode=0o600)
        return Told(
            f"Receipt: {handed.receipt}\nGive this file to your instructor: {path}\n"
            "When it is given: hand_in_work(given=True)"
        )
    return Told(f"Receipt: {handed.receipt}\nIt is with your instructor: {path}")


def _given(learner: Learner | Demo) -> Told:
    path = _folder(learner) / file_name_of(learner)
    if not path.exists():
        raise RepairlibError(path, "there is no such file", "hand_in_work() first")
    with files.saying_why(path):
        data = path.read_bytes()
    note_given(learner, data)
    return Told(
        f"Noted as given to your instructor, with the receipt {receipt_of(read_hand_in(data))}."
    )


def group_of_learner(learner: Learner | Demo) -> Group | None:
    """The group that this computer knows, where the learner says that they are in it."""
    group, _ = known_group()
    return group if group and normal(group.name) == normal(learner.group) else None


def _folder(learner: Learner | Demo) -> Path:
    """The folder of their answers: what is there goes with them when they are taken off."""
    return home() / "answers" / learner.folder()
