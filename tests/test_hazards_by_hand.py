"""The hazards of parts of all kinds and decades: one table worked by hand, every face against it.

`hazards-by-hand.csv` holds a part, its marking (`\\n` is a line end) and the kind it is read as,
a line of a parts list, the family and the kind that calculators ask for, value and rated volts,
the hazards with semicolons between, and why. What a part has no marking or line for is empty.
"""

import csv
from pathlib import Path

import pytest

from repairlib.core.limits import is_beyond_meter
from repairlib.core.quantity import read_quantity
from repairlib.core.safety import HAZARDS
from repairlib.health import judge_capacitor
from repairlib.markings import read
from repairlib.recap import plan, replacement_capacitor, substitute_capacitor
from repairlib.show.sheets import bench_sheet
from repairlib.stored_charge import discharge_time, stored_energy

TABLE = Path(__file__).with_name("hazards-by-hand.csv")
# A calculator of charge asks for a value and volts only: it cannot know of valves and of oil.
_OF_THE_CHARGE = {"mains", "stored charge"}


def rows(*columns):
    """Each row that has something in all of these columns, with its hazards as a set."""
    with TABLE.open(encoding="utf-8", newline="") as file:
        found = [row for row in csv.DictReader(file) if all(row[column] for column in columns)]
    for row in found:
        row["hazards"] = set(filter(None, row["hazards"].split(";")))
    return [pytest.param(row, id=row["part"]) for row in found]


@pytest.mark.behaviour
def test_the_table_is_of_all_kinds():
    table = [param.values[0] for param in rows()]
    assert len(table) >= 60 and all(row["why"] for row in table)
    named = set().union(*(row["hazards"] for row in table))
    assert named <= set(HAZARDS) and len(named) >= 7


@pytest.mark.common_practice
@pytest.mark.parametrize("row", rows("marking"))
def test_quick_check(row):
    first = read(row["marking"].replace("\\n", "\n"), row["as"] or None)[0]
    assert set(first.cautions) == row["hazards"], first


@pytest.mark.common_practice
@pytest.mark.parametrize("row", rows("line"))
def test_plan_and_bench_sheet(row):
    made = plan(f"C1 {row['line']}\n")
    (item,) = made.all_items
    assert set(item.cautions) == row["hazards"], item
    sheet = bench_sheet(made)
    assert all(HAZARDS[key].title in sheet for key in row["hazards"])


@pytest.mark.common_practice
@pytest.mark.parametrize("row", rows("family"))
def test_verdict_on_a_reading(row):
    finding = judge_capacitor(row["family"], row["value"], row["volts"], measured=row["value"])
    assert row["hazards"] <= set(finding.cautions)


@pytest.mark.common_practice
@pytest.mark.parametrize("row", rows("kind"))
def test_replacement(row):
    finding = replacement_capacitor(row["value"], row["volts"], row["kind"])
    assert row["hazards"] <= set(finding.cautions)


@pytest.mark.common_practice
@pytest.mark.parametrize("row", rows("kind"))
def test_another_kind_in_its_place(row):
    if row["kind"] != "ceramic":  # it is asked of nothing that a ceramic part could go for
        finding = substitute_capacitor(row["kind"], "film", row["volts"])
        assert row["hazards"] <= set(finding.cautions)


@pytest.mark.common_practice
@pytest.mark.parametrize("row", rows("volts"))
def test_charge(row):
    findings = [stored_energy(row["value"], row["volts"])]
    if "mains" in row["hazards"]:  # what starts below every limit is not discharged to one
        findings.append(discharge_time(row["value"], row["volts"], "10 kΩ"))
    wanted = row["hazards"] & _OF_THE_CHARGE
    if is_beyond_meter(read_quantity(row["volts"], "V").value):
        wanted |= {"high-voltage tubes"}
    for finding in findings:
        assert wanted <= set(finding.cautions), finding.title
