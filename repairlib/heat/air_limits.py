"""What the air of the bench may hold: solvent vapour, flux fume, lead.

Isopropyl alcohol: figures of the NIOSH Pocket Guide; others where named. Perfect mixing is assumed,
so near the bottle the air holds far more than these sums say.
"""

from __future__ import annotations

from typing import Annotated

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.quantity import Quantity

IPA_DENSITY = 0.785  # g/mL, from memory
IPA_MG_PER_PPM = 2.46  # mg/m³ for 1 ppm
IPA_LEL_PPM, IPA_UEL_PPM = 20_000, 127_000  # explosive limits, 2.0 and 12.7 %
IPA_DANGER_PPM = 2000  # immediately dangerous: a tenth of the explosive limit
IPA_SHIFT_PPM = 400  # 8 h average
IPA_FLASH = 11.7  # °C, 53 °F
LEAD_US_SHIFT = 50  # µg/m³, 8 h
# What is known of each: figures in words, and their sources.
BENCH_AIR = {
    "isopropyl alcohol": (
        {
            "shift_limit": "400 ppm, 15 min 500 ppm; 1 ppm is 2.46 mg/m³",
            "dangerous_to_life": "2000 ppm, a tenth of the explosive limit",
            "burns_in_air": "2.0 to 12.7 % (upper figure at 200 °F); a maker says 2 to 12",
            "flash_point": "11.7 °C (53 °F)",
            "boils": "82.8 °C (181 °F), 33 mmHg at room temperature",
            "lights_by_itself": "399 °C (from memory), 425 °C (a maker), 456 °C (from memory)",
        },
        ("NIOSH isopropyl alcohol", "IPA safety bulletin", "from memory"),
    ),
    "rosin flux fume": (
        {"shift_limit": "0.05 mg/m³ over 8 h, 0.15 mg/m³ over 15 min (UK)"},
        ("HSE SIM 03/2002/26",),
    ),
    "lead": (
        {
            "shift_limit": "50 µg/m³ over 8 h (US), 0.15 mg/m³ (UK)",
            "action_level": "30 µg/m³ (US)",
        },
        ("lead, worker information", "lead, UK limit"),
    ),
}
_VAPOUR_SOURCES = ("NIOSH isopropyl alcohol", "from memory")


@calculator(
    topic="heat",
    title="Alcohol vapour in a room",
    sources=_VAPOUR_SOURCES,
    cautions=("solvents", "hot tools"),
)
def alcohol_vapour(
    millilitres: Annotated[
        float, Given("", "Isopropyl alcohol that evaporates, in mL.", at_least=0, at_most=1e6)
    ],
    room: Annotated[float, Given("", "Air in the room, in m³.", at_least=1, at_most=1e6)],
) -> Found:
    """Vapour of isopropyl alcohol in a closed room, in ppm and as part of the explosive limit.

    Verdict "stop" from 2000 ppm, immediately dangerous; "air the room" from 400 ppm; below that
    "keep it away from heat": near the bottle and the rag the vapour burns all the same. Raises
    RepairlibError out of range. Source: NIOSH Pocket Guide; density from memory.

    >>> alcohol_vapour(188, 30).ppm
    2000
    """
    milligrams = millilitres * IPA_DENSITY * 1000
    ppm = milligrams / room / IPA_MG_PER_PPM
    values = {
        "ppm": Quantity(round(ppm), ""),
        "of_explosive_limit": Quantity(100 * ppm / IPA_LEL_PPM, "%", 3),
        "milligrams_per_cubic_m": Quantity(milligrams / room, "", 4),
    }
    working = [
        f"{millilitres:g} mL × {IPA_DENSITY:g} g/mL = {milligrams / 1000:.4g} g in {room:g} m³",
        f"1 ppm is {IPA_MG_PER_PPM:g} mg/m³",
    ]
    notes = ["Perfect mixing is assumed: near the bottle there is far more."]
    verdict, reason = "keep it away from heat", "vapour near the rag burns at any room average"
    if ppm >= IPA_DANGER_PPM - 0.5:
        verdict = "stop"
        reason = f"{IPA_DANGER_PPM} ppm is dangerous to life, a tenth of the explosive limit"
    elif ppm >= IPA_SHIFT_PPM:
        verdict, reason = "air the room", f"{IPA_SHIFT_PPM} ppm is the limit for a shift"
    return found(values, working=working, verdict=verdict, reason=reason, notes=notes)


@calculator(
    topic="heat",
    title="Alcohol that brings a room to a level",
    sources=_VAPOUR_SOURCES,
    cautions=("solvents", "hot tools"),
)
def alcohol_for_level(
    ppm: Annotated[
        float,
        Given("", "The level: 400 a shift, 2000 danger, 20000 burns.", at_least=1, at_most=1e6),
    ],
    room: Annotated[float, Given("", "Air in the room, in m³.", at_least=1, at_most=1e6)],
) -> Found:
    """How many mL of isopropyl alcohol bring the air of a closed room to that level, and its share.

    Raises RepairlibError out of range. Source: NIOSH Pocket Guide; density from memory.

    >>> alcohol_for_level(2000, 30).millilitres
    188
    """
    per_cubic_m = ppm * IPA_MG_PER_PPM
    values = {
        "millilitres": Quantity(per_cubic_m * room / IPA_DENSITY / 1000, "", 3),
        **_as_said(ppm),
    }
    working = [
        f"{ppm:g} ppm × {IPA_MG_PER_PPM:g} = {per_cubic_m:g} mg/m³",
        f"× {room:g} m³ = {per_cubic_m * room / 1000:.4g} g, {IPA_DENSITY:g} g/mL",
    ]
    verdict, reason = _can_it_burn(ppm)
    notes = ["Perfect mixing is assumed: near the bottle far less brings the air there."]
    return found(values, working=working, verdict=verdict, reason=reason, notes=notes)


