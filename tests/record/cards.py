"""A small card of a job, with an entry of each kind."""

from repairlib.record import add_entry, open_job

JOB = {"set": "desk radio", "job": "hum", "date": "2026-11-28"}
ONE_OF_EACH = {
    "finding": {"text": "Hum at any volume. The large can bulges."},
    "reading": {"stage": "before", "what": "C3 ESR", "reading": "1,2 @ 100 kHz", "unit": "Ω"},
    "part": {"reference": "C3", "old": "470/16", "new": "470 µF 25 V 105 °C", "plus": "left"},
    "photo": {"file": "Küchenradio 前.jpg"},
    "caution": {"hazard": "stored charge"},
    "hours": {"spent": "1 h 30 min"},
    "note": {"text": "Two lines,\nas typed: Ω µ “€” \U0001f527"},
    "outcome": {"outcome": "verify", "told": "hum with the volume down, an hour at the bench"},
}


def full_card(folder, by="Ana"):
    """The path of a card with an entry of each kind; the first is the job."""
    path = open_job(folder, by, **JOB)
    for kind, said in ONE_OF_EACH.items():
        add_entry(path, kind, by, **said)
    return path
