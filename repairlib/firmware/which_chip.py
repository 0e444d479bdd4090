"""Which of several small chips holds the firmware: a ranking, with why, and what would settle it.

Each sign of `chip_signs` gives points to what a chip may be. A chip stands the higher the further
the best of the memories for firmware leads over the best of all else.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.core.plain_file import size_in_words
from repairlib.core.verdicts import CANNOT_TELL
from repairlib.firmware.chip_numbers import NO_MEMORY, numbered
from repairlib.firmware.chip_signs import (
    CALLED,
    CLOCK,
    DRIVER,
    EEPROM,
    FIRMWARE,
    FLASH,
    FOUND,
    LETTERS,
    LOGIC,
    MANAGED,
    NAND,
    NEAR,
    NETS,
    OP_AMP,
    OSCILLATOR,
    OTHERS,
    PARALLEL,
    PROCESSOR,
    RAM,
    REGULATOR,
    SECURE,
    SENSOR,
    SHIFTER,
    SOUND,
    SWITCH,
    Row,
    Sign,
)
from repairlib.firmware.chips_seen import Seen
from repairlib.markings import memory_chip

VERY_LIKELY, LIKELY, POSSIBLE = "very likely", "likely", "possible"
UNLIKELY, HARDLY = "unlikely", "very unlikely"
_LEADS = ((7, VERY_LIKELY), (3, LIKELY), (0, POSSIBLE), (-5, UNLIKELY))
_USUAL = {EEPROM: 1, REGULATOR: 1, SWITCH: 1, OP_AMP: 1}  # what small chips are more often
_LITTLE = 2  # points: so few say nothing of what a chip is
NOT_KNOWN = "not known yet"
_SAYS_ITSELF = (
    "called",
    "its number",
    "its lines are those",
    "Q or",
    "VR or",
    "X or",
    "D on",
    "L on",
)
_INSIDE = "no other chip here is like a memory for firmware, and many processors hold it inside"
_SMALL_EEPROM = 32 << 10  # bytes; firmware of a processor of its own hardly fits in less
HAZARDS_OF_MEASURING = (
    "mains",
    "stored charge",
    "chip supply",
    "static charge",
)


class Ranked(NamedTuple):
    """A chip in the ranking.

    `likely` says how likely it holds the firmware, `may_be` what it is most likely, `speaks_for`
    and `speaks_against` the reasons, `settles` the one measurement that would settle it. `lead` is
    the points by which the ranking was made.
    """

    chip: Seen
    likely: str
    may_be: str
    speaks_for: tuple[str, ...]
    speaks_against: tuple[str, ...]
    settles: str
    lead: int

    def __str__(self) -> str:
        said = "; ".join(self.speaks_for) or "nothing"
        against = "; ".join(self.speaks_against) or "nothing"
        return (
            f"{self.chip.place}: {self.likely}; as a chip: {self.may_be}. For: {said}. "
            f"Against: {against}. Settled by: {self.settles}"
        )


def rank_chips(chips: Iterable[Seen]) -> list[Ranked]:
    """The chips, the one that likeliest holds the firmware first.

    Raises RepairlibError for no chip at all.

    >>> from repairlib.firmware import read_seen
    >>> board = read_seen("U5: 25Q64, 8 pins, near the processor\\nU6: 24C02, nets SDA SCL")
    >>> [(one.chip.place, one.likely) for one in rank_chips(board)]
    [('U5', 'very likely'), ('U6', 'very unlikely')]
    """
    chips = list(chips)
    if not chips:
        raise RepairlibError("no chip", "there is nothing to rank", "at least one chip")
    processors = [one.chip.place for one in map(_ranked, chips) if one.may_be == PROCESSOR]
    told = [_beside(chip, processors) for chip in chips]
    ranked = sorted(map(_ranked, told), key=lambda one: -one.lead)
    return _beside_each_other(_or_inside(ranked))


def _or_inside(ranked: list[Ranked]) -> list[Ranked]:
    """The ranking; where no chip is like a memory for firmware, processors stand before the rest.

    Those do not that are known to fetch their program from outside, and a chip that is only
    unlikely stays before them.
    """
    if any(one.likely not in (UNLIKELY, HARDLY) for one in ranked):
        return ranked
    inside = [one for one in ranked if one.may_be == PROCESSOR and not _fetches(one)]
    others = [one for one in ranked if one not in inside]
    told = [one._replace(likely=POSSIBLE, speaks_for=(*one.speaks_for, _INSIDE)) for one in inside]
    before = [one for one in others if one.likely == UNLIKELY]
    return [*before, *told, *(one for one in others if one.likely == HARDLY)]


def _fetches(one: Ranked) -> bool:
    return any(NO_MEMORY in why for why in one.speaks_against)


def _beside(chip: Seen, processors: list[str]) -> Seen:
    """The chip with "processor" beside it where it stands near U4, and U4 is one."""
    words = re.findall(r"\w+", " ".join((*chip.near, *chip.nets, *chip.found)).upper())
    if any(place.upper() in words and place != chip.place for place in processors):
        return replace(chip, near=(*chip.near, "processor"))
    return chip


def which_first(ranked: Sequence[Ranked]) -> str:
    """What to do with the ranking, in a sentence or two: where to begin, or where else to look."""
    best = ranked[0]
    if best.likely in (UNLIKELY, HARDLY):
        return (
            "None of these looks like it. Look on the other side of the board, under shields and "
            "labels; many processors hold their firmware inside, and no clip reads that."
        )
    if best.likely == CANNOT_TELL:
        return (
            "Cannot tell yet: read the marks with a lens and a low light, measure the body, and "
            "find out which pins are supply and ground."
        )
    if _INSIDE in best.speaks_for:
        return (
            f"No memory for firmware is among these: it may lie inside {best.chip.place}, and no "
            f"clip reads that. {best.settles}"
        )
    rivals = [one for one in ranked[1:] if one.likely in (VERY_LIKELY, LIKELY)]
    if rivals:
        names = " and ".join(one.chip.place for one in rivals)
        return f"Begin with {best.chip.place}, then {names}: both may hold a part. {best.settles}"
    return f"Begin with {best.chip.place}. {best.settles}"


def _ranked(chip: Seen) -> Ranked:
    signs = list(signs_of(chip))
    points = dict.fromkeys((*FIRMWARE, *OTHERS), 0) | _USUAL
    for sign in signs:
        for thing, count in sign.points.items():
            points[thing] += count
    memory = max(FIRMWARE, key=lambda thing: points[thing])
    other = max(OTHERS, key=lambda thing: points[thing])
    lead = points[memory] - points[other]
    likely = next((words for least, words in _LEADS if lead >= least), HARDLY)
    little = max(points.values()) <= _LITTLE
    if little and lead >= _LEADS[-1][0]:
        likely = CANNOT_TELL
    speaks_for, against = [], []
    for sign in signs:
        rest = {thing: count for thing, count in sign.points.items() if thing not in FIRMWARE}
        rival = max(rest, key=lambda thing: rest[thing], default=other)
        mine, its = sign.points.get(memory, 0), rest.get(rival, 0)
        if mine > its:
            speaks_for.append(sign.words)
        elif mine < 0:
            against.append(sign.words)
        elif its > mine:
            plain = sign.words.startswith(_SAYS_ITSELF)
            against.append(sign.words if plain else f"{sign.words} (rather {_a(rival)})")
    may_be = NOT_KNOWN if little else memory if lead >= 0 else other
    settles = _settles(chip, memory, other, lead)
    return Ranked(chip, likely, may_be, tuple(speaks_for), tuple(against), settles, lead)


def signs_of(chip: Seen) -> Iterable[Sign]:
    """All signs of a chip: marks, body, what is near, lines, supply, identity, what was found."""
    yield from _found(LETTERS, [chip.place], whole=True)
    for mark in chip.marks:
        yield from _of_mark(mark)
    yield from _of_body(chip)
    yield from _found(CALLED, [chip.called], only_first=True)
    yield from _found(FOUND, [*chip.found, chip.called], eat=True)
    yield from _found(NEAR, chip.near, eat=True)
    yield from _found(NETS, [" ".join(chip.nets)] if chip.nets else [])
    yield from _of_supply(chip.supply)
    yield from _of_identity(chip.identity)


def _found(
    rows: Sequence[Row],
    texts: Iterable[str],
    whole: bool = False,
    only_first: bool = False,
    eat: bool = False,
) -> Iterable[Sign]:
    """The signs whose words stand in the texts, each once.

    `eat` takes what was understood out of the text, so that "32 kHz crystal" is no crystal of any
    kind as well.
    """
    told = set()
    for text in texts:
        left = text.lower()
        for row in rows:
            match = row.pattern.fullmatch(left) if whole else row.found_in(left)
            if not match:
                continue
            if row.sign.words not in told:
                told.add(row.sign.words)
                yield row.sign
            if only_first:
                break
            if eat:
                left = f"{left[: match.start()]} {left[match.end() :]}"


def _of_mark(mark: str) -> Iterable[Sign]:
    """What a top mark says: a memory of the trade's series, or a number that is none."""
    words = mark.replace("/", " ").split()
    named = [chip for chip in map(memory_chip, words) if chip is not None]
    if not named:
        yield from {row.sign.words: row.sign for word in words for row in numbered(word)}.values()
        return
    chip = named[0]
    size = size_in_words(chip.capacity)
    said = f"{chip.series} on it begins the numbers of {chip.bus} {chip.memory}, {size}"
    if chip.memory == "NAND flash":
        yield Sign(said, {NAND: 12})
    elif chip.memory == "flash" and chip.bus == "SPI":
        large = 1 if chip.capacity >= 1 << 20 else 0
        yield Sign(said, {FLASH: 11 + large})
    elif chip.memory == "EEPROM" and chip.bus != "parallel":
        fits = chip.capacity >= _SMALL_EEPROM
        why = "large enough for a small program" if fits else "too small for most firmware"
        yield Sign(f"{said}: {why}", {EEPROM: 10, FLASH: 7 if fits else -2})
    elif chip.memory == "EEPROM":
        yield Sign(said, {PARALLEL: 8, EEPROM: 3})
    else:
        yield Sign(said, {PARALLEL: 12})


