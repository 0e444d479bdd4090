"""An attempt judged by its outcome and its care, each point with its reason in words.

The weights are choices of this workbook. Of a hundred, a set that was mended brings 24 for working
at every load and line, cold and warm; 24 for the cause, if a reading pointed to it before it was
mended; 14 for leaving good parts alone; the rest is care: nothing damaged, proven dead, the right
part the right way round, powered up gently, checked, time, money, the job card. What nothing had
pointed to brings neither the cause nor the working. What can hurt somebody is no pass, whatever
else was right; nor is a guess, a repair that nobody measured afterwards, or a change of many parts.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

from repairlib.bench.attempt import Attempt, Done
from repairlib.bench.care import (
    Checked,
    Hand,
    NewPart,
    checked,
    hands,
    limits_of,
    new_parts,
    power_ups,
    store_of,
)
from repairlib.bench.conditions import Fault
from repairlib.bench.job_card import card_lines, says_found
from repairlib.bench.pointing import LIKELY, Pointer, left_over, pointer
from repairlib.bench.removed import Removed, died, removed
from repairlib.bench.state import GIVEN_UP, HANDED_ON, HARMED, LIFTED, REPAIRED, End, Place, State
from repairlib.bench.still_works import first_miss
from repairlib.bench.usual import usual_minutes, usual_tokens
from repairlib.core.quantity import brief

PASS = 0.6
NOT_TRIED = (HARMED, HANDED_ON, GIVEN_UP)  # ends after which nobody asks whether it works
# The most that is left of 100 points:
GUESSED, NOT_PROVEN, MANY_PARTS, NO_WORD = 50.0, 55.0, 50.0, 50.0
NOT_MENDED, DANGEROUS, NOT_NEEDED, GAVE_UP, HURT = 40.0, 40.0, 30.0, 20.0, 0.0
ALL = 100.0
MANY = 3  # good parts out, from which on a cause was met and not found
A_GOOD_PART, PUT_BACK, TESTED = 5.0, 2.0, 0.5
AT_LOW_VOLTS = 0.5  # of a hand: a finger at a live set that has no mains side


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing that was judged: the points it got of those there were, and why."""

    subject: str
    got: float
    of: float
    words: str

    def __str__(self) -> str:
        if not self.of:
            return f"{self.subject}: {self.words}"
        return f"{self.subject}: {self.got:g} of {self.of:g}. {self.words}"


class Act(NamedTuple):
    """Something unsafe: the number of the move, 0 for how the set was left, and what it was."""

    number: int
    words: str

    def __str__(self) -> str:
        return f"Move {self.number}: {self.words}" if self.number else self.words


@dataclass(frozen=True, slots=True)
class Judgement:
    """What an attempt came to: its share of the points from 0 to 1, and whether it is a pass.

    `dangers` could hurt somebody: each rules out a pass. `luck` was unsafe and did no harm.
    """

    share: float
    passed: bool
    findings: tuple[Finding, ...]
    dangers: tuple[Act, ...]
    luck: tuple[Act, ...]

    @property
    def of(self) -> float:
        """All points that there were."""
        return sum(one.of for one in self.findings)

    def on(self, subject: str) -> Finding:
        """The finding on that subject."""
        return next(one for one in self.findings if one.subject == subject)

    def __str__(self) -> str:
        head = f"{'Passed' if self.passed else 'Not passed'}, {self.share:.0%}".replace("%", " %")
        return "\n".join(
            (head, *map(str, self.findings), *map(str, self.dangers), *map(str, self.luck))
        )


def judge(attempt: Attempt) -> Judgement:
    """The judgement of an attempt as it stands.

    >>> from repairlib.bench.attempt import Task, walked
    >>> from repairlib.bench.practice_set import demo_set
    >>> task = Task(demo_set("desk radio"), (), "demo")
    >>> judge(walked(task, ["plug in"])).findings[-1].words
    'No more than 40 of 100 count: It is neither handed back nor handed on.'
    """
    case = _Case(attempt)
    findings = [one for one in _findings(case) if one.of]
    got, of = sum(one.got for one in findings), sum(one.of for one in findings)
    most, why = min(_caps(case), key=lambda cap: cap[0], default=(ALL, ""))
    if most < ALL:
        words = f"No more than {most:g} of 100 count: {why}"
        less = min(round(most * of / ALL - got, 1), 0.0)
        findings.append(Finding("the end", less, 0.0, words))
        got += less
    share = round(max(got, 0.0) / of, 3)
    good = share >= PASS and not case.dangers and most == ALL
    return Judgement(share, good, tuple(findings), case.dangers, case.luck)


