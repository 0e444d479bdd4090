"""Identity bytes: maker and capacity, each fact under its source."""

import os
import random

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.firmware import capacity_in_words, flash_identity, identity_of
from tests.documents import document

KIB, MIB = 1 << 10, 1 << 20


def capacity(typed):
    return identity_of(typed).capacity


@pytest.mark.published(document("JEP106AM", "seven bits and odd parity, 7F leads to the next bank"))
def test_codes_have_odd_parity_and_7f_leads_on():
    with pytest.raises(RepairlibError, match="even number of ones"):
        identity_of("E7 40 17")
    assert identity_of("7F 9D 46").bank == 2
    assert identity_of("7F 7F 7F 7F 1C 30 16").bank == 5
    for code in (0xEF, 0x20, 0x1F, 0xC2, 0xC8, 0x9D, 0xBF, 0x01, 0x1C, 0x0B, 0x68):
        assert identity_of(bytes([code, 0x40, 0x16])).makers


@pytest.mark.published(document("JEP106, listed", "names by code; 17 banks"))
def test_codes_of_makers_in_their_bank():
    listed = {"C2 20 17": "Macronix", "62 16 12": "Sanyo", "1F 25 00": "Atmel"}
    listed |= {"20 20 17": "ST", "BF 25 41": "SST", "2C 5B 1A": "Micron", "34 2A 1A": "Cypress"}
    listed |= {"7F 9D 46": "ISSI", "7F 1C 30 16": "Eon", "89 89 16": "Intel"}
    for typed, maker in listed.items():
        first = identity_of(typed).makers[0]
        assert first.name.startswith(maker) and not first.doubt
    identity_of("7F" * 16 + "C2 20 15")
    with pytest.raises(RepairlibError, match="17 banks"):
        identity_of("7F" * 17 + "C2 20 15")


@pytest.mark.published(document("JEP106, listed", "9D, C8, 1C, 0B, 68 of bank 1 are others'"))
def test_a_code_used_without_its_bank_is_in_doubt():
    used = {"9D 60 17": "ISSI", "C8 40 16": "GigaDevice", "1C 30 16": "Eon"}
    assert identity_of("01 40 17").makers[0].name.startswith("Spansion")
    for typed, maker in (used | {"0B 65 1A": "XTX", "68 49 19": "Boya"}).items():
        one = identity_of(typed)
        assert one.makers[0].name.startswith(maker)
        assert "JEP106 gives this code to somebody else" in one.makers[0].doubt
        assert str(one.makers[0]).endswith("?")


@pytest.mark.from_memory("other makers whose chips answer 20h, 37h, 85h, 8Ch, A1h")
def test_further_makers():
    assert [one.name for one in identity_of("20 70 17").makers] == ["ST, Numonyx, Micron", "XMC"]
    seen = {"37 30 16": "AMIC", "85 60 17": "Puya"}
    for typed, maker in (seen | {"8C 20 16": "ESMT", "A1 40 17": "Fudan"}).items():
        assert identity_of(typed).makers[0].name.startswith(maker)


@pytest.mark.published(document("W25Q128FV", "9Fh gives EFh, the type, the capacity"))
def test_what_9f_gives():
    assert identity_of("EF 40 18").makers[0].name == "Winbond"


@pytest.mark.published(document("W25Q16V", "EFh; 14h by ABh and 90h, 4015h by 9Fh; 16 Mbit"))
def test_what_the_older_commands_give():
    assert capacity("EF 40 15") == 2097152
    with pytest.raises(RepairlibError, match=r"14h there is 15h here, 2 MiB \(16 Mbit\)"):
        identity_of("EF 14")


@pytest.mark.published(document("N25Q256A", "20 BA 19 is 256 Mbit, then a unique id"))
def test_a_chip_of_256_mbit_and_what_follows():
    one = identity_of("20 BA 19 10 00 00")
    assert one.capacity == 32 * MIB
    assert one.id[3:] == b"\x10\x00\x00"


