"""Points at which mixtures of solder metals melt all at once, by system and source.

Sources do not agree to the degree. Every one is kept with its own figures; where this workbook
follows one of them the row says so.
"""

from __future__ import annotations

from typing import Annotated, NamedTuple

from repairlib.core.calculator import Choice, Found, calculator, found


class Invariant(NamedTuple):
    """A eutectic or peritectic: temperature [°C] as printed, composition, and its source."""

    kind: str
    celsius: str
    composition: str
    source: str
    followed: bool = False

    @property
    def told(self) -> str:
        """Where it is, as it is said: a temperature has its unit, words have none."""
        return f"{self.celsius} °C" if self.celsius[-1].isdigit() else self.celsius


INVARIANTS = {
    "Sn-Pb": (
        Invariant("eutectic", "183", "61.9 Sn; solids 19 and 97.5 Sn", "Princeton MAE 324", True),
        Invariant("eutectic", "182.2", "62.13 Sn; solids 18.91 and 96.59 Sn", "NIST Pb-Sn"),
    ),
    "Sn-Bi": (
        Invariant("eutectic", "138", "58 Bi", "alloy paste maker", True),
        Invariant("eutectic", "139", "near 57 to 58 Bi", "Sn-Bi melting, 1995"),
        Invariant("eutectic", "140", "43 at % Bi; tin holds 12.4 at % Bi", "Bi-Sn diagram note"),
        Invariant("solubility", "at the eutectic", "tin holds 10 Bi", "Bi-Sn solubility, 2007"),
    ),
    "Sn-Ag": (
        Invariant("eutectic", "221", "3.5 Ag", "alloy paste maker", True),
        Invariant("eutectic", "220.3", "3.73 Ag, calculated", "Sn-Ag diagram"),
    ),
    "Sn-Ag-Cu": (
        Invariant(
            "eutectic", "217.2 ± 0.2", "3.5 to 3.6 Ag, 0.9 to 0.96 Cu", "NIST Sn-Ag-Cu", True
        ),
        Invariant(
            "eutectic", "216.3", "3.66 Ag, 0.91 Cu, best calculated fit", "NIST Sn-Ag-Cu, 2004"
        ),
        Invariant("eutectic", "not used", "4.7 Ag, 1.7 Cu: superseded", "Sn-Ag-Cu patent"),
    ),
    "Bi-Pb-Sn": (
        Invariant("eutectic", "95.3 ± 0.5", "lead in Sn-Bi, measured", "lead in Sn-Bi", True),
        Invariant("eutectic", "96", "Bi-Pb-Sn", "bismuth lexicon"),
        Invariant("eutectic", "98.0", "51.59 Bi, 32.59 Pb, 15.82 Sn, calculated", "NIST Bi-Pb-Sn"),
        Invariant(
            "peritectic", "135.7", "30.54 Bi, 47.56 Pb, 21.90 Sn, calculated", "NIST Bi-Pb-Sn"
        ),
    ),
    "Bi-Pb": (Invariant("eutectic", "about 125.9", "55.5 Bi", "NIST Bi-Cu-Pb", True),),
}


@calculator(
    topic="heat",
    title="Where a system melts at once",
    sources=("common practice",),
    cautions=("hot tools",),
)
def invariant_points(
    system: Annotated[str, Choice(tuple(INVARIANTS), "Which metals.")],
) -> Found:
    """Eutectics and peritectics of a system of solder metals, wt % where not said otherwise.

    One line for each source; the first is the one that is followed here. Raises RepairlibError for
    other systems.

    >>> invariant_points("Sn-Ag").followed
    '221 °C, 3.5 Ag'
    """
    points = INVARIANTS[system]
    (first,) = (point for point in points if point.followed)
    values = {"followed": f"{first.told}, {first.composition}"}
    working = [
        f"{point.kind}: {point.told}, {point.composition} ({point.source})" for point in points
    ]
    notes = ["Compositions in wt % where nothing else is said."]
    lead = ("lead",) if "Pb" in system else ()
    sources = [point.source for point in points]
    return found(values, working=working, notes=notes, sources=tuple(sources), cautions=lead)
