"""Memory chips, known by the numbers of the trade: 24, 25, 26, 27, 28, 29, 39, 45, 49, 93, 95.

What the letters and figures mean is from memory: makers agree on most of it, and not on the
letters of the supply. So a supply read here is a hint, to be measured before anything is connected.
"""

from __future__ import annotations

from repairlib.markings.ranks import (
    FOUR_FIGURES_OF_A_MEMORY,
    MEMORY_CHIP,
    MEMORY_OR_VALUE,
)
from repairlib.markings.reading import Reading, capacity_in_bits

FLASH, EEPROM, NAND, ERASED_BY_LIGHT = "flash", "EEPROM", "NAND flash", "EPROM"
SPI, TWO_WIRE, THREE_WIRE = "SPI", "I²C", "three-wire"
PARALLEL, LPC = "parallel", "LPC or firmware hub"
FIVE, THREE, LOW = (4.5, 5.5), (2.7, 3.6), (1.65, 1.95)  # V
WIDE, WIDE_TO_FIVE, FROM_2_5 = (1.65, 3.6), (1.7, 5.5), (2.5, 5.5)  # V
_KILOBIT = 128  # bytes
_LONGEST_END = 14  # characters behind the figures: generation, speed, package, grade


def _each(words: str, meaning) -> dict:
    """The same meaning for each of the words."""
    return dict.fromkeys(words.split(), meaning)


# What stands between the series and the figures: memory, bus, volts. None: the letters do not say.
_SERIAL_FLASH = {
    **_each("L X P PX PE F FL VF LP LV DF SF B T QH VQ", THREE),
    **_each("U WF WP S LE DL SL QU", LOW),
    **_each("R WQ WD", WIDE),
    "V": (2.3, 3.6),
    **_each("Q LQ LD D FS QL QA QE LF W H E", None),  # makers differ
}
_SPI_EEPROM = {"LC": FROM_2_5, "AA": (1.8, 5.5), "C": None, "": None}
_SPI_EEPROM |= dict.fromkeys(("M", "AM", "CSM"), None)
_TWO_WIRE = {
    **_each("C WC CW CS L T G W A", None),
    **_each("LC LCS FC", FROM_2_5),
    **_each("AA FCS CM", WIDE_TO_FIVE),
    "M": None,
}
_LETTERS: dict[str, dict[str, tuple]] = {
    "24": {letters: (EEPROM, TWO_WIRE, volts) for letters, volts in _TWO_WIRE.items()},
    "25": {
        **{letters: (EEPROM, SPI, volts) for letters, volts in _SPI_EEPROM.items()},
        **{letters: (FLASH, SPI, volts) for letters, volts in _SERIAL_FLASH.items()},
        "N": (NAND, SPI, None),
    },
    "26": {
        **dict.fromkeys(("VF", "F", "DF", "L"), (FLASH, SPI, THREE)),
        "WF": (FLASH, SPI, LOW),
    },
    "27": {
        **dict.fromkeys(("C", "HC", "CX"), (ERASED_BY_LIGHT, PARALLEL, FIVE)),
        "": (ERASED_BY_LIGHT, PARALLEL, FIVE),
        **dict.fromkeys(("LV", "W"), (ERASED_BY_LIGHT, PARALLEL, THREE)),
    },
    "28": {
        **dict.fromkeys(("C", "HC", "PC"), (EEPROM, PARALLEL, FIVE)),
        "LV": (EEPROM, PARALLEL, THREE),
        "F": (FLASH, PARALLEL, None),
        "SF": (FLASH, PARALLEL, FIVE),
    },
    "29": {
        **dict.fromkeys(("F", "C", "EE"), (FLASH, PARALLEL, FIVE)),
        **_each("LV LE BL W AL JL GL PL DL VE", (FLASH, PARALLEL, THREE)),
        **dict.fromkeys(("SL", "WS", "NS"), (FLASH, PARALLEL, LOW)),
    },
    "39": {
        **dict.fromkeys(("SF", "F"), (FLASH, PARALLEL, FIVE)),
        **dict.fromkeys(("VF", "LF", "LV"), (FLASH, PARALLEL, THREE)),
        "WF": (FLASH, PARALLEL, LOW),
    },
    "45": dict.fromkeys(("DB", "D"), (FLASH, SPI, THREE)),
    "49": {
        **dict.fromkeys(("LF", "FL"), (FLASH, LPC, THREE)),
        "F": (FLASH, PARALLEL, FIVE),
        **dict.fromkeys(("BV", "LV"), (FLASH, PARALLEL, THREE)),
    },
    "93": {
        **dict.fromkeys(("C", "S", "H", "A"), (EEPROM, THREE_WIRE, None)),
        **dict.fromkeys(("LC",), (EEPROM, THREE_WIRE, FROM_2_5)),
        **dict.fromkeys(("AA", "L"), (EEPROM, THREE_WIRE, WIDE_TO_FIVE)),
    },
    "95": {letters: (EEPROM, SPI, None) for letters in ("", "M")},
}
_NAND_LETTERS = ("F", "U", "C", "S")
_PARALLEL_SERIES = ("27", "28", "29", "39", "49")
_LARGE = ("Q", "QL", "QU", "FL", "FS", "N")  # serial flash so called is large: 512 is Mbit
_BARE = ("08", "16", "32", "64", "128", "256", "512")  # behind 27 without a letter, as at first
_SPI_KILOBITS = "010 020 040 080 160 320 640 128 256 512 1024 M01 M02 M04"
_KILOBITS = {  # Kbit that the figures of EEPROMs stand for, with a letter M before Mbit
    "24": dict.fromkeys(("01", "21", "014", "014H"), 1)
    | dict.fromkeys(("02", "025", "024"), 2)
    | {"00": 0.125, "04": 4, "08": 8, "16": 16, "32": 32, "64": 64, "65": 64, "128": 128}
    | {"256": 256, "512": 512, "515": 512, "M01": 1024, "M02": 2048}
    | {"160": 16, "320": 32, "640": 64, "1280": 128}
    | dict.fromkeys(("1024", "1025", "1026"), 1024),
    "93": {"06": 0.25, "46": 1, "56": 2, "57": 2, "66": 4, "76": 8, "86": 16},
}
_KILOBITS["25"] = _KILOBITS["95"] = {
    figures: (int(figures[1:]) << 10)
    if figures[0] == "M"
    else int(figures) // (10 if figures[-1] == "0" else 1)
    for figures in _SPI_KILOBITS.split()
}
_SMALL_PARALLEL = {"04": 4, "08": 8, "16": 16, "17": 16, "32": 32, "64": 64, "65": 64}
_SMALL_PARALLEL |= {"128": 128, "256": 256, "512": 512}
_UNIT_WORDS = ("VAC", "VDC", "MFD", "MF", "UF", "NF", "PF", "KV", "WV", "UH", "NH", "MH")
_UNITS = "pnufrvmk"  # a lone small letter among figures is a unit: 25p80
_VALUE_LETTERS = "LVURFPSWDEBHTA"  # such a letter may also be a unit or a decimal point
_RATHER_VALUES = ("V", "R", "L", "U", "W", "E", "A")  # 25V470 is 25 V and 470 µF
_GENERATIONS = ("05", "06", "08", "26", "33", "35", "36", "39", "45", "55", "73", "75", "83", "85")
_HOW_MEASURED = "Measure its supply pin, and read its data sheet, before anything is connected."


