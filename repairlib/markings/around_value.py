"""What stands around a value and is the same on every body: classes, approvals, series, remarks.

These pieces are set aside, each with its meaning, before the bodies of capacitors are tried.
"""

from __future__ import annotations

from repairlib.markings.clean_text import is_climate
from repairlib.markings.other_pieces import FILMS, PRACTICE, SAFETY_CLASSES, join_safety_classes
from repairlib.markings.voltage_codes import bare_volts, printed_volts

MEMORY = "from memory"
_APPROVALS = (
    "ENEC VDE UL CUL CURUS CULUS CSA BSI SEV SEMKO FIMKO NEMKO DEMKO CQC KC CE IMQ KEMA UL1414 "
    "EN132400 IEC60384-14 EN60384-14"
)
_IS_APPROVAL = frozenset(_APPROVALS.split())
_REMARKS = frozenset(
    ["LOW", "ESR", "LOWESR", "Z", "HIGH", "RIPPLE", "TEMP", "CAP", "CONDENSER", "PHOTO"]
)
_FLASH = frozenset(["PHOTOFLASH", "PHOTO-FLASH", "FLASH", "BLITZ", "STROBE"])
# word: the bodies that it stands on, and what it says
_ALUMINIUM = (("radial", "axial", "can"), "an aluminium electrolytic")
_FILM = (("capacitor", "film"), "film")
_BODY_WORDS = {
    **dict.fromkeys(("TANT", "TANTAL", "TANTALUM"), (("tantalum",), "tantalum")),
    **dict.fromkeys(("ELKO", "ELCO", "ELECT", "ELECTROLYTIC", "ELYT"), _ALUMINIUM),
    "GMV": (("capacitor", "ceramic"), "guaranteed minimum value: a disc of that or more"),
    **dict.fromkeys(("FILM", "MYLAR", "POLYESTER", "POLYPROPYLENE"), _FILM),
    **dict.fromkeys(("DISC", "CERAMIC", "CER"), (("capacitor", "ceramic"), "ceramic")),
    "MICA": (("capacitor",), "mica"),
}
PAPER = "paper"
_PAPER_LEAKS = "paper, which leaks with age: film of the same volts"
OIL, NO_PCB = "perhaps oil", "no PCB"
_OF_OIL = "MOTOR RUN MOTOR-RUN MOTORRUN BALLAST FLUORESCENT OIL OIL-FILLED"
_FILLED = frozenset(_OF_OIL.split())
_WITHOUT_PCB = ("NO PCB", "NON PCB", "PCB FREE", "NO-PCB", "NON-PCB", "PCB-FREE")
# Japanese letters of class 1 ceramics, from memory: first the coefficient, then its spread.
_OIL_PAPER = ("OIL-PAPER", "PIO")
_MARK_LETTERS = "LNRSTUZ"  # the others are units, safety classes or volts: 100MF, 472MY, 101KV
_CLASS_2_LETTERS, _BEFORE = "BDEF", "·"  # B, D, E, F of JIS, from memory: B 102K, E 103Z
_COEFFICIENTS, _SPREADS = "CLPRSTU", "GHJK"
_NO_SERIES = (
    *(
        "MEG",
        "MEGOHM",
        "KOHM",
        "MFD",
        "MF",
        "UF",
        "MMF",
        "VAC",
        "VDC",
        "WV",
        "START",
        "RUN",
        "NON",
        "BI",
        "UN",
    ),
    *("NTC", "PTC", "MOV", "VDR", "TVS", "FUSE", "COIL", "OHM", "OHMS"),
    *("TF", "AGC", "MDL", "GMA", "MDA", "SLOW", "FAST"),
)
_MOST_TANTALUM = 50.0  # V
_MOST_SURGE = 1.4  # surge volts over working volts
_OLD_CLASSES = {"X": "X", "Y": "Y", "x": "X", "y": "Y"}

Beside = dict[str, tuple]


def set_aside(cleaned: str, pieces: list[str]) -> tuple[list[str], Beside]:
    """The pieces that are left for the value, its volts and its tolerance, and the others by name.

    Each of these has what was read, the words for the why (or ""), and the source.

    >>> left, beside = set_aside("220 35V FK", ["220", "35V", "FK"])
    >>> left, beside["series"][0]
    (['220', '35V'], 'FK')
    """
    beside: Beside = {}
    if any([piece in SAFETY_CLASSES for piece in pieces]):
        pieces = [part for piece in pieces for part in _without_start(piece)]
    if len(pieces) > 2:
        pieces, classes = join_safety_classes(pieces)
        if classes is not None:
            beside[classes[0]] = classes[1:]
    if "/" in cleaned:
        pieces = _without_surge(pieces, beside)
    if len(pieces) > 2:
        pieces = _without_second_volts(pieces, beside)
    if "PCB" in cleaned.upper():
        pieces = _without_pcb(pieces, beside)
    left, approvals = [], []
    for place, piece in enumerate(pieces):
        if piece.upper() in _IS_APPROVAL:
            approvals.append(piece)
        elif not _put(piece, pieces[:place] + pieces[place + 1 :], beside):
            left.append(piece)
    if approvals:
        signs = ", ".join(approvals)
        beside["approvals"] = (signs, f"{signs}: signs of approval, no value", PRACTICE)
    return left, beside