@pytest.mark.published(document("serial flash in Linux", "ids and sizes of parts"))
def test_sizes_of_parts():
    plain = {
        **{"20 20 10": 64 * KIB, "20 20 11": 128 * KIB, "20 20 12": 262144, "20 20 17": 8388608},
        **{"20 20 18": 16777216, "20 BA 16": 4194304, "20 BA 18": 16777216, "20 BB 15": 2 * MIB},
        **{"EF 30 13": 512 * KIB, "EF 40 14": 1048576, "EF 40 16": 4194304, "EF 40 17": 8388608},
        **{"EF 40 15": 2097152, "EF 60 18": 16 * MIB, "EF 70 17": 8 * MIB, "EF 80 19": 32 * MIB},
        **{"C2 20 15": 2097152, "C2 20 17": 8388608, "C2 28 16": 4 * MIB, "C2 20 10": 64 * KIB},
        **{"C8 40 16": 4194304, "C8 60 17": 8 * MIB, "C8 40 19": 32 * MIB, "9D 60 18": 16 * MIB},
        **{"9D 70 19": 32 * MIB, "9D 40 13": 512 * KIB, "1C 30 14": MIB, "1C 70 18": 16 * MIB},
        **{"01 40 17": 8 * MIB, "01 60 19": 32 * MIB, "01 20 18": 16 * MIB, "68 49 19": 32 * MIB},
        **{
            "62 16 12": 256 * KIB,
        },
    }
    above_19h = {
        **{
            "C2 20 1A": 64 * MIB,
            "C2 20 1B": 128 * MIB,
            "2C 5B 1A": 64 * MIB,
            "2C 5B 1C": 256 * MIB,
        },
        **{"0B 65 1A": 64 * MIB, "0B 65 1B": 128 * MIB, "34 2A 1A": 64 * MIB},
        **{"20 BA 20": 64 * MIB, "20 BA 21": 134217728, "20 BB 22": 256 * MIB},
        **{"EF 40 20": 64 * MIB, "01 02 20": 64 * MIB},
    }
    exceptions = {
        **{"01 02 12": 512 * KIB, "01 02 13": MIB, "01 02 14": 2 * MIB, "01 02 15": 4 * MIB},
        **{"01 02 16": 8 * MIB, "01 02 19": 32 * MIB, "EF 71 19": 64 * MIB},
        **{"C2 25 32": 256 * KIB, "C2 25 36": 4 * MIB, "C2 25 38": 16 * MIB, "C2 25 3A": 64 * MIB},
        **{"BF 25 01": 64 * KIB, "BF 25 05": MIB, "BF 25 4A": 4 * MIB, "BF 25 4B": 8 * MIB},
        **{"BF 25 8D": 512 * KIB, "BF 25 8E": MIB, "BF 26 41": 2 * MIB, "BF 26 43": 8 * MIB},
        **{"BF 26 42": 4 * MIB, "BF 26 51": 2 * MIB, "7F 9D 46": 4 * MIB, "7F 9D 20": 64 * KIB},
        **{"1F 04 00": 512 * KIB, "1F 44 01": 512 * KIB, "1F 45 01": MIB, "1F 46 01": 2 * MIB},
        **{"1F 47 08": 4 * MIB, "1F 48 00": 8 * MIB, "1F 87 01": 4 * MIB, "1F 42 16": 4 * MIB},
        **{"1F 66 01": 128 * KIB, "1F 66 04": 512 * KIB},
    }
    for typed, size in (plain | above_19h | exceptions).items():
        assert capacity(typed) == size, typed


@pytest.mark.published(document("AT45DB081D", "25h: density code 00101 is 8 Mbit"))
def test_density_bits_of_8_mbit():
    assert capacity("1F 25 00") == 1048576


@pytest.mark.published(document("AT45DB041D", "24h: density code 00100 is 4 Mbit"))
def test_density_bits_of_4_mbit():
    one = identity_of("1F 24 00 00")
    assert one.capacity == 524288
    assert "264" in one.doubts[-1]


@pytest.mark.published(document("SST25VF016B", "BF 25 41, 16 Mbit"))
def test_sst_numbers_its_parts():
    assert capacity("BF 25 41") == 2097152
    assert capacity("BF 25 16") is None


@pytest.mark.from_memory("BF 26 54 and 58; 9D with 42h to 47h; EF 40 21 and 22, C8 40 20")
def test_sizes_from_memory():
    assert (capacity("BF 26 54"), capacity("BF 26 58"), capacity("9D 13 44")) == (
        512 * KIB,
        MIB,
        MIB,
    )
    for typed, size in {"EF 40 21": 128 * MIB, "EF 70 22": 256 * MIB, "C8 40 20": 64 * MIB}.items():
        one = identity_of(typed)
        assert one.capacity == size and one.source == "from memory"
        assert any("read its SFDP" in doubt for doubt in one.doubts)


