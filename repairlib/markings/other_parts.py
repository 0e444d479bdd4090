"""Parts that are not read here, known by their marking: what they are, so that nobody takes them
for a capacitor. Diodes, transistors, circuits, varistors, thermistors and thermal cut-offs.
"""

from __future__ import annotations

from repairlib.core.limits import MAINS_AC
from repairlib.core.series import E_SERIES
from repairlib.markings.kinds import ON_MAINS
from repairlib.markings.ranks import OTHER_PART
from repairlib.markings.reading import Reading

MEMORY = "from memory"
PRACTICE = "common practice"
DIODE, TRANSISTOR, CIRCUIT = "diode", "transistor", "integrated circuit"
THYRISTOR = "thyristor or triac"
REGULATOR = "voltage regulator"
VARISTOR, CUT_OFF, NTC, PTC = ON_MAINS
LOW_VARISTOR = "low-voltage varistor"
_AC_OF_VARISTOR = 0.625  # AC volts over the varistor voltage: 300 V over 470 V, common practice

_DIODES = (
    "OA AA AAZ BA BAT BAV BAS BAW BAX BY BYV BYW BYT BYX BZX BZY BZV BZT UF HER MBR MUR FR "
    "ZPD ZTE KBP KBPC KBU GBU GBJ SMAJ SMBJ RGP EGP STTH"
)
_THYRISTORS = "BT BTA BTB TIC MCR TYN"
_TRANSISTORS = (
    "AC AF AU ASY BC BCX BCY BCW BD BDX BDW BDV BDY BF BFR BFX BFY BFW BS BSS BSX BSY BU BUH BUK "
    "BUL BUT BUV BUX BUZ TIP TIS MJ MJE MJD MPSA MPSH IRF IRFZ IRFP IRL IRLZ OC OCP STP FQP"
)
_CIRCUITS = (
    "LM LF LP NE SE SA TL TLC TDA TBA TCA TEA TAA UC UAA UA MC CD HEF HCF ICL ICM MAX OPA XR AN LA "
    "LB HA STK STR UPC UPD ULN CA SN"
)
_PREFIXES = {
    **dict.fromkeys(_CIRCUITS.split(), CIRCUIT),
    **dict.fromkeys(_TRANSISTORS.split(), TRANSISTOR),
    **dict.fromkeys(_DIODES.split(), DIODE),
    **dict.fromkeys(_THYRISTORS.split(), THYRISTOR),
}
_SMALL_CHINESE = ("S80", "S85", "S90")
_TWO_FIGURES = (
    "ZPD",
    "SMAJ",
    "SMBJ",
    "OA",
    "OC",
    "BY",
    "BAT",
    "TIP",
    "MPSA",
    "TL",
    "BZX",
    "BZY",
    "BZV",
    "BAV",
    "BAS",
)
_GERMANIUM = ("1N34", "1N34A", "1N60", "1N60P")
_SHORT_JAPANESE = "ABCDJK"  # C1815 for 2SC1815
_REGULATED = ("05", "06", "08", "09", "10", "12", "15", "18", "20", "24")
_NTC_NAMES, _VARISTOR_NAMES = ("MF72", "MF73", "SCK"), ("TVR", "ZNR", "FNR", "CNR", "JVR", "MYG")
_ENDS = ("", "J", "K", "L")
_DISCS = ("05", "07", "10", "14", "20", "25")  # mm
_COLDEST, _HOTTEST = 60, 260  # °C of thermal cut-offs


def read_other_part(text: str, pieces: list[str], part: str | None) -> list[tuple[int, Reading]]:
    """What a part is that is not read here; none when the marking is not known as such.

    >>> print(read_other_part("BC547B", ["BC547B"], None)[0][1].headline)
    transistor, not read here
    """
    code = pieces[0].upper()
    found = _cut_off(pieces) or _disc(pieces) or _type_number(code, len(pieces) == 1)
    if found is None:
        from repairlib.markings.tubes_and_cells import type_that_hurts

        hurts = type_that_hurts(text)
        if hurts is None:
            return []
        found = (*hurts, MEMORY)
    what, why, source = found
    if what in ON_MAINS:
        why += " It may sit on the mains: replace it only by the same type and rating."
    reading = Reading(
        kind="other-part",
        text=text,
        quantity="part",
        value=None,
        unit="",
        why=why,
        carries={"part": what},
        sources=(source,),
    )
    return [(OTHER_PART, reading)]


def _cut_off(pieces: list[str]) -> tuple[str, str, str] | None:
    """A temperature beside amperes, or behind TF: 72C 10A 250V, TF 128C 10A."""
    hot = [piece for piece in pieces if _is_temperature(piece)]
    amperes = any([piece[-1] == "A" and piece[:1].isdecimal() for piece in pieces])
    if not hot or not (amperes or pieces[0].upper() == "TF"):
        return None
    degrees = hot[0].rstrip("C").rstrip("°")
    return CUT_OFF, f"It opens for good at {degrees} °C: a thermal cut-off, no fuse.", PRACTICE


def _is_temperature(piece: str) -> bool:
    degrees = piece.removesuffix("C").removesuffix("°")
    return degrees != piece and degrees.isdecimal() and _COLDEST <= int(degrees) <= _HOTTEST


