"""Power through a plug and its lead: what is lost where, and what arrives."""

import pytest

from repairlib.connectors import power_path
from repairlib.core.errors import RepairlibError
from tests.documents import document

SHEET = {"single": "5 A", "new": "30 mΩ"}


def why(path):
    return path.reason.replace("\xa0", " ")


def label_maker(**changed):
    given = {"current": "3 A", "gauge": 24, "length": "1.5 m", "supply": "12 V", **SHEET}
    return power_path(**{**given, **changed})


# 2 × length × Ω/km / 1000 × A, by hand from the printed rows of the wire table
@pytest.mark.published(document("wire resistance table", "84.21 and 20.95 Ω/km"))
@pytest.mark.parametrize(
    ("gauge", "length", "ampere", "volts"),
    [(24, 1.0, 1.0, 0.1684), (18, 0.60, 6.25, 0.1571), (24, 1.5, 3.0, 0.7579)],
)
def test_drop_of_the_lead(gauge, length, ampere, volts):
    path = power_path(ampere, gauge, length, 12, single=10, new=0.01)
    assert path.drop_of_lead == pytest.approx(volts, abs=1e-4)


@pytest.mark.published(document("PS-43810", "4.20 mm pitch, 18 AWG, 8 loaded: 7 A"))
def test_the_table_of_the_family():
    path = power_path("4.167 A", 18, "0.6 m", "12 V", "4.20 mm pitch", 8)
    assert path.limit_of_contact == 7
    assert path.verdict == "within the limits" and "with contacts as new" in path.reason


# I R and I² R: 5 A through 10 mΩ, and aged to 50 mΩ
@pytest.mark.common_practice
def test_worked_contacts():
    path = power_path("5 A", 18, "1 m", "12 V", "3.00 mm pitch", 2, "50 mΩ")
    assert (path.drop_new, path.heat_new) == (pytest.approx(0.05), pytest.approx(0.25))
    assert (path.drop_worn, path.heat_worn) == (pytest.approx(0.25), pytest.approx(1.25))
    assert path.arrives == pytest.approx(12 - 2 * 0.02095 * 5 - 0.05 - 0.25, abs=1e-4)


@pytest.mark.common_practice
def test_what_arrives_is_held_against_what_is_needed():
    """12 - 0.7579 - 0.09 - 0.36 = 10.79 V; with new contacts 11.06 V."""
    worn = label_maker(measured="120 mΩ", needs="11 V")
    assert worn.arrives == pytest.approx(10.792, abs=1e-3)
    assert worn.verdict == "outside the limits"
    assert "120 mΩ is above 30 mΩ" in why(worn) and "10.79 V arrive, 11 V" in why(worn)
    good = label_maker(measured="30 mΩ", needs="11 V")
    assert good.verdict == "within the limits" and good.arrives == pytest.approx(11.062, abs=1e-3)
    assert label_maker(needs="11.1 V").verdict == "outside the limits"
    assert why(label_maker(needs="11.1 V")) == "11.06 V arrive, 11.1 V are needed"


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("changed", "said"),
    [
        ({"current": "6 A", "gauge": 20}, "6 A in each is above 5 A"),
        ({"ambient": "100 °C"}, "a housing's most"),
        ({"current": "4 A", "gauge": 28, "single": "10 A"}, "in a metre of wire is above"),
    ],
)
def test_each_part_can_be_outside(changed, said):
    path = label_maker(**changed)
    assert path.verdict == "outside the limits" and said in why(path)
    assert "heat and fire" in path.cautions


@pytest.mark.behaviour
def test_above_the_touchable_it_is_for_a_qualified_person():
    path = label_maker(supply="72 V")
    assert "mains" in path.cautions and "qualified person" in path.notes[0]
    assert "mains" not in label_maker().cautions and "both halves" in label_maker().notes[0]


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("changed", "wrong"),
    [
        ({"length": "40 m"}, "all of the supply"),
        ({"supply": "1 V", "measured": "1 Ω"}, "would take all of it"),
        ({"gauge": "24.5"}, "in no table here"),
        ({"current": "3 V"}, "in V where A is due"),
        ({"family": "4.20 mm pitch"}, "takes no rating"),
    ],
)
def test_what_is_refused_in_one_line(changed, wrong):
    with pytest.raises(RepairlibError, match=wrong):
        label_maker(**changed)


@pytest.mark.behaviour
@pytest.mark.parametrize("missing", SHEET)
def test_an_own_rating_needs_both_figures_of_its_sheet(missing):
    given = {name: value for name, value in SHEET.items() if name != missing}
    with pytest.raises(RepairlibError, match="is missing"):
        power_path("3 A", 24, "1.5 m", "12 V", **given)
