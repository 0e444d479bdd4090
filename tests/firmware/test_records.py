"""Files of Intel HEX and S-records: what they hold, and one clear line for what they may not be."""

import os
import random
import re

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.firmware import read_records, records_of
from tests.documents import document

S_RECORD_EXAMPLE = """\
S00600004844521B
S1130000285F245F2212226A000424290008237C2A
S11300100002000800082629001853812341001813
S113002041E900084E42234300182342000824A952
S107003000144ED492
S9030000FC
"""
END = ":00000001FF\n"


def hex_line(kind: int, offset: int, data: bytes) -> str:
    """A line of Intel HEX, made here by the rule of its specification."""
    values = bytes([len(data)]) + offset.to_bytes(2) + bytes([kind]) + data
    return f":{(values + bytes([-sum(values) & 0xFF])).hex().upper()}\n"


def s_line(kind: int, width: int, address: int, data: bytes) -> str:
    """A line of S-records, made here by the rule of its manual."""
    values = bytes([width + len(data) + 1]) + address.to_bytes(width) + data
    return f"S{kind}{(values + bytes([~sum(values) & 0xFF])).hex().upper()}\n"


def read(text: str):
    return records_of(text.encode(), "try.hex")


def parts(text: str) -> list[tuple[int, str]]:
    return [(start, data.hex()) for start, data in read(text).segments]


@pytest.mark.published(document("S-records", "module of one S0, four S1 and one S9 record"))
def test_the_module_of_the_manual():
    found = read(S_RECORD_EXAMPLE)
    assert found.form == "S-record"
    [(start, data)] = found.segments
    assert (start, len(data)) == (0, 0x34)
    assert data[:16].hex() == "285f245f2212226a000424290008237c"
    assert data[-4:].hex() == "00144ed4"


@pytest.mark.published(document("Intel HEX example", "16 bytes at address 2462"))
def test_the_data_record_of_the_guide():
    [(start, data)] = read(":10246200464C5549442050524F46494C4500464C33\n" + END).segments
    assert (start, data) == (0x2462, b"FLUID PROFILE\0FL")


@pytest.mark.published(document("Intel HEX sum", "07+00+20+00+DB+…+22 = 5CB, sum 35"))
def test_a_check_sum_worked_by_hand():
    assert parts(":07002000DBFEDCFADDF62235\n" + END) == [(0x20, "dbfedcfaddf622")]
    with pytest.raises(RepairlibError, match="line 1: its check sum is 36, and 35 would fit"):
        read(":07002000DBFEDCFADDF62236\n" + END)


@pytest.mark.published(document("Intel HEX", "LBA + DRLO + DRI modulo 4G"))
def test_linear_addresses_wrap_at_4_gib():
    text = hex_line(4, 0, b"\xff\xff") + hex_line(0, 0xFFFE, b"\x01\x02\x03") + END
    assert parts(text) == [(0, "03"), (0xFFFF_FFFE, "0102")]


@pytest.mark.published(document("Intel HEX", "SBA + (DRLO + DRI modulo 64K)"))
def test_segmented_addresses_wrap_within_their_segment():
    text = hex_line(2, 0, b"\x12\x00") + hex_line(0, 0xFFFF, b"\x01\x02") + END
    assert parts(text) == [(0x12000, "02"), (0x12000 + 0xFFFF, "01")]


@pytest.mark.published(document("Intel HEX", "the last record, whose check sum is FF"))
def test_a_file_ends_with_its_end_record():
    assert parts(hex_line(0, 0, b"\x01") + END) == [(0, "01")]
    with pytest.raises(RepairlibError, match="no end record"):
        read(hex_line(0, 0, b"\x01"))


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "it is empty"),
        ("\n\n", "it is empty"),
        ("MZ", "begins with M, not : or S"),
        (END, "gives no data"),
        ("S9030000FC\n", "gives no data"),
        (S_RECORD_EXAMPLE[:-11], "no end record"),
        (S_RECORD_EXAMPLE[:101], "line 3: 39 digits are no whole record: it was cut"),
        (S_RECORD_EXAMPLE + "S9030000FC\n", "line 7: it stands behind the end record of line 6"),
        (S_RECORD_EXAMPLE.replace("4ED4", "4ED5"), "line 5: its check sum is 92, and 91 would fit"),
        (S_RECORD_EXAMPLE.replace("S9", "S5030003F9\nS9"), "counts 3 records, and here stand 4"),
        (S_RECORD_EXAMPLE.replace("S107", "S407"), "line 5: it is no record of the kinds S0 to S3"),
        ("S101FE\nS9030000FC\n", "line 1: .*too short"),
        (s_line(1, 2, 0xFFFF, b"\1\2") + "S9030000FC\n", "its end, 1 byte, has no address"),
        (hex_line(0, 0, b"\1\2") + hex_line(0, 1, b"\3") + END, "lines 1 and 2 overlap.*0x000001"),
        (hex_line(0, 4, b"\1") + hex_line(0, 1, b"\1" * 4) + END, "lines 1 and 2 overlap"),
        (hex_line(0, 0, b"\1\2") + END + hex_line(0, 1, b"\3"), "line 3: .*behind the end record"),
        (hex_line(6, 0, b"") + END, "line 1: a record of type 06"),
        (hex_line(4, 0, b"\1") + END, "line 1: type 04 has 2 data bytes, and not 1"),
        (hex_line(0, 0, b"\1\2")[:-3] + "\n" + END, "line 1: its count asks for 14 digits"),
        (":0\n" + END, "line 1: 1 digits are no whole record: it was cut"),
        (":00000001GG\n", "line 1: G is no hexadecimal digit"),
        (hex_line(0, 0, b"\1") + "text\n" + END, "line 2: it begins with t, not with :"),
    ],
)
def test_one_line_says_what_is_wrong(text, said):
    with pytest.raises(RepairlibError, match=said) as told:
        read(text)
    assert "\n" not in str(told.value)
    assert str(told.value).startswith("'try.hex'")


