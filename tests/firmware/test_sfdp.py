"""SFDP: headers, DWORDs and whole dumps, each fact under its source; lies are bounded and said."""

import os
import random
import struct

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.firmware import (
    Erase,
    FastRead,
    read_sfdp,
    sfdp_density,
    sfdp_dump,
    sfdp_erase_types,
    sfdp_first_dword,
    sfdp_header,
    sfdp_parameter_header,
)
from tests.documents import document

# DWORDs 1 to 11 as a chip of 64 Mbit has them.
WORDS = (
    *(0xFFF120E5, 0x03FFFFFF, 0x6B08EB44, 0xBB423B08, 0xFFFFFFFE, 0x0000FFFF, 0xEB40FFFF),
    *(0x520F200C, 0xFF00D810, 0x00000000, 0x00000081),
)


def header(id_low, minor, dwords, pointer, id_high=0xFF):
    return bytes([id_low, minor, 1, dwords]) + pointer.to_bytes(3, "little") + bytes([id_high])


def dump(*headers, words=WORDS, at=0x30, minor=6, size=256, count=None):
    """An SFDP area of `size` bytes with these headers, and the table at `at`."""
    headers = headers or (header(0, minor, len(words), at),)
    start = b"SFDP" + bytes([minor, 1, (count or len(headers)) - 1, 0xFF]) + b"".join(headers)
    table = struct.pack(f"<{len(words)}I", *words)
    return (start.ljust(at, b"\xff") + table).ljust(size, b"\xff")


@pytest.mark.published(
    document("SST26VF032B", "53 46 44 50, 06, 01, 02 = 3 headers; 00 06 01 10 30 00 00 FF")
)
def test_headers_of_a_data_sheet():
    one = sfdp_header("53 46 44 50 06 01 02 FF")
    assert (one.revision, one.headers) == ("1.6", 3)
    first = sfdp_parameter_header("00 06 01 10 30 00 00 FF")
    assert (first.id, first.revision, first.dwords) == ("FF00h", "1.6", 16)
    assert first.pointer == "0x000030"
    with pytest.raises(RepairlibError, match="0x000082 is no multiple of four"):
        sfdp_parameter_header("00 00 01 09 82 00 00 FF")
    assert sfdp_parameter_header("81 00 01 06 00 01 00 FF").table == "sector map"


@pytest.mark.published(document("SST26VF032B", "SFDP Signature=50444653H, as a DWORD"))
def test_the_signature_as_a_dword():
    assert int.from_bytes(dump()[:4], "little") == 0x50444653
    assert read_sfdp(dump()).revision == (1, 6)


@pytest.mark.published(
    document("N25Q256A", "5Ah, three address bytes also in four-byte mode, eight dummy clocks")
)
def test_how_it_is_read():
    assert "5Ah, three address bytes and eight dummy" in sfdp_header("53464450060102FF").notes[-1]


@pytest.mark.published(document("JESD216 in Linux", "DWORDs 8 and 9, which begin at byte 1Ch"))
def test_where_the_erases_stand():
    data = bytearray(dump())
    data[0x4C:0x54] = bytes.fromhex("0C21 0D22 0F23 1024")
    sizes = {one.opcode: one.size for one in read_sfdp(bytes(data)).basic.erases}
    assert sizes == {0x21: 4096, 0x22: 8192, 0x23: 32768, 0x24: 65536}


@pytest.mark.published(document("TN1355", "08 and 01 are JESD216D, 00 is one header, FF 1s-1s-1s"))
def test_a_header_of_the_later_issue():
    one = sfdp_header("53 46 44 50 08 01 00 FF")
    assert (one.revision, one.headers) == ("1.8", 1)
    assert "JESD216D" in one.working[1]


