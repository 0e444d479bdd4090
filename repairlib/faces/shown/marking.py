"""What is said of a marking: its readings, what may replace the part, what may hurt.

The notebook's quick check and the page show this. What a marking means is decided in
`repairlib.markings`, what fits in its place in `repairlib.recap`, which body carries it in
`repairlib.show`; it is drawn in `drawing.py`.
"""

from __future__ import annotations

from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.core.html import Html, fold, listed, paragraphs, text, told
from repairlib.core.safety import caution
from repairlib.core.sources import source
from repairlib.learn.words import explain_in
from repairlib.markings import Reading, bands_of, colour_of, read, what_else, words_of
from repairlib.recap import in_place_of
from repairlib.show import body_for, body_of_kind

EMPTY, EMPTY_HINT = "Type what is printed on the part", "The answer changes with every key."
WHAT_ELSE = "What else could it be, if heat or the lamp changed one colour?"
WRITTEN = "Where this is written"


class Found(NamedTuple):
    """What a marking gave: the body to draw, the answer as HTML, and the likeliest reading.

    Instead of a reading, `first` is what is wrong with the marking, or None where there is none.
    """

    body: str
    html: str
    first: Reading | RepairlibError | None


def look_up(marking: str, part: str) -> Found:
    """What is shown for a marking; `part` is a word that `repairlib.read` takes, or ""."""
    if not marking.strip():
        return Found(body_of_kind(part), told("unanswered", EMPTY, [EMPTY_HINT]), None)
    try:
        readings = read(marking, part or None)
    except RepairlibError as error:
        coloured = any(colour_of(word) for word in words_of(marking))
        looks = part or ("resistor" if coloured else "")
        html = told("cannot read", "Cannot be read yet", [str(error)])
        return Found(body_of_kind(looks), html, error)
    return Found(body_for(readings[0]), readings_html(readings), readings[0])


def readings_html(readings) -> str:
    """The likeliest reading large, with what may replace the part; then what else it can mean."""
    first, *others = readings
    also = ""
    if others:
        head = "It can also mean:" if len(others) > 1 else "It can also mean, less likely:"
        also = paragraphs([head]) + listed([reading_html(one) for one in others])
    keys = dict.fromkeys(key for reading in readings for key in reading.sources)
    listed_sources = listed(source(key) for key in keys)
    more = cautions_html(readings) + also + what_else_html(first)
    folded = fold(WRITTEN, listed_sources)
    return f'<div role="status">{first_html(first)}{more}</div>{folded}'


def first_html(reading) -> Html:
    """The likeliest reading: what it is, which way round it goes in, what to fit in its place."""
    place = in_place_of(reading)
    says = [reading.on, reading.why, *((place.polar, place.fit) if place else ())]
    doubt = told("cannot read", "Doubtful", [reading.doubt]) if reading.doubt else ""
    head = f'<div class="rl-answer">{text(reading.headline)}</div>'
    meant = explain_in(" ".join((reading.headline, *says))).folded()
    return Html(f"{head}{paragraphs(says)}{doubt}{meant}")


def cautions_html(readings) -> str:
    """What such a part does to whoever replaces it carelessly, short; none for most parts."""
    keys = dict.fromkeys(key for reading in readings for key in reading.cautions)
    # The charge is in the part itself, the mains only near it: what is nearest comes first.
    nearest_first = sorted(keys, key=lambda key: key != "stored charge")
    return caution(*nearest_first).short() if keys else ""


def what_else_html(reading) -> str:
    """Folded under bands: what they could be if heat or the lamp changed one colour."""
    if reading.kind not in ("resistor", "inductor") or not bands_of(reading.text):
        return ""
    items = [f"{change}: {one.headline}" for change, one in what_else(reading.text, reading.kind)]
    return fold(WHAT_ELSE, listed(items)) if items else ""


def reading_html(reading) -> Html:
    """A less likely reading: what, on which part, why, and the doubt if there is one."""
    doubt = f" Doubtful: {text(reading.doubt)}" if reading.doubt else ""
    head = f'<span class="rl-head">{text(reading.headline)}</span>'
    return Html(f"{head}, {text(reading.on)}: {text(reading.why)}{doubt}")