@calculator(
    topic="heat",
    title="A level of alcohol vapour",
    sources=("NIOSH isopropyl alcohol",),
    cautions=("solvents", "hot tools"),
)
def alcohol_level(
    ppm: Annotated[float, Given("", "Vapour in the air, in ppm.", at_least=0, at_most=1e6)],
) -> Found:
    """A level of isopropyl alcohol vapour in mg/m³ and %, and whether such a share can burn.

    Never a bare no: what is too thin on average burns at the bottle and the rag. Raises
    RepairlibError out of range. Source: NIOSH Pocket Guide, 2.0 to 12.7 %.

    >>> alcohol_level(400).milligrams_per_cubic_m
    984.0
    """
    verdict, reason = _can_it_burn(ppm)
    working = [f"{ppm:g} ppm × {IPA_MG_PER_PPM:g} mg/m³; 10000 ppm are 1 %"]
    return found(_as_said(ppm), working=working, verdict=verdict, reason=reason)


def _as_said(ppm: float) -> dict[str, Quantity]:
    return {
        "milligrams_per_cubic_m": Quantity(ppm * IPA_MG_PER_PPM, "", 4),
        "share_of_air": Quantity(ppm / 1e4, "%", 3),
        "of_explosive_limit": Quantity(100 * ppm / IPA_LEL_PPM, "%", 3),
    }


def _can_it_burn(ppm: float) -> tuple[str, str]:
    """Whether air with that share burns; below and above the limits other air near it may."""
    if ppm < IPA_LEL_PPM:
        reason = "below 2.0 % where it is mixed; at the bottle and the rag there is more, and burns"
        return "keep it away from heat", reason
    if ppm <= IPA_UEL_PPM:
        return "stop", "2.0 to 12.7 % of it in air burns or explodes"
    return "stop", "above 12.7 % it is too rich, and burns wherever fresh air comes to it"


@calculator(
    topic="heat",
    title="Fresh air for cleaning with alcohol",
    sources=_VAPOUR_SOURCES,
    cautions=("solvents", "hot tools"),
)
def alcohol_ventilation(
    millilitres_an_hour: Annotated[
        float, Given("", "Alcohol that evaporates, in mL/h.", above=0, at_most=1e5)
    ],
    ppm: Annotated[
        float, Given("", "The level to hold.", at_least=1, at_most=IPA_SHIFT_PPM)
    ] = 400.0,
) -> Found:
    """Fresh air in m³/h that holds the vapour at `ppm`, at most 400, with perfect mixing.

    Raises RepairlibError out of range. Source: NIOSH Pocket Guide; density from memory.

    >>> alcohol_ventilation(10).cubic_m_an_hour
    7.98
    """
    air = millilitres_an_hour * IPA_DENSITY * 1000 / (ppm * IPA_MG_PER_PPM)
    working = [f"{millilitres_an_hour * IPA_DENSITY:.4g} g/h over {ppm * IPA_MG_PER_PPM:.4g} mg/m³"]
    notes = ["Perfect mixing is assumed: take several times that."]
    return found({"cubic_m_an_hour": Quantity(air, "", 3)}, working=working, notes=notes)


@calculator(
    topic="heat",
    title="Limits for the air of the bench",
    sources=("from memory",),
    cautions=("fumes and flux", "solvents", "lead"),
)
def bench_air(
    substance: Annotated[str, Choice(tuple(BENCH_AIR), "What is in the air.")],
) -> Found:
    """Limits for what the air of a bench may hold, in words, with their sources.

    Raises RepairlibError for other substances. Your country's limits come first.

    >>> bench_air("rosin flux fume").shift_limit
    '0.05 mg/m³ over 8 h, 0.15 mg/m³ over 15 min (UK)'
    """
    values, sources = BENCH_AIR[substance]
    notes = ["Limits differ between countries and editions: yours come first."]
    return found(values, notes=notes, sources=sources)


@calculator(
    topic="heat",
    title="Lead in the air of a shift",
    sources=("lead, worker information", "from memory"),
    cautions=("lead", "fumes and flux"),
)
def lead_in_air(
    hours: Annotated[float, Given("", "Hours of the shift.", above=0, at_most=24)] = 8.0,
) -> Found:
    """The highest average of lead in air for a shift [µg/m³]: US, 400/hours above 8 h.

    Raises RepairlibError for hours outside 0 to 24. Source: worker information of a US state.

    >>> lead_in_air(10).micrograms_per_cubic_m
    40.0
    """
    limit = 400 / hours if hours > 8 else LEAD_US_SHIFT
    notes = [
        "At an iron's heat lead hardly evaporates: dust and hand to mouth are the way in "
        "(from memory). Wash your hands, wipe wet, never sweep dry.",
    ]
    working = [f"400 / {hours:g} h" if hours > 8 else "up to 8 h: 50 µg/m³"]
    return found({"micrograms_per_cubic_m": Quantity(limit, "", 3)}, working=working, notes=notes)
