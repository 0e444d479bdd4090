"""What is said of an empty place: what may have stood there, how that is decided, and without it.

All of it is decided in `repairlib.missing_parts`; the place is drawn in `repairlib.show`.
"""

from __future__ import annotations

from dataclasses import replace

from repairlib.core import html
from repairlib.core.finding import Finding
from repairlib.core.html import Html
from repairlib.core.safety import caution
from repairlib.core.verdicts import CANNOT_TELL
from repairlib.core.wording import sentence
from repairlib.missing_parts import (
    Candidate,
    Place,
    candidates,
    missing_part,
    missing_tantalum,
    on_the_mains,
    read_place,
    said_of_tantalum,
    with_more,
    without_part,
)
from repairlib.show import draw_place

LIKELY = ("most likely", "likely")
LOW, MAINS = "low voltage", "mains side"


def place_html(place: str, one_side: str, other_side: str, near: str, twin: str, beside: str):
    """What may have stood there; how it is decided, and what comes of leaving it out; as HTML.

    Raises RepairlibError for what cannot be read.
    """
    apart = {"one_side": one_side, "other_side": other_side, "near": near, "twin": twin}
    finding = missing_part(place=place, **apart)
    seen = with_more(read_place(place if place.strip() else "part"), **apart)
    ranked = candidates(seen)
    mains = on_the_mains(seen)
    verdict = html.answer(finding.verdict, finding.reason) if finding.verdict else ""
    each = "".join(candidate_html(one, number) for number, one in enumerate(ranked, 1))
    left = ""
    if seen.unread:
        says = [", ".join(seen.unread)]
        left = html.told("cannot read", "Not understood, and left out", says)
    drawn = html.picture(draw_place(seen))
    tantalum = "" if mains else tantalum_html(ranked[0], seen, finding.cautions)
    return verdict + each + left, drawn + tantalum + next_html(ranked[0], finding, mains, beside)


def candidate_html(one: Candidate, number: int) -> Html:
    """One kind of part with its value and what speaks for it and against; folded from the third."""
    head = f"{number}. {one.what}: {one.likely}"
    value = ", ".join(filter(None, (one.values, one.rating)))
    said = [
        f"Value: {value or CANNOT_TELL}.",
        f"For: {'; '.join(one.pro) or 'nothing'}.",
        f"Against: {'; '.join(one.con) or 'nothing'}.",
    ]
    if number > 2:
        return html.fold(head, html.listed(said))
    return Html(f"<h4>{html.text(head)}</h4>{html.listed(said)}")


def tantalum_html(first: Candidate, seen: Place, shown: tuple[str, ...]) -> str:
    """A chip tantalum's rating, cases and value, where it is likely and its rail was said.

    Of its cautions those that are not `shown` elsewhere.
    """
    said = said_of_tantalum(seen)
    if first.what != "chip tantalum" or first.likely not in LIKELY or "rail" not in said:
        return ""
    finding = missing_tantalum(**said)
    finding = replace(finding, cautions=tuple(k for k in finding.cautions if k not in shown))
    return html.soft(html.text(finding.title)) + finding.under_its_title()


def next_html(first: Candidate, finding: Finding, mains: bool, beside: str) -> Html:
    """How it is decided, what must not be guessed, what comes of leaving it out, and cautions."""
    never = html.told("wrong", "Do not guess", first.never) if first.never else ""
    decide = html.paragraphs(["Decide it by measuring, power off and discharged:"])
    decide += html.listed(first.decide, "ol")
    without = without_html(first, mains, beside) if first.likely in LIKELY else ""
    return Html(never + decide + without + caution(*finding.cautions).short())


def without_html(first: Candidate, mains: bool, beside: str) -> Html:
    """What comes of leaving that part out, and whether waiting is better."""
    finding = without_part(first.what, beside, MAINS if mains else LOW)
    said = [
        sentence(f"without it: {finding.without_it}".rstrip(".")),
        sentence(f"may be destroyed: {finding.may_be_destroyed}".rstrip(".")),
        sentence(f"a short run on the bench: {finding.on_the_bench}".rstrip(".")),
    ]
    head = html.paragraphs([f"Hand the set back without the {first.what}?"])
    return Html(head + html.answer(finding.verdict, finding.reason) + html.listed(said))
