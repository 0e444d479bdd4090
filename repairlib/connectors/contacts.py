"""How much current a contact may have: by family, by wire gauge, by how many are loaded at once.

Contacts side by side heat each other, and a thin wire carries less heat away. The published tables
are for a rise of 30 K of new contacts; a worn one gets hotter at the same current.
"""

from __future__ import annotations

import math
from contextlib import suppress
from functools import cache
from typing import Annotated, NamedTuple

from repairlib.connectors.wire import GAUGE
from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity, brief
from repairlib.core.tables import read_table
from repairlib.core.verdicts import OVER, WITHIN

PITCH_3, PITCH_4, PITCH_5 = "3.00 mm pitch", "4.20 mm pitch", "5.03 mm pin and socket"
OWN = "own rating"
FAMILIES = (PITCH_4, PITCH_5, PITCH_3, OWN)
RISE = 30.0  # K, for which the tables are made
# °C, the hottest that a housing may get, the rise included: stated for 5.03 mm, taken for all.
HOUSING = 105.0
LEFT_BY_DOUBLING = 0.8  # rule of thumb: 20 % off for every doubling of the pairs of pins
MOST_CONTACTS = 24  # of the largest housing in the tables


class Limit(NamedTuple):
    """A current for each contact [A], why it is that, and the keys of its sources."""

    ampere: float
    why: tuple[str, ...]
    sources: tuple[str, ...]


def derated(single: float, pairs: float) -> float:
    """The current [A] of each of so many pairs of pins, by the rule of thumb: 20 % off by doubling.

    A pair is one pin out and one back; `single` is the rating of one pair alone in A. Source: a
    page on pin derating.

    >>> round(2 * derated(3, 2), 2), round(4 * derated(3, 4), 2)
    (4.8, 7.68)
    """
    return single * LEFT_BY_DOUBLING ** math.log2(pairs)


def limit(family: str, contacts: float, gauge: float, single: float | None = None) -> Limit:
    """The current that each loaded contact may have.

    `contacts` is the number loaded at once, 1 to 24 (the 5.03 mm family: to 15). For a family
    without a table the rating of one contact is derated, and never more than the tables give for
    that wire. Raises RepairlibError for gauges and numbers that no table has, and for a missing
    own rating.

    >>> limit("4.20 mm pitch", 8, 18).ampere, limit("5.03 mm pin and socket", 7, 18).ampere
    (7.0, 6.0)
    """
    if contacts != int(contacts):
        raise RepairlibError(f"{contacts:g}", "not a whole number of contacts", "1, 2, 3 …")
    if single is not None and family != OWN:
        wrong = f"{family} has its figures, and takes no rating of one contact"
        raise RepairlibError(brief(single, "A"), wrong, f"family={OWN}, or no rating")
    if family in (PITCH_4, PITCH_5):
        return _of_table(family, contacts, gauge)
    if family == PITCH_3:
        single, highest, source = ratings(PITCH_3)
        why = f"one contact alone: {single:g} A, the lowest of {single:g} to {highest:g} A by "
        why += "agency, year and variant"
    else:
        source = ()
        why = "one contact alone: as typed; check it against the maker's sheet"
    if single is None:
        raise RepairlibError(OWN, "the rating of one contact is missing", "single=5 A")
    pairs = max(1.0, contacts / 2)
    ampere = derated(single, pairs)
    by_rule = f"{pairs:g} pairs loaded: × 0.8 for every doubling = {brief(ampere, 'A')}"
    by_wire = _most_of_tables(contacts, gauge)
    if by_wire.ampere < ampere:
        more = f"{gauge:g} AWG and {contacts:g} loaded: no table here gives more than "
        return Limit(
            by_wire.ampere,
            (why, by_rule, f"{more}{by_wire.ampere:g} A"),
            (*source, "connector pin derating", *by_wire.sources),
        )
    return Limit(ampere, (why, by_rule), (*source, "connector pin derating"))


def ratings(family: str) -> tuple[float, float, tuple[str, ...]]:
    """Lowest and highest rating [A] of one contact in a family, and the keys of their sources.

    >>> ratings("3.00 mm pitch")[:2]
    (5.0, 8.5)
    """
    rows = [row for row in read_table("contact-ratings") if row["family"] == family]
    least, most = min(float(r["low_a"]) for r in rows), max(float(r["high_a"]) for r in rows)
    return least, most, tuple(dict.fromkeys(row["source"] for row in rows))


