"""An attempt judged by its outcome and its care, each point with its reason in words.

The weights are choices of this workbook. Of a hundred, a set that was mended brings 24 for working
at every load and line, cold and warm; 24 for the cause, if a reading pointed to it before it was
mended; 14 for leaving good parts alone; the rest is care: nothing damaged, proven dead, the right
part the right way round, powered up gently, checked, time, money, the job card. What can hurt
somebody is no pass, whatever else was right.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import NamedTuple

from repairlib.bench.attempt import Attempt, Done
from repairlib.bench.care import checked, hands, new_parts, power_ups, store_of
from repairlib.bench.conditions import Fault
from repairlib.bench.job_card import card_lines, says_found
from repairlib.bench.pointing import LIKELY, left_over, pointed_to
from repairlib.bench.removed import Removed, removed
from repairlib.bench.state import GIVEN_UP, HANDED_ON, HARMED, LIFTED, REPAIRED, Place
from repairlib.bench.still_works import misses

PASS = 0.6
NOT_TRIED = (HARMED, HANDED_ON, GIVEN_UP)  # ends after which nobody asks whether it works
# The most that is left of 100 points:
NO_WORD, NOT_MENDED, DANGEROUS, NOT_NEEDED, GAVE_UP, HURT = 50.0, 40.0, 40.0, 30.0, 20.0, 0.0
MANY = 3  # good parts out, from which on a cause was met and not found
A_GOOD_PART, PUT_BACK = 5.0, 2.0


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing that was judged: the points it got of those there were, and why."""

    subject: str
    got: float
    of: float
    words: str

    def __str__(self) -> str:
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


def judge(attempt: Attempt, way: Attempt | None = None) -> Judgement:
    """The judgement of an attempt as it stands; `way` is an expert's, for its time and money.

    >>> from repairlib.bench.attempt import Task, walked
    >>> from repairlib.bench.practice_set import demo_set
    >>> task = Task(demo_set("desk radio"), (), "demo")
    >>> judge(walked(task, ["plug in"])).findings[-1].words
    'It is neither handed back nor handed on.'
    """
    end = attempt.state.ended
    wrong = (end.why,) if end and end.kind in NOT_TRIED else misses(attempt.state)
    mended = not wrong
    dangers, luck = tuple(_dangers(attempt)), tuple(_luck(attempt))
    findings = [one for one in _findings(attempt, wrong) if one.of]
    most, why = _most(attempt, mended)
    if dangers and most > DANGEROUS:
        most, why = DANGEROUS, "What was left in it can hurt somebody."
    got, of = sum(one.got for one in findings), sum(one.of for one in findings)
    if got > most * of / 100:
        findings.append(Finding("the end", round(most * of / 100 - got, 1), 0.0, why))
        got = most * of / 100
    share = round(max(got, 0.0) / of, 3)
    good = share >= PASS and not dangers and most == 100
    return Judgement(share, good, tuple(findings), dangers, luck)


def must_be_handed_on(attempt: Attempt) -> bool:
    """Whether a fault lies where only somebody qualified may work: on the mains side."""
    return any(attempt.task.set.part(fault.part).mains for fault in attempt.task.faults)


def _most(attempt: Attempt, mended: bool) -> tuple[float, str]:
    """The most of 100 points that such an end can bring, and why."""
    kind = attempt.state.ended.kind if attempt.state.ended else ""
    if kind == HARMED:
        return HURT, "Somebody could have been hurt: nothing else counts."
    if kind == GIVEN_UP:
        return GAVE_UP, "It was given up."
    if kind == HANDED_ON:
        if must_be_handed_on(attempt):
            if not says_found(attempt.state):
                return NO_WORD, "It was handed on without a word of what was found."
            return 100.0, ""
        return NOT_NEEDED, "It was handed on, though it could be mended at this bench."
    if kind == REPAIRED and mended:
        return 100.0, ""
    if kind == REPAIRED:
        return NOT_MENDED, "It was handed back as mended, and it does not work."
    return NOT_MENDED, "It is neither handed back nor handed on."


