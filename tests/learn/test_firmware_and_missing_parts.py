"""The exercise of lesson 10: its answers against figures worked by hand, in every variant."""

import re

import pytest

from repairlib.core.draws import Draw
from repairlib.core.verdicts import NEVER
from repairlib.firmware import identity_of
from repairlib.health.derating import tantalum_rating
from repairlib.learn.questions.firmware_and_missing_parts import (
    AT_GROUND,
    AT_RAIL,
    COMPARE,
    CONTACT,
    EITHER,
    KEEP,
    LOW,
    MAKE,
    MAY,
    MEASURE,
    MINUS,
    NOTHING,
    OFFSET,
    OLD,
    PLUS,
    READ,
    SHORT,
    SISTER,
    SPEED,
    STORE,
    SUPPLY,
    USUAL,
    WAIT,
    WRITE,
    missing_tantalum,
    order_of_the_write,
    size_by_identity,
    supply_before_connecting,
    two_reads,
    what_must_be_kept,
    what_stood_there,
    which_chip,
)
from repairlib.missing_parts import candidates, left_out
from tests.documents import document
from tests.learn.asking import VARIANTS, all_seen, asked, asks_of, first_is_right, hazards, told

LESSON = "10-firmware-and-missing-parts"
questions, warm_up = asks_of(LESSON)


def cells_of(ask_of, by_hand, column):
    """Each row in every variant: its cell judged by hand; all rows come up."""
    seen = set()
    for draw in VARIANTS:
        for row, cells in ask_of(draw.part("x")).cells.items():
            assert cells[column].judge(by_hand[row]).state == "right", row
            seen.add(row)
    assert seen == set(by_hand)
    return seen


# What holds firmware here: 25-series on SPI, and parallel memories by their number.
FIRMWARE = ("`25P05`", "`25Q16`", "`27C512`", "`29F400`", "`25L64`", "`28F010`")


@pytest.mark.common_practice
def test_which_chip():
    seen = set()
    for draw in VARIANTS:
        ask = which_chip(draw.part("x"))
        ((place, mark),) = re.findall(rf"(U\d): [^:]*?({'|'.join(FIRMWARE)})", asked(ask))
        assert ask.judge(place).state == "right"
        for other in set(ask.options) - {place}:
            assert told(ask, other).endswith("?")
        seen.add(mark)
    assert seen == set(FIRMWARE)


# KiB of parts that answer so, from a table of parts by maker.
SIZES = {"20 20 17": "8192", "20 BA 16": "4096", "20 BA 18": "16384", "20 20 18": "16384"}
SIZES |= {"EF 40 15": "2048", "20 20 12": "256", "EF 40 14": "1024", "EF 30 13": "512"}
SIZES |= {"20 20 11": "128", "C2 20 19": "32768"}


@pytest.mark.published(document("serial flash in Linux", "ids and sizes of parts"))
def test_size_by_identity():
    def is_right(ask, kibibytes):
        first_is_right(ask, [kibibytes])
        assert "kbit" in told(ask, str(int(kibibytes) * 8))
        assert "doublings" in told(ask, str(int(kibibytes) * 2))

    all_seen(size_by_identity, SIZES, is_right)


@pytest.mark.parametrize("identity", SIZES)
def test_the_library_gives_the_same_size(identity):
    assert identity_of(identity).capacity == int(SIZES[identity]) * 1024


# What is known of the chip, and what the programmer is set to.
KNOWN = {
    "its supply pin reads 1.79 V, and its data sheet says the same": LOW,
    "its data sheet says 1.65 to 1.95 V, and the board is dead": LOW,
    "its data sheet says 2.7 to 3.6 V, and its supply pin reads 3.29 V": USUAL,
    "its data sheet says 3.0 to 3.6 V, and the board is dead": USUAL,
    "board dead, mark scratched off": NOTHING,
    "the programmer sets 3.3 V by itself; nothing else is known": NOTHING,
    "its supply pin reads 3.31 V, its data sheet says 1.65 to 1.95 V": NOTHING,
    "beside a processor of 3.3 V; mark unknown, nothing measured": NOTHING,
}


@pytest.mark.common_practice
def test_supply_before_connecting():
    cells_of(supply_before_connecting, KNOWN, "programmer")


@pytest.mark.common_practice
def test_more_than_a_chip_bears_is_dangerous():
    for draw in VARIANTS:
        for row, cells in supply_before_connecting(draw.part("x")).cells.items():
            found = {
                one for one in cells["programmer"].options if hazards(cells["programmer"], one)
            }
            assert found == {"set 5 V"} | ({"set 3.3 V"} if KNOWN[row] != USUAL else set())


DIFFER = {
    "runs of FF where the first one has data, elsewhere at each read": CONTACT,
    "runs of FF that come when somebody moves the clip": CONTACT,
    "single bits here and there, fewer of them at a slower clock": SPEED,
    "differs at 24 MHz only; at 1 MHz five reads are equal": SPEED,
    "it stops at 0x00C000; equal up to there": SHORT,
    "it has half the size, and every byte of it is in the first one": SHORT,
    "the same bytes, all of them one address further on": OFFSET,
    "the first one begins with a byte that the second one does not have": OFFSET,
    "bits that should be 1 read 0 as soon as the motor driver wakes up": SUPPLY,
    "scattered bits; the rail at the chip shows dips to 2.4 V": SUPPLY,
}


@pytest.mark.common_practice
def test_two_reads():
    cells_of(two_reads, DIFFER, "reason")


