"""A technician who finds and mends what is wrong from what instruments show, and from that alone.

The way is the trade's: prove it dead, look for what is open while it is dead, feed it behind a
limit, measure where most suspects part, confirm, renew, and check at every load and line, cold and
warm, before it is handed back. What each suspect would show is worked out on a board of the same
print; the board at hand is only seen through its view.
"""

from __future__ import annotations

from dataclasses import replace

from repairlib.bench.attempt import Attempt, Task
from repairlib.bench.board_part import AS_RESISTOR, NO_CURRENT
from repairlib.bench.board_work import can_lift
from repairlib.bench.care import store_of
from repairlib.bench.drawer import as_listed
from repairlib.bench.information import (
    OFF,
    Belief,
    Shown,
    across,
    alike,
    at_rest,
    believed,
    best_next,
    learned,
    measurements,
    predicted,
    shown_by,
)
from repairlib.bench.moves import Move, Reading, Told
from repairlib.bench.passing import passing
from repairlib.bench.practice_set import BoardPart
from repairlib.bench.state import OWN_PLUG, ROOM, State, begin
from repairlib.bench.step import at_once, step
from repairlib.bench.suspects import Suspect, all_suspects
from repairlib.bench.typed_move import read_move
from repairlib.bench.view import View, look_at
from repairlib.bench.warming import usual_heat
from repairlib.core.errors import RepairlibError

# Choices of this workbook.
SURE = 0.9  # of the belief: what one suspect needs to be acted on
WORTH_IT = 0.1  # bits, below which a reading is not taken
MOST_READINGS = 14  # on one state of the bench
MOST_ROUNDS = 14  # of finding and mending
DEAD = 0.05  # V: what is left above this would spoil readings
HOLDS = 20e-6  # F, from which a capacitor is asked whether it is charged
SOAK, SOAKS = 240.0, 4  # s between two looks at a set that gets warm, and how many
LIMIT = 2.0  # times the usual current, on the bench supply
TOOLS = ("", " with hot air", " with low-melt solder", " with hot air, 400 °C, 10 s")
HOTTER = 10.0  # K above what is usual: a part that warms itself
LONGEST_LINE = 400  # characters of the job card
SOUND = Suspect("", (), 1.0)


class NotFound(Exception):
    """The technician has come to an end of what can be measured."""


def expert_way(task: Task) -> Attempt:
    """The attempt of a technician at this task."""
    view, attempt = look_at(task)
    Technician(view).repair()
    return attempt()


