"""Who goes on with a charged capacitor: the words of every verdict here, by volts and joule.

No answer says that a part may be touched. Up to 60 V dc it says to verify with a meter, twice;
above, or with much energy, to leave it to a qualified person; above the rating of an ordinary
meter no answer sends anybody there with one.
"""

from __future__ import annotations

from repairlib.core.limits import (
    HOT_JOULE,
    METER_MOST,
    METER_VOLTS,
    TOUCHABLE_DC,
    hazards_of_capacitor,
    is_beyond_meter,
)
from repairlib.core.quantity import brief

VERIFY = "verify with a meter, twice"
QUALIFIED = "leave it to a qualified person"
NO_METER = (
    f"not with an ordinary meter: its rating ends at {brief(METER_VOLTS, 'V')}, at most "
    f"{brief(METER_MOST, 'V')}, and above it the arc comes to the hand"
)
_TWICE = (
    "Calculated, not measured: a bleeder may be open. Measure across the part, try the meter on a "
    "known source, and measure again after a minute."
)
_BY_OTHERS = (
    "Calculated, not measured: a bleeder may be open. Whoever is qualified measures across the "
    "part, tries the meter on a known source, and measures again after a minute."
)
_PROBE = (
    "Calculated, not measured: a bleeder may be open. Whoever is trained for high voltage measures "
    f"with a high-voltage probe rated for it, {NO_METER}."
)


def by_voltage(volts: float, joule: float = 0.0) -> tuple[str, str]:
    """The verdict and reason for a capacitor that starts at that voltage; never "safe".

    With the energy in `joule`, one that can burn (LBNL: above 100 J) is handed on as well.

    >>> by_voltage(48)[0], by_voltage(325)[0]
    ('verify with a meter, twice', 'leave it to a qualified person')
    >>> by_voltage(48, joule=1000)[0]
    'leave it to a qualified person'
    >>> "not with an ordinary meter" in by_voltage(3000)[1]
    True
    """
    if volts > TOUCHABLE_DC:
        who = NO_METER if is_beyond_meter(volts) else "whoever does it verifies with a meter, twice"
        return QUALIFIED, f"{brief(volts, 'V')} is above 60 V dc, ES1 of IEC 62368-1: {who}"
    below = f"{brief(volts, 'V')} is not above 60 V dc, ES1 of IEC 62368-1"
    if joule > HOT_JOULE:
        burns = f"but {brief(joule, 'J')} is above {HOT_JOULE:g} J (LBNL): it melts metal and burns"
        return QUALIFIED, f"{below}, {burns}"
    return VERIFY, below


def proof(volts: float) -> str:
    """The note that a calculation is no proof, and what is.

    >>> "Measure across" in proof(50), "Whoever is qualified" in proof(325)
    (True, True)
    >>> "high-voltage probe" in proof(5000)
    True
    """
    if is_beyond_meter(volts):
        return _PROBE
    return _BY_OTHERS if volts > TOUCHABLE_DC else _TWICE


def hazards_at(volts: float, farad: float | None = None) -> tuple[str, ...]:
    """The hazards of a part that is charged to that voltage, as keys of safety.HAZARDS.

    They are those of its rating, and one more where no ordinary meter may go.

    >>> hazards_at(48), hazards_at(400), hazards_at(700)[2:]
    ((), ('mains', 'stored charge'), ('high-voltage tubes',))
    >>> hazards_at(48, farad=1)
    ('stored charge', 'heat and fire')
    """
    found = hazards_of_capacitor(volts, farad=farad)
    if is_beyond_meter(volts) and "high-voltage tubes" not in found:
        found += ("high-voltage tubes",)
    return found
