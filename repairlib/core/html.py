"""The few pieces of HTML that findings, panels and sheets are made of; the standard library only.

Whatever is not marked as HTML is escaped. `Html` marks it, and every piece made here carries it.
"""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Iterable, Sequence

from repairlib.core.errors import escaped
from repairlib.core.sources import source
from repairlib.core.verdicts import BAD, CANNOT_TELL, GOOD, LOOK, MEANS, meaning

LEFT = 'style="text-align:left"'
SIGNS = {
    "right": "✓",
    "partly right": "◐",
    "wrong": "✗",
    "unsafe": "⚠",
    "unanswered": "○",
    "cannot read": "?",
    "changed": "↻",
    "told later": "●",
}
_STATES = {GOOD: "right", BAD: "wrong", LOOK: "partly right"}


def state_of(verdict: str | None) -> str:
    """The state of `told` in which a verdict of any room is shown: its sign and its colour.

    >>> state_of("over a limit"), state_of("cannot tell")
    ('wrong', 'cannot read')
    """
    return _STATES.get(meaning(verdict), "cannot read")


def sign_of(verdict: str | None) -> str:
    """The sign of a verdict: ✓, ✗, ◐ or ?."""
    return SIGNS[state_of(verdict)]


# The library's own `html` brings 2,000 names of characters with it: a quarter of the page's start.
_ESCAPED = {"&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#x27;"}
_IN_ATTRIBUTES = str.maketrans(_ESCAPED)
_IN_TEXT = str.maketrans({sign: _ESCAPED[sign] for sign in "&<>"})


def escape(words: str, quote: bool = True) -> str:
    """Words as HTML; without `quote` for text that is in no attribute.

    >>> escape('"<b>" & co'), escape('"<b>"', quote=False)
    ('&quot;&lt;b&gt;&quot; &amp; co', '"&lt;b&gt;"')
    """
    return words.translate(_IN_ATTRIBUTES if quote else _IN_TEXT)


class Html(str):
    """Text that is HTML already."""

    __slots__ = ()


def text(anything: object) -> Html:
    """Anything as HTML: escaped, and so is what cannot be seen, unless it is HTML already.

    >>> text("<b>"), text(Html("<b>"))
    ('&lt;b&gt;', '<b>')
    """
    if isinstance(anything, Html):
        return anything
    return Html(escape(escaped(str(anything), kept="\n\t")))


def row(
    cells: Iterable[object], looks: str | Sequence[str] = "", tag: str = "td", first: str = ""
) -> Html:
    """One row of a table. `looks`: the attributes of each cell, or one text for all of them.

    `tag` is "th" for a row of headings; `first` is the tag of the first cell where it is another.

    >>> row(("esr", "<1 Ω"), first="th")
    '<tr><th>esr</th><td>&lt;1 Ω</td></tr>'
    """
    cells, made = tuple(cells), ""
    each = [looks] * len(cells) if isinstance(looks, str) else looks
    for cell, look in zip(cells, each, strict=True):
        kind = tag if made or not first else first
        made += f"<{kind}{' ' + look if look else ''}>{text(cell)}</{kind}>"
    return Html(f"<tr>{made}</tr>")


def table(rows: Iterable[str], head: str = "", caption: object = "") -> Html:
    """A table of rows, each made by `row`; a head is repeated on every printed page.

    >>> table([row(["100 nF"])])
    '<table><tr><td>100 nF</td></tr></table>'
    """
    named = f"<caption>{text(caption)}</caption>" if caption else ""
    body = "".join(rows)
    if head:
        body = f"<thead>{head}</thead>\n<tbody>{body}</tbody>"
    return Html(f"<table>{named}{body}</table>")


def named(pairs: Iterable[tuple[object, object]], caption: object = "") -> Html:
    """A table of two columns: names, and what they stand for."""
    return table((row(pair, LEFT, first="th") for pair in pairs), caption=caption)


def listed(lines: Iterable[object], tag: str = "ul") -> Html:
    """A list, with points or, for "ol", numbers."""
    return Html(f"<{tag}>{''.join(f'<li>{text(line)}</li>' for line in lines)}</{tag}>")


def paragraphs(texts: Iterable[object]) -> Html:
    """Each text as a paragraph of its own."""
    return Html("".join(f"<p>{text(one)}</p>" for one in texts))


def fold(title: object, inside: str, opened: bool = False) -> Html:
    """HTML behind a title that opens and closes it."""
    state = " open" if opened else ""
    return Html(f"<details{state}><summary>{text(title)}</summary>{inside}</details>")


def soft(inside: str) -> Html:
    """HTML in small voice."""
    return Html(f'<div class="rl-soft">{inside}</div>')


def sources(keys: Iterable[str]) -> Html:
    """Where it is written: the sources of these keys, one on each line."""
    return soft("<br>".join(f"Source: {text(source(key))}" for key in keys))


def prose(words: str) -> Html:
    """Plain text as HTML: an empty line starts a paragraph, `backticks` mark what is on a part.

    >>> prose("Marked `104K`.")
    '<p>Marked <code>104K</code>.</p>'
    """
    made = []
    for paragraph in words.strip().split("\n\n"):
        pieces = escape(paragraph.strip(), quote=False).split("`")
        marked = [f"<code>{piece}</code>" if i % 2 else piece for i, piece in enumerate(pieces)]
        made.append(Html("".join(marked)))
    return paragraphs(made)


def told(state: str, headline: str, says: Sequence[str] = (), more: str = "") -> Html:
    """A state with its sign, a headline and sentences under it. `more` is HTML for the end."""
    kind = "rl-" + state.replace(" ", "-")
    role = "alert" if state == "unsafe" else "status"
    lines = "".join(f"<div>{escape(sentence, quote=False)}</div>" for sentence in says)
    head = f"<strong>{SIGNS[state]} {escape(headline, quote=False)}</strong>"
    return Html(f'<div class="rl-told {kind}" role="{role}">{head}{lines}{more}</div>')


def answer(verdict: str | None, reason: str | None) -> Html:
    """A verdict with its sign and its reason, large, in one line.

    What is no judgement, such as a setting, has no sign: a "?" would read as doubt.

    >>> "✓ fit:</strong> 95 µF is within 20 %" in answer("fit", "95 µF is within 20 %")
    True
    >>> "<strong>start at 330 °C</strong>" in answer("start at 330 °C", None)
    True
    """
    sign = f"{sign_of(verdict)} " if verdict in (*MEANS, CANNOT_TELL) else ""
    head = f"<strong>{sign}{text(verdict)}{':' if reason else ''}</strong>"
    said = " ".join(filter(None, (head if verdict else "", text(reason) if reason else "")))
    return Html(f'<div role="status" style="font-size:1.2em;margin:.2em 0 .4em">{said}</div>')


def image(svg: str, alt: str) -> Html:
    """An SVG drawing as an image; inline SVG is dropped by notebooks that are not trusted yet."""
    data = b64encode(svg.encode("utf-8")).decode("ascii")
    return Html(
        f'<img alt="{escape(alt)}" style="max-width:100%" src="data:image/svg+xml;base64,{data}">'
    )


def picture(drawing) -> Html:
    """A drawing on its own light ground, so that it can be read in a dark theme too."""
    return Html(f'<div class="rl-picture">{drawing._repr_html_()}</div>')
