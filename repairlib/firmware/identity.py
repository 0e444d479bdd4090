"""Identity bytes of a serial flash: who made it and how much it holds.

A programmer reads them with the command 9Fh: the code of the maker, behind one 7F for each further
bank of JEP106, then a byte for the type and one for the capacity. The capacity byte n mostly means
2^n byte; what differs stands in the functions below, each with where it is from.
"""

from __future__ import annotations

from typing import Annotated, NamedTuple

from repairlib.core.calculator import Found, Text, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.plain_file import size_in_words
from repairlib.core.verdicts import CANNOT_TELL
from repairlib.firmware.bytes_as_typed import in_hex, typed_bytes

CONTINUES = 0x7F  # the next bank of JEP106
BANKS = 17  # as many as the list of JEP106 has
MOST = 64  # bytes that are looked at
_KIB, _MIB = 1 << 10, 1 << 20
_ACCEPTED = "the bytes that 9Fh gives, such as EF 40 17"
_SILENT = (
    "check the supply at the chip, chip select, the clip, and that no reset or deep power-down "
    "holds it; " + _ACCEPTED
)


class Maker(NamedTuple):
    """A maker who uses a code. `doubt` says why it may be another; empty where none is known."""

    name: str
    doubt: str = ""

    def __str__(self) -> str:
        return f"{self.name}?" if self.doubt else self.name


class Identity(NamedTuple):
    """What identity bytes say.

    `id` are the bytes from the maker's code on, `bank` the bank of JEP106 it stands in. `capacity`
    is in bytes, None where nothing known tells; `how` says by which rule. `doubts` are sentences.
    """

    id: bytes
    bank: int
    makers: tuple[Maker, ...]
    capacity: int | None
    how: str
    source: str
    doubts: tuple[str, ...]

    @property
    def kind(self) -> int | None:
        """The byte for the type, None where only one byte follows the code of the maker."""
        return self.id[1] if len(self.id) > 2 else None


_LISTED = "JEP106 gives this code to somebody else: the chips leave the 7F of their bank out"
_USES_IT_TOO = "uses this code as well, without being its owner"
# Code of bank 1: who makes serial flash that answers with it.
_MAKERS = {
    0x01: (Maker("Spansion, Cypress, Infineon"),),
    0x0B: (Maker("XTX", _LISTED),),
    0x1C: (Maker("Eon", _LISTED),),
    0x1F: (Maker("Atmel, Adesto, Renesas"),),
    0x20: (Maker("ST, Numonyx, Micron"), Maker("XMC", _USES_IT_TOO)),
    0x2C: (Maker("Micron"),),
    0x34: (Maker("Cypress, Infineon"),),
    0x37: (Maker("AMIC", _LISTED),),
    0x62: (Maker("Sanyo, ON Semiconductor"),),
    0x68: (Maker("Boya", _LISTED),),
    0x85: (Maker("Puya", _LISTED),),
    0x89: (Maker("Intel, Numonyx"),),
    0x8C: (Maker("ESMT", _LISTED),),
    0x9D: (Maker("ISSI, PMC", _LISTED),),
    0xA1: (Maker("Fudan", _LISTED),),
    0xBF: (Maker("SST, Microchip"),),
    0xC2: (Maker("Macronix"),),
    0xC8: (Maker("GigaDevice", _LISTED),),
    0xEF: (Maker("Winbond"), Maker("Spansion (S25FL…K)", _USES_IT_TOO)),
}
_MAKERS_OF_BANK_2 = {
    0x1C: (Maker("Eon"),),
    0x37: (Maker("AMIC"),),
    0x9D: (Maker("ISSI, PMC"),),
}
_COUNTED_ON = {0x20: 64 * _MIB, 0x21: 128 * _MIB, 0x22: 256 * _MIB}
_SST = {  # type and last byte
    **{(0x25, 1 + place): (64 << place) * _KIB for place in range(5)},
    (0x25, 0x41): 2 * _MIB,
    (0x25, 0x4A): 4 * _MIB,
    (0x25, 0x4B): 8 * _MIB,
    (0x25, 0x8C): 256 * _KIB,
    (0x25, 0x8D): 512 * _KIB,
    (0x25, 0x8E): _MIB,
    (0x26, 0x41): 2 * _MIB,
    (0x26, 0x42): 4 * _MIB,
    (0x26, 0x43): 8 * _MIB,
    (0x26, 0x51): 2 * _MIB,
    (0x26, 0x54): 512 * _KIB,
    (0x26, 0x58): _MIB,
}
_SST_FROM_MEMORY = {(0x25, 0x8C), (0x26, 0x54), (0x26, 0x58)}
_PARTS, _MEMORY = "serial flash in Linux", "from memory"
_ATMEL_ONE_BY_ONE = {
    (0x65, 0x00): (64 * _KIB, _MEMORY),
    (0x66, 0x01): (128 * _KIB, _PARTS),
    (0x66, 0x04): (512 * _KIB, _PARTS),
}
Rule = tuple[int | None, str, str, tuple[str, ...]]  # capacity, how, source, doubts