@pytest.mark.behaviour
def test_what_cannot_be_told_is_not_guessed():
    for typed in (
        "20 BA 1A",
        "20 BA 23",
        "EF 40 00",
        "EF FF FF",
        "1F 5F 00",
        "7F 9D 99",
        "C2 20 2F",
    ):
        one = identity_of(typed)
        assert one.capacity is None and one.doubts
        assert flash_identity(typed).capacity == "cannot tell"
    assert any("reverse order it is C2 20 15" in one for one in identity_of("15 20 C2").doubts)
    unknown = identity_of("5E 40 18")
    assert unknown.capacity == 16 * MIB and not unknown.makers
    assert any("Most makers count so" in doubt for doubt in unknown.doubts)


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("FF FF FF", "no chip answers: the data line stays high"),
        ("000000", "no chip answers: the data line stays low"),
        ("7F 7F 7F", "only 7F"),
        ("7F" * 60 + "EF 40 17", "17 banks"),
        ("7F " * 10_000, "more than 64 bytes"),
        ("E7 40 17", "one bit away: EFh Winbond"),
        ("FF EF 40 17", "EF 40 17, without the byte that came before the answer"),
        ("EF 40", "two bytes are what 90h and ABh give"),
        ("17 40 EF", "In reverse order it is EF 40 17, Winbond"),
        ("EF", "too few bytes"),
        ("", "no byte is given"),
        ("EF 40 1", "odd number of digits"),
        ("W25Q64", "not a byte in hex"),
        ("٤F 40 17", "not a byte in hex"),
        (b"", "no byte is given"),
        (None, "neither text nor bytes"),
    ],
)
def test_what_is_refused_says_what_to_check(typed, said):
    with pytest.raises(RepairlibError) as refused:
        identity_of(typed)
    assert said in str(refused.value) and "\n" not in str(refused.value)


@pytest.mark.behaviour
@pytest.mark.parametrize(
    "typed", ["ef4017", "0xEF 0x40 0x17", "EFh 40h 17h", "ef:40:17", "EF-40-17", "$EF,$40,$17"]
)
def test_bytes_as_people_type_them(typed):
    assert identity_of(typed) == identity_of(b"\xef\x40\x17")


@pytest.mark.behaviour
def test_large_chips_need_four_address_bytes():
    assert any("16 MiB again" in note for note in flash_identity("EF 40 19").notes)
    assert not any("16 MiB again" in note for note in flash_identity("EF 40 18").notes)
    assert capacity_in_words(134217728) == "128 MiB (1 Gbit)"


@pytest.mark.behaviour
def test_mutated_identities_raise_nothing_foreign():
    chance = random.Random(7)
    count = 100_000 if os.environ.get("FIRMWARE") == "all" else 2_000
    known = [bytes.fromhex(one) for one in ("EF4017", "1F2500", "BF2641", "7F9D46", "20BA21")]
    answered = 0
    for _ in range(count):
        data = bytearray(chance.choice(known) * chance.randint(1, 3))
        for _ in range(chance.randint(0, 4)):
            data[chance.randrange(len(data))] = chance.choice(
                (0, 0x7F, 0xFF, chance.randrange(256))
            )
        data = chance.randint(0, 20) * b"\x7f" * chance.randint(0, 1) + bytes(data)
        typed = bytes(data) if chance.random() < 0.5 else data.hex(chance.choice(" :-"))
        if isinstance(typed, str) and chance.random() < 0.3:
            at = chance.randrange(len(typed))
            typed = typed[:at] + chr(chance.randrange(0x3000)) + typed[at + 1 :]
        try:
            one = identity_of(typed)
        except RepairlibError:
            continue
        answered += 1
        assert one.capacity is None or 2**15 < one.capacity < 2**33
    assert answered > count / 20


@pytest.mark.published(document("serial flash in Linux", "898911: 32 × 64 KiB, 898912, 898913"))
def test_a_type_of_intel_counts_four_lower():
    sizes = [identity_of(f"89 89 {last}").capacity for last in ("11", "12", "13")]
    assert sizes == [2 << 20, 4 << 20, 8 << 20]
    assert identity_of("89 89 16").capacity is None


@pytest.mark.from_memory("an old 512 Kbit chip of Atmel answers 1F 65 00")
def test_types_of_atmel_that_have_no_density_bits():
    assert identity_of("1F 65 00").capacity == 64 << 10
    other = identity_of("1F 68 00")
    assert other.capacity is None and any("one by one" in doubt for doubt in other.doubts)
