"""Names of bodies as people write them: 208 mil, 6 x 5, SO-8 narrow, TSSOP8, DIP-8."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from repairlib.core.errors import RepairlibError, as_printed
from repairlib.firmware.outlines import LEADS, OUTLINES, PINS, UNDERNEATH, Outline, within

_SIDES = re.compile(r"(\d+(?:[.,]\d+)?)\s*(?:mm)?\s*(?:x|×|by|\*)\s*(\d+(?:[.,]\d+)?)\s*(?:mm)?")
_MILS = re.compile(r"(\d{2,3})\s*[- ]?(?:mils?|thou)\b")
_MILLIMETRES = re.compile(r"(\d+(?:[.,]\d+)?)\s*mm\b")
_FAMILY = re.compile(
    r"\b(?:(\d{1,2})[- ]?(?:pins?|leads?|pads?)?[- ]?)?"
    r"(tssop|soic|sop|so|pdip|dip|dil|wson|uson|dfn|udfn|son)(?:[- ]?(\d{1,2}))?(w|n)?\b"
)
_ENDS_OF = {
    **dict.fromkeys(("tssop", "soic", "sop", "so"), LEADS),
    **dict.fromkeys(("pdip", "dip", "dil"), PINS),
    **dict.fromkeys(("wson", "uson", "dfn", "udfn", "son"), UNDERNEATH),
}
_ALSO_CALLED = {200.0: 208.0, 209.0: 208.0}  # mil


def body_typed(value: object, among: Sequence[Outline] = tuple(OUTLINES.values())) -> str:
    """The name of a body as people write it: 150mil, 6 x 5, SO-8 narrow, TSSOP8, DIP-8, 5.3 mm.

    Raises RepairlibError for what names none of `among`, and for what names several: those.

    >>> body_typed("6 x 5"), body_typed("SOIC-8, 208 mil"), body_typed("DIP-8")
    ('no leads, 6 × 5 mm', '208 mil', 'pins, 300 mil')
    """
    typed = as_printed(value).casefold()
    left = [one for one in among if one.name.casefold().replace(" ", "") == typed.replace(" ", "")]
    if not left:
        left = _that_fit(typed, among)
    if len(left) == 1:
        return left[0].name
    if left and len(left) < len(among):
        wrong = "a name of several bodies: measure the plastic between its leads"
        raise RepairlibError(value, wrong, "; ".join(_with_width(one) for one in left))
    raise RepairlibError(value, "not a known body", "; ".join(one.name for one in among))


def _that_fit(typed: str, among: Iterable[Outline]) -> list[Outline]:
    """The bodies that all of what was typed fits; all of them where nothing in it names one."""
    left = list(among)
    if sides := _SIDES.search(typed):
        pair = sorted(float(one.replace(",", ".")) for one in sides.groups())
        left = [one for one in left if _has_sides(one, pair)]
    elif mils := _MILS.search(typed):
        size = _ALSO_CALLED.get(float(mils[1]), float(mils[1]))
        left = [one for one in left if f"{size:g} mil" in one.name]
    elif width := _MILLIMETRES.search(typed):
        left = [one for one in left if within(float(width[1].replace(",", ".")), one.width)]
    if family := _FAMILY.search(typed):
        left = [one for one in left if one.ends == _ENDS_OF[family[2]]]
        left = [one for one in left if ("TSSOP" in one.name) == (family[2] == "tssop")]
        count = family[1] or family[3]
        left = [one for one in left if not count or one.leads == int(count)]
    for word, mil in (("narrow", "150"), ("wide", "208")):
        if re.search(rf"\b{word}\b", typed) and any(mil in one.name for one in left):
            left = [one for one in left if mil in one.name]
    return left


def _has_sides(one: Outline, pair: Sequence[float]) -> bool:
    drawn = sorted((one.width, one.length))
    return all(within(size, side) for size, side in zip(pair, drawn, strict=True))


def _with_width(one: Outline) -> str:
    return f"{one.name} ({one.width[0]:g} to {one.width[1]:g} mm wide)"
