"""What only one board has is found, named and kept; code is not taken for it."""

import os
import random
import struct
import zlib
from pathlib import Path

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.firmware import (
    HOW_SURE,
    KEEP_KINDS,
    Keep,
    check_read_back,
    image_of,
    is_group,
    is_local,
    keep_into,
    keep_list,
    read_image,
    sectors_that_differ,
    sums_in_doubt,
)
from tests.documents import document
from tests.firmware.invented_boards import CODE, board, code, patched

DEMO = Path(__file__).parents[2] / "datasets/demo"
ADDRESS, SERIAL, CALIBRATION, REGION = KEEP_KINDS
SURE = HOW_SURE[:2]
MINE, THEIRS, THIRD = "025AC3104117", "025AC3104162", "025AC3103980"


def found(old: bytes, donor: bytes, *twins: bytes) -> list[Keep]:
    images = [image_of(one, f"twin {at}") for at, one in enumerate(twins)]
    return list(keep_list(image_of(old, "old"), image_of(donor, "donor"), images))


def sure(old: bytes, donor: bytes, *twins: bytes) -> set[tuple[str, int, int, str]]:
    """Kind, first byte and end in the settings, and value of the finds that are at least likely."""
    return {
        (keep.kind, keep.where[0] - CODE, keep.where[1] - CODE, keep.value)
        for keep in found(old, donor, *twins)
        if keep.sure in SURE
    }


@pytest.mark.published(
    document("IEEE 802 addresses", "I/G and U/L, the two lowest bits of octet 0")
)
@pytest.mark.parametrize(
    ("address", "group", "local"),
    [
        ("ACDE48234567", False, False),
        ("ADDE48234567", True, False),
        ("AEDE48234567", False, True),
        ("FFFFFFFFFFFF", True, True),
    ]
    + [(f"{first}2345678901", False, True) for first in ("02", "06", "0A", "0E")],
)
def test_the_two_bits_of_an_address(address, group, local):
    octets = bytes.fromhex(address)
    assert (is_group(octets), is_local(octets)) == (group, local)


@pytest.mark.behaviour
@pytest.mark.parametrize("others", [("sister",), ("sister", "other-sister")])
def test_the_demo_boards(others):
    old, *boards = (read_image(DEMO / f"printer-{name}.bin") for name in ("read-first", *others))
    told = {
        (keep.kind, keep.where[0], keep.value) for keep in keep_list(old, boards[0], boards[1:])
    }
    assert told == {
        (SERIAL, 0xE007, "PB-204117"),
        (ADDRESS, 0xE040, "02:5A:C3:10:41:17"),
        (ADDRESS, 0xE084, "02:5A:C3:10:41:17"),
        (CALIBRATION, 0xE100, "64 numbers of 16 bits, high byte first, 2063 to 3068"),
    }


@pytest.mark.behaviour
@pytest.mark.parametrize(
    "label",
    ["serial=", "SERIAL NUMBER: ", "S/N:", "sn=", '"serial":"', "Ser.No. ", "Serial\0\0\0\0"],
)
@pytest.mark.parametrize("wide", ["ascii", "utf-16-le", "utf-16-be"])
def test_a_serial_number_behind_a_label(label, wide):
    if wide != "ascii" and "\0" in label:
        return
    old, donor = (board({64: f"{label}{one}\0".encode(wide)}) for one in ("K4-20117", "K4-20162"))
    first = 64 + len(label.encode(wide))
    assert sure(old, donor) == {(SERIAL, first, first + len("K4-20117".encode(wide)), "K4-20117")}


@pytest.mark.behaviour
@pytest.mark.parametrize("number", ["20117-43", "KX0020117", "9920117443"])
@pytest.mark.parametrize("wide", ["ascii", "utf-16-le"])
@pytest.mark.parametrize("blank", [0xFF, 0x00])
def test_a_serial_number_without_a_label(number, wide, blank):
    other = number.replace("117", "962")
    old, donor = (board({80: f"{one}\0".encode(wide)}, blank=blank) for one in (number, other))
    end = 80 + len(number.encode(wide))
    assert sure(old, donor) == {(SERIAL, 80, end, number)}
    assert sure(old, board({}, blank=blank)) == {(SERIAL, 80, end, number)}


@pytest.mark.behaviour
@pytest.mark.parametrize("form", ["{}:{}:{}:{}:{}:{}", "{}-{}-{}-{}-{}-{}", "{}{}.{}{}.{}{}"])
@pytest.mark.parametrize("before", ["", "MAC:", "ethaddr="])
@pytest.mark.parametrize("wide", ["ascii", "utf-16-le"])
def test_an_address_as_text(form, before, wide):
    def own(address):
        pairs = [address[at : at + 2].lower() for at in range(0, 12, 2)]
        return {32: f"{before}{form.format(*pairs)}\0".encode(wide)}

    first = 32 + len(before.encode(wide))
    end = first + len(form.format(*["00"] * 6).encode(wide))
    told = sure(board(own(MINE)), board(own(THEIRS)))
    assert told == {(ADDRESS, first, end, "02:5A:C3:10:41:17")}


