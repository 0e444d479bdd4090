"""The table of symptoms of a small supply: what is seen, which part is likely, what decides."""

from __future__ import annotations

from repairlib.circuits import symptom_rows
from repairlib.show.sourced_table import SourcedTable


def symptom_table() -> SourcedTable:
    """Each fault with the symptoms that it shows and no others, as `circuits` works them out.

    >>> print(repr(symptom_table()).splitlines()[8])
    ripple at mains | one diode open | each diode on the diode range
    """
    rows = symptom_rows()
    told = [("; ".join(row.shows), row.fault, row.decides) for row in rows]
    keys = tuple(dict.fromkeys(row.source for row in rows))
    head = ("seen, and nothing else", "likely", "the measurement that decides")
    caption = "Parts and ohms: power off, discharged, one lead lifted"
    return SourcedTable(caption, head, told, keys, (18, 10, 14))
