"""The body that is drawn for a marking follows from what was read."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.markings import KINDS, read
from repairlib.show import BODIES, body_for, body_of_kind, draw_part
from repairlib.show.likely_body import OF_KIND, OF_OTHER_PART, UNKNOWN


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("marking", "body"),
    [
        ("68 25V", "radial"),
        ("3300µF 10V", "radial"),
        ("1µF 50V BP", "non-polar"),
        ("330µF 400V", "snap-in can"),
        ("15000µF 50V", "snap-in can"),
        ("22000µF 100V", "screw can"),
        ("50+50µF 350V", "can with sections"),
        ("32-32 450V", "can with sections"),
        ("0.47µF X2", "mains box"),
        ("47n 250VAC", "mains box"),
        ("4n7 Y2", "disc"),
        ("1µF MKT 100V", "film box"),
        ("red red yellow white red", "film drop"),
        ("motor run 8µF 400V", "oil can"),
        ("ballast 6µF 250V~", "oil can"),
        ("paper 0.1µF 400V", "paper tube"),
        ("1N5408", "diode"),
        ("1N914", "glass diode"),
        ("2N3904", "to-92"),
        ("TIP41", "to-220"),
        ("7812", "to-220"),
        ("78L05", "to-92"),
        ("NE555", "dip"),
        ("14D471K", "varistor"),
        ("5D-9", "inrush disc"),
        ("121C 10A", "thermal cut-off"),
    ],
)
def test_body(marking, body):
    assert body_for(read(marking)[0]) == body


@pytest.mark.parametrize("marking", ["2135", "N6", "1H"])
def test_what_may_stand_on_any_part_is_drawn_as_none(marking):
    assert body_for(read(marking)[0]) == UNKNOWN


def test_every_body_named_is_drawn():
    assert {*OF_KIND.values(), *OF_OTHER_PART.values(), UNKNOWN} <= set(BODIES)
    assert set(OF_KIND) <= set(KINDS)
    assert all(body_of_kind(kind) in BODIES for kind in ("", "nonsense", *KINDS))


def test_the_unknown_part_asks():
    assert "what part is it?" in draw_part("unknown", "XYZ").svg


@pytest.mark.common_practice
def test_each_section_has_its_line_and_all_share_the_volts():
    svg = draw_part("can with sections", "40+20+20µF 350V", labels=False).svg.replace("\xa0", " ")
    assert svg.count(">20 µF<") == 2 and svg.count(">40 µF<") == 1 and ">350V<" in svg


@pytest.mark.common_practice
@pytest.mark.parametrize("marking", ["T2AH250V", "F1.6AH250V", "T500mAH250V"])
def test_a_fuse_of_high_breaking_capacity_is_not_clear(marking):
    assert "ceramic" in draw_part("fuse", marking).alt
    assert "glass" in draw_part("fuse", marking.replace("H", "L")).alt


def test_no_reading_is_drawn_as_a_body_that_does_not_exist():
    for marking in ("104K", "10/25", "107C", "brown black red gold", "T1A", "4K7", "101", "0805"):
        for kind in (None, *KINDS):
            try:
                readings = read(marking, kind)
            except RepairlibError:
                continue
            assert {body_for(one) for one in readings} <= set(BODIES)
