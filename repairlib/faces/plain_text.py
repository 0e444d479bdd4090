"""Answers as lines of plain text for a terminal."""

from __future__ import annotations

from collections.abc import Iterable

from repairlib.core.finding import Finding
from repairlib.core.safety import HAZARDS
from repairlib.core.sources import source


def finding_text(finding: Finding) -> str:
    """A finding: the answer, its working, notes, sources and cautions, a line each."""
    lines = [str(finding)]
    lines += [f"   {step}" for step in finding.working]
    lines += [f"   note: {note}" for note in finding.notes]
    lines += [f"   source: {source(key)}" for key in finding.sources]
    return "\n".join(lines + caution_lines(finding.cautions))


def caution_lines(keys: Iterable[str]) -> list[str]:
    """The titles of these hazards, a line each."""
    return [f"   CAUTION: {HAZARDS[key].title}." for key in keys]
