"""The empty place of a part, as people type it: letter, pads, the net each side, neighbours, twin.

Read clause by clause. What is said of a twin is kept apart, because "twin channel has 10 µF" says
nothing of the nets here. Words that say nothing to this reader are handed back and not lost.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field, replace

from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import read_quantity
from repairlib.missing_parts.footprint import Footprint, read_footprint
from repairlib.missing_parts.place_words import MARKS, PLAIN_WORDS
from repairlib.missing_parts.roles import roles_in, words_named
from repairlib.missing_parts.twins import SPEAKS, Twin, read_twin

LONGEST = 1000  # characters; a place is a few lines
EXAMPLE = (
    "C? 2 pads 3.2 x 1.6 mm, between +3.3 V and ground, near regulator U2 output, "
    "twin channel has 10 µF"
)
HIGHEST_VOLTS = 1e5


@dataclass(frozen=True, slots=True)
class Net:
    """What lies at one side: its `name` as typed, `volts` or None, and the roles its words name."""

    name: str
    volts: float | None = None
    roles: frozenset[str] = frozenset()

    @property
    def is_ground(self) -> bool:
        return "ground" in self.roles and "rail" not in self.roles and not self.roles & _SIGNALS

    @property
    def is_rail(self) -> bool:
        """A supply: what else its words name, such as the chip it feeds, does not change that."""
        return bool(self.roles & _SUPPLIES) and not self.roles & _SIGNALS and not self.is_ground

    @property
    def side(self) -> str:
        """ "ground", "rail", or "signal" for a pin or a line, also one that nobody named."""
        return "ground" if self.is_ground else "rail" if self.is_rail else "signal"


_SUPPLIES = frozenset(("rail", "regulator output", "regulator input", "power input"))
_SIGNALS = frozenset(
    (
        *("feedback", "bootstrap", "compensation", "soft start", "enable", "reset", "shared bus"),
        *("open drain", "data line", "bus pair", "switch node", "switched end", "source end"),
        "reference",
    )
)


@dataclass(frozen=True, slots=True)
class Place:
    """An empty place. `letters` of its reference ("" unknown), `nets` known (none, one or two).

    `near` are the roles that the neighbours' words name, `marks` what is printed round the pads,
    `volts` the highest voltage that is said, `unread` the words that were not understood.
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


