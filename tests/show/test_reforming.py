"""The bench on which a stored part is woken up: drawn as its schedule says."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.health import reforming_schedule
from repairlib.show import draw_reforming


def plain(text):
    return text.replace("&#160;", " ").replace("\xa0", " ")


@pytest.mark.parametrize(("farad", "volts"), [("470 µF", "25 V"), ("10 µF", "50 V")])
def test_it_shows_what_the_schedule_says(farad, volts):
    picture, finding = draw_reforming(farad, volts, 12), reforming_schedule(farad, volts, 12)
    for words in (str(finding.values["series_resistor"]), finding.steps, "plus to plus"):
        assert words in picture.alt
    drawn = plain(picture.svg)
    for words in (plain(str(finding.values["series_resistor"])), "current limited", farad, volts):
        assert words in drawn
    assert picture.svg == draw_reforming(farad, volts, 12).svg


def test_what_has_no_schedule_is_refused():
    with pytest.raises(RepairlibError):
        draw_reforming("470 µF", "2 kV", 12)
