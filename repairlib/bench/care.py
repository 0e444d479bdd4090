"""How carefully hands went to work: proven dead before, the right part seen, powered up gently."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from repairlib.bench.attempt import Done
from repairlib.bench.moves import Reading
from repairlib.bench.pointing import is_inside, rail_read
from repairlib.bench.practice_set import BoardPart, PracticeSet
from repairlib.bench.state import FULL, LAMP, OWN_PLUG, SUPPLY, Fitted, State
from repairlib.power_up import lamp_for

HANDS = ("take out", "clean", "fit", "resolder", "bridge", "read chip", "write chip")
CHANGES = tuple(verb for verb in HANDS if verb != "read chip")
# Choices of this workbook.
DEAD = 1.0  # V, and less is dead
GENTLE = 3.0  # times the usual current is still a limit
SMALL_LAMP, LEAST_LAMP = 4.0, 15.0  # times the usual power, and W: a larger lamp limits nothing
OVER = 1.05  # times the usual volts is no more than a supply may be off
SOAKED = 300.0  # s with the power on until a set is called warm


class Hand(NamedTuple):
    """Hands on the board: the number of the move, its part, and whether it was proven dead before.

    `volts` is the most that a capacitor held, whoever knew it; `live`: a finger with the power on.
    """

    number: int
    part: str
    proven: bool
    volts: float = 0.0
    live: bool = False


def hands(done: tuple[Done, ...]) -> Iterator[Hand]:
    """Each move that went to the board with hands or iron."""
    proven: set[frozenset[str]] = set()
    for number, one in enumerate(done, 1):
        of, move = one.before.set, one.move
        if one.before.powered:
            proven.clear()
        reading = one.told.reading
        if reading and move.verb == "volts" and not one.before.powered and _is_dead(reading):
            proven.add(frozenset(reading.points))
        if move.verb in HANDS and move.at:
            part = of.part(move.at[0])
            asked = {frozenset(one.nodes) for one in (store_of(of), part) if one}
            held = max((abs(volts) for volts in dict(one.before.charges).values()), default=0.0)
            yield Hand(number, part.name, bool(asked & proven), held)
        elif move.verb == "touch" and one.before.powered:
            yield Hand(number, of.part(move.at[0]).name, False, live=True)


def _is_dead(reading: Reading) -> bool:
    return reading.value is not None and abs(reading.value) < DEAD


def store_of(of: PracticeSet) -> BoardPart | None:
    """The capacitor that can hold most, by ½CV² at its rating, off the mains side."""

    def holds(part: BoardPart) -> float:
        return part.circuit.value * part.rated**2 if part.circuit else 0.0

    stores = [one for one in of.parts if one.circuit and one.circuit.letter == "C"]
    return max((one for one in stores if not one.mains), key=holds, default=None)


class PowerUp(NamedTuple):
    """Power coming on after hands: whether it was limited, and whether rails were read so."""

    number: int
    limited: bool
    rails: bool


def power_ups(done: tuple[Done, ...]) -> list[PowerUp]:
    """Each first time that power came on after hands had been at the board."""
    found: list[PowerUp] = []
    changed = False
    for number, one in enumerate(done, 1):
        changed = changed or one.move.verb in CHANGES
        if changed and one.after.powered and not one.before.powered:
            changed = False
            limited = is_limited(one.after)
            found.append(PowerUp(number, limited, limited and _rails_read(done[number:])))
    return found


def is_limited(state: State) -> bool:
    """Whether a lamp or the limit of a supply would hold back a fault.

    A lamp of many times the set's power and volts above those of its feed hold nothing back.
    """
    of, feed = state.set, state.feed
    lamp, amps = limits_of(of)
    if feed.kind == LAMP:
        return feed.lamp <= lamp
    usual = feed.volts <= OVER * of.feed_volts
    return feed.kind == SUPPLY and usual and feed.limit <= amps


def limits_of(of: PracticeSet) -> tuple[float, float]:
    """The largest lamp [W] and the largest limit [A] that hold a fault of this set back.

    >>> from repairlib.bench.practice_set import demo_set
    >>> lamp, amps = limits_of(demo_set("desk radio"))
    >>> lamp, round(amps, 2)
    (25, 1.05)
    """
    lamp = lamp_for(max(LEAST_LAMP, SMALL_LAMP * of.feed_volts * of.feed_amps))
    return lamp, GENTLE * of.feed_amps


def _rails_read(later: tuple[Done, ...]) -> bool:
    """Whether each rail was read before the limit was given up."""
    due = {rail.point for rail in later[0].before.set.rails} if later else {""}
    for one in later:
        if one.before.powered and not is_limited(one.before):
            break
        due -= rails_at(one)
    return not due


def rails_at(one: Done) -> set[str]:
    """The point of the rail that volts or a trace were taken at with the power on, if any."""
    rail = rail_read(one.before.set, one.move, one.told.reading)
    return {rail.point} if rail and one.before.powered and one.move.verb != "ac volts" else set()


class Checked(NamedTuple):
    """What was tried between the last work on the board and its end: the rails not read then.

    On its own plug at `full` load and usual line, at any `other` load or line, and `warm`. `wrong`
    are the rails that were last read outside their windows.
    """

    full: tuple[str, ...]
    other: tuple[str, ...]
    warm: tuple[str, ...]
    wrong: tuple[str, ...]


def checked(of: PracticeSet, done: tuple[Done, ...]) -> Checked:
    """Which rails were not read on the set's own plug at full load, otherwise, and warm."""
    last = max((at for at, one in enumerate(done) if one.move.verb in CHANGES), default=-1)
    own = [one for one in done[last + 1 :] if one.before.feed.kind == OWN_PLUG]
    full = [one for one in own if one.before.load == FULL and one.before.feed.line == 1.0]
    other = [one for one in own if one not in full]
    begun = min((one.before.clock for one in own), default=0.0)
    warm = [one for one in own if one.before.clock - begun >= SOAKED]
    return Checked(_unread(of, full), _unread(of, other), _unread(of, warm), _wrong_rails(of, own))