_REFERENCE = re.compile(
    r"\s*(?:what (?:was|is) |missing |lost |torn.off |part )*"
    r"([A-Z]{1,3}|[a-z](?=\?|\d))\s?(?:\d{1,4}[A-Za-z]?|\?+|[xX]+)?(?=[\s,:;.?]|$)"
)
_SAID_REFERENCE = re.compile(
    r"\b(?i:ref\w*|letters?|designator|silk\w*|marked|labell?ed|named|called|printed)\b[ :='\"]*"
    r"(?:is|says|reads|shows|letter|mark|print)*[ :='\"]*\b([A-Z]{1,3})(?:\d{1,4}|\?|\b)(?!\w)"
)
_ON_SILK = re.compile(r"\b([A-Z]{1,3})(?:\d{1,4}|\?)? (?:on|in) (?:the )?silk")
_LETTERS = """
    C CE EC CX CY CP R RS RN RV VR RT TH NTC PTC L FB FL LF FER B D ZD VD CR LED DS TVS DZ VZ LD F
    FU FS PF Y X XTAL Q TR T VT U IC J JP JR W LK S SW K M P CN TP MOV V Z
"""
LETTERS = frozenset(_LETTERS.split())
_STOP = (
    r"(?=\s*(?:[,;\n]|\.(?:\s|$)|$|\b(?:near|beside|next to|close to|right (?:at|by)|behind|twin"
    r"|with|while|where|which|on a|2 pads|two pads|silk|pads|at|by|under|around)\b))"
)
_NAME = r"([^;\n]{1,80}?)"
_TWO_NETS = tuple(
    re.compile(pattern, re.IGNORECASE)
    for pattern in (
        rf"\bbetween\s+{_NAME},?\s+(?:and|&)\s+{_NAME}{_STOP}",
        rf"\b(?:one|first|left|upper|a|top)\s?(?:side|end|pad|net|terminal)?\b\s*(?:1|a)?\s*"
        rf"(?:goes to|is on|is at|is|to|on|at|:|=)?\s*{_NAME}[,;]?\s*(?:and\s+)?(?:the\s+)?"
        rf"(?:other|second|right|lower|bottom)\s?(?:side|end|pad|net|terminal|one)?\b\s*"
        rf"(?:goes to|is on|is at|is|to|on|at|:|=)?\s*{_NAME}{_STOP}",
        rf"\b(?:pad|pin|net|side|end)\s?(?:1|a)\b\s*(?:goes to|is|to|on|at|:|=)?\s*{_NAME}[,;]?\s*"
        rf"(?:and\s+)?\b(?:pad|pin|net|side|end)\s?(?:2|b)\b\s*(?:goes to|is|to|on|at|:|=)?\s*"
        rf"{_NAME}{_STOP}",
        rf"\bnets?(?: (?:each|either|on (?:each|either|both)) sides?)?\s*(?:are|:|=)?\s*{_NAME}\s*"
        rf"(?:\band\b|\||/|<?-+>|→|↔|,)\s*{_NAME}{_STOP}",
        rf"\bfrom\s+{_NAME}\s+(?:to|into)\s+{_NAME}{_STOP}",
        rf"\b(?:joins?|connects?|bridges)\s+{_NAME}\s+(?:to|with|and)\s+{_NAME}{_STOP}",
        rf"\bacross\s+{_NAME}\s+(?:and|to)\s+{_NAME}{_STOP}",
        rf"(?:^|[,;:\n])\s*([^,;:\n]+?)\s*(?:<?-+>|→|↔|\|| / )\s*([^,;\n]+?){_STOP}",
        rf"(?:^|[,;:\n])\s*([^,;:\n]{{1,60}}?)\s+to\s+([^,;\n]{{1,60}}?){_STOP}",
        rf"(?:^|[,;:\n])\s*([^,;:\n]{{1,40}}?)\s+(?:and|&)\s+([^,;\n]{{1,60}}?){_STOP}",
    )
)
_IN_A_LINE = re.compile(
    rf"\bin (?!series|line\b)(?:the )?{_NAME} (?:line|net|path)\b"
    rf"|\b(?:in series (?:with|in|on)|in line with|inline in)\s+{_NAME}{_STOP}"
    rf"|\bboth (?:sides|ends|pads)\s+(?:are |is |go to |on |at |to )*{_NAME}{_STOP}"
    r"|(?:^|[,;:\n])\s*([^,;:\n]{1,60}?) (?:on|at) both (?:sides|ends|pads)",
    re.IGNORECASE,
)
_ACROSS = re.compile(rf"\b(?:across|parallel to|in parallel with)\s+{_NAME}{_STOP}", re.IGNORECASE)
_ONE_NET = re.compile(
    rf"\b(?:other (?:side|end|pad)|one (?:side|end|pad)|goes|on|to)\s+(?:is\s+|on\s+|to\s+|at\s+)*"
    rf"{_NAME}{_STOP}",
    re.IGNORECASE,
)
_LETTER_VOLTS = re.compile(r"\b(\d+)[vV](\d+)[A-Za-z]?\b")
_VOLTS = re.compile(
    r"(?<![\w.])([+-]?\s?\d+(?:\.\d+)?)\s?[vV](?:olts?|\s?ac|\s?AC|dc|DC|[AD])?(?!\w)"
)


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
    nets, where = _nets(without_sizes)
    around = _blank(without_sizes, where)
    marks = tuple(name for name, words in MARKS.items() if words.search(around))
    volts = [net.volts for net in nets if net.volts is not None] or _volts_in(around)
    return Place(
        text=plain,
        letters=letters,
        footprint=footprint,
        nets=_of_mains(nets),
        near=roles_in(around),
        marks=marks,
        twin=read_twin(twin) if twin else None,
        volts=max(volts, key=abs) if volts else None,
        unread=_unread(without_sizes),
    )


def with_more(
    place: Place, *, one_side: str = "", other_side: str = "", near: str = "", twin: str = ""
) -> Place:
    """`place` with what was typed apart from its text; what is typed apart is held to be right.

    >>> with_more(read_place("R7 0402"), one_side="RESET", other_side="3.3 V").volts
    3.3
    """
    sides = [net_of(_tidy(side)) for side in (one_side, other_side) if side.strip()]
    nets = _of_mains(tuple(sides) or place.nets)
    volts = [net.volts for net in nets if net.volts is not None]
    return replace(
        place,
        nets=nets,
        near=place.near | roles_in(_tidy(near)) if near.strip() else place.near,
        twin=read_twin(_tidy(twin)) if twin.strip() else place.twin,
        volts=max(volts, key=abs) if volts else place.volts,
    )


def net_of(name: str) -> Net:
    """One net by its words, such as "+3.3 V", "SDA" or "U4 pin 7 (reset)"."""
    volts = _volts_in(name)
    roles = frozenset({"ground"}) if _GROUND_FIRST.match(name) else roles_in(name)
    return Net(name.strip(" ,;:.'\""), volts[0] if volts else None, roles)