@pytest.mark.behaviour
@pytest.mark.parametrize("ends", ["\n", "\r\n", "\r", "\n\n", " \n"])
def test_line_ends_of_every_system(ends):
    text = S_RECORD_EXAMPLE.replace("\n", ends).lower().replace("s", "S") + "\x1a"
    assert read(text).segments == read(S_RECORD_EXAMPLE).segments


@pytest.mark.behaviour
def test_records_are_counted_from_the_beginning_or_from_the_last_count():
    one, two = s_line(1, 2, 0, b"\1"), s_line(1, 2, 1, b"\2")
    for second in (2, 1):
        text = one + s_line(5, 2, 1, b"") + two + s_line(5, 2, second, b"") + "S9030000FC\n"
        assert parts(text) == [(0, "0102")]


@pytest.mark.behaviour
def test_an_image_begins_where_the_chip_begins():
    flash = hex_line(4, 0, b"\x08\x00") + hex_line(0, 0x0100, b"\1\2") + END
    assert read(flash).window == 0x0800_0000
    assert read(flash).image(fill=0).data == bytes(256) + b"\1\2"
    low = read(hex_line(0, 0x0100, b"\1") + hex_line(0, 0x0102, b"\3") + END)
    assert (low.size, low.gaps) == (2, ((0x101, 0x102),))
    assert low.image().data == b"\xff" * 256 + b"\1\xff\3"
    assert low.image(start=0x100).data == b"\1\xff\3"
    for wrong in ({"start": 0x101}, {"start": -1}, {"fill": 256}, {"fill": "ff"}, {"start": "0"}):
        with pytest.raises(RepairlibError):
            low.image(**wrong)


@pytest.mark.behaviour
def test_parts_that_lie_far_apart_are_no_image():
    text = s_line(3, 4, 0, b"\1") + s_line(3, 4, 0xFFFF_FFF0, b"\2") + s_line(7, 4, 0, b"")
    found = read(text)
    assert len(found.segments) == 2
    with pytest.raises(RepairlibError, match=r"far apart.*4,294,967,281 bytes.*256 MiB"):
        found.image()


@pytest.mark.behaviour
def test_a_file_is_read_and_other_things_are_not(tmp_path):
    (tmp_path / "try.s19").write_text(S_RECORD_EXAMPLE)
    assert read_records(tmp_path / "try.s19").name == "try.s19"
    with pytest.raises(RepairlibError, match="folder"):
        read_records(tmp_path)
    with pytest.raises(RepairlibError, match="pipe or a device"):
        read_records("/dev/zero")


@pytest.mark.behaviour
def test_records_out_of_order_are_put_in_order():
    rows = [(at, bytes([at % 251]) * 16) for at in range(0, 4096, 16)]
    random.Random(3).shuffle(rows)
    [(start, data)] = read("".join(hex_line(0, *row) for row in rows) + END).segments
    assert (start, len(data), data[4000]) == (0, 4096, 4000 // 16 * 16 % 251)


@pytest.mark.behaviour
def test_mutated_files_are_read_or_refused_in_one_line():
    chance = random.Random(20261129)
    whole = [
        S_RECORD_EXAMPLE.encode(),
        (hex_line(4, 0, b"\0\1") + hex_line(0, 9, b"repair" * 4) + hex_line(5, 0, b"abcd")).encode()
        + hex_line(2, 0, b"\x20\0").encode()
        + (hex_line(0, 0, bytes(8)) + END).encode(),
        (s_line(3, 4, 8, b"\1\2") + s_line(2, 3, 1, b"\3") + s_line(5, 2, 2, b"")).encode()
        + s_line(7, 4, 0, b"").encode(),
    ]
    said = set()
    for _ in range(100_000 if os.environ.get("FIRMWARE") == "all" else 2_000):
        text = bytearray(chance.choice(whole))
        for _ in range(chance.randint(1, 4)):
            mutate(text, chance)
        try:
            records_of(bytes(text)).image(fill=chance.randrange(256))
        except RepairlibError as error:
            assert "\n" not in str(error)
            said.add(re.sub(r"[0-9A-F]{1,}|'.*?'", "", error.wrong))
    assert len(said) > 12  # many kinds of harm were done, and each was named


def mutate(text: bytearray, chance: random.Random) -> None:
    """Change, cut, repeat or insert something."""
    if not text:
        return
    at, length = chance.randrange(len(text)), chance.randint(1, 40)
    match chance.randrange(6):
        case 0:
            text[at] = chance.choice(b"0123456789ABCDEFS:\r\n x\xff\0")
        case 1:
            del text[at : at + chance.choice((1, 2, length))]
        case 2:
            text[at:at] = text[at : at + length]
        case 3:
            text[at:at] = bytes(chance.choices(b"0123456789ABCDEF:S\n", k=length))
        case 4:
            lines = bytes(text).split(b"\n")
            chance.shuffle(lines)
            text[:] = b"\n".join(lines)
        case 5:
            del text[at:]
