"""Histories of parts: use now, bake first, discard."""

import random

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.heat.bake import CELL, TAPE
from repairlib.heat.exposure_log import judge_exposure, parse_exposure_log, read_exposure_log

HEAD = "when,event,celsius,humidity\n"


def judge(*rows, level="3", thickness=1.0, **more):
    """Rows are "day hour:minute,event,celsius,humidity" in May 2031."""
    text = HEAD + "\n".join(f"2031-05-{row}" for row in rows)
    return judge_exposure(parse_exposure_log(text), level, thickness, **more)


@pytest.mark.published("Cosel, technical Q&A a0073, MSL, Table 1: level 3 is 168 h")
def test_open_30_then_50_hours_leaves_88():
    rows = ("01 00:00,out,23,45", "02 06:00,dry,23,8", "02 07:00,out,23,45", "04 09:00,now,,")
    finding = judge(*rows)
    assert (finding.verdict, finding.left) == ("use now", "88 h")
    assert finding.working[1] == "30 h: dry for 1 h: the clock stands at 30 h"


@pytest.mark.published(
    "Cosel, technical Q&A a0073, MSL, Table 1: level 5 is 48 h; EESemi, J-STD-033 Bake Conditions"
)
def test_open_50_hours_at_level_5_is_baked():
    finding = judge("01 00:00,out,23,45", "03 02:00,now,,", level="5", thickness=2.0)
    assert (finding.verdict, finding.reason) == ("bake first", "2 h past its floor life")
    assert finding.bake == "25 h at 125 °C or 96 h at 90 °C or 35 days at 40 °C"


@pytest.mark.from_memory("J-STD-033: level 4 out 3 h is reset by 30 h at 5 % RH")
@pytest.mark.parametrize(
    ("row", "humidity", "used"),
    [("02 09:00", 5, "0 h"), ("02 08:59", 5, "3 h"), ("02 09:00", 6, "3 h")],
)
def test_reset_in_a_dry_cabinet(row, humidity, used):
    finding = judge("01 00:00,out,23,45", f"01 03:00,dry,23,{humidity}", f"{row},now,,", level="4")
    assert finding.used == used


@pytest.mark.published("EESemi, J-STD-033 Bake Conditions: level 3, to 1.4 mm, 9 h at 125 °C")
def test_a_long_enough_bake_sets_the_clock_back():
    late = ("01 00:00,out,23,45", "12 00:00,bake,125,")  # 264 h: 96 h late
    assert judge(*late, "12 09:00,now,,").verdict == "use now"
    short = judge(*late, "12 08:00,now,,")
    assert short.verdict == "bake first"
    assert "8 h of 9 h at 125 °C: too short" in short.working[-1]


@pytest.mark.published("IPC/JEDEC, J-STD-033B.1, extracts: an interruption above 15 min is added")
def test_an_interrupted_bake():
    rows = ("01 00:00,out,23,45", "12 00:00,bake,125,", "12 05:00,out,23,45", "12 06:00,bake,125,")
    assert judge(*rows, "12 10:00,now,,").verdict == "bake first"  # 9 of 10 h
    assert judge(*rows, "12 11:00,now,,").verdict == "use now"  # 10 of 10 h


@pytest.mark.published("Microchip, Soldering Profile (J-STD-020): three passes in all")
def test_three_passes_are_all():
    rows = ("01 00:00,out,23,45", "01 01:00,reflow,23,45", "01 02:00,reflow,23,45")
    assert judge(*rows, "01 03:00,now,,").verdict == "use now"
    finding = judge(*rows, "01 03:00,reflow,23,45", "01 04:00,now,,")
    assert finding.verdict == "discard"


@pytest.mark.common_practice
def test_a_wet_part_with_a_cell_is_not_baked():
    finding = judge("01 00:00,out,23,45", "12 00:00,now,,", carries=CELL)
    assert finding.verdict == "discard"
    assert "take it off and bake" in finding.reason
    assert "batteries" in finding.cautions


def test_what_stands_on_tape_is_baked_cool():
    finding = judge("01 00:00,out,23,45", "12 00:00,now,,", carries=TAPE)
    assert finding.bake == "13 days at 40 °C"


def test_wet_air_and_old_bags_need_a_bake():
    assert judge("01 00:00,out,28,70", "01 02:00,now,,").verdict == "bake first"
    text = HEAD + "2029-05-01 00:00,sealed,,\n2031-05-01,out,23,45\n2031-05-01 01:00,now,,"
    finding = judge_exposure(parse_exposure_log(text), "3", 1.0)
    assert "older than 12 months" in finding.reason
    assert any("humidity card" in note for note in finding.notes)


def test_air_not_written_down_is_told():
    finding = judge("01 00:00,out,,", "01 02:00,now,,")
    assert finding.verdict == "use now"
    assert any("No air written down" in note for note in finding.notes)


@pytest.mark.parametrize("air", [",70", "34,"])
def test_half_of_the_air_written_down_is_enough_to_ask_for_a_bake(air):
    finding = judge(f"01 00:00,out,{air}", "01 02:00,now,,")
    assert finding.verdict == "bake first"
    assert any("No air written down" in note for note in finding.notes)


