"""The pieces that the page's HTML is made of: sections, choices, selects, bodies to choose from."""

from __future__ import annotations

from collections.abc import Iterable
from urllib.parse import quote

from repairlib.core.html import Html, text
from repairlib.markings import KIND_NAMES
from repairlib.show import body_of_kind, draw_part

UNESCAPED = " /:=;,()"  # in the address of a picture, so that what repeats packs well


def named(words: dict, name: str) -> Html:
    """A name of the library in the language of the page."""
    return text(words["names"].get(name, name))


def section(name: str, head: str, inside: str, unseen: bool = False, hidden: bool = False) -> Html:
    """A part of the page with its heading."""
    look = ' class="unseen"' if unseen else ""
    state = " hidden" if hidden else ""
    return Html(
        f'<section id="{name}" aria-labelledby="{name}-head"{state}>'
        f'<h2 id="{name}-head"{look}>{text(head)}</h2>\n{inside}</section>'
    )


def hint(name: str, says: str) -> Html:
    """What to type in a field, under it."""
    return Html(f'<p class="rl-soft" id="{name}-hint">{text(says)}</p>')


def select(name: str, label: str, options: Iterable[tuple[str, str]], chosen: str = "") -> Html:
    """A choice of one from many, with its label above it. `options`: value and what is shown."""
    made = "".join(
        f'<option value="{text(value)}"{" selected" * (value == chosen)}>{text(shown)}</option>'
        for value, shown in options
    )
    return Html(
        f'<p class="asked"><label for="{name}">{text(label)}</label>'
        f'<select id="{name}">{made}</select></p>'
    )


def choice(name: str, legend: str, options: Iterable[tuple[str, str]]) -> Html:
    """A choice of one from two or three, all in view."""
    made = "".join(
        f'<label><input type="radio" name="{name}" value="{text(value)}">'
        f"<span>{text(shown)}</span></label>"
        for value, shown in options
    )
    return Html(f'<fieldset class="few"><legend>{text(legend)}</legend>{made}</fieldset>')


def read_it_as(words: dict) -> Html:
    """Which part it is, chosen by its drawing and name; folded away until it is asked for."""
    head, any_part = text(words["read it as"]), text(words["any part"])
    bodies = _body("", any_part, " checked") + "".join(
        _body(kind, named(words, name)) for kind, name in KIND_NAMES.items()
    )
    return Html(
        f'<details id="parts"><summary>{head}: <strong id="part">{any_part}</strong></summary>'
        f'<fieldset><legend class="unseen">{head}</legend>{bodies}</fieldset></details>'
    )


def _body(kind: str, name: Html, state: str = "") -> str:
    return (
        f'<label><input type="radio" name="as" value="{kind}"{state}>'
        f'<img alt="" width="56" height="40" src="{_drawn(kind)}"><span>{name}</span></label>\n'
    )


def _drawn(kind: str) -> str:
    svg = draw_part(body_of_kind(kind), labels=False).svg.replace("\n", "")
    return f"data:image/svg+xml,{text(quote(svg, safe=UNESCAPED))}"
