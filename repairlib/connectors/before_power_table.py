"""The whole short table before power: a reading for each pair, and one answer for all of them."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from repairlib.connectors.before_power import GO_ON, HANDED_ON, pairs, shorts_before_power
from repairlib.core.errors import RepairlibError
from repairlib.core.finding import Finding
from repairlib.core.verdicts import AGAIN, STOP

NOT_MEASURED = "not measured yet"
NOT_THERE = "not there"  # typed for a pair that the set does not have


class Row(NamedTuple):
    """One pair: its verdict and why; `finding` is None where nothing was measured or read."""

    pair: str
    verdict: str
    reason: str
    finding: Finding | None = None


class Checked(NamedTuple):
    """All pairs, and the verdict on the set: the worst of theirs."""

    rows: tuple[Row, ...]
    verdict: str

    def those(self, verdict: str) -> list[str]:
        """The pairs that have this verdict."""
        return [row.pair for row in self.rows if row.verdict == verdict]


def asked_pairs() -> tuple[str, ...]:
    """The pairs that are measured at the bench; those of the mains are handed on.

    >>> len(asked_pairs()), "mains contacts" in asked_pairs()
    (9, False)
    """
    return tuple(name for name, one in pairs().items() if one.open_is != HANDED_ON)


def check_pairs(
    measured: Mapping[str, str], leads: str = "0.3 Ω", thresholds: Mapping[str, str] | None = None
) -> Checked:
    """Every pair of `measured`, a reading as typed for its name; an empty one is not measured yet.

    For a pair that the set does not have type "not there": it is left out of the answer. `leads` is
    what the probes read when held together; `thresholds` holds own limits by pair, as of a service
    sheet. A reading that cannot be read is to be measured again; its row says why. One "stop" stops
    the set; it goes on only when every pair does. Raises RepairlibError for leads and pairs that
    are not known.

    >>> table = check_pairs({"5 V rail and ground": "180 Ω", "two rails": ""})
    >>> [row.verdict for row in table.rows], table.verdict
    (['go on to the next check', 'not measured yet'], 'not measured yet')
    """
    known = asked_pairs()
    for name in measured:
        if name not in known:
            raise RepairlibError(name, "not a pair of the table", "; ".join(known))
    shorts_before_power(known[0], "OL", leads=leads)  # leads that cannot be read are told once
    rows = tuple(_row(*one, leads, thresholds or {}) for one in measured.items())
    found = {row.verdict for row in rows}
    worst = next((one for one in (STOP, AGAIN, NOT_MEASURED, GO_ON) if one in found), NOT_MEASURED)
    return Checked(rows, worst)


def _row(pair: str, reading: str, leads: str, thresholds: Mapping[str, str]) -> Row:
    if not reading.strip():
        return Row(pair, NOT_MEASURED, f"expected: {pairs()[pair].expected}")
    if reading.strip().casefold() == NOT_THERE:
        return Row(pair, NOT_THERE, "the set has no such pair")
    own = thresholds.get(pair, "").strip()
    try:
        more = {"threshold": own} if own else {}
        finding = shorts_before_power(pair, reading, leads=leads, **more)
    except RepairlibError as error:
        return Row(pair, AGAIN, str(error))
    return Row(pair, str(finding.verdict), str(finding.reason), finding)
