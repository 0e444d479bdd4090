"""Ready supplies: a rectifier with its reservoir and load, and the faults a bench meets in them.

The mains side is left out: the sine is the secondary, in series with the resistance of its winding.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from repairlib.circuits.parts import CircuitPart, read_circuit
from repairlib.core.errors import RepairlibError
from repairlib.health import part_named

HALF_WAVE, BRIDGE, CENTRE_TAP = "half wave", "bridge", "centre tap"
LAYOUTS = {
    HALF_WAVE: "V1,a,0,{volts},{winding} / D1,a,rail,{diode}",
    BRIDGE: (
        "V1,a,b,{volts},{winding} / D1,a,rail,{diode} / D2,b,rail,{diode} / "
        "D3,0,a,{diode} / D4,0,b,{diode}"
    ),
    CENTRE_TAP: (
        "V1,a,0,{volts},{winding} / V2,0,b,{volts},{winding} / D1,a,rail,{diode} / "
        "D2,b,rail,{diode}"
    ),
}
DIODE = "10 nA,n 1.8"  # 0.86 V at 1 A, as a silicon rectifier has; common practice
OPEN_OHM, SHORT_OHM = 1e8, 1e-2  # what is left of a part that is open, or shorted
HEADINGS = "part,from,to,value,more"


def supply(
    kind: str,
    secondary: str,
    mains: str,
    reservoir: str,
    load: str,
    esr: str = "0 Ω",
    winding: str = "0.2 Ω",
    diode: str = DIODE,
    regulator: str = "",
) -> tuple[CircuitPart, ...]:
    """The parts of a supply, each value as typed: rail at `rail`, behind a regulator at `out`.

    `secondary` in V r.m.s., of a centre tap each half; `load` in A (drawn while there is voltage)
    or in Ω; `regulator` as value and more of one, such as "5 V,dropout 2 V". Raises RepairlibError
    for a kind that is not known and for values that cannot be read.

    >>> for part in supply("half wave", "9 V", "50 Hz", "1000 µF", "100 mA", esr="50 mΩ"):
    ...     print(part)
    V1 from a to 0: 9 V, mains 50 Hz, series 200 mΩ
    D1 from a to rail: 10 nA, n 1.8
    C1 from rail to 0: 1000 µF, ESR 50 mΩ
    I1 from rail to 0: 100 mA, load
    """
    check_kind(kind)
    rows = LAYOUTS[kind].format(volts=secondary, winding=f"{mains} {winding}", diode=diode)
    at = "out" if regulator else "rail"
    name, more = ("I1", "load") if load.strip()[-1:] in "Aa" else ("R1", "")
    rows += f" / C1,rail,0,{reservoir},{esr} / {name},{at},0,{load},{more}"
    if regulator:
        rows += f" / U1,rail,out,{regulator}"
    return read_circuit(f"{HEADINGS} / {rows}")


def check_kind(kind: str) -> None:
    """Raise RepairlibError for a kind of rectifier that is not known."""
    if kind not in LAYOUTS:
        raise RepairlibError(kind, "not a known kind of rectifier", ", ".join(LAYOUTS))


def opened(parts: tuple[CircuitPart, ...], name: str) -> tuple[CircuitPart, ...]:
    """The circuit with that part open: what is left of it is a leak of 100 MΩ.

    >>> parts = supply("half wave", "9 V", "50 Hz", "1000 µF", "100 Ω")
    >>> print(opened(parts, "C1")[2])
    R of C1 from rail to 0: 100 MΩ
    """
    return _changed(parts, name, lambda part: _left(part, OPEN_OHM))


def shorted(parts: tuple[CircuitPart, ...], name: str) -> tuple[CircuitPart, ...]:
    """The circuit with that part shorted: 10 mΩ are left of it.

    >>> print(shorted(supply("half wave", "9 V", "50 Hz", "1000 µF", "100 Ω"), "D1")[1])
    R of D1 from a to rail: 10 mΩ
    """
    return _changed(parts, name, lambda part: _left(part, SHORT_OHM))


def aged(
    parts: tuple[CircuitPart, ...], name: str, capacitance: float = 1.0, esr: float = 1.0
) -> tuple[CircuitPart, ...]:
    """The circuit with a capacitor that has so much of its capacitance, so many times its ESR.

    >>> parts = supply("half wave", "9 V", "50 Hz", "1000 µF", "100 Ω", esr="50 mΩ")
    >>> print(aged(parts, "C1", capacitance=0.3, esr=10)[2])
    C1 from rail to 0: 300 µF, ESR 500 mΩ
    """

    def older(part: CircuitPart) -> CircuitPart:
        if part.letter != "C":
            raise RepairlibError(part.name, "it is no capacitor", "a part whose name begins with C")
        return replace(part, value=part.value * capacitance, more={"esr": part.more["esr"] * esr})

    if not (0 < capacitance <= 100 and 0 <= esr <= 1e6):
        raise RepairlibError(
            f"{capacitance}, {esr}", "out of range", "0.3 for 30 %, 10 for ten times"
        )
    return _changed(parts, name, older)


def scaled(parts: tuple[CircuitPart, ...], name: str, times: float) -> tuple[CircuitPart, ...]:
    """The circuit with the value of a part so many times what it was: a load doubled, low mains.

    >>> print(scaled(supply("half wave", "9 V", "50 Hz", "1 mF", "100 mA"), "I1", 2)[-1])
    I1 from rail to 0: 200 mA, load
    """
    if not 0 < times <= 1e6:
        raise RepairlibError(times, "zero or negative, or out of range", "2 for twice the value")
    return _changed(parts, name, lambda part: replace(part, value=part.value * times))


def _changed(
    parts: tuple[CircuitPart, ...], name: str, change: Callable[[CircuitPart], CircuitPart]
) -> tuple[CircuitPart, ...]:
    wanted = part_named(parts, name)
    return tuple(change(part) if part is wanted else part for part in parts)


def _left(part: CircuitPart, ohm: float) -> CircuitPart:
    return CircuitPart(f"R of {part.name}", part.nodes, ohm)
