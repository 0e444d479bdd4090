"""Capacities as people type them."""

from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.core.plain_file import size_in_words
from repairlib.firmware import read_size


@pytest.mark.published("Winbond W25Q16 and W25Q64: 16 Mbit is 2 MiB, 64 Mbit is 8 MiB")
def test_bits_and_bytes():
    assert read_size("16 Mbit") == 2097152 == read_size("2 MiB") == read_size("2MB")
    assert read_size("64Mbit") == 8388608 == read_size("8388608 bytes") == read_size("8 mb".upper())


@pytest.mark.behaviour
@pytest.mark.parametrize("size", [256, 512, 65536, 1 << 20, 3 << 20, 1000, 256 << 20])
def test_what_is_said_is_read(size):
    assert read_size(size_in_words(size)) == size == read_size(f"{size:,}")


@pytest.mark.behaviour
@pytest.mark.parametrize(
    "typed",
    ["", "8 Mb", "64Kb", "0", "0 MiB", "3 bits", "0,3 KiB", "512 MiB", "8 apples", "1e3", "1,02"],
)
def test_refused(typed):
    with pytest.raises(RepairlibError, match="8 MiB, 64 Mbit"):
        read_size(typed)


@given(st.text(max_size=20))
def test_anything_typed(typed):
    with suppress(RepairlibError):
        assert read_size(typed) > 0