def test_a_cabinet_that_is_not_dry_counts_as_open():
    assert judge("01 00:00,dry,23,35", "01 02:00,now,,").used == "2 h"


TWICE_AT_125 = (
    "01 00:00,bake,125,",
    "03 00:00,out,23,45",
    "15 00:00,bake,125,",
    "17 00:00,out,23,45",
)


@pytest.mark.from_memory("J-STD-033B.1, 4.2.7.1: 96 h in all above 90 °C, none at 90 °C or below")
def test_hot_bakes_have_a_limit():
    """Two bakes of 48 h at 125 °C are 96 h: the 125 °C oven is closed, the cooler ones are not."""
    finding = judge(*TWICE_AT_125, "29 00:00,now,,", thickness=3.0)
    assert finding.bake == "10 days at 90 °C or 79 days at 40 °C"
    assert any("96 h so far" in note and "4.2.7.1" in note for note in finding.notes)


@pytest.mark.published("MSD Rebaking Guidelines, quoting J-STD-033A: at 90 °C or below no limit")
@pytest.mark.parametrize("celsius", [40, 88, 90])
def test_bakes_at_90_or_below_do_not_count(celsius):
    rows = (f"01 00:00,bake,{celsius},", "11 00:00,out,23,45", "23 00:00,now,,")
    finding = judge(*rows, thickness=3.0)
    assert finding.bake == "48 h at 125 °C or 10 days at 90 °C or 79 days at 40 °C"
    assert not any("so far" in note for note in finding.notes)


@pytest.mark.published("MSD Rebaking Guidelines, quoting J-STD-033A: above 90 °C and up to 125 °C")
def test_a_bake_at_110_counts_among_the_hot_ones():
    rows = ("01 00:00,bake,110,", "05 00:00,out,23,45", "17 00:00,now,,")
    finding = judge(*rows, thickness=1.0)  # 96 h at 110 °C, and 9 h more would be too much
    assert finding.bake == "33 h at 90 °C or 13 days at 40 °C"


def test_the_history_does_not_pass_in_silence_what_the_limit_forbids():
    rows = ("01 00:00,bake,125,", "06 00:00,out,23,45", "06 01:00,now,,")
    finding = judge(*rows)
    assert any("120 h so far" in note and "take solder" in note for note in finding.notes)


def test_level_1_and_6():
    assert judge("01 00:00,out,23,45", "30 00:00,now,,", level="1").verdict == "use now"
    assert judge("01 00:00,out,23,45", "01 01:00,now,,", level="6").verdict == "bake first"


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "heading"),
        ("a,b,c,d\n1,2,3,4", "heading"),
        (HEAD, "does not end now"),
        (HEAD + "2031-05-01,out,23,45", "'out'|does not end"),
        (HEAD + "2031-05-01,out,23,45\n2031-04-01,now,,", "not later"),
        (HEAD + "yesterday,out,23,45\n2031-04-01,now,,", "not a date"),
        (HEAD + "2031-05-01 00:00Z,out,23,45\n2031-05-02,now,,", "time zone"),
        (HEAD + "2031-05-01,lost,23,45\n2031-05-02,now,,", "not an event"),
        (HEAD + "2031-05-01,out,warm,45\n2031-05-02,now,,", "not a number"),
        (HEAD + "2031-05-01,out,23,145\n2031-05-02,now,,", "not a humidity"),
        (HEAD + "2031-05-01\n2031-05-02,now,,", "not an event"),
    ],
)
def test_histories_that_cannot_be(text, words):
    with pytest.raises(RepairlibError, match=words):
        parse_exposure_log(text)


def test_a_bake_hotter_than_the_table():
    with pytest.raises(RepairlibError, match="40 to 130"):
        judge("01 00:00,bake,200,", "02 00:00,now,,")


def test_files(tmp_path):
    with pytest.raises(RepairlibError, match="cannot be read"):
        read_exposure_log(tmp_path / "missing.csv")


def test_fuzz_only_clear_errors():
    draw = random.Random(1984)
    good = HEAD + "2031-05-01 00:00,out,23,45\n2031-05-02 06:00,dry,23,8\n2031-05-04 09:00,now,,"
    for _ in range(800):
        text = list(good)
        for _ in range(draw.randint(1, 8)):
            at = draw.randrange(len(text))
            text[at : at + draw.randint(0, 4)] = draw.choice(["", ",", "\n", '"', "9", "bake", "-"])
        try:
            str(judge_exposure(parse_exposure_log("".join(text)), draw.choice("12345"), 1.0))
        except RepairlibError as error:
            assert "\n" not in str(error)


@pytest.mark.parametrize(
    "rows",
    [
        "2031-04-28 09:00,sealed,,\n2031-05-05 09:00,out,24,48\n",
        "2031-04-28 09:00,out,24,48\n",
        "2031-04-28 09:00,now,,\n2031-05-05 09:00,out,24,48\n",
        "2031-04-28 09:00,now,,\n2031-05-05 09:00,now,,\n",
        "2031-04-28 09:00,now,,\n",
    ],
)
def test_a_history_that_does_not_end_now_is_told_so(rows):
    with pytest.raises(RepairlibError, match="the history does not end now"):
        parse_exposure_log(f"when,event,celsius,humidity\n{rows}")
