"""Hot air drawn: four zones, the bench from the side, the floor clock."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.heat import package_limits, read_points
from repairlib.heat.exposure_log import parse_exposure_log
from repairlib.show import draw_floor_clock, draw_hot_air, draw_zones
from tests.show.test_legible import assert_legible

CHIP = package_limits("Pb-free", 1.0, 200)
POINTS = "0 25, 90 150, 180 200, 210 217, 240 245, 255 245, 285 217, 400 25"
HISTORY = """when,event,celsius,humidity
2031-05-05 09:00,out,24,48
2031-05-07 09:00,dry,24,8
2031-05-09 09:00,out,24,48
2031-05-12 09:00,now,,
"""


def test_zones_begin_where_the_curve_enters_the_band_and_end_where_the_solder_sets():
    picture = draw_zones(read_points(POINTS), CHIP)
    assert_legible(picture)
    assert "2 preheat: from 90 to 180 s" in picture.alt
    assert "4 cool down: from 285 to 400 s" in picture.alt


def test_a_profile_that_never_melts_has_no_zones():
    with pytest.raises(RepairlibError, match="all four zones"):
        draw_zones(read_points("0 25, 90 150, 180 200, 300 25"), CHIP)


def test_hot_air_from_the_side():
    assert_legible(draw_hot_air())
    assert "two thin wires" in draw_hot_air().alt.casefold()


def test_the_floor_clock_runs_in_the_open_and_stands_in_dry_air():
    picture = draw_floor_clock(parse_exposure_log(HISTORY), "3", 1.0)
    assert_legible(picture)
    assert "open for 48 h: the clock shows 48 h." in picture.alt
    assert "dry for 48 h: the clock shows 48 h." in picture.alt
    assert "open for 72 h: the clock shows 120 h." in picture.alt


@pytest.mark.parametrize("level", ["1", "6", "7"])
def test_a_level_whose_floor_life_no_table_ends_is_refused_in_one_line(level):
    with pytest.raises(RepairlibError, match=rf"^'(level )?{level}'"):
        draw_floor_clock(parse_exposure_log(HISTORY), level, 1.0)