def must_be_handed_on(attempt: Attempt) -> bool:
    """Whether a fault lies where only somebody qualified may work: on the mains side."""
    return any(attempt.task.set.part(fault.part).mains for fault in attempt.task.faults)


class _Case:
    """An attempt with what several findings ask of it, each worked out once."""

    def __init__(self, attempt: Attempt):
        self.attempt, self.task, self.done = attempt, attempt.task, attempt.done
        self.state = attempt.state
        self.end: End | None = self.state.ended

    @cached_property
    def wrong(self) -> str:
        """Where the set fails first; "" where it works."""
        if self.end and self.end.kind in NOT_TRIED:
            return self.end.why
        return first_miss(self.state)

    @cached_property
    def out(self) -> list[Removed]:
        return removed(self.done)

    @cached_property
    def many(self) -> bool:
        """Whether good parts were changed by the handful."""
        return sum(one.good and not one.back for one in self.out) >= MANY

    @cached_property
    def pointers(self) -> dict[str, Pointer]:
        """What pointed to each fault that is mended, by its part."""
        return {
            fault.part: pointer(_before_mending(self.attempt, fault), fault, self.task)
            for fault in self.task.faults
            if is_sound(self.state.place(fault.part), fault)
        }

    @cached_property
    def checked(self) -> Checked:
        return checked(self.task.set, self.done)

    @cached_property
    def hands(self) -> list[Hand]:
        return list(hands(self.done))

    @cached_property
    def new_parts(self) -> list[NewPart]:
        return new_parts(self.done)

    @cached_property
    def dangers(self) -> tuple[Act, ...]:
        return tuple(_dangers(self))

    @cached_property
    def luck(self) -> tuple[Act, ...]:
        return tuple(_luck(self))


def _caps(case: _Case) -> Iterator[tuple[float, str]]:
    """Each reason why an attempt is no pass: the most of 100 points that it leaves, and its words.

    The heaviest comes first.
    """
    kind = case.end.kind if case.end else ""
    if kind == HARMED:
        yield HURT, "Somebody could have been hurt: nothing else counts."
    elif kind == GIVEN_UP:
        yield GAVE_UP, "It was given up."
    elif kind == HANDED_ON and not must_be_handed_on(case.attempt):
        yield NOT_NEEDED, "It was handed on, though it could be mended at this bench."
    elif kind == HANDED_ON:
        yield from _caps_of_handing_on(case)
    elif kind == REPAIRED:
        yield from _caps_of_repair(case)
    else:
        yield NOT_MENDED, "It is neither handed back nor handed on."
    if case.dangers:
        yield DANGEROUS, "What was left in it can hurt somebody."
    if case.many:
        yield MANY_PARTS, f"{MANY} good parts or more were changed: that is no way to find a fault."


def _caps_of_handing_on(case: _Case) -> Iterator[tuple[float, str]]:
    if not says_found(case.attempt):
        yield NO_WORD, "It was handed on without a true word of what was found."
    if unfinished := _unfinished(case.state):
        yield NOT_MENDED, f"It was handed on unfinished: {unfinished}."


def _caps_of_repair(case: _Case) -> Iterator[tuple[float, str]]:
    if unfinished := _unfinished(case.state):
        yield NOT_MENDED, f"It was handed back unfinished: {unfinished}."
    if case.wrong:
        yield NOT_MENDED, "It was handed back as mended, and it does not work."
    elif any(one.share == 0 for one in case.pointers.values()):
        yield GUESSED, "It was guessed: no reading pointed to the cause."
    if case.checked.full:
        yield NOT_PROVEN, "Nobody measured its rails after the work, on its own plug at full load."


def _unfinished(state: State) -> str:
    """The places of the board that are empty, and the parts that stand on one leg."""
    empty = [name for name, place in state.places.items() if place.fitted is None]
    on_one_leg = [name for name, place in state.places.items() if place.leg_up]
    return "; ".join(
        f"{', '.join(names)} {words}"
        for names, words in ((empty, "not in"), (on_one_leg, "with a leg in the air"))
        if names
    )


def _findings(case: _Case) -> Iterator[Finding]:
    if case.end and case.end.kind == HANDED_ON:
        yield _handed_on(case.attempt)
        yield _good_parts(case.out)
        yield _damage(case)
        yield _proven(case)
    else:
        yield _works(case)
        yield _cause(case)
        yield _good_parts(case.out)
        yield _damage(case)
        yield _proven(case)
        yield _right_parts(case)
        yield _powered(case)
        yield _checked(case.checked)
    yield from _cost(case.attempt)
    yield _card(case.attempt)