class Technician:
    """Someone at the bench. `bench` is the board as it would be, were it sound."""

    def __init__(self, view: View):
        self.view = view
        self.set = view.printed
        self.bench: State = begin(self.set, (), "a sound board")
        self.sound: set[str] = set()
        self.mended: list[str] = []
        self.done: list[str] = []
        self.soldered: list[str] = []
        self.put_back: list[str] = []
        self.burnt: list[str] = []
        self.pointed: list[str] = []
        self.read: list[str] = []
        self.late = 0.0
        self.belief = self.thought_anew()

    # hands and eyes

    def do(self, move: Move | str) -> Told:
        """Does a move at the board, and on the sound one."""
        if isinstance(move, str):
            move = read_move(move, self.set)
        told = self.view.do(move)
        if told.alarm:
            self.burnt += [name for name in self.mended if f"{name} " in told.words]
        if move.verb in OFF:
            self.late += told.seconds
        else:
            self.bench = stepped(self.as_of_now(), move)
        return told

    def as_of_now(self) -> State:
        """The sound board once the time that readings took has gone by there too."""
        if self.late and self.bench.powered:
            self.bench = passing(self.bench, self.late)[0]
        self.late = 0.0
        return self.bench

    def take(self, move: Move) -> Reading:
        """Takes a reading."""
        reading = self.do(move).reading
        if reading is None:
            raise NotFound(move.verb)
        self.read.append(f"{' '.join(move.at)}: {reading.shown}")
        return reading

    def measure(self, move: Move) -> Shown:
        """Takes a reading and learns from it."""
        before = self.as_of_now()
        reading = self.take(move)
        self.belief = learned(self.belief, move, reading, before)
        return shown_by(reading)

    # the way

    def repair(self) -> None:
        """Finds, mends, checks and hands back, or hands on."""
        self.prove_dead()
        for _ in range(MOST_ROUNDS):
            group = self.find()
            if not group:
                break
            if all(self.set.part(name).mains for name in group):
                self.hand_on(group)
                return
            if self.mend(group) and self.works():
                self.note_solder()
                break
        self.chips()
        self.hand_back()

    def note_solder(self) -> None:
        """What works since a sound part was soldered in again was its joint, or its pad."""
        for name in self.put_back:
            self.done.append(f"{name} soldered in again")
            self.mended.append(name)

    def find(self) -> tuple[str, ...]:
        """The parts that are to blame, as far as measuring tells; none where all is right."""
        if not self.is_sure():
            self.ask(self.quick_checks())
        if not self.is_sure():
            self.feed_by_supply()
            self.ask()
            self.make_dead()
        if not self.is_sure():
            self.feed_by_plug()
            self.ask()
            self.make_dead()
        if not self.is_sure():
            self.ask_at_rest()
        if not self.is_sure() and self.seems_right() and self.works():
            return ()
        return next((group for group in groups(self.belief) if group), ())

    def ask(self, among: tuple[Move, ...] | None = None) -> None:
        """Takes the readings that tell most, until one suspect is left or none tells more."""
        asked: set[tuple] = set()
        for _ in range(MOST_READINGS):
            if self.is_sure():
                return
            all_of = measurements(self.set, self.bench) if among is None else among
            moves = tuple(one for one in all_of if (one.verb, one.at) not in asked)
            best = best_next(self.belief, self.as_of_now(), moves) if moves else None
            if best is None or best[1] < WORTH_IT:
                return
            asked.add((best[0].verb, best[0].at))
            self.measure(best[0])

    def ask_at_rest(self) -> None:
        """Takes readings on the dead board at what is still suspected."""
        suspected = {name for group in groups(self.belief, 0.01) for name in group}
        parts = [part for part in self.set.parts if part.name in suspected and not part.mains]
        self.ask(tuple(Move(verb, (one.name,)) for one in parts for verb in at_rest(one)))

    def quick_checks(self) -> tuple[Move, ...]:
        """Fuses, contacts and joints, and the inlet for a short, while it is dead."""
        through = [one for one in self.set.parts if one.what in AS_RESISTOR and not one.mains]
        return (*(Move("ohms", (one.name,)) for one in through), Move("ohms", self.set.inlet))

    def is_sure(self) -> bool:
        """Whether one group of parts has nearly all of the belief."""
        return next(iter(groups(self.belief).values())) >= SURE and bool(
            next(iter(groups(self.belief)))
        )

    def seems_right(self) -> bool:
        """Whether the likeliest is that nothing is wrong, or nothing that shows cold."""
        heaviest = self.belief.suspects[max(self.belief.likely, key=self.belief.shares.__getitem__)]
        return not heaviest.faults or heaviest.faults[0].condition in ("cracked",)

    def thought_anew(self) -> Belief:
        """All suspects but parts renewed or proven sound, and cracks that were soldered anew."""
        left = believed(all_suspects(self.set)).without((*self.sound, *self.mended))
        return left.but(
            lambda suspect: any(
                fault.condition == "cracked" and fault.part in self.soldered
                for fault in suspect.faults
            )
        )

    # power

    def feed_by_supply(self) -> None:
        """The bench supply in place of the set's own feed, with a limit."""
        amps = float(f"{min(LIMIT * self.set.feed_amps, 3.0):.3g}")
        self.do(Move("plug in", (), {"volts": self.set.feed_volts, "amps": amps}, "supply"))

    def feed_by_plug(self) -> None:
        """Its own plug."""
        self.do(Move("plug in"))

    def make_dead(self) -> None:
        """Pulls the plug, discharges what is charged, and proves it."""
        self.do("unplug")
        self.prove_dead()

    def prove_dead(self) -> None:
        """Volts at each capacitor that can hold a charge, and a resistor until they are gone."""
        for place, name in enumerate(self.stores()):
            if place and abs(dict(self.bench.charges).get(name, 0.0)) < DEAD:
                continue  # the board discharges it by itself
            for _ in range(20):
                reading = self.do(Move("volts", (name,))).reading
                if reading is None or reading.value is None or abs(reading.value) < DEAD:
                    break
                self.do(Move("discharge", (name,), {"ohm": 470.0, "seconds": 15.0}))
        self.bench = replace(self.bench, charges={})

    def stores(self) -> list[str]:
        """The capacitors that hold what counts, the largest first; a load where there are none."""
        large = [
            part
            for part in self.set.parts
            if part.circuit and part.circuit.letter == "C" and part.circuit.value >= HOLDS
        ]
        first = store_of(self.set)
        names = [one.name for one in (first, *large) if one and not one.mains]
        placed = [name for name in dict.fromkeys(names) if self.bench.place(name).fitted]
        return placed or [self.set.loads[0]]

    # mending

    def mend(self, group: tuple[str, ...]) -> bool:
        """Renews what is confirmed, puts back what is not; whether the board is another now."""
        self.put_back = []
        changed = [self.mend_part(self.set.part(name)) for name in group]
        if any(changed):
            self.renew_burnt()
        self.belief = self.thought_anew() if any(changed) else self.belief.without(self.sound)
        return any(changed)

    def renew_burnt(self) -> None:
        """Renews what was new and burnt, now that something else was found that may be why."""
        for name in dict.fromkeys(self.burnt):
            part = self.set.part(name)
            if self.is_out(part):
                self.put_in(part, as_listed(part))
        self.burnt = []

    def mend_part(self, part: BoardPart) -> bool:
        """Takes a part out, measures it, and fits a new one, or the old one with fresh solder."""
        blamed = self.condition_of(part)
        self.pointed += self.read[-1:]
        if part.what == "joint" or blamed == "cracked":
            self.do(f"resolder {part.name}")
            self.done.append(f"fresh solder at {part.name}")
            self.soldered.append(part.name)
            if part.what == "joint":
                self.mended.append(part.name)
            return True
        if self.is_good_on_one_leg(part):
            self.put_down(part)
            return self.is_sound(part, blamed)
        if self.is_out(part) and not can_lift(part) and self.is_good(part):
            self.put_in(part, " old")
            return self.is_sound(part, blamed)
        self.put_in(part, as_listed(part))
        self.done.append(f"a new {part.name}")
        self.mended.append(part.name)
        return True

    def is_sound(self, part: BoardPart, blamed: str) -> bool:
        """Notes that a part is sound; whether fresh solder or its way round may have mended it."""
        self.sound.add(part.name)
        if blamed not in ("open", "reversed"):
            return False
        self.put_back.append(part.name)
        return True

    def put_down(self, part: BoardPart) -> None:
        """Solders a lifted leg in again, on a wire where its pad is gone."""
        self.do(f"resolder {part.name}")
        try:
            self.do(f"bridge {part.name}")
        except RepairlibError:
            return  # its pads are there

    def is_good_on_one_leg(self, part: BoardPart) -> bool:
        """Whether a part measures as a sound one with a leg lifted; False where none can be."""
        if not can_lift(part) or self.condition_of(part) == "reversed":
            return False
        try:
            self.do(f"lift {part.name}")
        except RepairlibError:
            return False  # its place is empty
        return self.is_good(part)

    def is_out(self, part: BoardPart) -> bool:
        """Takes a part out with one tool after the other; False where its place was empty."""
        for how in TOOLS:
            try:
                self.do(f"take out {part.name}{how}")
            except RepairlibError:
                return False
            if self.bench.place(part.name).fitted is None:
                self.do(f"clean {part.name}")
                return True
        raise NotFound(f"{part.name} does not come out")

    def condition_of(self, part: BoardPart) -> str:
        """The condition that is blamed most, where it is this part's."""
        found: dict[str, float] = {}
        for suspect, share in zip(self.belief.suspects, self.belief.shares, strict=True):
            for fault in suspect.faults:
                if fault.part == part.name:
                    found[fault.condition] = found.get(fault.condition, 0.0) + share
        return max(found, key=found.__getitem__, default="")

    def is_good(self, part: BoardPart) -> bool:
        """Whether a part that is free of the board measures as a sound one."""
        verbs = at_rest(part)
        for verb in verbs:
            move = Move(verb, (part.name,))
            before = self.bench
            shown = self.measure(move)
            due = predicted(before, SOUND, move)
            if due is None or not alike(verb, shown, due):
                return False
        return bool(verbs)

    def put_in(self, part: BoardPart, which: str) -> None:
        """Fits a part, on a wire where its pad is gone, and looks which way round it sits."""
        for _ in range(3):
            try:
                self.do(f"fit {part.name}{which}")
                break
            except RepairlibError as refused:
                self.do(f"{'clean' if 'solder' in refused.wrong else 'bridge'} {part.name}")
        self.do(f"look {part.name}")

    # checking

    def works(self) -> bool:
        """Whether all rails are right: behind a limit, then at every load and line, and warm."""
        self.feed_by_supply()
        right = self.rails_are_right()
        self.make_dead()
        if not right:
            return False
        self.feed_by_plug()
        right = self.rails_are_right() and self.rails_at("line low")
        self.do("load light")
        right = right and self.rails_at("line high") and self.rails_at("load full") and self.warm()
        right = right and not self.is_too_hot()
        if self.bench.load != "full":
            self.do("load full")
        self.do("line usual")
        self.make_dead()
        return right

    def rails_at(self, change: Move | str, verbs: tuple[str, ...] = ("volts", "scope")) -> bool:
        """Whether the rails are right after that change."""
        self.do(change)
        return self.rails_are_right(verbs)

    def warm(self) -> bool:
        """Whether the rails are right while it gets warm: a crack that opened may close again."""
        waits = [Move("wait", (), {"seconds": SOAK})] * SOAKS
        return all(self.rails_at(move, ("volts",)) for move in waits) and self.rails_are_right()

    def is_too_hot(self) -> bool:
        """Whether a capacitor is hotter than in the sound set; that one is blamed then."""
        usual, above = usual_heat(self.set), {}
        for part in self.set.parts:
            if part.circuit and part.circuit.letter == "C" and not part.mains:
                reading = self.take(Move("temperature", (part.name,)))
                above[part.name] = (reading.value or 0.0) - ROOM - usual.get(part.name, 0.0)
        hottest = max(above, key=above.__getitem__, default="")
        if not hottest or above[hottest] <= HOTTER:
            return False
        anew = believed(all_suspects(self.set))
        self.belief = anew.but(lambda suspect: not _heats(suspect, hottest))
        return True

    def rails_are_right(self, verbs: tuple[str, ...] = ("volts", "scope")) -> bool:
        """Volts and ripple of each rail, against its window; where one is wrong, what tells why."""
        for rail in self.set.rails:
            windows = {"volts": (rail.low, rail.high)}
            if rail.ripple is not None and self.bench.feed.kind == OWN_PLUG:
                windows["scope"] = (0.0, rail.ripple)
            for verb in (one for one in verbs if one in windows):
                move = across(verb, rail.point)
                reading = self.take(move)
                if not is_within(reading, *windows[verb]):
                    self.belief = learned(self.belief, move, reading, self.as_of_now())
                    self.ask()
                    return False
        return True

    def chips(self) -> None:
        """Memory chips read twice alike, and written anew where a sound board holds another."""
        for part in self.set.parts:
            if part.what not in NO_CURRENT or part.name in self.mended:
                continue
            if self.read_alike(part) != sum_of_sound(self.bench, part):
                self.do(f"write chip {part.name}")
                self.done.append(f"{part.name} written anew")
                self.mended.append(part.name)

    def read_alike(self, part: BoardPart) -> str:
        """The sum of a chip, read until two reads are equal."""
        sums: list[str] = []
        for _ in range(MOST_READINGS):
            one = self.do(f"read chip {part.name}").words.rsplit(maxsplit=1)[-1]
            if one in sums:
                return one
            sums.append(one)
        raise NotFound(f"no two equal reads of {part.name}")

    # the end

    def write_card(self, found: str) -> None:
        """The lines of the job card."""
        self.do(f"write found: {found}")
        read = dict.fromkeys((*self.pointed, *self.read[-len(self.set.rails) :]))
        self.do(f"write measured: {'; '.join(read)}"[:LONGEST_LINE])

    def hand_on(self, group: tuple[str, ...]) -> None:
        """What lies on the mains side is not worked on here."""
        self.write_card(f"no power from the mains side, {' or '.join(group)}")
        self.do("write told: it goes to somebody qualified for mains work")
        self.do("hand on: the cause lies on the mains side")

    def hand_back(self) -> None:
        """The set back to its owner."""
        blamed = dict.fromkeys((*self.mended, *self.soldered))
        self.write_card(f"{', '.join(blamed) or 'nothing'} at fault")
        self.do(f"write fitted: {', '.join(self.done) or 'nothing'}")
        self.do("write told: it was checked at every load and line, cold and warm")
        self.do("hand back")


