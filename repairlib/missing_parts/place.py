"""The empty place of a part, as people type it: letter, pads, the net each side, neighbours, twin.

Read clause by clause. What is said of a twin is kept apart, because "twin channel has 10 µF" says
nothing of the nets here. Words that say nothing to this reader are handed back and not lost.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, field, replace

from repairlib.core.errors import RepairlibError
from repairlib.core.limits import TOUCHABLE_DC
from repairlib.missing_parts.danger import MAINS, Danger, danger_of, volts_there
from repairlib.missing_parts.footprint import Footprint, read_footprint
from repairlib.missing_parts.letters import WORDS
from repairlib.missing_parts.nets import Net, net_of, nets_in
from repairlib.missing_parts.place_words import IN_LINE, MARKS, PLAIN_WORDS
from repairlib.missing_parts.roles import roles_in, words_named
from repairlib.missing_parts.twins import SPEAKS, Twin, read_twin

LONGEST = 1000  # characters; a place is a few lines
EXAMPLE = (
    "C? 2 pads 3.2 x 1.6 mm, between +3.3 V and ground, near regulator U2 output, "
    "twin channel has 10 µF"
)


@dataclass(frozen=True, slots=True)
class Place:
    """An empty place. `letters` of its reference ("" unknown), `nets` known (none, one or two).

    `near` are the roles that the neighbours' words name, `marks` what is printed round the pads,
    `volts` the highest voltage that is said, `unread` the words that were not understood, `danger`
    whether mains or more than 60 V may lie there: then no part is chosen.
    """

    text: str
    letters: str = ""
    footprint: Footprint = field(default_factory=Footprint)
    nets: tuple[Net, ...] = ()
    near: frozenset[str] = frozenset()
    marks: tuple[str, ...] = ()
    twin: Twin | None = None
    volts: float | None = None
    unread: tuple[str, ...] = ()
    danger: Danger | None = None


_REFERENCE = re.compile(
    r"\s*(?:what (?:was|is) |missing |lost |torn.off |part )*"
    r"([A-Z]{1,3}|[a-z](?=\?|\d))\s?(?:\d{1,4}[A-Za-z]?|\?+|[xX]+)?(?=[\s,:;.?]|$)"
)
_SAID_REFERENCE = re.compile(
    r"\b(?i:ref\w*|letters?|designator|silk\w*|marked|labell?ed|named|called|printed|written)\b"
    r"[ :='\"]*"
    r"(?:is|says|reads|shows|letter|mark|print)*[ :='\"]*\b([A-Z]{1,3})(?:\d{1,4}|\?|\b)(?!\w)"
)
# "missing coil", "Resistor missing", "a diode is gone": the kind in a word, at the beginning.
_KIND_WORD = rf"({'|'.join(WORDS)})"
_SAID_KIND = re.compile(
    r"\W*(?:(?:the|a|an|small|big|little|tiny|chip|smd|lost|torn[ -]off|torn|gone|missing)\s+)*"
    rf"(?:(?<=missing ){_KIND_WORD}\b"
    rf"|{_KIND_WORD}\s+(?:is\s+|was\s+)?(?:missing|gone|lost|torn|off|burnt|burned|ripped|broken"
    rf"|knocked)\b)",
    re.IGNORECASE,
)
_ON_SILK = re.compile(r"\b([A-Z]{1,3})(?:\d{1,4}|\?)? (?:on|in) (?:the )?silk")
_LETTERS = """
    C CE EC CX CY CP R RS RN RV VR RT TH NTC PTC L FB FL LF FER B D ZD VD CR LED DS TVS DZ VZ LD F
    FU FS PF Y X XTAL Q TR T VT U IC J JP JR W LK S SW K M P CN TP MOV V Z