def _of_body(chip: Seen) -> Iterable[Sign]:
    body, pins, width = chip.package.lower(), chip.pins, chip.width
    padded = any(word in body for word in ("son", "dfn", "no lead", "no-lead", "leadless", "mlf"))
    ball = "bga" in body or "ball" in body
    if any(word in body for word in ("sot223", "sot89", "to252", "to263", "to220", "dpak")):
        yield Sign("a body for power", {REGULATOR: 7, SWITCH: 5})
    elif pins == 8 and padded:
        if width is None or width >= 4.5:
            yield Sign("8 pads without leads, as large flash have", {FLASH: 2, SWITCH: 1})
    elif pins == 8 and width is not None and not _is_dip(body):
        if 4.9 <= width <= 5.8:
            words = f"8 leads on a body {width:.1f} mm wide: hardly anything but serial flash"
            yield Sign(words, {FLASH: 5})
        elif width < 3.5:
            words = f"a body of {width:.1f} mm is small for a flash with leads"
            yield Sign(words, {EEPROM: 1, SHIFTER: 1, OP_AMP: 1})
    elif pins == 16 and width is not None and width >= 7:
        yield Sign("16 leads on a wide body: large serial flash, also line drivers",
                   {FLASH: 3, DRIVER: 2})  # fmt: skip
    elif pins == 24 and ball:
        yield Sign("24 balls: a serial flash's", {FLASH: 4})
    elif pins in (100, 153, 169) and ball:
        yield Sign(f"{pins} balls: a managed flash's", {MANAGED: 6, PROCESSOR: 2})
    elif pins in (48, 64) and ball:
        yield Sign(f"{pins} balls: a parallel flash's", {PARALLEL: 3, PROCESSOR: 1})
    elif pins in (63, 67, 137) and ball:
        yield Sign(f"{pins} balls: NAND's", {NAND: 5})
    elif pins in (54, 60, 66, 78, 84, 86, 90, 96, 134, 200) and (
        ball or "tsop" in body or not body
    ):
        yield Sign(f"{pins} leads or balls: a dynamic memory's", {RAM: 8})
    elif pins == 48 and "tsop" in body:
        yield Sign("48 leads in a flat body: parallel flash or NAND", {PARALLEL: 5, NAND: 5})
    elif pins in (28, 32, 40, 42, 56) and (_is_dip(body) or "plcc" in body or "tsop" in body):
        yield Sign(f"{pins} leads in such a body: a parallel memory's", {PARALLEL: 6, RAM: 2})
    elif pins in (28, 44) and ("so" in body or "tsop" in body):
        yield Sign(f"{pins} leads: a parallel memory's, or RAM's", {PARALLEL: 2, RAM: 3})
    elif pins is not None and pins >= 20 and not _is_dip(body):
        many = PROCESSOR if pins > 24 else LOGIC
        yield Sign(f"{pins} leads: a controller rather than a memory", {many: 4, FLASH: -3})
    elif pins is not None and pins in (14, 16, 18, 20):
        yield Sign(f"{pins} leads: logic, amplifiers, drivers",
                   {LOGIC: 3, OP_AMP: 3, DRIVER: 3, FLASH: -2})  # fmt: skip
    elif pins is not None and pins <= 3:
        yield Sign(f"{pins} leads are too few for a memory", {REGULATOR: 4, SWITCH: 4, FLASH: -8})
    elif pins is not None and pins <= 6:
        yield Sign(
            f"{pins} leads are too few for a serial flash",
            {REGULATOR: 2, SHIFTER: 2, SWITCH: 2, EEPROM: 2, FLASH: -6},
        )
    if any(word in body for word in ("tssop", "msop")) and pins == 8:
        yield Sign("a thin small body: EEPROMs and amplifiers more than flash",
                   {EEPROM: 2, OP_AMP: 1, SHIFTER: 1})  # fmt: skip
    if any(word in body for word in ("sot23", "sc70", "sot353", "sot363")) and pins is None:
        yield Sign("a body of 3 to 6 leads", {REGULATOR: 3, SWITCH: 3, FLASH: -6})
    if any(word in body for word in ("qfp", "bga")) and pins is None:
        yield Sign("leads on four sides or balls: a processor's body", {PROCESSOR: 5})