@pytest.mark.behaviour
def test_an_address_as_bytes_once_twice_with_the_next_one_and_as_text():
    def own(address, *steps):
        number = int(address, 16)
        return {64 * at: (number + step).to_bytes(6) for at, step in enumerate(steps, 1)}

    once = {(ADDRESS, 64, 70, "02:5A:C3:10:41:17")}
    assert sure(board(own(MINE, 0)), board(own("025AC3104262", 0))) == once
    for steps in ((0, 0), (0, 1), (0, 1, 2)):
        finds = found(board(own(MINE, *steps)), board(own(THEIRS, *steps)))
        assert [keep.where[0] - CODE for keep in finds] == [
            64 * at for at in range(1, len(steps) + 1)
        ]
        assert {keep.kind for keep in finds} == {ADDRESS}
        assert {keep.sure for keep in finds} <= set(SURE)
    text = {256: b"02-5A-C3-10-41-17"}
    finds = found(board(own(MINE, 0) | text), board(own(THEIRS, 0) | {256: b"02-5A-C3-10-41-62"}))
    assert [keep.sure for keep in finds] == ["very likely"] * 2
    assert "0x006100" in finds[0].why


@pytest.mark.behaviour
def test_an_address_of_a_group_is_no_board_s_own():
    old, donor = (board({64: bytes.fromhex(one)}) for one in ("015E7F104117", "015E7F104262"))
    assert {keep.kind for keep in found(old, donor)} == {REGION}


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("form", "base", "spread"),
    [
        ("<H", 2000, 40),
        (">H", 2000, 40),
        ("<I", 70_000, 900),
        (">f", 1.25, 0.05),
        ("<f", 0.8, 0.02),
        ("<h", 0, 60),
        (">h", 0, 60),
        ("B", 120, 10),
    ],
)
def test_a_table_of_calibration(form, base, spread):
    def trims(seed):
        chance = random.Random(seed)
        values = [base + spread * chance.uniform(-1, 1) for _ in range(32)]
        whole = values if form[-1] == "f" else [round(value) for value in values]
        return b"".join(struct.pack(form, value) for value in whole)

    first, second, third = (board({512: trims(seed)}) for seed in (5, 6, 7))
    [keep] = found(first, second)
    assert keep.kind == CALIBRATION and keep.sure == "likely"
    differing = [at for at in range(len(first)) if first[at] != second[at]]
    assert keep.where[0] <= differing[0] and differing[-1] < keep.where[1]
    assert keep.where[0] >= CODE + 512 and keep.where[1] <= CODE + 512 + len(trims(5))
    [keep] = found(first, second, third)
    assert keep.sure == "very likely"


@pytest.mark.behaviour
@pytest.mark.parametrize("form", ["<H", "<h", ">f"])
def test_a_table_is_kept_with_the_check_sum_behind_it(form):
    def trims(seed):
        chance = random.Random(seed)
        values = [40 * chance.uniform(1, 1.2) for _ in range(12)]
        whole = values if form[-1] == "f" else [round(value) for value in values]
        table = b"".join(struct.pack(form, value) for value in whole)
        return table + zlib.crc32(table).to_bytes(4)

    first, second = (board({512: trims(seed)}) for seed in (5, 6))
    [keep] = found(first, second)
    assert keep.kind == CALIBRATION
    assert keep.where[0] <= CODE + 516 and keep.where[1] == CODE + 512 + len(trims(5))


@pytest.mark.behaviour
def test_two_firmwares_give_no_list():
    """Nothing is planted in code that differs all over; nothing is to be found."""
    for seed in range(6):
        old, donor = board({}, code(seed)), board({}, code(seed + 100))
        assert not [keep for keep in found(old, donor) if keep.kind != REGION], seed
        assert not found(image := board({}, code(seed)), image)
        assert not found(
            random.Random(seed).randbytes(30_000), random.Random(-seed).randbytes(30_000)
        )


@pytest.mark.behaviour
def test_another_build_gives_nothing_sure_and_few_possible():
    for seed in range(6):
        program = code(seed)
        for places in (3, 30, 300):
            finds = found(board({}, program), board({}, patched(program, seed, places)))
            assert not [keep for keep in finds if keep.sure in SURE], (seed, places, finds)
            assert len(finds) <= 8


