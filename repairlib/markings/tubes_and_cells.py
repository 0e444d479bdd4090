"""Parts that hurt by what they are: valves, picture tubes, cells, rectifiers, transmitter parts.

They are known by their type numbers, which are not read further. From memory, but for the letters
of valves and semiconductors, which Pro Electron gave.
"""

from __future__ import annotations

from repairlib.core.limits import LINE_AC

VALVE, PICTURE_TUBE, CELL = "valve", "picture tube", "cell or battery"
RECTIFIER, LOW_RECTIFIER, TRANSMITTER = "mains rectifier", "rectifier", "transmitter transistor"

_HEATERS, _SYSTEMS = "DEGPU", "ABCDFHKLMYZ"
_CIRCUITS = ("PAL", "PCM", "DAC")
_THREE_FIGURES = {
    "EF": ("183", "184", "800", "804", "806"),
    "EL": ("500", "503", "504", "509", "519"),
    "PL": ("500", "504", "505", "508", "509", "519", "802"),
    "PY": ("500", "800"),
    "PC": ("900",),
    "EC": ("900",),
    "DY": ("802",),
    "PD": ("500", "510"),
}
_AMERICAN_HEATERS = ("1", "3", "5", "6", "12", "25", "35", "50")
_AMERICAN_ENDS = ("", "A", "B", "C", "G", "GA", "GB", "GC", "GT", "GTA", "GTB", "W", "WA", "EH")
_UNITS = ("UF", "NF", "PF", "KV", "MF", "UH", "NH", "MH")
_BEAM_VALVES = ("KT66", "KT77", "KT88", "KT90", "KT120", "KT150")
_ROUND_CELLS = (
    "LR1 LR03 LR3 LR6 LR9 LR14 LR20 LR41 LR43 LR44 LR54 LR626 LR1130 SR41 SR43 SR44 SR626"
)
_CHEMISTRIES = ("NICD", "NI-CD", "NIMH", "NI-MH", "LI-ION", "LIION", "LIPO", "LI-PO")
_TRANSMITTERS = ("BLF", "BLS", "BLU", "BLV", "BLW", "BLX", "BLY", "MRF")


def type_that_hurts(text: str) -> tuple[str, str] | None:
    """What such a part is, and why it is taken for one; None when it is none.

    >>> type_that_hurts("ECC83")[0], type_that_hurts("CR2032")[0], type_that_hurts("PC817")
    ('valve', 'cell or battery', None)
    """
    word = text.upper()
    letters, figures, end = _parted(word)
    if _is_cell(word, letters, figures):
        return CELL, "A cell or a pack of cells: take it out before you solder, short nothing."
    if letters in _TRANSMITTERS and len(figures) >= 2:
        why = f"{letters} begins radio-frequency power transistors: the white ceramic may be "
        return TRANSMITTER, f"{why}beryllium oxide. Do not break or file it."
    if _is_picture_tube(word):
        return PICTURE_TUBE, "A and the screen in cm make the type number of a picture tube."
    if _is_valve(letters, figures, end) or _is_american_valve(word) or word in _BEAM_VALVES:
        return VALVE, "The type number of a valve: its set holds hundreds of volts."
    volts, _, milliampere = word[1:].partition("C")
    if letters in ("B", "E") and _is_rectifier(volts, milliampere):
        kind = RECTIFIER if int(volts) >= LINE_AC else LOW_RECTIFIER
        how = "bridge" if letters == "B" else "single-way"
        why = (
            f"A {how} rectifier for {volts} V AC. Flat, with fins or a metal case it is selenium: "
        )
        return kind, f"{why}burnt, it gives poisonous smoke and goes."
    return None


def _is_rectifier(volts: str, milliampere: str) -> bool:
    """Whether B and these are a rectifier: 250 and 75, 80 and 3700/2200."""
    figures = milliampere.replace("/", "").removesuffix("R")
    return volts.isdecimal() and len(volts) <= 3 and figures.isdecimal() and len(figures) <= 8


def _parted(word: str) -> tuple[str, str, str]:
    """The letters at the start, the figures behind them, and what is left."""
    rest = word.lstrip("ABCDEFGHIJKLMNOPQRSTUVWXYZ")
    end = rest.lstrip("0123456789")
    return word[: len(word) - len(rest)], rest[: len(rest) - len(end)], end


def _is_valve(letters: str, figures: str, end: str) -> bool:
    """ECC83, PL504, DY802: not PC817 and EL817, which are couplers."""
    if not 2 <= len(letters) <= 5 or letters[0] not in _HEATERS or len(end) > 2:
        return False
    if letters.strip(_SYSTEMS + _HEATERS) or any(one not in _SYSTEMS for one in letters[1:]):
        return False
    if letters in _CIRCUITS or figures[:1] == "0":
        return False
    if len(figures) == 3 and len(letters) == 2:
        return figures in _THREE_FIGURES.get(letters, ())
    return len(figures) == 2 or (len(figures) == 3 and figures[0] in "1289")


def _is_american_valve(word: str) -> bool:
    """12AX7, 6SN7GT: heater volts, two letters, a figure."""
    heater = word[: len(word) - len(word.lstrip("0123456789"))]
    letters, figure, end = (
        word[len(heater) :][:2],
        word[len(heater) :][2:3],
        word[len(heater) + 3 :],
    )
    if heater not in _AMERICAN_HEATERS or not letters.isalpha() or letters in _UNITS:
        return False
    return len(letters) == 2 and figure.isdecimal() and end in _AMERICAN_ENDS


def _is_picture_tube(word: str) -> bool:
    """A51-161X, A34EAC01X, AW43-88."""
    rest = word.removeprefix("AW") if word.startswith("AW") else word.removeprefix("A")
    if rest == word or not rest[:2].isdecimal() or len(rest) < 5:
        return False
    new = rest[2:5].isalpha() and rest[5:7].isdecimal()
    return new or (rest[2] == "-" and rest[3:5].isdecimal())


def _is_cell(word: str, letters: str, figures: str) -> bool:
    """CR2032, LR44, ER14505, 3.6V 60mAh, NiCd."""
    words = word.split()
    if any(one in _CHEMISTRIES or _is_charge(one) for one in words) or " MAH" in word:
        return True
    if letters in ("CR", "ML", "VL", "BR") and len(figures) == 4:
        return (12 if letters == "BR" else 9) <= int(figures[:2]) <= 30
    return letters + figures in _ROUND_CELLS.split() or (letters == "ER" and len(figures) == 5)


def _is_charge(word: str) -> bool:
    """Whether it is a number of Ah or mAh."""
    return word.endswith("AH") and word[:1].isdecimal()
