"""What the page asks and what it gets: texts of JSON in and out, inside the browser.

The page holds no rule of the trade. It sends what was typed or chosen, and shows what comes back.
"""

from __future__ import annotations

import json
from collections.abc import Callable

from repairlib.core.errors import RepairlibError
from repairlib.core.html import picture, told
from repairlib.core.safety import HAZARDS
from repairlib.faces.documents import json_text, refusal
from repairlib.faces.shown.marking import look_up
from repairlib.markings import Reading, read

# What else a tool needs is imported when it is asked: the first reading does not wait for it.


def answer(asked: str) -> str:
    """The answer to one question of the page, as JSON.

    asked: JSON with the name of a `tool` and what it wants, as in TOOLS below.

    >>> found = json.loads(answer('{"tool": "marking", "marking": "104K", "part": ""}'))
    >>> sorted(found), found["spoken"].replace("\\xa0", " ")
    (['beware', 'body', 'html', 'read', 'spoken'], '100 nF ±10 %')
    """
    question = json.loads(asked)
    return json.dumps(TOOLS[question.pop("tool")](**question), ensure_ascii=False)


def marking(marking: str, part: str) -> dict[str, object]:
    """A marking: all readings as HTML, the body to draw; to speak, the first and its cautions."""
    body, html, first = look_up(marking, part)
    found = {"html": html, "body": body}
    if not isinstance(first, Reading):
        return {**found, "spoken": str(first or ""), "beware": "", "read": False}
    beware = " ".join(f"Caution: {HAZARDS[key].title}." for key in first.cautions)
    return {**found, "spoken": first.headline, "beware": beware, "read": True}


def drawing(marking: str, body: str) -> dict[str, object]:
    """The part drawn, with the marking on it."""
    from repairlib.faces.shown.drawing import marked

    return {"html": marked(body, marking)}


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
    from repairlib.faces.shown.polarity import checked

    html, drawn, cautions = checked(**seen)
    return {"html": html + cautions, "picture": drawn}


def values(value: str, series: str) -> dict[str, object]:
    """A value that is not made: the nearest that is, and two parts that make it together."""
    from repairlib.core.pairs import capacitor_pairs, nearest_value, resistor_pairs

    if not value.strip():
        return {"html": told("unanswered", "Type a value with its unit", ["50 kΩ, 5 µF, 12 µH"])}
    try:
        nearest = nearest_value(value, series)
        pairs = {"F": capacitor_pairs, "Ω": resistor_pairs}.get(nearest.nearest.unit)
        both = [nearest] if pairs is None else [nearest, pairs(value, series)]
    except RepairlibError as error:
        return {"html": told("cannot read", "Cannot be read yet", [str(error)])}
    return {"html": "".join(one._repr_html_() for one in both)}


def square(text: str) -> dict[str, object]:
    """The square code of an address. The page loads `segno` before it asks for the first one.

    >>> "It holds: https://bench.example/" in str(square("https://bench.example/")["html"])
    True
    """
    from repairlib.faces.page.square import square as draw_square

    try:
        return {"html": picture(draw_square(text))}
    except RepairlibError as error:
        return {"html": told("cannot read", "No code can be drawn", [str(error)])}


TOOLS: dict[str, Callable[..., dict[str, object]]] = {
    "document": document,
    "drawing": drawing,
    "marking": marking,
    "polarity": polarity,
    "square": square,
    "values": values,
}
