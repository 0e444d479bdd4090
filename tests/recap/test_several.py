"""Several boards with their own lists and readings in one order, from Python and as typed."""

import csv
import io
import json
import os
from decimal import Decimal

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.core.tables import demo_path
from repairlib.faces.cli import main
from repairlib.health import read_measured
from repairlib.recap import plan_boards, read_catalogue

SHOP = (
    "part,family,capacitance_uf,rated_v,rated_c,life_h,diameter_mm,length_mm,lead_spacing_mm,"
    "mounting,price,pack,currency\n"
    "TEN,aluminium general 105,10,16,105,2000,5,11,2,radial,0.10,1,groats\n"
    "BIG,aluminium general 105,100,16,105,2000,6.3,20,2.5,radial,0.20,10,groats\n"
)
GOOD = "Ref,C (µF),ESR @ 120 Hz (Ω)\nC1,9.9,5\n"
WORN = "Ref,C (µF),ESR @ 120 Hz (Ω)\nC1,4,90\n"
LISTS = {"a.csv": "C1-C4,10/16,elect\n", "b.csv": "C1-C6,10/16,elect\nC9,100/16,elect\n"}


@pytest.fixture
def bench(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    for name, text in {**LISTS, "shop.csv": SHOP, "good.csv": GOOD, "worn.csv": WORN}.items():
        (tmp_path / name).write_text(text, "utf-8")
    return tmp_path


@pytest.mark.behaviour
def test_each_board_has_its_own_readings_and_the_order_is_one(bench):
    """By hand: a keeps C1, so 3; b was not measured, so 6: 9 of TEN and one spare, 1.00 groats.

    BIG: one, its spare out of the pack of ten, 2.00 groats.
    """
    shop = read_catalogue("shop.csv")
    made = plan_boards(["a.csv", "b.csv"], measured=[read_measured(GOOD), None], catalogue=shop)
    a, b = made.plans
    assert [item.reference for item in a.may_stay] == ["C1"] and b.measured is None
    ten, big = made.order.lines
    assert (ten.needed, ten.spares, ten.cost) == (9, 1, Decimal("1.00"))
    assert (big.needed, big.spares, big.left_over, big.cost) == (1, 1, 8, Decimal("2.00"))
    assert ten.goes_to == "a.csv: C2, C3, C4; b.csv: C1, C2, C3, C4, C5, C6"
    assert made.order.boards == 2 and a.order is b.order is made.order


@pytest.mark.behaviour
def test_as_typed(bench, capsys):
    words = ["plan", "a.csv", "b.csv", "--measured", "good.csv", "--measured", "none"]
    assert main([*words, "--catalogue", "shop.csv"]) == 0
    told = capsys.readouterr().out
    assert told.index("Board 1, a.csv") < told.index("Board 2, b.csv") < told.index("Order: ")
    assert told.count("Order: ") == 1 and "3.00 groats in all, 1.50 groats a board" in told
    assert main([*words, "--catalogue", "shop.csv", "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert [board["board"] for board in told["boards"]] == ["a.csv", "b.csv"]
    assert told["order"]["for all"] == "3.00" and told["order"]["currency"] == "groats"


@pytest.mark.behaviour
def test_each_board_gets_its_files_and_the_order_one(bench, capsys):
    (bench / "out").mkdir()
    for _ in range(2):
        assert main(["plan", "a.csv", "b.csv", "--catalogue", "shop.csv", "--out", "out"]) == 0
    one = ["a-bench-sheet.html", "a-plan.csv", "b-bench-sheet.html", "b-plan.csv"]
    two = [f"{name[0]}-2{name[1:]}" for name in one]
    orders = ["boards-order.csv", "boards-2-order.csv"]
    assert sorted(os.listdir("out")) == sorted(one + two + orders)
    text = (bench / "out" / "boards-order.csv").read_text("utf-8-sig")
    ten, big = csv.DictReader(io.StringIO(text))
    assert (ten["part"], ten["needed"], ten["spares"], ten["bought"]) == ("TEN", "10", "1", "11")
    assert (big["cost"], big["currency"], big["left over"]) == ("2.00", "groats", "8")
    sheet = (bench / "out" / "a-bench-sheet.html").read_text("utf-8")
    assert "Parts for this board, out of the order for 2 boards" in sheet and "BIG" not in sheet


REFUSED = {
    "named twice": ["a.csv", "a.csv"],
    "this parts list is named twice": ["a.csv", "./a.csv"],
    "this table of readings is named twice": "a.csv b.csv --measured good.csv --measured good.csv",
    "here 2 lists and 1 readings": "a.csv b.csv --measured good.csv",
    "here 1 list and 2 readings": "a.csv --measured good.csv --measured worn.csv",
    "here 2 lists and 3 boards": "a.csv b.csv --board none --board none --board none",
    "with several lists each is one board": "a.csv b.csv --boards 3",
    "No such file": "a.csv c.csv",
    "no such folder": "a.csv b.csv --out nowhere",
    "holds a reading": "a.csv b.csv --measured good.csv --measured shop.csv",
    "begins with a reference": "a.csv shop.csv",
    "a parts list is due": "--measured good.csv",
}


@pytest.mark.behaviour
@pytest.mark.parametrize(("wrong", "words"), REFUSED.items(), ids=REFUSED)
def test_what_does_not_match_is_one_line(bench, capsys, wrong, words):
    words = words.split() if isinstance(words, str) else words
    assert main(["plan", *words]) == 2
    told = capsys.readouterr()
    assert told.out == "" and told.err.count("\n") == 1
    assert wrong in told.err and "Traceback" not in told.err


def test_lists_of_one_name_are_told_apart_by_their_folders(bench):
    for folder in ("left", "right"):
        (bench / folder).mkdir()
        (bench / folder / "parts.csv").write_text("C1,10/16,elect\n")
    made = plan_boards(["left/parts.csv", "right/parts.csv"])
    names = [os.path.join(folder, "parts.csv") for folder in ("left", "right")]
    assert made.names == names


def test_python_refuses_numbers_that_do_not_match(bench):
    with pytest.raises(RepairlibError, match="here 2 lists and 1 readings"):
        plan_boards(["a.csv", "b.csv"], measured=[None])
    with pytest.raises(RepairlibError, match="not a number of lists"):
        plan_boards([])


def test_twelve_boards_have_one_order(tmp_path):
    """Twelve keyboards: what may stay on the first six is bought for the other six alone."""
    text = demo_path("keyboard-parts.csv").read_bytes()
    readings = demo_path("keyboard-measured.csv").read_text("utf-8")
    lists = [tmp_path / f"board{number}.csv" for number in range(12)]
    for path in lists:
        path.write_bytes(text)
    measured = [read_measured(readings) if number < 6 else None for number in range(12)]
    shop = read_catalogue(demo_path("parts-catalogue.csv"))
    made = plan_boards(lists, measured=measured, catalogue=shop)
    needed = {place: line.needed for line in made.order.lines for place in line.places}
    assert (needed["C3"], needed["C43"]) == (6, 12)
    assert sum(line.needed for line in made.order.lines) == sum(len(p.items) for p in made.plans)
    assert made.order.for_all <= made.order.fitted_cost * Decimal("1.25")