def identity_of(typed: str | bytes) -> Identity:
    """The identity that a programmer read, as bytes or as text in hex.

    Bytes behind the capacity are kept and not judged. Raises RepairlibError for no answer (all FF
    or all 00), a code whose parity is wrong, more 7F than there are banks, and too few bytes.

    >>> one = identity_of("EF 40 17")
    >>> str(one.makers[0]), one.capacity, one.how
    ('Winbond', 8388608, 'last byte 17h: 2^23 byte')
    >>> identity_of("20 BA 21").capacity, identity_of("1F 25 00").capacity
    (134217728, 1048576)
    """
    data = typed_bytes(typed, MOST, _ACCEPTED)
    read = in_hex(data[:8])
    if len(set(data)) == 1 and data[0] in (0x00, 0xFF):
        line = "high" if data[0] else "low"
        wrong = f"no chip answers: the data line stays {line}"
        raise RepairlibError(read, wrong, _SILENT)
    rest = data.lstrip(bytes([CONTINUES]))
    bank = len(data) - len(rest) + 1
    if bank > BANKS:
        wrong = f"{bank - 1} times 7F, and JEP106 has {BANKS} banks: the data line is stuck?"
        raise RepairlibError(read, wrong, _SILENT)
    if not rest:
        raise RepairlibError(read, "only 7F, which says that more follows", "read more bytes")
    _check_parity(rest, read)
    if len(rest) < (3 if bank == 1 else 2):
        wrong = "too few bytes: 9Fh gives the maker, the type and the capacity"
        raise RepairlibError(read, wrong, f"{_ACCEPTED}; {_by_old_command(rest)}")
    makers = makers_of(rest[0], bank)
    capacity, how, source, doubts = _capacity(bank, rest)
    told = [f"{one.name}: {one.doubt}." for one in makers if one.doubt]
    if not makers:
        told.append(f"No maker of serial flash is known here for {rest[0]:02X}h in bank {bank}.")
        told += [f"{turned}." for turned in _turned(data)]
    return Identity(rest, bank, makers, capacity, how, source, (*told, *doubts))


def makers_of(code: int, bank: int = 1) -> tuple[Maker, ...]:
    """Who makes serial flash that answers with this code; none where nobody is known here.

    >>> makers_of(0xC2)[0].name, makers_of(0xC2, bank=3)
    ('Macronix', ())
    """
    return (_MAKERS, _MAKERS_OF_BANK_2)[bank - 1].get(code, ()) if bank <= 2 else ()


def _by_old_command(rest: bytes) -> str:
    """What two bytes are: the answer to an older command, with the capacity one lower."""
    told = "two bytes are what 90h and ABh give"
    if len(rest) == 2 and rest[0] == 0xEF and 0x0F <= rest[1] <= 0x18:
        size = capacity_in_words(2 << rest[1])
        return f"{told}: {rest[1]:02X}h there is {rest[1] + 1:02X}h here, {size}"
    return told


def _turned(data: bytes) -> list[str]:
    """What three bytes are in reverse order, where that makes sense: some readers print them so."""
    first, last = data[-1], data[0]
    if len(data) == 3 and first in _MAKERS and 0x10 <= last <= 0x22:
        return [f"In reverse order it is {in_hex(data[::-1])}, {_MAKERS[first][0].name}"]
    return []


