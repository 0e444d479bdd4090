"""Which chip holds the firmware: invented neighbourhoods, signs one by one, words as people type.

The boards stand in `neighbourhoods.txt`: a line with the board and the place that holds the
firmware, then one chip a line. They are common practice of the bench and nobody's boards.
"""

import os
import random
import time
from pathlib import Path

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.core.safety import HAZARDS
from repairlib.core.verdicts import CANNOT_TELL
from repairlib.firmware import Seen, rank_chips, read_seen, which_first
from repairlib.firmware.which_chip import (
    HARDLY,
    HAZARDS_OF_MEASURING,
    LIKELY,
    UNLIKELY,
    VERY_LIKELY,
)

BOARDS = Path(__file__).with_name("neighbourhoods.txt")
BLIND = Path(__file__).with_name("neighbourhoods-blind.txt")
PROCESSORS = """
Z80 Z84C00 8031 80C32 8051 P80C51 AT89C2051 AT89S52 P89V51RD2 87C51 8748 6502 65C02 6809 HD63B03
68000 68HC11 MC68HC705 8085 8086 80C188 ATmega328P ATtiny85 AT90S2313 PIC16F877 dsPIC30F
PIC18F25K20 STM32F103 STM8S003 LPC1768 MSP430 ESP32-D0 RP2040 nRF52832 R5F100 uPD78F0485 M30620
IT8586E TMS320F28 ADSP-2181
"""
LATER = Path(__file__).with_name("neighbourhoods-later.txt")


def boards(path=BOARDS):
    """Title, place that holds the firmware, text of the chips."""
    for block in path.read_text(encoding="utf-8").split("\n== ")[1:]:
        head, _, chips = block.partition("\n")
        title, _, place = head.rpartition(": ")
        yield title, place, chips


def ranked(text):
    return rank_chips(read_seen(text))


@pytest.mark.common_practice
@pytest.mark.parametrize(("title", "place", "chips"), list(boards()), ids=lambda one: one[:20])
def test_the_true_one_stands_first(title, place, chips):
    found = ranked(chips)
    assert found[0].chip.place == place, [str(one) for one in found]
    assert found[0].speaks_for
    for one in found:
        assert one.settles.endswith(".")
        if one.likely in (UNLIKELY, HARDLY):
            assert one.speaks_against, one


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("title", "place", "chips"), [*boards(BLIND), *boards(LATER)], ids=lambda one: one[:20]
)
def test_boards_written_after_the_rules(title, place, chips):
    assert ranked(chips)[0].chip.place == place


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("line", "not_said"),
    [
        ("U1: SO-8, no activity at power on", "busy"),
        ("U1: SO-8, no response from programmer", "named after flash"),
        ("U1: SO-8, beside the line out socket", "stands in a socket"),
        ("U1: SO-8, labelled SHIFTER", "dot of paint"),
        ("U1: SO-8, nets QSPI_D1 QSPI_D0", "switch for current"),
        ("U1: SO-8, next to a wide crystal", "5.3 mm"),
    ],
)
def test_words_that_only_look_like_a_sign(line, not_said):
    one = ranked(line)[0]
    assert not_said not in " ".join((*one.speaks_for, *one.speaks_against))


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("line", "may_be"),
    [
        ("U1: 24LC64, SO-8", "EEPROM for settings"),
        ("U1: SO-8, 32.768 kHz crystal beside it, coin cell near", "real-time clock"),
        ("U1: SO-8, near inductor, nets VIN SW FB", "regulator"),
        ("U1: SO-8, pins 5, 6, 7 and 8 joined", "MOSFET or transistor"),
        ("U1: LM358, SO-8", "op-amp or comparator"),
        ("U1: TSSOP-8, nets VCCA VCCB A1 B1", "level shifter"),
        ("U1: SO-8, secure element, I2C", "secure element"),
        ("U1: TSOP-54, nets RAS CAS DQ0 CKE", "working memory"),
        ("U1: SO-8, nets RO RE DE DI", "line driver"),
    ],
)
def test_what_else_stands_in_such_a_body(line, may_be):
    one = ranked(line)[0]
    assert one.may_be == may_be, str(one)
    assert one.likely in (UNLIKELY, HARDLY)
    assert one.speaks_against


