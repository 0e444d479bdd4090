"""Measured values joined to a plan by reference: which part must go, which may stay, and why.

What a reading says of a part is decided in repairlib.health.verdict, against the limits of an
ordinary part of its kind. Here it is set beside the part's age and the rules of the recap.
"""

from __future__ import annotations

import re
from typing import NamedTuple

from repairlib.core.errors import RepairlibError, shown
from repairlib.core.quantity import engineering
from repairlib.core.typed.readings import (
    ABOVE,
    BELOW,
    NOTHING,
    OVERLOAD,
    UNREADABLE,
    VALUE,
    Measurement,
)
from repairlib.core.verdicts import CANNOT_TELL, MAY_STAY, MUST_GO
from repairlib.health import (
    ASK_FREQUENCY,
    FIT,
    LOW_IMPEDANCE,
    MARGINAL,
    REPLACE,
    MeasuredPart,
    judge_capacitor,
)
from repairlib.recap import words
from repairlib.recap.capacitor import NEARLY_1_UF, Capacitor

LIMITS_RULE = (
    "Old polar aluminium is measured against the limits of an 85 °C general part (from memory), "
    "above 100 V of a 105 °C one; bipolar, polymer, tantalum and film parts against the limits of "
    "an ordinary part of their kind. They do not know your part: its own data sheet decides. "
    "±5 % of the reading, and two counts of ESR and D, are taken for the meter, or the widest ± "
    "written for that part. ESR and D count only with the frequency at which they were read."
)
_WET = (words.ALUMINIUM, words.BIPOLAR, "")
_FAMILIES = {
    words.POLYMER: "polymer radial",
    words.TANTALUM: "tantalum",
    words.FILM: "film polyester",
}
# Role in a table of measured parts: the calculator's name for it, and whether a low value is good.
_ROLES = {
    "capacitance": ("measured", False),
    "esr": ("esr", True),
    "loss": ("loss", True),
    "leakage": ("leakage", True),
}
_JUDGED_AS = {"measured": "capacitance", "esr": "ESR", "loss": "D", "leakage": "leakage"}
_SAID = {"capacitance": "C", "esr": "ESR", "loss": "D", "leakage": "leakage"}
# Words of a remark by which a part must go, whatever it measures.
_SEEN_BAD = re.compile(
    r"""\b(?:bulg|burst|blown|corro|swoll|swell|crack|burn|scorch|smel|stink|stank|crust|ooz|smok)\w*
    |\bleak(?!age)\w*|\bvent(?:s|ed|ing)?\b|\bhot\b|\bdomed?\b|\belectrolyte\b|\bdamaged?\b""",
    re.IGNORECASE | re.VERBOSE,
)
_DENIED = re.compile(r"\b(?:no|not|never|without|nor|neither)\s+(?:\w+\s+)?$", re.IGNORECASE)
_AT_A_FREQUENCY = ("esr", "loss")
_NO_VALUE = (OVERLOAD, UNREADABLE)
_USUAL_UNCERTAINTY = 5.0


class Judgement(NamedTuple):
    """What was measured on one part of the plan.

    `stand` is MUST_GO, MAY_STAY or CANNOT_TELL, `why` the reason, `readings` what was read in
    short, `line` its line in the table of measured parts, `remark` what else that line says.
    """

    stand: str
    why: str
    readings: str
    line: int
    remark: str = ""

    def __str__(self) -> str:
        return f"{self.stand}: {self.why}"


def judge_measured(old: Capacitor, part: MeasuredPart) -> Judgement:
    """What the readings of `part` say about the old part `old`.

    >>> from repairlib.health import read_measured
    >>> from repairlib.recap.ratings import describe
    >>> table = read_measured("Ref,C (µF),ESR @ 120 Hz (Ω)\\nC1,61,9.5\\n")
    >>> print(judge_measured(describe((("free", "100/16 elect"),)), table.parts[0]).stand)
    must go
    """
    readings = ", ".join(
        f"{_SAID[role]} {_shown(reading)}"
        for role, reading in part.readings.items()
        if role in _ROLES and reading.kind != NOTHING
    )
    stand, why = _stand_and_why(old, part)
    if looks_bad(part.note):
        seen = f"seen: {shown(part.note)}"
        stand, why = MUST_GO, f"{seen}; {why}" if stand == MUST_GO else seen
    return Judgement(stand, why, readings, part.line, part.note)


def looks_bad(remark: str) -> bool:
    """Whether a remark names what condemns a part, whatever it measures; "no leak" does not.

    >>> looks_bad("vent open"), looks_bad("not bulged"), looks_bad("beside the lamp")
    (True, False, False)
    """
    found = _SEEN_BAD.finditer(remark)
    return any(not _DENIED.search(remark[: word.start()]) for word in found)


def _stand_and_why(old: Capacitor, part: MeasuredPart) -> tuple[str, str]:
    family = _family(old)
    if family is None:
        return CANNOT_TELL, f"no limits are known here for {old.kind or 'a part without a kind'}"
    if old.farad is None or old.volts is None:
        missing = "rated voltage" if old.farad is not None else "capacitance"
        return CANNOT_TELL, f"no {missing} stated: without it there are no limits"
    try:
        return _judged(old, family, part)
    except RepairlibError as problem:
        return CANNOT_TELL, problem.wrong


