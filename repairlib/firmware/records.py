"""Images as text: files of Intel HEX and of S-records, taken apart line by line.

Each line has a count, an address, data and a check sum. The lines are read by the library bincopy;
what a file as a whole may not be (cut short, overlapping, far apart) is held here.
"""

from __future__ import annotations

import io
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.core.plain_file import read_bytes, size_in_words
from repairlib.core.wording import counted
from repairlib.firmware.image_file import LARGEST, Image, image_of

INTEL_HEX, S_RECORD = "Intel HEX", "S-record"
LARGEST_TEXT = 128 << 20  # bytes of a file: at 16 data bytes a line, an image of 45 MiB
MOST_SEGMENTS = 200_000
_SMALLEST_WINDOW = 1 << 16  # bytes
_ADDRESSES = 1 << 32
_ACCEPTED = "a file of Intel HEX or S-records, as the tool that made it stored it"
_DATA, _END, _SEGMENT, _START_SEGMENT, _LINEAR, _START_LINEAR = range(6)  # record types of HEX
_HEX_LENGTHS = {_END: 0, _SEGMENT: 2, _START_SEGMENT: 4, _LINEAR: 2, _START_LINEAR: 4}
_S_WIDTHS = dict(zip("0123456789", (2, 2, 3, 4, 0, 2, 3, 4, 3, 2), strict=True))  # of addresses


class Segment(NamedTuple):
    """Bytes without a gap, and the address of the first."""

    start: int
    data: bytes

    @property
    def end(self) -> int:
        """The address behind the last byte."""
        return self.start + len(self.data)


class Records(NamedTuple):
    """What a file of records holds: its form, and its segments in the order of their addresses."""

    name: str
    form: str
    segments: tuple[Segment, ...]

    @property
    def size(self) -> int:
        """How many bytes the file gives; gaps are not counted."""
        return sum(len(one.data) for one in self.segments)

    @property
    def gaps(self) -> tuple[tuple[int, int], ...]:
        """From where to where nothing is given between the segments."""
        pairs = zip(self.segments, self.segments[1:], strict=False)
        return tuple((before.end, after.start) for before, after in pairs)

    @property
    def window(self) -> int:
        """The address where the chip begins, as far as the addresses tell.

        Processors see a chip at a multiple of its size, and sizes are powers of two. So this is
        where the smallest such window begins that holds every segment, of 64 KiB at least.
        """
        first, last = self.segments[0].start, self.segments[-1].end - 1
        width = max(_SMALLEST_WINDOW, 1 << (first ^ last).bit_length())
        return first // width * width

    def image(self, fill: int = 0xFF, start: int | None = None) -> Image:
        """The bytes from address `start` to the last one as an image; gaps hold `fill`.

        `start` is the address that becomes byte 0 of the image, `window` when it is not given.
        Raises RepairlibError when `fill` is no byte, when a segment begins below `start`, and when
        the image would be larger than 256 MiB.
        """
        if isinstance(fill, bool) or not isinstance(fill, int) or not 0 <= fill <= 0xFF:
            raise RepairlibError(fill, "what fills the gaps is no byte", "0x00 to 0xFF")
        begin = self.window if start is None else start
        first, end = self.segments[0].start, self.segments[-1].end
        if isinstance(begin, bool) or not isinstance(begin, int) or not 0 <= begin <= first:
            wrong = "the image cannot begin there"
            read = f"0x{begin:06X}" if type(begin) is int else begin
            raise RepairlibError(read, wrong, f"an address from 0 to 0x{first:06X}, the first one")
        if end - begin > LARGEST:
            wrong = (
                f"its parts lie far apart, from 0x{first:06X} to 0x{end:06X}: "
                f"an image from 0x{begin:06X} on would have {end - begin:,} bytes"
            )
            raise RepairlibError(self.name, wrong, f"at most {size_in_words(LARGEST)}")
        made = bytearray([fill]) * (end - begin)
        for one in self.segments:
            made[one.start - begin : one.end - begin] = one.data
        return image_of(bytes(made), self.name)