def _disc(pieces: list[str]) -> tuple[str, str, str] | None:
    """A varistor or thermistor: 10D471K, S10K275, 10471, 5D-11, NTC 5D-9."""
    word = pieces[0].upper()
    if word in ("MOV", "VDR"):
        return VARISTOR, f"{word} says varistor.", PRACTICE
    if word.startswith(("NTC", "PTC")):
        return (NTC if word[0] == "N" else PTC), f"{word[:3]} says thermistor.", PRACTICE
    if word.startswith(_NTC_NAMES):
        return NTC, f"{word} begins the type numbers of thermistors.", MEMORY
    for name in _VARISTOR_NAMES:  # ZNR 10K471, TVR14471, FNR-05K180
        if word.startswith(name):
            return VARISTOR, f"{name} begins the type numbers of varistors.", MEMORY
    size, letter, rest = word.partition("D")
    if letter and rest[:1] == "-" and rest[1:].isdecimal() and len(rest) <= 3 and _is_number(size):
        why = f"{size} Ω when cold, {rest[1:]} mm across: it limits the inrush and gets hot."
        return NTC, why, PRACTICE
    for mark in ("D", "K"):  # 10D471K, 07K471
        size, letter, rest = word.partition(mark)
        is_code = _is_varistor_code(rest[:3]) and (mark == "D" or rest[2] == "1")
        if letter and size in _DISCS and is_code and rest[3:] in _ENDS:
            return *_varistor(size, rest[:3]), PRACTICE
    code, letter, size = word.partition("KD")
    if letter and size in _DISCS and _is_varistor_code(code):  # 471KD14
        return *_varistor(size, code), PRACTICE
    if word.isdecimal() and len(word) == 5 and word[:2] in _DISCS and _is_varistor_code(word[2:]):
        return *_varistor(word[:2], word[2:]), PRACTICE
    if word[0] == "S" and word[1:3] in _DISCS and word[3:4] == "K" and word[4:].isdecimal():
        volts = word[4:]
        what = VARISTOR if int(volts) >= MAINS_AC else LOW_VARISTOR
        return what, f"{int(word[1:3])} mm across, for {volts} V AC; K is ±10 %.", PRACTICE
    return None


def _varistor(size: str, code: str) -> tuple[str, str]:
    volts = int(code[:2]) * 10 ** int(code[2])
    if volts * _AC_OF_VARISTOR < MAINS_AC:
        why = f"{int(size)} mm across; {volts} V is its varistor voltage: fit the same one only."
        return LOW_VARISTOR, why
    why = f"{int(size)} mm across; {volts} V is its varistor voltage, not the mains voltage."
    return VARISTOR, why


def _is_varistor_code(code: str) -> bool:
    is_code = len(code) == 3 and code.isdecimal() and code[2] in "012"
    return is_code and int(code[:2]) in E_SERIES["E24"] and int(code) >= 180


def _is_number(text: str) -> bool:
    return text.replace(".", "", 1).isdecimal()


def _type_number(code: str, alone: bool) -> tuple[str, str, str] | None:
    """What a type number of a semiconductor says by its first letters.

    One letter and figures are a transistor where nothing stands beside: C280 .1 250 is film.
    """
    for start, what in (("1N", DIODE), ("2N", TRANSISTOR), ("3N", TRANSISTOR)):
        if code.startswith(start) and (_figures(code[2:]) >= 3 or code in _GERMANIUM):
            return what, f"{start} begins the type numbers of {what}s.", MEMORY
    if code[:2] == "2S" and code[2:3] in _SHORT_JAPANESE and _figures(code[3:]) >= 2:
        return TRANSISTOR, "2S begins the Japanese type numbers of transistors.", MEMORY
    if _is_regulator(code):
        return REGULATOR, "78 and 79 begin the fixed regulators, positive and negative.", MEMORY
    if (
        code[:2] in ("74", "54")
        and code[2:4].isalpha()
        and _figures(code.lstrip("574HCTLSAF")) >= 1
    ):
        return CIRCUIT, "74 and letters begin logic circuits.", MEMORY
    letters = code[: len(code) - len(code.lstrip("ABCDEFGHIJKLMNOPQRSTUVWXYZ"))]
    rest = code[len(letters) :]
    least = 2 if letters in _TWO_FIGURES else 3
    if letters in _PREFIXES and _figures(rest) >= least:
        what = _PREFIXES[letters]
        return what, f"{letters} and figures make a type number: {what}.", MEMORY
    if code[:3] in _SMALL_CHINESE and _figures(rest) == 4:
        return TRANSISTOR, "S and four figures from 80 to 90: a small transistor.", MEMORY
    if code.startswith(("P4KE", "P6KE", "1.5KE")):
        return DIODE, "KE begins diodes that clip surges.", MEMORY
    if alone and len(letters) == 1 and letters in _SHORT_JAPANESE and _is_short(rest):
        return TRANSISTOR, f"Rather the transistor 2S{code}, which leaves off 2S.", MEMORY
    return None


def _is_regulator(code: str) -> bool:
    """7805, 78L05, L7812CV, LM7905: the figures behind 78 or 79 are the volts."""
    bare = code.removeprefix("LM").removeprefix("MC").removeprefix("UA").removeprefix("L")
    if bare[:2] not in ("78", "79"):
        return False
    volts = bare[2:].lstrip("LMST")
    return volts[:2] in _REGULATED and _figures(volts) == 2


def _is_short(rest: str) -> bool:
    """Whether the figures behind a letter are no code of a tantalum chip: 1815, 965."""
    if _figures(rest) == 4:
        return len(rest) <= 5
    return len(rest) == 3 and rest.isdecimal() and int(rest[:2]) not in E_SERIES["E24"]


def _figures(text: str) -> int:
    """How many figures stand at the start."""
    return len(text) - len(text.lstrip("0123456789"))
