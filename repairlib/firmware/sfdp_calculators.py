"""Calculators for the pieces of an SFDP dump, and for the whole of it."""

from __future__ import annotations

from collections.abc import Callable
from typing import Annotated

from repairlib.core.calculator import Found, Text, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.plain_file import size_in_words
from repairlib.core.wording import counted
from repairlib.firmware.bytes_as_typed import in_hex, typed_bytes
from repairlib.firmware.identity import capacity_in_words
from repairlib.firmware.sfdp import (
    ISSUES,
    Erase,
    FastRead,
    Sfdp,
    density_of,
    erases_of,
    first_dword_of,
    header_of,
    parameter_header_of,
    read_sfdp,
)

LARGEST_DUMP = 64 << 10  # bytes: sixteen times the 2 to 4 KiB that chips have
_LOW_FIRST = "Read low byte first, as the bytes come from the chip."
_AS_NUMBER = "Read as a number, high byte first."
_DWORD = "four bytes as read, such as E5 20 F1 FF, or a number, FFF120E5"


@calculator(topic="firmware", title="SFDP header", sources=("SST26VF032B", "TN1355", "N25Q256A"))
def sfdp_header(
    header: Annotated[str, Text("The first eight bytes, such as 53 46 44 50 06 01 02 FF.")],
) -> Found:
    """Revision and number of parameter headers in the first eight bytes of an SFDP dump.

    Raises RepairlibError for other than eight bytes and without the signature. Sources: SST26VF032B
    Table 11-1; TN1355 Table 2.

    >>> sfdp_header("53 46 44 50 00 01 00 FF").headers
    1
    """
    data = typed_bytes(header, 8, "the eight bytes 53 46 44 50 and four more")
    revision, count = header_of(data)
    issue = ISSUES.get(revision[1], "an issue not known here") if revision[0] == 1 else ""
    steps = [
        f"{in_hex(data[:4])} is SFDP",
        f"minor {data[4]:02X}h, major {data[5]:02X}h: {_dotted(revision)}, {issue}".rstrip(", "),
        f"{data[6]:02X}h and one more: {counted(count, 'parameter header')}, of 8 bytes each",
    ]
    notes = [] if revision[0] == 1 else [f"Major revision {revision[0]} is not known here."]
    notes.append("Read with 5Ah, three address bytes and eight dummy clocks, on any such chip.")
    return found({"revision": _dotted(revision), "headers": count}, working=steps, notes=notes)


@calculator(topic="firmware", title="SFDP parameter header", sources=("SST26VF032B",))
def sfdp_parameter_header(
    header: Annotated[str, Text("Its eight bytes, such as 00 06 01 10 30 00 00 FF.")],
) -> Found:
    """Which table a parameter header points to: id, revision, DWORDs, address.

    Raises RepairlibError for other than eight bytes, a pointer that is no multiple of four and a
    table of no length. Source: SST26VF032B Table 11-1.

    >>> one = sfdp_parameter_header("00 00 01 09 80 00 00 FF")
    >>> one.id, one.dwords, one.pointer
    ('FF00h', 9, '0x000080')
    """
    one = parameter_header_of(typed_bytes(header, 8, "the eight bytes of a parameter header"))
    values = {
        "table": one.name,
        "id": f"{one.id:04X}h",
        "revision": _dotted(one.revision),
        "dwords": one.dwords,
        "pointer": f"0x{one.pointer:06X}",
    }
    step = f"{one.dwords} DWORDs of 4 bytes from 0x{one.pointer:06X} end before 0x{one.end:06X}"
    return found(values, working=[step])


