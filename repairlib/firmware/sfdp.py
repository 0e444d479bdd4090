"""SFDP: the tables in which a serial flash describes itself, as JESD216 lays them out.

They are read with the command 5Ah, three address bytes and eight dummy clocks. All numbers stand
low byte first; a DWORD is four bytes. Lengths and pointers may lie, in a worn chip or a bad read:
nothing is read beyond the dump, and whatever does not fit is said.
"""

from __future__ import annotations

from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.firmware.bytes_as_typed import in_hex
from repairlib.firmware.identity import makers_of

SIGNATURE = b"SFDP"
BASIC = 0xFF00
TABLES = {
    BASIC: "basic table",
    0xFF81: "sector map",
    0xFF84: "four-byte instructions",
    0xFF05: "eight lines, profile 1",
    0xFF06: "eight lines, profile 2",
}
ISSUES = {0: "JESD216", 5: "JESD216A", 6: "JESD216B", 8: "JESD216D"}  # by minor revision
SHORTEST = 9  # DWORDs of the basic table in the first issue
_WHOLE = "a dump read with 5Ah from address 0, at least 256 bytes"
_AGAIN = "read again, slower, with clean contacts; " + _WHOLE
_DENSITY = "a DWORD such as 07FFFFFF, or as read, low byte first: FF FF FF 07"
_BLANK = b"\xff" * 8
_FIRST_TABLE = 16  # the address behind the first header: how many follow may be a lie
_SAID = 8  # doubts about tables that are told one by one


class Header(NamedTuple):
    """A parameter header: which table, its revision, its DWORDs, where it stands (an address)."""

    id: int
    revision: tuple[int, int]
    dwords: int
    pointer: int

    @property
    def name(self) -> str:
        """What the table is; a maker's own where the id is not one of JEDEC's."""
        if self.id in TABLES:
            return TABLES[self.id]
        makers = makers_of(self.id & 0xFF)
        of = f"{makers[0].name}, " if makers else ""
        return f"a maker's own table ({of}id {self.id:04X}h)"

    @property
    def end(self) -> int:
        """The address behind the table."""
        return self.pointer + 4 * self.dwords


class Erase(NamedTuple):
    """What one erase command clears: `size` in bytes, and its opcode."""

    size: int
    opcode: int


class FastRead(NamedTuple):
    """A way to read: lines for command, address and data, such as "1-1-4", its opcode and clocks.

    Between address and data come `mode_clocks` and then `dummy_clocks`.
    """

    lines: str
    opcode: int
    dummy_clocks: int
    mode_clocks: int


class FirstDword(NamedTuple):
    """What DWORD 1 of the basic table says.

    `erase_4k` is the opcode that erases 4 KiB, None where there is none. `address_bytes` is "3",
    "3 or 4" or "4", empty where the value is reserved. `fast_reads` are the lines of those it has.
    """

    erase_4k: int | None
    address_bytes: str
    double_rate: bool
    fast_reads: tuple[str, ...]


class Basic(NamedTuple):
    """The basic table. `density` is in bytes, None where it makes no sense; `page` in bytes too,
    None where the table is of the first issue, which has no page size.
    """

    revision: tuple[int, int]
    dwords: int
    density: int | None
    page: int | None
    erase_4k: int | None
    erases: tuple[Erase, ...]
    address_bytes: str
    fast_reads: tuple[FastRead, ...]


class Sfdp(NamedTuple):
    """What a dump says: revision (major, minor), every header, the basic table, what is odd."""

    revision: tuple[int, int]
    headers: tuple[Header, ...]
    basic: Basic | None
    doubts: tuple[str, ...]