class MemoryChip:
    """What the number of a memory chip says.

    `series` is the number of the trade, `letters` and `figures` what follows it, `memory` "flash",
    "EEPROM", "NAND flash" or "EPROM", `bus` how it is spoken to. `capacity` is in bytes, `supply`
    (least, most) in volts, None where the letters do not say. `notes` are sentences that a person
    should read.
    """

    __slots__ = (
        *("bus", "capacity", "figures", "letters", "memory", "notes", "series", "supply", "sure"),
    )

    def __init__(self, number, memory, bus, capacity, supply, notes, sure):
        self.series, self.letters, self.figures = number
        self.memory = memory
        self.bus = bus
        self.capacity = capacity
        self.supply = supply
        self.notes = notes
        self.sure = sure  # False where the text may as well be a value


def memory_chip(mark: str) -> MemoryChip | None:
    """What memory chip a word of a top mark names; None when it is none of these series.

    >>> chip = memory_chip("25Q64JV")
    >>> chip.memory, chip.bus, chip.capacity, chip.supply
    ('flash', 'SPI', 8388608, (2.7, 3.6))
    >>> memory_chip("24C02").capacity, memory_chip("104K")
    (256, None)
    """
    parted = _parted(mark)
    if parted is None:
        return None
    prefix, series, letters, figures, end = parted
    if _is_nand(series, letters, figures, end):
        return _nand(series, letters, figures, end)
    known = _LETTERS[series].get(letters) or _other_letters(prefix, series, letters)
    if known is None:
        return None
    memory, bus, supply = known
    if memory == ERASED_BY_LIGHT and not letters and (figures not in _BARE or len(prefix) > 1):
        return None
    kilobit, notes = _kilobit(series, letters, figures, end, memory)
    if kilobit is None:
        return None
    if series == "25" and memory == FLASH and supply is None:
        supply, said = _supply_of_end(letters, end)
        notes += said
    if end.startswith("E48") or end.startswith("E64"):
        notes += ("E48 or E64: it holds a network address from the factory. Read it, keep it.",)
    capacity = int(kilobit * _KILOBIT)
    sure = bool(prefix) or _is_plain(letters, figures)
    if not sure and letters in _RATHER_VALUES:
        return None
    return MemoryChip((series, letters, figures), memory, bus, capacity, supply, notes, sure)


