"""The empty pads of a part as people type them: how many, how large, and which bodies fit them."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Any

from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import read_quantity
from repairlib.markings import CHIPS, TANTALUM_CASES
from repairlib.missing_parts.tantalum_cases import cases

SMALLEST, LARGEST = 0.1e-3, 100e-3  # m; what can be a part's pads on a board of the bench
ACCEPTED = "pads such as 0603, 3.2 x 1.6 mm, or 2 pads 0.9 x 0.8 mm, gap 0.7 mm"
_ALIKE = 0.15  # by how much a measured length may differ from the size of a body: from memory

# Name as printed or said: how long and wide the body is in m, and its pads. From memory.
PACKAGES = {
    "sot-23": (2.9e-3, 1.3e-3, 3),
    "sot-323": (2.0e-3, 1.25e-3, 3),
    "sot-223": (6.5e-3, 3.5e-3, 4),
    "sot-89": (4.5e-3, 2.5e-3, 3),
    "sod-123": (2.7e-3, 1.6e-3, 2),
    "sod-323": (1.7e-3, 1.25e-3, 2),
    "sod-523": (1.2e-3, 0.8e-3, 2),
    "melf": (5.0e-3, 2.5e-3, 2),
    "mini-melf": (3.5e-3, 1.5e-3, 2),
    "sma": (4.3e-3, 2.6e-3, 2),
    "smb": (4.3e-3, 3.6e-3, 2),
    "smc": (7.0e-3, 5.9e-3, 2),
}
_PACKAGE = re.compile(
    r"\b(mini-?melf|melf|so[td][- ]?\d{2,3}(?:-[3-8])?|sm[abc])(?!\w)", re.IGNORECASE
)
_COUNT = re.compile(
    r"\b(?:(?P<figure>\d{1,3})|(?P<word>two|three|four|five|six|eight))[ -]"
    r"(?:empty |bare |torn |small |large |big |tiny |round |square |smd |solder )*"
    r"(?:pads?|lands?|holes?|pins?(?: footprint| package))\b",
    re.IGNORECASE,
)
_WORDS = {"two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "eight": 8}
_NUMBER = r"\d+(?:\.\d+)?"
_AREA = re.compile(
    rf"({_NUMBER})\s*(mm|mil|in)?\s*(?:x|×|\*|by)\s*({_NUMBER})\s*(mm|mil|in)?(?!\w)", re.IGNORECASE
)
_GAP = re.compile(
    rf"(?:(?:gap|space|distance|spacing|apart)(?: between(?: them| the pads)?)?(?: of| is|:|=)?\s*"
    rf"({_NUMBER})\s*(mm|mil|in)?|({_NUMBER})\s*(mm|mil)\s*"
    r"(?:gap(?! ?(?:of|is|:|=)? ?\d)|apart|between))(?!\w)",
    re.IGNORECASE,
)
_CODE = re.compile(r"(?<![\w.])(\d{4,5})(?:\s*(metric|imperial))?(?![\w.])", re.IGNORECASE)
_CASE = re.compile(
    r"\b(?:case|size)[ :-]?([A-EXV])\b|(?<!\w)([B-EXV])[ -](?:case|size)\b"
    r"|(?<!\w)(A)(?:-case| case (?:tantalum|pads?))\b"
)
_EIA = re.compile(r"(?<![\w.])(\d{4})-(\d{2})(?![\w.])")
_ROUND = re.compile(
    rf"\b(?:round|circle|circular|ring|outline)\w*(?: [a-z]+){{0,3}}? ({_NUMBER})\s*mm"
    rf"|({_NUMBER})\s*mm (?:circle|round|ring|diameter|can)"
    rf"|(?:diameter|⌀|ø)\s*({_NUMBER})",
    re.IGNORECASE,
)
_PAD_ITSELF = re.compile(r"\b(?:each|pad is|pads are|per pad|of (?:each|one) pad)\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Footprint:
    """What is left where the part stood; lengths in metres, None where nothing was said.

    `length` and `width` are those of the body that fits; `pad` is one pad, `gap` lies between two.
    `imperial` is the chip size such as "0603", `case` a tantalum case by letter or EIA number,
    `package` a name such as "sot-23", `across` the diameter of a round outline.
    """

    pads: int | None = None
    length: float | None = None
    width: float | None = None
    pad: tuple[float, float] | None = None
    gap: float | None = None
    imperial: str = ""
    case: str = ""
    package: str = ""
    across: float | None = None
    through_holes: bool = False

    def __str__(self) -> str:
        said = [f"{self.pads} pads"] if self.pads else []
        if self.imperial or self.package or self.case:
            case = f"tantalum case {self.case}" if self.case else ""
            said.append(" or ".join(filter(None, (self.imperial, self.package, case))))
        if self.length and self.width:
            said.append(f"a body of about {self.length * 1e3:.3g} × {self.width * 1e3:.3g} mm")
        if self.across:
            said.append(f"an outline {self.across * 1e3:.3g} mm across")
        return ", ".join(said) or "pads not described"


def read_footprint(text: str) -> tuple[Footprint, tuple[tuple[int, int], ...]]:
    """The pads that `text` describes, and where in it they are described.

    A size is that of the body, unless a gap is given or the text says "each": then it is one pad,
    and the body reaches from the middle of one pad to that of the other. Decimal points only.
    Raises RepairlibError for a length that no part has.

    >>> print(read_footprint("2 pads 3.2 x 1.6 mm")[0])
    2 pads, 1206 or tantalum case A, a body of about 3.2 × 1.6 mm
    >>> print(read_footprint("pads 0.9 x 0.8 mm, gap 0.7 mm")[0])
    2 pads, 0603, a body of about 1.6 × 0.8 mm
    """
    spans: list[tuple[int, int]] = []

    def seen(pattern: re.Pattern) -> re.Match | None:
        found = pattern.search(text)
        if found:
            spans.append(found.span())
        return found

    count, package, eia = seen(_COUNT), seen(_PACKAGE), seen(_EIA)
    code, case = seen(_CODE), seen(_CASE)
    area, gap, ring = seen(_AREA), seen(_GAP), seen(_ROUND)
    holes = re.search(r"\b(?:holes?|through.?hole|radial|axial|leaded)\b", text, re.IGNORECASE)
    said: dict[str, Any] = {"through_holes": bool(holes)}
    if count:
        said["pads"] = int(count["figure"] or _WORDS[count["word"].casefold()])
    if package:
        said |= _of_package(package[1])
    elif eia and eia[0] in cases():
        said |= _of_eia(eia[0])
    elif code and _metric_of(code):
        said |= _of_code(code)
    elif code and _eia_like(code[1]):
        said |= _of_case(_eia_like(code[1]))
    elif case:
        said |= _of_case(case[1] or case[2] or case[3])
    if gap:
        said["gap"] = _metres(gap[1] or gap[3], gap[2] or gap[4])
    if area:
        said |= _of_area(area, said, bool(_PAD_ITSELF.search(text)))
    if ring:
        said["across"] = _metres(ring[1] or ring[2] or ring[3], "mm")
    if "pads" not in said and ("length" in said or "across" in said):
        said["pads"] = 2
    return Footprint(**said), tuple(spans)


def _metres(figure: str, unit: str | None) -> float:
    factor = {"mil": 25.4e-6, "in": 25.4e-3}.get((unit or "mm").casefold(), 1e-3)
    metres = read_quantity(figure).value * factor
    if not SMALLEST <= metres <= LARGEST:
        raise RepairlibError(f"{figure} {unit or 'mm'}", "no pad of a board is that size", ACCEPTED)
    return metres


def _metric_of(code: re.Match) -> str:
    """The imperial size that a code names, or "" where it is none."""
    figures, system = code[1], (code[2] or "").casefold()
    if figures in CHIPS and system != "metric":
        return figures
    return next((one for one, (metric, _) in CHIPS.items() if metric == figures), "")


def _of_code(code: re.Match) -> dict:
    imperial = _metric_of(code)
    metric = CHIPS[imperial][0]
    length, width = float(f"{metric[:2]}e-4"), float(f"{metric[2:]}e-4")
    return {"imperial": imperial, "length": length, "width": width} | _case_like(length, width)


def _of_eia(eia: str) -> dict:
    case = cases()[eia]
    return {"case": eia, "length": case.length, "width": case.width}


def _eia_like(figures: str) -> str:
    """The usual tantalum case of a size without its height, such as D for 7343, or ""."""
    sizes = {letter: TANTALUM_CASES[letter][0][0] for letter in "BCD"}
    return next((letter for letter, size in sizes.items() if size.startswith(figures)), "")


def _of_case(letter: str) -> dict:
    size = TANTALUM_CASES[letter][0][0]
    return {"case": letter, "length": float(f"{size[:2]}e-4"), "width": float(f"{size[2:4]}e-4")}


def _of_package(name: str) -> dict:
    name = re.sub(r"^(so[td])[- ]?(?=\d)", r"\1-", name.casefold())
    name = name.replace("minimelf", "mini-melf")
    name, _, count = name.rpartition("-") if name.count("-") > 1 else (name, "", "")
    if name not in PACKAGES:
        return {"package": name}
    length, width, pads = PACKAGES[name]
    return {"package": name, "length": length, "width": width, "pads": int(count or pads)}


def _of_area(area: re.Match, said: dict, each: bool) -> dict:
    unit = area[4] or area[2]
    one, other = _metres(area[1], unit), _metres(area[3], unit)
    gap = said.get("gap")
    if gap is None and not each:
        length, width = max(one, other), min(one, other)
        return {"length": length, "width": width} | _fitting(length, width, said)
    pad = {"pad": (one, other)}
    if gap is None or "length" in said:
        return pad
    # From middle to middle of the pads; the first figure lies along the part. From memory.
    length, width = gap + one, other
    return pad | {"length": length, "width": width} | _fitting(length, width, said)


def _fitting(length: float, width: float, said: dict) -> dict:
    if said.get("package") or said.get("imperial") or said.get("pads", 2) != 2:
        return {}
    near = {}
    for imperial, (metric, _) in CHIPS.items():
        body = float(f"{metric[:2]}e-4"), float(f"{metric[2:]}e-4")
        if _about(length, body[0]) and _about(width, body[1], 2):
            near[imperial] = abs(length / body[0] - 1) + abs(width / body[1] - 1)
    fits = {"imperial": min(near, key=near.__getitem__)} if near else {}
    return fits | _case_like(length, width)


def _case_like(length: float, width: float) -> dict:
    """The tantalum case of that length and width, where there is one."""
    for letter in "ABCDR":
        size = TANTALUM_CASES[letter][0][0]
        if _about(length, float(f"{size[:2]}e-4")) and _about(width, float(f"{size[2:4]}e-4")):
            return {"case": letter}
    return {}


def _about(one: float, other: float, times: float = 1) -> bool:
    return abs(one / other - 1) <= _ALIKE * times
