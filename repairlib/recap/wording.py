"""How the words of a parts list are taken apart, so that no part is taken for another.

A word that is not known is tried by its stem (`unpol...`, `X1Y1`), then in pieces (`elect-BP`).
What is still not understood is handed back: who guesses there makes a bipolar part polar.
"""

from __future__ import annotations

import re
from typing import NamedTuple

from repairlib.core.typed.letters import without_accents
from repairlib.recap.words import (
    ALUMINIUM,
    BIPOLAR,
    FEATURE_OF,
    FORM_OF,
    KIND_OF,
    MAINS,
    NOT_FITTED,
    SAYS_NOTHING,
)

_WORD = r"\b"
_APART = r"[\s./-]{0,2}"
_POLE = r"p(?:ol(?:ari[sz]ed|ari[sz]é|arisiert|arity|ar|e)?)?\b\.?"
# What is written in several words or with signs, and the one word it becomes.
_PHRASES = [  # of English, German, French, Italian, Spanish and Dutch
    (re.compile(pattern, re.IGNORECASE), word)
    for pattern, word in (
        (rf"\b(?:n|non|b|bi|un){_APART}{_POLE}", "np"),
        (r"\b(?:no|not|non|without|ohne|keine?|nicht|sans)[\s-]+(?:polar\w*|pol\b|plus\b)", "np"),
        (r"\b(?:ungepolt\w*|ungep\b\.?|unpolar\w*|apolar\w*|неполяр\w*|двухполяр\w*)", "np"),
        (r"\bnon[\s-]+polair\w*", "np"),
        (
            r"\b(?:both[\s-]+ways|(?:any|either)[\s-]+way(?:[\s-]+round)?|polarity[\s-]+free"
            r"|back[\s-]+to[\s-]+back|anti[\s-]?series|no[\s-]*\+(?!\w))",
            "reversible",
        ),
        (r"\b(?:x|cross)[\s-]?over\b", "crossover"),
        (r"\bs[\s-]+corr(?:ection)?\b\.?", "s-correction"),
        (r"\b(?:niet|senza|sin)[\s-]+(?:ge)?polar?\w*", "np"),
        (
            r"\b(?:(?:do[\s-]+)?not|non?|un|niet|nicht|nie|sin|sans)[\s-]*(?:fitted|mounted|stuffed"
            r"|populated|installed|placed|used|fit|bestückt|bestueckt|monté|monte|câblé|cable"
            r"|montato|presente|montado|montar|instalado|gemonteerd|geplaatst|montować|montowac)\b",
            NOT_FITTED,
        ),
        (
            r"\b(?:dn[pfis]|ketu|entf(?:ä|ae)llt|entf\.|unbest(?:ü|ue)ckt|vervalt|vervallen)(?!\w)",
            NOT_FITTED,
        ),
        (r"\bhoriz(?:ontal)?\.?[\s-]+(?:mount\w*|mtg|type|lead\w*)", "axial"),
        (r"\bvert(?:ical)?\.?[\s-]+(?:mount\w*|mtg|type|lead\w*)", "radial"),
        (r"\bback[\s-]+up\b", "backup"),
        (r"(?<!\w)\+b\b", "supply"),
        (r"\bb\+(?!\w)", "supply"),
        (
            r"\b(?:filtre[\s-]+(?:de[\s-]+)?secteur|filtro[\s-]+(?:di[\s-]+rete|rete|de[\s-]+red))\b",
            "line-filter",
        ),
        (r"\bhigh[\s-]+ripple\b", "high-ripple"),
        (r"\blow[\s-]+z\b", "low-z"),
        (r"\blow[\s-]+e\.s\.r\.?", "low-esr"),
        (r"\bwet[\s-]+slug\b", "tantalum wet"),
        (r"\bmotor[\s-]*(?:run|start)\w*", "motor-run"),
        (r"\bacross[\s-]+(?:the[\s-]+)?(?:lines?|mains|ac)\b", "across-the-line"),
        (
            r"\bline[\s-]+(?:filter|bypass|to[\s-]+(?:line|earth|ground|neutral|chassis))",
            "line-filter",
        ),
        (r"\b(?:class|klasse)[\s-]*[xy]\b", "x-cap"),
        (r"\b[xy][\s-]*(?:class|type|caps?|capacitors?)\b", "x-cap"),
        (r"\bferrite[\s-]+bead", "ferrite-bead"),
        (r"\bsnap[\s-]+in\b", "snap-in"),
        (r"\blow[\s-]+leak(?:age)?\b", "low-leakage"),
        (r"\blow[\s-]+esr\b", "low-esr"),
        (r"\blow[\s-]+imp(?:edance)?\b", "low-impedance"),
        (r"\blow[\s-]+noise\b", "low-noise"),
        (r"\boil[\s-]+paper\b", "oil-paper"),
        (r"\bhigh[\s-]+ripple\b", "high-ripple"),
        (r"\bswitch(?:ed|ing)?[\s-]+mode\b", "switch-mode"),
    )
]
# Whether there is any of them, asked of small letters; most begin where a word does.
_AT_WORDS = [one.pattern for one, _ in _PHRASES if one.pattern.startswith(_WORD)]
_ELSEWHERE = [one.pattern for one, _ in _PHRASES if not one.pattern.startswith(_WORD)]
_ANY_PHRASE = re.compile(
    rf"{_WORD}(?=[a-z])(?:{'|'.join(one.removeprefix(_WORD) for one in _AT_WORDS)})"
    rf"|{'|'.join(_ELSEWHERE)}"
)
_STEMS = tuple(
    (kind, re.compile(stem))
    for kind, stem in (
        (BIPOLAR, r"(?:bip|unpol|npol|nonp|apol)[^\W\d]*|ungepol[^\W\d]*|[nb]pe?"),
        (MAINS, r"(?:mk[ptsc]|mp|cap)?(?:[xy][1-4])+(?:mk[ptsc]|mp|caps?)?|[xy]caps?"),
        (
            MAINS,
            r"(?:funk)?entst[^\W\d]*|suppress[^\W\d]*|antipara[^\W\d]*|interferen[^\W\d]*|antidist[^\W\d]*|ontstoor[^\W\d]*",
        ),
    )
)
_BETWEEN_PIECES = re.compile(r"[-./'_]+")
_INSIDE_WORDS = str.maketrans("", "", "-./'")
# A single letter is a tolerance or an axis, but for those that may stand for non-polar or a class.
_LETTERS = set("cdefghijklmoqrstvwz")
# A maker's series is two to four capitals or figures; with B, N, P, X or Y it may mean more, and ES
# has been a bipolar series.
_SERIES = re.compile(r"(?!ES$)[AC-MOQ-WZ0-9]{2,4}")