@pytest.mark.behaviour
def test_another_build_hides_nothing():
    program = code(3)
    old = board(
        {64: b"SN: K4-20117\0", 128: bytes.fromhex(MINE), 192: b"02:5A:C3:10:41:17"}, program
    )
    new = {64: b"SN: K4-20162\0", 128: bytes.fromhex(THEIRS), 192: b"02:5A:C3:10:41:62"}
    for donor in (patched(program, 4, 300), code(99)):
        told = sure(old, board(new, donor))
        assert {(kind, first) for kind, first, *_ in told} == {
            (SERIAL, 68),
            (ADDRESS, 128),
            (ADDRESS, 192),
        }


@pytest.mark.behaviour
def test_what_the_donor_or_a_twin_has_too_is_not_its_own():
    text = b"example 02:5A:C3:10:41:17, serial=K4-20117\0"
    old, donor = board({64: text}), board({64: text, 900: b"\x01\x02\x03"})
    assert not sure(old, donor)
    assert not found(board({64: text}), board({}), board({64: text, 900: b"\x05"}))


@pytest.mark.behaviour
def test_other_differences_are_told_as_possible():
    old, donor = board({700: b"\x12\x99\x03\x41\x07"}), board({700: b"\x77\x01\xd4\x18\xee"})
    [keep] = found(old, donor)
    assert (keep.kind, keep.where) == (REGION, (CODE + 700, CODE + 705))
    assert keep.sure == "possible" and "damage" in keep.why and keep.next


def kept_of_all(old: bytes, donor: bytes, *twins: bytes) -> bytes:
    """The donor's image with everything put in that was found."""
    return keep_into(image_of(donor), image_of(old), found(old, donor, *twins)).data


@pytest.mark.behaviour
@pytest.mark.parametrize("donor", ["its own", "erased", "zeros"])
def test_what_differs_beside_a_find_is_listed_too(donor):
    """Packed records: no byte of the old settings is lost when all that is listed is kept."""
    chance = random.Random(11)
    records = (
        (b"SN:K4410023\0", b"SN:K4410099\0"),
        (bytes.fromhex(MINE), bytes.fromhex(THEIRS)),
        (b"mac=02:5A:C3:10:41:17\0", b"mac=02:5A:C3:10:41:62\0"),
    )
    for _ in range(4):
        own, theirs = {}, {}
        for at in range(64, 64 + 512 * chance.randrange(1, 5), 512):
            mine, other = chance.choice(records)
            tail = chance.randrange(1, 40)
            own[at] = mine + bytes(chance.choices(range(1, 255), k=tail))
            theirs[at] = other + bytes(chance.choices(range(1, 255), k=tail))
        old = board(own)
        boards = {"its own": board(theirs), "erased": board({}), "zeros": board({}, blank=0)}
        made = kept_of_all(old, boards[donor])
        for at, data in own.items():
            assert made[CODE + at : CODE + at + len(data)] == data, found(old, boards[donor])
        assert REGION in {keep.kind for keep in found(old, boards[donor])}


@pytest.mark.behaviour
def test_settings_of_ones_against_settings_of_zeros_are_looked_at_one_by_one():
    own = {64: bytes.fromhex("001DC3104117"), 256: b"\xbd\x03" * 12, 512: b"SN:K4410023\0"}
    told = {(keep.kind, keep.where[0] - CODE) for keep in found(board(own), board({}, blank=0))}
    assert {(ADDRESS, 64), (SERIAL, 515)} < told
    assert any(kind == REGION and first == 256 for kind, first in told)


@pytest.mark.behaviour
def test_a_long_block_of_its_own_is_listed_around_what_is_found_in_it():
    program = code(1, 4 * CODE)
    chance = random.Random(4)
    old, donor = (
        program + chance.randbytes(6000) + f"serial=K4-20{at}\0".encode() + chance.randbytes(3000)
        for at in (117, 162)
    )
    kinds = {keep.kind for keep in found(old, donor)}
    assert kinds == {SERIAL, REGION} and kept_of_all(old, donor) == old
    erased = program + b"\xff" * len(old[4 * CODE :])
    assert not found(erased, donor)


@pytest.mark.behaviour
def test_every_small_field_is_listed():
    chance = random.Random(5)
    old, donor = (board({100 * at: chance.randbytes(3) for at in range(1, 31)}) for _ in range(2))
    assert kept_of_all(old, donor) == old


@pytest.mark.behaviour
def test_a_label_that_twins_have_too_is_listed_beside_its_number():
    old, twin = board({64: b"SN:K4410023\0"}), board({64: b"SN:K4410099\0"})
    assert kept_of_all(old, board({}), twin)[CODE + 64 : CODE + 75] == b"SN:K4410023"


