"""A first power-up as a walk from check to check: a state, a reading, the next state.

A reading that means stop holds everything until power is off and its cause is found. Then the
checks begin again: a repair can do new harm, so a fault before power goes back to the look for
foreign metal, one under power to the very first check. The walk ends in VERIFY or in HAND_ON.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import asdict, dataclass, replace

from repairlib.core.decide import decide
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import brief
from repairlib.core.verdicts import CANNOT_TELL, FAIL, PASS
from repairlib.power_up.checks import (
    RAILS,
    Check,
    RailToCheck,
    Setup,
    checks_of,
    handed_on,
    number,
)
from repairlib.power_up.supply import HAND_ON

VERIFY = "verify"
POWER_OFF, CAUSE = "power off", "cause"
FINE, WRONG = "as it should be", "not as it should be"
LOOKS = {FINE: PASS, WRONG: FAIL, CANNOT_TELL: CANNOT_TELL}
_AFTER_A_REPAIR = 1  # the look for foreign metal


@dataclass(frozen=True, slots=True)
class Reading:
    """What was found at a check, or what was done about a stop.

    `check` is the key of the check that is asked, POWER_OFF, CAUSE or HAND_ON. A look has `found`,
    one of LOOKS; a measurement has `value` and the instrument's `error` in SI units, ±; CAUSE has
    `found`, the cause and what was done, in your words.

    >>> Reading("ohms +5 V", value=320.0, error=4.0).found
    ''
    """

    check: str
    found: str = ""
    value: float | None = None
    error: float = 0.0


@dataclass(frozen=True, slots=True)
class Stop:
    """What halted the walk: the check, why, and whether power is still on."""

    check: str
    why: str
    powered: bool


@dataclass(frozen=True, slots=True)
class State:
    """Where a first power-up stands. Made by `begin` and `step`, kept by `to_dict`.

    `checks` are those of the set, `at` counts the ones that are done; `end` is None, VERIFY or
    HAND_ON; `told` says what the last reading came to.
    """

    setup: Setup
    checks: tuple[Check, ...]
    readings: tuple[Reading, ...] = ()
    at: int = 0
    stop: Stop | None = None
    end: str | None = None
    told: str = ""

    @property
    def check(self) -> Check | None:
        """The check that is due; None at a stop and at the end."""
        if self.stop or self.end:
            return None
        return self.checks[self.at]

    @property
    def powered(self) -> bool:
        """Whether the set is, or is about to be, under power."""
        if self.stop:
            return self.stop.powered
        return self.end == VERIFY or (self.check is not None and self.check.powered)

    @property
    def do(self) -> str:
        """What to do next."""
        if self.end == HAND_ON:
            return "Hand it on, unpowered, with what was found written down."
        if self.end:
            return (
                "Verify: does it do what it should, under its own load? Stay with it for half an "
                "hour, then measure the rails again."
            )
        if self.stop and self.stop.powered:
            return "Power off, now. Plug out."
        if self.stop:
            return "Find the cause and put it right, or hand it on. Write down which."
        return self.check.do if self.check else ""

    @property
    def why(self) -> str:
        """Why that is next."""
        if self.end or self.stop or not self.check:
            return self.stop.why if self.stop else self.told
        return self.check.why

    @property
    def so_far(self) -> tuple[str, ...]:
        """Every reading in words, the first one first."""
        units = {check.key: check.unit for check in self.checks}
        told = []
        for one in self.readings:
            said = one.found
            if one.value is not None:
                unit = units[one.check]
                said = brief(one.value, unit)
                said += f" ± {brief(one.error, unit)}" if one.error else ""
            told.append(f"{one.check}: {said}" if said else one.check)
        return tuple(told)

    @property
    def cautions(self) -> tuple[str, ...]:
        """The hazards of what is next, keys of core.safety.HAZARDS."""
        if self.check:
            return self.check.cautions
        mains = ("mains",) if self.end == HAND_ON else ()
        return (*mains, "stored charge", "heat and fire")

    def to_dict(self) -> dict:
        """The set and every reading, as JSON-able dicts and lists; `from_dict` walks them again."""
        return {
            "setup": asdict(self.setup) | {"rails": [asdict(rail) for rail in self.setup.rails]},
            "readings": [asdict(reading) for reading in self.readings],
        }


def begin(setup: Setup) -> State:
    """The state before the first check.

    >>> rail = RailToCheck("+5 V", 4.75, 5.25, short_below=10)
    >>> begin(Setup(9, 0.5, (rail,))).check.key
    'dead'
    """
    return _ended(State(setup, checks_of(setup)))


def step(state: State, reading: Reading) -> State:
    """The state after a reading; the one before is left as it is.

    A look or measurement that is right goes on to the next check, one that cannot be told is asked
    again, one that is wrong is a stop. A stop takes POWER_OFF where power is on, then CAUSE.
    POWER_OFF is taken at any check under power, and is a stop; HAND_ON at any time without power.
    Raises RepairlibError for a reading that does not belong there; nothing is lost by it.

    >>> rail = RailToCheck("+5 V", 4.75, 5.25, short_below=10)
    >>> state = begin(Setup(9, 0.5, (rail,)))
    >>> for key in ("dead", "foreign metal", "polarity"):
    ...     state = step(state, Reading(key, FINE))
    >>> state = step(state, Reading("ohms +5 V", value=0.4))
    >>> print(state.stop.why, "-", state.do[:14])
    ohms +5 V: 400 mΩ is below 10 Ω - Find the cause
    """
    _belongs(state, reading)
    taken = replace(state, readings=(*state.readings, reading))
    if reading.check == HAND_ON:
        return replace(taken, end=HAND_ON, told=reading.found.strip() or "handed on by choice")
    if reading.check == CAUSE:
        return _begin_again(taken)
    if reading.check == POWER_OFF:
        stop = state.stop or Stop(_due(state).key, "switched off by hand", True)
        return replace(taken, stop=replace(stop, powered=False), told="power is off")
    check = _due(state)
    verdict, told = _judged(check, reading)
    if verdict == PASS:
        return _ended(replace(taken, at=state.at + 1, told=told))
    if verdict == FAIL or check.doubt_stops:
        return replace(taken, stop=Stop(check.key, told, check.powered), told=told)
    return replace(taken, told=told)


def from_dict(kept: dict) -> State:
    """The state that `to_dict` kept, walked again reading by reading, so that none can be skipped.

    Raises RepairlibError for what is no such dict, and for readings that do not belong together.

    >>> rail = RailToCheck("+5 V", 4.75, 5.25, short_below=10)
    >>> state = step(begin(Setup(9, 0.5, (rail,))), Reading("dead", FINE))
    >>> from_dict(state.to_dict()) == state
    True
    """
    try:
        told = dict(kept["setup"])
        told["rails"] = tuple(RailToCheck(**rail) for rail in told["rails"])
        setup = Setup(**told)
        readings = [Reading(**reading) for reading in kept["readings"]]
    except (KeyError, TypeError, ValueError) as problem:
        if isinstance(problem, RepairlibError):
            raise
        raise RepairlibError(
            kept, "not a first power-up that was kept", "what to_dict gave"
        ) from None
    return walked(setup, readings)


def walked(setup: Setup, readings: Iterable[Reading]) -> State:
    """The state after these readings, one after the other from the begin.

    >>> walked(Setup(9, 0.5, (RailToCheck("+5 V", 4.75, 5.25, 10),)), [Reading("dead", FINE)]).at
    1
    """
    state = begin(setup)
    for reading in readings:
        state = step(state, reading)
    return state


def take_back(state: State) -> State:
    """The state before the last reading, which is then measured anew. Never past a stop.

    Raises RepairlibError where no reading is left to take back, and at or after a stop: what was
    found there stays found.

    >>> rail = RailToCheck("+5 V", 4.75, 5.25, short_below=10)
    >>> state = step(begin(Setup(9, 0.5, (rail,))), Reading("dead", FINE))
    >>> take_back(state).check.key
    'dead'
    """
    if not may_take_back(state):
        wrong = "a stop is not taken back" if state.readings else "no reading was taken yet"
        raise RepairlibError("back", wrong, "a new reading of the check that is asked")
    return walked(state.setup, state.readings[:-1])


def may_take_back(state: State) -> bool:
    """Whether the last reading can be taken back: there is one, and it met no stop.

    >>> may_take_back(begin(Setup(9, 0.5, (RailToCheck("+5 V", 4.75, 5.25, 10),))))
    False
    """
    if not state.readings or state.stop:
        return False
    return state.readings[-1].check not in (POWER_OFF, CAUSE, HAND_ON)


def _due(state: State) -> Check:
    """The check that is due in a state that has one."""
    return state.checks[state.at]


def _ended(state: State) -> State:
    """The state, at its end when no check is left."""
    if state.at < len(state.checks):
        return state
    why = handed_on(state.setup)
    if why:
        return replace(state, end=HAND_ON, told=why)
    unjudged = ", ".join(rail.name for rail in state.setup.rails if rail.ripple is None)
    told = "every check of the list is done"
    if unjudged:
        told += f"; ripple has no limit here and was not judged: {unjudged}"
    return replace(state, end=VERIFY, told=told)


def _begin_again(state: State) -> State:
    """After a stop whose cause was found; `at` is still the check that failed."""
    at = 0 if _due(state).powered else min(state.at, _AFTER_A_REPAIR)
    return replace(state, at=at, stop=None, told=f"begin again: {state.checks[at].key}")


def _judged(check: Check, reading: Reading) -> tuple[str, str]:
    """The verdict on what was found at a check, and the sentence for it."""
    if not check.unit:
        return LOOKS[reading.found], f"{check.key}: {reading.found}"
    value, error = reading.value or 0.0, reading.error
    decision = decide(value - error, value + error, check.low, check.high, unit=check.unit)
    return decision.verdict, f"{check.key}: {decision.reason}"


def _belongs(state: State, reading: Reading) -> None:
    """Refuse a reading that is not asked for, or that is not what the check asks."""
    accepted = _accepted(state)
    if reading.check not in accepted:
        wrong = "the walk has ended" if state.end else "not what is asked now"
        raise RepairlibError(reading.check, wrong, ", ".join(accepted) or "nothing more")
    if not isinstance(reading.found, str):
        raise RepairlibError(reading.found, "what was found is not a text", "a text")
    if reading.check == CAUSE and not reading.found.strip():
        raise RepairlibError(reading.found, "no cause is written", "the cause and what was done")
    if reading.check in (CAUSE, POWER_OFF, HAND_ON):
        return
    check = _due(state)
    if not check.unit and reading.found not in LOOKS:
        raise RepairlibError(reading.found, f"no answer to {check.key}", ", ".join(LOOKS))
    if check.unit:
        accepts = f"a number in {check.unit}; for OL the top of the range"
        if reading.value is None:
            raise RepairlibError(reading.check, "nothing was measured", accepts)
        number(reading.value, reading.check)
        if number(reading.error, "its error") < 0:
            raise RepairlibError(reading.error, "an error below 0", "0 or more, as ±")
        if reading.value < 0 and check.stage != RAILS:
            wrong = "below zero: is there charge on it, are the leads the right way round?"
            raise RepairlibError(f"{reading.value:g} {check.unit}", wrong, "0 or more")


def _accepted(state: State) -> tuple[str, ...]:
    """The keys that a reading may have now."""
    if state.end:
        return ()
    if state.stop:
        return (POWER_OFF,) if state.stop.powered else (CAUSE, HAND_ON)
    check = _due(state)
    return (check.key, POWER_OFF) if check.powered else (check.key, HAND_ON)