"""
LETTERS = frozenset(_LETTERS.split())


def read_place(text: str) -> Place:
    """The empty place that `text` describes, in any order, a decimal point or a decimal comma.

    Raises RepairlibError for no text, one longer than 1000 characters, and a size that no part of
    a board has. Nothing else is refused: what was not understood stands in `unread`.

    >>> place = read_place("C? 2 pads 3.2 x 1.6 mm, between +3.3 V and ground, twin has 10 µF")
    >>> place.letters, [net.name for net in place.nets], place.volts, place.twin.value
    ('C', ['+3.3 V', 'ground'], 3.3, 10 µF)
    """
    plain = _tidy(text)
    twin, here = _apart(plain)
    letters, here = _letters(here)
    footprint, sizes = read_footprint(here)
    without_sizes = _blank(here, sizes)
    nets, where = nets_in(without_sizes)
    around = _blank(without_sizes, where)
    marks = [name for name, words in MARKS.items() if words.search(around)]
    marks += [name for name, words in IN_LINE.items() if words.search(here)]
    volts = [net.volts for net in nets if net.volts is not None]
    volts = volts or [one.signed for one in volts_there(around)]
    place = Place(
        text=plain,
        letters=letters,
        footprint=footprint,
        nets=nets,
        near=roles_in(around),
        marks=tuple(marks),
        twin=read_twin(twin) if twin else None,
        volts=max(volts, key=abs) if volts else None,
        unread=_unread(without_sizes),
    )
    return _judged(place, plain)


def with_more(
    place: Place, *, one_side: str = "", other_side: str = "", near: str = "", twin: str = ""
) -> Place:
    """`place` with what was typed apart from its text; what is typed apart is held to be right.

    >>> with_more(read_place("R7 0402"), one_side="RESET", other_side="3.3 V").volts
    3.3
    """
    sides = [net_of(_tidy(side)) for side in (one_side, other_side) if side.strip()]
    nets = tuple(sides) or place.nets
    volts = [net.volts for net in nets if net.volts is not None]
    more = replace(
        place,
        nets=nets,
        near=place.near | roles_in(_tidy(near)) if near.strip() else place.near,
        twin=read_twin(_tidy(twin)) if twin.strip() else place.twin,
        volts=max(volts, key=abs) if volts else place.volts,
    )
    return _judged(more, ", ".join(filter(None, (place.text, one_side, other_side, near, twin))))


def _judged(place: Place, text: str) -> Place:
    """`place` with the danger, and the battery, that the whole `text` tells of.

    Whether the mains are near goes by the danger alone."""
    danger = danger_of(text, place.letters, tuple(net.name for net in place.nets))
    mains = frozenset({"mains"})
    battery = frozenset({"battery"}) & roles_in(text)
    on_mains = danger is not None and danger.kind == MAINS
    return replace(
        place,
        nets=tuple(replace(net, roles=net.roles - mains) for net in place.nets),
        volts=place.volts if danger or abs(place.volts or 0) <= TOUCHABLE_DC else None,
        near=(place.near | mains if on_mains else place.near - mains) | battery,
        danger=danger,
    )


def _tidy(text: str) -> str:
    """`text` with plain signs, decimal points and single spaces."""
    if not isinstance(text, str):
        raise RepairlibError(text, "not a text", EXAMPLE)
    if len(text) > LONGEST:
        raise RepairlibError(text[:40] + " …", f"longer than {LONGEST} characters", EXAMPLE)
    plain = re.sub(r"(?<=\d),(?=\d)", ".", text.replace("×", "x").replace("−", "-"))
    plain = re.sub(r"[^\S\n]+", " ", plain.replace("\u2126", "Ω").replace("μ", "µ")).strip()
    if not any(one.isalnum() for one in plain):
        raise RepairlibError(text, "nothing was typed", EXAMPLE)
    return plain


def _apart(text: str) -> tuple[str, str]:
    """What is said of a twin, and the rest of the text.

    A clause that names a twin is about it, and so is one behind it that says what it has.
    """
    twin, here, about_twin = [], [], False
    for clause in re.split(r"([,;\n]|\.(?=\s|$))", text):
        speaks = SPEAKS.search(clause)
        if speaks:
            before = clause[: speaks.start()]
            here.append(before if re.search(r"\b(?:between|near|to|from)\b", before) else "")
            twin.append(clause)
            about_twin = True
        elif about_twin and (len(clause) == 1 or _GOES_ON.match(clause)):
            twin.append(clause)
        else:
            about_twin = about_twin and not clause.strip()
            here.append(clause)
    return "".join(twin).strip(" ,;\n."), "".join(here)


_GOES_ON = re.compile(
    r"\s*(?:and |which |it |there |that |but |also )*(?:reads?|measures?|measured|is (?:a|an)\b|has"
    r"|in.?circuit|about|approx|\d+(?:\.\d+)?\s?(?:[pnuµmkM]?[FHΩ]|[kM]\b|ohm)"
    r"|\d+[kRµun]\d*\b|ceramic|there)",
    re.IGNORECASE,
)


def _letters(text: str) -> tuple[str, str]:
    """The letters of the reference, and the text without it."""
    found = _REFERENCE.match(text)
    said = _SAID_REFERENCE.search(text) or _ON_SILK.search(text)
    if found and found[1].upper() in LETTERS:
        guessed, rest = found[1].upper(), text[found.end() :].lstrip(" ?:,;")
        # What is printed says more than the letter that somebody began with: R?, written RT1.
        more = said and said[1] in LETTERS and said[1] != guessed and said[1].startswith(guessed)
        return (said[1] if said and more else guessed), rest
    if said and said[1] in LETTERS:
        return said[1], _blank(text, [said.span()])
    word = _SAID_KIND.match(text)
    return (next(filter(None, word.groups())).casefold() if word else ""), text


def _blank(text: str, spans: Iterable[tuple[int, int]]) -> str:
    """`text` with spaces, and a comma at the end, where the spans are."""
    for begin, end in spans:
        text = text[:begin] + " " * (end - begin - 1) + "," + text[end:]
    return text


def _unread(text: str) -> tuple[str, ...]:
    """Words of three letters or more that name nothing that is known here."""
    known = bytearray(len(text))
    for begin, end in words_named(text):
        known[begin:end] = b"\1" * (end - begin)
    for mark in MARKS.values():
        for found in mark.finditer(text):
            known[found.start() : found.end()] = b"\1" * (found.end() - found.start())
    words = [
        found[0]
        for found in re.finditer(r"[^\W\d_]{3,}", text)
        if not known[found.start()] and found[0].casefold() not in PLAIN_WORDS
    ]
    return tuple(dict.fromkeys(words))