@calculator(
    topic="connectors",
    title="Current of a contact",
    sources=("common practice",),
    cautions=("heat and fire",),
)
def contact_current(
    family: Annotated[str, Choice(FAMILIES, "What kind of contact.")],
    contacts: Annotated[
        float, Given("", "Loaded at the same time.", at_least=1, at_most=MOST_CONTACTS)
    ],
    gauge: Annotated[float, GAUGE],
    current: Annotated[
        float | None, Given("A", "In each of them.", at_least=0, at_most=1e3)
    ] = None,
    ambient: Annotated[float, Given("°C", "Of the air in the set.", at_least=-60, at_most=200)] = (
        40.0
    ),
    single: Annotated[
        float | None, Given("A", "Own rating of one contact alone.", above=0, at_most=100)
    ] = None,
) -> Found:
    """How much each contact of a connector may have, and how warm it gets with what it has.

    `contacts` counts all that are loaded at once, supply and return. `current` in A for each;
    `ambient` in °C. With the family "own rating" give `single`, the maker's figure for one contact.
    The verdict is "over a limit" above the table or above 105 °C. Raises RepairlibError for gauges
    and numbers that no table has. Source: makers' tables for 30 K; 105 °C is stated for the 5.03 mm
    family and taken for all; the derating of ratings without a table is a rule of thumb; that the
    rise goes with I² is common practice.

    >>> finding = contact_current("4.20 mm pitch", 8, 18, "4.167 A")
    >>> finding.limit, finding.verdict
    (7 A, 'within the limits')
    """
    most = limit(family, contacts, gauge, single)
    values: dict[str, object] = {"limit": Quantity(float(f"{most.ampere:.4g}"), "A")}
    working = list(most.why)
    notes = [
        "New contacts, one wire in each, all loaded alike. Not sure how many are loaded? Count all "
        "contacts of the housing.",
        "A discoloured, loose or pitted contact carries less: replace both halves, see "
        "contact_heat.",
    ]
    sources = (*most.sources, "AMP catalogue 82181")
    room = HOUSING - RISE
    if current is None:
        if ambient > room:
            reason = f"air of {ambient:g} °C and {RISE:g} K are more than {HOUSING:g} °C"
            return found(
                values, working=working, verdict=OVER, reason=reason, notes=notes, sources=sources
            )
        return found(values, working=working, notes=notes, sources=sources)
    rise = RISE * (current / most.ampere) ** 2
    values["rise"] = f"about {rise:.3g} K"
    working.append(
        f"rise goes with I²: {RISE:g} K × ({brief(current, 'A')} / {brief(most.ampere, 'A')})² = "
        f"{rise:.3g} K"
    )
    hottest = ambient + rise
    if current > most.ampere:
        verdict, reason = OVER, f"{brief(current, 'A')} in each is above {brief(most.ampere, 'A')}"
        reason += ": the housing softens, the contact loses its spring, and it burns"
    elif hottest > HOUSING:
        verdict = OVER
        reason = f"{ambient:g} °C and {rise:.3g} K are more than {HOUSING:g} °C, a housing's most"
    else:
        verdict = WITHIN
        reason = f"{brief(current, 'A')} in each is not above {brief(most.ampere, 'A')}"
        reason += "; verify under load: measure the drop across each contact"
    return found(
        values, working=working, verdict=verdict, reason=reason, notes=notes, sources=sources
    )


def _of_table(family: str, contacts: float, gauge: float) -> Limit:
    """The row for so many contacts, or for the next larger housing, and the column of the wire."""
    rows = [row for row in read_table("contact-currents") if row["family"] == family]
    row = next((r for r in rows if contacts <= float(r["to_contacts"])), None)
    if row is None:
        wrong = f"no table of {family} has so many loaded contacts"
        accepted = f"up to {rows[-1]['to_contacts']}; above, the maker's own sheet"
        raise RepairlibError(f"{contacts:g}", wrong, accepted)
    columns = {int(name.split("_")[1]): cell for name, cell in row.items() if "awg" in name}
    made = [awg for awg, cell in columns.items() if cell]
    if gauge not in made:
        wrong = f"no such wire in the table of {family}"
        raise RepairlibError(f"{gauge:g} AWG", wrong, ", ".join(map(str, made)))
    ampere = float(columns[int(gauge)])
    circuits = "-".join(dict.fromkeys((row["from_contacts"], row["to_contacts"])))
    why = f"{family}, {gauge:g} AWG, column of {circuits}: {ampere:g} A for a rise of {RISE:g} K"
    return Limit(ampere, (why,), (row["source"],))


@cache
def _most_of_tables(contacts: float, gauge: float) -> Limit:
    """The highest figure that any table gives for that wire and so many contacts."""
    stated = []
    for family in (PITCH_4, PITCH_5):
        with suppress(RepairlibError):
            stated.append(_of_table(family, contacts, gauge))
    if not stated:
        read, wrong = f"{gauge:g} AWG, {contacts:g} contacts", "in no table here"
        raise RepairlibError(read, wrong, "16, 18, 20, 22, 24, 26 or 28 AWG, up to 24 contacts")
    return max(stated, key=lambda one: one.ampere)
