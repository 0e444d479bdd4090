"""What is said of small chips on a board: which holds the firmware, and what its supply is.

The ranking and the supply are decided in `repairlib.firmware`; the chip is drawn in
`repairlib.show`.
"""

from __future__ import annotations

from collections.abc import Sequence

from repairlib.core import html
from repairlib.core.errors import RepairlibError
from repairlib.core.html import Html
from repairlib.core.quantity import read_quantity
from repairlib.core.safety import caution
from repairlib.firmware import (
    DOES,
    HAZARDS_OF_MEASURING,
    PINS,
    Ranked,
    before_connecting,
    pins_of,
    rank_chips,
    read_seen,
    which_first,
)
from repairlib.markings import memory_chip
from repairlib.show import draw_on_pads

NARROWEST_WIDE = 4.6  # mm: between the bodies of 150 and 208 mil
STATES = {"very likely": "right", "likely": "right", "possible": "partly right"}


def ranking_html(seen: str, programmer: str) -> tuple[str, str]:
    """Which of the chips, one a line, holds the firmware; and what its supply is, with its leads.

    Raises RepairlibError for what cannot be read.
    """
    ranked = rank_chips(read_seen(seen))
    best = ranked[0]
    begin, _, how = which_first(ranked).partition(". ")
    head = html.told(STATES.get(best.likely, "cannot read"), begin, [how])
    each = "".join(ranked_html(one, number, how) for number, one in enumerate(ranked, 1))
    unknown = [f"{one.chip.place}: {', '.join(one.chip.unknown)}" for one in ranked
               if one.chip.unknown]  # fmt: skip
    left = html.told("cannot read", "Not understood, and left out", unknown) if unknown else ""
    measuring = caution(*HAZARDS_OF_MEASURING).short()
    return head + each + left, supply_html(best, programmer) + leads_html(best) + measuring


def ranked_html(one: Ranked, number: int, told: str) -> Html:
    """One chip: how likely, what else it may be, and both sides; folded from the third on.

    `told` is what was said before, so that it is not said twice.
    """
    lines = [("For", one.speaks_for), ("Against", one.speaks_against)]
    said = [f"{side}: {'; '.join(words) or 'nothing'}." for side, words in lines]
    if one.settles not in told:
        said.append(f"Settled by: {one.settles}")
    head = f"{number}. {one.chip.place}: {one.likely}; as a chip: {one.may_be}"
    if number > 2:
        return html.fold(head, html.listed(said))
    return Html(f"<h4>{html.text(head)}</h4>{html.listed(said)}")


def supply_html(best: Ranked, programmer: str) -> Html:
    """What the first chip takes, before anything is connected to it."""
    volts = read_quantity(programmer, "V").value if programmer.strip() else None
    chip = best.chip
    mark = next((word for word in chip.marks if memory_chip(word)), "")
    given = {"mark": mark, "identity": chip.identity, "measured": chip.supply, "programmer": volts}
    try:
        finding = before_connecting(**{name: one for name, one in given.items() if one})
    except RepairlibError as problem:
        says = [problem.wrong.capitalize() + ".", f"Give {problem.accepted}."]
        return html.told("cannot read", f"{chip.place}: its supply is not known", says)
    head = html.paragraphs([f"Before anything is connected to {chip.place}:"])
    more = html.fold("Why, and how to measure it", html.listed((*finding.working, *finding.notes)))
    return Html(head + html.answer(finding.verdict, finding.reason) + more)


def leads_html(best: Ranked) -> Html:
    """The first chip from above with its leads named, where its mark tells its series."""
    series = series_of(best.chip.marks)
    if not series or best.chip.pins not in (None, 8):
        return Html("")
    width = best.chip.width
    body = "208 mil" if width is not None and width >= NARROWEST_WIDE else "150 mil"
    note = "" if width is not None else " Its width was not given: it is drawn 150 mil wide."
    head = f"Leads of a {series} from above; look for the dot or notch at pin 1.{note}"
    drawn = draw_on_pads(body, body, series, "\n".join(best.chip.marks))
    does = (f"{number} {name}: {DOES[name]}" for number, name in enumerate(pins_of(series), 1))
    each = html.fold("What each lead does", html.listed(does))
    return Html(html.paragraphs([head]) + html.picture(drawn) + each)


def series_of(marks: Sequence[str]) -> str:
    """The series whose leads are known, by the first mark that names a memory; else "".

    >>> series_of(["2209", "25Q64"]), series_of(["4953"])
    ('25-series', '')
    """
    named = [chip for mark in marks for word in mark.split() if (chip := memory_chip(word))]
    series = f"{named[0].series}-series" if named else ""
    return series if series in PINS else ""
