"""Points where a wire can land, as people type them."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.missing_parts.landings import DETOUR, best_first, read_landings

LONG = 0.15


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("typed", "name", "kind", "distance", "ohm"),
    [
        ("via 3 mm 0.2 ohm", "via", "via", 0.003, 0.2),
        ("R12 pin 1 8mm", "R12 pin 1", "lead or pad of a part", 0.008, None),
        ("TP5: 2 cm, ", "TP5", "test point", 0.02, None),
        ("test point near J3 0,5 in 300 mΩ", "test point near J3", "test point", 0.0127, 0.3),
        ("the track 100 mil OL", "the track", "track", 0.00254, float("inf")),
        ("pin 7 of U4, 12 mm, OL", "pin 7 of U4", "lead or pad of a part", 0.012, float("inf")),
        ("via 3 mm 0.2 k", "via", "via", 0.003, 200.0),
        ("via 3 mm 2K", "via", "via", 0.003, 2000.0),
        ("TP5 3 mm 4k7", "TP5", "test point", 0.003, 4700.0),
        ("TP3 5 mm 0R2", "TP3", "test point", 0.005, 0.2),
        ("via 3 mm 0.2 Ohm near R12 pin 1", "via", "via", 0.003, 0.2),
        ("plated hole 4 mm 4.7 kΩ", "plated hole", "via", 0.004, 4700.0),
    ],
)
def test_what_people_type(typed, name, kind, distance, ohm):
    (one,) = read_landings(typed)
    assert (one.name, one.kind) == (name, kind)
    assert one.distance == pytest.approx(distance)
    assert one.ohm == (ohm if ohm is None else pytest.approx(ohm))


@pytest.mark.behaviour
def test_a_meter_proves_and_refutes():
    same, other, opened, unknown = read_landings(
        "via 1 mm 0.4 Ω; via 2 mm 12 Ω; via 3 mm OL; via 4 mm"
    )
    assert same.proven and not same.refuted
    assert other.refuted and opened.refuted and not other.proven
    assert not unknown.proven and not unknown.refuted


@pytest.mark.common_practice
def test_proven_first_then_near_then_a_good_joint():
    points = read_landings("track 2 mm; via 5 mm; R3 7 mm; TP1 20 mm 0.1 Ω; R9 1 mm OL; TP9 190 mm")
    names = [one.name for one in best_first(points, LONG, list(DETOUR))]
    assert names == ["TP1", "R3", "track", "via"]
    assert [one.name for one in best_first(points, 0.006, list(DETOUR))] == ["track", "via"]
    assert "track" not in [one.name for one in best_first(points, LONG, ["via", "test point"])]


@pytest.mark.behaviour
@pytest.mark.parametrize(
    "typed", ["", " ; ,", "3 mm", "somewhere 3 mm", "via 2000 mm", None, "via; " * 51]
)
def test_what_is_no_point_is_one_line(typed):
    with pytest.raises(RepairlibError) as refused:
        read_landings(typed)
    assert "\n" not in str(refused.value)


@pytest.mark.behaviour
@given(st.text(alphabet="via TPRU0123456789.,;mcilnohΩkOL \n", max_size=80))
def test_any_text_is_read_or_refused(text):
    try:
        assert all(one.kind in DETOUR for one in read_landings(text))
    except RepairlibError as refused:
        assert "\n" not in str(refused)


@pytest.mark.behaviour
@pytest.mark.parametrize(
    "typed", ["via 3 mm 0.2", "via 3 mm 0.2 q", "TP1 3 mm 5", "via 0.3", "via 3 mm 4q"]
)
def test_a_figure_that_is_not_understood_is_said(typed):
    with pytest.raises(RepairlibError, match="a distance needs mm, a reading Ω") as refused:
        read_landings(typed)
    assert "\n" not in str(refused.value)
