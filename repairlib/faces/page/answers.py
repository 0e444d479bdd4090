"""What the page asks and what it gets: texts of JSON in and out, inside the browser.

The page holds no rule of the trade. It sends what was typed or chosen, and shows what comes back.
"""

from __future__ import annotations

import json
from collections.abc import Callable

from repairlib.core.calculator import Calculator
from repairlib.core.errors import RepairlibError
from repairlib.core.html import picture, told
from repairlib.core.pairs import capacitor_pairs, nearest_value, resistor_pairs
from repairlib.faces.documents import json_text, refusal
from repairlib.faces.page.square import square as draw_square
from repairlib.faces.shown.marking import draw_marked, look_up
from repairlib.faces.shown.polarity import checked
from repairlib.markings import read

PAIRS: dict[str, Calculator] = {"F": capacitor_pairs, "Ω": resistor_pairs}


def answer(asked: str) -> str:
    """The answer to one question of the page, as JSON.

    asked: JSON with the name of a `tool` and what it wants, as in TOOLS below.

    >>> found = json.loads(answer('{"tool": "marking", "marking": "104K", "part": ""}'))
    >>> sorted(found), found["spoken"].replace("\\xa0", " ")
    (['html', 'picture', 'read', 'spoken'], '100 nF ±10 %')
    """
    question = json.loads(asked)
    return json.dumps(TOOLS[question.pop("tool")](**question), ensure_ascii=False)


def marking(marking: str, part: str) -> dict[str, object]:
    """A marking: the part drawn, all readings as HTML, the first one as a line to speak."""
    body, html = look_up(marking, part)
    spoken, is_read = _first(marking, part)
    drawn = picture(draw_marked(body, marking))
    return {"html": html, "picture": drawn, "spoken": spoken, "read": is_read}


def _first(marking: str, part: str) -> tuple[str, bool]:
    if not marking.strip():
        return "", False
    try:
        return read(marking, part or None)[0].headline, True
    except RepairlibError as error:
        return str(error), False


def document(marking: str, part: str) -> dict[str, object]:
    """The readings as the command line prints them with --json.

    >>> "error" in str(document("104K", "date")["document"])
    True
    """
    try:
        return {"document": json_text([one.to_dict() for one in read(marking, part or None)])}
    except RepairlibError as error:
        return {"document": refusal(error)}


def polarity(**seen: str) -> dict[str, object]:
    """A part and its marks: the verdict, the part at its place, and the cautions."""
    html, drawn, cautions = checked(**seen)
    return {"html": html + cautions, "picture": drawn}


def values(value: str, series: str) -> dict[str, object]:
    """A value that is not made: the nearest that is, and two parts that make it together."""
    if not value.strip():
        return {"html": told("unanswered", "Type a value with its unit", ["50 kΩ, 5 µF, 12 µH"])}
    try:
        nearest = nearest_value(value, series)
        pairs = PAIRS.get(nearest.nearest.unit)
        both = [nearest] if pairs is None else [nearest, pairs(value, series)]
    except RepairlibError as error:
        return {"html": told("cannot read", "Cannot be read yet", [str(error)])}
    return {"html": "".join(one._repr_html_() for one in both)}


def square(text: str) -> dict[str, object]:
    """The square code of an address. The page loads `segno` before it asks for the first one.

    >>> "It holds: https://bench.example/" in str(square("https://bench.example/")["html"])
    True
    """
    try:
        return {"html": picture(draw_square(text))}
    except RepairlibError as error:
        return {"html": told("cannot read", "No code can be drawn", [str(error)])}


TOOLS: dict[str, Callable[..., dict[str, object]]] = {
    "document": document,
    "marking": marking,
    "polarity": polarity,
    "square": square,
    "values": values,
}