def read_sfdp(data: bytes) -> Sfdp:
    """The tables of a dump. `basic` is None where the dump has none that can be read.

    Raises RepairlibError for a dump without the signature and for one cut short in its headers.
    Everything else that lies or does not fit is in `doubts`.
    """
    revision, count = header_of(data[:8], data)
    there = min(count, (len(data) - 8) // 8)
    if there < 1:
        wrong = f"cut short: {len(data)} bytes end before the first parameter header does"
        raise RepairlibError(in_hex(data[:8]), wrong, _WHOLE)
    pieces = [bytes(data[8 + 8 * n : 16 + 8 * n]) for n in range(there)]
    written = [piece for piece in pieces if piece != _BLANK]
    headers = tuple(map(_header, written))
    doubts = []
    if revision[0] != 1:
        doubts.append(f"Major revision {revision[0]} is not known here, and is read as 1.")
    if data[7] != 0xFF:
        doubts.append(f"Access protocol {data[7]:02X}h: not one line each as on older chips.")
    if there < count:
        doubts.append(f"{count} headers are declared, and the dump ends after {there}.")
    if len(written) < there:
        doubts.append(f"{there - len(written)} of {there} headers are blank, all FF.")
    doubts += _misfits(headers, 8 + 8 * count, len(data))
    basic, about_basic = _basic_of(headers, data)
    return Sfdp(revision, headers, basic, (*about_basic, *doubts))


def header_of(data: bytes, whole: bytes = b"") -> tuple[tuple[int, int], int]:
    """Revision (major, minor) and number of parameter headers that the first eight bytes say.

    `whole` is the dump, if there is one, to say where the signature stands instead. Raises
    RepairlibError for other than eight bytes and without the signature.

    >>> header_of(bytes.fromhex("53464450060102FF"))
    ((1, 6), 3)
    """
    data = bytes(data)
    if len(data) < 8:
        read = in_hex(data) if data else "no bytes"
        raise RepairlibError(read, f"cut short: {len(data)} of 8 header bytes", _WHOLE)
    if data[:4] != SIGNATURE:
        wrong, accepted = _without_signature(data, bytes(whole[:4096]))
        raise RepairlibError(in_hex(data[:8]), wrong, accepted)
    return (data[5], data[4]), data[6] + 1


def _without_signature(data: bytes, whole: bytes) -> tuple[str, str]:
    if set(data) == {0xFF}:
        wrong = "all ones: the chip has no SFDP, or does not answer to 5Ah"
        return wrong, "its identity bytes and its data sheet; else " + _AGAIN
    if set(data) == {0x00}:
        return "all zeros: the data line stays low", _AGAIN
    at = whole.find(SIGNATURE)
    if at > 0:
        wrong = f"the signature SFDP stands at 0x{at:06X} and not at 0"
        return wrong, f"the dump without its first {at} bytes; else {_WHOLE}"
    if data[:4] in (SIGNATURE[::-1], b"FSPD"):
        return "the signature SFDP with its bytes swapped", "the dump as it is read, byte by byte"
    return "it does not begin with 53 46 44 50, SFDP", _WHOLE


def parameter_header_of(data: bytes) -> Header:
    """The parameter header in eight bytes.

    Raises RepairlibError for other than eight, for an empty one, for a pointer that is no multiple
    of four and for a table without a DWORD.

    >>> parameter_header_of(bytes.fromhex("00060110300000FF"))
    Header(id=65280, revision=(1, 6), dwords=16, pointer=48)
    """
    data = bytes(data)
    if len(data) != 8:
        wrong = f"{len(data)} bytes, and a parameter header has 8"
        raise RepairlibError(in_hex(data[:9]), wrong, "such as 00 06 01 10 30 00 00 FF")
    if len(set(data)) == 1 and data[0] in (0x00, 0xFF):
        raise RepairlibError(in_hex(data), "no header is written here", _AGAIN)
    header = _header(data)
    if wrong := _wrong_with(header):
        raise RepairlibError(in_hex(data), wrong, _AGAIN)
    return header


def _header(data: bytes) -> Header:
    pointer = int.from_bytes(data[4:7], "little")
    return Header(data[7] << 8 | data[0], (data[2], data[1]), data[3], pointer)


def _wrong_with(header: Header) -> str:
    if header.pointer % 4:
        return f"its pointer 0x{header.pointer:06X} is no multiple of four"
    if header.pointer < _FIRST_TABLE:
        return f"its pointer 0x{header.pointer:06X} leads into the headers"
    return "" if header.dwords else "its table has no DWORD"


def _misfits(headers: tuple[Header, ...], end_of_headers: int, size: int) -> list[str]:
    """What is wrong with where the tables stand: outside, misaligned, empty, one in another."""
    told = []
    for header in headers:
        name = f"{header.name[0].upper()}{header.name[1:]}"
        wrong = _wrong_with(header)
        if not wrong and header.end > size:
            wrong = f"ends at 0x{header.end:06X}, and the dump at 0x{size:06X}"
        if not wrong and header.pointer < end_of_headers:
            wrong = f"begins at 0x{header.pointer:06X}, among the headers"
        told += [f"{name}: {wrong}."] if wrong else []
    placed = sorted((one for one in headers if one.dwords), key=lambda one: one.pointer)
    reaches: Header | None = None
    for header in placed:
        if reaches and header.pointer < reaches.end:
            where = f"at 0x{header.pointer:06X}"
            told.append(f"Two tables overlap {where}: {reaches.name} and {header.name}.")
        if reaches is None or header.end > reaches.end:
            reaches = header
    more = len(told) - _SAID
    return told[:_SAID] + ([f"And {more} more of the kind."] if more > 0 else [])


def _basic_of(headers: tuple[Header, ...], data: bytes) -> tuple[Basic | None, list[str]]:
    """The newest basic table that can be read, and what is odd about it."""
    known = sorted((one for one in headers if one.id == BASIC), key=lambda one: one.revision)
    if not known:
        return None, ["No header of a basic table (FF00h): every chip has one, so read again."]
    for header in reversed(known):
        words = min(header.dwords, (len(data) - header.pointer) // 4)
        if header.pointer % 4 == 0 and header.pointer >= _FIRST_TABLE and words >= SHORTEST:
            table = data[header.pointer : header.pointer + 4 * words]
            return _basic(header, table)
    least = f"{SHORTEST} DWORDs"
    return None, [f"The basic table cannot be read: {least} must stand where its header points."]


def _basic(header: Header, table: bytes) -> tuple[Basic, list[str]]:
    words = [int.from_bytes(table[n : n + 4], "little") for n in range(0, len(table) - 3, 4)]
    doubts = []
    if len(words) < header.dwords:
        cut = f"{len(words)} of {header.dwords} DWORDs of the basic table are in the dump"
        doubts.append(f"{cut}: cut short, or the length lies.")
    first = first_dword_of(words[0])
    density: int | None = None
    try:
        density = density_of(words[1]) // 8
    except RepairlibError as error:
        doubts.append(f"Density DWORD {words[1]:08X}h: {error.wrong}.")
    erases, odd = _erase_pairs(table[28:36])
    doubts += odd
    page = 1 << (words[10] >> 4 & 0xF) if len(words) > 10 else None
    if page is not None and page < 8:
        doubts.append(f"A page of {page} byte is hardly right.")
    if not first.address_bytes:
        doubts.append("The number of address bytes is a reserved value.")
    if density and density > 1 << 24 and first.address_bytes == "3":
        doubts.append("It holds more than three address bytes reach, and says that it takes three.")
    if density:
        doubts += [
            f"Erase {one.opcode:02X}h clears more than the chip holds."
            for one in erases
            if one.size > density
        ]
    if first.erase_4k is not None and erases and all(one.size != 4096 for one in erases):
        doubts.append("DWORD 1 names an erase of 4 KiB, and the list of erases has none.")
    reads = _fast_reads(words, first.fast_reads)
    return Basic(
        header.revision, len(words), density, page, first.erase_4k, erases,
        first.address_bytes, reads,
    ), doubts  # fmt: skip


def first_dword_of(word: int) -> FirstDword:
    """What DWORD 1 of the basic table says, as a number.

    >>> first_dword_of(0xFFF120E5)[:2]
    (32, '3')
    """
    opcode = word >> 8 & 0xFF
    lines = tuple(name for name, (at, bit, _, _) in _READS.items() if at == 0 and word >> bit & 1)
    return FirstDword(
        opcode if word & 3 == 1 else None,
        ("3", "3 or 4", "4", "")[word >> 17 & 3],
        bool(word >> 19 & 1),
        lines,
    )


def density_of(word: int) -> int:
    """The bits that the density DWORD says: one more than its value, or 2^N with bit 31 set.

    Raises RepairlibError for what is no whole number of bytes or more than 2^63 bits.

    >>> density_of(0x07FFFFFF), density_of(0x80000020)
    (134217728, 4294967296)
    """
    read = f"{word:08X}h" if 0 <= word < 1 << 32 else word
    if not 0 <= word < 1 << 32:
        raise RepairlibError(read, "no DWORD: four bytes are due", _DENSITY)
    if word in (0, 0xFFFFFFFF):
        raise RepairlibError(read, "nothing is written here", _AGAIN)
    if word >> 31:
        power = word & 0x7FFFFFFF
        if not 3 <= power <= 63:
            wrong = f"bit 31 is set, and 2^{power} bits is the size of no chip"
            raise RepairlibError(
                read, wrong, "such as 80000020; low byte first as read: 20 00 00 80"
            )
        return 1 << power
    if (word + 1) % 8:
        wrong = f"{word + 1:,} bits are no whole number of bytes"
        raise RepairlibError(read, wrong, _DENSITY)
    return word + 1


def erases_of(data: bytes) -> tuple[Erase, ...]:
    """The erases that pairs of (size, opcode) say, as read; unused ones, of size 0, are left out.

    Raises RepairlibError for an odd number of bytes, for more than four pairs and for a size that
    no erase has.

    >>> erases_of(bytes.fromhex("0C200F5210D800FF"))
    (Erase(size=4096, opcode=32), Erase(size=32768, opcode=82), Erase(size=65536, opcode=216))
    """
    data = bytes(data)
    if not data or len(data) % 2 or len(data) > 8:
        wrong = f"{len(data)} bytes: pairs of size and opcode are due, at most four"
        raise RepairlibError(in_hex(data[:9]), wrong, "such as 0C 20 0F 52 10 D8 00 FF")
    erases, odd = _erase_pairs(data)
    if odd:
        raise RepairlibError(in_hex(data), odd[0], _AGAIN)
    return erases


def _erase_pairs(data: bytes) -> tuple[tuple[Erase, ...], list[str]]:
    erases, odd = [], []
    for size, opcode in zip(data[::2], data[1::2], strict=True):
        if size > 31:
            odd.append(f"Erase {opcode:02X}h of 2^{size} byte is the size of no erase.")
        elif size:
            erases.append(Erase(1 << size, opcode))
    return tuple(erases), odd


# Lines: DWORD (from 0) and bit that say it is there; DWORD and shift of clocks and opcode.
_READS = {
    "1-1-2": (0, 16, 3, 0),
    "1-2-2": (0, 20, 3, 16),
    "1-1-4": (0, 22, 2, 16),
    "1-4-4": (0, 21, 2, 0),
    "2-2-2": (4, 0, 5, 16),
    "4-4-4": (4, 4, 6, 16),
}


def _fast_reads(words: list[int], of_first: tuple[str, ...]) -> tuple[FastRead, ...]:
    reads = []
    for lines, (at, bit, settings, shift) in _READS.items():
        if lines in of_first or (at and words[at] >> bit & 1):
            half = words[settings] >> shift & 0xFFFF
            reads.append(FastRead(lines, half >> 8, half & 0x1F, half >> 5 & 7))
    return tuple(reads)
