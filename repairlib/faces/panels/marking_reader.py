"""Quick check: type a marking, see the part that carries it, what it may mean, and who says so.

The panel is a thin view. What a marking means is decided in `repairlib.markings`, what the part
looks like in `repairlib.show`.
"""

from __future__ import annotations

import ipywidgets as widgets

from repairlib.core.errors import RepairlibError
from repairlib.core.html import Html, fold, listed, paragraphs, picture, text, told
from repairlib.core.safety import caution
from repairlib.core.sources import source
from repairlib.faces.panels.answer_inputs import PLAIN
from repairlib.faces.panels.keeping import Keeping
from repairlib.faces.panels.look import Panel, words
from repairlib.learn.words import explain_in
from repairlib.markings import KIND_NAMES, bands_of, colour_of, read, what_else, words_of
from repairlib.recap import in_place_of
from repairlib.show import body_for, body_of_kind, draw_part

ANY_PART = ""
PARTS = [("any part", ANY_PART), *((name, kind) for kind, name in KIND_NAMES.items())]
DRAWN_CHARACTERS = 80
EXAMPLES = "104K, or brown black red gold"
EMPTY, EMPTY_HINT = "Type what is printed on the part", "The answer changes with every key."
WHAT_ELSE = "What else could it be, if heat or the lamp changed one colour?"
WRITTEN = "Where this is written"
STYLE = """<style>
.rl-quick .widget-hbox {align-items: flex-start; column-gap: 16px; flex-wrap: wrap;}
.rl-quick .widget-hbox > .widget-html:last-child {flex: 1 1 18rem; padding-top: .4em;}
.rl-quick .rl-answer {font-size: 1.5em; font-weight: 600; line-height: 1.3;}
.rl-quick .widget-html-content p {margin: 0 0 .15em 0;}
</style>"""


class QuickCheck(Panel):
    """The panel's parts: the fields `marking` and `part`, what is shown in `picture` and `answer`.

    It answers at every key stroke, also to text that makes no sense.

    >>> check = QuickCheck("104K")
    >>> "100 nF" in check.answer.value.replace("\\xa0", " ")
    True
    """

    def __init__(self, marking: str = "", part: str = ANY_PART, kept: str = ""):
        self.marking = widgets.Text(
            value=marking,
            description="Marking",
            placeholder=EXAMPLES,
            style=PLAIN,
            layout=widgets.Layout(width="340px"),
        )
        self.part = widgets.Dropdown(
            options=PARTS, value=part, description="Read it as", style=PLAIN
        )
        self.picture = words()
        self.answer = words()
        self.keeping = Keeping(kept, {"marking": self.marking, "part": self.part})
        for field in (self.marking, self.part):
            field.observe(self._update, "value")
        asked = widgets.HBox([self.marking, self.part])
        super().__init__(
            words(STYLE), asked, self.keeping.strip, widgets.HBox([self.picture, self.answer])
        )
        self.add_class("rl-quick")
        self._update()

    def _update(self, change=None) -> None:
        body, self.answer.value = look_up(self.marking.value, self.part.value)
        self.picture.value = picture(draw_marked(body, self.marking.value))


def quick_check(marking: str = "", part: str = ANY_PART, kept: str = "quick check") -> QuickCheck:
    """The quick-check panel, ready to be shown.

    marking: what stands in the field at first. part: a word that `repairlib.read` takes, or "".
    kept: the name under which what is typed is kept.
    """
    return QuickCheck(marking, part, kept)


def look_up(marking: str, part: str) -> tuple[str, str]:
    """The body to draw for a marking, and its readings (or what is wrong with it) as HTML."""
    if not marking.strip():
        return body_of_kind(part), told("unanswered", EMPTY, [EMPTY_HINT])
    try:
        readings = read(marking, part or None)
    except RepairlibError as error:
        coloured = any(colour_of(word) for word in words_of(marking))
        looks = part or ("resistor" if coloured else "")
        return body_of_kind(looks), told("cannot read", "Cannot be read yet", [str(error)])
    return body_for(readings[0]), readings_html(readings)


def draw_marked(body: str, marking: str):
    """The part with the marking on it, a new line at every space, as makers print it."""
    printed = "\n".join(marking[:DRAWN_CHARACTERS].split())
    return draw_part(body, printed, labels=False, named=True)


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
