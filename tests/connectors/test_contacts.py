"""Current per contact: the makers' tables, the rule of thumb, and where an answer is refused."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.connectors.contacts import FAMILIES, contact_current, derated, limit, ratings
from repairlib.core.errors import RepairlibError
from repairlib.core.tables import read_table
from tests.documents import document

PITCH_3, PITCH_4, PITCH_5, OWN = (
    "3.00 mm pitch",
    "4.20 mm pitch",
    "5.03 mm pin and socket",
    "own rating",
)


@pytest.mark.published(document("PS-43810", "4.2: brass, 30 °C rise, by circuits and wire"))
@pytest.mark.parametrize(
    ("gauge", "by_circuits"),
    [
        (16, (9, 8, 7, 6)),
        (18, (9, 8, 7, 6)),
        (20, (7, 6, 5, 5)),
        (22, (5, 4, 4, 4)),
        (24, (4, 3, 3, 3)),
        (26, (3, 2, 2, 2)),
        (28, (2, 1, 1, 1)),
    ],
)
def test_every_figure_of_the_4_20_mm_family(gauge, by_circuits):
    columns = ((2,), (4, 5, 6), (7, 8, 9, 10), (12, 18, 24))
    for circuits, ampere in zip(columns, by_circuits, strict=True):
        for number in circuits:
            assert contact_current(PITCH_4, number, gauge).limit == ampere


@pytest.mark.published(
    document("AMP catalogue 82181", "108-1038: 30 °C rise, 100 % energised, by circuits and wire")
)
@pytest.mark.parametrize(
    ("circuits", "by_gauge"),
    [
        (2, (13, 12, 11, 8, 6, 6)),
        (3, (13, 11, 10, 8, 6, 5)),
        (4, (11, 10, 9, 7, 5, 4)),
        (5, (10, 9, 8, 6, 5, 4)),
        (6, (10, 9, 8, 6, 4, 4)),
        (9, (9, 7, 6, 5, 4, 3)),
        (12, (8, 7, 6, 4, 3, 3)),
        (15, (7, 6, 5, 4, 3, 3)),
    ],
)
def test_every_figure_of_the_5_03_mm_family(circuits, by_gauge):
    for gauge, ampere in zip((14, 16, 18, 20, 22, 24), by_gauge, strict=True):
        assert contact_current(PITCH_5, circuits, gauge).limit == ampere


@pytest.mark.behaviour
def test_between_two_columns_the_larger_housing_counts():
    assert limit(PITCH_4, 1, 18).ampere == limit(PITCH_4, 2, 18).ampere == 9
    assert limit(PITCH_4, 3, 18).ampere == 8
    assert limit(PITCH_4, 11, 18).ampere == 6
    assert limit(PITCH_5, 7, 16).ampere == 7
    assert limit(PITCH_5, 13, 16).ampere == 6


@pytest.mark.published(document("connector pin derating", "3 A; two pairs 4.8 A, four 7.68 A"))
def test_the_rule_of_thumb():
    assert derated(3, 1) == 3
    assert 2 * derated(3, 2) == pytest.approx(4.8)
    assert 4 * derated(3, 4) == pytest.approx(7.68)
    # two pairs are four loaded contacts
    assert 2 * contact_current(OWN, 4, 18, single="3 A").limit == pytest.approx(4.8)
    assert 4 * contact_current(OWN, 8, 18, single="3 A").limit == pytest.approx(7.68)


@pytest.mark.published(document("PS-43045", "4.1, one circuit: UL 5 A, CSA 5 to 7 A, TUV 5 A"))
def test_3_00_mm_in_2011():
    rows = {
        row["agency"]: (float(row["low_a"]), float(row["high_a"]))
        for row in read_table("contact-ratings")
        if row["source"] == "PS-43045"
    }
    assert rows == {"UL": (5, 5), "CSA": (5, 7), "TUV": (5, 5)}


@pytest.mark.published(document("PS-43650", "rev. N, one circuit: UL 5 to 8, CSA 7 to 8, IEC 5 A"))
def test_3_00_mm_in_2017():
    rows = {
        row["agency"]: (float(row["low_a"]), float(row["high_a"]))
        for row in read_table("contact-ratings")
        if row["source"] == "PS-43650"
    }
    assert rows == {"UL": (5, 8), "CSA": (7, 8), "IEC": (5, 5)}


@pytest.mark.from_memory("newer variants: 8.5 A at 3.00 mm, 13 A at 4.20 mm")
def test_newer_variants():
    assert ratings(PITCH_3)[1] == 8.5
    assert ratings(PITCH_4)[1] == 13


@pytest.mark.behaviour
def test_where_sources_disagree_the_lowest_is_followed():
    assert limit(PITCH_3, 2, 18).ampere == 5
    assert limit(PITCH_3, 4, 18).ampere == pytest.approx(4)
    assert "5 to 8.5 A" in limit(PITCH_3, 2, 18).why[0]


@pytest.mark.behaviour
def test_a_thin_wire_is_the_limit_of_a_strong_contact():
    """No table gives a 28 AWG wire more than 2 A, whatever the contact is rated."""
    assert limit(PITCH_3, 2, 28).ampere == 2
    assert limit(OWN, 2, 28, 13).ampere == 2
    assert limit(OWN, 6, 24, 13).ampere == 4
    assert "PS-43810" in limit(OWN, 2, 28, 13).sources


# 30 K × (4.167 / 7)², worked by hand: 10.63 K
@pytest.mark.common_practice
def test_the_rise_goes_with_the_square():
    finding = contact_current(PITCH_4, 8, 18, "4.167 A")
    assert finding.rise == "about 10.6 K"
    assert contact_current(PITCH_4, 8, 18, "7 A").rise == "about 30 K"
    assert contact_current(PITCH_4, 8, 18, "3.5 A").rise == "about 7.5 K"


@pytest.mark.published(document("AMP catalogue 82181", "housing 105 °C with the rise of 30 °C"))
def test_the_hottest_housing():
    assert contact_current(PITCH_5, 2, 18, "11 A", "75 °C").verdict == "within the limits"
    hot = contact_current(PITCH_5, 2, 18, "11 A", "76 °C")
    assert hot.verdict == "over a limit" and "105 °C" in hot.reason
    assert contact_current(PITCH_5, 2, 18, ambient="76 °C").verdict == "over a limit"
    assert contact_current(PITCH_5, 2, 18, ambient="75 °C").verdict is None


@pytest.mark.behaviour
def test_overloaded_contacts_say_that_they_burn():
    over = contact_current(PITCH_4, 8, 18, "7.01 A")
    assert over.verdict == "over a limit" and "burns" in over.reason
    assert "heat and fire" in over.cautions
    assert "safe" not in str(over)


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("call", "wrong"),
    [
        ((PITCH_4, 8, 14), "no such wire in the table"),
        ((PITCH_5, 8, 28), "no such wire in the table"),
        ((PITCH_5, 16, 18), "so many loaded contacts"),
        ((PITCH_4, 2.5, 18), "not a whole number"),
        ((PITCH_4, 25, 18), "contacts is out of range"),
        ((PITCH_4, 0, 18), "contacts is out of range"),
        ((OWN, 2, 18), "rating of one contact is missing"),
        ((PITCH_3, 2, 30), "in no table here"),
        ((PITCH_4, 2, 18, 1, 40, 5), "takes no rating of one contact"),
        ((PITCH_3, 2, 18, 1, 40, 5), "takes no rating of one contact"),
        (("2.54 mm", 2, 18), "not a known family"),
    ],
)
def test_what_no_table_has_is_refused(call, wrong):
    with pytest.raises(RepairlibError, match=wrong) as error:
        contact_current(*call)
    assert "\n" not in str(error.value)


@given(
    st.sampled_from(FAMILIES[:3]),
    st.integers(1, 15),
    st.sampled_from((16, 18, 20, 22, 24)),
)
def test_more_contacts_or_thinner_wire_never_carry_more(family, contacts, gauge):
    here = limit(family, contacts, gauge).ampere
    if contacts < 15:
        assert limit(family, contacts + 1, gauge).ampere <= here
    if gauge < 24:
        assert limit(family, contacts, gauge + 2).ampere <= here
