"""The two panels at the top of the room view: unsafe answers, and what most have wrong."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from repairlib.core.html import Html, text
from repairlib.core.wording import counted
from repairlib.teach.items import HARD, Item, hardest
from repairlib.teach.room_lists import BACK
from repairlib.teach.stuck import moment
from repairlib.teach.unsafe import NOT_YET, PUT_RIGHT, STILL, Unsafe

SHOWN = 3  # unsafe answers in full; what else is not put right follows by person, in short
HARDEST = 4  # questions that are named
SIGN = {PUT_RIGHT: "✓", STILL: "⚠", NOT_YET: "✗"}


def unsafe_panel(unsafe: Sequence[Unsafe], lessons: Mapping, at: int) -> Html:
    """Every unsafe answer that is not put right, and the latest of those that are."""
    still = sum(one.is_open for one in unsafe)
    said = f"{still} not put right, {len(unsafe) - still} put right" if unsafe else "none so far"
    lines = "".join(f"<li>{_line(one, lessons, at)}</li>" for one in unsafe[:SHOWN])
    more = _more(len(unsafe) - max(SHOWN, still), "unsafe", ", all put right")
    return Html(
        f'<section class="panel"><h2>⚠ Unsafe answers: {said}</h2><ul>{lines}</ul>'
        f"{_in_short(unsafe[SHOWN:still], lessons)}{more}</section>"
    )


def _in_short(unsafe: Sequence[Unsafe], lessons: Mapping) -> str:
    """Whose answers are not put right either, each with the places."""
    by_name: dict[str, list[str]] = {}
    for one in unsafe:
        by_name.setdefault(one.name, []).append(f"{lessons[one.lesson].number} {one.id}")
    people = "; ".join(f"<b>{text(name)}</b> {', '.join(at)}" for name, at in by_name.items())
    return f'<p>⚠ <a href="#unsafe">Not put right either</a>: {people}</p>' if people else ""


def unsafe_section(unsafe: Sequence[Unsafe], lessons: Mapping, at: int) -> Html:
    """All of them by person, with every answer in full."""
    by_name: dict[str, list[Unsafe]] = {}
    for one in unsafe:
        by_name.setdefault(f"{one.name} ({one.word})", []).append(one)
    people = "".join(
        f"<h3>{text(name)}</h3><ul>"
        + "".join(f"<li>{_line(one, lessons, at, whole=True)}</li>" for one in theirs)
        + "</ul>"
        for name, theirs in sorted(by_name.items())
    )
    return Html(
        '<section class="more" id="unsafe"><h2>⚠ All unsafe answers, by person '
        f"{BACK}</h2>{people or '<p>None so far.</p>'}</section>"
    )


def hard_panel(items: Sequence[Item], lessons: Mapping) -> Html:
    """The questions to explain to the whole room, the worst first."""
    hard = hardest(items)
    lines = "".join(f"<li>{_hard(one, lessons[one.lesson])}</li>" for one in hard[:HARDEST])
    more = _more(len(hard) - HARDEST, "", ": look for ▼ below")
    none = "" if hard else "<p>None so far.</p>"
    return Html(
        f'<section class="panel"><h2>▼ Explain to all: more than {HARD:.0%} wrong at first try</h2>'
        f"<ol>{lines}</ol>{none}{more}</section>"
    )


def _hard(one: Item, lesson) -> str:
    wrong = one.tried - one.first_right
    usual = (
        f"<small>Usual mistake ({one.mistaken} of them): {text(one.mistake)}</small>"
        if one.mistaken > 1
        else f"<small>{text(lesson.asks.get(one.id, ''))}</small>"
    )
    return (
        f'<a href="#l-{lesson.lesson}"><b>{one.first_wrong:.0%}</b> wrong ({wrong} of '
        f"{one.tried}): "
        f"<b>{text(lesson.question(one.id))}</b></a> {usual}"
    )


def _line(one: Unsafe, lessons: Mapping, at: int, whole: bool = False) -> str:
    """Who, which question in words, what was answered, when, and whether it is put right."""
    when = moment(one.at, at) if one.at else "no time recorded"
    times = f", {counted(one.times, 'time')}" if one.times > 1 else ""
    said = " / ".join(one.answers) if whole else one.answers[-1] if one.answers else ""
    since = f"{SIGN.get(one.since, '○')} {one.since}"
    if one.put_right_at:
        since += f" {moment(one.put_right_at, at)}"
    who = "" if whole else f"<b>{text(one.name)}</b>, "
    hazards = f" · {text(', '.join(one.hazards))}" if whole and one.hazards else ""
    look = "open" if one.is_open else "closed"
    return (
        f'{who}{when}{times}: <b class="{look}">{since}</b>{hazards} '
        f"<small><b>“{text(said) or 'not recorded'}”</b> to "
        f"{text(lessons[one.lesson].question(one.id))}: {text(one.asks)}</small>"
    )


def _more(count: int, place: str, what: str) -> str:
    if count <= 0:
        return ""
    words = f"{count} more{what}"
    return f'<p><a href="#{place}">{words}</a></p>' if place else f"<p>{words}</p>"
