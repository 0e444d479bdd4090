"""The users of the system that a hub needs: the calls that make them, and those that undo it.

A call is shown before it is made, as one would type it. Each learner is a user who can log in to
the hub and nowhere else, with a home that only this user can enter.
"""

from __future__ import annotations

import grp
import pwd
import re
import secrets
import shlex
import subprocess
from collections.abc import Iterable
from pathlib import Path

from repairlib.core.errors import RepairlibError
from repairlib.faces.hub.places import HANDED_IN, LEARNERS, LONGEST_HOME, PASSWORDS
from repairlib.recap import write_whole

LOGIN = re.compile(r"[\w.@+-]{1,254}")  # as long as the address of a mail may be
USER_NAME = re.compile(r"[a-z][a-z0-9_-]{0,30}")
# Nobody reads a password for another: no 0 and O, 1 and l.
SIGNS = "abcdefghjkmnpqrstuvwxyz23456789"
Call = tuple[str, ...]


def instructors(place: Path) -> str:
    """The system's group that reads what is handed in here.

    >>> instructors(Path("/srv/bench"))
    'bench-instructors'
    """
    return f"{place.name}-instructors"


def calls_to_make(place: Path, words: Iterable[str], instructor: str) -> list[Call]:
    """The calls that make the users and their folders; those that exist already stay.

    Raises RepairlibError for a word that is no name of a user, or is somebody else's here.
    """
    words, teaching = list(words), instructors(place)
    if shlex.quote(str(place)) != str(place) or not USER_NAME.fullmatch(teaching):
        wrong = "no group of this computer can be named after this folder"
        raise RepairlibError(place, wrong, "a short path of a-z, 0-9 and -: --out /srv/bench")
    for word in words:
        _may_be_made(place, word)
    _may_instruct(instructor, words)
    homes, handed_in = place / LEARNERS, place / HANDED_IN
    calls: list[Call] = [
        ("groupadd", "--force", teaching),
        ("usermod", "--append", "--groups", teaching, instructor),
        ("install", "--directory", "--mode=0755", str(place), str(homes)),
        ("install", "--directory", "--mode=0751", f"--group={teaching}", str(handed_in)),
    ]
    for word in words:
        home = homes / word
        if not _exists(word):
            said = ("--no-create-home", "--user-group", "--shell", "/usr/sbin/nologin")
            calls.append(("useradd", "--home-dir", str(home), *said, word))
            if home.exists():  # of the same learner before, when the number was another
                whole = ("--recursive", "--no-dereference", f"{word}:{word}", str(home))
                calls.append(("chown", *whole))
        own = ("install", "--directory", f"--owner={word}")
        calls.append((*own, f"--group={word}", "--mode=0700", str(home)))
        # What is put there belongs to the instructors' group, and no other learner gets in.
        drop = str(handed_in / word)
        calls.append((*own, f"--group={teaching}", "--mode=2750", drop))
    return calls


def calls_to_remove(place: Path) -> list[Call]:
    """The calls that take the users of this hub away again; their folders stay."""
    calls: list[Call] = [("userdel", name) for name in learners_of(place)]
    if _group_exists(instructors(place)):
        calls.append(("groupdel", instructors(place)))
    return calls


def learners_of(place: Path) -> list[str]:
    """The users of this system whose home is in this hub."""
    homes = place / LEARNERS
    return [one.pw_name for one in pwd.getpwall() if Path(one.pw_dir) == homes / one.pw_name]


def make(place: Path, words: Iterable[str], instructor: str) -> list[str]:
    """Make the users, each new one with a password; the new ones. Needs the rights of root."""
    words = list(words)
    new = [word for word in words if not _exists(word)]
    run(calls_to_make(place, words, instructor))
    if new:
        passwords = {word: _password() for word in new}
        lines = "".join(f"{word}:{password}\n" for word, password in passwords.items())
        run([("chpasswd",)], lines)
        _add_passwords(place / PASSWORDS, lines.replace(":", "  "))
    return new


def run(calls: Iterable[Call], typed: str = "") -> None:
    """Make the calls, one after the other. Raises RepairlibError at the first that fails."""
    for call in calls:
        try:
            done = subprocess.run(call, input=typed, capture_output=True, text=True)
        except FileNotFoundError:
            raise RepairlibError(call[0], "this system has no such command", "Linux") from None
        if done.returncode:
            why = " ".join(done.stderr.split()) or f"it ended with {done.returncode}"
            raise RepairlibError(shlex.join(call), why, "the rights of root: sudo")


def as_typed(calls: Iterable[Call]) -> list[str]:
    """The calls as one would type them."""
    return [shlex.join(call) for call in calls]


def _may_be_made(place: Path, word: str) -> None:
    home = place / LEARNERS / word
    if not USER_NAME.fullmatch(word):
        raise RepairlibError(word, "this can be no name of a user here", "a-z, 0-9 and -")
    if len(str(home).encode()) > LONGEST_HOME:
        wrong = f"the path of a learner's home is longer than {LONGEST_HOME} signs"
        raise RepairlibError(home, wrong, "a shorter folder, such as --out /srv/bench")
    if _exists(word) and pwd.getpwnam(word).pw_dir != str(home):
        wrong = "this computer has such a user already, who is not of this hub"
        raise RepairlibError(word, wrong, "another word for this member in group.json")


def may_see_who_is_here(instructor: str, words: Iterable[str]) -> None:
    """Raise RepairlibError when this can be no name that somebody logs in by, or is a learner's."""
    accepted = "--instructor NAME, a name of those that log in there"
    if not LOGIN.fullmatch(instructor):
        raise RepairlibError(instructor, "nobody can log in by such a name", accepted)
    if instructor in words:
        raise RepairlibError(instructor, "this is a learner's word", accepted)


def _may_instruct(instructor: str, words: list[str]) -> None:
    may_see_who_is_here(instructor, words)
    if not _exists(instructor):
        wrong = "this computer has no such user"
        raise RepairlibError(instructor, wrong, "--instructor NAME, a user who can log in here")


def _exists(name: str) -> bool:
    try:
        return bool(pwd.getpwnam(name))
    except KeyError:
        return False


def _group_exists(name: str) -> bool:
    try:
        return bool(grp.getgrnam(name))
    except KeyError:
        return False


def _password() -> str:
    """Twelve signs that can be read from a slip: 59 bits."""
    return "-".join("".join(secrets.choice(SIGNS) for _ in range(4)) for _ in range(3))


def _add_passwords(path: Path, lines: str) -> None:
    before = path.read_text() if path.exists() else ""
    path.touch(mode=0o600)
    write_whole(path, (before + lines).encode(), overwrite=True)
    path.chmod(0o600)