@pytest.mark.published(
    document("JESD216 in Linux", "minor 0, 5, 6; 9 DWORDs in the first issue; bits of DWORD 1")
)
def test_issues_and_the_first_dword():
    for minor, issue in ((0, "JESD216"), (5, "JESD216A"), (6, "JESD216B")):
        assert sfdp_header(f"53 46 44 50 0{minor} 01 00 FF").working[1].endswith(f", {issue}")
    one = sfdp_parameter_header("00 00 01 09 80 00 00 FF")
    assert (one.id, one.revision, one.dwords, one.pointer) == ("FF00h", "1.0", 9, "0x000080")
    said = sfdp_first_dword("E5 20 F1 FF")
    assert (said.erase_of_4_KiB, said.opcode, said.address_bytes) == (True, "20h", "3")
    assert said.fast_reads == "1-1-2, 1-2-2, 1-1-4, 1-4-4" and not said.double_rate
    assert sfdp_first_dword("E5 20 F3 FF").address_bytes == "3 or 4"
    assert sfdp_first_dword("E5 20 FD FF").address_bytes == "4"
    assert sfdp_first_dword("E5 20 FB FF").double_rate
    assert sfdp_first_dword("E5 20 80 FF").fast_reads == "none"


@pytest.mark.published(
    document("JESD216 in Zephyr", "DWORD 1: 01 erases 4 KiB, 11 does not, opcode in bits 15 to 8")
)
def test_erase_of_4_kib():
    assert sfdp_first_dword("FD 21 F1 FF").opcode == "21h"
    without = sfdp_first_dword("E7 FF F1 FF")
    assert not without.erase_of_4_KiB and "opcode" not in without.values


@pytest.mark.published(document("JESD216 in Zephyr", "FF84 four-byte instructions, FF05 and FF06"))
def test_ids_of_tables():
    names = {"84": "four-byte instructions", "05": "eight lines, profile 1", "81": "sector map"}
    for low, name in names.items():
        assert sfdp_parameter_header(f"{low} 00 01 02 00 01 00 FF").table == name
    own = sfdp_parameter_header("C2 00 01 04 10 01 00 FF").table
    assert own == "a maker's own table (Macronix, id FFC2h)"


