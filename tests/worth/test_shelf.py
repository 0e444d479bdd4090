"""The shelf and its order: which set first, and tables that are wrong."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.core.tables import demo_path
from repairlib.core.verdicts import DEPENDS, DO_NOT_REPAIR, REPAIR
from repairlib.stored_charge import QUALIFIED
from repairlib.worth.job import Job
from repairlib.worth.ranking import ORDER, which_first
from repairlib.worth.shelf import job_of, read_cells, read_shelf
from tests.documents import document
from tests.worth.test_job import changed, jobs

HEAD = "set,value,parts,hours,success_low_percent,success_high_percent,hazards"


def shelf(tmp_path, text):
    path = tmp_path / "shelf.csv"
    path.write_text(text, encoding="utf-8")
    return read_shelf(path)


# By hand, at the middle of the chance: label maker 80 %, (24 - 11.5) / 1.5 = 8.33; scanner 57.5 %,
# (0.575 × 50 - 0.425 × 5 - 25) / 3 = 0.54; controller 35 %, (12.25 - 31) / 2.5 = -7.5.
@pytest.mark.published(document("limiting factor", "greatest contribution per unit of it"))
def test_the_demo_shelf():
    standings = which_first(read_shelf(demo_path("shelf.csv")))
    told = [(one.place, one.job.name, one.decision.verdict) for one in standings]
    assert told == [
        (1, "label maker", REPAIR),
        (2, "document scanner", DEPENDS),
        (3, "printer controller", DO_NOT_REPAIR),
        (None, "desk radio", QUALIFIED),
    ]
    rates = [one.for_an_hour for one in standings[:3]]
    assert rates == pytest.approx([8.333, 0.542, -7.5], abs=1e-3)
    assert str(standings[0]).replace("\xa0", " ") == (
        "1. label maker: repair, gains 9.5 tokens to 15.5 tokens at a chance of 70 % to 90 %; "
        "8.33 tokens for an hour"
    )
    assert str(standings[3]).startswith("- desk radio: leave it to a qualified person, mains")


@pytest.mark.published(document("limiting factor", "greatest contribution per unit of it"))
def test_the_gain_for_an_hour_ranks_not_the_gain():
    """Worked by hand from the rule: 40 / 1 h is more than 60 / 3 h = 20."""
    long, short = Job(60, 0, 3, 100, 100, name="long"), Job(40, 0, 1, 100, 100, name="short")
    assert [one.job.name for one in which_first([long, short])] == ["short", "long"]


def test_no_hours_and_equal_sets():
    at_once = Job(5, 0, 0, 100, 100, name="at once")
    twins = [Job(60, 0, 3, 100, 100, name=name) for name in "ab"]
    order = which_first([*twins, at_once])
    assert [one.job.name for one in order] == ["at once", "a", "b"]
    assert order[0].for_an_hour is None and "for an hour" not in str(order[0])
    assert which_first([]) == []


@given(st.lists(jobs, max_size=6))
def test_nothing_is_lost_and_the_order_holds(several):
    marked = [changed(one, hazards=("mains",) * (at % 2)) for at, one in enumerate(several)]
    order = which_first(marked)
    assert sorted(map(id, marked)) == sorted(id(one.job) for one in order)
    placed = [one for one in order if one.place]
    assert [one.place for one in placed] == list(range(1, len(placed) + 1))
    ranks = [ORDER.index(one.decision.verdict) for one in placed]
    assert ranks == sorted(ranks)
    assert all(one.decision.verdict == QUALIFIED for one in order[len(placed) :])


def test_two_currencies_are_not_compared():
    with pytest.raises(RepairlibError, match="another currency than tokens"):
        which_first([Job(1, 1, 1, 50, 60), Job(1, 1, 1, 50, 60, currency="crowns")])


def test_only_some_columns_are_needed(tmp_path):
    (job,) = shelf(tmp_path, f"{HEAD}\nradio,60,8,2,50,80,none\n")
    assert job == Job(60, 8, 2, 50, 80, name="radio")


def test_decimal_commas_and_what_is_needed_beside(tmp_path):
    text = f"{HEAD},fault,needs,currency".replace(",", ";") + (
        "\nradio;60;8,5;2;50 %;80;mains, stored charge;hum;capacitors;crowns\n"
    )
    (job,) = shelf(tmp_path, text)
    assert (job.parts, job.hazards) == (8.5, ("mains", "stored charge"))
    assert (job.fault, job.needs, job.currency) == ("hum", "capacitors", "crowns")


@pytest.mark.parametrize(
    ("lines", "wrong"),
    [
        ("radio,60,8,2,50,80,", r"no hazard is named.*shelf.csv line 2"),
        ("radio,60,8,,50,80,none", r"hours is blank \(shelf.csv line 2"),
        ("radio,60,8,ten,50,80,none", "no number stands in front.*line 2"),
        ("radio,60,8,-2,50,80,none", "hours is out of range.*line 2"),
        ("radio,60,8,2,80,50,none", "above the high end.*line 2"),
        (",60,8,2,50,80,none", "no name.*line 2"),
        ("radio,60,8,2,50,80,none\nradio,60,8,2,50,80,none", "listed twice.*line 3"),
        ("radio,60,8,2,50,80,none,more", "line 2"),
    ],
)
def test_lines_that_are_wrong(lines, wrong, tmp_path):
    with pytest.raises(RepairlibError, match=wrong) as error:
        shelf(tmp_path, f"{HEAD}\n{lines}\n")
    assert "\n" not in str(error.value)


def test_a_column_that_is_missing_and_two_currencies(tmp_path):
    with pytest.raises(RepairlibError, match="no column hazards"):
        shelf(tmp_path, HEAD.removesuffix(",hazards") + "\nradio,60,8,2,50,80\n")
    two = f"{HEAD},currency\na,60,8,2,50,80,none,crowns\nb,60,8,2,50,80,none,tokens\n"
    with pytest.raises(RepairlibError, match="another currency than crowns"):
        shelf(tmp_path, two)


def test_cells_are_given_as_typed_and_make_the_same_jobs(tmp_path):
    text = f"{HEAD};fault".replace(",", ";") + "\nradio;60;8,5;2;50 %;80;lead;hum\n"
    (cells,) = read_cells(text, "shelf.csv")
    assert (cells["parts"], cells["success_low_percent"], cells["mass_kg"]) == ("8,5", "50 %", "")
    assert [job_of(cells)] == shelf(tmp_path, text)


@pytest.mark.parametrize(
    ("column", "typed", "wrong"),
    [
        ("hours", "ten", "hours: no number stands in front"),
        ("hour_worth", "-1", "hour worth is out of range"),
        ("value", "3 kΩ", "value"),
    ],
)
def test_what_is_wrong_says_which_figure_it_is(column, typed, wrong):
    (cells,) = read_cells(f"{HEAD}\nradio,60,8,2,50,80,none\n", "shelf.csv")
    with pytest.raises(RepairlibError, match=f"{wrong}.*at least 0"):
        job_of({**cells, column: typed})