_GROUND_FIRST = re.compile(
    r"\s*(?:the |a |board |common |system |signal |analogue? |digital |power )*"
    r"(?:[ADPS]?GND\d?|ground|earth|VSS|chassis|0 ?V)(?!\w|\s*(?:return|side of))(?!.*\bsource\b)",
    re.IGNORECASE,
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
        if SPEAKS.search(clause):
            begin = SPEAKS.search(clause).start()
            before = clause[:begin]
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
    if found and found[1].upper() in LETTERS:
        return found[1].upper(), text[found.end() :].lstrip(" ?:,;")
    said = _SAID_REFERENCE.search(text) or _ON_SILK.search(text)
    if said and said[1] in LETTERS:
        return said[1], _blank(text, [said.span()])
    return "", text


def _nets(text: str) -> tuple[tuple[Net, ...], list[tuple[int, int]]]:
    """The nets each side, and where in the text they stand."""
    for pattern in (_TWO_NETS[0], _IN_A_LINE, *_TWO_NETS[1:]):
        for found in pattern.finditer(text):
            if pattern is _IN_A_LINE:
                net = net_of(next(filter(None, found.groups())))
                if net.roles:
                    return (net, net), [found.span()]
                continue
            nets = net_of(found[1]), net_of(found[2])
            explicit = pattern in _TWO_NETS[:7]
            if all(net.name for net in nets) and (explicit or all(net.roles for net in nets)):
                return nets, [found.span()]
    found = _ACROSS.search(text)
    if found:
        net = net_of(found[1])
        return _both_ends(net), [found.span()]
    return _bare_nets(text)


def _both_ends(net: Net) -> tuple[Net, ...]:
    """The two nets of what a part lies across: the supply, or the two ends of another part."""
    ground = Net("ground", None, frozenset({"ground"}))
    if net.is_rail and not net.roles & {"coil", "LED", "crystal", "bus pair", "sense", "timer"}:
        return net, ground
    return net, net


def _bare_nets(text: str) -> tuple[tuple[Net, ...], list[tuple[int, int]]]:
    """Clauses that are nothing but the name of a net, two at most."""
    nets, spans = [], []
    for found in re.finditer(r"[^,;\n]+", text):
        clause = re.sub(r"^\s*(?:and |to |on |one |the )+", "", found[0]).strip()
        net = net_of(clause)
        if _is_bare(clause, net):
            nets.append(net)
            spans.append(found.span())
    if not nets:
        found = _ONE_NET.search(text)
        if found and roles_in(found[1]):
            return (net_of(found[1]),), [found.span()]
    return tuple(nets[:2]), spans[:2]


def _is_bare(clause: str, net: Net) -> bool:
    """Whether a clause names a net and says nothing else: a few words, and none of a place."""
    words = len(clause.split())
    if re.match(r"(?:near|by|at|next|beside|close|under|behind|between)\b", clause):
        return False
    if words <= 3 and (net.is_ground or _NET_NAME.match(clause)):
        return True
    return 0 < words <= (6 if net.roles & _SIGNALS else 2 if net.is_rail else 0)


def _of_mains(nets: tuple[Net, ...]) -> tuple[Net, ...]:
    """The nets, known to be the mains where both carry its names: L and N."""
    if len(nets) == 2 and all(net.name in _MAINS_NAMES for net in nets):
        return tuple(Net(net.name, net.volts, frozenset({"mains"})) for net in nets)
    return nets


_MAINS_NAMES = ("L", "N", "PE", "L1", "L2", "L3")
_NET_NAME = re.compile(r"[A-Z][A-Z0-9]*_?[A-Z0-9_+-]+$")


def _volts_in(text: str) -> list[float]:
    text = text.replace("_", " ")
    said = [f"{one}.{tenths}" for one, tenths in _LETTER_VOLTS.findall(text)]
    said += [one.replace(" ", "").replace("−", "-") for one in _VOLTS.findall(text)]
    volts = [read_quantity(one).value for one in said if len(one) < 12]
    return [one for one in volts if abs(one) <= HIGHEST_VOLTS]


def _blank(text: str, spans: object) -> str:
    """`text` with spaces, and a comma at the end, where the spans are."""
    for begin, end in spans:
        text = text[:begin] + " " * (end - begin - 1) + "," + text[end:]
    return text


def _unread(text: str) -> tuple[str, ...]:
    """Words of three letters or more that name nothing that is known here."""
    known = bytearray(len(text))
    for begin, end in words_named(text):
        known[begin:end] = b"\1" * (end - begin)
    for words in MARKS.values():
        for found in words.finditer(text):
            known[found.start() : found.end()] = b"\1" * (found.end() - found.start())
    words = [
        found[0]
        for found in re.finditer(r"[^\W\d_]{3,}", text)
        if not known[found.start()] and found[0].casefold() not in PLAIN_WORDS
    ]
    return tuple(dict.fromkeys(words))
