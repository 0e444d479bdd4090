"""The card of a job on paper: what is with the set when it leaves the bench, and what is still due.

What was corrected and what could not be read stands at its end, so that nothing is lost.
"""

from __future__ import annotations

from collections.abc import Iterable

from repairlib.core.html import listed, text
from repairlib.core.safety import HAZARDS
from repairlib.recap import Saved, write_whole
from repairlib.record import STAGES, Card, Entry
from repairlib.show.sheets.sheet_pieces import caution_in_full, page, short, table

JOB_STYLE = """
.typed, li, td { white-space: pre-wrap; }
ul { margin: 0 0 1.5mm; padding-left: 5mm; } li { break-inside: avoid; }
.ref, .number { width: 17mm; } .line { width: 15mm; } .writer { width: 22mm; }
.side { width: 60mm; } h2 { margin-top: 4.5mm; }
.fields b { margin-right: 6mm; }
@media screen { th, td small, .source { font-size: 13px; } }
"""
OUTCOME = {
    "verify": "Repaired, to be verified before it goes back",
    "handed on": "Not finished: handed on to a qualified person",
    "not repaired": "Not repaired: keep it unplugged, with this card on it",
}
OPEN = "No outcome is written yet: keep it unplugged, with this card on it."
VERIFIED = '<p class="fields">Verified as stated by <span></span> Date <span></span></p>'


def job_sheet(card: Card) -> str:
    """The card of a job as one HTML page to print.

    >>> from repairlib.record import Card
    >>> "nothing is written on this card yet" in job_sheet(Card("radio.jsonl"))
    True
    """
    title = f"Job card: {card.title}"
    hazards = list(dict.fromkeys(one["hazard"] for one in card.standing("caution")))
    parts = [
        f"<h1>{text(title)}</h1>",
        _head(card),
        f'<p class="caution"><strong>{text(card.trouble)}</strong></p>' if card.trouble else "",
        _outcome(card),
        _section("Found", _list(card.standing("finding"), "text")),
        _section("Readings", _readings(card)),
        _section("Parts fitted", _parts(card)),
        _section("Photos", _list(card.standing("photo"), "file")),
        _section("Cautions acknowledged", _acknowledged(card)),
        _section("Time", _list(card.standing("hours"), "spent")),
        _section("Notes", _list(card.standing("note"), "text")),
        _section("Corrected", _corrected(card)),
        _section("Lines that could not be read", _unread(card)),
        _section("Cautions in full", "".join(map(caution_in_full, hazards))),
    ]
    return page(title, parts, short(title), JOB_STYLE)


def write_job_sheet(card: Card, path, overwrite: bool = False) -> Saved:
    """Write the page to an HTML file; an existing file is left alone unless `overwrite`.

    Raises RepairlibError when it exists or cannot be written; then nothing has changed.
    """
    return Saved(write_whole(path, job_sheet(card).encode("utf-8", "replace"), overwrite))


def _head(card: Card) -> str:
    said = {
        "Set": card.said("job", "set"),
        "Date": card.said("job", "date"),
        "Written by": ", ".join(card.writers),
        "Hours": f"{card.hours:.4g}" if card.hours else "",
    }
    told = (
        f"{name} {f'<b>{text(it)}</b>' if it else '<span></span>'}" for name, it in said.items()
    )
    return f'<p class="fields">{" ".join(told)}</p>'


def _outcome(card: Card) -> str:
    entry = card.last("outcome")
    if entry is None:
        return f'<p class="caution"><strong>{text(OPEN)}</strong></p>'
    told = f"<strong>{text(OUTCOME[entry['outcome']])}.</strong> {text(entry['told'])}"
    signed = VERIFIED if entry["outcome"] == "verify" else ""
    return f'<p class="caution typed">{told}</p>{signed}'


def _section(title: str, inside: str) -> str:
    return f"<h2>{text(title)}</h2>{inside}" if inside else ""


def _list(entries: Iterable[Entry], name: str) -> str:
    """What entries say in one field, each with who wrote it; "" where there is none."""
    lines = [f"{one[name]} ({one.by})" for one in entries]
    return listed(lines) if lines else ""


def _readings(card: Card) -> str:
    """What was measured, before and after side by side, as typed and as it is read."""
    by_what: dict[str, dict[str, str]] = {}
    for one in card.standing("reading"):
        cells = by_what.setdefault(one["what"], dict.fromkeys(STAGES, ""))
        cells[one["stage"]] += f"{text(one['reading'])}<small>read as {text(one.measured)}</small>"
    headings = [("", "Measured"), *(("", stage.capitalize()) for stage in STAGES)]
    rows = [[text(what), *cells.values()] for what, cells in by_what.items()]
    return table(headings, rows) if rows else ""


def _parts(card: Card) -> str:
    names = ("reference", "old", "new", "plus")
    headings = [("ref", "Place"), ("", "Taken out"), ("", "Fitted"), ("side", "Plus")]
    headings += [("writer", "By")]
    rows: list[list[str]] = [
        [*(text(one[it]) for it in names), text(one.by)] for one in card.standing("part")
    ]
    return table(headings, rows) if rows else ""


def _acknowledged(card: Card) -> str:
    told = [f"{HAZARDS[one['hazard']].title} ({one.by})" for one in card.standing("caution")]
    return listed(dict.fromkeys(told)) if told else ""


def _corrected(card: Card) -> str:
    """The entries in whose place another stands, and which one."""
    by_number = {one.number: one for one in card.entries}
    headings = [("number", "Entry"), ("", "It said"), ("number", "Now entry"), ("", "Which says")]
    rows = [
        [*_numbered(by_number[old]), *_numbered(by_number[new])]
        for old, new in card.corrected_by.items()
    ]
    return table(headings, rows) if rows else ""


def _numbered(entry: Entry) -> list[str]:
    """Two cells: the number of an entry with who wrote it, and what it says."""
    return [f"{entry.number}<small>{text(entry.by)}</small>", text(entry)]


def _unread(card: Card) -> str:
    headings = [("line", "Line"), ("", "Text"), ("", "Why")]
    rows = [
        [str(one.line), f'<span class="source">{text(one.text)}</span>', text(one.why)]
        for one in card.unread
    ]
    return table(headings, rows) if rows else ""
