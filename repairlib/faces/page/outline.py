"""The page as it is before anything runs: its whole HTML, so that it paints at once.

No script and no style stands in it; both come from files beside the page, as its policy wants.
"""

from __future__ import annotations

import json
from pathlib import Path

from repairlib.core.html import Html, paragraphs, prose, text
from repairlib.faces.page.outline_parts import choice, hint, read_it_as, section
from repairlib.faces.page.outline_tools import TOOLS, colours, last_readings, polarity, values
from repairlib.faces.shown.polarity import seen_on
from repairlib.polarity import families

POLICY = (
    "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; "
    "style-src-attr 'unsafe-inline'; img-src 'self' data:; connect-src 'self'; "
    "worker-src 'self' blob:; manifest-src 'self'; base-uri 'none'; form-action 'none'"
)


def outline(words: dict, version: str, others: list[tuple[str, str]]) -> str:
    """The text of index.html in one language.

    words: one file of `languages`. version: the folder of page.js, page.css and icon.svg.
    others: the address and the name of the page in each other language.

    >>> made = outline(language("en"), "1", [])
    >>> made[:15], "<script>" in made, "<style" in made
    ('<!doctype html>', False, False)
    """
    return (
        f'<!doctype html>\n<html lang="{text(words["lang"])}" data-hand="right">\n'
        f"<head>\n{_head(words, version)}</head>\n<body>\n{_body(words, others)}"
        f"{_data('words', words['later'])}{_data('choices', _choices(words))}</body>\n</html>\n"
    )


def language(name: str) -> dict:
    """The words of one language, by the name of its file.

    >>> language("en")["name"]
    'English'
    """
    file = Path(__file__).with_name("languages") / f"{name}.json"
    return json.loads(file.read_text(encoding="utf-8"))


def _head(words: dict, version: str) -> str:
    return f"""<meta http-equiv="Content-Security-Policy" content="{POLICY}">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta name="referrer" content="no-referrer">
<meta name="description" content="{text(words["about"])}">
<title>{text(words["title"])}</title>
<link rel="icon" type="image/svg+xml" href="{text(version)}/icon.svg">
<link rel="stylesheet" href="{text(version)}/page.css">
<script type="module" src="{text(version)}/page.js"></script>
"""


def _body(words: dict, others: list[tuple[str, str]]) -> str:
    return f"""<header><h1>{text(words["title"])}</h1></header>
<nav id="tools" aria-label="{text(words["tools"])}">{_tools(words)}</nav>
<main>
<p id="newer" hidden>{text(words["newer"])} <button type="button" id="use-newer">\
{text(words["newer use"])}</button></p>
<noscript>{prose(words["no script"])}</noscript>
<div id="asked">
{_field(words)}
{read_it_as(words)}
{colours(words)}
</div>
<div id="start"><progress id="progress" max="1" aria-labelledby="state"></progress>
<p id="state">{text(words["starting"])}</p></div>
<div id="trouble" hidden></div>
{_reading(words)}
{polarity(words)}
{values(words)}
{last_readings(words)}
<p id="speaks" class="unseen" aria-live="polite"></p>
</main>
<footer>
{choice("hand", words["hand"], [("left", words["left hand"]), ("right", words["right hand"])])}
{paragraphs([words["reach"]])}{_languages(words, others)}
</footer>
"""


def _tools(words: dict) -> str:
    return "".join(
        f'<button type="button" data-tool="{tool}"{" aria-current=true" * (tool == "marking")}>'
        f"{text(words[f'tool {tool}'])}</button>"
        for tool in TOOLS
    )


def _field(words: dict) -> str:
    return f"""<div id="field"><label for="marking">{text(words["marking"])}</label>
<div class="beside"><textarea id="marking" rows="1" autofocus autocomplete="off" \
autocapitalize="off" autocorrect="off" spellcheck="false" aria-describedby="marking-hint">\
</textarea><button type="button" id="clear">{text(words["clear"])}</button></div>
{hint("marking", words["marking hint"])}</div>"""


def _reading(words: dict) -> Html:
    buttons = "".join(
        f'<button type="button" id="{name}">{text(words[name])}</button>'
        for name in ("copy", "print", "square")
    )
    inside = f"""<p id="printed"></p>
<div class="shown"><div id="picture" class="drawn" lang="en"></div>\
<div id="answer" class="answer" lang="en"></div></div>
<div id="more" hidden><div class="buttons">{buttons}</div>
<p id="address" hidden></p><div id="code"></div>
<details id="document"><summary>{text(words["document"])}</summary>
<pre tabindex="0" aria-label="{text(words["document"])}"></pre></details></div>"""
    return section("reading", words["the reading"], inside, unseen=True)


def _languages(words: dict, others: list[tuple[str, str]]) -> str:
    if not others:
        return ""
    links = "".join(f'<li><a href="{text(there)}">{text(name)}</a></li>' for there, name in others)
    return f'<nav aria-label="{text(words["languages"])}"><ul>{links}</ul></nav>'


def _choices(words: dict) -> dict[str, object]:
    """What page.js needs to know of the choices: the marks of each family, names in this language.

    A choice is asked for by its English name, whatever it is called on the page.
    """
    marks = {family: seen_on(family) for family in families()}
    return {"marks": marks, "names": words["names"]}


def _data(name: str, held: object) -> str:
    """A block of data; `<` is written so that no text in it can end the block."""
    inside = json.dumps(held, ensure_ascii=False, separators=(",", ":")).replace("<", "\\u003c")
    return f'<script type="application/json" id="{name}">{inside}</script>\n'