def _parted(mark: str) -> tuple[str, str, str, str, str] | None:
    """Letters of the maker, series, letters, figures and what is left of one word of a mark."""
    word = _without_grade(mark)
    code = word.upper()
    if not 4 <= len(code) <= 24 or not code.isalnum() or not code.isascii():
        return None
    rest = code.lstrip(_ALPHABET)
    prefix, series = code[: len(code) - len(rest)], rest[:2]
    if len(prefix) > 4 or series not in _LETTERS:
        return None
    behind = rest[2:].lstrip(_ALPHABET)
    letters = rest[2 : len(rest) - len(behind)]
    end = behind.lstrip("0123456789")
    figures = behind[: len(behind) - len(end)]
    small = word[len(prefix) + 2 : len(prefix) + 2 + len(letters)]
    if not figures or len(figures) > 5 or len(end) > _LONGEST_END:
        return None
    if not prefix and len(small) == 1 and small in _UNITS:
        return None
    return prefix, series, letters, figures, end


def _other_letters(prefix: str, series: str, letters: str) -> tuple | None:
    """Serial flash of letters that are not known here, where they are no unit: 25QX64."""
    if series != "25" or not 2 <= len(letters) <= 3 or letters in _UNIT_WORDS:
        return None
    return (FLASH, SPI, None) if prefix or "Q" in letters else None


def _without_grade(mark: str) -> str:
    """The word without what stands behind a hyphen or a point: -10SU-2.7, .V."""
    head, _, rest = mark.partition("-")
    if len(head) == 1:  # a maker's letter and a hyphen in front
        return head + rest.partition("-")[0]
    before = head.partition(".")[0]
    return before if before[-3:].isalnum() and not before.isdecimal() else head


_ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


def _is_plain(letters: str, figures: str) -> bool:
    """Whether a number without a maker's letters is no value with its unit or decimal point.

    25Q64 and 24LC256 are none. 25V16 is rather 25 V and 16 µF, 25R80 a resistor of 25.8 Ω.
    """
    if not letters:
        return False
    if len(letters) > 1 or letters not in _VALUE_LETTERS:
        return True
    if letters in "PF" and len(figures) >= 2:
        return True
    if len(figures) == 3 and letters not in "VRWEA":
        return figures[0] == "0" or figures in ("128", "256", "512") or letters in "LC"
    return len(figures) >= 4 and figures[-2:] in _GENERATIONS


def _kilobit(
    series: str, letters: str, figures: str, end: str, memory: str
) -> tuple[float | None, tuple[str, ...]]:
    """The capacity in Kbit that the figures stand for, and what is to be said about it."""
    if memory == EEPROM and series in _KILOBITS:
        figures = f"M{figures}" if letters[-1:] == "M" else figures
        return _KILOBITS[series].get(figures), ()
    if _of_two_sizes(series, letters, figures):
        note = f"{figures} is Kbit on older parts of these letters, {figures} Mbit on others: "
        return int(figures), (f"{note}its identity or its data sheet tells.",)
    small = _SMALL_PARALLEL.get(figures) if series in _PARALLEL_SERIES else None
    if small and not ((figures == "128" and letters in ("F", "LV", "GL")) or letters == "GL"):
        return small, ()
    megabit = _megabit(figures, end)
    return (None, ()) if megabit is None else (megabit * 1024, ())


def _of_two_sizes(series: str, letters: str, figures: str) -> bool:
    """Whether the figures stand for Kbit on some parts and for Mbit on others."""
    if series == "25":
        return figures == "512" and letters not in _LARGE
    return series == "29" and letters == "LV" and figures in ("256", "512")


