"""What capacitors are made in: values outside are not refused, they get a doubt.

The ranges are common practice, drawn wide, for parts large enough to carry a marking.
"""

from __future__ import annotations

from repairlib.core.quantity import engineering
from repairlib.markings.voltage_codes import USUAL, USUAL_AC

SOUND, DOUBTFUL, NOT_PREFERRED = 0, 1, 2

# kind: (least farad, most farad, most volts)
_RANGES = {
    "ceramic": (0.1e-12, 22e-6, 50e3),
    "film": (10e-12, 47e-6, 20e3),
    "tantalum": (0.047e-6, 2200e-6, 125.0),
    "can": (0.1e-6, 10e-3, 450.0),
    "radial": (0.1e-6, 0.1, 630.0),
    "axial": (0.1e-6, 0.1, 630.0),
    "motor run": (10e-12, 150e-6, 3000.0),  # film, in volts AC
    "non-polar": (1e-6, 1500e-6, 450.0),  # aluminium, in volts AC
    "double layer": (0.01, 100.0, 6.3),
}
_PLURALS = {
    "ceramic": "marked ceramic capacitors",
    "film": "film capacitors",
    "tantalum": "tantalum capacitors",
    "can": "aluminium SMD cans",
    "radial": "radial aluminium capacitors",
    "axial": "axial aluminium capacitors",
    "motor run": "film capacitors for AC",
    "non-polar": "non-polar aluminium capacitors for AC",
}
_TIGHTEST = 0.0005  # fraction; no capacitor is sorted closer
_ROUNDING = 1e-6

_IN_E12 = ("tantalum", "can", "radial", "axial")
_E12 = ("1.0", "1.2", "1.5", "1.8", "2.2", "2.7", "3.3", "3.9", "4.7", "5.6", "6.8", "8.2")
_BEFORE_E12 = ("1.6", "2.0", "2.5", "3.0", "3.2", "4.0", "5.0", "6.0", "6.4", "8.0")


def how_plausible(kind: str, farad: float, volts: float | None, tolerance, bare: bool) -> int:
    """SOUND, DOUBTFUL (no such part is made), or NOT_PREFERRED (an odd value for a bare number).

    >>> how_plausible("ceramic", 5.0, None, None, bare=False) == DOUBTFUL
    True
    """
    if not _in_range(kind, farad, volts) or _too_tight(tolerance):
        return DOUBTFUL
    if volts is not None and (volts > _RANGES[kind][2] or not _is_usual(kind, volts)):
        return DOUBTFUL
    if bare and kind in _IN_E12 and not is_preferred(kind, farad):
        return NOT_PREFERRED
    return SOUND


def doubt(kind: str, farad: float, volts: float | None, tolerance) -> str:
    """Why a reading that is not sound is to be distrusted."""
    least, most, most_volts = _RANGES[kind]
    if not _in_range(kind, farad, volts):
        between = f"{engineering(least, 'F')} to {engineering(most, 'F')}"
        return f"{engineering(farad, 'F')}: {_PLURALS[kind]} are made from {between}"
    if _too_tight(tolerance):
        return f"no capacitor is sorted to {tolerance}"
    if volts is not None and volts > most_volts:
        return f"{_PLURALS[kind]} are made up to {engineering(most_volts, 'V')}"
    if volts is not None and not _is_usual(kind, volts):
        return f"{engineering(volts, 'V')} is not a usual rating"
    return f"{engineering(farad, 'F')} is not a value that {_PLURALS[kind]} are made in"


def is_preferred(kind: str, farad: float) -> bool:
    """Whether polar capacitors of that kind are made in the value: E12, and with wire leads also
    the round values of old radios, such as 8, 25, 50 and 500 µF.

    >>> is_preferred("can", 220e-6), is_preferred("can", 104e-6), is_preferred("axial", 50e-6)
    (True, False, True)
    """
    text = f"{farad:.6e}"
    figures = _E12 + _BEFORE_E12 if kind in ("radial", "axial") else _E12
    return text[:3] in figures and not text[3:8].strip("0")


def _is_usual(kind: str, volts: float) -> bool:
    return volts in USUAL or (kind in ("motor run", "non-polar") and volts in USUAL_AC)


def _in_range(kind: str, farad: float, volts: float | None) -> bool:
    least, most, _ = _RANGES[kind]
    if least * (1 - _ROUNDING) <= farad <= most * (1 + _ROUNDING):
        return True
    least, most, most_volts = _RANGES["double layer"]
    return kind == "radial" and least <= farad <= most and (volts is None or volts <= most_volts)


def _too_tight(tolerance) -> bool:
    return tolerance is not None and tolerance.unit == "" and tolerance.high < _TIGHTEST
