"""Case sizes of chips in two systems, and of tantalum chips."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.markings import read
from tests.documents import document

SAMSUNG = document("Samsung part-number table", "sizes, by their dimensions")
KEMET = document("KEMET T491", "case sizes")


@pytest.mark.published(SAMSUNG)
@pytest.mark.parametrize(
    ("imperial", "metric"),
    [
        *[("01005", "0402"), ("0201", "0603"), ("0402", "1005"), ("0603", "1608")],
        *[("0805", "2012"), ("1206", "3216"), ("1210", "3225"), ("1812", "4532")],
        ("2220", "5750"),
    ],
)
def test_imperial_and_metric(imperial, metric):
    _same_size(imperial, metric)


# 2512 is also listed as 6432 or 6330. 6332 is followed: the usual body is 6.3 mm by 3.2 mm.
@pytest.mark.from_memory("chip sizes 1806, 2010 and 2512")
@pytest.mark.parametrize(
    ("imperial", "metric"), [("1806", "4516"), ("2010", "5025"), ("2512", "6332")]
)
def test_imperial_and_metric_from_memory(imperial, metric):
    _same_size(imperial, metric)


def _same_size(imperial, metric):
    for code in (imperial, metric):
        sizes = [one.carries for one in read(code, part="case-size")]
        assert (imperial, metric) in [(one["imperial"], one["metric"]) for one in sizes]


# Both sizes are in the table above; that the imperial one stands first is our choice.
@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("code", "as_imperial", "as_metric"), [("0402", "1005", "01005"), ("0603", "1608", "0201")]
)
def test_a_bare_number_needs_its_system(code, as_imperial, as_metric):
    first, second = read(code, part="case-size")
    assert first.carries["metric"] == as_imperial
    assert second.carries["imperial"] == as_metric


@pytest.mark.published(KEMET)
@pytest.mark.parametrize(
    ("letter", "eia"),
    [
        *[("A", "3216-18"), ("B", "3528-21"), ("C", "6032-28"), ("D", "7343-31")],
        *[("X", "7343-43"), ("E", "7360-38"), ("R", "2012-12"), ("S", "3216-12")],
        *[("T", "3528-12"), ("U", "6032-15"), ("V", "7343-20")],
    ],
)
def test_tantalum_letter(letter, eia):
    assert read(letter, part="case-size")[0].carries["eia"] == eia


# Makers disagree on E and V. The published table is followed first; the other stands behind it.
@pytest.mark.from_memory("another maker's cases E and V")
@pytest.mark.parametrize(("letter", "eia"), [("E", "7343-43"), ("V", "7361-38")])
def test_another_maker_disagrees(letter, eia):
    assert read(letter, part="case-size")[1].carries["eia"] == eia
    assert read(eia)[0].carries["eia"] == eia


@pytest.mark.published(KEMET)
def test_eia_number_gives_the_dimensions():
    carries = read("3216-18")[0].carries
    assert carries["length"] == pytest.approx(3.2e-3)
    assert carries["width"] == pytest.approx(1.6e-3)
    assert carries["height"] == pytest.approx(1.8e-3)


def test_a_size_that_may_also_be_a_date():
    assert [one.quantity for one in read("0805")] == ["case size", "date"]


def test_an_unknown_size_is_refused():
    with pytest.raises(RepairlibError):
        read("0806", part="case-size")
