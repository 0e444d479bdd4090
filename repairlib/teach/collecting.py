"""Collect what a group has handed in: every file accounted for, and the marks worked out anew.

Two passes. In the first every file is met once, and only whose it is and from when is noted. In
the second the files of one member after the other are read whole, checked, and marked; nobody's
answers are kept beyond that. On a computer with several cores members are marked side by side.
"""

from __future__ import annotations

import hashlib
import json
import os
import re
import time
from collections import deque
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from concurrent.futures import ProcessPoolExecutor
from functools import partial
from pathlib import Path
from typing import Any, NamedTuple

from repairlib.core.draws import normal
from repairlib.core.errors import RepairlibError, shown
from repairlib.core.once import Once
from repairlib.learn.group import Group, Member
from repairlib.learn.hand_in import KIND, read_hand_in, receipt_of
from repairlib.learn.learner import LONGEST
from repairlib.teach.archives import (
    DAMAGED,
    NO_HAND_IN,
    Met,
    Reader,
    Refused,
    walk,
)
from repairlib.teach.holders import Holders
from repairlib.teach.marked import Joined, Marked, is_lesson_of

HANDED_IN = "handed-in"  # the folder below that of a group
COUNTED, SAME_AGAIN, OLDER = "counted", "same again", "older"
CHANGED, STRANGER = "changed after it was handed in", "unknown member"
OTHER_GROUP, NO_LESSON = "from another group", "no lesson of this group"
ELSEWHERE = "in the folder of somebody else"
RULE = (
    "The rule: for each member and lesson the newest valid file counts, by the time at which it "
    "was handed in; of two of the same time the one met first. A file that was changed, damaged or "
    "made for another group is not valid, nor is one in the folder of another member, called by "
    "their word and beside those of others. Tries and dangerous answers are taken from every valid "
    "file, so that none is lost with an older one. Marks are worked out from the answers anew; "
    "what a file says of marks is not looked at. What a pair has answered counts for both."
)
A_SIDE = 200  # files from which on it pays to mark on all cores
AT_A_TIME = 20  # members in one go
AHEAD = 2 * 86_400_000  # ms that the clock of somebody's computer may be ahead
HEAD = 2000  # bytes in which a file says whose it is
PARTNERS = re.compile(rb'"partner":\s*("(?:[^"\\]|\\.){1,500}")')


class Account(NamedTuple):
    """What became of one file or archive member, and why."""

    file: str
    outcome: str
    why: str = ""


class Claim(NamedTuple):
    """What a file says of itself, before it is read whole: whose it is and when it was handed in.

    `number` is its place among the accounts, `owner` the member of that name; `partners` are the
    members it names as having answered with them, by the name as it stands there.
    """

    number: int
    met: Met
    name: str
    at: int
    owner: Member
    partners: Mapping[str, Member]


class Collected(NamedTuple):
    """The marks, one member after the other, and what became of each file.

    `marked` can be gone through once; the accounts are complete when it is at its end.
    """

    marked: Iterator[Marked]
    accounts: list[Account]


def collect(
    group: Group,
    places: Iterable[str | Path],
    cores: int | None = None,
    anew: frozenset[str] = frozenset(),
) -> Collected:
    """The marks of all that lies in these places: folders, archives, drives, single files.

    `cores` is how many to use, all of them if it is not said; `anew` are the questions to mark
    against today's key, as `LESSON:QUESTION`. Nothing is written. Raises
    RepairlibError for a place that is not there.
    """
    accounts: list[Account] = []
    by_member: dict[str, list[Claim]] = {}
    places = list(places)
    members = Members(group)
    holders = Holders(places, members.by_word)
    contents: dict[bytes, int] = {}
    for number, (met, data) in enumerate(walk(places)):
        accounts.append(Account(met.shown, met.outcome, met.why))
        if met.outcome:
            continue
        try:
            claim = _claim(group, members, holders, number, met, data)
        except Refused as reason:
            accounts[number] = Account(met.shown, reason.outcome, reason.why)
            continue
        first = contents.setdefault(hashlib.sha256(data).digest(), number)
        if first != number:
            why = f"the same as {accounts[first].file}"
            accounts[number] = Account(met.shown, SAME_AGAIN, why)
            continue
        for word in {claim.owner.word, *(one.word for one in claim.partners.values())}:
            by_member.setdefault(word, []).append(claim)
    jobs = [(one, by_member[one.word]) for one in members.all if one.word in by_member]
    small = group._replace(members=(), held={}, own=dict(group.own))  # for the other cores
    return Collected(_all_marked(small, anew, jobs, accounts, cores), accounts)