@pytest.mark.common_practice
def test_two_equal_chips_are_both_named_with_what_tells_them_apart():
    found = ranked("U1: 25Q64, near the processor\nU2: 25Q64, near the processor")
    assert [one.likely for one in found] == [LIKELY, LIKELY]
    assert all("chip select falls first" in one.settles for one in found)
    assert "U1" in which_first(found) and "U2" in which_first(found)


@pytest.mark.behaviour
def test_nothing_known_is_nothing_said():
    one = ranked("U1: SO-8, no mark")[0]
    assert one.likely == CANNOT_TELL and one.may_be == "not known yet"
    assert "Cannot tell yet" in which_first([one])


@pytest.mark.behaviour
def test_none_of_them_sends_to_other_places():
    found = ranked("U1: LM358\nU2: 24C02, nets SDA SCL")
    assert "inside" in which_first(found)


@pytest.mark.common_practice
def test_no_answer_of_a_programmer_rules_nothing_out():
    silent = ranked("U1: 25Q64, 208 mil, id FF FF FF")[0]
    assert silent.likely == VERY_LIKELY
    assert any("no answer" in why for why in silent.speaks_against)


@pytest.mark.behaviour
def test_an_unknown_supply_is_measured_first():
    without, known = ranked("U1: 25Q64")[0], ranked("U1: 25Q64, 3.3 V")[0]
    assert "before anything is clipped on" in without.settles
    assert "before anything is clipped on" not in known.settles
    assert set(HAZARDS_OF_MEASURING) <= set(HAZARDS)


@pytest.mark.behaviour
def test_what_is_typed_is_read_and_what_is_not_known_is_said():
    chip = read_seen(
        "U5: 25Q64, 8 pins, 208 mil, near U4 processor, nets SPI_CLK SPI_CS, 3.3 V, frobnicated"
    )[0]
    assert chip == Seen(
        place="U5",
        marks=("25Q64",),
        package="208 mil",
        width=pytest.approx(5.2832),
        pins=8,
        near=("U4 processor",),
        nets=("SPI_CLK", "SPI_CS", "SPI_CLK SPI_CS"),
        supply=3.3,
        unknown=("frobnicated",),
    )


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("text", "field", "value"),
    [
        ("U1: SOIC-8", "pins", 8),
        ("U1: SO8", "pins", 8),
        ("U1: 8-lead", "pins", 8),
        ("U1: 8 legs", "pins", 8),
        ("U1: SOT-23-5", "pins", 5),
        ("U1: SOT-23", "pins", None),
        ("U1: 3V3", "supply", 3.3),
        ("U1: 1,8 V", "supply", 1.8),
        ("U1: supply 5V", "supply", 5.0),
        ("U1: 5.3 mm wide", "width", 5.3),
        ("U1: wide", "width", 5.3),
        ("U1: id C8 40 16", "identity", "C8 40 16"),
        ("U1: identity: 0xEF 0x40 0x17", "identity", "0xEF 0x40 0x17"),
        ("the small one by the fan: 25Q32", "place", "the small one by the fan"),
        ("25Q32, SO-8", "place", "chip 1"),
        ("U1 25Q32", "marks", ("25Q32",)),
        ("U1: marked 9Q3Z", "marks", ("9Q3Z",)),
    ],
)
def test_words_of_the_bench(text, field, value):
    assert getattr(read_seen(text)[0], field) == value


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("text", "wrong"),
    [
        ("", "no chip was typed"),
        ("# nothing\n\n", "no chip was typed"),
        ("U1: 25Q64\nU1: 24C02", "named twice"),
        ("U1: " + "x" * 600, "longer than"),
        ("\n".join(f"U{n}: 25Q64" for n in range(70)), "more than are compared"),
        (None, "not a text"),
    ],
)
def test_refused_in_one_line(text, wrong):
    with pytest.raises(RepairlibError, match=wrong) as caught:
        read_seen(text)
    assert "\n" not in str(caught.value)


@pytest.mark.behaviour
def test_no_chip_is_no_ranking():
    with pytest.raises(RepairlibError, match="nothing to rank"):
        rank_chips([])


@pytest.mark.from_memory("pins of serial flash with 16 leads: 2 supply, 7 chip select, 10 ground")
def test_sixteen_leads_have_other_pins():
    assert "pin 7 (chip select)" in ranked("U1: 25Q256, SO-16, wide")[0].settles
    assert "pin 1 (chip select)" in ranked("U1: 25Q64, SO-8")[0].settles