FROM = {
    "serial number PB-204117, in the settings": OLD,
    "network address 02 5A C3 10 41 17, in the settings": OLD,
    "64 steps of the print head; those of the sister are 18 lower": OLD,
    "a table that no two boards share, beside the word cal": OLD,
    "a block of code, blank in the old chip, equal in two sisters": SISTER,
    "a block of code, half written in the old chip, equal in two sisters": SISTER,
    "code with one byte that differs from both sisters, which agree": SISTER,
    "messages in the language of the sets, equal in all three": EITHER,
    "the shapes of the letters, equal in all three": EITHER,
    "blank up to its end, in all three": EITHER,
}


@pytest.mark.common_practice
def test_what_must_be_kept():
    cells_of(what_must_be_kept, FROM, "from")


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("early", "late", "hazard"),
    [
        (READ, MEASURE, "chip supply"),
        (WRITE, READ, "only copy"),
        (WRITE, STORE, "only copy"),
        (WRITE, KEEP, "only copy"),
    ],
)
def test_dangerous_orders(early, late, hazard):
    assert hazard in hazards(order_of_the_write(Draw("x")), moved(early, late))


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("early", "late", "says"),
    [
        (STORE, READ, "What would you store?"),
        (KEEP, STORE, "What if the clip slips"),
        (MAKE, KEEP, "the sister's own"),
        (COMPARE, WRITE, "nothing new to compare"),
        (WRITE, MAKE, "What would you write?"),
    ],
)
def test_other_orders(early, late, says):
    judged = order_of_the_write(Draw("x")).judge(moved(early, late))
    assert judged.state == "partly right" and says in " ".join(judged.says)


def moved(early, late):
    """The right order, but that one step stands before another that belongs before it."""
    steps = [one for one in order_of_the_write(Draw("x")).steps if one != early]
    steps.insert(steps.index(late), early)
    return " > ".join(steps)


# Volts of a rail: the next usual rating from twice that.
RATED = {"3.3": "10 V", "5": "10 V", "12": "25 V", "1.8": "4 V", "2.5": "6.3 V", "8": "16 V"}
RATED |= {"9": "20 V", "15": "35 V", "3": "6.3 V"}


@pytest.mark.published(document("KEMET derating 2015", "half of the rated voltage"))
def test_ratings():
    seen = set()
    for draw in VARIANTS:
        for row, cells in missing_tantalum(draw.part("x")).cells.items():
            volts = re.search(r"[\d.]+", row)[0]
            cell = cells["rating"]
            right = cell.options.index(cell.answer)
            assert cell.judge(RATED[volts].replace(" ", "\xa0")).state == "right"
            assert all(hazards(cell, one) == ("heat and fire",) for one in cell.options[:right])
            assert not any(hazards(cell, one) for one in cell.options[right:])
            seen.add(volts)
    assert seen == set(RATED)


@pytest.mark.parametrize("rail", [*PLUS, *MINUS])
def test_the_library_gives_the_same_rating(rail):
    assert float(tantalum_rating("tantalum", rail[0]).rated_voltage) == rail[1]


@pytest.mark.published(document("Panasonic TEH", "the bar is at the positive end"))
def test_the_bar_goes_to_the_higher_end():
    for draw in VARIANTS:
        for row, cells in missing_tantalum(draw.part("x")).cells.items():
            right, wrong = (AT_RAIL, AT_GROUND) if row.startswith("+") else (AT_GROUND, AT_RAIL)
            assert cells["bar"].judge(right).state == "right"
            assert hazards(cells["bar"], wrong) == ("heat and fire",)


STOOD = {
    "output of a 3.3 V regulator to ground, a bar in the print": ("chip tantalum", WAIT),
    "supply pin of U3 to ground, 0402, six like it beside other chips": (
        "decoupling capacitor",
        MAY,
    ),
    "regulator's feedback pin to ground; its neighbour goes to the output": (
        "feedback divider resistor",
        WAIT,
    ),
    "a sensor's bus line to +3.3 V; the line beside it has 4.7 kΩ there": ("pull-up resistor", MAY),
    "across the coil of a relay, a stripe in the print": ("flyback diode", WAIT),
    "a data contact of a socket to ground, three small pads": ("ESD protection diode", MAY),
    "a leg of the crystal to ground; the other leg has 18 pF there": (
        "crystal load capacitor",
        MAY,
    ),
    "in line from the driver U3 to the gate of Q2": ("gate resistor", WAIT),
    "in line from one amplifier stage to the next, dc on one side only": (
        "coupling capacitor",
        MAY,
    ),
    "5 V rail to an LED; the LED beside it has 330 Ω there": ("LED resistor", MAY),
}


@pytest.mark.common_practice
def test_what_stood_there():
    cells_of(what_stood_there, {row: stood for row, (stood, _) in STOOD.items()}, "stood there")
    cells_of(what_stood_there, {row: power for row, (_, power) in STOOD.items()}, "power now")


@pytest.mark.common_practice
def test_power_where_something_runs_wild_is_dangerous():
    for draw in VARIANTS:
        for row, cells in what_stood_there(draw.part("x")).cells.items():
            told_of = hazards(cells["power now"], MAY)
            assert told_of == (("heat and fire",) if STOOD[row][1] == WAIT else None)


@pytest.mark.parametrize("stood", STOOD.values(), ids=lambda stood: stood[0])
def test_the_library_waits_for_the_same(stood):
    kind, power = stood
    assert (left_out(kind).verdict == NEVER) == (power == WAIT)


@pytest.mark.parametrize("place", STOOD)
def test_the_library_thinks_of_the_same_first(place):
    assert candidates(place)[0].what == STOOD[place][0]


def test_every_variant_is_whole():
    for draw in VARIANTS[:20]:
        assert [ask.id for ask in questions(draw)] == [f"q{n}" for n in range(1, 9)]
        assert len(warm_up(draw)) == 3
