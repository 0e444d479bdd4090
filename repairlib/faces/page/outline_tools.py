"""The tools beside the marking: colours by tapping, polarity, values, the last readings."""

from __future__ import annotations

from collections.abc import Iterable

from repairlib.core.html import Html, fold, text
from repairlib.core.series import E_SERIES
from repairlib.faces.page.outline_parts import choice, hint, named, section, select
from repairlib.faces.shown.polarity import seen_on
from repairlib.markings import KIND_NAMES
from repairlib.polarity import ENDS, FITTED, NOT_DECIDED, NOTHING_ELSE, board_marks, families
from repairlib.show.bands import INKS

TOOLS = ("marking", "colours", "polarity", "values", "last")
FIRST_FAMILY = "aluminium radial"
FIRST_SERIES = "E24"
BANDED = ("resistor", "inductor")


def colours(words: dict) -> Html:
    """A button for each colour of a band, with its name; they write into the field above."""
    pads = "".join(
        f'<button type="button" data-colour="{colour}"><span class="swatch" '
        f'style="background:{ink}"></span>{named(words, colour)}</button>'
        for colour, ink in INKS.items()
    )
    kinds = [(kind, named(words, KIND_NAMES[kind])) for kind in BANDED]
    return section(
        "colours",
        words["colours head"],
        f"""{choice("banded", words["bands on"], kinds)}
<ol id="bands" aria-label="{text(words["bands so far"])}"></ol>
<div id="pad">{pads}<button type="button" id="undo">{text(words["undo"])}</button>
<button type="button" id="clear-bands">{text(words["clear"])}</button></div>""",
        hidden=True,
    )


def polarity(words: dict) -> Html:
    """What is seen on the part and on the board, and how it goes in."""
    seen, board = seen_on(FIRST_FAMILY), tuple(board_marks())

    def ask(name: str, label: str, names: Iterable[str], chosen: str = "") -> Html:
        return select(name, words[label], [(one, named(words, one)) for one in names], chosen)

    second = (
        ask("also_on_part", "also on part", (NOTHING_ELSE, *seen))
        + ask("also_on_part_at", "also on part at", ENDS, ENDS[-1])
        + ask("also_on_board", "also on board", (NOTHING_ELSE, *board))
        + ask("also_on_board_at", "also on board at", ENDS, ENDS[-1])
    )
    asked = (
        ask("family", "part is", families(), FIRST_FAMILY)
        + ask("part_mark", "on the part", seen)
        + ask("board_mark", "on the board", board)
        + ask("fitted", "fitted", FITTED, NOT_DECIDED)
        + fold(words["second mark"], second)
    )
    shown = (
        '<div class="shown"><div class="answer" lang="en"></div>'
        '<div class="drawn" lang="en"></div></div>'
    )
    inside = f'<div class="choices">{asked}</div>{shown}'
    return section("polarity", words["polarity head"], inside, hidden=True)


def values(words: dict) -> Html:
    """A value, and the series that it shall come from."""
    series = [(one, one) for one in E_SERIES]
    field = (
        f'<p class="asked"><label for="value">{text(words["value"])}</label>'
        '<input id="value" type="text" autocomplete="off" autocapitalize="off" autocorrect="off" '
        'spellcheck="false" aria-describedby="value-hint"></p>'
    )
    field = f"<div>{field}{hint('value', words['value hint'])}</div>"
    asked = field + select("series", words["series"], series, FIRST_SERIES)
    inside = f'<div class="choices">{asked}</div><div class="answer" lang="en"></div>'
    return section("values", words["values head"], inside, hidden=True)


def last_readings(words: dict) -> Html:
    """The last readings, and a button that wipes them after one question."""
    inside = f"""<p id="where-kept" class="rl-soft"></p>
<ol id="kept" reversed></ol>
<div class="buttons"><button type="button" id="wipe">{text(words["wipe"])}</button></div>
<div id="wipe-asked" role="group" aria-labelledby="wipe-question" hidden>
<p id="wipe-question"></p><div class="buttons">
<button type="button" id="wipe-yes">{text(words["wipe yes"])}</button>
<button type="button" id="wipe-no">{text(words["wipe no"])}</button></div></div>"""
    return section("last", words["last head"], inside, hidden=True)