def counts(accounts: Sequence[Account]) -> dict[str, int]:
    """How many files came to which outcome, the most frequent first."""
    found: dict[str, int] = {}
    for one in accounts:
        found[one.outcome] = found.get(one.outcome, 0) + 1
    return dict(sorted(found.items(), key=lambda item: (item[0] != COUNTED, -item[1], item[0])))


class Members:
    """The members of a group by word and by name."""

    def __init__(self, group: Group):
        self.group = group
        self.all = [one._replace(again=dict(one.again)) for one in group.members]
        self.by_word = {normal(one.word): one for one in self.all}
        self._known = self.by_word | {normal(one.name): one for one in self.all}
        self._nobody = Once(self._nearest)

    def find(self, name: str) -> Member | None:
        """The member of this name or word, if there is one."""
        return self._known.get(normal(name))

    def nearest(self, name: str) -> str:
        """Who may be meant by a name that nobody has."""
        return self._nobody[normal(name[:LONGEST])]

    def _nearest(self, name: str) -> str:
        try:
            return self.group.member(name).name
        except RepairlibError as error:
            return error.accepted


def _claim(
    group: Group, members: Members, holders: Holders, number: int, met: Met, data: bytes
) -> Claim:
    """What a file says of itself. Raises Refused for one that is for nobody of the group."""
    said = _head(data) or _whole(data, met.shown)
    name, at = said.get("name"), said.get("at")
    if not isinstance(name, str) or type(at) is not int:
        _whole(data, met.shown)  # which says what is wrong with it
        raise Refused(DAMAGED, "it does not say whose it is")
    theirs = said.get("group")
    if not isinstance(theirs, str) or normal(theirs) != normal(group.name):
        raise Refused(OTHER_GROUP, f"group {shown(theirs)}")
    owner = members.find(name)
    if owner is None:
        raise Refused(STRANGER, f"{shown(name)}; nearest: {members.nearest(name)}")
    holder = holders.holder(met.path)
    if holder is not None and holder.word != owner.word:
        raise Refused(ELSEWHERE, f"{owner.name} in the folder of {holder.name}")
    found = {partner: members.find(partner) for partner in _partners(data)}
    partners = {partner: one for partner, one in found.items() if one is not None}
    return Claim(number, met, name, at, owner, partners)


def _head(data: bytes) -> dict[str, Any] | None:
    """What stands before the answers, where a file is laid out as Hand in does it."""
    start, found, _ = data[:HEAD].partition(b'"lessons"')
    try:
        said = json.loads(start.rstrip(b", \t\r\n") + b"}") if found else None
    except (ValueError, RecursionError):
        return None
    return said if isinstance(said, dict) and said.get("kind") == KIND else None


def _whole(data: bytes, name: str) -> dict[str, Any]:
    try:
        return read_hand_in(data, name)
    except RepairlibError as error:
        ours = KIND.encode() in data
        raise Refused(DAMAGED if ours else NO_HAND_IN, error.wrong) from None
    except (RecursionError, MemoryError):
        raise Refused(DAMAGED, "nested too deep") from None


def _partners(data: bytes) -> list[str]:
    """Everybody a file names as having answered with its learner."""
    found = []
    for text in set(PARTNERS.findall(data)):
        try:
            found.append(json.loads(text))
        except ValueError:
            continue
    return sorted(found)


def _all_marked(
    group: Group, anew: frozenset[str], jobs: list, accounts: list[Account], cores: int | None
) -> Iterator[Marked]:
    """The marks of all members; each file gets its account on the way."""
    for found, told in _each_done(partial(_marks_of, group, anew), jobs, cores):
        for number, account in told.items():
            if accounts[number].outcome != COUNTED:  # else it counted for the other of a pair
                accounts[number] = account
        yield from found


def _each_done(marks_of: Callable, jobs: list, cores: int | None) -> Iterator[tuple[list, dict]]:
    """The marks and accounts of a few members at a time, in order, on so many cores.

    No more is begun than is soon asked for, so that results do not pile up.
    """
    cores = cores or _cores()
    some = [jobs[start : start + AT_A_TIME] for start in range(0, len(jobs), AT_A_TIME)]
    if cores == 1 or sum(len(claims) for _, claims in jobs) < A_SIDE:
        for few in some:
            yield marks_of(few)
        return
    with ProcessPoolExecutor(cores) as pool:
        begun: deque = deque()
        for few in some:
            begun.append(pool.submit(marks_of, few))
            if len(begun) > 2 * cores:
                yield begun.popleft().result()
        while begun:
            yield begun.popleft().result()