def apart(piece: str) -> list[str]:
    """What is glued together taken apart: 104K275X2, MKP-X2, and E103Z with its letter in front."""
    if len(piece) == 5 and piece[0] in _CLASS_2_LETTERS and _is_disc_code(piece[1:]):
        return [f"{piece[0]}{_BEFORE}", piece[1:]]
    if len(piece) < 5 or not ("X" in piece or "Y" in piece):
        return [piece]
    for length in (4, 2):
        head, tail = piece[:-length], piece[-length:]
        if tail in SAFETY_CLASSES and (head.endswith("-") or len(head) > 3):
            return [head.removesuffix("-"), tail]
    return [piece]


def tantalum_print(pieces: list[str]) -> list[str]:
    """226 20K 942 with volts and tolerance taken apart: the code, 20 V, K, and the lot; else as is.

    >>> tantalum_print(["226", "20K", "942"]), tantalum_print(["103", "10K"])
    (['226', '20V', 'K', '942'], ['103', '10K'])
    """
    if not 2 <= len(pieces) <= 3:
        return pieces
    code, rated, *lot = pieces
    is_code = len(code) == 3 and code.isdecimal() and code[2] in "4567"
    if not is_code or rated[-1] not in "JKM" or not bare_volts(rated[:-1]):
        return pieces
    if float(rated[:-1]) > _MOST_TANTALUM or not all(map(str.isdecimal, lot)):
        return pieces
    return [code, f"{rated[:-1]}V", rated[-1], *lot]


def with_mark(piece: str) -> tuple[list[str], Beside]:
    """470JN: a code, its tolerance, and one more letter, a maker's mark; else the piece."""
    if len(piece) != 5 or not _is_code(piece[:4]) or piece[4] not in _MARK_LETTERS:
        return [piece], {}
    words = f"{piece[4]} behind it is a maker's mark, not read here"
    return [piece[:4]], {"mark": (piece[4], words, PRACTICE)}


def _is_disc_code(code: str) -> bool:
    """Whether it is the code of a disc, which no tantalum has: 102K, 103Z."""
    return _is_code(code) and (code[2] in "0123" or code[3] == "Z")


def _without_start(piece: str) -> list[str]:
    """A maker's number that ends in the code, taken apart: DE1E3KX222M; else the piece."""
    if len(piece) < 9 or not (piece.isalnum() and piece[0].isalpha() and piece[-5].isalpha()):
        return [piece]
    return [piece[:-4], piece[-4:]] if _is_code(piece[-4:]) else [piece]


def _put(piece: str, others: list[str], beside: Beside) -> bool:
    """Whether the piece is one of these; it is then put into `beside`."""
    said = _climate(piece) or _by_name(piece, others)
    if said is None or (said[0] in beside and said[0] not in ("remark", "filling")):
        return False
    beside.setdefault(said[0], said[1:])
    return True


def _climate(piece: str) -> tuple | None:
    """40/110/56: the coldest and hottest °C, and days of damp heat (IEC 60068-1)."""
    if not is_climate(piece):
        return None
    cold, hot, days = piece.split("/")[:3]
    words = f"{piece} is the climatic category: -{int(cold)} °C to {int(hot)} °C, {int(days)} days"
    return "climatic_category", piece, f"{words} of damp heat", MEMORY