def _unread(of: PracticeSet, some: list[Done]) -> tuple[str, ...]:
    read = set().union(*map(rails_at, some))
    return tuple(rail.name for rail in of.rails if rail.point not in read)


def _wrong_rails(of: PracticeSet, own: list[Done]) -> tuple[str, ...]:
    """The rails whose last reading in some way of trying lay outside the window."""
    last: dict[tuple, bool] = {}
    for one in own:
        for point in rails_at(one):
            key = (point, one.move.verb, one.before.load, one.before.feed.line)
            last[key] = is_inside(one) is False
    bad = {key[0] for key, outside in last.items() if outside}
    return tuple(rail.name for rail in of.rails if rail.point in bad)


class NewPart(NamedTuple):
    """A part that was fitted and stayed: what is wrong with it, and whether anybody looked."""

    part: str
    wrong: str
    dangerous: bool
    seen: bool


def new_parts(done: tuple[Done, ...]) -> list[NewPart]:
    """Each new part that is on the board at the end."""
    if not done:
        return []
    end = done[-1].after
    found = []
    for name, place in end.places.items():
        part = end.set.part(name)
        if place.fitted is not None and (place.fitted.new or _was_spoilt(place.fitted)):
            wrong, dangerous = _wrong(part, place.fitted)
            found.append(NewPart(name, wrong, dangerous, _seen(part, done)))
    return found


def _was_spoilt(fitted: Fitted) -> bool:
    """Whether a part that was always there sits turned now, or is scrap as if it were good."""
    looks_good = fitted.fault is None or fitted.fault.condition == "leaks"
    return fitted.turned or (fitted.spoilt and looks_good)


def _wrong(part: BoardPart, fitted: Fitted) -> tuple[str, bool]:
    """What is wrong with a new part, and whether that can hurt."""
    if "fuse" in part.what:
        if fitted.rated and part.rated and fitted.rated > part.rated:
            return f"a fuse of {fitted.rated:g} A sits where {part.rated:g} A belong", True
    elif fitted.rated and part.rated and fitted.rated < part.rated:
        return f"{fitted.rated:g} V are not enough where {part.rated:g} V belong", True
    if fitted.turned and part.plus is not None:
        return "it sits the wrong way round", True
    if fitted.spoilt:
        return "it stood the wrong way round or far above its rating, which makes it scrap", True
    if fitted.value is not None and part.circuit:
        low, high = (0.8, 1.5) if part.circuit.letter == "C" else (0.95, 1.05)
        if not low <= fitted.value / part.circuit.value <= high:
            return "its value is another than the old one's", False
    return "", False


def _seen(part: BoardPart, done: tuple[Done, ...]) -> bool:
    """Whether a part that has a way round was looked at after it was fitted, before power."""
    if part.plus is None:
        return True
    seen, waiting = True, False
    for one in done:
        named = any(word.casefold() == part.name.casefold() for word in one.move.at)
        if one.move.verb == "fit" and named:
            seen, waiting = False, True
        elif one.after.powered:
            waiting = False
        elif one.move.verb in ("look", "diode") and named and waiting:
            seen = True
    return seen