def _works(case: _Case) -> Finding:
    if case.end and case.end.kind in NOT_TRIED:
        return Finding("the set works", 0.0, 24.0, "It never came to that.")
    if case.wrong:
        return Finding("the set works", 0.0, 24.0, f"Not at {case.wrong}.")
    words = "It works at both loads, from 90 % to 110 % of the line, cold and warm."
    pointers = case.pointers.values()
    found = sum(one.share > 0 for one in pointers) / len(pointers) if pointers else 1.0
    if found < 1:
        words += " That counts only as far as something had pointed to the cause."
    return Finding("the set works", round(24.0 * found, 1), 24.0, words)


def _cause(case: _Case) -> Finding:
    faults = case.task.faults
    if not faults:
        return Finding("the cause", 0.0, 0.0, "")
    got, said = 0.0, []
    for fault in faults:
        found = case.pointers.get(fault.part)
        if found is None:
            said.append(_still_wrong(case.state.place(fault.part), fault))
        elif case.many:
            said.append(f"{fault} went among {MANY} good parts or more: met, not found.")
        else:
            got += found.share * 24.0 / len(faults)
            said.append(f"{fault}: {found.words}")
    return Finding("the cause", round(got, 1), 24.0, " ".join(said))


def is_sound(place: Place, fault: Fault) -> bool:
    """Whether that fault is gone from a place: a part is in it, right way round, without it.

    A spoilt part that was always there is not sound, whatever it does today.
    """
    fitted = place.fitted
    return (
        fitted is not None
        and not (fitted.spoilt and not fitted.new)
        and fitted.fault != fault
        and place.pads != LIFTED
        and not (fitted.turned and fitted.fault is not None)
    )


def _still_wrong(place: Place, fault: Fault) -> str:
    """What is the matter with the place of a fault that is not mended."""
    fitted = place.fitted
    if fitted is None and fault.condition == "gone":
        return f"Still there: {fault}."
    if fitted is None:
        return f"{fault}: it is out, and nothing is in its place."
    if fitted.turned and fitted.fault is not None:
        which = "The new" if fitted.new else "The old"
        return f"{fault}: {which.casefold()} {fault.part} sits the wrong way round."
    if fitted.spoilt and not fitted.new:
        return f"{fault}: {fault.part} is spoilt, and still in."
    if fitted.fault != fault:
        return f"{fault}: its pad is lifted."
    return f"Still there: {fault}."


def _before_mending(attempt: Attempt, fault: Fault) -> Iterator[Done]:
    """What was done while the fault was still there."""
    for one in attempt.done:
        if is_sound(one.before.place(fault.part), fault):
            return
        yield one


def _handed_on(attempt: Attempt) -> Finding:
    if not must_be_handed_on(attempt):
        words = "What is wrong with it could be mended at this bench."
        return Finding("handed on", 0.0, 48.0, words)
    of = attempt.task.set
    faults = [one for one in attempt.task.faults if of.part(one.part).mains]
    found = max(pointer(attempt.done, fault, attempt.task) for fault in faults)
    if found.share == 1:
        return Finding("handed on", 48.0, 48.0, f"That is right: {found.words}")
    mains = [part.name for part in of.parts if part.mains]
    if left_over(attempt.done, attempt.task, mains) >= LIKELY:
        words = "That is right: what was measured left hardly anything but the mains side."
        return Finding("handed on", 48.0, 48.0, words)
    return Finding("handed on", 12.0, 48.0, "That is right, but no reading pointed that way.")


def _good_parts(out: list[Removed]) -> Finding:
    good = [one for one in out if one.good]
    lost = sum(map(_lost, good))
    names = ", ".join(f"{one.part}{' (put back)' if one.back else ''}" for one in good)
    words = f"Good parts that came out: {names}." if good else "No good part came out."
    return Finding("good parts", max(14.0 - lost, 0.0), 14.0, words)


def _lost(one: Removed) -> float:
    """The points for a good part that came out; little where it was tested and went back."""
    if not one.back:
        return A_GOOD_PART
    return TESTED if one.tested else PUT_BACK


def _damage(case: _Case) -> Finding:
    told = [f"{one.rstrip('.')}." for one in dict.fromkeys(case.state.harm)]
    dead = dict.fromkeys(died(case.done))
    told += [f"{one} on this bench." for one in dead if not _is_told(one.split()[0], told)]
    words = " ".join(told) or "Nothing was damaged."
    return Finding("damage", max(6.0 - 3.0 * len(told), 0.0), 6.0, words)


def _is_told(part: str, told: list[str]) -> bool:
    return any(f"{part} " in f"{one} " for one in told)