def _check_parity(rest: bytes, read: str) -> None:
    """A code has an odd number of ones, so that one wrong bit is found."""
    if rest[0].bit_count() % 2:
        return
    wrong = f"{rest[0]:02X}h has an even number of ones, and JEP106 keeps it odd: a bit is wrong"
    if rest[0] in (0x00, 0xFF) and len(rest) > 3 and rest[1] in _MAKERS:
        found_in = f"{in_hex(rest[1:4])}, without the byte that came before the answer"
        raise RepairlibError(read, wrong, f"{found_in}; {_ACCEPTED}")
    near = [
        f"{code:02X}h {makers[0].name}"
        for code, makers in _MAKERS.items()
        if (code ^ rest[0]).bit_count() == 1
    ]
    hints = [*_turned(rest), *([f"one bit away: {', '.join(near)}"] if near else [])]
    told = "; ".join([*hints, "read again, slower, with clean contacts"])
    raise RepairlibError(read, wrong, told)


def _capacity(bank: int, rest: bytes) -> Rule:
    """What the bytes behind the maker's code say, by the rule of that maker."""
    code, kind, last = rest[0], rest[1], rest[2] if len(rest) > 2 else rest[1]
    if len(rest) == 2:
        return _one_byte(bank, code, last)
    if kind == last and last in (0x00, 0xFF):
        return None, "", _MEMORY, ("Only the maker answered: read again, slower.",)
    if bank == 1 and code in _RULES and (rule := _RULES[code](kind, last)):
        return rule
    if 0x42 <= last <= 0x47 and code == 0x9D:
        return _told(last - 0x30, last, "the last byte less 30h", _MEMORY)
    doubts = () if bank == 1 and code in _MAKERS else (_MOSTLY,)
    if 0x10 <= last <= 0x19:
        return 1 << last, f"last byte {last:02X}h: 2^{last} byte", _PARTS, doubts
    if 0x1A <= last <= 0x1C and code != 0x20:
        counted = code in (0x0B, 0x2C, 0x34, 0xC2)
        how = f"last byte {last:02X}h: 2^{last} byte"
        return 1 << last, how, _PARTS, doubts if counted else (_MOSTLY,)
    if last in _COUNTED_ON:
        how = f"last byte {last:02X}h: above 19h some count on as 20h, 21h, 22h"
        sure = code == 0x20 or (code, last) in ((0xEF, 0x20), (0x01, 0x20))
        return _COUNTED_ON[last], how, _PARTS if sure else _MEMORY, () if sure else (_MOSTLY,)
    return None, "", _MEMORY, (f"No rule known here reads {last:02X}h as a capacity.",)


_MOSTLY = "Most makers count so; of this one it is not known here: read its SFDP or its top mark."


def _told(power: int, last: int, rule: str, source: str, *doubts: str) -> Rule:
    return 1 << power, f"last byte {last:02X}h: {rule}, 2^{power} byte", source, doubts


def _one_byte(bank: int, code: int, last: int) -> Rule:
    """Old parts of bank 2 answer with one byte behind the code."""
    known = {0x46: 4 * _MIB, 0x20: 64 * _KIB}
    if bank == 2 and code == 0x9D and last in known:
        return known[last], f"one byte behind the code, {last:02X}h", _PARTS, ()
    return None, "", _MEMORY, ("One byte behind the code does not tell the capacity here.",)


def _atmel(kind: int, last: int) -> Rule | None:
    """Five bits of the type byte are the density d, 2^(d+15) byte; newer types use the last.

    Types 60h to 7Fh do not count so.
    """
    if kind >> 5 == 3:
        size, source = _ATMEL_ONE_BY_ONE.get((kind, last), (None, _MEMORY))
        unknown = () if size else ("Types 60h to 7Fh of Atmel are numbered one by one.",)
        return size, f"type {kind:02X}h, last byte {last:02X}h", source, unknown
    if kind in (0x42, 0x43) and 0x10 <= last <= 0x19:
        return _told(last, last, f"of type {kind:02X}h it is the capacity", _PARTS)
    density = kind & 0x1F
    if not 1 <= density <= 12:
        return None, "", "AT45DB081D", (f"Its density bits, {density:05b}, stand for no size.",)
    how = f"low five bits of {kind:02X}h, {density:05b}: 2^({density} + 15) byte"
    doubts: tuple[str, ...] = ()
    if 0x10 <= last <= 0x19 and last != density + 15:
        doubts = (f"Its last byte, {last:02X}h, would be 2^{last} byte: compare with its SFDP.",)
    if kind >> 5 == 1:
        extra = "AT45: with pages of 264 instead of 256 byte it holds a thirty-second more."
        doubts = (*doubts, extra)
    return 1 << (density + 15), how, "AT45DB081D", doubts