@pytest.mark.behaviour
@pytest.mark.parametrize("last", ["62", "18", "00"])
@pytest.mark.parametrize("packed", [b"", b"\xf3\x01", bytes.fromhex("f5b165224a58b791df6af1d8")])
def test_another_address_of_the_same_maker_at_the_same_place_is_likely(last, packed):
    old = board({64: bytes.fromhex("001DC3104117") + packed})
    donor = board({64: bytes.fromhex("001DC31041" + last) + packed[::-1]})
    [address] = [keep for keep in found(old, donor) if keep.kind == ADDRESS]
    assert (address.where, address.sure) == ((CODE + 64, CODE + 70), "likely")
    assert address.value == "00:1D:C3:10:41:17"
    assert kept_of_all(old, donor) == old


@pytest.mark.behaviour
def test_numbers_that_count_up_in_data_are_no_row_of_addresses():
    """Long data where the other board has nothing, or other data, with one number after another."""
    counted_up = b"".join(
        bytes.fromhex("008CCEF1F107")[:5] + bytes([at]) + b"\x55\x03" for at in range(7, 40)
    )
    other = bytes(byte ^ 0x5A for byte in counted_up)
    for donor in (board({}), board({512: other})):
        assert not [keep for keep in found(board({512: counted_up}), donor) if keep.sure in SURE]


@pytest.mark.behaviour
def test_a_number_in_hex_against_another_one_is_likely():
    for mine, theirs in (("3A7F00B2C4D1", "00417C3309EE"), ("00c4410723ab", "00c44107ff01")):
        [keep] = found(*(board({80: number.encode() + b"\0"}) for number in (mine, theirs)))
        assert (keep.kind, keep.value, keep.sure) == (SERIAL, mine, "likely")


@pytest.mark.behaviour
def test_what_is_kept_goes_into_a_new_image():
    old, donor = (board({64: f"serial={one}\0".encode()}) for one in ("K4-20117", "K4-20162"))
    keeps = found(old, donor)
    images = image_of(donor, "donor"), image_of(old, "old")
    made = keep_into(*images, keeps)
    assert made.data == old and made.name == "donor with what was kept of old"
    assert (images[0].data, images[1].data) == (donor, old)
    with pytest.raises(RepairlibError, match="equally long"):
        keep_into(image_of(donor[:-1]), images[1], keeps)
    with pytest.raises(RepairlibError, match="no such place"):
        keep_into(*images, [keeps[0]._replace(where=(0, len(old) + 1))])


@pytest.mark.behaviour
@pytest.mark.parametrize("order", ["big", "little"])
@pytest.mark.parametrize("end", [0x400, 0x1000])
def test_a_check_sum_that_no_longer_fits_is_told(order, end):
    def own(number):
        record = f"serial={number}\0".encode().ljust(end - 4, b"\x31")
        return {0: record + zlib.crc32(record).to_bytes(4, order)}

    old, donor = board(own("K4-20117")), board(own("K4-20162"))
    keeps = [keep for keep in found(old, donor) if keep.kind == SERIAL]
    made = keep_into(image_of(donor, "donor"), image_of(old), keeps)
    told = sums_in_doubt(image_of(donor, "donor"), made, keeps)
    assert any(f"CRC-32 at 0x{CODE + end - 4:06X}" in one for one in told)
    due = zlib.crc32(made.data[CODE : CODE + end - 4]).to_bytes(4, order).hex().upper()
    assert any(due in one for one in told)
    assert len(sums_in_doubt(image_of(donor), image_of(donor), keeps)) == 1


@pytest.mark.behaviour
def test_any_images_give_a_list():
    """Mutated settings, cut images, images of any size: lists, and no strange exception."""
    chance = random.Random(20261129)
    text = b"serial=K4-20117\0MAC=\x02\x5a\xc3\x10\x41\x17\xff\xff02:5A:C3:10:41:17\0"
    whole = (
        text
        + b"\xff" * 40
        + "S/N K4-20117".encode("utf-16-le")
        + struct.pack("<16H", *range(900, 916))
    )
    for _ in range(100_000 if os.environ.get("FIRMWARE") == "all" else 150):
        images = []
        for _ in range(chance.choice((2, 2, 3))):
            made = bytearray(whole)
            for _ in range(chance.randrange(6)):
                at = chance.randrange(len(made))
                made[at : at + chance.randrange(9)] = chance.randbytes(chance.randrange(1, 9))
            images.append(image_of(bytes(made[: chance.choice((1, 7, 60, 999))])))
        old, donor, *twins = images
        for keep in keep_list(old, donor, twins):
            first, end = keep.where
            assert (
                0 <= first < end <= old.size and keep.kind in KEEP_KINDS and keep.sure in HOW_SURE
            )
            assert old.data[first:end] != donor.data[first:end]
            str(keep).encode()
        assert check_read_back(old, donor, twins[0] if twins else None).why
        try:
            sectors_that_differ(old, donor, chance.choice((1, 16, 4096)))
            made = keep_into(donor, old, keep_list(old, donor))
            assert sums_in_doubt(donor, made, keep_list(old, donor))
        except RepairlibError as error:
            assert old.size != donor.size and "\n" not in str(error)
