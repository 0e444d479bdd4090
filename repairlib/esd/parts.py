"""How sensitive parts are: classes by two models, damage levels by family, distance to insulators.

A class says at which voltage a test found damage. It names its scheme: the same letters stand
for other volts in another scheme.
"""

from __future__ import annotations

from typing import Annotated

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.decide import CANNOT_TELL
from repairlib.core.quantity import Quantity, brief

HBM, CDM, OLD_CDM, OLD_HBM = "HBM JS-001", "CDM JS-002", "CDM STM5.3.1", "HBM JS-001-2011"
# Scheme: (class, from this many volts on), the most sensitive class first.
SCHEMES = {
    HBM: (
        ("0Z", 0),
        ("0A", 50),
        ("0B", 125),
        ("1A", 250),
        ("1B", 500),
        ("1C", 1000),
        ("2", 2000),
        ("3A", 4000),
        ("3B", 8000),
    ),
    CDM: (("C0a", 0), ("C0b", 125), ("C1", 250), ("C2a", 500), ("C2b", 750), ("C3", 1000)),
    OLD_CDM: (
        ("C1", 0),
        ("C2", 125),
        ("C3", 250),
        ("C4", 500),
        ("C5", 1000),
        ("C6", 1500),
        ("C7", 2000),
    ),
}
SCHEMES[OLD_HBM] = (("0A", 0), *SCHEMES[HBM][2:])
PROGRAMME = {HBM: 100.0, OLD_HBM: 100.0, CDM: 200.0, OLD_CDM: 200.0}  # V, scope of S20.20-2021
EASY = {HBM: 500.0, OLD_HBM: 500.0, CDM: 250.0, OLD_CDM: 250.0}  # V, JEP155 and JEP157

# Family: V in one instrument maker's list (100 pF, 100 Ω), V in handbook lists (HBM, from memory).
FAMILIES = {
    "MOS and CMOS": ((100, 500), (250, 3000)),
    "ECL": ((200, 500), None),
    "Schottky diode": ((250, 250), (300, 2500)),
    "Schottky TTL": ((500, 500), None),
    "HF bipolar": ((400, 600), None),
    "bipolar": (None, (380, 7000)),
    "JFET": ((600, 800), (140, 7000)),
    "linear": ((400, 1000), None),
    "op-amp": (None, (190, 2500)),
    "LS TTL": ((900, 900), None),
    "TTL": ((1200, 1200), None),
    "VMOS": (None, (30, 1800)),
    "MOSFET": (None, (100, 200)),
    "GaAs FET": (None, (100, 300)),
    "EPROM": (None, (100, 100)),
    "SCR": (None, (680, 1000)),
}
# A charge on an insulator, in V, above which it is kept away: (volts, metres, source).
DISTANCES = ((2000.0, 0.30, "ESD S20.20 garment page"), (125.0, 0.025, "from memory"))


@calculator(
    topic="esd",
    title="ESD class of a part",
    sources=("ESD classification levels",),
)
def esd_class(
    voltage: Annotated[
        float, Given("V", "The voltage that the part withstands.", at_least=0, at_most=1e5)
    ],
    scheme: Annotated[str, Choice(tuple(SCHEMES), "The model and its scheme.")] = HBM,
) -> Found:
    """The class of a withstand voltage, and what handling it needs.

    `voltage` in volts, 0 to 100 kV; a class reaches from its lower figure to just below the next.
    Raises RepairlibError outside the range. Source: ESD sensitivity classification levels; class
    0Z and the CDM classes of JS-002 are from memory; handling from the scope of S20.20-2021 and
    from JEP155 and JEP157.

    >>> finding = esd_class("1500 V")
    >>> finding.esd_class, finding.handling
    ('1C', 'a standard ESD programme, kept well')
    """
    classes = SCHEMES[scheme]
    at = max(place for place, (_, low) in enumerate(classes) if voltage >= low)
    name, low = classes[at]
    top = f"to below {classes[at + 1][1]} V" if at + 1 < len(classes) else "and above"
    handling, sources = _handling(voltage, scheme)
    sources += _scheme_sources(scheme, name)
    notes = [f"Class {name} of {scheme}. Other schemes use the same letters for other volts."]
    return found(
        {"esd_class": name, "scheme": scheme, "handling": handling},
        working=[f"{brief(voltage, 'V')} lies in {low} V {top}: class {name}"],
        notes=notes,
        sources=sources,
    )