def _megabit(figures: str, end: str) -> float | None:
    """The Mbit that the figures of a flash stand for; the last ones are often its generation."""
    if end[:1] == "G" and figures.isdecimal() and 1 <= int(figures) <= 8:
        return int(figures) * 1024
    if len(figures) == 2:
        return _TWO.get(figures)
    if len(figures) == 3:
        if figures in _THREE:
            return _THREE[figures]
        if figures[0] == "0":
            return _TWO.get(figures[1:]) if figures[1] != "0" else _ones(figures[2])
        if figures[:2] in ("16", "32", "64"):
            return _TWO[figures[:2]]
        if figures[0] in "12" and figures[1:] in ("04", "08", "16", "32", "64"):  # 132K: 32 Mbit
            return int(figures[1:])
        return _ones(figures[0])
    if len(figures) == 4:
        return 0.5 if figures[:3] == "512" else _TWO.get(figures[:2])
    return _THREE.get(figures[:3]) if len(figures) == 5 else None


_THREE = {"127": 128, "128": 128, "256": 256, "257": 256, "512": 512}
_TWO = {
    **{"05": 0.5, "10": 1, "20": 2, "40": 4, "41": 4, "80": 8, "81": 8, "11": 1, "21": 2},
    **{"16": 16, "17": 16, "32": 32, "33": 32, "64": 64, "65": 64, "00": 1024, "01": 1024},
    "02": 2048,
}


def _ones(figure: str) -> float | None:
    return int(figure) if figure in "12348" else None


def _supply_of_end(letters: str, end: str) -> tuple[tuple[float, float] | None, tuple[str, ...]]:
    """The volts that the second letter behind the figures of 25Q says: JV 3 V, JW 1.8 V.

    Behind other letters, and behind B, C and E, that letter may also name the body.
    """
    if letters == "Q" and end[:1].isalpha() and end[1:2] == "V":
        return THREE, ("V behind its figures speaks for 3 V.",)
    if letters == "Q" and end[:2] in ("DW", "FW", "JW", "NW"):
        return LOW, ("W behind its figures speaks for 1.8 V.",)
    return None, ("Its number is sold for 3 V and for 1.8 V, and the letters here do not tell.",)


def _is_nand(series: str, letters: str, figures: str, end: str) -> bool:
    """29F4G08, 27U1G8: one to three figures, G for Gbit, then the width."""
    return (
        series in ("27", "29")
        and letters in _NAND_LETTERS
        and len(figures) <= 3
        and end[:1] == "G"
        and end[1:2].isdecimal()
    )


def _nand(series: str, letters: str, figures: str, end: str) -> MemoryChip | None:
    gigabit = int(figures)
    if not 1 <= gigabit <= 512:
        return None
    note = "NAND has bad blocks and spare bytes: a plain copy to another chip does not work."
    capacity = gigabit * (1 << 20) * _KILOBIT
    return MemoryChip((series, letters, figures), NAND, PARALLEL, capacity, None, (note,), True)


def read_memory_chip(text: str, pieces: list[str], part: str | None) -> list[tuple[int, Reading]]:
    """The memory chip that a word of the mark names, with its rank; none when no word does.

    >>> print(read_memory_chip("25Q64", ["25Q64"], None)[0][1].headline)
    flash, 8 MiB (64 Mbit), SPI
    """
    found = [(word, memory_chip(word)) for word in text.split()]
    named = [(word, chip) for word, chip in found if chip is not None]
    if not named:
        return []
    word, chip = named[0]
    others = [piece for piece in pieces if piece != word]
    if part is None and any([_is_a_value(piece) for piece in others]):
        return []
    rank = MEMORY_CHIP if chip.sure else MEMORY_OR_VALUE
    if not chip.letters:
        rank = FOUR_FIGURES_OF_A_MEMORY
    carries = {"memory": chip.memory, "capacity": chip.capacity, "bus": chip.bus}
    if chip.supply:
        carries["supply"] = chip.supply
    reading = Reading(
        kind="memory-chip",
        text=text,
        quantity="memory",
        value=None,
        unit="",
        why=_why(chip),
        carries=carries,
        sources=("from memory",),
    )
    return [(rank, reading)]


def _is_a_value(piece: str) -> bool:
    """Whether a word beside it has a unit, so that the whole is the marking of another part."""
    return piece[0].isdecimal() and piece[-1] in "FVΩHµW%"


def _why(chip: MemoryChip) -> str:
    said = f"{chip.series} and {chip.letters} begin" if chip.letters else f"{chip.series} begins"
    kind = {SPI: "serial ", PARALLEL: "parallel "}.get(chip.bus, "")
    size = f"{chip.figures} is its size: {capacity_in_bits(chip.capacity)}."
    begun = f"{said} the numbers of {kind}{chip.memory} chips."
    return " ".join([begun, size, *chip.notes, _HOW_MEASURED])
