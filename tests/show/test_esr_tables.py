"""The tables of what a new part has: their figures against the data sheets, and nothing mixed."""

import pytest

from repairlib.show import esr_at_100_khz, esr_at_120_hz
from tests.documents import document

RGA = document("Lelon RGA", "tan δ at 120 Hz: 0.16 for 16 V, 0.14 for 25 V, 0.10 for 50 V")
PRINTED = (document("Nichicon UPW"), document("Panasonic FR-A parts"))


def cell(table, first, heading):
    """What stands in the row that begins with `first`, under the heading."""
    (row,) = [row for row in table.rows if plain(row[0]) == first]
    return plain(row[[plain(words) for words in table.head].index(heading)])


def plain(text):
    return text.replace("\xa0", " ")


# By hand: tan δ / (2 π 120 Hz C).
@pytest.mark.published(f"{RGA}; above 1000 µF 0.02 more for each 1000 µF")
@pytest.mark.parametrize(
    ("farad", "volts", "ohm"),
    [
        ("220 µF", "16 V", "0.96"),
        ("470 µF", "25 V", "0.40"),
        ("100 µF", "50 V", "1.3"),
        ("1 µF", "50 V", "130"),
        ("2200 µF", "16 V", "0.11"),
    ],
)
def test_at_120_hz(farad, volts, ohm):
    assert cell(esr_at_120_hz(), farad, volts) == ohm


@pytest.mark.published("; ".join(PRINTED) + ": impedance at 100 kHz")
def test_what_makers_printed_for_100_khz():
    table = esr_at_100_khz()
    assert cell(table, "5 × 11 mm", "printed for one part") == "0.34 (22 µF 50 V)"
    assert cell(table, "10 × 16 mm", "printed for one part") == "0.028 (470 µF 35 V)"
    assert cell(table, "12.5 × 20 mm", "printed for one part") == "0.060 (470 µF 50 V)"


@pytest.mark.from_memory("what new parts usually have at 100 kHz, by can")
def test_usual_at_100_khz():
    assert cell(esr_at_100_khz(), "8 × 11.5 mm", "ordinary") == "0.10 to 0.40"
    assert cell(esr_at_100_khz(), "10 × 16 mm", "low impedance") == "0.030 to 0.090"


@pytest.mark.behaviour
def test_each_table_names_its_frequency_and_where_its_figures_come_from():
    assert "at 120 Hz" in repr(esr_at_120_hz()) and "Lelon" in esr_at_120_hz()._repr_html_()
    high = esr_at_100_khz()
    assert "at 100 kHz" in repr(high) and "from memory" in high._repr_html_()


@pytest.mark.behaviour
def test_every_row_has_a_cell_under_each_heading():
    for table in (esr_at_120_hz(), esr_at_100_khz()):
        assert {len(row) for row in table.rows} == {len(table.head)}
