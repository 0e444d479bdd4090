"""An image out of plain bytes, Intel HEX or S-records."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.firmware import read_any_image

HEX = b":10010000214601360121470136007EFE09D2190140\n:00000001FF\n"


@pytest.mark.published("Intel HEX article of the encyclopaedia, first example record")
def test_records_are_read_as_records(tmp_path):
    path = tmp_path / "a.hex"
    path.write_bytes(HEX)
    image = read_any_image(path)
    assert image.data[0x100:] == bytes.fromhex("214601360121470136007EFE09D21901")
    assert image.data[:0x100] == b"\xff" * 0x100
    path.write_bytes(HEX.replace(b"40\n", b"41\n", 1))
    with pytest.raises(RepairlibError):
        read_any_image(path)


@pytest.mark.behaviour
@pytest.mark.parametrize("data", [b":-) a text\n", b"S\n", b"\x00" * 99, b":10010000" + b"\x80"])
def test_other_bytes_are_bytes(tmp_path, data):
    (tmp_path / "a.bin").write_bytes(data)
    assert read_any_image(tmp_path / "a.bin").data == data