def _intel(kind: int, last: int) -> Rule | None:
    if kind == 0x89 and 0x11 <= last <= 0x13:
        return _told(last + 4, last, "of type 89h these count four lower", _PARTS)
    if kind == 0x89:
        return None, "", _PARTS, (f"Of Intel's type 89h {last:02X}h is not known here.",)
    return None


def _macronix(kind: int, last: int) -> Rule | None:
    if 0x30 <= last <= 0x3C:
        return _told(last - 0x20, last, "the last byte less 20h", _PARTS)
    return None


def _spansion(kind: int, last: int) -> Rule | None:
    if kind == 0x02 and 0x12 <= last <= 0x16:
        rule = "of type 02h these count one lower"
        return _told(last + 1, last, rule, _PARTS)
    return None


def _sst(kind: int, last: int) -> Rule | None:
    size = _SST.get((kind, last))
    if size is None:
        return None, "", _PARTS, ("SST numbers its parts one by one, and this one is not known.",)
    source = _MEMORY if (kind, last) in _SST_FROM_MEMORY else _PARTS
    return size, f"SST numbers its parts one by one: {kind:02X}h {last:02X}h", source, ()


def _winbond(kind: int, last: int) -> Rule | None:
    if kind == 0x71 and last == 0x19:
        how = "type 71h: two chips of 2^25 byte in one body"
        doubts = ("The two are read one after the other, each chosen by a command of its own.",)
        return 64 * _MIB, how, _PARTS, doubts
    return None


_RULES = {
    **{0x01: _spansion, 0x1F: _atmel, 0x89: _intel, 0xBF: _sst, 0xC2: _macronix},
    0xEF: _winbond,
}


def capacity_in_words(capacity: int) -> str:
    """Bytes, and the Mbit or Kbit that data sheets give.

    >>> capacity_in_words(8 << 20), capacity_in_words(64 << 10)
    ('8 MiB (64 Mbit)', '64 KiB (512 Kbit)')
    """
    bits = capacity * 8
    for unit, size in (("Gbit", 1 << 30), ("Mbit", _MIB), ("Kbit", _KIB)):
        if bits % size == 0 and bits:
            return f"{size_in_words(capacity)} ({bits // size:,} {unit})"
    return size_in_words(capacity)


@calculator(
    topic="firmware",
    title="Identity of a flash chip",
    sources=("JEP106AM", "JEP106, listed"),
)
def flash_identity(
    identity: Annotated[str, Text("The bytes read with 9Fh, such as EF 40 17.")],
) -> Found:
    """Maker and capacity in bytes that the identity bytes of a serial flash say.

    Raises RepairlibError as identity_of does: no answer, wrong parity, too many 7F, too few bytes.
    Sources: JEP106 for the maker; the rules of the makers for the capacity.

    >>> found = flash_identity("C2 20 17")
    >>> found.maker, found.capacity, found.bytes
    ('Macronix', '8 MiB (64 Mbit)', 8388608)
    """
    one = identity_of(identity)
    names = "; ".join(map(str, one.makers)) or "not known here"
    values: dict[str, object] = {"maker": names, "bank": one.bank, "identity": in_hex(one.id[:3])}
    if one.capacity is not None:
        values |= {"capacity": capacity_in_words(one.capacity), "bytes": one.capacity}
    else:
        values["capacity"] = CANNOT_TELL
    steps = [f"{one.id[0]:02X}h, bank {one.bank}: {names}"]
    steps += [one.how] if one.how else []
    notes = [*one.doubts, "Compare with the top mark and, where it has one, with its SFDP."]
    if (one.capacity or 0) > 16 * _MIB:
        notes.append(
            "Above 16 MiB three address bytes do not reach all of it: a programmer without "
            "four-byte addresses reads the first 16 MiB again and again."
        )
    return found(values, working=steps, notes=notes, sources=(one.source,))