def _cores() -> int:
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


def _marks_of(
    group: Group, anew: frozenset[str], jobs: list[tuple[Member, list[Claim]]]
) -> tuple[list, dict]:
    """The marks of these members, and the account of each of their files by its number."""
    marked: list[Marked] = []
    accounts: dict[int, Account] = {}
    reader = Reader()
    for member, claims in jobs:
        found, told = _marks_of_one(group, anew, member, claims, reader)
        marked += found
        for number, account in told.items():
            if number not in accounts or account.outcome == COUNTED:
                accounts[number] = account
    reader.close()
    return marked, accounts


def _marks_of_one(
    group: Group, anew: frozenset[str], member: Member, claims: list[Claim], reader: Reader
) -> tuple[list[Marked], dict[int, Account]]:
    joined: dict[str, Joined] = {}
    counting: dict[str, Claim] = {}  # whose answers are marked, by lesson
    accounts: dict[int, Account] = {}
    receipts: dict[str, str] = {}
    for claim in sorted(claims, key=lambda one: (-one.at, one.number)):
        file = claim.met.shown
        try:
            content = _valid(claim, reader)
        except Refused as reason:
            accounts[claim.number] = Account(file, reason.outcome, reason.why)
            continue
        theirs = _lessons_for(group, member, claim, content)
        new = [lesson for lesson in theirs if lesson not in joined]
        for lesson in theirs:
            counting.setdefault(lesson, claim)
            every = joined.setdefault(lesson, Joined(group, member, lesson, anew))
            tries = content["tries"].get(lesson, ())
            every.add(claim.owner, content["lessons"][lesson], tries, content["at"])
        receipt = receipt_of(content) if len(claims) > 1 else ""
        if new or not theirs:
            accounts[claim.number] = Account(file, *_said_of(content, theirs, new))
        elif receipt in receipts:
            accounts[claim.number] = Account(file, SAME_AGAIN, f"as {receipts[receipt]}")
        else:
            why = _why_older(claim, [counting[lesson] for lesson in theirs])
            accounts[claim.number] = Account(file, OLDER, why)
        receipts.setdefault(receipt, file)
    lessons = [lesson for lesson in group.lessons or sorted(joined) if lesson in joined]
    return [joined[lesson].marked() for lesson in lessons], accounts


def _why_older(claim: Claim, counting: Sequence[Claim]) -> str:
    """Whose files count in place of one, and whether they are newer or were only met first."""
    whose = " and ".join(dict.fromkeys(one.owner.name for one in counting))
    if all(one.at == claim.at for one in counting):
        return f"a file of {whose} of the same time was met first and counts"
    return f"a newer file of {whose} counts"


def _valid(claim: Claim, reader: Reader) -> dict[str, Any]:
    """The content of a file, checked. Raises Refused for one that does not count."""
    content = _whole(reader.read(claim.met), claim.met.shown)
    if (content["name"], content["at"]) != (claim.name, claim.at):
        raise Refused(DAMAGED, "it says two things of whose it is, or has changed meanwhile")
    if content["changed"]:
        raise Refused(CHANGED, "its check does not fit its content; have it handed in again")
    return content


def _lessons_for(group: Group, member: Member, claim: Claim, content: Mapping) -> list[str]:
    """The lessons of a file that are marked for this member: their own, or those of the pair."""
    return [
        lesson
        for lesson, found in content["lessons"].items()
        if is_lesson_of(group, lesson)
        and (claim.owner == member or claim.partners.get(_partner(found)) == member)
    ]


def _partner(found: Mapping) -> str:
    """With whom a lesson was answered, or ""."""
    partner = found.get("partner")
    return partner if isinstance(partner, str) else ""


def _said_of(content: Mapping[str, Any], theirs: list[str], new: list[str]) -> tuple[str, str]:
    """The outcome of a file that counts, and what is to be said of it."""
    if not theirs:
        return NO_LESSON, "no answers to a lesson that this group takes"
    said = []
    if len(new) < len(theirs):
        said.append(f"for {_listed(new)}; a newer file counts for the rest")
    others = [lesson for lesson in content["lessons"] if lesson not in theirs]
    if others:
        said.append(f"not marked: {_listed(others)}")
    if content["at"] > time.time() * 1000 + AHEAD:
        said.append("the clock of its computer is ahead, so later files may count as older")
    return COUNTED, "; ".join(said)


def _listed(names: Sequence[str]) -> str:
    more = f" and {len(names) - 5} more" if len(names) > 5 else ""
    return ", ".join(shown(name).strip("'") for name in names[:5]) + more