def _findings(attempt: Attempt, wrong: tuple[str, ...]) -> Iterator[Finding]:
    out = removed(attempt.done)
    if attempt.state.ended and attempt.state.ended.kind == HANDED_ON:
        yield _handed_on(attempt)
        yield _good_parts(out)
        yield _damage(attempt)
        yield _proven(attempt)
    else:
        yield _works(attempt, wrong)
        yield _cause(attempt, out)
        yield _good_parts(out)
        yield _damage(attempt)
        yield _proven(attempt)
        yield _right_parts(attempt)
        yield _powered(attempt)
        yield _checked(attempt)
    yield from _cost(attempt)
    yield _card(attempt)


def _works(attempt: Attempt, wrong: tuple[str, ...]) -> Finding:
    if not wrong:
        words = "It works at both loads, from 90 % to 110 % of the line, cold and warm."
        return Finding("the set works", 24.0, 24.0, words)
    if attempt.state.ended and attempt.state.ended.kind in NOT_TRIED:
        return Finding("the set works", 0.0, 24.0, "It never came to that.")
    more = f", and {len(wrong) - 1} more of this kind" if len(wrong) > 1 else ""
    return Finding("the set works", 0.0, 24.0, f"Not at {wrong[0]}{more}.")


def _cause(attempt: Attempt, out: list[Removed]) -> Finding:
    if not attempt.task.faults:
        return Finding("the cause", 0.0, 0.0, "")
    each = 24.0 / len(attempt.task.faults)
    many = sum(one.good and not one.back for one in out) >= MANY
    got, said = 0.0, []
    for fault in attempt.task.faults:
        if not _is_mended(attempt, fault):
            said.append(f"Still there: {fault}.")
        elif many:
            said.append(f"{fault} went among {MANY} good parts or more: met, not found.")
        else:
            before = tuple(_before_mending(attempt, fault))
            pointer = pointed_to(before, fault)
            if pointer is not None:
                got += each
                said.append(f"{fault}: {pointer.told.words.rstrip('.')} pointed to it.")
            elif left_over(before, attempt, [fault.part]) >= LIKELY:
                got += each
                said.append(f"{fault}: what was measured left hardly anything else.")
            else:
                said.append(f"{fault} is mended, but nothing pointed to it before.")
    return Finding("the cause", got, 24.0, " ".join(said))


def _is_mended(attempt: Attempt, fault: Fault) -> bool:
    return is_sound(attempt.state.place(fault.part), fault)


def is_sound(place: Place, fault: Fault) -> bool:
    """Whether that fault is gone from a place: a part is in it, without the fault."""
    if place.fitted is None or (place.fitted.spoilt and not place.fitted.new):
        return False
    return place.fitted.fault != fault and place.pads != LIFTED


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
    pointer = next(filter(None, (pointed_to(attempt.done, fault) for fault in faults)), None)
    if pointer is not None:
        said = pointer.told.words.rstrip(".")
        words = f"That is right: {said} pointed to the mains side."
        return Finding("handed on", 48.0, 48.0, words)
    mains = [part.name for part in of.parts if part.mains]
    if left_over(attempt.done, attempt, mains) >= LIKELY:
        words = "That is right: what was measured left hardly anything but the mains side."
        return Finding("handed on", 48.0, 48.0, words)
    return Finding("handed on", 12.0, 48.0, "That is right, but no reading pointed that way.")


def _good_parts(out: list[Removed]) -> Finding:
    good = [one for one in out if one.good]
    lost = sum(PUT_BACK if one.back else A_GOOD_PART for one in good)
    names = ", ".join(f"{one.part}{' (put back)' if one.back else ''}" for one in good)
    words = f"Good parts that came out: {names}." if good else "No good part came out."
    return Finding("good parts", max(14.0 - lost, 0.0), 14.0, words)


