"""The net at each side of an empty place, found in what people type of it.

"between A and B", "from A to B", "pad 1: A, pad 2: B", "one side A, the other B", "A | B", "in
series with A", "across A", or clauses that are nothing but the name of a net.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from repairlib.missing_parts.roles import roles_in
from repairlib.missing_parts.volts import volts_said


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


_STOP = (
    r"(?=\s*(?:[,;\n]|\.(?:\s|$)|$|\b(?:near|beside|next to|close to|right (?:at|by)|behind|twin"
    r"|with|while|where|which|on a|2 pads|two pads|silk|pads|at|by|under|around)\b))"
)
_NAME = r"([^;\n]{1,80}?)"
_CLAUSE = r"([^,;\n]{1,60}?)"
_GOES = (
    r"(?:(?:goes|runs|leads|drops|ties|connects|comes|reaches|lands)(?: down| up| straight)?"
    r"(?: to| into| on| in)?|is on|is at|is|to|on|at|:|=)"
)
_TWO_NETS = tuple(
    re.compile(pattern, re.IGNORECASE)
    for pattern in (
        rf"\bbetween\s+{_NAME},?\s+(?:and|&)\s+{_NAME}{_STOP}",
        rf"\b(?:one|first|left|upper|a|top)\s?(?:side|end|pad|net|terminal)?\b\s*(?:1|a)?\s*"
        rf"{_GOES}?\s*{_NAME}[,;.]?\s*(?:and\s+)?(?:the\s+)?"
        rf"(?:other|second|right|lower|bottom)\s?(?:side|end|pad|net|terminal|one)?\b\s*"
        rf"{_GOES}?\s*{_NAME}{_STOP}",
        rf"\b(?:pad|pin|net|side|end)\s?(?:1|a|one)\b\s*{_GOES}?\s*{_NAME}[,;.]?\s*"
        rf"(?:and\s+)?\b(?:pad|pin|net|side|end)\s?(?:2|b|two)\b\s*{_GOES}?\s*"
        rf"{_NAME}{_STOP}",
        rf"\bnets?(?: (?:each|either|on (?:each|either|both)) sides?)?\s*(?:are|:|=)?\s*{_NAME}\s*"
        rf"(?:\band\b|\||/|<?-+>|→|↔|,)\s*{_NAME}{_STOP}",
        rf"(?:^|[,;:\n])\s*{_CLAUSE}\s+(?:goes in|comes in|before|in front|on the left)"
        rf"(?: it)?,?\s+(?:and\s+)?(?:out (?:goes|runs|leads) to\s+{_CLAUSE}{_STOP}"
        rf"|{_CLAUSE}\s+(?:goes out|comes out|after|behind|on the right)\b)",
        rf"\bfrom\s+{_NAME}\s+(?:to|into)\s+{_NAME}{_STOP}",
        rf"\b(?:joins?|connects?|bridges)\s+{_NAME}\s+(?:to|with|and)\s+{_NAME}{_STOP}",
        rf"\bacross\s+{_NAME}\s+(?:and|to)\s+{_NAME}{_STOP}",
        rf"(?:^|[,;:\n])\s*([^,;:\n]+?)\s*(?:<?-+>|→|↔|\|| / )\s*([^,;\n]+?){_STOP}",
        rf"(?:^|[,;:\n])\s*([^,;:\n]{{1,60}}?)\s+to\s+([^,;\n]{{1,60}}?){_STOP}",
        rf"(?:^|[,;:\n])\s*([^,;:\n]{{1,40}}?)\s+(?:and|&)\s+([^,;\n]{{1,60}}?){_STOP}",
    )
)
_IN_AND_OUT = 4  # such words may be said of anything: both must name a net
_IN_A_LINE = re.compile(
    r"\bin (?!series|line\b)(?:the )?([^,;\n]{1,80}?) (?:line|net|path)\b"
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


def net_of(name: str) -> Net:
    """One net by its words, such as "+3.3 V", "SDA" or "U4 pin 7 (reset)"."""
    volts = volts_said(name)
    roles = frozenset({"ground"}) if _GROUND_FIRST.match(name) else roles_in(name)
    return Net(name.strip(" ,;:.'\""), volts[0].signed if volts else None, roles)


_GROUND_FIRST = re.compile(
    r"\s*(?:the |a |board |common |system |signal |analogue? |digital |power )*"
    r"(?:[ADPS]?GND\d?|ground|earth|VSS|chassis|0 ?V)(?!\w|\s*(?:return|side of))(?!.*\bsource\b)",
    re.IGNORECASE,
)


def nets_in(text: str) -> tuple[tuple[Net, ...], list[tuple[int, int]]]:
    """The nets each side, none to two, and where in the text they stand.

    >>> [net.name for net in nets_in("R1 from SDA to 3.3 V")[0]]
    ['SDA', '3.3 V']
    """
    for pattern in (_TWO_NETS[0], _IN_A_LINE, *_TWO_NETS[1:]):
        for found in pattern.finditer(text):
            if pattern is _IN_A_LINE:
                net = net_of(next(filter(None, found.groups())))
                if net.roles:
                    return (net, net), [found.span()]
                continue
            one, other = filter(None, found.groups())
            nets = net_of(one), net_of(other)
            explicit = pattern in _TWO_NETS[:8] and pattern is not _TWO_NETS[_IN_AND_OUT]
            if all(net.name for net in nets) and (explicit or all(net.roles for net in nets)):
                return nets, [found.span()]
    across = _ACROSS.search(text)
    if across:
        return _both_ends(net_of(across[1])), [across.span()]
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
        one = _ONE_NET.search(text)
        if one and roles_in(one[1]):
            return (net_of(one[1]),), [one.span()]
    return tuple(nets[:2]), spans[:2]


def _is_bare(clause: str, net: Net) -> bool:
    """Whether a clause names a net and says nothing else: a few words, and none of a place."""
    words = len(clause.split())
    if re.match(r"(?:near|by|at|next|beside|close|under|behind|between)\b", clause):
        return False
    if words <= 3 and (net.is_ground or _NET_NAME.match(clause)):
        return True
    return 0 < words <= (6 if net.roles & _SIGNALS else 2 if net.is_rail else 0)


_NET_NAME = re.compile(r"[A-Z][A-Z0-9]*_?[A-Z0-9_+-]+$")
