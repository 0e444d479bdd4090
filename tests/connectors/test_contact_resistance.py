"""Heat and drop of contacts, new and worn."""

import pytest

from repairlib.connectors.contact_resistance import contact_heat, new_contact
from repairlib.core.errors import RepairlibError
from tests.documents import document


@pytest.mark.published(document("AMP catalogue 82181", "test A, mΩ at most by wire"))
@pytest.mark.parametrize(
    ("gauge", "milliohm"),
    [(24, 4.0), (22, 4.0), (20, 4.0), (18, 3.5), (16, 3.5), (14, 3.0)],
)
def test_new_contacts_of_the_5_03_mm_family(gauge, milliohm):
    assert new_contact("5.03 mm pin and socket", gauge).ohm == pytest.approx(milliohm / 1000)


@pytest.mark.published(document("PS-43650", "contact resistance 10 mΩ at most"))
def test_new_contacts_of_the_3_00_mm_family():
    assert new_contact("3.00 mm pitch").ohm == new_contact("3.00 mm pitch", 20).ohm == 0.01


@pytest.mark.from_memory("4.20 mm pitch: 10 mΩ at most")
def test_new_contacts_of_the_4_20_mm_family():
    assert new_contact("4.20 mm pitch").ohm == 0.01


# P = I² R and V = I R, worked by hand
@pytest.mark.common_practice
def test_worked_heat():
    worn = contact_heat("5 A", "50 mΩ")
    assert worn.heat_new == pytest.approx(0.25) and worn.drop_new == pytest.approx(0.050)
    assert worn.heat == pytest.approx(1.25) and worn.drop == pytest.approx(0.25)
    assert worn.times_as_hot == 5
    assert contact_heat("6 A", family="5.03 mm pin and socket", gauge=18).heat_new == (
        pytest.approx(0.126)
    )
    assert contact_heat("6 A", new="3.5 mΩ").heat_new == pytest.approx(0.126)


@pytest.mark.behaviour
def test_worn_or_not():
    assert contact_heat("5 A", "10 mΩ").verdict == "within the limits"
    worn = contact_heat("5 A", "10.1 mΩ")
    assert worn.verdict == "over a limit" and "replace both halves" in worn.reason
    assert "heat and fire" in worn.cautions
    assert contact_heat("5 A").verdict is None


@pytest.mark.behaviour
def test_without_a_gauge_the_highest_of_the_family():
    assert new_contact("5.03 mm pin and socket").ohm == 0.004


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("given", "wrong"),
    [
        ({"family": "own rating"}, "what a new contact has is missing"),
        ({"family": "5.03 mm pin and socket", "gauge": 28}, "no such wire"),
        ({"measured": "0 Ω"}, "measured is out of range"),
        ({"measured": "5 A"}, "in A where Ω is due"),
        ({"current": "-5 A"}, "current is out of range"),
    ],
)
def test_what_is_refused(given, wrong):
    with pytest.raises(RepairlibError, match=wrong):
        contact_heat(**{"current": "5 A", **given})
    with pytest.raises(RepairlibError, match="no resistance of a new contact"):
        new_contact("own rating")