def _is_dip(body: str) -> bool:
    return re.search(r"\b\w?di[pl]\b", body) is not None


def _of_supply(volts: float | None) -> Iterable[Sign]:
    if volts is None:
        return
    said = f"its supply is {volts:g} V"
    if volts > 5.6:
        yield Sign(f"{said}: no memory bears that",
                   {thing: -12 for thing in FIRMWARE} | {EEPROM: -12, RAM: -12})  # fmt: skip
    elif volts >= 4.4:
        yield Sign(f"{said}: serial flash runs at 3.3 or 1.8 V, old parallel memories at 5 V",
                   {FLASH: -3, NAND: -3, MANAGED: -3, PARALLEL: 2, OP_AMP: 1})  # fmt: skip
    elif volts < 1.6:
        yield Sign(f"{said}: that of a dynamic memory or a core", {RAM: 4, FLASH: -4})


def _of_identity(identity: str) -> Iterable[Sign]:
    digits = re.sub(r"0x|[^0-9a-f]", "", identity.lower())
    if not digits:
        return
    if set(digits) <= {"f"} or set(digits) <= {"0"}:
        yield Sign(
            "the programmer had no answer: a clip that does not touch, no supply, a board that "
            "holds the lines, or no serial flash",
            {FLASH: -1},
        )
        return
    from repairlib.firmware.identity import identity_of

    try:
        answer = identity_of(identity)
    except RepairlibError as error:
        yield Sign(f"its answer is no identity of a flash: {error.wrong}", {FLASH: -1})
        return
    size = f" of {size_in_words(answer.capacity)}" if answer.capacity else ""
    yield Sign(f"it answers 9Fh with the identity of a flash{size}", {FLASH: 12})


