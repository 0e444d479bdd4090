"""Whether an empty place may be on the mains, or at more than 60 V: then no part is chosen.

Words decide, and doubt goes to the safe side: a word that names the mains, a high voltage or what
makes one is enough, wherever it stands in the text. What lies behind a rectifier, a battery's B+
and the like is dangerous until somebody says its voltage. Common practice.
"""

from __future__ import annotations

import re
from typing import NamedTuple

from repairlib.core.limits import ES1, STEADY, TOUCHABLE_DC
from repairlib.core.quantity import brief
from repairlib.missing_parts.danger_words import (
    APPLIANCES,
    BRIDGES,
    CLASSES,
    EXCUSED,
    HIGH_NAMES,
    HIGH_WORDS,
    MAINS_WORDS,
    NO_CLASS,
    OTHER_BRIDGES,
    PARTED,
    SOUND,
    UNNAMED_NAMES,
    UNNAMED_WORDS,
)
from repairlib.missing_parts.volts import Said, volts_said

MAINS, TUBES, VOLTS, NOT_KNOWN = "mains", "high voltage", "more than 60 V", "not named"
TOUCHABLE_AC = float(STEADY[ES1].ac_rms or 0)
_BY_LETTERS = ("CX", "CY", "MOV", "VDR")  # references kept for parts across the mains


class Danger(NamedTuple):
    """What may be dangerous: MAINS, TUBES, VOLTS or NOT_KNOWN, and the `words` that say so."""

    kind: str
    words: str

    @property
    def why(self) -> str:
        """The danger in one sentence, without its full stop."""
        means = {
            MAINS: "says the mains, or may",
            TUBES: "names a high voltage, or may",
            VOLTS: "is more than may be touched",
            NOT_KNOWN: "may have any voltage as long as none is named",
        }
        return f"“{self.words}” {means[self.kind]}"


def _pattern(words: str, capitals: bool = False) -> re.Pattern[str]:
    return re.compile(words, re.VERBOSE | (0 if capitals else re.IGNORECASE))


_SIGNS = (
    (MAINS, _pattern(MAINS_WORDS)),
    (TUBES, _pattern(HIGH_WORDS)),
    (TUBES, _pattern(HIGH_NAMES, capitals=True)),
)
_UNTIL_NAMED = (_pattern(UNNAMED_WORDS), _pattern(BRIDGES), _pattern(UNNAMED_NAMES, capitals=True))
_APPLIANCES, _PARTED = _pattern(APPLIANCES), _pattern(PARTED)
_CLASSES, _NO_CLASS = _pattern(CLASSES, capitals=True), _pattern(NO_CLASS)
_NO_MAINS_BRIDGE = _pattern(OTHER_BRIDGES)
_EXCUSED = _pattern(EXCUSED)
# A set fed by the mains whose low voltage is named behind its transformer or its plug.
_SET = _pattern(
    r"\bmains[ -](?:powered|operated|driven|fed|adapt[eo]r|psu|clock|radio|timer|transformer)\b"
)
_BEHIND = _pattern(
    r"\b(?:after|behind|past|from|secondary)\b[^,;.]{0,24}\b"
    r"(?:transformer|adapt[eo]r|regulator)\b"
    r"|\badapt[eo]r[ -](?:jack|socket|input|plug)\b"
)
_LAN = _pattern(
    r"\b(?:ethernet|lan|rj-?45|magnetics)\b[^;]{0,60}\b(?:transformers?|cent(?:re|er)[ -]taps?)\b"
    r"|\bmagnetics\b"
)
_BATTERY = _pattern(r"\b(?:batter\w+|cells?|bms|li-?ion|pack)\b")
_OTHERWISE = {"B+": _BATTERY, **dict.fromkeys(("bridge", "inverter"), _NO_MAINS_BRIDGE)}


def volts_there(text: str) -> list[Said]:
    """The voltages of a text that may lie there.

    A LAN socket keeps its cable off with parts rated for thousands of volts that it never has.
    """
    said = volts_said(text)
    return [one for one in said if one.volts < 1e3] if _LAN.search(text) else said


def danger_of(text: str, letters: str = "", nets: tuple[str, ...] = ()) -> Danger | None:
    """The danger that `text`, the reference and the names of the `nets` tell of, or None.

    >>> danger_of("C? from HT to the grid of V2").kind, danger_of("C? mains hum filter")
    ('high voltage', None)
    >>> danger_of("C? behind the rectifier").kind, danger_of("C? behind the rectifier, 12 V")
    ('not named', None)
    """
    plain = text.replace("_", " ")
    said = volts_there(plain)
    for one in said:
        limit = TOUCHABLE_AC if one.ac else TOUCHABLE_DC
        if one.volts > limit:
            return Danger(VOLTS, one.words)
    left = _EXCUSED.sub(" ", plain)
    if said and _BEHIND.search(left):
        left = _SET.sub(" ", left)
    for kind, signs in _SIGNS:
        found = signs.search(left)
        if found:
            return Danger(kind, found[0].strip())
    appliance = _APPLIANCES.search(left)
    if appliance and not _PARTED.search(left):
        return Danger(MAINS, appliance[0].strip())
    safety_class = _CLASSES.search(left) if letters in ("", "C", "cap", "capacitor") else None
    if safety_class and not (said or _NO_CLASS.search(left)):
        return Danger(MAINS, safety_class[0])
    if letters in _BY_LETTERS and not said:
        return Danger(MAINS, letters)
    return _by_letters(nets, left) or _apart(nets) or _unnamed(left, said)


def _by_letters(nets: tuple[str, ...], text: str) -> Danger | None:
    """L, N and PE as names of nets: the letters of the mains, unless sound has a left channel."""
    letters = [re.match(r"\s*(L[123]?|N|PE)(?=$|[ ,(])", net) for net in nets]
    named = [found[1] for found in letters if found]
    if len(named) == 2 or "N" in named or "PE" in named:
        return Danger(MAINS, " and ".join(named))
    if named == ["L"] and not _SOUNDS.search(text) and not volts_said(text):
        return Danger(MAINS, "L")
    return None


_SOUNDS = _pattern(
    rf"\b{SOUND}\b|\b(?:op-?amp|codec|amp\w*|dac|adc|speaker|channel|L[ ]out|out[ ]L)\b"
)


def _apart(nets: tuple[str, ...]) -> Danger | None:
    """Two supplies that are touchable each, and more than 60 V apart."""
    volts = [[one.signed for one in volts_said(net)] for net in nets]
    if len(volts) == 2 and all(volts):
        between = abs(volts[0][0] - volts[1][0])
        if between > TOUCHABLE_DC:
            return Danger(VOLTS, f"{brief(between, 'V')} from one side to the other")
    return None


def _unnamed(text: str, said: list[Said]) -> Danger | None:
    if said:
        return None
    for signs in _UNTIL_NAMED:
        found = signs.search(text)
        if found and not (found[0] in _OTHERWISE and _OTHERWISE[found[0]].search(text)):
            return Danger(NOT_KNOWN, found[0].strip())
    return None
