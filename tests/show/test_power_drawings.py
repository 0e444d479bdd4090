"""The drawings and tables of lesson 12: what they say is what the rooms work out."""

import re

import pytest

from repairlib.circuits import FAULTS, SOUND, symptom_rows, symptoms_of
from repairlib.core.errors import RepairlibError
from repairlib.power_up import checks_of, read_setup
from repairlib.show import checks_before_power, draw_powering, draw_rail, symptom_table

LETTERS = re.compile(r'font-size="([\d.]+)"')


def letters(picture):
    return [float(size) for size in LETTERS.findall(picture.svg)]


@pytest.mark.parametrize("fault", FAULTS)
def test_the_rail_is_drawn_with_named_axes_and_told_in_words(fault):
    picture = draw_rail(fault)
    assert "time (ms)" in picture.svg and ">V</text>" in picture.svg
    assert min(letters(picture)) >= 12
    for symptom in symptoms_of(fault):
        assert symptom in picture.alt


def test_a_name_hides_the_fault_as_a_question_wants_it():
    picture = draw_rail("one diode open", "supply A")
    assert "supply A" in picture.svg
    for words in ("diode", "Symptoms", "ripple at"):
        assert words not in picture.svg + picture.alt


def test_every_line_stays_on_its_sheet():
    for fault in FAULTS:
        for points in re.findall(r'points="([^"]+)"', draw_rail(fault).svg):
            x, y = zip(*(map(float, pair.split(",")) for pair in points.split()), strict=True)
            assert min(x) >= 0 and max(x) <= 500 and min(y) >= 40 and max(y) <= 290


def test_an_unknown_fault_is_refused():
    with pytest.raises(RepairlibError, match=SOUND):
        draw_rail("gremlins")


def test_the_bench_shows_the_figures_it_is_given_and_what_keeps_one_alive():
    picture = draw_powering("9.0", "0.21", "4.98")
    for words in ("9.0 V", "0.21 A", "4.98 V", "covered", "plug out", "limit"):
        assert words in picture.svg
    assert min(letters(picture)) >= 12
    assert "plus and minus of the reservoir" in picture.alt


def test_the_table_of_symptoms_is_that_of_the_room():
    told = repr(symptom_table())
    for row in symptom_rows():
        assert f"{'; '.join(row.shows)} | {row.fault} | {row.decides}" in told


def test_the_checks_before_power_are_those_of_the_walk():
    setup = read_setup("9 V", "0.3 A", "rail\n+5 V\n+9 V")
    keys = [one.key for one in checks_of(setup) if not one.powered]
    assert [row[0].partition(". ")[2] for row in checks_before_power(setup).rows] == keys