@pytest.mark.published(
    document("JESD216 in Linux", "density: bit 31 clear, value + 1 bits; set, 2^N bits, N to 63")
)
@pytest.mark.parametrize(
    ("dword", "bits"),
    [
        ("07FFFFFF", 134217728),
        ("03FFFFFF", 67108864),
        ("00FFFFFF", 16777216),
        ("01FFFFFF", 33554432),
        ("0FFFFFFF", 268435456),
        ("3FFFFFFF", 1073741824),
        ("7FFFFFFF", 2147483648),
        ("80000020", 4294967296),
        ("80000021", 8589934592),
        ("0x000FFFFF", 1048576),
        ("0x7FFFFFF", 134217728),
        ("0xFFFFFF", 16777216),
        ("FF FF FF 07", 134217728),
        ("20 00 00 80", 4294967296),
        ("FFFFFF00", 16777216),
        ("00 FF FF FF", 16777216),
    ],
)
def test_density(dword, bits):
    one = sfdp_density(dword)
    assert (one.bits, one.bytes) == (bits, bits // 8)


@pytest.mark.published(
    document("JESD216 in Linux", "erase types 2^N byte, N = 0 unused, low half of DWORD 8 first")
)
def test_erase_types():
    said = sfdp_erase_types("0C 20 0F 52 10 D8 00 FF").erases
    assert said == (
        "4 KiB (4096 byte) by 20h; 32 KiB (32768 byte) by 52h; 64 KiB (65536 byte) by D8h"
    )
    assert sfdp_erase_types("00 FF 12 D8").erases == "256 KiB (262144 byte) by D8h"
    assert sfdp_erase_types("00 FF 00 FF").erases == "none"


@pytest.mark.published(
    document("JESD216 in Linux", "settings of fast reads in DWORDs 3 to 7; page 2^N in DWORD 11")
)
def test_a_whole_dump():
    basic = read_sfdp(dump()).basic
    assert basic.density == 8 << 20 and basic.page == 256 and basic.erase_4k == 0x20
    assert basic.erases == (Erase(4096, 0x20), Erase(32768, 0x52), Erase(65536, 0xD8))
    assert basic.address_bytes == "3"
    assert basic.fast_reads == (
        FastRead("1-1-2", 0x3B, 8, 0),
        FastRead("1-2-2", 0xBB, 2, 2),
        FastRead("1-1-4", 0x6B, 8, 0),
        FastRead("1-4-4", 0xEB, 4, 2),
        FastRead("4-4-4", 0xEB, 0, 2),
    )
    assert not read_sfdp(dump()).doubts


@pytest.mark.behaviour
def test_the_first_issue_has_no_page():
    basic = read_sfdp(dump(words=WORDS[:9], minor=0)).basic
    assert (basic.page, basic.dwords, basic.density) == (None, 9, 8 << 20)


@pytest.mark.behaviour
def test_the_newest_basic_table_is_taken():
    older, newer = header(0, 0, 9, 0x30), header(0, 6, 11, 0x30)
    assert read_sfdp(dump(older, newer)).basic.revision == (1, 6)
    assert read_sfdp(dump(newer, older)).basic.page == 256


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("data", "said"),
    [
        (dump(header(0, 6, 16, 0x32)), "0x000032 is no multiple of four"),
        (dump(header(0, 6, 16, 0xFFFFFC)), "ends at 0x100003C, and the dump at 0x000100"),
        (dump(header(0, 6, 16, 0x08)), "0x000008 leads into the headers"),
        (dump(header(0, 6, 0, 0x30)), "has no DWORD"),
        (dump(header(0, 6, 8, 0x30)), "9 DWORDs must stand"),
        (dump(header(0x81, 0, 4, 0x30)), "No header of a basic table"),
        (dump(size=0)[:60], "cannot be read"),
    ],
)
def test_a_basic_table_that_cannot_be_read(data, said):
    sfdp = read_sfdp(data)
    assert sfdp.basic is None and said in " ".join(sfdp.doubts)
    with pytest.raises(RepairlibError, match=r"SFDP 1\.6"):
        sfdp_dump(data.hex())


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("data", "said"),
    [
        (dump(count=200), "200 headers are declared, and the dump ends after 31"),
        (dump(header(0, 6, 255, 0x30)), "52 of 255 DWORDs of the basic table are in the dump"),
        (
            dump(header(0, 6, 11, 0x30), header(0x81, 0, 4, 0x34)),
            "overlap at 0x000034: basic table and sector map",
        ),
        (dump(header(0, 6, 11, 0x30), header(0x84, 0, 2, 0x1000)), "ends at 0x001008"),
        (dump(header(0, 6, 11, 0x30), header(0x84, 0, 2, 0x10)), "among the headers"),
        (dump(header(0, 6, 11, 0x30), header(0x84, 0, 2, 0x0C)), "leads into the headers"),
        (dump(words=(WORDS[0], 0x80000050, *WORDS[2:])), "2^80 bits is the size of no chip"),
        (dump(words=(WORDS[0], 0x00000123, *WORDS[2:])), "no whole number of bytes"),
        (dump(words=(WORDS[0], 0x0FFFFFFF, *WORDS[2:])), "more than three address bytes reach"),
        (dump(words=(*WORDS[:7], 0x520F20FF, *WORDS[8:])), "2^255 byte is the size of no erase"),
        (dump(words=(*WORDS[:7], 0x520F201F, *WORDS[8:])), "20h clears more than the chip holds"),
        (dump(words=(0xFFF720E5, *WORDS[1:])), "address bytes is a reserved value"),
        (dump(minor=6)[:7] + b"\xfd" + dump()[8:], "Access protocol FDh"),
        (dump()[:5] + b"\x02" + dump()[6:], "Major revision 2"),
    ],
)
def test_what_does_not_fit_is_said_and_the_rest_is_read(data, said):
    sfdp = read_sfdp(data)
    assert sfdp.basic and said in " ".join(sfdp.doubts)