@pytest.mark.behaviour
def test_whatever_is_typed_is_ranked_or_refused_in_one_line():
    draws = random.Random(20)
    texts = [chips for _, _, chips in boards()]
    signs = "".join(map(chr, range(32, 127))) + "µΩé—·\n"
    for _ in range(20_000 if os.environ.get("FIRMWARE") == "all" else 60):
        text = list(draws.choice(texts))
        for _ in range(draws.randint(1, 15)):
            place = draws.randrange(len(text) + 1)
            if draws.random() < 0.5:
                text[place : place + draws.randint(0, 3)] = draws.choice(signs)
            else:
                text[place:place] = text[max(0, place - 9) : place] * draws.randint(1, 5)
        try:
            found = ranked("".join(text))
        except RepairlibError as error:
            assert "\n" not in str(error)
        else:
            assert which_first(found) and all(one.settles for one in found)


@pytest.mark.from_memory("numbers of processors of several makers")
@pytest.mark.parametrize(
    "number",
    PROCESSORS.split(),
)
def test_processors_are_no_memories(number):
    for body in ("DIP-40", "DIP-28", "SSOP-20", "TSOP-48"):
        one = ranked(f"U1: {number}, {body}")[0]
        assert one.may_be == "processor", str(one)


@pytest.mark.common_practice
def test_firmware_inside_a_processor_where_nothing_else_holds_it():
    inside = ranked("U1: LM358, SO-8\nU2: PIC16F1829, 20 pins\nU3: 78L05")
    assert inside[0].chip.place == "U2" and inside[0].likely == "possible"
    assert "may lie inside U2" in which_first(inside)
    fetches = ranked("U1: LM358, SO-8\nU2: Z80, DIP-40")
    assert not any("inside" in why for one in fetches for why in one.speaks_for)
    outside = ranked("U1: 25Q64, SO-8\nU2: PIC16F1829, 20 pins")
    assert outside[0].chip.place == "U1" and outside[1].likely == HARDLY


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("line", "not_said"),
    [
        ("U1: 27C512, DIP-28, no sticker", "a sticker"),
        ("U1: 27C512, DIP-28, without a white label", "a sticker"),
        ("U1: 27C512, DIP-28, sticker missing", "a sticker"),
        ("U1: SO-8, no crystal near", "crystal"),
        ("U1: SO-8, not a flash", "called a flash"),
        ("U1: SO-8, no coil beside it", "coil"),
        ("U1: SO-8, never in a socket", "socket"),
        ("U1: SO-8, main board EC", "amplifier"),
        ("U1: SO-8, case is white", "dynamic memory"),
        ("U1: SO-8, near VGA socket", "dynamic memory"),
        ("U1: SO-8, next to the power switch", "asks for proof"),
        ("U1: SO-8, household scale", "hold"),
    ],
)
def test_what_is_said_not_to_be_there_is_no_sign(line, not_said):
    one = ranked(line)[0]
    assert not_said not in " ".join((*one.speaks_for, *one.speaks_against))


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("U1: SO-8, not far from the processor", "the processor is near"),
        ("U1: SO-8, no mark, white sticker", "a sticker"),
        ("U1: SO-8, no activity at power on", "nothing moves"),
        ("U1: SO-8, no coil but a crystal beside it", "a crystal"),
        ("IC1: DIP-32 with sticker OS 2.01 over a glass window", "ultraviolet"),
        ("U1: BGA 153, THGBM", "managed flash"),
        ("U1: TSOP48, marked K9F1G08", "number is that of NAND"),
    ],
)
def test_what_is_there_is_a_sign(line, said):
    one = ranked(line)[0]
    assert said in " ".join((*one.speaks_for, *one.speaks_against))


@pytest.mark.behaviour
@pytest.mark.parametrize("word", ["no ", "a ", "busy no ", "label 1 "])
def test_a_long_line_of_one_word_is_read_in_no_time(word):
    """Beside a line of unknown words as long: a pattern that tries every split takes far longer."""

    def seconds(words):
        begin = time.process_time()
        for _ in range(3):
            ranked("U1: " + (words * 480)[:480])
        return time.process_time() - begin

    assert seconds(word) < 40 * seconds("frobnicated,") + 0.05