@calculator(
    topic="firmware", title="SFDP density", sources=("JESD216 in Linux", "JESD216 in Zephyr")
)
def sfdp_density(
    dword: Annotated[str, Text("The second DWORD, such as 07FFFFFF, or as read, FF FF FF 07.")],
) -> Found:
    """The capacity that the density DWORD says, in bits and bytes.

    Four bytes apart are taken as read, low byte first, eight digits together as a number; where
    one of the two is the size of no chip, the other is taken and said. Raises RepairlibError where
    both are. Sources: the drivers of two systems, after JESD216.

    >>> sfdp_density("07FFFFFF").bytes, sfdp_density("FF FF FF 07").capacity
    (16777216, '16 MiB (128 Mbit)')
    """
    word, how = _dword(dword, density_of)
    bits = density_of(word)
    if word >> 31:
        step = f"{word:08X}h: bit 31 is set, so 2^{word & 0x7FFFFFFF} = {bits:,} bit"
    else:
        step = f"{word:08X}h: bit 31 is clear, so one more than {word:,} = {bits:,} bit"
    values = {"capacity": capacity_in_words(bits // 8), "bits": bits, "bytes": bits // 8}
    return found(values, working=[step], notes=[how])


@calculator(topic="firmware", title="SFDP erase types", sources=("SST26VF032B", "JESD216 in Linux"))
def sfdp_erase_types(
    pairs: Annotated[str, Text("Size and opcode, as read, such as 0C 20 0F 52 10 D8 00 FF.")],
) -> Found:
    """What each erase command clears, from DWORDs 8 and 9; pairs of size 0 are unused.

    Raises RepairlibError for an odd number of bytes, more than four pairs and impossible sizes.
    Sources: SST26VF032B Table 11-1; the driver of Linux, after JESD216.

    >>> sfdp_erase_types("0C 20 00 FF").erases
    '4 KiB (4096 byte) by 20h'
    """
    data = typed_bytes(pairs, 8, "up to four pairs, such as 0C 20 0F 52")
    erases = erases_of(data)
    steps = [
        f"{size:02X}h {opcode:02X}h: "
        + (f"2^{size} = {1 << size:,} byte by {opcode:02X}h" if size else "unused")
        for size, opcode in zip(data[::2], data[1::2], strict=True)
    ]
    smallest = {"smallest": size_in_words(min(erases).size)} if erases else {}
    return found({"erases": _erases(erases), **smallest}, working=steps)


@calculator(
    topic="firmware", title="SFDP first DWORD", sources=("JESD216 in Linux", "JESD216 in Zephyr")
)
def sfdp_first_dword(
    dword: Annotated[str, Text("Of the basic table, as read, such as E5 20 F1 FF.")],
) -> Found:
    """Erase of 4 KiB, address bytes and fast reads that DWORD 1 of the basic table says.

    Raises RepairlibError for other than four bytes. Sources: the drivers of two systems, after
    JESD216.

    >>> one = sfdp_first_dword("E5 20 F1 FF")
    >>> one.erase_of_4_KiB, one.opcode, one.address_bytes
    (True, '20h', '3')
    """
    word, how = _dword(dword, _with_ones_on_top)
    odd = [] if word >> 24 == 0xFF else ["Its top byte is not used and should be FF."]
    one = first_dword_of(word)
    values: dict[str, object] = {"erase_of_4_KiB": one.erase_4k is not None}
    if one.erase_4k is not None:
        values["opcode"] = f"{one.erase_4k:02X}h"
    values["address_bytes"] = one.address_bytes or "a reserved value"
    values["fast_reads"] = ", ".join(one.fast_reads) or "none"
    values["double_rate"] = one.double_rate
    steps = [
        f"{word:08X}h",
        f"bits 1 and 0: {word & 3:02b}; 01 is an erase of 4 KiB",
        f"bits 15 to 8: {word >> 8 & 0xFF:02X}h, its opcode",
        f"bits 18 and 17: {word >> 17 & 3:02b}; 00 is 3 address bytes, 01 is 3 or 4, 10 is 4",
        "bits 16, 20, 21, 22: fast reads 1-1-2, 1-2-2, 1-4-4, 1-1-4; bit 19: double rate",
    ]
    return found(values, working=steps, notes=[*odd, how])


@calculator(topic="firmware", title="SFDP dump", sources=("JESD216 in Linux", "JESD216 in Zephyr"))
def sfdp_dump(
    dump: Annotated[str, Text("All bytes in hex, read with 5Ah from address 0.")],
) -> Found:
    """Capacity, page, erases, address bytes and fast reads that an SFDP dump says.

    At most 64 KiB. Raises RepairlibError without the signature, for a dump cut short, and where no
    basic table can be read; what else does not fit is noted. Sources: the drivers of two systems,
    after JESD216.

    >>> headers = "53 46 44 50 00 01 00 FF 00 00 01 09 10 00 00 FF "
    >>> table = "E5 20 F1 FF FF FF FF 03 44 EB 08 6B 08 3B 42 BB EE FF FF FF FF FF 00 00"
    >>> one = sfdp_dump(headers + table + " FF FF 00 00 0C 20 0F 52 10 D8 00 FF")
    >>> one.capacity, one.address_bytes
    ('8 MiB (64 Mbit)', '3')
    """
    return sfdp_found(read_sfdp(typed_bytes(dump, LARGEST_DUMP, "a dump of at most 64 KiB")))


def sfdp_found(sfdp: Sfdp) -> Found:
    """What a dump says, packed up. Raises RepairlibError where it has no readable basic table."""
    basic = sfdp.basic
    if basic is None:
        read = f"SFDP {_dotted(sfdp.revision)}, {counted(len(sfdp.headers), 'header')}"
        raise RepairlibError(read, sfdp.doubts[0], "a dump of 256 bytes or more, read again")
    values: dict[str, object] = {
        "revision": _dotted(sfdp.revision),
        "capacity": capacity_in_words(basic.density) if basic.density else "cannot tell",
    }
    if basic.density:
        values["bytes"] = basic.density
    values["page"] = size_in_words(basic.page) if basic.page else "not told, mostly 256 bytes"
    values["erases"] = _erases(basic.erases)
    values["address_bytes"] = basic.address_bytes or "a reserved value"
    values["fast_reads"] = "; ".join(map(_fast_read, basic.fast_reads)) or "none"
    steps = [
        f"{one.name[0].upper()}{one.name[1:]}: revision {_dotted(one.revision)}, "
        f"{one.dwords} DWORDs from 0x{one.pointer:06X}"
        for one in sfdp.headers[:16]
    ]
    notes = [*sfdp.doubts, "Compare with the identity bytes and with the size of what you read."]
    return found(values, working=steps, notes=notes)


def _dword(typed: str, sensible: Callable[[int], object]) -> tuple[int, str]:
    """A DWORD, and how it was read: low byte first or as a number, whichever makes sense."""
    apart = len(typed.split()) > 1 or any(one in typed for one in ",;:-")
    data = typed_bytes(_with_zeros(typed), 4, _DWORD)
    if len(data) != 4:
        raise RepairlibError(typed, f"{len(data)} bytes, and a DWORD has four", _DWORD)
    readings = [
        (int.from_bytes(data, "little"), _LOW_FIRST),
        (int.from_bytes(data, "big"), _AS_NUMBER),
    ]
    if not apart:
        readings.reverse()
    for word, how in readings:
        try:
            sensible(word)
        except RepairlibError:
            continue
        return word, how
    return readings[0]


def _with_zeros(typed: str) -> str:
    """A number with 0x in front may have lost its leading zeros: 0x7FFFFFF is 07FFFFFF."""
    word = typed.strip()
    is_number = word[:2] in ("0x", "0X") and 2 < len(word) <= 10 and word.isalnum()
    return word[2:].rjust(8, "0") if is_number else typed


def _with_ones_on_top(word: int) -> None:
    """DWORD 1 has ones in its top bits, which are not used: so it can be told from its mirror."""
    if word >> 24 != 0xFF:
        raise RepairlibError(f"{word:08X}h", "the unused top byte is not FF", _DWORD)


def _dotted(revision: tuple[int, int]) -> str:
    return f"{revision[0]}.{revision[1]}"


def _erases(erases: tuple[Erase, ...]) -> str:
    return (
        "; ".join(
            f"{size_in_words(one.size)} ({one.size} byte) by {one.opcode:02X}h" for one in erases
        )
        or "none"
    )


def _fast_read(one: FastRead) -> str:
    clocks = f"{one.mode_clocks} mode and {one.dummy_clocks} dummy clocks"
    return f"{one.lines} by {one.opcode:02X}h, {clocks}"
