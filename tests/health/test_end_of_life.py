"""When a part counts as worn out: the tests of data sheets, each by its name."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.health.end_of_life import criterion_of, end_of_life_limits
from tests.documents import document

ZL = document("Rubycon ZL")
SHEETS = "; ".join(
    document(key)
    for key in ("Lelon RGA", "Rubycon ZL", "Teapo SN", "Nippon Chemi-Con APSA", "Vishay 056/057")
)

# Family, V, criterion: capacitance from, to (times its first value), loss times, leakage times.
PUBLISHED = {
    ("aluminium general 105", 25, "endurance"): (0.80, 1.20, 2, 1),  # RGA
    ("aluminium low impedance", 25, "endurance"): (0.75, 1.25, 2, 1),  # ZL
    ("aluminium non-polar", 25, "endurance"): (0.75, 1.25, 1.5, 1),  # SN
    ("polymer radial", 10, "endurance"): (0.80, 1.20, 1.5, 1),  # APSA
    ("aluminium snap-in", 63, "endurance"): (0.85, 1.15, 1.3, 1),  # 056/057
    ("aluminium snap-in", 100, "endurance"): (0.85, 1.15, 1.3, 1),
    ("aluminium snap-in", 400, "endurance"): (0.90, 1.10, 1.3, 1),
    ("aluminium snap-in", 63, "useful life"): (0.55, 1.45, 3, 1),
    ("aluminium snap-in", 400, "useful life"): (0.70, 1.30, 3, 1),
    ("aluminium snap-in", 400, "shelf"): (0.90, 1.10, 1.2, 2),
}


@pytest.mark.published(f"{SHEETS}: endurance, useful life and shelf")
@pytest.mark.parametrize(("which", "limits"), PUBLISHED.items(), ids=str)
def test_tests_of_data_sheets(which, limits):
    worn = criterion_of(*which)
    assert (worn.low, worn.high, worn.loss_times, worn.leakage_times) == pytest.approx(limits)


@pytest.mark.published(f"{SHEETS}: hours of the tests")
def test_hours():
    hours = [criterion_of(*which).hours for which in PUBLISHED]
    assert hours == ["2000", "1000 to 5000", "1000", "2000"] + ["5000"] * 3 + ["12000"] * 2 + [
        "500"
    ]


@pytest.mark.from_memory("bench rule of thumb: 20 % less capacitance, twice the ESR")
def test_bench_rule():
    worn = criterion_of("aluminium general 85", 25)
    assert (worn.name, worn.low, worn.high, worn.loss_times) == ("bench rule", 0.8, None, 2)


@pytest.mark.published(f"{ZL}: ±25 % of the first value, 200 % of tan δ")
def test_from_the_first_value():
    """By hand: 450 µF × 0.75 and × 1.25; tan δ 0.16 at 16 V, twice."""
    finding = end_of_life_limits("aluminium low impedance", "450 µF", "16 V")
    assert finding.capacitance_low == pytest.approx(337.5e-6)
    assert finding.capacitance_high == pytest.approx(562.5e-6)
    assert finding.tan_delta == pytest.approx(0.32)  # 200 % of 0.16


def test_each_answer_names_its_criterion_and_that_others_differ():
    endurance = end_of_life_limits("aluminium snap-in", 1e-3, 400, "endurance")
    useful = end_of_life_limits("aluminium snap-in", 1e-3, 400, "useful life")
    assert (endurance.loss_times, useful.loss_times) == (1.3, 3)
    assert endurance.criterion == "endurance, 5000 h"
    assert useful.criterion == "useful life, 12000 h"
    assert any("useful life" in note for note in endurance.notes)


def test_a_test_that_was_never_published_is_refused():
    with pytest.raises(RepairlibError, match="no such criterion"):
        end_of_life_limits("aluminium general 105", 1e-3, 25, "useful life")
