"""What the practice board shows of a state: the drawing with its places, the facts, the log."""

from __future__ import annotations

from typing import Any

from repairlib.bench import (
    WHEN_DUE,
    Attempt,
    BoardPart,
    PracticeSet,
    Reading,
    State,
    rails_due,
    supply_shows,
)
from repairlib.core.quantity import brief
from repairlib.core.wording import counted
from repairlib.faces.panels.bench_offers import as_sent, lines_of, of_bench, of_part, of_point
from repairlib.show.box import Box
from repairlib.show.instruments import draw_instrument
from repairlib.show.practice_board import draw_practice_board
from repairlib.show.practice_layout import Layout

Seen = dict[str, Any]  # as it goes to the browser
SUPPLY = "bench supply"
FEEDS = {
    "off": "unplugged",
    "own plug": "its own plug",
    "series lamp": "its own plug, the lamp in series",
    SUPPLY: "the bench supply",
}


def board_of(attempt: Attempt, layout: Layout) -> Seen:
    """The drawing and its words, and what can be chosen on it, with its place in units of it."""
    state, of = attempt.state, attempt.task.set
    drawn = draw_practice_board(state, last_reading(attempt), layout)
    return {
        "title": of.title,
        "says": of.says,
        "works": of.works,
        "svg": drawn.svg,
        "alt": drawn.alt,
        "size": [layout.wide, layout.high],
        "parts": [_part(state, part, layout) for part in of.parts],
        "points": [_point(state, point, layout) for point in layout.points],
        "bench": as_sent(of_bench(of)),
        "sheet": sheet_of(of),
        "lines": [list(one) for one in lines_of(of).items()],
        "example": f"volts {of.rails[0].point} 0",
    }


def sheet_of(of: PracticeSet) -> Seen:
    """The service sheet: the rails with their windows, and when they are due."""
    rows = [
        [one.rail, one.point, one.nominal, f"{one.low} to {one.high}", one.ripple or "–"]
        for one in rails_due(of)
    ]
    return {
        "headings": ["Rail", "At point", "Due", "Right from … to", "Most ripple, peak to peak"],
        "rows": rows,
        "when": WHEN_DUE,
    }


def _part(state: State, part: BoardPart, layout: Layout) -> Seen:
    box: Box = layout.parts[part.name]
    return {
        "name": part.name,
        "says": part_in_words(state, part),
        "nodes": list(part.nodes),
        "ends": [list(end) for end in layout.ends[part.name]],
        "left": box.left,
        "top": box.top,
        "wide": box.right - box.left,
        "high": box.bottom - box.top,
        "offers": as_sent(of_part(state, part)),
    }


def _point(state: State, point: str, layout: Layout) -> Seen:
    x, y = layout.points[point]
    joined = [part.name for part in state.set.parts if point in part.nodes]
    return {
        "name": point,
        "says": f"joins {', '.join(joined)}",
        "left": x,
        "top": y,
        "offers": as_sent(of_point(state, point)),
    }


def part_in_words(state: State, part: BoardPart) -> str:
    """What a part is, where it is joined, and whether its place is empty.

    >>> from repairlib.bench import begin, demo_set
    >>> state = begin(demo_set("desk radio"), (), "demo")
    >>> part_in_words(state, state.set.part("C1"))
    'reservoir capacitor, from rail to 0'
    """
    said = [part.what, f"from {part.nodes[0]} to {part.nodes[1]}"]
    if part.mains:
        said.append("on the mains side")
    if state.places[part.name].fitted is None:
        said.append("its place is empty")
    return ", ".join(said)


def last_reading(attempt: Attempt) -> Reading | None:
    """The reading of the last move, None where it took none."""
    return attempt.done[-1].told.reading if attempt.done else None


def instruments_of(attempt: Attempt) -> list[Seen]:
    """The instrument of the last reading, and the bench supply while it feeds the set."""
    readings = []
    last = last_reading(attempt)
    if last and last.unit:
        readings.append(last)
    if attempt.state.feed.kind == SUPPLY and not attempt.state.ended:
        readings.append(supply_shows(attempt.state))
    drawn = [draw_instrument(one) for one in readings]
    return [{"svg": one.svg, "alt": one.alt} for one in drawn]


def facts_of(state: State) -> list[list[str]]:
    """What is always seen: the clock, the purse, how the set is fed, what was damaged."""
    facts = [
        ["Time", clock(state.clock)],
        ["Spent", f"{state.spent:.1f} tokens"],
        ["Fed by", feed_in_words(state)],
        ["Load", state.load],
        ["Line", f"{100 * state.feed.line:g} %"],
        ["Black probe", f"clipped to {state.clipped}" if state.clipped else "in the hand"],
    ]
    if state.harm:
        facts.append(["Damage", counted(len(state.harm), "time")])
    return facts


def feed_in_words(state: State) -> str:
    """How the set is fed, with what is set there."""
    feed = state.feed
    said = [FEEDS[feed.kind]]
    if feed.kind == SUPPLY:
        said.append(f"{brief(feed.volts, 'V')}, at most {brief(feed.limit, 'A')}")
    return ", ".join(said)


def log_of(attempt: Attempt, lines: list[str]) -> list[Seen]:
    """Each move as typed, what was told and what it took."""
    return [
        {
            "move": line,
            "told": done.told.words,
            "alarm": done.told.alarm,
            "took": took_in_words(done.told.seconds, done.told.tokens),
        }
        for line, done in zip(lines, attempt.done, strict=True)
    ]


def took_in_words(seconds: float, tokens: float) -> str:
    """What a move took.

    >>> took_in_words(180, 1.25), took_in_words(20.4, 0), took_in_words(0, 0)
    ('3 min, 1.2 tokens', '20 s', 'no time')
    """
    whole = round(seconds)
    time = f"{whole // 60} min" if whole >= 60 and whole % 60 == 0 else f"{whole} s"
    return ", ".join([time if whole else "no time", *([f"{tokens:.1f} tokens"] if tokens else [])])


def clock(seconds: float) -> str:
    """A time as a clock shows it: hours, minutes, seconds.

    >>> clock(3725)
    '1:02:05'
    """
    minutes, left = divmod(round(seconds), 60)
    return f"{minutes // 60}:{minutes % 60:02d}:{left:02d}"
