"""A maker's part number typed as a marking: no value comes of it, and what to look for is said."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.markings import read

# (number of no maker, what is said, what is not)
NUMBERS = [
    ("XAB1HM100", ("1H may be 50 V", "10 µF on an aluminium part", "10 pF on others"), ("N or",)),
    ("QZ-1C471MD", ("16 V", "470 µF", "±20 %"), ()),
    ("XQE1HN010", ("1 µF on an aluminium part", "without polarity"), ()),
    ("ZEBP1V220", ("35 V", "22 µF", "without polarity"), ()),
    ("ZZA475K025", ("475 may be 4.7 µF", "±10 %"), ("V,",)),
    ("50QXF100M", (), ("pF", "µF")),
]


@pytest.mark.from_memory("how makers of capacitors put volts and value into their numbers")
@pytest.mark.parametrize(("number", "said", "unsaid"), NUMBERS)
def test_pieces_of_a_part_number(number, said, unsaid):
    with pytest.raises(RepairlibError, match="a maker's part number, not a marking") as caught:
        read(number)
    wrong = caught.value.wrong.replace("\u00a0", " ")
    assert all(one in wrong for one in said) and not any(one in wrong for one in unsaid)
    assert "printed on the part itself" in caught.value.accepted


@pytest.mark.behaviour
@pytest.mark.parametrize("marking", ["2A104JK2", "T3.15AL250V", "MKP1X2 0.1"])
def test_markings_are_none(marking):
    try:
        read(marking)
    except RepairlibError as error:
        assert "part number" not in error.wrong or marking == "2A104JK2"
