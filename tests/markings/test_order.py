"""What a marking means first, and what after it: one table, in words that a technician would sign.

`wanted-order.csv` holds the marking (`\\n` is a line end), the part it is read as (empty: any),
the wanted first reading, further readings in their order with semicolons between, why, and the
provenance: a key of core/sources.py. A reading is its value and the other things that matter;
what is not named is not asked. Other readings may stand between the further ones.
"""

import csv
from pathlib import Path

import pytest

from repairlib.core.quantity import read_quantity
from repairlib.core.sources import SOURCES
from repairlib.markings import read
from repairlib.markings.kinds import NOT_POLAR, POLAR
from repairlib.markings.other_pieces import SAFETY_CLASSES

WANTED = Path(__file__).with_name("wanted-order.csv")
SPEEDS = ("FF", "F", "M", "T", "TT")
KINDS = {"film": "film", "tantalum": "tantalum", "chip resistor": "chip-resistor"}


def rows():
    with WANTED.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def is_polar(reading):
    return reading.kind in POLAR and reading.carries.get("polarity") != "non-polar"


def is_not_polar(reading):
    return reading.kind in NOT_POLAR or reading.carries.get("polarity") == "non-polar"


ASKED = {
    "polar": is_polar,
    "not polar": is_not_polar,
    "mains": lambda one: "mains" in one.cautions,
    "no date": lambda one: "date" not in one.carries,
    "no doubt": lambda one: not one.doubt,
    "no tolerance": lambda one: one.tolerance is None,
    "double layer": lambda one: "double-layer" in one.why,
}


def volts(reading):
    ac = " AC" if reading.carries.get("voltage_type") == "AC" else ""
    return reading.carries.get("rated_voltage"), ac


def says(reading, word):
    """Whether the reading says one of the things that stand behind its value."""
    name, _, what = word.partition(" ")
    if word in ASKED:
        return ASKED[word](reading)
    if word in KINDS:
        return reading.kind == KINDS[word]
    if word in SPEEDS and reading.quantity == "current":
        return reading.carries.get("speed") == word
    if word in (*SAFETY_CLASSES, "X", "Y"):
        return reading.carries.get("safety_class") == word
    if name in ("series", "sections"):
        return str(reading.carries.get(name)) == what
    if word.endswith("%") or word.endswith("pF"):
        return str(reading.tolerance).replace("\u00a0", " ") == word
    if word.endswith("°C"):
        return reading.carries.get("highest_temperature") == float(name)
    number = read_quantity(word.removesuffix(" AC"), "V").value
    return volts(reading) == (pytest.approx(number), " AC" if word.endswith(" AC") else "")


def is_wanted(reading, wanted):
    """Whether the reading has the value, and says all that is asked of it."""
    value, *words = wanted.split(", ")
    if value[-1:] in "FΩHAV" and value[:1].isdecimal():
        unit = value[-1]
        same = reading.unit == unit and reading.value == pytest.approx(
            read_quantity(value, unit).value
        )
    else:
        same = value in reading.headline or value.replace(" ", "-") == reading.kind
    return same and all(says(reading, word) for word in words)


@pytest.mark.common_practice
@pytest.mark.parametrize("row", rows(), ids=lambda row: row["marking"])
def test_likeliest_first(row):
    found = read(row["marking"].replace("\\n", "\n"), row["as"] or None)
    assert is_wanted(found[0], row["first"]), (row["why"], found)
    rest = iter(found)
    for wanted in filter(None, row["then"].split("; ")):
        assert any(is_wanted(one, wanted) for one in rest), (wanted, row["why"], found)


@pytest.mark.behaviour
def test_each_row_says_where_it_comes_from():
    assert all(row["why"] and row["provenance"] in SOURCES for row in rows())