def _damage(attempt: Attempt) -> Finding:
    harm = attempt.state.harm
    words = " ".join(f"{one.rstrip('.')}." for one in harm) or "Nothing was damaged."
    return Finding("damage", max(6.0 - 3.0 * len(harm), 0.0), 6.0, words)


def _proven(attempt: Attempt) -> Finding:
    all_of = list(hands(attempt.done))
    if not all_of:
        return Finding("proven dead", 0.0, 0.0, "")
    share = sum(one.proven for one in all_of) / len(all_of)
    store = store_of(attempt.task.set)
    at = f"the volts at {store.name}" if store else "the volts at the part in hand"
    if share == 1:
        words = f"With the power off, {at} were measured before hands went to the board."
    else:
        words = f"Before hands go to the board: power off, then measure {at}."
    return Finding("proven dead", round(8.0 * share, 1), 8.0, words)


def _right_parts(attempt: Attempt) -> Finding:
    parts = new_parts(attempt.done)
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


def _powered(attempt: Attempt) -> Finding:
    if not list(hands(attempt.done)):
        return Finding("first power", 0.0, 0.0, "")
    ups = power_ups(attempt.done)
    if not ups:
        return Finding("first power", 0.0, 6.0, "It was never powered up after the work.")
    limited = sum(one.limited for one in ups) / len(ups)
    rails = sum(one.rails for one in ups) / len(ups)
    said = []
    if limited < 1:
        said.append("After work on a board power comes on through a lamp or a limit first.")
    if rails < 1:
        said.append("The rails are measured before the limit is given up.")
    words = " ".join(said) or "Power came on behind a limit, and the rails were measured there."
    return Finding("first power", round(3.0 * limited + 3.0 * rails, 1), 6.0, words)


def _checked(attempt: Attempt) -> Finding:
    found = checked(attempt.done)
    due = {
        "on its own plug at full load": found.full,
        "at another load or line": found.other,
        "warm": found.warm,
    }
    missing = [words for words, done in due.items() if not done]
    words = (
        f"Rails not measured {', '.join(missing)}." if missing else f"Measured {', '.join(due)}."
    )
    return Finding("checked", 2.0 * found.full + found.other + found.warm, 4.0, words)


def _cost(attempt: Attempt) -> Iterator[Finding]:
    """What is usual comes from how the expert of this room does on these sets."""
    parts = [attempt.task.set.part(fault.part) for fault in attempt.task.faults]
    minutes, tokens = 30.0 + 15 * len(parts), 1.0 + 1.25 * sum(part.price for part in parts)
    spent = (
        ("time", attempt.state.clock / 60, minutes, "min"),
        ("money", attempt.state.spent, tokens, "tokens"),
    )
    for subject, took, usual, unit in spent:
        share = min(max(2 - took / usual, 0.0), 1.0)
        words = f"{took:.3g} {unit}; {usual:.3g} {unit} are usual."
        yield Finding(subject, round(3.0 * share, 1), 3.0, words)


def _card(attempt: Attempt) -> Finding:
    lines = card_lines(attempt.state, attempt.task)
    missing = [one.due for one in lines if not one.there]
    got = 4.0 * sum(one.there for one in lines) / len(lines)
    words = (
        f"Not on the job card: {'; '.join(missing)}." if missing else "The job card is complete."
    )
    return Finding("job card", got, 4.0, words)


def _dangers(attempt: Attempt) -> Iterator[Act]:
    end = attempt.state.ended
    if end and end.kind == HARMED:
        yield Act(len(attempt.done), end.why)
    for part in new_parts(attempt.done):
        if part.dangerous:
            yield Act(0, f"{part.part}: {part.wrong}.")


def _luck(attempt: Attempt) -> Iterator[Act]:
    for hand in hands(attempt.done):
        if hand.live:
            yield Act(hand.number, f"a finger at {hand.part} with the power on.")
        elif not hand.proven:
            held = f" {hand.volts:.2g} V were still on the board." if hand.volts >= 1 else ""
            yield Act(hand.number, f"hands at {hand.part} before it was proven dead.{held}")
