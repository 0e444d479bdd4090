"""Where reads differ, block by block: the same as byte by byte."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.firmware import differing, image_of

SHORT = st.binary(min_size=1, max_size=1500)


@given(SHORT, SHORT, SHORT)
def test_against_byte_by_byte(one, two, three):
    reads = [image_of(one), image_of(two), image_of(three)]
    found = differing(reads, 4)
    whole = min(read.size for read in reads)
    for at, share in enumerate(found.shares):
        place = range(at * found.block, min((at + 1) * found.block, found.size))
        if place[-1] >= whole:
            assert share is None
        else:
            count = sum(not one[at] == two[at] == three[at] for at in place)
            assert share == count / len(place)
    assert at + 1 == -(-found.size // found.block)


@pytest.mark.behaviour
def test_one_read():
    with pytest.raises(RepairlibError, match="two reads"):
        differing([image_of(b"a")])