@pytest.mark.behaviour
def test_a_flood_of_wrong_headers_is_told_in_few_lines():
    wild = [header(n & 0x7F, 0, 200, 0x1002 + n) for n in range(1, 256)]
    sfdp = read_sfdp(dump(header(0, 6, 11, 0x900), *wild, at=0x900, size=0x1000))
    assert sfdp.basic.density == 8 << 20
    assert len(sfdp.headers) == 256 and len(sfdp.doubts) == 9
    assert sfdp.doubts[-1].startswith("And ")


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("data", "said"),
    [
        (b"\xff" * 256, "all ones: the chip has no SFDP"),
        (b"\x00" * 256, "all zeros"),
        (b"\xff" + dump(), "the signature SFDP stands at 0x000001"),
        (b"PDFS" + dump()[4:], "bytes swapped"),
        (dump()[:12], "cut short: 12 bytes"),
        (b"", "cut short: 0 of 8"),
        (b"MZ" * 100, "does not begin with 53 46 44 50"),
    ],
)
def test_what_is_no_dump(data, said):
    with pytest.raises(RepairlibError) as refused:
        read_sfdp(data)
    assert said in str(refused.value)


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("calculator", "typed"),
    [
        (sfdp_header, "FF FF FF FF FF FF FF FF"),
        (sfdp_header, "53 46 44"),
        (sfdp_header, "53 46 44 50 06 01 02 FF 00"),
        (sfdp_parameter_header, "FF FF FF FF FF FF FF FF"),
        (sfdp_parameter_header, "00 06 01 00 30 00 00 FF"),
        (sfdp_parameter_header, "00 06 01"),
        (sfdp_parameter_header, "00 06 01 10 08 00 00 FF"),
        (sfdp_density, "FFFFFFFF"),
        (sfdp_density, "80000050"),
        (sfdp_density, "0xZZZ"),
        (sfdp_density, "0x107FFFFFF"),
        (sfdp_density, "FF FF FF"),
        (sfdp_density, ""),
        (sfdp_erase_types, "0C"),
        (sfdp_erase_types, "0C 20 0F"),
        (sfdp_erase_types, "FF FF"),
        (sfdp_erase_types, "0C 20 " * 5),
        (sfdp_first_dword, "E5 20"),
        (sfdp_dump, "zz"),
        (sfdp_dump, "FF" * 70_000),
    ],
)
def test_what_the_calculators_refuse(calculator, typed):
    with pytest.raises(RepairlibError) as refused:
        calculator(typed)
    assert "\n" not in str(refused.value)


@pytest.mark.behaviour
def test_mutated_dumps_raise_nothing_foreign():
    chance = random.Random(11)
    count = 100_000 if os.environ.get("FIRMWARE") == "all" else 2_000
    sound = (dump(), dump(minor=0, words=WORDS[:9]), dump(header(0, 6, 11, 0x30), count=3))
    answered = 0
    for _ in range(count):
        data = bytearray(chance.choice(sound))
        for _ in range(chance.randint(0, 6)):
            at = chance.randrange(16) if chance.random() < 0.5 else chance.randrange(len(data))
            data[at] = chance.choice((0, 0xFF, chance.randrange(256)))
        if chance.random() < 0.3:
            del data[chance.randrange(len(data)) :]
        try:
            sfdp = read_sfdp(bytes(data))
        except RepairlibError:
            continue
        assert len(sfdp.doubts) < 32 and len(sfdp.headers) <= 256
        answered += sfdp.basic is not None
        try:
            assert sfdp_dump(data.hex()).values
        except RepairlibError:
            assert sfdp.basic is None
    assert answered > count / 5
