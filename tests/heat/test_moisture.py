"""Floor life, resets, humidity cards and bake times by the published tables."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.core.tables import read_table
from repairlib.heat.bake import CELL, TAPE, WET, bake_before_reflow, bake_time, hottest_oven
from repairlib.heat.moisture import (
    LEVELS,
    days_and_hours,
    floor_life,
    floor_life_left,
    humidity_card,
    reset_in_dry_air,
    reset_rule,
)

DAY = 24
COSEL = "Cosel, technical Q&A a0073, MSL, Table 1"
BAKES = "EESemi, IPC/JEDEC J-STD-033 Bake Conditions, Table 1"


@pytest.mark.published(COSEL + ": floor life by level")
@pytest.mark.parametrize(
    ("level", "hours"),
    [("2", 8760), ("2a", 4 * 7 * DAY), ("3", 168), ("4", 72), ("5", 48), ("5a", 24)],
)
def test_floor_life(level, hours):
    assert floor_life(level) == hours


@pytest.mark.published(COSEL + ": level 1 to 30 °C / 85 % RH")
def test_level_1_is_unlimited_up_to_85_percent():
    assert floor_life_left("1", "1000 h", "30 °C", "85 %").verdict == "use now"
    assert floor_life_left("1", "1000 h", "30 °C", "86 %").verdict == "bake first"
    assert days_and_hours(floor_life("1")) == "unlimited"


@pytest.mark.published(COSEL + ": level 6 is baked before use")
def test_level_6_is_always_baked():
    assert floor_life_left("6", 0).verdict == "bake first"


@pytest.mark.from_memory("J-STD-033: the floor life of level 6 stands on its label")
def test_level_6_has_its_time_on_the_label():
    with pytest.raises(RepairlibError, match="label"):
        floor_life("6")


@pytest.mark.published(COSEL + ": 168 h and 48 h")
def test_worked_floor_lives():
    """Level 3 open 30 h then 50 h has 88 h left; level 5 open 50 h is 2 h too late."""
    assert floor_life_left("3", (30 + 50) * 3600).left == "88 h"
    late = floor_life_left("5", "50 h")
    assert (late.verdict, late.left) == ("bake first", "none, 2 h too late")
    assert floor_life_left("5", "48 h").verdict == "use now"


@pytest.mark.published(COSEL + ": at 30 °C / 60 % RH")
@pytest.mark.parametrize(("celsius", "humidity"), [(31, 50), (23, 61)])
def test_the_floor_life_holds_in_its_own_air_only(celsius, humidity):
    assert floor_life_left("3", "1 h", 30, 60).verdict == "use now"
    finding = floor_life_left("3", "1 h", celsius, humidity)
    assert finding.verdict == "bake first"
    assert "30 °C and 60 % RH only" in finding.reason
    assert finding.left == "not known in such air"


@pytest.mark.from_memory("J-STD-033: reset of the clock, 12 h and 5 times, 8 h and 10 times")
def test_resets():
    assert reset_rule("4", 3) == (30, 5)
    assert reset_rule("2a", 12) == (60, 10)
    assert reset_rule("3", 12.1) is None
    assert reset_rule("5a", 8.1) is None
    for level in ("2", "2a", "3"):
        assert reset_rule(level, 10) == (50, 10)
    for level in ("4", "5", "5a"):
        assert reset_rule(level, 8) == (80, 5)
    assert reset_in_dry_air("5", "9 h").verdict == "bake first"
    assert reset_in_dry_air("1", "9 h").verdict == "not needed"


@pytest.mark.from_memory("J-STD-033: what the spots of the card ask for")
@pytest.mark.parametrize(
    ("level", "spots", "verdict"),
    [
        ("2", ("wet", "wet", "dry"), "use now"),
        ("2", ("wet", "wet", "between"), "bake first"),
        ("2a", ("wet", "dry", "dry"), "use now"),
        ("3", ("wet", "between", "dry"), "bake first"),
        ("5a", ("wet", "wet", "dry"), "bake first"),
        ("5", ("between", "dry", "dry"), "use now"),
        ("6", ("dry", "dry", "dry"), "bake first"),
    ],
)
def test_humidity_card(level, spots, verdict):
    assert humidity_card(level, *spots).verdict == verdict


@pytest.mark.published(
    "Analog Devices, Shelf life of drypack: 12 months below 40 °C / 90 % RH; bake above 10 %"
)
def test_bag_and_the_older_rule():
    notes = floor_life_left("3", "80 h").notes
    assert any("12 months below 40 °C and 90 % RH" in note for note in notes)
    card = humidity_card("3", "wet", "dry", "dry")
    assert any("older single rule: bake" in n and "more than 10 %" in n for n in card.notes)


@pytest.mark.published("JEDEC, dictionary of terms, humidity indicator card: blue dry, pink wet")
def test_colours_of_the_card():
    assert "dry is blue, wet is pink" in humidity_card.parameters["spot_5"].sentence


def test_a_doubtful_card_asks_for_a_bake():
    assert humidity_card("3", "between", "between", "dry").verdict == "bake first"


def test_the_air_that_was_taken_is_told():
    assert "at most 23 °C and 50 % RH" in floor_life_left("3", "80 h").reason


@pytest.mark.behaviour
def test_a_card_that_cannot_be():
    with pytest.raises(RepairlibError, match="damaged"):
        humidity_card("3", "dry", "wet", "dry")


@pytest.mark.published("Focam, Humidity Indicator, 3-spot card: 5, 10 and 60 %")
def test_spots_of_the_card():
    names = [name for name in humidity_card.parameters if name.startswith("spot")]
    assert names == ["spot_5", "spot_10", "spot_60"]
    assert any("5, 10 and 60 %" in note for note in humidity_card("3", *["dry"] * 3).notes)


@pytest.mark.from_memory("data sheet of an LED, not found again: spots of 5, 10 and 15 %")
def test_cards_with_other_spots_are_named():
    assert any("5, 10 and 15 %" in note for note in humidity_card("3", *["dry"] * 3).notes)


# Level, thickness; hours at 125, 90, 40 °C when late by more than 72 h, then when late by less.
PUBLISHED_BAKES = [
    ("3", 1.4, (9, 33, 13 * DAY), (7, 23, 9 * DAY)),
    ("4", 1.4, (11, 37, 15 * DAY), (7, 23, 9 * DAY)),
    ("5a", 1.4, (16, 54, 22 * DAY), (10, 24, 10 * DAY)),
    ("2a", 2.0, (21, 3 * DAY, 29 * DAY), (16, 2 * DAY, 22 * DAY)),
    ("3", 2.0, (27, 4 * DAY, 37 * DAY), (17, 2 * DAY, 23 * DAY)),
    ("5", 2.0, (40, 6 * DAY, 57 * DAY), (25, 4 * DAY, 35 * DAY)),
]
REMEMBERED_BAKES = [
    ("2", 1.4, (5, 17, 8 * DAY), (3, 11, 5 * DAY)),
    ("2a", 1.4, (7, 23, 9 * DAY), (5, 13, 7 * DAY)),
    ("5a", 2.0, (48, 8 * DAY, 79 * DAY), (40, 6 * DAY, 56 * DAY)),
    # Bodies to 4.5 mm: up to 72 h late, 90 °C takes 7 to 10 days, by level.
    ("2", 4.5, (48, 10 * DAY, 79 * DAY), (48, 7 * DAY, 67 * DAY)),
    ("5a", 4.5, (48, 10 * DAY, 79 * DAY), (48, 10 * DAY, 67 * DAY)),
]


@pytest.mark.from_memory("J-STD-033B.1, 4.2.7.1: 96 h in all above 90 °C, none at 90 °C or below")
def test_the_limit_on_hot_bakes_holds_above_90_only():
    for row in read_table("bake-times"):
        level, body = row["level"], f"{row['up_to_mm']} mm"
        for late in ("100 h", "10 h"):
            finding = bake_before_reflow(level, body, late)
            assert not any(str(finding.values[f"at_{oven}"]).startswith("no") for oven in (90, 40))
    worn = bake_before_reflow("5", "2 mm", "100 h", baked_before="60 h")  # 60 + 40 h
    assert (worn.at_125, worn.at_90) == ("no: more than 96 h above 90 °C in all", "144 h")
    just = bake_before_reflow("5", "2 mm", "100 h", baked_before="56 h")  # 56 + 40 h
    assert just.at_125 == "40 h"


@pytest.mark.published(
    "MSD Rebaking Guidelines, SMTnet, 2003, quoting J-STD-033A: 48 h above 90 °C"
)
def test_the_older_limit_is_named_beside_the_one_that_is_followed():
    notes = " ".join(bake_before_reflow("3", "1 mm", "80 h").notes)
    assert "48 h" in notes and "96 h" in notes and "from memory" in notes


@pytest.mark.from_memory("J-STD-033B.1, table 4-1: one row for levels 2 to 5a above 2.0 mm")
@pytest.mark.parametrize("level", ["2", "2a", "3", "4", "5", "5a"])
def test_thick_bodies(level):
    assert bakes(level, 2.1, True) == bakes(level, 4.5, True) == (48, 10 * DAY, 79 * DAY)
    warm, tepid, cool = bakes(level, 4.5, False)
    assert (warm, cool) == (48, 67 * DAY)
    assert 7 * DAY <= tepid <= 10 * DAY


@pytest.mark.published(BAKES + ": 5 % RH or less at 90 and 40 °C")
def test_the_air_of_the_oven():
    notes = bake_before_reflow("3", "1 mm", "80 h").notes
    assert any("at 90 and 40 °C its air has 5 % RH or less" in note for note in notes)
    rows = read_table("bake-times")
    assert {row["humidity_percent"] for row in rows if row["celsius"] != "125"} == {"5"}


def bakes(level, thickness, late):
    return tuple(bake_time(level, thickness, oven, late).hours for oven in (125, 90, 40))


@pytest.mark.published(BAKES)
@pytest.mark.parametrize(("level", "thickness", "late", "soon"), PUBLISHED_BAKES)
def test_bake_times(level, thickness, late, soon):
    assert bakes(level, thickness, True) == late
    assert bakes(level, thickness, False) == soon
    assert bake_time(level, thickness, 90, True).how == "published"


@pytest.mark.from_memory("J-STD-033B.1, table 4-1")
@pytest.mark.parametrize(("level", "thickness", "late", "soon"), REMEMBERED_BAKES)
def test_bake_times_from_memory(level, thickness, late, soon):
    assert bakes(level, thickness, True) == late
    assert bakes(level, thickness, False) == soon
    assert bake_time(level, thickness, 90, True).how == "from memory"


def test_bake_table_is_whole_and_sensible():
    """Thicker, wetter, colder or later never means shorter."""
    assert len(read_table("bake-times")) == 6 * 3 * 3
    for level in LEVELS[1:-1]:
        for late in (True, False):
            thin, middle, thick = (bakes(level, mm, late) for mm in (1.4, 2.0, 4.5))
            assert thin == tuple(sorted(thin))
            assert all(a <= b for a, b in zip(thin, middle, strict=True))
            assert all(a <= b for a, b in zip(middle, thick, strict=True))
        assert all(
            a >= b for a, b in zip(bakes(level, 2, True), bakes(level, 2, False), strict=True)
        )
    levels = [bakes(level, 1.4, True) for level in LEVELS[1:-1]]
    assert levels == sorted(levels)


def test_the_choice_between_sources_is_named():
    assert any("against level 2a" in n for n in bake_before_reflow("2", "1 mm", "80 h").notes)


@pytest.mark.published("IPC/JEDEC, J-STD-033B.1, extracts: an interruption above 15 min is added")
def test_interrupted_bake():
    assert bake_before_reflow("3", "1 mm", "80 h", interrupted="2 h").at_125 == "11 h"
    assert bake_before_reflow("3", "1 mm", "80 h", interrupted="15 min").at_125 == "9 h"


@pytest.mark.published(
    "Avago Technologies, ACPM-1403 data sheet, page 14: tape does not stand 125 °C, 40 °C it does"
)
def test_tape_is_baked_at_40_degrees():
    finding = bake_before_reflow("3", "1 mm", "80 h", TAPE)
    assert finding.at_125.startswith("never")
    assert finding.at_40 == "13 days"


@pytest.mark.behaviour
def test_tape_does_not_go_to_90_degrees_either():
    assert bake_before_reflow("3", "1 mm", "80 h", TAPE).at_90.startswith("never")


@pytest.mark.common_practice
def test_cells_and_electrolytics_do_not_go_into_a_hot_oven():
    assert hottest_oven(WET) == 40
    finding = bake_before_reflow("3", "1 mm", "80 h", CELL)
    assert finding.verdict == "do not bake"
    assert "batteries" in finding.cautions
    assert finding.at_40.startswith("never")


def test_late_by_less_and_unknown():
    assert bake_before_reflow("3", "1 mm", "72 h").at_125 == "7 h"
    assert bake_before_reflow("3", "1 mm").at_125 == "9 h"
    assert "not known" in bake_before_reflow("3", "1 mm").reason


@pytest.mark.parametrize(
    ("level", "thickness", "oven", "words"),
    [
        ("7", 1, 125, "2a"),
        ("1", 1, 125, "never needs"),
        ("6", 1, 125, "label"),
        ("3", 0, 125, "not in the table"),
        ("3", -1, 125, "not in the table"),
        ("3", 5, 125, "not in the table"),
        ("3", 1, 100, "125, 90 or 40"),
    ],
)
def test_bakes_that_are_not_stated(level, thickness, oven, words):
    with pytest.raises(RepairlibError, match=words):
        bake_time(level, thickness, oven, True)


@pytest.mark.parametrize(("out", "humidity"), [(-1, 50), (10, -1), (10, 101)])
def test_exposures_that_cannot_be(out, humidity):
    with pytest.raises(RepairlibError):
        floor_life_left("3", out, 23, humidity)