def read_records(path: str | Path) -> Records:
    """What the file of Intel HEX or S-records at `path` holds.

    Raises RepairlibError, with the line where there is one, for what is no such file, for a wrong
    check sum, a line that was cut, records that overlap, a file without an end record, more than
    200,000 separate parts, and for what the disk does not give.
    """
    return records_of(read_bytes(path, LARGEST_TEXT, _ACCEPTED), Path(path).name)


def records_of(text: bytes, name: str = "the file") -> Records:
    """What these lines of Intel HEX or S-records hold; raises as `read_records`.

    >>> found = records_of(b":0300300002337A1E\\n:00000001FF\\n")
    >>> found.form, found.segments
    ('Intel HEX', (Segment(start=48, data=b'\\x023z'),))
    >>> found.image(start=0x30).data.hex()
    '02337a'
    """
    lines = _Lines(text, name)
    segments = lines.segments()
    if not segments:
        raise RepairlibError(name, "it gives no data", _ACCEPTED)
    return Records(name, lines.form, segments)


class _Lines:
    """The lines of one file, which can be gone through more than once."""

    def __init__(self, text: bytes, name: str):
        self.text = text.removeprefix(b"\xef\xbb\xbf").rstrip(b"\x1a\x00\r\n\t ")
        self.name = name
        first = self.text.lstrip()[:1]
        if first not in (b":", b"S"):
            wrong = "it is empty" if not first else f"it begins with {_shown(first)}, not : or S"
            raise RepairlibError(name, wrong, _ACCEPTED)
        self.form = INTEL_HEX if first == b":" else S_RECORD

    def segments(self) -> tuple[Segment, ...]:
        """The data in the order of the addresses, neighbours joined, none of it given twice."""
        runs: list[tuple[int, bytearray]] = []
        for _, address, data in self.data():
            if runs and address == runs[-1][0] + len(runs[-1][1]):
                runs[-1][1].extend(data)
                continue
            if len(runs) == MOST_SEGMENTS:
                wrong = f"it has more than {MOST_SEGMENTS:,} parts that do not join"
                raise RepairlibError(self.name, wrong, _ACCEPTED)
            runs.append((address, bytearray(data)))
        joined: list[tuple[int, bytearray]] = []
        for start, run in sorted(runs, key=lambda one: one[0]):
            end = joined[-1][0] + len(joined[-1][1]) if joined else -1
            if start < end:
                self._overlap(start)
            if start == end:
                joined[-1][1].extend(run)
            else:
                joined.append((start, run))
        return tuple(Segment(start, bytes(run)) for start, run in joined)

    def _overlap(self, where: int) -> None:
        """Refuse: two lines give the byte at this address."""
        twice = [n for n, start, data in self.data() if start <= where < start + len(data)]
        lines = f"lines {twice[0]} and {twice[1]}"
        wrong = f"{lines} overlap: both give the byte at 0x{where:06X}"
        raise RepairlibError(self.name, wrong, "each address once; ask for a file made anew")

    def data(self) -> Iterator[tuple[int, int, bytes]]:
        """Number of the line, address and data of each record with data; raises as it goes."""
        return self._hex_data() if self.form == INTEL_HEX else self._s_data()

    def _hex_data(self) -> Iterator[tuple[int, int, bytes]]:
        base, wraps, ended = 0, _ADDRESSES, 0
        for number, line in self._numbered():
            if ended:
                raise self._wrong(number, f"it stands behind the end record of line {ended}")
            kind, offset, data = self._hex_record(number, line)
            if kind == _DATA:
                within = offset if wraps == _SMALLEST_WINDOW else (base + offset) % wraps
                low = base if wraps == _SMALLEST_WINDOW else 0
                fits = wraps - within  # what goes beyond comes back at the low end
                if data:
                    yield number, low + within, data[:fits]
                if data[fits:]:
                    yield number, low, data[fits:]
            elif kind == _END:
                ended = number
            elif kind == _SEGMENT:
                base, wraps = int.from_bytes(data) << 4, _SMALLEST_WINDOW
            elif kind == _LINEAR:
                base, wraps = int.from_bytes(data) << 16, _ADDRESSES
        if not ended:
            self._no_end()

    def _hex_record(self, number: int, line: str) -> tuple[int, int, bytes]:
        """Type, address and data of a record of Intel HEX."""
        kind, offset, data = self._taken_apart(number, line, ":", 5)
        if not 0 <= kind <= _START_LINEAR:
            raise self._wrong(number, f"a record of type {kind:02X} is not known")
        if kind in _HEX_LENGTHS and len(data) != _HEX_LENGTHS[kind]:
            due = _HEX_LENGTHS[kind]
            raise self._wrong(number, f"type {kind:02X} has {due} data bytes, and not {len(data)}")
        return kind, offset, data

    def _s_data(self) -> Iterator[tuple[int, int, bytes]]:
        count, before, ended = 0, 0, 0  # records with data, at the last count, line of the end
        for number, line in self._numbered():
            if ended:
                raise self._wrong(number, f"it stands behind the end record of line {ended}")
            width = _S_WIDTHS.get(line[1:2], 0)
            if not width:
                raise self._wrong(number, "it is no record of the kinds S0 to S3 and S5 to S9")
            kind, address, data = self._taken_apart(number, line, "S", width + 2)
            if kind in "123":
                count += 1
                beyond = address + len(data) - (1 << 8 * width)
                if beyond > 0:
                    raise self._wrong(number, f"its end, {counted(beyond, 'byte')}, has no address")
                if data:
                    yield number, address, data
            elif kind in "56":
                if address not in (count % (1 << 8 * width), count - before):
                    says = counted(f"{address:,}", "record")
                    raise self._wrong(number, f"it counts {says}, and here stand {count:,}")
                before = count
            elif kind in "789":
                ended = number
        if not ended:
            self._no_end()

    def _numbered(self) -> Iterator[tuple[int, str]]:
        """The lines that are not empty, as text, numbered from 1."""
        text = self.text.replace(b"\r\n", b"\n").replace(b"\r", b"\n")
        for number, line in enumerate(io.BytesIO(text), 1):
            if bare := line.strip():
                yield number, bare.decode("latin-1")

    def _taken_apart(self, number: int, line: str, mark: str, around: int):
        """Type, address and data of a record; `around` are the bytes besides the data."""
        import bincopy

        try:
            apart = bincopy.unpack_ihex(line) if mark == ":" else bincopy.unpack_srec(line)
        except (bincopy.Error, ValueError):
            raise self._wrong(number, _fault(line, mark, around)) from None
        if mark == "S" and len(line) < 2 + 2 * around:
            raise self._wrong(number, "it is too short for its address")
        kind, address, _, data = apart
        return kind, address, bytes(data)

    def _wrong(self, number: int, wrong: str) -> RepairlibError:
        return RepairlibError(self.name, f"line {number}: {wrong}", _ACCEPTED)

    def _no_end(self) -> None:
        wrong = "it has no end record at its end: most likely it was cut short"
        raise RepairlibError(self.name, wrong, "the whole file")


def _fault(line: str, mark: str, around: int) -> str:
    """What is wrong with a line that could not be taken apart."""
    digits = line[1:] if mark == ":" else line[2:]
    if not line.startswith(mark):
        return f"it begins with {_shown(line[0].encode('latin-1'))}, not with {mark}"
    strange = next((one for one in digits if one not in "0123456789abcdefABCDEF"), "")
    if strange:
        return f"{_shown(strange.encode('latin-1'))} is no hexadecimal digit"
    if len(digits) % 2 or len(digits) < 2 * around:
        return f"{len(digits)} digits are no whole record: it was cut"
    values = bytes.fromhex(digits)
    due = values[0] + around if mark == ":" else values[0] + 1
    if len(values) != due:
        return f"its count asks for {2 * due} digits, and {len(digits)} stand there"
    total = sum(values[:-1])
    sum_due = -total & 0xFF if mark == ":" else ~total & 0xFF
    return f"its check sum is {values[-1]:02X}, and {sum_due:02X} would fit what stands there"


def _shown(byte: bytes) -> str:
    """One byte as a character that can be seen, or in hexadecimal."""
    text = byte.decode("latin-1")
    return text if text.isascii() and text.isprintable() and text != " " else f"0x{byte[0]:02X}"