def _family(old: Capacitor) -> str | None:
    """The family whose limits an old part is measured against; None where none are known."""
    if old.kind == words.BIPOLAR:
        return "aluminium non-polar axial" if old.form == "axial" else "aluminium non-polar"
    if old.kind in _WET and words.LOW_IMPEDANCE in old.features:
        return LOW_IMPEDANCE
    if old.kind in _WET and (old.kind or (old.farad or 0) > NEARLY_1_UF):
        high = old.volts is not None and old.volts > 100
        return "aluminium general 105" if high else "aluminium general 85"
    return _FAMILIES.get(old.kind)


def _judged(old: Capacitor, family: str, part: MeasuredPart) -> tuple[str, str]:
    """Where the part stands, and why."""
    given, bounds, says = _taken(part)
    known = {"frequency": _frequency(part), "tolerance": _tolerance(old)}
    settings = {name: one for name, one in known.items() if one is not None}
    settings["uncertainty"] = _uncertainty(part)
    marked = (family, old.farad, old.volts)
    finding = judge_capacitor(*marked, **given, **settings)
    for name, bound in bounds.items():
        if not _decides(name, bound, finding, given[name], old.farad):
            text = shown(part.readings[_role(name)].text.strip(), 20)
            why = "" if settings.get("frequency") or name not in _AT_A_FREQUENCY else ASK_FREQUENCY
            says.append(f"{_JUDGED_AS[name]} {text} does not decide{why and ': ' + why}")
            del given[name]
    finding = judge_capacitor(*marked, **given, **settings)
    stand = _stand(finding, old)
    if stand == MAY_STAY and "measured" not in given:
        # A low ESR alone does not acquit a part that has lost its capacitance.
        stand = CANNOT_TELL
        says.append("its capacitance was not read")
    if stand == MAY_STAY and any(one.kind in _NO_VALUE for one in part.readings.values()):
        stand = CANNOT_TELL
    return stand, "; ".join([finding.reason, *says])


def _taken(part: MeasuredPart) -> tuple[dict[str, float], dict[str, str], list[str]]:
    """The readings by the calculator's names, which of them are ends such as < 0.1, and notes."""
    given, bounds, says = {}, {}, []
    for role, (name, _) in _ROLES.items():
        reading = part.readings.get(role)
        if reading is None or reading.kind == NOTHING:
            continue
        if reading.kind in _NO_VALUE:
            says.append(f"{_SAID[role]} {shown(reading.text.strip(), 20)}: {reading.why}")
        elif role == "loss" and "esr" in given and reading.frequency != part["esr"].frequency:
            says.append("D was read at another frequency than ESR, and left out")
        elif reading.kind in (BELOW, ABOVE):
            given[name] = reading.high if reading.kind == BELOW else reading.low
            bounds[name] = reading.kind
        else:
            given[name] = reading.value
    return given, bounds, says


def _uncertainty(part: MeasuredPart) -> float:
    """The meter's uncertainty in per cent: the usual one, or the widest ± that was written."""
    spreads = [
        (one.high - one.low) / 2 / one.value * 100
        for one in part.readings.values()
        if one.kind == VALUE and one.value and one.value > 0
    ]
    return min(max([_USUAL_UNCERTAINTY, *spreads]), 99.0)


def _decides(name: str, bound: str, finding, at: float, farad: float) -> bool:
    """Whether a reading such as < 0.1 Ω decides by its end `at`: every value beyond says the same.

    A capacitance decides only below a value that is too low, or above one that is too high.
    """
    verdict = finding.values[_JUDGED_AS[name]]
    low_is_good = _ROLES[_role(name)][1]
    if low_is_good:
        return verdict == (FIT if bound == BELOW else REPLACE)
    return verdict == REPLACE and (at < farad if bound == BELOW else at > farad)


def _role(name: str) -> str:
    return next(role for role, (given, _) in _ROLES.items() if given == name)


def _stand(finding, old: Capacitor) -> str:
    if finding.verdict == FIT:
        return MAY_STAY
    if finding.verdict == REPLACE or (finding.verdict == MARGINAL and old.kind in _WET):
        return MUST_GO
    return CANNOT_TELL


def _frequency(part: MeasuredPart) -> float | None:
    """The frequency [Hz] at which ESR, or else D, was read; None where the table says none."""
    for role in _AT_A_FREQUENCY:
        reading = part.readings.get(role)
        if reading is not None and reading.kind not in (NOTHING, *_NO_VALUE):
            return reading.frequency
    return None


def _tolerance(old: Capacitor) -> float | None:
    """The wider side of the old part's tolerance, in per cent; None where it is not stated."""
    if old.tolerance is None:
        return None
    return min(max(abs(side) for side in old.tolerance) * 100, 99.0)


def _shown(reading: Measurement) -> str:
    text = str(reading) if reading.value else shown(reading.text.strip(), 20)
    return f"{text} at {engineering(reading.frequency, 'Hz')}" if reading.frequency else text
