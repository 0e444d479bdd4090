"""How much a reading tells: the suspects before it and after it, and what would cut them best.

A belief gives each suspect its share. A reading keeps the suspects under which it would be shown,
within what the instrument and the working-out may be off, and leaves the others a small share: a
board may have a fault more than was thought of. What a measurement can be expected to tell is the
entropy, in bits, of what it would show over the suspects (C. E. Shannon, A mathematical theory of
communication, 1948, section 6).
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from math import log2
from typing import NamedTuple

from repairlib.bench.attempt import Attempt
from repairlib.bench.electric import FEW_STEPS, electric
from repairlib.bench.moves import Move, Reading
from repairlib.bench.oscilloscope import AC
from repairlib.bench.practice_set import BoardPart, PracticeSet
from repairlib.bench.state import LAMP, OWN_PLUG, State
from repairlib.bench.step import at_once
from repairlib.bench.suspects import Suspect, as_if, bench_key, listed_suspects
from repairlib.bench.where import on_mains_side
from repairlib.circuits import CircuitPart
from repairlib.core.errors import RepairlibError

DOUBT = 0.01  # what a reading that does not fit leaves of a suspect; a choice of this workbook
FAINT = 1e-3  # a share below this is not looked at any more
METER_OHM = 10e6
OVER = "over the range"

# How far what is shown may be off what was worked out: a share of it, and so much in its unit. A
# choice of this workbook, wider than the instruments of the bench are.
OFF = {
    "volts": (0.015, 4e-3), "ac volts": (0.04, 5e-3), "scope": (0.12, 8e-3), "ohms": (0.04, 0.15),
    "diode": (0.04, 6e-3), "esr": (0.12, 0.03), "capacitance": (0.07, 1e-10),
    "amps": (0.04, 2e-3),
}  # fmt: skip
Shown = float | str  # a number in SI units, or OVER


def alike(verb: str, one: Shown, other: Shown) -> bool:
    """Whether two readings could be the same reading.

    >>> alike("volts", 9.0, 8.95), alike("volts", 9.0, 8.5), alike("ohms", OVER, 1e3)
    (True, False, False)
    """
    return between(verb, one, other, other)


def between(verb: str, shown: Shown, one: Shown, other: Shown, error: float = 0.0) -> bool:
    """Whether what is shown lies between two values, or as far outside as it may be off.

    `error` is how far off the instrument itself says that it may be, where that is more.
    """
    if isinstance(shown, str) or isinstance(one, str) or isinstance(other, str):
        return shown in (one, other)
    share, step = OFF[verb]
    low, high = min(one, other), max(one, other)
    below, above = (max(step + share * abs(edge), error) for edge in (low, high))
    return low - below <= shown <= high + above


@dataclass(frozen=True)
class Belief:
    """Suspects, each with its share of the belief; the shares make 1."""

    suspects: tuple[Suspect, ...]
    shares: tuple[float, ...]

    @property
    def bits(self) -> float:
        """The entropy: how many yes-or-no answers are still needed."""
        return entropy(self.shares)

    @property
    def left(self) -> tuple[int, ...]:
        """The places of the suspects that are still worth a thought."""
        return tuple(at for at, share in enumerate(self.shares) if share > FAINT)

    @property
    def likely(self) -> tuple[int, ...]:
        """The places of those with a twentieth of the heaviest share or more."""
        least = max(self.shares) / 20
        return tuple(at for at, share in enumerate(self.shares) if share >= least)

    def by_part(self) -> dict[str, float]:
        """The share of each part that is blamed, the heaviest first; "" is no part."""
        found: dict[str, float] = {}
        for suspect, share in zip(self.suspects, self.shares, strict=True):
            for part in suspect.parts or ("",):
                found[part] = found.get(part, 0.0) + share
        return dict(sorted(found.items(), key=lambda item: -item[1]))

    def without(self, parts: Iterable[str]) -> Belief:
        """The belief when these parts are known to be sound."""
        sound = set(parts)
        return self.but(lambda suspect: bool(sound.intersection(suspect.parts)))

    def but(self, cleared: Callable[[Suspect], bool]) -> Belief:
        """The belief when these suspects are cleared."""
        shares = zip(self.suspects, self.shares, strict=True)
        return _belief(self.suspects, [0.0 if cleared(one) else share for one, share in shares])


def entropy(shares: Iterable[float]) -> float:
    """In bits, of shares that make 1.

    >>> entropy([0.5, 0.25, 0.25])
    1.5
    """
    return -sum(share * log2(share) for share in shares if share > 0)


def believed(suspects: tuple[Suspect, ...]) -> Belief:
    """The belief before the first reading: by how common each condition is."""
    return _belief(suspects, [one.weight for one in suspects])


def _belief(suspects: tuple[Suspect, ...], weights: list[float]) -> Belief:
    total = sum(weights)
    if not total:
        return Belief(suspects, tuple(1 / len(weights) for _ in weights))
    return Belief(suspects, tuple(weight / total for weight in weights))


def learned(belief: Belief, move: Move, reading: Reading, at: State) -> Belief:
    """The belief after a reading, on the bench as it stood."""
    expected = what_each_shows(belief, move, at)
    weights = [
        share
        if place not in expected or _fits(belief, expected, place, move, reading)
        else share * DOUBT
        for place, share in enumerate(belief.shares)
    ]
    return _belief(belief.suspects, weights)


def _fits(belief: Belief, expected: Mapping[int, Shown], place: int, move: Move, reading: Reading):
    """Whether it may be this suspect, or one between it and its neighbours of the same kind.

    A suspect of whom nothing could be worked out is neither cleared nor blamed.
    """
    if place not in expected:
        return True
    mine, kind = expected[place], belief.suspects[place].kind
    for beside in (place - 1, place + 1):
        same = beside in expected and belief.suspects[beside].kind == kind
        near = expected[beside] if same else mine
        if between(move.verb, shown_by(reading), mine, near, reading.error):
            return True
    return False


def shown_by(reading: Reading) -> Shown:
    """What a reading comes to: its value, or that it is over the range."""
    return OVER if reading.value is None else reading.value


def what_each_shows(belief: Belief, move: Move, at: State) -> dict[int, Shown]:
    """What the instrument would show under each suspect that is left, by its place."""
    found = {}
    bench = bench_key(at)
    for place in belief.left:
        shown = _predicted(at, bench, belief.suspects[place], move)
        if shown is not None:
            found[place] = shown
    return found


def gain(belief: Belief, move: Move, at: State) -> float:
    """What the measurement can be expected to tell, in bits."""
    expected = what_each_shows(belief, move, at)
    over = sum(belief.shares[place] for place, shown in expected.items() if shown == OVER)
    numbers = sorted(
        (shown, place) for place, shown in expected.items() if not isinstance(shown, str)
    )
    heaps, last = [over], None
    for shown, place in numbers:
        if last is None or not alike(move.verb, shown, last):
            heaps.append(0.0)
        heaps[-1] += belief.shares[place]
        last = shown
    total = sum(heaps)
    return total * entropy(heap / total for heap in heaps) if total else 0.0


def best_next(belief: Belief, at: State, among: Iterable[Move] | None = None):
    """The measurement that tells most on this bench, and its bits; None where none tells."""
    moves = tuple(measurements(at.set, at) if among is None else among)
    best = max(((gain(belief, move, at), -n, move) for n, move in enumerate(moves)), default=None)
    return None if best is None or best[0] <= 0 else (best[2], best[0])


def measurements(of: PracticeSet, at: State) -> tuple[Move, ...]:
    """The measurements that tell something on this bench: with power, or on the dead board.

    Where a meter changes what is there, as at a transformer behind diodes that rest, none is taken.
    """
    if not at.powered:
        touched = [part for part in of.parts if not part.mains]
        return tuple(Move(verb, (part.name,)) for part in touched for verb in at_rest(part))
    points = [point for point in of.points if point != "0" and not on_mains_side(of, point)]
    points = [point for point in points if not _floats(at, (point, "0"))]
    moves = tuple(across(verb, point) for verb in ("volts", "scope") for point in points)
    feed = of.part(of.feed)
    if at.feed.kind in (OWN_PLUG, LAMP) and feed.mains:
        return (*moves, Move("ac volts", feed.nodes))
    return moves


def across(verb: str, point: str) -> Move:
    """A measurement from a point to zero; a trace without its dc, where ripple is seen best."""
    return Move(verb, (point, "0"), {}, AC if verb == "scope" else "")


def at_rest(part: BoardPart) -> tuple[str, ...]:
    """What is measured across such a part while nothing is powered."""
    return AT_REST.get(part.circuit.letter, ()) if part.circuit else ()


AT_REST = {
    "R": ("ohms",), "V": ("ohms",), "L": ("ohms",), "D": ("diode",),
    "C": ("esr", "capacitance", "ohms"),
}  # fmt: skip


Points = dict[str, tuple[float, float]]  # V at each: the mean, and from peak to peak
_known: dict[tuple, Shown | None] = {}
_solved: dict[tuple, Points | None] = {}
_floating: dict[tuple, bool] = {}
MANY = 200_000


def predicted(at: State, suspect: Suspect, move: Move) -> Shown | None:
    """What is shown with that suspect in the board, worked out once; None where it is not known."""
    return _predicted(at, bench_key(at), suspect, move)


def _predicted(at: State, bench: tuple, suspect: Suspect, move: Move) -> Shown | None:
    still = tuple(
        (str(fault), at.warm(fault.part))
        for fault in suspect.faults
        if not _is_renewed(at, fault.part)
    )
    board = (bench, still)
    key = (board, move.verb, move.at)
    if key not in _known:
        if len(_known) > MANY:
            _known.clear()
            _solved.clear()
        _known[key] = _worked_out(as_if(at, suspect), move, board)
    return _known[key]


def _is_renewed(at: State, part: str) -> bool:
    fitted = at.places[part].fitted
    return fitted is not None and fitted.new


def _worked_out(board: State, move: Move, key: tuple) -> Shown | None:
    if board.powered and len(move.at) == 2 and (move.verb == "volts" or _is_trace_to_zero(move)):
        at = move.at if _floats(board, move.at) else ()
        found = _with_meters(board, (key, at))
        return None if found is None else _of_points(found, move)
    try:
        _, told = at_once(board, move)
    except RepairlibError:
        return None
    return None if told.reading is None else shown_by(told.reading)


def _is_trace_to_zero(move: Move) -> bool:
    return move.verb == "scope" and move.at[1] == "0"


def _floats(board: State, at: tuple[str, ...]) -> bool:
    """Whether meters at other points change what one shows there, on the sound board."""
    sound = as_if(board, Suspect("", (), 1.0))
    bench, key = bench_key(sound), (bench_key(sound), at)
    if key not in _floating:
        found = _with_meters(sound, ((bench, ()), ()))
        move = Move("volts", at)
        _, told = at_once(sound, move)
        _floating[key] = (
            found is None
            or told.reading is None
            or not alike("volts", shown_by(told.reading), _of_points(found, move))
        )
    return _floating[key]


def _with_meters(board: State, key: tuple) -> Points | None:
    if key not in _solved:
        _solved[key] = _metered(board, key[1])
    return _solved[key]


def _of_points(found: Points, move: Move) -> float:
    one, other = move.at
    if move.verb == "volts":
        return found[one][0] - found[other][0]
    return found[one][1]


def _metered(state: State, at: tuple[str, ...]) -> Points | None:
    """The board with a meter there, or at every point: one working-out stands for each of them."""
    ends = [at] if at else [(point, "0") for point in state.set.points if point != "0"]
    meters = tuple(
        CircuitPart(f"R of a meter at {one}", (one, other), METER_OHM) for one, other in ends
    )
    try:
        found = electric(state, meters, afresh=True, steps=FEW_STEPS)
    except RepairlibError:
        return None
    return {p: (found.mean[p], found.high[p] - found.low[p]) for p in ("0", *state.set.points)}


class Cut(NamedTuple):
    """What one reading of an attempt did to the suspects, and what another could have done.

    `before` and `after` are bits still needed, `left` how many were likely after it.
    `expected` is what the measurement taken could be expected to tell, `best` the one that could
    be expected to tell most on the bench as it stood (None where none would), with its bits.
    """

    before: float
    after: float
    left: int
    expected: float
    best: Move | None
    best_bits: float


def cuts(attempt: Attempt) -> tuple[Cut | None, ...]:
    """What each move of an attempt told about the suspects that its set lists; None: no reading."""
    belief = believed(listed_suspects(attempt.task.set, attempt.task.faults))
    found: list[Cut | None] = []
    for done in attempt.done:
        reading = done.told.reading
        if reading is None or done.move.verb not in OFF:
            found.append(None)
            continue
        best = best_next(belief, done.before)
        after = learned(belief, done.move, reading, done.before)
        found.append(
            Cut(
                belief.bits,
                after.bits,
                len(after.likely),
                gain(belief, done.move, done.before),
                *(best or (None, 0.0)),
            )
        )
        belief = after
    return tuple(found)
