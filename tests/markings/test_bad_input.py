"""Whatever is typed: a reading or one clear RepairlibError, at once."""

import copy
import json
import os
import pickle
import random
from contextlib import suppress

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.core.sources import SOURCES
from repairlib.markings import KINDS, read
from repairlib.markings.colours import NAMES

PRINTED = "0123456789.,/ \nABCDEFGHJKLMNPQRSTUVWXYZpnuµmkjzev%±+-()°~=Ωr"
WORDS = [*NAMES, "bn", "GD", "gr", "b", "body", "end", "dot", "tolerance", "mauve", "10", "-"]


def check(text, part):
    try:
        readings = read(text, part=part)
    except RepairlibError as error:
        assert "\n" not in str(error)
        assert len(str(error)) < 500
        return
    assert readings
    for reading in readings:
        assert reading.why and str(reading) and reading.working is not None
        assert all(key in SOURCES for key in reading.sources) and reading.sources
        json.dumps(reading.to_dict(), allow_nan=False)
        assert "<table>" in reading._repr_html_()


@given(st.text(max_size=100), st.sampled_from([None, *KINDS]))
@settings(max_examples=300, deadline=None)
def test_any_text(text, part):
    check(text, part)


@given(st.text(PRINTED, max_size=12), st.sampled_from([None, *KINDS]))
@settings(max_examples=1500, deadline=None)
@example("45,2.P", "axial")
@example("1..1", None)
@example("0", None)
@example("000", "ceramic")
@example(",", "can")
@example("%", None)
@example("1 %", None)
@example("()", None)
@example("1,A", "chip-resistor")
def test_text_of_the_signs_on_parts(text, part):
    check(text, part)


@given(
    st.lists(st.sampled_from(WORDS), max_size=9),
    st.sampled_from([" ", "-", ", ", "/"]),
    st.sampled_from([None, "resistor", "inductor", "chip-inductor", "fuse", "capacitor"]),
)
@settings(max_examples=800, deadline=None)
def test_colours_in_any_order(words, between, part):
    check(between.join(words), part)


@given(st.text(max_size=10))
@settings(max_examples=100, deadline=None)
def test_any_part(part):
    try:
        read("104K", part=part)
    except RepairlibError as error:
        assert error.accepted


@pytest.mark.parametrize(
    ("text", "wrong"),
    [
        ("", "nothing was typed"),
        ("  \n ", "nothing was typed"),
        ("hello", "no marking has this form"),
        ("10\u0664", "figure of another script"),
        ("\uff11\uff10\uff14", "figure of another script"),
        ("\u0661\u0660\u0664", "figure of another script"),
        ("10\u00b2", "figure of another script"),
        ("104\U0001f600", "stands on no part"),
        ("104\x00", "cannot be seen"),
        ("104\u200b", "cannot be seen"),
        ("\u202e104", "cannot be seen"),
        ("104\ud800", "cannot be seen"),
        ("M", "M alone is a tolerance, ±20\u00a0%"),
        ("n", "no figures stand with the letter"),
        ("3n3n3", "two unit letters"),
        ("104X", "X is not a tolerance letter"),
        ("1O4", "O is a letter where a figure is due"),
        ("l04", "l is a letter where a figure is due"),
    ],
)
def test_refused_with_its_reason(text, wrong):
    with pytest.raises(RepairlibError) as caught:
        read(text)
    assert wrong in caught.value.wrong
    assert caught.value.accepted


@pytest.mark.parametrize("value", [None, 104, 1.5, b"104", ["104"], 10**5000], ids=type)
def test_what_is_no_text(value):
    with pytest.raises(RepairlibError, match="not a text"):
        read(value)


class NeitherTrueNorFalse:
    """As an array of numbers: a comparison gives no single answer."""

    def __eq__(self, other):
        return self

    def __bool__(self):
        raise ValueError("the truth value of an array is ambiguous")

    __hash__ = None