def _by_name(piece: str, others: list[str]) -> tuple | None:
    """What a word says by its name, by the words beside it: a class, a body, a series."""
    if piece in _OLD_CLASSES and any(map(_has_figure, others)):
        old = _OLD_CLASSES[piece]
        words = f"{piece} is the class of an old mains part: fit an approved part of class {old} "
        return (
            "safety_class",
            old,
            f"{words}for these volts, and hold the order until looked at",
            MEMORY,
        )
    if not piece[0].isalpha() or not any(map(_has_figure, others)):
        return None
    word = piece.upper()
    if word in _OIL_PAPER or word in ("PAPER", "PAPIER"):
        kind = "oil-paper" if word in _OIL_PAPER else PAPER
        return "dielectric", kind, f"{piece} says {_PAPER_LEAKS}", PRACTICE
    if word in _FILLED:
        words = (
            "such parts were filled with oil, which may hold PCB unless it says that it has none"
        )
        return "filling", OIL, words, PRACTICE
    if word in _FLASH:
        words = f"{piece}: the flash tube beside it works at thousands of volts"
        return "use", "flash", words, PRACTICE
    if piece[1:] == _BEFORE:
        words = f"{piece[0]} before the code is the temperature characteristic of a disc"
        return "temperature_letter", piece[0], words, MEMORY
    if not piece.isalnum():
        return None
    if word == "WET":
        words = f"{piece} tantalum holds sulphuric acid: gloves and glasses"
        return "inside", "acid", words, MEMORY
    if word in _BODY_WORDS:
        bodies, what = _BODY_WORDS[word]
        return "body", bodies, f"{piece} says {what}", PRACTICE
    if word in _REMARKS and (word != "Z" or "LOW" in map(str.upper, others)):
        return "remark", piece, "", PRACTICE
    if len(piece) > 4 and piece[-1].isalpha() and any(map(_is_code, others)):
        return "series", piece, f"{piece} begins the maker's part number, not read here", PRACTICE
    if not 2 <= len(piece) <= 4 or not piece.isalpha() or not piece.isupper():
        return None
    return _letters(piece, others)


def _letters(piece: str, others: list[str]) -> tuple | None:
    """What two to four capitals beside a value say: a coefficient, no polarity, or a series."""
    if piece in _NO_SERIES or piece in FILMS or piece in ("NP", "BP", "NPO", "COG", "AC", "DC"):
        return None
    if len(piece) == 2 and _is_coefficient(piece) and any(map(_is_small_code, others)):
        words = f"{piece} is the temperature coefficient of a class 1 ceramic"
        return "temperature_coefficient", piece, words, MEMORY
    if "NP" in piece or "BP" in piece:
        return "polarity", "non-polar", f"{piece} says non-polar", MEMORY
    from repairlib.markings.date_codes import dates

    words = f"{piece} is a maker's series or lot mark, which is not read here"
    dated = dates(piece)
    if dated:
        words = f"{piece} is rather the maker's series; as a date it would be {' or '.join(dated)}"
    return "series", piece, words, PRACTICE


def _is_code(piece: str) -> bool:
    return len(piece) == 4 and piece[:3].isdecimal() and piece[3] in "JKMZ"


def _is_coefficient(piece: str) -> bool:
    return piece == "SL" or (piece[0] in _COEFFICIENTS and piece[1] in _SPREADS)


def _is_small_code(piece: str) -> bool:
    """Whether it is a code in pF with a tolerance letter, as on small ceramics: 101J."""
    return piece[:-1].isdecimal() and len(piece) in (3, 4) and piece[-1] in "BCDFGJKM"


def _has_figure(piece: str) -> bool:
    return not piece.isalpha() and any(map(str.isdecimal, piece[:4]))


def _without_surge(pieces: list[str], beside: Beside) -> list[str]:
    """The pieces without the surge volts behind the working volts: 50µF 350/385V."""
    for place in range(1, len(pieces) - 1):
        working, surge = _volts(pieces[place]), _volts(pieces[place + 1])
        if working and surge and working < surge <= working * _MOST_SURGE:
            words = f"{surge:g} V is the surge voltage, for moments only"
            beside["surge_voltage"] = (surge, words, MEMORY)
            return [*pieces[: place + 1], *pieces[place + 2 :]]
    return pieces


def _without_pcb(pieces: list[str], beside: Beside) -> list[str]:
    """The pieces without a mark such as NO PCBS, which is kept as what fills the part."""
    for length in (1, 2):
        for place in range(len(pieces) - length + 1):
            mark = " ".join(pieces[place : place + length])
            if mark.upper().rstrip("S") in _WITHOUT_PCB:
                beside["filling"] = (NO_PCB, f"{mark} says that it holds no PCB", PRACTICE)
                return pieces[:place] + pieces[place + length :]
    return pieces


def _without_second_volts(pieces: list[str], beside: Beside) -> list[str]:
    """The pieces without the AC volts that stand beside DC volts: 630VDC 250VAC."""
    found = [(place, printed_volts(piece)) for place, piece in enumerate(pieces)]
    rated = [(place, volts) for place, volts in found if volts]
    ac = [(place, volts[0]) for place, volts in rated if volts[1] == "AC"]
    if len(rated) != 2 or len(ac) != 1:
        return pieces
    place, volts = ac[0]
    words = f"{volts:g} V is the rating for AC, and no safety class: on the mains fit a class part"
    beside["ac_voltage"] = (volts, words, PRACTICE)
    return pieces[:place] + pieces[place + 1 :]


def _volts(piece: str) -> float | None:
    printed = printed_volts(piece)
    return printed[0] if printed else bare_volts(piece)
