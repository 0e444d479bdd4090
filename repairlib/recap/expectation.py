"""What to expect of a new part: its life inside the set, ripple current and ESR class.

For a part of a catalogue by its own line; for a proposal without one by the published test of an
ordinary part of its kind. How life is worked out stands in repairlib.health.life.
"""

from __future__ import annotations

from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import brief, engineering
from repairlib.health import (
    CAP_HOURS,
    CAP_YEARS,
    HOURS_A_YEAR,
    LOW_IMPEDANCE,
    STATED_HZ,
    esr_of,
    expected,
    families,
    loss_limit,
)
from repairlib.recap.catalogue import CataloguePart
from repairlib.recap.rules import Proposal
from repairlib.recap.words import FILM

INSIDE_C = 45.0
LIFE_RULE = (
    f"Life is for air of {INSIDE_C:g} °C inside the set, powered all the time, by the "
    f"10-degree rule at rated ripple (polymer: ten times for 20 °C). Half to three times of it "
    f"is usual. Nothing above {CAP_YEARS} years is believed. {INSIDE_C:g} °C is a choice: measure."
)
GENERAL, BIPOLAR = "aluminium general 105", "aluminium non-polar"
LOW_ESR = "low impedance"
# Hours at 105 °C of an ordinary part, from the endurance test of its data sheet.
ORDINARY_HOURS = {GENERAL: 2000, BIPOLAR: 1000, LOW_IMPEDANCE: 1000}


class Expectation(NamedTuple):
    """`hours` of life inside the set (at most 15 years) or None, and in words the rest.

    `life`, `ripple` and `esr` are short texts, "" where nothing is known.
    """

    hours: float | None
    life: str
    ripple: str
    esr: str

    def said(self) -> tuple[str, ...]:
        """What is known, each in a few words."""
        ripple = f"ripple {self.ripple}" if self.ripple else ""
        esr = f"ESR {self.esr}" if self.esr else ""
        return tuple(known for known in (self.life, ripple, esr) if known)


def hours_inside(family: str, hours: float | None, celsius: float) -> float | None:
    """Expected hours at INSIDE_C of a part stated as `hours` at `celsius`, at most 15 years.

    None where no life is stated, the kind does not dry out, or the part is not made for such
    heat.

    >>> hours_inside("aluminium general 105", 2000, 105)
    128000.0
    """
    if hours is None or celsius < INSIDE_C or not families()[family].dries_out:
        return None
    return expected(family, hours, celsius, INSIDE_C).believed


def years_in_words(hours: float | None) -> str:
    """Hours as whole years, such as "14 years" or "15 years or more"; "" for None.

    >>> years_in_words(128_000), years_in_words(131_400), years_in_words(None)
    ('14 years', '15 years or more', '')
    """
    if hours is None:
        return ""
    if hours >= CAP_HOURS:
        return f"{CAP_YEARS} years or more"
    years = int(hours / HOURS_A_YEAR)
    return f"{years} years" if years >= 2 else f"{engineering(float(f'{hours:.2g}'), '')} h".strip()


def expected_of_part(part: CataloguePart) -> Expectation:
    """What to expect of that part of a catalogue."""
    hours = hours_inside(part.family, part.hours, part.celsius)
    ripple = brief(part.ripple, "A") if part.ripple is not None else ""
    if ripple and part.ripple_hz is not None:
        ripple += f" at {brief(part.ripple_hz, 'Hz')}"
    esr = part.esr_class
    if part.ohm is not None:
        esr = f"{esr}, {brief(part.ohm, 'Ω')} at 100 kHz".removeprefix(", ")
    return Expectation(hours, years_in_words(hours), ripple, esr)


def expected_of_proposal(new: Proposal, low_impedance: bool = False) -> Expectation:
    """What to expect of an ordinary part that meets the proposal; its data sheet decides."""
    if new.kind == FILM:
        return Expectation(None, "", "", "")  # nothing in it dries out
    return _expected_of(new.farad, new.volts, new.polar, low_impedance)


def _expected_of(farad: float, volts: float, polar: bool, low_impedance: bool) -> Expectation:
    family = LOW_IMPEDANCE if low_impedance else GENERAL if polar else BIPOLAR
    hours = hours_inside(family, ORDINARY_HOURS[family], 105.0)
    esr = LOW_ESR if low_impedance else "general"
    try:
        tan_delta = loss_limit(family, farad, volts).tan_delta
    except RepairlibError:  # a rating for which no limit was published
        return Expectation(hours, years_in_words(hours), "", esr)
    limit = brief(float(f"{esr_of(tan_delta, farad, STATED_HZ):.3g}"), "Ω")
    return Expectation(hours, years_in_words(hours), "", f"{esr}, at most {limit} at 120 Hz")
