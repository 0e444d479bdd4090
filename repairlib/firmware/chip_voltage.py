"""What supply a memory chip takes, asked before anything is connected: 1.8 V, 3.3 V or 5 V.

The mark, the identity bytes, the name of a net and a meter each say something; where two disagree
nothing is connected. No answer says that it is safe: it says what to measure and to set.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Annotated, NamedTuple

from repairlib.core.calculator import Found, Given, Text, calculator, found
from repairlib.core.errors import RepairlibError, shown
from repairlib.core.quantity import brief_range
from repairlib.core.verdicts import CANNOT_TELL, CONDITIONS, NEVER, STOP
from repairlib.firmware.identity import Identity, identity_of
from repairlib.markings import memory_chip

Volts = tuple[float, float]
SPREAD = 0.1  # of a rail around its name or its reading: our choice
LEAST = 1.0  # V: below it a rail was not running
_MEMORY, _RULE = "from memory", "common practice"
_LOW, _THREE, _WIDE = (1.65, 2.0), (2.7, 3.6), (1.65, 3.6)
# Code and type byte: supply in V, and where it is from. What is sold both ways is left out.
_TYPES: dict[tuple[int, int], tuple[Volts, str]] = {
    (0x20, 0xBA): (_THREE, "N25Q128A"),
    (0x20, 0xBB): ((1.7, 2.0), "N25Q128A, 1.8 V"),
    **dict.fromkeys(((0x20, 0x20), (0x20, 0x40), (0x20, 0x80)), (_THREE, _MEMORY)),
    **dict.fromkeys(((0xEF, 0x30), (0xEF, 0x40), (0xEF, 0x70)), (_THREE, _MEMORY)),
    **dict.fromkeys(((0xEF, 0x50), (0xEF, 0x60), (0xEF, 0x80)), ((1.65, 1.95), _MEMORY)),
    (0xC2, 0x20): (_THREE, _MEMORY),
    (0xC2, 0x23): ((2.3, 3.6), _MEMORY),
    (0xC2, 0x25): (_LOW, _MEMORY),
    (0xC2, 0x28): (_WIDE, _MEMORY),
    (0xC8, 0x40): (_THREE, _MEMORY),
    (0xC8, 0x60): (_LOW, _MEMORY),
    (0xC8, 0x65): (_WIDE, _MEMORY),
    (0x9D, 0x60): ((2.3, 3.6), _MEMORY),
    (0x9D, 0x70): ((1.65, 1.95), _MEMORY),
    **dict.fromkeys(((0x1C, 0x30), (0x1C, 0x31), (0x1C, 0x70)), (_THREE, _MEMORY)),
    (0x1C, 0x38): ((1.65, 1.95), _MEMORY),
    (0x34, 0x2A): (_THREE, _MEMORY),
    (0x34, 0x2B): (_LOW, _MEMORY),
    (0x2C, 0x5A): (_THREE, _MEMORY),
    (0x2C, 0x5B): (_LOW, _MEMORY),
}


class Says(NamedTuple):
    """One thing that tells the supply: what it is, least and most volts, where that is from."""

    what: str
    low: float
    high: float
    source: str

    def __str__(self) -> str:
        return f"{self.what}: {brief_range(self.low, self.high, 'V')}"


def supply_of_identity(one: Identity) -> Says | None:
    """The supply that the identity bytes tell; None where the same bytes are sold for two.

    >>> supply_of_identity(identity_of("EF 60 18")).high
    1.95
    >>> supply_of_identity(identity_of("01 20 18")) is None
    True
    """
    code, kind = one.id[0], one.kind
    if one.bank > 1 or kind is None:
        return None
    if code == 0xBF and kind == 0x26:
        volts, source = (
            ((1.65, 1.95), "SST26WF080B") if one.id[2] >= 0x50 else ((2.3, 3.6), _MEMORY)
        )
    elif (code, kind) in _TYPES:
        volts, source = _TYPES[code, kind]
    else:
        return None
    return Says(f"identity {code:02X} {kind:02X}", *volts, source)


def supply_of_mark(mark: str) -> Says | None:
    """The supply that the letters of a top mark tell; None where they do not.

    >>> supply_of_mark("25Q64FW").high
    1.95
    """
    for word in mark.split():
        chip = memory_chip(word)
        if chip is not None and chip.supply is not None:
            low, high = chip.supply
            return Says(f"mark {shown(word)}", low, high, _MEMORY)
    return None


def supply_of_net(net: str) -> Says | None:
    """The supply in the name of a net, such as 3V3, +1.8V or VCC_5V; None where it names no volts.

    >>> supply_of_net("VCC3V3_SPI").what, supply_of_net("VDD") is None
    ("net 'VCC3V3_SPI'", True)
    """
    name = net[:60]
    told = re.search(r"(?<![0-9.,])([0-9]{1,2})[vV]([0-9]{1,2})(?![0-9])", name)
    text = ".".join(told.groups()) if told else ""
    if not told and (told := re.search(r"(?<![0-9.,])([0-9]{1,2}(?:[.,][0-9]{1,2})?) ?[vV]", name)):
        text = told[1].replace(",", ".")
    if not told or float(text) < LEAST:
        return None
    return _around(f"net {shown(name)}", float(text))


def _around(what: str, volts: float) -> Says:
    return Says(what, round(volts * (1 - SPREAD), 3), round(volts * (1 + SPREAD), 3), _RULE)


@calculator(
    topic="firmware",
    title="Supply of a memory chip",
    sources=("common practice", "from memory"),
    cautions=("chip supply", "static charge"),
)
def before_connecting(
    mark: Annotated[str, Text("Of the chip, such as 25Q64FW; empty where it cannot be read.")] = "",
    identity: Annotated[str, Text("Bytes read with 9Fh, if there are any.")] = "",
    measured: Annotated[
        float | None, Given("V", "At its supply pin, the board running.", at_least=0, at_most=30)
    ] = None,
    net: Annotated[str, Text("The name of its supply, such as 3V3; empty where none.")] = "",
    programmer: Annotated[
        float | None, Given("V", "What it gives, supply and data lines.", above=0, at_most=30)
    ] = None,
) -> Found:
    """What a memory chip takes, and whether a programmer of that voltage may go on it.

    Never says that it is safe: without a measurement it cannot tell; with one, the verdict is
    "only with these conditions", "do not" or, where two disagree, "stop". Raises RepairlibError
    where nothing is given, and for identity bytes that are none. Source: common practice; the
    letters of marks and the types of identity bytes are mostly from memory.

    >>> before_connecting(mark="25Q64FW", programmer="3.3 V").verdict
    'do not'
    >>> before_connecting(mark="25Q64JV", measured="3.29 V", programmer="3.3 V").verdict
    'only with these conditions'
    """
    told, notes = _all_that_tells(mark, identity, measured, net)
    steps = [str(one) for one in told]
    sources = [one.source for one in told]
    if not told:
        reason = "nothing that was given tells the supply"
        return found({"supply": "not known"}, working=steps, verdict=CANNOT_TELL, reason=reason,
                     notes=[*notes, *_HOW, _UNKNOWN], sources=sources)  # fmt: skip
    low, high = max(one.low for one in told), min(one.high for one in told)
    if low > high:
        first, second = _most_apart(told)
        reason = f"{first}, but {second}: one of the two is not what it seems"
        return found({"supply": "contradictory"}, working=steps, verdict=STOP, reason=reason,
                     notes=["Connect nothing until it is clear.", *notes, *_HOW],
                     sources=sources)  # fmt: skip
    verdict, reason = _judged(low, high, measured, programmer)
    values = {"supply": brief_range(low, high, "V")}
    return found(values, working=steps, verdict=verdict, reason=reason,
                 notes=[*notes, *_HOW, _LINES], sources=sources)  # fmt: skip


_HOW = (
    "Measure between its supply and ground pins, 8 and 4 on eight-lead serial chips, with the "
    "board running and nothing clipped on. A dead board: follow the pin to its regulator, and read "
    "that one's number.",
)
_UNKNOWN = "Still unknown? Begin with nothing higher than 1.8 V, and with the data sheet."
_LINES = (
    "Measure what the programmer gives before the clip goes on, on the data lines too: some feed "
    "the chip 3.3 V or 1.8 V and still drive its inputs with 5 V or 3.3 V."
)


def _all_that_tells(
    mark: str, identity: str, measured: float | None, net: str
) -> tuple[list[Says], list[str]]:
    if measured is None and not any(one.strip() for one in (mark, identity, net)):
        wrong = "no mark, no identity, no measurement and no net is given"
        raise RepairlibError("the chip", wrong, "mark=25Q64FW, measured=1.8 V, net=1V8")
    told: list[Says | None] = []
    notes = []
    if measured is not None and measured < LEAST:
        notes.append(f"At {measured:g} V its supply was off: that tells nothing.")
    elif measured is not None:
        told.append(_around(f"measured {measured:g} V", measured))
    if mark.strip():
        told.append(supply_of_mark(mark))
        notes += [] if told[-1] else [f"The letters of {shown(mark)} do not tell the supply."]
    if identity.strip():
        told.append(supply_of_identity(identity_of(identity)))
        notes += [] if told[-1] else ["These identity bytes are used for more than one supply."]
    if net.strip():
        told.append(supply_of_net(net))
        notes += [] if told[-1] else [f"The name {shown(net)} tells no volts."]
    return [one for one in told if one], notes


def _most_apart(told: Iterable[Says]) -> tuple[Says, Says]:
    told = list(told)
    return min(told, key=lambda one: one.high), max(told, key=lambda one: one.low)


def _judged(
    low: float, high: float, measured: float | None, programmer: float | None
) -> tuple[str, str]:
    takes = brief_range(low, high, "V")
    is_measured = measured is not None and measured >= LEAST
    if programmer is not None and programmer > high:
        return (
            NEVER,
            f"{programmer:g} V is above {takes}: it can kill the chip and what shares its supply",
        )
    if programmer is not None and programmer < low:
        return NEVER, f"{programmer:g} V is below {takes}: what is read so counts for nothing"
    if not is_measured:
        return CANNOT_TELL, f"it seems to take {takes}; measure its supply before you connect"
    if programmer is None:
        return CONDITIONS, f"set the programmer to {measured:g} V, within {takes}, and measure it"
    return CONDITIONS, f"{programmer:g} V is within {takes}; measure at the clip that it is so"
