"""The exercise of lesson 10: which chip, how large, which supply, two reads, what must be kept, and
what stood at an empty place.

Answers are typed in by hand. Sources: capacity bytes as makers' data sheets state them; half of the
rated voltage for a tantalum part by a maker's answer; the bar of a chip tantalum at its plus by a
data sheet. Which chip holds the firmware, what differing reads mean, what belongs to one board, the
order of work and what stood where are common practice.
"""

from __future__ import annotations

from repairlib.core.draws import Draw
from repairlib.core.quantity import NBSP
from repairlib.learn.arranging import Order, Table, before
from repairlib.learn.asking import practice_question, question
from repairlib.learn.question import Choice, Mistake, Number

LOW, USUAL, HIGH, NOTHING = "set 1.8 V", "set 3.3 V", "set 5 V", "connect nothing yet"
CONTACT, SPEED, SUPPLY = "a bad contact", "too fast", "the supply dips"
SHORT, OFFSET = "one read is short", "it began at another address"
OLD, SISTER, EITHER = "the old chip", "the sister board", "either: they are equal"
AT_RAIL, AT_GROUND = "at the rail", "at ground"
MAY, WAIT = "yes, for a short test", "no: wait for the part"

MEASURE = "Find out which supply the chip is made for"
READ = "Read the old content twice and compare"
STORE = "Store the two equal reads in two places"
KEEP = "Note what only this board has"
MAKE = "Make the new image, as large as the chip"
WRITE = "Erase and write the blocks that differ"
COMPARE = "Read it back and compare with the new image"


@practice_question
def megabits(draw: Draw) -> Number:
    megabit, answer = draw.pick([(8, 1), (32, 4), (64, 8), (128, 16), (16, 2)])
    return Number(
        prompt=f"A data sheet calls a chip one of {megabit} Mbit. How many MiB does an image of it "
        "have? Type the number only.",
        unit="",
        answer=answer,
        mistakes=[Mistake(megabit, "Those are the Mbit. How many bits are a byte?")],
        hint="A byte has eight bits.",
    )


@practice_question
def no_answer(draw: Draw) -> Choice:
    read = draw.pick(["FF FF FF", "00 00 00"])
    right = "Nothing: I look at clip, pin 1 and supply"
    damaged = "The chip is blank"
    return Choice(
        prompt=f"A programmer reads the identity as `{read}`. What does that say about the chip?",
        options=draw.shuffle([right, damaged, "Its maker is unknown, but it works"]),
        answer=right,
        hint="Would an idle line look different?",
    )


@practice_question
def end_of_an_image(draw: Draw) -> Choice:
    size, last = draw.pick([("64 KiB", "FFFF"), ("1 MiB", "FFFFF"), ("128 KiB", "1FFFF")])
    others = [one for one in ("FFFF", "1FFFF", "FFFFF", "10000") if one != last][:2]
    return Choice(
        prompt=f"An image has {size}, and its first address is `0`. Which is its last one?",
        options=draw.shuffle([f"0x{one}" for one in (last, *others)]),
        answer=f"0x{last}",
        hint="64 KiB are 0x10000 bytes, and counting begins at 0.",
    )


# What may stand beside the processor of a small set, and why it is not the firmware chip.
FIRMWARE = (
    "8 pins, `25P05`, beside the processor, lines SPI_CLK and SPI_CS",
    "8 pins, `25Q16`, beside the processor, lines SPI_CLK and SPI_CS",
    "28 pins, `27C512`, a window under its label, lines A0 to A15 and D0 to D7",
    "48 pins, `29F400`, lines A0 to A17 and D0 to D15",
    "8 pins, `25L64`, 10 kΩ from its pin 1 to the 3.3 V rail, beside the processor",
    "32 pins, `28F010`, in a socket, lines A0 to A16 and D0 to D7",
)
OTHERS = (
    ("8 pins, `24C02`, beside the panel connector, lines SDA and SCL", "How much fits into it?"),
    ("8 pins, `93C46`, beside the network connector", "How much fits into it?"),
    ("5 pins, `33A`, beside the largest capacitor", "What leaves a part that has 5 pins?"),
    ("8 pins, beside a crystal of 32.768 kHz and a coin cell", "What is that crystal for?"),
    ("54 pins, `4M16`, lines A0 to A11 and D0 to D15", "What does it hold when power is off?"),
    ("8 pins, `393`, beside the motor driver, no line to the processor", "Who could read it?"),
)


