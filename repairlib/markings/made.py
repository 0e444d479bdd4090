"""What capacitors are made in: values outside are not refused, they get a doubt.

The ranges are common practice, drawn wide, for parts large enough to carry a marking.
"""

from __future__ import annotations

from repairlib.core.quantity import engineering
from repairlib.markings.kinds import POLAR, TABLE, WIRED, Made
from repairlib.markings.voltage_codes import USUAL, USUAL_AC

SOUND, DOUBTFUL, NOT_PREFERRED = 0, 1, 2

# Builds that are no kind of their own, in volts AC but for the last.
_BUILDS = {
    "motor run": Made("film capacitors for AC", 10e-12, 150e-6, volts=3000.0),
    "non-polar": Made("non-polar aluminium capacitors for AC", 1e-6, 1500e-6, volts=450.0),
    "double layer": Made("double-layer cells", 0.01, 3500.0, volts=6.3),
}
_TIGHTEST = 0.0005  # fraction; no capacitor is sorted closer
_ROUNDING = 1e-6

_E12 = ("1.0", "1.2", "1.5", "1.8", "2.2", "2.7", "3.3", "3.9", "4.7", "5.6", "6.8", "8.2")
_BEFORE_E12 = ("1.25", "1.6", "2.0", "2.5", "3.0", "3.2", "4.0", "5.0", "6.0", "6.4", "8.0")
_ON_WIRES = (*_E12, *_BEFORE_E12)


def how_plausible(kind: str, farad: float, volts: float | None, tolerance, bare: bool) -> int:
    """SOUND, DOUBTFUL (no such part is made), or NOT_PREFERRED (an odd value for a bare number).

    >>> how_plausible("ceramic", 5.0, None, None, bare=False) == DOUBTFUL
    True
    """
    if not _in_range(kind, farad, volts) or _has_many_figures(farad):
        return DOUBTFUL
    if tolerance is not None and (_too_tight(farad, tolerance) or _too_wide(farad, tolerance)):
        return DOUBTFUL
    if volts is not None and (volts > made_in(kind).volts or not _is_usual(kind, volts)):
        return DOUBTFUL
    if bare and kind in POLAR and not is_preferred(kind, farad):
        return NOT_PREFERRED
    return SOUND


def doubt(kind: str, farad: float, volts: float | None, tolerance) -> str:
    """Why a reading that is not sound is to be distrusted."""
    made = made_in(kind)
    if not _in_range(kind, farad, volts):
        between = f"{engineering(made.least, 'F')} to {engineering(made.most, 'F')}"
        return f"{engineering(farad, 'F')}: {made.many} are made from {between}"
    if _too_tight(farad, tolerance):
        return f"no capacitor is sorted to {tolerance}"
    if _too_wide(farad, tolerance):
        return f"{tolerance} is more than the value itself"
    if volts is not None and volts > made.volts:
        return f"{made.many} are made up to {engineering(made.volts, 'V')}"
    if volts is not None and not _is_usual(kind, volts):
        return f"{engineering(volts, 'V')} is not a usual rating"
    return f"{engineering(farad, 'F')} is not a value that {made.many} are made in"


def is_preferred(kind: str, farad: float) -> bool:
    """Whether polar capacitors of that kind are made in the value: E12, and with wire leads also
    the round values of old radios, such as 8, 25, 50 and 500 µF.

    >>> is_preferred("can", 220e-6), is_preferred("can", 104e-6), is_preferred("axial", 50e-6)
    (True, False, True)
    """
    text = f"{farad:.6e}"
    return text[:3] + text[3:8].rstrip("0") in (_ON_WIRES if kind in WIRED else _E12)


def made_in(kind: str) -> Made:
    """What capacitors of that kind or build are made in."""
    made = _BUILDS.get(kind) or TABLE[kind].made
    assert made is not None, f"{kind} is no body of a capacitor"
    return made


def _is_usual(kind: str, volts: float) -> bool:
    return volts in USUAL or (kind in ("motor run", "non-polar") and volts in USUAL_AC)


def _in_range(kind: str, farad: float, volts: float | None) -> bool:
    made = made_in(kind)
    if made.least * (1 - _ROUNDING) <= farad <= made.most * (1 + _ROUNDING):
        return True
    cell = _BUILDS["double layer"]
    few_volts = volts is None or volts <= cell.volts
    two_figures = abs(float(f"{farad:.1e}") / farad - 1) < _ROUNDING
    return kind == "radial" and few_volts and two_figures and cell.least <= farad <= cell.most


def _has_many_figures(farad: float) -> bool:
    """More than four figures: a type number, such as 1N4148."""
    return abs(float(f"{farad:.3e}") / farad - 1) > _ROUNDING


def _too_wide(farad: float, tolerance) -> bool:
    return tolerance is not None and tolerance.limits(farad)[0] < 0


def _too_tight(farad: float, tolerance) -> bool:
    if tolerance is None:
        return False
    return (tolerance.high if tolerance.unit == "" else tolerance.high / farad) < _TIGHTEST