def sum_of_sound(sound: State, part: BoardPart) -> str:
    """The sum that a chip of a sound board reads, as its makers' sheet would say it."""
    sums: list[str] = []
    for moves in range(MOST_READINGS):
        _, told = at_once(replace(sound, moves=moves), Move("read chip", (part.name,)))
        one = told.words.rsplit(maxsplit=1)[-1]
        if one in sums:
            break
        sums.append(one)
    return one


def _heats(suspect: Suspect, part: str) -> bool:
    """Whether it is that part alone, and warms it."""
    return suspect.parts == (part,) and suspect.faults[0].condition in ("reversed", "leaks")


def groups(belief: Belief, least: float = 0.0) -> dict[tuple[str, ...], float]:
    """The share of each group of parts that is blamed together, the heaviest first."""
    found: dict[tuple[str, ...], float] = {}
    for suspect, share in zip(belief.suspects, belief.shares, strict=True):
        found[suspect.parts] = found.get(suspect.parts, 0.0) + share
    ordered = sorted(found.items(), key=lambda item: -item[1])
    return {group: share for group, share in ordered if share >= least}


def is_within(reading: Reading, low: float, high: float) -> bool:
    """Whether a reading may lie in a window, as far as its instrument can tell."""
    if reading.value is None:
        return False
    return low - reading.error <= reading.value <= high + reading.error


def stepped(state: State, move: Move) -> State:
    """The sound board after the same move; as it was where it would be refused there."""
    try:
        return step(state, move)[0]
    except RepairlibError:
        return state