@question(points=2)
def which_chip(draw: Draw) -> Choice:
    chip, others = draw.pick(FIRMWARE), draw.sample(OTHERS, 3)
    places = draw.sample(["U2", "U3", "U4", "U5", "U6", "U7", "U8", "U9"], 4)
    chips = dict(zip(places, (chip, *(one for one, _ in others)), strict=True))
    hints = dict(zip(places[1:], (hint for _, hint in others), strict=True))
    listed = "\n\n".join(f"{place}: {chips[place]}." for place in sorted(chips))
    return Choice(
        prompt=f"Four chips stand on the board of a label printer.\n\n{listed}\n\nWhich of them "
        "holds the firmware, most likely?",
        options=tuple(sorted(places)),
        answer=places[0],
        mistakes=[Mistake(place, hint) for place, hint in hints.items()],
    )


@question(points=2)
def size_by_identity(draw: Draw) -> Number:
    identity, answer = draw.pick(
        [
            ("20 20 17", 8192),
            ("20 20 12", 256),
            ("EF 40 14", 1024),
            ("EF 40 15", 2048),
            ("20 BA 16", 4096),
            ("20 BA 18", 16384),
            ("EF 30 13", 512),
            ("20 20 11", 128),
            ("C2 20 19", 32768),
            ("20 20 18", 16384),
        ]
    )
    return Number(
        prompt=f"A programmer reads the identity `{identity}`. How many KiB should an image of "
        "this chip have? Type the number only.",
        unit="",
        answer=answer,
        tolerance=0,
        mistakes=[
            Mistake(answer * 8, "Those would be kbit."),
            Mistake(answer // 8, "You divided by eight once too often."),
            Mistake(answer * 2, "Count the doublings once more."),
            Mistake(answer // 2, "Count the doublings once more."),
        ],
        hint="Its last byte counts the doublings. 10 stands for 64 KiB, and 11 for twice that.",
    )


# What is known of a chip, and what follows for the programmer.
SUPPLIES = (
    ("its supply pin reads 1.79 V, and its data sheet says the same", LOW),
    ("its data sheet says 2.7 to 3.6 V, and its supply pin reads 3.29 V", USUAL),
    ("board dead, mark scratched off", NOTHING),
    ("its data sheet says 1.65 to 1.95 V, and the board is dead", LOW),
    ("the programmer sets 3.3 V by itself; nothing else is known", NOTHING),
    ("its supply pin reads 3.31 V, its data sheet says 1.65 to 1.95 V", NOTHING),
    ("its data sheet says 3.0 to 3.6 V, and the board is dead", USUAL),
    ("beside a processor of 3.3 V; mark unknown, nothing measured", NOTHING),
)


@question(points=3)
def supply_before_connecting(draw: Draw) -> Table:
    low = draw.pick([one for one in SUPPLIES if one[1] == LOW])
    usual = draw.pick([one for one in SUPPLIES if one[1] == USUAL])
    unknown = draw.pick([one for one in SUPPLIES if one[1] == NOTHING])
    return Table(
        prompt="Three memory chips wait for the clip of a programmer. What do you do, by what is "
        "known of each?",
        cells={
            row: {"programmer": _supply(right)}
            for row, right in draw.shuffle([low, usual, unknown])
        },
    )


def _supply(right: str) -> Choice:
    too_high = {LOW: (USUAL, HIGH), USUAL: (HIGH,), NOTHING: (USUAL, HIGH)}[right]
    more = "That is more than this chip may be made for. What happens at the first touch?"
    return Choice(
        options=(LOW, USUAL, HIGH, NOTHING),
        answer=right,
        mistakes=[Mistake(one, more, hazard="chip supply") for one in too_high],
        hint="Is it known what the chip is made for, and does the board agree?",
    )


# What two reads of one chip look like beside each other, and what that means.
DIFFERENCES = (
    ("runs of FF where the first one has data, elsewhere at each read", CONTACT),
    ("single bits here and there, fewer of them at a slower clock", SPEED),
    ("it stops at 0x00C000; equal up to there", SHORT),
    ("the same bytes, all of them one address further on", OFFSET),
    ("bits that should be 1 read 0 as soon as the motor driver wakes up", SUPPLY),
    ("runs of FF that come when somebody moves the clip", CONTACT),
    ("it has half the size, and every byte of it is in the first one", SHORT),
    ("the first one begins with a byte that the second one does not have", OFFSET),
    ("differs at 24 MHz only; at 1 MHz five reads are equal", SPEED),
    ("scattered bits; the rail at the chip shows dips to 2.4 V", SUPPLY),
)


@question(points=3)
def two_reads(draw: Draw) -> Table:
    hint = "Runs, single bits, a shift or an end? And what makes it better or worse?"
    options = (CONTACT, SPEED, SUPPLY, SHORT, OFFSET)
    return Table(
        prompt="A chip was read twice, and the reads differ. How the second one looks beside the "
        "first: what is the likeliest reason?",
        cells={
            row: {"reason": Choice(options=options, answer=right, hint=hint)}
            for row, right in draw.sample(DIFFERENCES, 4)
        },
    )


# What stands in the images of a board that came in and of its sister: where the new image gets it.
CONTENTS = (
    ("serial number PB-204117, in the settings", OLD),
    ("network address 02 5A C3 10 41 17, in the settings", OLD),
    ("64 steps of the print head; those of the sister are 18 lower", OLD),
    ("a block of code, blank in the old chip, equal in two sisters", SISTER),
    ("messages in the language of the sets, equal in all three", EITHER),
    ("the shapes of the letters, equal in all three", EITHER),
    ("a block of code, half written in the old chip, equal in two sisters", SISTER),
    ("a table that no two boards share, beside the word cal", OLD),
    ("blank up to its end, in all three", EITHER),
    ("code with one byte that differs from both sisters, which agree", SISTER),
)


@question(points=3)
def what_must_be_kept(draw: Draw) -> Table:
    lost = "Do other boards have the same there? Then whose is it?"
    asked = draw.sample(CONTENTS, 5)
    return Table(
        prompt="The old image is damaged, and the image of a sister board is whole. Where does the "
        "new image get each of these from?",
        cells={row: {"from": _source(right, lost)} for row, right in asked},
    )


def _source(right: str, lost: str) -> Choice:
    gone = "Only this board had that. What is it worth once it is written over?"
    return Choice(
        options=(OLD, SISTER, EITHER),
        answer=right,
        mistakes=[Mistake(SISTER, gone)] if right == OLD else [],
        hint=lost,
    )


@question(points=3)
def order_of_the_write(draw: Draw) -> Order:
    steps = (MEASURE, READ, STORE, KEEP, MAKE, WRITE, COMPARE)
    unread = "What is erased now was nowhere else. Which steps make it a copy?"
    return Order(
        prompt="A firmware chip gets new content. Put the steps in order, first one first.",
        steps=steps,
        shown=draw.shuffle(steps),
        mistakes=[
            Mistake(
                lambda order: order[0] != MEASURE,
                "A programmer is connected, and nobody knows what the chip bears.",
                hazard="chip supply",
            ),
            Mistake(
                lambda order: any(before(WRITE, one)(order) for one in (READ, STORE)),
                unread,
                hazard="only copy",
            ),
            Mistake(
                before(WRITE, KEEP),
                "What only this board had is written over by now.",
                hazard="only copy",
            ),
            Mistake(before(STORE, READ), "What would you store?"),
            Mistake(before(KEEP, STORE), "What if the clip slips while you look through it?"),
            Mistake(before(KEEP, READ), "Where would you look it up?"),
            Mistake(before(WRITE, MAKE), "What would you write?"),
            Mistake(before(MAKE, KEEP), "Then the new image holds what is the sister's own."),
            Mistake(before(COMPARE, WRITE), "There is nothing new to compare yet."),
        ],
    )


# Rail in volts: the lowest usual rating of which half is enough.
PLUS = ((3.3, 10), (5, 10), (12, 25), (1.8, 4), (2.5, 6.3), (8, 16), (9, 20), (15, 35))
MINUS = ((12, 25), (5, 10), (15, 35), (9, 20), (8, 16), (3, 6.3))
RATINGS = (4, 6.3, 10, 16, 20, 25, 35)


@question(points=3)
def missing_tantalum(draw: Draw) -> Table:
    (plus, rated), (minus, as_rated) = draw.pick(PLUS), draw.pick(MINUS)
    above = (f"+{plus:g} V and ground", rated, AT_RAIL)
    below = (f"−{minus:g} V and ground", as_rated, AT_GROUND)
    rows = draw.shuffle([above, below])
    return Table(
        prompt="Two chip tantalums with manganese dioxide are gone. Each rail was traced and "
        "measured. Which is the lowest rating that will do, and where does the bar of the part go?",
        cells={row: {"rating": _rating(volts), "bar": _bar(end)} for row, volts, end in rows},
    )


def _rating(right: float) -> Choice:
    at = RATINGS.index(right)
    return Choice(
        options=tuple(f"{one:g}{NBSP}V" for one in RATINGS),
        answer=f"{right:g}{NBSP}V",
        mistakes=[
            Mistake(
                f"{one:g}{NBSP}V", "How much of its rating may be used?", hazard="heat and fire"
            )
            for one in RATINGS[:at]
        ],
        hint="It would do. Is there a lower one that does, too?",
    )


def _bar(right: str) -> Choice:
    wrong = AT_GROUND if right == AT_RAIL else AT_RAIL
    reversed_part = "Which end does the bar of a chip tantalum show, and which end is higher here?"
    return Choice(
        options=(AT_RAIL, AT_GROUND),
        answer=right,
        mistakes=[Mistake(wrong, reversed_part, hazard="heat and fire")],
    )


# An empty place, what stood there, what else might be thought of, and power without it.
PLACES = (
    (
        "output of a 3.3 V regulator to ground, a bar in the print",
        "chip tantalum",
        ("pull-down resistor", "ferrite bead"),
        WAIT,
    ),
    (
        "supply pin of U3 to ground, 0402, six like it beside other chips",
        "decoupling capacitor",
        ("pull-down resistor", "coupling capacitor"),
        MAY,
    ),
    (
        "regulator's feedback pin to ground; its neighbour goes to the output",
        "feedback divider resistor",
        ("decoupling capacitor", "ferrite bead"),
        WAIT,
    ),
    (
        "a sensor's bus line to +3.3 V; the line beside it has 4.7 kΩ there",
        "pull-up resistor",
        ("decoupling capacitor", "coupling capacitor"),
        MAY,
    ),
    (
        "across the coil of a relay, a stripe in the print",
        "flyback diode",
        ("decoupling capacitor", "pull-up resistor"),
        WAIT,
    ),
    (
        "a data contact of a socket to ground, three small pads",
        "ESD protection diode",
        ("pull-up resistor", "ferrite bead"),
        MAY,
    ),
    (
        "a leg of the crystal to ground; the other leg has 18 pF there",
        "crystal load capacitor",
        ("pull-down resistor", "ESD protection diode"),
        MAY,
    ),
    (
        "in line from the driver U3 to the gate of Q2",
        "gate resistor",
        ("coupling capacitor", "flyback diode"),
        WAIT,
    ),
    (
        "in line from one amplifier stage to the next, dc on one side only",
        "coupling capacitor",
        ("ferrite bead", "pull-up resistor"),
        MAY,
    ),
    (
        "5 V rail to an LED; the LED beside it has 330 Ω there",
        "LED resistor",
        ("decoupling capacitor", "flyback diode"),
        MAY,
    ),
)


@question(points=3)
def what_stood_there(draw: Draw) -> Table:
    asked = draw.sample(PLACES, 3)
    return Table(
        prompt="Parts are gone from a board. By where the pads lead: what stood there? And may the "
        "board have power from a current-limited supply before the new part is there?",
        cells={
            place: {"stood there": _stood(draw, right, others), "power now": _power_now(without)}
            for place, right, others, without in asked
        },
    )


def _stood(draw: Draw, right: str, others: tuple[str, ...]) -> Choice:
    return Choice(
        options=draw.shuffle([right, *others]),
        answer=right,
        hint="Along a line or to ground? What stands at the twin? Who needs it?",
    )


def _power_now(right: str) -> Choice:
    wild = "What has nothing to hold it back then: a voltage, a kick, a transistor half open?"
    return Choice(
        options=(MAY, WAIT),
        answer=right,
        mistakes=[Mistake(MAY, wild, hazard="heat and fire")] if right == WAIT else [],
        hint="What does it do without that part: nothing at all, or too much?",
    )