@pytest.mark.parametrize(
    "part", ["transistor", "", "CERAMIC", 3, ["can"], NeitherTrueNorFalse(), 10**5000], ids=type
)
def test_unknown_part_names_the_known_ones(part):
    with pytest.raises(RepairlibError, match="tantalum"):
        read("104", part=part)


@pytest.mark.parametrize("piece", ["1", "104 ", "\u0661"])
def test_ten_megabytes_are_refused(piece):
    with pytest.raises(RepairlibError, match="longer than 80 characters"):
        read(piece * (10_000_000 // len(piece)))


@pytest.mark.parametrize("text", [" 104K ", "\t104K", "104K\r\n", "\u00a0104K"])
def test_spaces_around_do_not_matter(text):
    assert read(text)[0].value == 1e-7


def test_zero_is_no_capacitor():
    for text in ("0", "000", "0.0", "0µF", "p0", "0R0"):
        with pytest.raises(RepairlibError):
            read(text, part="capacitor")
    for text in ("0.0", "0µF", "p0"):  # the others are links of 0 Ω
        with pytest.raises(RepairlibError):
            read(text)


@pytest.mark.parametrize("text", ["104K", "R47 50V", "0.1µF X2 275V~ 40/100/21", "1N4148"])
def test_a_reading_survives_a_copy_and_a_file(text):
    reading = read(text)[0]
    for same in (copy.deepcopy(reading), pickle.loads(pickle.dumps(reading))):
        assert same.to_dict() == reading.to_dict()


@pytest.mark.parametrize("text", ["2K 358%", "104 100%", "10µH 250%", "10µF -150+10%"])
def test_a_tolerance_of_the_whole_value_is_refused(text):
    with pytest.raises(RepairlibError):
        read(text)


def test_a_tolerance_wider_than_the_value_is_doubted():
    assert "more than the value" in read("199G", part="ceramic")[0].doubt


PIECES = [
    "100",
    "47",
    ".1",
    "2.2",
    "104",
    "475",
    "271",
    "R47",
    "4n7",
    "10µ",
    "0.1µF",
    "8mF",
    "250mmf",
    "10µH",
    "22",
    "2A",
    "T2L250V",
    "F500mA",
    "16V",
    "400V~",
    "63-",
    "275",
    "V",
    "M",
    "K",
    "C",
    "%",
    "±10%",
    "105°C",
    "105",
    "40/100/21",
    "X2",
    "Y",
    "(Y)",
    "X1Y1",
    "UL",
    "VDE",
    "NP",
    "NPE",
    "MKS4",
    "MKP-X2",
    "HD",
    "FK",
    "LN",
    "TANT",
    "elko",
    "X7R",
    "CH",
    "SL",
    "1N4148",
    "BC547",
    "10D471K",
    "5D-11",
    "72C",
    "16+16",
    "2x5",
]
TEXTS = int(os.environ.get("FUZZ_TEXTS", "3000"))


def test_many_texts_of_pieces_and_signs():
    """FUZZ_TEXTS=1000000 python -m pytest tests/markings/test_bad_input.py -k many_texts"""
    draw, answered = random.Random(TEXTS), 0
    for _ in range(TEXTS):
        if draw.random() < 0.6:
            words = draw.choices(PIECES, k=draw.randrange(1, 6))
            text = draw.choice((" ", " ", "", "/", "\n")).join(words)
        else:
            text = "".join(draw.choices(PRINTED, k=draw.randrange(1, 14)))
        with suppress(RepairlibError):
            for reading in read(text):
                answered += 1
                assert reading.why and reading.headline and reading.on
                assert reading.value is None or abs(reading.value) < 1e15
    assert answered > TEXTS // 20


@pytest.mark.common_practice
@pytest.mark.parametrize("text", ["9359T", "470T", "101T5"])
def test_no_resistor_is_read_above_a_hundred_teraohm(text):
    try:
        found = read(text)
    except RepairlibError:
        return
    assert all(one.unit != "Ω" or one.value <= 1e14 for one in found)