class Meaning(NamedTuple):
    """What one word says: kinds, builds and features; `unknown` are its pieces not understood."""

    kinds: tuple[str, ...] = ()
    forms: tuple[str, ...] = ()
    features: tuple[str, ...] = ()
    unknown: tuple[str, ...] = ()


def join_phrases(text: str) -> str:
    """`text` with names of several words made one.

    >>> join_phrases("elect n.pol"), join_phrases("Class X"), join_phrases("10 n polyester")
    ('elect np', 'x-cap', '10 n polyester')
    """
    if not _ANY_PHRASE.search(text.casefold()):
        return text
    for pattern, word in _PHRASES:
        text = pattern.sub(word, text)
    return text


def meaning(word: str) -> Meaning:
    """What a word says.

    >>> meaning("elect-BP").kinds
    ('aluminium electrolytic', 'bipolar electrolytic')
    >>> meaning("X2-MKP").kinds, meaning("gizmo").unknown
    (('mains suppression',), ('gizmo',))
    """
    known = without_accents(word).strip(".-'")
    if word == "al":
        return Meaning()  # Italian and Spanish; aluminium is written Al or AL
    if known == "al":
        return Meaning((ALUMINIUM,))
    if known in KIND_OF or known in FORM_OF or known in FEATURE_OF:
        found = [(table[known],) if known in table else () for table in (KIND_OF, FORM_OF)]
        return Meaning(*found, (FEATURE_OF[known],) if known in FEATURE_OF else ())
    if known == NOT_FITTED:
        return Meaning()
    bare = known.translate(_INSIDE_WORDS)
    for kind, stem in _STEMS:
        if stem.fullmatch(bare):
            return Meaning((kind,))
    pieces = [piece for piece in _BETWEEN_PIECES.split(word) if piece]
    if len(pieces) > 1:
        said = [meaning(piece) for piece in pieces]
        return Meaning(*(tuple(one for part in said for one in part[at]) for at in range(4)))
    if known in SAYS_NOTHING or known in _LETTERS or not known:
        return Meaning()
    return Meaning(unknown=(word.strip(".-'"),))


def may_be_a_series(word: str) -> bool:
    """Whether an unknown word looks like a maker's series and not like a short form of non-polar.

    >>> may_be_a_series("RGA"), may_be_a_series("NPX"), may_be_a_series("gizmo")
    (True, False, False)
    """
    return bool(_SERIES.fullmatch(word))
