"""Date codes: year letter and month or week, and YYWW."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.markings import read
from repairlib.markings.date_codes import weeks_in
from tests.documents import document


def dates(code, part="date"):
    return [one.carries["date"] for one in read(code, part=part)]


@pytest.mark.from_memory("IEC 60062 year and month letters")
@pytest.mark.parametrize(
    ("code", "meanings"),
    [
        ("N6", ["2001-06", "2021-06"]),
        ("A1", ["1990-01", "2010-01"]),
        ("M9", ["2000-09", "2020-09"]),
        ("TN", ["2005-11", "2025-11"]),
        ("UD", ["2006-12", "2026-12"]),
    ],
)
def test_year_letter_and_month(code, meanings):
    assert dates(code) == meanings


@pytest.mark.from_memory("IEC 60062 month letters: 1 to 9, O, N, D")
@pytest.mark.parametrize(("letter", "month"), list(zip("123456789OND", range(1, 13), strict=True)))
def test_every_month(letter, month):
    assert dates(f"N{letter}") == [f"2001-{month:02}", f"2021-{month:02}"]


@pytest.mark.from_memory("IEC 60062 year letters")
@pytest.mark.parametrize(
    ("letter", "year"),
    [
        *[("A", 2010), ("B", 2011), ("C", 2012), ("D", 2013), ("E", 2014), ("F", 2015)],
        *[("H", 2016), ("J", 2017), ("K", 2018), ("L", 2019), ("M", 2020), ("N", 2021)],
        *[("P", 2022), ("R", 2023), ("S", 2024), ("T", 2025), ("U", 2026), ("V", 2027)],
        *[("W", 2028), ("X", 2029)],
    ],
)
def test_every_year_letter(letter, year):
    assert dates(f"{letter}O") == [f"{year - 20}-10", f"{year}-10"]


@pytest.mark.from_memory("IEC 60062: G, I, O, Q, Y, Z are no year letters; A is no month")
@pytest.mark.parametrize("code", ["Z1", "AA", "G1", "I1", "O1", "Q1", "Y1"])
def test_is_no_date(code):
    with pytest.raises(RepairlibError):
        read(code, part="date")


# The scope of EIA-476 in a catalogue has calendar year and week, but not in how many figures.
@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("code", "meaning"),
    [
        ("2135", "2021-W35"),
        ("0142", "2001-W42"),
        ("1552", "2015-W52"),
        ("1553", "2015-W53"),
        ("8423", "1984-W23"),
    ],
)
def test_year_and_week(code, meaning):
    assert dates(code) == [meaning]


@pytest.mark.behaviour
@pytest.mark.parametrize(("code", "meaning"), [("4901", "2049-W01"), ("5001", "1950-W01")])
def test_00_to_49_are_of_this_century(code, meaning):
    assert dates(code) == [meaning]


@pytest.mark.common_practice
@pytest.mark.parametrize("code", ["2100", "2160"])
def test_there_is_no_such_week(code):
    with pytest.raises(RepairlibError):
        read(code, part="date")


@pytest.mark.common_practice
def test_week_53_only_in_years_that_have_one():
    assert [year for year in range(2010, 2030) if weeks_in(year) == 53] == [2015, 2020, 2026]
    with pytest.raises(RepairlibError):
        read("2153", part="date")


@pytest.mark.published(document("IEC 60062:2016", "some makers have the week behind the letter"))
def test_a_week_may_stand_behind_the_year_letter():
    assert [one[-3:] for one in dates("N23")] == ["W23", "W23"]


@pytest.mark.from_memory("IEC 60062 year letters: N is 2001 and 2021")
def test_year_letter_and_week():
    assert dates("N23") == ["2001-W23", "2021-W23"]


def test_date_carried_beside_a_value():
    assert read("107 C 2135")[0].carries["date"] == "2021-W35"
    assert read("107 C N6")[0].carries["date"] == "2001-06 or 2021-06"