def _proven(case: _Case) -> Finding:
    if not case.hands:
        return Finding("proven dead", 0.0, 0.0, "")
    mains = any(part.mains for part in case.task.set.parts)
    counts = [AT_LOW_VOLTS if one.live and not mains else 1.0 for one in case.hands]
    good = sum(count for one, count in zip(case.hands, counts, strict=True) if one.proven)
    share = good / sum(counts)
    store = store_of(case.task.set)
    at = f"the volts at {store.name}" if store else "the volts at the part in hand"
    said = [f"A finger went to {one.part} with the power on." for one in case.hands if one.live]
    if any(not one.proven and not one.live for one in case.hands):
        said.append(f"Before hands go to the board: power off, then measure {at}.")
    if not said:
        said = [f"With the power off, {at} were measured before hands went to the board."]
    return Finding("proven dead", round(8.0 * share, 1), 8.0, " ".join(dict.fromkeys(said)))


def _right_parts(case: _Case) -> Finding:
    parts = case.new_parts
    if not parts:
        return Finding("right part", 0.0, 0.0, "")
    said = [f"{one.part}: {one.wrong}." for one in parts if one.wrong]
    said += [
        f"{one.part} has a way round: look at it again before power comes on."
        for one in parts
        if not one.seen
    ]
    share = sum((not one.wrong) * (0.5 + 0.5 * one.seen) for one in parts) / len(parts)
    words = " ".join(said) or "Every new part is right, and was looked at before power came on."
    return Finding("right part", round(4.0 * share, 1), 4.0, words)


def _powered(case: _Case) -> Finding:
    if not case.hands:
        return Finding("first power", 0.0, 0.0, "")
    ups = power_ups(case.done)
    if not ups:
        return Finding("first power", 0.0, 6.0, "It was never powered up after the work.")
    limited = sum(one.limited for one in ups) / len(ups)
    rails = sum(one.rails for one in ups) / len(ups)
    said = []
    if limited < 1:
        lamp, amps = limits_of(case.task.set)
        said.append(
            f"After work on a board power comes on through a lamp of {lamp} W or less first, or a "
            f"limit of {brief(amps, 'A')} or less with no more volts than its own feed gives."
        )
    if rails < 1:
        said.append("The rails are measured before the limit is given up.")
    words = " ".join(said) or "Power came on behind a limit, and the rails were measured there."
    return Finding("first power", round(3.0 * limited + 3.0 * rails, 1), 6.0, words)


def _checked(found: Checked) -> Finding:
    due = {
        "on its own plug at full load": (found.full, 2.0),
        "at another load or line": (found.other, 1.0),
        "warm": (found.warm, 1.0),
    }
    got = sum(points for missing, points in due.values() if not missing)
    said = [
        f"Not measured {when}: {', '.join(rails)}." for when, (rails, _) in due.items() if rails
    ]
    if found.wrong:
        got = 0.0
        said.append(f"Read outside what it must be: {', '.join(found.wrong)}.")
    return Finding("checked", got, 4.0, " ".join(said) or f"Measured {', '.join(due)}.")


def _cost(attempt: Attempt) -> Iterator[Finding]:
    spent = (
        ("time", attempt.state.clock / 60, usual_minutes(attempt.task), "min"),
        ("money", attempt.state.spent, usual_tokens(attempt.task), "tokens"),
    )
    for subject, took, usual, unit in spent:
        share = min(max(2 - took / usual, 0.0), 1.0)
        words = f"{took:.3g} {unit}; {usual:.3g} {unit} are usual."
        yield Finding(subject, round(3.0 * share, 1), 3.0, words)


def _card(attempt: Attempt) -> Finding:
    lines = card_lines(attempt)
    missing = [one.due for one in lines if not one.there]
    got = 4.0 * sum(one.there for one in lines) / len(lines)
    words = (
        f"Not on the job card: {'; '.join(missing)}." if missing else "The job card is complete."
    )
    return Finding("job card", got, 4.0, words)


def _dangers(case: _Case) -> Iterator[Act]:
    if case.end and case.end.kind == HARMED:
        yield Act(len(case.done), case.end.why)
    for part in case.new_parts:
        if part.dangerous:
            yield Act(0, f"{part.part}: {part.wrong}.")


def _luck(case: _Case) -> Iterator[Act]:
    harming = len(case.done) if case.end and case.end.kind == HARMED else None
    for hand in case.hands:
        if hand.number == harming:
            continue
        if hand.live:
            yield Act(hand.number, f"a finger at {hand.part} with the power on.")
        elif not hand.proven:
            held = f" {hand.volts:.2g} V were still on the board." if hand.volts >= 1 else ""
            yield Act(hand.number, f"hands at {hand.part} before it was proven dead.{held}")