def _beside_each_other(ranked: list[Ranked]) -> list[Ranked]:
    """The ranking with what the chips say about each other."""
    good = [one for one in ranked if one.likely in (VERY_LIKELY, LIKELY)]
    if len(good) < 2:
        return ranked
    told = []
    for one in ranked:
        rivals = [other for other in good if other is not one]
        if one in good:
            names = " and ".join(other.chip.place for other in rivals)
            note = f"{names} may hold it too, or a part: the loader in one, the rest in the other"
            one = one._replace(
                speaks_against=(*one.speaks_against, note),
                likely=LIKELY if rivals[0].lead >= one.lead else one.likely,
                settles=f"{one.settles} Of several, the one whose chip select falls first after "
                "power comes on holds the loader.",
            )
        told.append(one)
    return told


_SUPPLY_FIRST = (
    "First, with the board running: volts at its supply pin, before anything is clipped on. "
)
_BUSY = (
    "Pin 8 is the supply and pin 4 ground; then, with a logic probe or oscilloscope, pin 1 (chip "
    "select) rests high and falls in bursts within the first second after power comes on."
)
_HOW = {
    EEPROM: "Which bus is it? " + _BUSY + " An EEPROM of two wires has pins 5 and 6 pulled up to "
    "the supply through some kΩ instead, and one of three wires its ground mostly at pin 5.",
    CLOCK: "A clock chip swings at 32 kHz at its crystal, also with the power off and the cell in. "
    "On a flash: " + _BUSY,
    REGULATOR: "Power off and discharged, ohms from its leads to the coil, to the input and to "
    "ground; running, volts at each: a regulator has two different rails. On a flash: " + _BUSY,
    SWITCH: "Power off and discharged, ohms between its leads: a MOSFET's drain leads are joined "
    "(often 5 to 8). On a flash no two are, and: " + _BUSY,
    OP_AMP: "Running, volts at pins 1 and 7: outputs of an amplifier rest between the supplies and "
    "follow a signal. On a flash: " + _BUSY,
    SHIFTER: "Running, volts at all pins: a level shifter has two different supplies and no chip "
    "select that moves first. On a flash: " + _BUSY,
    SECURE: "Which lines has it? A secure element has one or two, answers to no 9Fh, and moves "
    "once when the board asks. On a flash: " + _BUSY,
    RAM: "Its lines never rest while the board runs, and it has many. A serial flash has six, and: "
    + _BUSY,
    PROCESSOR: "Whether there is a memory outside at all: look for a chip of 8 leads whose chip "
    "select falls within the first second after power comes on. If none does, the firmware lies "
    "in the processor.",
    DRIVER: "Running, follow its lines: those of a driver go out of the board. On a flash: "
    + _BUSY,
    LOGIC: "Power off, which pins are ground and supply: the corner pins of logic (7 and 14, 8 and "
    "16). On a flash of 8 leads: " + _BUSY,
    SOUND: "Follow its lines: to a socket or a loudspeaker. On a flash: " + _BUSY,
    SENSOR: "It is asked for ever while the board runs; a flash is read most at the start. "
    + _BUSY,
    OSCILLATOR: "Running, a frequency at its output that never stops. On a flash: " + _BUSY,
}
_OF_MEMORY = {
    PARALLEL: "Running, its output enable moves without pause from the first moment, and ground "
    "and supply are the corner pins of its data sheet.",
    NAND: "Its chip enable and ready line move in bursts at the start; its data sheet names the "
    "supply pins, and it is read with bad blocks and spare bytes.",
    MANAGED: "Its clock and command line move in bursts at the start; it is read by a card reader "
    "made for its voltage, with the processor held in reset.",
}


_BUSY_16 = (
    "Of 16 leads, pin 2 is the supply and pin 10 ground; then, with a logic probe or oscilloscope, "
    "pin 7 (chip select) rests high and falls in bursts within the first second after power comes "
    "on."
)


def _settles(chip: Seen, memory: str, other: str, lead: int) -> str:
    worth_it = lead >= _LEADS[-1][0] and chip.supply is None
    supply = _SUPPLY_FIRST if worth_it else ""
    if memory != FLASH and lead >= 0:
        return supply + _OF_MEMORY[memory]
    busy = _BUSY_16 if chip.pins == 16 else _BUSY
    if lead >= _LEADS[0][0]:
        return f"{supply}{busy} Then its identity, read twice, with the processor held in reset."
    return supply + _HOW[other].replace(_BUSY, busy)


def _a(thing: str) -> str:
    return f"{'an' if thing[0] in 'aeiouAEIO' else 'a'} {thing}"