@calculator(
    topic="esd",
    title="Damage level of a family of parts",
    sources=("ESD definitions",),
)
def damage_level(
    family: Annotated[str, Choice(tuple(FAMILIES), "What kind of part it is.")],
    body: Annotated[
        float | None, Given("V", "Voltage of the body that touches it.", at_least=0, at_most=1e5)
    ] = None,
) -> Found:
    """At which body voltage parts of a family were damaged, by the lists that name it.

    `body` in volts; left out, only the levels are given. Never "safe": below the lowest level the
    verdict is "cannot tell". Raises RepairlibError for other families. Source: an oscilloscope
    service manual (100 pF, 100 Ω); handbook ranges (HBM) are from memory.

    >>> damage_level("EPROM", "3 kV").verdict
    'can be damaged'
    """
    maker, handbook = FAMILIES[family]
    values: dict[str, object] = {}
    for name, ends in (("service_manual", maker), ("handbook", handbook)):
        if ends:
            low, high = ends
            values[name] = f"{low} V" if low == high else f"{low} V to {high} V"
    lowest = min(ends[0] for ends in (maker, handbook) if ends)
    values["lowest"] = Quantity(lowest, "V")
    notes = []
    if maker and handbook:
        notes.append(
            "The two lists disagree: another network, another time. The lower figure counts."
        )
    verdict = reason = None
    if body is not None:
        verdict = "can be damaged" if body >= lowest else CANNOT_TELL
        relation = "reaches" if body >= lowest else "is below"
        reason = f"{brief(body, 'V')} {relation} the lowest listed level, {lowest} V"
        notes += [
            "A spark below about 3000 V is not felt.",
            "A part may be weakened and fail later. Its data sheet counts.",
        ]
    sources = ["Oscilloscope service manual"] if maker else []
    sources += ["from memory"] if handbook else []
    return found(values, verdict=verdict, reason=reason, notes=notes, sources=sources)


@calculator(
    topic="esd",
    title="Distance to a charged insulator",
    sources=("ESD S20.20 garment page",),
)
def insulator_distance(
    voltage: Annotated[
        float, Given("V", "Field meter, held at 2.5 cm.", at_least=-1e5, at_most=1e5)
    ],
) -> Found:
    """How far to keep a cup, bag or tape from parts, by its charge.

    `voltage` in volts as a field meter shows it at 2.5 cm, either sign. Raises RepairlibError
    outside ±100 kV. Source: S20.20 as quoted on a page on garments: over 2000 V at least 30 cm;
    over 125 V at least 2.5 cm is from memory.

    >>> print(insulator_distance("-2.5 kV"))
    Distance to a charged insulator: keep away 30 cm; field 100000 V/m
    """
    size = abs(voltage)
    field = f"{size / 0.025:g} V/m"
    for limit, metres, source in DISTANCES:
        if size > limit:
            working = [f"{brief(size, 'V')} is over {limit:g} V: at least {metres * 100:g} cm"]
            values = {"keep_away": f"{metres * 100:g} cm", "field": field}
            return found(values, working=working, sources=(source,))
    values = {"keep_away": "no distance is listed", "field": field}
    notes = ["Take away what the work does not need all the same."]
    return found(values, working=[f"{brief(size, 'V')} is not over 125 V"], notes=notes)


def _handling(voltage: float, scheme: str) -> tuple[str, tuple[str, ...]]:
    if voltage < PROGRAMME[scheme]:
        return (
            "below the scope of a standard programme: extra measures, named by the maker",
            ("ANSI/ESD S20.20-2021",),
        )
    if voltage < EASY[scheme]:
        return "a standard ESD programme, audited with care", ("ANSI/ESD S20.20-2021",)
    return "a standard ESD programme, kept well", ("JEP155 and JEP157, quoted",)


def _scheme_sources(scheme: str, name: str) -> tuple[str, ...]:
    if scheme == OLD_HBM or (scheme == HBM and name == "0B"):
        return ("JS-001-2011 note",)
    if scheme == CDM or name in ("0Z", "0A"):
        return ("from memory",)
    return ()
