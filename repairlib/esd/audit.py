"""An audit of a whole bench: one line for each thing measured, a verdict for each line."""

from __future__ import annotations

import re
from dataclasses import dataclass

from repairlib.core.decide import CANNOT_TELL, FAIL, PASS
from repairlib.core.errors import RepairlibError
from repairlib.core.finding import Finding
from repairlib.esd.limits import EDITIONS, esd_limit, items

EXAMPLE = "lines such as: wrist strap: 1.02 MΩ; work surface: 40 MΩ at 100 V"
LONGEST = 10_000  # characters
WANTED = ("wrist strap", "work surface")  # no bench is whole without these
OTHER_NAMES = {
    "strap": "wrist strap",
    "mat": "work surface",
    "bench mat": "work surface",
    "worksurface": "work surface",
    "chair": "seating",
    "shoes": "footwear",
    "person": "person with shoes and floor",
    "ioniser": "ioniser offset",
    "ionizer": "ioniser offset",
    "iron tip": "iron tip to ground (in use)",
}
_EXTRA = re.compile(r"\b(walk(?:ing)?|at)\s+(?=[-+<>~]?\s*\d)", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class AuditRow:
    """One line of an audit: as `typed`, its `item`, a `verdict` and a `reason`."""

    typed: str
    item: str
    verdict: str
    reason: str
    finding: Finding | None = None


@dataclass(frozen=True, slots=True)
class Audit:
    """The rows of an audit, the `edition` they were judged by, and what is `missing`."""

    edition: str
    rows: tuple[AuditRow, ...]
    missing: tuple[str, ...]

    @property
    def verdict(self) -> str:
        """The worst of all; what was not measured cannot be told."""
        verdicts = [row.verdict for row in self.rows]
        if FAIL in verdicts:
            return FAIL
        return CANNOT_TELL if CANNOT_TELL in verdicts or self.missing else PASS

    def __str__(self) -> str:
        lines = [f"{row.item}: {row.verdict}, {row.reason}" for row in self.rows]
        lines += [f"{item}: {CANNOT_TELL}, not measured" for item in self.missing]
        return "\n".join([f"Bench by {self.edition}: {self.verdict}", *lines])


def audit_bench(text: str, edition: str = EDITIONS[0], uncertainty: float = 0.0) -> Audit:
    """Judge every line of `text` by the edition; `uncertainty` of the meter in per cent.

    A line is a thing, a colon and a reading; `at 100 V` names the voltage it was measured with,
    `walk 60 V` the body voltage of a walking test. What follows # is a remark. A line that cannot
    be read gets the verdict "cannot tell" with the reason. Raises RepairlibError for an unknown
    edition, and for a text without any line.

    >>> print(audit_bench("strap: 1.02 MΩ; mat: 40 MΩ at 100 V", "S20.20-2007", 5))
    Bench by S20.20-2007: pass
    wrist strap: pass, 969 kΩ to 1.071 MΩ is below 35 MΩ (S20.20-2007)
    work surface: pass, 38 MΩ to 42 MΩ is below 1 GΩ (S20.20-2007)
    """
    if not isinstance(text, str) or len(text) > LONGEST:
        raise RepairlibError(text, "not a text of a reasonable length", EXAMPLE)
    if edition not in EDITIONS:
        raise RepairlibError(edition, "not an edition known here", ", ".join(EDITIONS))
    lines = [line.partition("#")[0].strip() for line in re.split(r"[;\n\r]", text)]
    rows = tuple(_row(line, edition, uncertainty) for line in lines if line)
    if not rows:
        raise RepairlibError(text, "nothing to audit", EXAMPLE)
    measured = {row.item for row in rows}
    return Audit(edition, rows, tuple(item for item in WANTED if item not in measured))


def _row(line: str, edition: str, uncertainty: float) -> AuditRow:
    try:
        item, reading, extras = _taken_apart(line)
        finding = esd_limit(item, reading, edition, uncertainty=uncertainty, **extras)
    except RepairlibError as error:
        name = line.partition(":")[0].strip()
        return AuditRow(line, _item(name) or name, CANNOT_TELL, str(error))
    return AuditRow(line, item, str(finding.verdict), str(finding.reason), finding)


def _taken_apart(line: str) -> tuple[str, str, dict[str, str]]:
    name, colon, rest = line.partition(":")
    if not colon:
        raise RepairlibError(line, "no colon after the name of the thing", EXAMPLE)
    item = _item(name.strip())
    if item is None:
        raise RepairlibError(name.strip(), "nothing to audit by this name", "; ".join(items()))
    reading, *more = _EXTRA.split(rest)
    words = {"at": "test_voltage", "walk": "walk", "walking": "walk"}
    extras = {}
    for word, text in zip(more[::2], more[1::2], strict=True):
        key = words[word.lower()]
        if key in extras:
            raise RepairlibError(line, f"{word} stands twice", EXAMPLE)
        extras[key] = text.strip(" ,")
    return item, reading.strip(" ,"), extras


def _item(name: str) -> str | None:
    wanted = " ".join(name.casefold().split())
    wanted = OTHER_NAMES.get(wanted, wanted)
    return next((item for item in items() if item.casefold() == wanted), None)
